package tideless.cli;

import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import tideless.report.Telling;

/** Gathers what a command prints, and passes it on in other units when it is flushed. */
final class Told extends StringWriter {
    private final Writer out;
    private final Telling shown;

    Told(Writer out, Telling shown) {
        this.out = out;
        this.shown = shown;
    }

    @Override
    public void flush() {
        try {
            out.write(shown.told(toString()));
            getBuffer().setLength(0);
            out.flush();
        } catch (IOException e) {
            throw new IllegalStateException(e); // a PrintWriter throws none
        }
    }
}
