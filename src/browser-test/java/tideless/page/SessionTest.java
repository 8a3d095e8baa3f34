package tideless.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.advice.Warning;
import tideless.cli.Tideless;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.Beside;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.study.Forecast;
import tideless.study.Forecasts;

/** What a page asks for is what the command line gives. */
class SessionTest {
    private static final Path BENCH = Path.of("scenarios/lessons/lid.toml");

    @TempDir Path folder;

    private Session session() throws IOException {
        Session session = new Session(1);
        assertEquals(List.of(), session.read(Files.readString(BENCH)));
        return session;
    }

    @Test
    void a_series_stands_in_the_unit_of_its_column() throws IOException {
        Session session = session();
        session.run(1);
        Forecast forecast = session.forecast();
        String tray = forecast.trace().trays().get(0).tray().name();
        double[] levelMm = session.series(VesselId.tray(tray), "level_above_floor");
        assertEquals(forecast.trace().hours(), levelMm.length);
        double levelM = forecast.trace().trays().get(0).levelM().at(7);
        assertEquals(1000 * levelM, levelMm[7], 1e-12);
        assertEquals(forecast.advice().tasks(), session.tasks());
        assertEquals(forecast.advice().warnings(), session.warnings());
        assertThrows(
                IllegalArgumentException.class,
                () -> session.series(VesselId.reservoir(tray), "level_above_floor"));
        assertThrows(
                IllegalArgumentException.class,
                () -> session.series(VesselId.tray(tray), "levels"));
    }

    @Test
    void faults_are_told_with_their_line_and_nothing_runs() throws IOException {
        Session session = session();
        session.run(1);
        List<String> faults = session.read("title = \"x\"\nstrat = 2026-03-02\n");
        assertTrue(
                faults.stream().anyMatch(f -> f.contains("scenario.toml:2:1: strat")), "" + faults);
        assertThrows(IllegalStateException.class, session::forecast);
        assertThrows(IllegalStateException.class, () -> session.run(1));
    }

    @Test
    void a_file_is_found_by_the_name_the_scenario_gives_it() throws IOException {
        Session session = new Session(1);
        session.call("greenhouse.toml");
        String toml = Files.readString(Path.of("scenarios/glasshouse-tomato-trough.toml"));
        List<String> faults = session.read(toml);
        assertTrue(
                faults.stream()
                        .anyMatch(
                                f ->
                                        f.startsWith("greenhouse.toml:15:8:")
                                                && f.contains("does not exist")),
                "" + faults);
        String weather = "weather/typical-year-45n-8e.csv";
        session.file(weather, Files.readString(Path.of("scenarios").resolve(weather)));
        assertEquals(List.of(), session.read(toml));
    }

    // Of a bench whose lettuce drinks half as much again as the model says.
    @Test
    void corrections_and_a_log_beside_it_are_read_as_the_command_line_reads_them()
            throws IOException {
        Path corrected = folder.resolve("corrected.toml");
        Files.writeString(corrected, "[crop.lettuce.thirst]\ntimes = 1.5\ndoubt_left = \"40 %\"\n");
        Session session = session();
        session.run(1);
        String stated = EveryBit.of(session.forecast());
        session.beside("corrected", corrected.toString(), Files.readString(corrected));
        assertEquals(List.of(), session.read(Files.readString(BENCH)));
        session.run(1);
        Reading read = ScenarioReader.read(BENCH, Beside.files(null, corrected));
        Scenario scenario = assertInstanceOf(Reading.Good.class, read).scenario();
        String bits = EveryBit.of(Forecasts.of(scenario, 1));
        assertEquals(bits, EveryBit.of(session.forecast()));
        assertNotEquals(stated, bits);
        session.beside("corrected", "other.toml", "[crop.lettuce.thrist]\ntimes = 1.5\n");
        assertTrue(
                session.read(Files.readString(BENCH)).get(0).startsWith("other.toml:1:"),
                "a fault of the corrections");
        session.beside("corrected", "", "");
        assertEquals(List.of(), session.read(Files.readString(BENCH)));
        assertThrows(IllegalArgumentException.class, () -> session.beside("weather", "a", "b"));
    }

    @Test
    void a_rig_with_a_log_says_what_of_it_was_lived() throws IOException {
        Path bench = Path.of("scenarios/logged-bench.toml");
        Path log = Path.of("scenarios/logged-bench-log.csv");
        Session session = new Session(1);
        session.file("logged-bench-log.csv", Files.readString(log));
        assertEquals(List.of(), session.read(Files.readString(bench)));
        session.run(1);
        String verdict = String.valueOf(session.result().get("verdict"));
        assertTrue(verdict.contains("Log up to Sun 26 Apr 08:00"), verdict);
        assertTrue(verdict.contains("reservoir shelf: filled 5 times"), verdict);
        assertTrue(verdict.contains("what the log read and did stays"), verdict);
        Object opens = session.rig().get("opensOn");
        assertEquals(55, opens, "the page opens on the log's last day, 26 Apr");
        Session other = session();
        other.run(1);
        Scenario plain = other.forecast().trace().scenario();
        assertEquals(plain.days() / 2, other.rig().get("opensOn"));
    }

    @Test
    void what_a_page_gives_out_are_the_bytes_of_the_command_line() throws IOException {
        Session session = session();
        session.run(1);
        Path out = folder.resolve("out");
        StringWriter said = new StringWriter();
        String[] words = {
            "run", BENCH.toString(), "-o", out.toString(), "--members", "1", "--no-plots", "--all"
        };
        assertEquals(0, Tideless.execute(new PrintWriter(said), new PrintWriter(said), words));
        assertEquals(Files.readString(out.resolve("tasks.csv")), session.csv("tasks", 0));
        assertEquals(Files.readString(out.resolve("warnings.csv")), session.csv("warnings", 0));
        assertEquals(Files.readString(out.resolve("tray-lettuce.csv")), session.csv("tray", 0));
        assertEquals(Files.readString(out.resolve("daily-lettuce.csv")), session.csv("daily", 0));
        assertEquals(
                Files.readString(out.resolve("reservoir-shelf.csv")), session.csv("reservoir", 0));
        assertTrue(Shown.table(session.forecast(), 80).contains("WHAT"), "the table's head");
        assertThrows(IllegalArgumentException.class, () -> session.csv("plots", 0));
    }

    @Test
    void a_glance_in_the_scenario_s_own_steps_is_the_run() throws IOException {
        Session session = session();
        VesselId tray = VesselId.tray("lettuce");
        session.run(1);
        double[] run = session.series(tray, "ec_25C");
        session.glance(600);
        assertArrayEquals(run, session.series(tray, "ec_25C"));
        assertThrows(IllegalStateException.class, session::forecast);
    }

    @Test
    void the_drawing_is_that_of_what_ran_last() throws IOException {
        Session session = session();
        assertThrows(IllegalStateException.class, () -> session.drawing(0, 0));
        session.glance(3600);
        String first = session.drawing(0, 30);
        assertTrue(first.startsWith("<svg ") && first.contains("Tray lettuce"), first);
        assertFalse(first.contains("<style"), first);
        assertEquals(List.of(), session.read(session.turned("tray.lettuce.valve.setting", "3")));
        session.glance(3600);
        assertTrue(session.drawing(0, 30).contains("valve shuts 30 mm"));
        session.run(1);
        assertTrue(session.drawing(0, 30).contains("valve shuts 30 mm"));
    }

    @Test
    void texts_and_numbers_stand_in_json_as_a_page_reads_them() throws IOException {
        Map<String, Object> table = new LinkedHashMap<>();
        table.put("a\"b", List.of(1, 2.5, Double.NaN, true, Map.of()));
        table.put("c", "\\ \n \u001f \u00fc");
        table.put("d", null);
        assertEquals(
                "{\"a\\\"b\":[1,2.5,null,true,{}],\"c\":\"\\\\ \\u000a \\u001f \u00fc\",\"d\":null}",
                Json.of(table));
        Session session = session();
        session.run(1);
        JsonNode rig = new ObjectMapper().readTree(Json.of(session.rig()));
        assertEquals(60, rig.at("/trays/0/length").asDouble(), 1e-9);
        JsonNode result = new ObjectMapper().readTree(Json.of(session.result()));
        assertEquals(session.tasks().size(), result.at("/tasks").size());
    }

    /** A scenario run, some things in it moved. */
    private static Session moved(String scenario, String... moves) throws IOException {
        Session session = new Session(1);
        session.read(Files.readString(Path.of("scenarios", scenario)));
        for (int i = 0; i < moves.length; i += 2) {
            assertEquals(List.of(), session.read(session.turned(moves[i], moves[i + 1])));
        }
        session.run(1);
        return session;
    }

    @SuppressWarnings("unchecked")
    private static List<Map<String, Object>> looks(Session session) {
        return (List<Map<String, Object>>) session.result().get("looks");
    }

    // Roots of new seedlings end in their cups; a lettuce bears 2.5 mS/cm; growers give it 450 cm2.
    @ParameterizedTest(name = "{0} = {1}: {2}")
    @CsvSource({
        "tray.lettuce.valve.setting, 1, the cups hang 2.5 cm above the solution",
        "tray.lettuce.valve.setting, 7, its level stands 35 mm above the underside of the cups",
        "feed.ec, 3.5, its feed of 3.50 mS/cm is stronger than lettuce bears (2.50 mS/cm)",
        "tray.lettuce.plants, 20, 20 plants on 0.3 m2"
    })
    void what_check_has_to_look_at_in_a_rig_as_it_was_moved_stands_beside_its_verdict(
            String knob, String to, String words) throws IOException {
        Session sound = session();
        sound.run(1);
        assertEquals(List.of(), looks(sound), "a sound rig has nothing to look at");
        Session session = session();
        session.call("moved.toml");
        assertEquals(List.of(), session.read(session.turned(knob, to)));
        session.run(1);
        Map<String, Object> look = looks(session).get(0);
        assertEquals(1, looks(session).size(), "" + looks(session));
        assertEquals(true, look.get("grave"));
        String text = String.valueOf(look.get("text"));
        assertTrue(text.contains(words), text);
        Path file = folder.resolve("moved.toml");
        session.read(Files.readString(BENCH));
        Files.writeString(file, session.turned(knob, to));
        StringWriter said = new StringWriter();
        PrintWriter both = new PrintWriter(said);
        assertEquals(0, Tideless.execute(both, both, "check", file.toString()));
        assertTrue(
                said.toString().replace(folder + "/", "").contains(text),
                text + " is not what check says: " + said);
    }

    // Nitric acid, of which the caution is noted, harms no crop; what does not flow at the lowest
    // level may, and the run tells whether it ever stood so low.
    @Test
    void what_no_crop_suffers_by_is_shown_behind_and_is_not_grave() throws IOException {
        String hard = Files.readString(Path.of("scenarios/lessons/hard-tap.toml"));
        Session session = new Session(1);
        assertEquals(
                List.of(),
                session.read(
                        hard.replace("above_bench = \"60 cm\"", "above_bench = \"3 cm\"")
                                .replace("plants = 6", "plants = 20")));
        session.run(1);
        List<Map<String, Object>> looks = looks(session);
        assertEquals(
                List.of(true, false, false, false),
                looks.stream().map(look -> look.get("grave")).toList());
        String slow = String.valueOf(looks.get(1).get("text"));
        assertTrue(slow.contains("tray lettuce: at the lowest level of reservoir shelf "), slow);
        assertTrue(String.valueOf(looks.get(2).get("text")).contains("feed.acid"));
    }

    private static double[] lettuce(String series, String lesson, String... moves)
            throws IOException {
        return moved("lessons/" + lesson, moves).series(VesselId.tray("lettuce"), series);
    }

    private static double most(double... values) {
        return Arrays.stream(values).max().orElseThrow();
    }

    private static double last(double... values) {
        return values[values.length - 1];
    }

    @Test
    void what_the_lessons_on_salt_water_and_valve_answer_is_so() throws IOException {
        double rich = last(lettuce("ec_25C", "rich-feed.toml"));
        assertTrue(rich > 1.8, "above its band: " + rich);
        assertTrue(most(lettuce("ec_25C", "lean-feed.toml")) < 1.5);
        String mass = "fresh_mass";
        double rain = most(lettuce(mass, "rain.toml"));
        assertTrue(most(lettuce(mass, "hard-tap.toml")) < 0.85 * rain);
        double[] first = Arrays.copyOf(lettuce("ec_25C", "rain.toml"), 24 * 14);
        double[] hard = lettuce("ec_25C", "hard-tap.toml");
        for (int hour = 0; hour < first.length; hour++) {
            assertEquals(first[hour], hard[hour], 0.1, "read alike at hour " + hour);
        }
        assertTrue(most(lettuce(mass, "rich-feed.toml", "tray.lettuce.valve.setting", "2")) < 2);
        assertTrue(most(lettuce(mass, "rich-feed.toml")) > 150);
    }

    // Litres drunk on the day after one, two and three weeks; 24 L of reservoir.
    @Test
    void what_the_lesson_on_tomatoes_answers_is_so() throws IOException {
        Session tomatoes = moved("outgrown-trough.toml");
        double[] thirst = tomatoes.series(VesselId.tray("trough"), "transpiration");
        assertEquals(2, day(thirst, 7), 0.5);
        assertEquals(4, day(thirst, 14), 0.5);
        assertEquals(6, day(thirst, 21), 0.5);
        assertEquals(24, tomatoes.series(VesselId.reservoir("shelf"), "usable")[0], 0.5);
        assertTrue(tomatoes.warnings().stream().anyMatch(w -> w.kind() == Warning.Kind.DIED));
    }

    private static double day(double[] hourly, int day) {
        return Arrays.stream(hourly, 24 * day, 24 * day + 24).sum();
    }

    // Nobody from 3 to 12 April, days 33 to 42.
    @Test
    void what_the_lesson_on_being_away_answers_is_so() throws IOException {
        VesselId shelf = VesselId.reservoir("shelf");
        String[] here = {"visits.away.length", "0"};
        double[] there = moved("science-room-bench.toml", here).series(shelf, "usable");
        double[] away = moved("science-room-bench.toml").series(shelf, "usable");
        assertTrue(Arrays.stream(there, 24 * 7, there.length).min().orElseThrow() > 1);
        assertTrue(Arrays.stream(away, 24 * 32, 24 * 42).min().orElseThrow() < 0.01);
        double perDay = (away[24 * 33] - away[24 * 37]) / 4;
        assertEquals(2.2, perDay, 0.15);
        assertEquals(16, away[24 * 31 + 8], 1.5, "left on the last visit");
        assertTrue(perDay * 10 < 26, "full it would have lasted");
    }

    @Test
    void a_comparison_sees_the_last_bit_a_missing_line_and_a_word() throws IOException {
        Session session = session();
        session.run(1);
        String bits = EveryBit.of(session.forecast());
        Comparison same = Comparison.of(bits, bits);
        assertEquals(0, same.bytesDiffer() + same.numbersDiffer());
        assertTrue(same.numbers() > 1000);

        String number = Long.toHexString(Double.doubleToLongBits(1.5));
        String next = Long.toHexString(Double.doubleToLongBits(Math.nextUp(1.5)));
        Comparison bit = Comparison.of("tray\t" + number + "\t\n", "tray\t" + next + "\t\n");
        assertEquals(1, bit.bytesDiffer());
        assertEquals(1, bit.numbersDiffer());
        assertEquals(Math.ulp(1.5) / 1.5, bit.mostRelative(), 1e-20);

        Comparison shorter = Comparison.of(bits, bits.substring(0, bits.length() / 2));
        assertTrue(shorter.bytesDiffer() > 0 && shorter.numbersDiffer() > 0);
        assertTrue(Comparison.of(bits, bits.replace("water", "Water")).bytesDiffer() > 0);
    }
}
