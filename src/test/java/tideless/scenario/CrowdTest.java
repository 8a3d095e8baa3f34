package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Plants on less than half of the ground that growers give them are asked about. */
class CrowdTest {
    private static List<String> notes(String stand) {
        Reading read = ScenarioReader.read("crowd.toml", new FilesInMemory(rig(stand)));
        return crowds(assertInstanceOf(Reading.Good.class, read, read.toString()));
    }

    private static String rig(String stand) {
        return """
                title = "crowd"
                start = 2026-03-02
                length = "20 days"
                [climate]
                kind = "room"
                day_temperature = "22 degC"
                [feed]
                recipe = "hoagland-2"
                ec = "1.6 mS/cm"
                [tray.a]
                length = "60 cm"
                width = "60 cm"
                depth = "12 cm"
                start_level = "7 cm"
                cup_bottom = "6 cm"
                filling = "sealed"
                %s
                [visits]
                days = "daily"
                """
                .formatted(stand);
    }

    private static List<String> crowds(Reading.Good read) {
        return read.notes().stream().map(Note::toString).filter(n -> n.contains("meant?")).toList();
    }

    // 0.36 m2 and half of 450 cm2 a lettuce: 16 plants have just enough.
    @Test
    void forty_lettuces_on_the_ground_of_eight_are_asked_about_and_sixteen_are_not() {
        assertEquals(List.of(), notes("crop = \"lettuce\"\nplants = 16"));
        assertEquals(1, notes("crop = \"lettuce\"\nplants = 17").size());
        String forty = notes("crop = \"lettuce\"\nplants = 40").get(0);
        assertTrue(
                forty.contains(
                        "40 plants on 0.36 m2 have 90 cm2 each, and growers give this crop 450 cm2"),
                forty);
    }

    @Test
    void thinned_or_spaced_apart_in_time_they_are_no_crowd() {
        String crowd = "crop = \"lettuce\"\nplants = 40\n";
        assertEquals(List.of(), notes(crowd + "thinning = [{ from = 2026-03-10, plants = 16 }]"));
        assertEquals(
                List.of(),
                notes(crowd + "respacing = [{ from = 2026-03-10, plants_per_m2 = 40 }]"));
        assertEquals(
                1, notes(crowd + "respacing = [{ from = 2026-03-10, plants_per_m2 = 50 }]").size());
    }

    @Test
    void a_crop_of_which_nothing_is_known_is_no_crowd() {
        assertEquals(List.of(), notes("crop = \"mint\"\nplants = 100"));
    }

    @Test
    void no_scenario_that_comes_along_is_a_crowd() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("scenarios"))) {
            for (Path file : files.filter(p -> p.toString().endsWith(".toml")).toList()) {
                Reading read = ScenarioReader.read(file);
                assertEquals(
                        List.of(), crowds(assertInstanceOf(Reading.Good.class, read)), "" + file);
            }
        }
    }

    /** Lettuce is set out at 14 days: at 45, in a plug, it is root-bound. */
    @Test
    void seedlings_more_than_twice_as_old_as_usual_are_told() {
        String lettuce = "crop = \"lettuce\"\nplants = 4\n";
        assertEquals(List.of(), olds(lettuce + "nursery_age = \"28 days\""));
        assertEquals(1, olds(lettuce + "nursery_age = \"29 days\"").size());
        String old = olds(lettuce + "nursery_age = \"45 days\"").get(0);
        assertTrue(
                old.startsWith("seedlings of 45 days, and growers set this crop out at 14:"), old);
        assertEquals(
                List.of(),
                olds(lettuce + "nursery_age = \"45 days\"\ntransplant = { leaves = 6 }"));
    }

    private static List<String> olds(String lines) {
        Reading read = ScenarioReader.read("old.toml", new FilesInMemory(rig(lines)));
        return assertInstanceOf(Reading.Good.class, read, read.toString()).notes().stream()
                .map(Note::text)
                .filter(text -> text.startsWith("seedlings of"))
                .toList();
    }
}
