package tideless.sim;

import tideless.physics.Elementary;

/**
 * The functions with which an exponential approach integrates a constant, a line and a parabola:
 * phi1 = (exp(z) - 1) / z, phi2 = (phi1 - 1) / z, phi3 = (phi2 - 1/2) / z (Hochbruck and Ostermann
 * 2010, Acta Numerica 19, 209-286, from memory). Scratch space of one run.
 */
final class Phi {
    /** Below this a power series is as good and quicker; its first term left out is 1e-16. */
    private static final double SERIES_BELOW = 0.1;

    double one;
    double two;
    double three;

    /** phi1 alone; z at or below 0. */
    static double one(double z) {
        return z > -SERIES_BELOW
                ? 1 + z * (0.5 + z * seriesOfThree(z))
                : (Elementary.exp(z) - 1) / z;
    }

    /** phi2 alone; z at or below 0. */
    static double two(double z) {
        return z > -SERIES_BELOW ? 0.5 + z * seriesOfThree(z) : (one(z) - 1) / z;
    }

    private static double seriesOfThree(double z) {
        double more = 1.0 / 40320 + z * (1.0 / 362880 + z / 3628800);
        return 1.0 / 6
                + z * (1.0 / 24 + z * (1.0 / 120 + z * (1.0 / 720 + z * (1.0 / 5040 + z * more))));
    }

    /**
     * The functions at one place.
     *
     * @param z at or below 0
     * @return this
     */
    Phi of(double z) {
        if (z > -SERIES_BELOW) {
            three = seriesOfThree(z);
            two = 0.5 + z * three;
            one = 1 + z * two;
        } else {
            one = (Elementary.exp(z) - 1) / z;
            two = (one - 1) / z;
            three = (two - 0.5) / z;
        }
        return this;
    }

    /**
     * Integral over a span, as a share of it, of what starts at 0 and runs as a parabola through
     * two values.
     */
    double parabola(double atMiddle, double atEnd) {
        return (4 * atMiddle - atEnd) * two + 2 * (2 * atEnd - 4 * atMiddle) * three;
    }
}
