package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.physics.Draining;
import tideless.physics.LiquidWater;
import tideless.physics.TubeFlow;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.TestTray;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.rig.Tube;
import tideless.rig.ValveFaults;

/**
 * One tray's water against closed forms.
 *
 * <p>The expected figures were recomputed independently of this project from the standard solutions
 * A dh/dt = Qmax (hs - h) / b - q and T = A d / q + A d / (Qf - q); printed to five digits, so the
 * tolerance is half of the last. They hold where the seat alone limits the flow: no tube, and a
 * reservoir so wide that its level stands.
 */
class FeedWaterTest {
    private static final double ML_PER_MIN = 1e-6 / 60;
    private static final double ML_PER_H = 1e-6 / 3600;
    private static final double HEAD_M = 0.5;
    private static final Tube NO_TUBE = new Tube(0.01, 0, 0);

    private static FeedWater seatAlone(
            double areaM2, double openM3PerS, double bandM, double settingM, boolean snaps) {
        double jetMPerS = Math.sqrt(2 * TubeFlow.GRAVITY_M_PER_S2 * HEAD_M);
        double seatM2 = openM3PerS / (0.61 * jetMPerS);
        return water(
                areaM2,
                settingM,
                bandM,
                snaps,
                Math.sqrt(4 * seatM2 / Math.PI),
                NO_TUBE,
                reservoir(999, HEAD_M + 0.3, NO_TUBE),
                ValveFaults.NONE);
    }

    private static Reservoir reservoir(double areaM2, double fullM, Tube trunk) {
        return new Reservoir(
                "wall",
                Rigs.box(areaM2, fullM),
                fullM,
                0,
                0,
                0,
                fullM,
                new Reservoir.Refill(Reservoir.Refill.When.NEVER, 0, Pouring.FEED),
                trunk);
    }

    private static FeedWater water(
            double areaM2,
            double settingM,
            double bandM,
            boolean snaps,
            double seatM,
            Tube branch,
            Reservoir reservoir,
            ValveFaults faults) {
        Filling.ByValve valve =
                new TestValve()
                        .settingM(settingM)
                        .bandM(bandM)
                        .snaps(snaps)
                        .seatBoreM(seatM)
                        .seatAboveFloorM(0.3)
                        .branch(branch)
                        .faults(faults)
                        .make();
        Tray tray =
                new TestTray()
                        .shape(Rigs.box(areaM2, 0.25))
                        .overflowM(0.2)
                        .cupBottomM(0)
                        .startLevelM(0)
                        .startLiquid(Rigs.FEED_LIQUID)
                        .planting(Rigs.drinking(1))
                        .filling(valve)
                        .limits(Rigs.WIDE)
                        .make();
        FeedWater water =
                new FeedWater(
                        reservoir,
                        List.of(tray),
                        new VesselWater(0),
                        List.of(new VesselWater(0)),
                        GravityFeed.BEND_MOST);
        water.viscosityM2PerS = LiquidWater.kinematicViscosityM2PerS(20);
        water.reservoir.m3 = reservoir.fullM3();
        return water;
    }

    /** Returns what came in, m3. */
    private static double run(FeedWater water, double spanS, double stepS) {
        double in = 0;
        double done = 0;
        while (spanS - done > 1e-9 * spanS) {
            double end = Math.min(spanS, done + stepS);
            while (end - done > 1e-12 * spanS) {
                done += water.advance(end - done);
                in += water.inM3[0];
            }
            done = end;
            water.changed();
        }
        return in;
    }

    @ParameterizedTest(name = "A {0} m2, Qmax {1} mL/min, q {2} mL/h, band {3} mm: {7} mm")
    @CsvSource({
        "0.20, 300,  400, 10,  80, 75, 600, 78.712, 0.0005",
        "0.20, 300,  400, 10,  80, 40, 600, 54.667, 0.0005",
        "0.50, 100, 1000,  8, 100, 80, 600, 81.667, 0.0005",
        "0.20,  50,    0, 10,  80, 72, 600, 73.770, 0.0005",
        // One millimetre below rest: time and rest level are both rounded, so twice as wide.
        "0.20, 300,  400, 10,  80, 75,  625.59, 78.778, 0.001",
        "0.20, 300,  400, 10,  80, 40, 2139.3, 78.778, 0.001",
        "0.50, 100, 1000,  8, 100, 80, 8873.1, 97.667, 0.001",
        "0.20,  50,    0, 10,  80, 72, 4990.7, 79.000, 0.001",
    })
    void a_throttling_valve_approaches_its_rest_level_exponentially(
            double areaM2,
            double openMlPerMin,
            double lossMlPerH,
            double bandMm,
            double setMm,
            double startMm,
            double afterS,
            double expectedMm,
            double toleranceMm) {
        for (double stepS : new double[] {1, 137, 600, 21600}) {
            FeedWater water =
                    seatAlone(
                            areaM2, openMlPerMin * ML_PER_MIN, bandMm / 1000, setMm / 1000, false);
            water.trays[0].m3 = areaM2 * startMm / 1000;
            water.evapotranspirationM3PerS[0] = lossMlPerH * ML_PER_H;
            run(water, afterS, stepS);
            assertEquals(expectedMm, water.trays[0].m3 / areaM2 * 1000, toleranceMm);
        }
    }

    @ParameterizedTest(name = "period {4} min")
    @CsvSource({
        "0.20, 3,  400, 300,  92.045, 122.73",
        "0.20, 5,  400, 300, 153.41, 204.55",
        "0.50, 5, 1000, 100, 180.00, 1800.0",
        "0.20, 3, 9000, 300,   8.0000, 240.00",
    })
    void a_snapping_valve_cycles_with_the_published_period(
            double areaM2,
            double hysteresisMm,
            double lossMlPerH,
            double openMlPerMin,
            double periodMin,
            double openS) {
        for (double stepS : new double[] {137, 21600}) {
            FeedWater water =
                    seatAlone(areaM2, openMlPerMin * ML_PER_MIN, hysteresisMm / 1000, 0.08, true);
            water.trays[0].m3 = areaM2 * 0.08;
            water.evapotranspirationM3PerS[0] = lossMlPerH * ML_PER_H;
            int cycles = 40;
            double in = run(water, cycles * periodMin * 60, stepS);
            // The period has five digits, so 40 of them are off by 0.02 of a period at most.
            double perCycle = openS * openMlPerMin * ML_PER_MIN;
            assertEquals(cycles * perCycle, in, 0.05 * perCycle);
        }
    }

    @Test
    void a_valve_that_cannot_keep_up_leaves_its_band_at_the_instant_of_the_closed_form() {
        // Qmax 60 mL/h, q 100 mL/h, A 0.1 m2, set 50 mm, band 10 mm, from 50 mm:
        // rest = 50 - 10 * 100 / 60 = 33.33 mm; leaves at t = tau ln((50 - rest) / (40 - rest)),
        // tau = A b / Qmax = 0.1 * 0.01 / (60e-6 / 3600) = 60000 s; then falls at 40 mL/h.
        FeedWater water = seatAlone(0.1, 60 * ML_PER_H, 0.01, 0.05, false);
        water.trays[0].m3 = 0.1 * 0.05;
        water.evapotranspirationM3PerS[0] = 100 * ML_PER_H;
        double leavesS = 60_000 * Math.log((50 - 100 / 3.0) / (40 - 100 / 3.0));
        run(water, leavesS + 36_000, 21_600);
        // The reservoir of 999 m2 falls by 3 um meanwhile, worth 3e-6 of the flow.
        assertEquals(0.1 * 0.04 - 40 * ML_PER_H * 36_000, water.trays[0].m3, 1e-8);
    }

    @Test
    void a_tray_that_runs_dry_gives_what_comes_in_and_no_more() {
        FeedWater water = seatAlone(0.1, 5e-7, 0.01, 0.05, false);
        water.trays[0].m3 = 1e-3;
        water.evapotranspirationM3PerS[0] = 2e-6;
        double in = run(water, 3600, 3600);
        assertEquals(0, water.trays[0].m3);
        assertEquals(5e-7 * 3600, in, 1e-6 * in);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 60, 600, 21600})
    void an_uncovered_outlet_lets_the_level_fall_straight_through_the_band(double stepS) {
        FeedWater water = seatAlone(0.1, 5e-7, 0.01, 0.05, false);
        water.reservoir.uncovered = true;
        water.trays[0].m3 = 0.1 * 0.051;
        water.evapotranspirationM3PerS[0] = 1e-7;
        assertEquals(0, run(water, 15_000, stepS));
        // Up to 15,000 steps, each rounded.
        assertEquals(0.1 * 0.051 - 1.5e-3, water.trays[0].m3, 1e-13);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 60, 600, 21600})
    void without_loss_a_tray_fills_to_the_setting_and_never_past_it(double stepS) {
        FeedWater water = seatAlone(0.04, 5e-6, 0.01, 0.05, false);
        run(water, 20_000, stepS);
        assertEquals(2e-3, water.trays[0].m3, 1e-12);
        assertTrue(water.trays[0].m3 <= 2e-3);
    }

    /**
     * Time in which a reservoir falls through a laminar tube with fittings, recomputed
     * independently: t = A (a ln(Q0/Q1) + 2 b (Q0 - Q1)); the tray is wide and its valve stuck open
     * with a seat that loses nothing next to the tube.
     */
    @ParameterizedTest(name = "{0} mm, {1} m, K {2}, {3} degC, {4} to {5} m: {6} s")
    @CsvSource({
        "2, 1.5, 2, 20, 0.4, 0.1, 109920",
        "3, 3, 5, 20, 0.3, 0.1, 35195",
        "4, 3, 2, 15, 0.1, 0.02, 18028",
    })
    void a_reservoir_drains_through_a_laminar_tube_in_the_time_of_the_closed_form(
            double boreMm,
            double lengthM,
            double loss,
            double tempC,
            double fromM,
            double toM,
            double timeS) {
        Tube tube = new Tube(boreMm / 1000, lengthM, loss);
        for (double stepS : new double[] {60, 600, 21600}) {
            Reservoir wall = reservoir(0.2, 0.3 + fromM, NO_TUBE);
            FeedWater water = water(50, 0.2, 0.01, false, 0.15, tube, wall, ValveFaults.NONE);
            water.viscosityM2PerS = LiquidWater.kinematicViscosityM2PerS(tempC);
            water.stuckFrac[0] = 1;
            run(water, timeS, stepS);
            // Five digits of the time are 2e-5 of it; the slowest fall is worth as much of the
            // head.
            assertEquals(toM, water.reservoir.m3 / 0.2 - 0.3, 5e-5 * toM + 2e-6);
        }
    }

    /** Orifice: sqrt h falls on a straight line; 4 mm, 0.2 m2, 0.4 to 0.1 m in 3726.0 s. */
    @Test
    void a_reservoir_drains_through_a_seat_in_the_time_of_the_closed_form() {
        for (double stepS : new double[] {10, 600, 3726}) {
            Reservoir wall = reservoir(0.2, 0.7, NO_TUBE);
            FeedWater water = water(50, 0.2, 0.01, false, 0.004, NO_TUBE, wall, ValveFaults.NONE);
            water.stuckFrac[0] = 1;
            run(water, 3726.0, stepS);
            double exact = Draining.headThroughHoleM(0.4, 3726.0, 0.2, 0.004, 0.61);
            assertEquals(exact, water.reservoir.m3 / 0.2 - 0.3, 1e-8);
            assertEquals(0.1, water.reservoir.m3 / 0.2 - 0.3, 1e-5);
        }
    }
}
