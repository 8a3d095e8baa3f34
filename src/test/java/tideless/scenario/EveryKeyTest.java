package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tomlj.Toml;

/** Holds the table of keys and the reader together. */
class EveryKeyTest {
    @TempDir Path folder;

    /** Scenarios of every kind, as keys and values. */
    private static List<Map<String, String>> bases() {
        Map<String, String> room = new LinkedHashMap<>();
        room.put("title", "\"t\"");
        room.put("start", "2026-03-02");
        room.put("length", "\"7 days\"");
        room.put("climate.kind", "\"room\"");
        room.put("climate.day_temperature", "\"22 degC\"");
        room.put("lamp.ppfd", "\"200 umol/m2/s\"");
        room.put("feed.recipe", "\"steiner\"");
        room.put("reservoir.a.length", "\"40 cm\"");
        room.put("reservoir.a.width", "\"30 cm\"");
        room.put("reservoir.a.depth", "\"30 cm\"");
        room.put("reservoir.a.floor_above_bench", "\"50 cm\"");
        room.put("tray.a.length", "\"60 cm\"");
        room.put("tray.a.width", "\"35 cm\"");
        room.put("tray.a.depth", "\"8 cm\"");
        room.put("tray.a.crop", "\"basil\"");
        room.put("tray.a.plants", "8");
        room.put("tray.a.valve.setting", "\"5 cm\"");
        room.put("tray.a.lamp.ppfd", "\"200 umol/m2/s\"");

        Map<String, String> weather = new LinkedHashMap<>(room);
        weather.remove("climate.day_temperature");
        weather.put("climate.kind", "\"weather\"");
        weather.put("climate.file", "\"none.csv\"");
        weather.put("reservoir.a.refill", "\"when low at a visit\"");
        weather.put("place.latitude", "\"45 N\"");
        weather.put("place.longitude", "\"8 E\"");
        weather.remove("feed.recipe");
        weather.put("feed.analysis.nitrate", "\"10 mmol/L\"");
        weather.put("water.analysis.calcium", "\"1 mmol/L\"");
        weather.remove("tray.a.valve.setting");
        weather.put("tray.a.hand.to", "\"5 cm\"");
        weather.remove("tray.a.lamp.ppfd");
        weather.put("tray.a.lamp.lux", "\"9000 lux\"");
        weather.put("tray.a.lamp.watts", "\"24 W\"");
        weather.put("tray.a.lamp.area", "\"0.25 m2\"");
        weather.remove("lamp.ppfd");
        weather.put("lamp.lux", "\"9000 lux\"");
        weather.put("lamp.watts", "\"24 W\"");
        weather.put("lamp.area", "\"0.25 m2\"");

        Map<String, String> tubs = new LinkedHashMap<>(room);
        for (String at : new String[] {"reservoir.a.", "tray.a."}) {
            tubs.put(at + "shape", "\"tub\"");
            tubs.put(at + "floor_length", "\"30 cm\"");
            tubs.put(at + "floor_width", "\"20 cm\"");
        }
        tubs.remove("tray.a.crop");
        tubs.put("tray.a.thirst", "\"1 L/day\"");

        Map<String, String> buckets = new LinkedHashMap<>(room);
        for (String at : new String[] {"reservoir.a.", "tray.a."}) {
            buckets.remove(at + "length");
            buckets.remove(at + "width");
            buckets.put(at + "shape", "\"bucket\"");
            buckets.put(at + "diameter", "\"30 cm\"");
            buckets.put(at + "floor_diameter", "\"25 cm\"");
        }
        buckets.remove("tray.a.crop");
        buckets.put("tray.a.crop_file", "\"none.toml\"");

        Map<String, String> volumes = new LinkedHashMap<>(room);
        for (String at : new String[] {"reservoir.a.", "tray.a."}) {
            volumes.remove(at + "length");
            volumes.remove(at + "width");
            volumes.put(at + "volume", "\"20 L\"");
        }
        volumes.remove("tray.a.crop");
        volumes.put("tray.a.thirst_file", "\"none.csv\"");

        Map<String, String> inside = new LinkedHashMap<>(weather);
        inside.put("climate.cover", "\"inside\"");

        Map<String, String> succession = new LinkedHashMap<>(room);
        succession.put("tray.a.next.a.crop", "\"basil\"");
        succession.put("tray.a.next.a.plants", "8");
        succession.put("tray.a.next.a.planted", "2026-03-05");
        return List.of(room, weather, inside, tubs, buckets, volumes, succession);
    }

    private List<Problem> problems(Map<String, String> values) throws IOException {
        StringBuilder text = new StringBuilder();
        values.forEach((key, value) -> text.append(key).append(" = ").append(value).append('\n'));
        Path file = folder.resolve("a.toml");
        Files.writeString(file, text);
        Reading reading = ScenarioReader.read(file, TestCrops.LIBRARY);
        return reading instanceof Reading.Faulty faulty ? faulty.problems() : List.of();
    }

    @Test
    void every_key_is_read_and_refuses_nonsense() throws IOException {
        List<String> unread = new ArrayList<>();
        for (String pattern : ScenarioKeys.TABLE.keys().keySet()) {
            String path = pattern.replace("*", "a");
            boolean refused = false;
            for (Map<String, String> base : bases()) {
                if (refused) {
                    break;
                }
                Map<String, String> broken = new LinkedHashMap<>(base);
                broken.put(path, "[[1]]");
                refused =
                        problems(broken).stream()
                                .anyMatch(
                                        p ->
                                                p.key().equals(path)
                                                        && p.found().startsWith("[")
                                                        && !p.found().contains("beside"));
            }
            if (!refused) {
                unread.add(pattern);
            }
        }
        assertEquals(List.of(), unread);
    }

    @Test
    void every_example_and_default_can_be_read() {
        Map<String, Key<?>> keys = new LinkedHashMap<>(ScenarioKeys.TABLE.keys());
        keys.putAll(CropKeys.TABLE.keys());
        keys.forEach(EveryKeyTest::exampleAndDefaultCanBeRead);
    }

    private static <T> void exampleAndDefaultCanBeRead(String path, Key<T> key) {
        assertThat(key.about()).as(path).isNotBlank();
        assertThat(key.example()).as(path).isNotBlank();
        Object written = Toml.parse("a = " + key.written()).get("a");
        assertTrue(key.read(written).isSound(), path + " " + key.example());
        if (key.need() == Key.Need.DEFAULT) {
            assertTrue(key.kind().readDefault(key, key.fallback()).isSound(), path);
        }
    }

    @Test
    void every_default_says_where_it_comes_from() {
        Map<String, Key<?>> keys = new LinkedHashMap<>(ScenarioKeys.TABLE.keys());
        keys.putAll(CropKeys.TABLE.keys());
        keys.forEach(
                (path, key) ->
                        assertEquals(key.need() == Key.Need.DEFAULT, !key.basis().isBlank(), path));
    }

    @Test
    void the_room_base_is_right_as_it_stands() throws IOException {
        assertEquals(List.of(), problems(bases().get(0)));
    }

    @Test
    void the_reference_page_in_the_docs_is_the_one_made_from_the_tables() throws IOException {
        String made = ScenarioReference.markdown();
        Path fresh = Path.of("target/scenario-reference.md");
        Files.createDirectories(fresh.getParent());
        Files.writeString(fresh, made);
        Path kept = Path.of("docs/scenario-reference.md");
        assertTrue(
                made.equals(Files.exists(kept) ? Files.readString(kept) : ""),
                "copy " + fresh + " to " + kept);
    }
}
