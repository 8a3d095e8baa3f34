package tideless.scenario;

import static tideless.scenario.Measure.plain;

/** Comparisons of one height with another, in the words of the user's own file. */
final class Heights {
    /** Two heights that differ by less are the same, m: rounding of units. */
    private static final double SAME_M = 1e-9;

    private Heights() {}

    /** Says so and gives false when a height lies above another; what is faulty never does. */
    static boolean atMost(
            Table table,
            Key<Double> key,
            Read<Double> height,
            String limitName,
            Key<Double> limitKey,
            Read<Double> limit) {
        if (height.holds(heightM -> limit.holds(limitM -> heightM > limitM + SAME_M))) {
            table.faultyValue(
                    key,
                    "up to %s (%s)".formatted(limitName, where(table, limitKey, limit.value())),
                    "");
            return false;
        }
        return true;
    }

    /** Likewise when it does not lie below. */
    static boolean below(
            Table table,
            Key<Double> key,
            Read<Double> height,
            String limitName,
            Key<Double> limitKey,
            Read<Double> limit,
            String hint) {
        if (height.holds(heightM -> limit.holds(limitM -> heightM >= limitM - SAME_M))) {
            table.fault(
                    key,
                    found(table, key, height.value()),
                    "below %s (%s)".formatted(limitName, where(table, limitKey, limit.value())),
                    hint);
            return false;
        }
        return true;
    }

    /** The user's own words, or the default that holds. */
    static String found(Table table, Key<?> key, double heightM) {
        return table.has(key) ? Key.quoted(table.words(key)) : cm(heightM) + ", the default";
    }

    /** A height and where it was stated. */
    static String where(Table table, Key<?> key, double heightM) {
        return table.has(key)
                ? table.words(key) + ", line " + table.line(key)
                : cm(heightM) + ", the default";
    }

    static String cm(double heightM) {
        return plain(heightM, UnitTable.LENGTH, "cm");
    }

    /** A height that is the rim's when nothing is stated. */
    static String rim(double depthM) {
        return cm(depthM) + ", the rim";
    }
}
