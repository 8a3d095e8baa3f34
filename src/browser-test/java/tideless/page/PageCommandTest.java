package tideless.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.cli.Tideless;

/** The page that the command writes holds the scenario and all its files, and asks for nothing. */
class PageCommandTest {
    @TempDir Path folder;

    private final StringWriter said = new StringWriter();

    private int run(Object... words) {
        String[] texts = new String[words.length];
        for (int i = 0; i < words.length; i++) {
            texts[i] = words[i].toString();
        }
        PrintWriter out = new PrintWriter(said);
        return Tideless.execute(out, out, texts);
    }

    private static String element(String page, String id) {
        Matcher matcher =
                Pattern.compile("<script [^>]*id=\"" + id + "\"[^>]*>([^<]*)</script>")
                        .matcher(page);
        assertTrue(matcher.find(), "an element " + id);
        return matcher.group(1);
    }

    private static JsonNode held(String page) throws IOException {
        byte[] packed = Base64.getDecoder().decode(element(page, "scenario"));
        return new ObjectMapper()
                .readTree(new GZIPInputStream(new ByteArrayInputStream(packed)).readAllBytes());
    }

    @Test
    void the_scenario_and_the_weather_it_names_are_in_the_page() throws IOException {
        Path scenario = Path.of("scenarios/glasshouse-tomato-trough.toml");
        Path page = folder.resolve("made/house.html");
        assertEquals(0, run("page", scenario, "-o", page), said::toString);
        JsonNode held = held(Files.readString(page));
        assertEquals("glasshouse-tomato-trough.toml", held.path("name").asText());
        assertEquals(Files.readString(scenario), held.path("text").asText());
        String weather = "weather/typical-year-45n-8e.csv";
        assertEquals(
                Files.readString(Path.of("scenarios", weather)),
                held.path("files").path(weather).asText());
        assertEquals(1, held.path("files").size());
        assertTrue(Files.size(page) < 1_500_000, "bytes: " + Files.size(page));
    }

    @Test
    void corrections_and_a_log_go_into_the_page_and_stay_what_they_are() throws IOException {
        Path scenario = Path.of("scenarios/logged-bench.toml");
        Path corrected = folder.resolve("corrected.toml");
        String learned = "[crop.lettuce.thirst]\ntimes = 1.5\ndoubt_left = \"40 %\"\n";
        Files.writeString(corrected, learned);
        Path log = folder.resolve("own-log.csv");
        Files.copy(Path.of("scenarios/logged-bench-log.csv"), log);
        Path page = folder.resolve("corrected.html");
        Object[] words = {"page", scenario, "--corrected", corrected, "--log", log, "-o", page};
        assertEquals(0, run(words), said::toString);
        JsonNode beside = held(Files.readString(page)).path("beside");
        assertEquals(learned, beside.at("/corrected/text").asText());
        assertEquals(corrected.toString(), beside.at("/corrected/name").asText());
        assertEquals(Files.readString(log), beside.at("/log/text").asText());
        Files.delete(page);
        Files.writeString(corrected, "[crop.lettuce.thrist]\ntimes = 1.5\n");
        assertEquals(2, run("page", scenario, "--corrected", corrected, "-o", page));
        assertTrue(said.toString().contains("thrist"), said::toString);
        assertFalse(Files.exists(page));
        Path none = folder.resolve("none.toml");
        assertTrue(run("page", scenario, "--corrected", none, "-o", page) > 0);
        assertEquals(2, run("page", scenario, "--corrected", corrected, "-o", corrected));
    }

    @Test
    void the_policy_of_the_page_lets_nothing_in_or_out() throws IOException {
        Path page = folder.resolve("bench.html");
        assertEquals(0, run("page", "scenarios/calm-bench.toml", "-o", page), said::toString);
        String html = Files.readString(page);
        Matcher policy =
                Pattern.compile("Content-Security-Policy\" content=\"([^\"]*)\"").matcher(html);
        assertTrue(policy.find());
        assertTrue(policy.group(1).startsWith("default-src 'none'; "), policy.group(1));
        assertFalse(
                policy.group(1).matches(".*(https?:|\\*|connect-src|unsafe-inline|'unsafe-eval).*"),
                policy.group(1));
        assertFalse(html.matches("(?s).*(src|href)=\"(?!#).*"), "something is fetched");
        assertFalse(html.contains("@SCENARIO@"));
    }

    @Test
    void no_text_of_a_scenario_can_break_out_of_its_place() throws IOException {
        Path scenario = folder.resolve("odd.toml");
        String text =
                Files.readString(Path.of("scenarios/calm-bench.toml"))
                        .replaceFirst(
                                "title = \"[^\"]*\"",
                                "title = \"</script><script>alert(1)</script>\"");
        Files.writeString(scenario, text);
        Path page = folder.resolve("odd.html");
        assertEquals(0, run("page", scenario, "-o", page), said::toString);
        assertEquals(text, held(Files.readString(page)).path("text").asText());
        assertFalse(Files.readString(page).contains("alert(1)"));
    }

    @Test
    void a_faulty_scenario_or_another_ending_writes_nothing() throws IOException {
        Path scenario = folder.resolve("faulty.toml");
        Files.writeString(scenario, "title = 3\n");
        Path page = folder.resolve("faulty.html");
        assertEquals(2, run("page", scenario, "-o", page));
        assertTrue(said.toString().contains("faulty.toml:1:9: title"), said::toString);
        assertEquals(
                2, run("page", "scenarios/calm-bench.toml", "-o", folder.resolve("bench.htm")));
        assertTrue(said.toString().contains("a file ending in .html"), said::toString);
        assertEquals(2, run("page", "scenarios/calm-bench.toml"));
        assertEquals(1, run("page", folder.resolve("none.toml"), "-o", page));
        assertFalse(Files.exists(page));
    }

    @Test
    void the_scenario_itself_is_not_written_over() throws IOException {
        Path scenario = folder.resolve("bench.html");
        Files.copy(Path.of("scenarios/calm-bench.toml"), scenario);
        assertEquals(2, run("page", scenario, "-o", scenario));
        assertEquals(
                Files.readString(Path.of("scenarios/calm-bench.toml")), Files.readString(scenario));
    }
}
