package tideless.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import tideless.sim.Event;
import tideless.study.Fit;
import tideless.words.Dates;
import tideless.words.FitWords;
import tideless.words.LogWords;
import tideless.words.Names;
import tideless.words.OutlookWords;
import tideless.words.Wrap;

/** What a log teaches, for a terminal. */
public final class FitTable {
    private static final String DATE_ROW = "  %-34s %-30s %s";
    private static final String WORTH_ROW = "  %-16s %-24s %-14s %-14s %s";
    private static final int WORTHIEST = 5;

    private final Telling shown;
    private final PrintWriter out;
    private final Fit fit;
    private final int width;

    private FitTable(PrintWriter out, Fit fit, int width, Telling shown) {
        this.shown = shown;
        this.out = out;
        this.fit = fit;
        this.width = width;
    }

    /**
     * Prints it.
     *
     * @param width columns to fill
     * @param shown the units it is told in
     */
    public static void print(PrintWriter out, Fit fit, int width, Telling shown) {
        FitTable table = new FitTable(out, fit, width, shown);
        out.println(Names.clean(fit.scenario().title()));
        table.say(
                "Log of "
                        + Dates.span(
                                LogWords.day(
                                        fit.scenario(),
                                        fit.scenario().log().entries().get(0).atS()),
                                LogWords.day(fit.scenario(), fit.scenario().log().lastS()))
                        + "; learned from "
                        + fit.readings().size()
                        + (fit.readings().size() == 1 ? " reading." : " readings."));
        LogWords.assumed(fit.scenario()).forEach(table::say);
        out.println();
        List<String> learned = new ArrayList<>(FitWords.learned(fit));
        learned.addAll(FitWords.leaks(fit));
        learned.forEach(table::say);
        FitWords.tied(fit).forEach(table::say);
        FitWords.idle(fit).forEach(table::say);
        out.println();
        if (!fit.oddities().isEmpty()) {
            out.println("What no noise explains");
            FitWords.oddities(fit).forEach(line -> table.say("! " + line));
            out.println();
        }
        FitWords.countForLess(fit).forEach(table::say);
        if (!FitWords.countForLess(fit).isEmpty()) {
            out.println();
        }
        table.dates();
        table.worth();
        if (fit.members() < fit.asked()) {
            out.println();
            table.say(OutlookWords.brokenOff(fit.members(), fit.asked()));
        }
        out.flush();
    }

    private void say(String text) {
        Wrap.lines(text, width).forEach(out::println);
    }

    /** Told in other units before it is laid out, so that columns stay columns. */
    private String row(String format, String... cells) {
        Object[] told = Arrays.stream(cells).map(shown::told).toArray();
        return String.format(Locale.ROOT, format, told).stripTrailing();
    }

    private void dates() {
        out.println(row(DATE_ROW, "NEXT", "AS STATED", "BY THE LOG"));
        for (Fit.Dated dated : fit.dates()) {
            if (!isWorthALine(dated)) {
                continue;
            }
            out.println(
                    row(
                            DATE_ROW,
                            FitWords.what(dated.kind(), dated.where()),
                            FitWords.when(fit.scenario(), dated.statedS()),
                            FitWords.when(fit.scenario(), dated.correctedS())));
        }
        out.println(
                row(
                        DATE_ROW,
                        "drunk in the whole run",
                        FitWords.litres(fit.drunkL().stated()),
                        FitWords.litres(fit.drunkL().corrected())));
        out.println();
    }

    /** A date that half of the rigs never see is one only of what somebody has to be ready for. */
    private static boolean isWorthALine(Fit.Dated dated) {
        return dated.kind() == Event.Kind.REFILL
                || dated.kind() == Event.Kind.TOP_UP
                || !Double.isInfinite(
                        Math.min(dated.statedS().middle(), dated.correctedS().middle()));
    }

    private void worth() {
        List<Fit.Judged> worthiest =
                fit.readings().stream()
                        .sorted(Comparator.comparingDouble(r -> -r.worth()))
                        .limit(WORTHIEST)
                        .toList();
        out.println("Readings worth most for the next dates (all in fit.csv)");
        for (Fit.Judged one : worthiest) {
            out.println(
                    row(
                            WORTH_ROW,
                            LogWords.visit(fit.scenario(), one.reading().atS()),
                            LogWords.name(one.reading().what())
                                    + " of "
                                    + Names.clean(one.reading().where().name()),
                            FitWords.value(one.reading().what(), one.reading().value()),
                            FitWords.value(one.reading().what(), one.after()) + " foretold",
                            FitWords.worth(one)));
        }
        say(FitWords.next(fit));
    }
}
