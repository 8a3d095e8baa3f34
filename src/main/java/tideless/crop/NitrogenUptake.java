package tideless.crop;

import org.apache.commons.math3.util.FastMath;

/** Which form of nitrogen roots take, and what acid or base they leave for it. */
public final class NitrogenUptake {
    /**
     * Preference for ammonium: how many times as readily it is taken as nitrate; 1 to 6, from
     * memory, low confidence. At a constant level the share taken tends to the feed's; the
     * preference sets only what is left in the tray.
     */
    public static final double AMMONIUM_PREFERENCE = 3;

    private static final double[] PH = {3.0, 3.5, 4.5, 5.5};
    private static final double[] AMMONIUM_FRAC = {0, 0.3, 0.7, 1};

    /** Free acid below which the pH is above 5.5 without asking, mol/m3: 10^(3 - 5.5), less 1 %. */
    private static final double ACID_FROM_MOL_PER_M3 = 3.13e-3;

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
     * Uptake of ammonium in acid solution as a share of that at pH 5.5 and more: 0.7 at 4.5 (tomato
     * takes it 42 % faster at 5.5 or 6.5; "Influence of ambient acidity on the absorption of
     * nitrate and ammonium by tomato plants"), 0.3 at 3.5 and 0 at 3.0 (from memory), straight
     * between.
     */
    public static double ammoniumAtPhFrac(double ph) {
        if (ph <= PH[0]) {
            return 0;
        }
        for (int i = 1; i < PH.length; i++) {
            if (ph < PH[i]) {
                double share = (ph - PH[i - 1]) / (PH[i] - PH[i - 1]);
                return AMMONIUM_FRAC[i - 1] + share * (AMMONIUM_FRAC[i] - AMMONIUM_FRAC[i - 1]);
            }
        }
        return 1;
    }

    /**
     * The same from the strong acid a solution holds free, for a step without speciation: below pH
     * 5 nothing in a feed but that acid sets the pH.
     *
     * @param freeAcidMolPerM3 anions less cations, phosphate as H2PO4-, mol charge/m3
     */
    public static double ammoniumAtAcidFrac(double freeAcidMolPerM3) {
        return freeAcidMolPerM3 > ACID_FROM_MOL_PER_M3
                ? ammoniumAtPhFrac(3 - FastMath.log10(freeAcidMolPerM3))
                : 1;
    }
}
