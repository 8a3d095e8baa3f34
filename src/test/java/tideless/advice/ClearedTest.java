package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.words.TaskWords;

/** A tray whose plants are all dead: cleared at the next visit, and left alone from then on. */
class ClearedTest {
    private static final int DIED_H = 200;

    private static final LocalDateTime DIED = Rigs.START.atStartOfDay().plusHours(DIED_H);

    private static final Filling BY_HAND = new Filling.ByHand(0.05, List.of(), Pouring.FEED, false);

    /** A tray that is topped up and too salty from a day on, and in which all is dead since. */
    private static Advice advice(int saltyFromH) {
        return new MadeTrace(21)
                .filled(BY_HAND)
                .event(Event.Kind.WILTED, MadeTrace.TRAY, 150)
                .event(Event.Kind.TOP_UP, MadeTrace.TRAY, 100)
                .event(Event.Kind.DIED, MadeTrace.TRAY, DIED_H)
                .event(Event.Kind.TOP_UP, MadeTrace.TRAY, 250)
                .event(Event.Kind.FLUSH, MadeTrace.TRAY, 300)
                .event(Event.Kind.OVERFLOW_BEGAN, MadeTrace.TRAY, 310)
                .with(TraySeries.EC, h -> h < saltyFromH ? 2 : 9)
                .advice();
    }

    private static List<Task> of(Advice advice, Task.Kind kind) {
        return advice.tasks().stream().filter(t -> t.kind() == kind).toList();
    }

    // Dead at eight of the ninth day, when somebody is there.
    @Test
    void the_dead_are_cleared_away_at_the_next_visit() {
        List<Task> clean = of(advice(400), Task.Kind.CLEAN);
        assertEquals(1, clean.size());
        assertEquals(DIED, clean.get(0).due());
        assertEquals(Cause.Kind.CROP_IS_LOST, clean.get(0).cause().kind());
        assertTrue(TaskWords.why(clean.get(0)).startsWith("take out the dead plants"));
        assertTrue(clean.get(0).cautions().contains(Caution.DRAINED_FEED));
    }

    @Test
    void nothing_else_is_done_for_them_from_then_on() {
        Advice advice = advice(400);
        assertEquals(1, of(advice, Task.Kind.TOP_UP).size());
        assertEquals(List.of(), of(advice, Task.Kind.FLUSH));
        assertTrue(advice.tasks().stream().noneMatch(t -> t.due().isAfter(DIED)));
    }

    @Test
    void nothing_is_warned_of_that_begins_when_all_is_dead() {
        for (Warning warning : advice(400).warnings()) {
            assertTrue(!warning.from().isAfter(DIED), () -> "warned of " + warning);
        }
        assertTrue(
                advice(100).warnings().stream().anyMatch(w -> w.kind() == Warning.Kind.TOO_SALTY));
    }

    // Basil freezes in the first night, before the first weekly reading, and kale beside it lives.
    @Test
    void nobody_is_sent_to_read_what_stands_over_dead_roots() {
        Reading reading =
                ChangedScenario.read(
                        Path.of("scenarios", "calm-bench.toml"),
                        List.of(
                                new ChangedScenario.Change("climate.night_temperature", "-3 degC"),
                                new ChangedScenario.Change("tray.left.crop", "basil"),
                                new ChangedScenario.Change("tray.right.crop", "kale")));
        Trace trace = Simulation.run(((Reading.Good) reading).scenario());
        Advice advice = Advisor.advise(trace, trace);
        assertEquals(
                List.of("right"),
                of(advice, Task.Kind.READ_METERS).stream()
                        .map(task -> task.cause().facts().of())
                        .toList());
    }

    @Test
    void nobody_clears_a_tray_to_which_nobody_comes_any_more() {
        Advice advice =
                new MadeTrace(21)
                        .visited(MadeTrace.away(5, 30))
                        .event(Event.Kind.WILTED, MadeTrace.TRAY, 150)
                        .event(Event.Kind.DIED, MadeTrace.TRAY, DIED_H)
                        .advice();
        assertEquals(List.of(), of(advice, Task.Kind.CLEAN));
    }
}
