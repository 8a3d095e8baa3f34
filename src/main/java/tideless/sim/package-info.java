/**
 * The run: state, step, events, trace, and the ledgers of water and of every ion.
 *
 * <p>Lives here: everything that moves in time. Does not: files, clocks, threads, reflection,
 * printing.
 *
 * <p>May import: {@code rig}, {@code crop}, {@code solution}, {@code physics}, {@code java.lang},
 * {@code java.util}, {@code java.util.function}, {@code java.util.stream}, {@code java.time},
 * {@code java.time.temporal}, {@code org.apache.commons.math3.util}. Held by {@code RoomsTest}.
 */
package tideless.sim;
