package tideless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the program says in one place: no second copy of it stands anywhere in main. */
class SaidOnceTest {
    private static final Path MAIN = Path.of("src/main/java/tideless");

    /** Names of the files whose code, comments left out, holds a pattern. */
    private static Set<String> saying(String pattern) throws IOException {
        Pattern wanted = Pattern.compile(pattern);
        Set<String> found = new TreeSet<>();
        try (Stream<Path> files = Files.walk(MAIN)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                List<String> code =
                        Files.readAllLines(file).stream()
                                .filter(line -> !line.strip().startsWith("*"))
                                .map(line -> line.replaceFirst("//.*", ""))
                                .toList();
                if (code.stream().anyMatch(line -> wanted.matcher(line).find())) {
                    found.add(MAIN.relativize(file).toString().replace('\\', '/'));
                }
            }
        }
        return found;
    }

    @Test
    void how_a_time_of_day_is_written() throws IOException {
        assertEquals(Set.of("physics/Time.java"), saying("%02d:%02d"));
    }

    // A reader's rules name seconds of a zone and steps a user may choose; units are a table. Two
    // rooms of the advice still say it again.
    @Test
    void how_long_a_day_is_and_an_hour() throws IOException {
        assertEquals(
                Set.of(
                        "advice/ReservoirAdvice.java",
                        "advice/SolutionAdvice.java",
                        "physics/Time.java",
                        "rig/Visits.java",
                        "scenario/RunCost.java",
                        "scenario/UnitTable.java",
                        "scenario/WeatherFile.java"),
                saying("(?<![\\w.,])(3600|86_?400)\\b"));
    }

    // Nitrogen, phosphorus, potassium, calcium, magnesium, sulfur.
    @Test
    void what_a_mole_of_an_element_weighs() throws IOException {
        assertEquals(
                Set.of("solution/MolarMass.java"),
                saying(
                        "(?<![\\w.])(14\\.00\\d*|30\\.97\\d*|39\\.09\\d*|40\\.07\\d*|24\\.30\\d*|32\\.06\\d*)\\b"));
    }

    @Test
    void the_search_sees_what_it_seeks() throws IOException {
        assertTrue(saying("class Time\\b").contains("physics/Time.java"));
    }
}
