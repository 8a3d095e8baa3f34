package tideless.scenario;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Days and absences as people say them. Not by strokes: 3/4 is two days, one each side of an ocean.
 */
final class StarterDates {
    private static final Pattern ISO = Pattern.compile("(\\d{4})-(\\d{1,2})-(\\d{1,2})");
    private static final Pattern DOTTED =
            Pattern.compile("(\\d{1,2})\\.\\s*(\\d{1,2})\\.\\s*(\\d{4})?");
    private static final Pattern WITHIN =
            Pattern.compile(
                    "\\d{1,2}\\.\\s?\\d{1,2}\\.\\s?\\d{4}"
                            + "|\\d{1,2}\\.? [A-Za-z]{3,9},? \\d{4}"
                            + "|[A-Za-z]{3,9} \\d{1,2},? \\d{4}");
    private static final Pattern SPAN_FROM =
            Pattern.compile(
                    "(\\d{1,3}) (day|week)s? (?:from|starting|beginning)(?: on)?(?: the)? (.+)");
    private static final Pattern FROM_SPAN =
            Pattern.compile("(?:from )?(.+?),? for (\\d{1,3}) (day|week)s?");
    private static final Pattern BETWEEN =
            Pattern.compile("\\s+(?:to|until|till|through|-|\u2013)\\s+|\\s*\u2013\\s*");

    /** A number of days or weeks in words. */
    private static final Pattern COUNT =
            Pattern.compile(
                    "\\b(an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
                            + " (days?|weeks?)\\b");

    /** The day that is taken for a part of a month. */
    private static final Map<String, Integer> ABOUT =
            Map.of("beginning", 1, "start", 1, "early", 5, "mid", 15, "middle", 15, "late", 25);

    /** Stands for the last day of a month. */
    private static final int END = 99;

    /** What was said of a day; 0 for what was not. */
    private record Said(int day, int month, int year) {
        Said or(Said other) {
            return new Said(day, month == 0 ? other.month : month, year == 0 ? other.year : year);
        }

        Optional<LocalDate> in(int ofYear) {
            try {
                YearMonth of = YearMonth.of(year == 0 ? ofYear : year, month);
                return Optional.of(day == END ? of.atEndOfMonth() : of.atDay(day));
            } catch (DateTimeException e) {
                return Optional.empty();
            }
        }

        /** The first such day that is not before another; empty where there is none. */
        Optional<LocalDate> from(LocalDate earliest) {
            Optional<LocalDate> date = in(earliest.getYear());
            return year == 0 && date.isPresent() && date.get().isBefore(earliest)
                    ? in(earliest.getYear() + 1)
                    : date;
        }
    }

    private StarterDates() {}

    /** The first day with a year that a text holds, as people write one and a file does not. */
    static Optional<LocalDate> written(String text) {
        Matcher day = WITHIN.matcher(text);
        return day.find()
                ? said(day.group().toLowerCase(Locale.ROOT))
                        .filter(one -> one.month() > 0 && one.year() > 0)
                        .flatMap(one -> one.in(one.year()))
                : Optional.empty();
    }

    /** A day; without a year the next one. */
    static Optional<LocalDate> day(String text, LocalDate today) {
        return switch (bare(text)) {
            case "today", "now" -> Optional.of(today);
            case "tomorrow" -> Optional.of(today.plusDays(1));
            default ->
                    said(bare(text)).filter(one -> one.month() > 0).flatMap(one -> one.from(today));
        };
    }

    /** Whether a text tells no single day and one has to be taken, as of "mid April". */
    static boolean isVague(String text) {
        return List.of(text.split("[ ,-]+")).stream()
                .anyMatch(word -> word.equals("end") || ABOUT.containsKey(word));
    }

    /**
     * Without the words that come before a day, as "half-term" or "we are away from"; numbers as
     * figures, a fortnight as two weeks.
     */
    private static String bare(String text) {
        String figures = text.replace("fortnight", "2 weeks").replaceAll("[()]", " ");
        Matcher count = COUNT.matcher(figures);
        StringBuilder counted = new StringBuilder();
        int copied = 0;
        while (count.find()) {
            counted.append(figures, copied, count.start())
                    .append(StarterQuestion.number(count.group(1)))
                    .append(' ')
                    .append(count.group(2));
            copied = count.end();
        }
        String rest =
                counted.append(figures.substring(copied))
                        .toString()
                        .replaceAll("\\ba (2 weeks)", "$1")
                        .strip();
        while (!begins(rest) && rest.contains(" ")) {
            rest = rest.substring(rest.indexOf(' ') + 1);
        }
        return rest;
    }

    private static boolean begins(String text) {
        String word = text.split("[ ,-]", 2)[0];
        return word.matches("\\d.*|today|now|tomorrow|end")
                || ABOUT.containsKey(word)
                || MonthNames.number(word) > 0;
    }

    /**
     * First and last day of an absence, as "2026-03-21 to 2026-03-29", "July 3-12, 2027" or "10
     * days from July 3"; empty where it is none, or ends before it begins.
     *
     * @param earliest without a year, the first such day from here on is meant
     */
    static List<LocalDate> span(String told, LocalDate earliest) {
        String text = bare(told);
        Matcher spanFrom = SPAN_FROM.matcher(text);
        if (spanFrom.matches()) {
            return lasting(spanFrom.group(3), spanFrom.group(1), spanFrom.group(2), earliest);
        }
        Matcher fromSpan = FROM_SPAN.matcher(text);
        if (fromSpan.matches()) {
            return lasting(fromSpan.group(1), fromSpan.group(2), fromSpan.group(3), earliest);
        }
        String[] ends = BETWEEN.split(text);
        if (ends.length == 1 && !text.matches(".*\\d{4}-\\d.*|.*\\b(mid|early|late)-.*")) {
            ends = text.split("-"); // as "july 3-12"
        }
        if (ends.length != 2) {
            return List.of();
        }
        Optional<Said> first = said(ends[0].strip());
        Optional<Said> last = said(ends[1].strip());
        return first.isEmpty() || last.isEmpty()
                ? List.of()
                : between(first.get(), last.get(), earliest);
    }

    // "3 to 12 July 2027" and "July 3 to 12, 2027" say month and year once, for both.
    private static List<LocalDate> between(Said first, Said last, LocalDate earliest) {
        Said whole = first.or(new Said(0, last.month(), 0));
        Optional<LocalDate> from =
                last.year() == 0 || whole.year() > 0 ? whole.from(earliest) : whole.in(last.year());
        Optional<LocalDate> to =
                from.flatMap(
                        day ->
                                last.year() > 0
                                        ? last.or(whole).in(last.year())
                                        : last.or(new Said(0, whole.month(), 0)).from(day));
        if (from.isEmpty() || to.isEmpty()) {
            return List.of();
        }
        boolean overNewYear = to.get().isBefore(from.get()) && whole.year() == 0;
        LocalDate begins = overNewYear ? from.get().minusYears(1) : from.get();
        return to.get().isBefore(begins) ? List.of() : List.of(begins, to.get());
    }

    private static List<LocalDate> lasting(
            String first, String number, String unit, LocalDate earliest) {
        int days = Integer.parseInt(number) * (unit.equals("week") ? 7 : 1);
        Optional<LocalDate> from = day(first, earliest);
        return from.isEmpty() || days == 0
                ? List.of()
                : List.of(from.get(), from.get().plusDays(days - 1));
    }

    private static Optional<Said> said(String text) {
        Matcher iso = ISO.matcher(text);
        if (iso.matches()) {
            return Optional.of(new Said(number(iso, 3), number(iso, 2), number(iso, 1)));
        }
        Matcher dotted = DOTTED.matcher(text);
        if (dotted.matches()) {
            int year = dotted.group(3) == null ? 0 : number(dotted, 3);
            return Optional.of(new Said(number(dotted, 1), number(dotted, 2), year));
        }
        int day = 0;
        int month = 0;
        int year = 0;
        for (String word : words(text)) {
            if (day == 0 && (word.equals("end") || ABOUT.containsKey(word))) {
                day = word.equals("end") ? END : ABOUT.get(word);
            } else if (word.matches("\\d{4}") && year == 0) {
                year = Integer.parseInt(word);
            } else if (word.matches("\\d{1,2}(st|nd|rd|th|\\.)?") && day == 0) {
                day = Integer.parseInt(word.replaceAll("\\D", ""));
            } else if (MonthNames.number(word) > 0 && month == 0) {
                month = MonthNames.number(word);
            } else {
                return Optional.empty();
            }
        }
        return day > 0 ? Optional.of(new Said(day, month, year)) : Optional.empty();
    }

    private static List<String> words(String text) {
        List<String> words =
                new ArrayList<>(
                        List.of(text.replaceAll("\\b(mid|early|late)-", "$1 ").split("[ ,]+")));
        words.removeIf(
                word ->
                        word.isEmpty()
                                || word.equals("of")
                                || word.equals("the")
                                || word.equals("in"));
        return words;
    }

    private static int number(Matcher shape, int group) {
        return Integer.parseInt(shape.group(group));
    }
}
