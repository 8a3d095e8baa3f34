package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.physics.LiquidWater;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.TestTray;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.rig.Tube;

/** Trays at different heights on one trunk, through the solver that the engine itself asks. */
class FeedLinesTest {
    private static final double ML_PER_MIN = 1e-6 / 60; // m3/s

    /** A seat so wide that it loses less than 1e-5 of what the tube does, m. */
    private static final double NO_SEAT_M = 0.15;

    private static Filling.ByValve branch(
            double boreM, double lengthM, double loss, double seatM, double settingM) {
        return new TestValve()
                .settingM(settingM)
                .seatBoreM(seatM)
                .seatAboveFloorM(0.1)
                .branch(new Tube(boreM, lengthM, loss))
                .make();
    }

    private static double[] solve(
            FeedLines lines, double headM, double[] outletM, double[] opening, double tempC) {
        lines.solve(headM, outletM, opening, LiquidWater.kinematicViscosityM2PerS(tempC));
        return lines.flowM3PerS.clone();
    }

    /**
     * T1 to T7 of the tees: trunk 6 mm, 0.5 m, K 0.5; branches 4 mm, K 3.5; 25 degC.
     *
     * <p>The published rows are of smooth tube. The engine's tube has a roughness of 1.5 um, which
     * tells beyond the laminar range: {@code smooth} is the row, {@code rough} the same equations
     * with that roughness solved anew by Brent's method (which gives the smooth rows to their last
     * digit). The engine is held to 1e-4 of {@code rough}, and to the row within what roughness
     * does: 1e-3 where it does nothing, 4e-3 in the transition, 3 % where the branch hangs on 3 mm
     * of head (T7). The density, viscosity and friction of that solver are its own.
     */
    @ParameterizedTest(name = "{0}: {7} and {8} mL/min")
    @CsvSource({
        "T1 equal, 1, 1, 0, 1, 0, 0.4, 507.45, 507.45, 506.205, 506.205, 4e-3",
        "T2 unequal length, 0.5, 2, 0, 1, 0, 0.4, 646.08, 416.58, 643.716, 416.457, 4e-3",
        "T3 unequal height, 1, 1, 0.15, 1, 0, 0.4, 514.52, 416.65, 513.101, 416.487, 4e-3",
        "T4 second shut, 1, 1, 0, 0, 0, 0.4, 548.20, 0, 546.409, 0, 4e-3",
        "T5 two seats, 1, 1, 0, 1, 2, 0.4, 275.79, 275.79, 275.788, 275.788, 1e-3",
        "T7 barely below, 1, 1, 0.38, 1, 0, 0.4, 547.64, 13.145, 545.858, 13.512, 3e-2",
        "T8 as a free jet, 1, 1, 0.395, 1, 0, 0.4, 548.20, 0, 546.409, 0, 4e-3",
    })
    void tees_agree_with_an_independent_solver(
            String name,
            double firstM,
            double secondM,
            double secondOutletM,
            double secondOpening,
            double seatMm,
            double headM,
            double firstSmooth,
            double secondSmooth,
            double firstRough,
            double secondRough,
            double smoothTolerance) {
        double seatM = seatMm == 0 ? NO_SEAT_M : seatMm / 1000;
        FeedLines lines =
                new FeedLines(
                        new Tube(0.006, 0.5, 0.5),
                        List.of(
                                branch(0.004, firstM, 3.5, seatM, 0.05),
                                branch(0.004, secondM, 3.5, seatM, 0.05)));
        double[] flow =
                solve(
                        lines,
                        headM,
                        new double[] {0, secondOutletM},
                        new double[] {1, secondOpening},
                        25);
        double first = flow[0] / ML_PER_MIN;
        double second = flow[1] / ML_PER_MIN;
        assertEquals(firstRough, first, 1e-4 * firstRough, name);
        // T7 again: 1e-5 m of head is 0.3 % of this flow.
        assertEquals(
                secondRough, second, (secondOutletM == 0.38 ? 5e-4 : 1e-4) * secondRough, name);
        assertEquals(firstSmooth, first, Math.min(4e-3, smoothTolerance) * firstSmooth, name);
        assertEquals(secondSmooth, second, smoothTolerance * secondSmooth, name);
    }

    /** T6, laminar throughout: where the engine's own Newton runs, and roughness plays no part. */
    @Test
    void T6_a_thin_trunk_all_laminar() {
        FeedLines lines =
                new FeedLines(
                        new Tube(0.004, 3, 0.5),
                        List.of(
                                branch(0.004, 1.5, 3.5, NO_SEAT_M, 0.05),
                                branch(0.004, 3, 3.5, NO_SEAT_M, 0.05)));
        double[] flow = solve(lines, 0.1, new double[2], new double[] {1, 1}, 25);
        assertEquals(67.022, flow[0] / ML_PER_MIN, 1e-4 * 67.022);
        assertEquals(34.929, flow[1] / ML_PER_MIN, 1e-4 * 34.929);
    }

    /** N1 to N4, 20 degC, roughness 1.5 um, H = 0.30 m, trunk 6 mm, 2 m, K 0.5. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "N1 two alike, 1, 1, 0, 390.90, 390.90",
        "N2 short and long, 0.5, 2, 0, 488.69, 266.58",
        "N3 low and high, 1, 1, 0.05, 421.32, 327.51",
    })
    void tees_of_the_engines_own_tube_agree_with_an_independent_solver(
            String name,
            double firstM,
            double secondM,
            double secondOutletM,
            double firstMlPerMin,
            double secondMlPerMin) {
        FeedLines lines =
                new FeedLines(
                        new Tube(0.006, 2, 0.5),
                        List.of(
                                branch(0.004, firstM, 3, NO_SEAT_M, 0.05),
                                branch(0.004, secondM, 3, NO_SEAT_M, 0.05)));
        double[] flow =
                solve(lines, 0.30, new double[] {0, secondOutletM}, new double[] {1, 1}, 20);
        assertEquals(firstMlPerMin, flow[0] / ML_PER_MIN, 1e-4 * firstMlPerMin, name);
        assertEquals(secondMlPerMin, flow[1] / ML_PER_MIN, 1e-4 * secondMlPerMin, name);
    }

    @Test
    void N4_three_on_a_thin_trunk() {
        Filling.ByValve open = branch(0.004, 1, 3, NO_SEAT_M, 0.05);
        FeedLines lines = new FeedLines(new Tube(0.004, 1, 0.5), List.of(open, open, open));
        double[] flow = solve(lines, 0.30, new double[3], new double[] {1, 1, 1}, 20);
        for (double one : flow) {
            assertEquals(170.63, one / ML_PER_MIN, 1e-4 * 170.63);
        }
    }

    /** The solver starts from the last root: whatever was asked before must not tell. */
    @Test
    void what_was_asked_before_does_not_tell() {
        List<Filling.ByValve> valves =
                List.of(branch(0.004, 1.5, 3.5, 0.002, 0.05), branch(0.004, 3, 3.5, 0.002, 0.05));
        Tube trunk = new Tube(0.004, 3, 0.5);
        double[][] questions = {
            {0.1, 0, 0, 1, 1},
            {0.9, 0, 0.2, 1, 1},
            {0.1, 0, 0.099, 0.01, 1},
            {0.3, 0.3, 0.4, 1, 1},
            {0.2, 0, 0.1, 0, 0.5},
            {0.1, 0, 0, 1, 1},
        };
        FeedLines used = new FeedLines(trunk, valves);
        for (double[] q : questions) {
            double[] outlet = {q[1], q[2]};
            double[] opening = {q[3], q[4]};
            double[] again = solve(used, q[0], outlet, opening, 20);
            double[] anew = solve(new FeedLines(trunk, valves), q[0], outlet, opening, 20);
            for (int i = 0; i < anew.length; i++) {
                // Newton ends on 1e-8 of the head and is quadratic: 1e-13 of a flow is left.
                assertEquals(anew[i], again[i], 1e-12 * anew[i]);
                assertTrue(anew[i] >= 0);
            }
        }
    }

    // Whole trays.

    private static Tray tray(
            String name, double areaM2, double floorM, double startM, Filling valve) {
        return new TestTray()
                .name(name)
                .shape(Rigs.box(areaM2, 0.10))
                .cupBottomM(0.05)
                .floorAboveBenchM(floorM)
                .startLevelM(startM)
                .startLiquid(Rigs.FEED_LIQUID)
                .planting(Rigs.drinking(1))
                .filling(valve)
                .limits(Rigs.WIDE)
                .make();
    }

    private static FeedWater water(Reservoir reservoir, List<Tray> trays) {
        FeedWater water =
                new FeedWater(
                        reservoir,
                        trays,
                        new VesselWater(0),
                        trays.stream().map(tray -> new VesselWater(0)).toList(),
                        GravityFeed.BEND_MOST);
        water.viscosityM2PerS = LiquidWater.kinematicViscosityM2PerS(20);
        water.reservoir.m3 = reservoir.shape().volumeM3(reservoir.startLevelM());
        for (int i = 0; i < trays.size(); i++) {
            water.trays[i].m3 = trays.get(i).shape().volumeM3(trays.get(i).startLevelM());
        }
        return water;
    }

    private static Reservoir reservoir(double areaM2, double fullM, Tube trunk) {
        return new Reservoir(
                "wall",
                Rigs.box(areaM2, fullM),
                fullM,
                0.01,
                0.30,
                0,
                fullM,
                new Reservoir.Refill(Reservoir.Refill.When.NEVER, 0, Pouring.FEED),
                trunk);
    }

    /** What came into each tray, m3. */
    private static double[] run(FeedWater water, double spanS) {
        double[] in = new double[water.size];
        double done = 0;
        while (spanS - done > 1e-9) {
            done += water.advance(spanS - done);
            for (int i = 0; i < in.length; i++) {
                in[i] += water.inM3[i];
            }
        }
        return in;
    }

    /**
     * The lower valve stands wide open on a thin trunk, and the head that is left at the tee lies
     * below the upper valve: not a drop for the upper one, though the reservoir stands 15 cm above
     * it. Once the lower one is shut, the upper one fills.
     *
     * <p>Trunk 4 mm, 3 m, K 0.5; branches 8 mm, 0.2 m, K 1, no seat to speak of; reservoir's
     * surface 0.35 m over the lower, 0.15 m over the upper valve. With the lower one open the tee
     * stands some millimetres above it, far below the 0.20 m of the upper.
     */
    @Test
    void an_upper_tray_starves_while_a_lower_one_fills_through_a_thin_trunk() {
        Filling.ByValve open = branch(0.008, 0.2, 1, NO_SEAT_M, 0.05);
        // A reservoir so wide that its level falls by 2 mm while both fill.
        Reservoir wall = reservoir(10, 0.15, new Tube(0.004, 3, 0.5));
        Tray lower = tray("lower", 0.2, 0.00, 0.01, open);
        Tray upper = tray("upper", 0.2, 0.20, 0.01, open);
        FeedWater water = water(wall, List.of(lower, upper));
        // Surface 0.45 m, valves at 0.10 and 0.30 m above the bench.
        double[] first = run(water, 600);
        assertTrue(first[0] > 2e-3, first[0] + " m3 into the lower");
        assertEquals(0, first[1]);
        assertEquals(0.002, water.trays[1].m3);
        // Alone the upper would get 138.5 mL/min (4 mm, 3 m, K 0.5, and 8 mm, 0.2 m, K 1, under
        // 0.15 m; laminar, the closed root of a Q + b Q^2).
        double a = 128 * LiquidWater.kinematicViscosityM2PerS(20) / (Math.PI * 9.80665);
        double viscous = a * (3 / Math.pow(0.004, 4) + 0.2 / Math.pow(0.008, 4));
        double k = 8 / (Math.PI * Math.PI * 9.80665);
        double loose = k * (0.5 / Math.pow(0.004, 4) + 1 / Math.pow(0.008, 4));
        double alone = 2 * 0.15 / (viscous + Math.sqrt(viscous * viscous + 4 * loose * 0.15));
        // Lower shut from here on.
        water.stuckFrac[0] = 0;
        water.changed();
        double[] then = run(water, 600);
        assertEquals(0, then[0]);
        // The reservoir has fallen by 0.4 mm of 150: 3e-3 of the flow.
        assertEquals(alone * 600, then[1], 5e-3 * alone * 600);
    }

    /** Both are filled in the end, one after the other, and none goes below its start. */
    @Test
    void the_upper_tray_gets_its_turn_once_the_lower_throttles() {
        Filling.ByValve open = branch(0.008, 0.2, 1, NO_SEAT_M, 0.05);
        Reservoir wall = reservoir(10, 0.15, new Tube(0.004, 3, 0.5));
        FeedWater water =
                water(
                        wall,
                        List.of(
                                tray("lower", 0.2, 0.00, 0.01, open),
                                tray("upper", 0.2, 0.20, 0.01, open)));
        double lowerFullS = Double.NaN;
        double upperBeginsS = Double.NaN;
        for (int minute = 0; minute < 24 * 60; minute++) {
            double[] in = run(water, 60);
            if (Double.isNaN(lowerFullS) && water.trays[0].m3 > 0.2 * 0.045) {
                lowerFullS = minute * 60;
            }
            if (Double.isNaN(upperBeginsS) && in[1] > 0) {
                upperBeginsS = minute * 60;
            }
        }
        assertTrue(upperBeginsS >= lowerFullS, upperBeginsS + " before " + lowerFullS);
        assertEquals(0.01, water.trays[0].m3, 1e-5);
        assertEquals(0.01, water.trays[1].m3, 1e-5);
    }

    /**
     * The reservoir falls to the upper valve and gives the upper tray nothing more; the lower one
     * goes on to fill. Seats alone limit: Torricelli for both until then.
     */
    @Test
    void below_the_upper_valve_the_surface_still_feeds_the_lower_tray() {
        Tube none = new Tube(0.01, 0, 0);
        List<Filling.ByValve> valves = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            valves.add(new TestValve().seatAboveFloorM(0.1).branch(none).make());
        }
        // Surface at 0.45 m, upper valve at 0.40 m: 0.05 x 0.1 m2 = 5 L stand above it.
        Reservoir wall = reservoir(0.1, 0.15, none);
        Tray lower = tray("lower", 0.4, 0.0, 0.005, valves.get(0));
        Tray upper = tray("upper", 0.4, 0.30, 0.005, valves.get(1));
        FeedWater water = water(wall, List.of(lower, upper));
        double[] in = run(water, 1800);
        double surface = 0.30 + water.reservoir.m3 / 0.1;
        assertTrue(surface < 0.40, "surface " + surface);
        double[] later = run(water, 600);
        assertEquals(0, later[1]);
        assertTrue(later[0] > 0, "the lower tray gets nothing");
        // The upper one got what its seat let through while the surface fell to it; by numbers:
        // both seats, 2 mm, Cd 0.61, heads 0.05 and 0.35 m, reservoir 0.1 m2.
        double upperM3 = 0;
        double headM = 0.05;
        double dt = 0.05;
        double seat = 0.61 * Math.PI * 1e-6 * Math.sqrt(2 * 9.80665);
        while (headM > 1e-9) {
            double up = seat * Math.sqrt(headM);
            double low = seat * Math.sqrt(headM + 0.30);
            upperM3 += up * dt;
            headM -= (up + low) * dt / 0.1;
        }
        // Euler's steps of 0.05 s: 1e-4 of the whole.
        assertEquals(upperM3, in[1], 3e-4 * upperM3);
        assertEquals(0.1 * 0.15, water.reservoir.m3 + in[0] + in[1] + later[0], 1e-12);
    }
}
