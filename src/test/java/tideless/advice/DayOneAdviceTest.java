package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static tideless.sim.Rigs.START;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.scenario.GrowingBench;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.words.CropWords;
import tideless.words.TaskWords;

/** What is mixed, poured and set out on the first day, and since when the plants were raised. */
class DayOneAdviceTest {
    @TempDir Path folder;

    private static Task only(MadeTrace trace, Task.Kind kind) {
        List<Task> tasks = trace.advice().tasks().stream().filter(t -> t.kind() == kind).toList();
        assertEquals(1, tasks.size(), tasks.toString());
        return tasks.get(0);
    }

    /** 0.1 m2 x 0.32 m and 0.2 m2 x 0.05 m: 32 L and 10 L. */
    @Test
    void what_is_mixed_is_told_by_where_it_goes() {
        Task mix = only(new MadeTrace(14), Task.Kind.MIX);
        Map<?, Double> into = mix.cause().facts().litresInto();
        assertEquals(List.of(MadeTrace.RESERVOIR, MadeTrace.TRAY), List.copyOf(into.keySet()));
        assertEquals(32, into.get(MadeTrace.RESERVOIR), 1e-9);
        assertEquals(10, into.get(MadeTrace.TRAY), 1e-9);
        assertEquals("feed: 32 L into wall, 10.0 L into tray", TaskWords.brief(mix));
    }

    /** The first thing to do stands before the run, so that nobody has no plants on day one. */
    @Test
    void what_is_set_out_on_day_one_is_told_to_be_sown() {
        Task sow = only(new MadeTrace(14), Task.Kind.SOW);
        assertEquals(START.minusDays(3).atTime(8, 0), sow.due());
        assertEquals(
                "4 plants and a few to choose from, 3 days in the nursery (for the tray on Mon 7"
                        + " Sep)",
                TaskWords.why(sow));
        Task later = sow.withDue(sow.due().plusDays(4));
        List<String> crops = List.of("tomato", "basil", "basil");
        List<Task> all = List.of(sow, later, later.withLitres(1));
        assertEquals(
                "tomato, basil (8 Sep)",
                TaskWords.sowings(all, task -> crops.get(all.indexOf(task))));
        assertEquals(sow, new MadeTrace(14).advice().tasks().get(0));
    }

    @Test
    void strawberries_are_not_sown() {
        assertEquals(
                List.of(),
                new MadeTrace(14)
                        .of("strawberry").advice().tasks().stream()
                                .filter(t -> t.kind() == Task.Kind.SOW)
                                .toList());
    }

    /** Plants of three days on the first day: begun three days before the run. */
    @Test
    void what_stands_on_day_one_was_sown_before_it() {
        Task out = only(new MadeTrace(14), Task.Kind.SET_OUT);
        assertEquals(START.atTime(8, 0), out.due());
        assertEquals(START.minusDays(3).atStartOfDay(), out.cause().facts().on());
        assertEquals(3, out.measure().value());
        assertEquals("4 plants, 3 days in the nursery (sown on Fri 4 Sep)", TaskWords.why(out));
    }

    @Test
    void a_tray_without_plants_is_told_as_such_and_nothing_is_set_out() throws IOException {
        Path file = folder.resolve("bench.toml");
        Files.writeString(
                file,
                GrowingBench.text(14, "visits.days = \"daily\"", 22, 200, "lettuce", "plants = 0"));
        Trace empty = Simulation.run(((Reading.Good) ScenarioReader.read(file)).scenario());
        assertEquals(
                List.of(),
                Advisor.advise(empty, empty).tasks().stream()
                        .filter(t -> t.kind() == Task.Kind.SET_OUT || t.kind() == Task.Kind.SOW)
                        .toList());
        assertEquals(
                List.of("tray bench: nothing is planted in it; left dry it needs no feed."),
                CropWords.unripe(empty));
    }

    /** Age three days, free on day 22: due on day 19, in an absence; late by two on day 21. */
    @Test
    void seedlings_sown_after_an_absence_are_told_to_be_younger() {
        Task late =
                only(
                        new MadeTrace(40)
                                .visited(MadeTrace.away(12, 20))
                                .event(Event.Kind.HARVEST, MadeTrace.TRAY, 22 * 24 + 8),
                        Task.Kind.SOW_NEXT);
        assertEquals(2, late.cause().facts().get(Quantity.YOUNGER));
        assertFalse(late.cause().facts().has(Quantity.ALONE));
    }

    /**
     * Days 19 to 22 in the nursery: an absence within them leaves seedlings alone as one that
     * begins them does.
     */
    @Test
    void seedlings_that_an_absence_finds_in_the_nursery_are_told_so() {
        Task sow =
                only(
                        new MadeTrace(40)
                                .visited(MadeTrace.away(21, 21))
                                .event(Event.Kind.HARVEST, MadeTrace.TRAY, 22 * 24 + 8),
                        Task.Kind.SOW_NEXT);
        assertEquals(2, sow.cause().facts().get(Quantity.ALONE));
    }

    /** From the harvest on at half of the light, or at a little less: then nothing is sown. */
    @ParameterizedTest
    @CsvSource({"0.5, 1", "0.49, 0"})
    void nothing_is_sown_into_a_season_of_less_than_half_the_growth(double frac, int told) {
        MadeTrace trace =
                new MadeTrace(40)
                        .with(TraySeries.LIGHT, h -> h < 23 * 24 ? 0.6 : 0.6 * frac)
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 23 * 24);
        assertEquals(told, sowings(trace));
    }

    /** Air in which this crop does not grow at all. */
    @Test
    void nothing_is_sown_into_the_cold() {
        MadeTrace trace =
                new MadeTrace(40)
                        .with(TraySeries.AIR_TEMP, h -> h < 23 * 24 ? 20 : 2)
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 23 * 24);
        assertEquals(0, sowings(trace));
    }

    /** Lettuce grows at less than three quarters from 30 degC in the mean of a day on. */
    @ParameterizedTest
    @CsvSource({"12, 0", "11, 1"})
    void nothing_is_sown_into_the_heat_of_most_of_the_days_before(int hotDays, int told) {
        MadeTrace trace =
                new MadeTrace(46)
                        .with(TraySeries.AIR_TEMP, h -> h < hotDays * 24 ? 31 : 22)
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 23 * 24);
        assertEquals(told, sowings(trace));
    }

    /** Lettuce is 3 days old here: who comes on Mondays alone sows days before that. */
    @Test
    void seedlings_sown_at_the_last_visit_in_time_are_told_as_old_as_they_will_be() {
        Task daily =
                only(
                        new MadeTrace(40).event(Event.Kind.HARVEST, MadeTrace.TRAY, 21 * 24 + 8),
                        Task.Kind.SOW_NEXT);
        assertEquals(3, daily.measure().value(), 0);
        Task weekly =
                only(
                        new MadeTrace(40)
                                .visited(Rigs.onWeekdays(DayOfWeek.MONDAY))
                                .event(Event.Kind.HARVEST, MadeTrace.TRAY, 21 * 24 + 8),
                        Task.Kind.SOW_NEXT);
        assertEquals(7, weekly.measure().value(), 0);
    }

    private static long sowings(MadeTrace trace) {
        return trace.advice().tasks().stream().filter(t -> t.kind() == Task.Kind.SOW_NEXT).count();
    }

    /** The last visit before the absence of days 13 to 20 is that of day 12, the next on day 21. */
    @ParameterizedTest
    @CsvSource({"13, true", "30, false"})
    void seedlings_left_alone_are_covered(int awayFrom, boolean alone) {
        Task sow =
                only(
                        new MadeTrace(40)
                                .visited(MadeTrace.away(awayFrom, awayFrom + 7))
                                .event(Event.Kind.HARVEST, MadeTrace.TRAY, 22 * 24 + 8),
                        Task.Kind.SOW_NEXT);
        assertEquals(alone, sow.cause().facts().has(Quantity.ALONE));
        assertEquals(
                alone,
                TaskWords.why(sow)
                        .endsWith(
                                "; nobody comes for 9 days meanwhile: wet well and cover, or have them watered"));
        assertFalse(sow.cause().facts().has(Quantity.YOUNGER));
    }
}
