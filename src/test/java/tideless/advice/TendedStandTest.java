package tideless.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.scenario.GrowingBench;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Ledger;
import tideless.sim.Picked;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.words.TaskWords;

/** Whole runs in which hands pick, thin, space and top. */
class TendedStandTest {
    @TempDir Path folder;

    private Trace run(String crop, int days, String more) throws IOException {
        Path file = folder.resolve("bench.toml");
        Files.writeString(
                file, GrowingBench.text(days, "visits.days = \"daily\"", 24, 300, crop, more));
        Reading reading = ScenarioReader.read(file);
        Trace trace =
                Simulation.run(
                        assertInstanceOf(Reading.Good.class, reading, () -> "" + reading)
                                .scenario());
        assertTrue(trace.water().relativeResidual() <= 1e-12, "" + trace.water());
        for (Ledger ledger : trace.components()) {
            assertTrue(ledger.relativeResidual() <= 1e-12, "" + ledger);
        }
        return trace;
    }

    private static List<String> tasks(Trace trace, Task.Kind kind) {
        return Advisor.advise(trace, trace).tasks().stream()
                .filter(task -> task.kind() == kind)
                .map(TaskWords::text)
                .toList();
    }

    private static double drunkL(Trace trace, int fromDay, int toDay) {
        double m3 = 0;
        for (int h = fromDay * 24; h < toDay * 24; h++) {
            m3 += trace.trays().get(0).of(TraySeries.TRANSPIRATION).at(h);
        }
        return m3 * 1000;
    }

    @Test
    void basil_is_picked_every_ten_days_grows_again_and_each_picking_has_its_weight()
            throws IOException {
        String picking =
                "leaf_picking.from = 2026-03-27\nleaf_picking.every = \"10 days\"\nleaf_picking.share = \"50 %\"";
        Trace picked = run("basil", 70, "plants_per_m2 = 25\n" + picking);
        Trace left = run("basil", 70, "plants_per_m2 = 25\nharvest_after = \"70 days\"");
        List<Event> pickings =
                picked.events().stream().filter(e -> e.kind() == Event.Kind.LEAVES_PICKED).toList();
        assertThat(pickings).hasSize(5);
        for (Event event : pickings) {
            assertThat(event.freshG()).isGreaterThan(30);
        }
        assertThat(drunkL(picked, 26, 30)).isLessThan(0.9 * drunkL(left, 26, 30));
        assertThat(picked.events()).noneMatch(e -> e.kind() == Event.Kind.HARVEST);
        List<String> told = tasks(picked, Task.Kind.PICK_LEAVES);
        assertThat(told).hasSize(5);
        assertThat(told.get(0))
                .startsWith("pick leaves, tray bench, ")
                .contains("27 Mar 2026 08:00")
                .contains(
                        "about %.0f g of leaf from the whole tray"
                                .formatted(pickings.get(0).freshG()));
    }

    @Test
    void thinned_lettuce_makes_fewer_and_heavier_heads() throws IOException {
        String plants = "plants = 12\nharvest_after = \"34 days\"\n";
        Trace whole = run("lettuce", 36, plants);
        Trace thinned =
                run("lettuce", 36, plants + "thinning = [{ from = 2026-03-16, plants = 6 }]");
        int end = 34 * 24;
        double one = whole.trays().get(0).freshG().at(end);
        double other = thinned.trays().get(0).freshG().at(end);
        assertThat(other).isGreaterThan(1.3 * one);
        assertThat(6 * other).isLessThan(12 * one);
        assertThat(tasks(thinned, Task.Kind.THIN_OUT))
                .singleElement()
                .asString()
                .startsWith("thin out, tray bench, ")
                .contains("leave 6 plants; what comes out weighs about ");
    }

    @Test
    void spaced_lettuce_drinks_and_weighs_more() throws IOException {
        String plants = "plants = 12\nharvest_after = \"34 days\"\n";
        Trace close = run("lettuce", 36, plants);
        Trace apart =
                run(
                        "lettuce",
                        36,
                        plants + "respacing = [{ from = 2026-03-16, plants_per_m2 = 20 }]");
        assertEquals(drunkL(close, 0, 14), drunkL(apart, 0, 14));
        assertThat(drunkL(apart, 20, 34)).isGreaterThan(1.3 * drunkL(close, 20, 34));
        assertThat(tasks(apart, Task.Kind.SPACE_OUT))
                .singleElement()
                .asString()
                .contains("to 20 plants a m2");
    }

    @Test
    void a_topped_tomato_ends_once_its_last_fruit_is_ripe() throws IOException {
        String plants = "plants = 1\nplants_per_m2 = 2.5\n";
        Trace topped = run("dwarf-tomato", 110, plants + "topped = 2026-04-10");
        Trace left = run("dwarf-tomato", 110, plants);
        double end = firstS(topped, Event.Kind.HARVEST);
        double usual = firstS(left, Event.Kind.HARVEST);
        assertTrue(end < usual, end / 86400 + " against " + usual / 86400);
        int day = 60 * 24;
        assertThat(topped.trays().get(0).fruitFreshG().at(day))
                .isGreaterThan(left.trays().get(0).fruitFreshG().at(day));
        assertThat(tasks(topped, Task.Kind.TOP))
                .singleElement()
                .asString()
                .contains("pinch out every growing point");
    }

    private static double firstS(Trace trace, Event.Kind kind) {
        return trace.events().stream()
                .filter(event -> event.kind() == kind)
                .mapToDouble(Event::atS)
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
    }

    @Test
    void picked_leaves_are_counted_by_week_and_in_all() throws IOException {
        Trace trace =
                run(
                        "basil",
                        40,
                        """
                        plants = 4
                        leaf_picking.from = 2026-03-22
                        leaf_picking.every = "7 days"
                        leaf_picking.share = "40 %"
                        """);
        Picked picked = Picked.of(trace.plantings(trace.trays().get(0)).get(0));
        double told =
                trace.events().stream()
                        .filter(event -> event.kind() == Event.Kind.LEAVES_PICKED)
                        .mapToDouble(Event::freshG)
                        .sum();
        assertTrue(told > 0);
        assertEquals(told, picked.allLeavesG(), 1e-9);
        assertEquals(0, picked.allFruitG());
        assertThat(picked.leavesG()).hasSize(6);
        assertThat(picked.leavesG().get(0)).isZero();
        assertThat(picked.leavesG().get(2)).isPositive(); // day 20
    }

    @Test
    void a_cucumber_is_picked_unripe_and_a_tomato_ripe() throws IOException {
        assertThat(tasks(run("cucumber", 50, "plants = 1\nplants_per_m2 = 2"), Task.Kind.PICK))
                .singleElement()
                .asString()
                .contains("fruit of eating size every 3 days");
        assertThat(tasks(run("dwarf-tomato", 80, "plants = 2"), Task.Kind.PICK))
                .singleElement()
                .asString()
                .contains("ripe fruit every 3 days");
    }

    @Test
    void ripe_fruit_is_less_than_has_grown_by_what_still_hangs() throws IOException {
        Trace trace = run("dwarf-tomato", 100, "plants = 2");
        Picked picked = Picked.of(trace.plantings(trace.trays().get(0)).get(0));
        Event ripe =
                trace.events().stream()
                        .filter(event -> event.kind() == Event.Kind.FIRST_RIPE)
                        .findFirst()
                        .orElseThrow();
        int week = (int) (ripe.atS() / (7 * 86_400.0));
        double before = picked.fruitG().subList(0, week).stream().mapToDouble(g -> g).sum();
        double grown = 2 * trace.trays().get(0).fruitFreshG().at(trace.hours() - 1);
        assertEquals(0, before, 1e-9);
        assertThat(picked.allFruitG()).isBetween(0.3 * grown, 0.9 * grown);
    }
}
