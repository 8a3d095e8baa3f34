package tideless.crop;

/** Roots on their way out of a plug, and on in a nursery. */
public final class Rooting {
    /**
     * Days until roots that filled a plug grow out of it at their full rate, rising evenly: as if
     * they waited for half of them. A wait of 2 to 7 days is told, from memory, low confidence; its
     * low end, as levels that fall by 1.4 to 5 mm a day never outran the roots of published tanks.
     */
    private static final int LAG_DAYS = 4;

    /** Roots of a seed grow so far through plug or cup before they hang, m; common practice. */
    static final double PLUG_DEPTH_M = 0.04;

    private Rooting() {}

    /**
     * Share of the full rate at which roots leave the plug they filled, 0-1.
     *
     * @param day 1 for the first day out of the cell
     */
    public static double outOfPlugFrac(int day) {
        return Math.min(1, (day - 0.5) / LAG_DAYS);
    }

    /**
     * Length of the leading roots below the cup after so many days more in the crop's nursery, hung
     * into damp air or over a dish, m.
     *
     * @param fromM their length now, m; 0 for roots that end in their plug
     */
    public static double hungOnM(CropTraits traits, double fromM, int days) {
        double dayM =
                traits.roots().elongationMPerDay()
                        * Growing.temperatureFrac(traits.growth(), traits.nursery().tempC());
        double lengthM = fromM;
        for (int day = 1; day <= days; day++) {
            lengthM += dayM * (fromM > 0 ? 1 : outOfPlugFrac(day));
        }
        return Math.min(lengthM, Math.max(fromM, traits.roots().longestM()));
    }
}
