package tideless.scenario;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The keys of one kind of file, found by the table they stand in. */
final class KeyTable {
    private final Map<String, Key<?>> byPath = new LinkedHashMap<>();
    private final Map<String, Set<String>> childrenByTable = new LinkedHashMap<>();
    private final Set<String> lists = new HashSet<>();
    private final Map<String, String> guestByTable = new LinkedHashMap<>();

    /** Puts the keys of a group into a table, "" for the top of the file. */
    KeyTable at(String table, KeyGroup group) {
        for (Key<?> key : group.keys()) {
            put(join(table, key.path()), key);
        }
        return this;
    }

    private void put(String path, Key<?> key) {
        if (byPath.put(path, key) != null) {
            throw new IllegalStateException(path + " is stated twice");
        }
        String rest = path;
        while (!rest.isEmpty()) {
            int dot = rest.lastIndexOf('.');
            String table = dot < 0 ? "" : rest.substring(0, dot);
            childrenByTable
                    .computeIfAbsent(table, t -> new LinkedHashSet<>())
                    .add(rest.substring(dot + 1));
            rest = table;
        }
    }

    /** All keys by their full path, in the order they are explained. */
    Map<String, Key<?>> keys() {
        return Collections.unmodifiableMap(byPath);
    }

    /** The key of a path, or null. */
    Key<?> key(String path) {
        return byPath.get(path);
    }

    /** A table that may stand in another and follows rules of its own, as a crop's numbers. */
    KeyTable guest(String table, String name) {
        guestByTable.put(table, name);
        return this;
    }

    /** A name that several tables bear, {@code [[...]]}, each known by its number from 1. */
    KeyTable list(String table) {
        lists.add(table);
        return this;
    }

    /** Whether a path is such a {@link #list}. */
    boolean isList(String path) {
        return lists.contains(path);
    }

    /** Whether a name in a table is such a {@link #guest}. */
    boolean isGuest(String table, String name) {
        return name.equals(guestByTable.get(table));
    }

    /** What a user may write in a table. */
    List<String> allowedIn(String table) {
        List<String> allowed = new ArrayList<>(children(table));
        if (guestByTable.containsKey(table)) {
            allowed.add(guestByTable.get(table));
        }
        return allowed;
    }

    /** Whether a path is a table that holds keys. */
    boolean isTable(String path) {
        return childrenByTable.containsKey(path);
    }

    /** Whether the names in a table are the user's own. */
    boolean isNamed(String table) {
        return children(table).contains("*");
    }

    /** What may stand in a table. */
    Set<String> children(String table) {
        return childrenByTable.getOrDefault(table, Set.of());
    }

    /** Keys that stand directly in a table. */
    List<Key<?>> keysOf(String table) {
        List<Key<?>> found = new ArrayList<>();
        for (String child : children(table)) {
            Key<?> key = byPath.get(join(table, child));
            if (key != null) {
                found.add(key);
            }
        }
        return found;
    }

    static String join(String table, String child) {
        return table.isEmpty() ? child : table + "." + child;
    }
}
