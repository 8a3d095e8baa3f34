/**
 * Drawings of a rig in section, to scale, as the text of an SVG picture; for the report and the
 * browser alike.
 *
 * <p>Lives here: lines, places and shades of a drawing, and which hour of a run it shows. Does not:
 * files, charts over time, judgements, sentences.
 *
 * <p>May import: {@code words}, {@code study}, {@code sim}, {@code advice}, {@code rig}, {@code
 * physics}, {@code java.lang}, {@code java.util}, {@code java.util.function}, {@code
 * java.util.stream}, {@code java.time}, {@code org.apache.commons.math3.util}. Held by {@code
 * RoomsTest}.
 */
package tideless.drawing;
