package tideless.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import tideless.rig.Limits;

/**
 * Where the likely course of a tray's pH, that of the run as written, stands far out of its band
 * for a week: what a grower will read, from when and how far. {@link AcidityDoubt} tells how sure
 * that is.
 */
final class AcidityCourse {
    /** A pH this far out of its band is worth a word; assumed. */
    private static final double FAR_OUT = 0.5;

    /** And for so many days together: leaves go pale by weeks; assumed. */
    private static final int DAYS = 7;

    private AcidityCourse() {}

    /**
     * A spell of days, by the last reading of each.
     *
     * @param farHour first sample that is far out
     * @param fromHour first of those out of the band that lead to it
     * @param untilHour last of those out of the band that follow the last that is far out
     * @param days how many between are out of the band; those between need not all be
     * @param worst farthest reading, pH
     */
    record Spell(
            boolean isHigh, int farHour, int fromHour, int untilHour, int days, double worst) {}

    /** The first of them to one side, with all later days that are far out to it. */
    static Optional<Spell> of(TrayCase tray, boolean isHigh) {
        List<Integer> far = days(tray, h -> isFar(tray, isHigh, ph(tray, h)));
        int first = DaySpells.first(far, DAYS);
        if (first < 0) {
            return Optional.empty();
        }
        List<Integer> out = days(tray, h -> beyond(tray, isHigh, ph(tray, h)) > 0);
        int from = first;
        while (out.contains(from - 24)) {
            from -= 24;
        }
        int until = far.get(far.size() - 1);
        while (out.contains(until + 24)) {
            until += 24;
        }
        double worst = ph(tray, first);
        int days = 0;
        for (int hour : out) {
            if (hour >= from && hour <= until) {
                days++;
                double ph = ph(tray, hour);
                worst = isHigh ? Math.max(worst, ph) : Math.min(worst, ph);
            }
        }
        return Optional.of(new Spell(isHigh, first, from, until, days, worst));
    }

    /** Samples of the days at whose end it holds, while the crop lives and the tray is no dregs. */
    static List<Integer> days(TrayCase tray, IntPredicate is) {
        List<Integer> days = new ArrayList<>();
        for (int hour = tray.firstHour / 24 * 24 + 23; hour <= tray.lastHour; hour += 24) {
            if (!tray.isLow(hour) && is.test(hour)) {
                days.add(hour);
            }
        }
        return days;
    }

    /** Whether a pH is so far out of the band to one side that it is worth a word. */
    static boolean isFar(TrayCase tray, boolean isHigh, double ph) {
        return beyond(tray, isHigh, ph) > FAR_OUT;
    }

    private static double beyond(TrayCase tray, boolean isHigh, double ph) {
        Limits limits = tray.tray.limits();
        return isHigh ? ph - limits.phHigh() : limits.phLow() - ph;
    }

    private static double ph(TrayCase tray, int hour) {
        return tray.of.ph().at(hour);
    }
}
