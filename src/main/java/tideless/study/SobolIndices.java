package tideless.study;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/**
 * Which of several unknowns moves a result: shares of its variance after Sobol (2001), by the
 * estimators of Saltelli et al. (2010, table 2: first order (b), total effect after Jansen (f)).
 *
 * <p>The estimators' own error is the standard deviation over resamples of the points with
 * replacement (bootstrap; Archer, Saltelli and Sobol 1997).
 *
 * @param first share explained by each unknown alone
 * @param total share that would be left if all the others were known
 * @param firstError standard error of {@code first}
 * @param totalError standard error of {@code total}
 * @param mean of the result
 * @param variance of the result; all shares are 0 where it is 0
 */
record SobolIndices(
        double[] first,
        double[] total,
        double[] firstError,
        double[] totalError,
        double mean,
        double variance) {

    private static final int RESAMPLES = 200;

    /**
     * Works them out from {@code points (unknowns + 2)} evaluations.
     *
     * @param result of a point in the unit cube
     * @param unknowns dimensions, 1 to 500
     * @param points of each of the two base samples, at least 2
     * @param seed of samples and resamples
     */
    static SobolIndices of(ToDoubleFunction<double[]> result, int unknowns, int points, long seed) {
        double[][] both = UnitSample.of(points, 2 * unknowns, seed);
        double[] a = new double[points];
        double[] b = new double[points];
        double[][] mixed = new double[unknowns][points];
        for (int j = 0; j < points; j++) {
            double[] left = Arrays.copyOfRange(both[j], 0, unknowns);
            double[] right = Arrays.copyOfRange(both[j], unknowns, 2 * unknowns);
            a[j] = result.applyAsDouble(left.clone());
            b[j] = result.applyAsDouble(right.clone());
            for (int i = 0; i < unknowns; i++) {
                double[] point = left.clone();
                point[i] = right[i];
                mixed[i][j] = result.applyAsDouble(point);
            }
        }
        return from(a, b, mixed, seed);
    }

    /**
     * Works them out from results already at hand.
     *
     * @param a results of the first base sample
     * @param b results of the second
     * @param mixed {@code [unknown][point]}: the first sample with that unknown of the second
     * @param seed of the resamples
     */
    static SobolIndices from(double[] a, double[] b, double[][] mixed, long seed) {
        int unknowns = mixed.length;
        int points = a.length;
        int[] all = new int[points];
        Arrays.setAll(all, j -> j);
        Shares whole = Shares.of(a, b, mixed, all);
        double[] firstSum = new double[unknowns];
        double[] firstSquares = new double[unknowns];
        double[] totalSum = new double[unknowns];
        double[] totalSquares = new double[unknowns];
        SplittableRandom random = new SplittableRandom(seed ^ 0x5DEECE66DL);
        for (int r = 0; r < RESAMPLES; r++) {
            int[] drawn = new int[points];
            Arrays.setAll(drawn, j -> random.nextInt(points));
            Shares shares = Shares.of(a, b, mixed, drawn);
            for (int i = 0; i < unknowns; i++) {
                firstSum[i] += shares.first[i];
                firstSquares[i] += shares.first[i] * shares.first[i];
                totalSum[i] += shares.total[i];
                totalSquares[i] += shares.total[i] * shares.total[i];
            }
        }
        return new SobolIndices(
                whole.first,
                whole.total,
                deviations(firstSum, firstSquares),
                deviations(totalSum, totalSquares),
                whole.mean,
                whole.variance);
    }

    private static double[] deviations(double[] sums, double[] squares) {
        double[] deviations = new double[sums.length];
        for (int i = 0; i < sums.length; i++) {
            double mean = sums[i] / RESAMPLES;
            deviations[i] = Math.sqrt(Math.max(0, squares[i] / RESAMPLES - mean * mean));
        }
        return deviations;
    }

    private record Shares(double[] first, double[] total, double mean, double variance) {
        static Shares of(double[] a, double[] b, double[][] mixed, int[] drawn) {
            double sum = 0;
            for (int j : drawn) {
                sum += a[j] + b[j];
            }
            double mean = sum / (2.0 * drawn.length);
            double squares = 0;
            for (int j : drawn) {
                squares += (a[j] - mean) * (a[j] - mean) + (b[j] - mean) * (b[j] - mean);
            }
            double variance = squares / (2.0 * drawn.length);
            double[] first = new double[mixed.length];
            double[] total = new double[mixed.length];
            if (variance > 0) {
                for (int i = 0; i < mixed.length; i++) {
                    double alone = 0;
                    double left = 0;
                    for (int j : drawn) {
                        alone += (b[j] - mean) * (mixed[i][j] - a[j]);
                        left += (a[j] - mixed[i][j]) * (a[j] - mixed[i][j]);
                    }
                    first[i] = alone / drawn.length / variance;
                    total[i] = left / (2.0 * drawn.length) / variance;
                }
            }
            return new Shares(first, total, mean, variance);
        }
    }
}
