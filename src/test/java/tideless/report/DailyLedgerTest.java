package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Component;

/** Water and every component of a tray close from what its files hold, day by day. */
class DailyLedgerTest {
    /** Six significant digits are printed: half of the last one, of each figure of a sum. */
    private static final double PRINTED_FRAC = 5e-6;

    @TempDir Path folder;

    private static Trace run(String scenario) {
        return run(Path.of("scenarios", scenario));
    }

    private static Trace run(Path file) {
        Scenario read = ((Reading.Good) ScenarioReader.read(file)).scenario();
        return Simulation.run(read);
    }

    /** A daily file, cell by cell. */
    private static final class Days {
        private final List<String> names;
        private final List<String[]> rows = new ArrayList<>();

        Days(byte[] csv) {
            String[] lines = new String(csv, StandardCharsets.UTF_8).split("\n");
            names = List.of(lines[0].split(","));
            for (int i = 1; i < lines.length; i++) {
                rows.add(lines[i].split(",", -1));
            }
        }

        double at(int day, String name) {
            assertThat(names).contains(name);
            return Double.parseDouble(rows.get(day)[names.indexOf(name)]);
        }

        /** Before + in - out = after, as closely as the figures are printed. */
        void closes(int day, String held, List<String> in, List<String> out) {
            double left = at(day - 1, held) - at(day, held);
            double digits = Math.abs(at(day - 1, held)) + Math.abs(at(day, held));
            for (String one : in) {
                left += at(day, one);
                digits += Math.abs(at(day, one));
            }
            for (String one : out) {
                left -= at(day, one);
                digits += Math.abs(at(day, one));
            }
            assertEquals(0, left, PRINTED_FRAC * digits + 1e-9, held + " of row " + day);
        }
    }

    // A bucket that is topped up; trays emptied for the next crop, fed through a valve; a logged
    // bench; a tray that is flushed again and again.
    @ParameterizedTest
    @ValueSource(
            strings = {
                "hand-topped-bucket.toml",
                "two-crops.toml",
                "logged-bench.toml",
                "lessons/flush.toml"
            })
    void each_day_closes_from_its_row_and_the_one_before(String scenario) {
        closes(run(scenario));
    }

    // Two centimetres more and then two less than were reckoned: litres that nobody poured.
    @Test
    void a_level_that_a_log_read_is_a_line_of_its_own() throws IOException {
        Files.writeString(
                folder.resolve("log.csv"),
                """
                date,time,where,what,value,unit
                2026-03-05,08:00,tub,level,12,cm
                2026-03-09,08:00,tub,level,8,cm
                2026-03-10,08:00,tub,litres in,2,L
                """);
        Files.writeString(
                folder.resolve("tub.toml"),
                """
                title = "read"
                start = 2026-03-02
                length = "12 days"
                climate = { kind = "room", day_temperature = "22 degC" }
                lamp.ppfd = "200 umol/m2/s"
                feed.recipe = "steiner"
                log.file = "log.csv"
                [tray.tub]
                length = "60 cm"
                width = "35 cm"
                depth = "15 cm"
                crop = "lettuce"
                plants = 4
                start_level = "10 cm"
                """);
        Trace trace = run(folder.resolve("tub.toml"));
        closes(trace);
        Days days = new Days(CsvFiles.day(trace, trace.trays().get(0)));
        assertThat(days.at(3, "set_by_reading [L/d]")).isBetween(4.0, 6.0);
        assertThat(days.at(7, "set_by_reading [L/d]")).isBetween(-9.0, -6.0);
        assertThat(days.at(8, "poured [L/d]")).isEqualTo(2);
    }

    private static void closes(Trace trace) {
        for (TrayTrace tray : trace.trays()) {
            Days days = new Days(CsvFiles.day(trace, tray));
            for (int day = 1; day < days.rows.size(); day++) {
                days.closes(
                        day,
                        "solution_at_24h [L]",
                        List.of("inflow [L/d]", "poured [L/d]", "set_by_reading [L/d]"),
                        List.of(
                                "drunk [L/d]",
                                "evaporation [L/d]",
                                "spill [L/d]",
                                "drained [L/d]"));
                for (Component of : Component.values()) {
                    String name = of.symbol();
                    days.closes(
                            day,
                            name + "_at_24h [mmol]",
                            List.of(name + "_brought [mmol/d]"),
                            List.of(name + "_lost [mmol/d]", name + "_uptake [mmol/d]"));
                }
            }
        }
    }

    /** A sum of some tens of litres is off by no more than the last bits of its figures, m3. */
    private static final double ROUNDING_M3 = 1e-12;

    @Test
    void each_hour_closes_too_in_a_tray_that_is_poured_into_and_drained() {
        Trace trace = run("lessons/flush.toml");
        double poured = 0;
        double drained = 0;
        for (TrayTrace tray : trace.trays()) {
            for (int hour = 1; hour < trace.hours(); hour++) {
                double left =
                        tray.volumeM3().at(hour - 1)
                                + tray.inflowM3().at(hour)
                                + tray.of(TraySeries.POURED).at(hour)
                                - tray.of(TraySeries.DRAINED).at(hour)
                                - tray.transpirationM3().at(hour)
                                - tray.evaporationM3().at(hour)
                                - tray.spillM3().at(hour)
                                - tray.volumeM3().at(hour);
                assertEquals(0, left, ROUNDING_M3, "hour " + hour);
                poured += tray.of(TraySeries.POURED).at(hour);
                drained += tray.of(TraySeries.DRAINED).at(hour);
            }
        }
        assertThat(poured).isPositive();
        assertThat(drained).isPositive();
    }
}
