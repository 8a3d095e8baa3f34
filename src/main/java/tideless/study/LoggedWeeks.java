package tideless.study;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.ThirstDoubt;
import tideless.physics.Time;
import tideless.rig.Log;

/**
 * The thirst of the weeks of a log about what it is at the log's end: a stand drifts, so that what
 * was long ago tells less of what is to come, and each week wanders by itself besides. The last two
 * weeks stand for themselves, those before in spans of two, four, eight. Weeks are those of the
 * run, counted from its first day.
 */
final class LoggedWeeks {
    private static final int WEEK_DAYS = 7;

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
                int since = weeks - 1 - Math.max(i, j);
                double variance = since * ThirstDoubt.DRIFT * ThirstDoubt.DRIFT;
                if (i == j) {
                    variance += ThirstDoubt.WEEK_ALONE * ThirstDoubt.WEEK_ALONE;
                }
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

    private double ofSpan(int span, double[] deviates) {
        double sum = 0;
        for (int k = 0; k <= span; k++) {
            sum += root[span][k] * deviates[k];
        }
        return FastMath.exp(sum);
    }

    /** Thirst over that at the log's end by day of the run, up to the end of its last week. */
    double[] factors(double[] deviates) {
        double[] byDay = new double[WEEK_DAYS * (firstWeek + spanOf.length)];
        for (int day = 0; day < byDay.length; day++) {
            int week = day / WEEK_DAYS - firstWeek;
            byDay[day] = week < 0 ? 1 : ofSpan(spanOf[week], deviates);
        }
        return byDay;
    }
}
