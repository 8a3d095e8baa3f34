package tideless.physics;

/**
 * Resistance of the still air at a leaf.
 *
 * <p>Every name says which sides are counted. {@code OneSide}: the layer over one face, per area of
 * that face. {@code BothSides}: the layers over both faces side by side, per area of the leaf
 * counted once; it is half of {@code OneSide} when both are alike. A leaf gives off heat on both
 * sides; it gives off vapour on those that have stomata. Nothing here contains a leaf area index
 * but {@link #canopySPerM}.
 *
 * <p>Published models of this layer differ by a factor of 1.5 (turbulence of the air in front of
 * the leaf).
 */
public final class LeafBoundaryLayer {
    /**
     * Smallest difference of leaf and air that drives free convection, K; a judgement: it keeps the
     * resistance finite in still air.
     */
    public static final double LEAST_DIFFERENCE_K = 0.5;

    private LeafBoundaryLayer() {}

    /**
     * Heat, both sides side by side, free convection of a level leaf: Nu = 0.54 Ra^(1/4) on the one
     * face and 0.27 Ra^(1/4) on the other (McAdams 1954, second hand).
     *
     * @param leafMinusAirK either sign; less than {@link #LEAST_DIFFERENCE_K} counts as that
     * @param leafLengthM m
     * @param airTempC degC
     * @param vapourPressurePa Pa
     * @param airPressurePa Pa
     * @return s/m of leaf, both faces counted
     */
    public static double freeHeatBothSidesSPerM(
            double leafMinusAirK,
            double leafLengthM,
            double airTempC,
            double vapourPressurePa,
            double airPressurePa) {
        double viscosity =
                HumidAir.kinematicViscosityM2PerS(airTempC, vapourPressurePa, airPressurePa);
        double diffusivity =
                HumidAir.heatDiffusivityM2PerS(airTempC, vapourPressurePa, airPressurePa);
        double rayleigh =
                TubeFlow.GRAVITY_M_PER_S2
                        * leafLengthM
                        * leafLengthM
                        * leafLengthM
                        * Math.max(LEAST_DIFFERENCE_K, Math.abs(leafMinusAirK))
                        / ((airTempC + 273.15) * viscosity * diffusivity);
        return leafLengthM / ((0.54 + 0.27) * Math.sqrt(Math.sqrt(rayleigh)) * diffusivity);
    }

    /**
     * Heat, both sides side by side, forced and free flow together: the two conductances in a power
     * mean of order 3, never summed, so that free convection is a floor in still air.
     *
     * @param airSpeedMPerS m/s, 0 allowed
     * @param leafLengthM m
     * @param leafMinusAirK either sign
     * @param airTempC degC
     * @param vapourPressurePa Pa
     * @param airPressurePa Pa
     * @return s/m of leaf, both faces counted
     */
    public static double heatBothSidesSPerM(
            double airSpeedMPerS,
            double leafLengthM,
            double leafMinusAirK,
            double airTempC,
            double vapourPressurePa,
            double airPressurePa) {
        double free =
                1
                        / freeHeatBothSidesSPerM(
                                leafMinusAirK,
                                leafLengthM,
                                airTempC,
                                vapourPressurePa,
                                airPressurePa);
        double forced = Math.sqrt(Math.max(0, airSpeedMPerS) / leafLengthM) / 151;
        return 1 / Elementary.cbrt(free * free * free + forced * forced * forced);
    }

    /**
     * Vapour, one side, from heat, one side: times (alpha/D)^(2/3), about 0.91. To get vapour of a
     * leaf with stomata on both sides from heat of both sides, the same factor holds.
     *
     * @param heatSPerM s/m
     * @param airTempC degC
     * @param vapourPressurePa Pa
     * @param airPressurePa Pa
     * @return s/m, of the sides that {@code heatSPerM} counts
     */
    public static double vapourFromHeatSPerM(
            double heatSPerM, double airTempC, double vapourPressurePa, double airPressurePa) {
        double ratio =
                HumidAir.heatDiffusivityM2PerS(airTempC, vapourPressurePa, airPressurePa)
                        / HumidAir.vapourDiffusivityM2PerS(airTempC, airPressurePa);
        return heatSPerM * Elementary.cbrt(ratio * ratio);
    }

    /**
     * Aerodynamic resistance of a whole canopy, 350 sqrt(l/u) / LAI.
     *
     * <p>As used for lettuce by Graamans et al. (2017), Agricultural Systems 153, 31-43 (second
     * hand): 100 s/m at 0.15 m/s, 0.11 m and LAI 3. It holds the leaf area index already: who
     * multiplies the flux by LAI again counts the leaves twice, so vary LAI in one of the two
     * places only.
     *
     * @param airSpeedMPerS m/s, above 0
     * @param leafLengthM m
     * @param leafAreaIndex m2 of leaf (one side) per m2 of floor, above 0
     * @return s/m of floor
     */
    public static double canopySPerM(
            double airSpeedMPerS, double leafLengthM, double leafAreaIndex) {
        return 350 * Math.sqrt(leafLengthM / airSpeedMPerS) / leafAreaIndex;
    }
}
