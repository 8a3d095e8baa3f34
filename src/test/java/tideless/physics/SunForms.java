package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/**
 * FAO-56 (Allen et al. 1998), chapter 3: the forms its worked examples go through that the program
 * does not need.
 */
public final class SunForms {
    private SunForms() {}

    /** Albedo of the reference grass; FAO-56 (Allen et al. 1998), eq. 38. */
    public static final double REFERENCE_ALBEDO_FRAC = 0.23;

    private static final double HOUR_ANGLE_PER_S = Math.PI / 43200;

    /**
     * Radiation above the air on a level surface between two solar times; FAO-56, eqs. 28 to 30.
     * The part of the interval with the sun below the horizon counts as nothing (the paper leaves
     * hours that hold sunrise or sunset open).
     *
     * @param latitudeRad rad
     * @param dayOfYear 1 to 366
     * @param startSolarS begin, seconds after solar midnight; noon is 43200
     * @param endSolarS end, later than {@code startSolarS}; both within one day from solar midnight
     *     to solar midnight
     * @return W/m2, mean over the whole interval
     */
    public static double extraterrestrialWPerM2(
            double latitudeRad, double dayOfYear, double startSolarS, double endSolarS) {
        double sunset = Sun.sunsetHourAngleRad(latitudeRad, dayOfYear);
        double start = Math.max(-sunset, hourAngleRad(startSolarS));
        double end = Math.min(sunset, hourAngleRad(endSolarS));
        if (!(end > start)) {
            return 0;
        }
        double declination = Sun.declinationRad(dayOfYear);
        return Sun.SOLAR_CONSTANT_W_PER_M2
                / (HOUR_ANGLE_PER_S * (endSolarS - startSolarS))
                * Sun.inverseDistance(dayOfYear)
                * ((end - start) * FastMath.sin(latitudeRad) * FastMath.sin(declination)
                        + FastMath.cos(latitudeRad)
                                * FastMath.cos(declination)
                                * (FastMath.sin(end) - FastMath.sin(start)));
    }

    /**
     * Hour angle of a solar time; FAO-56, eq. 31 in solar time.
     *
     * @param solarS seconds after solar midnight
     * @return rad, negative before noon
     */
    public static double hourAngleRad(double solarS) {
        return HOUR_ANGLE_PER_S * (solarS - 43200);
    }

    /**
     * Seconds by which solar time runs ahead of the clock; FAO-56, eqs. 31 to 33.
     *
     * @param longitudeDeg of the place, east positive
     * @param clockMeridianDeg meridian of the clock's zone, east positive; 15 per hour ahead of
     *     Greenwich, the summer hour included. The zone that is kept counts, not the nearest one.
     * @param dayOfYear 1 to 366
     * @return s
     */
    public static double solarAheadOfClockS(
            double longitudeDeg, double clockMeridianDeg, double dayOfYear) {
        return 3600
                * (0.06667 * (longitudeDeg - clockMeridianDeg) + seasonalCorrectionH(dayOfYear));
    }

    /**
     * Seasonal correction of solar time; FAO-56, eqs. 32 and 33.
     *
     * @param dayOfYear 1 to 366
     * @return h
     */
    public static double seasonalCorrectionH(double dayOfYear) {
        double b = 2 * Math.PI * (dayOfYear - 81) / 364;
        return 0.1645 * FastMath.sin(2 * b) - 0.1255 * FastMath.cos(b) - 0.025 * FastMath.sin(b);
    }

    /**
     * Height of the sun above the horizon, without refraction (spherical astronomy, as FAO-56's eq.
     * 28 before its integration).
     *
     * @param latitudeRad rad
     * @param dayOfYear 1 to 366
     * @param solarS seconds after solar midnight
     * @return rad, negative below the horizon
     */
    public static double altitudeRad(double latitudeRad, double dayOfYear, double solarS) {
        double declination = Sun.declinationRad(dayOfYear);
        return FastMath.asin(
                FastMath.sin(latitudeRad) * FastMath.sin(declination)
                        + FastMath.cos(latitudeRad)
                                * FastMath.cos(declination)
                                * FastMath.cos(hourAngleRad(solarS)));
    }

    /**
     * Global radiation from hours of sunshine; FAO-56, eq. 35 with 0.25 and 0.50.
     *
     * @param sunshineS time of sunshine, s
     * @param dayLengthS possible time, s, above 0
     * @param extraterrestrialWPerM2 W/m2
     * @return W/m2 over the same time as {@code extraterrestrialWPerM2}
     */
    public static double globalFromSunshineWPerM2(
            double sunshineS, double dayLengthS, double extraterrestrialWPerM2) {
        return (0.25 + 0.50 * sunshineS / dayLengthS) * extraterrestrialWPerM2;
    }

    /**
     * Global radiation from the day's range of temperature; FAO-56, eq. 50.
     *
     * @param maxTempC degC
     * @param minTempC degC
     * @param coefficientPerRootK 0.16 inland, 0.19 at a coast
     * @param extraterrestrialWPerM2 W/m2
     * @return W/m2
     */
    public static double globalFromTemperaturesWPerM2(
            double maxTempC,
            double minTempC,
            double coefficientPerRootK,
            double extraterrestrialWPerM2) {
        return coefficientPerRootK * Math.sqrt(maxTempC - minTempC) * extraterrestrialWPerM2;
    }

    /**
     * Net short-wave radiation of the reference grass; FAO-56, eq. 38.
     *
     * @param globalWPerM2 W/m2
     * @return W/m2
     */
    public static double netShortWaveWPerM2(double globalWPerM2) {
        return (1 - REFERENCE_ALBEDO_FRAC) * globalWPerM2;
    }

    /**
     * Net long-wave loss of a day; FAO-56, eq. 39.
     *
     * @param maxTempC degC
     * @param minTempC degC
     * @param vapourPressurePa Pa
     * @param relativeGlobalFrac global over clear-sky radiation, at most 1 (more counts as 1)
     * @return W/m2, positive for a loss
     */
    public static double netLongWaveDailyWPerM2(
            double maxTempC, double minTempC, double vapourPressurePa, double relativeGlobalFrac) {
        return Sun.netLongWaveWPerM2(
                0.5 * (Sun.fourthPower(maxTempC) + Sun.fourthPower(minTempC)),
                vapourPressurePa,
                relativeGlobalFrac);
    }
}
