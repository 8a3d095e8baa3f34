package tideless.report;

import java.io.PrintWriter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import tideless.study.Away;
import tideless.words.AwayWords;
import tideless.words.BrokenWords;
import tideless.words.Dates;
import tideless.words.Names;
import tideless.words.OutlookWords;
import tideless.words.Wrap;

/** How long nobody need come, for a terminal. */
public final class AwayTable {
    private static final String ROW = "  %-11s %-26s %-11s %-26s %s";
    private static final String SHORT = "  %-11s %-26s %s";

    private final PrintWriter out;
    private final Away away;
    private final int width;

    private AwayTable(PrintWriter out, Away away, int width) {
        this.out = out;
        this.away = away;
        this.width = width;
    }

    /**
     * Prints it.
     *
     * @param width columns to fill
     */
    public static void print(PrintWriter out, Away away, int width) {
        AwayTable table = new AwayTable(out, away, width);
        out.println(Names.clean(away.scenario().title()));
        out.println();
        if (away.members() == 0) {
            table.say(BrokenWords.nothingSaid());
            out.flush();
            return;
        }
        table.sentences();
        table.leaves();
        table.notes();
        out.flush();
    }

    private void sentences() {
        List<Away.Leave> leaves = away.leaves();
        if (!leaves.isEmpty()) {
            Away.Leave first = leaves.get(0);
            Away.Leave shortest =
                    leaves.stream()
                            .min(Comparator.comparing(l -> l.asItStands().days().middle()))
                            .orElseThrow();
            say(Names.begun(AwayWords.leave(first)));
            if (!shortest.equals(first)) {
                say("Least of all: " + AwayWords.leave(shortest));
            }
        }
        for (Away.Stated stated : away.absences()) {
            say(AwayWords.absence(away, stated));
        }
        out.println();
    }

    private void leaves() {
        boolean filled = away.fillingUpHelps();
        if (!filled) {
            row("NOBODY FROM", "DAYS", "FIRST HARM");
        } else {
            row("NOBODY FROM", "DAYS AS IT STANDS", "FILLED UP", "DAYS THEN", "FIRST HARM");
        }
        for (Away.Leave leave : away.leaves()) {
            if (!filled) {
                row(
                        Dates.weekday(leave.from()),
                        AwayWords.days(leave.asItStands().days()),
                        leave.asItStands().harm().map(AwayWords::harm).orElse("none"));
                continue;
            }
            row(
                    Dates.weekday(leave.from()),
                    AwayWords.days(leave.asItStands().days()),
                    leave.filledOn().map(Dates::weekday).orElse("-"),
                    leave.filledOn().map(on -> AwayWords.days(leave.filledUp().days())).orElse("-"),
                    leave.asItStands().harm().map(AwayWords::harm).orElse("none"));
        }
        out.println();
    }

    private void notes() {
        if (!away.whole()) {
            say(OutlookWords.brokenOff(away.members(), away.asked()));
        }
        if (away.members() > 1) {
            say(
                    "Days: the middle of "
                            + away.members()
                            + " rigs that yours might be, and between what 8 in 10 of them lie."
                            + " Count on the lower figure.");
        }
        say(
                "Whole days from the visit that is left out until a tray dries out, wilts for more"
                        + " than six hours or is lost, or salt, hunger or want of air stunt it:"
                        + " take more than half of a day's growth. \"To the end\": nothing by the end of the"
                        + " run, "
                        + Dates.dayMonth(away.scenario().lastDay())
                        + ".");
        String missed = AwayWords.missed(away.harvests());
        if (!missed.isEmpty()) {
            say(
                    "Days are those that water, air and salt last, not those that crops wait. Ready"
                            + " as it stands: "
                            + missed
                            + ".");
        }
        if (!away.canFillUp()) {
            say("Nothing here is refilled or topped up by anybody, so filling up buys nothing.");
        } else if (!away.leaves().isEmpty() && !away.fillingUpHelps()) {
            say("Filling up the visit before buys no day: the visits leave it as full.");
        }
        if (away.attended()) {
            say(
                    "A reservoir refilled the moment it is empty needs somebody there: here it is"
                            + " refilled at the visits, before the next one would find it empty.");
        }
    }

    private void say(String text) {
        Wrap.lines(text, width).forEach(out::println);
    }

    private void row(String... cells) {
        String line = String.format(Locale.ROOT, cells.length > 3 ? ROW : SHORT, (Object[]) cells);
        out.println(line.stripTrailing());
    }
}
