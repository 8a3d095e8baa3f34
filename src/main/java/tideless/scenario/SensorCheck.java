package tideless.scenario;

import java.util.Optional;

/**
 * What a column of a logger holds that no air at plants has: a slip of unit, a code, a dead pen.
 */
final class SensorCheck {
    /** No room with plants stays drier than this, as a share; assumed. */
    private static final double DRIEST_FRAC = 0.03;

    /** Nor does its air stay so near to saturation, Pa; assumed. */
    private static final double DAMPEST_PA = 20;

    /** Growers give up to 1500 ppm; more than this is no gift; assumed. */
    private static final double MOST_CO2_PPM = 5000;

    /**
     * Air that is the same to the last digit for so long is a sensor that stands still, h; assumed.
     */
    private static final int STILL_H = 72;

    private SensorCheck() {}

    /** What is odd in the hours of a run, in a sentence; empty where nothing is. */
    static Optional<String> odd(String column, double[] values) {
        double most = 0;
        for (double value : values) {
            most = Math.max(most, value);
        }
        return switch (column) {
            case InsideFile.HUMIDITY ->
                    said(
                            most < DRIEST_FRAC,
                            "never above %s %%; is the unit \"fraction\" meant?"
                                    .formatted(Measure.plain(100 * most)));
            case InsideFile.DEFICIT ->
                    said(
                            most < DAMPEST_PA,
                            "never above %s Pa; is the unit kPa meant?"
                                    .formatted(Measure.plain(most)));
            case "co2" ->
                    said(
                            most > MOST_CO2_PPM,
                            "up to %s ppm; is that a logger's sign for a reading that is missing?"
                                    .formatted(Measure.plain(most)));
            case "temperature" ->
                    said(
                            stillH(values) >= STILL_H,
                            "the same for %d hours on end; has the sensor stood still?"
                                    .formatted(stillH(values)));
            default -> Optional.empty();
        };
    }

    private static Optional<String> said(boolean odd, String what) {
        return odd ? Optional.of(what) : Optional.empty();
    }

    /** Most hours in a row that hold the very same value. */
    private static int stillH(double[] values) {
        int longest = 0;
        int since = 0;
        for (int h = 1; h <= values.length; h++) {
            if (h == values.length || values[h] != values[since]) {
                longest = Math.max(longest, h - since);
                since = h;
            }
        }
        return longest;
    }
}
