package tideless.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/** A file that was not there before: whole or not at all, and never in the place of another. */
public final class NewFile {
    private NewFile() {}

    /**
     * Writes it.
     *
     * @return why it was not written, in plain words; empty when it was
     */
    public static Optional<String> write(Path path, String text) {
        try {
            Files.write(path, text.getBytes(StandardCharsets.UTF_8), StandardOpenOption.CREATE_NEW);
            return Optional.empty();
        } catch (FileAlreadyExistsException e) {
            return Optional.of(path + ": is there already, and nothing is written over it");
        } catch (IOException | ReadOnlyFileSystemException e) {
            removePart(path, text);
            return Optional.of(path + ": " + OutputFolder.reason(e));
        }
    }

    /** What a full disk left of it. */
    private static void removePart(Path path, String text) {
        try {
            if (Files.isRegularFile(path) && text.startsWith(Files.readString(path))) {
                Files.delete(path);
            }
        } catch (IOException e) {
            return; // It cannot be helped: the reason told is the first one.
        }
    }

    /** Whether something of that name is there, a broken link included. */
    public static boolean exists(Path path) {
        return Files.exists(path, LinkOption.NOFOLLOW_LINKS);
    }
}
