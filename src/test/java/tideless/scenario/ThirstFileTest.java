package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.Thirst;
import tideless.sim.Series;
import tideless.sim.Simulation;

class ThirstFileTest {
    private static final double DAY_S = 86400;
    private static final LocalDate START = LocalDate.of(2026, 3, 2);

    @TempDir Path folder;
    private final TomlFile source = new TomlFile("bench.toml");

    private Thirst read(String text, int days) {
        return ThirstFile.read(new NamedFiles.Named("t.csv", text), source, START, days)
                .orElse(null);
    }

    private List<String> faults() {
        return source.problems().stream().map(Problem::toString).toList();
    }

    private List<String> notes() {
        return source.notes().stream().map(Note::toString).toList();
    }

    /** L/day from a day to another. */
    private static double litres(Thirst thirst, double fromDay, double toDay) {
        return thirst.meanM3PerS(fromDay * DAY_S, toDay * DAY_S) * 1000 * DAY_S;
    }

    @Test
    void rows_days_apart_are_joined_by_straight_lines_and_said() {
        // By hand: 1 L/day at day 0 and 3 L/day at day 4 are 2 L/day at day 2, and on average.
        Thirst thirst = read("time,thirst\ndays,L/day\n0,1\n4,3\n", 4);
        assertEquals(List.of(), faults());
        assertEquals(2, litres(thirst, 1.9, 2.1), 1e-12);
        assertEquals(2, litres(thirst, 0, 4), 1e-12);
        assertEquals(
                List.of("t.csv:3: thirst: rows more than a day apart: joined by straight lines"),
                notes());
        Thirst dated =
                read("thirst,time\nmL/day,local\n1000,2026-03-02\n3000,2026-03-06 00:00\n", 4);
        assertEquals(List.of(), faults());
        assertEquals(2, litres(dated, 1.9, 2.1), 1e-12);
    }

    @Test
    void a_daily_log_is_drunk_day_by_day_in_a_run() throws IOException {
        Files.writeString(
                folder.resolve("log.csv"),
                "time,thirst\nlocal,L/day\n2026-03-02,1\n2026-03-03,2\n2026-03-04,3\n2026-03-05,1\n");
        Files.writeString(
                folder.resolve("a.toml"),
                """
                title = "t"
                start = 2026-03-02
                length = "4 days"
                run.step = "7 min"
                [climate]
                kind = "room"
                day_temperature = "22 degC"
                [feed]
                recipe = "steiner"
                [tray.a]
                length = "60 cm"
                width = "35 cm"
                depth = "8 cm"
                thirst_file = "log.csv"
                hand = { to = "7 cm" }
                """);
        Reading.Good good =
                assertInstanceOf(
                        Reading.Good.class,
                        ScenarioReader.read(folder.resolve("a.toml"), TestCrops.LIBRARY));
        assertEquals(List.of(), good.notes());
        Series thirst = Simulation.run(good.scenario()).trays().get(0).thirstM3();
        double[] litres = {1, 2, 3, 1};
        for (int day = 0; day < 4; day++) {
            assertEquals(litres[day], 1000 * thirst.sum(24 * day, 24 * day + 24), 1e-12);
        }
    }

    @Test
    void what_is_drunk_beyond_the_ends_of_a_log_is_said() {
        Thirst thirst = read("time,thirst\ndays,L/day\n1,1\n2,3\n", 6);
        assertEquals(1, litres(thirst, 0, 1), 1e-12);
        assertEquals(3, litres(thirst, 4, 5), 1e-12);
        assertEquals(
                List.of(
                        "t.csv:3: thirst: the run begins 24 h before the first row, whose use is"
                                + " taken",
                        "t.csv:4: thirst: the run goes on for 3 days after the last row, whose use"
                                + " is taken"),
                notes());
    }

    @Test
    void a_day_missing_from_a_log_is_the_mean_of_its_neighbours_and_said() {
        Thirst thirst = read("time,thirst\ndays,L/day\n0,1\n1,2\n3,4\n", 4);
        assertEquals(2, litres(thirst, 1, 2), 1e-12);
        assertEquals(3, litres(thirst, 2, 3), 1e-12);
        assertEquals(4, litres(thirst, 3, 4), 1e-12);
        assertThat(notes()).singleElement().asString().contains("24 h missing after this row");
    }

    // By hand: 1 L/day to noon and 3 L/day after it; 09:00 to 15:00 is half of each.
    @Test
    void a_mean_over_several_rows_is_exact() {
        Thirst thirst =
                Thirst.held(
                        new double[] {0, 0.5 * DAY_S}, new double[] {1e-3 / DAY_S, 3e-3 / DAY_S});
        assertEquals(2, litres(thirst, 0.375, 0.625), 1e-12);
        assertEquals(1, litres(thirst, -1, 0.5), 1e-12);
        assertEquals(3, litres(thirst, 0.5, 9), 1e-12);
    }

    @Test
    void a_thirst_file_that_runs_backwards_is_a_fault_with_its_line() {
        assertNull(read("time,thirst\ndays,L/day\n3,1\n1,3\n", 4));
        assertThat(faults())
                .containsExactly("t.csv:4:1: time: found \"1\", allowed: times that rise");
    }
}
