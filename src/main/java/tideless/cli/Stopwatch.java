package tideless.cli;

import java.util.Locale;

/** How long the parts of a command took. */
final class Stopwatch {
    private final StringBuilder text = new StringBuilder();
    private long lastNs = System.nanoTime();

    void lap(String what) {
        long now = System.nanoTime();
        text.append(text.length() == 0 ? "" : ", ")
                .append(what)
                .append(String.format(Locale.ROOT, " %.0f ms", (now - lastNs) / 1e6));
        lastNs = now;
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
