package tideless.scenario;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One TOML file while it is being read: where things stand in it, and everything found to say of
 * it. Lives as long as one call of a reader.
 */
final class TomlFile {
    /** Of one file; more are counted. */
    static final int MOST_PROBLEMS = 20;

    private static final int LONGEST_SHOWN = 60;
    private static final Pattern FIRST_PLACE =
            Pattern.compile(" previously defined at line (\\d+)");

    private final String name;
    private final List<Problem> problems = new ArrayList<>();
    private final Map<String, EffectiveValue> values = new LinkedHashMap<>();
    private final Map<String, Read<?>> reads = new HashMap<>();
    private final Map<String, String> chosen = new HashMap<>();
    private final List<Note> notes = new ArrayList<>();
    private final Set<String> excused = new HashSet<>();
    private TomlTable root;
    private TomlLines lines;
    private String text = "";

    TomlFile(String name) {
        this.name = name;
    }

    /** The one unit in which this file writes a pen's ppm; empty where it does not or in two. */
    String pensPpm() {
        boolean is500 = text.indexOf("ppm-500") >= 0;
        boolean is700 = text.indexOf("ppm-700") >= 0;
        return is500 == is700 ? "" : is500 ? "ppm-500" : "ppm-700";
    }

    String name() {
        return name;
    }

    TomlTable root() {
        return root;
    }

    /** Parses; false when what follows would only repeat what is already said. */
    boolean parse(String text) {
        TomlParseResult result;
        try {
            this.text = text;
            lines = TomlLines.of(text);
            result = Toml.parse(lines.text());
        } catch (StackOverflowError | AssertionError | RuntimeException e) {
            // With assertions on, the parser asserts things a broken text need not keep.
            problem(0, 0, "", "text that is no TOML", "a TOML file", "");
            return false;
        }
        root = result;
        reads.clear();
        boolean sound = true;
        for (TomlParseError error : result.errors()) {
            TomlPosition at = lines.inFile(error.position());
            String message = shown(error.getMessage(), 200);
            int twice = message.indexOf(" previously defined at line ");
            if (twice > 0) {
                problem(
                        at.line(),
                        at.column(),
                        message.substring(0, twice),
                        "a second time",
                        "once; it stands in line " + firstLine(message),
                        "");
            } else {
                sound = false;
                String lower =
                        message.isEmpty() || message.startsWith("NaN")
                                ? message
                                : Character.toLowerCase(message.charAt(0)) + message.substring(1);
                boolean isNoDay = lower.startsWith("invalid date");
                problem(
                        at.line(),
                        at.column(),
                        "",
                        isNoDay ? "a date that no calendar has" : "text that is no TOML: " + lower,
                        isNoDay
                                ? "a day that there is, as 2026-03-02"
                                : "key = value, with texts and quantities in quotation marks",
                        StarterDates.written(line(text, at.line()))
                                .map(date -> "Maybe write the date as " + date + ".")
                                .orElse(""));
            }
        }
        if (sound && result.isEmpty() && problems.isEmpty()) {
            problem(0, 0, "", "no key at all", "a TOML file", "");
            return false;
        }
        return sound;
    }

    private static String line(String text, int number) {
        String[] all = text.split("\n", number + 1);
        return number > 0 && number <= all.length ? all[number - 1] : "";
    }

    /** Line of the first of two definitions, out of the parser's words for the second. */
    private int firstLine(String message) {
        Matcher place = FIRST_PLACE.matcher(message);
        return place.find() ? lines.inFile(Integer.parseInt(place.group(1))) : 0;
    }

    void problem(int line, int column, String key, String found, String allowed, String hint) {
        problems.add(new Problem(name, line, column, key, found, allowed, hint));
    }

    void add(Problem problem) {
        problems.add(problem);
    }

    /** Records what holds for a key; the first word counts. */
    void holds(EffectiveValue value) {
        values.putIfAbsent(value.key(), value);
    }

    /** What was read for a key before; null when it has not been read. */
    Read<?> readBefore(String path) {
        return reads.get(path);
    }

    /** What a discriminator was chosen to hold; null when none was. */
    String chosen(String path) {
        return chosen.get(path);
    }

    void choose(String path, String value) {
        chosen.put(path, value);
    }

    void remember(String path, Read<?> read) {
        reads.put(path, read);
    }

    void note(Note note) {
        notes.add(note);
    }

    /** Every value that holds, in the order read. */
    List<EffectiveValue> values() {
        return List.copyOf(values.values());
    }

    List<Note> notes() {
        return notes;
    }

    boolean isFaulty() {
        return !problems.isEmpty();
    }

    /** All problems: this file's by place, then those of files it names, each by place. */
    List<Problem> problems() {
        List<Problem> sorted = new ArrayList<>(problems);
        sorted.sort(
                Comparator.comparing((Problem p) -> p.file().equals(name) ? "" : p.file())
                        .thenComparingInt(Problem::line)
                        .thenComparingInt(Problem::column));
        return capped(sorted.stream().distinct().toList());
    }

    /** Of each file no more than anybody mends at once; the last says how many follow. */
    private static List<Problem> capped(List<Problem> all) {
        Map<String, Integer> counts = new HashMap<>();
        all.forEach(problem -> counts.merge(problem.file(), 1, Integer::sum));
        Map<String, Integer> shown = new HashMap<>();
        List<Problem> kept = new ArrayList<>();
        for (Problem problem : all) {
            int nth = shown.merge(problem.file(), 1, Integer::sum);
            int more = counts.get(problem.file()) - MOST_PROBLEMS;
            if (nth < MOST_PROBLEMS || (nth == MOST_PROBLEMS && more <= 0)) {
                kept.add(problem);
            } else if (nth == MOST_PROBLEMS) {
                kept.add(problem.withHint("And %s more in this file.".formatted(more)));
            }
        }
        return kept;
    }

    /**
     * From now on nothing is said of this path being absent: the user meant it, and misspelt it.
     */
    void excuse(String path) {
        excused.add(path);
    }

    /** Whether the path, or a table it stands in, is excused. */
    boolean isExcused(String path) {
        String rest = path;
        while (true) {
            if (excused.contains(rest)) {
                return true;
            }
            int dot = rest.lastIndexOf('.');
            if (dot < 0) {
                return false;
            }
            rest = rest.substring(0, dot);
        }
    }

    TomlPosition position(List<String> path) {
        if (root == null || path.isEmpty()) {
            return null;
        }
        return inFile(root.inputPositionOf(path));
    }

    /** Where in the user's own file something stands that the parser placed; null stays null. */
    TomlPosition inFile(TomlPosition parsed) {
        return parsed == null ? null : lines.inFile(parsed);
    }

    int line(List<String> path) {
        TomlPosition at = position(path);
        return at == null ? 0 : at.line();
    }

    /** A user's own words, fit to be printed: no control characters, not too long. */
    static String shown(String words) {
        return shown(words, LONGEST_SHOWN);
    }

    /** Likewise, however long. */
    static String seen(String words) {
        return shown(words, Integer.MAX_VALUE);
    }

    /** Whether a text holds what nobody sees: control characters, marks of direction. */
    static boolean hasUnseen(String text) {
        return text.codePoints().anyMatch(TomlFile::isUnseen);
    }

    /** Whether every letter is printable ASCII. */
    private static boolean isPlain(String words) {
        for (int i = 0; i < words.length(); i++) {
            if (words.charAt(i) < ' ' || words.charAt(i) > '~') {
                return false;
            }
        }
        return true;
    }

    private static boolean isUnseen(int codePoint) {
        int type = Character.getType(codePoint);
        return type == Character.CONTROL
                || type == Character.FORMAT
                || type == Character.SURROGATE
                || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR;
    }

    private static String shown(String words, int longest) {
        if (words.length() <= longest && isPlain(words)) {
            return words;
        }
        StringBuilder tidy = new StringBuilder();
        words.codePoints().limit(longest).forEach(c -> tidy.appendCodePoint(isUnseen(c) ? '?' : c));
        return words.codePointCount(0, words.length()) > longest ? tidy + "..." : tidy.toString();
    }
}
