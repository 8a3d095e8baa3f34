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

    /** Stefan-Boltzmann constant as printed, 4.903e-9 MJ/m2/d/K4, in W; FAO-56, eq. 39. */
    private static final double STEFAN_BOLTZMANN_W_PER_M2_K4 =
            4.903e-3 / Time.DAY_S; // the earth turns once a day

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

    static double netLongWaveWPerM2(
            double tempK4, double vapourPressurePa, double relativeGlobalFrac) {
        return STEFAN_BOLTZMANN_W_PER_M2_K4
                * tempK4
                * (0.34 - 0.14 * Math.sqrt(1e-3 * vapourPressurePa))
                * (1.35 * Math.min(1, relativeGlobalFrac) - 0.35);
    }

    static double fourthPower(double tempC) {
        double kelvin = tempC + 273.16; // as eq. 39 prints it
        double square = kelvin * kelvin;
        return square * square;
    }
}
