package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tideless.physics.HumidAir;
import tideless.physics.Sun;
import tideless.rig.Climate;
import tideless.rig.Cover;
import tideless.rig.Filling;
import tideless.rig.HourlyWeather;
import tideless.rig.InsideAir;
import tideless.rig.Lamp;
import tideless.rig.Numerics;
import tideless.rig.Place;
import tideless.rig.Scenario;
import tideless.rig.TestScenario;

class AirSeriesTest {
    private static final LocalDate FIRST_OF_OCTOBER = LocalDate.of(2027, 10, 1); // day 274
    private static final Place NDIAYE = new Place(16 + 13 / 60.0, -16.25, 8);

    private static AirSeries air(Climate climate) {
        Scenario rig =
                Rigs.scenario(
                        1,
                        600,
                        List.of(),
                        List.of(Rigs.tray("one", new Filling.Sealed(), Rigs.drinking(1), 0)),
                        Rigs.nobody());
        Scenario scenario =
                TestScenario.of(rig)
                        .start(FIRST_OF_OCTOBER)
                        .days(1)
                        .place(NDIAYE)
                        .climate(climate)
                        .numerics(new Numerics(600))
                        .make();
        return AirSeries.of(scenario, Timeline.of(scenario));
    }

    private static Climate weather(Cover.Kind kind, double transmission, double clearness) {
        double clear =
                Sun.clearSkyWPerM2(
                        Sun.extraterrestrialDailyWPerM2(Math.toRadians(NDIAYE.latitudeDeg()), 274),
                        8);
        HourlyWeather series =
                new HourlyWeather("invented", day(28), day(0.9), day(clearness * clear), day(1.9));
        return new Climate.Weather(
                series,
                new Cover(kind, transmission, 7, 1, 30, 2.5, Double.NEGATIVE_INFINITY, 24),
                0.2,
                420,
                420);
    }

    private static double[] day(double value) {
        double[] hours = new double[24];
        Arrays.fill(hours, value);
        return hours;
    }

    // Allen et al. (1998), FAO 56, Example 19, 02-03 h: 28 degC, 90 %, Rs/Rso 0.8: 0.100 MJ/m2/h,
    // printed to 0.001, which is 0.28 W/m2; half a digit and the rounded inputs.
    @Test
    void the_open_sky_takes_what_the_worked_example_of_FAO_56_says() {
        AirSeries open = air(weather(Cover.Kind.OPEN, 1, 0.8));
        assertEquals(-0.100e6 / 3600, open.longWaveWPerM2[0], 0.28);
        assertEquals(AirSeries.Place.OPEN, open.place);
    }

    @Test
    void a_net_hides_the_sky_as_it_hides_the_sun_and_glass_hides_it_all() {
        double open = air(weather(Cover.Kind.OPEN, 1, 0.8)).longWaveWPerM2[0];
        assertEquals(0.5 * open, air(weather(Cover.Kind.SHADE, 0.5, 0.8)).longWaveWPerM2[0], 1e-9);
        assertEquals(0, air(weather(Cover.Kind.GLASS, 0.7, 0.8)).longWaveWPerM2[0]);
    }

    @Test
    void an_overcast_day_loses_less_to_the_sky() {
        double overcast = air(weather(Cover.Kind.OPEN, 1, 0.1)).longWaveWPerM2[0];
        assertTrue(overcast <= 0 && overcast > -3, "W/m2 " + overcast);
    }

    // 28 degC all day and 4 degC colder with its last hour: the last step, whose middle lies 55 min
    // after 23:00, must hold what 23:00 holds, not drift back to the first hour of the run.
    @Test
    void the_last_hour_of_a_series_does_not_blend_into_its_first() {
        double[] tempC = day(28);
        tempC[23] = 24;
        AirSeries series =
                air(
                        new Climate.Weather(
                                new HourlyWeather("invented", tempC, day(0.5), day(0), day(1)),
                                new Cover(Cover.Kind.OPEN, 1, 7, 1, 30, 2.5, -99, 24),
                                0.2,
                                600,
                                420));
        assertEquals(24, series.tempC[series.tempC.length - 1], 1e-12);
        assertEquals(600, series.co2Ppm[0]);
    }

    // No air goes through: by day it is as humid as a cover lets it be, by night as outside.
    @Test
    void a_house_without_a_draught_has_air_by_night_too() {
        for (double clearness : new double[] {0, 0.8}) {
            HourlyWeather hours =
                    new HourlyWeather("invented", day(20), day(0.5), day(900 * clearness), day(1));
            AirSeries series =
                    air(
                            new Climate.Weather(
                                    hours,
                                    new Cover(Cover.Kind.GLASS, 0.7, 7, 0, 0, 2.5, -99, 24),
                                    0.2,
                                    420,
                                    420));
            double saturated = HumidAir.saturationPressurePa(series.tempC[60]);
            double outside = 0.5 * HumidAir.saturationPressurePa(20);
            assertEquals(clearness > 0 ? 0.95 * saturated : outside, series.vapourPa[60], 1e-6);
        }
    }

    @Test
    void a_room_tells_its_carbon_dioxide_at_every_step() {
        AirSeries room =
                air(
                        new Climate.Room(
                                22, 22, 0.6, 0.6, 0, 0, 0, Climate.Window.NONE, 0.1, 800, 2000));
        assertEquals(144, room.co2Ppm.length);
        assertEquals(800, room.co2Ppm[0]);
        assertEquals(800, room.co2Ppm[143]);
    }

    @Test
    void a_rooms_swing_is_coldest_at_three_warmest_at_fifteen_and_leaves_the_mean() {
        AirSeries still =
                air(
                        new Climate.Room(
                                22, 22, 0.6, 0.6, 0, 0, 0, Climate.Window.NONE, 0.1, 420, 420));
        AirSeries swing =
                air(
                        new Climate.Room(
                                22, 22, 0.6, 0.6, 0, 0, 6, Climate.Window.NONE, 0.1, 420, 420));
        // A step of ten minutes whose middle lies 5 min off the crest misses 3 K by 3 K x (1 - cos
        // 1.25 deg) = 0.0007 K.
        assertEquals(25, Arrays.stream(swing.tempC).max().orElseThrow(), 0.001);
        assertEquals(25, swing.tempC[15 * 6], 0.001);
        assertEquals(19, swing.tempC[3 * 6], 0.001);
        assertEquals(22, Arrays.stream(swing.tempC).average().orElseThrow(), 1e-9);
        assertEquals(still.vapourPa[90], swing.vapourPa[90]);
        assertTrue(swing.vapourPa[18] <= HumidAir.saturationPressurePa(swing.tempC[18]));
    }

    // Half a sine of 12 h and 6 mol/m2 has its crest at 6e6 x pi / (2 x 43200) = 218 umol/m2/s.
    @Test
    void a_window_gives_its_days_light_as_half_a_sine_between_its_times() {
        Climate.Window window = new Climate.Window(6, 7 * 3600, 19 * 3600);
        AirSeries lit = air(new Climate.Room(22, 22, 0.6, 0.6, 0, 0, 0, window, 0.1, 420, 420));
        double mol = 0;
        for (int step = 0; step < 144; step++) {
            mol += lit.ppfdUmolPerM2S(step) * 600e-6;
            boolean day = step >= 7 * 6 && step < 19 * 6;
            assertEquals(day, lit.ppfdUmolPerM2S(step) > 0, "step " + step);
        }
        assertEquals(6, mol, 1e-9);
        // The mean of a step of 10 min from the crest on lies (2.5 deg)^2 / 6 below it.
        assertEquals(218.1, lit.ppfdUmolPerM2S(13 * 6), 0.05);
        assertEquals(1, lit.sunFrac(0, Lamp.NONE), 1e-12);
    }

    // Sun 100 W/m2 of 400-700 nm is 457 umol/m2/s and 100 x 0.55 / 0.45 = 122.2 W/m2 of near
    // infrared; sodium light of 187 umol/m2/s at 4.98 umol/J is 37.55 W/m2 and 0.6 of that.
    @Test
    void inside_air_is_held_hour_by_hour_as_it_was_measured_with_sun_and_lamps_told_apart() {
        Map<InsideAir.Quantity, double[]> hourly = new EnumMap<>(InsideAir.Quantity.class);
        for (InsideAir.Quantity quantity : InsideAir.Quantity.values()) {
            hourly.put(quantity, day(0));
        }
        double[] tempC = day(20);
        tempC[1] = 23;
        hourly.put(InsideAir.Quantity.TEMP_C, tempC);
        hourly.put(InsideAir.Quantity.VAPOUR_PA, day(1500));
        hourly.put(InsideAir.Quantity.SUN_PAR_W_PER_M2, day(100));
        hourly.put(InsideAir.Quantity.LAMP_PPFD_UMOL_PER_M2_S, day(187));
        hourly.put(InsideAir.Quantity.CO2_PPM, day(900));
        hourly.put(InsideAir.Quantity.AIR_SPEED_M_PER_S, day(0.3));
        InsideAir measured = new InsideAir("invented", "", hourly, true, 4.98, 0.6);
        AirSeries inside = air(new Climate.Inside(measured, 1200));
        assertEquals(20, inside.tempC[5]);
        assertEquals(23, inside.tempC[6]);
        assertEquals(23, inside.tempC[11]);
        assertEquals(20, inside.tempC[12]);
        assertEquals(1500, inside.vapourPa[0]);
        assertEquals(900, inside.co2Ppm[0]);
        assertEquals(0.3, inside.speedMPerS[0]);
        assertEquals(1200, inside.solutionCo2Ppm);
        assertEquals(AirSeries.Place.HOUSE, inside.place);
        assertEquals(457 + 187, inside.ppfdUmolPerM2S(0), 1e-9);
        assertEquals(100 + 37.55, inside.parWPerM2(0), 0.005);
        assertEquals(122.22 + 0.6 * 37.55, inside.infraredWPerM2(0), 0.01);
        assertEquals(0, inside.longWaveWPerM2[0]);
    }
}
