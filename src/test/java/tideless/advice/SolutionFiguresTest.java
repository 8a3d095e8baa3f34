package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Limits;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;
import tideless.solution.Component;
import tideless.solution.ElectricalConductivity;

/** Figures of what is told of a solution, worked by hand: a tray of 0.2 m2, 50 mm and 2 mS/cm. */
class SolutionFiguresTest {
    private static Task task(MadeTrace trace, Task.Kind kind) {
        List<Task> found = trace.advice().tasks().stream().filter(t -> t.kind() == kind).toList();
        assertEquals(1, found.size(), kind.name());
        return found.get(0);
    }

    private static Warning warning(MadeTrace trace, Warning.Kind kind) {
        List<Warning> found =
                trace.advice().warnings().stream().filter(w -> w.kind() == kind).toList();
        assertEquals(1, found.size(), kind.name());
        return found.get(0);
    }

    private static Event changed(Event.Kind kind, double ecMsPerCm) {
        return new Event(kind, 80 * 3600, MadeTrace.TRAY, 0.004, 0, 0.003, ecMsPerCm, 0, "");
    }

    // 4 L in, 3 L out at 3.2 of at most 3. Litres: 2 mm of 0.2 m2 are 0.4, 3 % of 4 L 0.12.
    @Test
    void a_flush_has_its_litres_its_reading_and_how_well_both_are_known() {
        Task flush = task(new MadeTrace(14).event(changed(Event.Kind.FLUSH, 3.2)), Task.Kind.FLUSH);
        assertEquals(4, flush.litres(), 1e-12);
        assertEquals(3, flush.drainLitres(), 1e-12);
        assertEquals(Measure.atMost(3.2, 3, Unit.MS_PER_CM), flush.measure());
        Facts facts = flush.cause().facts();
        assertEquals(2, facts.get(Quantity.EC_AFTER));
        assertEquals(0.16, facts.get(Quantity.METER_DOUBT), 1e-12);
        assertEquals(Math.sqrt(0.16 + 0.0144), facts.get(Quantity.LITRES_DOUBT), 1e-9);
    }

    @Test
    void fresh_solution_is_for_a_lean_tray_below_its_band_and_for_one_nutrient_within_it() {
        for (double ec : new double[] {0.99, 1.01}) {
            Task fresh =
                    task(
                            new MadeTrace(14).event(changed(Event.Kind.FRESH_SOLUTION, ec)),
                            Task.Kind.FRESH_SOLUTION);
            assertEquals(Measure.atLeast(ec, 1, Unit.MS_PER_CM), fresh.measure());
            assertEquals(
                    ec < 1 ? Cause.Kind.CROP_TAKES_IT_UP : Cause.Kind.ONE_RUNS_OUT,
                    fresh.cause().kind());
        }
    }

    /**
     * Of a feed of half the strength each reading is lean: a nutrient that runs out is the reason.
     */
    @Test
    void a_feed_below_the_band_is_not_changed_for_a_reading_below_it() {
        Task fresh =
                task(
                        new MadeTrace(14)
                                .limited(new Limits(1.7, 3, 5.5, 6.5, 6, 11))
                                .fed(Rigs.FEED.times(0.5))
                                .event(changed(Event.Kind.FRESH_SOLUTION, 0.6)),
                        Task.Kind.FRESH_SOLUTION);
        assertEquals(Measure.of(0.6, Unit.MS_PER_CM), fresh.measure());
        assertEquals(Cause.Kind.ONE_RUNS_OUT, fresh.cause().kind());
    }

    @Test
    void a_change_that_nobody_makes_is_told_with_all_the_tray_holds() {
        MadeTrace salty = new MadeTrace(14).with(TraySeries.EC, h -> h >= 100 && h < 124 ? 3.2 : 2);
        Task flush = task(salty, Task.Kind.FLUSH);
        assertFalse(flush.isDone());
        assertEquals(10, flush.litres(), 1e-9);
        assertEquals(10, flush.drainLitres(), 1e-9);
        assertEquals(3.2, flush.measure().value());
        assertEquals(
                ElectricalConductivity.at25MsPerCm(Rigs.FEED),
                flush.cause().facts().get(Quantity.EC_AFTER),
                1e-12);
    }

    private static boolean crust(String mineral, double hour) {
        return new MadeTrace(14)
                .event(
                        new Event(
                                Event.Kind.PRECIPITATE,
                                hour * 3600,
                                MadeTrace.TRAY,
                                0,
                                0,
                                0,
                                Double.NaN,
                                0,
                                mineral))
                .warned()
                .contains(Warning.Kind.PRECIPITATE);
    }

    // How the roots move the pH of this feed is open, so lime may fall or not.
    @Test
    void gypsum_is_told_at_any_ph_and_lime_only_where_the_ph_is_sure() {
        assertTrue(crust("gypsum", 100));
        assertFalse(crust("calcite (lime scale)", 100));
        assertFalse(crust("gypsum", 336));
    }

    // Of 2 mS/cm, wanted from 2.5 on: later it reads 2.6, so that it leaves salt behind.
    @Test
    void a_weak_feed_that_leaves_salt_behind_is_not_called_lean() {
        for (double later : new double[] {2.49, 2.51}) {
            MadeTrace weak =
                    new MadeTrace(14)
                            .limited(new Limits(2.5, 4, 5.5, 6.5, 6, 11))
                            .with(TraySeries.EC, h -> h < 200 ? 2 : later);
            boolean lean = weak.warned().contains(Warning.Kind.TOO_LEAN);
            assertEquals(later < 2.5, lean);
            if (lean) {
                Warning told = warning(weak, Warning.Kind.TOO_LEAN);
                assertEquals(Cause.Kind.FEED_IS_LEAN, told.cause().kind());
                assertEquals(2.5, told.cures().get(0).facts().get(Quantity.FEED_EC));
            }
        }
    }

    @Test
    void sodium_is_told_with_what_feed_and_water_bring() {
        Warning sodium =
                warning(
                        new MadeTrace(14).holding(Rigs.FEED.with(Component.NA, 6.2)),
                        Warning.Kind.TOO_MUCH_SODIUM);
        assertEquals(Measure.atMost(6.2, 6, Unit.MMOL_PER_L), sodium.measure());
        assertEquals(0.5, sodium.cause().facts().get(Quantity.FEED_CONTENT));
        assertEquals(0.5, sodium.cause().facts().get(Quantity.WATER_CONTENT));
    }

    // 5.4 mmol/L of a strong base: beyond what 15 % of doubt takes back.
    @Test
    void a_ph_that_rises_for_sure_is_laid_to_the_anions_taken() {
        Warning high =
                warning(
                        new MadeTrace(14)
                                .holding(Rigs.FEED.with(Component.NA, 5.9))
                                .with(TraySeries.PH, h -> 8.5),
                        Warning.Kind.PH_OUT);
        assertEquals(Measure.atMost(8.5, 6.5, Unit.PH), high.measure());
        assertEquals(Cause.Kind.ANIONS_TAKEN, high.cause().kind());
        assertEquals(List.of(Cure.of(Cure.Kind.ACID_BY_METER)), high.cures());
    }

    /** A band from 5.5: 0.2 below it for a week is a note, and less than a week is none. */
    @ParameterizedTest
    @CsvSource({"5.29, 168, true", "5.29, 167, false", "5.31, 168, false"})
    void a_little_acid_for_a_week_is_a_note(double ph, int hours, boolean noted) {
        Advice advice =
                new MadeTrace(14)
                        .with(TraySeries.PH, h -> h >= 24 && h < 24 + hours ? ph : 6)
                        .advice();
        assertEquals(noted, advice.minor().stream().anyMatch(w -> w.kind() == Warning.Kind.PH_OUT));
        assertTrue(advice.warnings().stream().noneMatch(w -> w.kind() == Warning.Kind.PH_OUT));
    }

    /** A note either way, but of what roots do not bear with a cure and not as costing nothing. */
    @ParameterizedTest
    @CsvSource({"5.01, true", "4.99, false"})
    void a_day_of_more_acid_than_roots_bear_costs_more_than_nothing(double ph, boolean isBorne) {
        Advice advice =
                new MadeTrace(14)
                        .with(TraySeries.PH, h -> h / 24 == 3 ? ph : h / 24 < 9 ? 5.2 : 6)
                        .advice();
        Warning note =
                advice.minor().stream()
                        .filter(w -> w.kind() == Warning.Kind.PH_OUT)
                        .findFirst()
                        .orElseThrow();
        assertEquals(isBorne, note.cause().facts().has(Quantity.LOSS));
        assertEquals(isBorne ? List.of() : List.of(Cure.of(Cure.Kind.BASE_BY_METER)), note.cures());
    }

    @Test
    void what_runs_short_is_told_with_what_is_left_of_it() {
        Warning shortOf =
                warning(
                        new MadeTrace(14)
                                .holding(
                                        Rigs.FEED.with(Component.K, 0.1).with(Component.SO4, 0.05)),
                        Warning.Kind.SHORT_OF_ONE);
        assertEquals("potassium", shortOf.cause().facts().of());
        assertEquals(Measure.atLeast(0.1, 0.15, Unit.MMOL_PER_L), shortOf.measure());
        assertEquals(
                List.of(
                        Cure.Kind.FRESH_SOLUTION_SOONER,
                        Cure.Kind.OTHER_RECIPE,
                        Cure.Kind.MORE_SOLUTION_PER_PLANT),
                shortOf.cures().stream().map(Cure::kind).toList());
    }
}
