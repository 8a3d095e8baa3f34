package tideless.study;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.ThirstDoubt;
import tideless.physics.Time;
import tideless.rig.Log;

/**
 * The thirst of the weeks of a log about that of its stand: each week remembers the one before it,
 * as those of any run do ({@link ThirstDoubt#WEEK}, {@link ThirstDoubt#WEEK_MEMORY}), and the weeks
 * after the log remember its last. The last two weeks stand for themselves, those before in spans
 * of two, four, eight. Weeks are those of the run, counted from its first day.
 */
final class LoggedWeeks {
    private static final int WEEK_DAYS = 7;

    /** After so many weeks hardly a hundredth of a week's own thirst is remembered. */
    private static final int REMEMBERED_WEEKS = 7;

    private final int firstWeek;
    private final int[] spanOf; // by week from the first on, spans from the oldest
    private final double[][] root; // of the spans' covariance, lower triangle

    private LoggedWeeks(int firstWeek, int[] spanOf, double[][] root) {
        this.firstWeek = firstWeek;
        this.spanOf = spanOf;
        this.root = root;
    }

    static LoggedWeeks of(Log log) {
        int first = (int) (log.entries().get(0).atS() / Time.DAY_S) / WEEK_DAYS;
        return of(first, Math.max(first, lastWeek(log)));
    }

    /** Week of the run, from 0, up to which its thirst was read. */
    static int lastWeek(Log log) {
        return Math.max(0, log.lastBelievedDay()) / WEEK_DAYS;
    }

    /** Of the weeks of a run from one to another, both included. */
    static LoggedWeeks of(int first, int last) {
        int weeks = last - first + 1;
        int[] fromEnd = new int[weeks];
        int spans = 0;
        int length = 1;
        for (int week = 0; week < weeks; spans++) {
            for (int i = 0; i < length && week < weeks; i++) {
                fromEnd[week++] = spans;
            }
            length = spans == 0 ? 1 : 2 * length;
        }
        int[] spanOf = new int[weeks];
        double[] size = new double[spans];
        for (int week = 0; week < weeks; week++) {
            spanOf[week] = spans - 1 - fromEnd[weeks - 1 - week];
            size[spanOf[week]]++;
        }
        double[][] shared = new double[spans][spans];
        for (int i = 0; i < weeks; i++) {
            for (int j = 0; j < weeks; j++) {
                double variance = ThirstDoubt.WEEK * ThirstDoubt.WEEK * memory(Math.abs(i - j));
                shared[spanOf[i]][spanOf[j]] += variance / (size[spanOf[i]] * size[spanOf[j]]);
            }
        }
        double[][] root =
                new CholeskyDecomposition(new Array2DRowRealMatrix(shared), 1e-9, 1e-12)
                        .getL()
                        .getData();
        return new LoggedWeeks(first, spanOf, root);
    }

    int spans() {
        return root.length;
    }

    /** How the logarithm of the log's thirst, mean of its weeks, moves with the deviates. */
    double[] meanSlope() {
        double[] slope = new double[spans()];
        for (int span : spanOf) {
            for (int k = 0; k <= span; k++) {
                slope[k] += root[span][k] / spanOf.length;
            }
        }
        return slope;
    }

    private double ofSpan(int span, double[] deviates) {
        double sum = 0;
        for (int k = 0; k <= span; k++) {
            sum += root[span][k] * deviates[k];
        }
        return sum;
    }

    /**
     * Thirst over that of the stand by day of the run: up to the end of the log's last week, and
     * what is remembered of that week in those after it. Weeks have a mean of 1.
     */
    double[] factors(double[] deviates) {
        double[] byDay = new double[WEEK_DAYS * (firstWeek + spanOf.length + REMEMBERED_WEEKS)];
        double last = ofSpan(spans() - 1, deviates);
        for (int day = 0; day < byDay.length; day++) {
            int week = day / WEEK_DAYS - firstWeek;
            double kept = memory(Math.max(0, week - spanOf.length + 1));
            double of = week < 0 || kept < 1 ? kept * last : ofSpan(spanOf[week], deviates);
            double mean = 0.5 * ThirstDoubt.WEEK * ThirstDoubt.WEEK * kept * kept;
            byDay[day] = week < 0 ? 1 : FastMath.exp(of - mean);
        }
        return byDay;
    }

    /** Correlation of a week with one so many weeks before it. */
    private static double memory(int weeks) {
        return FastMath.pow(ThirstDoubt.WEEK_MEMORY, weeks);
    }
}
