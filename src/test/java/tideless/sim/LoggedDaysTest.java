package tideless.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** What was done enters a run as it was done, and what was read is foretold and believed. */
class LoggedDaysTest {
    private static final VesselId SHELF = VesselId.reservoir("shelf");
    private static final VesselId BASIL = VesselId.tray("basil");
    private static final double EIGHT = 8 * Time.HOUR_S;

    private static Scenario bench() {
        Path path = Path.of("scenarios/science-room-bench.toml");
        return ((Reading.Good) ScenarioReader.read(path)).scenario();
    }

    private static Season run(Scenario scenario, LogEntry... entries) {
        Scenario logged = scenario.withLog(new Log(List.of(entries)));
        return Simulation.season(logged, Surroundings.forSeasons(logged));
    }

    private static double at(double day, double hour) {
        return day * Time.DAY_S + hour * Time.HOUR_S;
    }

    private static List<Event> events(Season season, Event.Kind kind) {
        return season.events().stream().filter(e -> e.kind() == kind).toList();
    }

    private static LogEntry.Reading level(double atS, double metres) {
        return new LogEntry.Reading(atS, SHELF, LogEntry.Quantity.LEVEL, metres, true, 1);
    }

    @Test
    void a_refill_is_done_when_it_was_done_and_the_rules_go_on_after_the_last_entry() {
        // By its rule the bench is first filled on day 14; here on day 9 at 17:35 and on day 20.
        Season season =
                run(
                        bench(),
                        new LogEntry.FilledUp(at(9, 17) + 35 * 60, SHELF),
                        new LogEntry.FilledUp(at(20, 8), SHELF),
                        new LogEntry.Looked(at(21, 8)));
        List<Event> refills = events(season, Event.Kind.REFILL);
        assertThat(refills.get(0).atS()).isEqualTo(at(9, 17) + 35 * 60);
        assertThat(refills.get(1).atS()).isEqualTo(at(20, 8));
        assertThat(refills.get(2).atS()).isGreaterThan(at(21, 8));
        assertThat(refills.get(2).atS() % Time.DAY_S).isEqualTo(EIGHT);
    }

    @Test
    void no_rule_is_followed_between_the_first_entry_and_the_last() {
        Season season = run(bench(), new LogEntry.Looked(at(0, 8)), new LogEntry.Looked(at(40, 8)));
        assertThat(season.events().stream().filter(e -> e.atS() <= at(40, 8)).map(Event::kind))
                .doesNotContain(Event.Kind.REFILL, Event.Kind.FLUSH, Event.Kind.HARVEST);
        assertThat(events(season, Event.Kind.OUTLET_UNCOVERED)).isNotEmpty();
    }

    /** By its rule the bench is first filled on day 14, and flushed and cut by others. */
    @Test
    void a_log_that_is_begun_weeks_after_the_run_leaves_its_first_weeks_to_the_rules() {
        Season ruled = run(bench());
        Season season = run(bench(), level(at(30, 8), 0.2), new LogEntry.Looked(at(40, 8)));
        assertThat(season.events().stream().filter(e -> e.atS() < at(30, 8)))
                .isEqualTo(ruled.events().stream().filter(e -> e.atS() < at(30, 8)).toList())
                .extracting(Event::kind)
                .contains(Event.Kind.REFILL);
        assertThat(events(season, Event.Kind.REFILL))
                .filteredOn(e -> e.atS() >= at(30, 8) && e.atS() <= at(40, 8))
                .isEmpty();
    }

    @Test
    void a_log_that_begins_with_a_refill_tells_of_all_from_the_start() {
        Season season =
                run(
                        bench(),
                        new LogEntry.Reading(
                                at(18, 8), SHELF, LogEntry.Quantity.POURED, 0.02, true, 2),
                        new LogEntry.FilledUp(at(18, 8), SHELF));
        assertThat(events(season, Event.Kind.REFILL).get(0).atS()).isEqualTo(at(18, 8));
        // A level before it is the first entry; what stood there then was read.
        assertThat(
                        new Log(
                                        List.of(
                                                level(at(18, 8), 0.1),
                                                new LogEntry.FilledUp(at(18, 8), SHELF)))
                                .keptFromS())
                .isEqualTo(at(18, 8));
    }

    @Test
    void a_vessel_of_whose_water_the_log_tells_nothing_is_filled_by_the_rules() {
        LogEntry ec = new LogEntry.Reading(at(2, 8), BASIL, LogEntry.Quantity.EC, 1.2, true, 1);
        LogEntry last = new LogEntry.Reading(at(40, 8), BASIL, LogEntry.Quantity.EC, 1.2, true, 2);
        List<Event> refills = events(run(bench(), ec, last), Event.Kind.REFILL);
        assertThat(refills.get(0).atS())
                .isEqualTo(events(run(bench()), Event.Kind.REFILL).get(0).atS())
                .isLessThan(at(40, 8));
        // One level is enough to tell of it, and so is a line that there was nothing to see.
        assertThat(events(run(bench(), ec, level(at(3, 8), 0.24), last), Event.Kind.REFILL))
                .filteredOn(e -> e.atS() <= at(40, 8))
                .isEmpty();
        assertThat(events(run(bench(), ec, new LogEntry.Looked(at(3, 8)), last), Event.Kind.REFILL))
                .filteredOn(e -> e.atS() <= at(40, 8))
                .isEmpty();
    }

    /** Who keeps a log of one bucket of three has not let the others go dry. */
    @Test
    void a_tray_of_whose_water_the_log_tells_nothing_is_topped_up_by_the_rules() {
        Path path = Path.of("scenarios/hand-topped-bucket.toml");
        Scenario bucket = ((Reading.Good) ScenarioReader.read(path)).scenario();
        VesselId where = bucket.trays().get(0).id();
        LogEntry ec = new LogEntry.Reading(at(2, 12), where, LogEntry.Quantity.EC, 1.2, true, 1);
        LogEntry last = new LogEntry.Reading(at(30, 12), where, LogEntry.Quantity.EC, 1.2, true, 2);
        List<Event> ruled = events(run(bucket), Event.Kind.TOP_UP);
        assertThat(ruled.get(0).atS()).isBetween(at(2, 12), at(30, 12));
        assertThat(events(run(bucket, ec, last), Event.Kind.TOP_UP).get(0)).isEqualTo(ruled.get(0));
        LogEntry level =
                new LogEntry.Reading(at(2, 12), where, LogEntry.Quantity.LEVEL, 0.2, true, 1);
        assertThat(events(run(bucket, level, last), Event.Kind.TOP_UP))
                .filteredOn(e -> e.atS() <= at(30, 12))
                .isEmpty();
    }

    @Test
    void litres_poured_are_those_written_and_no_more_than_fit() {
        Season season =
                run(
                        bench(),
                        new LogEntry.Poured(at(9, 8), SHELF, 2e-3, false),
                        new LogEntry.Poured(at(10, 8), SHELF, 1, true));
        List<Event> refills = events(season, Event.Kind.REFILL);
        assertThat(refills.get(0).volumeM3()).isCloseTo(2e-3, within(1e-15));
        assertThat(refills.get(1).volumeM3()).isLessThan(0.02);
        assertThat(refills.get(1).waterM3()).isEqualTo(refills.get(1).volumeM3());
    }

    @Test
    void flush_fresh_solution_valve_losses_and_harvest_enter() {
        Season season =
                run(
                        bench(),
                        new LogEntry.Renewed(at(5, 9), BASIL, true),
                        new LogEntry.Renewed(at(6, 9), BASIL, false),
                        new LogEntry.ValveMoved(at(7, 9), BASIL, 0.05),
                        new LogEntry.PlantsLost(at(8, 9), BASIL, 3),
                        new LogEntry.Harvested(at(30, 9), BASIL));
        assertThat(events(season, Event.Kind.FLUSH).get(0).atS()).isEqualTo(at(5, 9));
        // Whoever flushes has read the meter: the advice asks what it showed.
        assertThat(events(season, Event.Kind.FLUSH).get(0).ecMsPerCm()).isBetween(1.0, 3.0);
        assertThat(events(season, Event.Kind.FRESH_SOLUTION).get(0).atS()).isEqualTo(at(6, 9));
        assertThat(events(season, Event.Kind.VALVE_MOVED))
                .singleElement()
                .satisfies(e -> assertThat(e.detail()).isEqualTo("50.0 mm"));
        assertThat(events(season, Event.Kind.THINNED).get(0).detail()).isEqualTo("5");
        assertThat(
                        season.events().stream()
                                .filter(e -> e.kind() == Event.Kind.HARVEST)
                                .filter(e -> e.vessel().equals(BASIL))
                                .map(Event::atS))
                .containsExactly(at(30, 9));
    }

    @Test
    void leaves_that_were_picked_are_taken_and_all_that_stands_is_a_harvest() {
        Season season =
                run(
                        bench(),
                        new LogEntry.LeavesPicked(at(20, 9), BASIL, 30),
                        new LogEntry.LeavesPicked(at(21, 9), BASIL, 5000));
        assertThat(
                        season.events().stream()
                                .filter(e -> e.kind() == Event.Kind.LEAVES_PICKED)
                                .toList())
                .singleElement()
                .satisfies(
                        e -> {
                            assertThat(e.atS()).isEqualTo(at(20, 9));
                            assertThat(e.freshG()).isCloseTo(30, within(1e-9));
                        });
        assertThat(
                        season.events().stream()
                                .filter(e -> e.kind() == Event.Kind.HARVEST)
                                .filter(e -> e.vessel().equals(BASIL))
                                .map(Event::atS))
                .containsExactly(at(21, 9));
    }

    @Test
    void a_level_that_was_read_is_the_level_from_then_on() {
        Season season = run(bench(), level(at(7, 8), 0.15), level(at(7, 8), 0.15));
        // Foretold from what stood there before, then from what was read.
        assertThat(season.read().get(0)).isGreaterThan(0.2);
        assertThat(season.read().get(1)).isCloseTo(0.15, within(1e-12));
    }

    @Test
    void a_reading_kept_out_is_foretold_and_changes_nothing() {
        LogEntry.Reading out =
                new LogEntry.Reading(at(7, 8), SHELF, LogEntry.Quantity.LEVEL, 0.1, false, 1);
        Season season = run(bench(), out, level(at(7, 8), 0.1));
        assertThat(season.read().get(0)).isEqualTo(season.read().get(1));
    }

    @Test
    void each_quantity_is_foretold_as_the_trace_has_it() {
        List<LogEntry> all = new ArrayList<>();
        for (LogEntry.Quantity what : LogEntry.Quantity.values()) {
            if (what != LogEntry.Quantity.POURED) {
                all.add(new LogEntry.Reading(at(12, 8), BASIL, what, 1, true, 1));
            }
        }
        Season season = run(bench(), all.toArray(LogEntry[]::new));
        Scenario logged = bench().withLog(new Log(all));
        Trace trace = Simulation.run(logged);
        TrayTrace basil = trace.trays().get(0);
        int hour = 12 * 24 + 7;
        double[] expected = {
            basil.levelM().at(hour),
            basil.ecMsPerCm().at(hour),
            basil.ph().at(hour),
            basil.solutionTempC().at(hour),
            basil.freshG().at(hour)
        };
        for (int i = 0; i < expected.length; i++) {
            // The season steps to lamps and readings, the trace to every ten minutes as well.
            assertThat(season.read().get(i)).isCloseTo(expected[i], within(0.01 * expected[i]));
        }
    }

    @Test
    void water_and_ions_close_with_readings_believed_and_a_leak() {
        Scenario bench = bench();
        Correction leak =
                new Correction(
                        Map.of("basil", new Correction.OfCrop(1.3, 0.9, 1.2, 1)),
                        1.05,
                        1.5,
                        0.97,
                        Map.of("basil", 0.003),
                        Map.of("shelf", 1.1),
                        Map.of("shelf", 0.4e-3 / Time.DAY_S),
                        Map.of());
        Season season =
                run(
                        leak.applied(bench),
                        level(at(3, 8), 0.2),
                        level(at(6, 8), 0.25),
                        new LogEntry.FilledUp(at(9, 8), SHELF),
                        level(at(12, 8), 0.18),
                        new LogEntry.Renewed(at(13, 8), BASIL, true));
        assertThat(season.water().relativeResidual()).isLessThan(1e-12);
        season.components().forEach(c -> assertThat(c.relativeResidual()).isLessThan(1e-12));
        assertThat(season.water().out())
                .filteredOn(entry -> entry.what().equals("leaked from reservoirs"))
                .singleElement()
                .satisfies(
                        entry -> assertThat(entry.amount()).isBetween(0.8 * 28e-3, 1.01 * 28e-3));
    }

    /** Whoever empties and fills a bucket fills it to its mark. */
    @Test
    void fresh_solution_stands_at_the_mark_of_a_tray_that_is_topped_up_by_hand() {
        Path path = Path.of("scenarios/hand-topped-bucket.toml");
        Scenario bucket = ((Reading.Good) ScenarioReader.read(path)).scenario();
        VesselId where = bucket.trays().get(0).id();
        double markM = ((Filling.ByHand) bucket.trays().get(0).filling()).toLevelM();
        Season season =
                run(
                        bucket,
                        new LogEntry.Renewed(at(25, 8), where, false),
                        new LogEntry.Reading(
                                at(25, 8), where, LogEntry.Quantity.LEVEL, markM, false, 1));
        assertThat(season.read().get(0)).isCloseTo(markM, within(1e-9));
    }

    @Test
    void young_plants_as_corrected_are_so_much_heavier_when_set_out() {
        Scenario bench = bench();
        Correction bigger =
                new Correction(
                        Map.of("basil", new Correction.OfCrop(1, 1, 1, 1.5)),
                        1,
                        1,
                        1,
                        Map.of(),
                        Map.of(),
                        Map.of(),
                        Map.of());
        for (Tray tray : bench.trays()) {
            if (tray.planting() instanceof Planting.OfCrop was && tray.id().equals(BASIL)) {
                Tray then = bigger.applied(bench).trays().get(bench.trays().indexOf(tray));
                var now = ((Planting.OfCrop) then.planting()).plantAtStart();
                assertThat(now.leafDryG())
                        .isCloseTo(1.5 * was.plantAtStart().leafDryG(), within(1e-12));
                assertThat(now.rootLengthM()).isEqualTo(was.plantAtStart().rootLengthM());
            }
        }
    }

    @Test
    void thirst_as_corrected_is_drunk() {
        Scenario bench = bench();
        Correction thirsty =
                new Correction(
                        Map.of("basil", new Correction.OfCrop(1.2, 1, 1, 1)),
                        1,
                        1,
                        1,
                        Map.of(),
                        Map.of(),
                        Map.of(),
                        Map.of());
        double was = run(bench).trays().get(0).drunkM3();
        double now = run(thirsty.applied(bench)).trays().get(0).drunkM3();
        assertThat(now / was).isBetween(1.15, 1.21); // growth is the same, but for dry days
    }
}
