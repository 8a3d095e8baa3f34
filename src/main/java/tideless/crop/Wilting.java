package tideless.crop;

/** Plants cut off from water: how long they stand, what recovers, what is lost. */
public final class Wilting {
    /** Water that fresh roots in moist air can give up, m3/g: 0.4 mL; from memory, no source. */
    static final double ROOT_STORE_M3_PER_G = 0.4e-6;

    /** Dry share of fresh root: 6 %; from memory. */
    static final double ROOT_DRY_FRAC = 0.06;

    /** Hours wilted up to which a plant is as before within 1 to 3 h; from memory, no source. */
    public static final double HARMLESS_H = 6;

    /** Hours wilted from which root tips are dead and the crop likely lost; from memory. */
    public static final double ROOTS_LOST_H = 24;

    /**
     * Growth of the days after wilting for {@link #HARMLESS_H} to {@link #ROOTS_LOST_H}: 50 to 90 %
     * for 3 days; from memory, its middle taken.
     */
    static final double CHECKED_GROWTH_FRAC = 0.7;

    static final double CHECKED_DAYS = 3;

    /** Days without growth while new roots come: a lost week; assumed. */
    public static final double REROOTING_DAYS = 7;

    /** Days after transplanting in which a plant counts as a seedling; from memory. */
    public static final double SEEDLING_DAYS = 10;

    private Wilting() {}

    /**
     * Water that the roots of a plant in moist air give up once neither solution nor plug gives
     * any, m3.
     *
     * @param rootDryG dry mass of root, g
     */
    public static double storeM3(double rootDryG) {
        return ROOT_STORE_M3_PER_G * rootDryG / ROOT_DRY_FRAC;
    }

    /**
     * Time to wilt on a store, s; infinite without thirst.
     *
     * @param storeM3 as of {@link #storeM3}
     * @param thirstM3PerS of the plant
     */
    public static double standsS(double storeM3, double thirstM3PerS) {
        return thirstM3PerS > 0 ? storeM3 / thirstM3PerS : Double.POSITIVE_INFINITY;
    }

    /** What becomes of a plant that gets water again. */
    public enum Recovery {
        /** As before within hours. */
        FULL(""),
        /** Growth is checked for some days. */
        CHECKED("growth held back for three days"),
        /** Root tips are dead: a week is lost until new ones have come. */
        REROOTS("a week lost to new roots"),
        /** Nothing comes back. */
        LOST("lost");

        private final String title;

        Recovery(String title) {
            this.title = title;
        }

        /** What it costs, in words; empty for nothing. */
        public String title() {
            return title;
        }
    }

    /**
     * Recovery of a plant that was wilted for so long.
     *
     * @param wiltedH hours wilted without a break
     * @param lostAfterH hours after which the crop is lost: its {@code wiltToDeathH}; for a
     *     seedling at most {@link #ROOTS_LOST_H}
     * @param seedling within {@link #SEEDLING_DAYS}: its few roots are all tips, so that what would
     *     check an older plant costs it a week; assumed
     */
    public static Recovery recovery(double wiltedH, double lostAfterH, boolean seedling) {
        if (wiltedH >= lostAfterH) {
            return Recovery.LOST;
        }
        if (wiltedH >= (seedling ? HARMLESS_H : ROOTS_LOST_H)) {
            return Recovery.REROOTS;
        }
        return wiltedH < HARMLESS_H ? Recovery.FULL : Recovery.CHECKED;
    }

    /** Hours wilted after which a plant is lost, h. */
    public static double lostAfterH(CropTraits traits, boolean seedling) {
        double own = traits.roots().wiltToDeathH();
        return seedling ? Math.min(own, ROOTS_LOST_H) : own;
    }

    /**
     * Share of growth left some time after recovery, 0-1.
     *
     * @param daysSince days since it got water again
     */
    public static double growthFrac(Recovery recovery, double daysSince) {
        return switch (recovery) {
            case FULL -> 1;
            case CHECKED -> daysSince < CHECKED_DAYS ? CHECKED_GROWTH_FRAC : 1;
            case REROOTS -> daysSince < REROOTING_DAYS ? 0 : 1;
            case LOST -> 0;
        };
    }
}
