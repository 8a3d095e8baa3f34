package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tomlj.Toml;

/** Files that would do harm, keep one waiting, or be read as something they do not say. */
class HostileFilesTest {
    private static final String GOOD = ScenarioReaderTest.GOOD;

    private static Reading read(String text) {
        return ScenarioReader.read("bench.toml", new FilesInMemory(text));
    }

    private static Reading readWith(String text, String name, String content) {
        FilesInMemory files = new FilesInMemory(text);
        files.put(name, content);
        return ScenarioReader.read("bench.toml", files);
    }

    private static List<String> faults(Reading reading) {
        return reading instanceof Reading.Faulty faulty
                ? faulty.problems().stream().map(Problem::toString).toList()
                : List.of();
    }

    private static List<String> notes(String text) {
        Reading reading = read(text);
        assertEquals(List.of(), faults(reading));
        return assertInstanceOf(Reading.Good.class, reading).notes().stream()
                .map(Note::toString)
                .toList();
    }

    private static final String DRINKING =
            GOOD.replace("crop = \"basil\"\nplants = 8", "thirst_file = \"t.csv\"");

    // Tables of measured values.

    @Test
    void a_row_with_more_cells_than_names_is_a_fault_that_thinks_of_a_decimal_comma() {
        assertThat(faults(readWith(DRINKING, "t.csv", "time,thirst\ndays,L/day\n0,1,5\n2,2,5\n")))
                .containsExactly(
                        "t.csv:3:3: found 3 cells, allowed: up to 2, one for each name in line 1\n"
                                + "    Maybe a decimal comma: write the decimal sign as a point, or"
                                + " part the cells of every row by semicolons.",
                        "t.csv:4:3: found 3 cells, allowed: up to 2, one for each name in line 1\n"
                                + "    Maybe a decimal comma: write the decimal sign as a point, or"
                                + " part the cells of every row by semicolons.");
    }

    @Test
    void empty_cells_behind_the_last_name_do_no_harm() {
        assertEquals(
                List.of(), faults(readWith(DRINKING, "t.csv", "time,thirst\ndays,L/day\n0,1,\n")));
    }

    @Test
    void semicolons_part_cells_and_let_the_decimal_sign_be_a_comma() {
        Reading reading = readWith(DRINKING, "t.csv", "time;thirst\ndays;L/day\n0;1,5\n1;.5\n");
        assertEquals(List.of(), faults(reading));
        tideless.rig.Planting planting =
                assertInstanceOf(Reading.Good.class, reading).scenario().trays().get(0).planting();
        assertEquals(
                1.5e-3 / 86400,
                ((tideless.rig.Planting.MeasuredThirst) planting).thirst().meanM3PerS(0, 3600),
                1e-18);
    }

    @ParameterizedTest
    @ValueSource(strings = {".5", "0.5", "0.50000000000000000000000000000001", "5e-1", "+.5"})
    void half_a_litre_may_be_written_so_in_a_table_as_in_a_scenario(String half) {
        assertEquals(
                List.of(),
                faults(readWith(DRINKING, "t.csv", "time,thirst\ndays,L/day\n0," + half + "\n")));
        Read<Measure> read = Measure.of(half + " L/day", List.of(UnitTable.FLOW), false);
        assertEquals(0.5e-3 / 86400, read.value().value(), 1e-20);
    }

    @Test
    void a_quoted_decimal_comma_is_told_what_to_write() {
        assertThat(faults(readWith(DRINKING, "t.csv", "time,thirst\ndays,L/day\n0,\"1,5\"\n")))
                .containsExactly(
                        "t.csv:3:2: thirst: found \"1,5\", allowed: from 0 L/day up to 1000 L/day\n"
                                + "    Write the decimal sign as a point, or part the cells by"
                                + " semicolons.");
    }

    @Test
    void weather_with_decimal_commas_is_refused_and_not_read_askew() {
        String weather =
                GOOD.replace(
                                "kind = \"room\"\nday_temperature = \"22 degC\"",
                                "kind = \"weather\"\nfile = \"w.csv\"")
                        .replace(
                                "[climate]",
                                "[place]\nlatitude = \"45 N\"\nlongitude = \"8 E\"\n[climate]");
        String csv =
                "time,temperature,humidity,global,wind\nUTC,degC,%,W/m2,m/s\n"
                        + "2026-03-01T00:00,4,5,80,0,1\n";
        assertThat(faults(readWith(weather, "w.csv", csv)))
                .anyMatch(fault -> fault.startsWith("w.csv:3:6: found 6 cells"));
    }

    // Times.

    @Test
    void a_visit_at_24_00_is_refused_for_it_would_be_another_days() {
        assertThat(faults(read(GOOD + "at = \"24:00\"\n")))
                .containsExactly(
                        "bench.toml:31:6: visits.at: found \"24:00\", allowed: a time of day from"
                                + " \"00:00\" up to \"23:59\", as \"08:00\"\n"
                                + "    Maybe \"23:59\", or \"00:00\", with which the same day"
                                + " begins.");
        assertEquals(List.of(), faults(read(GOOD.replace("off = \"20:00\"", "off = \"24:00\""))));
    }

    /** 60 days are borne; a day more may be a slip of the year. */
    @Test
    void an_absence_of_more_than_two_months_is_asked_about() {
        assertThat(notes(GOOD + "away = [{ from = 2026-01-05, to = 2026-03-05 }]\n")).isEmpty();
        assertThat(notes(GOOD + "away = [{ from = 2026-01-04, to = 2026-03-05 }]\n"))
                .containsExactly(
                        "bench.toml:31: visits.away: the absence from 2026-01-04 to 2026-03-05"
                                + " lasts 61 days; are the years as meant?");
    }

    @Test
    void a_day_that_no_calendar_has_is_told_as_such() {
        assertThat(faults(read(GOOD.replace("start = 2026-03-02", "start = 2026-02-30"))))
                .singleElement()
                .asString()
                .contains("found a date that no calendar has, allowed: a day that there is");
    }

    @Test
    void an_absence_and_a_day_of_topping_up_outside_the_run_are_said() {
        assertThat(notes(GOOD + "away = [{ from = 2027-01-01, to = 2027-01-05 }]\n"))
                .containsExactly(
                        "bench.toml:31: visits.away: the absence from 2027-01-01 to 2027-01-05 lies"
                                + " outside the run and changes nothing");
        // One that reaches into the run counts, and so does one that spans it.
        assertThat(notes(GOOD + "away = [{ from = 2026-01-10, to = 2026-03-05 }]\n")).isEmpty();
        // How one ends that outlasts the run is not known.
        assertThat(notes(GOOD + "away = [{ from = 2026-01-01, to = 2027-03-05 }]\n"))
                .last()
                .asString()
                .contains("outlasts the run, which ends on ");
        String hand =
                GOOD.replaceAll("(?s)\\[reservoir.*?\\[tray", "[tray")
                        .replace(
                                "[tray.basil.valve]\nsetting = \"4.5 cm\"",
                                "[tray.basil.hand]\nto = \"4.5 cm\"\ndays = [2026-03-09,"
                                        + " 2027-03-09]");
        assertThat(notes(hand))
                .containsExactly(
                        "bench.toml:23: tray.basil.hand.days: 2027-03-09 lies outside the run and is"
                                + " passed over");
    }

    // Long and hostile texts.

    @Test
    void ten_thousand_blank_lines_and_comments_never_reach_the_parser() {
        // The parser takes time with the cube of such lines in a row; so what is given to it must
        // not grow with them. No clock: a slow machine must not fail this.
        String idle = "\n# a remark\n \t \n".repeat(3334);
        String[] lines = GOOD.split("\n");
        StringBuilder text = new StringBuilder();
        for (String line : lines) {
            text.append(line).append('\n').append(line.startsWith("[") ? idle : "");
        }
        assertTrue(text.toString().split("\n").length > 10_000);
        TomlLines kept = TomlLines.of(text.toString());
        assertEquals(GOOD, kept.text());
        // Faults keep their own line and column.
        String faulty = idle + GOOD.replace("depth = \"8 cm\"", "depth = \"8 cn\"") + idle;
        assertThat(faults(read(faulty)).get(0))
                .startsWith("bench.toml:%s:9: tray.basil.depth: found".formatted(23 + 10_002));
        String broken = idle + GOOD.replace("start = 2026-03-02", "start = = 1") + idle;
        assertThat(faults(read(broken)).get(0))
                .startsWith("bench.toml:%s:9: found text that is no TOML".formatted(2 + 10_002));
        String twice = idle + GOOD.replace("ec =", "recipe = \"steiner\"\nec =");
        assertThat(faults(read(twice)))
                .anyMatch(
                        fault ->
                                fault.contains("line %s".formatted(12 + 10_002))
                                        && fault.contains(":%s:".formatted(13 + 10_002)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a = \"\"\"\n\n# no remark\n\n\"\"\"\n\n# remark\nb = 1\n",
                "a = '''\n#x\n\n'''\nb = 1\n",
                "a = '''it''s ''''\n\nb = 1\n",
                "a = \"\"\"\\\"\"\"\"\n#c\n\n\nb = 1\n",
                "a = \"# no remark\"\n\n# remark\nb = \"'''\"\n\nc = 1\n",
                "a = [1,\n\n# remark\n2]\r\n\r\nb = 1\r\n",
                "a = \"\\\\\"\n\nb = '\"\"\"'\n\nc = 1"
            })
    void leaving_idle_lines_out_changes_no_value(String text) {
        TomlLines lines = TomlLines.of(text);
        assertEquals(Toml.parse(text).toJson(), Toml.parse(lines.text()).toJson());
        assertEquals(List.of(), Toml.parse(lines.text()).errors());
        for (String key : Toml.parse(text).keySet()) {
            assertEquals(
                    Toml.parse(text).inputPositionOf(key),
                    lines.inFile(Toml.parse(lines.text()).inputPositionOf(key)),
                    key);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"\\u0007", "\\u001b[31m", "\\u202e", "\\u2066", "\\t", "\\n", "\\u200b"})
    void a_title_holds_nothing_that_cannot_be_seen(String unseen) {
        List<String> faults = faults(read(GOOD.replace("Test bench", "Test " + unseen + "bench")));
        assertThat(faults)
                .singleElement()
                .asString()
                .startsWith("bench.toml:1:9: title: found \"Test ");
        assertThat(faults.get(0)).contains("a character that cannot be seen");
    }

    @Test
    void a_title_that_is_too_long_is_told_how_long_it_may_be() {
        assertThat(faults(read(GOOD.replace("Test bench", "x".repeat(20_000)))).get(0))
                .contains("allowed: a text of up to 500 characters");
    }

    @Test
    void a_name_with_a_letter_that_is_none_of_ours_is_told_which_letters_may_stand() {
        assertThat(faults(read(GOOD.replace("tray.basil", "tray.\"b\u00e4sil\""))))
                .anyMatch(f -> f.contains("up to 40 of the letters a-z and A-Z, digits, - and _"));
    }

    @Test
    void a_file_of_many_faults_tells_twenty_and_counts_the_rest() {
        StringBuilder text = new StringBuilder(GOOD);
        for (int i = 0; i < 500; i++) {
            text.append("x").append(i).append(" = 1\n");
        }
        List<String> faults = faults(read(text.toString()));
        assertEquals(20, faults.size());
        assertThat(faults.get(19)).endsWith("And 480 more in this file.");
    }

    // What cannot be run.

    @Test
    void a_step_of_a_second_over_three_years_is_refused_with_its_cost_and_a_step_that_serves() {
        String text = GOOD.replace("70 days", "1095 days") + "[run]\nstep = \"1 s\"\n";
        assertThat(faults(read(text)))
                .singleElement()
                .asString()
                .startsWith(
                        "bench.toml:32:8: run.step: found \"1 s\" over 1095 days and 2 vessels: 189"
                                + " million steps, about 6 min of work, allowed: up to 2 million"
                                + " steps in time, and 40 million for all vessels together\n"
                                + "    Maybe step = \"1 min\".");
        assertEquals(List.of(), faults(read(text.replace("1 s", "1 min"))));
    }

    @Test
    void two_hundred_trays_over_three_years_by_the_minute_are_refused() {
        String text = GOOD.replace("70 days", "1095 days") + "[run]\nstep = \"1 min\"\n";
        assertThat(faults(read(withTrays(text, 200))))
                .singleElement()
                .asString()
                .contains("201 vessels: 317 million steps")
                .endsWith("Maybe step = \"10 min\".");
        assertEquals(List.of(), faults(read(withTrays(GOOD, 200))));
    }

    private static String withTrays(String text, int count) {
        StringBuilder more = new StringBuilder(text);
        for (int i = 1; i < count; i++) {
            more.append(
                    String.format(
                            Locale.ROOT,
                            "[tray.t%d]\nlength = \"60 cm\"\nwidth = \"35 cm\"\ndepth = \"8 cm\"\n"
                                    + "thirst = \"1 L/day\"\n",
                            i));
        }
        return more.toString();
    }

    @Test
    void a_reservoir_that_feeds_nothing_is_a_fault() {
        assertThat(faults(read(GOOD.replace("[tray.basil.valve]\nsetting = \"4.5 cm\"\n", ""))))
                .containsExactly(
                        "bench.toml:14:1: reservoir.shelf: found a reservoir that no valve names,"
                                + " allowed: a reservoir that feeds a tray\n"
                                + "    Maybe add a table [tray.basil.valve] with its setting, or"
                                + " leave the reservoir out.");
    }

    // Hints that would do harm.

    @Test
    void the_hint_for_a_missing_setting_wets_the_cups_and_does_not_strand_the_plants() {
        String deep = GOOD.replace("\"8 cm\"", "\"10 cm\"").replace("overflow = \"7 cm\"\n", "");
        // Cups hang 5 cm below the rim where nothing is stated: a level of 5 cm would not wet them.
        assertThat(faults(read(deep.replace("setting = \"4.5 cm\"\n", ""))))
                .singleElement()
                .asString()
                .endsWith("Maybe add setting = \"6.3 cm\", which wets the cups by 1.3 cm.");
        String hinted = deep.replace("setting = \"4.5 cm\"", "setting = \"6.3 cm\"");
        assertThat(notes(hinted)).isEmpty();
    }

    @Test
    void the_hint_for_a_missing_depth_of_a_reservoir_is_a_reservoirs() {
        assertThat(faults(read(GOOD.replace("depth = \"28 cm\"\n", ""))))
                .anyMatch(fault -> fault.endsWith("Maybe add depth = \"30 cm\"."));
    }

    // Crops.

    @Test
    void stomata_of_another_crop_ask_for_the_numbers_they_need() {
        List<String> told = new ArrayList<>();
        for (String crop : CropLibrary.SHIPPED.names()) {
            for (String form : List.of("light hyperbola", "light temperature humidity")) {
                String text =
                        GOOD.replace("\"basil\"", Key.quoted(crop))
                                + "[tray.basil.crop_override]\nstomata.form = "
                                + Key.quoted(form)
                                + "\n";
                told.addAll(faults(read(text)));
            }
        }
        assertThat(told).isNotEmpty();
        assertThat(told)
                .allMatch(
                        fault ->
                                fault.equals(
                                        "bench.toml:32:16: tray.basil.crop_override.stomata.form:"
                                                + " found \"light hyperbola\", allowed: a crop that"
                                                + " states stomata.a, stomata.b too\n"
                                                + "    Maybe add them beside it, or leave it out."));
    }

    @Test
    void a_leaf_crop_made_to_flower_asks_for_what_a_fruit_crop_has() {
        assertThat(
                        faults(
                                read(
                                        GOOD
                                                + "[tray.basil.crop_override]\nstages.flowering ="
                                                + " \"500 degC d\"\n")))
                .singleElement()
                .asString()
                .startsWith(
                        "bench.toml:32:20: tray.basil.crop_override.stages.flowering: found \"500"
                                + " degC d\", allowed: a crop that states")
                .contains("stages.full_load", "nutrition.fruit.nitrogen");
    }

    @Test
    void a_band_of_equal_ends_is_told_in_the_crop_file_that_has_it() {
        String crop = TestCrops.crop();
        String own = GOOD.replace("crop = \"basil\"", "crop_file = \"my.toml\"");
        String equal =
                crop.replaceFirst("(ec_low = \\{ value = )\"[^\"]*\"", "$1\"2.2 mS/cm\"")
                        .replaceFirst(
                                "(ec_high = \\{ value = )\"[^\"]*\"[^}]*(, source)",
                                "$1\"2.2 mS/cm\"$2");
        List<String> faults = faults(readWith(own, "my.toml", equal));
        assertThat(faults).isNotEmpty();
        assertThat(faults).allMatch(fault -> fault.startsWith("my.toml:"));
        assertThat(faults).noneMatch(fault -> fault.contains("null"));
    }

    @Test
    void a_trays_own_number_that_crosses_the_crops_is_told_in_the_scenario() {
        assertThat(
                        faults(
                                read(
                                        GOOD
                                                + "[tray.basil.crop_override]\nneeds.ec_low = \"9"
                                                + " mS/cm\"\n")))
                .singleElement()
                .asString()
                .startsWith(
                        "bench.toml:32:16: tray.basil.crop_override.needs.ec_low: found \"9 mS/cm\","
                                + " allowed: below needs.ec_high");
    }

    // On a disk.

    @TempDir Path folder;

    @Test
    void a_pipe_and_a_device_are_refused_and_not_waited_for() throws Exception {
        Path pipe = folder.resolve("pipe.csv");
        assumeTrue(Files.exists(Path.of("/usr/bin/mkfifo")) && Files.exists(Path.of("/dev/zero")));
        new ProcessBuilder("/usr/bin/mkfifo", pipe.toString()).start().waitFor();
        assertEquals(
                new Reading.Unreadable(pipe.toString(), "is a device or a pipe, not a file"),
                ScenarioReader.read(pipe));
        Path bench = folder.resolve("bench.toml");
        for (String name : List.of("pipe.csv", "/dev/zero")) {
            Files.writeString(bench, DRINKING.replace("t.csv", name));
            assertThat(faults(ScenarioReader.read(bench)))
                    .singleElement()
                    .asString()
                    .contains("which is a device or a pipe, not a file");
        }
    }

    @Test
    void a_name_that_is_none_on_this_system_is_a_fault_of_its_key() throws IOException {
        Path bench = folder.resolve("bench.toml");
        Files.writeString(bench, DRINKING.replace("t.csv", "none/" + "x".repeat(300) + ".csv"));
        assertThat(faults(ScenarioReader.read(bench)))
                .singleElement()
                .asString()
                .contains("tray.basil.thirst_file");
    }
}
