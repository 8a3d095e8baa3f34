package tideless.scenario;

import java.util.Optional;
import tideless.physics.HumidAir;
import tideless.rig.InsideAir;

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

    /** Lamps that never come above this share are levels of 0 to 1 under a unit of %; assumed. */
    private static final double FAINTEST_FRAC = 0.0101;

    /** No crop is raised in air that is never warmer than this, degC; assumed. */
    private static final double COLDEST_C = 5;

    /** Hours that lamps must have burnt before anything is made of what a sensor saw; assumed. */
    private static final int BURNT_H = 24;

    /** Lamps as dim as that do not show, umol/m2/s; assumed. */
    private static final double SHOWS_UMOL_PER_M2_S = 20;

    /**
     * A sensor that sees the lamps shows at least so much of their light, for it may hang aside and
     * counts their near infrared as the sun's; assumed.
     */
    private static final double SEEN_FRAC = 0.6;

    private SensorCheck() {}

    /** What is odd in the hours of a run, in a sentence; empty where nothing is. */
    static Optional<String> odd(String column, double[] values) {
        double most = Double.NEGATIVE_INFINITY;
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
            case InsideFile.LAMP ->
                    said(
                            most > 0 && most <= FAINTEST_FRAC,
                            "never above %s %%; is the unit \"fraction\" meant?"
                                    .formatted(Measure.plain(100 * most)));
            case "temperature" ->
                    most < COLDEST_C
                            ? Optional.of(
                                    "never above %s degC; is its unit as meant?"
                                            .formatted(Measure.plain(most)))
                            : said(
                                    stillH(values) >= STILL_H,
                                    "the same for %d hours on end; has the sensor stood still?"
                                            .formatted(stillH(values)));
            default -> Optional.empty();
        };
    }

    /** Moisture that no air holds is noise of a sensor in fewer hours than this share; assumed. */
    private static final double NOISE_FRAC = 0.02;

    /** Beyond saturation by less is dew on a sensor; assumed. */
    private static final double DEW_FRAC = 1.05;

    /**
     * What is odd in moisture against the air's warmth, in a sentence; empty where nothing is.
     *
     * @param pa a deficit or a vapour pressure by the hour, Pa
     * @param tempC of the air, degC
     */
    static Optional<String> beyondSaturation(double[] pa, double[] tempC) {
        int beyond = 0;
        for (int h = 0; h < pa.length; h++) {
            beyond += pa[h] > DEW_FRAC * HumidAir.saturationPressurePa(tempC[h]) ? 1 : 0;
        }
        return said(
                beyond > NOISE_FRAC * pa.length,
                "in %d of %d hours more than air of that warmth can hold; is its unit as meant?"
                        .formatted(beyond, pa.length));
    }

    /** Whether what is taken for sun is never less than the lamps while they burn. */
    static boolean seesLamps(InsideAir air) {
        int burnt = 0;
        for (int h = 0; h < air.hours(); h++) {
            double lamps = air.at(InsideAir.Quantity.LAMP_PPFD_UMOL_PER_M2_S, h);
            if (lamps < SHOWS_UMOL_PER_M2_S) {
                continue;
            }
            burnt++;
            double sun = air.at(InsideAir.Quantity.SUN_PAR_W_PER_M2, h);
            if (sun < SEEN_FRAC * lamps / air.lampUmolPerJ()) {
                return false;
            }
        }
        return burnt >= BURNT_H;
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
