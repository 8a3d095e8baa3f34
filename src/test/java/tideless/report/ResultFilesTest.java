package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.sim.Event;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.study.Forecast;
import tideless.study.PhCourse;

class ResultFilesTest {
    @TempDir Path dir;

    private static Map<String, byte[]> render(Forecast forecast, boolean plots) {
        try {
            return ResultFiles.render(
                    forecast,
                    plots ? ResultFiles.Wanted.ALL : ResultFiles.Wanted.TEXTS,
                    Origins.UNKNOWN,
                    ShownIn.METRIC);
        } catch (ResultFiles.NotDrawn e) {
            throw new AssertionError(e);
        }
    }

    private static List<String> lines(byte[] csv) {
        return new String(csv, StandardCharsets.UTF_8).lines().toList();
    }

    @Test
    void the_texts_of_a_forecast_are_these() {
        assertThat(render(MadeUpForecast.threeTrays(), false).keySet())
                .containsExactly(
                        "result.json",
                        "tasks.csv",
                        "warnings.csv",
                        "reservoir-wall-tub.csv",
                        "tray-lettuce.csv",
                        "daily-lettuce.csv",
                        "tray-basilikum-gross.csv",
                        "daily-basilikum-gross.csv",
                        "tray-tomato.csv",
                        "daily-tomato.csv",
                        "report.html");
    }

    // The made-up tray stands at 11 mmol/L of nitrate and takes none of it.
    @Test
    void a_tray_has_a_row_a_day_with_units_and_what_holds_at_which_midnight() {
        List<String> rows =
                lines(render(MadeUpForecast.threeTrays(), false).get("daily-tomato.csv"));
        assertThat(rows).hasSize(1 + 70);
        List<String> header = List.of(rows.get(0).split(","));
        assertThat(header)
                .startsWith("date", "drunk [L/d]")
                .contains(
                        "fresh_mass_before_growth_at_24h [g/plant]",
                        "growth_at_0h [g/plant]",
                        "NO3_uptake [mmol/d]",
                        "NO3_uptake_per_litre [mmol/L]");
        assertThat(header.subList(1, header.size()))
                .allMatch(h -> h.matches("[A-Za-z0-9_]+ \\[[A-Za-z0-9/]+\\]"));
        assertThat(rows).allMatch(row -> row.split(",", -1).length == header.size());
        assertThat(rows.get(1)).startsWith("2026-09-07,");
        assertThat(rows.get(70)).startsWith("2026-11-15,");
    }

    // The row of a day holds what the hourly row of its 24:00 holds, and the sum of its 24 rows.
    @Test
    void a_days_row_is_the_sum_of_its_hours_and_the_state_at_its_end() {
        Map<String, byte[]> files = render(MadeUpForecast.threeTrays(), false);
        List<String> hours = lines(files.get("tray-tomato.csv"));
        List<String> days = lines(files.get("daily-tomato.csv"));
        int day = 40;
        double litres = 0;
        for (int h = 1; h <= 24; h++) {
            litres += cell(hours, 24 * day + h, "transpiration [L/h]");
        }
        assertThat(hours.get(24 * day + 24)).startsWith("2026-10-18T00:00,");
        assertThat(days.get(day + 1)).startsWith("2026-10-17,");
        assertThat(cell(days, day + 1, "drunk [L/d]")).isCloseTo(litres, within(1e-4 * litres));
        assertThat(cell(days, day + 1, "solution_at_24h [L]"))
                .isEqualTo(cell(hours, 24 * day + 24, "solution [L]"));
        assertThat(cell(days, day + 1, "growth_at_0h [g/plant]"))
                .isCloseTo(
                        cell(hours, 24 * day + 24, "fresh_mass [g/plant]")
                                - cell(hours, 24 * day, "fresh_mass [g/plant]"),
                        within(1e-3));
    }

    private static double cell(List<String> rows, int row, String column) {
        int at = List.of(rows.get(0).split(",")).indexOf(column);
        return Double.parseDouble(rows.get(row).split(",", -1)[at]);
    }

    @Test
    void a_tray_has_a_row_an_hour_and_units_in_its_header() {
        List<String> rows =
                lines(render(MadeUpForecast.threeTrays(), false).get("tray-tomato.csv"));
        assertThat(rows).hasSize(1 + 70 * 24);
        String[] header = rows.get(0).split(",");
        assertThat(header).hasSize(1 + 28 + 2 + 11).startsWith("time", "level_above_floor [mm]");
        assertThat(List.of(header).subList(1, header.length))
                .allMatch(h -> h.matches("[A-Za-z0-9_]+ \\[[A-Za-z0-9/]+\\]"));
        assertThat(rows).allMatch(row -> row.split(",", -1).length == header.length);
        // The first sample closes the first hour, at 01:00; the feed holds 11 mmol/L of nitrate.
        assertThat(rows.get(1)).startsWith("2026-09-07T01:00,").contains(",1234.57,");
        assertThat(rows.get(1).split(",")[31]).isEqualTo("11");
        assertThat(rows.get(1680)).startsWith("2026-11-16T00:00,");
    }

    @Test
    void a_dry_tray_has_empty_cells_where_there_is_no_number() {
        // The made-up lettuce tray gets no feed for two and a half days and runs dry.
        List<String> rows =
                lines(render(MadeUpForecast.threeTrays(), false).get("tray-lettuce.csv"));
        List<String> header = List.of(rows.get(0).split(","));
        List<String[]> dry =
                rows.stream().map(r -> r.split(",", -1)).filter(r -> r[1].equals("0")).toList();
        assertThat(dry).isNotEmpty();
        assertThat(dry)
                .allSatisfy(
                        row -> {
                            assertThat(row[header.indexOf("ec_25C [mS/cm]")]).isEmpty();
                            assertThat(row[header.indexOf("NO3 [mmol/L]")]).isEmpty();
                        });
    }

    @Test
    void the_result_parses_and_holds_every_task_total_and_ledger() throws IOException {
        Forecast forecast = MadeUpForecast.threeTrays();
        JsonNode json = new ObjectMapper().readTree(render(forecast, false).get("result.json"));
        assertThat(json.fieldNames())
                .toIterable()
                .containsExactly(
                        "program",
                        "format",
                        "scenario",
                        "seed",
                        "verdict",
                        "tasks",
                        "warnings",
                        "sizings",
                        "reservoirs",
                        "trays",
                        "ledgers");
        assertThat(json.at("/program/version").asText()).matches("[0-9]+\\.[0-9]+\\.[0-9]+.*");
        assertThat(json.get("seed").asLong()).isEqualTo(7);
        assertThat(json.get("format").asInt()).isEqualTo(2);
        assertThat(json.at("/verdict/survives").isBoolean()).isTrue();
        assertThat(json.at("/verdict/first_harm/kind").asText()).isEqualTo("wilted");
        assertThat(json.at("/verdict/first_harm/vessel/kind").asText()).isEqualTo("tray");
        assertThat(json.at("/verdict/first_harm/vessel/name").asText()).isEqualTo("Lettuce");
        assertThat(json.at("/verdict/first_harm/at").asText()).isEqualTo("2026-10-30T05:00");
        assertThat(json.at("/verdict/absences/0/from").asText()).isEqualTo("2026-10-03");
        assertThat(json.at("/verdict/absences/0/to").asText()).isEqualTo("2026-10-12");
        assertThat(json.at("/verdict/absences/0/survives").asBoolean()).isTrue();
        assertThat(json.at("/verdict/absences/0/fill_up_on").asText()).isEqualTo("2026-10-02");
        assertThat(json.at("/verdict/absences/0/lowest_level_mm").asDouble()).isEqualTo(41.2);
        assertThat(json.at("/verdict/absences/0/filled_up/survives").asBoolean()).isTrue();
        assertThat(json.at("/verdict/absences/0/filled_up/lowest_level_mm").asDouble())
                .isEqualTo(52.3);
        assertThat(json.at("/warnings/1/kind").asText()).isEqualTo("outgrown");
        assertThat(json.at("/warnings/1/vessel/kind").asText()).isEqualTo("reservoir");
        assertThat(json.at("/warnings/1/limit").asDouble()).isEqualTo(3);
        assertThat(json.at("/warnings/1/unit").asText()).isEqualTo("d");
        assertThat(json.at("/warnings/1/cause").asText()).isEqualTo("drawn-faster-than-visits");
        assertThat(json.at("/warnings/1/cure").asText()).isEqualTo("larger-reservoir");
        assertThat(json.at("/warnings/1/cures/0/figures/enough_litres").asDouble())
                .isEqualTo(61.04);
        assertThat(json.get("tasks")).hasSize(forecast.advice().tasks().size());
        assertThat(json.at("/sizings/0/days_when_full")).hasSize(70);
        assertThat(json.at("/sizings/0/outgrown_from").asText()).isEqualTo("2026-10-18");
        assertThat(json.get("trays")).hasSize(3);
        // 70 days of 24 hours at 0.002 L.
        assertThat(json.at("/trays/0/evaporated_litres").asDouble()).isEqualTo(3.36);
        assertThat(json.get("ledgers")).hasSize(12);
        assertThat(json.at("/ledgers/1/residual").asDouble()).isZero();
        assertThat(json.at("/ledgers/0/relative_residual").asDouble()).isLessThan(1e-15);
    }

    // The first tray's crop is lost when 1200 hours are over; what is read later does not count,
    // nor
    // an hour without a reading.
    @Test
    void the_ph_is_told_with_its_doubt_while_roots_live() throws IOException {
        Forecast whole = MadeUpForecast.threeTrays();
        Trace made = whole.trace();
        TrayTrace tray = made.trays().get(0);
        Event lost =
                new Event(
                        Event.Kind.DIED, 1200 * 3600, tray.tray().id(), 0, 0, 0, 0, Double.NaN, "");
        Trace trace =
                new Trace(
                        made.scenario(),
                        made.hours(),
                        made.trays(),
                        made.reservoirs(),
                        List.of(lost),
                        made.water(),
                        made.components());
        int living = 1200;
        int hours = made.hours();
        double[] lowest = new double[hours];
        double[] highest = new double[hours];
        Arrays.fill(lowest, 5.2);
        Arrays.fill(highest, 6.8);
        lowest[3] = 4.9;
        highest[living - 1] = 7.7;
        lowest[living] = 3;
        highest[living] = 9;
        lowest[4] = Double.NaN;
        PhCourse course = new PhCourse(Series.of(lowest), Series.of(highest));
        Forecast forecast = whole.withTrace(trace).withPh(List.of(course, course, course));
        Map<String, byte[]> files = render(forecast, false);
        JsonNode ph =
                new ObjectMapper()
                        .readTree(files.get("result.json"))
                        .at("/trays/0/ph_while_rooted");
        assertThat(ph.get("lowest_plausible").asDouble()).isEqualTo(4.9);
        assertThat(ph.get("highest_plausible").asDouble()).isEqualTo(7.7);
        double[] likely = tray.ph().toArray();
        assertThat(ph.get("lowest").asDouble())
                .isEqualTo(Arrays.stream(likely).limit(living).min().orElseThrow(), within(1e-9));
        List<String> rows = lines(files.get("tray-lettuce.csv"));
        assertThat(cell(rows, 4, "ph_lowest [pH]")).isEqualTo(4.9);
        assertThat(cell(rows, living, "ph_highest [pH]")).isEqualTo(7.7);
    }

    @Test
    void a_result_tells_nothing_of_the_machine() {
        String json =
                new String(
                        render(MadeUpForecast.threeTrays(), false).get("result.json"),
                        StandardCharsets.UTF_8);
        assertThat(json)
                .doesNotContain(System.getProperty("user.dir"))
                .doesNotContain("\r")
                .doesNotContain("NaN")
                .endsWith("}\n");
    }

    @Test
    void the_same_forecast_gives_the_same_texts() {
        Map<String, byte[]> once = render(MadeUpForecast.threeTrays(), false);
        Map<String, byte[]> again = render(MadeUpForecast.threeTrays(), false);
        assertThat(again.keySet()).isEqualTo(once.keySet());
        once.forEach((name, bytes) -> assertThat(again.get(name)).as(name).isEqualTo(bytes));
    }

    @Test
    void a_folder_that_is_a_file_is_a_result_not_an_exception() throws IOException {
        Path file = Files.writeString(dir.resolve("out"), "mine");
        WriteResult result =
                ResultFiles.write(
                        MadeUpForecast.threeTrays(),
                        file,
                        ResultFiles.Wanted.TEXTS,
                        Origins.UNKNOWN,
                        ShownIn.METRIC);
        assertThat(result.written()).isFalse();
        assertThat(result.files()).isEmpty();
        assertThat(result.problem()).isEqualTo(file + ": is a file, not a folder");
    }

    @Test
    void all_files_arrive() {
        WriteResult result =
                ResultFiles.write(
                        MadeUpForecast.threeTrays(),
                        dir,
                        ResultFiles.Wanted.TEXTS,
                        Origins.UNKNOWN,
                        ShownIn.METRIC);
        assertThat(result.written()).isTrue();
        assertThat(result.files()).allMatch(Files::isRegularFile).hasSize(11);
    }

    @Test
    void a_machine_without_fonts_is_told_in_plain_words() {
        // As sun.font.SunFontManager throws it on a machine without any font.
        Throwable cause = new Error("Probable fatal error:No physical fonts found.");
        assertThat(ResultFiles.notDrawn(cause))
                .hasMessageContaining("no fonts on this machine")
                .hasMessageContaining("--no-plots");
    }

    @Test
    void a_fault_of_ours_is_not_dressed_up() {
        assertThatThrownBy(() -> ResultFiles.notDrawn(new IllegalStateException("ours")))
                .isInstanceOf(IllegalStateException.class);
    }
}
