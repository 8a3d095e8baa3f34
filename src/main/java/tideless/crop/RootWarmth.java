package tideless.crop;

/** What the warmth of the solution does to growth. */
public final class RootWarmth {
    private static final double HOT_C = 35;

    /** No growth left from here on, degC; recommended, no source. */
    static final double DEADLY_C = 42;

    /** Growth left at the crop's {@code coldestC}; recommended. */
    private static final double COLDEST_FRAC = 0.5;

    private RootWarmth() {}

    /**
     * Share of growth left at a mean temperature of the root zone, 0-1.
     *
     * <p>1 from the crop's T1 to T2, straight up to T1 from a half at T0 (and on below it),
     * straight down to its figure at 35 degC and from there to 0 at 42. Recommended after Gosselin
     * and Trudel (1983, 1986), Al-Rawahy et al. (2018), J. Agric. Sci. 11:47, Choong et al. (2016),
     * Front. Physiol. 7:405 and others; each crop's figures stand in its file.
     *
     * @param meanTempC mean of 24 h, degC
     */
    public static double growthFrac(CropTraits.RootResponse response, double meanTempC) {
        if (meanTempC < response.rootLowC()) {
            double slope = (1 - COLDEST_FRAC) / (response.rootLowC() - response.rootColdestC());
            return Math.max(0, 1 - slope * (response.rootLowC() - meanTempC));
        }
        if (meanTempC <= response.rootHighC()) {
            return 1;
        }
        double at35 = response.growthAt35Frac();
        if (meanTempC <= HOT_C) {
            return 1
                    - (1 - at35)
                            * (meanTempC - response.rootHighC())
                            / (HOT_C - response.rootHighC());
        }
        return Math.max(0, at35 * (DEADLY_C - meanTempC) / (DEADLY_C - HOT_C));
    }

    /**
     * What the root zone takes from growth beyond what the air has taken, 0-1. Warm roots cost
     * beside warm air: trials that warmed the roots alone found it at any air. Cold roots cost only
     * where they hold growth back more than the air does: warming them in cold air has made up for
     * part of it. Assumed.
     *
     * @param airFrac growth left by the air's temperature, 0-1
     */
    public static double besideAirFrac(
            CropTraits.RootResponse response, double meanTempC, double airFrac) {
        double own = growthFrac(response, meanTempC);
        if (meanTempC >= response.rootLowC()) {
            return own;
        }
        return own >= airFrac ? 1 : own / airFrac;
    }
}
