/**
 * The rig, its crops, its climate and its visits, as checked and immutable records in SI units.
 *
 * <p>Lives here: what a run is about, whoever wrote it down and however. Records carry their checks
 * and no behaviour beyond them. Does not: text, files, units in strings, anything that moves in
 * time.
 *
 * <p>Begin at {@link tideless.rig.Scenario}.
 *
 * <p>May import: {@code crop}, {@code solution}, {@code physics}, {@code java.lang}, {@code
 * java.util}, {@code java.util.function}, {@code java.util.stream}, {@code java.time}, {@code
 * java.time.chrono}. Held by {@code RoomsTest}.
 */
package tideless.rig;
