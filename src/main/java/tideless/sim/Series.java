package tideless.sim;

/** Numbers of one run, one an hour. Immutable. */
public final class Series {
    private final double[] values;

    Series(double[] values) {
        this.values = values;
    }

    /** A series of the given values; for tests and for reports on made-up traces. */
    public static Series of(double... values) {
        return new Series(values.clone());
    }

    public int size() {
        return values.length;
    }

    public double at(int hour) {
        return values[hour];
    }

    /** Sum over hours {@code from} (included) to {@code to} (not included). */
    public double sum(int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        return sum;
    }

    /** Sum of all. */
    public double sum() {
        return sum(0, values.length);
    }

    /** Greatest value over hours {@code from} (included) to {@code to} (not included). */
    public double max(int from, int to) {
        double max = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            max = Math.max(max, values[i]);
        }
        return max;
    }

    /** Least value over hours {@code from} (included) to {@code to} (not included). */
    public double min(int from, int to) {
        double min = Double.POSITIVE_INFINITY;
        for (int i = from; i < to; i++) {
            min = Math.min(min, values[i]);
        }
        return min;
    }

    public double[] toArray() {
        return values.clone();
    }
}
