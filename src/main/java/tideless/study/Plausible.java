package tideless.study;

import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.CropTraits;

/**
 * Range of a crop's number as its file states it, as shares of the value. The least and the
 * greatest plausible value are taken for the 5 and the 95 % quantile, with a normal distribution of
 * the logarithm on each side of the value, which stays the median; assumed.
 *
 * @param leastFrac least plausible over the value, above 0
 * @param mostFrac greatest plausible over the value
 */
record Plausible(double leastFrac, double mostFrac) {
    /** Normal deviate of the 95 % quantile. */
    private static final double AT_95 = 1.6449;

    /** No number is drawn farther out than this deviate. */
    private static final double FARTHEST = 2.5;

    /** A number nobody doubts. */
    static final Plausible SURE = new Plausible(1, 1);

    /**
     * Of a number of a crop.
     *
     * @param key its place in the crop's file, as {@code growth.light_use}
     * @return {@link #SURE} where the file states no range
     */
    static Plausible of(CropTraits traits, String key) {
        for (CropTraits.Provenance number : traits.provenance()) {
            if (number.key().equals(key)) {
                return of(number);
            }
        }
        return SURE;
    }

    private static Plausible of(CropTraits.Provenance number) {
        List<String> texts = List.of(number.low(), number.value(), number.high());
        double[] values = new double[texts.size()];
        for (int i = 0; i < values.length; i++) {
            int unit = texts.get(i).indexOf(' ');
            if (unit < 0 || !texts.get(i).substring(unit).equals(unitOf(number.value()))) {
                return SURE;
            }
            values[i] = Double.parseDouble(texts.get(i).substring(0, unit));
        }
        return values[0] > 0 && values[0] <= values[1] && values[1] <= values[2]
                ? new Plausible(values[0] / values[1], values[2] / values[1])
                : SURE;
    }

    private static String unitOf(String value) {
        int unit = value.indexOf(' ');
        return unit < 0 ? "" : value.substring(unit);
    }

    /** Factor on the value at a standard normal deviate. */
    double factorAt(double normal) {
        double deviate = Math.max(-FARTHEST, Math.min(FARTHEST, normal));
        double atEdge = deviate < 0 ? leastFrac : mostFrac;
        return FastMath.exp(FastMath.log(atEdge) * Math.abs(deviate) / AT_95);
    }
}
