package tideless.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.scenario.StarterQuestion;
import tideless.study.Forecasts;

class NewCommandTest {
    @TempDir Path folder;

    private record Outcome(int exit, String out, String err) {}

    private static Outcome run(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        List<String> words = new ArrayList<>(List.of("new"));
        for (Object arg : args) {
            words.add(arg.toString());
        }
        int exit =
                Tideless.execute(
                        new PrintWriter(out), new PrintWriter(err), words.toArray(String[]::new));
        return new Outcome(exit, out.toString(), err.toString());
    }

    /** Answers come from a pipe, one a line. */
    private static Outcome piped(String answers, Object... args) {
        InputStream before = System.in;
        try {
            System.setIn(new ByteArrayInputStream(answers.getBytes(StandardCharsets.UTF_8)));
            return run(args);
        } finally {
            System.setIn(before);
        }
    }

    private Path file() {
        return folder.resolve("mine.toml");
    }

    private int warnings() {
        Reading.Good good = (Reading.Good) ScenarioReader.read(file());
        return Forecasts.of(good.scenario(), 1).advice().warnings().size();
    }

    // A teacher's trays, a bucket in inches, a gardener's dozen: what a sound answer gives warns
    // of nothing.
    @ParameterizedTest
    @CsvSource({
        "lettuce, 6, 2, 60 x 35 x 8 cm, valve, 60 L, mon wed fri",
        "dwarf-tomato, 1, 1, 12 x 14 in, hand, , daily",
        "basil, 8, 12, 24 x 14 x 4 in, valve, 100 gal, daily",
        "pak-choi, 6, 1, 60 x 35 x 15 cm, once, , sat",
        "spinach, 12, 1, 60 x 35 x 8 cm, valve, 40 L, mon wed fri"
    })
    void a_sound_answer_grows_without_a_warning(
            String crop,
            String plants,
            String trays,
            String size,
            String filling,
            String reservoir,
            String visits) {
        List<Object> args = new ArrayList<>(List.of(file(), "--crop", crop, "--plants", plants));
        args.addAll(List.of("--trays", trays, "--size", size, "--filling", filling));
        args.addAll(List.of("--visits", visits, "--start", "2026-03-02", "--usual"));
        if (reservoir != null) {
            args.addAll(List.of("--reservoir", reservoir));
        }
        Outcome outcome = run(args.toArray());
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.exit()).isZero();
        assertThat(outcome.out()).contains("tideless run " + file());
        assertThat(warnings()).isZero();
    }

    @Test
    void a_crop_that_still_bears_is_run_past_an_absence() throws IOException {
        List<Object> args =
                List.of(
                        file(),
                        "--crop",
                        "cucumber",
                        "--visits",
                        "weekends",
                        "--start",
                        "2027-05-15",
                        "--usual");
        run(args.toArray());
        assertThat(Files.readString(file())).contains("length = \"63 days\"", "[\"sat\", \"sun\"]");
        Files.delete(file());
        List<Object> away = new ArrayList<>(args);
        away.addAll(List.of("--away", "2027-07-10 to 2027-07-24"));
        run(away.toArray());
        // 70 days to the return and a week more; after the 63rd day nothing is left to be away
        // from.
        assertThat(Files.readString(file())).contains("length = \"77 days\"");
        Files.delete(file());
        away.set(away.size() - 1, "2027-07-20 to 2027-07-24");
        run(away.toArray());
        assertThat(Files.readString(file())).contains("length = \"63 days\"");
    }

    @Test
    void at_most_eight_questions_are_asked_and_enter_takes_the_usual() throws IOException {
        Outcome outcome = piped("\n".repeat(8), file(), "--start", "2026-03-02");
        assertThat(outcome.exit()).isZero();
        assertThat(outcome.err().split("\\[", -1)).hasSize(1 + 8);
        String byHand = Files.readString(file());
        Files.delete(file());
        run(file(), "--start", "2026-03-02", "--usual");
        assertThat(Files.readString(file())).isEqualTo(byHand);
        assertThat(byHand).contains("assumed");
    }

    @Test
    void a_wrong_answer_is_told_and_asked_again() throws IOException {
        Outcome outcome =
                piped(
                        "lettice\nlettuce\n0\n4\n1\n60 by 35\n60 x 35 x 9 cm\nonce\nmonday"
                                + " thursday\n2026-03-12 to 2026-03-10\nnone\n",
                        file(),
                        "--start",
                        "2026-03-02");
        assertThat(outcome.exit()).isZero();
        assertThat(outcome.err())
                .contains("did you mean \"lettuce\"?")
                .contains("a whole number from 1 to 500")
                .contains("as 60 x 35 x 8 cm")
                .contains("two dates in order");
        assertThat(Files.readString(file()))
                .contains("plants = 4")
                .contains("days = [\"mon\", \"thu\"]")
                .doesNotContain("reservoir");
    }

    // As people write them; and a rig measured in inches is written down in inches.
    @ParameterizedTest
    @CsvSource({
        "dwarf tomato, 12 x 14 inches",
        "Dwarf-Tomato, '12\" x 14\"'",
        "dwarf-tomato, 12in by 14in",
        "dwarf-tomato, 12 in x 14 in"
    })
    void sizes_and_crops_are_understood_as_people_write_them(String crop, String size)
            throws IOException {
        Outcome outcome =
                run(file(), "--crop", crop, "--size", size, "--filling", "hand", "--usual");
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.out()).contains("tideless run " + file() + " --units us");
        assertThat(Files.readString(file()))
                .contains("diameter = \"12 in\"", "depth = \"14 in\"", "cup_bottom = \"10.9 in\"")
                .contains("\"900 ppm-500\" or \"1260 ppm-700\"", "usual: 1.8 to 3");
    }

    /** Each as somebody has answered it, and the line it becomes. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "--crop; bok choy; crop = \"pak-choi\"",
                "--crop; Arugula; crop = \"rocket\"",
                "--size; 1.2 m x 60 cm x 20 cm; length = \"120 cm\"",
                "--size; 60,5 x 35 x 8 cm; length = \"60.5 cm\"",
                "--size; 2 ft x 14 in x 4 in; length = \"24 in\"",
                "--filling; float valve; setting =",
                "--filling; by hand; .hand]",
                "--filling; filled once; filling = \"sealed\"",
                "--visits; every day; days = \"daily\"",
                "--visits; monday to friday; \"mon\", \"tue\", \"wed\", \"thu\", \"fri\"]",
                "--visits; sat-mon; [\"sat\", \"sun\", \"mon\"]",
                "--visits; sat-mon and thursdays; [\"sat\", \"sun\", \"mon\", \"thu\"]",
                "--visits; Tuesdays and Thursdays; [\"tue\", \"thu\"]",
                "--visits; school days; \"fri\"]",
                "--away; 21 Mar 2026 to 29 March 2026; from = 2026-03-21, to = 2026-03-29",
                "--away; Mar 21, 2026 until Mar 29, 2026; from = 2026-03-21, to = 2026-03-29",
                "--away; 21.3.2026 - 29.3.2026; from = 2026-03-21, to = 2026-03-29",
                "--away; no; at = \"08:00\""
            })
    void answers_are_understood_as_people_give_them(String option, String answer, String line)
            throws IOException {
        Outcome outcome = run(file(), option, answer, "--start", "2026-03-02", "--usual");
        assertThat(outcome.err()).isEmpty();
        assertThat(Files.readString(file())).contains(line);
    }

    /** Where two days could be meant, or what is asked for is not said, it asks again. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "--away; 3/4/2026 to 5/4/2026; two dates in order",
                "--away; 31 Feb 2026 to 2 Mar 2026; two dates in order",
                "--away; 2026-03-21; two dates in order",
                "--filling; by hand from a reservoir; valve, hand, once",
                "--size; 12 x 14.5; with its unit, as",
                "--size; 5 gallon bucket; 'or 30 x 32 cm for a round one'",
                "--visits; monkeys; mon-fri",
                "--crop; cherry tomato; 'did you mean \"dwarf-tomato\" (for windowsill or patio, 35 cm high) or \"tomato\" (a vine on a string, 2 m and more)?'"
            })
    void what_may_mean_two_things_is_not_guessed(String option, String answer, String told) {
        Outcome outcome = run(file(), option, answer, "--start", "2026-03-02", "--usual");
        assertThat(outcome.exit()).isEqualTo(2);
        assertThat(outcome.err()).contains(told.replace("'", ""));
        assertThat(outcome.err().lines()).hasSize(1);
        assertThat(file()).doesNotExist();
    }

    @Test
    void answers_that_end_too_soon_write_nothing() {
        Outcome outcome = piped("lettuce\n6\n", file());
        assertThat(outcome.exit()).isEqualTo(2);
        assertThat(outcome.err()).contains("--usual takes the rest as usual");
        assertThat(file()).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource({
        "--crop, lettice, did you mean",
        "--plants, 6.5, a whole number",
        "--plants, 100000000000, a whole number",
        "--trays, 25, 1 to 24",
        "--size, 60 x 35 x 8, as 60 x 35 x 8 cm",
        "--size, 60 x 35 x 80 cm, from 3 to 60 cm deep",
        "--filling, pump, 'valve, hand, once'",
        "--reservoir, 40, as 40 L or 10 gal",
        "--visits, someday, daily",
        "--away, 2026-02-30 to 2026-03-02, two dates",
        "--start, tomorrow, a date"
    })
    void a_fault_in_an_option_is_told_and_nothing_is_written(
            String option, String value, String told) {
        Outcome outcome = run(file(), option, value, "--usual");
        assertThat(outcome.exit()).isEqualTo(2);
        assertThat(outcome.err()).contains(told).doesNotContain("\tat ");
        assertThat(file()).doesNotExist();
    }

    @Test
    void a_file_that_is_there_stays_as_it_is() throws IOException {
        Files.writeString(file(), "mine");
        Outcome outcome = run(file(), "--usual");
        assertThat(outcome.exit()).isEqualTo(2);
        assertThat(outcome.err()).contains("is there already");
        assertThat(file()).hasContent("mine");
    }

    @Test
    void a_folder_that_is_not_there_is_a_file_fault() {
        Outcome outcome = run(folder.resolve("no/mine.toml"), "--usual");
        assertThat(outcome.exit()).isEqualTo(1);
        assertThat(outcome.err().lines()).hasSize(1);
    }

    // Six lettuces drink some 18 L; this tray holds 10.5 L up to its cups. So many by half: 6 to 3
    // to 4 or 5, which were tried and fail.
    @Test
    void a_rig_that_cannot_last_is_written_with_what_would_serve_in_its_place() throws IOException {
        List<Object> args =
                List.of(file(), "--filling", "once", "--start", "2026-11-27", "--usual");
        Outcome outcome = run(args.toArray());
        assertThat(outcome.exit()).isZero();
        assertThat(outcome.out()).contains("The crop does not come through: tray bench dries out");
        assertThat(warnings()).isPositive();
        List<String> instead =
                outcome.out().lines().filter(l -> l.startsWith("  --")).map(String::strip).toList();
        assertThat(instead).hasSize(3);
        assertThat(instead.get(0)).startsWith("--plants ");
        assertThat(instead.get(1)).matches("--size \"60 x 35 x \\d+ cm\"");
        assertThat(instead.get(2)).isEqualTo("--filling hand");
        for (String option : instead) {
            Files.delete(file());
            List<Object> changed = new ArrayList<>(args);
            String[] words = option.replace("\"", "").split(" ", 2);
            if (changed.contains(words[0])) {
                changed.set(changed.indexOf(words[0]) + 1, words[1]);
            } else {
                changed.addAll(List.of(words));
            }
            Outcome other = run(changed.toArray());
            assertThat(other.out()).doesNotContain("Tried in its place");
            assertThat(warnings()).as(option).isZero();
        }
    }

    // Six celery plants leave salt behind in ten litres, whatever they are fed.
    @Test
    void a_small_tray_of_a_large_crop_is_poured_away_and_filled_anew_rather_than_warned_of()
            throws IOException {
        Outcome outcome =
                run(
                        file(),
                        "--crop",
                        "celery",
                        "--filling",
                        "hand",
                        "--start",
                        "2026-11-27",
                        "--usual");
        assertThat(outcome.out()).containsPattern("poured away and mixed anew, \\d+ times? in");
        assertThat(Files.readString(file())).contains("flush = \"at limit\" # assumed");
        assertThat(warnings()).isZero();
    }

    @ParameterizedTest
    @CsvSource({
        "60 x 35 x 8 cm, 1.25, 60 x 35 x 10 cm",
        "60 x 35 x 8 cm, 1.26, 60 x 35 x 11 cm",
        "1 m x 60 cm x 20 cm, 3, 100 x 60 x 60 cm",
        "12 x 14 in, 1.25, 12 x 17.5 in",
        "'12\" x 14\"', 1.5, 12 x 21 in"
    })
    void a_deeper_tray_is_told_in_whole_centimetres_or_half_inches(
            String size, double times, String deeper) {
        assertThat(StarterQuestion.deeper(size, times)).contains(deeper);
    }

    @Test
    void nothing_is_tried_beyond_the_deepest_tray_and_the_largest_reservoir() {
        assertThat(StarterQuestion.deeper("60 x 35 x 20 cm", 3.01)).isEmpty();
        assertThat(StarterQuestion.larger("10 gal", 2)).contains("76 L"); // 2 x 37.85 L
        assertThat(StarterQuestion.larger("1000 L", 2)).contains("2000 L");
        assertThat(StarterQuestion.larger("1000 L", 2.01)).isEmpty();
    }

    @Test
    void a_pipe_that_never_answers_is_asked_twenty_times_and_no_more() {
        Outcome twenty = piped("lettuce\n" + "many\n".repeat(20) + "8\n", file());
        assertThat(twenty.exit()).isEqualTo(2);
        assertThat(twenty.err()).contains("no answer in 20 tries that serves; nothing was written");
        assertThat(twenty.err().split("found \"many\"", -1)).hasSize(21);
        assertThat(file()).doesNotExist();
        Outcome nineteen = piped("lettuce\n" + "many\n".repeat(19) + "8\n", file());
        assertThat(nineteen.err()).doesNotContain("20 tries").contains("How many such trays");
    }
}
