package tideless.physics;

/**
 * Flow of water through one full tube with fittings, and through a tube with a valve seat behind
 * it.
 *
 * <p>Darcy-Weisbach with one friction law for every regime, {@link #friction}. Heads are
 * differences in metres of water; a positive head drives a positive flow. The loss coefficient is
 * the sum over all fittings, on the tube's own velocity, and must hold the exit loss (1 for a jet
 * or an outlet under water).
 *
 * <p>Between Reynolds numbers of about 2000 and 4000 real flow is unsteady; take any single figure
 * there as +-25 %. Two properties of the law look like faults and are none: warmer water may flow
 * more slowly in that range, and the friction factor dips before it rises. Tables of loss
 * coefficients hold for turbulent flow in large pipes: small barbed fittings at low Reynolds
 * numbers lose several times more.
 */
public final class TubeFlow {
    /** Gravity, m/s2; exact by definition, CGPM 1901. */
    public static final double GRAVITY_M_PER_S2 = 9.80665;

    /**
     * Roughness of drawn tube and plastic hose, m; Munson et al., Fundamentals of Fluid Mechanics,
     * table 8.1 (drawn tubing), second hand.
     */
    public static final double PLASTIC_ROUGHNESS_M = 1.5e-6;

    /**
     * Below this Reynolds number the other terms of Churchill's law change the sum by less than one
     * part in 1e16 (they fall with the 36th power), so that 64/Re is the law to the last digit.
     */
    private static final double PURELY_LAMINAR_REYNOLDS = 800;

    /** A step of the logarithm below this leaves an error of some tens of its square. */
    private static final double LAST_STEP = 1e-8;

    private static final int MAX_ROUNDS = 200;

    private TubeFlow() {}

    /**
     * A friction factor and how it changes with the Reynolds number.
     *
     * @param factor Darcy's (four times Fanning's)
     * @param slope d ln f / d ln Re; -1 in laminar flow
     */
    public record Friction(double factor, double slope) {}

    /**
     * Darcy friction factor of a tube, all regimes.
     *
     * <p>Churchill (1977), Chemical Engineering, 7 November 1977, 91-92: f = 8 [(8/Re)^12 + (A +
     * B)^-1.5]^(1/12). The law is 64/Re to rounding below a Reynolds number of 800 and is evaluated
     * as such there; this also keeps the 16th powers from overflowing.
     *
     * @param reynolds Reynolds number of the tube, above 0; at 0 the factor is infinite
     * @param relativeRoughness roughness over bore, 0 to 0.05
     */
    public static Friction friction(double reynolds, double relativeRoughness) {
        if (reynolds < PURELY_LAMINAR_REYNOLDS) {
            return new Friction(64 / reynolds, -1);
        }
        double wall = wallTerm(reynolds);
        double inside = wall + 0.27 * relativeRoughness;
        double log = -Elementary.log(inside);
        double a = pow16(2.457 * log);
        double b = pow16(37530 / reynolds);
        double sum = a + b;
        double laminar = pow12(8 / reynolds);
        double turbulent = 1 / (sum * Math.sqrt(sum));
        return new Friction(
                8 * twelfthRoot(laminar + turbulent),
                logSlope(laminar, turbulent, a * 0.9 * wall / (inside * log), b, sum));
    }

    // a's own slope is 16 times aSlope, b's -16 times b; the laminar term's is -12.
    private static double logSlope(
            double laminar, double turbulent, double aSlope, double b, double sum) {
        return (-12 * laminar - 1.5 * turbulent * 16 * (aSlope - b) / sum)
                / (12 * (laminar + turbulent));
    }

    /**
     * Loss coefficient of a valve seat on the velocity of the tube before it: (bore/seat)^4 / (Cd
     * opening)^2, from the orifice equation with all of the jet's energy lost.
     *
     * @param boreM inside diameter of the tube, m
     * @param seatBoreM bore of the seat, m
     * @param dischargeCoefficient of the seat
     * @param openingFrac share of the seat's area that is free, above 0
     * @return dimensionless
     */
    public static double seatLossCoefficient(
            double boreM, double seatBoreM, double dischargeCoefficient, double openingFrac) {
        double ratio = boreM / seatBoreM;
        double areaRatio = ratio * ratio / (dischargeCoefficient * openingFrac);
        return areaRatio * areaRatio;
    }

    /**
     * Flow through a tube whose water's viscosity is known.
     *
     * @param headM head difference, m, either sign
     * @param boreM inside diameter, m
     * @param lengthM m, 0 allowed if {@code lossCoefficient} is above 0
     * @param lossCoefficient sum of the minor-loss coefficients
     * @param roughnessM wall roughness, m
     * @param kinematicViscosityM2PerS m2/s
     * @return m3/s, with the sign of the head
     */
    public static double flowAtViscosityM3PerS(
            double headM,
            double boreM,
            double lengthM,
            double lossCoefficient,
            double roughnessM,
            double kinematicViscosityM2PerS) {
        return flowNear(
                        headM,
                        boreM,
                        lengthM,
                        lossCoefficient,
                        roughnessM,
                        kinematicViscosityM2PerS,
                        Double.POSITIVE_INFINITY)
                .m3PerS();
    }

    /**
     * A flow and how the head it loses rises with it.
     *
     * @param m3PerS with the sign of the head
     * @param headOrder d ln head / d ln flow: 1 laminar without fittings to 2 by fittings alone;
     *     good to about 1e-7, as the search leaves it
     */
    public record Flow(double m3PerS, double headOrder) {}

    private static final Flow NO_FLOW = new Flow(0, 1);

    /**
     * {@link #flowAtViscosityM3PerS} for callers that know about where the answer lies: the same
     * flow, to the tolerance of the search, in fewer rounds.
     *
     * @param nearM3PerS where to start, above 0; a start that cannot be is put aside
     */
    public static Flow flowNear(
            double headM,
            double boreM,
            double lengthM,
            double lossCoefficient,
            double roughnessM,
            double kinematicViscosityM2PerS,
            double nearM3PerS) {
        if (headM == 0) {
            return NO_FLOW;
        }
        if (!(lengthM > 0 || lossCoefficient > 0)) {
            throw new IllegalArgumentException(
                    "a tube of no length needs a lossCoefficient above 0, was " + lossCoefficient);
        }
        double head = Math.abs(headM);
        if (!(head < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("headM must be finite, was " + headM);
        }
        return search(
                head,
                boreM,
                lengthM / boreM,
                lossCoefficient,
                roughnessM / boreM,
                kinematicViscosityM2PerS,
                nearM3PerS / areaM2(boreM),
                Math.copySign(areaM2(boreM), headM));
    }

    private static Flow search(
            double headM,
            double boreM,
            double slenderness,
            double lossCoefficient,
            double relativeRoughness,
            double kinematicViscosityM2PerS,
            double nearMPerS,
            double signedAreaM2) {
        // Laminar: quadratic * v^2 + linear * v = head, and the friction law never lies below it,
        // so that this root is the answer or bounds it from above.
        double linear = 32 * kinematicViscosityM2PerS * slenderness / (GRAVITY_M_PER_S2 * boreM);
        double quadratic = lossCoefficient / (2 * GRAVITY_M_PER_S2);
        double high = 2 * headM / (linear + Math.sqrt(linear * linear + 4 * quadratic * headM));
        double reynoldsPerSpeed = boreM / kinematicViscosityM2PerS;
        if (high * reynoldsPerSpeed <= PURELY_LAMINAR_REYNOLDS || slenderness == 0) {
            return new Flow(high * signedAreaM2, (linear + 2 * quadratic * high) * high / headM);
        }
        double low = PURELY_LAMINAR_REYNOLDS / reynoldsPerSpeed;
        double twiceGravityHead = 2 * GRAVITY_M_PER_S2 * headM;
        // Newton on the logarithms of speed and head, where the law is nearly straight. A step that
        // leaves the bracket, or is not half of the one before the last, is replaced by the
        // bracket's
        // geometric mean: where the law bends in the transition Newton alone goes round in a
        // circle.
        double speed = nearMPerS > low && nearMPerS < high ? nearMPerS : high;
        double lastStep = Double.POSITIVE_INFINITY;
        double stepBefore = Double.POSITIVE_INFINITY;
        double wall = wallTerm(speed * reynoldsPerSpeed);
        for (int round = 0; round < MAX_ROUNDS; round++) {
            double reynolds = speed * reynoldsPerSpeed;
            double inside = wall + 0.27 * relativeRoughness;
            double log = -Elementary.log(inside);
            double a = pow16(2.457 * log);
            double b = pow16(37530 / reynolds);
            double sum = a + b;
            double laminar = pow12(8 / reynolds);
            double turbulent = 1 / (sum * Math.sqrt(sum));
            double whole = laminar + turbulent;
            double friction = 8 * twelfthRoot(whole) * slenderness;
            // d ln f / d ln Re of the law above.
            double slope = logSlope(laminar, turbulent, a * 0.9 * wall / (inside * log), b, sum);
            double factor = friction + lossCoefficient;
            double excess = factor * speed * speed / twiceGravityHead;
            if (excess > 1) {
                high = speed;
            } else {
                low = speed;
            }
            double order = (friction * (2 + slope) + 2 * lossCoefficient) / factor;
            double step = -Elementary.log(excess) / order;
            if (high - low <= 1e-15 * high) {
                return new Flow(speed * signedAreaM2, order);
            }
            double next = speed * Elementary.exp(step);
            if (Math.abs(step) < LAST_STEP) {
                return new Flow(next * signedAreaM2, order);
            }
            if (Math.abs(step) > 0.5 * stepBefore || !(next > low && next < high)) {
                next = Math.sqrt(low * high);
                step = Elementary.log(next / speed);
            }
            stepBefore = lastStep;
            lastStep = Math.abs(step);
            speed = next;
            wall *=
                    Elementary.exp(
                            -0.9 * step); // as the power of the new speed, some times quicker
        }
        throw new ArithmeticException(
                "no speed found for headM " + headM + " between " + low + " and " + high);
    }

    static double areaM2(double boreM) {
        return 0.25 * Math.PI * boreM * boreM;
    }

    private static double wallTerm(double reynolds) {
        return Elementary.exp(0.9 * Elementary.log(7 / reynolds));
    }

    private static double pow12(double x) {
        double x3 = x * x * x;
        double x6 = x3 * x3;
        return x6 * x6;
    }

    private static double pow16(double x) {
        double x2 = x * x;
        double x4 = x2 * x2;
        double x8 = x4 * x4;
        return x8 * x8;
    }

    private static double twelfthRoot(double x) {
        return Elementary.exp(Elementary.log(x) / 12);
    }
}
