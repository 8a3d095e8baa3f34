package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tideless.advice.Warning;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** Whoever does what the first run advised is no worse off for it, and is left in peace. */
class ObeyingTest {
    /** Yield that may be lost, share: what a flush of good feed or a fuller tray may cost. */
    private static final double LOSS = 0.01;

    static List<Path> rigs() throws IOException {
        return ShippedScenariosTest.scenarios();
    }

    @ParameterizedTest
    @MethodSource("rigs")
    void a_second_run_that_obeys_is_no_worse_and_a_third_asks_no_more(Path path) {
        var scenario = ((Reading.Good) ScenarioReader.read(path)).scenario();
        Forecast first = Forecasts.of(scenario, 1);
        var obeyed = Obeyed.of(scenario, first.advice());
        Forecast second = obeyed.equals(scenario) ? first : Forecasts.of(obeyed, 1);
        for (int i = 0; i < scenario.trays().size(); i++) {
            double before = grams(first.trace(), i);
            assertTrue(
                    grams(second.trace(), i) >= (1 - LOSS) * before,
                    "tray " + i + ": " + before + " g before, " + grams(second.trace(), i));
        }
        assertTrue(dry(second) <= dry(first));
        if (!scenario.reservoirs().isEmpty()) {
            assertEquals(0, dry(second));
            assertTrue(second.advice().verdict().survives());
        }
        assertFalse(Obeyed.asksMore(second.advice()), second.advice().warnings().toString());
    }

    private static double grams(Trace trace, int tray) {
        TrayTrace of = trace.trays().get(tray);
        return of.freshG().at(trace.lastLivingHour(of));
    }

    private static long dry(Forecast forecast) {
        return forecast.advice().warnings().stream()
                .filter(w -> w.kind() == Warning.Kind.DRIED_OUT || w.kind() == Warning.Kind.RAN_DRY)
                .count();
    }
}
