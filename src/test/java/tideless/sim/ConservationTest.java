package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Reservoir.Refill.When;
import tideless.rig.Scenario;
import tideless.rig.TestValve;
import tideless.rig.Thirst;
import tideless.rig.ValveFaults;
import tideless.rig.VesselId;

/** Water and all that is dissolved in it are neither made nor lost, whatever the rig. */
class ConservationTest {
    private static final long SEED = 41;
    private static final int RIGS = 10_000;

    /** Steps from a second to six hours. */
    private static final double[] STEPS_S = {1, 7, 60, 600, 3600, 21600};

    @Test
    void ten_thousand_random_rigs_close_to_1e_12_of_what_passed() {
        long[] seeds = new SplittableRandom(SEED).longs(RIGS).toArray();
        int spilt = 0;
        int emptied = 0;
        int dried = 0;
        for (int k = 0; k < RIGS; k++) {
            double stepS = STEPS_S[k % STEPS_S.length];
            // Seasons of a minute with the shortest steps, of hours with the longer ones.
            RandomRig rig = new RandomRig(seeds[k], stepS < 600 ? 1 : 2);
            EngineRun run = new EngineRun(rig, GravityFeed.BEND_MOST, k % 3 == 0);
            double water = run.reservoir.water.m3;
            double tracer = run.reservoirTracerMol();
            for (int i = 0; i < run.trays.size(); i++) {
                water += run.trays.get(i).water.m3;
                tracer += run.tracerMol(i);
            }
            if (stepS < 10) {
                run.run(stepS, 60);
            } else {
                run.run(stepS);
            }
            double in = run.reservoir.refilledTotalM3;
            double waterEnd = run.reservoir.water.m3 + run.reservoir.evaporatedTotalM3;
            double tracerEnd = run.reservoirTracerMol();
            for (int i = 0; i < run.trays.size(); i++) {
                TrayRun tray = run.trays.get(i);
                String what = "seed " + seeds[k] + " tray " + i;
                assertTrue(tray.water.m3 >= 0 && run.evapotranspiredM3[i] >= 0, what);
                assertTrue(run.inM3[i] >= -1e-15 && run.spiltM3(i) >= 0, what);
                assertTrue(
                        tray.water.m3 <= run.feed.water.regime.brimM3[i] * (1 + 1e-12),
                        what + " over");
                waterEnd += tray.water.m3 + run.evapotranspiredM3[i] + run.spiltM3(i);
                tracerEnd += run.tracerMol(i) + run.spiltTracerMol(i);
                spilt += run.spiltM3(i) > 0 ? 1 : 0;
                dried += tray.water.m3 == 0 ? 1 : 0;
            }
            emptied += run.reservoir.water.uncovered ? 1 : 0;
            String what = "seed " + seeds[k] + " step " + stepS;
            assertEquals(water + in, waterEnd, 1e-12 * (water + in), what);
            assertEquals(tracer + in, tracerEnd, 1e-12 * (tracer + in), what);
        }
        // The rigs must do what they are drawn for.
        assertTrue(spilt > 300, "spilt " + spilt);
        assertTrue(emptied > 100, "emptied " + emptied);
        assertTrue(dried > 20, "dried " + dried);
    }

    private static Scenario season(int days, double stepS, int faultyTray, boolean plants) {
        Planting planting =
                plants
                        ? Rigs.drinking(2)
                        : new Planting.MeasuredThirst("measured", 0, Thirst.constant(0));
        ValveFaults stuck =
                new ValveFaults(
                        ValveFaults.Stuck.OPEN,
                        Rigs.START.plusDays(days / 3),
                        Rigs.START.plusDays(days / 3 + 1),
                        1e-9,
                        Rigs.START,
                        0.01,
                        Rigs.START);
        Filling.ByValve sound = Rigs.valve();
        return Rigs.scenario(
                days,
                stepS,
                List.of(Rigs.reservoir(0.1, 0.32, When.LOW_AT_VISIT)),
                List.of(
                        Rigs.tray(
                                "a",
                                faultyTray == 0 ? TestValve.of(sound).faults(stuck).make() : sound,
                                planting,
                                0.01),
                        Rigs.tray(
                                "b",
                                faultyTray == 1 ? TestValve.of(sound).faults(stuck).make() : sound,
                                planting,
                                0)),
                Rigs.onWeekdays(DayOfWeek.MONDAY, DayOfWeek.THURSDAY));
    }

    @ParameterizedTest(name = "{0} days, step {1} s, fault in tray {2}, plants {3}")
    @CsvSource({
        "730, 21600, 0, true",
        "730, 3600, -1, true",
        "730, 3600, 1, false",
        "1, 1, 0, true",
        "30, 600, 0, true",
    })
    void whole_seasons_with_faults_refills_and_no_plants_close(
            int days, double stepS, int faultyTray, boolean plants) {
        Trace trace = Simulation.run(season(days, stepS, faultyTray, plants));
        assertTrue(trace.water().relativeResidual() < 1e-12, "" + trace.water());
        for (Ledger ledger : trace.components()) {
            assertTrue(ledger.relativeResidual() < 1e-12, "" + ledger);
        }
    }

    @Test
    void a_valve_stuck_open_drains_the_reservoir_over_the_rim_and_the_ledger_says_so() {
        Trace trace = Simulation.run(season(30, 600, 0, true));
        double spilled = trace.trays().get(0).spillM3().sum();
        // The reservoir holds 30 L above its outlet and is refilled on Mondays and Thursdays.
        assertTrue(spilled > 0.02, "spilled " + spilled);
        assertEquals(
                spilled,
                trace.water().out().stream()
                        .filter(entry -> entry.what().equals("spilled"))
                        .mapToDouble(Ledger.Entry::amount)
                        .sum(),
                1e-12);
        assertTrue(
                trace.events().stream()
                        .anyMatch(
                                event ->
                                        event.kind() == Event.Kind.OVERFLOW_BEGAN
                                                && event.vessel().equals(VesselId.tray("a"))));
    }
}
