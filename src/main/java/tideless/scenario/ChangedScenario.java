package tideless.scenario;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlTable;

/**
 * A scenario read as if some of its keys held other values: what a comparison of designs runs. The
 * file on the disk stays as it is. Every check of the reader applies to the changed values.
 */
public final class ChangedScenario {
    private static final String LITERAL =
            "true|false|[-+]?\\d+|[-+]?\\d+\\.\\d+([eE][-+]?\\d+)?|\\d{4}-\\d\\d-\\d\\d"
                    + "|\\d\\d:\\d\\d(:\\d\\d)?|\\[.*]";

    private static final String MISFIT = "a change of something the scenario does not have";

    /** Whether a fault is that a change fits nothing in the scenario, whatever its value. */
    public static boolean isMisfit(Problem problem) {
        return problem.found().equals(MISFIT);
    }

    /**
     * One key's other value.
     *
     * @param key its path, as {@code tray.basil.valve.setting}; {@code *} stands for every name the
     *     scenario itself has in that place
     * @param value as it would be written in the file, a text without its quotation marks
     */
    public record Change(String key, String value) {}

    private final Path path;
    private final ScenarioFiles files;
    private final Beside beside;
    private final Map<String, Object> root; // empty where the file itself does not parse
    private final MadeOnce once = new MadeOnce();

    private ChangedScenario(
            Path path, ScenarioFiles files, Beside beside, Map<String, Object> root) {
        this.path = path;
        this.files = files;
        this.beside = beside;
        this.root = root;
    }

    /** Reads a file with changes and no other beside it. */
    public static Reading read(Path path, List<Change> changes) {
        return of(path, Beside.NOTHING).read(changes);
    }

    /**
     * A file to be read with one set of changes after another. What it names is read once. May be
     * used by several threads.
     *
     * @param path of a scenario that reads soundly as it stands
     * @param beside files it does not name
     */
    public static ChangedScenario of(Path path, Beside beside) {
        ScenarioFiles files = new FilesOnDisk(path);
        ScenarioFiles.Content content = files.read("", TextFile.MEBIBYTE + 1);
        TomlParseResult parsed = Toml.parse(new String(content.bytes(), StandardCharsets.UTF_8));
        boolean parses = content.unreadable().isEmpty() && !parsed.hasErrors();
        return new ChangedScenario(path, files, beside, parses ? copied(parsed, "") : Map.of());
    }

    /**
     * Reads it with changes.
     *
     * @param changes applied in order
     * @return as {@link ScenarioReader#read(Path)}; a change that fits nothing is a fault of its
     *     key
     */
    public Reading read(List<Change> changes) {
        if (root.isEmpty()) {
            return ScenarioReader.read(path, beside);
        }
        Map<String, Object> tree = copied(root);
        List<Problem> problems = new ArrayList<>();
        for (Change change : changes) {
            List<String> names = List.of(change.key().split("\\.", -1));
            if (set(tree, names, "", value(change.value())) == 0) {
                problems.add(unfit(path, change, tree));
            }
        }
        if (!problems.isEmpty()) {
            return new Reading.Faulty(problems);
        }
        Reading reading = read(tree);
        if (reading instanceof Reading.Faulty faulty && lowerOverflows(tree, faulty, changes)) {
            reading = read(tree);
        }
        return reading instanceof Reading.Faulty faulty
                ? new Reading.Faulty(
                        faulty.problems().stream().map(p -> placeless(path, p)).toList())
                : reading;
    }

    private Reading read(Map<String, Object> tree) {
        StringBuilder text = new StringBuilder();
        write(text, "", tree);
        byte[] changed = text.toString().getBytes(StandardCharsets.UTF_8);
        return ScenarioReader.read(path.toString(), new Replaced(files, changed), beside, once);
    }

    /**
     * A tray that is made shallower than its overflow runs over at its rim, as one without an
     * overflow does, where nobody varies that too.
     *
     * @return whether anything was changed
     */
    private static boolean lowerOverflows(
            Map<String, Object> tree, Reading.Faulty faulty, List<Change> changes) {
        String overflow = TrayKeys.OVERFLOW.name();
        List<List<String>> places =
                faulty.problems().stream()
                        .map(p -> List.of(p.key().split("\\.", -1)))
                        .filter(p -> p.size() == 3 && p.get(0).equals("tray"))
                        .filter(p -> p.get(2).equals(overflow))
                        .toList();
        boolean varied = changes.stream().anyMatch(c -> c.key().endsWith("." + overflow));
        boolean deepened = changes.stream().anyMatch(c -> c.key().endsWith("." + DEPTH_NAME));
        if (places.isEmpty() || varied || !deepened) {
            return false;
        }
        for (List<String> place : places) {
            if (!(tree.get("tray") instanceof Map<?, ?> trays
                    && trays.get(place.get(1)) instanceof Map<?, ?> tray)) {
                return false;
            }
            tray.remove(overflow);
        }
        return true;
    }

    private static final String DEPTH_NAME = TrayKeys.DEPTH.name();

    private static Map<String, Object> copied(Map<String, Object> table) {
        Map<String, Object> map = new LinkedHashMap<>();
        table.forEach(
                (name, value) ->
                        map.put(
                                name,
                                value instanceof Map<?, ?> inner ? copied(castMap(inner)) : value));
        return map;
    }

    /** Lines and columns would be those of the changed text, which nobody sees. */
    private static Problem placeless(Path path, Problem problem) {
        return problem.file().equals(path.toString())
                ? new Problem(
                        problem.file(),
                        0,
                        0,
                        problem.key(),
                        lineless(problem.found()),
                        lineless(problem.allowed()),
                        lineless(problem.hint()))
                : problem;
    }

    private static String lineless(String words) {
        return words.replaceAll(",? line \\d+(?=\\))", "").replace(" ()", "");
    }

    /** The scenario's own files, but for its text. */
    private record Replaced(ScenarioFiles files, byte[] text) implements ScenarioFiles {
        @Override
        public Content read(String name, int mostBytes) {
            return name.isEmpty() ? Content.of(text) : files.read(name, mostBytes);
        }

        @Override
        public String label(String name) {
            return files.label(name);
        }
    }

    private static Problem unfit(Path path, Change change, Map<String, Object> root) {
        List<String> names = List.of(change.key().split("\\.", -1));
        Map<String, Object> at = root;
        String hint = "";
        String allowed = "a key of the scenario, as tray.basil.valve.setting, or tray.*.depth";
        for (String name : names.subList(0, names.size() - 1)) {
            if (!(at.get(name) instanceof Map<?, ?> inner)) {
                allowed = String.join(", ", at.keySet());
                String near = Spelling.nearest(name, List.copyOf(at.keySet()));
                hint = near.isEmpty() ? "" : "Did you mean " + Key.quoted(near) + "?";
                break;
            }
            at = castMap(inner);
        }
        return new Problem(path.toString(), 0, 0, change.key(), MISFIT, allowed, hint);
    }

    /** How many places were set. A named vessel that is not there is not made. */
    private static int set(
            Map<String, Object> table, List<String> names, String pattern, Object value) {
        String name = names.get(0);
        if (names.size() == 1) {
            if (name.isEmpty() || table.get(name) instanceof Map) {
                return 0;
            }
            table.put(name, value);
            return 1;
        }
        boolean named = ScenarioKeys.TABLE.isNamed(pattern);
        int places = 0;
        for (String one : name.equals("*") ? List.copyOf(table.keySet()) : List.of(name)) {
            String at = KeyTable.join(pattern, named ? "*" : one);
            Object inner = table.get(one);
            if (inner == null && !named && ScenarioKeys.TABLE.isTable(at)) {
                inner = new LinkedHashMap<String, Object>();
                table.put(one, inner);
            }
            if (inner instanceof Map<?, ?> map) {
                places += set(castMap(map), names.subList(1, names.size()), at, value);
            }
        }
        return places;
    }

    @SuppressWarnings("unchecked") // only maps made by copied() and set() stand there
    private static Map<String, Object> castMap(Map<?, ?> map) {
        return (Map<String, Object>) map;
    }

    private static Map<String, Object> copied(TomlTable table, String pattern) {
        boolean named = ScenarioKeys.TABLE.isNamed(pattern);
        Map<String, Object> map = new LinkedHashMap<>();
        for (String name : table.keySet()) {
            Object value = table.get(List.of(name));
            String at = KeyTable.join(pattern, named ? "*" : name);
            if (value instanceof TomlTable inner) {
                map.put(name, copied(inner, at));
            } else if (value instanceof TomlArray array
                    && ScenarioKeys.TABLE.isList(at)
                    && array.toList().stream().allMatch(one -> one instanceof TomlTable)) {
                map.put(name, numbered(array, at));
            } else {
                map.put(name, new Literal(literal(value)));
            }
        }
        return map;
    }

    /** Tables of one name, each under its number; the reader takes both. */
    private static Map<String, Object> numbered(TomlArray array, String pattern) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < array.size(); i++) {
            map.put(String.valueOf(i + 1), copied(array.getTable(i), KeyTable.join(pattern, "*")));
        }
        return map;
    }

    /** A value as it stands in TOML. */
    private record Literal(String toml) {}

    private static Literal value(String text) {
        return new Literal(text.matches(LITERAL) ? text : quoted(text));
    }

    private static String literal(Object value) {
        if (value instanceof String text) {
            return quoted(text);
        }
        if (value instanceof TomlArray array) {
            StringBuilder toml = new StringBuilder("[");
            for (int i = 0; i < array.size(); i++) {
                toml.append(i == 0 ? "" : ", ").append(literal(array.get(i)));
            }
            return toml.append("]").toString();
        }
        if (value instanceof TomlTable table) {
            StringBuilder toml = new StringBuilder("{");
            for (String name : table.keySet()) {
                toml.append(toml.length() == 1 ? "" : ", ")
                        .append(quoted(name))
                        .append(" = ")
                        .append(literal(table.get(List.of(name))));
            }
            return toml.append("}").toString();
        }
        return String.valueOf(value);
    }

    private static String quoted(String text) {
        return '"' + Toml.tomlEscape(text).toString() + '"';
    }

    private static void write(StringBuilder text, String path, Map<String, Object> table) {
        table.forEach(
                (name, value) -> {
                    if (value instanceof Literal literal) {
                        text.append(quoted(name)).append(" = ").append(literal.toml).append('\n');
                    }
                });
        table.forEach(
                (name, value) -> {
                    if (value instanceof Map<?, ?> inner) {
                        String at = path.isEmpty() ? quoted(name) : path + "." + quoted(name);
                        text.append('[').append(at).append("]\n");
                        write(text, at, castMap(inner));
                    }
                });
    }
}
