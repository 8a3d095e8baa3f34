package tideless.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a slider says it moves is what the scenario then holds. */
class KnobsTest {
    private static final Path SCENARIOS = Path.of("scenarios");

    static Stream<Path> shipped() throws IOException {
        try (Stream<Path> files = Files.walk(SCENARIOS)) {
            return files
                    .filter(file -> file.toString().endsWith(".toml"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    private static Session session(Path scenario) throws IOException {
        Session session = new Session(1);
        Path weather = Path.of("weather/typical-year-45n-8e.csv");
        session.file(weather.toString(), Files.readString(SCENARIOS.resolve(weather)));
        String log = "logged-bench-log.csv";
        session.file(log, Files.readString(SCENARIOS.resolve(log)));
        assertEquals(List.of(), session.read(Files.readString(scenario)));
        return session;
    }

    @SuppressWarnings("unchecked") // as Knob tells them
    private static List<Map<String, Object>> knobs(Session session) {
        return (List<Map<String, Object>>) session.rig().get("knobs");
    }

    private static Map<String, Object> knob(Session session, Object id) {
        return knobs(session).stream()
                .filter(k -> k.get("id").equals(id))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void a_step_of_a_slider_is_what_the_scenario_holds_next(Path scenario) throws IOException {
        String toml = Files.readString(scenario);
        Session session = session(scenario);
        assertFalse(knobs(session).isEmpty());
        List<Object> moved = new ArrayList<>();
        for (Map<String, Object> knob : knobs(session)) {
            session.read(toml);
            if (!((Map<?, ?>) knob.get("choices")).isEmpty()) {
                continue;
            }
            double step = (double) knob.get("step");
            double value = (double) knob.get("value");
            double low = (double) knob.get("low");
            assertTrue(low <= value && value <= (double) knob.get("high"), "" + knob);
            double to = Math.rint((value - step - low) / step) * step + low;
            if (to < low) {
                continue;
            }
            String text = session.turned((String) knob.get("id"), Double.toString(to));
            if (session.read(text).isEmpty() && !knob.get("id").equals("visits.away.length")) {
                double now = (double) knob(session, knob.get("id")).get("value");
                assertEquals(to, now, 0.02 * Math.max(1, step), "" + knob);
                moved.add(knob.get("id"));
            }
            assertEquals(comments(toml), comments(text), "" + knob);
        }
        assertTrue(moved.size() >= 4, "moved: " + moved);
    }

    private static List<String> comments(String toml) {
        return toml.lines()
                .filter(line -> line.contains("#"))
                .map(l -> l.replaceFirst("^[^#]*", ""))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void at_either_end_of_a_slider_there_is_a_season_or_a_sentence(Path scenario)
            throws IOException {
        String toml = Files.readString(scenario);
        Session session = session(scenario);
        for (Map<String, Object> knob : knobs(session)) {
            List<String> ends = new ArrayList<>();
            if (((Map<?, ?>) knob.get("choices")).isEmpty()) {
                ends.add(knob.get("low").toString());
                ends.add(knob.get("high").toString());
            } else {
                ((Map<?, ?>) knob.get("choices")).keySet().forEach(c -> ends.add((String) c));
            }
            for (String end : ends) {
                session.read(toml);
                List<String> faults = session.read(session.turned((String) knob.get("id"), end));
                faults.forEach(f -> assertTrue(f.contains("allowed: "), f));
                if (faults.isEmpty()) {
                    session.glance(21600);
                }
            }
        }
    }

    /** A rig told by what has no default alone. */
    private static final String SHORT =
            """
            title = "short"
            start = 2026-03-02
            length = "30 days"
            [climate]
            kind = "room"
            day_temperature = "22 degC"
            [lamp]
            lux = "12 klux" # by a lux meter
            [feed]
            recipe = "lettuce-water-culture"
            [reservoir.shelf]
            length = "30 cm"
            width = "20 cm"
            depth = "25 cm"
            floor_above_bench = "60 cm"
            [tray.lettuce]
            length = "60 cm"
            width = "30 cm"
            depth = "8 cm"
            crop = "lettuce"
            plants = 4
            valve = { from = "shelf", setting = "4.5 cm" }
            """;

    @Test
    void what_holds_by_default_can_be_moved_too_and_is_written_then() {
        Session session = new Session(1);
        assertEquals(List.of(), session.read(SHORT));
        Map<String, Double> moves =
                Map.of(
                        "tray.lettuce.cup_bottom",
                        4.2,
                        "feed.ec",
                        1.3,
                        "lamp.ppfd",
                        150.0,
                        "lamp.off",
                        12.0,
                        "climate.night_temperature",
                        16.0,
                        "climate.day_humidity",
                        55.0,
                        "climate.night_humidity",
                        70.0,
                        "visits.away.length",
                        6.0);
        moves.forEach(
                (id, to) -> {
                    session.read(SHORT);
                    String text = session.turned(id, to.toString());
                    assertEquals(List.of(), session.read(text), id);
                    assertEquals(to, (double) knob(session, id).get("value"), 0.006, id);
                });
        session.read(SHORT);
        assertEquals("soft-tap", knob(session, "water.source").get("chosen"));
        session.read(session.turned("water.source", "rain"));
        assertEquals("rain", knob(session, "water.source").get("chosen"));
        session.read(SHORT);
        assertEquals("\"daily\"", knob(session, "visits.days").get("chosen"));
        session.read(session.turned("visits.days", "[\"mon\"]"));
        assertEquals("[\"mon\"]", knob(session, "visits.days").get("chosen"));
    }

    @Test
    void light_at_the_leaves_takes_the_place_of_lux_and_watts() {
        Session session = new Session(1);
        String watts =
                SHORT.replace(
                        "lux = \"12 klux\" # by a lux meter",
                        "watts = \"24 W\"\narea = \"0.25 m2\"\non_target = \"80 %\"");
        assertEquals(List.of(), session.read(watts));
        String moved = session.turned("lamp.ppfd", "200");
        assertEquals(List.of(), session.read(moved));
        assertTrue(moved.contains("ppfd = \"200 umol/m2/s\""), moved);
        assertFalse(moved.contains("watts") || moved.contains("on_target"), moved);
    }

    @Test
    void an_analysed_water_has_no_list_of_waters() {
        Session session = new Session(1);
        String analysed =
                SHORT + "[water.analysis]\ncalcium = \"1 mmol/L\"\nbicarbonate = \"2 mmol/L\"\n";
        assertEquals(List.of(), session.read(analysed));
        assertTrue(knobs(session).stream().noneMatch(k -> k.get("id").equals("water.source")));
    }
}
