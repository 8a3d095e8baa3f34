package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Reservoir.Refill.When;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.scenario.Crops;
import tideless.solution.Component;
import tideless.solution.Meter;

/** What is done at a visit, and what is not. The rigs start on a Monday. */
class VisitRulesTest {
    private static final double MONDAY_S = 8 * 3600;
    private static final double TUESDAY_S = 32 * 3600;

    private final EventLog log = new EventLog();

    private static VisitRules rules(Reservoir reservoir, Tray tray, Visits visits, EventLog log) {
        Scenario scenario = Rigs.scenario(3, 600, List.of(reservoir), List.of(tray), visits);
        return new VisitRules(scenario, new Meter[] {new Meter(420)}, log);
    }

    private static ReservoirRun at(Reservoir reservoir, double usableFrac) {
        ReservoirRun run = new ReservoirRun(reservoir, 0, Rigs.FEED, 20);
        run.volumeM3 = reservoir.deadM3() + usableFrac * reservoir.usableM3();
        return run;
    }

    private boolean refills(When when, double usableFrac, double timeS) {
        Reservoir reservoir = Rigs.reservoir(0.1, 0.3, when);
        Tray tray = Rigs.tray("t", Rigs.valve(), Rigs.drinking(1), 0);
        ReservoirRun run = at(reservoir, usableFrac);
        EventLog own = new EventLog();
        rules(reservoir, tray, Rigs.onWeekdays(DayOfWeek.MONDAY), own)
                .visit(timeS, 20, List.of(run), List.of());
        assertEquals(own.inOrder().size() == 1, Math.abs(run.volumeM3 - reservoir.fullM3()) < 1e-9);
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
    void a_reservoir_of_every_visit_is_topped_up_however_little_is_missing() {
        assertTrue(refills(When.EVERY_VISIT, 0.999, MONDAY_S));
        assertFalse(refills(When.EVERY_VISIT, 0.999, TUESDAY_S));
    }

    @ParameterizedTest
    @EnumSource(
            value = When.class,
            names = {"WHEN_EMPTY", "NEVER"})
    void nobody_pours_where_the_rule_knows_no_visit(When when) {
        assertFalse(refills(when, 0.01, MONDAY_S));
    }

    @Test
    void a_nutrient_is_short_below_the_least_where_fresh_solution_would_help() {
        double least = Shortage.leastMolPerM3(Component.K);
        assertTrue(VisitRules.isShort(Component.K, 0.999 * least, 2.001 * least));
        assertFalse(VisitRules.isShort(Component.K, 1.001 * least, 2.001 * least));
        assertFalse(VisitRules.isShort(Component.K, 0.999 * least, 1.999 * least));
        assertFalse(VisitRules.isShort(Component.NA, 0, 10));
    }

    @Test
    void a_tray_short_of_one_nutrient_gets_fresh_solution_though_its_ec_is_in_band() {
        Planting lettuce =
                new Planting.OfCrop(
                        Crops.named("lettuce"), 2, 0.2, 14, Planting.ThirstModel.CANOPY, -1);
        Tray tray = Rigs.tray("t", new Filling.Sealed(), lettuce, 0);
        Reservoir reservoir = Rigs.reservoir(0.1, 0.3, When.NEVER);
        Visits monday = Rigs.onWeekdays(DayOfWeek.MONDAY);
        Visits flushing = new Visits(monday.weekdays(), MONDAY_S, List.of(), Visits.Flush.AT_LIMIT);
        TrayRun run = new TrayRun(tray, 0, 20);
        VisitRules rules = rules(reservoir, tray, flushing, log);
        rules.visit(MONDAY_S, 20, List.of(), List.of(run));
        assertEquals(List.of(), log.inOrder());
        int k = Component.K.ordinal();
        run.salts.mol[k] = 0.99 * Shortage.leastMolPerM3(Component.K) * run.volumeM3;
        rules.visit(MONDAY_S, 20, List.of(), List.of(run));
        Event event = log.inOrder().get(0);
        assertEquals(Event.Kind.FRESH_SOLUTION, event.kind());
        assertEquals(VesselId.tray("t"), event.vessel());
        assertEquals(Rigs.FEED.molPerM3(k), run.salts.mol[k] / run.volumeM3, 1e-9);
    }
}
