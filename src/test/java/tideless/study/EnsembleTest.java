package tideless.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.rig.Numerics;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.sim.Trace;
import tideless.study.threads.ThreadPool;

/** Many seasons are each the season they would be alone, on however many threads. */
class EnsembleTest {
    private static final int MEMBERS = 12;

    private static final Scenario BENCH =
            Ensemble.atEnsembleStep(read("scenarios/science-room-bench.toml"));

    private static Scenario read(String file) {
        return ((Reading.Good) ScenarioReader.read(Path.of(file))).scenario();
    }

    /** All digits of all that is kept: a record prints its doubles so that they read back alike. */
    private static byte[] bytes(List<Season> seasons) {
        return seasons.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static List<Season> run(int members, long seed, int threads)
            throws InterruptedException {
        return Ensemble.of(
                BENCH,
                Tolerances.USUAL,
                members,
                seed,
                new ThreadPool(threads),
                Function.identity());
    }

    @Test
    void no_one_two_and_eight_threads_give_the_same_bytes() throws InterruptedException {
        byte[] alone =
                bytes(
                        Ensemble.of(
                                BENCH,
                                Tolerances.USUAL,
                                MEMBERS,
                                20261125,
                                new InTurn(),
                                Function.identity()));
        assertArrayEquals(alone, bytes(run(MEMBERS, 20261125, 1)));
        assertArrayEquals(alone, bytes(run(MEMBERS, 20261125, 2)));
        assertArrayEquals(alone, bytes(run(MEMBERS, 20261125, 8)));
    }

    @Test
    void a_larger_ensemble_begins_with_the_smaller_and_another_seed_is_another() throws Exception {
        List<Season> large = run(MEMBERS, 7, 2);
        assertEquals(run(3, 7, 2), large.subList(0, 3));
        assertNotEquals(run(3, 8, 2), large.subList(0, 3));
        assertEquals(MEMBERS, new HashSet<>(large).size(), "every member is drawn anew");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "scenarios/science-room-bench.toml",
                "scenarios/hand-topped-bucket.toml",
                "scenarios/sealed-lettuce-tank.toml"
            })
    void a_season_has_the_events_ledgers_and_masses_of_its_trace(String file) {
        Scenario scenario = read(file);
        Trace trace = Simulation.run(scenario);
        Season season = Simulation.season(scenario, Surroundings.of(scenario));
        assertFalse(season.events().isEmpty());
        assertEquals(trace.events(), season.events());
        assertEquals(trace.water(), season.water());
        assertEquals(trace.components(), season.components());
        for (int i = 0; i < trace.trays().size(); i++) {
            // The season's end lies behind the growth of the last night, the last sample before it.
            double lastSampleG = trace.trays().get(i).freshG().at(trace.hours() - 1);
            double atEndG = season.trays().get(i).yields().get(0).freshG();
            assertTrue(atEndG >= lastSampleG && atEndG < 1.03 * lastSampleG, "grew " + atEndG);
            assertTrue(season.trays().get(i).yields().get(0).fruitFreshG() <= atEndG);
        }
    }

    /**
     * Every instant by less than ten minutes and all that was drunk by less than 1e-4: what a step
     * of three hours may cost an ensemble that tells of days.
     */
    @Test
    void three_hours_steps_tell_the_same_season_as_ten_minutes() {
        Scenario bench = read("scenarios/science-room-bench.toml");
        Season fine = Simulation.season(bench, Surroundings.of(bench));
        Season coarse = Simulation.season(BENCH, Surroundings.forSeasons(BENCH));
        assertEquals(600, bench.numerics().stepS());
        assertEquals(fine.events().size(), coarse.events().size());
        for (int i = 0; i < fine.events().size(); i++) {
            Event expected = fine.events().get(i);
            Event got = coarse.events().get(i);
            assertEquals(expected.kind(), got.kind());
            assertEquals(expected.vessel(), got.vessel());
            // What is noticed at the end of a step is noticed up to a step late.
            boolean noticed =
                    expected.kind() == Event.Kind.STRANDED
                            || expected.kind() == Event.Kind.REWETTED
                            || expected.kind() == Event.Kind.DROWNED;
            // What falls out is looked at once a day, and may be noticed a day off.
            double borne = noticed ? Ensemble.STEP_S : 600;
            borne = expected.kind() == Event.Kind.PRECIPITATE ? 86_400 : borne;
            assertEquals(expected.atS(), got.atS(), borne);
        }
        // Salt and oxygen at the roots act from step to step, so that the water drunk is told to
        // a thousandth (measured 7e-4) and growth too (3e-4).
        double drunk = fine.water().out().get(0).amount();
        assertEquals(drunk, coarse.water().out().get(0).amount(), 1e-3 * drunk);
        for (int i = 0; i < fine.trays().size(); i++) {
            double fresh = fine.trays().get(i).yields().get(0).freshG();
            assertEquals(fresh, coarse.trays().get(i).yields().get(0).freshG(), 1e-3 * fresh);
        }
    }

    @Test
    void members_that_stand_in_other_air_are_refused() {
        Ensemble.Draw longer = (scenario, random) -> scenario.withNumerics(new Numerics(60));
        IllegalStateException failure =
                assertThrows(
                        IllegalStateException.class,
                        () ->
                                Ensemble.of(
                                        BENCH,
                                        longer,
                                        2,
                                        1,
                                        new ThreadPool(2),
                                        Function.identity()));
        assertTrue(failure.getCause().getMessage().contains("surroundings"));
        assertThrows(IllegalArgumentException.class, () -> new ThreadPool(0));
        assertThrows(
                IllegalArgumentException.class,
                () ->
                        Ensemble.of(
                                BENCH, Tolerances.USUAL, 0, 1, new InTurn(), Function.identity()));
    }

    @Test
    void an_interrupted_ensemble_ends_without_results() {
        Thread.currentThread().interrupt();
        assertThrows(InterruptedException.class, () -> run(2, 1, 1));
        assertFalse(Thread.currentThread().isInterrupted());
    }
}
