package tideless.scenario;

/**
 * One fault of the user's file, as a person would want to be told of it.
 *
 * @param file the file as the user named it
 * @param line counted from 1; 0 when the fault has no place
 * @param column counted from 1; 0 when the fault has no place
 * @param key the full key, as {@code tray.bench.depth}
 * @param found what stands there, in the user's own words
 * @param allowed what may stand there
 * @param hint advice on a line of its own, or empty
 */
public record Problem(
        String file, int line, int column, String key, String found, String allowed, String hint) {}
