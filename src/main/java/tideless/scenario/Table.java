package tideless.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.tomlj.TomlArray;
import org.tomlj.TomlKeyValue;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * A table of a TOML file and the keys that may stand in it. What is wrong is told to the {@link
 * TomlFile} once, however often a key is asked for.
 */
final class Table {
    private final TomlFile file;
    private final KeyTable keys;
    private final List<String> path;
    private final String at; // the path as it is told
    private final String pattern;
    private final TomlTable toml; // null when the table does not stand in the file
    private final boolean guest;
    private final TomlPosition begins; // of one among several of its name, else null

    private Table(
            TomlFile file,
            KeyTable keys,
            List<String> path,
            String pattern,
            TomlTable toml,
            boolean guest,
            TomlPosition begins) {
        this.file = file;
        this.keys = keys;
        this.path = path;
        this.at = String.join(".", path.stream().map(TomlFile::shown).toList());
        this.pattern = pattern;
        this.toml = toml;
        this.guest = guest;
        this.begins = begins;
    }

    /** The whole file; every key in it that is not allowed is said to be so here. */
    static Table root(TomlFile file, KeyTable keys) {
        Table table = new Table(file, keys, List.of(), "", file.root(), false, null);
        UnknownKeys.refuse(table);
        return table;
    }

    /** A table inside another file that follows rules of its own, as a crop file's. */
    Read<Table> underOtherRules(String key, KeyTable rules) {
        if (!(raw(key) instanceof TomlTable inner)) {
            return Read.absent();
        }
        Table table = new Table(file, rules, with(key), "", inner, true, begins);
        UnknownKeys.refuse(table);
        return Read.of(table);
    }

    /** A table in this one; absent ones read as empty. */
    Table child(String name) {
        return new Table(
                file,
                keys,
                with(name),
                KeyTable.join(pattern, keys.isNamed(pattern) ? "*" : name),
                raw(name) instanceof TomlTable inner ? inner : null,
                guest,
                begins);
    }

    /** Whether several tables of that name, {@code [[...]]}, stand in it, or none of them. */
    boolean isListed(String name) {
        return keys.isList(KeyTable.join(pattern, name))
                && raw(name) instanceof TomlArray array
                && array.toList().stream().allMatch(one -> one instanceof TomlTable);
    }

    /** Whether one table with keys of its own stands where several of its name may. */
    boolean isOneForSeveral(String name) {
        Table one = child(name);
        return keys.isList(KeyTable.join(pattern, name))
                && one.written().stream().anyMatch(key -> !(one.raw(key) instanceof TomlTable));
    }

    /**
     * The tables of a name that several may bear, in the order of the file: {@code [[...]]}, or
     * tables in one of that name.
     */
    List<Table> listed(String name) {
        if (!isListed(name)) {
            return isOneForSeveral(name) ? List.of() : child(name).named();
        }
        TomlArray array = (TomlArray) raw(name);
        Table all = child(name);
        List<Table> found = new ArrayList<>();
        for (int i = 0; i < array.size(); i++) {
            found.add(
                    new Table(
                            file,
                            keys,
                            all.with(String.valueOf(i + 1)),
                            KeyTable.join(all.pattern, "*"),
                            array.getTable(i),
                            guest,
                            file.inFile(array.inputPositionOf(i))));
        }
        return found;
    }

    /** The tables a user named in this one, in the order of the file. */
    List<Table> named() {
        List<Table> found = new ArrayList<>();
        if (toml != null) {
            for (String name : toml.keySet()) {
                if (raw(name) instanceof TomlTable) {
                    found.add(child(name));
                }
            }
        }
        return found;
    }

    /** Whether it stands inside another file, as a tray's own numbers of a crop. */
    boolean isUnderOtherRules() {
        return guest;
    }

    /** The user's name for this table. */
    String name() {
        return path.get(path.size() - 1);
    }

    TomlFile file() {
        return file;
    }

    KeyTable keys() {
        return keys;
    }

    /** Its path among the keys, with {@code *} for a name of the user's. */
    String pattern() {
        return pattern;
    }

    boolean exists() {
        return toml != null;
    }

    /** Names that stand in it, in the order of the file. */
    List<String> written() {
        return toml == null ? List.of() : List.copyOf(toml.keySet());
    }

    // Values.

    /**
     * The value of a key: the user's, else its default. A fault, or a needed key that is missing,
     * has then been told.
     */
    @SuppressWarnings("unchecked") // remembered under its own path, where only this key stands
    <T> Read<T> get(Key<T> key) {
        if (keys.key(KeyTable.join(pattern, key.name())) != key) {
            throw new IllegalArgumentException("no key " + key.path() + " in table " + pattern);
        }
        String at = full(key.name());
        Read<T> read = (Read<T>) file.readBefore(at);
        if (read == null) {
            read = readFirst(key);
            file.remember(at, read);
        }
        return read;
    }

    private <T> Read<T> readFirst(Key<T> key) {
        Object value = raw(key.name());
        if (value != null) {
            String at = full(key.name());
            Read<T> read = key.read(value);
            String words = read.isSound() ? Words.whole(value) : Words.of(value);
            file.holds(new EffectiveValue(at, words, false, line(key)));
            if (read instanceof Read.Faulty<T> fault) {
                fault(
                        key.name(),
                        fault.found().isEmpty() ? Words.shown(value) : fault.found(),
                        fault.allowed().isEmpty() ? key.allowed() : fault.allowed(),
                        fault.hint());
            }
            return read;
        }
        if (file.isExcused(full(key.name()))) {
            return Read.faulty();
        }
        return switch (key.need()) {
            case REQUIRED -> missing(key);
            case DEFAULT -> {
                holds(key, key.fallback());
                yield key.kind().readDefault(key, key.fallback());
            }
            case WORKED_OUT, OPTIONAL -> Read.absent();
        };
    }

    /** As {@link #get}; where nothing is stated, what the caller worked out, in its words. */
    <T> Read<T> getOr(Key<T> key, Read<T> workedOut, Function<T, String> words) {
        Read<T> read = get(key);
        if (!read.isAbsent()) {
            return read;
        }
        if (workedOut.isSound()) {
            holds(key, words.apply(workedOut.value()));
        }
        return workedOut;
    }

    /** The value of a key of a table that {@link #isSound()}. */
    <T> T value(Key<T> key) {
        return get(key).value();
    }

    /**
     * Reads every key of this table itself, save those that do not go with a discriminator that
     * {@link #narrow} chose, and those left out beside nothing; whether none is faulty.
     */
    boolean isSound() {
        boolean sound = true;
        for (Key<?> key : keys.keysOf(pattern)) {
            if (goes(key)) {
                sound &= !get(key).isFaulty();
            }
        }
        return sound;
    }

    private boolean goes(Key<?> key) {
        if (!key.beside().isEmpty() && !has(key) && !meant(key.beside())) {
            return false;
        }
        if (key.discriminator().isEmpty()) {
            return true;
        }
        String chosen = file.chosen(full(key.discriminator()));
        return chosen != null && key.onlyWith().contains(chosen);
    }

    /** Chooses what a discriminator holds, and refuses what makes no sense beside it. */
    void narrow(Key<?> discriminator, String value) {
        file.choose(full(discriminator.name()), value);
        for (Key<?> key : keys.keysOf(pattern)) {
            if (key.discriminator().equals(discriminator.name()) && !goes(key) && has(key)) {
                List<String> values = key.onlyWith().stream().map(Key::quoted).toList();
                fault(
                        key.name(),
                        "%s beside %s = %s"
                                .formatted(
                                        Words.shown(raw(key.name())),
                                        discriminator.name(),
                                        Key.quoted(TomlFile.shown(value))),
                        "only with " + discriminator.name() + " = " + String.join(" or ", values),
                        "");
            }
        }
    }

    boolean has(Key<?> key) {
        return has(key.name());
    }

    boolean has(String name) {
        return raw(name) != null;
    }

    /** Whether the user wrote the key, or most likely tried to. */
    boolean meant(Key<?> key) {
        return meant(key.name());
    }

    boolean meant(String name) {
        return has(name) || file.isExcused(full(name));
    }

    Object raw(String name) {
        return toml == null ? null : toml.get(List.of(name));
    }

    // Places and words.

    private TomlPosition position(String name) {
        return toml == null ? null : file.inFile(toml.inputPositionOf(List.of(name)));
    }

    int line(Key<?> key) {
        return line(key.name());
    }

    int line(String name) {
        TomlPosition at = position(name);
        return at == null ? 0 : at.line();
    }

    String full(String name) {
        return path.isEmpty() ? TomlFile.shown(name) : at + "." + TomlFile.shown(name);
    }

    private List<String> with(String name) {
        List<String> longer = new ArrayList<>(path);
        longer.add(name);
        return longer;
    }

    /** The user's words for a value. */
    String words(Key<?> key) {
        return words(key.name());
    }

    String words(String name) {
        return Words.of(raw(name));
    }

    // What is said of it.

    void fault(Key<?> key, String found, String allowed, String hint) {
        fault(key.name(), found, allowed, hint);
    }

    /** Says that something is wrong with a value, at its place, or at its table's when absent. */
    void fault(String name, String found, String allowed, String hint) {
        Object value = raw(name);
        TomlPosition at = position(name);
        if (value != null && !(value instanceof TomlTable)) {
            TomlKeyValue entry = toml.entry(List.of(name));
            if (entry != null && entry.value() != null && entry.value().position() != null) {
                at = file.inFile(entry.value().position());
            }
        }
        faultAt(at, name, found, allowed, hint);
    }

    /** As {@link #fault}, at the name instead of the value. */
    void faultyName(String name, String found, String allowed, String hint) {
        faultAt(position(name), name, found, allowed, hint);
    }

    private void faultAt(
            TomlPosition place, String name, String found, String allowed, String hint) {
        TomlPosition at = place == null ? begins : place;
        for (int up = path.size(); at == null && up > 0; up--) {
            at = file.position(path.subList(0, up));
        }
        file.problem(
                at == null ? 0 : at.line(),
                at == null ? 0 : at.column(),
                full(name),
                found,
                allowed,
                hint);
    }

    /** As {@link #fault}, with the value as the user wrote it. */
    void faultyValue(Key<?> key, String allowed, String hint) {
        faultyValue(key.name(), allowed, hint);
    }

    void faultyValue(String name, String allowed, String hint) {
        fault(name, Words.shown(raw(name)), allowed, hint);
    }

    /** Says that a key is needed here. */
    <T> Read<T> missing(Key<?> key) {
        return missing(key, "Maybe add %s = %s.".formatted(key.name(), key.written()));
    }

    /** As {@link #missing}, with advice that fits the rest of the file. */
    <T> Read<T> missing(Key<?> key, String hint) {
        if (!file.isExcused(full(key.name()))) {
            fault(key, "nothing", key.allowed(), hint);
        }
        return Read.faulty();
    }

    /** As {@link #get} of a key that is needed, with advice that fits the rest of the file. */
    <T> Read<T> need(Key<T> key, String hint) {
        if (!meant(key)) {
            file.remember(full(key.name()), missing(key, hint));
        }
        return get(key);
    }

    void note(Key<?> key, String text) {
        file.note(new Note(file.name(), line(key), full(key.name()), text));
    }

    /** Notes what the crop suffers by. */
    void graveNote(Key<?> key, String text) {
        file.note(new Note(file.name(), line(key), full(key.name()), text, true));
    }

    /** Records what holds because the user said nothing. */
    void holds(Key<?> key, String words) {
        if (!has(key)) {
            file.holds(new EffectiveValue(full(key.name()), words, true, 0));
        }
    }
}
