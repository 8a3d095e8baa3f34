package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.advice.Advice;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Measure;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.advice.Unit;
import tideless.advice.Verdict;
import tideless.advice.Warning;
import tideless.rig.VesselId;

/** One page names one level for a tray. */
class OneLevelToldTest {
    private static final LocalDateTime AT = LocalDateTime.of(2026, 4, 28, 8, 0);

    /** A move that is advised, one of another tray, one that is planned and done. */
    @ParameterizedTest
    @CsvSource({"trough, false, 1", "other, false, 2", "trough, true, 2"})
    void a_level_for_the_next_planting_is_not_told_beside_a_move_that_was_tried(
            String moved, boolean done, int cures) {
        Task move =
                new Task(
                        Task.Kind.MOVE_VALVE,
                        VesselId.tray(moved),
                        AT,
                        0,
                        0,
                        Measure.of(115, Unit.MILLIMETRES),
                        Cause.of(Cause.Kind.GROWS_MORE_IN_A_TRIAL),
                        List.of(),
                        List.of(),
                        done);
        Warning air =
                new Warning(
                        Warning.Kind.SHORT_OF_AIR,
                        VesselId.tray("trough"),
                        AT,
                        AT,
                        Measure.none(),
                        Cause.of(Cause.Kind.ROOTS_BREATHE_MORE_THAN_COMES),
                        List.of(
                                new Cure(Cure.Kind.LOWER_LEVEL, Facts.of(Quantity.LEVEL, 105)),
                                Cure.of(Cure.Kind.AIR_STONE)));
        Advice told =
                Forecasts.oneLevelTold(
                        new Advice(
                                new Verdict(
                                        true,
                                        Optional.empty(),
                                        List.of(),
                                        List.of(),
                                        Optional.empty()),
                                List.of(move),
                                List.of(air),
                                List.of(),
                                List.of(),
                                List.of()));
        assertEquals(cures, told.warnings().get(0).cures().size());
    }
}
