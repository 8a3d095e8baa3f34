package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tideless.rig.Filling;

/**
 * The engine at its default step against a general-purpose solver on the same law: Commons Math's
 * Dormand and Prince 8(5,3) with events, tolerance 1e-12, flows by {@code TubeTree} at every
 * evaluation. Two hundred random rigs of one to four trays, with snapping, throttling, stuck and
 * leaking valves, drowned outlets, overflow, dry trays and reservoirs that empty or evaporate.
 */
class EngineAgainstGeneralPurposeTest {
    /** The rigs' seeds; each test prints its own in its name. */
    static final long[] SEEDS = new SplittableRandom(20260907).longs(200).toArray();

    private static final double STEP_S = 600;

    static LongStream seeds() {
        return Arrays.stream(SEEDS);
    }

    @ParameterizedTest(name = "rig of seed {0}")
    @MethodSource("seeds")
    void levels_volumes_and_tracer_agree_with_the_general_purpose_solver(long seed) {
        RandomRig rig = new RandomRig(seed, 12);
        EngineRun engine = new EngineRun(rig, GravityFeed.BEND_MOST);
        engine.run(STEP_S);
        GeneralPurpose reference = new GeneralPurpose(rig, EngineRun.TEMP_C, 1e-12);
        reference.run();
        Differences got = Differences.of(reference, engine);
        assertTrue(got.levelM() < 5e-5, "level " + got);
        assertTrue(got.volumeFrac() < 1e-6, "volume " + got);
        assertTrue(got.inflowFrac() < 1e-6, "inflow " + got);
        assertTrue(got.spillFrac() < 1e-6, "spill " + got);
        assertTrue(got.tracerFrac() < 1e-6, "tracer " + got);
    }

    /**
     * Largest differences in one rig. Shares are of what a tray holds at its setting or of all that
     * passed through it, whichever is more; for the reservoir, of what it holds when full.
     */
    record Differences(
            double levelM,
            double volumeFrac,
            double inflowFrac,
            double spillFrac,
            double tracerFrac) {
        static Differences of(GeneralPurpose reference, EngineRun engine) {
            double level = 0;
            double volume = 0;
            double inflow = 0;
            double spill = 0;
            double tracer = 0;
            double[] y = reference.y;
            int n = reference.size;
            for (int i = 0; i < n; i++) {
                TrayRun tray = engine.trays.get(i);
                Filling.ByValve valve = (Filling.ByValve) tray.tray.filling();
                double held = tray.tray.shape().volumeM3(valve.settingM());
                double passed = Math.max(held, y[4 * i + 2]);
                double wanted = tray.tray.shape().levelM(y[4 * i]);
                level = Math.max(level, Math.abs(wanted - tray.levelM()));
                volume = Math.max(volume, Math.abs(y[4 * i] - tray.water.m3) / passed);
                inflow = Math.max(inflow, Math.abs(y[4 * i + 2] - engine.inM3[i]) / passed);
                spill = Math.max(spill, Math.abs(y[4 * i + 3] - engine.spiltM3(i)) / passed);
                double most = Math.max(held, y[4 * i + 1]);
                tracer = Math.max(tracer, Math.abs(y[4 * i + 1] - engine.tracerMol(i)) / most);
            }
            double full = engine.rig.reservoir.fullM3();
            volume = Math.max(volume, Math.abs(y[4 * n] - engine.reservoir.water.m3) / full);
            tracer = Math.max(tracer, Math.abs(y[4 * n + 1] - engine.reservoirTracerMol()) / full);
            return new Differences(level, volume, inflow, spill, tracer);
        }

        /** The largest of volumes, inflow and tracer. */
        double worstFrac() {
            return Math.max(volumeFrac, Math.max(inflowFrac, tracerFrac));
        }

        Differences or(Differences other) {
            return new Differences(
                    Math.max(levelM, other.levelM),
                    Math.max(volumeFrac, other.volumeFrac),
                    Math.max(inflowFrac, other.inflowFrac),
                    Math.max(spillFrac, other.spillFrac),
                    Math.max(tracerFrac, other.tracerFrac));
        }
    }
}
