/**
 * Sentences for verdicts, tasks, warnings and limits, worked out of figures; for the terminal, the
 * files and the browser alike.
 *
 * <p>Lives here: every word a grower reads about a run, spellings of dates and numbers, the
 * breaking of lines. Does not: judgements, files, charts, layout.
 *
 * <p>May import: {@code study}, {@code sim}, {@code advice}, {@code rig}, {@code crop}, {@code
 * solution}, {@code physics}, {@code java.lang}, {@code java.math}, {@code java.util}, {@code
 * java.util.function}, {@code java.util.stream}, {@code java.time}. Held by {@code RoomsTest}.
 */
package tideless.words;
