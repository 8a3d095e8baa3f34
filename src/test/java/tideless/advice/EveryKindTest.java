package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tideless.rig.Filling;
import tideless.rig.Limits;
import tideless.rig.Pouring;
import tideless.rig.Tending;
import tideless.rig.TestDeck;
import tideless.rig.TestValve;
import tideless.rig.Visits;
import tideless.scenario.Crops;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;

/** Each kind of warning and task on a trace written by hand, beside one just short of it. */
class EveryKindTest {
    /** A kind, a trace that raises it, and one just before the limit. */
    private record Case(
            Warning.Kind kind,
            Function<MadeTrace, MadeTrace> beyond,
            Function<MadeTrace, MadeTrace> shortOf) {}

    private static IntToDoubleFunction during(IntPredicate when, double then, double else_) {
        return h -> when.test(h) ? then : else_;
    }

    /** Hours from 100 on, so many. */
    private static IntPredicate hours(int count) {
        return h -> h >= 100 && h < 100 + count;
    }

    private static Function<MadeTrace, MadeTrace> series(
            TraySeries series, int hours, double then, double usual) {
        return t -> t.with(series, during(hours(hours), then, usual));
    }

    private static Function<MadeTrace, MadeTrace> event(Event.Kind kind) {
        return t -> t.event(kind, MadeTrace.TRAY, 100);
    }

    private static Function<MadeTrace, MadeTrace> drunkDownFor(double hours) {
        return t ->
                t.event(MadeTrace.drunkDown(100))
                        .event(Event.Kind.SALT_BORNE, MadeTrace.TRAY, 100 + hours);
    }

    private static Function<MadeTrace, MadeTrace> holding(Component ion, double molPerM3) {
        return t -> t.holding(Rigs.FEED.with(ion, molPerM3));
    }

    private static final Function<MadeTrace, MadeTrace> SOUND = t -> t;

    private static Function<MadeTrace, MadeTrace> cupsAt(double m) {
        return t -> t.rigged(tray -> tray.cupBottomM(m));
    }

    private static final List<Case> CASES =
            List.of(
                    // A level under 2 mm for three hours.
                    new Case(
                            Warning.Kind.DRIED_OUT,
                            series(TraySeries.LEVEL, 3, 0.0019, 0.05),
                            series(TraySeries.LEVEL, 2, 0.0019, 0.05)),
                    new Case(
                            Warning.Kind.DRIED_OUT,
                            series(TraySeries.LEVEL, 9, 0.0019, 0.05),
                            series(TraySeries.LEVEL, 9, 0.0021, 0.05)),
                    new Case(Warning.Kind.STRANDED, event(Event.Kind.STRANDED), SOUND),
                    new Case(Warning.Kind.WILTED, event(Event.Kind.WILTED), SOUND),
                    new Case(Warning.Kind.DROWNED, event(Event.Kind.DROWNED), SOUND),
                    new Case(Warning.Kind.DIED, event(Event.Kind.DIED), SOUND),
                    new Case(Warning.Kind.OVERFLOW, event(Event.Kind.OVERFLOW_BEGAN), SOUND),
                    new Case(
                            Warning.Kind.RAN_DRY,
                            t -> t.event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 100),
                            event(Event.Kind.OUTLET_UNCOVERED)),
                    // Setting 50 mm less band 5 less 3: 42 mm, for a day.
                    new Case(
                            Warning.Kind.STARVED_VALVE,
                            series(TraySeries.LEVEL, 24, 0.0419, 0.05),
                            series(TraySeries.LEVEL, 24, 0.0421, 0.05)),
                    new Case(
                            Warning.Kind.STARVED_VALVE,
                            series(TraySeries.LEVEL, 24, 0.0419, 0.05),
                            series(TraySeries.LEVEL, 23, 0.0419, 0.05)),
                    // Limit 3 and 5 % for the meter: 3.15 mS/cm, for a day.
                    new Case(
                            Warning.Kind.TOO_SALTY,
                            series(TraySeries.EC, 24, 3.16, 2),
                            series(TraySeries.EC, 24, 3.14, 2)),
                    new Case(
                            Warning.Kind.TOO_SALTY,
                            series(TraySeries.EC, 24, 3.16, 2),
                            series(TraySeries.EC, 23, 3.16, 2)),
                    // Salt in the dregs of a tray is want of water: a fifth of 50 mm.
                    new Case(
                            Warning.Kind.TOO_SALTY,
                            t -> t.with(TraySeries.EC, h -> 9).with(TraySeries.LEVEL, h -> 0.0101),
                            t -> t.with(TraySeries.EC, h -> 9).with(TraySeries.LEVEL, h -> 0.0099)),
                    // Limit 1 less 5 %: 0.95 mS/cm, for three days.
                    new Case(
                            Warning.Kind.TOO_LEAN,
                            series(TraySeries.EC, 72, 0.949, 2),
                            series(TraySeries.EC, 72, 0.951, 2)),
                    new Case(
                            Warning.Kind.TOO_LEAN,
                            series(TraySeries.EC, 72, 0.949, 2),
                            series(TraySeries.EC, 71, 0.949, 2)),
                    // Before the canopy closes half is enough.
                    new Case(
                            Warning.Kind.TOO_LEAN,
                            t ->
                                    t.with(TraySeries.EC, h -> 0.9)
                                            .with(TraySeries.LEAF_AREA_INDEX, h -> 1.01),
                            t ->
                                    t.with(TraySeries.EC, h -> 0.9)
                                            .with(TraySeries.LEAF_AREA_INDEX, h -> 0.99)),
                    new Case(
                            Warning.Kind.SHORT_OF_ONE,
                            holding(Component.K, 0.149),
                            holding(Component.K, 0.151)),
                    new Case(
                            Warning.Kind.TOO_MUCH_SODIUM,
                            holding(Component.NA, 6.01),
                            holding(Component.NA, 5.99)),
                    new Case(
                            Warning.Kind.TOO_MUCH_CHLORIDE,
                            holding(Component.CL, 11.01),
                            holding(Component.CL, 10.99)),
                    // Sodium without its partner is a strong base: a week beyond 6.5 and 0.5.
                    new Case(
                            Warning.Kind.PH_OUT,
                            t ->
                                    t.holding(Rigs.FEED.with(Component.NA, 5.9))
                                            .with(TraySeries.PH, h -> h < 7 * 24 ? 8.5 : 6),
                            t ->
                                    t.holding(Rigs.FEED.with(Component.NA, 5.9))
                                            .with(TraySeries.PH, h -> h < 6 * 24 ? 8.5 : 6)),
                    new Case(Warning.Kind.PRECIPITATE, event(Event.Kind.PRECIPITATE), SOUND),
                    // Lettuce: 25 degC and a kelvin of doubt, for six hours.
                    new Case(
                            Warning.Kind.WARM_SOLUTION,
                            series(TraySeries.SOLUTION_TEMP, 6, 26.1, 20),
                            series(TraySeries.SOLUTION_TEMP, 5, 26.1, 20)),
                    new Case(
                            Warning.Kind.WARM_SOLUTION,
                            series(TraySeries.SOLUTION_TEMP, 6, 26.1, 20),
                            series(TraySeries.SOLUTION_TEMP, 6, 26, 20)),
                    new Case(
                            Warning.Kind.SALT_WILTED,
                            event(Event.Kind.SALT_WILTED),
                            drunkDownFor(7)),
                    // Strong because it is little: want of water, where it lasts over six hours.
                    new Case(Warning.Kind.WILTED, drunkDownFor(6.1), drunkDownFor(6)),
                    new Case(
                            Warning.Kind.SHORT_OF_AIR,
                            t ->
                                    t.event(Event.Kind.SHORT_OF_AIR, MadeTrace.TRAY, 100)
                                            .with(TraySeries.OXYGEN_RICHEST, h -> h < 6 ? 0.1 : 8),
                            t ->
                                    t.event(Event.Kind.SHORT_OF_AIR, MadeTrace.TRAY, 100)
                                            .with(TraySeries.OXYGEN_RICHEST, h -> h < 5 ? 0.1 : 8)),
                    new Case(Warning.Kind.DRIED_OUT, event(Event.Kind.DRIED_OUT), SOUND),
                    // Cups wet by more than 30 mm for a week.
                    new Case(
                            Warning.Kind.CUPS_UNDER,
                            cupsAt(0.019).andThen(series(TraySeries.LEVEL, 168, 0.05, 0.03)),
                            cupsAt(0.019).andThen(series(TraySeries.LEVEL, 167, 0.05, 0.03))),
                    new Case(Warning.Kind.CUPS_UNDER, cupsAt(0.019), cupsAt(0.021)),
                    // A raft holds its cups as it was made.
                    new Case(
                            Warning.Kind.CUPS_UNDER,
                            cupsAt(0.019),
                            cupsAt(0.019)
                                    .andThen(
                                            t ->
                                                    t.rigged(
                                                            tray ->
                                                                    tray.cupBottomM(0.019)
                                                                            .deck(
                                                                                    TestDeck
                                                                                            .floatingDownToM(
                                                                                                    0))))),
                    room(Warning.Kind.TOO_COLD, TraySeries.AIR_TEMP, 3, 22),
                    room(Warning.Kind.TOO_HOT, TraySeries.AIR_TEMP, 37, 22),
                    room(Warning.Kind.TOO_HUMID, TraySeries.AIR_DEFICIT, 20, 1000),
                    room(Warning.Kind.SET_TOO_COLD, TraySeries.AIR_TEMP, 11, 22),
                    room(Warning.Kind.SET_TOO_HOT, TraySeries.AIR_TEMP, 36, 22),
                    new Case(
                            Warning.Kind.TOO_STILL,
                            t -> t.with(TraySeries.LIGHT, lit(16, 2.0)),
                            t -> t.with(TraySeries.LIGHT, lit(16, 0.8))),
                    new Case(
                            Warning.Kind.DAY_TOO_LONG,
                            t -> t.of("dwarf-tomato").with(TraySeries.LIGHT, lit(24, 0.8)),
                            t -> t.of("dwarf-tomato").with(TraySeries.LIGHT, lit(16, 1.2))),
                    new Case(
                            Warning.Kind.TOO_CROWDED,
                            t -> t.rigged(CrowdingTest.planted(14, Tending.NONE)),
                            t -> t.rigged(CrowdingTest.planted(13, Tending.NONE))),
                    // Lettuce: 12 mol/m2/day, and a twentieth of it less is as good.
                    new Case(
                            Warning.Kind.LOW_LIGHT,
                            t -> t.with(TraySeries.LIGHT, lit(16, 0.712)),
                            t -> t.with(TraySeries.LIGHT, lit(16, 0.713))));

    /** Three days out of what the crop bears, against two: a flowering dwarf tomato. */
    private static Case room(Warning.Kind kind, TraySeries series, double then, double usual) {
        return new Case(
                kind,
                t -> flowering(t).with(series, during(h -> h >= 96 && h < 168, then, usual)),
                t -> flowering(t).with(series, during(h -> h >= 96 && h < 144, then, usual)));
    }

    private static MadeTrace flowering(MadeTrace trace) {
        return trace.of("dwarf-tomato").event(Event.Kind.FLOWERING, MadeTrace.TRAY, 24);
    }

    /** Light of so many hours a day, mol/m2 in each. */
    private static IntToDoubleFunction lit(int hours, double molPerM2) {
        return during(h -> h % 24 < hours, molPerM2, 0);
    }

    @TestFactory
    Stream<DynamicTest> a_warning_is_raised_beyond_its_limit_and_not_before_it() {
        return CASES.stream()
                .map(
                        c ->
                                DynamicTest.dynamicTest(
                                        c.kind().name(),
                                        () -> {
                                            assertTrue(raises(c.beyond(), c.kind()));
                                            assertFalse(raises(c.shortOf(), c.kind()));
                                        }));
    }

    private static boolean raises(Function<MadeTrace, MadeTrace> change, Warning.Kind kind) {
        return change.apply(new MadeTrace(14)).warned().contains(kind);
    }

    @Test
    void a_sound_rig_is_warned_of_nothing() {
        assertEquals(List.of(), new MadeTrace(14).warned());
    }

    /** Outgrown needs a thirst for the reservoir: its rigs stand in AdvisorTest. */
    @Test
    void every_kind_of_warning_has_its_case() {
        Set<Warning.Kind> raised = EnumSet.of(Warning.Kind.OUTGROWN);
        CASES.forEach(c -> raised.add(c.kind()));
        assertEquals(EnumSet.allOf(Warning.Kind.class), raised);
    }

    private static List<Task> tasks(MadeTrace trace, Task.Kind kind) {
        return trace.advice().tasks().stream().filter(t -> t.kind() == kind).toList();
    }

    @Test
    void every_kind_of_task_is_raised_and_none_without_its_event() {
        MadeTrace busy =
                new MadeTrace(30)
                        .of("dwarf-tomato")
                        .event(Event.Kind.REFILL, MadeTrace.RESERVOIR, 32)
                        .drawing(h -> 1e-3)
                        .event(Event.Kind.FRESH_SOLUTION, MadeTrace.TRAY, 56)
                        .event(Event.Kind.FLUSH, MadeTrace.TRAY, 80)
                        .event(Event.Kind.FLOWERING, MadeTrace.TRAY, 120)
                        .event(Event.Kind.THINNED, MadeTrace.TRAY, 144)
                        .event(Event.Kind.SPACED, MadeTrace.TRAY, 168)
                        .event(Event.Kind.FIRST_RIPE, MadeTrace.TRAY, 240)
                        .event(Event.Kind.LEAVES_PICKED, MadeTrace.TRAY, 264)
                        .event(Event.Kind.TOPPED, MadeTrace.TRAY, 288)
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 600);
        List<Task.Kind> raised = new ArrayList<>();
        busy.advice().tasks().forEach(t -> raised.add(t.kind()));
        new MadeTrace(14)
                .filled(new Filling.ByHand(0.05, List.of(), Pouring.FEED))
                .event(Event.Kind.TOP_UP, MadeTrace.TRAY, 32)
                .advice()
                .tasks()
                .forEach(t -> raised.add(t.kind()));
        moved().advice().tasks().forEach(t -> raised.add(t.kind()));
        new MadeTrace(14)
                .event(Event.Kind.HARVEST, MadeTrace.TRAY, 200)
                .then(200, true)
                .advice()
                .tasks()
                .forEach(t -> raised.add(t.kind()));
        raised.add(
                Task.Kind.TRANSPLANT); // needs roots and a level: its rigs stand in SeedlingsTest
        assertEquals(EnumSet.allOf(Task.Kind.class), EnumSet.copyOf(raised));
        assertEquals(
                List.of(Task.Kind.SOW, Task.Kind.MIX, Task.Kind.SET_OUT, Task.Kind.READ_METERS),
                new MadeTrace(14).advice().tasks().stream().map(Task::kind).toList());
    }

    private static MadeTrace moved() {
        LocalDate day = Rigs.START.plusDays(4);
        return new MadeTrace(14)
                .filled(new TestValve().moves(List.of(new Filling.Move(day, 0.04))).make())
                .event(Event.Kind.VALVE_MOVED, MadeTrace.TRAY, 4 * 24 + 8);
    }

    @Test
    void a_planned_move_is_a_task_from_one_setting_to_another() {
        Task move = tasks(moved(), Task.Kind.MOVE_VALVE).get(0);
        assertEquals(40, move.measure().value(), 1e-9);
        assertEquals(50, move.cause().facts().get(Quantity.SETTING), 1e-9);
        assertEquals(Rigs.START.plusDays(4).atTime(8, 0), move.due());
    }

    /** Setting 40 mm from day 4 on less band 5 less 3: 32 mm, for a day from hour 100 on. */
    @Test
    void a_valve_is_starved_below_the_setting_it_was_moved_to() {
        Warning.Kind starved = Warning.Kind.STARVED_VALVE;
        assertFalse(
                moved().with(TraySeries.LEVEL, during(hours(24), 0.0321, 0.05))
                        .warned()
                        .contains(starved));
        assertTrue(
                moved().with(TraySeries.LEVEL, during(hours(24), 0.0319, 0.05))
                        .warned()
                        .contains(starved));
    }

    /** 0.1 m2 x 0.32 m and 0.2 m2 x 0.05 m: 32 L and 10 L. */
    @Test
    void the_first_filling_is_told_in_litres() {
        assertEquals(42, tasks(new MadeTrace(14), Task.Kind.MIX).get(0).litres(), 1e-9);
    }

    /** The fruit grows 1 g an hour: 168 g a week. */
    @Test
    void picking_is_told_by_the_week() {
        MadeTrace ripe =
                new MadeTrace(30)
                        .of("dwarf-tomato")
                        .event(Event.Kind.FIRST_RIPE, MadeTrace.TRAY, 240);
        Task pick = tasks(ripe, Task.Kind.PICK).get(0);
        assertEquals(168, pick.measure().value(), 1e-9);
        assertEquals(LocalDateTime.of(2026, 9, 17, 8, 0), pick.due());
    }

    @Test
    void nobody_is_told_to_pick_when_nobody_comes_any_more() {
        MadeTrace ripe =
                new MadeTrace(30)
                        .of("dwarf-tomato")
                        .event(Event.Kind.FIRST_RIPE, MadeTrace.TRAY, 29 * 24 + 9);
        assertEquals(List.of(), tasks(ripe, Task.Kind.PICK));
    }

    // Warnings that a change, a refill or the water itself makes needless.

    private static MadeTrace saltyUntilFlushed(int flushedHour) {
        return new MadeTrace(14)
                .with(TraySeries.EC, during(h -> h >= 100 && h < 200, 3.16, 2))
                .event(Event.Kind.FLUSH, MadeTrace.TRAY, flushedHour);
    }

    /** Salty from hour 100 to 199: at 3 hours before the last 96 nothing lasts a day. */
    @Test
    void salt_that_is_flushed_within_four_days_is_a_task_and_no_warning() {
        assertFalse(saltyUntilFlushed(200).warned().contains(Warning.Kind.TOO_SALTY));
        // Flushed at hour 110 the next 90 hours are salty again, and nobody comes.
        assertTrue(saltyUntilFlushed(110).warned().contains(Warning.Kind.TOO_SALTY));
        assertTrue(saltyUntilFlushed(300).warned().contains(Warning.Kind.TOO_SALTY));
    }

    /** A tray that wants 3 mS/cm, fed with less, and left at 2.5 for four days. */
    private static MadeTrace leanThen(double laterMsPerCm) {
        return new MadeTrace(14)
                .limited(new Limits(3, 5, 5.5, 6.5, 6, 11))
                .with(TraySeries.EC, h -> h < 96 ? 2.5 : laterMsPerCm);
    }

    @Test
    void a_feed_that_leaves_salt_behind_is_not_too_lean() {
        assertTrue(leanThen(2.9).warned().contains(Warning.Kind.TOO_LEAN));
        assertFalse(leanThen(3.1).warned().contains(Warning.Kind.TOO_LEAN));
        assertTrue(
                leanThen(3.1)
                        .holding(Rigs.FEED.with(Component.K, 0.14))
                        .warned()
                        .contains(Warning.Kind.TOO_LEAN));
    }

    @Test
    void a_crust_in_the_dregs_or_after_the_crop_is_not_told() {
        Warning.Kind crust = Warning.Kind.PRECIPITATE;
        MadeTrace low = new MadeTrace(14).with(TraySeries.LEVEL, h -> 0.0099);
        assertFalse(
                low.event(Event.Kind.PRECIPITATE, MadeTrace.TRAY, 100).warned().contains(crust));
        MadeTrace cut = new MadeTrace(14).event(Event.Kind.HARVEST, MadeTrace.TRAY, 90);
        assertFalse(
                cut.event(Event.Kind.PRECIPITATE, MadeTrace.TRAY, 100).warned().contains(crust));
    }

    private static boolean ranDry(double untilRefilledHours) {
        return new MadeTrace(14)
                .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 100)
                .event(Event.Kind.REFILL, MadeTrace.RESERVOIR, 100 + untilRefilledHours)
                .warned()
                .contains(Warning.Kind.RAN_DRY);
    }

    @Test
    void a_reservoir_may_be_empty_for_less_than_six_hours_before_its_refill() {
        assertFalse(ranDry(5.9));
        assertTrue(ranDry(6));
    }

    // First cures that have figures.

    private static Cure firstCure(MadeTrace trace, Warning.Kind kind) {
        return trace.advice().warnings().stream()
                .filter(w -> w.kind() == kind)
                .findFirst()
                .orElseThrow()
                .cures()
                .get(0);
    }

    private static MadeTrace shortOfAir(double settingM) {
        return new MadeTrace(14)
                .filled(new TestValve().settingM(settingM).make())
                .event(Event.Kind.SHORT_OF_AIR, MadeTrace.TRAY, 100)
                .with(TraySeries.OXYGEN_RICHEST, h -> 0.1);
    }

    /** 20 mm lower, but not below 40 mm: then air has to come in by itself. */
    @Test
    void roots_short_of_air_want_a_lower_level_where_enough_is_left() {
        Cure lower = firstCure(shortOfAir(0.0601), Warning.Kind.SHORT_OF_AIR);
        assertEquals(Cure.Kind.LOWER_LEVEL, lower.kind());
        assertEquals(40.1, lower.facts().get(Quantity.LEVEL), 1e-9);
        Cure bubbles = firstCure(shortOfAir(0.0599), Warning.Kind.SHORT_OF_AIR);
        assertEquals(Cure.Kind.AIR_STONE, bubbles.kind());
    }

    /** 14 days of 24 h at 0.1 L transpired and 0.01 L evaporated an hour: 36.96 L; 10 L were in. */
    @Test
    void a_sealed_tray_that_dries_out_is_told_the_litres_of_its_whole_crop() {
        Cure deeper =
                firstCure(
                        new MadeTrace(14)
                                .filled(new Filling.Sealed())
                                .with(TraySeries.THIRST, h -> 1e-4)
                                .with(TraySeries.EVAPORATION, h -> 1e-5)
                                .with(TraySeries.LEVEL, h -> h > 300 ? 0.001 : 0.05),
                        Warning.Kind.DRIED_OUT);
        assertEquals(Cure.Kind.DEEPER_VESSEL, deeper.kind());
        assertEquals(36.96, deeper.facts().get(Quantity.ENOUGH), 1e-6);
        assertEquals(10, deeper.facts().get(Quantity.USABLE), 1e-9);
    }

    @Test
    void a_sealed_tray_short_of_potassium_is_never_told_to_be_renewed() {
        MadeTrace sealed =
                new MadeTrace(14)
                        .filled(new Filling.Sealed())
                        .holding(Rigs.FEED.with(Component.K, 0.149));
        for (Warning warning : sealed.advice().warnings()) {
            assertFalse(
                    warning.cures().contains(Cure.of(Cure.Kind.FRESH_SOLUTION_SOONER)),
                    warning.toString());
        }
    }

    /** The feed reads 2.1; sodium chloride of 5.0 mmol/L 0.60, of 5.8 0.69 mS/cm: 29 and 33 %. */
    @Test
    void a_shortage_in_a_feed_crowded_by_its_water_is_cured_by_softer_water() {
        Cure.Kind[] first = new Cure.Kind[3];
        double[] salt = {5.0, 5.8, 5.8};
        double[] potassium = {0, 0, 2.2}; // a third of the feed's 7
        for (int i = 0; i < 3; i++) {
            Composition water =
                    Composition.WATER
                            .with(Component.NA, salt[i])
                            .with(Component.CL, salt[i])
                            .with(Component.K, potassium[i]);
            MadeTrace hungry =
                    new MadeTrace(14).holding(Rigs.FEED.with(Component.K, 0.149)).from(water);
            first[i] = firstCure(hungry, Warning.Kind.SHORT_OF_ONE).kind();
        }
        assertEquals(Cure.Kind.FRESH_SOLUTION_SOONER, first[0]);
        assertEquals(Cure.Kind.RAIN_WATER, first[1]);
        assertEquals(Cure.Kind.FRESH_SOLUTION_SOONER, first[2]);
    }

    /**
     * 10 L of feed at the start and 0.1 L in and out of every hour. Until the first hour below 0.95
     * (hour 200) the tray has taken all the potassium but 0.1 mmol/L; what it will have drunk by
     * the end is 336/201 of what it has.
     */
    @Test
    void a_stronger_feed_is_as_strong_as_what_was_taken_asks_for() {
        MadeTrace lean =
                new MadeTrace(14)
                        .visited(
                                Rigs.onWeekdays(DayOfWeek.values())
                                        .withFlush(Visits.Flush.AT_LIMIT))
                        .with(TraySeries.TRANSPIRATION, h -> 1e-4)
                        .with(TraySeries.INFLOW, h -> 1e-4)
                        .with(TraySeries.EC, h -> h < 200 ? 2 : 0.9)
                        .holding(Rigs.FEED.with(Component.K, 0.2));
        Cure first = firstCure(lean, Warning.Kind.TOO_LEAN);
        assertEquals(Cure.Kind.STRONGER_FEED, first.kind());
        double feed = ElectricalConductivity.at25MsPerCm(Rigs.FEED);
        double taken = 7 * (10 + 20.1) - 10 * 0.2;
        double times = taken * 336 / 201 / (7 * (10 + 33.6));
        assertEquals(Math.min(3, feed * times), first.facts().get(Quantity.FEED_EC), 1e-9);
        assertTrue(feed * times < 3, "" + times);
    }

    private static Task harvest(Visits visits, double hour, String detail) {
        return harvest(new MadeTrace(30), visits, hour, detail);
    }

    private static Task harvest(MadeTrace made, Visits visits, double hour, String detail) {
        MadeTrace trace =
                made.visited(visits)
                        .event(
                                new Event(
                                        Event.Kind.HARVEST,
                                        hour * 3600,
                                        MadeTrace.TRAY,
                                        0,
                                        0,
                                        0,
                                        Double.NaN,
                                        0,
                                        detail));
        return tasks(trace, Task.Kind.HARVEST).get(0);
    }

    /** 100 g and one more an hour: the sample of the visit of day 9 closes hour 223. */
    @Test
    void a_harvest_before_an_absence_is_told_as_such_with_the_weight_of_that_visit() {
        Task harvest = harvest(MadeTrace.away(10, 20), 9 * 24 + 8, Event.BEFORE_ABSENCE);
        assertEquals(Rigs.START.plusDays(9).atTime(8, 0), harvest.due());
        assertEquals(Cause.Kind.BEFORE_ABSENCE, harvest.cause().kind());
        assertEquals(Rigs.START.plusDays(21).atTime(8, 0), harvest.cause().facts().on());
        assertEquals(100 + 223, harvest.measure().value(), 1e-9);
    }

    /** Limit of lettuce 25 degC; the air of the day from hour 100 a hundredth above or below it. */
    @Test
    void in_air_as_warm_as_the_solution_no_shade_helps() {
        for (boolean isWarmer : new boolean[] {true, false}) {
            MadeTrace trace =
                    new MadeTrace(14)
                            .with(TraySeries.SOLUTION_TEMP, h -> h >= 100 ? 26.1 : 20)
                            .with(
                                    TraySeries.AIR_TEMP,
                                    h -> h >= 100 ? 25 + (isWarmer ? 0.01 : -0.01) : 22);
            Warning warm =
                    trace.advice().warnings().stream()
                            .filter(w -> w.kind() == Warning.Kind.WARM_SOLUTION)
                            .findFirst()
                            .orElseThrow();
            assertEquals(
                    isWarmer ? Cure.Kind.COOLER_ROOM : Cure.Kind.SHADE_THE_TRAY,
                    warm.cures().get(0).kind());
        }
    }

    /** 323 g at day 9: nearly the 358 g that are waited for, and less than nine tenths of 360. */
    @Test
    void a_light_crop_cut_before_an_absence_is_called_light() {
        Task nearly =
                harvest(
                        new MadeTrace(30).wanting(358),
                        MadeTrace.away(10, 20),
                        9 * 24 + 8,
                        Event.BEFORE_ABSENCE);
        assertEquals(Cause.Kind.BEFORE_ABSENCE, nearly.cause().kind());
        Task light =
                harvest(
                        new MadeTrace(30).wanting(360),
                        MadeTrace.away(10, 20),
                        9 * 24 + 8,
                        Event.BEFORE_ABSENCE);
        assertEquals(Cause.Kind.WINDOW_ENDS, light.cause().kind());
        assertEquals(360, light.cause().facts().get(Quantity.WANTED), 0);
    }

    /** The last visit is that of day 29; the absence is long over. */
    @Test
    void a_harvest_at_the_last_visit_is_not_told_as_before_an_absence() {
        Task last = harvest(MadeTrace.away(10, 20), 29 * 24 + 8, Event.BEFORE_ABSENCE);
        assertEquals(Cause.Kind.LAST_VISIT, last.cause().kind());
    }

    @Test
    void a_harvest_at_a_visit_is_told_for_that_visit() {
        Task harvest = harvest(MadeTrace.away(10, 20), 21 * 24 + 8, "");
        assertEquals(Rigs.START.plusDays(21).atTime(8, 0), harvest.due());
        assertEquals(Cause.Kind.READY, harvest.cause().kind());
        assertEquals(100 + 511, harvest.measure().value(), 1e-9);
    }

    /** Nobody cuts at midnight: what is ready when the run ends is cut on its last day. */
    @Test
    void a_harvest_at_the_end_of_a_run_is_told_for_the_last_visit() {
        assertEquals(
                Rigs.START.plusDays(29).atTime(8, 0),
                harvest(MadeTrace.away(10, 20), 30 * 24, "").due());
        assertEquals(
                Rigs.START.plusDays(30).atTime(8, 0),
                harvest(MadeTrace.away(29, 40), 30 * 24, "").due());
    }

    @Test
    void each_caution_is_told_once() {
        List<Caution> told = new ArrayList<>();
        new MadeTrace(30)
                .event(Event.Kind.FLUSH, MadeTrace.TRAY, 80)
                .event(Event.Kind.FLUSH, MadeTrace.TRAY, 104)
                .event(Event.Kind.HARVEST, MadeTrace.TRAY, 600)
                .advice()
                .tasks()
                .forEach(t -> told.addAll(t.cautions()));
        assertEquals(EnumSet.copyOf(told).size(), told.size(), told.toString());
        assertTrue(told.containsAll(List.of(Caution.CHEMICALS, Caution.DRAINED_FEED)));
    }

    // The verdict.

    @Test
    void a_wilt_of_six_hours_is_borne_and_a_longer_one_is_harm() {
        assertTrue(wiltedFor(6).survives());
        Verdict longer = wiltedFor(6.01);
        assertFalse(longer.survives());
        assertEquals(Warning.Kind.WILTED, longer.firstHarm().orElseThrow().kind());
        assertEquals(MadeTrace.TRAY, longer.firstHarm().orElseThrow().vessel());
    }

    private static Verdict wiltedFor(double hours) {
        return new MadeTrace(14)
                .event(Event.Kind.WILTED, MadeTrace.TRAY, 100)
                .event(Event.Kind.RECOVERED, MadeTrace.TRAY, 100 + hours)
                .advice()
                .verdict();
    }

    /** 0.24 L a day, 10 L in the tray, 41 mm at the lowest on day 7: 8.2 L are 820 hours. */
    @Test
    void an_absence_is_told_with_the_day_to_fill_up_and_the_lowest_level() {
        MadeTrace trace =
                new MadeTrace(14)
                        .visited(MadeTrace.away(5, 9))
                        .drawing(h -> 4e-4)
                        .reservoirAt(0.5)
                        .with(TraySeries.LEVEL, h -> h == 7 * 24 ? 0.041 : 0.05);
        Verdict verdict = trace.advice().verdict();
        Verdict.Absence absence = verdict.absences().get(0);
        assertTrue(absence.survives());
        assertEquals(Rigs.START.plusDays(4), absence.fillUpOn());
        assertEquals(0.041, absence.lowestLevelM(), 1e-12);
        assertEquals(MadeTrace.TRAY, absence.lowestIn());
        assertEquals(820, verdict.tightest().orElseThrow().hours(), 1e-6);
    }

    @Test
    void where_nothing_drinks_nothing_survives_an_absence_or_is_filled_up_for() {
        MadeTrace trace =
                new MadeTrace(14).visited(MadeTrace.away(5, 9)).with(TraySeries.THIRST, h -> 0);
        Verdict verdict = trace.advice().verdict();
        assertEquals(List.of(), verdict.waterLeft());
        assertEquals(null, verdict.absences().get(0).fillUpOn());
        assertEquals(null, verdict.absences().get(0).lowestIn());
    }

    /**
     * Air of 22 degC to the optimum of lettuce: after 14 days the days left are those of 20 days'
     * run less six; a crop that died or was not planted waits for nothing.
     */
    @Test
    void days_short_of_ready_fall_by_a_day_a_day() {
        double after14 = daysShort(new MadeTrace(14));
        double after20 = daysShort(new MadeTrace(20));
        assertTrue(after14 > 6, "" + after14);
        assertEquals(6, after14 - after20, 1e-9);
        assertEquals(0, daysShort(new MadeTrace(14).event(Event.Kind.DIED, MadeTrace.TRAY, 100)));
        double cold = daysShort(new MadeTrace(14).with(TraySeries.AIR_TEMP, h -> 1));
        assertEquals(Double.POSITIVE_INFINITY, cold);
    }

    // 100 g and a gram an hour: after 14 days 435 g, 24 more a day. Where nothing more is gained
    // the
    // end of its window comes first, as it does where the weight is far.
    @Test
    void
            a_crop_that_waits_for_a_weight_is_short_of_that_and_one_that_was_cut_or_picked_of_nothing() {
        assertEquals(2, daysShort(new MadeTrace(14).wanting(483)), 1e-9);
        assertEquals(0, daysShort(new MadeTrace(14).wanting(435)), 1e-9);
        double window = daysShort(new MadeTrace(14).wanting(50_000));
        double stage = daysShort(new MadeTrace(14));
        double latestCd = Crops.named("lettuce").harvest().latestCd();
        double firstCd = Crops.named("lettuce").stages().firstHarvestCd();
        assertEquals((latestCd - firstCd) / 18, window - stage, 1e-9); // 22 degC less a base of 4
        double idle =
                daysShort(new MadeTrace(14).wanting(483).with(TraySeries.FRESH_MASS, h -> 100));
        assertEquals(window, idle, 1e-9);
        for (Event.Kind over : List.of(Event.Kind.HARVEST, Event.Kind.LEAVES_PICKED)) {
            assertEquals(0, daysShort(new MadeTrace(14).event(over, MadeTrace.TRAY, 300)));
        }
    }

    private static double daysShort(MadeTrace made) {
        Trace trace = made.trace();
        return RoomFindings.daysShort(trace, trace.plantings(trace.trays().get(0)).get(0));
    }

    @Test
    void an_absence_that_dries_a_tray_out_is_not_survived_and_another_is() {
        MadeTrace trace =
                new MadeTrace(20)
                        .visited(MadeTrace.away(5, 9))
                        .with(TraySeries.LEVEL, h -> h > 7 * 24 && h < 8 * 24 ? 0.001 : 0.05);
        assertFalse(trace.advice().verdict().absences().get(0).survives());
        MadeTrace after = new MadeTrace(20).visited(MadeTrace.away(12, 14));
        after.with(TraySeries.LEVEL, h -> h > 7 * 24 && h < 8 * 24 ? 0.001 : 0.05);
        assertTrue(after.advice().verdict().absences().get(0).survives());
        assertFalse(after.advice().verdict().survives());
    }

    /**
     * 0.2 m2 to 2 mm are 0.4 L; 3 % of the 4 L of the made flush 0.12 L: 0.418 L together. A meter
     * of 5 % reads the 3 mS/cm to 0.15.
     */
    @Test
    void a_flush_tells_how_well_its_litres_and_its_reading_are_known() {
        Task flush =
                tasks(
                                new MadeTrace(14).event(Event.Kind.FLUSH, MadeTrace.TRAY, 80),
                                Task.Kind.FLUSH)
                        .get(0);
        Facts facts = flush.cause().facts();
        assertEquals(Math.sqrt(0.4 * 0.4 + 0.12 * 0.12), facts.get(Quantity.LITRES_DOUBT), 1e-9);
        assertEquals(0.15, facts.get(Quantity.METER_DOUBT), 1e-12);
    }

    /**
     * 10 L at 3.2 mS/cm hold twice the feed's cations, c = 21 mol/m3 of charge, week after week:
     * what the feed brings is taken. So each litre of water takes c off, less its own 0.5 of
     * sodium. The reading goes from that of the feed to 3.2 as c doubles, and is to come to the
     * middle of the feed's and the limit of 3.
     */
    @Test
    void the_first_cure_of_salt_is_water_in_litres() {
        Cure first = salty(1e-4).advice().warnings().get(0).cures().get(0);
        double feedEc = ElectricalConductivity.at25MsPerCm(Rigs.FEED);
        double aimEc = 0.5 * (feedEc + 3);
        double power = Math.log(3.2 / feedEc) / Math.log(2);
        double aim = 42 * Math.pow(aimEc / 3.2, 1 / power);
        assertEquals(Cure.Kind.WATER_IN_THE_NEXT_REFILL, first.kind());
        assertEquals(10 * (42 - aim) / (21 - 0.5), first.facts().get(Quantity.WATER), 1e-6);
        assertEquals(aimEc, first.facts().get(Quantity.EC_AFTER), 1e-9);
    }

    @Test
    void water_is_no_cure_where_nothing_is_drunk() {
        for (Cure cure : salty(0).advice().warnings().get(0).cures()) {
            assertTrue(cure.kind() != Cure.Kind.WATER_IN_THE_NEXT_REFILL);
        }
    }

    /** Salty from day 3 on, with a week and a half to come. */
    private static MadeTrace salty(double drunkM3PerH) {
        return new MadeTrace(30)
                .with(TraySeries.EC, h -> h < 72 ? 2 : 3.2)
                .holding(Rigs.FEED.times(2))
                .with(TraySeries.TRANSPIRATION, h -> drunkM3PerH)
                .with(TraySeries.INFLOW, h -> drunkM3PerH);
    }
}
