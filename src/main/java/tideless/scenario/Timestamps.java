package tideless.scenario;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Dates and times as loggers write them: 2026-03-02T13:00, 2026-03-02 13:00:00, 20260302:1300,
 * 02.03.2026 13:00, 02/03/2026 13:00, 03/02/2026 1:00 PM. Whether the day or the month comes first
 * is told by the whole column; where no row tells, by a point (day first), else it is a fault.
 */
final class Timestamps {
    private static final Pattern PACKED =
            Pattern.compile("(\\d{4})(\\d\\d)(\\d\\d):(\\d\\d)(\\d\\d)");
    private static final Pattern SHAPE =
            Pattern.compile(
                    "(\\d{1,4})([-./])(\\d{1,2})\\2(\\d{1,4})"
                            + "(?:[T ,]+(\\d{1,2}):(\\d\\d)(?::(\\d\\d)(?:\\.0+)?)?)?"
                            + "(?: ?([AaPp])\\.?[Mm]\\.?)?");

    private enum Order {
        DAY_FIRST,
        MONTH_FIRST,
        NOT_TOLD
    }

    private final Order order;

    private Timestamps(Order order) {
        this.order = order;
    }

    /** Looks through a column for what its rows tell of the order of day and month. */
    static Timestamps of(List<String> cells) {
        Order order = Order.NOT_TOLD;
        for (String cell : cells) {
            // Most columns begin with the year: a look, not a match, for each of 8760 rows.
            if (cell.length() > 4 && isDigits(cell.substring(0, 4))) {
                continue;
            }
            Matcher shape = SHAPE.matcher(cell);
            if (!shape.matches() || shape.group(1).length() > 2) {
                continue;
            }
            if (shape.group(2).equals(".") || number(shape, 1) > 12) {
                order = Order.DAY_FIRST;
                break;
            }
            if (number(shape, 3) > 12) {
                order = Order.MONTH_FIRST;
                break;
            }
        }
        return new Timestamps(order);
    }

    /** Whether any row told the order of day and month. */
    boolean isTold() {
        return order != Order.NOT_TOLD;
    }

    /** The same where somebody else tells it. */
    static Timestamps inOrder(boolean dayFirst) {
        return new Timestamps(dayFirst ? Order.DAY_FIRST : Order.MONTH_FIRST);
    }

    private static boolean isDigits(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < '0' || text.charAt(i) > '9') {
                return false;
            }
        }
        return true;
    }

    /** Whether a text is a date and time in one of the spellings. */
    static boolean isOne(String cell) {
        return SHAPE.matcher(cell).matches() || PACKED.matcher(cell).matches();
    }

    /** Faulty when it is none, or day and month cannot be told apart. */
    Read<LocalDateTime> read(String cell) {
        try {
            Matcher packed = PACKED.matcher(cell);
            if (packed.matches()) {
                return Read.of(
                        LocalDateTime.of(
                                number(packed, 1),
                                number(packed, 2),
                                number(packed, 3),
                                number(packed, 4),
                                number(packed, 5)));
            }
            Matcher shape = SHAPE.matcher(cell);
            return shape.matches() ? read(shape) : Read.faulty();
        } catch (DateTimeException e) {
            return Read.faulty();
        }
    }

    private Read<LocalDateTime> read(Matcher shape) {
        boolean yearFirst = shape.group(1).length() == 4;
        if (!yearFirst && (order == Order.NOT_TOLD || shape.group(4).length() != 4)) {
            return Read.faulty();
        }
        int year = number(shape, yearFirst ? 1 : 4);
        int month = number(shape, yearFirst || order == Order.DAY_FIRST ? 3 : 1);
        int day = number(shape, yearFirst ? 4 : order == Order.DAY_FIRST ? 1 : 3);
        int hour = shape.group(5) == null ? 0 : number(shape, 5);
        int minute = shape.group(6) == null ? 0 : number(shape, 6);
        int second = shape.group(7) == null ? 0 : number(shape, 7);
        if (shape.group(8) != null) {
            if (hour < 1 || hour > 12 || shape.group(5) == null) {
                return Read.faulty();
            }
            boolean afternoon = shape.group(8).equalsIgnoreCase("p");
            hour = hour % 12 + (afternoon ? 12 : 0);
        }
        return Read.of(LocalDateTime.of(year, month, day, hour, minute, second));
    }

    private static int number(Matcher shape, int group) {
        return Integer.parseInt(shape.group(group));
    }

    /** What may stand there, for a message. */
    String allowed() {
        return "a date and time, as 2026-03-02T13:00, 2026-03-02 13:00, 20260302:1300,"
                + " 02.03.2026 13:00"
                + (order == Order.NOT_TOLD
                        ? "; 02/03/2026 only where a day above 12 tells the order"
                        : "");
    }
}
