/**
 * The door: commands, arguments, printing, exit codes. No science.
 *
 * <p>The only room that knows picocli. May import: {@code report}, {@code words}, {@code scenario},
 * {@code study.threads}, {@code study}, {@code advice}, {@code sim}, {@code rig}, {@code crop},
 * {@code solution}, {@code physics}, {@code java.lang}, {@code java.util}, {@code
 * java.util.function}, {@code java.util.stream}, {@code java.util.concurrent}, {@code java.io},
 * {@code java.util.jar}, {@code java.nio.charset}, {@code java.nio.file}, {@code java.time}, {@code
 * picocli}. Held by {@code RoomsTest}.
 */
package tideless.cli;
