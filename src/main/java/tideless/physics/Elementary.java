package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/**
 * Exponential, logarithm and what follows from the two, for the inner loops of a season: some two
 * units in the last place where the library's functions have one, in about half of their time.
 * Plain arithmetic and tables, so that every platform gets the same bits
 * (docs/decisions/0011-fastmath.md). Far arguments are handed to the library.
 *
 * <p>Both functions go to the nearest entry of a small table and on by a Taylor series (Tang 1989,
 * ACM Trans. Math. Softw. 15, 144-157, and 1990, 16, 378-400, from memory).
 */
public final class Elementary {
    private static final double LN2 = FastMath.log(2);

    /** The leading 32 bits of ln 2 and the rest: whole multiples of the first are exact. */
    private static final double LN2_HIGH = 0x1.62e42fee00000p-1;

    private static final double LN2_LOW = 0x1.a39ef35793c76p-33;

    /** 2 to the power of so many parts of 1. */
    private static final int PARTS = 64;

    private static final int LOG2_OF_PARTS = 6;
    private static final double[] PART_POWER = partPowers();

    /** The last bit of doubles near 1.5 times 2 to the power of 52 is 1. */
    private static final double WHOLE_FROM = 0x1.8p52;

    /** Up to here no exponential leaves the range of doubles at full precision. */
    private static final double FAR = 700;

    /** Below this the series of exp(x) - 1 is as good as the whole. */
    private static final double SMALL = 0.02;

    /** Entries of the logarithm's table: numbers from 1 to 2, halved from {@link #HALVED} on. */
    private static final int ENTRIES = 128;

    /** First entry above the root of 2: halved, so that no logarithm of it exceeds 0.35. */
    private static final int HALVED = 54;

    private static final double[] ENTRY = new double[ENTRIES + 1];
    private static final double[] ENTRY_INVERSE = new double[ENTRIES + 1];
    private static final double[] ENTRY_LOG = new double[ENTRIES + 1];

    static {
        for (int i = 0; i <= ENTRIES; i++) {
            double entry = 1 + (double) i / ENTRIES;
            ENTRY[i] = i < HALVED ? entry : 0.5 * entry;
            ENTRY_INVERSE[i] = 1 / ENTRY[i];
            ENTRY_LOG[i] = FastMath.log(ENTRY[i]);
        }
    }

    // How a double is laid out (IEEE 754): 52 bits of the fraction, above them the exponent.
    private static final int FRACTION_BITS = 52;
    private static final int EXPONENT_BIAS = 1023;
    private static final long FRACTION = (1L << FRACTION_BITS) - 1;
    private static final int ENTRY_SHIFT = FRACTION_BITS - 7;

    private Elementary() {}

    // Roots of roots of 2: each is off by less than a unit in its last place.
    private static double[] partPowers() {
        double[] coarse = {1};
        for (int n = 2; n <= PARTS; n *= 2) {
            double[] fine = new double[n];
            for (int j = 0; j < n; j++) {
                fine[j] = Math.sqrt(2 * j < n ? coarse[j] : 2 * coarse[j - n / 2]);
            }
            coarse = fine;
        }
        return coarse;
    }

    /** e to the power of x. */
    public static double exp(double x) {
        if (!(Math.abs(x) < FAR)) {
            return FastMath.exp(x);
        }
        double parts = nearestWhole(x * (PARTS / LN2));
        double power = power(parts);
        return power + power * ofRest(x, parts);
    }

    /** e to the power of x, less 1; as good near 0 as elsewhere. */
    public static double expm1(double x) {
        if (Math.abs(x) < SMALL) {
            return x == 0 ? x : smallExpm1(x); // with its sign
        }
        if (!(Math.abs(x) < FAR)) {
            return FastMath.expm1(x);
        }
        double parts = nearestWhole(x * (PARTS / LN2));
        double power = power(parts);
        return (power - 1) + power * ofRest(x, parts);
    }

    // The term left out is 2e-18 of the whole.
    private static double smallExpm1(double x) {
        double more = 1.0 / 120 + x * (1.0 / 720 + x * (1.0 / 5040 + x / 40320));
        return x + x * x * (0.5 + x * (1.0 / 6 + x * (1.0 / 24 + x * more)));
    }

    // The sum is rounded to a whole number.
    private static double nearestWhole(double x) {
        return (x + WHOLE_FROM) - WHOLE_FROM;
    }

    private static double power(double parts) {
        int n = (int) parts;
        long exponent = (n >> LOG2_OF_PARTS) + (long) EXPONENT_BIAS;
        return Double.longBitsToDouble(exponent << FRACTION_BITS) * PART_POWER[n & (PARTS - 1)];
    }

    // exp(rest) - 1 for a rest of at most half a part, 0.0055; the term left out is 3e-17.
    private static double ofRest(double x, double parts) {
        double rest = (x - parts * (LN2_HIGH / PARTS)) - parts * (LN2_LOW / PARTS);
        double square = rest * rest;
        return rest + square * (0.5 + rest * (1.0 / 6) + square * (1.0 / 24 + rest * (1.0 / 120)));
    }

    /** Natural logarithm. */
    public static double log(double x) {
        if (!(x >= Double.MIN_NORMAL && x < Double.POSITIVE_INFINITY)) {
            return FastMath.log(x);
        }
        long bits = Double.doubleToRawLongBits(x);
        long fraction = bits & FRACTION;
        int entry = (int) ((fraction + (1L << (ENTRY_SHIFT - 1))) >> ENTRY_SHIFT);
        int halved = entry < HALVED ? 0 : 1;
        int exponent = (int) (bits >> FRACTION_BITS) - EXPONENT_BIAS + halved;
        double mantissa =
                Double.longBitsToDouble(
                        fraction | (long) (EXPONENT_BIAS - halved) << FRACTION_BITS);
        // The difference is exact, and at most 1/256 of the entry.
        double t = (mantissa - ENTRY[entry]) * ENTRY_INVERSE[entry];
        double square = t * t;
        double rest =
                square
                        * (-0.5
                                + t * (1.0 / 3)
                                - square * (0.25 - t * 0.2 + square * (1.0 / 6 - t * (1.0 / 7))));
        return exponent * LN2_HIGH + (ENTRY_LOG[entry] + (t + (rest + exponent * LN2_LOW)));
    }

    /**
     * A power.
     *
     * @param base at least 0
     * @param exponent such that the logarithm of the power stays within 100, for 1e-14 of it
     */
    public static double pow(double base, double exponent) {
        return exp(exponent * log(base));
    }

    /** Cube root, to 1e-15 of itself from 1e-9 to 1e9. */
    public static double cbrt(double x) {
        return x > 0 ? exp(log(x) * (1.0 / 3)) : -FastMath.cbrt(-x);
    }
}
