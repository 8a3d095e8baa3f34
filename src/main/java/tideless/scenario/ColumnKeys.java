package tideless.scenario;

import java.util.LinkedHashMap;
import java.util.Map;

/** A file's own names for the columns we know. */
final class ColumnKeys {
    static final KeyGroup KEYS = new KeyGroup();
    private static final Map<String, Key<String>> BY_COLUMN = new LinkedHashMap<>();

    static {
        for (String column : InsideFile.columns()) {
            BY_COLUMN.put(
                    column,
                    KEYS.add(
                            Key.text(column)
                                    .optional(ColumnGuess.example(column))
                                    .about(
                                            "the file's own name for the column "
                                                    + column
                                                    + ", and its unit unless the file states"
                                                    + " it")));
        }
    }

    private ColumnKeys() {}

    static Key<String> of(String column) {
        return BY_COLUMN.get(column);
    }
}
