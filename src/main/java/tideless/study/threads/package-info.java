/**
 * Many runs at once. The only place on the engine's side that knows threads: what they do is handed
 * in, and what comes out is the same on any number of them.
 *
 * <p>May import: {@code study}, {@code java.lang}, {@code java.util}, {@code java.util.function},
 * {@code java.util.concurrent}, {@code java.util.concurrent.atomic}. Held by {@code RoomsTest}.
 */
package tideless.study.threads;
