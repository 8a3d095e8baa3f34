package tideless.scenario;

import java.util.Objects;

/**
 * Something worth saying of a scenario that is no fault: it can be run as it stands.
 *
 * @param file the file it is about
 * @param line counted from 1; 0 when it has no place
 * @param key the full key it is about, or empty
 * @param text one sentence
 * @param isGrave whether the crop suffers if the rig is built as it is written
 */
public record Note(String file, int line, String key, String text, boolean isGrave) {
    public Note {
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(key, "key");
        Objects.requireNonNull(text, "text");
    }

    /** One that is no harm. */
    public Note(String file, int line, String key, String text) {
        this(file, line, key, text, false);
    }

    /** As it is printed. */
    @Override
    public String toString() {
        return file
                + (line > 0 ? ":" + line : "")
                + ": "
                + (key.isEmpty() ? "" : key + ": ")
                + text;
    }
}
