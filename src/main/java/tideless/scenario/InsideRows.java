package tideless.scenario;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Rows that a logger wrote as the hours of a run: each counts for the hour it falls in on the rig's
 * clock, and an hour holds the mean of its rows. What is missing is filled as {@link Gaps} says.
 */
final class InsideRows {
    /** Most hours a file may span: 45 years. */
    private static final int MOST_HOURS = 400_000;

    private final CsvColumns csv;
    private final TomlFile source;
    private final Gaps gaps;
    private final Map<String, HourlyColumn> hourly = new LinkedHashMap<>();
    private LocalDateTime[] times = {};
    private LocalDateTime begin; // of the first hour of the columns
    private int[] lineOfHour;
    private int span; // hours of the columns
    private int firstOfRun; // its first hour
    private int hours; // of the run
    private int rowsFrom; // hour of the first row
    private int rowsTo; // hour after the last row's

    InsideRows(CsvColumns csv, TomlFile source, Gaps gaps) {
        this.csv = csv;
        this.source = source;
        this.gaps = gaps;
    }

    /** Hours of the run. */
    int hours() {
        return hours;
    }

    /** Columns that were taken. */
    Set<String> names() {
        return hourly.keySet();
    }

    /** A column over the run. */
    double[] cut(String column) {
        return hourly.get(column).cut(firstOfRun, hours);
    }

    /**
     * Puts every row in its hour; false, with a fault, where that cannot be done.
     *
     * @param fileAheadS the clock of the file's times less the rig's, s
     * @param start the run's first day
     * @param days of the run
     */
    boolean place(int fileAheadS, LocalDate start, int days) {
        times = new LocalDateTime[csv.size()];
        int previous = -1;
        for (int row = 0; row < times.length; row++) {
            Read<LocalDateTime> time = csv.time(row, "time");
            if (!time.isSound()) {
                continue;
            }
            times[row] = time.value().minusSeconds(fileAheadS);
            if (previous >= 0 && !times[row].isAfter(times[previous])) {
                csv.problemAt(
                        row,
                        "time",
                        "times that rise; line %s is not earlier".formatted(csv.line(previous)),
                        WeatherFile.clockHint(times[row], times[previous]));
            }
            previous = row;
        }
        if (!csv.isSound()) {
            return false;
        }
        begin = earlier(start.atStartOfDay(), times[0].truncatedTo(ChronoUnit.HOURS));
        hours = days * 24;
        firstOfRun = (int) ChronoUnit.HOURS.between(begin, start.atStartOfDay());
        long lastRow = ChronoUnit.HOURS.between(begin, times[times.length - 1]);
        if (lastRow > MOST_HOURS
                || ChronoUnit.HOURS.between(begin, start.atStartOfDay()) > MOST_HOURS) {
            csv.problem(
                    csv.line(times.length - 1),
                    1,
                    "time",
                    "times from %s to %s".formatted(times[0], times[times.length - 1]),
                    "times within 45 years of the run",
                    "");
            return false;
        }
        rowsFrom = (int) ChronoUnit.HOURS.between(begin, times[0]);
        rowsTo = (int) lastRow + 1;
        span = Math.max(rowsTo, firstOfRun + hours);
        lineOfHour = new int[span];
        for (int row = times.length - 1; row >= 0; row--) {
            lineOfHour[(int) ChronoUnit.HOURS.between(begin, times[row])] = csv.line(row);
        }
        return true;
    }

    private static LocalDateTime earlier(LocalDateTime a, LocalDateTime b) {
        return a.isBefore(b) ? a : b;
    }

    /** Reads a cell of a column in the records' unit. */
    @FunctionalInterface
    interface Cell {
        Read<Double> value(int row, String column);
    }

    /**
     * Takes means of the hours.
     *
     * @param isSum whether an hour holds the sum of its rows, as of time a lamp was on
     */
    void add(String column, Cell cell, boolean isSum) {
        double[] sums = new double[span];
        int[] counts = new int[span];
        for (int row = 0; row < times.length; row++) {
            Read<Double> value = cell.value(row, column);
            if (value.isSound()) {
                int hour = (int) ChronoUnit.HOURS.between(begin, times[row]);
                sums[hour] += value.value();
                counts[hour]++;
            }
        }
        HourlyColumn means = new HourlyColumn(span);
        for (int hour = 0; hour < span; hour++) {
            if (counts[hour] > 0) {
                means.put(hour, sums[hour] / (isSum ? 1 : counts[hour]));
            }
        }
        hourly.put(column, means);
    }

    /** Fills gaps; false, with a fault, when one stays. */
    boolean fill() {
        int end = firstOfRun + hours;
        if (!holdsRun(end) || !holdsValues()) {
            return false;
        }
        Map<Gaps.Filled, List<String>> filled = new LinkedHashMap<>();
        Map<Gaps.Gap, List<String>> left = new LinkedHashMap<>();
        hourly.forEach(
                (name, column) -> {
                    for (Gaps.Filled one : gaps.fill(column, name, firstOfRun, end, this::clock)) {
                        filled.computeIfAbsent(one, none -> new ArrayList<>()).add(name);
                    }
                    for (Gaps.Gap gap : Gaps.in(column)) {
                        if (gap.to() > firstOfRun && gap.from() < end) {
                            left.computeIfAbsent(gap, none -> new ArrayList<>()).add(name);
                        }
                    }
                });
        // A logger that stands still leaves the same gap in every column: said once.
        filled.forEach(
                (one, names) ->
                        source.note(
                                new Note(
                                        csv.label(),
                                        lineAt(one.firstHour()),
                                        String.join(", ", names),
                                        one.words())));
        left.forEach(
                (gap, names) ->
                        csv.problem(
                                lineAt(gap.from()),
                                csv.place(names.get(0)),
                                String.join(", ", names),
                                "a gap of %s h from %s to %s"
                                        .formatted(gap.hours(), clock(gap.from()), clock(gap.to())),
                                "gaps of up to %s h between two readings".formatted(gaps.mostH()),
                                gaps.hint()));
        return csv.isSound();
    }

    /** Whether rows reach from the run's begin to its end, or the rest may be filled. */
    private boolean holdsRun(int end) {
        boolean meets = rowsFrom < end && rowsTo > firstOfRun;
        if (rowsFrom <= firstOfRun && rowsTo >= end || meets && gaps.fillsLonger()) {
            return true;
        }
        LocalDateTime first = begin.plusHours(rowsFrom);
        LocalDateTime start = begin.plusHours(firstOfRun);
        LocalDate day = first.toLocalDate().plusDays(first.getHour() > 0 ? 1 : 0);
        LocalDate from = meets && rowsFrom <= firstOfRun ? start.toLocalDate() : day;
        long days = ChronoUnit.DAYS.between(from.atStartOfDay(), begin.plusHours(rowsTo));
        csv.problem(
                lineAt(meets && rowsFrom <= firstOfRun ? rowsTo - 1 : rowsFrom),
                csv.place("time"),
                "time",
                "rows from %s to %s".formatted(first, begin.plusHours(rowsTo)),
                "rows of every hour of the run, %s to %s".formatted(start, clock(end)),
                days < 1
                        ? ""
                        : "Maybe start = %s and length = \"%d days\"%s."
                                .formatted(
                                        from,
                                        Math.min(days, hours / 24),
                                        meets
                                                ? "; or longer_gaps = \"days beside\" in [climate],"
                                                        + " which repeats the nearest day"
                                                : ""));
        return false;
    }

    /** Says of columns that hold no value at all. */
    private boolean holdsValues() {
        hourly.forEach(
                (name, column) -> {
                    if (!column.isKnownAnywhere()) {
                        csv.problem(
                                csv.nameLine(),
                                csv.place(name),
                                name,
                                "a column without a value",
                                "values in it",
                                "Maybe take the column out.");
                    }
                });
        return csv.isSound();
    }

    private String clock(int hour) {
        return begin.plusHours(hour).toString();
    }

    /** The line of an hour, or of the last row before it, or the first. */
    private int lineAt(int hour) {
        int at = hour;
        while (at > 0 && lineOfHour[at] == 0) {
            at--;
        }
        return lineOfHour[at] > 0 ? lineOfHour[at] : csv.line(0);
    }
}
