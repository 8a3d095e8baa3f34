package tideless.scenario;

import java.util.Arrays;

/** One quantity by the hour, of which some hours may be unknown. */
final class HourlyColumn {
    private final double[] values;
    private final boolean[] known;

    /** A column of so many hours, none of them known. */
    HourlyColumn(int hours) {
        values = new double[hours];
        known = new boolean[hours];
    }

    private HourlyColumn(HourlyColumn other) {
        values = other.values.clone();
        known = other.known.clone();
    }

    HourlyColumn copy() {
        return new HourlyColumn(this);
    }

    int hours() {
        return values.length;
    }

    boolean isKnown(int hour) {
        return known[hour];
    }

    boolean isKnownAnywhere() {
        for (boolean one : known) {
            if (one) {
                return true;
            }
        }
        return false;
    }

    /** The value of an hour that {@link #isKnown}. */
    double at(int hour) {
        if (!known[hour]) {
            throw new IllegalStateException("hour " + hour + " is not known");
        }
        return values[hour];
    }

    void put(int hour, double value) {
        values[hour] = value;
        known[hour] = true;
    }

    /** Puts what was read; unknown where nothing sound was. */
    void put(int hour, Read<Double> read) {
        values[hour] = read.orElse(0.0);
        known[hour] = read.isSound();
    }

    /** Puts into one hour what another holds, be it known or not. */
    void repeat(int from, int to) {
        values[to] = values[from];
        known[to] = known[from];
    }

    void fill(double value) {
        Arrays.fill(values, value);
        Arrays.fill(known, true);
    }

    /** A span of hours that are all known. */
    double[] cut(int from, int hours) {
        double[] cut = new double[hours];
        for (int h = 0; h < hours; h++) {
            cut[h] = at(from + h);
        }
        return cut;
    }
}
