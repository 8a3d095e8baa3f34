/**
 * What the user wrote: TOML in, checked and immutable records in SI units out, or errors with line
 * numbers.
 *
 * <p>Lives here: the records of a rig, a place and a plan; the only code that knows TOML, unit
 * strings and the crop files. Does not: anything that moves in time.
 *
 * <p>Begin at {@link tideless.scenario.ScenarioReader}. What may be written stands in {@code
 * ScenarioKeys}, {@code CropKeys} and {@code UnitTable}; all else is made from those.
 *
 * <p>May import: {@code crop}, {@code solution}, {@code physics} for their vocabulary (traits,
 * recipes, lamp arithmetic), the TOML and CSV readers. Held by {@code RoomsTest}.
 */
package tideless.scenario;
