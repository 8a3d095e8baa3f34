package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/**
 * Where the sun stands, what it sends, and the net radiation of a short green surface.
 *
 * <p>FAO-56 (Allen et al. 1998), chapter 3. Latitudes are in radians, north positive; longitudes in
 * degrees, east positive (the paper counts west). Fluxes are means over the stated time in W/m2; 1
 * MJ/m2/d is 11.574 W/m2, 1 MJ/m2/h is 277.78 W/m2.
 */
public final class Sun {
    /** Solar constant, W/m2: 0.0820 MJ/m2/min; FAO-56 (Allen et al. 1998), eq. 21. */
    public static final double SOLAR_CONSTANT_W_PER_M2 = 0.0820e6 / 60;

    /** Albedo of the reference grass; FAO-56 (Allen et al. 1998), eq. 38. */
    public static final double REFERENCE_ALBEDO_FRAC = 0.23;

    /** Stefan-Boltzmann constant as printed, 4.903e-9 MJ/m2/d/K4, in W; FAO-56, eq. 39. */
    private static final double STEFAN_BOLTZMANN_W_PER_M2_K4 = 4.903e-3 / 86400;

    private static final double HOUR_ANGLE_PER_S = Math.PI / 43200; // the earth turns once a day

    private Sun() {}

    /**
     * Day angle, 2 pi J/365; FAO-56, eqs. 23 and 24.
     *
     * @param dayOfYear 1 to 366
     * @return rad
     */
    public static double dayAngleRad(double dayOfYear) {
        return 2 * Math.PI / 365 * dayOfYear;
    }

    /**
     * Inverse relative distance of earth and sun; FAO-56, eq. 23.
     *
     * @param dayOfYear 1 to 366
     * @return dimensionless
     */
    public static double inverseDistance(double dayOfYear) {
        return 1 + 0.033 * FastMath.cos(dayAngleRad(dayOfYear));
    }

    /**
     * Declination of the sun; FAO-56, eq. 24. Good to 1.3 degrees (0.023 rad): a plain sine runs
     * ahead of the almanac from August to November and is better than half a degree in spring.
     *
     * @param dayOfYear 1 to 366
     * @return rad
     */
    public static double declinationRad(double dayOfYear) {
        return 0.409 * FastMath.sin(dayAngleRad(dayOfYear) - 1.39);
    }

    /**
     * Hour angle at sunset; FAO-56, eq. 25. 0 in the polar night, pi under the midnight sun.
     *
     * @param latitudeRad rad
     * @param dayOfYear 1 to 366
     * @return rad, 0 to pi
     */
    public static double sunsetHourAngleRad(double latitudeRad, double dayOfYear) {
        double cosine = -FastMath.tan(latitudeRad) * FastMath.tan(declinationRad(dayOfYear));
        return FastMath.acos(Math.max(-1, Math.min(1, cosine)));
    }

    /**
     * Length of the day between geometric sunrise and sunset; FAO-56, eq. 34.
     *
     * @param latitudeRad rad
     * @param dayOfYear 1 to 366
     * @return s
     */
    public static double dayLengthS(double latitudeRad, double dayOfYear) {
        return 86400 / Math.PI * sunsetHourAngleRad(latitudeRad, dayOfYear);
    }

    /**
     * Radiation above the air on a level surface, mean of the day; FAO-56, eq. 21.
     *
     * @param latitudeRad rad
     * @param dayOfYear 1 to 366
     * @return W/m2, mean over 24 h
     */
    public static double extraterrestrialDailyWPerM2(double latitudeRad, double dayOfYear) {
        double sunset = sunsetHourAngleRad(latitudeRad, dayOfYear);
        double declination = declinationRad(dayOfYear);
        return SOLAR_CONSTANT_W_PER_M2
                / Math.PI
                * inverseDistance(dayOfYear)
                * (sunset * FastMath.sin(latitudeRad) * FastMath.sin(declination)
                        + FastMath.cos(latitudeRad)
                                * FastMath.cos(declination)
                                * FastMath.sin(sunset));
    }

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
        double sunset = sunsetHourAngleRad(latitudeRad, dayOfYear);
        double start = Math.max(-sunset, hourAngleRad(startSolarS));
        double end = Math.min(sunset, hourAngleRad(endSolarS));
        if (!(end > start)) {
            return 0;
        }
        double declination = declinationRad(dayOfYear);
        return SOLAR_CONSTANT_W_PER_M2
                / (HOUR_ANGLE_PER_S * (endSolarS - startSolarS))
                * inverseDistance(dayOfYear)
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
        double declination = declinationRad(dayOfYear);
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
     * Global radiation under a clear sky; FAO-56, eq. 37.
     *
     * @param extraterrestrialWPerM2 W/m2
     * @param altitudeAboveSeaM m
     * @return W/m2
     */
    public static double clearSkyWPerM2(double extraterrestrialWPerM2, double altitudeAboveSeaM) {
        return (0.75 + 2e-5 * altitudeAboveSeaM) * extraterrestrialWPerM2;
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
        return netLongWaveWPerM2(
                0.5 * (fourthPower(maxTempC) + fourthPower(minTempC)),
                vapourPressurePa,
                relativeGlobalFrac);
    }

    /**
     * Net long-wave loss of an hour; FAO-56, eq. 39 with the hour's mean temperature.
     *
     * @param tempC degC
     * @param vapourPressurePa Pa
     * @param relativeGlobalFrac global over clear-sky radiation, at most 1 (more counts as 1); at
     *     night that of the last hours of sun, else 0.4 to 0.6 in humid and 0.7 to 0.8 in dry
     *     places
     * @return W/m2, positive for a loss
     */
    public static double netLongWaveHourlyWPerM2(
            double tempC, double vapourPressurePa, double relativeGlobalFrac) {
        return netLongWaveWPerM2(fourthPower(tempC), vapourPressurePa, relativeGlobalFrac);
    }

    private static double netLongWaveWPerM2(
            double tempK4, double vapourPressurePa, double relativeGlobalFrac) {
        return STEFAN_BOLTZMANN_W_PER_M2_K4
                * tempK4
                * (0.34 - 0.14 * Math.sqrt(1e-3 * vapourPressurePa))
                * (1.35 * Math.min(1, relativeGlobalFrac) - 0.35);
    }

    private static double fourthPower(double tempC) {
        double kelvin = tempC + 273.16; // as eq. 39 prints it
        double square = kelvin * kelvin;
        return square * square;
    }
}
