package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.Test;

class SeasonFiguresTest {
    @Test
    void a_line_stands_beside_what_was_before_and_a_new_one_beside_nothing() throws IOException {
        String cells = ",259,0,0.4,10.57 (10.57),8.24 (8.24),16,11,0";
        List<String> page =
                SeasonFigures.page(List.of("sealed-lettuce-tank,tank" + cells, "new,t" + cells))
                        .lines()
                        .toList();
        assertEquals(
                "| sealed-lettuce-tank | tank | 232 -> 259 | 0 -> 0 | 0.3 -> 0.4 | 11.47 -> 10.57"
                        + " (10.57) | 8.77 -> 8.24 (8.24) | 0 -> 16 | 0 -> 11 | 0 -> 0 |",
                page.get(page.size() - 2));
        assertTrue(page.get(page.size() - 1).startsWith("| new | t | - -> 259 |"));
    }

    /**
     * Figures move with every change of crop or feed; that each shipped tray has a line is held.
     */
    @Test
    void the_page_has_a_line_for_every_tray_that_is_shipped() throws IOException {
        List<String> page = Files.readAllLines(SeasonFigures.PAGE);
        for (String line : SeasonFigures.lines()) {
            String[] cells = line.split(",");
            String head = "| " + cells[0] + " | " + cells[1] + " |";
            assertTrue(page.stream().anyMatch(row -> row.startsWith(head)), head);
        }
    }
}
