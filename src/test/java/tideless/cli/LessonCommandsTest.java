package tideless.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the teacher's part of a lesson says that a command prints is what it prints. */
class LessonCommandsTest {
    @TempDir Path folder;

    private static String lessons() throws IOException {
        return Files.readString(Path.of("docs", "lessons.md")).replaceAll("\\s+", " ");
    }

    private static String told(String... command) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exit = Tideless.execute(new PrintWriter(out), new PrintWriter(err), command);
        assertEquals(0, exit, err.toString());
        return out.toString().replaceAll("\\s+", " ");
    }

    private String run(String scenario) {
        return told("run", scenario, "--members", "1", "-o", folder.resolve("out").toString());
    }

    private static String first(String text, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(text);
        assertThat(found.find()).as(pattern + " in " + text).isTrue();
        return found.group(1);
    }

    @Test
    void so_much_is_flushed() throws IOException {
        String litres =
                first(run("scenarios/lessons/flush.toml"), "flush \\w+ \\d+ \\w+ 08:00 ([\\d.]+) ");
        assertThat(lessons()).contains("a flush of " + litres + " L (`flush.toml`)");
    }

    @Test
    void so_long_does_the_outgrown_reservoir_last() throws IOException {
        String told = run("scenarios/outgrown-trough.toml");
        String atFirst = first(told, "lasts ([\\d.]+) days at first");
        String atWorst = first(told, "lasts [\\d.]+ days at first, ([\\d.]+) days at worst");
        assertThat(lessons())
                .contains(
                        "A full reservoir lasts "
                                + atFirst
                                + " days at first and "
                                + atWorst
                                + " at worst");
    }

    @Test
    void so_many_rigs_bear_the_absence() throws IOException {
        String told =
                told(
                        "away",
                        "scenarios/science-room-bench.toml",
                        "--absence",
                        "2026-04-03..2026-04-12",
                        "--members",
                        "20");
        String asItStands = first(told, "Away 3 to 12 Apr: nothing is harmed in (\\d+ of 20) rigs");
        String filledUp = first(told, "Filled up on Thu 2 Apr: nothing is harmed in (\\d+ of 20)");
        assertThat(lessons())
                .contains("Not surely: in " + asItStands + " rigs that might be")
                .contains("Filled up on Thursday 2 April it is " + filledUp + ";");
    }
}
