package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.advice.Task;
import tideless.rig.Scenario;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.solution.ElectricalConductivity;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.words.TaskWords;

/** A reservoir, or a tray filled by hand, with a feed of its own. */
class OwnFeedsTest {
    private static final String RIG =
            """
            title = "Two strengths"
            start = 2026-03-02
            length = "21 days"
            [climate]
            kind = "room"
            day_temperature = "22 degC"
            [feed]
            recipe = "hoagland-1"
            ec = "1.2 mS/cm"
            [reservoir.leaf]
            length = "40 cm"
            width = "30 cm"
            depth = "30 cm"
            floor_above_bench = "60 cm"
            [reservoir.fruit]
            length = "40 cm"
            width = "30 cm"
            depth = "30 cm"
            floor_above_bench = "60 cm"
            feed_ec = "2.4 mS/cm"
            [tray.salad]
            length = "60 cm"
            width = "40 cm"
            depth = "8 cm"
            thirst = "1 L/day"
            [tray.salad.valve]
            from = "leaf"
            setting = "4 cm"
            [tray.pepper]
            length = "60 cm"
            width = "40 cm"
            depth = "8 cm"
            thirst = "1 L/day"
            [tray.pepper.valve]
            from = "fruit"
            setting = "4 cm"
            [tray.jug]
            length = "60 cm"
            width = "40 cm"
            depth = "8 cm"
            start_level = "5 cm"
            thirst = "1 L/day"
            feed_ec = "0.8 mS/cm"
            [tray.jug.hand]
            to = "5 cm"
            [visits]
            days = ["mon", "wed", "fri"]
            """;

    private static Reading read(String text) {
        return ScenarioReader.read("two.toml", new FilesInMemory(text));
    }

    private static Scenario rig() {
        return ((Reading.Good) read(RIG)).scenario();
    }

    private static List<Double> first(Trace trace) {
        return trace.trays().stream().map(tray -> tray.ecMsPerCm().at(0)).toList();
    }

    @Test
    void each_vessel_starts_with_its_own_and_is_filled_with_it() {
        Scenario rig = rig();
        Trace trace = Simulation.run(rig);
        double[] fed = {1.2, 2.4, 0.8};
        for (int i = 0; i < fed.length; i++) {
            assertEquals(
                    fed[i],
                    ElectricalConductivity.at25MsPerCm(
                            rig.feedOf(rig.trays().get(i)).composition()),
                    1e-6);
            assertEquals(fed[i], first(trace).get(i), 0.01, "at the start");
            assertEquals(
                    fed[i],
                    ElectricalConductivity.at25MsPerCm(
                            rig.trays().get(i).startLiquid().composition()),
                    1e-6);
        }
        // Plants of a stated thirst take salts along as they drink: 21 litres through 10 to 12
        // leave the strength near the feed's own. With another's feed it would be half or twice it.
        int end = trace.hours() - 1;
        for (int i = 0; i < fed.length; i++) {
            double times = trace.trays().get(i).ecMsPerCm().at(end) / fed[i];
            assertEquals(1, times, 0.25, rig.trays().get(i).name());
        }
    }

    @Test
    void each_strength_is_mixed_by_itself_and_the_sheet_is_of_the_feed_of_all_others() {
        Forecast forecast = Forecasts.of(rig(), 1);
        List<Task> mixed =
                forecast.advice().tasks().stream()
                        .filter(task -> task.kind() == Task.Kind.MIX)
                        .toList();
        assertThat(mixed)
                .extracting(task -> TaskWords.brief(task).replaceAll("[0-9.]+ L into", "L into"))
                .containsExactly(
                        "feed of 1.20 mS/cm: L into leaf, L into salad",
                        "feed of 2.40 mS/cm: L into fruit, L into pepper",
                        "feed of 0.80 mS/cm: L into jug");
        assertEquals(12, mixed.get(2).litres(), 1e-6); // 60 x 40 x 5 cm
        assertEquals(mixed.get(0).litres(), forecast.litresOnDayOne(), 1e-9);
    }

    @Test
    void an_error_of_mixing_is_that_of_all_feeds() {
        Scenario half = rig().withFeeds(feed -> feed.times(0.5));
        for (int i = 0; i < 3; i++) {
            double was = rig().feedOf(rig().trays().get(i)).composition().molPerM3(0);
            assertEquals(
                    0.5 * was, half.feedOf(half.trays().get(i)).composition().molPerM3(0), 1e-12);
            assertEquals(
                    0.5 * was, half.trays().get(i).startLiquid().composition().molPerM3(0), 1e-12);
        }
    }

    @Test
    void a_tray_with_a_valve_has_that_of_its_reservoir() {
        String own = RIG.replace("[tray.salad]\n", "[tray.salad]\nfeed_ec = \"2 mS/cm\"\n");
        Reading.Faulty faulty = (Reading.Faulty) read(own);
        assertEquals(1, faulty.problems().size());
        assertThat(faulty.problems().get(0).toString())
                .contains("tray.salad.feed_ec", "[reservoir.leaf] feed_ec");
    }

    @Test
    void a_feed_thinner_than_its_water_is_refused_where_it_stands() {
        String hard =
                RIG.replace("[feed]\n", "[water]\nsource = \"hard-tap\"\n[feed]\n")
                        .replace("feed_ec = \"0.8 mS/cm\"", "feed_ec = \"0.3 mS/cm\"");
        Reading.Faulty faulty = (Reading.Faulty) read(hard);
        assertEquals(1, faulty.problems().size());
        assertThat(faulty.problems().get(0).toString()).contains("tray.jug.feed_ec");
    }
}
