package tideless.sim;

import tideless.physics.HumidAir;
import tideless.physics.LiquidWater;
import tideless.rig.Shape;

/**
 * Temperature of a lumped, well-mixed vessel of solution.
 *
 * <p>C dT/dt = G (air - T) + gain - E(T) latent, with the evaporation's own rise with T taken along
 * to first order, so that the answer is an exponential approach and stable for any span. G goes
 * through floor, deck or lid, and the wetted side walls; light comes from above.
 */
final class VesselHeat {
    /** Heat transfer through walls and deck; 6-10 W/m2/K for bare plastic, from memory. */
    static final double WALL_W_PER_M2K = 8;

    /** Share of light that a pale deck or lid takes up; 0.3 white, from memory. */
    private static final double PALE_LID_TAKES_FRAC = 0.3;

    /**
     * Share of what a deck or lid takes up that goes down into the vessel; the rest goes back to
     * the air above. Still air at both faces of a thin sheet has 0.10 m2K/W each (handbook value),
     * so one half; 20 mm of foam would pass 0.10 / 0.77.
     */
    private static final double DOWN_FRAC = 0.5;

    /** Share of light on open water that stays in it: 1 less an albedo of 0.06, from memory. */
    static final double OPEN_WATER_FRAC = 0.94;

    private VesselHeat() {}

    /**
     * Through floor, deck and the side walls up to the level, W/K. The air under the deck shelters
     * the walls above it, and the light on them is left out.
     */
    static double conductanceWPerK(Shape shape, double levelM) {
        return WALL_W_PER_M2K * (shape.rimAreaM2() + shape.floorAreaM2() + shape.wallM2(levelM));
    }

    /**
     * Light that ends in the solution, W.
     *
     * @param openM2 surface without deck or lid, m2
     * @param lightWPerM2 on the level, visible and near infrared, W/m2
     */
    static double gainW(Shape shape, double openM2, double lightWPerM2) {
        double coveredM2 = shape.rimAreaM2() - openM2;
        return lightWPerM2
                * (PALE_LID_TAKES_FRAC * DOWN_FRAC * coveredM2 + OPEN_WATER_FRAC * openM2);
    }

    /** Of a volume at a temperature, J/K. */
    static double capacityJPerK(double volumeM3, double tempC) {
        return volumeM3 * LiquidWater.KG_PER_M3 * LiquidWater.heatCapacityJPerKgK(tempC);
    }

    /**
     * Temperature after a span.
     *
     * @param startC at the start, degC
     * @param airC air, degC
     * @param gainW absorbed light, W
     * @param conductanceWPerK {@link #conductanceWPerK}
     * @param surface its evaporation and the change of it with the temperature
     * @param heatCapacityJPerK {@link #capacityJPerK}
     * @param spanS s
     * @return degC
     */
    static double after(
            double startC,
            double airC,
            double gainW,
            double conductanceWPerK,
            Surface surface,
            double heatCapacityJPerK,
            double spanS) {
        double slope = conductanceWPerK + latentWPerM3S(surface) * surface.slopeM3PerSK;
        double spanPerJPerK = spanS / heatCapacityJPerK;
        return startC
                + flowW(startC, airC, gainW, conductanceWPerK, surface)
                        * spanPerJPerK
                        * Phi.one(-slope * spanPerJPerK);
    }

    /** Mean temperature over the span, degC; as {@link #after}. */
    static double meanC(
            double startC,
            double airC,
            double gainW,
            double conductanceWPerK,
            Surface surface,
            double heatCapacityJPerK,
            double spanS) {
        double slope = conductanceWPerK + latentWPerM3S(surface) * surface.slopeM3PerSK;
        double spanPerJPerK = spanS / heatCapacityJPerK;
        return startC
                + flowW(startC, airC, gainW, conductanceWPerK, surface)
                        * spanPerJPerK
                        * Phi.two(-slope * spanPerJPerK);
    }

    /** Heat that flows in at the start, W. */
    private static double flowW(
            double startC, double airC, double gainW, double conductanceWPerK, Surface surface) {
        double m3PerS = surface.m3PerS + surface.slopeM3PerSK * (startC - surface.atC);
        return conductanceWPerK * (airC - startC) + gainW - latentWPerM3S(surface) * m3PerS;
    }

    private static double latentWPerM3S(Surface surface) {
        return HumidAir.latentHeatJPerKg(surface.atC) * LiquidWater.KG_PER_M3;
    }
}
