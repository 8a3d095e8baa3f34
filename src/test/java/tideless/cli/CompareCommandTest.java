package tideless.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CompareCommandTest {
    private static final String DEPTH_AND_VALVE = "scenarios/depth-and-valve.toml";
    private static final String BENCH = "scenarios/science-room-bench.toml";

    @TempDir Path folder;

    private record Outcome(int exit, String out, String err) {}

    private static Outcome run(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words =
                Stream.concat(Stream.of("compare"), Stream.of(args).map(Object::toString))
                        .toArray(String[]::new);
        int exit = Tideless.execute(new PrintWriter(out), new PrintWriter(err), words);
        return new Outcome(exit, out.toString(), err.toString());
    }

    @Test
    void one_key_gives_a_row_a_value_with_the_present_marked_and_what_cannot_be_built_named()
            throws IOException {
        Outcome outcome =
                run(
                        DEPTH_AND_VALVE,
                        "--vary",
                        "tray.basil.valve.setting=1 cm, 5 cm, 8 cm, 11 cm",
                        "-o",
                        folder);
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.exit()).isZero();
        List<String> lines = outcome.out().lines().toList();
        assertThat(lines).filteredOn(l -> l.startsWith("  5 cm <now>")).isNotEmpty();
        assertThat(lines).filteredOn(l -> l.contains("<now>") && l.contains("8 cm")).isEmpty();
        assertThat(outcome.out()).containsPattern("  11 cm +#  not buildable");
        assertThat(outcome.out()).contains("Not buildable: 1 of 4.").contains("below the deck");
        assertThat(outcome.out()).doesNotContain("line ");
        // Cups hang at 4 cm and the deck shuts at 9: too low a valve leaves seedlings hanging.
        assertThat(outcome.out()).containsPattern("  1 cm +- +no");
        List<String> csv = Files.readAllLines(folder.resolve("compare.csv"));
        assertThat(csv).hasSize(6);
        assertThat(csv.get(0)).startsWith("tray.basil.valve.setting [cm],state,as_it_stands,");
        assertThat(csv.get(3)).startsWith("5,run,yes,yes,1,yes,0,0,0,");
        assertThat(csv.get(5)).startsWith("11,not buildable,no,,");
        long columns = csv.get(0).chars().filter(c -> c == ',').count();
        for (String row : csv.subList(1, 5)) {
            assertThat(row.chars().filter(c -> c == ',').count()).as(row).isEqualTo(columns);
        }
        // The row as it stands and the cell of the same design are one design, run twice.
        assertThat(csv.get(1)).isEqualTo(csv.get(3));
        assertThat(folder.resolve("lines-yield.png")).isNotEmptyFile();
        assertThat(folder.resolve("lines-harm.svg")).isNotEmptyFile();
    }

    // Two blocks: the second begins with the names again, and no line is wider than the terminal.
    @Test
    void a_table_wider_than_the_terminal_goes_on_below_under_the_same_names() {
        Outcome outcome =
                run("scenarios/outgrown-trough.toml", "--vary", "tray.trough.plants=1..4");
        List<String> lines = outcome.out().lines().toList();
        assertThat(lines).allMatch(line -> line.length() <= Terminal.width());
        assertThat(lines).filteredOn(line -> line.startsWith("  4 <now>")).hasSize(2 + 1);
        assertThat(lines).filteredOn(line -> line.contains("survives")).hasSize(1);
        assertThat(lines).filteredOn(line -> line.contains("first harm")).hasSize(1);
        assertThat(outcome.out()).contains("trough dry 22 Mar");
    }

    @Test
    void table_and_pictures_follow_the_units_asked_for_and_the_file_keeps_its_own()
            throws IOException {
        Outcome outcome =
                run(
                        DEPTH_AND_VALVE,
                        "--vary",
                        "tray.basil.depth=8 cm..10 cm/2",
                        "--vary",
                        "tray.basil.valve.setting=2.54 cm..5.08 cm/2",
                        "--units",
                        "us",
                        "-o",
                        folder);
        assertThat(outcome.exit()).isZero();
        assertThat(outcome.out()).contains("3.1 in", "1.0 in").doesNotContain(" cm");
        assertThat(Files.readString(folder.resolve("map-litres.svg")))
                .contains(">Gallons poured by design<", ">tray.basil.depth (in)<", ">3.1<", ">1<");
        assertThat(Files.readAllLines(folder.resolve("compare.csv")).get(0))
                .startsWith("tray.basil.depth [cm],");
        Outcome lines =
                run(
                        DEPTH_AND_VALVE,
                        "--vary",
                        "tray.basil.valve.setting=1 cm..6 cm/3",
                        "--units",
                        "us",
                        "-o",
                        folder);
        assertThat(lines.out()).contains(" gallons ").doesNotContain(" litres ");
        assertThat(Files.readString(folder.resolve("lines-yield.svg")))
                .contains(">tray.basil.valve.setting (in)<");
    }

    @Test
    void two_keys_give_a_map_in_which_the_present_is_marked() throws IOException {
        Outcome outcome =
                run(
                        DEPTH_AND_VALVE,
                        "--vary",
                        "tray.basil.depth=8 cm..10 cm/3",
                        "--vary",
                        "tray.basil.valve.setting=3 cm..7 cm/3",
                        "-o",
                        folder);
        assertThat(outcome.exit()).isZero();
        assertThat(outcome.out()).containsPattern("5 cm .*<743\\+>");
        assertThat(outcome.out())
                .contains("hours short of air")
                .containsPattern("\\n  7 cm +\\d+[+-] +\\d+.*\\n  5 cm +\\d+.* <0\\+>");
        assertThat(outcome.out().indexOf("  7 cm")).isLessThan(outcome.out().indexOf("  3 cm"));
        assertThat(Files.readString(folder.resolve("map-yield.svg"))).contains("without harm");
        assertThat(Files.readAllLines(folder.resolve("compare.csv"))).hasSize(11);
    }

    // A file of `new` states an overflow of its own, a centimetre below the rim.
    @Test
    void a_tray_of_a_new_file_may_be_made_shallower() {
        Path made = folder.resolve("made.toml");
        PrintWriter nowhere = new PrintWriter(new StringWriter());
        assertThat(
                        Tideless.execute(
                                nowhere,
                                nowhere,
                                "new",
                                made.toString(),
                                "--crop=basil",
                                "--plants=8",
                                "--usual"))
                .isZero();
        Outcome outcome = run(made, "--vary", "tray.*.depth=6 cm, 8 cm, 10 cm");
        assertThat(outcome.exit()).isZero();
        assertThat(outcome.out()).containsPattern("6 cm +[+-]").doesNotContain("not buildable  ");
        assertThat(run(made, "--vary", "tray.*.depth=3 cm, 8 cm").out())
                .contains("Not buildable: 1 of 2. The first: tray.bench.cup_bottom");
    }

    @Test
    void what_makes_no_difference_is_said() {
        assertThat(run(BENCH, "--vary", "tray.basil.depth=8 cm..12 cm/3").out())
                .contains("tray.basil.depth changes nothing between 8 and 12 cm: the solution");
        assertThat(run(DEPTH_AND_VALVE, "--vary", "tray.basil.plants=6..8").out())
                .doesNotContain("changes nothing");
    }

    @Test
    void the_same_bytes_come_of_any_number_of_threads() throws IOException {
        for (String threads : new String[] {"1", "3"}) {
            run(
                    DEPTH_AND_VALVE,
                    "--vary=tray.*.valve.setting=4 cm..6 cm/3",
                    "--members=6",
                    "--threads=" + threads,
                    "-o",
                    folder.resolve(threads));
        }
        try (Stream<Path> files = Files.list(folder.resolve("1"))) {
            for (Path file : files.toList()) {
                assertThat(folder.resolve("3").resolve(file.getFileName()))
                        .hasSameBinaryContentAs(file);
            }
        }
    }

    @Test
    void several_scenarios_stand_side_by_side() {
        Outcome outcome =
                run("scenarios/lessons/lean-feed.toml", "scenarios/lessons/rich-feed.toml");
        assertThat(outcome.exit()).isZero();
        assertThat(outcome.out()).contains("lean-feed.toml  +").contains("rich-feed.toml  +");
        assertThat(outcome.out()).contains("All 2 designs are without harm; they yield the same");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "tray.basil.dept=6 cm,8 cm | Did you mean \"depth\"?",
                "tray.basl.depth=6 cm,8 cm | Did you mean \"basil\"?",
                "tray.basil.depth=8 cm..6 cm/3 | a range that rises",
                "tray.basil.depth=6 cm..80 mm/3 | both ends in one unit",
                "tray.basil.depth=6 cm, 80 mm | all values in one unit",
                "tray.basil.depth=6 cm..8 cm | a range with the number of its values",
                "tray.basil.depth=6 cm..8 cm/1 | allowed: 2 to 10000 values",
                "tray.basil.depth=6 cm..8 cm/1000000000 | allowed: 2 to 10000 values",
                "tray.basil.depth=6,8 | found \"6\", allowed: ",
                "tray.basil.depth= | allowed: KEY=VALUES",
                "tray.basil.depth | allowed: KEY=VALUES",
                "tray.basil.crop=basil,lettuce | a key that holds no number",
                "tray.basil=6 cm | found a table, allowed: one of its keys",
                "tray.basil.plants=4..9/4 | whole numbers, so a number of values that gives them, as \"4..9/6\"",
                "tray.basil.plants=4..18/5 | as \"4..18/3\"",
                "tray.basil.plants=4,4.5 | whole numbers",
                "tray.basil.depth=600 cm,700 cm | none of these designs can be built",
            })
    void a_bad_range_or_key_is_refused_in_one_message(String vary, String said) {
        Outcome outcome = run(DEPTH_AND_VALVE, "--vary", vary, "-o", folder.resolve("none"));
        assertThat(outcome.exit()).as(outcome.err()).isEqualTo(2);
        assertThat(outcome.err()).contains(said).doesNotContain("\tat ");
        assertThat(outcome.out()).isEmpty();
        assertThat(folder.resolve("none")).doesNotExist();
    }

    @Test
    void a_grid_of_a_billion_and_impossible_members_are_refused_at_once() {
        String grid = "tray.basil.depth=5.5 cm..15 cm/10000";
        String other = "tray.basil.valve.setting=1 cm..10 cm/10000";
        assertThat(run(DEPTH_AND_VALVE, "--vary", grid, "--vary", other).err())
                .contains("found a grid of 100000000 designs, allowed: at most 10000");
        for (String members : new String[] {"0", "-1", "1000000"}) {
            Outcome outcome =
                    run(DEPTH_AND_VALVE, "--vary", "tray.*.plants=4..9", "--members=" + members);
            assertThat(outcome.exit()).isEqualTo(2);
            assertThat(outcome.err()).contains("--members: found " + members + ", allowed: 1 to");
        }
        assertThat(run(DEPTH_AND_VALVE, "--vary", grid, "--members=1000").err())
                .contains("allowed: at most 1000000 seasons in all");
        assertThat(run(DEPTH_AND_VALVE).err()).contains("allowed: one scenario with --vary");
        assertThat(run(DEPTH_AND_VALVE, BENCH, "--vary", "tray.*.plants=4..9").exit()).isEqualTo(2);
        assertThat(run("not-there.toml", "--vary", "tray.*.plants=4..9").exit()).isEqualTo(1);
    }
}
