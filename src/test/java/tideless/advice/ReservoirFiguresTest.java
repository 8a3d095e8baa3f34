package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Reservoir;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;
import tideless.words.TaskWords;

/**
 * Figures of a reservoir of 0.1 m2 by hand: 32 L when full at 320 mm, 30 L of them above its outlet
 * at 20 mm, to be refilled below a half; somebody there at eight every day.
 */
class ReservoirFiguresTest {
    /** More than half a reservoir holds for any absence here, m3/h. */
    private static final IntToDoubleFunction AWAY = h -> 4e-4;

    private static final LocalDate START = Rigs.START;

    private static Event refill(double hour, double litres) {
        return new Event(
                Event.Kind.REFILL,
                hour * 3600,
                MadeTrace.RESERVOIR,
                litres / 1000,
                0,
                0,
                Double.NaN,
                0,
                "");
    }

    private static List<Task> refills(MadeTrace trace) {
        return trace.advice().tasks().stream().filter(t -> t.kind() == Task.Kind.REFILL).toList();
    }

    private static Warning ranDry(MadeTrace trace) {
        return trace.advice().warnings().stream()
                .filter(w -> w.kind() == Warning.Kind.RAN_DRY)
                .findFirst()
                .orElseThrow();
    }

    /**
     * 12 L are left at hour 104, and the crop is cut at hour 248: at 50 mL an hour 7.2 L are drawn,
     * with a third to spare 9.6; at 100 mL 14.4 and 19.2, of which 7.2 are not there; at 200 mL a
     * whole filling is wanted.
     */
    @ParameterizedTest
    @CsvSource({"0.05, 0", "0.1, 7.2", "0.2, -1"})
    void what_trays_take_that_are_cut_soon_is_told_with_a_refill(
            double litresAnHour, double enough) {
        MadeTrace cut =
                new MadeTrace(14)
                        .drawing(h -> litresAnHour / 1000)
                        .event(refill(104, 18))
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 248);
        List<Task> refills = refills(cut);
        assertEquals(1, refills.size(), "done, and so told");
        String told = TaskWords.brief(refills.get(0));
        if (enough >= 0) {
            assertEquals(enough, refills.get(0).cause().facts().get(Quantity.ENOUGH), 0.2);
            assertTrue(
                    told.contains(
                            (enough > 0 ? " L" : "what is left")
                                    + " would do to the last harvest on "),
                    told);
        } else {
            assertFalse(refills.get(0).cause().facts().has(Quantity.ENOUGH));
        }
        assertEquals(
                1,
                refills(new MadeTrace(14).drawing(h -> litresAnHour / 1000).event(refill(104, 18)))
                        .size());
    }

    @Test
    void a_refill_tells_its_litres_what_is_left_and_when_it_would_be_due() {
        Task task = refills(new MadeTrace(14).event(refill(104, 18))).get(0);
        assertEquals(18, task.litres(), 1e-9);
        assertEquals(12, task.measure().value(), 1e-9);
        assertEquals(15, task.measure().limit(), 1e-9);
        assertEquals(Measure.Side.AT_LEAST, task.measure().side());
        assertEquals(Cause.Kind.RUNNING_LOW, task.cause().kind());
        assertEquals(START.plusDays(4).atTime(8, 0), task.due());
        assertTrue(task.isDone());
    }

    @ParameterizedTest
    @CsvSource({"29.99, RUNNING_LOW", "30, RUN_DOWN_TO_OUTLET", "30.5, RUN_DOWN_TO_OUTLET"})
    void what_lacks_all_that_it_gives_has_run_down(double litres, Cause.Kind cause) {
        Task task = refills(new MadeTrace(14).event(refill(104, litres))).get(0);
        assertEquals(cause, task.cause().kind());
        assertEquals(Math.max(0, 30 - litres), task.measure().value(), 1e-9);
    }

    /** Away from day 5 to day 9: the last visit is that of day 4. */
    @Test
    void the_fill_before_an_absence_is_told_as_such() {
        MadeTrace trace =
                new MadeTrace(14)
                        .visited(MadeTrace.away(5, 9))
                        .event(refill(80, 16))
                        .event(refill(104, 9));
        List<Task> tasks = refills(trace);
        assertEquals(2, tasks.size());
        assertEquals(Cause.Kind.RUNNING_LOW, tasks.get(0).cause().kind());
        assertEquals(Cause.Kind.BEFORE_ABSENCE, tasks.get(1).cause().kind());
        assertEquals(START.plusDays(10), tasks.get(1).cause().facts().on().toLocalDate());
        assertEquals(Measure.Side.NONE, tasks.get(1).measure().side());
        assertEquals(21, tasks.get(1).measure().value(), 1e-9);
    }

    /** Half full, 16 L: 16 L are missing, and of the 30 L 14 are left. */
    @Test
    void a_fill_before_an_absence_that_nobody_does_is_advised() {
        MadeTrace trace =
                new MadeTrace(14).visited(MadeTrace.away(5, 9)).drawing(AWAY).reservoirAt(0.5);
        Task task = refills(trace).get(0);
        assertFalse(task.isDone());
        assertEquals(16, task.litres(), 1e-9);
        assertEquals(14, task.measure().value(), 1e-9);
        assertEquals(START.plusDays(4).atTime(8, 0), task.due());
        assertEquals(START.plusDays(10), task.cause().facts().on().toLocalDate());
        assertEquals(Cause.Kind.BEFORE_ABSENCE, task.cause().kind());
    }

    /**
     * 14 L left, of which the 144 hours from the visit on day 4 to that on day 10 take 9.3 L or
     * less: half as much again is plenty.
     */
    @ParameterizedTest
    @CsvSource({"0.0648, 0", "0.0649, 1"})
    void nobody_fills_up_before_an_absence_who_has_plenty(double litresAnHour, int tasks) {
        MadeTrace trace =
                new MadeTrace(14)
                        .visited(MadeTrace.away(5, 9))
                        .drawing(h -> litresAnHour / 1000)
                        .reservoirAt(0.5);
        assertEquals(tasks, refills(trace).size());
        assertEquals(
                tasks > 0 ? START.plusDays(4) : null,
                trace.advice().verdict().absences().get(0).fillUpOn());
    }

    /** A twentieth of 30 L is 1.5 L: 30.5 of 32 L are as good as full. */
    @ParameterizedTest
    @CsvSource({"0.9530, 1", "0.9533, 0"})
    void what_is_as_good_as_full_is_not_to_be_filled(double frac, int tasks) {
        MadeTrace trace =
                new MadeTrace(14).visited(MadeTrace.away(5, 9)).drawing(AWAY).reservoirAt(frac);
        assertEquals(tasks, refills(trace).size());
    }

    @Test
    void nobody_fills_up_for_nothing() {
        MadeTrace before = new MadeTrace(14).visited(MadeTrace.away(0, 9)).reservoirAt(0.5);
        assertEquals(List.of(), refills(before), "no visit before");
        MadeTrace beyond = new MadeTrace(14).visited(MadeTrace.away(14, 20)).reservoirAt(0.5);
        assertEquals(List.of(), refills(beyond), "the run is over by then");
        MadeTrace last =
                new MadeTrace(14).visited(MadeTrace.away(13, 20)).drawing(AWAY).reservoirAt(0.5);
        assertEquals(1, refills(last).size());
        MadeTrace cut =
                new MadeTrace(14)
                        .visited(MadeTrace.away(5, 9))
                        .drawing(AWAY)
                        .reservoirAt(0.5)
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 104);
        assertEquals(List.of(), refills(cut), "nothing grows then");
    }

    /** Empty at hours 100 and 200, refilled 10 hours later; the last visits were 20 and 0 h ago. */
    @Test
    void a_reservoir_that_ran_dry_tells_how_often_and_how_long_it_held() {
        MadeTrace trace =
                new MadeTrace(14)
                        .reservoirAt(0.3)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 100)
                        .event(refill(110, 30))
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 201)
                        .event(refill(211, 30))
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 300)
                        .event(refill(305.9, 30));
        Warning dry = ranDry(trace);
        assertEquals(2, dry.measure().value(), 0);
        assertEquals(START.atStartOfDay().plusHours(100), dry.from());
        assertEquals(START.atStartOfDay().plusHours(201), dry.until());
        assertEquals(20, dry.cause().facts().get(Quantity.HELD_WATER), 1e-9);
        assertEquals(START.plusDays(3).atTime(8, 0), dry.cause().facts().on());
        Cure cure = dry.cures().get(0);
        assertEquals(Cure.Kind.FILL_AT_THE_VISIT_BEFORE, cure.kind());
        assertEquals(START.plusDays(3).atTime(8, 0), cure.facts().on());
    }

    @Test
    void one_that_is_emptied_by_a_valve_that_runs_over_wants_the_valve_mended() {
        MadeTrace trace =
                new MadeTrace(14)
                        .reservoirAt(0.3)
                        .event(Event.Kind.OVERFLOW_BEGAN, MadeTrace.TRAY, 99)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 100);
        assertEquals(Cure.Kind.MEND_VALVE, ranDry(trace).cures().get(0).kind());
        MadeTrace later =
                new MadeTrace(14)
                        .reservoirAt(0.3)
                        .event(Event.Kind.OVERFLOW_BEGAN, MadeTrace.TRAY, 101)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 100);
        assertEquals(Cure.Kind.FILL_AT_THE_VISIT_BEFORE, ranDry(later).cures().get(0).kind());
    }

    /** Refilled on day 4, and half of it gone into its trays within the hour of that visit. */
    @Test
    void what_a_raised_valve_took_of_a_refill_is_filled_up_again_behind_it() {
        List<Task> tasks =
                refills(
                        new MadeTrace(14)
                                .visited(MadeTrace.away(5, 9))
                                .drawing(AWAY)
                                .reservoirAt(0.5)
                                .event(refill(104, 20)));
        assertEquals(2, tasks.size());
        assertTrue(tasks.get(0).isDone());
        assertEquals(Cause.Kind.BEFORE_ABSENCE, tasks.get(0).cause().kind());
        assertEquals(10, tasks.get(0).measure().value(), 1e-9);
        assertFalse(tasks.get(1).isDone());
        assertEquals(Cause.Kind.TRAY_TOOK_IT, tasks.get(1).cause().kind());
        assertEquals(16, tasks.get(1).litres(), 1e-9);
    }

    /**
     * Dry at hour 100: the visit before is that of hour 80, when of 32 L 9.6 are there, 2 of them
     * below the outlet; at hour 5 there is none before.
     */
    @Test
    void where_no_refill_is_planned_one_is_advised_for_the_visit_before() {
        MadeTrace trace =
                new MadeTrace(14)
                        .refilled(Reservoir.Refill.When.NEVER)
                        .reservoirAt(0.3)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 100);
        Task task = refills(trace).get(0);
        assertEquals(START.plusDays(3).atTime(8, 0), task.due());
        assertEquals(22.4, task.litres(), 1e-9);
        assertEquals(7.6, task.measure().value(), 1e-9);
        assertEquals(Cause.Kind.NO_REFILL_PLANNED, task.cause().kind());
        assertFalse(task.isDone());
        assertEquals(Cure.Kind.PLAN_REFILLS, ranDry(trace).cures().get(0).kind());
        MadeTrace soon =
                new MadeTrace(14)
                        .refilled(Reservoir.Refill.When.NEVER)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 5);
        assertEquals(START.atTime(5, 0), refills(soon).get(0).due());
        MadeTrace low =
                new MadeTrace(14)
                        .reservoirAt(0.3)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 100);
        assertEquals(List.of(), refills(low), "its rule refills it");
    }

    @Test
    void a_crust_in_a_reservoir_is_told_of_it() {
        Warning crust =
                new MadeTrace(14)
                                .event(Event.Kind.PRECIPITATE, MadeTrace.RESERVOIR, 100)
                                .advice()
                                .warnings()
                                .stream()
                                .filter(w -> w.kind() == Warning.Kind.PRECIPITATE)
                                .findFirst()
                                .orElseThrow();
        assertEquals(MadeTrace.RESERVOIR, crust.vessel());
        assertEquals("gypsum", crust.cause().facts().of());
    }

    /** A flush before it, and the overflow only after it. */
    @Test
    void only_what_runs_over_empties_a_reservoir() {
        MadeTrace trace =
                new MadeTrace(14)
                        .reservoirAt(0.3)
                        .event(Event.Kind.FLUSH, MadeTrace.TRAY, 90)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 100)
                        .event(Event.Kind.OVERFLOW_BEGAN, MadeTrace.TRAY, 101);
        assertEquals(Cure.Kind.FILL_AT_THE_VISIT_BEFORE, ranDry(trace).cures().get(0).kind());
    }

    /** 0.3 L an hour from the start on: 30 L last 100 h, a week takes 50.4. */
    @Test
    void a_reservoir_that_is_too_small_is_told_its_litres_and_its_days() {
        Visits mondays = Rigs.onWeekdays(DayOfWeek.MONDAY);
        MadeTrace trace = new MadeTrace(14).visited(mondays).drawing(h -> 3e-4);
        Warning outgrown =
                trace.advice().warnings().stream()
                        .filter(w -> w.kind() == Warning.Kind.OUTGROWN)
                        .findFirst()
                        .orElseThrow();
        assertEquals(START.atStartOfDay(), outgrown.from());
        assertEquals(START.plusDays(14).atStartOfDay(), outgrown.until());
        assertEquals(100 / 24.0, outgrown.measure().value(), 1e-9);
        assertEquals(7, outgrown.measure().limit(), 1e-9);
        Cure larger = outgrown.cures().get(0);
        assertEquals(Cure.Kind.LARGER_RESERVOIR, larger.kind());
        assertEquals(50.4, larger.facts().get(Quantity.ENOUGH), 1e-9);
        assertEquals(30, larger.facts().get(Quantity.USABLE), 1e-9);
        MadeTrace dry =
                new MadeTrace(14)
                        .visited(mondays)
                        .drawing(h -> 3e-4)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 110);
        assertEquals(
                List.of(Cure.Kind.LARGER_RESERVOIR, Cure.Kind.VISIT_MORE_OFTEN),
                ranDry(dry).cures().stream().map(Cure::kind).toList(),
                "it was full at the visit before");
        MadeTrace low =
                new MadeTrace(14)
                        .visited(mondays)
                        .reservoirAt(0.5)
                        .drawing(h -> 3e-4)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 110);
        assertEquals(
                List.of(Cure.Kind.FILL_AT_THE_VISIT_BEFORE, Cure.Kind.LARGER_RESERVOIR),
                ranDry(low).cures().stream().map(Cure::kind).toList());
    }

    /** No visit lies before hour 5; it was full at the start. */
    @Test
    void what_runs_dry_before_anybody_came_though_full_at_the_start_is_looked_at_sooner() {
        MadeTrace trace =
                new MadeTrace(14)
                        .reservoirAt(0.3)
                        .with(TraySeries.INFLOW, h -> 0)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 5);
        assertEquals(Cure.Kind.VISIT_MORE_OFTEN, ranDry(trace).cures().get(0).kind());
    }
}
