/**
 * Air, light, water, pipes, valves and oxygen: pure functions of SI numbers, each with its source.
 *
 * <p>Lives here: anything a handbook could print. Does not: state, time steps, files, crops,
 * recipes.
 *
 * <p>May import: {@code java.lang}, {@code java.util}, {@code java.util.function}, {@code
 * org.apache.commons.math3.util}. Held by {@code RoomsTest}.
 */
package tideless.physics;
