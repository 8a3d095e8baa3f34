package tideless.scenario;

import java.util.Objects;

/**
 * One fault of the user's file, as a person would want to be told of it.
 *
 * @param file the file as the user named it
 * @param line counted from 1; 0 when the fault has no place
 * @param column counted from 1; 0 when the fault has no place; in a CSV file the number of the
 *     field
 * @param key the full key, as {@code tray.bench.depth}
 * @param found what stands there, in the user's own words
 * @param allowed what may stand there
 * @param hint advice on a line of its own, or empty
 */
public record Problem(
        String file, int line, int column, String key, String found, String allowed, String hint) {
    public Problem {
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(key, "key");
        Objects.requireNonNull(found, "found");
        Objects.requireNonNull(allowed, "allowed");
        Objects.requireNonNull(hint, "hint");
    }

    /** The same with another line of advice below its own. */
    Problem withHint(String more) {
        return new Problem(
                file,
                line,
                column,
                key,
                found,
                allowed,
                hint.isEmpty() ? more : hint + "\n    " + more);
    }

    /** As it is printed: {@code file:line:column: key: found X, allowed: Y}, then the hint. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(file);
        if (line > 0) {
            text.append(':').append(line).append(':').append(column);
        }
        text.append(": ");
        if (!key.isEmpty()) {
            text.append(key).append(": ");
        }
        text.append("found ").append(found);
        if (!allowed.isEmpty()) {
            text.append(", allowed: ").append(allowed);
        }
        if (!hint.isEmpty()) {
            text.append("\n    ").append(hint);
        }
        return text.toString();
    }
}
