/**
 * Growth, canopy, roots, thirst and hunger of one plant, as pure functions of its traits, its state
 * and the weather around it.
 *
 * <p>Lives here: what a plant scientist could say of a plant. Does not: trays, valves, files. The
 * numbers of each crop are resource files beside this package, read by {@code scenario}.
 *
 * <p>All that is per area is per ground that leaf covers: a tray's thirst is plants x {@link
 * tideless.crop.Canopy#coveredGroundM2} x {@link tideless.crop.Transpiration#canopyKgPerM2S} x
 * {@link tideless.crop.Transpiration#saltFrac}, or with reference evapotranspiration x {@link
 * tideless.crop.Transpiration#cropCoefficient} in place of the canopy.
 *
 * <p>May import: {@code solution}, {@code physics}, {@code java.lang}, {@code java.util}, {@code
 * java.util.function}, {@code org.apache.commons.math3.util}. Held by {@code RoomsTest}.
 */
package tideless.crop;
