package tideless.report;

import java.io.PrintWriter;
import java.util.Locale;
import tideless.study.LeanFeed;
import tideless.words.LeanWords;

/** What came of looking for a feed without a flush, for a terminal. */
public final class LeanTable {
    private LeanTable() {}

    /**
     * Prints it; feeds that a meter cannot tell apart and that fare alike are one line.
     *
     * @param shown what the meter shows
     */
    public static void print(PrintWriter out, LeanFeed lean, ShownIn shown) {
        LeanWords.found(lean).forEach(line -> out.println(shown.told(line)));
        out.println();
        out.println("  FEED  TRAYS");
        String before = "";
        for (LeanFeed.Trial trial : lean.trials()) {
            String ec = String.format(Locale.ROOT, "  %4s  ", shown.ec(trial.ecMsPerCm()));
            String line = ec + shown.told(LeanWords.trial(trial));
            if (!line.equals(before)) {
                out.println(line);
            }
            before = line;
        }
        out.flush();
    }
}
