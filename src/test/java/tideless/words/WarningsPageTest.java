package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.advice.Warning;

/** The page that says what to do about each warning. */
class WarningsPageTest {
    private static List<String[]> rows() throws IOException {
        return Files.readAllLines(Path.of("docs/warnings.md")).stream()
                .filter(line -> line.startsWith("| ") && !line.startsWith("| warning"))
                .filter(line -> !line.startsWith("| ---"))
                .map(line -> line.substring(2, line.length() - 2).split(" \\| ", -1))
                .toList();
    }

    @Test
    void every_warning_a_run_can_give_stands_on_the_page_in_its_order() throws IOException {
        assertEquals(
                Arrays.stream(Warning.Kind.values()).map(Names::of).toList(),
                rows().stream().map(row -> row[0]).toList());
    }

    @Test
    void each_has_a_meaning_a_sign_and_a_first_step() throws IOException {
        for (String[] row : rows()) {
            assertEquals(4, row.length, row[0]);
            for (String cell : row) {
                assertTrue(cell.strip().length() > 3, row[0] + ": " + cell);
            }
        }
    }
}
