package tideless.sim;

import java.util.function.DoubleUnaryOperator;

/** The instant at which a function crosses zero. Allocates nothing. */
final class RootSearch {
    private static final int MAX_ROUNDS = 200;

    private static final int HALVINGS = 60; // beyond a double's own digits

    private RootSearch() {}

    /**
     * By the false position method with the Illinois correction (Dowell and Jarratt 1971, BIT 11,
     * 168-174; from memory): to the last digit, from either side.
     *
     * @param of of opposite sign at the two ends
     * @param from one end
     * @param atFrom its value there, not 0
     * @param to the other end, above {@code from}
     * @param atTo its value there
     * @param smallValue a value that counts as none
     * @return where it crosses; {@code to} when the search does not end
     */
    static double zero(
            DoubleUnaryOperator of,
            double from,
            double atFrom,
            double to,
            double atTo,
            double smallValue) {
        double a = from;
        double fa = atFrom;
        double b = to;
        double fb = atTo;
        int side = 0;
        for (int round = 0; round < MAX_ROUNDS; round++) {
            double at = (a * fb - b * fa) / (fb - fa);
            double f = of.applyAsDouble(at);
            if (f == 0 || b - a <= 1e-15 * b || Math.abs(f) <= smallValue) {
                return at;
            }
            if (f > 0 == fa > 0) {
                a = at;
                fa = f;
                if (side == 1) {
                    fb *= 0.5;
                }
                side = 1;
            } else {
                b = at;
                fb = f;
                if (side == -1) {
                    fa *= 0.5;
                }
                side = -1;
            }
        }
        return b;
    }

    /**
     * Where on a span of 1 a function leaves the sign it begins with, by halving: never before, and
     * at most 2^-60 after. For shares of a piece whose end must lie beyond the crossing.
     *
     * @param above whether it begins above 0
     * @return 0 to 1
     */
    static double passed(DoubleUnaryOperator of, boolean above) {
        double a = 0;
        double b = 1;
        for (int round = 0; round < HALVINGS; round++) {
            double mid = 0.5 * (a + b);
            if (of.applyAsDouble(mid) > 0 == above) {
                a = mid;
            } else {
                b = mid;
            }
        }
        return b;
    }
}
