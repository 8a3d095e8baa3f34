package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.physics.OpenWater;
import tideless.rig.Climate;
import tideless.rig.Cover;
import tideless.rig.Filling;
import tideless.rig.HourlyWeather;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.TestScenario;
import tideless.rig.TestShape;
import tideless.rig.Tray;
import tideless.rig.Tube;

/**
 * Temperature and evaporation of single vessels against the closed forms of a lumped body: C dT/dt
 * = G (air - T) + gain, with G 8 W/m2/K over floor, deck and wetted walls.
 */
class VesselHeatTest {
    private static final double RHO_CP = 998.2 * 4184; // J/m3/K near 20 degC

    private static Tray tray(Shape shape, double levelM, double openM2) {
        Tray bare = Rigs.tray("a", new Filling.Sealed(), Rigs.drinking(0), openM2);
        return Rigs.startingAt(
                levelM,
                Rigs.withOverflow(
                        Rigs.withShape(Rigs.startingAt(0.01, bare), shape),
                        shape.depthM(),
                        OptionalDouble.empty()));
    }

    private static Reservoir reservoir(Shape shape, double levelM, double openM2) {
        return new Reservoir(
                "wall",
                shape,
                levelM,
                0.01,
                0.6,
                openM2,
                levelM,
                new Reservoir.Refill(Reservoir.Refill.When.NEVER, 0, Pouring.FEED),
                new Tube(0.006, 0.5, 0.5));
    }

    private static Trace run(int days, double stepS, Climate climate, Tray tray, Reservoir from) {
        Scenario base = Rigs.scenario(days, stepS, List.of(from), List.of(tray), Rigs.nobody());
        return Simulation.run(TestScenario.of(base).climate(climate).make());
    }

    private static Climate switching(double dayC, double nightC, double airMPerS) {
        return new Climate.Room(
                dayC,
                nightC,
                0.6,
                0.6,
                6 * 3600,
                18 * 3600,
                0,
                Climate.Window.NONE,
                airMPerS,
                420,
                420);
    }

    /**
     * A cylinder of 25 cm, 38 cm deep: 18.653 L, floor and lid 0.0982 m2, wall 0.2985 m2, 3.173
     * W/K, time constant 6.82 h. Under air that switches between 30 and 15 degC every 12 h it
     * swings by 15 K tanh(12 h / (2 x 6.82 h)) = 10.6 K. Without its wall it would by 3.4 K.
     */
    @Test
    void a_deep_vessel_gives_heat_through_its_walls_be_it_tray_or_reservoir() {
        Shape shape = Shape.cylinder(0.25, 0.40);
        double conductance = 8 * (2 * Math.PI / 4 * 0.0625 + Math.PI * 0.25 * 0.38);
        double constantH = RHO_CP * Math.PI / 4 * 0.0625 * 0.38 / conductance / 3600;
        assertEquals(6.82, constantH, 0.01);
        double swing = 15 * Math.tanh(6 / constantH);
        assertEquals(10.6, swing, 0.05);
        Trace trace =
                run(
                        6,
                        600,
                        switching(30, 15, 0.1),
                        tray(shape, 0.38, 0),
                        reservoir(shape, 0.38, 0));
        assertEquals(swing, swingK(trace.trays().get(0).solutionTempC()), 0.005 * swing);
        assertEquals(
                swing,
                swingK(trace.reservoirs().get(0).of(ReservoirSeries.SOLUTION_TEMP)),
                0.005 * swing);
    }

    private static double swingK(Series temp) {
        double[] lastDay = Arrays.copyOfRange(temp.toArray(), temp.size() - 24, temp.size());
        return Arrays.stream(lastDay).max().orElseThrow()
                - Arrays.stream(lastDay).min().orElseThrow();
    }

    /**
     * Under a sine the water swings by 1/sqrt(1 + (2 pi tau/T)^2) of the air's swing and lags by
     * atan(2 pi tau/T) T/(2 pi): 0.796 and 2.48 h at 2.90 h, 0.692 and 3.09 h at 4 h, 0.431 and
     * 4.30 h at 8 h (recomputed independently).
     */
    @ParameterizedTest(name = "time constant {0} h: {1} of the swing, {2} h behind")
    @CsvSource({"2.9028, 0.79618, 2.4822", "4, 0.691, 3.09", "8, 0.431, 4.30"})
    void water_follows_a_sine_smaller_and_later(double constantH, double frac, double lagH) {
        // Cube with the level at the rim: C = rho cp s^3, G = 8 x 6 s^2.
        double sideM = constantH * 3600 * 48 / RHO_CP;
        Shape cube = TestShape.box(sideM, sideM, sideM);
        Climate sine =
                new Climate.Room(20, 20, 0.6, 0.6, 0, 0, 10, Climate.Window.NONE, 0.1, 420, 420);
        Trace trace = run(5, 600, sine, tray(cube, sideM, 0), reservoir(cube, sideM, 0));
        double[] temp = trace.trays().get(0).solutionTempC().toArray();
        double inPhase = 0;
        double behind = 0;
        for (int h = temp.length - 24; h < temp.length; h++) {
            double turn = 2 * Math.PI * (h + 1 - 9) / 24; // samples stand at the hours' ends
            inPhase += temp[h] * Math.sin(turn) / 12;
            behind -= temp[h] * Math.cos(turn) / 12;
        }
        assertEquals(frac, Math.hypot(inPhase, behind) / 5, 0.005 * frac);
        assertEquals(lagH, Math.atan2(behind, inPhase) * 24 / (2 * Math.PI), 0.02);
    }

    /**
     * Steady sun of 400 W/m2, whole by day and night, on a cube of 0.3 m: a pale lid takes 0.3 of
     * it and hands half of that down, 400 x 0.15 x 0.09 = 5.4 W, and 8 x 6 x 0.09 = 4.32 W/K carry
     * it off: 1.25 K above the air.
     */
    @Test
    void the_sun_warms_a_reservoir_as_it_warms_a_tray() {
        Shape cube = TestShape.box(0.3, 0.3, 0.3);
        Trace trace = run(8, 600, steadySun(400), tray(cube, 0.3, 0), reservoir(cube, 0.3, 0));
        assertEquals(
                1.25, above(trace.reservoirs().get(0).of(ReservoirSeries.SOLUTION_TEMP)), 0.01);
        assertEquals(1.25, above(trace.trays().get(0).solutionTempC()), 0.01);
    }

    private static double above(Series temp) {
        return temp.at(temp.size() - 1) - 20;
    }

    /** Under shade, so that it is whole; 20 degC, saturated, still. */
    private static Climate steadySun(double globalWPerM2) {
        int hours = 10 * 24;
        double[] temp = new double[hours];
        double[] humid = new double[hours];
        double[] sun = new double[hours];
        Arrays.fill(temp, 20);
        Arrays.fill(humid, 1);
        Arrays.fill(sun, globalWPerM2);
        return new Climate.Weather(
                new HourlyWeather("made up", temp, humid, sun, new double[hours]),
                new Cover(Cover.Kind.SHADE, 1, 0, 0, 0, 2, Double.NEGATIVE_INFINITY, Double.NaN),
                0.1,
                420,
                420);
    }

    /**
     * Water alone in the sun, its surface sealed from the air by nothing: 0.94 in place of 0.15.
     */
    @Test
    void open_water_takes_most_of_the_sun() {
        Shape cube = TestShape.box(0.3, 0.3, 0.3);
        assertEquals(5.4, VesselHeat.gainW(cube, 0, 400), 1e-12);
        assertEquals(33.84, VesselHeat.gainW(cube, 0.09, 400), 1e-12);
    }

    /**
     * One and the same water without a cover, called a tray and called a reservoir; 1e-5, for a
     * reservoir's heat capacity is that of what is left at a step's end.
     */
    @Test
    void an_open_tray_evaporates_as_an_open_reservoir_does() {
        Shape shape = TestShape.box(0.6, 0.4, 0.2);
        Trace trace =
                run(
                        3,
                        600,
                        switching(20, 20, 0.2),
                        tray(shape, 0.19, 0.24),
                        reservoir(shape, 0.19, 0.24));
        for (int h = 0; h < 72; h++) {
            double expected = trace.reservoirs().get(0).evaporationM3().at(h);
            assertTrue(expected > 1e-6);
            assertEquals(expected, trace.trays().get(0).evaporationM3().at(h), 1e-5 * expected);
        }
    }

    /** Lids drawn aside step by step: never less evaporates, and length goes from hole to rim. */
    @ParameterizedTest(name = "{0} m/s")
    @ValueSource(doubles = {0, 0.3, 2})
    void a_wider_gap_never_evaporates_less(double airMPerS) {
        Shape shape = TestShape.box(1.2, 0.6, 0.1);
        assertEquals(0.99 * 0.0125 + 0.01 * 0.2, Surface.lengthM(0.0072, shape), 1e-15);
        assertEquals(0.2, Surface.lengthM(0.72, shape), 1e-15);
        double before = 0;
        for (int percent = 1; percent <= 100; percent++) {
            double openM2 = 0.0072 * percent;
            double length = Surface.lengthM(openM2, shape);
            double now =
                    openM2 * OpenWater.massTransferMPerS(20, 22, 1300, airMPerS, length, 101325);
            assertTrue(now > before, percent + " %");
            before = now;
        }
    }

    /**
     * Water of 19 cm and of 5 cm, and a puddle of 1 cm whose time constant is under an hour, in air
     * that switches by 15 K: taken at the temperature of a step's start, hours differed by up to 36
     * %.
     */
    @ParameterizedTest(name = "{0} m deep: to {1}")
    @CsvSource({"0.19, 0.01", "0.05, 0.01", "0.01, 0.04"})
    void the_hours_after_a_switch_lose_the_same_in_one_step_or_sixty(
            double levelM, double toleranceFrac) {
        Shape shape = TestShape.box(0.6, 0.4, 0.2);
        // Dry enough by day that the cold water does not dew.
        Climate climate =
                new Climate.Room(
                        30,
                        15,
                        0.3,
                        0.6,
                        6 * 3600,
                        18 * 3600,
                        0,
                        Climate.Window.NONE,
                        0.2,
                        420,
                        420);
        Tray tray = tray(shape, levelM, 0.24);
        Reservoir other = reservoir(shape, 0.19, 0.24);
        Series fine = run(3, 60, climate, tray, other).trays().get(0).evaporationM3();
        Series coarse = run(3, 3600, climate, tray, other).trays().get(0).evaporationM3();
        for (int h = 0; h < 72; h++) {
            assertEquals(fine.at(h), coarse.at(h), toleranceFrac * fine.at(h), "hour " + h);
        }
    }
}
