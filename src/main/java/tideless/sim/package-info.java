/**
 * The run: state, step, events, trace, and the ledgers of water and of every ion.
 *
 * <p>Lives here: everything that moves in time. Does not: files, clocks, threads, reflection,
 * printing.
 *
 * <p>May import: {@code scenario} (records only), {@code crop}, {@code solution}, {@code physics},
 * {@code java.lang}, {@code java.util}, {@code java.time} values, Commons Math. Held by {@code
 * RoomsTest}.
 */
package tideless.sim;
