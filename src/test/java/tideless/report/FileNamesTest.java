package tideless.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class FileNamesTest {
    @Test
    void names_become_plain_ascii() {
        assertEquals(
                List.of("basil-tray", "kuche-nord", "grosse-pflanze", "etc-passwd", "istanbul"),
                FileNames.of(
                        List.of(
                                "Basil tray",
                                "Küche (Nord)",
                                "Große Pflanze",
                                "../etc/passwd",
                                "İSTANBUL")));
    }

    @Test
    void names_that_fall_together_are_told_apart_in_order() {
        assertEquals(
                List.of("a-b", "a-b-2", "a-b-2-2", "a-b-3"),
                FileNames.of(List.of("a b", "A/B", "a-b-2", "a_b")));
    }

    @Test
    void a_name_without_a_plain_letter_becomes_its_number() {
        assertEquals(List.of("x", "2", "2-2"), FileNames.of(List.of("x", "トマト", "2")));
    }

    @Test
    void long_names_are_cut() {
        assertEquals(List.of("a".repeat(40)), FileNames.of(List.of("a".repeat(300))));
    }
}
