package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.Objects;
import tideless.physics.Time;

/** The air around the plants, and the sun if there is any. */
public sealed interface Climate {
    /**
     * Carbon dioxide all trays' solutions stand with, umol/mol; 0 to work it out from what the
     * roots of each breathe.
     */
    double solutionCo2Ppm();

    /** Whether no daylight falls in: all light is that of lamps. */
    default boolean isDark() {
        return false;
    }

    /** Whether plants stand in the open, under shade at most. */
    default boolean isOpen() {
        return false;
    }

    /** Whether air and light change with every hour: everywhere but in a room without daylight. */
    default boolean isHourly() {
        return !isDark();
    }

    /**
     * Daylight through a window, the same every day: half a sine from the time it begins to the
     * time it ends, on top of the lamps.
     *
     * @param molPerM2Day what reaches the plants in a day, 400-700 nm, mol/m2
     * @param beginS begins, seconds after midnight
     * @param endS ends, seconds after midnight, after {@code beginS}
     */
    record Window(double molPerM2Day, double beginS, double endS) {
        /** A room without daylight. */
        public static final Window NONE = new Window(0, 0, Time.DAY_S);

        public Window {
            if (!(molPerM2Day >= 0) || !(beginS >= 0 && beginS < endS && endS <= Time.DAY_S)) {
                throw new IllegalArgumentException(
                        "no window: " + molPerM2Day + " mol/m2, " + beginS + " to " + endS + " s");
            }
        }

        /** The same window so many times as bright. */
        public Window times(double factor) {
            return new Window(factor * molPerM2Day, beginS, endS);
        }
    }

    /**
     * A room that holds one state by day and one by night.
     *
     * @param dayTempC air temperature while it is day, degC
     * @param nightTempC air temperature at night, degC
     * @param dayHumidityFrac relative humidity by day, 0-1
     * @param nightHumidityFrac relative humidity at night, 0-1
     * @param dayBeginS day begins, seconds after midnight
     * @param dayEndS day ends, seconds after midnight; less than {@code dayBeginS} when the day
     *     runs past midnight; equal means always day
     * @param swingK rise and fall of the temperature through the day on top of both, from the
     *     coldest (03:00) to the warmest (15:00), K; its vapour pressure stays, so air that warms
     *     dries
     * @param window daylight
     * @param airSpeedMPerS air speed at the leaves, m/s
     * @param co2Ppm carbon dioxide of the air, umol/mol
     * @param solutionCo2Ppm carbon dioxide all trays' solutions stand with, umol/mol; 0 to work it
     *     out
     */
    @RecordBuilder
    record Room(
            double dayTempC,
            double nightTempC,
            double dayHumidityFrac,
            double nightHumidityFrac,
            double dayBeginS,
            double dayEndS,
            double swingK,
            Window window,
            double airSpeedMPerS,
            double co2Ppm,
            double solutionCo2Ppm)
            implements Climate, ClimateRoomBuilder.With {
        @Override
        public boolean isDark() {
            return !(window.molPerM2Day() > 0);
        }

        /**
         * The same room a little warmer and damper throughout.
         *
         * @param warmerK added to both temperatures, K
         * @param damperFrac added to both relative humidities, which stay within 0 to 1
         */
        public Room shifted(double warmerK, double damperFrac) {
            return withDayTempC(dayTempC + warmerK)
                    .withNightTempC(nightTempC + warmerK)
                    .withDayHumidityFrac(Math.max(0, Math.min(1, dayHumidityFrac + damperFrac)))
                    .withNightHumidityFrac(
                            Math.max(0, Math.min(1, nightHumidityFrac + damperFrac)));
        }
    }

    /**
     * Hourly outside weather, and what stands between it and the plants.
     *
     * @param weather the hourly series, its first value at the scenario's start, 00:00
     * @param cover what stands between
     * @param airSpeedMPerS air speed at the leaves under a glass or film cover, m/s; in the open or
     *     under shade the wind of the series is used
     * @param co2Ppm carbon dioxide of the air, umol/mol
     * @param solutionCo2Ppm carbon dioxide all trays' solutions stand with, umol/mol; 0 to work it
     *     out
     */
    @RecordBuilder
    record Weather(
            HourlyWeather weather,
            Cover cover,
            double airSpeedMPerS,
            double co2Ppm,
            double solutionCo2Ppm)
            implements Climate, ClimateWeatherBuilder.With {
        public Weather {
            Objects.requireNonNull(weather, "weather");
            Objects.requireNonNull(cover, "cover");
        }

        @Override
        public boolean isOpen() {
            return cover.kind().isOpen();
        }
    }

    /**
     * Air and light measured at the plants, taken as they are.
     *
     * @param air the hourly series, its first value at the scenario's start, 00:00
     * @param solutionCo2Ppm carbon dioxide of the air the solutions stand in contact with, umol/mol
     */
    record Inside(InsideAir air, double solutionCo2Ppm) implements Climate {
        public Inside {
            Objects.requireNonNull(air, "air");
        }
    }
}
