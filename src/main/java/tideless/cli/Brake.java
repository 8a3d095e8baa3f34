package tideless.cli;

import java.io.PrintWriter;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Model.CommandSpec;

/**
 * What a program that is asked to end (Ctrl-C) does with long work: it breaks the work off, and
 * waits until what is done has been shown and written. Made and closed by the thread that works.
 */
final class Brake implements AutoCloseable {
    /** Enough to write a table, s; a second Ctrl-C does not end sooner. Assumed. */
    private static final long PATIENCE_S = 20;

    private final Thread worker = Thread.currentThread();
    private final CountDownLatch done = new CountDownLatch(1);
    private final Thread hook = new Thread(this::ask, "tideless-brake");
    private boolean working = true;

    Brake() {
        Runtime.getRuntime().addShutdownHook(hook);
    }

    private void ask() {
        synchronized (this) {
            if (working) {
                worker.interrupt();
            }
        }
        try {
            if (!done.await(PATIENCE_S, TimeUnit.SECONDS)) {
                return; // whatever holds it up, the program ends
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Says that the work was broken off before there was anything to keep. */
    static int sayNothingKept(CommandSpec spec) {
        PrintWriter err = spec.commandLine().getErr();
        err.println("Broken off before anything could be said; nothing was written.");
        err.flush();
        return Exit.DONE;
    }

    /** The long work is over: nothing breaks off what follows. */
    synchronized void release() {
        working = false;
        Thread.interrupted();
    }

    @Override
    public void close() {
        done.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            return; // ending already
        }
    }
}
