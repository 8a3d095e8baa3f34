package tideless.sim;

import java.util.function.DoubleUnaryOperator;

/** The instant at which a function crosses zero. Allocates nothing. */
final class RootSearch {
    private static final int MAX_ROUNDS = 200;

    private RootSearch() {}

    /**
     * Where a function leaves the sign it begins with: to the last digit, at the crossing or just
     * beyond it, so that a piece may end there. By the false position method with the Illinois
     * correction (Dowell and Jarratt 1971, BIT 11, 168-174; from memory).
     *
     * @param of the function
     * @param from where it begins
     * @param atFrom its value there, not 0
     * @param to the other end, above {@code from}
     * @param atTo its value there
     * @param smallValue a value that counts as none: where it is met the search ends, on either
     *     side
     * @return where it crosses; {@code to} when it does not
     */
    static double passed(
            DoubleUnaryOperator of,
            double from,
            double atFrom,
            double to,
            double atTo,
            double smallValue) {
        boolean above = atFrom > 0;
        if (atTo == 0 || atTo > 0 == above) {
            return to;
        }
        double a = from;
        double fa = atFrom;
        double b = to;
        double fb = atTo;
        int side = 0;
        for (int round = 0; round < MAX_ROUNDS && b - a > 1e-15 * b; round++) {
            double at = (a * fb - b * fa) / (fb - fa);
            if (!(at > a && at < b)) {
                at = 0.5 * (a + b);
            }
            double f = of.applyAsDouble(at);
            if (f == 0 || Math.abs(f) <= smallValue) {
                return at;
            }
            if (f > 0 == above) {
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
}
