package tideless.report;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.locks.ReentrantLock;

/**
 * A folder inside an output folder in which a set of files is made ready: inside, for a sibling
 * could lie on another disk, or where nobody may write. A lock says that its process lives; what a
 * process left that was killed is swept by the next.
 */
final class PartFolder {
    /** Work on the disk. */
    interface Work {
        void run() throws IOException;
    }

    static final String NAME = ".tideless-part-";
    static final String FORMER = "former";
    static final String LOCK = "in-use";

    private final Path path;
    private final ReentrantLock busy = new ReentrantLock();
    private final Thread whenEnding = new Thread(this::end, "tideless-output");
    private FileChannel channel;
    private boolean ending;

    private PartFolder(Path path) {
        this.path = path;
    }

    /** A fresh one in a folder. */
    static PartFolder in(Path folder) throws IOException {
        int i = 1;
        while (Files.exists(folder.resolve(NAME + i), LinkOption.NOFOLLOW_LINKS)) {
            i++;
        }
        PartFolder part = new PartFolder(folder.resolve(NAME + i));
        try {
            Runtime.getRuntime()
                    .addShutdownHook(part.whenEnding); // before there is aught to remove
        } catch (IllegalStateException e) {
            part.ending = false; // ending already: whoever writes now is waited for, or is cut off
        }
        try {
            part.unlessEnding(part::make);
        } catch (IOException e) {
            part.remove();
            throw e;
        }
        return part;
    }

    private void make() throws IOException {
        Files.createDirectory(path);
        channel =
                FileChannel.open(
                        path.resolve(LOCK),
                        StandardOpenOption.CREATE_NEW,
                        StandardOpenOption.WRITE);
        lock(channel); // where the disk has no locks nothing is ever swept
    }

    private static FileLock lock(FileChannel channel) {
        try {
            return channel.tryLock();
        } catch (IOException | OverlappingFileLockException e) {
            return null; // somebody else's, or no locks here
        }
    }

    Path path() {
        return path;
    }

    /** Does work as a whole: a process that is asked to end waits for it, or does not begin it. */
    void unlessEnding(Work work) throws IOException {
        busy.lock();
        try {
            if (ending) {
                throw new IOException("the program was asked to end");
            }
            work.run();
        } finally {
            busy.unlock();
        }
    }

    /** What happens when the process is asked to end. */
    void end() {
        busy.lock();
        try {
            ending = true;
            delete();
        } finally {
            busy.unlock();
        }
    }

    /** Removes it, whether its files were moved away or not. */
    void remove() {
        busy.lock();
        try {
            delete();
        } finally {
            busy.unlock();
        }
        try { // only now: a process asked to end while it deletes has to wait for it
            Runtime.getRuntime().removeShutdownHook(whenEnding);
        } catch (IllegalStateException e) {
            return; // ending already
        }
    }

    private void delete() {
        if (channel == null) {
            return; // not made: what stands there is somebody else's
        }
        try {
            channel.close();
        } catch (IOException e) {
            return; // a leftover does no harm
        } finally {
            delete(path);
        }
    }

    /** Removes those of processes that live no more; old files set aside in one go back first. */
    static void sweep(Path folder) throws IOException {
        try (DirectoryStream<Path> parts = Files.newDirectoryStream(folder, NAME + "*")) {
            for (Path part : parts) {
                if (Files.isDirectory(part, LinkOption.NOFOLLOW_LINKS) && isLeft(part)) {
                    putBack(folder, part.resolve(FORMER));
                    delete(part);
                }
            }
        }
    }

    private static boolean isLeft(Path part) {
        Path file = part.resolve(LOCK);
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            return false; // not of our making, or made this instant
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
                FileLock lock = lock(channel)) {
            return lock != null;
        } catch (IOException e) {
            return false;
        }
    }

    private static void putBack(Path folder, Path former) throws IOException {
        if (!Files.isDirectory(former, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        try (DirectoryStream<Path> files = Files.newDirectoryStream(former)) {
            for (Path file : files) {
                Path place = folder.resolve(file.getFileName());
                if (!Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
                    Files.move(file, place);
                }
            }
        }
    }

    private static void delete(Path folder) {
        try (DirectoryStream<Path> inside = Files.newDirectoryStream(folder)) {
            for (Path at : inside) {
                if (Files.isDirectory(at, LinkOption.NOFOLLOW_LINKS)) {
                    delete(at);
                } else {
                    Files.deleteIfExists(at);
                }
            }
        } catch (IOException e) {
            return; // What was to be said has been said; a leftover does no harm.
        }
        OutputFolder.deleteIfEmpty(folder);
    }
}
