package tideless.crop;

import org.apache.commons.math3.util.FastMath;

/** Air and hunger for light that kill a plant by themselves, whatever its roots have. */
public final class Killing {
    /**
     * Air that kills leaves within the hour, degC: tissue of vegetables dies at 45 to 52 (from
     * memory, low confidence).
     */
    public static final double SCORCH_C = 48;

    /**
     * Days at 20 degC a plant lives on what it has stored while it gains nothing; seedlings kept
     * dark fall in one to three weeks (common practice, no source).
     */
    public static final double STORES_DAYS = 14;

    /** A day that adds less of the plant's dry mass gains nothing, 0-1; assumed. */
    private static final double NOTHING_FRAC = 0.001;

    private static final double STORES_AT_C = 20;

    /** Breathing doubles with so many kelvins (Q10 of 2, handbook value, from memory). */
    private static final double DOUBLES_IN_K = 10;

    /**
     * Growth of plants from warm lands stops at so much and more, and cold above freezing injures
     * them; hardy ones grow on below 7 degC. Lyons (1973), Annual Review of Plant Physiology 24:445
     * tells these two kinds apart (from memory).
     */
    private static final double TENDER_BASE_C = 8;

    /**
     * Air below which leaves of tender crops are injured where no file says it: tomato, pepper and
     * cucumber below some 7 to 10 degC, degC; from memory.
     */
    private static final double CHILLS_C = 7;

    /**
     * What chills them to death, kelvins below what their leaves bear times days. Leaves of basil
     * in store last a day at 0 degC and three at 5 (Lange and Cameron 1994, HortScience 29:102,
     * from memory), some 12 to 21 below its 12 degC; a plant is taken to bear twice that, common
     * practice without a source: at 4 degC basil is lost in a week, tomato and pepper in a
     * fortnight.
     */
    private static final double CHILL_KD = 40;

    private Killing() {}

    /** Whether cold above freezing injures a crop. */
    public static boolean isTender(CropTraits traits) {
        return traits.growth().baseC() >= TENDER_BASE_C;
    }

    /** Mean air of a day below which a tender crop is chilled, degC. */
    public static double chilledBelowC(CropTraits traits) {
        double chillC = traits.response().chillC();
        return chillC > Double.NEGATIVE_INFINITY ? chillC : CHILLS_C;
    }

    /**
     * How much a crop has been chilled by the end of a day, K d; a day without is a new start, as
     * warm spells between undo what cold did (common practice in stores, no source).
     *
     * @param beforeKd by the day before, K d
     * @param meanC of the day's air, degC
     */
    public static double chilledKd(CropTraits traits, double beforeKd, double meanC) {
        double belowK = chilledBelowC(traits) - meanC;
        return isTender(traits) && belowK > 0 ? beforeKd + belowK : 0;
    }

    /** Whether so much kills, K d. */
    public static boolean isChilled(double chilledKd) {
        return chilledKd > CHILL_KD;
    }

    /** Whether the air of some hour kills by frost. */
    public static boolean isFrozen(CropTraits traits, double lowestC) {
        return lowestC < traits.response().frostC();
    }

    /** Whether the air of some hour kills by heat. */
    public static boolean isScorched(double highestC) {
        return highestC > SCORCH_C;
    }

    /** Whether a day's gain is nothing to a plant of such dry mass, both g; to a seed none is. */
    public static boolean isNothing(double gainG, double dryG) {
        return dryG > 0 && !(gainG > NOTHING_FRAC * dryG);
    }

    /**
     * How much of {@link #STORES_DAYS} a day takes; less than 0 where the plant gained and has
     * stores again.
     *
     * @param gainG dry, by light, air and salt alone, g
     * @param dryG of the plant, g; 0 of a seed, which has its own stores
     * @param meanC of the day's air; below the crop's base the plant rests
     */
    public static double storesTakenDays(
            CropTraits traits, double gainG, double dryG, double meanC) {
        if (!isNothing(gainG, dryG)) {
            return -STORES_DAYS;
        }
        return meanC > traits.growth().baseC()
                ? FastMath.pow(2, (meanC - STORES_AT_C) / DOUBLES_IN_K)
                : 0;
    }
}
