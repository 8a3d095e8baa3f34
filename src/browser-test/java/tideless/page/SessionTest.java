package tideless.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.VesselId;
import tideless.study.Forecast;

/** What a page asks for is what the command line gives. */
class SessionTest {
    private static final Path BENCH = Path.of("scenarios/lessons/lid.toml");

    @TempDir Path folder;

    private Session session() throws IOException {
        Session session = new Session(folder.resolve("rig"), 1);
        assertEquals(List.of(), session.read(Files.readString(BENCH)));
        return session;
    }

    @Test
    void a_series_stands_in_the_unit_of_its_column() throws IOException {
        Session session = session();
        session.run();
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
        session.run();
        List<String> faults = session.read("title = \"x\"\nstrat = 2026-03-02\n");
        assertTrue(
                faults.stream().anyMatch(f -> f.contains("scenario.toml:2:1: strat")), "" + faults);
        assertThrows(IllegalStateException.class, session::forecast);
        assertThrows(IllegalStateException.class, session::run);
    }

    @Test
    void a_file_lies_beside_the_scenario_and_nowhere_else() throws IOException {
        Session session = session();
        session.file("weather/some.csv", "a,b\n");
        assertEquals("a,b\n", Files.readString(folder.resolve("rig/weather/some.csv")));
        for (String out : List.of("../some.csv", "/some.csv", "", "weather/../../some.csv")) {
            assertThrows(IllegalArgumentException.class, () -> session.file(out, ""), out);
        }
        assertFalse(Files.exists(folder.resolve("some.csv")));
    }

    @Test
    void a_comparison_sees_the_last_bit_a_missing_line_and_a_word() throws IOException {
        Session session = session();
        session.run();
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
