package tideless.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;
import tideless.scenario.TomlLines;

/**
 * The text of a scenario as its owner wrote it, and what becomes of it when single values are
 * changed: all else, comments and layout, stays.
 */
final class ScenarioText {
    private final String toml;
    private final TomlLines lines;
    private final TomlParseResult parsed;

    ScenarioText(String toml) {
        this.toml = toml;
        lines = TomlLines.of(toml);
        parsed = Toml.parse(lines.text());
    }

    /** What stands at a key, as {@code tray.basil.depth}; empty where nothing does. */
    Optional<String> value(List<String> key) {
        Object value = parsed.isTable(key) ? null : parsed.get(key);
        return Optional.ofNullable(value).map(Object::toString);
    }

    boolean has(List<String> key) {
        return parsed.contains(key);
    }

    /**
     * The text with values changed, put in or, where the literal is empty, left out.
     *
     * @param literals what stands at each key from now on, as TOML has it
     * @throws IllegalArgumentException when a key cannot be changed where it stands
     */
    String with(Map<List<String>, String> literals) {
        List<Patch> patches = new ArrayList<>();
        Map<List<String>, StringBuilder> fresh = new LinkedHashMap<>();
        literals.forEach(
                (key, literal) -> {
                    if (parsed.contains(key)) {
                        patches.add(patch(key, literal));
                    } else if (!literal.isEmpty()) {
                        fresh.computeIfAbsent(
                                        key.subList(0, key.size() - 1), k -> new StringBuilder())
                                .append(bare(key.get(key.size() - 1)))
                                .append(" = ")
                                .append(literal)
                                .append('\n');
                    }
                });
        fresh.forEach((table, lines) -> patches.add(added(table, lines.toString())));
        patches.sort(Comparator.comparingInt(Patch::from).reversed());
        StringBuilder changed = new StringBuilder(toml);
        for (Patch patch : patches) {
            changed.replace(patch.from, patch.to, patch.text);
        }
        refuseOther(changed.toString(), literals);
        return changed.toString();
    }

    /** A text in place of what stands from one place to another, the second not included. */
    private record Patch(int from, int to, String text) {}

    private static void refuseOther(String changed, Map<List<String>, String> literals) {
        TomlParseResult now = Toml.parse(TomlLines.of(changed).text());
        literals.forEach(
                (key, literal) -> {
                    boolean isAsWanted =
                            literal.isEmpty()
                                    ? !now.contains(key)
                                    : !now.hasErrors() && now.contains(key);
                    if (!isAsWanted) {
                        throw new IllegalArgumentException(
                                String.join(".", key)
                                        + " is written in a way that only the text itself can change");
                    }
                });
    }

    private Patch patch(List<String> key, String literal) {
        int at = place(parsed.inputPositionOf(key));
        int equals = equalsSign(at);
        int from = equals + 1;
        while (from < toml.length() && " \t".indexOf(toml.charAt(from)) >= 0) {
            from++;
        }
        int to = end(from);
        if (!literal.isEmpty()) {
            return new Patch(from, to, literal);
        }
        int line = toml.lastIndexOf('\n', at) + 1;
        int next = toml.indexOf('\n', to);
        return new Patch(line, next < 0 ? toml.length() : next + 1, "");
    }

    private Patch added(List<String> table, String lines) {
        TomlPosition header = table.isEmpty() ? null : position(table);
        if (table.isEmpty()) {
            return new Patch(0, 0, lines);
        }
        if (header != null) {
            int at = place(header);
            int line = toml.lastIndexOf('\n', at) + 1;
            if (toml.substring(line).stripLeading().startsWith("[")) {
                int next = toml.indexOf('\n', at);
                return next < 0
                        ? new Patch(toml.length(), toml.length(), "\n" + lines)
                        : new Patch(next + 1, next + 1, lines);
            }
        }
        StringBuilder name = new StringBuilder();
        table.forEach(part -> name.append(name.isEmpty() ? "" : ".").append(bare(part)));
        String gap = toml.endsWith("\n") ? "\n" : "\n\n";
        return new Patch(toml.length(), toml.length(), gap + "[" + name + "]\n" + lines);
    }

    private TomlPosition position(List<String> table) {
        TomlTable found = parsed.isTable(table) ? parsed.getTable(table) : null;
        return found == null ? null : parsed.inputPositionOf(table);
    }

    /** Columns are counted in characters of Unicode. */
    private int place(TomlPosition parsedAt) {
        TomlPosition position = lines.inFile(parsedAt);
        int line = 0;
        for (int n = 1; n < position.line(); n++) {
            line = toml.indexOf('\n', line) + 1;
        }
        return toml.offsetByCodePoints(line, position.column() - 1);
    }

    private int equalsSign(int from) {
        for (int at = from; at < toml.length(); at++) {
            char c = toml.charAt(at);
            if (c == '=') {
                return at;
            }
            if (c == '"' || c == '\'') {
                at = afterQuotes(at) - 1;
            }
        }
        throw new IllegalArgumentException("no value at " + from);
    }

    /** Where a value that begins at a place ends. */
    private int end(int from) {
        int depth = 0;
        int end = from;
        int at = from;
        while (at < toml.length()) {
            char c = toml.charAt(at);
            if (c == '"' || c == '\'') {
                at = afterQuotes(at);
                end = at;
                continue;
            }
            if (c == '#') {
                int next = toml.indexOf('\n', at);
                if (depth == 0 || next < 0) {
                    return end;
                }
                at = next;
                continue;
            }
            if (depth == 0 && (c == '\n' || c == ',' || c == ']' || c == '}')) {
                return end;
            }
            depth += c == '[' || c == '{' ? 1 : c == ']' || c == '}' ? -1 : 0;
            at++;
            end = c == ' ' || c == '\t' || c == '\r' ? end : at;
        }
        return end;
    }

    private int afterQuotes(int from) {
        char quote = toml.charAt(from);
        String three = String.valueOf(quote).repeat(3);
        String closing = toml.startsWith(three, from) ? three : String.valueOf(quote);
        int at = from + closing.length();
        while (at < toml.length() && !toml.startsWith(closing, at)) {
            at += quote == '"' && toml.charAt(at) == '\\' ? 2 : 1;
        }
        return Math.min(toml.length(), at + closing.length());
    }

    private static String bare(String name) {
        return name.matches("[A-Za-z0-9_-]+") ? name : '"' + Toml.tomlEscape(name).toString() + '"';
    }
}
