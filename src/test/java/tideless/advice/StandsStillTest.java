package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.words.CropWords;

/** A lettuce of 200 g that is waited for, on 56 days: it grows by 4 g a day for 28 of them. */
class StandsStillTest {
    // The best fortnight brings 56 g: a tenth of it is 0.4 g a day.
    @ParameterizedTest
    @CsvSource({"0.39, true", "0.41, false", "4, false"})
    void in_a_season_that_ends_no_days_are_counted(double laterG, boolean still) {
        Trace trace =
                new MadeTrace(56)
                        .wanting(400)
                        .with(
                                TraySeries.FRESH_MASS,
                                h ->
                                        20
                                                + 4 * Math.min(28, h / 24.0)
                                                + laterG * Math.max(0, h / 24.0 - 28))
                        .trace();
        assertEquals(
                still,
                RoomFindings.standsStill(trace, trace.plantings(trace.trays().get(0)).get(0)));
        List<String> lines = CropWords.unripe(trace);
        assertEquals(1, lines.size());
        assertEquals(still, lines.get(0).contains("stands still"), lines.get(0));
        assertTrue(lines.get(0).contains("not ready by the end of the run"));
    }
}
