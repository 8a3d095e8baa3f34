package tideless.scenario;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.IntFunction;

/**
 * Fills what is missing from hourly columns: short gaps by straight lines, longer ones, where that
 * is allowed, from the same hours of the days beside, by their distance. Counts what it fills.
 */
final class Gaps {
    /** Longest that straight lines bridge when nothing else is said, h. */
    static final int USUAL_MOST_H = 3;

    static final String FROM_DAYS_BESIDE = "days beside";

    private final int mostH;
    private final boolean longerToo;
    private final Map<String, List<String>> columnsByWords = new LinkedHashMap<>();

    /**
     * @param mostH longest gap bridged by a straight line, h
     * @param longerToo whether longer ones are filled from the days beside
     */
    Gaps(int mostH, boolean longerToo) {
        this.mostH = mostH;
        this.longerToo = longerToo;
    }

    /** What decides which gaps are filled. */
    Object rule() {
        return List.of(mostH, longerToo);
    }

    int mostH() {
        return mostH;
    }

    /** Whether gaps longer than that are filled too. */
    boolean fillsLonger() {
        return longerToo;
    }

    /** What helps against a gap that is left. */
    String hint() {
        return longerToo
                ? "No other day of the file has a reading at these hours of the clock."
                : "Maybe longer_gaps = \"days beside\" in [climate]: it fills them from the same hours"
                        + " of the days beside, and says so.";
    }

    /** What was filled in all columns so far, one sentence; empty when nothing was. */
    String filled() {
        List<String> said = new ArrayList<>();
        columnsByWords.forEach(
                (words, columns) -> said.add(String.join(", ", columns) + ": " + words));
        return String.join("; ", said);
    }

    /** A run of hours without a value, its end not included. */
    record Gap(int from, int to) {
        int hours() {
            return to - from;
        }
    }

    /**
     * Fills the gaps that touch a span of a column as far as it may.
     *
     * @param from first hour of the span
     * @param to end of the span, not included
     * @param clock how to name an hour
     * @return a sentence for what was filled by each way, with the first gap it speaks of
     */
    List<Filled> fill(
            HourlyColumn column, String name, int from, int to, IntFunction<String> clock) {
        List<Gap> lines = new ArrayList<>();
        List<Gap> days = new ArrayList<>();
        List<Gap> before = new ArrayList<>();
        List<Gap> after = new ArrayList<>();
        HourlyColumn known = column.copy();
        for (Gap gap : in(column)) {
            if (gap.to() <= from || gap.from() >= to) {
                continue;
            }
            boolean inner = gap.from() > 0 && gap.to() < column.hours();
            if (inner && gap.hours() <= mostH) {
                bridge(column, gap);
                lines.add(gap);
            } else if (longerToo && fillFromDays(known, column, gap)) {
                (inner ? days : gap.from() > 0 ? after : before).add(gap);
            }
        }
        List<Filled> filled = new ArrayList<>();
        add(filled, lines, name, clock, "filled by a straight line", "filled by straight lines");
        String beside = "filled from the same hours of the days beside";
        add(filled, days, name, clock, beside, beside);
        // Of days beyond the file only one is beside, and told to be the same again and again.
        String first = "before its first reading, filled with the day that follows, over and over";
        String last = "after its last reading, filled with the day before, over and over";
        add(filled, before, name, clock, first, first);
        add(filled, after, name, clock, last, last);
        return filled;
    }

    /**
     * What was filled in one way.
     *
     * @param firstHour of the first gap
     * @param words one sentence
     */
    record Filled(int firstHour, String words) {}

    private void add(
            List<Filled> filled,
            List<Gap> gaps,
            String name,
            IntFunction<String> clock,
            String one,
            String many) {
        if (gaps.isEmpty()) {
            return;
        }
        int first = gaps.get(0).from();
        int hours = gaps.stream().mapToInt(Gap::hours).sum();
        String words =
                gaps.size() == 1
                        ? "%s h missing from %s, %s".formatted(hours, clock.apply(first), one)
                        : "%s h missing in %s gaps, the first from %s, %s"
                                .formatted(hours, gaps.size(), clock.apply(first), many);
        filled.add(new Filled(first, words));
        columnsByWords.computeIfAbsent(words, none -> new ArrayList<>()).add(name);
    }

    /** The gaps of a column, in order. */
    static List<Gap> in(HourlyColumn column) {
        List<Gap> gaps = new ArrayList<>();
        int hour = 0;
        while (hour < column.hours()) {
            int end = hour;
            while (end < column.hours() && !column.isKnown(end)) {
                end++;
            }
            if (end > hour) {
                gaps.add(new Gap(hour, end));
            }
            hour = end + 1;
        }
        return gaps;
    }

    private static void bridge(HourlyColumn column, Gap gap) {
        double before = column.at(gap.from() - 1);
        double after = column.at(gap.to());
        for (int i = gap.from(); i < gap.to(); i++) {
            column.put(i, before + (after - before) * (i - gap.from() + 1) / (gap.hours() + 1));
        }
    }

    private static boolean fillFromDays(HourlyColumn known, HourlyColumn column, Gap gap) {
        double[] values = new double[gap.hours()];
        for (int i = 0; i < values.length; i++) {
            OptionalDouble value = fromDays(known, gap.from() + i);
            if (value.isEmpty()) {
                return false;
            }
            values[i] = value.getAsDouble();
        }
        for (int i = 0; i < values.length; i++) {
            column.put(gap.from() + i, values[i]);
        }
        return true;
    }

    private static OptionalDouble fromDays(HourlyColumn known, int hour) {
        int before = hour - 24;
        while (before >= 0 && !known.isKnown(before)) {
            before -= 24;
        }
        int after = hour + 24;
        while (after < known.hours() && !known.isKnown(after)) {
            after += 24;
        }
        if (before < 0) {
            return after < known.hours()
                    ? OptionalDouble.of(known.at(after))
                    : OptionalDouble.empty();
        }
        if (after >= known.hours()) {
            return OptionalDouble.of(known.at(before));
        }
        double share = (double) (hour - before) / (after - before);
        return OptionalDouble.of((1 - share) * known.at(before) + share * known.at(after));
    }
}
