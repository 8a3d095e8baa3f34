package tideless.cli;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;

/**
 * Standard output, which remembers what became of it: a reader who has seen enough and closes the
 * pipe, as {@code head} does, is no full disk.
 */
final class Outlet extends FilterOutputStream {
    private boolean lost;

    Outlet(OutputStream out) {
        super(out);
    }

    @Override
    public void write(int b) throws IOException {
        write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        try {
            out.write(bytes, from, length);
        } catch (IOException e) {
            note(e);
            throw e;
        }
    }

    @Override
    public void flush() throws IOException {
        try {
            out.flush();
        } catch (IOException e) {
            note(e);
            throw e;
        }
    }

    private void note(IOException e) {
        // The system's own words: "Broken pipe", or of Windows "The pipe is being closed"; where
        // they are in another language and name no pipe, the failure is told rather than hidden.
        boolean left = String.valueOf(e.getMessage()).toLowerCase(Locale.ROOT).contains("pipe");
        lost |= !left;
    }

    /** Whether something was lost that somebody wanted. */
    boolean lost() {
        return lost;
    }
}
