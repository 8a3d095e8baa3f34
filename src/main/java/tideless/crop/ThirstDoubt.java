package tideless.crop;

/**
 * How far a forecast of thirst may lie off, as standard deviations of its logarithm.
 *
 * <p>Between two stands of one crop half of the difference is a factor that no climate explains and
 * that stays through a run; it is found from readings only. On thirteen measured stands the
 * unfitted main form left 0.20 to 0.23 of it (six cucumber and six tomato houses), 0.13 from week
 * to week with a correlation of about 0.5, and 0.22 from day to day, the meter's noise included.
 * The same stands chose the forms, so these are no independent test; 0.40 and what a fit leaves
 * after some weeks are judgements.
 *
 * @param stand of the factor that stays through a run
 * @param week of a factor that wanders with a memory of {@link #WEEK_MEMORY_DAYS}
 * @param day of each day by itself
 * @param fitted of the stand's factor over the next fortnight once a fit to 7 to 14 days of
 *     readings has found it
 */
public record ThirstDoubt(double stand, double week, double day, double fitted) {
    /** Memory of the weekly factor, days. */
    public static final double WEEK_MEMORY_DAYS = 7;

    /** Over these many days a fit fades back towards {@link #FADED}; judgement. */
    public static final double FIT_FADES_OVER_DAYS = 42;

    /** What a fit's doubt fades back to; judgement. */
    public static final double FADED = 0.20;

    /** Where the forms themselves differ two- to threefold; judgement. */
    public static final double LITTLE_KNOWN = 0.40;

    /** From week to week within a stand: of thirteen measured stands 0.11 to 0.14. */
    public static final double WEEK = 0.13;

    /** Correlation of a week with the week before, on the same stands. */
    public static final double WEEK_MEMORY = 0.5;

    /** From day to day. */
    public static final double DAY = 0.20;

    private static final double FITTED = 0.12;

    /** Leaf area index below which a stand counts as young; judgement. */
    private static final double YOUNG_LEAF_AREA_INDEX = 1;

    /**
     * The doubt of a stand.
     *
     * @param traits its crop, which states the doubt of full stands in a sunlit house
     * @param sunFrac share of the day's light that is a house's sun, 0-1; a stand under lamps alone
     *     or in the open is little known, one that the forms of houses forecast is not ({@link
     *     StandTranspiration#sunlitFrac})
     * @param leafAreaIndex of the ground it has; a young stand is little known
     */
    public static ThirstDoubt of(CropTraits traits, double sunFrac, double leafAreaIndex) {
        double grown = Math.min(1, Math.max(0, leafAreaIndex / YOUNG_LEAF_AREA_INDEX));
        double known = StandTranspiration.sunlitFrac(sunFrac) * grown;
        return new ThirstDoubt(standDoubt(traits, known), WEEK, DAY, FITTED);
    }

    /**
     * What is left of a stand's doubt where its leaf is not in doubt, or is drawn beside: the
     * factor of a grown stand at any age. What is little known of a young stand is its leaf.
     *
     * @param sunFrac share of the day's light that is a house's sun, 0-1; 0 in the open
     */
    public static double besideLeaf(CropTraits traits, double sunFrac) {
        return standDoubt(traits, StandTranspiration.sunlitFrac(sunFrac));
    }

    private static double standDoubt(CropTraits traits, double knownFrac) {
        double sunlit = traits.thirst().standDoubt();
        double lamps = Math.max(sunlit, LITTLE_KNOWN);
        return lamps + (sunlit - lamps) * knownFrac;
    }
}
