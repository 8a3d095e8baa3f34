package tideless.study;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

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
     * Points at which a result is asked for: those of two base samples, and those of the first with
     * one group of unknowns taken from the second. Everything that belongs to one base point stands
     * together, so that work that is broken off leaves whole points behind.
     *
     * @param both {@code [point][2 unknowns]}: the first sample and the second
     * @param groups unknowns that are told together, by number
     */
    record Plan(double[][] both, List<int[]> groups) {
        Plan {
            groups = List.copyOf(groups);
        }

        /**
         * Plans it.
         *
         * @param unknowns dimensions, 1 to 500
         * @param points of each of the two base samples, at least 2
         */
        static Plan of(int unknowns, List<int[]> groups, int points, long seed) {
            return new Plan(UnitSample.of(points, 2 * unknowns, seed), groups);
        }

        /** Results that belong to one base point. */
        int perPoint() {
            return groups.size() + 2;
        }

        /** How many results are asked for. */
        int size() {
            return both.length * perPoint();
        }

        /** Where in the unit cube the so-manieth result is asked for. */
        double[] point(int job) {
            double[] pair = both[job / perPoint()];
            int unknowns = pair.length / 2;
            int which = job % perPoint();
            if (which == 1) {
                return Arrays.copyOfRange(pair, unknowns, pair.length);
            }
            double[] point = Arrays.copyOf(pair, unknowns);
            if (which > 1) {
                for (int i : groups.get(which - 2)) {
                    point[i] = pair[unknowns + i];
                }
            }
            return point;
        }

        /** Whether every result of a base point is there. */
        boolean isWhole(double[] results, int point) {
            int first = point * perPoint();
            return IntStream.range(first, first + perPoint())
                    .noneMatch(job -> Double.isNaN(results[job]));
        }

        private int[] whole(double[] results) {
            return IntStream.range(0, both.length).filter(j -> isWhole(results, j)).toArray();
        }

        /** Results of the two base samples at every whole point: what is drawn evenly. */
        double[] sample(double[] results) {
            return IntStream.of(whole(results))
                    .map(j -> j * perPoint())
                    .flatMap(job -> IntStream.of(job, job + 1))
                    .mapToDouble(job -> results[job])
                    .toArray();
        }

        /**
         * What the results say.
         *
         * @param results by job; NaN where one was not reached: its point is left out
         * @param seed of the resamples
         * @return shares by group
         * @throws IllegalArgumentException where fewer than two points are whole
         */
        SobolIndices shares(double[] results, long seed) {
            int[] whole = whole(results);
            if (whole.length < 2) {
                throw new IllegalArgumentException("two whole points are needed");
            }
            double[] a = new double[whole.length];
            double[] b = new double[whole.length];
            double[][] mixed = new double[groups.size()][whole.length];
            for (int j = 0; j < whole.length; j++) {
                int first = whole[j] * perPoint();
                a[j] = results[first];
                b[j] = results[first + 1];
                for (int i = 0; i < mixed.length; i++) {
                    mixed[i][j] = results[first + 2 + i];
                }
            }
            return from(a, b, mixed, seed);
        }
    }

    /**
     * Works them out from results already at hand.
     *
     * @param a results of the first base sample
     * @param b results of the second
     * @param mixed {@code [group][point]}: the first sample with that group of the second
     * @param seed of the resamples
     */
    private static SobolIndices from(double[] a, double[] b, double[][] mixed, long seed) {
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
