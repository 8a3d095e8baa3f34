package tideless.sim;

import tideless.crop.Osmosis;
import tideless.crop.Wilting;
import tideless.rig.VesselId;

/**
 * Tells when the salt of a tray rises too fast for its roots, when it kills seedlings, and when
 * want of oxygen begins and ends to cost growth. Scratch space of one run.
 */
final class RootAlarms {
    /** Growth left by dissolved oxygen below which a tray is called short of air; assumed. */
    static final double SHORT_OF_AIR_FRAC = 0.90;

    /** The same above which it no longer is; assumed. */
    static final double AIR_ENOUGH_FRAC = 0.95;

    private final VesselId where;
    private double usedToMsPerCm;
    private double followedSpanS = Double.NaN; // what followedFrac holds for
    private double followedFrac;
    private boolean saltWilted;
    private boolean shortOfAir;

    /**
     * @param where told with each event
     * @param startMsPerCm strength the roots are used to at the start, mS/cm
     */
    RootAlarms(VesselId where, double startMsPerCm) {
        this.where = where;
        usedToMsPerCm = startMsPerCm;
    }

    /**
     * Follows a step in a solution; says whether it is so strong at once that plants wilt.
     *
     * @param drunkDown whether it is strong because it is little: told with the event
     */
    boolean isShockedBy(
            double saltMsPerCm, boolean drunkDown, double endS, double spanS, EventLog log) {
        boolean shocked = saltMsPerCm > usedToMsPerCm + Osmosis.WILTING_RISE_MS_PER_CM;
        if (shocked != saltWilted) {
            log.add(
                    shocked ? Event.Kind.SALT_WILTED : Event.Kind.SALT_BORNE,
                    endS,
                    where,
                    shocked && drunkDown ? Event.DRUNK_DOWN : "");
        }
        saltWilted = shocked;
        if (spanS != followedSpanS) {
            followedSpanS = spanS;
            followedFrac = Osmosis.followedFrac(spanS);
        }
        usedToMsPerCm = Osmosis.usedToMsPerCm(usedToMsPerCm, saltMsPerCm, followedFrac);
        return shocked;
    }

    /**
     * Whether a day in a solution is the death of what was set out.
     *
     * @param daysSincePlanted days since they were set out, the day that has ended among them
     * @param saltMsPerCm mean of that day
     */
    static boolean killsSeedlings(int daysSincePlanted, double saltMsPerCm) {
        return daysSincePlanted <= Wilting.SEEDLING_DAYS
                && saltMsPerCm > Osmosis.SEEDLING_DEATH_MS_PER_CM;
    }

    /** A day has ended of which dissolved oxygen has left that share of growth, 0-1. */
    void endDay(double airFrac, double atS, EventLog log) {
        if (airFrac < SHORT_OF_AIR_FRAC && !shortOfAir) {
            shortOfAir = true;
            log.add(Event.Kind.SHORT_OF_AIR, atS, where);
        } else if (airFrac > AIR_ENOUGH_FRAC && shortOfAir) {
            shortOfAir = false;
            log.add(Event.Kind.AIR_ENOUGH, atS, where);
        }
    }
}
