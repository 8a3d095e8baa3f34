package tideless.physics;

/**
 * A small float on a lever that presses a plug on a seat: what it can shut, and where.
 *
 * <p>Moments about the pivot: (rho V - m) g r &gt;= rho g H a S, with r the float's arm over the
 * plug's, a the seat's area, and S a seal factor: 1 for an ideal edge, 2 as a cautious figure for
 * an elastomer that needs a contact load (judgement). The lever's own weight goes into the float's
 * mass at its own arm. Statics only: friction, a set seat and salt crust shift the level by 1 to 3
 * mm more (judgement), and no standard states how well such a valve repeats.
 */
public final class FloatLever {
    private FloatLever() {}

    /**
     * Greatest head that the float can shut against.
     *
     * @param submergedM3 volume under water when it shuts; the whole float is the upper bound, half
     *     of it a sound design, m3
     * @param floatMassKg kg
     * @param leverRatio float's arm over plug's arm
     * @param seatBoreM m
     * @param sealFactor at least 1
     * @param densityKgPerM3 of the solution, kg/m3
     * @return m; 0 when the float sinks
     */
    public static double greatestHeadM(
            double submergedM3,
            double floatMassKg,
            double leverRatio,
            double seatBoreM,
            double sealFactor,
            double densityKgPerM3) {
        return Math.max(0, submergedM3 - floatMassKg / densityKgPerM3)
                * leverRatio
                / (seatAreaM2(seatBoreM) * sealFactor);
    }

    /**
     * Force that shuts the plug against a head.
     *
     * @param headM m
     * @param seatBoreM m
     * @param sealFactor at least 1
     * @param densityKgPerM3 kg/m3
     * @return N at the plug
     */
    public static double shuttingForceN(
            double headM, double seatBoreM, double sealFactor, double densityKgPerM3) {
        return densityKgPerM3
                * TubeFlow.GRAVITY_M_PER_S2
                * headM
                * seatAreaM2(seatBoreM)
                * sealFactor;
    }

    /**
     * Shift of the shut-off level per metre of reservoir head: a S/(r A). The level droops by this
     * as the reservoir empties.
     *
     * @param seatBoreM m
     * @param sealFactor at least 1
     * @param leverRatio float's arm over plug's arm
     * @param floatPlanAreaM2 level section of the float, m2
     * @return m/m
     */
    public static double droopPerHead(
            double seatBoreM, double sealFactor, double leverRatio, double floatPlanAreaM2) {
        return seatAreaM2(seatBoreM) * sealFactor / (leverRatio * floatPlanAreaM2);
    }

    /**
     * Rise of the level from where the plug is at its full travel to where it is shut: deeper
     * immersion against the head, and the float's own way.
     *
     * @param headM m
     * @param seatBoreM m
     * @param sealFactor at least 1
     * @param leverRatio float's arm over plug's arm
     * @param floatPlanAreaM2 m2
     * @param plugTravelM way of the plug, m; see {@link #fullLiftM}
     * @return m
     */
    public static double riseToShutM(
            double headM,
            double seatBoreM,
            double sealFactor,
            double leverRatio,
            double floatPlanAreaM2,
            double plugTravelM) {
        return headM * droopPerHead(seatBoreM, sealFactor, leverRatio, floatPlanAreaM2)
                + plugTravelM * leverRatio;
    }

    /**
     * Lift at which the gap around the plug is as wide as the seat: a quarter of the bore.
     *
     * @param seatBoreM m
     * @return m
     */
    public static double fullLiftM(double seatBoreM) {
        return 0.25 * seatBoreM;
    }

    /**
     * Band of levels over which the valve throttles: {@link #fullLiftM} times the lever.
     *
     * @param seatBoreM m
     * @param leverRatio float's arm over plug's arm
     * @return m
     */
    public static double throttlingBandM(double seatBoreM, double leverRatio) {
        return leverRatio * fullLiftM(seatBoreM);
    }

    private static double seatAreaM2(double seatBoreM) {
        return 0.25 * Math.PI * seatBoreM * seatBoreM;
    }
}
