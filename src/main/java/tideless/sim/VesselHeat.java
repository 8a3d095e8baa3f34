package tideless.sim;

import tideless.physics.HumidAir;

/** Temperature of a lumped, well-mixed vessel of solution. */
final class VesselHeat {
    private VesselHeat() {}

    /**
     * Temperature after a span.
     *
     * <p>C dT/dt = G (air - T) + gain - E(T) latent, with the evaporation's own rise with T taken
     * along to first order, so that the answer is an exponential approach and stable for any span.
     *
     * @param startC at the start, degC
     * @param airC air, degC
     * @param gainW absorbed light, W
     * @param conductanceWPerK wall, lid and surface to the air, W/K
     * @param evaporationKgPerS at the starting temperature, kg/s
     * @param evaporationSlopeKgPerSK its change with the water's temperature, kg/s/K
     * @param heatCapacityJPerK of the solution, J/K
     * @param spanS s
     * @return degC
     */
    static double after(
            double startC,
            double airC,
            double gainW,
            double conductanceWPerK,
            double evaporationKgPerS,
            double evaporationSlopeKgPerSK,
            double heatCapacityJPerK,
            double spanS) {
        double latent = HumidAir.latentHeatJPerKg(startC);
        double conductance = conductanceWPerK + latent * evaporationSlopeKgPerSK;
        double flow = conductanceWPerK * (airC - startC) + gainW - latent * evaporationKgPerS;
        double spanPerJPerK = spanS / heatCapacityJPerK;
        return startC + flow * spanPerJPerK * Phi.one(-conductance * spanPerJPerK);
    }
}
