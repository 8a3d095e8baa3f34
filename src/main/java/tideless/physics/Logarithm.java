package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/** The natural logarithm where it is mostly asked for numbers near 1: ratios on their way to it. */
public final class Logarithm {
    /** The series' next term is below 1e-16 of the first up to here; derived. */
    private static final double SERIES_BELOW = 0.015;

    private Logarithm() {}

    /**
     * ln x, near 1 by the series of 2 artanh((x - 1) / (x + 1)), elsewhere by the library.
     *
     * @param x above 0
     */
    public static double nearOne(double x) {
        double t = (x - 1) / (x + 1);
        if (!(Math.abs(t) < SERIES_BELOW)) {
            return FastMath.log(x);
        }
        double t2 = t * t;
        return 2 * t * (1 + t2 * (1.0 / 3 + t2 * (1.0 / 5 + t2 * (1.0 / 7 + t2 / 9))));
    }
}
