package tideless.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jfree.data.DomainOrder;
import org.jfree.data.xy.AbstractXYDataset;
import tideless.sim.Series;

/** Curves over the days of a run, as the charts want them. */
final class Curves extends AbstractXYDataset {
    private static final long serialVersionUID = 1L;

    /**
     * One curve.
     *
     * @param day days since the start, rising
     * @param value NaN for a gap
     */
    record Curve(double[] day, double[] value) {

        /** A series, each value times a factor; a gap where there is no finite number. */
        static Curve hourly(Series series, double factor) {
            return hourly(series, factor, Double.MAX_VALUE);
        }

        /** Likewise, with a gap also where a value lies above the greatest worth drawing. */
        static Curve hourly(Series series, double factor, double most) {
            int hours = series.size();
            double[] day = new double[hours];
            double[] value = new double[hours];
            for (int h = 0; h < hours; h++) {
                day[h] = (h + 1) / 24.0;
                double at = factor * series.at(h);
                value[h] = Math.abs(at) <= most ? at : Double.NaN;
            }
            return new Curve(day, value);
        }

        /**
         * Fewer points, chosen so that straight lines between them stay within a tolerance of those
         * left out: a point is left out while one slope from the last kept point passes them all.
         */
        Curve thinned(double tolerance) {
            int n = day.length;
            double[] keptDay = new double[n];
            double[] keptValue = new double[n];
            int kept = 0;
            int from = -1;
            double least = Double.NEGATIVE_INFINITY;
            double most = Double.POSITIVE_INFINITY;
            for (int i = 0; i < n; i++) {
                boolean fits = false;
                if (from >= 0 && Double.isFinite(value[i])) {
                    double slope = (value[i] - value[from]) / (day[i] - day[from]);
                    fits = slope >= least && slope <= most;
                }
                if (!fits) {
                    // The last point that fitted ends the line, and the next begins there.
                    if (i > 0 && from >= 0 && from != i - 1) {
                        keptDay[kept] = day[i - 1];
                        keptValue[kept++] = value[i - 1];
                    }
                    from = i > 0 && Double.isFinite(value[i]) && from >= 0 ? i - 1 : i;
                    if (from == i) {
                        keptDay[kept] = day[i];
                        keptValue[kept++] = value[i];
                    }
                    from = Double.isFinite(value[from]) ? from : -1;
                    least = Double.NEGATIVE_INFINITY;
                    most = Double.POSITIVE_INFINITY;
                }
                if (from >= 0 && from != i) {
                    double span = day[i] - day[from];
                    least = Math.max(least, (value[i] - tolerance - value[from]) / span);
                    most = Math.min(most, (value[i] + tolerance - value[from]) / span);
                }
            }
            if (from >= 0 && from != n - 1) {
                keptDay[kept] = day[n - 1];
                keptValue[kept++] = value[n - 1];
            }
            return new Curve(Arrays.copyOf(keptDay, kept), Arrays.copyOf(keptValue, kept));
        }

        /** A value that does not move, from a day to another. */
        static Curve steady(double fromDay, double toDay, double value) {
            return new Curve(new double[] {fromDay, toDay}, new double[] {value, value});
        }

        /** The same up to a day, days since the start. */
        Curve until(int days) {
            int n = 0;
            while (n < day.length && day[n] <= days) {
                n++;
            }
            return new Curve(Arrays.copyOf(day, n), Arrays.copyOf(value, n));
        }

        /** Totals of each whole day, at its noon. */
        static Curve daily(Series series, double factor) {
            int days = series.size() / 24;
            double[] day = new double[days];
            double[] value = new double[days];
            for (int d = 0; d < days; d++) {
                day[d] = d + 0.5;
                value[d] = factor * series.sum(24 * d, 24 * d + 24);
            }
            return new Curve(day, value);
        }

        /** Place of the last point that is a number, or -1. */
        int last() {
            int i = value.length - 1;
            while (i >= 0 && !Double.isFinite(value[i])) {
                i--;
            }
            return i;
        }

        double max() {
            double max = Double.NEGATIVE_INFINITY;
            for (double v : value) {
                max = v > max ? v : max;
            }
            return max;
        }

        double min() {
            double min = Double.POSITIVE_INFINITY;
            for (double v : value) {
                min = v < min ? v : min;
            }
            return min;
        }
    }

    private final transient List<Curve> curves;

    Curves(List<Curve> curves) {
        this.curves = new ArrayList<>(curves);
    }

    @Override
    public int getSeriesCount() {
        return curves.size();
    }

    @Override
    public Integer getSeriesKey(int series) {
        return series;
    }

    @Override
    public DomainOrder getDomainOrder() {
        return DomainOrder.ASCENDING;
    }

    @Override
    public int getItemCount(int series) {
        return curves.get(series).day().length;
    }

    @Override
    public double getXValue(int series, int item) {
        return curves.get(series).day()[item];
    }

    @Override
    public double getYValue(int series, int item) {
        return curves.get(series).value()[item];
    }

    @Override
    public Double getX(int series, int item) {
        return getXValue(series, item);
    }

    @Override
    public Double getY(int series, int item) {
        return getYValue(series, item);
    }
}
