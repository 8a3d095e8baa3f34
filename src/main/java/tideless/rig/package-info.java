/**
 * The rig, its crops, its climate and its visits, as checked and immutable records in SI units.
 *
 * <p>Lives here: what a run is about, whoever wrote it down and however. Records carry their checks
 * and no behaviour beyond them. Does not: text, files, units in strings, anything that moves in
 * time.
 *
 * <p>Begin at {@link tideless.rig.Scenario}.
 *
 * <p>May import: {@code crop} and {@code solution} for their vocabulary (traits, compositions),
 * {@code java.time}. Held by {@code RoomsTest}.
 */
package tideless.rig;
