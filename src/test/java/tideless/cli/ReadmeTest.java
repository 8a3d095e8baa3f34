package tideless.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The output that the README and the page of questions show is what the program prints; see {@link
 * DocsTest} for the rest.
 */
class ReadmeTest {
    private static final List<Path> PAGES =
            List.of(
                    Path.of("README.md"),
                    Path.of("docs", "questions.md"),
                    Path.of("docs", "report.md"),
                    Path.of("docs", "log.md"));
    private static final Pattern OUTPUT =
            Pattern.compile("<!-- output: (.*?) -->\n```text\n(.*?)```\n", Pattern.DOTALL);

    @TempDir Path folder;

    private static String text(Path page) throws IOException {
        return Files.readString(page, StandardCharsets.UTF_8);
    }

    private String run(String words) {
        List<String> args = new ArrayList<>(List.of(words.split(" ")));
        if (args.get(0).equals("run")) {
            int to = args.indexOf("-o");
            if (to >= 0) {
                args.subList(to, to + 2).clear();
            }
            args.addAll(List.of("-o", folder.toString()));
        }
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exit =
                Tideless.execute(
                        new PrintWriter(out), new PrintWriter(err), args.toArray(String[]::new));
        assertEquals(0, exit, words + "\n" + err);
        return out.toString();
    }

    private String shown(String command) {
        return command.startsWith("run ") ? table(run(command + " --no-plots")) : run(command);
    }

    /** The table alone; the line that counts the files names a folder of its own. */
    private static String table(String output) {
        return output.substring(0, output.lastIndexOf("\n", output.length() - 2)).stripTrailing()
                + "\n";
    }

    @Test
    void the_output_it_shows_is_the_real_one() throws IOException {
        for (Path page : PAGES) {
            Matcher shown = OUTPUT.matcher(text(page));
            int seen = 0;
            while (shown.find()) {
                assertEquals(shown(shown.group(1)), shown.group(2));
                seen++;
            }
            assertTrue(seen > 0, "no output is shown in " + page);
        }
    }

    /** A clone has no start script: what stands first there is what builds the program. */
    @Test
    void the_first_commands_work_in_a_clone_and_the_next_in_the_unpacked_zip() throws IOException {
        List<String> blocks = new ArrayList<>();
        Matcher block =
                Pattern.compile("(?m)(?:^ {4}\\S.*\n)+").matcher(text(Path.of("README.md")));
        while (block.find()) {
            blocks.add(block.group().replaceAll("(?m)^ {4}", ""));
        }
        assertEquals(
                "mvn -q -DskipTests package\njava -jar target/tideless.jar new YOURS.toml\n"
                        + "java -jar target/tideless.jar run YOURS.toml\n",
                blocks.get(0));
        assertEquals("./tideless new YOURS.toml\n./tideless run YOURS.toml\n", blocks.get(1));
    }

    /** What stands first, for somebody with ten seconds: the calm bench's verdict, cut short. */
    @Test
    void the_verdict_of_the_first_screen_is_that_of_the_run_it_shows() throws IOException {
        Matcher quote =
                Pattern.compile("(?m)^> (.*(?:\n> .*)*)").matcher(text(Path.of("README.md")));
        assertTrue(quote.find(), "no verdict is quoted");
        Matcher shown = OUTPUT.matcher(text(Path.of("README.md")));
        assertTrue(shown.find() && quote.start() < shown.start(), "it stands after the output");
        assertEquals("run scenarios/calm-bench.toml", shown.group(1));
        String run = shown.group(2).replaceAll("\\s+", " ");
        String verdict = quote.group(1).replaceAll("\\s*\n> ", " ").replaceAll("[*]", "");
        for (String sentence : verdict.split("(?<=\\.) ")) {
            for (String part : sentence.replaceAll("\\.$", "").split(", (?=\\d+ Mar)")) {
                assertTrue(run.contains(part), part);
            }
        }
    }

    /** And what it says of the bench that is left low, in a sentence. */
    @Test
    void the_bench_that_is_left_low_does_what_the_first_page_says() throws IOException {
        String readme = text(Path.of("README.md")).replaceAll("\\s+", " ");
        String run = text(Path.of("docs", "report.md")).replaceAll("\\s+", " ");
        assertTrue(readme.contains("reservoir runs dry on 9 April, basil and tomato may wilt"));
        assertTrue(run.contains("ran dry, reservoir shelf, from Thu 9 Apr"));
        assertTrue(run.contains("tray basil wilts"));
        assertTrue(run.contains("tray tomato wilts"));
        assertTrue(
                readme.contains("refill on 2 April, the visit before, though it is not low then"));
        assertTrue(
                run.contains("refill on Thu 2 Apr, the visit before, though it is not low then"));
    }

    /** Writes the outputs anew into the pages. */
    public static void main(String[] args) throws IOException {
        ReadmeTest writer = new ReadmeTest();
        writer.folder = Files.createTempDirectory("readme");
        for (Path page : PAGES) {
            String text = OUTPUT.matcher(text(page)).replaceAll(match -> writer.block(match));
            Files.writeString(page, text, StandardCharsets.UTF_8);
        }
    }

    private String block(MatchResult match) {
        return Matcher.quoteReplacement(
                "<!-- output: "
                        + match.group(1)
                        + " -->\n```text\n"
                        + shown(match.group(1))
                        + "```\n");
    }
}
