package tideless.cli;

import static org.junit.jupiter.api.Assertions.assertSame;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tideless.advice.Advice;
import tideless.advice.Cause;
import tideless.advice.Measure;
import tideless.advice.Unit;
import tideless.advice.Warning;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.scenario.Starter;
import tideless.study.Forecasts;

/** A feed is chosen by what the crop loses of it, and of those as good by the warnings. */
class FirstRigTest {
    private static final Advice SOUND =
            Forecasts.sketch(
                            ((Reading.Good)
                                            ScenarioReader.read(
                                                    Path.of("scenarios", "two-bottles.toml")))
                                    .scenario())
                    .advice();

    private static final Warning ANY =
            new Warning(
                    Warning.Kind.TOO_SALTY,
                    VesselId.tray("one"),
                    LocalDateTime.of(2026, 3, 10, 0, 0),
                    LocalDateTime.of(2026, 3, 20, 0, 0),
                    Measure.atMost(3, 2.5, Unit.MS_PER_CM),
                    Cause.of(Cause.Kind.ANIONS_TAKEN),
                    List.of());

    private static FirstRig.Tried fed(double msPerCm, int warnings, double tookFrac) {
        return new FirstRig.Tried(
                new Starter.Care(new Starter.Feed("hoagland-2", msPerCm), false, true),
                "",
                null,
                Optional.of(
                        new Forecasts.Sketch(
                                SOUND.withWarnings(Collections.nCopies(warnings, ANY)), tookFrac)));
    }

    @Test
    void what_takes_half_of_the_crop_is_not_chosen_for_a_warning_less() {
        FirstRig.Tried strong = fed(2.3, 1, 0.54);
        FirstRig.Tried lean = fed(1.4, 2, 0.05);
        assertSame(lean, FirstRig.best(List.of(strong, lean)));
        assertSame(lean, FirstRig.best(List.of(lean, strong)));
    }

    @Test
    void of_those_as_good_the_one_that_warns_least_is_and_then_the_first() {
        FirstRig.Tried quiet = fed(1.6, 0, 0.05);
        FirstRig.Tried loud = fed(1.4, 1, 0.0);
        assertSame(quiet, FirstRig.best(List.of(loud, quiet)));
        FirstRig.Tried usual = fed(1.8, 0, 0.02);
        assertSame(usual, FirstRig.best(List.of(usual, quiet)));
    }
}
