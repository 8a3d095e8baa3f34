package tideless.report;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import tideless.solution.Mix;
import tideless.solution.MixCorrection;
import tideless.solution.MixingSheet;
import tideless.words.Wrap;

/** A mixing sheet as a short table for a terminal; plain ASCII but for the user's own words. */
public final class MixTable {
    private MixTable() {}

    /**
     * Prints it.
     *
     * @param width columns to fill; less than 56 counts as 56
     * @param shown what the meter shows
     */
    public static void print(PrintWriter out, Mix mix, int width, ShownIn shown) {
        int columns = Math.max(56, width);
        wrapped(out, MixWords.title(mix), "", columns);
        wrapped(out, MixWords.strength(mix), "", columns);
        out.println();
        steps(out, mix.sheet().steps(), shown);
        if (mix.correction().isPresent()) {
            MixCorrection correction = mix.correction().get();
            out.println();
            wrapped(out, MixWords.reading(correction) + ":", "", columns);
            out.println();
            if (correction.steps().isEmpty()) {
                out.println("   nothing to do: as near as the meters tell");
            } else {
                steps(out, correction.steps(), shown);
            }
            wrapped(out, MixWords.after(correction), "", columns);
        }
        out.println();
        for (String caution : MixWords.cautions(mix)) {
            wrapped(out, caution, "! ", columns);
        }
        out.flush();
    }

    private static void steps(PrintWriter out, List<MixingSheet.Step> steps, ShownIn shown) {
        int what = "WHAT".length();
        int amount = "AMOUNT".length();
        for (MixingSheet.Step step : steps) {
            what = Math.max(what, what(step).length());
            amount = Math.max(amount, MixWords.amount(step).length());
        }
        String form = "%3s  %-" + what + "s  %" + amount + "s  %6s  %4s";
        out.println(
                form.formatted("", "WHAT", "AMOUNT", shown.scale() == null ? "EC" : "ppm", "pH"));
        int n = 0;
        for (MixingSheet.Step step : steps) {
            out.println(
                    String.format(
                            Locale.ROOT,
                            form,
                            ++n + ".",
                            what(step),
                            MixWords.amount(step),
                            shown.ec(step.ecMsPerCm()),
                            MixWords.ph(step.ph())));
        }
    }

    private static String what(MixingSheet.Step step) {
        String action = MixWords.action(step.kind());
        String named = step.what().toLowerCase(Locale.ROOT);
        return named.startsWith(action.toLowerCase(Locale.ROOT)) || named.contains("water")
                ? named
                : action + ": " + named;
    }

    private static void wrapped(PrintWriter out, String text, String bullet, int width) {
        String before = bullet;
        for (String line : Wrap.lines(text, width - bullet.length())) {
            out.println(before + line);
            before = " ".repeat(bullet.length());
        }
    }
}
