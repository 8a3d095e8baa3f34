package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/** Other published forms of the reference, to hold the hourly and the indoor one against. */
public final class ReferenceForms {
    private static final double MJ_PER_DAY = 0.0864; // of 1 W, by definition

    /** Reference surfaces of the standardized equation; ASCE-EWRI (2005). */
    public enum Surface {
        /** Clipped grass, 0.12 m. */
        SHORT(900, 0.34, 37, 0.24, 0.96),
        /** Alfalfa, 0.50 m. */
        TALL(1600, 0.38, 66, 0.25, 1.7);

        private final double dailyNumerator;
        private final double dailyDenominator;
        private final double hourlyNumerator;
        private final double dayDenominator;
        private final double nightDenominator;

        Surface(
                double dailyNumerator,
                double dailyDenominator,
                double hourlyNumerator,
                double dayDenominator,
                double nightDenominator) {
            this.dailyNumerator = dailyNumerator;
            this.dailyDenominator = dailyDenominator;
            this.hourlyNumerator = hourlyNumerator;
            this.dayDenominator = dayDenominator;
            this.nightDenominator = nightDenominator;
        }
    }

    private ReferenceForms() {}

    /**
     * Reference evapotranspiration of a day.
     *
     * <p>FAO-56 (Allen et al. 1998), eq. 6, with the psychrometric constant 0.665e-3 P of eq. 8.
     *
     * @param meanTempC mean of the day's extremes, degC
     * @param saturationPa mean of the saturation pressures at the day's extremes (eq. 12), Pa
     * @param vapourPressurePa Pa
     * @param windAt2MMPerS m/s
     * @param netRadiationWPerM2 mean of the day, W/m2
     * @param soilHeatWPerM2 mean of the day, W/m2
     * @param airPressurePa Pa
     * @return mm/d
     */
    public static double faoDailyMmPerDay(
            double meanTempC,
            double saturationPa,
            double vapourPressurePa,
            double windAt2MMPerS,
            double netRadiationWPerM2,
            double soilHeatWPerM2,
            double airPressurePa) {
        return ReferenceEvapotranspiration.standardizedMm(
                900,
                0.34,
                meanTempC,
                saturationPa - vapourPressurePa,
                windAt2MMPerS,
                MJ_PER_DAY * (netRadiationWPerM2 - soilHeatWPerM2),
                airPressurePa);
    }

    /**
     * Heat into the soil over a month.
     *
     * <p>FAO-56 (Allen et al. 1998), eq. 43: 0.07 MJ/m2/d per kelvin.
     *
     * @param previousMonthTempC mean air temperature of the month before, degC
     * @param nextMonthTempC mean air temperature of the month after, degC
     * @return W/m2
     */
    public static double monthlySoilHeatWPerM2(double previousMonthTempC, double nextMonthTempC) {
        return 0.07 / MJ_PER_DAY * (nextMonthTempC - previousMonthTempC);
    }

    /**
     * Standardized reference evapotranspiration of a day.
     *
     * <p>ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, eq. 1 and
     * table 1; constants from memory.
     *
     * @param surface the reference surface
     * @param meanTempC mean of the day's extremes, degC
     * @param saturationPa mean of the saturation pressures at the day's extremes, Pa
     * @param vapourPressurePa Pa
     * @param windAt2MMPerS m/s
     * @param netRadiationWPerM2 mean of the day, W/m2
     * @param airPressurePa Pa
     * @return mm/d
     */
    public static double asceDailyMmPerDay(
            Surface surface,
            double meanTempC,
            double saturationPa,
            double vapourPressurePa,
            double windAt2MMPerS,
            double netRadiationWPerM2,
            double airPressurePa) {
        return ReferenceEvapotranspiration.standardizedMm(
                surface.dailyNumerator,
                surface.dailyDenominator,
                meanTempC,
                saturationPa - vapourPressurePa,
                windAt2MMPerS,
                MJ_PER_DAY * netRadiationWPerM2,
                airPressurePa);
    }

    /**
     * Standardized reference evapotranspiration of an hour. Night is where the net radiation is
     * negative.
     *
     * <p>ASCE-EWRI (2005), eq. 1, table 1 and eqs. 65 and 66 for the heat into the soil (second
     * hand).
     *
     * @param surface the reference surface
     * @param tempC mean of the hour, degC
     * @param vapourPressurePa Pa
     * @param windAt2MMPerS m/s
     * @param netRadiationWPerM2 mean of the hour, W/m2
     * @param airPressurePa Pa
     * @return mm/h
     */
    public static double asceHourlyMmPerHour(
            Surface surface,
            double tempC,
            double vapourPressurePa,
            double windAt2MMPerS,
            double netRadiationWPerM2,
            double airPressurePa) {
        boolean night = netRadiationWPerM2 < 0;
        double soilShare;
        if (surface == Surface.SHORT) {
            soilShare = night ? 0.5 : 0.1;
        } else {
            soilShare = night ? 0.2 : 0.04;
        }
        return ReferenceEvapotranspiration.standardizedMm(
                surface.hourlyNumerator,
                night ? surface.nightDenominator : surface.dayDenominator,
                tempC,
                HumidAir.vapourPressureDeficitPa(tempC, vapourPressurePa),
                windAt2MMPerS,
                ReferenceEvapotranspiration.MJ_PER_HOUR * (1 - soilShare) * netRadiationWPerM2,
                airPressurePa);
    }

    /**
     * Reference evapotranspiration of a day from temperatures and the sun above the air alone.
     *
     * <p>Hargreaves as FAO-56 (Allen et al. 1998), eq. 52.
     *
     * @param maxTempC degC
     * @param minTempC degC
     * @param extraterrestrialWPerM2 mean of the day, W/m2
     * @return mm/d
     */
    public static double hargreavesMmPerDay(
            double maxTempC, double minTempC, double extraterrestrialWPerM2) {
        return 0.0023
                * (0.5 * (maxTempC + minTempC) + 17.8)
                * Math.sqrt(maxTempC - minTempC)
                * 0.408
                * MJ_PER_DAY
                * extraterrestrialWPerM2;
    }

    /**
     * Wind at 2 m from the wind at another height over short grass.
     *
     * <p>FAO-56 (Allen et al. 1998), eq. 47.
     *
     * @param windMPerS m/s
     * @param heightM of the instrument, m, above 0.1
     * @return m/s
     */
    public static double windAt2MMPerS(double windMPerS, double heightM) {
        return windMPerS * 4.87 / FastMath.log(67.8 * heightM - 5.42);
    }
}
