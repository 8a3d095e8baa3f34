package tideless.study;

import java.util.Arrays;

/**
 * What an ensemble says of one figure: where the middle eight tenths of its members lie, and how
 * many never saw it.
 *
 * @param low figure that a tenth of all members stay at or below; infinite where fewer ever see it
 * @param middle half of them
 * @param high nine tenths of them
 * @param neverFrac share of members in which it never came about, 0-1
 * @param members how many there were
 */
public record Band(double low, double middle, double high, double neverFrac, int members) {

    /**
     * Of the members' figures.
     *
     * @param values by member; positive infinity where it never came about
     * @throws IllegalArgumentException for none, or where one is not a number
     */
    public static Band of(double[] values) {
        if (values.length == 0) {
            throw new IllegalArgumentException("a band needs a member");
        }
        double[] rising = values.clone();
        Arrays.sort(rising);
        if (Double.isNaN(rising[rising.length - 1])) {
            throw new IllegalArgumentException("a member's figure is not a number");
        }
        int never = 0;
        for (double value : rising) {
            never += value == Double.POSITIVE_INFINITY ? 1 : 0;
        }
        return new Band(
                quantile(rising, 0.1),
                quantile(rising, 0.5),
                quantile(rising, 0.9),
                never / (double) rising.length,
                rising.length);
    }

    /**
     * Quantile of a rising sample: the inverse of the distribution through (i + 1/2) / n, straight
     * between, which leaves the sample's own median and spread as they are (Hyndman and Fan 1996,
     * definition 5).
     */
    static double quantile(double[] rising, double share) {
        double place = share * rising.length - 0.5;
        int below = (int) Math.floor(place);
        if (below < 0) {
            return rising[0];
        }
        if (below >= rising.length - 1) {
            return rising[rising.length - 1];
        }
        double beyond = place - below;
        if (beyond == 0 || rising[below] == rising[below + 1]) {
            return rising[below];
        }
        return rising[below] + beyond * (rising[below + 1] - rising[below]);
    }
}
