package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.PlantingTrace;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.study.threads.ThreadPool;

/** Crops in turn, in what a run prints and writes. */
class SuccessionReportTest {
    private static final Forecast BENCH = forecast();

    private static Forecast forecast() {
        Path file = Path.of("scenarios/two-crops.toml");
        Reading.Good good = (Reading.Good) ScenarioReader.read(file);
        try {
            return Forecasts.of(good.scenario(), 1, 3, new ThreadPool(2));
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Map<String, byte[]> files() {
        try {
            return ResultFiles.render(
                    BENCH, ResultFiles.Wanted.TEXTS, Origins.UNKNOWN, ShownIn.METRIC);
        } catch (ResultFiles.NotDrawn e) {
            throw new AssertionError(e);
        }
    }

    private static List<PlantingTrace> plantings(int tray) {
        return BENCH.trace().plantings(BENCH.trace().trays().get(tray));
    }

    @Test
    void the_short_table_tells_the_litres_that_cleaning_between_two_crops_takes() {
        StringWriter text = new StringWriter();
        ForecastTable.print(
                new PrintWriter(text),
                BENCH,
                false,
                100,
                ForecastTable.Depth.BRIEF,
                Telling.METRIC);
        List<String> lines = text.toString().lines().filter(l -> l.startsWith("  clean")).toList();
        // Twice on the left, once on the right; what follows the last harvests takes none.
        assertThat(lines).hasSize(3).allMatch(l -> l.matches(".*08:00 +\\d+\\.\\d  .*"));
    }

    @Test
    void result_json_tells_each_crop_of_a_tray() throws Exception {
        JsonNode json = new ObjectMapper().readTree(files().get("result.json"));
        JsonNode left = json.get("trays").get(0).get("plantings");
        assertEquals(3, left.size());
        assertEquals("basil", left.get(1).get("crop").asText());
        assertEquals(8, left.get(1).get("plants").asInt());
        assertEquals("2026-03-23T08:00", left.get(0).get("harvested").asText());
        assertEquals("2026-03-23T08:00", left.get(1).get("planted").asText());
        assertTrue(left.get(1).get("lost").isNull());
        double grams = BENCH.trace().trays().get(0).freshG().at(plantings(0).get(1).lastHour());
        assertEquals(grams, left.get(1).get("fresh_g_per_plant").asDouble(), 1e-6 * grams);
        double litres = 0;
        for (JsonNode planting : left) {
            litres += planting.get("transpired_litres").asDouble();
        }
        assertEquals(json.get("trays").get(0).get("transpired_litres").asDouble(), litres, 1e-7);
        JsonNode yields = json.get("likely").get("yields");
        assertEquals(5, yields.size());
        assertEquals("basil", yields.get(4).get("crop").asText());
        for (JsonNode task : json.get("tasks")) {
            assertEquals(
                    List.of("harvest", "sow", "set-out", "plant", "sow-next")
                            .contains(task.get("kind").asText()),
                    task.has("crop"));
        }
    }

    @Test
    void crops_in_turn_are_told_in_the_order_of_their_dates() {
        StringWriter text = new StringWriter();
        ForecastTable.print(
                new PrintWriter(text), BENCH, false, 120, ForecastTable.Depth.ALL, Telling.METRIC);
        String told = text.toString();
        assertTrue(told.indexOf("plant, basil") > told.indexOf("harvest, lettuce"), told);
        assertTrue(told.indexOf("harvest, basil") > told.indexOf("plant, basil"), told);
    }

    @Test
    void a_tray_of_one_crop_is_told_as_before() throws Exception {
        JsonNode json =
                new ObjectMapper()
                        .readTree(
                                ResultFiles.render(
                                                MadeUpForecast.threeTrays(),
                                                ResultFiles.Wanted.TEXTS,
                                                Origins.UNKNOWN,
                                                ShownIn.METRIC)
                                        .get("result.json"));
        assertThat(json.get("trays").findValues("plantings")).isEmpty();
        assertThat(json.get("tasks").findValues("crop")).isEmpty();
        assertThat(json.get("warnings").findValues("crop")).isEmpty();
    }

    @Test
    void the_table_names_the_crop_of_each_task() {
        StringWriter text = new StringWriter();
        ForecastTable.print(
                new PrintWriter(text), BENCH, false, 100, ForecastTable.Depth.ALL, Telling.METRIC);
        assertThat(text.toString())
                .contains("Tray left (lettuce, then basil, then lettuce)")
                .contains("harvest, lettuce   Mon 23 Mar 08:00")
                .contains(
                        "plant, basil       Mon 23 Mar 08:00           8 plants, 21 days in the nursery")
                .contains("sow next, lettuce  Fri 3 Apr 08:00")
                .contains("No warnings.");
    }

    /** Growth is that of the midnight: on the day of a change the weight of the crop before. */
    @Test
    void a_change_of_crop_is_no_growth() {
        List<String> rows =
                new String(files().get("daily-left.csv"), StandardCharsets.UTF_8).lines().toList();
        List<String> head = List.of(rows.get(0).split(",", -1));
        int at = head.indexOf("growth_at_0h [g/plant]");
        for (String row : rows.subList(1, rows.size())) {
            String growth = row.split(",", -1)[at];
            assertTrue(Double.parseDouble(growth) >= 0, row);
        }
    }
}
