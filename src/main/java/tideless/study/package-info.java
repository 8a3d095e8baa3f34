/**
 * Many runs of one scenario: the twin that never runs dry, the lean feed, the light of a season,
 * ensembles, bands, what moves a result, what readings say of unknowns.
 *
 * <p>Lives here: what needs more than one run, and who does the runs ({@link
 * tideless.study.Workers}). Does not: threads (they live next door in {@code study.threads}),
 * files, printing.
 *
 * <p>May import: {@code advice}, {@code sim}, {@code rig}, {@code crop}, {@code solution}, {@code
 * physics}, {@code java.lang}, {@code java.util}, {@code java.util.function}, {@code
 * java.util.stream}, {@code java.time}, {@code org.apache.commons.math3.random}, {@code
 * org.apache.commons.math3.linear}, {@code org.apache.commons.math3.fitting.leastsquares}, {@code
 * org.apache.commons.math3.special}, {@code org.apache.commons.math3.util}. Held by {@code
 * RoomsTest}.
 */
package tideless.study;
