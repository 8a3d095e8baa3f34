package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tideless.crop.Transplant;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Limits;
import tideless.rig.Planting;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Reservoir.Refill.When;
import tideless.rig.Scenario;
import tideless.rig.Tending;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.scenario.Crops;
import tideless.solution.Component;
import tideless.solution.Meter;

/** What is done at a visit, and what is not. The rigs start on a Monday. */
class VisitRulesTest {
    private static final double MONDAY_S = 8 * 3600;

    private static final Planting.OfCrop LETTUCE =
            new Planting.OfCrop(
                    Crops.named("lettuce"),
                    2,
                    0.2,
                    14,
                    Transplant.AS_RAISED,
                    Planting.ThirstModel.CANOPY,
                    OptionalInt.empty(),
                    OptionalDouble.empty(),
                    Tending.NONE);

    private static final Visits FLUSHING =
            new Visits(
                    Rigs.onWeekdays(DayOfWeek.MONDAY).weekdays(),
                    MONDAY_S,
                    List.of(),
                    Visits.Flush.AT_LIMIT);
    private static final double TUESDAY_S = 32 * 3600;

    private final EventLog log = new EventLog();

    private static VisitRules rules(Reservoir reservoir, Tray tray, Visits visits, EventLog log) {
        return rules(600, reservoir, tray, visits, log);
    }

    private static VisitRules rules(
            double stepS, Reservoir reservoir, Tray tray, Visits visits, EventLog log) {
        Scenario scenario = Rigs.scenario(3, stepS, List.of(reservoir), List.of(tray), visits);
        return new VisitRules(scenario, new Meter[] {new Meter(420)}, Departures.NONE, log);
    }

    private static ReservoirRun at(Reservoir reservoir, double usableFrac) {
        ReservoirRun run = new ReservoirRun(reservoir, 0, reservoir.usableM3(), Rigs.FEED, 20);
        run.water.m3 = reservoir.deadM3() + usableFrac * reservoir.usableM3();
        return run;
    }

    private boolean refills(When when, double usableFrac, double timeS) {
        Reservoir reservoir = Rigs.reservoir(0.1, 0.3, when);
        Tray tray = Rigs.tray("t", Rigs.valve(), Rigs.drinking(1), 0);
        ReservoirRun run = at(reservoir, usableFrac);
        EventLog own = new EventLog();
        rules(reservoir, tray, Rigs.onWeekdays(DayOfWeek.MONDAY), own)
                .visit(timeS, 20, List.of(run), List.of());
        assertEquals(own.inOrder().size() == 1, Math.abs(run.water.m3 - reservoir.fullM3()) < 1e-9);
        return own.inOrder().size() == 1;
    }

    @Test
    void a_reservoir_is_refilled_below_its_share_and_not_at_it() {
        // Rigs.reservoir asks for it below a half.
        assertTrue(refills(When.LOW_AT_VISIT, 0.499999, MONDAY_S));
        assertFalse(refills(When.LOW_AT_VISIT, 0.500001, MONDAY_S));
        assertFalse(refills(When.LOW_AT_VISIT, 0.1, TUESDAY_S));
    }

    @Test
    void a_reservoir_of_every_visit_is_filled_up_once_a_twentieth_is_missing() {
        assertTrue(refills(When.EVERY_VISIT, 0.9499, MONDAY_S));
        assertFalse(refills(When.EVERY_VISIT, 0.9501, MONDAY_S));
        assertFalse(refills(When.EVERY_VISIT, 0.9, TUESDAY_S));
    }

    /** By a rule 2 mm are seen where somebody comes again soon; before a long gap half of one. */
    @ParameterizedTest
    @CsvSource({
        "1, 2.1, true",
        "1, 1.9, false",
        "3, 1.9, false",
        "4, 1.9, true",
        "4, 0.6, true",
        "4, 0.4, false",
        "1, 0.4, false"
    })
    void a_tray_is_topped_up_where_its_level_is_seen_to_be_low(
            int nextDays, double belowMm, boolean topped) {
        Filling.ByHand hand = new Filling.ByHand(0.05, List.of(), Pouring.FEED);
        Reservoir reservoir = Rigs.reservoir(0.1, 0.3, When.NEVER);
        Tray tray = Rigs.tray("t", hand, Rigs.drinking(1), 0);
        Visits visits = Rigs.onWeekdays(DayOfWeek.MONDAY, DayOfWeek.MONDAY.plus(nextDays));
        Scenario scenario = Rigs.scenario(9, 600, List.of(reservoir), List.of(tray), visits);
        EventLog own = new EventLog();
        TrayRun run = new TrayRun(tray, 0, 20, Rigs.air(20), 0);
        run.water.put(tray.shape().volumeM3(0.05 - belowMm / 1000));
        new VisitRules(scenario, new Meter[] {new Meter(420)}, Departures.NONE, own)
                .visit(MONDAY_S, 20, List.of(), List.of(run));
        assertEquals(topped ? 1 : 0, own.inOrder().size());
    }

    @ParameterizedTest
    @EnumSource(
            value = When.class,
            names = {"WHEN_EMPTY", "NEVER"})
    void nobody_pours_where_the_rule_knows_no_visit(When when) {
        assertFalse(refills(when, 0.01, MONDAY_S));
    }

    /**
     * Eight hours drew 1 L, so 3 L a day; nobody comes again in the run's three days: with the
     * margin of a half 13.5 L are asked for.
     */
    @Test
    void a_reservoir_is_refilled_that_would_not_reach_the_next_visit() {
        assertTrue(refillsBefore(13.49, List.of()));
        assertFalse(refillsBefore(13.51, List.of()));
    }

    /** 0.9 L in eight hours, 2.7 L a day for three days, twice as long and the margin: 24.3 L. */
    @Test
    void a_reservoir_is_filled_before_an_absence_that_it_would_not_outlast_twice() {
        LocalDate tuesday = Rigs.START.plusDays(1);
        List<Visits.Absence> away = List.of(new Visits.Absence(tuesday, tuesday));
        assertTrue(refillsBefore(24.29, 0.9, away));
        assertFalse(refillsBefore(24.31, 0.9, away));
        LocalDate later = Rigs.START.plusDays(9);
        assertFalse(refillsBefore(25, List.of(new Visits.Absence(later, later))));
    }

    /** However little is drawn, less than half of the 28 L are no plenty for who goes away. */
    @ParameterizedTest
    @CsvSource({"13.99, true", "14.01, false"})
    void a_reservoir_less_than_half_full_is_filled_before_an_absence(double usableL, boolean is) {
        LocalDate tuesday = Rigs.START.plusDays(1);
        List<Visits.Absence> away = List.of(new Visits.Absence(tuesday, tuesday));
        assertEquals(is, refillsBefore(usableL, 0.1, away));
    }

    private boolean refillsBefore(double usableL, List<Visits.Absence> absences) {
        return refillsBefore(usableL, 1, absences);
    }

    private boolean refillsBefore(double usableL, double drawnL, List<Visits.Absence> absences) {
        Reservoir reservoir = Rigs.reservoir(0.1, 0.3, When.BEFORE_NEXT_VISIT);
        Tray tray = Rigs.tray("t", Rigs.valve(), Rigs.drinking(3), 0);
        Visits monday =
                new Visits(Set.of(DayOfWeek.MONDAY), MONDAY_S, absences, Visits.Flush.NEVER);
        ReservoirRun run = at(reservoir, (usableL + drawnL) * 1e-3 / reservoir.usableM3());
        double beforeM3 = run.water.m3;
        run.water.m3 -= drawnL / 1000;
        run.lose(beforeM3, drawnL / 1000, 0, 0);
        EventLog own = new EventLog();
        rules(reservoir, tray, monday, own).visit(MONDAY_S, 20, List.of(run), List.of());
        return own.inOrder().size() == 1;
    }

    /**
     * The seat stands 70 cm above the bench and the reservoir's floor 60 cm: the lowest 10 of its
     * 32 cm feed nothing, and 22 of its 32 L on 0.1 m2 do. At 20 L 10 feed, under half of 22; above
     * the outlet at 2 cm there are 18, over half of 30.
     */
    @Test
    void low_counts_from_the_seat_where_it_stands_above_the_outlet() {
        Reservoir reservoir = Rigs.reservoir(0.1, 0.32, When.LOW_AT_VISIT);
        assertEquals(0.5, reservoir.refill().belowFrac());
        Tray high =
                Rigs.tray("t", new TestValve().seatAboveFloorM(0.70).make(), Rigs.drinking(3), 0);
        Scenario scenario = Rigs.scenario(3, 600, List.of(reservoir), List.of(high), Rigs.nobody());
        assertEquals(0.022, scenario.feedingM3(reservoir), 1e-12);
        ReservoirRun run =
                new ReservoirRun(reservoir, 0, scenario.feedingM3(reservoir), Rigs.FEED, 20);
        run.water.m3 = 0.0211;
        assertTrue(run.feedingFrac() > 0.5);
        run.water.m3 = 0.0209;
        assertTrue(run.feedingFrac() < 0.5 && run.usableM3() > 0.018);
        run.water.m3 = 0.009;
        assertEquals(0, run.feedingFrac());
        run.lose(0.00901, 1e-5, 0, 0); // 10 mL in an hour; 7 L stand above the outlet
        assertFalse(run.wouldLast(3600, 1));
    }

    @Test
    void a_tray_is_flushed_beyond_the_meters_doubt_and_not_within_it() {
        assertFalse(FlushRule.isTooSalty(2.099, 1.5, 2.0));
        assertTrue(FlushRule.isTooSalty(2.101, 1.5, 2.0));
        assertFalse(FlushRule.isTooSalty(2.101, 2.0, 2.0), "the feed would not mend it");
        assertFalse(FlushRule.isTooLean(0.951, 1.5, 1.0));
        assertTrue(FlushRule.isTooLean(0.949, 1.5, 1.0));
        assertFalse(FlushRule.isTooLean(0.80, 1.049, 1.0), "the feed would not mend it");
        assertTrue(FlushRule.isTooLean(0.80, 1.051, 1.0));
    }

    @Test
    void seedlings_are_content_with_half() {
        assertEquals(0.5, FlushRule.leanMsPerCm(1.0, 0.99));
        assertEquals(1.0, FlushRule.leanMsPerCm(1.0, 1.0));
    }

    /** The valve is set to 50 mm over 0.2 m2: 10 L, of which a fifth is 2. */
    @Test
    void neither_a_low_tray_nor_a_sealed_one_is_flushed() {
        Tray valve = Rigs.tray("t", Rigs.valve(), Rigs.drinking(1), 0);
        assertFalse(FlushRule.mayChange(valve, Rigs.START, 0.00199));
        assertTrue(FlushRule.mayChange(valve, Rigs.START, 0.00201));
        Tray sealed = Rigs.tray("t", new Filling.Sealed(), Rigs.drinking(1), 0);
        assertFalse(FlushRule.mayChange(sealed, Rigs.START, 0.01));
    }

    @ParameterizedTest
    @CsvSource({"7, true", "8, false"})
    void within_a_week_of_harvest_nothing_is_changed(int harvestAfterDays, boolean isNear) {
        Planting lettuce = LETTUCE.withHarvestAfterDays(OptionalInt.of(harvestAfterDays));
        TrayRun run = new TrayRun(Rigs.tray("t", Rigs.valve(), lettuce, 0), 0, 20, Rigs.air(20), 0);
        assertEquals(isNear, run.isNearHarvest(MONDAY_S));
    }

    @Test
    void a_nutrient_is_short_below_the_least_where_fresh_solution_would_help() {
        double least = Shortage.leastMolPerM3(Component.K);
        assertTrue(VisitRules.isShort(Component.K, 0.999 * least, 2.001 * least));
        assertFalse(VisitRules.isShort(Component.K, 1.001 * least, 2.001 * least));
        assertFalse(VisitRules.isShort(Component.K, 0.999 * least, 1.999 * least));
        assertFalse(VisitRules.isShort(Component.NA, 0, 10));
    }

    // In the long steps of an ensemble a tray goes unread where bounds of its EC leave neither rule
    // a chance: what is done is the same at every strength.
    @Test
    void what_is_plainly_fit_is_left_alone_and_nothing_else() {
        Tray tray =
                Rigs.tray("t", Rigs.valve(), LETTUCE, 0)
                        .withLimits(new Limits(2, 3, 1, 13, 1e9, 1e9));
        Reservoir reservoir = Rigs.reservoir(0.1, 0.3, When.NEVER);
        Set<String> seen = new HashSet<>();
        for (double strength = 0.2; strength < 5; strength *= 1.03) {
            List<String> done = new ArrayList<>();
            for (double stepS : new double[] {600, 3 * Time.HOUR_S}) {
                EventLog told = new EventLog();
                TrayRun run = new TrayRun(tray, 0, 20, Rigs.air(20), 0);
                for (int i = 0; i < run.salts.mol.length; i++) {
                    run.salts.mol[i] *= strength;
                }
                rules(stepS, reservoir, tray, FLUSHING, told)
                        .visit(MONDAY_S, 20, List.of(), List.of(run));
                done.add(told.inOrder().stream().map(e -> e.kind().name()).toList().toString());
            }
            assertEquals(done.get(0), done.get(1), "at " + strength + " of the feed");
            seen.add(done.get(0));
        }
        assertEquals(Set.of("[]", "[FLUSH]", "[FRESH_SOLUTION]"), seen);
    }

    /** Lean by the meter: poured away within three times what slows the uptake, and not above. */
    @ParameterizedTest
    @CsvSource({"3.01, false", "2.99, true"})
    void a_lean_tray_is_renewed_once_a_nutrient_is_nearly_gone(double timesLeast, boolean renewed) {
        Tray tray =
                Rigs.tray("t", Rigs.valve(), LETTUCE, 0)
                        .withLimits(new Limits(2, 3, 1, 13, 1e9, 1e9));
        Reservoir reservoir = Rigs.reservoir(0.1, 0.3, When.NEVER);
        TrayRun run = new TrayRun(tray, 0, 20, Rigs.air(20), 0);
        for (int i = 0; i < run.salts.mol.length; i++) {
            run.salts.mol[i] *= 0.3;
        }
        run.salts.mol[Component.P.ordinal()] =
                timesLeast * Shortage.leastMolPerM3(Component.P) * run.water.m3;
        rules(reservoir, tray, FLUSHING, log).visit(MONDAY_S, 20, List.of(), List.of(run));
        assertEquals(
                renewed ? List.of(Event.Kind.FRESH_SOLUTION) : List.of(),
                log.inOrder().stream().map(Event::kind).toList());
    }

    @Test
    void a_tray_short_of_one_nutrient_gets_fresh_solution_though_its_ec_is_in_band() {
        Tray tray = Rigs.tray("t", Rigs.valve(), LETTUCE, 0);
        Reservoir reservoir = Rigs.reservoir(0.1, 0.3, When.NEVER);
        TrayRun run = new TrayRun(tray, 0, 20, Rigs.air(20), 0);
        VisitRules rules = rules(reservoir, tray, FLUSHING, log);
        rules.visit(MONDAY_S, 20, List.of(), List.of(run));
        assertEquals(List.of(), log.inOrder());
        int k = Component.K.ordinal();
        run.salts.mol[k] = 0.99 * Shortage.leastMolPerM3(Component.K) * run.water.m3;
        rules.visit(MONDAY_S, 20, List.of(), List.of(run));
        Event event = log.inOrder().get(0);
        assertEquals(Event.Kind.FRESH_SOLUTION, event.kind());
        assertEquals(VesselId.tray("t"), event.vessel());
        assertEquals(Rigs.FEED.molPerM3(k), run.salts.mol[k] / run.water.m3, 1e-9);
    }
}
