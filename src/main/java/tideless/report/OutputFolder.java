package tideless.report;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Puts a set of files into a folder whole or not at all.
 *
 * <p>Every file is first written in full beside its place; only when all are there are they moved
 * in, and files of the same name are kept until the last has arrived. When anything fails the
 * folder is as it was, and folders made on the way are gone again. Other files are not touched. A
 * process that is killed during the moves themselves, some milliseconds, can leave part of a set.
 */
public final class OutputFolder {
    /** The set could not be written; the message names the path and says why in plain words. */
    public static final class NotWritten extends IOException {
        private static final long serialVersionUID = 1L;

        NotWritten(String message, Throwable cause) {
            super(message, cause);
        }
    }

    /** What touches the disk, so that a test can make it fail. */
    interface Disk {
        void write(Path file, byte[] content) throws IOException;

        void move(Path from, Path to) throws IOException;
    }

    private static final Disk REAL =
            new Disk() {
                @Override
                public void write(Path file, byte[] content) throws IOException {
                    Files.write(file, content, StandardOpenOption.CREATE_NEW);
                }

                @Override
                public void move(Path from, Path to) throws IOException {
                    try {
                        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
                    } catch (AtomicMoveNotSupportedException e) {
                        Files.move(from, to);
                    }
                }
            };

    private OutputFolder() {}

    /**
     * Writes a set of files into a folder, which is made when it is not there.
     *
     * @param folder where
     * @param contents plain file names and their bytes, in the order to write them
     * @return the files, in that order
     */
    public static List<Path> write(Path folder, Map<String, byte[]> contents) throws NotWritten {
        return write(folder, contents, REAL);
    }

    static List<Path> write(Path folder, Map<String, byte[]> contents, Disk disk)
            throws NotWritten {
        Deque<Path> made = new ArrayDeque<>();
        Path part = null;
        boolean whole = false;
        try {
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                throw new NotWritten(folder + ": is a file, not a folder", null);
            }
            makeFolders(folder, made);
            for (String name : contents.keySet()) {
                Path target = folder.resolve(name);
                if (Files.isDirectory(target, LinkOption.NOFOLLOW_LINKS)) {
                    throw new NotWritten(
                            target + ": is a folder, and a file of that name is to be written",
                            null);
                }
            }
            part = freshFolder(folder);
            for (Map.Entry<String, byte[]> file : contents.entrySet()) {
                Path target = folder.resolve(file.getKey());
                try {
                    disk.write(part.resolve(file.getKey()), file.getValue());
                } catch (IOException e) {
                    throw new NotWritten(target + ": " + reason(e), e);
                }
            }
            List<Path> files = moveIn(folder, part, contents.keySet(), disk);
            whole = true;
            return files;
        } catch (NotWritten e) {
            throw e;
        } catch (IOException | ReadOnlyFileSystemException e) {
            throw new NotWritten(folder + ": " + reason(e), e);
        } finally {
            if (part != null) {
                deleteFolder(part);
            }
            while (!whole && !made.isEmpty()) {
                deleteIfEmpty(made.pop());
            }
        }
    }

    private static void makeFolders(Path folder, Deque<Path> made) throws IOException {
        Deque<Path> missing = new ArrayDeque<>();
        for (Path at = folder.toAbsolutePath().normalize();
                at != null && !Files.exists(at);
                at = at.getParent()) {
            missing.push(at);
        }
        for (Path at : missing) {
            try {
                Files.createDirectory(at);
            } catch (IOException e) {
                Path parent = at.getParent();
                String why =
                        parent != null && Files.exists(parent) && !Files.isDirectory(parent)
                                ? parent + " is a file, not a folder"
                                : reason(e);
                throw new NotWritten(at + ": " + why, e);
            }
            made.push(at);
        }
    }

    // Inside the folder itself: a sibling could lie on another disk, or where nobody may write.
    private static Path freshFolder(Path folder) throws IOException {
        for (int i = 1; ; i++) {
            Path part = folder.resolve(".tideless-part-" + i);
            if (!Files.exists(part, LinkOption.NOFOLLOW_LINKS)) {
                return Files.createDirectory(part);
            }
        }
    }

    private static List<Path> moveIn(Path folder, Path part, Iterable<String> names, Disk disk)
            throws NotWritten {
        List<Path> placed = new ArrayList<>();
        List<Path> aside = new ArrayList<>();
        Path target = folder;
        try {
            Path former = Files.createDirectory(part.resolve("former"));
            for (String name : names) {
                target = folder.resolve(name);
                if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
                    disk.move(target, former.resolve(name));
                    aside.add(former.resolve(name));
                }
                disk.move(part.resolve(name), target);
                placed.add(target);
            }
            return placed;
        } catch (IOException e) {
            for (Path file : placed) {
                try {
                    Files.deleteIfExists(file);
                } catch (IOException again) {
                    e.addSuppressed(again);
                }
            }
            for (Path file : aside) {
                try {
                    Files.move(file, folder.resolve(file.getFileName()));
                } catch (IOException again) {
                    e.addSuppressed(again);
                }
            }
            throw new NotWritten(target + ": " + reason(e), e);
        }
    }

    private static void deleteFolder(Path part) {
        try (var inside = Files.list(part)) {
            for (Path at : inside.toList()) {
                if (Files.isDirectory(at, LinkOption.NOFOLLOW_LINKS)) {
                    deleteFolder(at);
                } else {
                    Files.deleteIfExists(at);
                }
            }
        } catch (IOException e) {
            return; // What was to be said has been said; a leftover does no harm.
        }
        deleteIfEmpty(part);
    }

    private static void deleteIfEmpty(Path folder) {
        try {
            Files.deleteIfExists(folder);
        } catch (DirectoryNotEmptyException e) {
            return; // Somebody else put a file there meanwhile: theirs stays.
        } catch (IOException e) {
            return;
        }
    }

    /** Why the disk refused, in plain words. */
    static String reason(Exception e) {
        if (e instanceof AccessDeniedException) {
            return "no permission to write there";
        }
        if (e instanceof ReadOnlyFileSystemException) {
            return "the disk can only be read";
        }
        String said =
                e instanceof FileSystemException f && f.getReason() != null
                        ? f.getReason()
                        : String.valueOf(e.getMessage());
        String lower = said.toLowerCase(Locale.ROOT);
        if (lower.contains("no space left") || lower.contains("not enough space")) {
            return "the disk is full";
        }
        if (lower.contains("quota")) {
            return "the quota on this disk is used up";
        }
        if (lower.contains("read-only")) {
            return "the disk can only be read";
        }
        if (lower.contains("name too long")) {
            return "the name is too long for this disk";
        }
        if (lower.contains("not a directory")) {
            return "is not a folder";
        }
        return "could not be written (" + said + ")";
    }
}
