package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tideless.rig.Climate;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.solution.ElectricalConductivity;

class ScenarioReaderTest {
    /** A small scenario that is right; each test breaks one thing in it. Line numbers beside. */
    static final String GOOD =
            """
            title = "Test bench"
            start = 2026-03-02
            length = "70 days"
            [climate]
            kind = "room"
            day_temperature = "22 degC"
            [lamp]
            ppfd = "220 umol/m2/s"
            on = "08:00"
            off = "20:00"
            [feed]
            recipe = "hoagland-1"
            ec = "1.6 mS/cm"
            [reservoir.shelf]
            length = "40 cm"
            width = "28 cm"
            depth = "28 cm"
            outlet_height = "2 cm"
            floor_above_bench = "60 cm"
            [tray.basil]
            length = "60 cm"
            width = "35 cm"
            depth = "8 cm"
            overflow = "7 cm"
            crop = "basil"
            plants = 8
            [tray.basil.valve]
            setting = "4.5 cm"
            [visits]
            days = ["mon", "wed", "fri"]
            """;

    private static final String LENGTHS = "in cm, mm, m, in, ft";

    @TempDir Path folder;

    private Reading read(String text) throws IOException {
        return read(text.getBytes(StandardCharsets.UTF_8));
    }

    private Reading read(byte[] bytes) throws IOException {
        Path file = folder.resolve("bench.toml");
        Files.write(file, bytes);
        return ScenarioReader.read(file, TestCrops.LIBRARY);
    }

    /** The faults as printed, without the folder. */
    private List<String> faults(String text) throws IOException {
        return faults(read(text));
    }

    private List<String> faults(Reading reading) {
        if (reading instanceof Reading.Faulty faulty) {
            return faulty.problems().stream()
                    .map(p -> p.toString().replace(folder + java.io.File.separator, ""))
                    .toList();
        }
        return List.of();
    }

    private List<String> faultsAfter(String from, String to) throws IOException {
        assertThat(GOOD).contains(from);
        return faults(
                GOOD.replaceFirst(
                        java.util.regex.Pattern.quote(from),
                        java.util.regex.Matcher.quoteReplacement(to)));
    }

    private Scenario scenario(String text) throws IOException {
        Reading reading = read(text);
        assertEquals(List.of(), faults(reading));
        return assertInstanceOf(Reading.Good.class, reading).scenario();
    }

    /** Basil is fed 1.0 to 1.8, lettuce 0.8 to 1.8 mS/cm. */
    @Test
    void a_feed_without_an_ec_is_the_middle_of_what_its_crops_are_fed() throws IOException {
        String without = GOOD.replace("ec = \"1.6 mS/cm\"\n", "");
        assertEquals(1.4, feedMsPerCm(without), 1e-6);
        assertEquals(
                1.3, feedMsPerCm(without.replace("crop = \"basil\"", "crop = \"lettuce\"")), 1e-6);
        String measured = without.replace("crop = \"basil\"", "thirst = \"1 L/day\"");
        double published = Solutions.CURRENT.publishedEcMsPerCm("hoagland-1");
        assertEquals(published, feedMsPerCm(measured), 1e-6);
    }

    private double feedMsPerCm(String text) throws IOException {
        return ElectricalConductivity.at25MsPerCm(scenario(text).feed().composition());
    }

    @Test
    void a_good_scenario_arrives_in_SI_units() throws IOException {
        Scenario scenario = scenario(GOOD);
        assertEquals("Test bench", scenario.title());
        assertEquals(LocalDate.of(2026, 3, 2), scenario.start());
        assertEquals(70, scenario.days());
        Reservoir shelf = scenario.reservoirs().get(0);
        assertEquals(0.40 * 0.28 * 0.28, shelf.fullM3(), 1e-12);
        assertEquals(0.02, shelf.outletLevelM());
        assertEquals(0, shelf.openAreaM2());
        Tray basil = scenario.trays().get(0);
        assertEquals(0.045, basil.startLevelM());
        assertEquals(0.03, basil.cupBottomM(), 1e-12);
        assertEquals(0.02 * 0.6 * 0.35, basil.openAreaM2(), 1e-12);
        Filling.ByValve valve = assertInstanceOf(Filling.ByValve.class, basil.filling());
        assertEquals("shelf", valve.reservoir());
        assertEquals(0.005, valve.bandM());
        assertEquals(220, basil.lamp().ppfdUmolPerM2S());
        assertEquals(12 * 3600, basil.lamp().litS());
        Climate.Room room = assertInstanceOf(Climate.Room.class, scenario.climate());
        assertEquals(8 * 3600, room.dayBeginS()); // the lamp's own hours
        assertEquals(22, room.nightTempC());
        assertEquals(
                Set.of(DayOfWeek.MONDAY, DayOfWeek.WEDNESDAY, DayOfWeek.FRIDAY),
                scenario.visits().weekdays());
        assertEquals(600, scenario.numerics().stepS());
    }

    @Test
    void the_digest_is_that_of_an_independent_tool() throws IOException {
        // The same bytes, the scenario's first, through sha256sum of GNU coreutils.
        Path file = folder.resolve("thirst.csv");
        Files.writeString(file, "time,thirst\ndays,L/day\n0,1.5\n10,2\n");
        String withFile = GOOD.replace("crop = \"basil\"\n", "thirst_file = \"thirst.csv\"\n");
        Scenario scenario = scenario(withFile);
        assertEquals(
                "aa811198398cfac22b08ca87f95cd6bbaa3e5744f78300e7a4c0dc97ad0dc427",
                scenario.digest());
    }

    // Every bad input gives exactly its message and nothing else.

    @Test
    void a_misspelt_table_gets_a_suggestion_and_nothing_that_follows_from_it() throws IOException {
        assertThat(faultsAfter("[reservoir.shelf]", "[resevoir.shelf]"))
                .containsExactly(
                        "bench.toml:14:1: resevoir: found an unknown key (did you mean"
                                + " \"reservoir\"?), allowed: title, start, length, place, climate,"
                                + " lamp, water, feed, reservoir, tray, visits, log, run");
    }

    @Test
    void a_misspelt_key_is_not_missing_besides() throws IOException {
        assertThat(faultsAfter("outlet_height", "outlet_hieght"))
                .singleElement()
                .asString()
                .startsWith(
                        "bench.toml:18:1: reservoir.shelf.outlet_hieght: found an unknown key (did"
                                + " you mean \"outlet_height\"?), allowed: ");
    }

    @Test
    void a_key_that_belongs_a_table_further_in_is_told_where() throws IOException {
        assertThat(faultsAfter("depth = \"8 cm\"", "depth = \"8 cm\"\nleaf_area = \"40 cm2\""))
                .singleElement()
                .asString()
                .startsWith("bench.toml:24:1: tray.basil.leaf_area: found an unknown key,")
                .endsWith("\n    Maybe transplant.leaf_area.");
    }

    @Test
    void a_missing_unit() throws IOException {
        assertThat(faultsAfter("depth = \"8 cm\"", "depth = 8"))
                .containsExactly(
                        "bench.toml:23:9: tray.basil.depth: found 8, allowed: from 5 mm up to 60 cm, "
                                + LENGTHS
                                + "\n    Maybe \"8 cm\".");
    }

    @Test
    void a_negative_size() throws IOException {
        assertThat(faultsAfter("length = \"60 cm\"", "length = \"-60 cm\""))
                .containsExactly(
                        "bench.toml:21:10: tray.basil.length: found \"-60 cm\", allowed: from 1 cm up"
                                + " to 100 m, "
                                + LENGTHS);
    }

    @Test
    void an_unknown_crop() throws IOException {
        assertThat(faultsAfter("crop = \"basil\"", "crop = \"bazil\""))
                .containsExactly(
                        "bench.toml:25:8: tray.basil.crop: found \"bazil\", allowed: \"lettuce\","
                                + " \"basil\", \"pak-choi\", \"dwarf-tomato\", \"tomato\"\n"
                                + "    Did you mean \"basil\"?");
    }

    @Test
    void a_valve_above_the_deck() throws IOException {
        assertThat(faultsAfter("4.5 cm", "9 cm"))
                .containsExactly(
                        "bench.toml:28:11: tray.basil.valve.setting: found \"9 cm\", allowed: below the"
                                + " deck (8 cm, line 23)\n"
                                + "    Maybe lower the valve; the deck lies on the rim.");
    }

    @Test
    void a_valve_above_the_overflow() throws IOException {
        assertThat(faultsAfter("4.5 cm", "7.5 cm"))
                .containsExactly(
                        "bench.toml:28:11: tray.basil.valve.setting: found \"7.5 cm\", allowed: below"
                                + " the overflow (7 cm, line 24)\n"
                                + "    Maybe lower the valve or raise the overflow.");
    }

    @Test
    void a_valve_above_the_reservoir() throws IOException {
        assertThat(faultsAfter("floor_above_bench = \"60 cm\"", "floor_above_bench = \"0 cm\""))
                .containsExactly(
                        "bench.toml:28:11: tray.basil.valve.setting: found \"4.5 cm\", which is 4.5 cm"
                                + " above the bench, allowed: below the outlet of reservoir \"shelf\""
                                + " (2 cm above the bench)\n"
                                + "    Nothing flows uphill: maybe raise the reservoir's"
                                + " floor_above_bench; or, where it can stand no higher, count the"
                                + " lowest 5.6 L as left behind: its outlet_height = \"5 cm\".");
        // 40 x 28 x 5 cm are 5.6 L; so it can be run
        assertThat(
                        faultsAfter(
                                "outlet_height = \"2 cm\"\nfloor_above_bench = \"60 cm\"",
                                "outlet_height = \"5 cm\"\nfloor_above_bench = \"0 cm\""))
                .isEmpty();
        // full it stands 28 cm high, below a valve at 64.5 cm
        assertThat(
                        faultsAfter(
                                "overflow = \"7 cm\"",
                                "overflow = \"7 cm\"\nfloor_above_bench = \"90 cm\""))
                .singleElement()
                .asString()
                .endsWith("maybe raise the reservoir's floor_above_bench.");
    }

    @Test
    void a_reservoir_that_is_not_there() throws IOException {
        assertThat(faultsAfter("setting = ", "from = \"shelv\"\nsetting = "))
                .containsExactly(
                        "bench.toml:28:8: tray.basil.valve.from: found \"shelv\", allowed: \"shelf\"\n"
                                + "    Did you mean \"shelf\"?");
    }

    @Test
    void a_band_deeper_than_the_setting() throws IOException {
        assertThat(faultsAfter("setting = ", "band = \"5 cm\"\nsetting = "))
                .containsExactly(
                        "bench.toml:28:8: tray.basil.valve.band: found \"5 cm\", allowed: up to the"
                                + " setting (4.5 cm, line 29)");
    }

    @Test
    void a_cup_above_the_deck_and_one_below_the_floor() throws IOException {
        assertThat(faultsAfter("overflow = ", "cup_bottom = \"9 cm\"\noverflow = "))
                .containsExactly(
                        "bench.toml:24:14: tray.basil.cup_bottom: found \"9 cm\", allowed: below the"
                                + " deck (8 cm, line 23)\n"
                                + "    The cups hang from the deck into the tray.");
        assertThat(faultsAfter("overflow = ", "cup_bottom = \"-1 cm\"\noverflow = "))
                .containsExactly(
                        "bench.toml:24:14: tray.basil.cup_bottom: found \"-1 cm\", allowed: from 0 cm"
                                + " up to 60 cm, "
                                + LENGTHS);
    }

    @Test
    void an_outlet_above_the_full_line() throws IOException {
        assertThat(faultsAfter("outlet_height = \"2 cm\"", "outlet_height = \"29 cm\""))
                .containsExactly(
                        "bench.toml:18:17: reservoir.shelf.outlet_height: found \"29 cm\", allowed:"
                                + " below the full level (28 cm, the default)\n    Nothing could leave.");
    }

    @Test
    void a_start_above_the_overflow() throws IOException {
        assertThat(faultsAfter("overflow = ", "start_level = \"7.5 cm\"\noverflow = "))
                .containsExactly(
                        "bench.toml:24:15: tray.basil.start_level: found \"7.5 cm\", allowed: up to the"
                                + " overflow (7 cm, line 25)");
    }

    @Test
    void thirst_beside_a_crop() throws IOException {
        assertThat(faultsAfter("plants = 8", "thirst = \"1.8 L/day\""))
                .singleElement()
                .asString()
                .startsWith(
                        "bench.toml:26:10: tray.basil.thirst: found \"1.8 L/day\" beside crop, allowed:"
                                + " one of crop, crop_file, thirst or thirst_file");
    }

    @Test
    void hours_that_the_clock_does_not_give() throws IOException {
        assertThat(faultsAfter("on = ", "hours = \"16 h\"\non = "))
                .containsExactly(
                        "bench.toml:9:9: lamp.hours: found \"16 h\", allowed: 12 h, as on = \"08:00\""
                                + " and off = \"20:00\" say\n"
                                + "    Maybe the clock is set wrong, or the hours are.");
    }

    @Test
    void lux_that_the_watts_cannot_give() throws IOException {
        // 24 W x 100 lm/W over 0.25 m2 = 2400 lm / 0.25 m2 = 9600 lux.
        assertThat(
                        faultsAfter(
                                "ppfd = \"220 umol/m2/s\"",
                                "lux = \"40000 lux\"\nwatts = \"24 W\"\narea = \"0.25 m2\""))
                .containsExactly(
                        "bench.toml:8:7: lamp.lux: found \"40000 lux\", allowed: up to 9600 lux on"
                                + " average: 24 W x 100 lm/W over 0.25 m2 gives 9600 lux\n"
                                + "    Maybe the reading was taken close under the lamp; measure at"
                                + " several places at the height of the leaves and take the mean.");
    }

    @Test
    void an_empty_file() throws IOException {
        assertThat(faults(""))
                .containsExactly(
                        "bench.toml: found nothing: the file is empty, allowed: a TOML file in UTF-8,"
                                + " up to 1 MB");
    }

    @Test
    void bytes_that_are_no_UTF_8() throws IOException {
        assertThat(faults(read(new byte[] {'t', '=', (byte) 0xff, (byte) 0xfe})))
                .containsExactly(
                        "bench.toml: found bytes that are not UTF-8 text, allowed: a TOML file in"
                                + " UTF-8, up to 1 MB");
    }

    @Test
    void a_file_of_50_MB() throws IOException {
        Path file = folder.resolve("bench.toml");
        try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
            large.setLength(50L << 20);
        }
        assertThat(faults(ScenarioReader.read(file)))
                .containsExactly(
                        "bench.toml: found a file of more than 1 MB, allowed: a TOML file in UTF-8, up"
                                + " to 1 MB");
    }

    @Test
    void a_directory_or_no_file_is_not_readable() {
        assertEquals(
                new Reading.Unreadable(folder.toString(), "is a directory, not a file"),
                ScenarioReader.read(folder));
        Path none = folder.resolve("none.toml");
        assertEquals(
                new Reading.Unreadable(none.toString(), "there is no such file"),
                ScenarioReader.read(none));
        Path under = none.resolve("x.toml");
        assertInstanceOf(Reading.Unreadable.class, ScenarioReader.read(under));
    }

    @Test
    void a_duplicate_key() throws IOException {
        assertThat(faultsAfter("start = ", "title = \"again\"\nstart = "))
                .containsExactly(
                        "bench.toml:2:1: title: found a second time, allowed: once; it stands in line"
                                + " 1");
    }

    @Test
    void a_wrong_type() throws IOException {
        assertThat(faultsAfter("plants = 8", "plants = \"8\""))
                .containsExactly(
                        "bench.toml:26:10: tray.basil.plants: found \"8\", allowed: a whole number"
                                + " from 0 up to 100000\n    Write it without quotation marks.");
        assertThat(faultsAfter("title = \"Test bench\"", "title = 5"))
                .containsExactly(
                        "bench.toml:1:9: title: found 5, allowed: a text of up to 500 characters"
                                + " that can be seen, as \"Wall bench\"");
        assertThat(faultsAfter("[visits]\ndays = [\"mon\", \"wed\", \"fri\"]\n", "")).isEmpty();
        assertThat(
                        faults(
                                "visits = 3\n"
                                        + GOOD.replace(
                                                "[visits]\ndays = [\"mon\", \"wed\", \"fri\"]\n",
                                                "")))
                .containsExactly("bench.toml:1:10: visits: found 3, allowed: a table [visits]");
    }

    @Test
    void a_syntax_error_has_a_place() throws IOException {
        assertThat(faultsAfter("start = 2026-03-02", "start ="))
                .singleElement()
                .asString()
                .startsWith("bench.toml:2:8: found text that is no TOML: ");
    }

    @Test
    void numbers_that_are_none() throws IOException {
        String allowed = ", allowed: above 0 cm up to 60 cm, " + LENGTHS;
        assertThat(faultsAfter("\"4.5 cm\"", "\"4,5 cm\""))
                .containsExactly(
                        "bench.toml:28:11: tray.basil.valve.setting: found \"4,5 cm\""
                                + allowed
                                + "\n    Write the decimal sign as a point and leave out group signs,"
                                + " as in \"1.5\".");
        assertThat(faultsAfter("\"4.5 cm\"", "nan"))
                .containsExactly("bench.toml:28:11: tray.basil.valve.setting: found NaN" + allowed);
        assertThat(faultsAfter("\"4.5 cm\"", "\"1e300 cm\""))
                .containsExactly(
                        "bench.toml:28:11: tray.basil.valve.setting: found \"1e300 cm\"" + allowed);
        assertThat(faultsAfter("\"4.5 cm\"", "inf"))
                .containsExactly(
                        "bench.toml:28:11: tray.basil.valve.setting: found Infinity" + allowed);
    }

    @Test
    void two_faults_are_both_said_in_the_order_of_the_file() throws IOException {
        List<String> faults =
                faults(GOOD.replace("\"4.5 cm\"", "4.5").replace("\"basil\"", "\"bazil\""));
        assertThat(faults).hasSize(2);
        assertThat(faults.get(0)).startsWith("bench.toml:25:8: tray.basil.crop: found \"bazil\"");
        assertThat(faults.get(1))
                .startsWith("bench.toml:28:11: tray.basil.valve.setting: found 4.5");
    }

    @Test
    void a_key_that_belongs_to_another_kind() throws IOException {
        assertThat(faultsAfter("kind = \"room\"", "kind = \"room\"\nclock = \"dates\""))
                .containsExactly(
                        "bench.toml:6:9: climate.clock: found \"dates\" beside kind = \"room\", allowed:"
                                + " only with kind = \"weather\"");
    }

    @Test
    void control_characters_do_not_reach_the_terminal() throws IOException {
        assertThat(faultsAfter("crop = \"basil\"", "crop = \"\\u001b[31mred\""))
                .singleElement()
                .asString()
                .startsWith("bench.toml:25:8: tray.basil.crop: found \"?[31mred\"");
    }

    @Test
    void a_named_file_that_is_missing_is_a_fault_at_its_key() throws IOException {
        assertThat(faultsAfter("crop = \"basil\"", "crop_file = \"none.toml\""))
                .containsExactly(
                        "bench.toml:25:13: tray.basil.crop_file: found \"none.toml\", which does not"
                                + " exist, allowed: a file that can be read\n"
                                + "    The name counts from the folder of the scenario.");
    }

    @Test
    void deep_nesting_and_long_lines_are_faults_and_no_crash() throws IOException {
        assertThat(faults("a = " + "[".repeat(200_000))).isNotEmpty();
        assertThat(faults("a".repeat(500_000) + " = 1")).isNotEmpty();
        assertThat(faults("a = " + "{b=".repeat(20_000))).isNotEmpty();
        assertThat(faults("a.".repeat(20_000) + "b = 1")).isNotEmpty();
    }

    @Test
    void show_tells_the_users_words_from_the_defaults() throws IOException {
        Reading.Good good = assertInstanceOf(Reading.Good.class, read(GOOD));
        assertThat(good.values())
                .contains(
                        new EffectiveValue("tray.basil.depth", "8 cm", false, 23),
                        new EffectiveValue("tray.basil.valve.band", "5 mm", true, 0),
                        new EffectiveValue(
                                "tray.basil.start_level", "4.5 cm, the valve's setting", true, 0),
                        new EffectiveValue("water.source", "soft-tap", true, 0));
        assertThat(good.values().stream().map(EffectiveValue::key)).doesNotHaveDuplicates();
    }

    @Test
    void a_weight_to_wait_for_and_a_day_to_cut_on_are_not_stated_together() throws IOException {
        Reading.Faulty both =
                assertInstanceOf(
                        Reading.Faulty.class,
                        read(
                                GOOD.replace(
                                        "plants = 8",
                                        "plants = 8\nharvest_after = \"30 days\"\n"
                                                + "harvest_weight = \"40 g\"")));
        assertThat(both.problems()).singleElement().asString().contains("harvest_weight");
        Scenario stated =
                scenario(GOOD.replace("plants = 8", "plants = 8\nharvest_weight = \"40 g\""));
        Planting.OfCrop crop =
                assertInstanceOf(Planting.OfCrop.class, stated.trays().get(0).planting());
        assertEquals(40, crop.harvestFreshG().orElseThrow());
    }

    @Test
    void a_harvest_after_the_run_and_a_dark_tray_are_only_noted() throws IOException {
        String dark = GOOD.replaceFirst("(?s)\\[lamp].*?\\[feed]", "[feed]");
        Reading.Good good =
                assertInstanceOf(
                        Reading.Good.class,
                        read(
                                dark.replace(
                                        "plants = 8", "plants = 8\nharvest_after = \"80 days\"")));
        assertThat(good.notes()).hasSize(2);
    }

    @Test
    void a_room_with_a_window_is_not_dark_and_its_light_ends_after_it_begins() throws IOException {
        String dark = GOOD.replaceFirst("(?s)\\[lamp].*?\\[feed]", "[feed]");
        String lit = dark.replace("[climate]\n", "[climate]\nwindow_light = \"6 mol/m2/day\"\n");
        Reading.Good good = assertInstanceOf(Reading.Good.class, read(lit));
        assertThat(good.notes()).isEmpty();
        assertThat(((Climate.Room) good.scenario().climate()).window())
                .isEqualTo(new Climate.Window(6, 7 * 3600, 19 * 3600));
        assertThat(((Reading.Good) read(lit.replace("6 mol", "19.9 mol"))).notes()).isEmpty();
        assertThat(((Reading.Good) read(lit.replace("6 mol", "20 mol"))).notes())
                .singleElement()
                .asString()
                .contains("outdoors or under glass", "a year of weather");
        String backwards = lit.replace("[climate]\n", "[climate]\nwindow_to = \"06:00\"\n");
        assertThat(faults(backwards)).singleElement().asString().contains("climate.window_to");
    }

    @Test
    void a_lamp_in_place_of_daylight_is_noted_and_one_in_place_of_a_lamp_is_not()
            throws IOException {
        String own = "\n[tray.basil.lamp]\nwatts = \"23 W\"\narea = \"0.2 m2\"\n";
        String sun = GOOD.replaceFirst("\\[lamp]\n", "[lamp]\ntype = \"sun\"\n");
        assertThat(((Reading.Good) read(GOOD + own)).notes()).isEmpty();
        assertThat(((Reading.Good) read(sun + own)).notes())
                .singleElement()
                .asString()
                .contains("climate.window_light");
    }

    @Test
    void vessels_hold_what_geometry_says() throws IOException {
        // Closed forms: a cylinder pi/4 d2 h; a volume over its depth; a tub as a
        // prismatoid, h/6 (floor + 4 middle + section), the middle 55 x 32.5 cm.
        Scenario cylinder =
                scenario(
                        GOOD.replace(
                                "length = \"60 cm\"\nwidth = \"35 cm\"", "diameter = \"40 cm\""));
        Shape round = cylinder.trays().get(0).shape();
        assertEquals(Math.PI * 0.04 * 0.08, round.volumeM3(0.08), 1e-12);
        assertEquals(Math.PI * 0.4, round.rimPerimeterM(), 1e-12);
        Scenario volume =
                scenario(
                        GOOD.replace(
                                "length = \"60 cm\"\nwidth = \"35 cm\"", "volume = \"5 gal\""));
        assertEquals(5 * 3.785411784e-3, volume.trays().get(0).shape().volumeM3(0.08), 1e-12);
        Scenario tub =
                scenario(
                        GOOD.replace(
                                "width = \"35 cm\"",
                                "width = \"35 cm\"\nshape = \"tub\"\nfloor_length = \"50 cm\"\n"
                                        + "floor_width = \"30 cm\""));
        assertEquals(
                0.08 / 6 * (0.6 * 0.35 + 4 * 0.55 * 0.325 + 0.5 * 0.3),
                tub.trays().get(0).shape().volumeM3(0.08),
                1e-12);
    }

    @Test
    void a_start_may_be_a_level_a_share_or_a_volume() throws IOException {
        for (String start : List.of("14 cm", "50 %", "15.68 L")) { // 40 x 28 x 14 cm
            Scenario scenario =
                    scenario(
                            GOOD.replace(
                                    "outlet_height", "start = \"" + start + "\"\noutlet_height"));
            assertEquals(0.14, scenario.reservoirs().get(0).startLevelM(), 1e-9, start);
        }
    }

    @Test
    void every_child_of_a_sealed_kind_can_be_written() {
        // A new way of filling or planting must get a key here before this passes.
        assertEquals(3, Filling.class.getPermittedSubclasses().length);
        assertEquals(2, Planting.class.getPermittedSubclasses().length);
        assertEquals(3, Climate.class.getPermittedSubclasses().length);
    }

    // Every shipped scenario reads clean.

    static List<Path> shipped() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("scenarios"))) {
            List<Path> found =
                    new ArrayList<>(
                            files.filter(f -> f.toString().endsWith(".toml")).sorted().toList());
            assertTrue(found.size() >= 4);
            return found;
        }
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void a_shipped_scenario_reads_clean(Path file) {
        Reading reading = ScenarioReader.read(file, TestCrops.LIBRARY);
        if (reading instanceof Reading.Faulty faulty) {
            assertEquals(List.of(), faulty.problems());
        }
        assertInstanceOf(Reading.Good.class, reading);
    }

    @Test
    void the_sealed_tank_holds_the_published_109_litres() {
        Reading reading =
                ScenarioReader.read(
                        Path.of("scenarios/sealed-lettuce-tank.toml"), TestCrops.LIBRARY);
        Tray tank = assertInstanceOf(Reading.Good.class, reading).scenario().trays().get(0);
        // Kratky (2005), J. Veg. Sci. 11(2):35-42, abstract: 109 L at 7.6 cm; printed to 1 L.
        assertEquals(0.109, tank.shape().volumeM3(0.076), 0.0005);
    }

    // Plain water: the run of GOOD goes from 2026-03-02 to 2026-05-10.

    private static final String OF_RESERVOIR = "floor_above_bench = \"60 cm\"\n";

    private static String poured(String lines) {
        return GOOD.replace(OF_RESERVOIR, OF_RESERVOIR + lines);
    }

    private static String byHand(String lines) {
        int from = GOOD.indexOf("[reservoir");
        int to = GOOD.indexOf("[tray.basil]");
        return GOOD.replace(GOOD.substring(from, to), "")
                .replace(
                        "[tray.basil.valve]\nsetting = \"4.5 cm\"\n",
                        "[tray.basil.hand]\n" + lines);
    }

    @Test
    void water_in_place_of_feed_is_read_alike_for_reservoirs_and_by_hand() throws IOException {
        String lines = "water = [{ from = 2026-04-01, volume = \"5.3 L\" }]\n";
        Pouring meant =
                new Pouring(false, List.of(new Pouring.Dose(LocalDate.of(2026, 4, 1), 5.3e-3)));
        assertEquals(meant, scenario(poured(lines)).reservoirs().get(0).refill().with());
        Filling hand = scenario(byHand("to = \"5 cm\"\n" + lines)).trays().get(0).filling();
        assertEquals(meant, ((Filling.ByHand) hand).with());
        assertEquals(Pouring.FEED, scenario(GOOD).reservoirs().get(0).refill().with());
        assertEquals(
                Pouring.WATER,
                scenario(poured("with = \"water\"\n")).reservoirs().get(0).refill().with());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "water = [{ from = 2026-03-01, volume = '5 L' }] | a day of the run (2026-03-02 to"
                        + " 2026-05-10)",
                "water = [{ from = 2026-04-01, volume = '0 L' }] | a list of dates that rise, as"
                        + " [{ from = 2026-04-01, volume = '5 L' }], with volumes above 0 L up to"
                        + " 10000 L",
                "water = [{ from = 2026-04-01, volume = '5 L' }, { from = 2026-03-20, volume ="
                        + " '5 L' }] | entries that rise in time",
                "with = 'water'; water = [{ from = 2026-04-01, volume = '5 L' }] | only beside with"
                        + " = 'solution': with = 'water' is all water",
                "refill = 'never'; with = 'water' | only where it is refilled: refill is 'never'",
            },
            quoteCharacter = '`')
    void water_that_cannot_be_poured_is_one_fault(String lines, String allowed) throws IOException {
        List<String> faults = faults(poured(lines.replace('\'', '"').replace("; ", "\n") + "\n"));
        assertEquals(1, faults.size(), faults.toString());
        assertThat(faults.get(0)).contains("allowed: " + allowed.replace('\'', '"'));
    }
}
