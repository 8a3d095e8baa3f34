package tideless.physics;

/**
 * A hole in the floor or wall of a vessel: Torricelli with a discharge coefficient.
 *
 * <p>Sharp edge 0.60 to 0.62, short tube 0.80 (Encyclopaedia Britannica, 11th ed. 1911, Hydraulics;
 * 0.620 at 0.3 m of head to 0.603 at 6 m for a 12.7 mm hole). Holes below 3 mm at orifice Reynolds
 * numbers below 2000: 0.62 to 0.75 (from memory). No standard covers a 2 mm seat.
 */
public final class Orifice {
    /** Sharp edge, common practice between 0.60 and 0.62. */
    public static final double SHARP_EDGE_COEFFICIENT = 0.61;

    private Orifice() {}

    /**
     * Flow through a hole. Odd in the head.
     *
     * @param headM head over the hole, m
     * @param boreM diameter, m
     * @param dischargeCoefficient 0.6 to 0.82
     * @return m3/s
     */
    public static double flowM3PerS(double headM, double boreM, double dischargeCoefficient) {
        double speed = Math.sqrt(2 * TubeFlow.GRAVITY_M_PER_S2 * Math.abs(headM));
        return Math.copySign(dischargeCoefficient * areaM2(boreM) * speed, headM);
    }

    static double areaM2(double boreM) {
        return 0.25 * Math.PI * boreM * boreM;
    }
}
