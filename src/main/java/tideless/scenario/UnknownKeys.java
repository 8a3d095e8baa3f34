package tideless.scenario;

import java.util.ArrayList;
import java.util.List;
import org.tomlj.TomlTable;

/** Refuses what no key explains, and suggests what may have been meant. */
final class UnknownKeys {
    private final Table table;
    private final KeyTable keys;
    private final String pattern;

    private UnknownKeys(Table table) {
        this.table = table;
        keys = table.keys();
        pattern = table.pattern();
    }

    /** Looks through a table and the tables in it. */
    static void refuse(Table table) {
        UnknownKeys looking = new UnknownKeys(table);
        table.written().forEach(looking::look);
    }

    private void look(String name) {
        if (name.indexOf('.') >= 0 && !keys.isNamed(pattern)) {
            table.faultyName(
                    name,
                    "one name with a dot, in quotes",
                    "names joined by dots, without quotes",
                    "Maybe write " + name + " without quotes.");
            return;
        }
        boolean isTable = table.raw(name) instanceof TomlTable;
        String at = KeyTable.join(pattern, keys.isNamed(pattern) ? "*" : name);
        if (keys.isTable(at)) {
            if (isTable && table.isOneForSeveral(name)) {
                table.faultyName(
                        name,
                        "one table [" + table.full(name) + "]",
                        "tables [[" + table.full(name) + "]]",
                        "Maybe write two brackets on either side: there may be several.");
            } else if (isTable) {
                checkName(name);
                refuse(table.child(name));
            } else if (table.isListed(name)) {
                table.listed(name).forEach(UnknownKeys::refuse);
            } else if (keys.key(at) == null) {
                wantTable(name);
                table.file().excuse(table.full(name));
            }
        } else if (keys.isGuest(pattern, name)) {
            if (!isTable) {
                wantTable(name);
            }
        } else if (keys.key(at) == null) {
            refuse(name);
        }
    }

    private void wantTable(String name) {
        boolean several = keys.isList(KeyTable.join(pattern, name));
        table.faultyValue(
                name,
                several
                        ? "tables [[" + table.full(name) + "]]"
                        : "a table [" + table.full(name) + "]",
                "");
    }

    private void checkName(String name) {
        if (keys.isNamed(pattern) && !name.matches("[A-Za-z0-9_-]{1,40}")) {
            table.fault(
                    name,
                    "the name " + Key.quoted(TomlFile.shown(name)),
                    "a name of up to 40 of the letters a-z and A-Z, digits, - and _",
                    "");
            table.file().excuse(table.full(name));
        }
    }

    private void refuse(String name) {
        List<String> allowed = keys.allowedIn(pattern);
        List<String> free = new ArrayList<>(allowed);
        free.removeIf(table::has);
        String meant = Spelling.nearest(name, free);
        if (meant.isEmpty()) {
            meant = Spelling.nearest(name, allowed);
        }
        if (!meant.isEmpty()) {
            table.file().excuse(table.full(meant));
        }
        table.faultyName(
                name,
                meant.isEmpty()
                        ? "an unknown key"
                        : "an unknown key (did you mean " + Key.quoted(meant) + "?)",
                String.join(", ", allowed),
                meant.isEmpty() ? below(name, allowed) : "");
    }

    // What is a key of a table that may stand here, and was written without it.
    private String below(String name, List<String> allowed) {
        if (allowed.contains("length") && name.matches("end|end_date|until|stop|finish|last_day")) {
            return "Maybe length = \"49 days\": a run is told by its first day and how long it lasts.";
        }
        for (String child : allowed) {
            if (keys.key(KeyTable.join(KeyTable.join(pattern, child), name)) != null) {
                return "Maybe " + child + "." + name + ".";
            }
        }
        return "";
    }
}
