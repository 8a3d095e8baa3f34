package tideless.scenario;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** A scenario on a disk, and files beside it. */
final class FilesOnDisk implements ScenarioFiles {
    private final Path scenario;

    FilesOnDisk(Path scenario) {
        this.scenario = scenario;
    }

    private Path path(String name) {
        return name.isEmpty() ? scenario : scenario.resolveSibling(name);
    }

    @Override
    public String label(String name) {
        return path(name).toString();
    }

    @Override
    public Content read(String name, int mostBytes) {
        Path path;
        try {
            path = path(name);
        } catch (InvalidPathException e) {
            return Content.unreadable("is no name of a file on this system");
        }
        if (Files.isDirectory(path)) {
            return Content.unreadable("is a directory, not a file");
        }
        if (Files.exists(path) && !Files.isRegularFile(path)) {
            return Content.unreadable("is a device or a pipe, not a file"); // it may never end
        }
        try (InputStream in = Files.newInputStream(path)) {
            return Content.of(in.readNBytes(mostBytes));
        } catch (NoSuchFileException e) {
            return Content.unreadable("there is no such file");
        } catch (AccessDeniedException e) {
            return Content.unreadable("may not be read");
        } catch (IOException | SecurityException e) {
            return Content.unreadable("cannot be read");
        }
    }
}
