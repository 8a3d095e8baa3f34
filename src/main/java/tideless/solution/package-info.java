/**
 * Ions, recipes, source waters, electrical conductivity, pH, solubility and mixing.
 *
 * <p>Lives here: what a chemist could say of a bottle of solution. Does not: trays, crops, time.
 *
 * <p>May import: {@code physics}, {@code java.lang}, {@code java.util}, Commons Math. Held by
 * {@code RoomsTest}.
 */
package tideless.solution;
