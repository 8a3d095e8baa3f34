package tideless.study;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.advice.Quantity;
import tideless.advice.Verdict;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** "Of ... g that roots without harm would give" is true as it is worded: no advice gives more. */
class UnharmedBoundTest {
    private static final Path RIGS = ObeyingRigs.STILL;

    /** Days of visits move a fruit or two from one week to the next: a hundredth. */
    private static final double ROUNDING = 0.01;

    @ParameterizedTest
    @ValueSource(strings = {"strawberry-gutter", "hot-chillies", "peppers-on-water"})
    void no_cure_gives_more_than_roots_without_harm(String rig) {
        Scenario scenario =
                ((Reading.Good) ScenarioReader.read(RIGS.resolve(rig + ".toml"))).scenario();
        Forecast forecast = Forecasts.of(scenario, 1);
        List<Verdict.Loss> losses = forecast.advice().verdict().losses();
        assertFalse(losses.isEmpty());
        for (Verdict.Loss loss : losses) {
            List<Double> then =
                    forecast.advice().warnings().stream()
                            .filter(w -> w.vessel().equals(loss.tray()))
                            .flatMap(w -> w.cures().stream())
                            .filter(c -> c.facts().has(Quantity.GIVES_THEN))
                            .map(c -> c.facts().get(Quantity.GIVES_THEN))
                            .toList();
            assertFalse(then.isEmpty());
            then.forEach(
                    g -> assertTrue(g <= (1 + ROUNDING) * loss.unharmedG(), g + " of " + loss));
        }
    }
}
