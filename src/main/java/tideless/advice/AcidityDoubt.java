package tideless.advice;

import java.util.ArrayList;
import java.util.List;
import tideless.physics.Time;
import tideless.rig.Limits;
import tideless.sim.Event;
import tideless.sim.TraySeries;
import tideless.solution.Acidity;
import tideless.solution.Component;
import tideless.solution.Composition;

/**
 * Whether a tray's pH leaves its band by more than the model's doubt.
 *
 * <p>Roots that take more anions than cations leave alkali behind, the others acid. Which of them a
 * crop does hangs on contents that are known to a tenth or so, so a pH is told only where that
 * share of the nitrate taken since the last change, as acid and as base, leaves it out of the band.
 */
final class AcidityDoubt {
    /**
     * Doubt of the charge that uptake leaves behind, share of the nitrate taken: nitrogen known to
     * a tenth, potassium (half its charge) to 15 %, calcium and magnesium (a third) to 20 %, as the
     * root of the sum of squares; the shares assumed.
     */
    private static final double UPTAKE_DOUBT_FRAC = 0.15;

    /** A pH this far out of its band is worth a word; assumed. */
    private static final double FAR_OUT = 0.5;

    /** And so many days together; assumed. */
    private static final int DAYS = 3;

    /** Or half of the days of two weeks, where each top-up brings it back for a day; assumed. */
    private static final int FORTNIGHT_DAYS = 14;

    private AcidityDoubt() {}

    /**
     * A pH that is out whichever way the doubt falls.
     *
     * @param isHigh above the band, not below it
     * @param fromHour first daily sample
     * @param untilHour last daily sample; those between need not all be out
     * @param days how many samples are
     * @param worst farthest daily reading, pH
     */
    record Finding(boolean isHigh, int fromHour, int untilHour, int days, double worst) {}

    /** The first such spell of days with all later days out to the same side, or null. */
    static Finding of(TrayCase tray) {
        Limits limits = tray.tray.limits();
        List<Finding> days = new ArrayList<>(); // those that are out, one by one
        for (int hour = tray.firstHour / 24 * 24 + 23; hour <= tray.lastHour; hour += 24) {
            double ph = tray.of.ph().at(hour);
            boolean isHigh = ph > limits.phHigh() + FAR_OUT;
            boolean isFar =
                    !tray.isLow(hour)
                            && (isHigh || ph < limits.phLow() - FAR_OUT)
                            && isFarAnyway(tray, hour, isHigh, limits);
            if (isFar) {
                days.add(new Finding(isHigh, hour, hour, 1, ph));
            }
        }
        return days.stream()
                .filter(day -> isSpell(day, days))
                .findFirst()
                .map(first -> allFrom(first, days))
                .orElse(null);
    }

    /** Whether so many days follow at once, or half of the two weeks that begin with it. */
    private static boolean isSpell(Finding first, List<Finding> days) {
        return count(first, days, DAYS) == DAYS
                || count(first, days, FORTNIGHT_DAYS) >= FORTNIGHT_DAYS / 2;
    }

    /** Days out to the same side within so many from the first. */
    private static long count(Finding first, List<Finding> days, int within) {
        return days.stream()
                .filter(day -> day.isHigh() == first.isHigh())
                .filter(day -> day.fromHour() >= first.fromHour())
                .filter(day -> day.fromHour() < first.fromHour() + 24 * within)
                .count();
    }

    private static Finding allFrom(Finding first, List<Finding> days) {
        Finding all = first;
        for (Finding day : days) {
            if (day.isHigh() == first.isHigh() && day.fromHour() > first.fromHour()) {
                double worst =
                        first.isHigh()
                                ? Math.max(day.worst(), all.worst())
                                : Math.min(day.worst(), all.worst());
                all =
                        new Finding(
                                first.isHigh(),
                                first.fromHour(),
                                day.fromHour(),
                                all.days() + 1,
                                worst);
            }
        }
        return all;
    }

    private static boolean isFarAnyway(TrayCase tray, int hour, boolean isHigh, Limits limits) {
        Composition held = tray.of.compositionAt(hour);
        double doubt = UPTAKE_DOUBT_FRAC * nitrateTakenMolPerM3(tray, hour);
        // Chloride alone is a strong acid in the sum of charges, sodium alone a strong base.
        Component towardsTheBand = isHigh ? Component.CL : Component.NA;
        double ph =
                Acidity.phInAir(
                        held.with(towardsTheBand, held.molPerM3(towardsTheBand) + doubt),
                        tray.of.solutionTempC().at(hour),
                        tray.of.of(TraySeries.SOLUTION_CO2).at(hour));
        return isHigh ? ph > limits.phHigh() + FAR_OUT : ph < limits.phLow() - FAR_OUT;
    }

    /** Nitrate taken since the solution was last changed, over what the tray holds now. */
    private static double nitrateTakenMolPerM3(TrayCase tray, int hour) {
        int from = 0;
        for (Event event : tray.events()) {
            if (TrayCase.isChange(event) && event.atS() <= hour * Time.HOUR_S) {
                from = (int) (event.atS() / Time.HOUR_S);
            }
        }
        var uptakeMol = tray.of.uptakeMol().get(Component.NO3.ordinal());
        double taken = uptakeMol.at(hour) - (from == 0 ? 0 : uptakeMol.at(from));
        return Math.max(0, taken) / tray.of.volumeM3().at(hour);
    }
}
