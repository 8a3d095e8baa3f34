package tideless.scenario;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The files a scenario names: found beside it, read once, counted into its digest. */
final class NamedFiles {
    private record Mention(int line, String label, byte[] bytes) {}

    private final ScenarioFiles files;
    private final List<Mention> mentions = new ArrayList<>();

    private final MadeOnce once;

    /**
     * @param once what readings of the same files share
     */
    NamedFiles(ScenarioFiles files, MadeOnce once) {
        this.files = files;
        this.once = once;
    }

    /** What readings of the same files share. */
    MadeOnce once() {
        return once;
    }

    private record Opened(String name, int mostBytes) {}

    /**
     * A named file that could be read.
     *
     * @param label how to name it to the user
     * @param text what it holds
     */
    record Named(String label, String text) {}

    /** The file a key names; what is wrong has then been said. */
    Read<Named> open(Table table, Key<String> key, int mostBytes, String what) {
        return table.get(key).then(name -> open(table, key, name, mostBytes, what));
    }

    private TextFile file(String name, int mostBytes) {
        return once.get(
                new Opened(name, mostBytes),
                () -> TextFile.of(files.read(name, mostBytes + 1), mostBytes));
    }

    private Read<Named> open(
            Table table, Key<String> key, String name, int mostBytes, String what) {
        TextFile file = file(name, mostBytes);
        if (!file.unreadable().isEmpty()) {
            table.fault(
                    key,
                    Key.quoted(TomlFile.shown(name)) + ", which " + reason(file.unreadable()),
                    "a file that can be read",
                    "The name counts from the folder of the scenario.");
            return Read.faulty();
        }
        if (!file.fault().isEmpty()) {
            table.fault(
                    key,
                    Key.quoted(TomlFile.shown(name)) + ", which holds " + file.fault(),
                    TextFile.allowed(what, mostBytes),
                    file.hint());
            return Read.faulty();
        }
        mentions.add(new Mention(table.line(key), files.label(name), file.bytes()));
        return Read.of(new Named(files.label(name), file.text()));
    }

    /**
     * The file a key names, or another in its place: nothing is wrong with the one that is not
     * used, but it is still the user's and never written over.
     */
    Read<Named> openOr(
            Optional<ScenarioFiles> other,
            Table table,
            Key<String> key,
            String what,
            TomlFile told) {
        if (other.isEmpty()) {
            return open(table, key, TextFile.MEBIBYTE, what);
        }
        Read<String> own = table.get(key);
        if (own.isSound() && !own.isAbsent()) {
            String name = own.value();
            if (file(name, TextFile.MEBIBYTE).unreadable().isEmpty()) {
                mentions.add(new Mention(table.line(key), files.label(name), new byte[0]));
            }
        }
        return beside(other.get(), TextFile.MEBIBYTE, what, told);
    }

    /** A file that stands beside the scenario's own and is not named by it. */
    private Read<Named> beside(ScenarioFiles beside, int mostBytes, String what, TomlFile told) {
        TextFile file = TextFile.of(beside.read("", mostBytes + 1), mostBytes);
        String label = beside.label("");
        if (!file.fault().isEmpty()) {
            told.add(
                    new Problem(
                            label,
                            0,
                            0,
                            "",
                            file.fault(),
                            TextFile.allowed(what, mostBytes),
                            file.hint()));
            return Read.faulty();
        }
        mentions.add(new Mention(Integer.MAX_VALUE, label, file.bytes()));
        return Read.of(new Named(label, file.text()));
    }

    private static String reason(String unreadable) {
        return unreadable.startsWith("there") ? "does not exist" : unreadable;
    }

    /** The scenario and every file that was read for it. */
    List<String> labels(String scenario) {
        List<String> labels = new ArrayList<>();
        labels.add(scenario);
        mentions.forEach(mention -> labels.add(mention.label()));
        return labels.stream().distinct().toList();
    }

    /** SHA-256 over the scenario's bytes, then those of each named file in order of mention. */
    String digest(byte[] scenarioBytes) {
        Sha256 sha = new Sha256();
        sha.update(scenarioBytes);
        mentions.stream()
                .sorted(Comparator.comparingInt(Mention::line)) // stable: ties in order of reading
                .forEach(mention -> sha.update(mention.bytes()));
        return sha.hex();
    }
}
