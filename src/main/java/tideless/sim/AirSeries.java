package tideless.sim;

import tideless.physics.HumidAir;
import tideless.scenario.Climate;
import tideless.scenario.Cover;
import tideless.scenario.HourlyWeather;
import tideless.scenario.Scenario;

/**
 * Air and sun at the middle of every step of a {@link Timeline}. Worked out once for a scenario.
 *
 * <p>Temperature, vapour pressure and wind are joined by straight lines between the hours; the sun
 * is held at the hour's mean, so that the day's light is exact.
 */
final class AirSeries {
    /** Share of global radiation in 400-700 nm; 0.42-0.50 in the literature, from memory. */
    static final double PAR_PER_GLOBAL = 0.45;

    /** Photons per joule of that light; Thimijan and Heins (1983), sun and sky. */
    static final double SUN_UMOL_PER_J = 4.57;

    final double[] tempC;
    final double[] vapourPa;
    final double[] speedMPerS;
    final double[] sunParWPerM2;
    final double[] sunInfraredWPerM2;
    final double pressurePa;
    final double co2Ppm;

    private AirSeries(int steps, double pressurePa, double co2Ppm) {
        tempC = new double[steps];
        vapourPa = new double[steps];
        speedMPerS = new double[steps];
        sunParWPerM2 = new double[steps];
        sunInfraredWPerM2 = new double[steps];
        this.pressurePa = pressurePa;
        this.co2Ppm = co2Ppm;
    }

    static AirSeries of(Scenario scenario, Timeline timeline) {
        double pressurePa = HumidAir.pressurePa(scenario.place().altitudeM());
        Climate climate = scenario.climate();
        if (climate instanceof Climate.Room room) {
            return ofRoom(room, timeline, pressurePa);
        }
        if (climate instanceof Climate.Weather weather) {
            return ofWeather(weather, timeline, pressurePa);
        }
        throw new AssertionError("no air for " + climate);
    }

    private static AirSeries ofRoom(Climate.Room room, Timeline timeline, double pressurePa) {
        AirSeries air = new AirSeries(timeline.steps, pressurePa, room.co2Ppm());
        double dayPa = room.dayHumidityFrac() * HumidAir.saturationPressurePa(room.dayTempC());
        double nightPa =
                room.nightHumidityFrac() * HumidAir.saturationPressurePa(room.nightTempC());
        for (int i = 0; i < timeline.steps; i++) {
            boolean day = Timeline.isWithin(timeline.instantS[i], room.dayBeginS(), room.dayEndS());
            air.tempC[i] = day ? room.dayTempC() : room.nightTempC();
            air.vapourPa[i] = day ? dayPa : nightPa;
            air.speedMPerS[i] = room.airSpeedMPerS();
        }
        return air;
    }

    private static AirSeries ofWeather(
            Climate.Weather climate, Timeline timeline, double pressurePa) {
        AirSeries air = new AirSeries(timeline.steps, pressurePa, climate.co2Ppm());
        HourlyWeather weather = climate.weather();
        Cover cover = climate.cover();
        boolean closed = cover.kind() == Cover.Kind.GLASS || cover.kind() == Cover.Kind.FILM;
        int hours = (int) Math.ceil(timeline.instantS[timeline.steps] / Timeline.HOUR_S) + 1;
        double[] tempC = new double[hours];
        double[] vapourPa = new double[hours];
        for (int h = 0; h < hours; h++) {
            double outsideC = weather.tempC(h);
            double outsidePa = weather.humidityFrac(h) * HumidAir.saturationPressurePa(outsideC);
            if (closed) {
                double global = weather.globalWPerM2(h);
                tempC[h] = CoveredAir.tempC(outsideC, global, cover, pressurePa);
                vapourPa[h] = CoveredAir.vapourPa(tempC[h], outsideC, outsidePa, global, cover);
            } else {
                tempC[h] = outsideC;
                vapourPa[h] = outsidePa;
            }
        }
        for (int i = 0; i < timeline.steps; i++) {
            double hour = 0.5 * (timeline.instantS[i] + timeline.instantS[i + 1]) / Timeline.HOUR_S;
            int h = (int) hour;
            double share = hour - h;
            air.tempC[i] = between(tempC, h, share);
            air.vapourPa[i] =
                    Math.min(
                            between(vapourPa, h, share),
                            HumidAir.saturationPressurePa(air.tempC[i]));
            air.speedMPerS[i] =
                    closed
                            ? climate.airSpeedMPerS()
                            : (1 - share) * weather.windMPerS(h) + share * weather.windMPerS(h + 1);
            double inside = cover.transmissionFrac() * weather.globalWPerM2(h);
            air.sunParWPerM2[i] = PAR_PER_GLOBAL * inside;
            air.sunInfraredWPerM2[i] = (1 - PAR_PER_GLOBAL) * inside;
        }
        return air;
    }

    private static double between(double[] values, int h, double share) {
        return (1 - share) * values[h] + share * values[h + 1];
    }
}
