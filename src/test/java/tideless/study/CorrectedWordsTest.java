package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Scenario;
import tideless.words.LogWords;

/** What a run owes to a log is said with what would go on if nobody mended it. */
class CorrectedWordsTest {
    private static Scenario corrected(Map<String, Double> leaks) {
        return new Correction(
                        Map.of("basil", new Correction.OfCrop(1.2, 1, 1, 1)),
                        1,
                        1,
                        1,
                        Map.of(),
                        Map.of(),
                        leaks,
                        Map.of())
                .applied(LoggedBench.stated());
    }

    @Test
    void a_leak_that_a_log_has_taught_is_told_with_each_run() {
        assertThat(LogWords.lived(corrected(Map.of("shelf", 0.47e-3 / Time.DAY_S))))
                .contains(
                        "Corrected by what a log has taught. Reservoir shelf loses 0.47 L a day that"
                                + " nothing drinks: mend the leak first.");
        assertThat(LogWords.lived(corrected(Map.of())))
                .contains("Corrected by what a log has taught.");
    }
}
