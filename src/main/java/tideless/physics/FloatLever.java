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

    static double seatAreaM2(double seatBoreM) {
        return 0.25 * Math.PI * seatBoreM * seatBoreM;
    }
}
