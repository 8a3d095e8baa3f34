package tideless.report;

import java.io.Console;
import java.io.PrintStream;
import java.lang.reflect.InvocationTargetException;

/**
 * One line that says how far the work is, and wipes itself away. It is written only where a person
 * sits at a terminal; into a pipe or a file nothing goes. It holds no thread, so that an interrupt
 * from the keyboard ends the program as ever; the line is wiped then too.
 */
public final class Progress implements AutoCloseable {
    private static final int WIDEST = 78;

    private final PrintStream out;
    private final boolean shown;
    private Thread wiper;
    private int width;
    private String last = "";

    /**
     * @param out where the line goes, as a rule standard error
     * @param shown whether to show it at all, as a rule {@link #atTerminal()}
     */
    public Progress(PrintStream out, boolean shown) {
        this.out = out;
        this.shown = shown;
    }

    /** Whether this process talks to a person at a terminal. */
    @SuppressWarnings("SystemConsoleNull") // asked below, where there is something to ask
    public static boolean atTerminal() {
        Console console = System.console();
        if (console == null || "dumb".equals(System.getenv("TERM"))) {
            return false;
        }
        try {
            // From Java 22 a console is there even in a pipe, and says so by this method.
            return (Boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (NoSuchMethodException e) {
            return true;
        } catch (IllegalAccessException | InvocationTargetException e) {
            return false;
        }
    }

    /**
     * Shows how far the work is.
     *
     * @param what a few words, ASCII
     * @param done steps done
     * @param of steps in all
     */
    public synchronized void show(String what, int done, int of) {
        if (!shown) {
            return;
        }
        String line = of > 0 ? what + " " + 100L * done / of + " %" : what;
        if (line.length() > WIDEST) {
            line = line.substring(0, WIDEST);
        }
        if (line.equals(last)) {
            return;
        }
        if (wiper == null) {
            wiper = new Thread(this::wipe);
            Runtime.getRuntime().addShutdownHook(wiper);
        }
        out.print("\r" + line + " ".repeat(Math.max(0, width - line.length())));
        out.flush();
        width = line.length();
        last = line;
    }

    /** Wipes the line. */
    @Override
    public void close() {
        wipe();
        Thread hook = wiper;
        if (hook != null) {
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException e) {
                return; // The program is ending already.
            }
            wiper = null;
        }
    }

    private synchronized void wipe() {
        if (width > 0) {
            out.print("\r" + " ".repeat(width) + "\r");
            out.flush();
            width = 0;
            last = "";
        }
    }
}
