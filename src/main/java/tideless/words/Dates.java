package tideless.words;

import java.time.LocalDate;
import java.time.LocalDateTime;
import tideless.physics.Time;

/** Dates as short English words. Spelt here: what a Java calls a month changes with its version. */
public final class Dates {
    private static final String[] MONTHS = {
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"
    };
    private static final String[] WEEKDAYS = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

    private Dates() {}

    /** As "14 Sep". */
    public static String dayMonth(LocalDate day) {
        return day.getDayOfMonth() + " " + MONTHS[day.getMonthValue() - 1];
    }

    /** As "14 Sep 2026". */
    public static String dayMonthYear(LocalDate day) {
        return dayMonth(day) + " " + day.getYear();
    }

    /** As "Mon 14 Sep". */
    public static String weekday(LocalDate day) {
        return WEEKDAYS[day.getDayOfWeek().ordinal()] + " " + dayMonth(day);
    }

    /** As "Mon 14 Sep 08:00", or with {@code year} as "14 Sep 2026 08:00". */
    public static String visit(LocalDateTime time, boolean year) {
        LocalDate day = time.toLocalDate();
        return (year ? dayMonthYear(day) : weekday(day))
                + " "
                + Time.clock(time.toLocalTime().withSecond(0).toSecondOfDay());
    }

    /** As "7 Sep to 15 Nov 2026". */
    public static String span(LocalDate first, LocalDate last) {
        return (first.getYear() == last.getYear() ? dayMonth(first) : dayMonthYear(first))
                + " to "
                + dayMonthYear(last);
    }

    /** As "3 to 12 Apr", for a span whose year goes without saying. */
    public static String shortSpan(LocalDate first, LocalDate last) {
        if (first.equals(last)) {
            return dayMonth(first);
        }
        if (!first.plusYears(1).isAfter(last)) {
            return span(first, last); // a year apart, the year has to be said
        }
        boolean sameMonth =
                first.getYear() == last.getYear() && first.getMonth() == last.getMonth();
        return (sameMonth ? Integer.toString(first.getDayOfMonth()) : dayMonth(first))
                + " to "
                + dayMonth(last);
    }
}
