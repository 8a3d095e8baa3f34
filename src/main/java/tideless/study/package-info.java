/**
 * Many runs: the twin that never runs dry, sizing, sweeps, ensembles.
 *
 * <p>May import: {@code advice}, {@code sim}, {@code scenario} and what lies below them. Held by
 * {@code RoomsTest}.
 */
package tideless.study;
