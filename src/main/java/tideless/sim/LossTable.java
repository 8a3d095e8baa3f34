package tideless.sim;

import java.util.Arrays;

/**
 * What an open surface loses into air of one kind, worked out at temperatures {@link #APART_K}
 * apart when first asked for and taken as straight between, where the middle shows that it is: not
 * where the surface turns from heavier to lighter than the air, or from dew to loss. In a room,
 * where air has two states or a few, a season asks thousands of times between some dozens of knots.
 * Scratch space of one run.
 */
final class LossTable {
    /** Temperatures it is worked out at are so far apart, K. */
    static final double APART_K = 0.25;

    /** Departure in the middle, as a share, up to which it counts as straight. */
    private static final double STRAIGHT_FRAC = 1e-4;

    /** Beyond these temperatures of the solution it is worked out in full, degC. */
    private static final double MOST_C = 50;

    private static final int KNOTS = (int) (MOST_C / APART_K) + 2;

    private final double[] m3PerS = new double[KNOTS];
    private final double[] slopeM3PerSK = new double[KNOTS];
    private final boolean[] judged = new boolean[KNOTS];
    private final boolean[] straight = new boolean[KNOTS];

    LossTable() {
        Arrays.fill(m3PerS, Double.NaN);
        judged[0] = true; // whatever is colder
        judged[KNOTS - 2] = true; // whatever is warmer
    }

    static int knotBelow(double tempC) {
        return (int) (Math.max(0, Math.min(MOST_C, tempC)) / APART_K);
    }

    static double atC(int knot) {
        return knot * APART_K;
    }

    boolean lacks(int knot) {
        return Double.isNaN(m3PerS[knot]);
    }

    void put(int knot, double ofM3PerS, double ofSlopeM3PerSK) {
        m3PerS[knot] = ofM3PerS;
        slopeM3PerSK[knot] = ofSlopeM3PerSK;
    }

    /** Whether nothing is known yet between a knot and the next. */
    boolean isUnknown(int knot) {
        return !judged[knot];
    }

    /** Takes over what is lost in the middle between a knot and the next. */
    void judge(int knot, double middleM3PerS) {
        judged[knot] = true;
        straight[knot] = Math.abs(m3PerS(knot, 0.5) - middleM3PerS) <= STRAIGHT_FRAC * middleM3PerS;
    }

    boolean isStraight(int knot) {
        return straight[knot];
    }

    /** Some way on from a knot to the next, m3/s. */
    double m3PerS(int knot, double on) {
        return m3PerS[knot] + on * (m3PerS[knot + 1] - m3PerS[knot]);
    }

    /** The same of its rise with the solution's temperature, m3/s/K. */
    double slopeM3PerSK(int knot, double on) {
        return slopeM3PerSK[knot] + on * (slopeM3PerSK[knot + 1] - slopeM3PerSK[knot]);
    }
}
