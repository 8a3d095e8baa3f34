package tideless.physics;

/**
 * What else statics say of a float on a lever; closed forms beside the one the reader checks by.
 */
public final class FloatForms {
    private FloatForms() {}

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
                * FloatLever.seatAreaM2(seatBoreM)
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
        return FloatLever.seatAreaM2(seatBoreM) * sealFactor / (leverRatio * floatPlanAreaM2);
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
}
