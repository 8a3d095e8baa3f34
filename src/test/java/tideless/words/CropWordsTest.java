package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.advice.Verdict;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.study.Forecasts;

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

    /** The trough is lost, and its reservoir was drawn on by far less than a sound crop would. */
    @ParameterizedTest
    @CsvSource({"outgrown-trough, true", "calm-bench, false"})
    void litres_that_are_enough_for_a_poor_crop_are_known_as_such(String scenario, boolean poor) {
        Path path = Path.of("scenarios", scenario + ".toml");
        Scenario rig = ((Reading.Good) ScenarioReader.read(path)).scenario();
        assertEquals(
                poor, CropWords.isForPoor(Forecasts.of(rig, 1), rig.reservoirs().get(0).name()));
    }

    @Test
    void where_no_tray_drinks_nothing_is_said_to_survive() {
        Verdict empty = new Verdict(true, Optional.empty(), List.of(), List.of(), Optional.empty());
        assertEquals(List.of("Nothing grows here: no tray drinks."), VerdictWords.lines(empty));
    }
}
