package tideless.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.physics.Time;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.scenario.GrowingBench;
import tideless.scenario.Note;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Ledger;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.sim.Trace;
import tideless.sim.TraySeason;
import tideless.words.Dates;
import tideless.words.TaskWords;

/** Leaf crops that are picked as they grow, unless a scenario says otherwise. */
class PickedAsItGrowsTest {
    private static final double EIGHT = 8 * Time.HOUR_S;

    @TempDir Path folder;

    private Reading read(String crop, int days, String visits, String more) throws IOException {
        Path file = folder.resolve("bench.toml");
        Files.writeString(
                file, GrowingBench.text(days, visits, 23, 240, crop, "plants = 6\n" + more));
        return ScenarioReader.read(file);
    }

    private Scenario scenario(String crop, int days, String visits, String more)
            throws IOException {
        Reading reading = read(crop, days, visits, more);
        return assertInstanceOf(Reading.Good.class, reading, () -> "" + reading).scenario();
    }

    private Trace run(String crop, int days, String more) throws IOException {
        return run(crop, days, "visits.days = \"daily\"", more);
    }

    private Trace run(String crop, int days, String visits, String more) throws IOException {
        Trace trace = Simulation.run(scenario(crop, days, visits, more));
        assertTrue(trace.water().relativeResidual() <= 1e-12, "" + trace.water());
        for (Ledger ledger : trace.components()) {
            assertTrue(ledger.relativeResidual() <= 1e-12, "" + ledger);
        }
        return trace;
    }

    private static List<Event> events(Trace trace, Event.Kind kind) {
        return trace.events().stream().filter(event -> event.kind() == kind).toList();
    }

    private static List<Event> pickings(Trace trace) {
        return events(trace, Event.Kind.LEAVES_PICKED);
    }

    private static double standsG(Trace trace, double atS) {
        return trace.trays().get(0).freshG().at((int) (atS / Time.HOUR_S) - 1);
    }

    private static double drunkL(Trace trace, int fromDay, int toDay) {
        return 1000 * trace.trays().get(0).transpirationM3().sum(fromDay * 24, toDay * 24);
    }

    @Test
    void basil_of_which_nothing_is_said_is_picked_from_its_weight_on_and_drinks_to_the_end()
            throws IOException {
        Trace trace = run("basil", 70, "");
        List<Event> pickings = pickings(trace);
        assertThat(pickings.size()).isGreaterThan(3);
        assertThat(events(trace, Event.Kind.HARVEST)).isEmpty();
        double firstS = pickings.get(0).atS();
        assertThat(firstS % Time.DAY_S).isEqualTo(EIGHT);
        assertThat(standsG(trace, firstS)).isGreaterThanOrEqualTo(30);
        assertThat(standsG(trace, firstS - Time.DAY_S)).isLessThan(30);
        assertThat(drunkL(trace, 63, 70)).isGreaterThan(3);
        for (int i = 1; i < pickings.size(); i++) {
            assertEquals(7 * Time.DAY_S, pickings.get(i).atS() - pickings.get(i - 1).atS());
        }
    }

    @Test
    void each_picking_takes_the_crop_s_share_of_what_stands() throws IOException {
        for (String crop : List.of("basil", "mizuna")) {
            double share = crop.equals("basil") ? 0.33 : 0.70;
            for (Event picking : pickings(run(crop, 60, ""))) {
                assertThat(picking.detail()).isEqualTo(Event.AS_IT_GROWS);
            }
            Trace trace = run(crop, 60, "");
            Event first = pickings(trace).get(0);
            assertThat(first.freshG())
                    .isCloseTo(6 * share * standsG(trace, first.atS()), within(1e-6));
        }
    }

    @Test
    void a_scenario_may_have_it_cut_once_and_a_date_or_a_weight_says_so_too() throws IOException {
        for (String once :
                List.of(
                        "harvest = \"once\"",
                        "harvest_after = \"40 days\"",
                        "harvest_weight = \"45 g\"")) {
            Trace trace = run("basil", 60, once);
            assertThat(pickings(trace)).as(once).isEmpty();
            assertThat(events(trace, Event.Kind.HARVEST)).as(once).hasSize(1);
        }
    }

    @Test
    void asked_for_it_goes_with_a_weight_a_date_and_a_crop_that_is_cut_otherwise()
            throws IOException {
        Trace early = run("basil", 60, "harvest = \"picked\"\nharvest_weight = \"20 g\"");
        double firstS = pickings(early).get(0).atS();
        assertThat(standsG(early, firstS)).isGreaterThanOrEqualTo(20);
        assertThat(standsG(early, firstS - Time.DAY_S)).isLessThan(20);

        Trace until = run("basil", 60, "harvest = \"picked\"\nharvest_after = \"45 days\"");
        assertThat(pickings(until)).isNotEmpty();
        assertThat(events(until, Event.Kind.HARVEST))
                .singleElement()
                .satisfies(e -> assertEquals(45 * Time.DAY_S + EIGHT, e.atS()));

        Trace lettuce = run("lettuce", 60, "harvest = \"picked\"");
        Event first = pickings(lettuce).get(0);
        assertThat(first.freshG())
                .isCloseTo(6 * 0.33 * standsG(lettuce, first.atS()), within(1e-6));
        assertEquals(7 * Time.DAY_S, pickings(lettuce).get(1).atS() - first.atS());
    }

    @Test
    void own_numbers_of_a_crop_set_days_and_share() throws IOException {
        Trace trace =
                run(
                        "basil",
                        60,
                        "crop_override.harvest.picked_every = \"10 days\"\ncrop_override.harvest.picked_share = \"20 %\"");
        Event first = pickings(trace).get(0);
        assertThat(first.freshG()).isCloseTo(6 * 0.2 * standsG(trace, first.atS()), within(1e-6));
        assertEquals(10 * Time.DAY_S, pickings(trace).get(1).atS() - first.atS());
    }

    @Test
    void it_waits_for_a_visit_and_before_an_absence_half_of_the_days_are_enough()
            throws IOException {
        // Without an absence picked on 30 March, 6 and 13 April.
        String days = "visits.days = [\"mon\", \"fri\"]\n";
        List<Event> usual = pickings(run("basil", 60, days, ""));
        List<String> dates = dates(usual);
        assertThat(dates.get(1)).isEqualTo(usual.get(0).atS() / Time.DAY_S % 7 < 1 ? "Mon" : "Fri");

        int first = (int) (usual.get(0).atS() / Time.DAY_S);
        String from = day(first + 5);
        String away =
                days + "visits.away = [{ from = %s, to = %s }]\n".formatted(from, day(first + 12));
        List<Event> before = pickings(run("basil", 60, away, ""));
        assertEquals(usual.get(0).atS(), before.get(0).atS());
        double apart = (before.get(1).atS() - before.get(0).atS()) / Time.DAY_S;
        assertThat(apart).isBetween(3.5, 4.5);

        // Two days after a picking is too soon.
        String soon =
                "visits.days = \"daily\"\nvisits.away = [{ from = %s, to = %s }]\n"
                        .formatted(day(first + 3), day(first + 14));
        List<Event> daily = pickings(run("basil", 60, soon, ""));
        int firstDaily = (int) (daily.get(0).atS() / Time.DAY_S);
        assertThat(daily.get(1).atS() / Time.DAY_S - firstDaily).isGreaterThan(7);
    }

    private static String day(int day) {
        return LocalDate.of(2026, 3, 2).plusDays(day).toString();
    }

    private static List<String> dates(List<Event> events) {
        return events.stream()
                .map(e -> (int) (e.atS() / Time.DAY_S) % 7 == 0 ? "Mon" : "Fri")
                .toList();
    }

    @Test
    void what_is_ready_as_the_run_ends_is_picked_then() throws IOException {
        double firstS = pickings(run("basil", 60, "")).get(0).atS();
        int days = (int) (firstS / Time.DAY_S); // by that midnight it is ready, nobody comes again
        Trace trace = run("basil", days, "");
        assertThat(pickings(trace))
                .singleElement()
                .satisfies(e -> assertEquals(days * Time.DAY_S, e.atS()));
        assertThat(pickings(run("basil", days - 1, ""))).isEmpty();
    }

    @Test
    void spent_plants_are_cut_and_the_line_says_why() throws IOException {
        Trace trace = run("mizuna", 80, "");
        assertThat(pickings(trace)).hasSizeBetween(2, 3);
        Event harvest = events(trace, Event.Kind.HARVEST).get(0);
        assertThat(harvest.atS()).isGreaterThan(pickings(trace).get(1).atS());
        assertThat(tasks(trace, Task.Kind.HARVEST))
                .singleElement()
                .asString()
                .contains("picked long enough: bolts or grows tough if left");
    }

    @Test
    void after_a_log_the_next_picking_counts_from_the_last_one_it_tells() throws IOException {
        Scenario rig = scenario("basil", 70, "visits.days = \"daily\"", "");
        VesselId bench = VesselId.tray("bench");
        double toldS = 36 * Time.DAY_S + 9 * Time.HOUR_S;
        Trace trace =
                Simulation.run(
                        rig.withLog(
                                new Log(
                                        List.of(
                                                new LogEntry.FilledUp(
                                                        20 * Time.DAY_S,
                                                        VesselId.reservoir("drum")),
                                                new LogEntry.LeavesPicked(toldS, bench, 90),
                                                new LogEntry.Looked(38 * Time.DAY_S)))));
        assertThat(pickings(trace).get(0).atS()).isEqualTo(toldS);
        assertThat(pickings(trace).get(0).freshG()).isCloseTo(90, within(1e-9));
        assertEquals(43 * Time.DAY_S + EIGHT, pickings(trace).get(1).atS());
        List<String> told = tasks(trace, Task.Kind.PICK_LEAVES);
        assertThat(told).hasSize(2);
        assertThat(told.get(0)).endsWith("about 90 g of leaf from the whole tray.");
        assertThat(told.get(1))
                .contains("14 Apr 2026 08:00")
                .contains(" of leaf from the whole tray; then about ")
                .doesNotContain("first picking");
    }

    @Test
    void what_was_never_picked_is_not_said_to_have_been() throws IOException {
        // In dull light coriander bolts before it has its weight.
        Trace trace = run("coriander", 90, "lamp.ppfd = \"40 umol/m2/s\"\nharvest = \"picked\"");
        assertThat(pickings(trace)).isEmpty();
        assertThat(tasks(trace, Task.Kind.HARVEST))
                .singleElement()
                .asString()
                .contains("light: 12 g is waited for");
    }

    @Test
    void one_line_tells_the_first_picking_and_those_after_it() throws IOException {
        Trace trace = run("basil", 70, "");
        List<Event> pickings = pickings(trace);
        double laterG =
                pickings.stream().skip(1).mapToDouble(Event::freshG).average().orElseThrow();
        String last =
                Dates.weekday(trace.clockAt(pickings.get(pickings.size() - 1).atS()).toLocalDate());
        assertThat(tasks(trace, Task.Kind.PICK_LEAVES))
                .singleElement()
                .asString()
                .contains(
                        "about %.0f g of leaf from the whole tray; first picking, then about %.0f g every 7 days, to %s"
                                .formatted(pickings.get(0).freshG(), laterG, last));
        assertThat(tasks(trace, Task.Kind.HARVEST)).isEmpty();
        int days = (int) (pickings.get(0).atS() / Time.DAY_S) + 3;
        assertThat(tasks(run("basil", days, ""), Task.Kind.PICK_LEAVES))
                .singleElement()
                .asString()
                .endsWith("of leaf from the whole tray; first picking.");
    }

    /** 40, 44 and 21 g of most 44 g fall below half, 22 g do not. */
    @Test
    void pickings_that_fall_to_less_than_half_say_that_they_outrun_growth() {
        assertThat(picked(21))
                .contains("then every 7 days, falling to 21 g on ", "picked faster than they grow");
        assertThat(picked(22)).contains("then about 33 g every 7 days").doesNotContain("falling");
    }

    private static String picked(double lastG) {
        MadeTrace trace = new MadeTrace(60);
        double[] grams = {40, 44, lastG};
        for (int i = 0; i < grams.length; i++) {
            trace.event(
                    new Event(
                            Event.Kind.LEAVES_PICKED,
                            (20 + 7 * i) * Time.DAY_S + EIGHT,
                            MadeTrace.TRAY,
                            0,
                            0,
                            0,
                            Double.NaN,
                            grams[i],
                            Event.AS_IT_GROWS));
        }
        return TaskWords.text(
                trace.advice().tasks().stream()
                        .filter(t -> t.kind() == Task.Kind.PICK_LEAVES)
                        .findFirst()
                        .orElseThrow());
    }

    @Test
    void a_longer_wait_in_an_absence_is_told_beside_the_usual_one() throws IOException {
        String visits =
                "visits.days = \"daily\"\nvisits.away = [{ from = 2026-04-12, to = 2026-05-01 }]";
        assertThat(tasks(run("basil", 90, visits, ""), Task.Kind.PICK_LEAVES))
                .singleElement()
                .asString()
                .containsPattern("every 7 days \\(once after 2[0-9] days\\), to");
    }

    private static List<String> tasks(Trace trace, Task.Kind kind) {
        return Advisor.advise(trace, trace).tasks().stream()
                .filter(task -> task.kind() == kind)
                .map(TaskWords::text)
                .toList();
    }

    @Test
    void picked_before_its_end_it_is_not_called_unready() throws IOException {
        Trace trace = run("basil", 70, "");
        assertEquals(
                0, RoomFindings.daysShort(trace, trace.plantings(trace.trays().get(0)).get(0)));
        Trace early = run("basil", 14, "");
        assertThat(RoomFindings.daysShort(early, early.plantings(early.trays().get(0)).get(0)))
                .isPositive();
    }

    @Test
    void what_a_plant_gave_counts_what_was_picked() throws IOException {
        Scenario scenario = scenario("basil", 70, "visits.days = \"daily\"", "");
        TraySeason.Yield yield =
                Simulation.season(scenario, Surroundings.forSeasons(scenario))
                        .trays()
                        .get(0)
                        .yields()
                        .get(0);
        double pickedG =
                pickings(Simulation.run(scenario)).stream().mapToDouble(Event::freshG).sum() / 6;
        assertThat(yield.pickedG()).isCloseTo(pickedG, within(1e-9));
        assertThat(yield.allG()).isCloseTo(yield.freshG() + pickedG, within(1e-9));
    }

    @Test
    void fruit_is_no_leaf_and_dates_and_once_contradict_each_other() throws IOException {
        String visits = "visits.days = \"daily\"";
        assertThat(faults(read("dwarf-tomato", 60, visits, "harvest = \"picked\"")))
                .contains("tray.bench.harvest")
                .contains("only with a leaf crop");
        assertThat(
                        faults(
                                read(
                                        "basil",
                                        60,
                                        visits,
                                        "harvest = \"once\"\nleaf_picking.from = 2026-03-20")))
                .contains("leaf_picking or harvest = \"once\"");
        assertThat(faults(read("basil", 60, visits, "harvest = \"twice\"")))
                .contains("once")
                .contains("picked");
        Planting.OfCrop dated =
                (Planting.OfCrop)
                        scenario("basil", 60, visits, "leaf_picking.from = 2026-03-20")
                                .trays()
                                .get(0)
                                .planting();
        assertThat(dated.tending().picking()).isEmpty();
        assertThat(dated.isPickedForLeaves()).isTrue();
    }

    private static String faults(Reading reading) {
        return assertInstanceOf(Reading.Faulty.class, reading)
                .problems()
                .toString()
                .replace('"', '\'')
                .replace("harvest = 'once'", "harvest = \"once\"");
    }

    @Test
    void a_crop_that_waits_for_one_picked_as_it_grows_is_noted() throws IOException {
        String next = "[[tray.bench.next]]\ncrop = \"lettuce\"\nplants = 6\n";
        String visits = "visits.days = \"daily\"";
        assertThat(notes(read("basil", 60, visits, "harvest = \"picked\"\n" + next)))
                .anyMatch(n -> n.contains("it waits until the basil before it is spent"));
        assertThat(notes(read("basil", 60, visits, next)))
                .noneMatch(n -> n.contains("it waits until"));
        assertThat(notes(read("basil", 60, visits, next + "planted = 2026-04-20")))
                .noneMatch(n -> n.contains("it waits until"));
    }

    @Test
    void a_crop_after_which_another_is_set_out_is_cut_once_and_one_with_a_day_waits_for_it()
            throws IOException {
        String second = "[[tray.bench.next]]\ncrop = \"mint\"\nplants = 4\n";
        String third = "[[tray.bench.next]]\ncrop = \"kale\"\nplants = 4\n";
        List<Boolean> picked = pickedOf(second + third);
        assertThat(picked).containsExactly(false, false, true);
        assertThat(pickedOf(second + "planted = 2026-04-20\n" + third))
                .containsExactly(true, false, true);
        assertThat(pickedOf(second + third + "planted = 2026-04-20\n"))
                .containsExactly(false, true, true);
    }

    private List<Boolean> pickedOf(String next) throws IOException {
        Tray tray = scenario("basil", 90, "visits.days = \"daily\"", next).trays().get(0);
        return IntStream.range(0, tray.plantings())
                .mapToObj(i -> (Planting.OfCrop) tray.planted(i).planting())
                .map(Planting.OfCrop::isPickedForLeaves)
                .toList();
    }

    private static List<String> notes(Reading reading) {
        return assertInstanceOf(Reading.Good.class, reading, () -> "" + reading).notes().stream()
                .map(Note::toString)
                .toList();
    }
}
