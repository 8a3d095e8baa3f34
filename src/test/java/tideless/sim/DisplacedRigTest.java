package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.physics.TubeFlow;
import tideless.rig.Displacement;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Shape;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.rig.Tube;

/**
 * Trays with cups and valve bodies in them: where those begin and end the area steps, and with it
 * the rise of the level. Against the same general-purpose solver and to the same 1e-6 as without.
 */
class DisplacedRigTest {
    private static final double STEP_S = 600;

    private static final double BETWEEN_M = 0.04999;

    /** The rigs' seeds; each test prints its own in its name. */
    static LongStream seeds() {
        return Arrays.stream(new SplittableRandom(20261125).longs(100).toArray());
    }

    private static Tray with(Tray tray, Displacement.Solid... solids) {
        return Rigs.withShape(tray, tray.shape().with(Displacement.of(List.of(solids))));
    }

    /** A random rig with cups in every tray and a valve body in every other. */
    static RandomRig displaced(long seed) {
        RandomRig bare = new RandomRig(seed, 12);
        // Drawn apart, so that the rig is that of its seed.
        SplittableRandom random = new SplittableRandom(~seed);
        List<Tray> trays = new ArrayList<>();
        for (Tray tray : bare.trays) {
            Shape shape = tray.shape();
            Filling.ByValve valve = (Filling.ByValve) tray.filling();
            // Cups begin where the level moves: at or about the valve's band.
            double settingM = valve.settingM();
            double cupM =
                    random.nextBoolean()
                            ? settingM - random.nextDouble() * valve.bandM()
                            : random.nextDouble() * 0.95 * shape.depthM();
            double cupsM2 = random.nextDouble() * 0.5 * shape.floorAreaM2();
            Displacement inside =
                    Displacement.NONE.and(new Displacement.Solid(cupsM2, cupM, shape.depthM()));
            if (random.nextBoolean()) {
                double fromM = random.nextDouble() * settingM;
                double toM = fromM + random.nextDouble() * (shape.depthM() - fromM);
                inside =
                        inside.and(
                                new Displacement.Solid(
                                        random.nextDouble() * 0.3 * shape.floorAreaM2(),
                                        fromM,
                                        toM));
            }
            trays.add(Rigs.withShape(tray, shape.with(inside)));
        }
        return new RandomRig(
                bare.reservoir,
                trays,
                bare.evapotranspirationM3PerS,
                bare.changeS,
                bare.evaporationM3PerS);
    }

    @ParameterizedTest(name = "rig of seed {0}")
    @MethodSource("seeds")
    void rigs_with_cups_and_valve_bodies_agree_with_the_general_purpose_solver(long seed) {
        agrees(displaced(seed), STEP_S);
    }

    // Box of 0.2 m2 with cups of 0.016 m2 from 75 mm, setting 80 mm, band 10 mm, a seat that alone
    // passes 5 mL/s under 0.5 m of head, nothing drunk, from 72 mm. Below the cups
    // tau = 0.2 x 0.01 / 5e-6 = 400 s, above 0.184 x 0.01 / 5e-6 = 368 s, so that
    // 75 mm are reached after 400 ln(8/5) = 188.00 s and 79 mm after 368 ln 5 = 592.27 s more.
    @ParameterizedTest(name = "{1} mm after {0} s")
    @CsvSource({"188.00, 75", "780.27, 79"})
    void a_throttling_tray_fills_past_its_cups_as_two_exponentials(double afterS, double mm) {
        double seatM2 = 5e-6 / (0.61 * Math.sqrt(2 * TubeFlow.GRAVITY_M_PER_S2 * 0.5));
        Tube none = new Tube(0.01, 0, 0);
        Reservoir lake =
                new Reservoir(
                        "wall",
                        Rigs.box(999, 0.8),
                        0.8,
                        0,
                        0,
                        0,
                        0.8,
                        new Reservoir.Refill(Reservoir.Refill.When.NEVER, 0, Pouring.FEED),
                        none);
        Filling.ByValve valve =
                new TestValve()
                        .settingM(0.08)
                        .bandM(0.01)
                        .seatBoreM(Math.sqrt(4 * seatM2 / Math.PI))
                        .seatAboveFloorM(0.3)
                        .branch(none)
                        .make();
        Tray tray =
                with(
                        Rigs.tray("a", valve, Rigs.drinking(1), 0),
                        new Displacement.Solid(0.016, 0.075, 0.10));
        RandomRig rig = new RandomRig(lake, List.of(tray), new double[1][1], afterS, 0);
        for (double stepS : new double[] {1, 137, 600, 21600}) {
            EngineRun engine = new EngineRun(rig, GravityFeed.BEND_MOST);
            engine.trays.get(0).water.m3 = 0.2 * 0.072;
            engine.run(stepS);
            // Times have two decimals: half of the last is worth 6e-5 mm.
            assertEquals(mm, engine.trays.get(0).levelM() * 1000, 1e-4);
        }
    }

    /**
     * Three trays filled from 1 cm, cups from 4 cm, a valve body from 2 to 6 cm in the last. In the
     * second the cups begin between the levels held by day and by night.
     */
    private static RandomRig bench() {
        RandomRig bare = new RandomRig();
        Displacement.Solid cups = new Displacement.Solid(8 * 20e-4, 0.04, 0.10);
        Displacement.Solid body = new Displacement.Solid(100e-4, 0.02, 0.06);
        Displacement.Solid inBand = new Displacement.Solid(8 * 20e-4, BETWEEN_M, 0.10);
        List<Tray> trays =
                List.of(
                        Rigs.startingAt(0.01, with(bare.trays.get(0), cups)),
                        Rigs.startingAt(0.01, with(bare.trays.get(1), inBand)),
                        Rigs.startingAt(0.01, with(bare.trays.get(2), cups, body)));
        Reservoir ample = Rigs.reservoir(0.2, 0.32, Reservoir.Refill.When.NEVER);
        return new RandomRig(
                ample, trays, bare.evapotranspirationM3PerS, bare.changeS, bare.evaporationM3PerS);
    }

    @ParameterizedTest(name = "step {0} s")
    @ValueSource(doubles = {60, 600, 21600})
    void a_bench_that_fills_past_its_cups_keeps_its_water_and_agrees(double stepS) {
        keepsItsWater(bench(), stepS);
        agrees(bench(), stepS);
    }

    @Test
    void a_thousand_rigs_with_cups_and_valve_bodies_keep_their_water() {
        long[] drawn = new SplittableRandom(1126).longs(1000).toArray();
        double[] stepsS = {60, 600, 3600, 21600};
        for (int k = 0; k < drawn.length; k++) {
            keepsItsWater(displaced(drawn[k]), stepsS[k % stepsS.length]);
        }
    }

    private static void keepsItsWater(RandomRig rig, double stepS) {
        EngineRun engine = new EngineRun(rig, GravityFeed.BEND_MOST);
        double before = engine.reservoir.water.m3;
        for (TrayRun tray : engine.trays) {
            before += tray.water.m3;
        }
        engine.run(stepS);
        double after = engine.reservoir.water.m3 + engine.reservoir.evaporatedTotalM3;
        for (int i = 0; i < rig.trays.size(); i++) {
            assertTrue(engine.trays.get(i).water.m3 >= 0 && engine.evapotranspiredM3[i] >= 0);
            after += engine.trays.get(i).water.m3 + engine.evapotranspiredM3[i] + engine.spiltM3(i);
        }
        assertEquals(before, after, 1e-12 * before);
    }

    @Test
    void the_benchs_level_crosses_the_underside_of_cups_every_day() {
        EngineRun byDay = new EngineRun(bench(), GravityFeed.BEND_MOST);
        byDay.run(STEP_S, 6 * byDay.rig.changeS); // day, night, day
        assertTrue(byDay.trays.get(1).levelM() < BETWEEN_M - 1e-6);
        EngineRun byNight = new EngineRun(bench(), GravityFeed.BEND_MOST);
        byNight.run(STEP_S);
        assertTrue(byNight.trays.get(1).levelM() > BETWEEN_M + 1e-6);
    }

    private static void agrees(RandomRig rig, double stepS) {
        EngineRun engine = new EngineRun(rig, GravityFeed.BEND_MOST);
        engine.run(stepS);
        GeneralPurpose reference = new GeneralPurpose(rig, EngineRun.TEMP_C, 1e-12);
        reference.run();
        var got = EngineAgainstGeneralPurposeTest.Differences.of(reference, engine);
        assertTrue(got.levelM() < 5e-5, "level " + got);
        assertTrue(got.volumeFrac() < 1e-6, "volume " + got);
        assertTrue(got.inflowFrac() < 1e-6, "inflow " + got);
        assertTrue(got.spillFrac() < 1e-6, "spill " + got);
        assertTrue(got.tracerFrac() < 1e-6, "tracer " + got);
    }
}
