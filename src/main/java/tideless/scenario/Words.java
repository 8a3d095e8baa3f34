package tideless.scenario;

import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** The user's own words for what stands in a file, fit to be printed. */
final class Words {
    private Words() {}

    static String of(Object value) {
        if (value instanceof String text) {
            return TomlFile.shown(text);
        }
        if (value instanceof TomlArray array) {
            return TomlFile.shown(array.toToml().strip().replaceAll("\\s+", " "));
        }
        return value instanceof TomlTable ? "a table" : TomlFile.shown(String.valueOf(value));
    }

    /** Likewise, of a sound value: in full. */
    static String whole(Object value) {
        return value instanceof String text ? TomlFile.seen(text) : of(value);
    }

    /** Likewise, a text in quotation marks. */
    static String shown(Object value) {
        return value instanceof String ? Key.quoted(of(value)) : of(value);
    }
}
