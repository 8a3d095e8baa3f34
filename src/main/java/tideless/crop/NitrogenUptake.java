package tideless.crop;

/** Which form of nitrogen roots take, and what acid or base they leave for it. */
public final class NitrogenUptake {
    /**
     * Preference for ammonium: how many times as readily it is taken as nitrate; 1 to 6, from
     * memory, low confidence. At a constant level the share taken tends to the feed's; the
     * preference sets only what is left in the tray.
     */
    public static final double AMMONIUM_PREFERENCE = 3;

    private static final double[] PH = {3.0, 3.5, 4.5, 5.5};
    private static final double[] CATION_FRAC = {0, 0.3, 0.7, 1};

    private NitrogenUptake() {}

    /**
     * Share of the nitrogen taken that is ammonium, 0-1: p s / (1 + (p - 1) s).
     *
     * @param ammoniumMolPerM3 in the solution
     * @param nitrateMolPerM3 in the solution
     * @param preference p
     */
    public static double ammoniumFrac(
            double ammoniumMolPerM3, double nitrateMolPerM3, double preference) {
        double all = ammoniumMolPerM3 + nitrateMolPerM3;
        if (!(ammoniumMolPerM3 > 0)) {
            return 0;
        }
        double share = ammoniumMolPerM3 / all;
        return preference * share / (1 + (preference - 1) * share);
    }

    /**
     * Uptake of a cation in acid solution as a share of that at pH 5.5 and more: 0.7 at 4.5 (tomato
     * takes ammonium 42 % faster at 5.5 or 6.5; "Influence of ambient acidity on the absorption of
     * nitrate and ammonium by tomato plants"), 0.3 at 3.5 and 0 at 3.0 (from memory), straight
     * between. Measured for ammonium alone; taken for potassium, calcium and magnesium too, which
     * the same electric potential of the root draws in (assumed).
     */
    public static double cationAtPhFrac(double ph) {
        if (ph <= PH[0]) {
            return 0;
        }
        for (int i = 1; i < PH.length; i++) {
            if (ph < PH[i]) {
                double share = (ph - PH[i - 1]) / (PH[i] - PH[i - 1]);
                return CATION_FRAC[i - 1] + share * (CATION_FRAC[i] - CATION_FRAC[i - 1]);
            }
        }
        return 1;
    }

    /**
     * How readily nitrate is taken against pH 6.5: 1 + 0.18 (6.5 - pH) from 4.5 to 6.5 (36 % faster
     * at 4.5; the same trial). Plants that have enough take no more nitrogen for it: it weighs
     * against ammonium.
     */
    public static double nitrateAtPhFactor(double ph) {
        return 1 + 0.18 * (6.5 - Math.max(4.5, Math.min(6.5, ph)));
    }
}
