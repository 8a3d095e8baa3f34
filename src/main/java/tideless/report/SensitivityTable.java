package tideless.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tideless.study.Sensitivity;
import tideless.words.BrokenWords;
import tideless.words.Names;
import tideless.words.SensitivityWords;
import tideless.words.Wrap;

/** Which unknown moves what, for a terminal. */
public final class SensitivityTable {
    private static final int FIGURE = 13;
    private static final String NAME = "  %-26s";

    private SensitivityTable() {}

    /**
     * Prints it.
     *
     * @param width columns to fill
     */
    public static void print(PrintWriter out, Sensitivity of, int width) {
        out.println(Names.clean(of.scenario().title()));
        out.println();
        if (of.answers().isEmpty()) {
            out.println(BrokenWords.nothingSaid());
            out.flush();
            return;
        }
        for (String sentence : SensitivityWords.sentences(of)) {
            Wrap.lines(sentence, width).forEach(out::println);
        }
        List<Sensitivity.Answer> moved =
                of.answers().stream().filter(a -> !a.shares().isEmpty()).toList();
        if (!moved.isEmpty()) {
            out.println();
            table(out, of, moved);
            out.println();
            Wrap.lines(notes(of), width).forEach(out::println);
        }
        out.flush();
    }

    private static void table(PrintWriter out, Sensitivity of, List<Sensitivity.Answer> moved) {
        StringBuilder head =
                new StringBuilder(String.format(Locale.ROOT, NAME, "WHAT NOBODY KNOWS"));
        for (Sensitivity.Answer answer : moved) {
            head.append(right(SensitivityWords.of(answer.asked()).toUpperCase(Locale.ROOT)));
        }
        out.println(head + "  FOUND OUT WITH");
        List<Sensitivity.Group> groups = new ArrayList<>(of.groups());
        groups.sort(
                Comparator.comparingDouble(
                        g -> -moved.get(0).of(g).map(Sensitivity.Share::total).orElse(0.0)));
        for (Sensitivity.Group group : groups) {
            StringBuilder row =
                    new StringBuilder(
                            String.format(Locale.ROOT, NAME, SensitivityWords.name(group)));
            for (Sensitivity.Answer answer : moved) {
                Optional<Sensitivity.Share> share = answer.of(group);
                row.append(right(share.map(SensitivityWords::cell).orElse("-")));
            }
            out.println((row + "  " + SensitivityWords.tool(group.kind())).stripTrailing());
        }
    }

    private static String right(String text) {
        return " ".repeat(Math.max(1, FIGURE - text.length())) + text;
    }

    private static String notes(Sensitivity of) {
        return "In per cent of the variance, of "
                + of.points()
                + " points"
                + (of.whole() ? "" : " (broken off)")
                + ": what would be left of the doubt if all else were known, +- its standard error,"
                + " and in brackets what goes if this alone is known. \"-\": below 5 or below two"
                + " standard errors. Shares of things that act together overlap.";
    }
}
