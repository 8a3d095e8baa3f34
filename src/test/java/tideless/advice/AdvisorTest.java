package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.rig.ValveFaults;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Rigs;
import tideless.sim.Simulation;

/** Judgement on rigs whose answer can be worked out by hand. */
class AdvisorTest {
    private static Advice advise(
            int days, double litresPerDay, Reservoir.Refill.When when, Visits visits) {
        return advise(days, Rigs.reservoir(0.1, 0.32, when), Rigs.valve(), litresPerDay, visits);
    }

    private static Advice advise(
            int days, Reservoir reservoir, Filling filling, double litresPerDay, Visits visits) {
        Tray tray = Rigs.tray("tray", filling, Rigs.drinking(litresPerDay), 0);
        Scenario written = Rigs.scenario(days, 600, List.of(reservoir), List.of(tray), visits);
        Reservoir endless =
                reservoir.withRefill(
                        new Reservoir.Refill(Reservoir.Refill.When.WHEN_EMPTY, 0, Pouring.FEED));
        Scenario twin = Rigs.scenario(days, 600, List.of(endless), List.of(tray), visits);
        return Advisor.advise(Simulation.run(written), Simulation.run(twin));
    }

    private static Optional<Warning> warning(Advice advice, Warning.Kind kind) {
        return advice.warnings().stream().filter(w -> w.kind() == kind).findFirst();
    }

    private static List<Task> tasks(Advice advice, Task.Kind kind) {
        return advice.tasks().stream().filter(t -> t.kind() == kind).toList();
    }

    /** 30 L usable, 3 L a day, refilled below half: below 15 L on day 6, the 12th, a Saturday. */
    @Test
    void a_refill_falls_on_the_first_visit_that_finds_the_reservoir_low() {
        Advice advice =
                advise(
                        14,
                        3.0,
                        Reservoir.Refill.When.LOW_AT_VISIT,
                        Rigs.onWeekdays(DayOfWeek.values()));
        List<Task> refills = tasks(advice, Task.Kind.REFILL);
        assertEquals(LocalDate.of(2026, 9, 12), refills.get(0).due().toLocalDate());
        // Five days and eight hours at 3 L are 16 L.
        assertEquals(16, refills.get(0).litres(), 0.05);
        assertEquals(2, refills.size());
        assertTrue(advice.warnings().isEmpty(), advice.warnings().toString());
    }

    @Test
    void a_full_reservoir_lasts_as_long_as_usable_over_thirst() {
        Advice advice = advise(30, 3.0, Reservoir.Refill.When.WHEN_EMPTY, Rigs.nobody());
        Sizing sizing = advice.sizings().get(0);
        assertEquals(30, sizing.usableLitres(), 1e-9);
        assertEquals(10, sizing.daysWhenFull().get(5), 0.01);
        assertEquals(1, sizing.daysWhenFull().get(29), 1e-9, "capped at the end of the run");
    }

    @Test
    void a_reservoir_that_does_not_reach_the_next_visit_is_outgrown_and_told_its_size() {
        Advice advice =
                advise(
                        29,
                        5.0,
                        Reservoir.Refill.When.EVERY_VISIT,
                        Rigs.onWeekdays(DayOfWeek.MONDAY));
        Warning outgrown = warning(advice, Warning.Kind.OUTGROWN).orElseThrow();
        // 7 days x 5 L = 35 L between Mondays; 30 L are there.
        assertEquals(35, advice.sizings().get(0).enoughUsableLitres(), 0.05);
        assertEquals(LocalDate.of(2026, 9, 7), outgrown.from().toLocalDate());
        assertEquals(Cure.Kind.LARGER_RESERVOIR, outgrown.cures().get(0).kind());
        assertEquals(35, outgrown.cures().get(0).facts().get(Quantity.ENOUGH), 0.05);
        assertTrue(warning(advice, Warning.Kind.RAN_DRY).isPresent());
    }

    @Test
    void a_reservoir_that_reaches_every_visit_is_not_outgrown() {
        Advice advice =
                advise(
                        28,
                        4.0,
                        Reservoir.Refill.When.EVERY_VISIT,
                        Rigs.onWeekdays(DayOfWeek.MONDAY));
        assertNull(advice.sizings().get(0).outgrownFrom());
        assertFalse(warning(advice, Warning.Kind.OUTGROWN).isPresent());
        assertFalse(warning(advice, Warning.Kind.RAN_DRY).isPresent());
    }

    /** 60 % are left on Friday, so nobody refills; the holiday then outlasts it. */
    @Test
    void when_a_full_reservoir_would_have_lasted_the_cure_is_the_visit_before() {
        Visits school =
                new Visits(
                        java.util.Set.of(DayOfWeek.MONDAY, DayOfWeek.FRIDAY),
                        8 * 3600,
                        List.of(
                                new Visits.Absence(
                                        LocalDate.of(2026, 9, 12), LocalDate.of(2026, 9, 20))),
                        Visits.Flush.NEVER);
        Advice advice = advise(18, 2.8, Reservoir.Refill.When.LOW_AT_VISIT, school);
        Warning dry = warning(advice, Warning.Kind.RAN_DRY).orElseThrow();
        assertEquals(Cure.Kind.FILL_AT_THE_VISIT_BEFORE, dry.cures().get(0).kind());
        assertEquals(LocalDateTime.of(2026, 9, 11, 8, 0), dry.cures().get(0).facts().on());
        assertFalse(warning(advice, Warning.Kind.OUTGROWN).isPresent());
    }

    @Test
    void a_reservoir_nobody_refills_gets_one_dated_refill() {
        Advice advice = advise(25, 2.0, Reservoir.Refill.When.NEVER, Rigs.nobody());
        List<Task> refills = tasks(advice, Task.Kind.REFILL);
        assertEquals(1, refills.size());
        assertEquals(LocalDate.of(2026, 9, 22), refills.get(0).due().toLocalDate());
        assertEquals(30, refills.get(0).litres(), 1e-6);
    }

    /** "Never" was the grower's word: a refill at a visit cures nothing until one is planned. */
    @Test
    void where_the_rule_is_never_the_cure_is_to_plan_refills_and_no_visit() {
        Visits mondays = Rigs.onWeekdays(DayOfWeek.MONDAY);
        Advice advice = advise(25, 2.0, Reservoir.Refill.When.NEVER, mondays);
        Warning dry = warning(advice, Warning.Kind.RAN_DRY).orElseThrow();
        List<Cure.Kind> kinds = dry.cures().stream().map(Cure::kind).toList();
        assertEquals(Cure.Kind.PLAN_REFILLS, kinds.get(0));
        assertFalse(kinds.contains(Cure.Kind.FILL_AT_THE_VISIT_BEFORE));
    }

    /** A seat of 0.2 mm passes 3 mL a minute at most, 4 L a day; the tray drinks 12. */
    @Test
    void a_valve_that_cannot_keep_up_is_called_starved() {
        Filling.ByValve thin = new TestValve().seatBoreM(2e-4).make();
        Advice advice =
                advise(
                        2,
                        Rigs.reservoir(0.1, 0.32, Reservoir.Refill.When.NEVER),
                        thin,
                        12,
                        Rigs.nobody());
        Warning starved = warning(advice, Warning.Kind.STARVED_VALVE).orElseThrow();
        assertEquals(VesselId.tray("tray"), starved.vessel());
        assertEquals(LocalDate.of(2026, 9, 7), starved.from().toLocalDate());
    }

    /**
     * A valve that hangs open for the third day lets a reservoir and more run over the rim. The
     * plants drink 1 L a day and the tray fills from 5 to 9 cm, 8 L: 9 L in the longest day, of 30
     * usable, and a full reservoir lasts a month less what that took.
     */
    @Test
    void a_valve_stuck_open_for_a_day_is_no_need_of_a_larger_reservoir() {
        ValveFaults open =
                new ValveFaults(
                        ValveFaults.Stuck.OPEN,
                        Rigs.START.plusDays(3),
                        Rigs.START.plusDays(4),
                        0,
                        Rigs.START,
                        0,
                        Rigs.START);
        Advice advice =
                advise(
                        12,
                        Rigs.reservoir(0.1, 0.32, Reservoir.Refill.When.EVERY_VISIT),
                        TestValve.of(Rigs.valve()).faults(open).make(),
                        1.0,
                        Rigs.onWeekdays(DayOfWeek.values()));
        Warning overflow = warning(advice, Warning.Kind.OVERFLOW).orElseThrow();
        assertEquals(Rigs.START.plusDays(3), overflow.until().toLocalDate(), "not the run's end");
        assertTrue(warning(advice, Warning.Kind.OUTGROWN).isEmpty());
        assertEquals(9, advice.sizings().get(0).enoughUsableLitres(), 0.1);
    }

    /**
     * The seat stands 70 cm above the bench and the reservoir's floor 60 cm: below 10 cm nothing
     * comes. Of 32 cm full on 0.1 m2, 22 L feed the tray and not the 30 above the outlet; 3 L a day
     * are 7.3 days, and somewhat more, for the last litres come ever slower while the tray falls.
     */
    @Test
    void what_stands_below_the_seat_is_not_usable() {
        Filling.ByValve high = new TestValve().seatAboveFloorM(0.70).make();
        Advice advice =
                advise(
                        20,
                        Rigs.reservoir(0.1, 0.32, Reservoir.Refill.When.NEVER),
                        high,
                        3.0,
                        Rigs.nobody());
        Sizing sizing = advice.sizings().get(0);
        assertEquals(22, sizing.usableLitres(), 1e-9);
        double days = sizing.daysWhenFull().get(0);
        assertTrue(days >= 22 / 3.0 && days < 9, "was " + days);
    }

    /** A rig that runs over empties any reservoir: a larger one is no cure. */
    @Test
    void a_reservoir_emptied_by_a_valve_that_hangs_open_is_not_called_outgrown() {
        ValveFaults open =
                new ValveFaults(
                        ValveFaults.Stuck.OPEN,
                        Rigs.START,
                        Rigs.START.plusDays(99),
                        0,
                        Rigs.START,
                        0,
                        Rigs.START);
        Advice advice =
                advise(
                        14,
                        Rigs.reservoir(0.1, 0.32, Reservoir.Refill.When.LOW_AT_VISIT),
                        TestValve.of(Rigs.valve()).faults(open).make(),
                        1.0,
                        Rigs.onWeekdays(DayOfWeek.MONDAY));
        assertTrue(warning(advice, Warning.Kind.OVERFLOW).isPresent());
        assertTrue(warning(advice, Warning.Kind.OUTGROWN).isEmpty());
        Warning dry = warning(advice, Warning.Kind.RAN_DRY).orElseThrow();
        assertEquals(List.of(Cure.of(Cure.Kind.MEND_VALVE)), dry.cures());
    }

    @Test
    void tasks_stand_in_order_of_date_with_reservoirs_first() {
        List<Task> tasks =
                new ArrayList<>(
                        advise(
                                        40,
                                        3.0,
                                        Reservoir.Refill.When.LOW_AT_VISIT,
                                        Rigs.onWeekdays(DayOfWeek.values()))
                                .tasks());
        for (int i = 1; i < tasks.size(); i++) {
            assertFalse(tasks.get(i).due().isBefore(tasks.get(i - 1).due()));
        }
        assertTrue(tasks.size() > 3);
    }
}
