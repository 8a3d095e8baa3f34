package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.study.Forecasts;

/** The scenario on the page for beginners. */
class StartPageTest {
    @Test
    void the_scenario_of_25_lines_is_read_and_grows_without_a_warning() throws IOException {
        String page = Files.readString(Path.of("docs/start.md"));
        int from = page.indexOf("```toml\n") + 8;
        String text = page.substring(from, page.indexOf("```", from));
        assertTrue(text.lines().count() <= 25, "lines: " + text.lines().count());
        Reading reading = ScenarioReader.read("start.md", new FilesInMemory(text));
        Reading.Good good = assertInstanceOf(Reading.Good.class, reading, reading.toString());
        assertEquals(List.of(), Forecasts.of(good.scenario(), 1).advice().warnings());
    }
}
