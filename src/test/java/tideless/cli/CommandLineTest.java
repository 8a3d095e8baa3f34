package tideless.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** The door, as a new user finds it: what is printed, the exit code, and what is left behind. */
class CommandLineTest {
    private static final Path BENCH = Path.of("scenarios/science-room-bench.toml");

    @TempDir Path folder;

    private record Outcome(int exit, String out, String err) {}

    private static Outcome run(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = Stream.of(args).map(Object::toString).toArray(String[]::new);
        int exit = Tideless.execute(new PrintWriter(out), new PrintWriter(err), words);
        return new Outcome(exit, out.toString(), err.toString());
    }

    private static String bench() throws IOException {
        return Files.readString(BENCH);
    }

    private Path scenario(String text) throws IOException {
        return Files.writeString(folder.resolve("my.toml"), text);
    }

    private void refuses(Path scenario, int exit, String... said) {
        Path results = folder.resolve("results");
        Outcome outcome = run("run", scenario, "-o", results);
        assertEquals(exit, outcome.exit(), outcome.err());
        assertEquals("", outcome.out());
        for (String words : said) {
            assertTrue(outcome.err().contains(words), words + " is not in:\n" + outcome.err());
        }
        List<String> complaints =
                outcome.err().lines().filter(line -> !line.startsWith("    ")).toList();
        assertEquals(1, complaints.size(), outcome.err());
        assertFalse(outcome.err().contains("\tat "), "a stack trace: " + outcome.err());
        assertFalse(Files.exists(results), "something was written");
        assertEquals(exit, run("check", scenario).exit(), "check must judge as run does");
    }

    @Test
    void the_first_scenario_prints_its_table_and_writes_its_files() throws IOException {
        Path results = folder.resolve("results");
        Outcome outcome = run("run", BENCH, "-o", results);
        assertEquals(0, outcome.exit(), outcome.err());
        assertTrue(outcome.out().contains("refill"), outcome.out());
        assertTrue(outcome.out().indexOf("Reservoir") < outcome.out().indexOf("Tray"));
        for (String file :
                new String[] {
                    "result.json",
                    "tasks.csv",
                    "warnings.csv",
                    "tray-basil.csv",
                    "ec.png",
                    "ec.svg",
                    "thirst.png",
                    "level-tomato.png"
                }) {
            assertTrue(Files.size(results.resolve(file)) > 100, file);
        }
        assertFalse(outcome.out().contains("\u001b"), "colour in a pipe");
    }

    // Forty-two lines fit a screen and a wall; what is left out is in the page and under --all.
    @Test
    void the_first_scenario_fits_a_screen_and_all_of_it_is_to_be_had() {
        Path results = folder.resolve("results");
        Outcome brief = run("run", BENCH, "--no-plots", "--members", "100", "-o", results);
        assertTrue(brief.out().lines().count() <= 42, brief.out());
        assertTrue(brief.out().contains("More: --all, report.html."), brief.out());
        assertTrue(brief.out().contains("residual-current device"), brief.out());
        assertTrue(Files.exists(results.resolve("report.html")));
        Outcome all = run("run", BENCH, "--all", "--no-plots", "--members", "100", "-o", results);
        assertTrue(all.out().lines().count() > brief.out().lines().count() + 15, all.out());
        assertTrue(all.out().contains("care: gloves and goggles"), all.out());
        assertThat(brief.out()) // of all trays in a line
                .containsPattern(
                        "  sow +Mon 2 Feb +dwarf-tomato, basil \\(9 Feb\\), pak-choi \\(12 Feb\\)");
        // No vessel, no kind of task and no warning is left out for being brief.
        for (String line : all.out().lines().toList()) {
            boolean head = line.matches("(Reservoir|Trays?|!) .*");
            if (head) {
                assertTrue(brief.out().contains(line), line);
            }
            if (line.matches("  [a-z].* [A-Z][a-z]{2} \\d+ [A-Z][a-z]{2}.*")
                    && !line.matches("  (clean|set out|most|sow  ) .*")) {
                assertTrue(brief.out().contains(line.substring(0, 36)), line);
            }
        }
    }

    @Test
    void what_was_filled_in_measured_air_is_told_by_check_and_by_the_result() throws IOException {
        StringBuilder air =
                new StringBuilder("time,temperature,humidity,ppfd\nlocal,degC,%,umol/m2/s\n");
        for (int h = 0; h < 48; h++) {
            if (h < 5 || h > 7) {
                air.append("2026-03-0%d %02d:00,20,60,200\n".formatted(2 + h / 24, h % 24));
            }
        }
        Files.writeString(folder.resolve("in.csv"), air);
        Path scenario =
                scenario(
                        """
                        title = "t"
                        start = 2026-03-02
                        length = "2 days"
                        climate = { kind = "weather", cover = "inside", file = "in.csv" }
                        feed = { recipe = "steiner" }
                        [tray.a]
                        length = "60 cm"
                        width = "35 cm"
                        depth = "8 cm"
                        crop = "basil"
                        plants = 8
                        hand = { to = "5 cm" }
                        """);
        String told =
                "temperature, humidity, ppfd: 3 h missing from 2026-03-02T05:00, filled by a"
                        + " straight line";
        Outcome check = run("check", scenario);
        assertEquals(0, check.exit(), check.err());
        assertTrue(check.err().contains(told), check.err());
        Path results = folder.resolve("results");
        assertEquals(0, run("run", scenario, "-o", results).exit());
        String json = Files.readString(results.resolve("result.json"));
        assertTrue(json.contains("\"climate_filled\": \"" + told), json.substring(0, 600));
    }

    @Test
    void an_empty_log_is_made_once_and_reads() throws IOException {
        Path log = folder.resolve("bench-log.csv");
        Outcome made = run("log", "new", BENCH, "-o", log);
        assertEquals(0, made.exit(), made.err());
        String table = Files.readString(log);
        assertTrue(table.contains("reservoirs shelf; trays basil, pak-choi, tomato"), table);
        assertTrue(table.endsWith("date,time,where,what,value,remark,use\n"), table);
        String sheet = Files.readString(folder.resolve("bench-log.html"));
        assertTrue(sheet.contains("basil, pak-choi, tomato"), sheet);
        Outcome check = run("log", "check", BENCH, "--log", log);
        assertEquals(0, check.exit(), check.err());
        assertTrue(check.err().contains("nothing is written in this log yet"), check.err());

        Path us = folder.resolve("us-log.csv");
        Path bucket = Path.of("scenarios/hand-topped-bucket.toml");
        run("log", "new", bucket, "-o", us, "--units", "us", "--ec-scale", "ppm500");
        table = Files.readString(us);
        assertTrue(
                table.contains("as 5.7 in, 1.6 gal, 910 ppm-500, 68 degF, 85 g; gallons"), table);
        assertTrue(table.contains("level, gallons in, water in"), table);
        sheet = Files.readString(folder.resolve("us-log.html"));
        assertTrue(sheet.contains("Most worth: the level of each tray on three days"), sheet);
        assertTrue(sheet.contains("the gallons that go in"), sheet);
        Files.writeString(us, table + "5/12/2026,8am,bucket,EC,995 ppm,,\n");
        assertEquals(2, run("log", "check", bucket, "--log", us).exit());
        Outcome pen = run("log", "check", bucket, "--log", us, "--ec-scale", "ppm500");
        assertEquals(0, pen.exit(), pen.err());
        table = Files.readString(log);

        Files.writeString(log, table + "2026-03-04,08:00,shelf,level,22 cm,,\n");
        Outcome again = run("log", "new", BENCH, "-o", log);
        assertEquals(2, again.exit(), again.out());
        assertTrue(again.err().contains("never written over"), again.err());
        assertTrue(Files.readString(log).endsWith("22 cm,,\n"), "the log was touched");
        Outcome held = run("log", "check", BENCH, "--log", log);
        assertTrue(held.out().contains("1 reading and 0 things done"), held.out());
        assertTrue(held.out().contains("reservoir shelf: 1 of level"), held.out());
    }

    @Test
    void what_a_log_teaches_is_printed_written_and_taken_by_run_away_and_compare()
            throws IOException {
        Path log = folder.resolve("log.csv");
        Files.writeString(
                log,
                """
                date,time,where,what,value
                2026-03-06,08:00,shelf,level,24 cm
                2026-03-10,08:00,shelf,level,20.5 cm
                2026-03-14,08:00,shelf,level,14 cm
                2026-03-14,08:00,basil,EC,1.62 mS/cm
                """);
        Path learned = folder.resolve("learned");
        Outcome fit = run("fit", BENCH, "--log", log, "--members", 2, "-o", learned);
        assertEquals(0, fit.exit(), fit.err());
        assertTrue(fit.out().contains("learned from 4 readings"), fit.out());
        assertTrue(fit.out().contains("refill, reservoir shelf"), fit.out());
        assertTrue(fit.out().contains("6 files in"), fit.out());
        // Pictures follow the units asked for, tables do not.
        String table = Files.readString(learned.resolve("fit.csv"));
        assertTrue(Files.readString(learned.resolve("fit-level.svg")).contains(">level (cm)<"));
        run(
                "fit",
                BENCH,
                "--log",
                log,
                "--members",
                2,
                "-o",
                learned,
                "--units",
                "us",
                "--ec-scale",
                "ppm500");
        assertTrue(Files.readString(learned.resolve("fit-level.svg")).contains(">level (in)<"));
        assertTrue(Files.readString(learned.resolve("fit-ec.svg")).contains("(ppm-500)<"));
        assertEquals(table, Files.readString(learned.resolve("fit.csv")));
        Path corrected = learned.resolve("corrected.toml");
        assertTrue(Files.readString(corrected).contains("[crop.basil.thirst]"));
        for (List<Object> taker :
                List.<List<Object>>of(
                        List.of("run", BENCH, "--members", 2, "--no-plots", "-o", learned),
                        List.of("away", BENCH, "--members", 1, "--from", "2026-03-15"),
                        List.of("size", BENCH, "--members", 1, "--what", "reservoir"),
                        List.of("sensitivity", BENCH, "--points", 16),
                        List.of("calendar", BENCH, "--members", 1),
                        List.of("compare", BENCH, "--vary", "tray.basil.plants=4,8"))) {
            List<Object> words = new java.util.ArrayList<>(taker);
            words.addAll(List.of("--log", log, "--corrected", corrected));
            Outcome taken = run(words.toArray());
            assertEquals(0, taken.exit(), taken.err());
            Outcome stated = run(taker.toArray());
            assertFalse(taken.out().equals(stated.out()), taker + " takes no notice");
            if (taker.get(0).equals("run")) {
                assertTrue(taken.out().contains("Log up to Sat 14 Mar 08:00"), taken.out());
                assertTrue(taken.out().contains("Corrected by what a log has taught."));
                assertFalse(taken.out().contains("mix "), "was mixed on day one");
            }
        }
    }

    /** What stands in the log is told as done; what lies before its end is never due. */
    @Test
    void what_was_done_is_told_as_done_and_never_as_due() throws IOException {
        String bench = "scenarios/logged-bench.toml";
        Outcome run = run("run", bench, "--members", 1, "--no-plots", "-o", folder.resolve("out"));
        assertEquals(0, run.exit(), run.err());
        String out = run.out().replaceAll("\\s+", " ");
        assertTrue(
                out.contains("Done: reservoir shelf: filled 5 times, last on Sun 26 Apr 08:00;"),
                out);
        assertTrue(out.contains("tray lettuce: harvested on Thu 16 Apr 08:00."), out);
        String ahead = out.substring(out.indexOf("Tightest on "), out.indexOf("No warnings."));
        assertThat(ahead).contains("refill").doesNotContainPattern("[0-9] (Feb|Mar)");
        assertThat(ahead).contains("read meters Mon 27 Apr 08:00 EC and pH of basil and tomato,");
        // Its lamp is no brighter in the weeks ahead than it was: that is not past.
        assertThat(out).contains("A little dim, and so much slower: tray tomato (13.0 mol/m2/day");
        Outcome calendar = run("calendar", bench, "--members", 1);
        assertThat(calendar.out())
                .contains("Look in", "Refill", "Mon 27 Apr 08:00")
                .doesNotContainPattern("[0-9] (Feb|Mar)")
                .doesNotContain("Sow", "Set out");
    }

    @Test
    void what_is_asked_of_a_logged_rig_is_asked_of_the_days_to_come() {
        String bench = "scenarios/logged-bench.toml";
        Outcome away = run("away", bench, "--members", 1);
        assertThat(away.out()).contains("From Mon 27 Apr on").doesNotContain(" Mar ");
        for (String command : List.of("away", "sensitivity")) {
            Outcome past = run(command, bench, "--from", "2026-04-26");
            assertEquals(2, past.exit(), past.out());
            assertThat(past.err()).contains("a day after the log's last, 2026-04-27 to 2026-05-24");
        }
        Outcome moves = run("sensitivity", bench, "--points", 16);
        String dates = moves.out().substring(0, moves.out().indexOf("WHAT NOBODY"));
        assertThat(dates)
                .contains("Next refill: ", "Litres poured in the whole run")
                .doesNotContain(" Mar", "16 Apr");
    }

    /** Another rig, feed or design would have been read and done otherwise. */
    @Test
    void where_the_rig_is_to_be_another_its_log_is_set_aside_and_that_is_said() throws IOException {
        Path bench = Path.of("scenarios/logged-bench.toml");
        String text = Files.readString(bench);
        Path without = scenario(text.substring(0, text.indexOf("[log]")));
        for (List<Object> asked :
                List.<List<Object>>of(
                        List.of("size", "--members", 2, "--what", "visits"),
                        List.of("lean"),
                        List.of("compare", "--members", 2, "--vary", "tray.tomato.plants=1"))) {
            Outcome logged = run(with(asked, bench));
            Outcome anew = run(with(asked, without));
            assertEquals(0, logged.exit(), logged.err());
            assertEquals(anew.out(), logged.out());
            assertThat(logged.err()).contains("Tried from 2 Mar on without the log");
            assertThat(anew.err()).doesNotContain("log");
        }
    }

    private static Object[] with(List<Object> asked, Path scenario) {
        List<Object> words = new java.util.ArrayList<>(asked);
        words.add(1, scenario);
        return words.toArray();
    }

    /** Basil that drinks a third more leaves more salt behind, and bears less rich a feed. */
    @Test
    void a_lean_feed_is_looked_for_by_what_a_log_taught() throws IOException {
        Path corrected = folder.resolve("corrected.toml");
        Files.writeString(corrected, "[crop.basil.thirst]\ntimes = 1.33\ndoubt_left = \"50 %\"\n");
        double stated = tooSaltyFrom(run("lean", BENCH));
        double taught = tooSaltyFrom(run("lean", BENCH, "--corrected", corrected));
        assertThat(taught).isLessThan(stated - 0.05); // mS/cm
    }

    private static double tooSaltyFrom(Outcome lean) {
        Matcher at =
                Pattern.compile("At ([0-9.]+) mS/cm tray basil is too salty").matcher(lean.out());
        assertTrue(at.find(), lean.out());
        return Double.parseDouble(at.group(1));
    }

    @Test
    void a_fit_without_a_log_or_a_reading_says_what_it_wants() throws IOException {
        Outcome none = run("fit", BENCH);
        assertEquals(2, none.exit());
        assertTrue(none.err().contains("log new makes one"), none.err());
        Path log = folder.resolve("log.csv");
        Files.writeString(log, "date,time,where,what,value\n2026-03-06,08:00,basil,ph,6\n");
        Outcome idle = run("fit", BENCH, "--log", log, "-o", folder.resolve("learned"));
        assertEquals(2, idle.exit());
        assertTrue(idle.err().contains("no reading to learn from"), idle.err());
        assertTrue(idle.err().contains("write refill"), idle.err());
        assertFalse(Files.exists(folder.resolve("learned")));
    }

    @Test
    void a_log_that_is_asked_for_badly_is_told_what_there_is() {
        Outcome nothing = run("log");
        assertEquals(2, nothing.exit());
        assertTrue(nothing.err().contains("there are new and check"), nothing.err());
        Outcome none = run("log", "check", BENCH);
        assertEquals(2, none.exit());
        assertTrue(none.err().contains("log new makes one"), none.err());
        Outcome name = run("log", "new", BENCH, "-o", folder.resolve("log.txt"));
        assertEquals(2, name.exit());
        assertTrue(name.err().contains("a file ending in .csv"), name.err());
    }

    @Test
    void a_misspelt_key_is_refused_with_the_key_it_may_have_meant() throws IOException {
        refuses(
                scenario(bench().replace("cup_bottom = \"4 cm\"", "cup_botom = \"4 cm\"")),
                2,
                "cup_botom",
                "found an unknown key (did you mean \"cup_bottom\"?), allowed: ");
    }

    @Test
    void a_missing_unit_is_refused_with_the_units_there_are() throws IOException {
        refuses(
                scenario(bench().replace("outlet_height = \"2 cm\"", "outlet_height = \"2\"")),
                2,
                "outlet_height",
                "cm");
    }

    @Test
    void a_negative_size_is_refused_with_the_line_it_stands_on() throws IOException {
        String text = bench().replaceFirst("depth = \"8 cm\"", "depth = \"-8 cm\"");
        int line = (int) text.substring(0, text.indexOf("\"-8 cm\"")).lines().count();
        refuses(scenario(text), 2, "my.toml:" + line + ":", "-8 cm");
    }

    @Test
    void an_unknown_crop_is_refused_with_the_crops_there_are() throws IOException {
        refuses(
                scenario(bench().replace("crop = \"basil\"", "crop = \"bazil\"")),
                2,
                "bazil",
                "lettuce",
                "basil");
    }

    @Test
    void a_valve_above_the_deck_is_refused_with_both_heights() throws IOException {
        refuses(
                scenario(bench().replaceFirst("setting = \"4.5 cm\"", "setting = \"12 cm\"")),
                2,
                "12 cm",
                "8 cm");
    }

    @Test
    void an_empty_file_is_refused() throws IOException {
        refuses(scenario(""), 2, "my.toml");
    }

    @Test
    void a_directory_in_place_of_a_file_is_refused() throws IOException {
        refuses(Files.createDirectory(folder.resolve("dir.toml")), 1, "dir.toml");
    }

    @Test
    void a_file_that_is_not_there_is_refused() {
        refuses(folder.resolve("nobody.toml"), 1, "nobody.toml");
    }

    @Test
    void invalid_text_is_refused() throws IOException {
        Path path = folder.resolve("latin.toml");
        Files.write(path, new byte[] {'t', 'i', 't', 'l', 'e', '=', '"', (byte) 0xE9, '"', '\n'});
        refuses(path, 2, "latin.toml", "UTF-8");
    }

    @Test
    void a_file_of_fifty_megabytes_is_refused_unread() throws IOException {
        Path path = folder.resolve("big.toml");
        try (RandomAccessFile file = new RandomAccessFile(path.toFile(), "rw")) {
            file.setLength(50L << 20);
        }
        refuses(path, 2, "big.toml");
    }

    @Test
    void a_folder_that_cannot_be_written_is_said_and_nothing_is_left() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "kept");
        Outcome outcome = run("run", BENCH, "--no-plots", "-o", file.resolve("sub"));
        assertEquals(1, outcome.exit());
        assertTrue(outcome.err().contains(file.toString()), outcome.err());
        assertEquals("kept", Files.readString(file));
    }

    @Test
    void check_tells_what_cups_keep_out_and_whether_the_hole_carries_a_hung_valve()
            throws IOException {
        assertFalse(run("check", BENCH).out().contains("hung open"));
        String written =
                """
                title = "t"
                start = 2026-03-02
                length = "2 days"
                climate.kind = "room"
                climate.day_temperature = "22 degC"
                feed.recipe = "steiner"
                [reservoir.shelf]
                volume = "36 L"
                depth = "30 cm"
                floor_above_bench = "60 cm"
                [tray.bench]
                length = "50 cm"
                width = "40 cm"
                depth = "10 cm"
                thirst = "1 L/day"
                cup_bottom = "4 cm"
                cup_solid = "25 cm2"
                cups = 8
                overflow = "8 cm"
                overflow_bore = "%s"
                [tray.bench.valve]
                setting = "5 cm"
                seat = "4 mm"
                """;
        // 0.2 x 0.08 m3 less 8 x 25 cm2 x 4 cm.
        Outcome narrow = run("check", scenario(written.formatted("5 mm")));
        assertEquals(0, narrow.exit(), narrow.err());
        assertTrue(narrow.out().contains("holds 15.2 L at the overflow"), narrow.out());
        assertTrue(narrow.out().contains("keeps out 0.8 L"), narrow.out());
        // 5 mm under 17.5 mm of head by the orifice law, 16 mm under 12 mm: see RigCheckTest.
        assertTrue(narrow.out().contains("5 mm passes 421 mL/min"), narrow.out());
        assertTrue(narrow.out().contains("over the rim onto the floor"), narrow.out());
        Outcome wide = run("check", scenario(written.formatted("16 mm")));
        assertTrue(wide.out().contains("16 mm passes 3570 mL/min"), wide.out());
        assertTrue(wide.out().contains("the hole carries it"), wide.out());
    }

    @Test
    void two_faults_are_told_in_one_go() throws IOException {
        Path path =
                scenario(
                        bench().replace("crop = \"basil\"", "crop = \"bazil\"")
                                .replace("outlet_height = \"2 cm\"", "outlet_height = \"2\""));
        Outcome outcome = run("check", path);
        assertEquals(2, outcome.exit());
        assertTrue(outcome.err().contains("bazil") && outcome.err().contains("outlet_height"));
    }

    @Test
    void show_and_crops_tell_how_far_thirst_may_lie_off() {
        assertThat(run("show", BENCH).out())
                .contains("doubt of the thirst of tray ")
                .contains("between stands 0.40, week to week 0.13")
                .contains("day to day 0.20; 0.12 between stands once a fortnight");
        String cucumber = run("crops", "cucumber").out();
        assertThat(cucumber)
                .contains("between stands 0.25 (0.40 under lamps, in the open and while young)")
                .contains("in a house, 8 MJ/m2 of sun: penman-monteith ")
                .contains(", radiation 2.9 L/m2");
        assertThat(run("crops", "mint").out())
                .contains("Judged by 3 published trials: 6 of 6 figures met.");
        assertThat(cucumber).contains("3 measured stands judge its thirst");
        assertThat(run("crops", "lettuce").out())
                .contains("between stands 0.40, week to week 0.13")
                .contains("Judged by ", " published trials: ", "docs/validation.md")
                .contains("under lamps, 11.5 mol/m2 in 16 hours: canopy 2.1 L/m2, penman-monteith ")
                .doesNotContain("in a house");
    }

    @Test
    void show_fills_in_every_default_and_says_so() {
        Outcome outcome = run("show", BENCH);
        assertEquals(0, outcome.exit(), outcome.err());
        assertTrue(outcome.out().contains("run.step"), outcome.out());
        assertTrue(outcome.out().contains("(default)"));
    }

    @Test
    void crops_lists_them_and_one_with_its_sources() {
        assertThat(run("crops").out().lines())
                .anyMatch(
                        line ->
                                line.matches(
                                        "dwarf-tomato +for windowsill or patio, 35 cm high +fruit +1.8-3 .*"))
                .anyMatch(line -> line.matches("lettuce +.*once +0.8-1.8 .*"))
                .anyMatch(line -> line.matches("kale +.*picked +1.4-2.4 .*"));
        Outcome lettuce = run("crops", "lettuce");
        assertTrue(lettuce.out().contains("growth.light_use"), lettuce.out());
        assertTrue(lettuce.out().contains("from memory") || lettuce.out().contains("read"));
        assertEquals(2, run("crops", "letuce").exit());
        assertTrue(run("crops", "letuce").err().contains("Did you mean \"lettuce\"?"));
        assertTrue(run("crops", "pepper").err().contains("Did you mean \"sweet-pepper\"?"));
    }

    @Test
    void an_unknown_command_or_option_is_a_fault_of_the_command_line() {
        assertEquals(2, run().exit());
        assertTrue(run("rnu").err().contains("Did you mean \"tideless run\"?"));
        assertTrue(run("calender", "a.toml").err().contains("Did you mean \"tideless calendar\"?"));
        assertTrue(run("sise").err().contains("Did you mean \"tideless size\"?"));
        assertFalse(run("quince").err().contains("Did you mean"));
        assertTrue(run("run", "a.toml", "--memebrs").err().contains("--members"));
        assertEquals(2, run("rum").exit());
        assertEquals(2, run("run").exit());
        assertEquals(2, run("run", BENCH, "--seeds", "1").exit());
    }

    @Test
    void members_say_how_sure_each_date_is_and_one_member_says_nothing() throws IOException {
        Path results = folder.resolve("results");
        Outcome sure = run("run", BENCH, "--no-plots", "--members", "20", "-o", results);
        assertTrue(sure.out().contains("of 20 rigs that yours might be"), sure.out());
        assertTrue(sure.out().contains("likely "), sure.out());
        String json = Files.readString(results.resolve("result.json"));
        assertTrue(json.contains("\"chance\": ") && json.contains("\"early\": "), json);
        Outcome alone = run("run", BENCH, "--no-plots", "--members", "1", "-o", results);
        assertFalse(alone.out().contains("likely"), alone.out());
        json = Files.readString(results.resolve("result.json"));
        assertFalse(json.contains("chance") || json.contains("likely"), json);
    }

    @Test
    void a_crop_that_is_not_ready_by_the_end_is_said_so_and_one_that_was_cut_is_not()
            throws IOException {
        String bench = Files.readString(Path.of("scenarios", "calm-bench.toml"));
        for (int days : new int[] {15, 26}) {
            Path file = folder.resolve("short-" + days + ".toml");
            Files.writeString(
                    file,
                    bench.replaceFirst("length = \"[^\"]*\"", "length = \"" + days + " days\""));
            Outcome outcome =
                    run("run", file, "--no-plots", "--members", "1", "-o", folder.resolve("short"));
            assertEquals(days == 15, outcome.out().contains(" is not ready by the end of the run"));
            assertEquals(days == 26, outcome.out().contains("a plant (ready)"), outcome.out());
        }
    }

    @Test
    void members_that_are_none_or_too_many_are_refused_at_once() {
        for (String members : new String[] {"0", "-5", "10001", "1000000", "ten"}) {
            Outcome outcome = run("run", BENCH, "--members", members, "-o", folder.resolve("no"));
            assertEquals(2, outcome.exit());
            assertTrue(outcome.err().contains("--members"), outcome.err());
        }
        assertFalse(Files.exists(folder.resolve("no")));
    }

    @Test
    void units_of_the_states_and_a_pens_scale_hold_for_screen_and_page() throws IOException {
        Path to = folder.resolve("us");
        Outcome us =
                run(
                        "run",
                        "scenarios/calm-bench.toml",
                        "--members",
                        "1",
                        "--units",
                        "us",
                        "--ec-scale=ppm500",
                        "--no-plots",
                        "-o",
                        to);
        assertEquals(0, us.exit(), us.err());
        String metric = ".*\\d (L|mm|cm|degC|mS/cm)\\b.*";
        assertEquals(List.of(), us.out().lines().filter(l -> l.matches(metric)).toList());
        assertTrue(us.out().contains("GALLONS"), us.out());
        assertTrue(us.out().contains("Feed: 850 ppm-500"), us.out());
        String page = Files.readString(to.resolve("report.html"));
        assertTrue(page.contains(" gal"));
        assertFalse(
                page.replaceAll("(?s)<style.*?</style>|<[^>]*>", "\n").matches("(?s)" + metric));
        assertTrue(Files.readString(to.resolve("tasks.csv")).contains("pour [L]"));
        Outcome check = run("check", "scenarios/calm-bench.toml", "--units=us");
        assertTrue(check.out().contains(" gal"), check.out());
        assertFalse(check.out().matches("(?s).*\\d (L|mm|cm)\\b.*"), check.out());
        assertEquals(2, run("check", "scenarios/calm-bench.toml", "--units=imperial").exit());
    }

    /** A note is about the file: where that is looked at it is told, in the units asked for. */
    @Test
    void notes_on_a_scenario_are_told_by_those_who_look_at_it_and_not_by_every_question()
            throws IOException {
        Path file = folder.resolve("crowded.toml");
        String bench = Files.readString(Path.of("scenarios/calm-bench.toml"));
        Files.writeString(file, bench.replace("plants = 6", "plants = 60"));
        for (String command : new String[] {"check", "show"}) {
            assertTrue(run(command, file).err().contains("note: "), command);
        }
        String us = run("check", file, "--units=us").err();
        assertTrue(us.contains("60 plants on 3.2 ft2"), us);
        for (String command : new String[] {"light", "calendar"}) {
            Outcome asked =
                    command.equals("light")
                            ? run(command, file)
                            : run(command, file, "--members=1", "-o", folder.resolve("c.ics"));
            assertEquals(0, asked.exit());
            assertEquals("", asked.err(), command);
        }
    }

    @Test
    void a_shell_can_complete_every_command_and_its_options() {
        String help = run("generate-completion", "--help").out();
        assertTrue(help.startsWith("Print what makes the tab key complete words"), help);
        Outcome script = run("generate-completion");
        assertEquals(0, script.exit(), script.err());
        for (String word : new String[] {"complete -F", "calendar", "compare", "--members"}) {
            assertTrue(script.out().contains(word), word);
        }
    }

    @Test
    void every_command_teaches_by_example() {
        for (String command : new String[] {"new", "run", "check", "show", "crops"}) {
            Outcome help = run(command, "--help");
            assertTrue(help.exit() == 0 && help.out().contains("Example"), command + help.out());
        }
        assertTrue(run("--version").out().startsWith("tideless 0."));
    }

    @Test
    void a_file_that_is_not_there_is_told_with_the_name_that_is_nearest() throws IOException {
        Path bench = scenario(bench());
        Path misspelt = bench.resolveSibling("mi.toml");
        Outcome outcome = run("check", misspelt);
        assertEquals(1, outcome.exit());
        assertEquals(
                misspelt + ": there is no such file\n    Did you mean " + bench + "?\n",
                outcome.err().replace("\r", ""));
        Outcome other = run("check", bench.resolveSibling("mi.csv"));
        assertFalse(other.err().contains("Did you mean"), other.err());
        for (String option : new String[] {"--log", "--corrected"}) {
            Path none = bench.resolveSibling("none.csv");
            Outcome beside = run("run", bench, option, none);
            assertEquals(1, beside.exit(), option);
            assertEquals(none + ": there is no such file", beside.err().strip());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "--units=imperial; found \"imperial\", allowed: metric, us",
                "--ec-scale=ppm50; allowed: ms, ppm500, ppm700; did you mean \"ppm500\"?"
            })
    void a_word_that_is_none_of_an_options_is_refused_in_our_own_words(String option, String told)
            throws IOException {
        Outcome outcome = run("check", scenario(bench()), option);
        assertEquals(2, outcome.exit());
        assertTrue(outcome.err().contains(told), outcome.err());
        assertFalse(outcome.err().contains("case-sensitive"), outcome.err());
    }

    @Test
    void capitals_of_a_unit_are_read() throws IOException {
        assertEquals(0, run("check", scenario(bench()), "--units=US", "--ec-scale=PPM500").exit());
    }

    /**
     * Spinach bolts in more than 14 h: of a dim lamp no longer hours are asked for; of lettuce they
     * are.
     */
    @Test
    void no_hours_of_a_lamp_are_asked_for_that_the_crop_does_not_bear() throws IOException {
        String dim =
                """
                title = "dim"
                start = 2026-03-02
                length = "40 days"
                climate.kind = "room"
                climate.day_temperature = "20 degC"
                lamp = { ppfd = "200 umol/m2/s", on = "06:00", off = "20:00" }
                feed.recipe = "steiner"
                [tray.t]
                length = "60 cm"
                width = "35 cm"
                depth = "10 cm"
                crop = "spinach"
                plants = 4
                filling = "sealed"
                """;
        String spinach = run("light", scenario(dim)).out();
        assertTrue(
                spinach.contains("would be enough; longer hours would not: it bears 14 h a day"),
                spinach);
        String lettuce = run("light", scenario(dim.replace("spinach", "lettuce"))).out();
        assertTrue(lettuce.contains("h of this lamp, or "), lettuce);
    }

    /** What is broken at 80 columns cannot be copied into a shell. */
    @Test
    void every_example_in_a_help_stands_unbroken_on_a_screen_of_80_columns() {
        List<CommandLine> left = new ArrayList<>(List.of(Tideless.commands()));
        int seen = 0;
        while (!left.isEmpty()) {
            CommandLine command = left.remove(0);
            left.addAll(command.getSubcommands().values());
            String help = command.getUsageMessage();
            for (String line : command.getCommandSpec().usageMessage().footer()) {
                if (line.startsWith("  ")) {
                    seen++;
                    String shown = String.format(Locale.ROOT, line);
                    assertTrue(help.contains(shown + System.lineSeparator()), shown);
                }
            }
        }
        assertTrue(seen > 40, "examples seen: " + seen);
    }

    @Test
    void every_help_tells_of_its_own_command() {
        String all = "Reads a scenario (your reservoir, valves";
        assertTrue(run("--help").out().contains(all));
        for (String command : new String[] {"new", "check"}) {
            assertFalse(run("log", command, "--help").out().contains(all), command);
        }
    }

    @Test
    void a_result_never_takes_the_place_of_a_file_the_scenario_names() throws IOException {
        Path log =
                Files.writeString(folder.resolve("tray-t.csv"), "time,thirst\ndays,L/day\n0,1\n");
        Path scenario =
                scenario(
                        "title = \"t\"\nstart = 2026-03-02\nlength = \"2 days\"\n[climate]\n"
                                + "kind = \"room\"\nday_temperature = \"22 degC\"\n[feed]\nrecipe"
                                + " = \"steiner\"\n[tray.t]\nlength = \"60 cm\"\nwidth = \"35"
                                + " cm\"\ndepth = \"20 cm\"\nthirst_file = \"tray-t.csv\"\n");
        String before = Files.readString(log);
        Outcome outcome = run("run", scenario, "--no-plots", "-o", folder);
        assertEquals(2, outcome.exit(), outcome.err());
        assertTrue(outcome.err().contains("tray-t.csv: the scenario reads this file"));
        assertEquals(before, Files.readString(log));
        assertFalse(Files.exists(folder.resolve("result.json")));
    }

    @Test
    void an_at_sign_before_a_name_opens_no_file() throws IOException {
        Path words = Files.writeString(folder.resolve("words"), "--help");
        Outcome outcome = run("run", "@" + words);
        assertEquals(1, outcome.exit(), outcome.out());
        assertTrue(outcome.err().contains("there is no such file"), outcome.err());
    }

    @Test
    void a_folder_without_a_name_is_refused() {
        Outcome outcome = run("run", BENCH, "-o", "");
        assertEquals(2, outcome.exit());
        assertTrue(outcome.err().contains("allowed: the name of a folder"), outcome.err());
    }

    /** What is told of a table whose every write fails. */
    private static Outcome failing(String why) {
        Outlet outlet =
                new Outlet(
                        new OutputStream() {
                            @Override
                            public void write(int b) throws IOException {
                                throw new IOException(why);
                            }
                        });
        PrintWriter out =
                new PrintWriter(new OutputStreamWriter(outlet, StandardCharsets.UTF_8), false);
        out.println("a task");
        StringWriter err = new StringWriter();
        boolean told = Tideless.told(outlet, out, new PrintWriter(err));
        return new Outcome(told ? 0 : 1, "", err.toString());
    }

    @Test
    void what_could_not_be_printed_is_a_failure() {
        Outcome full = failing("No space left on device");
        assertEquals(1, full.exit());
        assertTrue(full.err().contains("could not be written in full"));
    }

    @Test
    void a_reader_who_has_seen_enough_is_none() {
        assertEquals(new Outcome(0, "", ""), failing("Broken pipe"));
        assertEquals(new Outcome(0, "", ""), failing("The pipe is being closed"));
    }

    @Test
    void what_was_typed_is_repeated_without_what_a_terminal_would_obey() {
        Outcome outcome = run("check", "a\u001b[31m\u202eb\r\u0007\ud83c\udf45.toml", "--x\u009b");
        assertEquals(2, outcome.exit());
        Outcome none = run("check", "a\u001b[31m\u202eb.toml");
        assertEquals(1, none.exit());
        for (String said : new String[] {outcome.err(), none.err()}) {
            assertTrue(
                    said.codePoints()
                            .allMatch(c -> c == '\n' || (c >= ' ' && c < 0x7f) || c == 0x1f345),
                    said);
        }
        assertTrue(none.err().contains("a?[31m?b.toml"), none.err());
    }

    @Test
    void a_name_that_is_none_on_this_system_is_refused_in_plain_words() {
        Outcome outcome = run("check", "a\0b.toml"); // as letters that a locale lacks
        assertEquals(2, outcome.exit());
        assertTrue(outcome.err().contains("none of this system's"), outcome.err());
        assertFalse(outcome.err().contains("Exception"), outcome.err());
    }

    private void refusesAtOnce(String said, Object... args) {
        Outcome outcome = run(args);
        assertEquals(2, outcome.exit(), outcome.err());
        assertEquals("", outcome.out());
        assertTrue(outcome.err().contains(said), said + " is not in:\n" + outcome.err());
        assertFalse(outcome.err().contains("\tat "), outcome.err());
    }

    @Test
    void away_says_how_long_nobody_need_come_and_writes_it() throws IOException {
        Path results = folder.resolve("away");
        Outcome outcome =
                run(
                        "away",
                        BENCH,
                        "--members",
                        3,
                        "--from",
                        "2026-03-23",
                        "--every",
                        21,
                        "--absence",
                        "2026-04-03..2026-04-12",
                        "-o",
                        results);
        assertEquals(0, outcome.exit(), outcome.err());
        assertTrue(outcome.out().contains("From Mon 23 Mar on you may be away "), outcome.out());
        assertTrue(
                outcome.out().replaceAll("\\s+", " ").contains("with all filled up on Fri 20 Mar"),
                outcome.out());
        assertTrue(outcome.out().contains("Away 3 to 12 Apr: "), outcome.out());
        for (String file : new String[] {"away.csv", "absences.csv", "away.png", "away.svg"}) {
            assertTrue(Files.size(results.resolve(file)) > 50, file);
        }
        assertEquals(4, Files.readAllLines(results.resolve("away.csv")).size());
    }

    /** A refill in time costs nothing, and no litres are to be bought for it. */
    @Test
    void size_tells_first_what_a_run_would_change_first() {
        Outcome outcome = run("size", BENCH, "--members", 1);
        assertEquals(0, outcome.exit(), outcome.err());
        assertTrue(
                outcome.out().contains("What run tells to change first: refill on Thu 2 Apr"),
                outcome.out());
        assertFalse(
                run("size", "scenarios/calm-bench.toml", "--members", 1)
                        .out()
                        .contains("What run tells"));
    }

    @Test
    void an_absence_that_outlasts_the_run_is_judged_as_far_as_it_goes_and_that_is_said() {
        for (String to : new String[] {"2026-05-12", "9999-05-12"}) {
            Outcome outcome =
                    run(
                            "away",
                            BENCH,
                            "--members",
                            2,
                            "--from",
                            "2026-05-04",
                            "--absence",
                            "2026-05-02.." + to);
            assertEquals(0, outcome.exit(), outcome.err());
            assertTrue(outcome.out().contains("The run ends on 10 May: of the "), outcome.out());
            assertEquals(
                    to.startsWith("2026"),
                    outcome.out().contains("of the 2 days after it nothing is known."),
                    outcome.out());
        }
        Outcome inside = run("away", BENCH, "--members", 2, "--absence", "2026-05-02..2026-05-10");
        assertFalse(inside.out().contains("The run ends on"), inside.out());
    }

    @Test
    void away_refuses_what_it_cannot_answer() {
        refusesAtOnce("allowed: 1 to 10000", "away", BENCH, "--members", 0);
        refusesAtOnce("allowed: 1 to 10000", "away", BENCH, "--members", 1_000_000);
        refusesAtOnce("allowed: 1 to 366", "away", BENCH, "--every", 0);
        refusesAtOnce("a date that exists", "away", BENCH, "--from", "2026-02-30");
        refusesAtOnce("2026-03-02 to 2026-05-10", "away", BENCH, "--from", "2027-01-01");
        refusesAtOnce("two days, as", "away", BENCH, "--absence", "2026-04-03");
        refusesAtOnce("not after the last", "away", BENCH, "--absence", "2026-04-09..2026-04-03");
        refusesAtOnce("a day of the run", "away", BENCH, "--absence", "2026-02-03..2026-04-03");
        refusesAtOnce("the name of a folder", "away", BENCH, "-o", "");
    }

    @Test
    void sensitivity_says_what_to_measure_first_the_same_on_any_number_of_threads()
            throws IOException {
        String calm = "scenarios/calm-bench.toml";
        for (String threads : new String[] {"1", "3"}) {
            Outcome outcome =
                    run(
                            "sensitivity",
                            calm,
                            "--points",
                            16,
                            "--threads=" + threads,
                            "-o",
                            folder.resolve(threads));
            assertEquals(0, outcome.exit(), outcome.err());
            assertTrue(
                    outcome.out().contains("First harvest: 30 Mar to 3 Apr")
                            && outcome.out().contains("Measure first: thirst of lettuce"),
                    outcome.out());
            String[] told = outcome.out().replaceAll("\\s+", " ").split("Not worth measuring");
            Matcher first = Pattern.compile("Measure first: ([^,]+),").matcher(told[0]);
            while (first.find()) {
                assertFalse(told[1].split("\\.")[0].contains(first.group(1)), outcome.out());
            }
        }
        List<String> rows = Files.readAllLines(folder.resolve("1").resolve("sensitivity.csv"));
        assertEquals(rows, Files.readAllLines(folder.resolve("3").resolve("sensitivity.csv")));
        // 12 groups for each of four answers, and the header: one rig in 32 comes to harm.
        assertEquals(1 + 4 * 12, rows.size());
        assertTrue(rows.get(0).startsWith("asked,unknown,of,total,total_error,alone,"));
    }

    @Test
    void sensitivity_refuses_what_it_cannot_answer() {
        refusesAtOnce("allowed: 16 to 8192", "sensitivity", BENCH, "--points", 0);
        refusesAtOnce("allowed: 16 to 8192", "sensitivity", BENCH, "--points", 1_000_000);
        refusesAtOnce("allowed: 16 to 8192", "sensitivity", BENCH, "--points", -5);
        refusesAtOnce("a date that exists", "sensitivity", BENCH, "--from", "2026-02-30");
        refusesAtOnce("2026-03-02 to 2026-05-10", "sensitivity", BENCH, "--from", "2027-01-01");
        refusesAtOnce("the name of a folder", "sensitivity", BENCH, "-o", "");
        refusesAtOnce("a whole number", "sensitivity", BENCH, "--points", "many");
    }

    @Test
    void size_answers_for_a_reservoir_and_for_lamps() {
        Path calm = Path.of("scenarios/calm-bench.toml");
        Outcome reservoir =
                run("size", calm, "--what", "reservoir", "--visits-every", 7, "--members", 2);
        assertEquals(0, reservoir.exit(), reservoir.err());
        assertTrue(reservoir.out().contains("L usable would be enough."), reservoir.out());
        Outcome lamps = run("size", BENCH, "--what", "lamp-hours");
        // 12 mol/m2 a day at 240 umol/m2/s takes 12e6 / 240 / 3600 hours.
        assertTrue(lamps.out().contains("13.9 to 18.0 h a day"), lamps.out()); // 23.1 by light
    }

    @Test
    void size_refuses_what_it_cannot_answer() {
        Path bucket = Path.of("scenarios/hand-topped-bucket.toml");
        refusesAtOnce("allowed: 1 to 10000", "size", BENCH, "--members", 0);
        refusesAtOnce("allowed: 1 to 10000", "size", BENCH, "--members", 1_000_000);
        refusesAtOnce("above 0, at most 1", "size", BENCH, "--chance", 0);
        refusesAtOnce("above 0, at most 1", "size", BENCH, "--chance", "NaN");
        refusesAtOnce("above 0, at most 1", "size", BENCH, "--chance", 1.5);
        refusesAtOnce("allowed: 1 to 60", "size", BENCH, "--visits-every", 0);
        refusesAtOnce("--what", "size", BENCH, "--what", "happiness");
        refusesAtOnce(
                "basil, pak-choi, tomato", "size", BENCH, "--what", "plants", "--of", "basill");
        refusesAtOnce("only with", "size", BENCH, "--of", "basil");
        refusesAtOnce("none", "size", bucket, "--what", "reservoir");
    }

    @Test
    void calendar_prints_a_diary_and_writes_the_same_file_every_time() throws IOException {
        Path file = folder.resolve("bench.ics");
        Outcome outcome = run("calendar", BENCH, "--members", 2, "-o", file);
        assertEquals(0, outcome.exit(), outcome.err());
        assertTrue(outcome.out().contains("Sow basil for tray basil"), outcome.out());
        assertTrue(outcome.out().contains("Refill, reservoir shelf"), outcome.out());
        byte[] first = Files.readAllBytes(file);
        assertEquals(0, run("calendar", BENCH, "--members", 2, "-o", file).exit());
        assertArrayEquals(first, Files.readAllBytes(file));
        refusesAtOnce("a file ending in .ics", "calendar", BENCH, "-o", BENCH);
        refusesAtOnce("allowed: 1 to 10000", "calendar", BENCH, "--members", -1);
    }
}
