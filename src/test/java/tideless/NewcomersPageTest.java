package tideless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The drawings a newcomer sees are those of the code as it is. */
class NewcomersPageTest {
    private static final House HOUSE = new House();

    @Test
    void the_drawing_of_the_rooms_shows_every_arrow_of_the_code() throws IOException {
        Map<String, List<String>> uses = HOUSE.uses();
        assertEquals(Set.copyOf(Rooms.NAMES), NewcomersPage.ROOMS_TOLD.keySet());
        assertEquals(
                Files.readString(NewcomersPage.ROOMS),
                NewcomersPage.rooms(uses),
                "run NewcomersPage.main of the tests");
        Map<String, List<String>> less = new TreeMap<>(uses);
        less.put("report", new ArrayList<>(uses.get("report")));
        less.get("report").remove("drawing");
        assertNotEquals(NewcomersPage.rooms(uses), NewcomersPage.rooms(less));
    }

    @Test
    void the_drawing_of_one_step_shows_every_call_in_order() throws IOException {
        List<String> step = HOUSE.step();
        assertTrue(step.size() >= 8, "calls seen: " + step);
        assertEquals(List.of(), NewcomersPage.untold(step), "to be told of in NewcomersPage");
        assertEquals(
                Files.readString(NewcomersPage.STEP),
                NewcomersPage.step(step),
                "run NewcomersPage.main of the tests");
    }

    @Test
    void an_arrow_that_follows_from_others_is_left_out() {
        Map<String, List<String>> uses =
                Map.of("a", List.of("b", "c"), "b", List.of("c"), "c", List.of());
        assertEquals(
                Map.of("a", List.of("b"), "b", List.of("c"), "c", List.of()), House.arrows(uses));
    }
}
