package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;

/** What a jug does and mends in a tray that is topped up by hand. */
class ToppedUpTest {
    private static MadeTrace byHand() {
        return new MadeTrace(14).filled(new Filling.ByHand(0.05, List.of(), Pouring.FEED));
    }

    private static Event topUp(double hour) {
        return new Event(
                Event.Kind.TOP_UP, hour * 3600, MadeTrace.TRAY, 0.004, 0, 0, Double.NaN, 0, "");
    }

    private static Cure firstCure(MadeTrace trace, Warning.Kind kind) {
        return trace.advice().warnings().stream()
                .filter(w -> w.kind() == kind)
                .findFirst()
                .orElseThrow()
                .cures()
                .get(0);
    }

    /** Topped up at eight on the fifth day; the hour before, roots bore water up to 31 mm. */
    @Test
    void roots_drowned_by_a_top_up_are_told_its_visit_and_the_level_they_bore() {
        Cure cure =
                firstCure(
                        byHand().with(TraySeries.USED_TO_LEVEL, h -> h < 104 ? 0.031 : 0.029)
                                .event(topUp(104))
                                .event(Event.Kind.DROWNED, MadeTrace.TRAY, 104.2),
                        Warning.Kind.DROWNED);
        assertEquals(Cure.Kind.TOP_UP_LITTLE_AND_OFTEN, cure.kind());
        assertEquals(31, cure.facts().get(Quantity.LEVEL), 1e-9);
        assertEquals(Rigs.START.plusDays(4).atTime(8, 0), cure.facts().on());
        assertTrue(cure.facts().has(Quantity.RISE));
    }

    @ParameterizedTest
    @CsvSource({"127.9, true", "128.1, false", "103.9, false"})
    void a_top_up_of_the_day_before_or_one_to_come_has_drowned_nothing(
            double drownedHour, boolean named) {
        Cure cure =
                firstCure(
                        byHand().event(topUp(104))
                                .event(Event.Kind.DROWNED, MadeTrace.TRAY, drownedHour),
                        Warning.Kind.DROWNED);
        assertEquals(named, cure.facts().on() != null);
        assertEquals(named, cure.facts().has(Quantity.LEVEL));
    }

    /** Roots bear water up to 70 mm here, and nobody pours to 5 mm. */
    @ParameterizedTest
    @CsvSource({"0.0749, false", "0.0751, true"})
    void a_level_a_hair_above_what_roots_bear_drowns_nobody(double levelM, boolean told) {
        MadeTrace trace =
                byHand().with(TraySeries.LEVEL, h -> h == 105 ? levelM : 0.05)
                        .event(topUp(104))
                        .event(Event.Kind.DROWNED, MadeTrace.TRAY, 104.2);
        assertEquals(told, trace.warned().contains(Warning.Kind.DROWNED));
    }

    /** Above the limit of 3 mS/cm from hour 100 on, until a top-up; 4.5 is half as much again. */
    private static boolean isToldSalty(double ec, int topUpHour, double ecAfter) {
        MadeTrace trace =
                byHand().with(
                                TraySeries.EC,
                                h -> h < 100 ? 2 : topUpHour > 0 && h >= topUpHour ? ecAfter : ec);
        if (topUpHour > 0) {
            trace.event(topUp(topUpHour));
        }
        return trace.warned().contains(Warning.Kind.TOO_SALTY);
    }

    @ParameterizedTest
    @CsvSource({
        "4.49, 150, 3.00, false",
        "4.51, 150, 3.00, true",
        "4.49, 150, 3.01, true",
        "4.49, 0, 3.00, true",
        // Borne for four days; a day of more is worth a word.
        "3.5, 219, 2.00, false",
        "3.5, 220, 2.00, true"
    })
    void a_tray_that_its_next_top_up_mends_is_not_too_salty(
            double ec, int topUpHour, double ecAfter, boolean told) {
        assertEquals(told, isToldSalty(ec, topUpHour, ecAfter));
    }

    /** At the visit at 128 h the meter shows 4 mS/cm; a jug that brings it to 2.9 is enough. */
    @ParameterizedTest
    @CsvSource({"2.9, false", "3.1, true"})
    void one_thing_is_said_per_visit_a_jug_or_a_flush(double ecAfter, boolean flushed) {
        MadeTrace trace =
                byHand().with(TraySeries.EC, h -> h < 100 ? 2 : h < 128 ? 4 : ecAfter)
                        .event(topUp(128));
        assertEquals(
                flushed,
                trace.advice().tasks().stream().anyMatch(t -> t.kind() == Task.Kind.FLUSH));
    }

    /** Left too strong to drink, its roots deep in it: it wants water, not cups hung lower. */
    @Test
    void roots_that_hang_in_what_is_too_strong_are_not_to_hang_lower() {
        MadeTrace strong =
                byHand().with(TraySeries.ROOT_TIP, h -> 0.01)
                        .with(TraySeries.LEVEL, h -> h < 100 ? 0.05 : 0.02)
                        .event(Event.Kind.STRANDED, MadeTrace.TRAY, 101);
        List<Cure> cures =
                strong.advice().warnings().stream()
                        .filter(w -> w.kind() == Warning.Kind.STRANDED)
                        .findFirst()
                        .orElseThrow()
                        .cures();
        assertFalse(cures.contains(Cure.of(Cure.Kind.HANG_CUP_LOWER)));
        assertTrue(cures.contains(Cure.of(Cure.Kind.VISIT_MORE_OFTEN)));
    }

    private static List<Warning> crusts(MadeTrace trace, String mineral, double... hours) {
        for (double hour : hours) {
            trace.event(
                    new Event(
                            Event.Kind.PRECIPITATE,
                            hour * 3600,
                            MadeTrace.TRAY,
                            0,
                            0,
                            0,
                            Double.NaN,
                            0,
                            mineral));
        }
        return trace.advice().warnings().stream()
                .filter(w -> w.kind() == Warning.Kind.PRECIPITATE)
                .toList();
    }

    /** Before roots have moved any pH it is the feed's doing, whatever hangs above it. */
    @Test
    void what_falls_out_of_the_feed_at_once_is_told_of_any_crop() {
        assertEquals(1, crusts(new MadeTrace(14), "calcium phosphate", 3).size());
        assertEquals(0, crusts(new MadeTrace(14), "calcium phosphate", 5).size());
        assertEquals(1, crusts(new MadeTrace(14).of("kale"), "calcium phosphate", 3).size());
    }

    @Test
    void a_crust_is_told_of_the_crop_in_whose_time_it_fell() {
        List<Warning> told = crusts(new MadeTrace(14).then(200, true), "gypsum", 100);
        assertEquals(1, told.size());
        List<Warning> both = crusts(new MadeTrace(14).then(200, true), "gypsum", 100, 250);
        assertEquals(2, both.size());
    }

    /** 25 degC is the lettuce's limit. */
    @Test
    void very_warm_solution_is_told_before_salt_and_warm_solution_after_it() {
        Warning salty = warning(Warning.Kind.TOO_SALTY, 3);
        Warning warm = warning(Warning.Kind.WARM_SOLUTION, 29.9);
        Warning veryWarm = warning(Warning.Kind.WARM_SOLUTION, 30.1);
        Warning airless = warning(Warning.Kind.SHORT_OF_AIR, 1);
        assertTrue(Warning.GRAVEST_FIRST.compare(veryWarm, salty) < 0);
        assertTrue(Warning.GRAVEST_FIRST.compare(salty, warm) < 0);
        assertTrue(Warning.GRAVEST_FIRST.compare(airless, veryWarm) < 0);
    }

    private static Warning warning(Warning.Kind kind, double value) {
        return new Warning(
                kind,
                MadeTrace.TRAY,
                Rigs.START.atStartOfDay(),
                Rigs.START.atStartOfDay(),
                Measure.atMost(value, 25, Unit.CELSIUS),
                Cause.of(Cause.Kind.WARM_HOLDS_LITTLE_OXYGEN),
                List.of());
    }
}
