package tideless.report;

import java.io.PrintWriter;
import tideless.study.Forecast;
import tideless.words.Dates;
import tideless.words.Names;
import tideless.words.OutlookWords;
import tideless.words.Wrap;

/** The diary of a forecast, for a terminal. */
public final class CalendarTable {
    private static final int INDENT = 20;

    private CalendarTable() {}

    /**
     * Prints it.
     *
     * @param width columns to fill
     */
    public static void print(PrintWriter out, Forecast forecast, int width) {
        out.println(Names.clean(forecast.trace().scenario().title()));
        out.println();
        for (Diary.Entry entry : Diary.of(forecast).entries()) {
            String when =
                    entry.lastDay().isPresent()
                            ? Dates.weekday(entry.from().toLocalDate())
                            : Dates.visit(entry.from(), false);
            String until =
                    entry.lastDay()
                            .filter(last -> last.isAfter(entry.from().toLocalDate()))
                            .map(last -> ", to " + Dates.weekday(last))
                            .orElse("");
            String what = entry.what() + until + entry.again().map(CalendarTable::again).orElse("");
            String lead = "  " + when + " ".repeat(Math.max(1, INDENT - 2 - when.length()));
            for (String line : Wrap.lines(what, Math.max(INDENT, width - INDENT))) {
                out.println(lead + line);
                lead = " ".repeat(INDENT);
            }
        }
        if (forecast.isBrokenOff()) {
            out.println();
            Wrap.lines(OutlookWords.brokenOff(forecast), width).forEach(out::println);
        }
        out.flush();
    }

    private static String again(Diary.Again again) {
        return again.everyDays() == 0
                ? ", at every visit"
                : ", then at visits "
                        + (again.everyDays() == 1 ? "a day" : again.everyDays() + " days")
                        + " apart or more, to "
                        + Dates.weekday(again.lastDay());
    }
}
