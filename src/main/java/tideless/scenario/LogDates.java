package tideless.scenario;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Dates as people write them into a log: all that {@link Timestamps} reads and, of the run's year
 * where none is written, 4.3., 3/4, 4.3.26, 4 Mar, March 4th, 8-Mar-26, with or without the day of
 * the week before them.
 */
final class LogDates {
    private static final Pattern WEEKDAY =
            Pattern.compile("(mon|tue|wed|thu|fri|sat|sun)[a-z]*[.,]?(\\s+.*)?");

    private static final String YEAR = "(?:[ ,.-]+(\\d{4}|\\d\\d))?";

    private static final String CLOCK = "([t ,]+\\d{1,2}:\\d\\d.*)?";

    private static final Pattern DAY_AND_NAME =
            Pattern.compile("(\\d{1,2})(?:st|nd|rd|th|\\.)?[ -]*([a-z]{3,9})\\.?" + YEAR + CLOCK);

    private static final Pattern NAME_AND_DAY =
            Pattern.compile("([a-z]{3,9})\\.?[ -]*(\\d{1,2})(?:st|nd|rd|th|\\.)?" + YEAR + CLOCK);

    private static final Pattern SHORT =
            Pattern.compile("(\\d{1,2})([./-])(\\d{1,2})(?:\\2(\\d\\d)?)?" + CLOCK);

    /**
     * A date as {@link Timestamps} reads it.
     *
     * @param isOfRun whether its year was not written and is the one the run starts in
     */
    private record Plain(String text, boolean isOfRun) {}

    private final LocalDateTime begin;
    private final LocalDateTime end;
    private final Timestamps timestamps;

    private LogDates(LocalDateTime begin, LocalDateTime end, List<String> cells) {
        this.begin = begin;
        this.end = end;
        List<String> plain = cells.stream().map(cell -> plain(cell).text() + " 00:00").toList();
        Timestamps told = Timestamps.of(plain);
        timestamps = told.isTold() ? told : byRun(told, cells);
    }

    /** Where no row tells the order, the run may: by one of the two every row must lie in it. */
    private Timestamps byRun(Timestamps untold, List<String> cells) {
        Timestamps dayFirst = Timestamps.inOrder(true);
        Timestamps monthFirst = Timestamps.inOrder(false);
        List<String> some = cells.stream().filter(cell -> !cell.isBlank()).toList();
        boolean byDay = some.stream().allMatch(cell -> liesInRun(dayFirst, cell));
        boolean byMonth = some.stream().allMatch(cell -> liesInRun(monthFirst, cell));
        return byDay == byMonth ? untold : byDay ? dayFirst : monthFirst;
    }

    private boolean liesInRun(Timestamps order, String cell) {
        Plain plain = plain(cell);
        Read<LocalDateTime> read =
                read(order, plain, plain.text().indexOf(':') >= 0 ? "" : "12:00");
        return read.isSound() && !read.value().isBefore(begin) && read.value().isBefore(end);
    }

    /**
     * Looks through a column for what its rows tell of the order of day and month.
     *
     * @param begin of the run
     * @param end of the run, no part of it
     */
    static LogDates of(LocalDateTime begin, LocalDateTime end, List<String> cells) {
        return new LogDates(begin, end, cells);
    }

    /**
     * Reads a cell.
     *
     * @param clock a time of day; empty where the cell holds it
     */
    Read<LocalDateTime> read(String cell, String clock) {
        return read(timestamps, plain(cell), clock);
    }

    private Read<LocalDateTime> read(Timestamps order, Plain plain, String clock) {
        Read<LocalDateTime> read =
                order.read(clock.isEmpty() ? plain.text() : plain.text() + " " + clock);
        if (!read.isSound()) {
            return read;
        }
        LocalDateTime next = read.value().plusYears(1);
        return plain.isOfRun() && read.value().isBefore(begin) && next.isBefore(end)
                ? Read.of(next)
                : read;
    }

    /** What would help where a cell is no date. */
    static String hint(String cell) {
        Matcher weekday = WEEKDAY.matcher(cell.toLowerCase(Locale.ROOT));
        if (weekday.matches() && weekday.group(2) == null) {
            return "A day of the week does not tell which week: write the date.";
        }
        return cell.matches("\\d{1,2}[/-]\\d{1,2}([/-]\\d+)?( .*)?")
                ? "No date of this log tells whether the day or the month comes first."
                : "";
    }

    private Plain plain(String cell) {
        String text = cell.strip().toLowerCase(Locale.ROOT);
        Matcher weekday = WEEKDAY.matcher(text);
        if (weekday.matches() && weekday.group(2) != null) {
            text = weekday.group(2).strip();
        }
        Matcher dayFirst = DAY_AND_NAME.matcher(text);
        if (dayFirst.matches() && MonthNames.number(dayFirst.group(2)) > 0) {
            return named(dayFirst, dayFirst.group(2), dayFirst.group(1));
        }
        Matcher nameFirst = NAME_AND_DAY.matcher(text);
        if (nameFirst.matches() && MonthNames.number(nameFirst.group(1)) > 0) {
            return named(nameFirst, nameFirst.group(1), nameFirst.group(2));
        }
        Matcher few = SHORT.matcher(text);
        if (few.matches()) {
            String sign = few.group(2);
            return new Plain(
                    few.group(1)
                            + sign
                            + few.group(3)
                            + sign
                            + year(few.group(4))
                            + clock(few.group(5)),
                    few.group(4) == null);
        }
        return new Plain(text.replaceFirst("(\\d)t(\\d)", "$1T$2"), false);
    }

    private Plain named(Matcher date, String month, String day) {
        return new Plain(
                year(date.group(3))
                        + "-"
                        + MonthNames.number(month)
                        + "-"
                        + Integer.parseInt(day)
                        + clock(date.group(4)),
                date.group(3) == null);
    }

    private String year(String written) {
        if (written == null) {
            return String.valueOf(begin.getYear());
        }
        return written.length() == 2 ? "20" + written : written;
    }

    private static String clock(String written) {
        return written == null ? "" : " " + written.replaceFirst("^[t ,]+", "");
    }
}
