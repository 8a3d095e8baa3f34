package tideless.scenario;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What a name of a file that is not there may have meant. */
public final class NearFile {
    private NearFile() {}

    /** The file beside it, of the same ending, whose name is nearest; empty where none is near. */
    public static Optional<Path> to(Path missing) {
        Path folder = missing.toAbsolutePath().getParent();
        if (folder == null || Files.exists(missing)) {
            return Optional.empty();
        }
        try (Stream<Path> beside = Files.list(folder)) {
            List<String> names =
                    beside.filter(Files::isRegularFile)
                            .map(file -> file.getFileName().toString())
                            .filter(name -> ending(name).equals(ending(missing.toString())))
                            .sorted()
                            .toList();
            String meant = Spelling.nearest(missing.getFileName().toString(), names);
            return meant.isEmpty() ? Optional.empty() : Optional.of(missing.resolveSibling(meant));
        } catch (IOException | UncheckedIOException e) {
            return Optional.empty(); // no folder, no suggestion
        }
    }

    private static String ending(String name) {
        return name.substring(Math.max(0, name.lastIndexOf('.')));
    }
}
