package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.TestTray;
import tideless.rig.TestValve;
import tideless.rig.Thirst;
import tideless.rig.Tray;
import tideless.rig.Tube;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** Every figure of a rig's check against hand calculation or rows recomputed independently. */
class RigCheckTest {
    private static final double ML_PER_MIN = 1e-6 / 60; // m3/s
    private static final Tube NO_TUBE = new Tube(0.01, 0, 0);

    /** A seat so wide that it loses less than 1e-5 of what the tube does. */
    private static final double NO_SEAT_MM = 150;

    /** The reservoir's floor and the seat of {@link #tray} above the bench, m. */
    private static final double DATUM_M = 1.0;

    private static Reservoir reservoir(
            double areaM2, double fullM, double outletM, double floorM, Tube trunk) {
        return new Reservoir(
                "wall",
                Rigs.box(areaM2, fullM),
                fullM,
                outletM,
                floorM,
                0,
                fullM,
                new Reservoir.Refill(Reservoir.Refill.When.NEVER, 0, Pouring.FEED),
                trunk);
    }

    private static Filling.ByValve valve(
            double settingM, double bandM, double seatM, double seatHeightM, Tube branch) {
        return new TestValve()
                .settingM(settingM)
                .bandM(bandM)
                .seatBoreM(seatM)
                .seatAboveFloorM(seatHeightM)
                .branch(branch)
                .make();
    }

    private static Tray tray(
            String name, double areaM2, double floorM, Filling valve, Planting planting) {
        return new TestTray()
                .name(name)
                .shape(Rigs.box(areaM2, 0.20))
                .overflowM(0.19)
                .cupBottomM(0.1)
                .floorAboveBenchM(floorM)
                .startLevelM(0.01)
                .startLiquid(Rigs.FEED_LIQUID)
                .planting(planting)
                .filling(valve)
                .limits(Rigs.WIDE)
                .make();
    }

    private static RigCheck check(Reservoir reservoir, Tray... trays) {
        List<Tray> all = new ArrayList<>(List.of(trays));
        all.add(tray("apart", 0.2, 0, new Filling.Sealed(), Rigs.drinking(1))); // fed by nobody
        Scenario scenario = Rigs.scenario(1, 3600, List.of(reservoir), all, Rigs.nobody());
        return RigCheck.of(scenario).get(0);
    }

    private static RigCheck.Feed only(RigCheck check) {
        assertEquals(1, check.trays().size());
        return check.trays().get(0);
    }

    /**
     * Single lines at 20 degC, roughness 1.5 um: the first flow of each row is published in
     * physics/tube-flow-single-lines.csv, recomputed twice; the second, at a quarter of the head,
     * was recomputed with Brent's method on the same law. Laminar from a Reynolds number of 181 to
     * turbulent at 5044. 2e-4: the viscosity's short form and the printed digits.
     */
    @ParameterizedTest(name = "{0}: {1} mm, {2} m, K {3}, head {4} m, seat {5} mm")
    @CsvSource({
        "P2 transition, 4, 1.5, 1.5, 0.40, 0, 1, 517.52, 228.395",
        "P4 laminar, 4, 3.0, 3.5, 0.20, 0, 1, 225.95, 60.019",
        "P5 turbulent, 6, 1.5, 1.5, 0.40, 0, 1, 1430.97, 727.233",
        "P6 transition, 6, 2.0, 2.5, 0.10, 0, 1, 660.59, 214.206",
        "P11 with seat, 4, 1.5, 0.5, 0.40, 2.0, 0.62, 275.94, 117.505",
        "P12 thin seat, 4, 1.5, 0.5, 0.40, 1.2, 0.62, 110.91, 52.241",
        "P13 with seat, 6, 2.0, 2.5, 0.30, 2.0, 0.62, 267.98, 127.429",
        "P15 laminar, 2, 1.0, 1.5, 0.30, 0, 1, 66.868, 17.126",
        "closed form, 3, 1.5, 2.0, 0.20, 0, 1, 146.04, 38.216",
    })
    void flow_when_full_and_at_the_outlet_is_that_of_the_single_line(
            String name,
            double boreMm,
            double lengthM,
            double loss,
            double headM,
            double seatMm,
            double coefficient,
            double fullMlPerMin,
            double lowMlPerMin) {
        Filling.ByValve valve =
                new TestValve()
                        .seatBoreM((seatMm == 0 ? NO_SEAT_MM : seatMm) / 1000)
                        .dischargeCoefficient(coefficient)
                        .seatAboveFloorM(0.1)
                        .branch(new Tube(boreMm / 1000, lengthM, loss))
                        .make();
        Tray tray = tray(name, 0.2, DATUM_M - 0.1, valve, Rigs.drinking(3));
        RigCheck.Feed feed = only(check(reservoir(0.1, headM, headM / 4, DATUM_M, NO_TUBE), tray));
        assertEquals(fullMlPerMin, feed.fullM3PerS() / ML_PER_MIN, 2e-4 * fullMlPerMin, name);
        assertEquals(lowMlPerMin, feed.lowM3PerS() / ML_PER_MIN, 2e-4 * lowMlPerMin, name);
        // 3 L a day are 2.08333 mL/min.
        assertEquals(2.08333, feed.peakThirstM3PerS() / ML_PER_MIN, 1e-5);
        assertEquals(lowMlPerMin / 2.08333, feed.margin(), 3e-4 * feed.margin());
    }

    /** N1, N3 and N4 of the tees recomputed independently at 20 degC, H = 0.30 m; 2e-4 as above. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "N1 two alike, 6, 2, 0, 390.90, 390.90",
        "N3 low and high, 6, 2, 0.05, 421.32, 327.51",
    })
    void all_valves_are_open_at_once(
            String name,
            double trunkMm,
            double trunkM,
            double secondM,
            double firstMlPerMin,
            double secondMlPerMin) {
        Filling.ByValve open = valve(0.05, 0.005, NO_SEAT_MM / 1000, 0.1, new Tube(0.004, 1, 3));
        RigCheck check =
                check(
                        reservoir(0.1, 0.30, 0.02, DATUM_M, new Tube(trunkMm / 1000, trunkM, 0.5)),
                        tray("low", 0.2, DATUM_M - 0.1, open, Rigs.drinking(1)),
                        tray("high", 0.2, DATUM_M - 0.1 + secondM, open, Rigs.drinking(1)));
        assertEquals(
                firstMlPerMin,
                check.trays().get(0).fullM3PerS() / ML_PER_MIN,
                2e-4 * firstMlPerMin,
                name);
        assertEquals(
                secondMlPerMin,
                check.trays().get(1).fullM3PerS() / ML_PER_MIN,
                2e-4 * secondMlPerMin,
                name);
    }

    @Test
    void three_on_a_thin_trunk_share_alike() {
        Filling.ByValve open = valve(0.05, 0.005, NO_SEAT_MM / 1000, 0.1, new Tube(0.004, 1, 3));
        RigCheck check =
                check(
                        reservoir(0.1, 0.30, 0.02, DATUM_M, new Tube(0.004, 1, 0.5)),
                        tray("a", 0.2, DATUM_M - 0.1, open, Rigs.drinking(1)),
                        tray("b", 0.2, DATUM_M - 0.1, open, Rigs.drinking(1)),
                        tray("c", 0.2, DATUM_M - 0.1, open, Rigs.drinking(1)));
        for (RigCheck.Feed feed : check.trays()) {
            assertEquals(170.63, feed.fullM3PerS() / ML_PER_MIN, 2e-4 * 170.63); // N4
        }
    }

    /**
     * The seat alone limits, the head stands: wide open A (s - b)/Q, then tau ln(b / 1 mm) to a
     * millimetre below the setting, tau = A b/Q. Q = 0.61 a sqrt(2 g h): 2 mm under 0.8 m are 7.591
     * mL/s. Told to the minute: never early, and late by less than one.
     */
    @ParameterizedTest(name = "setting {0} mm, band {1} mm, {2} m2: {3} s")
    @CsvSource({
        // 0.2 x 0.045 / 7.5910e-6 = 1185.6; tau 131.74 x ln 5 = 212.0
        "50, 5, 0.2, 1397.6",
        // 0.3 x 0.070 / 7.5910e-6 = 2766.4; tau 395.2 x ln 10 = 910.0
        "80, 10, 0.3, 3676.4",
        // A band within the last millimetre: 0.2 x 0.049 / 7.5910e-6.
        "50, 0.5, 0.2, 1291.0",
    })
    void a_tray_fills_in_the_time_of_the_closed_form_where_the_seat_alone_limits(
            double settingMm, double bandMm, double areaM2, double expectedS) {
        Filling.ByValve valve = valve(settingMm / 1000, bandMm / 1000, 0.002, 0.2, NO_TUBE);
        RigCheck.Feed feed =
                only(
                        check(
                                reservoir(999, 0.8, 0.02, DATUM_M, NO_TUBE),
                                tray("tray", areaM2, DATUM_M - 0.2, valve, Rigs.drinking(1))));
        assertEquals(7.5910e-6, feed.fullM3PerS(), 1e-10);
        assertTrue(
                feed.fillS() >= expectedS - 0.5 && feed.fillS() <= expectedS + 60,
                feed.fillS() + " s");
    }

    /** Orifice of 4 mm under 0.2 m2: 0.4 to 0.1 m, 60 L, in 3726.0 s; recomputed independently. */
    @Test
    void a_falling_reservoir_fills_a_tray_in_the_time_of_its_own_emptying() {
        // 60 L are 60 mm of 1 m2; the band lies within the last millimetre.
        Filling.ByValve valve = valve(0.061, 0.0005, 0.004, 0.2, NO_TUBE);
        RigCheck.Feed feed =
                only(
                        check(
                                reservoir(0.2, 0.4, 0, DATUM_M, NO_TUBE),
                                tray("tray", 1, DATUM_M - 0.2, valve, Rigs.drinking(1))));
        assertTrue(feed.fillS() >= 3725.5 && feed.fillS() <= 3786, feed.fillS() + " s");
    }

    @Test
    void a_tray_that_wants_more_than_the_reservoir_holds_is_never_filled() {
        // 30 L above the outlet; 40 L to the setting.
        Filling.ByValve valve = valve(0.05, 0.005, 0.002, 0.2, NO_TUBE);
        RigCheck.Feed feed =
                only(
                        check(
                                reservoir(0.1, 0.32, 0.02, DATUM_M, NO_TUBE),
                                tray("tray", 0.8, DATUM_M - 0.2, valve, Rigs.drinking(1))));
        assertTrue(Double.isNaN(feed.fillS()));
    }

    @Test
    void two_trays_share_the_tap_and_the_smaller_is_full_first() {
        // Until the smaller throttles each gets 7.591 mL/s: its time is that of a tray alone.
        Filling.ByValve valve = valve(0.05, 0.005, 0.002, 0.2, NO_TUBE);
        RigCheck check =
                check(
                        reservoir(999, 0.8, 0.02, DATUM_M, NO_TUBE),
                        tray("large", 0.4, DATUM_M - 0.2, valve, Rigs.drinking(1)),
                        tray("small", 0.2, DATUM_M - 0.2, valve, Rigs.drinking(1)));
        double small = check.trays().get(1).fillS();
        double large = check.trays().get(0).fillS();
        assertTrue(small >= 1397 && small <= 1458, small + " s");
        assertTrue(large >= 2 * 1397.6 - 1 && large <= 2 * 1397.6 + 60, large + " s");
    }

    /** No flow from a surface that never stands above the valve, and no time in which it fills. */
    @Test
    void a_valve_above_the_full_reservoir_gets_nothing() {
        Filling.ByValve valve = valve(0.05, 0.005, 0.002, 0.2, NO_TUBE);
        RigCheck.Feed feed =
                only(
                        check(
                                reservoir(0.1, 0.19, 0.1, DATUM_M, NO_TUBE),
                                tray("tray", 0.2, DATUM_M, valve, Rigs.drinking(1))));
        assertEquals(0, feed.fullM3PerS());
        assertEquals(0, feed.lowM3PerS());
        assertTrue(Double.isNaN(feed.fillS()));
        assertEquals(0, feed.margin());
    }

    /** 8 cm of head when full, none once the surface has come down to the valve. */
    @Test
    void a_valve_between_full_level_and_outlet_gets_something_and_then_nothing() {
        Filling.ByValve valve = valve(0.05, 0.005, 0.002, 0.2, NO_TUBE);
        RigCheck.Feed feed =
                only(
                        check(
                                reservoir(0.1, 0.28, 0.1, DATUM_M, NO_TUBE),
                                tray("tray", 0.2, DATUM_M, valve, Rigs.drinking(1))));
        double jet = 0.61 * Math.PI * 1e-6 * Math.sqrt(2 * 9.80665 * 0.08);
        assertEquals(jet, feed.fullM3PerS(), 1e-9 * jet);
        assertEquals(0, feed.lowM3PerS());
        // 8 L above the valve, and 9.8 L wanted.
        assertTrue(Double.isNaN(feed.fillS()));
    }

    /** A drowned outlet works against the solution above it: the level at which it is wide open. */
    @Test
    void a_drowned_outlet_gives_what_the_level_above_it_leaves() {
        // Seat 1 cm, wide open up to 9 cm: the heads are 30 - 9 and 12 - 9 cm.
        Filling.ByValve valve = valve(0.10, 0.01, 0.002, 0.01, NO_TUBE);
        RigCheck.Feed feed =
                only(
                        check(
                                reservoir(0.5, 0.30, 0.12, DATUM_M, NO_TUBE),
                                tray("tray", 0.2, DATUM_M, valve, Rigs.drinking(1))));
        double seat = 0.61 * Math.PI * 1e-6;
        double full = seat * Math.sqrt(2 * 9.80665 * 0.21);
        double low = seat * Math.sqrt(2 * 9.80665 * 0.03);
        assertEquals(full, feed.fullM3PerS(), 1e-9 * full);
        assertEquals(low, feed.lowM3PerS(), 1e-9 * low);
    }

    @Test
    void dead_and_usable_volume_and_the_weight_when_full_are_those_of_the_box() {
        // 0.4 x 0.4 m, full at 0.375 m, outlet at 0.05 m: 60 L, of which 8 L stay.
        RigCheck check = check(reservoir(0.16, 0.375, 0.05, 0.6, NO_TUBE));
        assertEquals(0.008, check.deadM3(), 1e-15);
        assertEquals(0.052, check.usableM3(), 1e-15);
        // 60 L weigh 587.34 N (recomputed independently, 998.204 kg/m3; here 998.2).
        assertEquals(587.34, check.weightN(), 0.01);
        assertEquals(List.of(), check.trays());
    }

    /**
     * 30 kg centred 0.95 m up with 0.20 m to the edge, as in the stand recomputed independently but
     * without its 5 kg of frame at 0.55 m, which the check does not know: atan(0.20 / 0.95) =
     * 11.889 degrees (12.626 with the frame), and 30.053 L x 998.2 x 9.80665 x 0.20 / 1.0439 m.
     */
    @Test
    void it_tips_where_the_centre_stands_above_the_edge() {
        double fullM = 0.18783; // 30.053 L in 0.4 x 0.4 m
        double floorM = 0.95 - 0.5 * fullM;
        RigCheck check = check(reservoir(0.16, fullM, 0.01, floorM, NO_TUBE));
        assertEquals(11.889, Math.toDegrees(check.tippingAngleRad()), 5e-4);
        double push = 0.16 * fullM * 998.2 * 9.80665 * 0.20 / (floorM + fullM);
        assertEquals(push, check.tippingPushN(), 1e-9 * push);
        assertEquals(56.36, check.tippingPushN(), 0.01);
    }

    /** Half width 0.30 m in place of 0.20 m: atan(0.30 / 0.95) = 17.526 degrees. */
    @Test
    void a_broader_vessel_stands_steadier() {
        double fullM = 0.1;
        RigCheck check = check(reservoir(0.36, fullM, 0.01, 0.90, NO_TUBE));
        assertEquals(17.526, Math.toDegrees(check.tippingAngleRad()), 5e-4);
    }

    /** With its floor below the bench nobody knows how high it stands: as if on the ground. */
    @Test
    void a_reservoir_below_the_bench_tips_as_one_that_stands_on_the_ground() {
        RigCheck below = check(reservoir(0.16, 0.4, 0.01, -0.9, NO_TUBE));
        assertEquals(45, Math.toDegrees(below.tippingAngleRad()), 1e-9);
        assertEquals(0.5 * below.weightN(), below.tippingPushN(), 1e-9 * below.weightN());
    }

    @Test
    void a_measured_thirst_that_rises_counts_with_its_highest_hour() {
        Thirst rising = Thirst.joined(new double[] {0, 86400}, new double[] {0, 2.4e-7});
        Filling.ByValve valve = valve(0.05, 0.005, 0.002, 0.2, NO_TUBE);
        RigCheck.Feed feed =
                only(
                        check(
                                reservoir(0.1, 0.32, 0.02, DATUM_M, NO_TUBE),
                                tray(
                                        "tray",
                                        0.2,
                                        DATUM_M - 0.2,
                                        valve,
                                        new Planting.MeasuredThirst("measured", 1, rising))));
        // The run drinks by the middle of each step: 23:30 is the last.
        assertEquals(2.4e-7 * 23.5 / 24, feed.peakThirstM3PerS(), 1e-15);
    }

    @Test
    void a_tray_that_drinks_nothing_has_margin_without_end() {
        Planting nothing = new Planting.MeasuredThirst("measured", 1, Thirst.constant(0));
        Filling.ByValve valve = valve(0.05, 0.005, 0.002, 0.2, NO_TUBE);
        RigCheck.Feed feed =
                only(
                        check(
                                reservoir(0.1, 0.32, 0.02, DATUM_M, NO_TUBE),
                                tray("tray", 0.2, DATUM_M - 0.2, valve, nothing)));
        assertEquals(Double.POSITIVE_INFINITY, feed.margin());
    }

    /** What is reckoned with before the season is no less than what the season then asks for. */
    @ParameterizedTest
    @ValueSource(strings = {"science-room-bench", "glasshouse-tomato-trough"})
    void no_hour_of_the_season_is_thirstier_than_the_peak(String name) {
        Scenario scenario =
                ((Reading.Good) ScenarioReader.read(Path.of("scenarios/" + name + ".toml")))
                        .scenario();
        Trace trace = Simulation.runUnread(scenario);
        int seen = 0;
        for (RigCheck check : RigCheck.of(scenario)) {
            for (RigCheck.Feed feed : check.trays()) {
                for (TrayTrace tray : trace.trays()) {
                    if (tray.tray().name().equals(feed.tray().name())) {
                        double most = tray.thirstM3().max(0, trace.hours()) / 3600;
                        assertTrue(
                                most <= feed.peakThirstM3PerS(),
                                most + " above " + feed.peakThirstM3PerS());
                        // And it is no idle figure: the season comes within a factor of five.
                        assertTrue(most > 0.2 * feed.peakThirstM3PerS());
                        seen++;
                    }
                }
            }
        }
        assertTrue(seen > 0);
    }
}
