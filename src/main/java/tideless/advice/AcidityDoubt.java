package tideless.advice;

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

    private AcidityDoubt() {}

    /**
     * A pH that is out whichever way the doubt falls.
     *
     * @param isHigh above the band, not below it
     * @param fromHour first daily sample
     * @param untilHour last daily sample
     * @param worst farthest daily reading, pH
     */
    record Finding(boolean isHigh, int fromHour, int untilHour, double worst) {}

    /** The first such spell of days, or null. */
    static Finding of(TrayCase tray) {
        Limits limits = tray.tray.limits();
        int run = 0;
        boolean high = false;
        double worst = Double.NaN;
        for (int hour = tray.firstHour / 24 * 24 + 23; hour <= tray.lastHour; hour += 24) {
            double ph = tray.of.ph().at(hour);
            boolean isHigh = ph > limits.phHigh() + FAR_OUT;
            boolean isFar =
                    !tray.isLow(hour)
                            && (isHigh || ph < limits.phLow() - FAR_OUT)
                            && isFarAnyway(tray, hour, isHigh, limits);
            if (run > 0 && (!isFar || isHigh != high)) {
                if (run >= DAYS) {
                    return new Finding(high, hour - 24 * run, hour - 24, worst);
                }
                run = 0;
            }
            if (isFar) {
                boolean farther = run == 0 || (isHigh ? ph > worst : ph < worst);
                worst = farther ? ph : worst;
                high = isHigh;
                run++;
            }
        }
        int last = (tray.lastHour + 1) / 24 * 24 - 1;
        return run >= DAYS ? new Finding(high, last - 24 * (run - 1), last, worst) : null;
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
