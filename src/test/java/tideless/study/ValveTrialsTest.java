package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Rigs;
import tideless.sim.Simulation;
import tideless.sim.Trace;

/** A move of a valve is told where a run with it is better, and nowhere else. */
class ValveTrialsTest {
    @TempDir Path folder;

    /** Four heads of lettuce under a lamp, somebody there every day; the place is invented. */
    private Scenario lettuce(String setting, String more) throws IOException {
        String text =
                """
                title = "Trial"
                start = 2026-03-02
                length = "35 days"
                [climate]
                kind = "room"
                day_temperature = "22 degC"
                [lamp]
                ppfd = "220 umol/m2/s"
                on = "06:00"
                off = "22:00"
                [feed]
                recipe = "hoagland-1"
                ec = "1.6 mS/cm"
                [reservoir.shelf]
                length = "40 cm"
                width = "28 cm"
                depth = "28 cm"
                floor_above_bench = "60 cm"
                [tray.a]
                length = "60 cm"
                width = "35 cm"
                depth = "8 cm"
                crop = "lettuce"
                plants = 4
                %s
                [tray.a.valve]
                setting = "%s"
                """
                        .formatted(more, setting);
        Path file = Files.writeString(folder.resolve("trial.toml"), text);
        return ((Reading.Good) ScenarioReader.read(file)).scenario();
    }

    private static List<Task> moves(Forecast forecast) {
        return forecast.advice().tasks().stream()
                .filter(t -> t.kind() == Task.Kind.MOVE_VALVE)
                .toList();
    }

    /** 2 mm of air are left below the deck, and 10 mm free the surface: one step down. */
    @Test
    void a_brim_full_tray_is_lowered_by_one_step_and_grows_as_was_told() throws IOException {
        Scenario scenario = lettuce("7.8 cm", "");
        Forecast forecast = Forecasts.of(scenario, 1);
        List<Task> told = moves(forecast);
        assertEquals(1, told.size());
        Task move = told.get(0);
        assertEquals(68, move.measure().value(), 1e-9);
        assertEquals(78, move.cause().facts().get(Quantity.SETTING), 1e-9);
        assertEquals(Cause.Kind.GROWS_MORE_IN_A_TRIAL, move.cause().kind());
        assertFalse(move.isDone());

        Tray tray = scenario.trays().get(0);
        Filling.ByValve valve = (Filling.ByValve) tray.filling();
        Filling moved = valve.withMoves(List.of(new Filling.Move(move.due().toLocalDate(), 0.068)));
        Forecast obeyed = Forecasts.of(scenario.withTrays(List.of(tray.withFilling(moved))), 1);
        double gain = Improvement.gainFrac(forecast.trace(), obeyed.trace(), tray.id());
        assertTrue(gain >= Improvement.GAIN_FRAC);
        assertEquals(gain, move.cause().facts().get(Quantity.GAIN), 1e-12);
        assertTrue(Improvement.dryHours(obeyed.trace()) <= Improvement.dryHours(forecast.trace()));
        assertEquals(1, moves(obeyed).size(), "asked for once: it is done now");
    }

    /**
     * Two crops of lettuce in a brim-full tray: the valve goes down for the first, back up as the
     * second is set out, and down again.
     */
    @Test
    void a_valve_is_lowered_for_each_crop_in_turn_and_set_back_between() throws IOException {
        Scenario scenario =
                lettuce(
                        "7.8 cm",
                        "harvest_after = \"17 days\"\n[[tray.a.next]]\ncrop = \"lettuce\"\nplants = 4");
        Trace trace = Simulation.run(scenario);
        Advice advice = Advisor.advise(trace, trace);
        List<Trials.Trial> trials = Trials.of(trace, trace, advice);
        LocalDate second =
                trace.clockAt(trace.plantings(trace.trays().get(0)).get(1).fromS()).toLocalDate();
        assertEquals(3, trials.size(), "both crops, and each by itself");
        assertEquals(List.of(0.068, 0.078, 0.068), settings(trials.get(0)));
        assertEquals(List.of(0.068, 0.078), settings(trials.get(1)));
        assertEquals(List.of(0.068), settings(trials.get(2)));
        assertEquals(second, trials.get(0).moves().get(1).on());
        assertTrue(trials.get(2).moves().get(0).on().isAfter(second));

        List<Task> told = moves(Forecasts.of(scenario, 1));
        assertEquals(
                List.of(68.0, 78.0, 68.0), told.stream().map(t -> t.measure().value()).toList());
        assertEquals(68, told.get(1).cause().facts().get(Quantity.SETTING), 1e-9);
    }

    /** 12 mm of air, and the roots hang into the solution: served by its geometry. */
    @Test
    void a_valve_that_leaves_air_below_the_deck_is_left_alone() throws IOException {
        Scenario scenario = lettuce("6.8 cm", "");
        Trace trace = Simulation.run(scenario);
        Advice advice = Advisor.advise(trace, trace);
        assertEquals(List.of(), Trials.of(trace, trace, advice));
        assertEquals(List.of(), moves(Forecasts.of(scenario, 1)));
    }

    /** The run with the move shows no gain here, for it is the run without. */
    @Test
    void a_move_that_does_not_stand_its_trial_is_not_told() throws IOException {
        Scenario scenario = lettuce("7.8 cm", "");
        Trace trace = Simulation.run(scenario);
        Trials.Tried first = new Trials.Tried(trace, Advisor.advise(trace, trace));
        List<Trials.Trial> trials = Trials.of(trace, trace, first.advice());
        assertEquals(1, trials.size());
        assertEquals(first.advice(), Trials.judged(first, trials, List.of(first)));
    }

    /** Where all steps fail and the first alone is better, that one is told; never both. */
    @Test
    void of_several_trials_of_one_tray_the_first_that_stands_is_told() throws IOException {
        Scenario scenario = lettuce("7.8 cm", "");
        Trace trace = Simulation.run(scenario);
        Trials.Tried first = new Trials.Tried(trace, Advisor.advise(trace, trace));
        Trials.Trial trial = Trials.of(trace, trace, first.advice()).get(0);
        Trace moved = Simulation.run(trial.scenario());
        Trials.Tried better = new Trials.Tried(moved, Advisor.advise(moved, moved));
        List<Trials.Trial> two = List.of(trial, trial);
        int tasks = first.advice().tasks().size() + 1;
        assertEquals(tasks, Trials.judged(first, two, List.of(first, better)).tasks().size());
        assertEquals(tasks, Trials.judged(first, two, List.of(better, better)).tasks().size());
    }

    /** What a warning asks of the valve is struck out there and in the verdict, too. */
    @Test
    void a_lower_level_that_does_not_stand_its_trial_is_struck_out() {
        Trials.Tried first = trough();
        List<Trials.Trial> trials = Trials.of(first.trace(), first.trace(), first.advice());
        assertEquals(2, trials.size(), "all steps, and the first alone");
        assertEquals(List.of(0.075), settings(trials.get(1)));
        assertTrue(settings(trials.get(0)).size() > 1);
        assertEquals(settings(trials.get(1)), settings(trials.get(0)).subList(0, 1));
        assertTrue(asks(first.advice(), Cure.Kind.LOWER_LEVEL));
        Advice judged = Trials.judged(first, trials, List.of(first, first));
        assertFalse(asks(judged, Cure.Kind.LOWER_LEVEL));
        assertEquals(first.advice().tasks(), judged.tasks());
        assertTrue(
                judged.verdict().first().orElseThrow().cures().stream()
                        .noneMatch(c -> c.kind() == Cure.Kind.LOWER_LEVEL));
    }

    private static List<Double> settings(Trials.Trial trial) {
        return trial.moves().stream().map(Filling.Move::settingM).toList();
    }

    private static Trials.Tried trough() {
        Path file = Path.of("scenarios", "glasshouse-tomato-trough.toml");
        Trace trace = Simulation.run(((Reading.Good) ScenarioReader.read(file)).scenario());
        return new Trials.Tried(trace, Advisor.advise(trace, trace));
    }

    private static boolean asks(Advice advice, Cure.Kind kind) {
        return advice.warnings().stream()
                .anyMatch(w -> w.cures().stream().anyMatch(c -> c.kind() == kind));
    }

    /** Down to what is wished or just past it; never past what the longest gap needs. */
    @Test
    void a_float_is_moved_by_whole_steps_above_its_bound() {
        assertEquals(1, Trials.steps(0.078, 0.070, 0.020));
        assertEquals(1, Trials.steps(0.078, 0.068, 0.020));
        assertEquals(2, Trials.steps(0.078, 0.067, 0.020));
        assertEquals(1, Trials.steps(0.078, 0.020, 0.068));
        assertEquals(0, Trials.steps(0.078, 0.020, 0.069));
    }

    /**
     * 4 L a day from Monday to Friday, 16 L, of which the reservoir gives 0.04 m2 x 0.28 m = 11.2
     * L: 4.8 L over 0.2 m2 are 24 mm, above a film of 2 mm.
     */
    @Test
    void the_bound_bears_the_longest_gap_between_visits() {
        Tray tray = Rigs.tray("t", new TestValve().make(), Rigs.drinking(4), 0);
        Scenario scenario =
                Rigs.scenario(
                        14,
                        600,
                        List.of(Rigs.reservoir(0.04, 0.3, Reservoir.Refill.When.WHEN_EMPTY)),
                        List.of(tray),
                        Rigs.onWeekdays(DayOfWeek.MONDAY, DayOfWeek.FRIDAY));
        Trace trace = Simulation.run(scenario);
        Filling.ByValve valve = (Filling.ByValve) tray.filling();
        assertEquals(0.026, Trials.boundM(trace, trace, 0, valve, 0, 336), 1e-6);
    }
}
