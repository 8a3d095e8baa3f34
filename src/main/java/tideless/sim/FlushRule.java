package tideless.sim;

import java.time.LocalDate;
import tideless.rig.Filling;
import tideless.rig.Tray;

/** When a tray that has grown too salty or too lean is changed, and how much of it. */
public final class FlushRule {
    /** What a grower's EC meter may be off by, share of its reading; common practice, no source. */
    public static final double METER_DOUBT_FRAC = 0.05;

    /**
     * A tray with less than this share of what it should hold wants water, not a flush: what is
     * left is strong because it is little; assumed.
     */
    public static final double LOW_FRAC = 0.2;

    /** No solution is changed so shortly before the harvest, d; assumed: it would not pay. */
    public static final int DAYS_BEFORE_HARVEST = 7;

    /**
     * Before its canopy closes, at a leaf area index of 1, a crop is content with this share of the
     * least EC it wants later; common practice (seedlings on half strength), no source.
     */
    private static final double YOUNG_FRAC = 0.5;

    private static final double CLOSED_LEAF_AREA_INDEX = 1;

    /**
     * A tray is not poured away for less than this: its reading over the feed's, or the feed's over
     * its reading. Else it is changed again and again for next to nothing where feed and limit lie
     * close together, and the feed is what to change; assumed.
     */
    private static final double WORTH = 1.2;

    /**
     * A lean reading is no reason to pour a solution away as long as each nutrient holds more than
     * so many times what slows its uptake: plants take from lean solutions what they want; assumed.
     */
    public static final double NEARLY_SHORT = 3;

    private FlushRule() {}

    /**
     * Whether a reading is too high beyond the meter's doubt and the feed would mend it well.
     *
     * @param ecMsPerCm of the tray, mS/cm
     * @param feedMsPerCm of the feed, mS/cm
     * @param highMsPerCm the limit, mS/cm
     */
    public static boolean isTooSalty(double ecMsPerCm, double feedMsPerCm, double highMsPerCm) {
        return ecMsPerCm > highMsPerCm * (1 + METER_DOUBT_FRAC)
                && feedMsPerCm < highMsPerCm
                && ecMsPerCm >= WORTH * feedMsPerCm;
    }

    /**
     * Whether a reading is too low beyond the meter's doubt and the feed would mend it well: a feed
     * that is itself about the least would be lean again at once.
     *
     * @param leanMsPerCm least EC at the crop's stage, mS/cm
     */
    public static boolean isTooLean(double ecMsPerCm, double feedMsPerCm, double leanMsPerCm) {
        return ecMsPerCm < leanMsPerCm * (1 - METER_DOUBT_FRAC)
                && mendsLean(feedMsPerCm, leanMsPerCm)
                && feedMsPerCm >= WORTH * ecMsPerCm;
    }

    /**
     * Whether a feed would bring a lean reading back above its limit, as a meter shows it: where it
     * would not, a reading below the limit is no reason to pour anything away.
     *
     * @param leanMsPerCm least EC at the crop's stage, mS/cm
     */
    public static boolean mendsLean(double feedMsPerCm, double leanMsPerCm) {
        return feedMsPerCm > leanMsPerCm * (1 + METER_DOUBT_FRAC);
    }

    /**
     * Least EC a crop wants at its stage.
     *
     * @param lowMsPerCm lower limit of the grown crop, mS/cm
     * @param leafAreaIndex m2 leaf per m2 ground
     */
    public static double leanMsPerCm(double lowMsPerCm, double leafAreaIndex) {
        return leafAreaIndex < CLOSED_LEAF_AREA_INDEX ? YOUNG_FRAC * lowMsPerCm : lowMsPerCm;
    }

    /**
     * What a tray is meant to hold: to its valve's setting, its hand's level or its start, m3.
     *
     * @param day after whose visit, as valves are moved
     */
    public static double workingM3(Tray tray, LocalDate day) {
        double levelM =
                tray.filling() instanceof Filling.ByValve valve
                        ? valve.settingM(day)
                        : tray.filling() instanceof Filling.ByHand hand
                                ? hand.toLevelM()
                                : tray.startLevelM();
        return tray.shape().volumeM3(levelM);
    }

    /** Whether a tray of its filling and volume may be changed at all. */
    public static boolean mayChange(Tray tray, LocalDate day, double volumeM3) {
        return !(tray.filling() instanceof Filling.Sealed)
                && volumeM3 >= LOW_FRAC * workingM3(tray, day);
    }
}
