package tideless.crop;

/** The still air that clings to a leaf, both faces counted together. */
final class LeafLayer {
    /**
     * Ratio of the resistance to vapour to that to heat, (thermal diffusivity / diffusivity of
     * vapour)^(2/3) at 22 degC, laminar plate; recomputed independently.
     */
    static final double VAPOUR_TO_HEAT = 0.911;

    /**
     * Air speed whose forced flow moves as much heat as free convection at a leaf 1-2 K off the
     * air, m/s. Derived from plate correlations (0.664 Re^1/2 Pr^1/3 against the mean of 0.54 and
     * 0.27 Ra^1/4) at 5-10 cm.
     */
    static final double FREE_AIR_SPEED_M_PER_S = 0.03;

    private LeafLayer() {}

    /**
     * Resistance to heat per one-sided leaf area, the two faces in parallel, s/m.
     *
     * <p>151 sqrt(d/u); Jones, Plants and Microclimate, from memory. It is half of a one-faced
     * laminar plate's, so faces must not be doubled again. Other leaf models differ by a factor of
     * up to 1.5 (Bonan, supplemental program 10.1).
     *
     * @param leafSizeM leaf along the flow, m
     * @param airSpeedMPerS at the leaves, m/s; 0 is still air
     */
    static double heatSPerM(double leafSizeM, double airSpeedMPerS) {
        double speed =
                Math.sqrt(
                        airSpeedMPerS * airSpeedMPerS
                                + FREE_AIR_SPEED_M_PER_S * FREE_AIR_SPEED_M_PER_S);
        return 151 * Math.sqrt(leafSizeM / speed);
    }
}
