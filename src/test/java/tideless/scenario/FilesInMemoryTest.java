package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A page has no disk: the same scenario out of memory is the same scenario. */
class FilesInMemoryTest {
    private static final Path SCENARIOS = Path.of("scenarios");

    @Test
    void a_scenario_and_its_weather_read_the_same_from_memory_and_from_disk() throws IOException {
        int withFiles = 0;
        for (Path path : shipped()) {
            String text = Files.readString(path);
            FilesInMemory files = new FilesInMemory(text);
            try (var all = Files.walk(SCENARIOS)) {
                for (Path other : all.filter(Files::isRegularFile).toList()) {
                    String name = SCENARIOS.relativize(other).toString().replace('\\', '/');
                    files.put(name, Files.readString(other));
                }
            }
            Reading.Good disk =
                    assertInstanceOf(
                            Reading.Good.class, ScenarioReader.read(path), path.toString());
            Reading.Good memory =
                    assertInstanceOf(
                            Reading.Good.class, ScenarioReader.read(path.toString(), files));
            // Over the bytes of the scenario and of every file it names.
            assertEquals(disk.scenario().digest(), memory.scenario().digest());
            assertEquals(disk.values(), memory.values());
            withFiles += text.contains("file = ") ? 1 : 0;
        }
        assertEquals(true, withFiles > 0, "no shipped scenario names a file");
    }

    private static List<Path> shipped() throws IOException {
        try (var all = Files.list(SCENARIOS)) {
            return all.filter(path -> path.toString().endsWith(".toml")).sorted().toList();
        }
    }

    @Test
    void a_file_that_is_not_in_memory_is_a_fault_in_the_words_of_the_disk() {
        String text =
                ScenarioReaderTest.GOOD.replace(
                        "crop = \"basil\"\nplants = 8", "thirst_file = \"none.csv\"");
        Reading.Faulty faulty =
                assertInstanceOf(
                        Reading.Faulty.class,
                        ScenarioReader.read("bench.toml", new FilesInMemory(text)));
        assertEquals(
                List.of(
                        "bench.toml:25:15: tray.basil.thirst_file: found \"none.csv\", which does not"
                                + " exist, allowed: a file that can be read\n"
                                + "    The name counts from the folder of the scenario."),
                faulty.problems().stream().map(Problem::toString).toList());
    }
}
