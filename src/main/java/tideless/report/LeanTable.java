package tideless.report;

import java.io.PrintWriter;
import java.util.Locale;
import tideless.study.LeanFeed;

/** What came of looking for a feed without a flush, for a terminal. */
public final class LeanTable {
    private LeanTable() {}

    /**
     * Prints it.
     *
     * @param shown what the meter shows
     */
    public static void print(PrintWriter out, LeanFeed lean, ShownIn shown) {
        out.println(text("The feed as it stands: %.2f mS/cm.", lean.given()));
        if (lean.exists()) {
            out.println(
                    text(
                            "From %.2f to %.2f mS/cm every tray stays in its band to harvest"
                                    + " without a flush; make %.2f mS/cm.",
                            lean.leanest().orElseThrow(),
                            lean.richest().orElseThrow(),
                            lean.recommendedMsPerCm()));
        } else {
            out.println("No feed keeps every tray in its band without a flush.");
        }
        for (String why : lean.why()) {
            out.println("  " + why);
        }
        out.println();
        out.println("  FEED  TRAYS");
        for (LeanFeed.Trial trial : lean.trials()) {
            String salty = trial.tooSalty();
            String thin = trial.tooLean();
            out.println(
                    text("  %4s  ", shown.ec(trial.ecMsPerCm()))
                            + (salty.isEmpty() && thin.isEmpty()
                                    ? "all in band"
                                    : salty.isEmpty()
                                            ? thin
                                            : thin.isEmpty() ? salty : salty + "; " + thin));
        }
        out.flush();
    }

    private static String text(String form, Object... figures) {
        return String.format(Locale.ROOT, form, figures);
    }
}
