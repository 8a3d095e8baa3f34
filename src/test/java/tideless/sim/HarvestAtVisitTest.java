package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.TestTray;
import tideless.rig.Thirst;
import tideless.rig.Tray;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** A crop is cut by whoever comes: it grows on until then, or goes before they leave. */
class HarvestAtVisitTest {
    @TempDir Path folder;

    /** From Monday 2 March 2026, so that day 30 is Wednesday 1 April; the place is invented. */
    private Trace lettuce(String crop, String visits) throws IOException {
        String text =
                """
                title = "Harvest"
                start = 2026-03-02
                length = "45 days"
                [climate]
                kind = "room"
                day_temperature = "22 degC"
                [lamp]
                ppfd = "220 umol/m2/s"
                on = "06:00"
                off = "22:00"
                [feed]
                recipe = "hoagland-1"
                ec = "1.6 mS/cm"
                [reservoir.shelf]
                length = "60 cm"
                width = "48 cm"
                depth = "48 cm"
                floor_above_bench = "60 cm"
                [tray.a]
                length = "60 cm"
                width = "35 cm"
                depth = "8 cm"
                crop = "lettuce"
                plants = 4
                %s
                [tray.a.valve]
                setting = "6 cm"
                [visits]
                at = "08:00"
                %s
                """
                        .formatted(crop, visits);
        Path file = Files.writeString(folder.resolve("harvest.toml"), text);
        Reading reading = ScenarioReader.read(file);
        assertTrue(reading instanceof Reading.Good, reading.toString());
        return Simulation.run(((Reading.Good) reading).scenario());
    }

    private static Event cut(Trace trace) {
        List<Event> cuts =
                trace.events().stream().filter(e -> e.kind() == Event.Kind.HARVEST).toList();
        assertEquals(1, cuts.size());
        return cuts.get(0);
    }

    private static double grams(Trace trace, int hour) {
        return trace.trays().get(0).freshG().at(hour);
    }

    /** Ready at midnight before Wednesday, cut on Saturday at eight. */
    @Test
    void what_is_ready_between_visits_grows_on_to_the_next() throws IOException {
        Trace trace = lettuce("harvest_after = \"30 days\"", "days = [\"sat\"]");
        Event cut = cut(trace);
        assertEquals((33 * 24 + 8) * 3600, cut.atS(), 1e-6);
        assertEquals("", cut.detail());
        assertTrue(grams(trace, 33 * 24 + 7) > grams(trace, 30 * 24 + 8));
        assertEquals(grams(trace, 33 * 24 + 8), grams(trace, 44 * 24));
        assertEquals(0, trace.trays().get(0).transpirationM3().sum(33 * 24 + 8, 45 * 24));
    }

    @Test
    void what_is_ready_on_a_day_of_visits_is_cut_at_its_visit() throws IOException {
        Trace trace = lettuce("harvest_after = \"30 days\"", "");
        assertEquals((30 * 24 + 8) * 3600, cut(trace).atS(), 1e-6);
    }

    /** Away from day 30: a day's growth short of ready, over nine tenths of its weight. */
    @Test
    void what_is_nearly_ready_is_cut_before_an_absence() throws IOException {
        Trace trace =
                lettuce(
                        "harvest_after = \"30 days\"",
                        "away = [{ from = 2026-04-01, to = 2026-04-08 }]");
        Event cut = cut(trace);
        assertEquals((29 * 24 + 8) * 3600, cut.atS(), 1e-6);
        assertEquals(Event.BEFORE_ABSENCE, cut.detail());
    }

    /** Away from day 20, ten days before it is ready: it stands until day 33. */
    @Test
    void what_is_ready_later_in_an_absence_waits_for_its_end() throws IOException {
        Trace trace =
                lettuce(
                        "harvest_after = \"30 days\"",
                        "away = [{ from = 2026-03-22, to = 2026-04-03 }]");
        Event cut = cut(trace);
        assertEquals((33 * 24 + 8) * 3600, cut.atS(), 1e-6);
        assertEquals("", cut.detail());
    }

    /** Four days short of ready it weighs less than nine tenths of what it will. */
    @Test
    void what_would_be_cut_light_waits_for_the_end_of_an_absence() throws IOException {
        Trace trace =
                lettuce(
                        "harvest_after = \"30 days\"",
                        "away = [{ from = 2026-03-28, to = 2026-04-03 }]");
        assertEquals((33 * 24 + 8) * 3600, cut(trace).atS(), 1e-6);
    }

    @Test
    void what_is_ready_when_the_run_ends_is_cut_then() throws IOException {
        Trace trace = lettuce("harvest_after = \"45 days\"", "");
        assertEquals(45 * 86400, cut(trace).atS(), 1e-6);
    }

    /** Nobody comes in the last week: it goes at the last visit, where it is nearly ready. */
    @Test
    void what_is_nearly_ready_at_the_last_visit_is_cut_then() throws IOException {
        Trace trace =
                lettuce(
                        "harvest_after = \"44 days\"",
                        "away = [{ from = 2026-04-14, to = 2026-04-30 }]");
        assertEquals((42 * 24 + 8) * 3600, cut(trace).atS(), 1e-6);
        assertEquals(Event.BEFORE_ABSENCE, cut(trace).detail());
    }

    private static final String HAND_FED =
            """
            title = "Harvest"
            start = 2026-03-02
            length = "45 days"
            [climate]
            kind = "room"
            day_temperature = "22 degC"
            [lamp]
            ppfd = "220 umol/m2/s"
            on = "06:00"
            off = "22:00"
            [feed]
            recipe = "hoagland-1"
            ec = "1.6 mS/cm"
            [tray.a]
            length = "60 cm"
            width = "35 cm"
            depth = "8 cm"
            crop = "lettuce"
            plants = 4
            harvest_after = "30 days"
            start_level = "6 cm"
            gap = "10 %"
            [tray.a.hand]
            to = "6 cm"
            [visits]
            at = "08:00"
            """;

    private List<Double> hoursOf(Trace trace, Event.Kind kind) {
        return trace.events().stream()
                .filter(e -> e.kind() == kind)
                .map(e -> e.atS() / 3600)
                .toList();
    }

    /** Daily until the day before it is cut, and not on that day or later. */
    @Test
    void a_tray_is_not_topped_up_once_its_crop_is_cut() throws IOException {
        Path file = Files.writeString(folder.resolve("hand.toml"), HAND_FED);
        Reading reading = ScenarioReader.read(file);
        assertTrue(reading instanceof Reading.Good, reading.toString());
        Trace trace = Simulation.run(((Reading.Good) reading).scenario());
        List<Double> tops = hoursOf(trace, Event.Kind.TOP_UP);
        assertEquals(30 * 24 + 8, cut(trace).atS() / 3600, 1e-9);
        assertEquals(29 * 24 + 8, tops.get(tops.size() - 1), 1e-9);
        assertTrue(trace.trays().get(0).evaporationM3().sum(31 * 24, 44 * 24) > 1e-4);
    }

    /**
     * Filled up at every visit until what is left lasts the last week, of which 20 days are too
     * early to tell.
     */
    @Test
    void a_reservoir_is_not_filled_once_the_last_crop_below_it_is_cut() throws IOException {
        lettuce("harvest_after = \"30 days\"", ""); // writes the file
        Reading reading =
                ChangedScenario.read(
                        folder.resolve("harvest.toml"),
                        List.of(
                                new ChangedScenario.Change(
                                        "reservoir.shelf.refill", "at every visit")));
        Scenario one = ((Reading.Good) reading).scenario();
        List<Double> fills = hoursOf(Simulation.run(one), Event.Kind.REFILL);
        double last = fills.get(fills.size() - 1);
        assertTrue(last >= 20 * 24 && last <= 29 * 24 + 8, "" + last);
        Tray first = one.trays().get(0);
        Tray measured =
                TestTray.of(first)
                        .name("b")
                        .planting(new Planting.MeasuredThirst("log", 0, Thirst.constant(1e-7)))
                        .make();
        Scenario two = one.withTrays(List.of(first, measured));
        fills = hoursOf(Simulation.run(two), Event.Kind.REFILL);
        assertEquals(44 * 24 + 8, fills.get(fills.size() - 1), 1e-9);
    }
}
