/**
 * What the user wrote: TOML in, checked and immutable records in SI units out, or errors with line
 * numbers.
 *
 * <p>Lives here: the only code that knows TOML, unit strings, weather and crop files; the keys of
 * each and what a fault is told as. Does not: the records it makes (they are the rig's), anything
 * that moves in time.
 *
 * <p>Begin at {@link tideless.scenario.ScenarioReader}. What may be written stands in {@code
 * ScenarioKeys}, {@code CropKeys} and {@code UnitTable}; all else is made from those.
 *
 * <p>May import: {@code rig}, {@code crop}, {@code solution}, {@code physics}, {@code java.lang},
 * {@code java.util}, {@code java.util.function}, {@code java.util.stream}, {@code java.util.regex},
 * {@code java.io}, {@code java.math}, {@code java.nio}, {@code java.nio.charset}, {@code
 * java.nio.file}, {@code java.time}, {@code java.time.chrono}, {@code java.time.format}, {@code
 * java.time.temporal}, {@code org.tomlj}, {@code de.siegmar.fastcsv.reader}, {@code
 * org.apache.commons.math3.util}. Held by {@code RoomsTest}.
 */
package tideless.scenario;
