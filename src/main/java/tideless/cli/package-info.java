/**
 * The door: commands, arguments, printing, exit codes. No science.
 *
 * <p>The only room that knows picocli. May import every other room. Held by {@code RoomsTest}.
 */
package tideless.cli;
