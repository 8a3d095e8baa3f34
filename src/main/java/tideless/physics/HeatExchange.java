package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/** Heat between a vessel of water and the room, and the lag that comes of it. */
public final class HeatExchange {
    /** Surface resistance indoors, heat going up, m2 K/W; ISO 6946, from memory. */
    public static final double INSIDE_UP_M2K_PER_W = 0.10;

    /** Surface resistance indoors, heat going sideways, m2 K/W; ISO 6946, from memory. */
    public static final double INSIDE_SIDEWAYS_M2K_PER_W = 0.13;

    /** Surface resistance indoors, heat going down, m2 K/W; ISO 6946, from memory. */
    public static final double INSIDE_DOWN_M2K_PER_W = 0.17;

    /** Surface resistance outdoors, m2 K/W; ISO 6946, from memory. */
    public static final double OUTSIDE_M2K_PER_W = 0.04;

    /** Surface resistance between water and a wall, m2 K/W; judgement. */
    public static final double WATER_M2K_PER_W = 0.005;

    /** Stefan-Boltzmann constant, W/m2/K4; CODATA 2018. */
    private static final double STEFAN_BOLTZMANN_W_PER_M2_K4 = 5.670374419e-8;

    private HeatExchange() {}

    /**
     * Heat transmitted by a plane wall or lid, per area and kelvin.
     *
     * @param insideM2KPerW surface resistance on the one side, m2 K/W
     * @param thicknessM m
     * @param conductivityWPerMK W/m/K; 0.035 for foam, 0.2 for plastic (handbook values, from
     *     memory)
     * @param outsideM2KPerW surface resistance on the other side, m2 K/W
     * @return W/m2/K
     */
    public static double transmittanceWPerM2K(
            double insideM2KPerW,
            double thicknessM,
            double conductivityWPerMK,
            double outsideM2KPerW) {
        return 1 / (insideM2KPerW + thicknessM / conductivityWPerMK + outsideM2KPerW);
    }

    /**
     * Long-wave exchange between a surface and surroundings near its own temperature, 4 eps sigma
     * T^3 (from the law of Stefan and Boltzmann).
     *
     * @param emissivityFrac 0-1; 0.96 for water (from memory)
     * @param tempC mean of both, degC
     * @return W/m2/K
     */
    public static double radiationWPerM2K(double emissivityFrac, double tempC) {
        double tempK = tempC + 273.15;
        return 4 * emissivityFrac * STEFAN_BOLTZMANN_W_PER_M2_K4 * tempK * tempK * tempK;
    }

    /**
     * Time constant of a well-mixed vessel.
     *
     * @param massKg kg
     * @param heatCapacityJPerKgK J/kg/K
     * @param exchangeWPerK transmittance times area, summed over all faces, W/K
     * @return s
     */
    public static double timeConstantS(
            double massKg, double heatCapacityJPerKgK, double exchangeWPerK) {
        return massKg * heatCapacityJPerKgK / exchangeWPerK;
    }

    /**
     * Temperature after a time under steady surroundings: exact, whatever the time.
     *
     * @param startTempC degC
     * @param restTempC where it would settle, degC: air temperature plus heat gained over W/K
     * @param timeS s
     * @param timeConstantS s
     * @return degC
     */
    public static double afterC(
            double startTempC, double restTempC, double timeS, double timeConstantS) {
        return restTempC + (startTempC - restTempC) * FastMath.exp(-timeS / timeConstantS);
    }

    /**
     * Swing of the water over the swing of the air, for a sine.
     *
     * @param timeConstantS s
     * @param periodS s
     * @return 0-1
     */
    public static double swingFrac(double timeConstantS, double periodS) {
        double turn = 2 * Math.PI * timeConstantS / periodS;
        return 1 / Math.sqrt(1 + turn * turn);
    }

    /**
     * Lag of the water behind the air, for a sine; at most a quarter of the period.
     *
     * @param timeConstantS s
     * @param periodS s
     * @return s
     */
    public static double lagS(double timeConstantS, double periodS) {
        return FastMath.atan(2 * Math.PI * timeConstantS / periodS) / (2 * Math.PI) * periodS;
    }

    /**
     * Rise above the air under steady sun or lamp, when all the heat of the lid reaches the water
     * (an upper bound).
     *
     * @param absorbedFrac share of the light taken up, 0-1; 0.3 white, 0.9 black (from memory)
     * @param lightWPerM2 W/m2
     * @param lidAreaM2 m2
     * @param exchangeWPerK W/K
     * @return K
     */
    public static double steadyRiseK(
            double absorbedFrac, double lightWPerM2, double lidAreaM2, double exchangeWPerK) {
        return absorbedFrac * lightWPerM2 * lidAreaM2 / exchangeWPerK;
    }
}
