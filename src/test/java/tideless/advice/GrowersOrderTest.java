package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tideless.sim.Rigs.START;

import java.time.DayOfWeek;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tideless.rig.Filling;
import tideless.rig.Limits;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Visits;
import tideless.scenario.Crops;
import tideless.sim.Event;
import tideless.sim.GrowthLost;
import tideless.sim.Rigs;
import tideless.sim.Stress;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;
import tideless.words.CureWords;
import tideless.words.Numbers;

/** Which cure comes first, and what is not worth a word, as a grower of years has it. */
class GrowersOrderTest {
    private static final double FEED_EC = ElectricalConductivity.at25MsPerCm(Rigs.FEED);
    private static final Filling BY_HAND =
            new Filling.ByHand(0.05, List.of(), new Pouring(false, List.of()));

    /** Lime alone. */
    private static final Composition HARD =
            Composition.WATER.with(Component.CA, 2.5).with(Component.C, 5);

    private static Optional<Warning> warning(MadeTrace trace, Warning.Kind kind) {
        return trace.advice().warnings().stream().filter(w -> w.kind() == kind).findFirst();
    }

    private static List<Cure.Kind> cures(MadeTrace trace, Warning.Kind kind) {
        return warning(trace, kind).orElseThrow().cures().stream().map(Cure::kind).toList();
    }

    private static Visits flushed(Visits.Flush flush) {
        return new Visits(Set.of(DayOfWeek.values()), 8 * 3600, List.of(), flush);
    }

    // ---- the last week -------------------------------------------------------------------------

    /** Cut at hour 300, whose sample is the 299th: what begins at 132 lasts for seven days. */
    @ParameterizedTest
    @CsvSource({"131, 1", "132, 0"})
    void what_runs_low_in_the_week_before_the_harvest_is_left(int from, int told) {
        int lastTold = 299 - 24 * 7;
        assertEquals(told, from <= lastTold ? 1 : 0, "the week is counted from the harvest");
        MadeTrace lean =
                new MadeTrace(14)
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 300)
                        .with(TraySeries.EC, h -> h >= from ? 0.5 : 2);
        assertEquals(told, warning(lean, Warning.Kind.TOO_LEAN).isPresent() ? 1 : 0);
    }

    @Test
    void a_nutrient_gone_in_the_last_week_is_left_and_one_gone_before_is_told() {
        for (int cut : new int[] {24 * 7 - 1, 24 * 7 + 1}) {
            MadeTrace trace =
                    new MadeTrace(14)
                            .holding(Rigs.FEED.with(Component.K, 0.149))
                            .event(Event.Kind.HARVEST, MadeTrace.TRAY, cut);
            assertEquals(
                    cut > 24 * 7, warning(trace, Warning.Kind.SHORT_OF_ONE).isPresent(), "" + cut);
        }
    }

    // ---- hard and salty water ------------------------------------------------------------------

    @Test
    void a_lean_tray_on_water_that_crowds_the_feed_wants_softer_water_first() {
        MadeTrace lean = new MadeTrace(14).with(TraySeries.EC, h -> 0.5);
        assertEquals(Cure.Kind.FRESH_SOLUTION_SOONER, cures(lean, Warning.Kind.TOO_LEAN).get(0));
        assertEquals(
                Cure.Kind.RAIN_WATER,
                cures(lean.from(HARD.times(3)), Warning.Kind.TOO_LEAN).get(0));
    }

    /** 10 of the tray's 11 mmol/L of sodium come with water that reads 1 mS/cm. */
    @Test
    void salt_of_the_water_wants_other_water_before_all() {
        Composition salty = Composition.WATER.with(Component.NA, 5).with(Component.CL, 3);
        MadeTrace trace =
                new MadeTrace(14)
                        .from(salty)
                        .fed(Rigs.FEED.with(Component.NA, 5))
                        .holding(Rigs.FEED.with(Component.NA, 11))
                        .with(TraySeries.EC, h -> 4);
        assertEquals(Cure.Kind.RAIN_WATER, cures(trace, Warning.Kind.TOO_SALTY).get(0));
        MadeTrace ofTheFeed = trace.from(Composition.WATER.with(Component.NA, 2.4));
        assertFalse(
                cures(ofTheFeed, Warning.Kind.TOO_SALTY).get(0) == Cure.Kind.RAIN_WATER,
                "the feed's own sodium");
    }

    @Test
    void chloride_of_the_water_wants_other_water_too() {
        Composition salty = Composition.WATER.with(Component.CL, 4).with(Component.NA, 4);
        MadeTrace trace =
                new MadeTrace(14)
                        .from(salty)
                        .fed(Rigs.FEED.with(Component.CL, 5))
                        .holding(Rigs.FEED.with(Component.CL, 12))
                        .limited(new Limits(1, 4, 5.5, 6.5, 6, 11))
                        .with(TraySeries.EC, h -> 5);
        assertEquals(Cure.Kind.RAIN_WATER, cures(trace, Warning.Kind.TOO_SALTY).get(0));
    }

    // ---- feed ----------------------------------------------------------------------------------

    /** Fed a tenth below the least: one figure for all that is short. */
    @Test
    void a_feed_below_the_crops_least_is_made_as_strong_as_that() {
        MadeTrace trace =
                new MadeTrace(14)
                        .limited(limits(FEED_EC + 0.2))
                        .holding(Rigs.FEED.with(Component.K, 0.149))
                        .with(TraySeries.LEAF_AREA_INDEX, h -> 4)
                        .with(TraySeries.EC, h -> 1.5);
        for (Warning.Kind kind : List.of(Warning.Kind.TOO_LEAN, Warning.Kind.SHORT_OF_ONE)) {
            Cure first = warning(trace, kind).orElseThrow().cures().get(0);
            assertEquals(Cure.Kind.STRONGER_FEED, first.kind());
            assertEquals(FEED_EC + 0.2, first.facts().get(Quantity.FEED_EC), 1e-12);
        }
    }

    /**
     * At its worst, hour 200, the tray's 10 L read 1 mS/cm too much; 10 L stood there and 40 L came
     * in by then (0.2 L in each of hours 0 to 199, and in the 200th): the feed brought 10/50.2 of a
     * mS/cm too much.
     */
    @Test
    void the_leaner_feed_brings_so_much_less_as_the_worst_moment_stands_above_the_limit() {
        MadeTrace trace =
                new MadeTrace(14)
                        .with(TraySeries.EC, h -> h == 200 ? 4 : h >= 100 ? 3.5 : 2)
                        .with(TraySeries.INFLOW, h -> 2e-4);
        Cure leaner = leaner(trace);
        assertEquals(FEED_EC - 10 / 50.2, leaner.facts().get(Quantity.WANTED_EC), 1e-9);
        double least = FEED_EC - 10 / 50.2;
        assertTrue(leaner(trace.limited(limits(least - 1e-3))).facts().has(Quantity.WANTED_EC));
        assertFalse(leaner(trace.limited(limits(least + 1e-3))).facts().has(Quantity.WANTED_EC));
    }

    private static Limits limits(double ecLow) {
        return new Limits(ecLow, 3, 5.5, 6.5, 6, 11);
    }

    private static Cure leaner(MadeTrace trace) {
        return warning(trace, Warning.Kind.TOO_SALTY).orElseThrow().cures().stream()
                .filter(c -> c.kind() == Cure.Kind.LEANER_FEED)
                .findFirst()
                .orElseThrow();
    }

    /** A tenth of a mS/cm more than the limit: a feed leaner by less than a pen shows does. */
    @Test
    void what_stands_a_little_above_the_limit_wants_a_leaner_feed_and_no_change() {
        MadeTrace little = new MadeTrace(14).with(TraySeries.EC, h -> h >= 100 ? 3.16 : 2);
        little.with(TraySeries.INFLOW, h -> 2e-4);
        assertFalse(leaner(little).facts().has(Quantity.WANTED_EC));
        List<Cure.Kind> cures = cures(little, Warning.Kind.TOO_SALTY);
        assertTrue(cures.indexOf(Cure.Kind.LEANER_FEED) < cures.indexOf(Cure.Kind.CHANGE_AT_LIMIT));
        // Fed at its least already, nothing but a change is left.
        cures = cures(little.limited(limits(FEED_EC)), Warning.Kind.TOO_SALTY);
        assertTrue(cures.indexOf(Cure.Kind.LEANER_FEED) > cures.indexOf(Cure.Kind.CHANGE_AT_LIMIT));
    }

    @Test
    void no_leaner_feed_is_worked_out_of_a_tray_that_was_changed_or_thinned_before() {
        for (double water : new double[] {0, 1e-4}) {
            MadeTrace trace =
                    new MadeTrace(14)
                            .with(TraySeries.EC, h -> h >= 100 ? 4 : 2)
                            .with(TraySeries.INFLOW, h -> 2e-4);
            trace.event(
                    new Event(
                            water > 0 ? Event.Kind.TOP_UP : Event.Kind.FLUSH,
                            50 * 3600,
                            MadeTrace.TRAY,
                            0.001,
                            water,
                            0,
                            2,
                            0,
                            ""));
            if (water > 0) {
                trace.filled(BY_HAND);
            }
            assertFalse(leaner(trace).facts().has(Quantity.WANTED_EC));
        }
    }

    @ParameterizedTest
    @EnumSource(Visits.Flush.class)
    void who_never_changes_the_solution_is_told_when_to(Visits.Flush flush) {
        MadeTrace trace = new MadeTrace(14).with(TraySeries.EC, h -> 4).visited(flushed(flush));
        assertEquals(
                flush == Visits.Flush.NEVER,
                cures(trace, Warning.Kind.TOO_SALTY).contains(Cure.Kind.CHANGE_AT_LIMIT));
        assertFalse(
                cures(trace.filled(new Filling.Sealed()), Warning.Kind.TOO_SALTY)
                        .contains(Cure.Kind.CHANGE_AT_LIMIT));
    }

    /** Lean for four days, then too salty: the crop drinks more than it eats. */
    @Test
    void no_fresh_solution_is_asked_for_where_salts_pile_up_later() {
        MadeTrace lean =
                new MadeTrace(21)
                        .fed(Rigs.FEED.times(1.4))
                        .holding(Rigs.FEED.with(Component.K, 0.3))
                        .with(TraySeries.EC, h -> h >= 100 && h < 200 ? 0.5 : 2);
        assertEquals(1, unheededChanges(lean));
        assertEquals(
                0,
                unheededChanges(
                        lean.with(
                                TraySeries.EC,
                                h -> h >= 100 && h < 200 ? 0.5 : h > 250 ? 3.2 : 2)));
    }

    /** Lean from hour 100 on; with potassium short as well it is one harm, told by its name. */
    @ParameterizedTest
    @CsvSource({"0.14, SHORT_OF_ONE", "0.16, TOO_LEAN"})
    void a_crop_short_of_one_nutrient_is_not_told_to_be_hungry_besides(
            double potassium, Warning.Kind told) {
        MadeTrace trace =
                new MadeTrace(21)
                        .fed(Rigs.FEED.times(1.4))
                        .holding(Rigs.FEED.with(Component.K, potassium))
                        .with(TraySeries.EC, h -> h >= 100 ? 0.5 : 2);
        assertEquals(
                List.of(told),
                trace.warned().stream()
                        .filter(k -> k == Warning.Kind.TOO_LEAN || k == Warning.Kind.SHORT_OF_ONE)
                        .distinct()
                        .toList());
    }

    /** Above its limit for days, of which salt takes so much of the crop. */
    @ParameterizedTest
    @CsvSource({"0.021, 1", "0.019, 0"})
    void nothing_is_poured_away_for_a_harm_of_less_than_a_fiftieth(double frac, int flushes) {
        MadeTrace salty =
                new MadeTrace(21)
                        .losing(new GrowthLost(100 * (1 - frac), 100, Map.of(Stress.SALT, 1.0)))
                        .with(TraySeries.EC, h -> h >= 100 && h < 300 ? 4 : 2);
        assertEquals(
                flushes,
                salty.advice().tasks().stream().filter(t -> t.kind() == Task.Kind.FLUSH).count());
    }

    /** Lettuce is fed 0.8 to 1.6 mS/cm or so (its file): a feed of half of the least is doubled. */
    @Test
    void a_feed_below_the_band_is_to_be_in_its_middle_and_not_at_its_edge() {
        double low = Crops.named("lettuce").needs().ecLowMsPerCm();
        double middle = 0.5 * (low + Crops.named("lettuce").needs().ecHighMsPerCm());
        MadeTrace trace =
                new MadeTrace(21)
                        .limited(limits(low))
                        .fed(Rigs.FEED.times(0.5 * low / FEED_EC))
                        .with(TraySeries.EC, h -> 0.5 * low);
        Cure first = warning(trace, Warning.Kind.TOO_LEAN).orElseThrow().cures().get(0);
        assertEquals(middle, first.facts().get(Quantity.FEED_EC), 1e-12);
        assertEquals(
                "a stronger feed: about %s, the middle of what growers feed it"
                        .formatted(Numbers.of(middle, Unit.MS_PER_CM)),
                CureWords.of(first));
    }

    /** A day, or a twentieth of the time to harvest; of a head that comes to its weight later. */
    @ParameterizedTest
    @CsvSource({"28, 1.01, true", "28, 0.99, false", "16, 0.81, true", "16, 0.79, false"})
    void a_head_that_comes_days_later_has_lost_something(
            double readyDays, double lateDays, boolean warned) {
        Map<Stress, Double> salt = Map.of(Stress.SALT, 1.0);
        Advice salty =
                new MadeTrace(21)
                        .losing(new GrowthLost(99, 100, salt, lateDays, readyDays, 0))
                        .with(TraySeries.EC, h -> h >= 100 && h < 300 ? 4 : 2)
                        .advice();
        assertEquals(
                warned,
                salty.warnings().stream().anyMatch(w -> w.kind() == Warning.Kind.TOO_SALTY));
        assertEquals(
                !warned, salty.minor().stream().anyMatch(w -> w.kind() == Warning.Kind.TOO_SALTY));
    }

    /** What the run itself changes costs nothing because it does, and is no note. */
    @ParameterizedTest
    @CsvSource({"FLUSH, 0", "FRESH_SOLUTION, 1"})
    void a_harm_that_the_run_mends_is_no_note(Event.Kind done, int notes) {
        MadeTrace salty =
                new MadeTrace(21)
                        .losing(new GrowthLost(99, 100, Map.of(Stress.SALT, 1.0)))
                        .with(TraySeries.EC, h -> h >= 100 && h < 300 ? 4 : 2)
                        .event(done, MadeTrace.TRAY, 56);
        assertEquals(
                notes,
                salty.advice().minor().stream()
                        .filter(w -> w.kind() == Warning.Kind.TOO_SALTY)
                        .count());
    }

    /**
     * Set out at seven in the evening of day one: what began before and is over in six hours is
     * none of it.
     */
    @ParameterizedTest
    @CsvSource({"15.5, 21.5, false", "19.5, 21.5, true", "15.5, 21.6, true"})
    void nothing_wilts_before_it_is_set_out(double hour, double over, boolean warned) {
        MadeTrace trace =
                new MadeTrace(14)
                        .visited(Rigs.onWeekdays(DayOfWeek.values()).withTimeOfDayS(19 * 3600))
                        .event(Event.Kind.STRANDED, MadeTrace.TRAY, hour)
                        .event(Event.Kind.WILTED, MadeTrace.TRAY, hour)
                        .event(Event.Kind.REWETTED, MadeTrace.TRAY, over)
                        .event(Event.Kind.RECOVERED, MadeTrace.TRAY, over);
        assertEquals(warned, trace.warned().contains(Warning.Kind.WILTED));
        assertEquals(warned, trace.warned().contains(Warning.Kind.STRANDED));
    }

    private static long unheededChanges(MadeTrace trace) {
        return trace.advice().tasks().stream()
                .filter(t -> t.kind() == Task.Kind.FRESH_SOLUTION && !t.isDone())
                .count();
    }

    // ---- what to change first ------------------------------------------------------------------

    /** Salty as well; two weeks out of the limit come first, 13 days do not. */
    @ParameterizedTest
    @CsvSource({"40, 14, TOO_HOT", "40, 13, TOO_SALTY", "3, 14, TOO_COLD", "3, 13, TOO_SALTY"})
    void weeks_of_air_that_is_not_borne_come_before_salt(
            double airC, int days, Warning.Kind first) {
        MadeTrace trace =
                new MadeTrace(21)
                        .with(TraySeries.EC, h -> 4)
                        .with(TraySeries.AIR_TEMP, h -> h < 24 * days ? airC : 22);
        assertEquals(first, trace.advice().verdict().first().orElseThrow().kind());
    }

    /** Seven hot days of twenty-one are no three weeks. */
    @Test
    void days_of_heat_that_lie_apart_are_no_weeks_of_it() {
        MadeTrace trace =
                new MadeTrace(21)
                        .with(TraySeries.EC, h -> 4)
                        .with(TraySeries.AIR_TEMP, h -> h / 24 % 3 == 0 ? 40 : 22);
        assertEquals(Warning.Kind.TOO_SALTY, trace.advice().verdict().first().orElseThrow().kind());
    }

    /**
     * Lettuce at 3 degC for days only comes later; a fortnight of it, and basil's leaves, do not.
     */
    @ParameterizedTest
    @CsvSource({"lettuce, 13, false", "lettuce, 14, true", "basil, 3, true"})
    void cold_that_only_slows_for_days_is_a_note(String crop, int days, boolean warned) {
        Advice advice =
                new MadeTrace(21)
                        .of(crop)
                        .with(TraySeries.AIR_TEMP, h -> h < 24 * days ? 3 : 22)
                        .advice();
        assertEquals(
                warned,
                advice.warnings().stream().anyMatch(w -> w.kind() == Warning.Kind.TOO_COLD));
        assertEquals(
                !warned, advice.minor().stream().anyMatch(w -> w.kind() == Warning.Kind.TOO_COLD));
    }

    @Test
    void weeks_of_such_air_do_not_come_before_dryness() {
        MadeTrace trace =
                new MadeTrace(21)
                        .with(TraySeries.AIR_TEMP, h -> 40)
                        .event(Event.Kind.DRIED_OUT, MadeTrace.TRAY, 300);
        assertEquals(Warning.Kind.DRIED_OUT, trace.advice().verdict().first().orElseThrow().kind());
    }

    @Test
    void the_last_moment_of_a_run_is_told_by_its_own_day() {
        MadeTrace trace = new MadeTrace(14).with(TraySeries.LEVEL, h -> 0.06 - h * 1e-4);
        assertEquals(
                START.plusDays(13).atTime(23, 0),
                trace.advice().verdict().tightest().orElseThrow().at());
    }

    // ---- deaths, drowned roots -----------------------------------------------------------------

    private static Warning died(MadeTrace trace) {
        return warning(trace.event(Event.Kind.DIED, MadeTrace.TRAY, 200), Warning.Kind.DIED)
                .orElseThrow();
    }

    private static Warning diedOf(String detail) {
        MadeTrace trace = new MadeTrace(14).event(Event.Kind.WILTED, MadeTrace.TRAY, 150);
        Event death =
                new Event(
                        Event.Kind.DIED,
                        200 * 3600,
                        MadeTrace.TRAY,
                        0,
                        0,
                        0,
                        Double.NaN,
                        0,
                        detail);
        return warning(trace.event(death), Warning.Kind.DIED).orElseThrow();
    }

    // Whatever its roots went through before.
    @Test
    void a_crop_that_air_or_salt_killed_by_itself_is_told_so_with_what_would_have_saved_it() {
        assertEquals(Cause.Kind.FROST_KILLS, diedOf(Event.FROST).cause().kind());
        assertEquals(Cure.Kind.WARMER_ROOM, diedOf(Event.FROST).cures().get(0).kind());
        assertEquals(Cause.Kind.CHILL_KILLS, diedOf(Event.CHILL).cause().kind());
        assertEquals(Cure.Kind.WARMER_ROOM, diedOf(Event.CHILL).cures().get(0).kind());
        assertEquals(Cause.Kind.HEAT_KILLS, diedOf(Event.HEAT).cause().kind());
        assertEquals(Cure.Kind.COOLER_ROOM, diedOf(Event.HEAT).cures().get(0).kind());
        assertEquals(Cause.Kind.DARK_KILLS, diedOf(Event.DARK).cause().kind());
        assertEquals(Cure.Kind.MORE_LIGHT, diedOf(Event.DARK).cures().get(0).kind());
        assertEquals(Cause.Kind.SALT_KILLS, diedOf(Event.SALT).cause().kind());
        assertEquals(Cure.Kind.LEANER_FEED, diedOf(Event.SALT).cures().get(0).kind());
        assertEquals(Cause.Kind.WITHOUT_WATER, diedOf("").cause().kind());
    }

    @Test
    void a_crop_lost_is_told_by_what_killed_it() {
        Warning dry =
                died(
                        new MadeTrace(14)
                                .event(Event.Kind.DROWNED, MadeTrace.TRAY, 100)
                                .event(Event.Kind.STRANDED, MadeTrace.TRAY, 120)
                                .event(Event.Kind.WILTED, MadeTrace.TRAY, 150));
        assertEquals(Cause.Kind.WITHOUT_WATER, dry.cause().kind());
        assertEquals(Cure.Kind.REFILL_IN_TIME, dry.cures().get(0).kind());
        Warning drowned =
                died(
                        new MadeTrace(14)
                                .filled(BY_HAND)
                                .event(Event.Kind.WILTED, MadeTrace.TRAY, 100)
                                .event(Event.Kind.RECOVERED, MadeTrace.TRAY, 110)
                                .event(Event.Kind.DROWNED, MadeTrace.TRAY, 120));
        assertEquals(Cause.Kind.WITHOUT_AIR, drowned.cause().kind());
        assertEquals(Cure.Kind.TOP_UP_LITTLE_AND_OFTEN, drowned.cures().get(0).kind());
        Warning salted =
                died(
                        new MadeTrace(14)
                                .event(Event.Kind.DROWNED, MadeTrace.TRAY, 100)
                                .event(Event.Kind.STRANDED, MadeTrace.TRAY, 110)
                                .event(Event.Kind.REWETTED, MadeTrace.TRAY, 120));
        assertEquals(Cause.Kind.SALT_KILLS_SEEDLINGS, salted.cause().kind());
        assertEquals(Cure.Kind.LEANER_FEED, salted.cures().get(0).kind());
    }

    @Test
    void roots_drowned_below_a_valve_are_no_matter_of_topping_up() {
        MadeTrace raised = new MadeTrace(14).event(Event.Kind.DROWNED, MadeTrace.TRAY, 100);
        assertEquals(List.of(Cure.Kind.RAISE_BY_STEPS), cures(raised, Warning.Kind.DROWNED));
        MadeTrace dry =
                new MadeTrace(14)
                        .event(Event.Kind.DROWNED, MadeTrace.TRAY, 100)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 80);
        assertEquals(cures(dry, Warning.Kind.RAN_DRY), cures(dry, Warning.Kind.DROWNED));
        MadeTrace spills = dry.event(Event.Kind.OVERFLOW_BEGAN, MadeTrace.TRAY, 99);
        assertEquals(List.of(Cure.Kind.MEND_VALVE), cures(spills, Warning.Kind.DROWNED));
    }

    // ---- whose reservoir runs dry --------------------------------------------------------------

    @Test
    void a_tray_below_a_dry_reservoir_wants_what_the_reservoir_wants() {
        MadeTrace dry =
                new MadeTrace(14)
                        .reservoirAt(0)
                        .event(Event.Kind.OUTLET_UNCOVERED, MadeTrace.RESERVOIR, 80)
                        .event(Event.Kind.DRIED_OUT, MadeTrace.TRAY, 100)
                        .with(TraySeries.LEVEL, h -> h >= 90 ? 0.001 : 0.05);
        assertEquals(
                List.of(Cure.Kind.FILL_AT_THE_VISIT_BEFORE), cures(dry, Warning.Kind.DRIED_OUT));
        MadeTrace other = new MadeTrace(14).reservoirAt(0);
        other.event(Event.Kind.DRIED_OUT, MadeTrace.TRAY, 100)
                .with(TraySeries.LEVEL, h -> h >= 90 ? 0.001 : 0.05);
        assertEquals(List.of(Cure.Kind.REFILL_IN_TIME), cures(other, Warning.Kind.DRIED_OUT));
    }

    // ---- what brings water where some rigs run dry ---------------------------------------------

    private static Cure.Kind shortfall(MadeTrace made) {
        Trace trace = made.trace();
        return Shortfall.cureOf(trace.scenario(), MadeTrace.TRAY, START.plusDays(12).atTime(3, 0))
                .kind();
    }

    @Test
    void a_reservoir_that_is_never_refilled_is_to_be() {
        assertEquals(
                Cure.Kind.PLAN_REFILLS,
                shortfall(new MadeTrace(14).refilled(Reservoir.Refill.When.NEVER)));
        assertEquals(Cure.Kind.VISIT_MORE_OFTEN, shortfall(new MadeTrace(14)));
    }

    /** Topped up to 50 mm, below cups at 51 mm there is room, and not below those at 50. */
    @Test
    void who_tops_up_to_below_the_cups_fills_higher() {
        assertEquals(
                Cure.Kind.FILL_HIGHER,
                shortfall(new MadeTrace(14).filled(BY_HAND).rigged(t -> t.cupBottomM(0.051))));
        assertEquals(
                Cure.Kind.VISIT_MORE_OFTEN,
                shortfall(new MadeTrace(14).filled(BY_HAND).rigged(t -> t.cupBottomM(0.05))));
    }
}
