package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.crop.RootBreathing;
import tideless.crop.Wilting;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Tending;
import tideless.rig.TestValve;
import tideless.scenario.Crops;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;

/** Figures of levels and roots, worked out by hand. */
class RootFiguresTest {
    private static Warning warning(MadeTrace trace, Warning.Kind kind) {
        return trace.advice().warnings().stream()
                .filter(w -> w.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    /**
     * The level stands at 50 mm; the root tips above it, or at it, for four hours from hour 100.
     */
    @ParameterizedTest
    @CsvSource({"0.0501", "0.05"})
    void hours_stranded_are_those_with_the_level_at_the_tips_or_below(double tipM) {
        // 13 mm of the cup are wet where the valve is set so much above the tips.
        MadeTrace trace =
                new MadeTrace(14)
                        .event(Event.Kind.STRANDED, MadeTrace.TRAY, 100)
                        .with(TraySeries.ROOT_TIP, h -> h >= 100 && h < 104 ? tipM : 0.049);
        Warning stranded = warning(trace, Warning.Kind.STRANDED);
        assertEquals(4, stranded.measure().value(), 0);
        assertEquals(Rigs.START.atStartOfDay().plusHours(100), stranded.from());
        assertEquals(Rigs.START.atStartOfDay().plusHours(104), stranded.until());
        Cure cure = stranded.cures().get(0);
        assertEquals(Cure.Kind.RAISE_LEVEL, cure.kind());
        assertEquals(1000 * tipM + 13, cure.facts().get(Quantity.LEVEL), 1e-9);
    }

    /** Used to 70 mm; above it, not at it, the air roots drown: three hours. */
    @Test
    void hours_drowned_are_those_above_what_the_roots_are_used_to() {
        MadeTrace trace =
                new MadeTrace(14)
                        .event(Event.Kind.DROWNED, MadeTrace.TRAY, 100)
                        .with(
                                TraySeries.LEVEL,
                                h -> h >= 100 && h < 103 ? 0.0801 : h == 103 ? 0.07 : 0.05);
        Warning drowned = warning(trace, Warning.Kind.DROWNED);
        assertEquals(3, drowned.measure().value(), 0);
        assertEquals(Rigs.START.atStartOfDay().plusHours(103), drowned.until());
        Cure cure = drowned.cures().get(0);
        assertEquals(Cure.Kind.RAISE_BY_STEPS, cure.kind());
        assertEquals(
                1000 * Crops.named("lettuce").roots().riseBorneM(),
                cure.facts().get(Quantity.RISE),
                1e-12);
    }

    /** What happens within an hour lasts until its end at the earliest. */
    @Test
    void a_spell_never_ends_before_it_begins() {
        MadeTrace trace = new MadeTrace(14).event(Event.Kind.DROWNED, MadeTrace.TRAY, 100);
        Warning drowned = warning(trace, Warning.Kind.DROWNED);
        assertEquals(1, drowned.measure().value(), 0);
        assertFalse(drowned.until().isBefore(drowned.from()));
    }

    /** 48 mm before the jug, topped up to 50 mm with 0.4 L, 0.1 L of it water. */
    @Test
    void a_top_up_tells_level_mark_and_litres() {
        MadeTrace trace =
                new MadeTrace(14)
                        .filled(new Filling.ByHand(0.05, List.of(), Pouring.FEED))
                        .with(TraySeries.LEVEL, h -> h == 103 ? 0.048 : 0.05)
                        .event(
                                new Event(
                                        Event.Kind.TOP_UP,
                                        104 * 3600,
                                        MadeTrace.TRAY,
                                        0.0004,
                                        0.0001,
                                        0,
                                        Double.NaN,
                                        0,
                                        ""));
        Task task =
                trace.advice().tasks().stream()
                        .filter(t -> t.kind() == Task.Kind.TOP_UP)
                        .findFirst()
                        .orElseThrow();
        assertEquals(48, task.measure().value(), 1e-9);
        assertEquals(50, task.measure().limit(), 1e-9);
        assertEquals(0.4, task.litres(), 1e-9);
        assertEquals(0.1, task.cause().facts().get(Quantity.WATER), 1e-9);
        assertEquals(Rigs.START.plusDays(4).atTime(8, 0), task.due());
    }

    /** Dry for three hours of a kind is dry; the crop cut just before is not. */
    @ParameterizedTest
    @CsvSource({"103, true", "102, false"})
    void only_a_living_crop_dries_out(int cutHour, boolean warned) {
        MadeTrace trace =
                new MadeTrace(14)
                        .with(TraySeries.LEVEL, h -> h >= 100 ? 0.001 : 0.05)
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, cutHour);
        assertEquals(warned, trace.warned().contains(Warning.Kind.DRIED_OUT));
    }

    @Test
    void a_level_of_exactly_a_film_is_not_dry() {
        MadeTrace trace = new MadeTrace(14).with(TraySeries.LEVEL, h -> h >= 100 ? 0.002 : 0.05);
        assertFalse(trace.warned().contains(Warning.Kind.DRIED_OUT));
    }

    /** Told where even the richest oxygen is less than enough, not where it is just enough. */
    @ParameterizedTest
    @CsvSource({"0.999, true", "1.001, false"})
    void want_of_air_is_held_against_the_kindest_figures(double times, boolean warned) {
        double enough = RootBreathing.enoughGPerM3(Crops.named("lettuce").response(), 20);
        MadeTrace trace =
                new MadeTrace(14)
                        .event(Event.Kind.SHORT_OF_AIR, MadeTrace.TRAY, 100)
                        .with(TraySeries.OXYGEN_RICHEST, h -> times * enough);
        assertEquals(warned, trace.warned().contains(Warning.Kind.SHORT_OF_AIR));
    }

    /** The deck and cups have to come down too: 20 mm are left below cups of 21 mm, not of 20. */
    @ParameterizedTest
    @CsvSource({"0.021, LOWER_LEVEL", "0.020, AIR_STONE"})
    void a_lower_level_needs_cups_that_can_follow(double cupM, Cure.Kind first) {
        MadeTrace trace =
                new MadeTrace(14)
                        .filled(new TestValve().settingM(0.07).make())
                        .rigged(t -> t.cupBottomM(cupM))
                        .event(Event.Kind.SHORT_OF_AIR, MadeTrace.TRAY, 100)
                        .with(TraySeries.OXYGEN_RICHEST, h -> 0.1);
        assertEquals(first, warning(trace, Warning.Kind.SHORT_OF_AIR).cures().get(0).kind());
    }

    /** One plant cannot be fewer. */
    @ParameterizedTest
    @CsvSource({"1, false", "2, true"})
    void fewer_plants_are_told_of_several(int plants, boolean told) {
        MadeTrace trace =
                new MadeTrace(14)
                        .rigged(CrowdingTest.planted(plants, Tending.NONE))
                        .event(Event.Kind.SHORT_OF_AIR, MadeTrace.TRAY, 100)
                        .with(TraySeries.OXYGEN_RICHEST, h -> 0.1);
        assertEquals(
                told,
                warning(trace, Warning.Kind.SHORT_OF_AIR)
                        .cures()
                        .contains(Cure.of(Cure.Kind.FEWER_PLANTS)));
    }

    /** As of a valve's level: 20 mm below 70 and 40 mm; what would be less than 30 mm is none. */
    @ParameterizedTest
    @CsvSource({"0.07, LOWER_LEVEL", "0.04, AIR_STONE"})
    void a_level_that_a_hand_keeps_may_be_lower_too(double toM, Cure.Kind first) {
        MadeTrace trace =
                new MadeTrace(14)
                        .filled(new Filling.ByHand(toM, List.of(), Pouring.FEED))
                        .rigged(t -> t.cupBottomM(0.05))
                        .event(Event.Kind.SHORT_OF_AIR, MadeTrace.TRAY, 100)
                        .with(TraySeries.OXYGEN_RICHEST, h -> 0.1);
        assertEquals(first, warning(trace, Warning.Kind.SHORT_OF_AIR).cures().get(0).kind());
    }

    /** Of several recoveries the worst is told. */
    @Test
    void wilting_tells_the_worst_that_it_cost() {
        Wilting.Recovery[] all = Wilting.Recovery.values();
        Wilting.Recovery worst = all[all.length - 1];
        MadeTrace trace =
                new MadeTrace(14)
                        .event(Event.Kind.WILTED, MadeTrace.TRAY, 100)
                        .event(recovered(110, worst))
                        .event(recovered(130, all[0]));
        assertEquals(worst.title(), warning(trace, Warning.Kind.WILTED).cause().facts().of());
    }

    private static Event recovered(double hour, Wilting.Recovery as) {
        return new Event(
                Event.Kind.RECOVERED,
                hour * 3600,
                MadeTrace.TRAY,
                0,
                0,
                0,
                Double.NaN,
                0,
                as.title());
    }

    /**
     * Two centimetres of root a day, an eighth, three, five and seven of them in the plug: 20 mm of
     * air and 3 mm more are grown through on the fourth day. Who strands by then was set out early.
     */
    @Test
    void only_what_strands_before_its_roots_can_be_down_waits_in_the_nursery() {
        Filling low = new TestValve().settingM(0.02).make();
        for (double hour : new double[] {96, 96.1}) {
            MadeTrace trace =
                    new MadeTrace(14)
                            .filled(low)
                            .rigged(t -> t.cupBottomM(0.06))
                            .event(Event.Kind.STRANDED, MadeTrace.TRAY, hour);
            assertEquals(
                    hour <= 96,
                    warning(trace, Warning.Kind.STRANDED).cures().stream()
                            .anyMatch(c -> c.kind() == Cure.Kind.WAIT_IN_NURSERY));
        }
    }

    @Test
    void a_valve_that_hangs_shut_is_freed_where_water_stands_above_it() {
        MadeTrace trace =
                new MadeTrace(14)
                        .event(Event.Kind.WILTED, MadeTrace.TRAY, 100)
                        .with(TraySeries.LEVEL, h -> h >= 90 && h < 110 ? 0.01 : 0.05);
        assertEquals(
                Cure.Kind.WIDER_FEED_LINE,
                warning(trace, Warning.Kind.WILTED).cures().get(0).kind());
        assertTrue(
                warning(trace.reservoirAt(0.05), Warning.Kind.WILTED).cures().stream()
                        .anyMatch(c -> c.kind() == Cure.Kind.REFILL_IN_TIME));
    }

    /**
     * A seedling of a tray that is filled once hangs dry above plenty, is wetted, and dies weeks
     * later over the last tenth of it.
     */
    @Test
    void what_a_crop_died_of_is_cured_and_not_what_it_got_over() {
        MadeTrace trace =
                new MadeTrace(14)
                        .filled(new Filling.Sealed())
                        .event(Event.Kind.STRANDED, MadeTrace.TRAY, 50)
                        .event(Event.Kind.REWETTED, MadeTrace.TRAY, 60)
                        .event(Event.Kind.STRANDED, MadeTrace.TRAY, 200)
                        .event(Event.Kind.WILTED, MadeTrace.TRAY, 210)
                        .event(Event.Kind.DIED, MadeTrace.TRAY, 260)
                        .with(TraySeries.ROOT_TIP, h -> h < 60 ? 0.06 : 0)
                        .with(TraySeries.LEVEL, h -> h < 150 ? 0.05 : 0.005);
        assertEquals(
                Cure.Kind.HANG_CUP_LOWER,
                warning(trace, Warning.Kind.STRANDED).cures().get(0).kind());
        assertTrue(warning(trace, Warning.Kind.DIED).cures().get(0).isLargerVessel());
    }
}
