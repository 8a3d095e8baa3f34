package tideless.advice;

import java.util.List;
import java.util.function.IntPredicate;
import tideless.physics.Time;
import tideless.sim.Event;
import tideless.sim.Series;
import tideless.sim.TraySeries;
import tideless.solution.Acidity;
import tideless.solution.Component;
import tideless.solution.Composition;

/**
 * Whether a tray's pH leaves its band by more than the model's doubt.
 *
 * <p>Roots that take more anions than cations leave alkali behind, the others acid. Which of them a
 * crop does hangs on contents that are known to a tenth or so. Where runs at both ends of these are
 * at hand, they tell; of a run alone that share of the nitrate taken since the last change, as acid
 * and as base, has to leave it out of the band. It knows nothing of how acid checks what roots take
 * up, and grows with the weeks, so it is the greater doubt.
 */
final class AcidityDoubt {
    /**
     * Doubt of the charge that uptake leaves behind, share of the nitrate taken: nitrogen known to
     * a tenth, potassium (half its charge) to 15 %, calcium and magnesium (a third) to 20 %, as the
     * root of the sum of squares; the shares assumed.
     */
    private static final double UPTAKE_DOUBT_FRAC = 0.15;

    /** So many days together are a spell; assumed. */
    private static final int DAYS = 3;

    private AcidityDoubt() {}

    /** Whether it is far out to one side for a spell of days, by what a run alone tells. */
    static boolean isOut(TrayCase tray, boolean isHigh) {
        return isOut(tray, isHigh, h -> isFarAnyway(tray, h, isHigh));
    }

    /**
     * The same by runs at both ends of the contents.
     *
     * @param nearest to the band that any of them reads, hour by hour
     */
    static boolean isOut(TrayCase tray, boolean isHigh, Series nearest) {
        return isOut(tray, isHigh, h -> AcidityCourse.isFar(tray, isHigh, nearest.at(h)));
    }

    private static boolean isOut(TrayCase tray, boolean isHigh, IntPredicate isSure) {
        List<Integer> days =
                AcidityCourse.days(
                        tray,
                        h ->
                                AcidityCourse.isFar(tray, isHigh, tray.of.ph().at(h))
                                        && isSure.test(h));
        return DaySpells.first(days, DAYS) >= 0;
    }

    private static boolean isFarAnyway(TrayCase tray, int hour, boolean isHigh) {
        Composition held = tray.of.compositionAt(hour);
        double doubt = UPTAKE_DOUBT_FRAC * nitrateTakenMolPerM3(tray, hour);
        // Chloride alone is a strong acid in the sum of charges, sodium alone a strong base.
        Component towardsTheBand = isHigh ? Component.CL : Component.NA;
        double ph =
                Acidity.phInAir(
                        held.with(towardsTheBand, held.molPerM3(towardsTheBand) + doubt),
                        tray.of.solutionTempC().at(hour),
                        tray.of.of(TraySeries.SOLUTION_CO2).at(hour));
        return AcidityCourse.isFar(tray, isHigh, ph);
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
