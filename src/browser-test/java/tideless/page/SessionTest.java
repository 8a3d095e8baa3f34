package tideless.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import tideless.cli.Tideless;
import tideless.rig.VesselId;
import tideless.study.Forecast;

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
        JsonNode result = new ObjectMapper().readTree(Json.of(Shown.result(session.forecast())));
        assertEquals(session.tasks().size(), result.at("/tasks").size());
    }

    /** Greatest value of a series of the lettuce of a lesson, some things in it moved. */
    private static double most(String series, String lesson, String... moves) throws IOException {
        Session session = new Session(1);
        session.read(Files.readString(Path.of("scenarios/lessons", lesson)));
        for (int i = 0; i < moves.length; i += 2) {
            assertEquals(List.of(), session.read(session.turned(moves[i], moves[i + 1])));
        }
        session.run(1);
        return Arrays.stream(session.series(VesselId.tray("lettuce"), series)).max().orElseThrow();
    }

    @Test
    void what_the_lessons_of_the_page_answer_is_so() throws IOException {
        String mass = "fresh_mass";
        assertTrue(most(mass, "hard-tap.toml") < 0.85 * most(mass, "rain.toml"));
        assertTrue(most(mass, "rich-feed.toml", "tray.lettuce.valve.setting", "2") < 2);
        String[] dry = {"climate.day_humidity", "30", "climate.night_humidity", "40"};
        double thirst = most("transpiration", "rich-feed.toml");
        assertTrue(most("transpiration", "rich-feed.toml", dry) > 1.2 * thirst);
        double ec = most("ec_25C", "rich-feed.toml");
        assertTrue(most("ec_25C", "rich-feed.toml", dry) > 1.3 * ec);
        assertTrue(most("ec_25C", "lean-feed.toml") < 0.8 * ec);
        assertEquals(1, most(mass, "rich-feed.toml", dry) / most(mass, "rich-feed.toml"), 0.07);
        assertTrue(most("ec_25C", "open-gap.toml") > 1.2 * most("ec_25C", "lid.toml"));
        assertTrue(most("ec_25C", "flush.toml") < most("ec_25C", "no-flush.toml"));
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
