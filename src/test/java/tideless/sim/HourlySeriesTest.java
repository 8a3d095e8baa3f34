package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.solution.Component;

/** The series of a run, one by one. */
class HourlySeriesTest {

    @Test
    void the_page_on_the_columns_is_what_the_series_say() throws IOException {
        assertEquals(SeriesPage.text(), Files.readString(SeriesPage.PAGE));
    }

    @Test
    void no_two_columns_of_a_file_bear_one_name() {
        for (HourlySeries[] all :
                List.<HourlySeries[]>of(TraySeries.values(), ReservoirSeries.values())) {
            Set<String> names = new HashSet<>();
            for (HourlySeries one : all) {
                assertTrue(names.add(one.column().name()), one.column().name());
            }
        }
    }

    @Test
    void a_trace_that_lacks_a_series_is_refused() {
        Map<TraySeries, Series> series = new EnumMap<>(TraySeries.class);
        for (TraySeries of : TraySeries.values()) {
            series.put(of, Series.of(1));
        }
        series.remove(TraySeries.SPILL);
        IllegalArgumentException refused =
                assertThrows(
                        IllegalArgumentException.class,
                        () ->
                                new TrayTrace(
                                        Rigs.tray("t", new Filling.Sealed(), Rigs.drinking(1), 0),
                                        series,
                                        List.of(),
                                        List.of(),
                                        List.of(),
                                        List.of(),
                                        List.of()));
        assertEquals("no series of SPILL", refused.getMessage());
    }

    // The ledger sums what every step took, the trace keeps totals by the hour: two ways, one sum.
    @Test
    void what_the_days_take_up_adds_up_to_the_ledger() {
        Reading reading = ScenarioReader.read(Path.of("scenarios/science-room-bench.toml"));
        Trace trace = Simulation.run(((Reading.Good) reading).scenario());
        for (int i = 0; i < Component.COUNT; i++) {
            double days = 0;
            for (TrayTrace tray : trace.trays()) {
                for (int day = 0; day < trace.hours() / 24; day++) {
                    days += tray.uptakeMol(i, 24 * day, 24 * day + 24);
                }
            }
            double ledger =
                    trace.components().get(i).out().stream()
                            .filter(entry -> entry.what().equals("taken by plants"))
                            .mapToDouble(Ledger.Entry::amount)
                            .sum();
            assertEquals(ledger, days, 1e-9 * Math.abs(ledger));
        }
        assertTrue(trace.trays().get(0).uptakeMol(Component.NO3.ordinal(), 24, 48) > 0);
    }
}
