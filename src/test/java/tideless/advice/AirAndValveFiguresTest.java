package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;

/** Figures and days of what air and valves are told by, worked out by hand. */
class AirAndValveFiguresTest {
    private static final LocalDate DAY_1 = Rigs.START;

    private static Optional<Warning> warning(MadeTrace trace, Warning.Kind kind) {
        Advice advice = trace.advice();
        return Stream.concat(advice.warnings().stream(), advice.minor().stream())
                .filter(w -> w.kind() == kind)
                .findFirst();
    }

    private static Warning one(MadeTrace trace, Warning.Kind kind) {
        return warning(trace, kind).orElseThrow();
    }

    /** Of 16 hours a day. */
    private static IntToDoubleFunction lit(IntToDoubleFunction molPerM2H) {
        return h -> h % 24 < 16 ? molPerM2H.applyAsDouble(h) : 0;
    }

    // ---- light ---------------------------------------------------------------------------------

    /** Lettuce wants 12 mol a day; 13 days of 16 * 0.5 = 8 and one of 16 * 1.5 = 24 mol. */
    @Test
    void low_light_is_the_mean_of_a_fortnight_from_the_first_day() {
        Warning dim =
                one(
                        new MadeTrace(20).with(TraySeries.LIGHT, lit(h -> h < 13 * 24 ? 0.5 : 1.5)),
                        Warning.Kind.LOW_LIGHT);
        assertEquals((13 * 8 + 24) / 14.0, dim.measure().value(), 1e-9);
        assertEquals(12, dim.measure().limit(), 1e-9);
        assertEquals(Measure.Side.AT_LEAST, dim.measure().side());
        assertEquals(DAY_1.atStartOfDay(), dim.from());
        assertEquals(DAY_1.plusDays(14).atStartOfDay(), dim.until());
    }

    /**
     * 16 * 0.7 = 11.2 mol a day for a fortnight, 9.6 for the next, then 16; a rest is no fortnight.
     */
    @Test
    void low_light_lasts_while_fortnights_are_short_and_tells_the_darkest_of_them() {
        Warning dim =
                one(
                        new MadeTrace(50)
                                .with(
                                        TraySeries.LIGHT,
                                        lit(h -> h < 14 * 24 ? 0.7 : h < 28 * 24 ? 0.6 : 1)),
                        Warning.Kind.LOW_LIGHT);
        assertEquals(9.6, dim.measure().value(), 1e-9);
        assertEquals(DAY_1.plusDays(28).atStartOfDay(), dim.until());
    }

    @Test
    void of_a_shorter_stay_it_is_the_mean_of_its_whole_days() {
        MadeTrace cut =
                new MadeTrace(20)
                        .with(TraySeries.LIGHT, lit(h -> h < 5 * 24 ? 0.5 : 9))
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 5 * 24 + 12);
        Warning dim = one(cut, Warning.Kind.LOW_LIGHT);
        assertEquals(8, dim.measure().value(), 1e-9);
        assertEquals(DAY_1.plusDays(5).atStartOfDay(), dim.until());
        MadeTrace hours =
                new MadeTrace(20)
                        .with(TraySeries.LIGHT, h -> 0)
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 23);
        assertTrue(warning(hours, Warning.Kind.LOW_LIGHT).isEmpty());
    }

    @Test
    void a_crop_that_follows_is_told_of_its_own_fortnight() {
        MadeTrace then =
                new MadeTrace(30)
                        .with(TraySeries.LIGHT, lit(h -> h < 120 ? 1.2 : 0.5))
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 120)
                        .then(120, true);
        Warning dim = one(then, Warning.Kind.LOW_LIGHT);
        assertEquals(8, dim.measure().value(), 1e-9);
        assertEquals(DAY_1.plusDays(5).atStartOfDay(), dim.from());
        assertEquals(DAY_1.plusDays(19).atStartOfDay(), dim.until());
    }

    // ---- warm solution -------------------------------------------------------------------------

    /** Lettuce's solution is to stay below 25 degC; warm from the first hour on. */
    @Test
    void warm_solution_is_told_from_its_first_hour_with_the_warmest_of_it() {
        Warning warm =
                one(
                        new MadeTrace(14)
                                .with(TraySeries.SOLUTION_TEMP, h -> h < 6 ? 27 : h == 9 ? 28 : 20),
                        Warning.Kind.WARM_SOLUTION);
        assertEquals(DAY_1.atTime(1, 0), warm.from());
        assertEquals(DAY_1.atTime(10, 0), warm.until());
        assertEquals(28, warm.measure().value(), 0);
        assertEquals(25, warm.measure().limit(), 0);
    }

    @ParameterizedTest
    @CsvSource({
        "25, 25, SHADE_THE_TRAY",
        "25.01, 25.01, COOLER_ROOM",
        "20, 30.1, COOLER_ROOM", // 12 h of each: 25.05
        "20, 29.9, SHADE_THE_TRAY"
    })
    void shade_helps_where_the_air_of_that_day_is_cooler_than_the_limit(
            double nightC, double dayC, Cure.Kind cure) {
        MadeTrace warm =
                new MadeTrace(14)
                        .with(TraySeries.SOLUTION_TEMP, h -> h >= 48 ? 27 : 20)
                        .with(
                                TraySeries.AIR_TEMP,
                                h -> h < 48 || h >= 72 ? 22 : h % 24 < 12 ? nightC : dayC);
        assertEquals(List.of(Cure.of(cure)), one(warm, Warning.Kind.WARM_SOLUTION).cures());
    }

    // ---- air -----------------------------------------------------------------------------------

    /** Days 4, 5 and 6; the farthest beyond is told, whichever day that is. */
    @ParameterizedTest
    @CsvSource({
        "TOO_HOT, 35, 37, 36, 37",
        "TOO_HOT, 37, 36, 35, 37",
        "TOO_COLD, 4, 2, 3, 2",
        "TOO_COLD, 2, 3, 4, 2"
    })
    void the_worst_day_of_all_is_told(
            Warning.Kind kind, double fourth, double fifth, double sixth, double worst) {
        double[] days = {22, 22, 22, 22, fourth, fifth, sixth};
        Warning air =
                one(
                        new MadeTrace(14)
                                .with(
                                        TraySeries.AIR_TEMP,
                                        h -> h / 24 < days.length ? days[h / 24] : 22),
                        kind);
        assertEquals(worst, air.measure().value(), 1e-9);
        assertEquals(
                kind == Warning.Kind.TOO_HOT ? Measure.Side.AT_MOST : Measure.Side.AT_LEAST,
                air.measure().side());
        assertEquals(DAY_1.plusDays(4).atStartOfDay(), air.from());
        assertEquals(DAY_1.plusDays(6).atTime(23, 0), air.until());
    }

    /** A saturated night of 8 h at 22 degC, and a dry day of 16 h: the night alone is damp. */
    @Test
    void damp_is_told_of_dark_hours_and_where_there_are_none_of_the_day() {
        IntToDoubleFunction dry = h -> h % 24 < 16 ? 2000 : 0;
        Warning damp =
                one(
                        new MadeTrace(14)
                                .with(TraySeries.LIGHT, lit(h -> 0.9))
                                .with(TraySeries.AIR_DEFICIT, dry),
                        Warning.Kind.TOO_HUMID);
        assertEquals(1, damp.measure().value(), 1e-9);
        assertEquals(
                List.of(),
                new MadeTrace(14)
                        .with(TraySeries.LIGHT, h -> 0.6)
                        .with(TraySeries.AIR_DEFICIT, dry)
                        .warned());
        // A light of exactly the least counts as dark: the same damp night.
        assertTrue(
                warning(
                                new MadeTrace(14)
                                        .with(TraySeries.LIGHT, h -> h % 24 < 16 ? 0.9 : 0.0036)
                                        .with(TraySeries.AIR_DEFICIT, dry),
                                Warning.Kind.TOO_HUMID)
                        .isPresent());
    }

    @Test
    void air_is_judged_until_the_crop_is_cut() {
        for (int cutDay : new int[] {6, 7}) {
            MadeTrace trace =
                    new MadeTrace(14)
                            .with(TraySeries.AIR_TEMP, h -> h >= 96 ? 40 : 22)
                            .event(Event.Kind.HARVEST, MadeTrace.TRAY, cutDay * 24 + 8);
            assertEquals(
                    cutDay == 7, warning(trace, Warning.Kind.TOO_HOT).isPresent(), "" + cutDay);
        }
    }

    // ---- valves --------------------------------------------------------------------------------

    /** Set at 50 mm with a band of 5 mm: wide open at 45 mm, starved below 42 mm. */
    @Test
    void a_starved_tray_is_told_by_its_lowest_level_and_where_the_valve_is_wide() {
        Warning starved =
                one(
                        new MadeTrace(14)
                                .with(
                                        TraySeries.LEVEL,
                                        h -> h < 100 || h > 140 ? 0.05 : h == 130 ? 0.03 : 0.04),
                        Warning.Kind.STARVED_VALVE);
        assertEquals(30, starved.measure().value(), 1e-9);
        assertEquals(45, starved.measure().limit(), 1e-9);
        assertEquals(Measure.Side.AT_LEAST, starved.measure().side());
        assertEquals(DAY_1.plusDays(4).atTime(5, 0), starved.from()); // the 101st hour
        assertEquals(DAY_1.plusDays(5).atTime(21, 0), starved.until());
    }

    /** 0.4 L in each of five hours. */
    @Test
    void what_ran_over_is_told_in_litres_with_the_overflow() {
        Warning over =
                one(
                        new MadeTrace(14)
                                .with(TraySeries.SPILL, h -> h >= 100 && h < 105 ? 4e-4 : 0)
                                .event(Event.Kind.OVERFLOW_BEGAN, MadeTrace.TRAY, 100),
                        Warning.Kind.OVERFLOW);
        assertEquals(2, over.measure().value(), 1e-9);
        assertEquals(
                1000 * new MadeTrace(14).trace().trays().get(0).tray().overflowM(),
                over.cause().facts().get(Quantity.LEVEL),
                1e-9);
    }

    /** A week of heat makes leaf of cool seasons bolt, and fruit crops not. */
    @ParameterizedTest
    @CsvSource({
        "lettuce, 7, BOLTS_IN_HEAT",
        "lettuce, 6, AIR_OF_THE_ROOM",
        "basil, 7, AIR_OF_THE_ROOM",
        "dwarf-tomato, 7, AIR_OF_THE_ROOM"
    })
    void weeks_of_heat_make_leaf_of_cool_seasons_bolt(String crop, int days, Cause.Kind cause) {
        MadeTrace trace =
                new MadeTrace(14).of(crop).with(TraySeries.AIR_TEMP, h -> h < days * 24 ? 37 : 22);
        assertEquals(
                cause,
                trace.advice().warnings().stream()
                        .filter(w -> w.kind() == Warning.Kind.TOO_HOT)
                        .findFirst()
                        .orElseThrow()
                        .cause()
                        .kind());
    }

    /** Spinach is a leaf crop whose file bears 14 hours (Chun et al. 2001: bolts beyond). */
    @Test
    void spinach_bolts_in_days_too_long() {
        assertEquals(
                Cause.Kind.BOLTS_IN_LONG_DAYS,
                new MadeTrace(14)
                        .of("spinach").advice().warnings().stream()
                                .filter(w -> w.kind() == Warning.Kind.DAY_TOO_LONG)
                                .findFirst()
                                .orElseThrow()
                                .cause()
                                .kind());
    }

    /** Lettuce wants 12 mol/m2 a day: 15 % less is a note, a little less than that a warning. */
    @ParameterizedTest
    @CsvSource({"10.3, true", "10.1, false"})
    void light_a_little_short_is_a_note(double molADay, boolean note) {
        Advice advice =
                new MadeTrace(14)
                        .with(TraySeries.LIGHT, h -> h % 24 < 16 ? molADay / 16 : 0)
                        .advice();
        assertEquals(
                note, advice.minor().stream().anyMatch(w -> w.kind() == Warning.Kind.LOW_LIGHT));
        assertEquals(
                !note,
                advice.warnings().stream().anyMatch(w -> w.kind() == Warning.Kind.LOW_LIGHT));
    }

    /** Lettuce grows up to 35 degC: three days with an hour above it, in a mean of 24. */
    @ParameterizedTest
    @CsvSource({
        "lettuce, 35.1, 3, true",
        "lettuce, 34.9, 3, false",
        "lettuce, 35.1, 2, false",
        "dwarf-tomato, 37, 3, false"
    })
    void hours_hotter_than_leaf_grows_at_are_told(
            String crop, double hottestC, int days, boolean told) {
        List<Warning> hot =
                new MadeTrace(14)
                                .of(crop)
                                .with(
                                        TraySeries.AIR_TEMP,
                                        h -> h % 24 == 14 && h < days * 24 ? hottestC : 23)
                                .advice()
                                .warnings()
                                .stream()
                                .filter(w -> w.kind() == Warning.Kind.TOO_HOT)
                                .toList();
        assertEquals(told ? 1 : 0, hot.size());
        hot.forEach(w -> assertEquals(Cause.Kind.BURNS_IN_HOT_HOURS, w.cause().kind()));
    }

    /** 15 days in air at which lettuce hardly grows: of 46 a note, of 44 a warning. */
    @ParameterizedTest
    @CsvSource({"lettuce, 46, true", "lettuce, 44, false"})
    void cold_in_which_a_hardy_crop_stands_still_for_a_part_of_its_time_is_a_note(
            String crop, int days, boolean note) {
        Advice advice =
                new MadeTrace(days)
                        .of(crop)
                        .with(TraySeries.AIR_TEMP, h -> h < 15 * 24 ? 6 : 20)
                        .advice();
        assertEquals(
                note, advice.minor().stream().anyMatch(w -> w.kind() == Warning.Kind.TOO_COLD));
        assertEquals(
                !note, advice.warnings().stream().anyMatch(w -> w.kind() == Warning.Kind.TOO_COLD));
    }
}
