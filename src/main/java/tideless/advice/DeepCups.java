package tideless.advice;

import java.util.List;
import java.util.function.IntPredicate;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Tray;

/**
 * Cups that stand so deep in solution for so long that plugs and stem bases rot. A deck that floats
 * holds its cups as it was made, and is not asked.
 */
final class DeepCups {
    /** For so long young stems bear it, d; common practice, no source. */
    private static final int BORNE_DAYS = 7;

    private static final int DAY_H = (int) (Time.DAY_S / Time.HOUR_S);

    private DeepCups() {}

    static void add(TrayCase tray, Findings out) {
        if (tray.traits == null || tray.tray.deck().floats()) {
            return;
        }
        IntPredicate isDeep = h -> wetM(tray, h) > Tray.CUP_DEEP_M;
        int from = tray.firstSpell(BORNE_DAYS * DAY_H, isDeep);
        if (from < 0) {
            return;
        }
        double mostM = tray.greatest(from, h -> wetM(tray, h));
        double days = tray.hoursOf(isDeep) / (double) DAY_H;
        out.warnings.add(
                new Warning(
                        Warning.Kind.CUPS_UNDER,
                        tray.id,
                        tray.trace.clockAtSample(from),
                        tray.lastOf(from, isDeep),
                        Measure.atMost(1000 * mostM, 1000 * Tray.CUP_DEEP_M, Unit.MILLIMETRES),
                        new Cause(
                                Cause.Kind.CUPS_STAY_UNDER,
                                Facts.of(Quantity.LEVEL, 1000 * mostM)
                                        .and(Quantity.LONGEST, FastMath.rint(days))
                                        .and(Quantity.CUPS_WET_BY, 1000 * Tray.CUP_WET_M)),
                        cures(tray.tray)));
    }

    private static double wetM(TrayCase tray, int hour) {
        return tray.of.levelM().at(hour) - tray.tray.cupBottomM();
    }

    /** The level down to the cups, or where it is the stock of water the cups up to the level. */
    private static List<Cure> cures(Tray tray) {
        Facts wet = Facts.of(Quantity.CUPS_WET_BY, 1000 * Tray.CUP_WET_M);
        Cure higher =
                new Cure(
                        Cure.Kind.HANG_CUP_HIGHER,
                        wet.and(Quantity.LEVEL, 1000 * (tray.startLevelM() - Tray.CUP_WET_M)));
        double toM = tray.wetCupM();
        if (tray.filling() instanceof Filling.ByValve) {
            return List.of(
                    new Cure(Cure.Kind.LEVEL_AT_CUPS, wet.and(Quantity.SETTING, 1000 * toM)),
                    higher);
        }
        return tray.filling() instanceof Filling.ByHand
                ? List.of(
                        new Cure(Cure.Kind.LEVEL_AT_CUPS, wet.and(Quantity.LEVEL, 1000 * toM)),
                        higher)
                : List.of(higher);
    }
}
