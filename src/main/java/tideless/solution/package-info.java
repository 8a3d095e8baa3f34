/**
 * Ions, recipes, source waters, electrical conductivity, pH, solubility and mixing.
 *
 * <p>Ways in: {@link tideless.solution.Speciation} for everything about one solution, {@link
 * tideless.solution.Meter} for EC and pH many times over, {@link
 * tideless.solution.ElectricalConductivity}, {@link tideless.solution.Acidity}, {@link
 * tideless.solution.Feed}, {@link tideless.solution.MixingSheet}, {@link
 * tideless.solution.Dilution}, {@link tideless.solution.PhCorrection}.
 *
 * <p>Lives here: what a chemist could say of a bottle of solution. Does not: trays, crops, time.
 *
 * <p>May import: {@code physics}, {@code java.lang}, {@code java.util}, {@code java.util.function},
 * {@code java.util.stream}, {@code org.apache.commons.math3.util}, {@code
 * org.apache.commons.math3.analysis}, {@code org.apache.commons.math3.analysis.solvers}. Held by
 * {@code RoomsTest}.
 */
package tideless.solution;
