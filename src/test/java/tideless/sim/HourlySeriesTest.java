package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;

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
                                        List.of()));
        assertEquals("no series of SPILL", refused.getMessage());
    }
}
