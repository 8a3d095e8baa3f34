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
import java.util.Collection;
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
 * process that is asked to end does so before the moves or after them; one that is killed outright
 * during the moves, some milliseconds, can leave part of a set, and the next one sweeps up.
 */
public final class OutputFolder {
    /** The set could not be written; the message names the path and says why in plain words. */
    public static class NotWritten extends IOException {
        private static final long serialVersionUID = 1L;

        NotWritten(String message, Throwable cause) {
            super(message, cause);
        }
    }

    /** The set would have taken the place of a file that it was made from. */
    public static final class WouldOverwrite extends NotWritten {
        private static final long serialVersionUID = 1L;

        WouldOverwrite(Path input) {
            super(
                    input
                            + ": the scenario reads this file, and a result of the same name would"
                            + " take its place\n    Maybe another folder: -o results",
                    null);
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
        return write(folder, contents, List.of());
    }

    /**
     * As {@link #write(Path, Map)}, and never over a file that was read.
     *
     * @param inputs the files that were read
     */
    public static List<Path> write(
            Path folder, Map<String, byte[]> contents, Collection<Path> inputs) throws NotWritten {
        for (String name : contents.keySet()) {
            for (Path input : inputs) {
                refuseInput(folder.resolve(name), input);
            }
        }
        return write(folder, contents, REAL);
    }

    private static void refuseInput(Path target, Path input) throws NotWritten {
        boolean same;
        try {
            same = Files.exists(target) && Files.exists(input) && Files.isSameFile(target, input);
        } catch (IOException e) {
            throw new NotWritten(target + ": " + reason(e), e);
        }
        if (same) {
            throw new WouldOverwrite(input);
        }
    }

    static List<Path> write(Path folder, Map<String, byte[]> contents, Disk disk)
            throws NotWritten {
        Deque<Path> made = new ArrayDeque<>();
        PartFolder part = null;
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
            PartFolder.sweep(folder);
            part = PartFolder.in(folder);
            for (Map.Entry<String, byte[]> file : contents.entrySet()) {
                Path target = folder.resolve(file.getKey());
                Path at = part.path().resolve(file.getKey());
                try {
                    part.unlessEnding(() -> disk.write(at, file.getValue()));
                } catch (IOException e) {
                    throw new NotWritten(target + ": " + reason(e), e);
                }
            }
            // As one: a process that is asked to end waits until all are in.
            List<Path> files = new ArrayList<>();
            Path from = part.path();
            part.unlessEnding(() -> files.addAll(moveIn(folder, from, contents.keySet(), disk)));
            whole = true;
            return files;
        } catch (NotWritten e) {
            throw e;
        } catch (IOException | ReadOnlyFileSystemException e) {
            throw new NotWritten(folder + ": " + reason(e), e);
        } finally {
            if (part != null) {
                part.remove();
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

    static void deleteIfEmpty(Path folder) {
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
