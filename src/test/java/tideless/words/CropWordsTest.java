package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.advice.Verdict;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Simulation;
import tideless.sim.Trace;

class CropWordsTest {
    private static final VesselId TRAY = VesselId.tray("salad");

    @Test
    void a_crop_that_is_not_ready_says_how_long_it_takes_or_that_it_never_will() {
        assertEquals(
                "tray salad is not ready by the end of the run: about 12 days more in such air.",
                CropWords.notReady(TRAY, "", 11.2));
        assertEquals(
                "tray salad is not ready by the end of the run: it would never be, in such air.",
                CropWords.notReady(TRAY, "", Double.POSITIVE_INFINITY));
    }

    @Test
    void a_fruit_crop_says_that_none_is_ripe() {
        assertEquals(
                "tray salad (chilli) bears no ripe fruit by the end of the run: about 30 days more in"
                        + " such air.",
                CropWords.notRipe(TRAY, "chilli", 29.2));
    }

    /** Of the crop that was tried where it bears, and of no other. */
    @ParameterizedTest
    @CsvSource({"glasshouse-tomato-trough, true", "hand-topped-bucket, false", "calm-bench, false"})
    void fruit_by_weight_is_told_with_what_trials_picked(String scenario, boolean told) {
        Path path = Path.of("scenarios", scenario + ".toml");
        Trace trace = Simulation.run(((Reading.Good) ScenarioReader.read(path)).scenario());
        assertEquals(told, CropWords.fruitOfTrials(trace).isPresent());
    }

    @Test
    void where_no_tray_drinks_nothing_is_said_to_survive() {
        Verdict empty = new Verdict(true, Optional.empty(), List.of(), List.of(), Optional.empty());
        assertEquals(List.of("Nothing grows here: no tray drinks."), VerdictWords.lines(empty));
    }
}
