package tideless.advice;

import java.util.List;

/** Spells of days on which something holds, by one sample of each. */
final class DaySpells {
    /**
     * Where each top-up brings a reading back for a day, half of the days of two weeks are a spell;
     * assumed.
     */
    private static final int FORTNIGHT_DAYS = 14;

    private DaySpells() {}

    /**
     * The first sample of a spell.
     *
     * @param hours samples of the days on which it holds, rising, at one hour of the day
     * @param days so many together are one, and so is half of a fortnight that begins with it
     * @return -1 for none
     */
    static int first(List<Integer> hours, int days) {
        for (int hour : hours) {
            if (count(hour, hours, days) == days
                    || count(hour, hours, FORTNIGHT_DAYS) >= FORTNIGHT_DAYS / 2) {
                return hour;
            }
        }
        return -1;
    }

    /** Those within so many days from one of them. */
    private static long count(int first, List<Integer> hours, int within) {
        return hours.stream().filter(h -> h >= first && h < first + 24 * within).count();
    }
}
