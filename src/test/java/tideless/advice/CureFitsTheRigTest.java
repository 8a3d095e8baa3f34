package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Limits;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Pouring;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;
import tideless.words.CureWords;

/** What is told to do can be done on the rig it is told for, and would help there. */
class CureFitsTheRigTest {
    private static final LocalDate START = Rigs.START;

    /** What is warned of, and what is noted. */
    private static List<Warning> warnings(MadeTrace trace, Warning.Kind kind) {
        Advice advice = trace.advice();
        return Stream.concat(advice.warnings().stream(), advice.minor().stream())
                .filter(w -> w.kind() == kind)
                .toList();
    }

    private static List<Cure.Kind> cures(MadeTrace trace, Warning.Kind kind) {
        return warnings(trace, kind).get(0).cures().stream().map(Cure::kind).toList();
    }

    private static List<Task> tasks(MadeTrace trace, Task.Kind kind) {
        return trace.advice().tasks().stream().filter(t -> t.kind() == kind).toList();
    }

    // ---- salts ---------------------------------------------------------------------------------

    private static MadeTrace crusts(String... minerals) {
        MadeTrace trace =
                new MadeTrace(14)
                        .holding(Rigs.FEED.with(Component.NA, 5.9))
                        .with(TraySeries.PH, h -> 8.5);
        int hour = 100;
        for (String mineral : minerals) {
            trace.event(
                    new Event(
                            Event.Kind.PRECIPITATE,
                            hour++ * 3600,
                            MadeTrace.TRAY,
                            0,
                            0,
                            0,
                            Double.NaN,
                            0,
                            mineral));
        }
        return trace;
    }

    /** Gypsum falls out in the reservoir and below it: told above; lime of the tray's own stays. */
    @Test
    void a_crust_of_reservoir_and_tray_is_told_once() {
        List<Warning> told =
                warnings(
                        crusts("gypsum").event(Event.Kind.PRECIPITATE, MadeTrace.RESERVOIR, 50),
                        Warning.Kind.PRECIPITATE);
        assertEquals(List.of(MadeTrace.RESERVOIR), told.stream().map(Warning::vessel).toList());
        List<Warning> both =
                warnings(
                        crusts("calcite").event(Event.Kind.PRECIPITATE, MadeTrace.RESERVOIR, 50),
                        Warning.Kind.PRECIPITATE);
        assertEquals(
                List.of(MadeTrace.RESERVOIR, MadeTrace.TRAY),
                both.stream().map(Warning::vessel).toList());
    }

    @Test
    void crusts_that_one_cure_helps_are_one_warning() {
        List<Warning> told =
                warnings(
                        crusts("calcite", "gypsum", "phosphate").from(limed(1)),
                        Warning.Kind.PRECIPITATE);
        assertEquals(2, told.size());
        assertEquals("calcite and phosphate", told.get(0).cause().facts().of());
        assertEquals(START.atStartOfDay().plusHours(100), told.get(0).from());
        assertEquals(START.atStartOfDay().plusHours(102), told.get(0).until());
        assertEquals(Cure.Kind.SOFTER_WATER, told.get(0).cures().get(0).kind());
        assertEquals("gypsum", told.get(1).cause().facts().of());
        assertEquals(Cure.Kind.LEANER_FEED, told.get(1).cures().get(0).kind());
    }

    /** Of so much alkali, meq/L: 1 is what brings lime, and nobody finds softer water than less. */
    private static Composition limed(double meqPerL) {
        return Composition.WATER.with(Component.CA, meqPerL / 2);
    }

    @ParameterizedTest
    @CsvSource({"1.01, SOFTER_WATER", "0.99, ACID_BY_METER"})
    void softer_water_is_told_of_water_that_is_not_soft(double meqPerL, Cure.Kind first) {
        List<Warning> told =
                warnings(crusts("calcite").from(limed(meqPerL)), Warning.Kind.PRECIPITATE);
        assertEquals(first, told.get(0).cures().get(0).kind());
    }

    /** The made feed reads 2.1 mS/cm; lettuce is fed 0.8 to 1.8. */
    @ParameterizedTest
    @CsvSource({"0.01, SALTS_STAY_BEHIND", "-0.01, FEED_IS_STRONG"})
    void a_feed_above_the_limit_is_itself_too_strong(double above, Cause.Kind cause) {
        double feed = ElectricalConductivity.at25MsPerCm(Rigs.FEED);
        MadeTrace trace =
                new MadeTrace(14)
                        .limited(new Limits(1, feed + above, 5.5, 6.5, 6, 11))
                        .with(TraySeries.EC, h -> 3);
        Warning salty = warnings(trace, Warning.Kind.TOO_SALTY).get(0);
        assertEquals(cause, salty.cause().kind());
        Cure cure = salty.cures().get(0);
        assertEquals(Cure.Kind.LEANER_FEED, cure.kind());
        if (above < 0) {
            assertEquals(1, salty.cures().size(), "no lid and no flush helps");
            assertEquals(1.3, cure.facts().get(Quantity.WANTED_EC), 1e-9);
        }
    }

    @Test
    void a_leaner_feed_is_never_told_beyond_the_growers_own_limit() {
        MadeTrace trace =
                new MadeTrace(14)
                        .limited(new Limits(0.5, 0.9, 5.5, 6.5, 6, 11))
                        .with(TraySeries.EC, h -> 3);
        Cure cure = warnings(trace, Warning.Kind.TOO_SALTY).get(0).cures().get(0);
        assertEquals(0.9, cure.facts().get(Quantity.WANTED_EC), 1e-12);
    }

    private static MadeTrace lean(boolean withWater) {
        return new MadeTrace(14)
                .filled(new Filling.ByHand(0.05, List.of(), new Pouring(withWater, List.of())))
                .with(TraySeries.EC, h -> 0.9);
    }

    @Test
    void what_is_filled_with_plain_water_wants_feed_in_its_place() {
        assertEquals(
                List.of(Cure.Kind.FEED_IN_PLACE_OF_WATER, Cure.Kind.FRESH_SOLUTION_SOONER),
                cures(lean(true), Warning.Kind.TOO_LEAN));
        assertFalse(
                cures(lean(false), Warning.Kind.TOO_LEAN)
                        .contains(Cure.Kind.FEED_IN_PLACE_OF_WATER));
    }

    /** Salty from hour 100 on; the visits of Monday and Thursday fall on hours 8, 80, 176. */
    @Test
    void a_flush_that_nobody_does_is_told_with_the_reading_of_its_visit() {
        Visits visits =
                Rigs.onWeekdays(DayOfWeek.MONDAY, DayOfWeek.THURSDAY).withFlush(Visits.Flush.NEVER);
        MadeTrace trace =
                new MadeTrace(30)
                        .visited(visits)
                        .with(TraySeries.EC, h -> h < 100 ? 2 : h == 175 ? 3.9 : 3.2);
        Task flush = tasks(trace, Task.Kind.FLUSH).get(0);
        assertEquals(START.plusDays(7).atTime(8, 0), flush.due());
        assertEquals(3.9, flush.measure().value(), 1e-12);
        assertFalse(flush.isDone());
        MadeTrace over =
                new MadeTrace(30)
                        .visited(visits)
                        .with(TraySeries.EC, h -> h >= 100 && h < 175 ? 3.9 : 2);
        assertEquals(List.of(), tasks(over, Task.Kind.FLUSH), "by the visit it reads well");
    }

    /** 3.2 mS/cm in what is left of 50 mm: filled up it would read 2.99 or 3.01, of 3. */
    @ParameterizedTest
    @CsvSource({"0.0467, 0, true", "0.0471, 0, false", "0.0467, 1, false"})
    void what_dries_while_nobody_is_there_is_topped_up_by_somebody(
            double levelM, int laterDays, boolean meanwhile) {
        MadeTrace trace =
                new MadeTrace(14)
                        .filled(new Filling.ByHand(0.05, List.of(), Pouring.FEED))
                        .visited(MadeTrace.away(4 + laterDays, 9))
                        .with(TraySeries.LEVEL, h -> h < 100 ? 0.05 : levelM)
                        .with(TraySeries.EC, h -> h < 100 ? 2 : 3.2);
        assertEquals(
                meanwhile,
                cures(trace, Warning.Kind.TOO_SALTY).contains(Cure.Kind.TOPPED_UP_MEANWHILE));
    }

    /** Hour 100 lies in day 4. */
    @ParameterizedTest
    @CsvSource({"4, MORE_SOLUTION_PER_PLANT", "5, FRESH_SOLUTION_SOONER"})
    void what_runs_short_while_nobody_is_there_wants_more_solution(int from, Cure.Kind first) {
        MadeTrace trace =
                new MadeTrace(14)
                        .visited(MadeTrace.away(from, 9))
                        .holding(Rigs.FEED.with(Component.K, 0.149));
        trace.with(TraySeries.LEVEL, h -> h < 100 ? 0.009 : 0.05);
        assertEquals(first, cures(trace, Warning.Kind.SHORT_OF_ONE).get(0));
    }

    // ---- air and light -------------------------------------------------------------------------

    /** Lettuce wants 12 mol a day; 18 h of lamp are the most that any crop is given. */
    @ParameterizedTest
    @CsvSource({
        "lettuce, 16, 10.7, MORE_LIGHT",
        "lettuce, 16, 10.6, STRONGER_LAMP",
        "spinach, 14, 11.3, STRONGER_LAMP",
        "spinach, 12, 11.3, MORE_LIGHT"
    })
    void longer_hours_are_told_where_the_crop_bears_them(
            String crop, int hours, double mol, Cure.Kind cure) {
        MadeTrace dim = dim(crop, hours, mol).rigged(t -> t.lamp(lit(hours)));
        assertEquals(List.of(cure), cures(dim, Warning.Kind.LOW_LIGHT));
    }

    private static MadeTrace dim(String crop, int hours, double mol) {
        return new MadeTrace(14)
                .of(crop)
                .with(TraySeries.LIGHT, h -> h % 24 < hours ? mol / hours : 0);
    }

    private static Lamp lit(int hours) {
        return new Lamp(200, 4.57, 0, 6 * 3600, ((6 + hours) % 24) * 3600);
    }

    @Test
    void without_a_lamp_no_lamp_is_to_be_changed() {
        MadeTrace dim = dim("spinach", 15, 10).rigged(t -> t.lamp(Lamp.NONE));
        assertEquals(List.of(Cure.Kind.SUNNIER_PLACE), cures(dim, Warning.Kind.LOW_LIGHT));
        assertEquals(List.of(Cure.Kind.OTHER_SEASON), cures(dim, Warning.Kind.DAY_TOO_LONG));
        MadeTrace lamp = dim("spinach", 15, 10).rigged(t -> t.lamp(lit(15)));
        assertEquals(List.of(Cure.Kind.SHORTER_DAY), cures(lamp, Warning.Kind.DAY_TOO_LONG));
    }

    // ---- water ---------------------------------------------------------------------------------

    private static final Filling BY_HAND = new Filling.ByHand(0.05, List.of(), Pouring.FEED);

    /** Topped up at hour 104, dry at hour 204, next visit at a later hour. */
    private static MadeTrace dry(Visits visits, double cupM) {
        return new MadeTrace(14)
                .filled(BY_HAND)
                .visited(visits)
                .rigged(t -> t.cupBottomM(cupM))
                .event(Event.Kind.TOP_UP, MadeTrace.TRAY, 104)
                .with(TraySeries.LEVEL, h -> h >= 204 && h < 212 ? 0.001 : 0.05);
    }

    /** 10 L lasted 100 h of the 108 h to the next visit (day 8, 20 h late): 10.8 L, 54 mm. */
    @Test
    void a_tray_that_nearly_lasts_is_filled_higher() {
        Visits visits =
                Rigs.onWeekdays(DayOfWeek.FRIDAY, DayOfWeek.TUESDAY).withTimeOfDayS(20 * 3600);
        Warning dry = warnings(dry(visits, 0.05), Warning.Kind.DRIED_OUT).get(0);
        Cure higher = dry.cures().get(0);
        assertEquals(Cure.Kind.FILL_HIGHER, higher.kind());
        assertEquals(54, higher.facts().get(Quantity.LEVEL), 1e-9);
        assertEquals(Cure.Kind.VISIT_MORE_OFTEN, dry.cures().get(1).kind());
    }

    /** The same with cups 10 mm lower: 13 mm of them may be wet, up to 53 mm. */
    @Test
    void a_tray_that_cannot_be_filled_higher_is_to_hold_more() {
        Visits visits =
                Rigs.onWeekdays(DayOfWeek.FRIDAY, DayOfWeek.TUESDAY).withTimeOfDayS(20 * 3600);
        Cure more = warnings(dry(visits, 0.04), Warning.Kind.DRIED_OUT).get(0).cures().get(0);
        assertEquals(Cure.Kind.HOLD_MORE, more.kind());
        assertEquals(10.8, more.facts().get(Quantity.ENOUGH), 1e-9);
        assertEquals(10, more.facts().get(Quantity.USABLE), 1e-9);
    }

    /** Away from day 5 to day 9; dry on day 8: somebody is to come on day 7. */
    @Test
    void who_is_away_has_somebody_top_it_up_the_day_before_it_is_dry() {
        List<Cure> cures =
                warnings(dry(MadeTrace.away(5, 9), 0.04), Warning.Kind.DRIED_OUT).get(0).cures();
        assertEquals(Cure.Kind.TOPPED_UP_MEANWHILE, cures.get(0).kind());
        assertEquals(START.plusDays(7), cures.get(0).facts().on().toLocalDate());
        assertEquals(Cure.Kind.HOLD_MORE, cures.get(1).kind());
        Warning before = warnings(dry(MadeTrace.away(10, 11), 0.04), Warning.Kind.DRIED_OUT).get(0);
        assertEquals(Cure.Kind.HOLD_MORE, before.cures().get(0).kind());
    }

    /**
     * 10 L, of which a fifth is not to be drunk; 3 L on the thirstiest day: two days, and from
     * Tuesday to Friday 3 * 3 / 0.8 = 11.25 L.
     */
    @Test
    void a_tray_drunk_down_between_visits_wants_more_of_them_or_a_larger_vessel() {
        Warning wilted = warnings(drunkDown(3), Warning.Kind.WILTED).get(0);
        assertEquals(Cause.Kind.DRUNK_DOWN, wilted.cause().kind());
        assertEquals(8, wilted.cause().facts().get(Quantity.LEVEL), 1e-9);
        Cure visits = wilted.cures().get(0);
        assertEquals(Cure.Kind.VISIT_MORE_OFTEN, visits.kind());
        assertEquals(2, visits.facts().get(Quantity.EVERY));
        assertEquals("top it up at least every 2 days", CureWords.of(visits));
        Cure larger = wilted.cures().get(1);
        assertEquals(Cure.Kind.HOLD_MORE, larger.kind());
        assertEquals(11.25, larger.facts().get(Quantity.ENOUGH), 1e-6);
        assertEquals(10, larger.facts().get(Quantity.USABLE), 1e-9);
    }

    /** 8.1 L on a day: not even a daily visit serves, and the vessel is told first. */
    @Test
    void what_no_daily_visit_serves_is_to_hold_more() {
        Warning wilted = warnings(drunkDown(8.1), Warning.Kind.WILTED).get(0);
        assertEquals(Cure.Kind.HOLD_MORE, wilted.cures().get(0).kind());
        assertEquals(Cure.Kind.VISIT_MORE_OFTEN, wilted.cures().get(1).kind());
        assertEquals(
                "top it up every day",
                CureWords.of(warnings(drunkDown(8), Warning.Kind.WILTED).get(0).cures().get(0)));
    }

    private static MadeTrace drunkDown(double litresOfOneDay) {
        return new MadeTrace(14)
                .filled(BY_HAND)
                .visited(
                        Rigs.onWeekdays(DayOfWeek.FRIDAY, DayOfWeek.TUESDAY)
                                .withTimeOfDayS(20 * 3600))
                .with(TraySeries.THIRST, h -> h / 24 == 9 ? litresOfOneDay / 24e3 : 1e-5)
                .with(TraySeries.LEVEL, h -> h >= 90 && h < 110 ? 0.008 : 0.05)
                .event(MadeTrace.drunkDown(90))
                .event(Event.Kind.SALT_BORNE, MadeTrace.TRAY, 110);
    }

    /** Roots above a level that is there: the cup hangs too high. */
    @Test
    void roots_that_end_above_the_level_want_it_higher_or_the_cup_lower() {
        MadeTrace stranded =
                new MadeTrace(14)
                        .filled(BY_HAND)
                        .with(TraySeries.ROOT_TIP, h -> 0.06)
                        .event(Event.Kind.STRANDED, MadeTrace.TRAY, 100);
        assertEquals(
                List.of(Cure.Kind.FILL_HIGHER, Cure.Kind.HANG_CUP_LOWER),
                cures(stranded, Warning.Kind.STRANDED));
    }

    @ParameterizedTest
    @CsvSource({"0.94, FILL_AT_THE_VISIT_BEFORE", "0.96, VISIT_MORE_OFTEN"})
    void what_ran_dry_though_it_was_left_full_is_not_to_be_filled(double frac, Cure.Kind first) {
        MadeTrace dry =
                new MadeTrace(14)
                        .reservoirAt(frac)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 100);
        assertEquals(List.of(first), cures(dry, Warning.Kind.RAN_DRY));
    }

    // ---- the crop and its hand -----------------------------------------------------------------

    @ParameterizedTest
    @CsvSource({
        "dwarf-tomato, true, true",
        "tomato, true, true",
        "strawberry, false, true",
        "cucumber, true, false"
    })
    void only_what_grows_tall_is_supported_and_what_needs_pollen_pollinated(
            String crop, boolean support, boolean pollen) {
        MadeTrace flowering =
                new MadeTrace(30).of(crop).event(Event.Kind.FLOWERING, MadeTrace.TRAY, 120);
        assertEquals(support ? 1 : 0, tasks(flowering, Task.Kind.SUPPORT).size());
        assertEquals(pollen ? 1 : 0, tasks(flowering, Task.Kind.POLLINATE).size());
    }

    /**
     * Three days of age for a tray that is free on day 22: due on day 19. The visit before is that
     * of day 11 or 12, eight or seven days sooner; the next that of day 21.
     */
    @ParameterizedTest
    @CsvSource({"12, 21", "13, 12"})
    void seedlings_are_not_sown_more_than_a_week_too_soon(int awayFrom, int sownDay) {
        MadeTrace trace =
                new MadeTrace(40)
                        .visited(MadeTrace.away(awayFrom, 20))
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 22 * 24 + 8);
        Task sow = tasks(trace, Task.Kind.SOW_NEXT).get(0);
        assertEquals(START.plusDays(sownDay).atTime(8, 0), sow.due());
    }

    /** Age three days; away from day 12 to day 21: after the return on day 22 it would be late. */
    @Test
    void seedlings_that_would_be_late_are_sown_before_an_absence_all_the_same() {
        MadeTrace trace =
                new MadeTrace(40)
                        .visited(MadeTrace.away(12, 21))
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 22 * 24 + 8);
        Task sow = tasks(trace, Task.Kind.SOW_NEXT).get(0);
        assertEquals(START.plusDays(11).atTime(8, 0), sow.due());
    }

    /** Grown for 22 days and 9 hours: half of that lies before the end of 34 days, not of 33. */
    @ParameterizedTest
    @CsvSource({"34, 1", "33, 0"})
    void nothing_is_sown_for_less_than_half_of_a_crops_time(int days, int sown) {
        MadeTrace trace =
                new MadeTrace(days).event(Event.Kind.HARVEST, MadeTrace.TRAY, 22 * 24 + 8);
        assertEquals(sown, tasks(trace, Task.Kind.SOW_NEXT).size());
    }

    /** Of somebody who comes daily, and of one who comes on Mondays, Thursdays and Saturdays. */
    @Test
    void what_is_done_oftener_than_somebody_comes_is_done_at_each_visit() {
        MadeTrace daily =
                new MadeTrace(40)
                        .of("dwarf-tomato")
                        .event(Event.Kind.FLOWERING, MadeTrace.TRAY, 120)
                        .event(Event.Kind.FIRST_RIPE, MadeTrace.TRAY, 200);
        assertEquals(2, tasks(daily, Task.Kind.POLLINATE).get(0).measure().value());
        assertTrue(tasks(daily, Task.Kind.PICK).get(0).cause().facts().has(Quantity.EVERY));
        MadeTrace rare =
                daily.visited(
                        Rigs.onWeekdays(DayOfWeek.MONDAY, DayOfWeek.THURSDAY, DayOfWeek.SATURDAY));
        Task pollinate = tasks(rare, Task.Kind.POLLINATE).get(0);
        assertTrue(Double.isNaN(pollinate.measure().value()));
        assertTrue(tasks(rare, Task.Kind.PICK).get(0).cause().facts().has(Quantity.EVERY));
        MadeTrace weekly = daily.visited(Rigs.onWeekdays(DayOfWeek.MONDAY));
        assertFalse(tasks(weekly, Task.Kind.PICK).get(0).cause().facts().has(Quantity.EVERY));
    }

    @Test
    void readings_are_told_for_the_trays_in_which_something_grows_until_it_is_cut() {
        MadeTrace trace = new MadeTrace(30).event(Event.Kind.HARVEST, MadeTrace.TRAY, 200);
        Task read = tasks(trace, Task.Kind.READ_METERS).get(0);
        assertEquals("tray", read.cause().facts().of());
        assertEquals(START.plusDays(8), read.cause().facts().on().toLocalDate());
        MadeTrace soon = new MadeTrace(30).event(Event.Kind.HARVEST, MadeTrace.TRAY, 7 * 24 + 8);
        assertEquals(List.of(), tasks(soon, Task.Kind.READ_METERS));
    }

    /** Cut at hour 200: by a log that ends then all of it is past, by one of an hour before not. */
    @ParameterizedTest
    @CsvSource({"199, 1", "200, 0"})
    void nothing_is_warned_of_a_crop_that_has_left_by_the_log(int lastHour, int warned) {
        Trace trace =
                new MadeTrace(14)
                        .holding(Rigs.FEED.with(Component.K, 0.149))
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 200)
                        .trace();
        Log log = new Log(List.of(new LogEntry.FilledUp(lastHour * 3600.0, MadeTrace.RESERVOIR)));
        Trace logged =
                new Trace(
                        trace.scenario().withLog(log),
                        trace.hours(),
                        trace.trays(),
                        trace.reservoirs(),
                        trace.events(),
                        trace.water(),
                        trace.components());
        assertEquals(
                warned,
                Advisor.advise(logged, logged).warnings().stream()
                        .filter(w -> w.kind() == Warning.Kind.SHORT_OF_ONE)
                        .count());
    }

    // ---- what brings water to a tray that may run dry ------------------------------------------

    private static Cure.Kind shortfall(Filling filling, Visits visits, int day) {
        Trace trace = new MadeTrace(14).filled(filling).visited(visits).trace();
        return Shortfall.cureOf(trace.scenario(), MadeTrace.TRAY, START.plusDays(day).atTime(3, 0))
                .kind();
    }

    @Test
    void what_may_run_dry_while_nobody_comes_is_topped_up_by_somebody() {
        for (int day : new int[] {5, 9}) {
            assertEquals(
                    Cure.Kind.TOPPED_UP_MEANWHILE, shortfall(BY_HAND, MadeTrace.away(5, 9), day));
        }
        for (int day : new int[] {4, 10}) {
            assertEquals(Cure.Kind.VISIT_MORE_OFTEN, shortfall(BY_HAND, MadeTrace.away(5, 9), day));
        }
        assertEquals(
                Cure.Kind.DEEPER_VESSEL, shortfall(new Filling.Sealed(), MadeTrace.away(5, 9), 7));
        Cure cure =
                Shortfall.cureOf(
                        new MadeTrace(14)
                                .filled(BY_HAND)
                                .visited(MadeTrace.away(5, 9))
                                .trace()
                                .scenario(),
                        MadeTrace.TRAY,
                        START.plusDays(7).atTime(3, 0));
        assertEquals(START.plusDays(6), cure.facts().on().toLocalDate());
    }
}
