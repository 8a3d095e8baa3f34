package tideless.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A value changes and everything else stays where it was written. */
class ScenarioTextTest {
    private static String changed(String toml, String key, String literal) {
        return new ScenarioText(toml).with(Map.of(List.of(key.split("\\.")), literal));
    }

    @Test
    void a_value_changes_and_its_comment_stays() {
        assertEquals(
                "a = 1\n[t]\nb   = 7 # why\nc = 3\n",
                changed("a = 1\n[t]\nb   = \"x # y\" # why\nc = 3\n", "t.b", "7"));
        assertEquals("b = 7", changed("b = 'it''s'".replace("''", ""), "b", "7"));
        assertEquals("b = 7", changed("b = 2026-03-02", "b", "7"));
    }

    @Test
    void a_list_over_several_lines_and_a_table_in_a_line_are_values_too() {
        String list =
                "away = [\n  { from = 1, to = 2 }, # one ]\n  { from = 3, to = 4 },\n] # all\nz = 1\n";
        assertEquals("away = [] # all\nz = 1\n", changed(list, "away", "[]"));
        assertEquals(
                "lamp = { ppfd = 9, on = \"06:00\" }\n",
                changed("lamp = { ppfd = \"2 x\", on = \"06:00\" }\n", "lamp.ppfd", "9"));
        assertEquals("t.a.b = 9\n", changed("t.a.b = 8\n", "t.a.b", "9"));
        assertEquals(
                "s = \"\"\"\na = 1\n\"\"\"\na = 2\n",
                changed("s = \"\"\"\na = 1\n\"\"\"\na = 1\n", "a", "2"));
    }

    // A run of some hundreds of them would keep the parser itself for minutes.
    @Test
    void empty_lines_and_comments_by_the_thousand_stay_and_do_not_shift_the_place() {
        String head = "# why\n\n".repeat(20_000);
        assertEquals(
                head + "a = 2\n" + head + "[t]\n# b\nc = 3\n",
                changed(head + "a = 2\n" + head + "[t]\n# b\nc = 1\n", "t.c", "3"));
    }

    @Test
    void letters_beyond_the_first_plane_do_not_shift_the_place() {
        String toml = "n = { \"\ud83c\udf45\" = 1, b = 2 }\n[\"tray\".\"\u00fc x\"]\nd = 3\n";
        assertEquals(
                toml.replace("b = 2", "b = 22"),
                new ScenarioText(toml).with(Map.of(List.of("n", "b"), "22")));
        assertEquals(
                toml.replace("d = 3", "d = 4"),
                new ScenarioText(toml).with(Map.of(List.of("tray", "\u00fc x", "d"), "4")));
    }

    @Test
    void what_is_not_there_is_put_into_its_table_or_a_new_one() {
        assertEquals("[t]\nc = 1\nb = 2\n[u]\n", changed("[t]\nb = 2\n[u]\n", "t.c", "1"));
        assertEquals("a = 1\n\n[t.u]\nc = 1\n", changed("a = 1\n", "t.u.c", "1"));
        assertEquals("c = 1\na = 1\n", changed("a = 1\n", "c", "1"));
    }

    @Test
    void what_is_taken_out_leaves_no_line() {
        assertEquals("[t]\nc = 1\n", changed("[t]\nb = 2 # away\nc = 1\n", "t.b", ""));
    }

    @Test
    void what_cannot_be_changed_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> changed("t = { a = 1 }\n", "t.b", "2"));
    }
}
