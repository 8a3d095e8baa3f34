package tideless.scenario;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The files a scenario names: found beside it, read once, counted into its digest. */
final class NamedFiles {
    private record Mention(int line, byte[] bytes) {}

    private final Path scenario;
    private final List<Mention> mentions = new ArrayList<>();

    NamedFiles(Path scenario) {
        this.scenario = scenario;
    }

    /**
     * A named file that could be read.
     *
     * @param label how to name it to the user
     * @param text what it holds
     */
    record Named(String label, String text) {}

    /** The file a key names, or null when there is none; what is wrong has then been said. */
    Named open(Table table, String key, int mostBytes, String what) {
        String name = table.text(key);
        if (name == null) {
            return null;
        }
        Path path;
        try {
            path = scenario.resolveSibling(name);
        } catch (InvalidPathException e) {
            table.faultyValue(key, "the name of a file", "");
            return null;
        }
        TextFile file = TextFile.read(path, mostBytes);
        if (!file.unreadable().isEmpty()) {
            table.fault(
                    key,
                    Key.quoted(Source.shown(name)) + ", which " + reason(file.unreadable()),
                    "a file that can be read",
                    "The name counts from the folder of the scenario.");
            return null;
        }
        if (!file.fault().isEmpty()) {
            table.fault(
                    key,
                    Key.quoted(Source.shown(name)) + ", which holds " + file.fault(),
                    TextFile.allowed(what, mostBytes),
                    "");
            return null;
        }
        mentions.add(new Mention(table.line(key), file.bytes()));
        return new Named(path.toString(), file.text());
    }

    private static String reason(String unreadable) {
        return unreadable.startsWith("there") ? "does not exist" : unreadable;
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
