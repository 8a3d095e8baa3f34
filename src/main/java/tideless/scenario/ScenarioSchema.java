package tideless.scenario;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import tideless.scenario.Key.Need;

/**
 * The keys of a scenario as JSON Schema, draft 2020-12, for editors that complete and check while
 * one types. It knows what each key may hold by itself, its range where it has no unit, its sign
 * where it has one; what keys mean to each other, and bounds in units, are told by the program.
 */
final class ScenarioSchema {
    private static final String NUMBER = "(?:[0-9]+\\\\.?[0-9]*|\\\\.[0-9]+)(?:[eE][-+]?[0-9]+)?";
    private static final String PLAIN = "-?[0-9]+(?:\\.[0-9]+)?";
    private static final String DATE = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";

    private ScenarioSchema() {}

    /** The schema, made from the tables the reader uses. */
    static String json() {
        StringBuilder text = new StringBuilder();
        text.append("{\n\"$schema\": \"https://json-schema.org/draft/2020-12/schema\",\n")
                .append("\"title\": \"Tideless scenario\",\n");
        body(text, ScenarioKeys.TABLE, "");
        return text.append("}\n").toString();
    }

    /** What a table may hold, without the braces around it. */
    private static void body(StringBuilder text, KeyTable keys, String table) {
        List<String> named = new ArrayList<>();
        List<String> needed = new ArrayList<>();
        for (Key<?> key : keys.keysOf(table)) {
            named.add(quoted(key.name()) + ": " + value(key));
            if (key.need() == Need.REQUIRED && key.onlyWith().isEmpty()) {
                needed.add(quoted(key.name()));
            }
        }
        String anyName = "";
        for (String child : keys.children(table)) {
            String path = KeyTable.join(table, child);
            if (keys.isTable(path)) {
                String inner = inner(keys, path);
                if (child.equals("*")) {
                    anyName = inner;
                } else {
                    named.add(quoted(child) + ": " + inner);
                }
            }
        }
        if (keys.isGuest(table, CropReader.OVERRIDE)) {
            named.add(quoted(CropReader.OVERRIDE) + ": {\"type\": \"object\"}");
        }
        text.append("\"type\": \"object\",\n\"properties\": {\n")
                .append(String.join(",\n", named))
                .append("\n},\n\"required\": [")
                .append(String.join(", ", needed))
                .append("],\n\"additionalProperties\": ")
                .append(anyName.isEmpty() ? "false" : anyName)
                .append('\n');
    }

    private static String inner(KeyTable keys, String path) {
        StringBuilder text = new StringBuilder("{\n");
        if (keys.isList(path)) {
            text.append("\"type\": \"array\",\n\"items\": {\n");
            body(text, keys, KeyTable.join(path, "*"));
            return text.append("}\n}").toString();
        }
        body(text, keys, path);
        return text.append('}').toString();
    }

    private static String value(Key<?> key) {
        String about = key.about();
        if (key.need() == Need.DEFAULT || key.need() == Need.WORKED_OUT) {
            about += ". Left out: " + key.fallback();
        }
        return "{\"description\": "
                + quoted(about + ". Allowed: " + key.allowed())
                + (key.example().isEmpty()
                        ? ""
                        : ", \"examples\": [" + json(key, key.example()) + "]")
                + (hasDefault(key) ? ", \"default\": " + json(key, key.fallback()) : "")
                + ", "
                + type(key)
                + "}";
    }

    /** Whether a default can stand in the file as it is told; many are sentences. */
    private static boolean hasDefault(Key<?> key) {
        if (key.need() != Need.DEFAULT) {
            return false;
        }
        Kind<?> kind = key.kind();
        if (kind instanceof Kind.Choice<?> choice) {
            return choice.words().contains(key.fallback());
        }
        return kind instanceof Kind.Flag
                || kind instanceof Kind.Count && key.fallback().matches(PLAIN)
                || isMeasure(kind) && kind.units().read(key.fallback()).isSound();
    }

    private static boolean isMeasure(Kind<?> kind) {
        return kind instanceof Kind.Quantity || kind instanceof Kind.AnyMeasure;
    }

    /** A value as JSON has it: a number without unit and a yes or no are no texts. */
    private static String json(Key<?> key, String value) {
        boolean isText = key.kind().isText() || !value.matches(PLAIN + "|true|false");
        return isText ? quoted(value) : value;
    }

    /** Between what a number without unit lies. */
    private static String range(Key<?> key) {
        return key.range()
                .map(
                        bounds ->
                                (bounds.isLowIncluded()
                                                ? ", \"minimum\": "
                                                : ", \"exclusiveMinimum\": ")
                                        + bounds.lowest()
                                        + ", \"maximum\": "
                                        + bounds.highest())
                .orElse("");
    }

    private static String type(Key<?> key) {
        Kind<?> kind = key.kind();
        if (kind instanceof Kind.Flag) {
            return "\"type\": \"boolean\"";
        }
        if (kind instanceof Kind.Count) {
            return "\"type\": \"integer\"" + range(key);
        }
        if (kind instanceof Kind.Choice<?> choice) {
            return "\"enum\": [" + list(choice.words()) + "]";
        }
        if (kind instanceof Kind.Names<?> names) {
            return "\"type\": \"array\", \"items\": {\"enum\": [" + list(names.words()) + "]}";
        }
        if (kind instanceof Kind.Date) {
            return "\"type\": \"string\", \"pattern\": " + quoted(DATE);
        }
        if (kind instanceof Kind.Dates) {
            return "\"type\": \"array\", \"items\": {\"type\": \"string\", \"pattern\": "
                    + quoted(DATE)
                    + "}";
        }
        if (kind instanceof Kind.Entries<?>) {
            return "\"type\": \"array\", \"items\": {\"type\": \"object\"}";
        }
        if (kind instanceof Kind.Weekdays) {
            return "\"type\": [\"string\", \"array\"]";
        }
        if (isMeasure(kind)) {
            return kind.units().tables().isEmpty()
                    ? "\"type\": \"number\"" + range(key)
                    : measure(kind.units());
        }
        return "\"type\": \"string\"";
    }

    private static String measure(Units units) {
        List<String> spellings = new ArrayList<>();
        for (UnitTable table : units.tables()) {
            for (String spelling : table.spellings()) {
                spellings.add(spelling.replaceAll("([\\\\.*+?^$(){}|\\[\\]/])", "\\\\\\\\$1"));
            }
        }
        // A pattern is already escaped for JSON, all but the quote that stands for inches.
        String pattern =
                "^\\\\s*"
                        + NUMBER
                        + "\\\\s*(?:"
                        + String.join("|", spellings).replace("\"", "\\\"")
                        + ")"
                        + (units.plainToo() ? "?" : "")
                        + "\\\\s*$";
        return "\"type\": "
                + (units.plainToo() ? "[\"string\", \"number\"]" : "\"string\"")
                + ", \"pattern\": \""
                + pattern
                + "\"";
    }

    private static String list(Collection<String> words) {
        return String.join(", ", words.stream().map(ScenarioSchema::quoted).toList());
    }

    private static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}
