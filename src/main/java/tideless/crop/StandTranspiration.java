package tideless.crop;

import tideless.physics.Elementary;
import tideless.physics.ReferenceEvapotranspiration;
import tideless.physics.Time;

/**
 * Thirst of a stand in a house by two published forms that know the stand by its leaf area alone.
 *
 * <p>Of some 75 published variants run unfitted on thirteen measured stands (six cucumber and six
 * tomato houses, one desert house) these two come nearest the level, the first tracks days and
 * weeks best, and they fail in opposite ways: the first makes too much of dry air between houses,
 * the second knows nothing of it. They were chosen on those stands and are not validated by them.
 * Both are per ground the stand may cover ({@link Canopy#boundGroundM2}), leaf area spread evenly
 * over it.
 */
public final class StandTranspiration {
    /**
     * Aerodynamic resistance of a house's stand per ground, s/m; Fernandez et al. (2010), Irrig.
     * Sci. 28:497-509.
     */
    public static final double AERODYNAMIC_S_PER_M =
            ReferenceEvapotranspiration.HOUSE_RESISTANCE_S_PER_M;

    /** Share of the short wave that a stand keeps: 1 less the albedo 0.23 of FAO-56, eq. 38. */
    public static final double ABSORBED_FRAC = 0.77;

    /** Extinction in the cover of the first form; 0.64 to 0.8 published, as in Carmassi's. */
    private static final double COVER_EXTINCTION = 0.7;

    /** Leaf area index at which a stand counts as full. */
    private static final double FULL_LEAF_AREA_INDEX = 3;

    // Carmassi et al. (2007), Agric. Water Manage. 88:73-82: form read, numbers from memory.
    private static final double RADIATION_SLOPE = 0.946;
    private static final double RADIATION_EXTINCTION = 0.69;
    private static final double RADIATION_CONSTANT_KG_PER_M2S = 0.188 / Time.DAY_S;
    private static final double RADIATION_LATENT_J_PER_KG = 2.45e6;

    /**
     * Share of the day's light from where on a stand counts as sunlit: the measured houses that the
     * forms were chosen on had down to a third of sun in December, the rest from sodium lamps.
     * Rounded up; assumed.
     */
    private static final double SUNLIT_FRAC = 0.5;

    private StandTranspiration() {}

    /**
     * How far a stand is one in the sun, for its forms and for what is known of them alike: 0 under
     * lamps alone, 1 from half of the light on.
     *
     * @param sunFrac share of the day's light that is sun, 0-1
     */
    public static double sunlitFrac(double sunFrac) {
        return Math.min(1, Math.max(0, sunFrac / SUNLIT_FRAC));
    }

    /** Share of a full stand's thirst: (1 - exp(-0.7 L)) / (1 - exp(-2.1)), 1 at L = 3. */
    public static double coverFrac(double leafAreaIndex) {
        return Elementary.expm1(-COVER_EXTINCTION * leafAreaIndex)
                / Elementary.expm1(-COVER_EXTINCTION * FULL_LEAF_AREA_INDEX);
    }

    /**
     * FAO-56's combination equation with a house's fixed resistances and a full-cover coefficient.
     *
     * <p>E = Kc f(L) [s 0.77 G + c D / ra] / (latent [s + g (1 + rs / ra)]), ra 150 s/m (Fernandez
     * et al. 2010), rs 70 s/m (Allen et al. 1998, box 5, from memory), day and night, long wave
     * taken as nil.
     *
     * @param fullCover Kc, dimensionless
     * @param leafAreaIndex L, m2/m2
     * @param shortWaveWPerM2 G, all short wave at the crop's top: sun, lamp and near infrared
     * @param airTempC degC
     * @param vapourPressurePa of the air, Pa
     * @param airPressurePa whole pressure, Pa
     * @param surfaceFrac what rs is multiplied by, 1 at 400 ppm or in the dark
     * @return kg/m2/s, never negative
     */
    public static double penmanMonteithKgPerM2S(
            double fullCover,
            double leafAreaIndex,
            double shortWaveWPerM2,
            double airTempC,
            double vapourPressurePa,
            double airPressurePa,
            double surfaceFrac) {
        return Math.max(
                0,
                fullCover
                        * coverFrac(leafAreaIndex)
                        * ReferenceEvapotranspiration.penmanMonteithKgPerM2S(
                                ABSORBED_FRAC * shortWaveWPerM2,
                                airTempC,
                                vapourPressurePa,
                                AERODYNAMIC_S_PER_M,
                                surfaceFrac
                                        * ReferenceEvapotranspiration.SURFACE_RESISTANCE_S_PER_M,
                                airPressurePa));
    }

    /**
     * Light and leaf alone: E = 0.946 (1 - exp(-0.69 L)) G / 2.45 MJ/kg, and 0.188 L/m2 a day
     * spread over it.
     *
     * <p>Carmassi et al. (2007), Agric. Water Manage. 88:73-82, closed rockwool tomato; numbers
     * from memory. The constant belongs to a full stand; below a leaf area index of 3 it is taken
     * in proportion to cover, for bare ground does not drink (assumed).
     *
     * @param leafAreaIndex L, m2/m2
     * @param shortWaveWPerM2 G, W/m2
     * @return kg/m2/s
     */
    public static double radiationKgPerM2S(double leafAreaIndex, double shortWaveWPerM2) {
        double stopped = -Elementary.expm1(-RADIATION_EXTINCTION * leafAreaIndex);
        double full = -Elementary.expm1(-RADIATION_EXTINCTION * FULL_LEAF_AREA_INDEX);
        return RADIATION_SLOPE * stopped * shortWaveWPerM2 / RADIATION_LATENT_J_PER_KG
                + RADIATION_CONSTANT_KG_PER_M2S * Math.min(1, stopped / full);
    }
}
