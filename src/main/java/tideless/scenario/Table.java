package tideless.scenario;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.tomlj.TomlArray;
import org.tomlj.TomlKeyValue;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;
import tideless.rig.Lamp;
import tideless.rig.Visits;

/**
 * A table of a TOML file and the keys that may stand in it. Each reading method gives a value or,
 * when there is none, says why in the {@link Source} and gives a value that the caller can see to
 * be none: NaN, null or an empty list.
 */
final class Table {
    private static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);
    private static final LocalDate LATEST = LocalDate.of(2200, 12, 31);
    private static final double DAY_S = 86400;

    private final Source source;
    private final KeyTable keys;
    private final List<String> path;
    private final String pattern;
    private final TomlTable toml; // null when the table does not stand in the file

    private Table(Source source, KeyTable keys, List<String> path, String pattern, TomlTable toml) {
        this.source = source;
        this.keys = keys;
        this.path = path;
        this.pattern = pattern;
        this.toml = toml;
    }

    /** The whole file; every key in it that is not allowed is said to be so here. */
    static Table root(Source source, KeyTable keys) {
        Table table = new Table(source, keys, List.of(), "", source.root());
        table.refuseUnknown();
        return table;
    }

    /** A table inside another file that follows rules of its own, as a crop file's. */
    Table underOtherRules(String key, KeyTable rules) {
        Object value = toml == null ? null : toml.get(List.of(key));
        if (!(value instanceof TomlTable inner)) {
            return null;
        }
        Table table = new Table(source, rules, with(key), "", inner);
        table.refuseUnknown();
        return table;
    }

    private void refuseUnknown() {
        if (toml == null) {
            return;
        }
        for (String name : toml.keySet()) {
            Object value = toml.get(List.of(name));
            String at = KeyTable.join(pattern, keys.isNamed(pattern) ? "*" : name);
            if (keys.isTable(at)) {
                if (value instanceof TomlTable inner) {
                    if (keys.isNamed(pattern) && !name.matches("[A-Za-z0-9_-]{1,40}")) {
                        fault(
                                name,
                                "the name " + quoted(name),
                                "a name of up to 40 letters, digits, - and _",
                                "");
                        source.excuse(full(name));
                    }
                    new Table(source, keys, with(name), at, inner).refuseUnknown();
                } else if (keys.key(at) == null) {
                    fault(name, shown(value), "a table [" + full(name) + "]", "");
                    source.excuse(full(name));
                }
            } else if (keys.key(at) == null && !name.equals(CropReader.OVERRIDE)) {
                refuse(name);
            } else if (name.equals(CropReader.OVERRIDE)) {
                if (!pattern.equals("tray.*")) {
                    refuse(name);
                } else if (!(value instanceof TomlTable)) {
                    fault(name, shown(value), "a table [" + full(name) + "]", "");
                }
            }
        }
    }

    private void refuse(String name) {
        List<String> allowed = new ArrayList<>(keys.children(pattern));
        if (pattern.equals("tray.*")) {
            allowed.add(CropReader.OVERRIDE);
        }
        List<String> free = new ArrayList<>(allowed);
        free.removeIf(child -> toml.contains(List.of(child)));
        String meant = KeyTable.nearest(name, free);
        if (meant.isEmpty()) {
            meant = KeyTable.nearest(name, allowed);
        }
        if (!meant.isEmpty()) {
            source.excuse(full(meant));
        }
        faultAt(
                source.position(with(name)),
                name,
                "an unknown key",
                String.join(", ", allowed),
                meant.isEmpty() ? "" : "Did you mean " + quoted(meant) + "?");
    }

    /** Says that a key makes no sense beside the value its discriminator has. */
    void refuseWhatDoesNotGoWith(String discriminator, String value) {
        for (Key key : keys.keysOf(pattern)) {
            if (key.discriminator().equals(discriminator)
                    && !key.onlyWith().contains(value)
                    && has(key.name())) {
                fault(
                        key.name(),
                        shown(raw(key.name())) + " beside " + discriminator + " = " + quoted(value),
                        "only with "
                                + discriminator
                                + " = "
                                + String.join(
                                        " or ", key.onlyWith().stream().map(Key::quoted).toList()),
                        "");
            }
        }
    }

    /** A table in this one; absent ones read as empty. */
    Table child(String name) {
        Object value = toml == null ? null : toml.get(List.of(name));
        return new Table(
                source,
                keys,
                with(name),
                KeyTable.join(pattern, name),
                value instanceof TomlTable inner ? inner : null);
    }

    /** The tables a user named in this one, in the order of the file. */
    List<Table> named() {
        List<Table> found = new ArrayList<>();
        if (toml != null) {
            for (String name : toml.keySet()) {
                if (toml.get(List.of(name)) instanceof TomlTable inner) {
                    found.add(
                            new Table(
                                    source, keys, with(name), KeyTable.join(pattern, "*"), inner));
                }
            }
        }
        return found;
    }

    /** The user's name for this table. */
    String name() {
        return path.get(path.size() - 1);
    }

    Source source() {
        return source;
    }

    KeyTable keys() {
        return keys;
    }

    boolean exists() {
        return toml != null;
    }

    boolean has(String key) {
        return toml != null && toml.contains(List.of(key));
    }

    /** Whether the user wrote the key, or most likely tried to. */
    boolean meant(String key) {
        return has(key) || source.isExcused(full(key));
    }

    Object raw(String key) {
        return toml == null ? null : toml.get(List.of(key));
    }

    TomlTable toml() {
        return toml;
    }

    int line(String key) {
        return source.line(with(key));
    }

    String full(String key) {
        return String.join(".", with(key).stream().map(Source::shown).toList());
    }

    private List<String> with(String key) {
        List<String> longer = new ArrayList<>(path);
        longer.add(key);
        return longer;
    }

    /** Says that something is wrong with a value, at its place, or at its table's when absent. */
    void fault(String key, String found, String allowed, String hint) {
        Object value = raw(key);
        TomlPosition at = source.position(with(key));
        if (value != null && !(value instanceof TomlTable)) {
            TomlKeyValue entry = toml.entry(List.of(key));
            if (entry != null && entry.value() != null && entry.value().position() != null) {
                at = entry.value().position();
            }
        }
        faultAt(at, key, found, allowed, hint);
    }

    private void faultAt(
            TomlPosition place, String key, String found, String allowed, String hint) {
        TomlPosition at = place;
        for (int up = path.size(); at == null && up > 0; up--) {
            at = source.position(path.subList(0, up));
        }
        source.problem(
                at == null ? 0 : at.line(),
                at == null ? 0 : at.column(),
                full(key),
                found,
                allowed,
                hint);
    }

    /** As {@link #fault}, with the value as the user wrote it. */
    void faultyValue(String key, String allowed, String hint) {
        fault(key, shown(raw(key)), allowed, hint);
    }

    void note(String key, String text) {
        source.note(new Note(source.file(), line(key), full(key), text));
    }

    /** The user's words for a value. */
    String words(String key) {
        return words(raw(key));
    }

    private static String words(Object value) {
        if (value instanceof String text) {
            return Source.shown(text);
        }
        if (value instanceof TomlArray array) {
            return Source.shown(array.toToml().strip().replaceAll("\\s+", " "));
        }
        return value instanceof TomlTable ? "a table" : Source.shown(String.valueOf(value));
    }

    private static String shown(Object value) {
        return value instanceof String ? quoted(words(value)) : words(value);
    }

    private static String quoted(String text) {
        return Key.quoted(Source.shown(text));
    }

    private Key key(String name) {
        Key key = keys.key(KeyTable.join(pattern, name));
        if (key == null) {
            throw new IllegalArgumentException(
                    "no key " + KeyTable.join(pattern, name) + " in the table of keys");
        }
        return key;
    }

    /**
     * The value to read for a key: the user's, else the default text, else null; says that a
     * required one is missing, and records what holds.
     */
    private Object valueOf(Key key) {
        Object value = raw(key.name());
        if (value != null) {
            source.setting(new Setting(full(key.name()), words(value), false, line(key.name())));
            return value;
        }
        if (key.need() == Key.Need.REQUIRED) {
            missing(key.name());
        } else if (key.need() == Key.Need.DEFAULT && !source.isExcused(full(key.name()))) {
            holds(key.name(), key.fallback());
            return key.fallback();
        }
        return null;
    }

    /** Says that a key is needed here. */
    void missing(String name) {
        if (!source.isExcused(full(name))) {
            fault(
                    name,
                    "nothing",
                    key(name).allowed(),
                    "Maybe add " + name + " = " + ScenarioReference.written(key(name)) + ".");
        }
    }

    /** Records what holds because the user said nothing. */
    void holds(String key, String words) {
        if (!has(key)) {
            source.setting(new Setting(full(key), words, true, 0));
        }
    }

    // One method a kind of value.

    String text(String name) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value == null) {
            return null;
        }
        if (value instanceof String text && !text.isBlank() && text.length() <= 500) {
            return text.strip();
        }
        faultyValue(name, key.allowed(), "");
        return null;
    }

    String choice(String name) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value == null) {
            return null;
        }
        if (value instanceof String text) {
            if (key.choices().contains(text)) {
                return text;
            }
            String meant = KeyTable.nearest(text, key.choices());
            faultyValue(
                    name,
                    key.allowed(),
                    meant.isEmpty() ? "" : "Did you mean " + quoted(meant) + "?");
            return null;
        }
        faultyValue(name, key.allowed(), "");
        return null;
    }

    Boolean flag(String name) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value instanceof Boolean flag) {
            return flag;
        }
        if (value instanceof String text && !has(name)) {
            return Boolean.valueOf(text);
        }
        if (value != null) {
            faultyValue(
                    name,
                    key.allowed(),
                    value instanceof String ? "Write it without quotation marks." : "");
        }
        return null;
    }

    /** In the records' unit; NaN when absent or faulty. */
    double quantity(String name) {
        return measure(name).value();
    }

    /** As {@link #quantity}; when absent, a value worked out and the words for it. */
    double quantityOr(String name, double workedOut, String words) {
        if (has(name)) {
            return quantity(name);
        }
        if (source.isExcused(full(name))) {
            return Double.NaN;
        }
        if (!Double.isNaN(workedOut)) {
            holds(name, words);
        }
        return workedOut;
    }

    /** With the table its unit stands in. */
    Measure.Read measure(String name) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value == null) {
            return Measure.Read.fault("");
        }
        return measure(name, key, value);
    }

    private Measure.Read measure(String name, Key key, Object value) {
        Measure.Read read = read(key, value);
        if (read.good() && key.inBounds(read)) {
            return read;
        }
        String hint = read.hint();
        if (!read.good() && hint.isEmpty() && isBareNumber(value) && !key.tables().isEmpty()) {
            hint = "Maybe " + quoted(words(value) + " " + key.tables().get(0).shown().get(0)) + ".";
        }
        faultyValue(name, key.allowed(), hint);
        return Measure.Read.fault("");
    }

    /** As {@link #quantity}, without a word about it: for comparing beside a fault elsewhere. */
    double quietly(String name) {
        Object value = raw(name);
        Key key = key(name);
        Measure.Read read = value == null ? Measure.Read.fault("") : read(key, value);
        return read.good() && key.inBounds(read) ? read.value() : Double.NaN;
    }

    /** A value of the user's own file or a crop file, read by a key's rules. */
    static Measure.Read read(Key key, Object value) {
        if (value instanceof String text) {
            return key.read(text);
        }
        if (value instanceof Long || value instanceof Double) {
            double number = ((Number) value).doubleValue();
            boolean fit = key.plainToo() && Math.abs(number) <= 1e30;
            return fit ? new Measure.Read(number, number, null, "") : Measure.Read.fault("");
        }
        return Measure.Read.fault("");
    }

    private static boolean isBareNumber(Object value) {
        return value instanceof Long
                || (value instanceof Double number && !number.isNaN() && !number.isInfinite())
                || (value instanceof String text && text.strip().matches("[+-]?\\d+(\\.\\d+)?"));
    }

    /** At least 0; -1 when absent or faulty. */
    int count(String name) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value == null) {
            return -1;
        }
        if (value instanceof Long number && number >= key.lowValue() && number <= key.highValue()) {
            return number.intValue();
        }
        faultyValue(
                name,
                key.allowed(),
                value instanceof String ? "Write it without quotation marks." : "");
        return -1;
    }

    LocalDate date(String name) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value == null) {
            return null;
        }
        LocalDate date = dateOf(value);
        if (date == null) {
            faultyValue(name, key.allowed(), "");
        }
        return date;
    }

    private static LocalDate dateOf(Object value) {
        LocalDate date = null;
        if (value instanceof LocalDate toml) {
            date = toml;
        } else if (value instanceof String text && text.length() == 10) {
            try {
                date = LocalDate.parse(text);
            } catch (DateTimeException e) {
                return null;
            }
        }
        return date == null || date.isBefore(EARLIEST) || date.isAfter(LATEST) ? null : date;
    }

    /** Seconds after midnight, 24:00 as 0; NaN when absent or faulty. */
    double clock(String name) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value == null) {
            return Double.NaN;
        }
        double atS = clockOf(value);
        if (Double.isNaN(atS)) {
            faultyValue(name, key.allowed(), "");
        }
        return atS;
    }

    /** Seconds after midnight, 24:00 as 0; NaN for anything else. */
    private static double clockOf(Object value) {
        if (value instanceof LocalTime time) {
            return time.toSecondOfDay();
        }
        if (value instanceof String text && text.matches("([01]?\\d|2[0-3]):[0-5]\\d|24:00")) {
            int colon = text.indexOf(':');
            int minutes =
                    60 * Integer.parseInt(text.substring(0, colon))
                            + Integer.parseInt(text.substring(colon + 1));
            return (minutes * 60) % DAY_S;
        }
        return Double.NaN;
    }

    double clockOr(String name, double workedOutS, String words) {
        if (has(name)) {
            return clock(name);
        }
        if (source.isExcused(full(name))) {
            return Double.NaN;
        }
        holds(name, words);
        return workedOutS;
    }

    /** Null when faulty. */
    Set<DayOfWeek> weekdays(String name) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value == null) {
            return null;
        }
        Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
        if (value instanceof String text && text.equals("daily")) {
            return EnumSet.allOf(DayOfWeek.class);
        }
        if (value instanceof TomlArray array && !array.isEmpty()) {
            for (Object one : array.toList()) {
                DayOfWeek day = one instanceof String text ? weekday(text) : null;
                if (day == null) {
                    fault(name, shown(one), key.allowed(), "");
                    return null;
                }
                days.add(day);
            }
            return days;
        }
        faultyValue(name, key.allowed(), "");
        return null;
    }

    private static DayOfWeek weekday(String text) {
        String lower = text.toLowerCase(java.util.Locale.ROOT);
        for (DayOfWeek day : DayOfWeek.values()) {
            String whole = day.name().toLowerCase(java.util.Locale.ROOT);
            if (lower.equals(whole) || lower.equals(whole.substring(0, 3))) {
                return day;
            }
        }
        return null;
    }

    /** In rising order; empty when absent, null when faulty. */
    List<LocalDate> dates(String name) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value == null) {
            return List.of();
        }
        List<LocalDate> dates = new ArrayList<>();
        if (value instanceof TomlArray array) {
            for (Object one : array.toList()) {
                LocalDate date = dateOf(one);
                if (date == null) {
                    fault(name, shown(one), key.allowed(), "");
                    return null;
                }
                dates.add(date);
            }
            return dates.stream().distinct().sorted().toList();
        }
        faultyValue(name, key.allowed(), "");
        return null;
    }

    /** Empty when absent, null when faulty. */
    List<Visits.Absence> spans(String name) {
        List<Span> spans =
                entries(
                        name,
                        span -> {
                            LocalDate from = dateOf(span.get(List.of("from")));
                            LocalDate to = dateOf(span.get(List.of("to")));
                            return from == null || to == null ? null : new Span(from, to);
                        });
        if (spans == null) {
            return null;
        }
        List<Visits.Absence> absences = new ArrayList<>();
        for (Span span : spans) {
            if (span.to().isBefore(span.from())) {
                fault(
                        name,
                        "a span from " + span.from() + " to " + span.to(),
                        "an end on or after its begin",
                        "");
                return null;
            }
            absences.add(new Visits.Absence(span.from(), span.to()));
        }
        return absences;
    }

    private record Span(LocalDate from, LocalDate to) {}

    /** Shares by the time of day, rising; empty when absent, null when faulty. */
    List<Lamp.Level> levels(String name) {
        List<Lamp.Level> levels =
                entries(
                        name,
                        level -> {
                            double fromS = clockOf(level.get(List.of("from")));
                            double frac = shareOf(level.get(List.of("share")));
                            return Double.isNaN(fromS + frac) ? null : new Lamp.Level(fromS, frac);
                        });
        return rising(name, levels, Lamp.Level::fromS);
    }

    /** Shares by date, rising, as days since a start; empty when absent, null when faulty. */
    List<Lamp.Strength> strengths(String name, LocalDate start) {
        List<Lamp.Strength> strengths =
                entries(
                        name,
                        strength -> {
                            LocalDate from = dateOf(strength.get(List.of("from")));
                            double frac = shareOf(strength.get(List.of("share")));
                            return from == null || Double.isNaN(frac)
                                    ? null
                                    : new Lamp.Strength(
                                            (int) ChronoUnit.DAYS.between(start, from), frac);
                        });
        return rising(name, strengths, Lamp.Strength::day);
    }

    private <T> List<T> rising(String name, List<T> entries, ToDoubleFunction<T> at) {
        for (int i = 1; entries != null && i < entries.size(); i++) {
            if (!(at.applyAsDouble(entries.get(i)) > at.applyAsDouble(entries.get(i - 1)))) {
                faultyValue(name, "entries that rise in time", "");
                return null;
            }
        }
        return entries;
    }

    private static double shareOf(Object value) {
        Measure.Read read = read(Key.share(""), value);
        return read.good() && read.value() >= 0 && read.value() <= 1 ? read.value() : Double.NaN;
    }

    /** A list of tables of two keys each; empty when absent, null when faulty. */
    private <T> List<T> entries(String name, Function<TomlTable, T> reader) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value == null) {
            return List.of();
        }
        if (!(value instanceof TomlArray array)) {
            faultyValue(name, key.allowed(), "");
            return null;
        }
        List<T> entries = new ArrayList<>();
        for (Object one : array.toList()) {
            T entry =
                    one instanceof TomlTable table && table.size() == 2
                            ? reader.apply(table)
                            : null;
            if (entry == null) {
                String words =
                        one instanceof TomlTable table ? table.toMap().toString() : shown(one);
                fault(name, Source.shown(words), key.allowed(), "");
                return null;
            }
            entries.add(entry);
        }
        return entries;
    }

    /** Null when absent or faulty. */
    List<String> names(String name) {
        Key key = key(name);
        Object value = valueOf(key);
        if (value == null) {
            return null;
        }
        if (value instanceof TomlArray array) {
            List<String> names = new ArrayList<>();
            for (Object one : array.toList()) {
                if (!(one instanceof String text) || !key.choices().contains(text)) {
                    String meant =
                            one instanceof String text ? KeyTable.nearest(text, key.choices()) : "";
                    fault(
                            name,
                            shown(one),
                            key.allowed(),
                            meant.isEmpty() ? "" : "Did you mean " + quoted(meant) + "?");
                    return null;
                }
                names.add(text);
            }
            return names;
        }
        faultyValue(name, key.allowed(), "");
        return null;
    }
}
