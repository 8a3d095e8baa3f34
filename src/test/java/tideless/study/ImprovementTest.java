package tideless.study;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tideless.advice.Cause;
import tideless.advice.Measure;
import tideless.advice.Unit;
import tideless.advice.Verdict;
import tideless.advice.Warning;
import tideless.rig.VesselId;

/** What makes a run with another setting better than the run without. */
class ImprovementTest {
    private static final VesselId TROUGH = VesselId.tray("trough");
    private static final LocalDateTime MAY = LocalDate.of(2026, 5, 8).atStartOfDay();

    private static Warning warning(Warning.Kind kind, LocalDateTime from, Measure measure) {
        return new Warning(
                kind, TROUGH, from, from, measure, Cause.of(Cause.Kind.AS_PLANNED), List.of());
    }

    private static Warning salty(double ec) {
        return warning(Warning.Kind.TOO_SALTY, MAY, Measure.atMost(ec, 4, Unit.MS_PER_CM));
    }

    @Test
    void it_gains_a_hundredth_costs_no_neighbour_and_dries_nothing() {
        assertTrue(Improvement.isBetter(0.01, -0.001, 0));
        assertFalse(Improvement.isBetter(0.0099, 0, 0));
        assertFalse(Improvement.isBetter(0.5, -0.0011, 0));
        assertFalse(Improvement.isBetter(0.5, 0, 1));
    }

    /** A hundredth of the limit of 4 mS/cm, 0.04, is below what a meter tells apart. */
    @Test
    void more_salt_than_was_warned_of_is_new() {
        assertTrue(Improvement.isNew(List.of(), salty(4.1)));
        assertTrue(Improvement.isNew(List.of(salty(4.59)), salty(6.64)));
        assertTrue(Improvement.isNew(List.of(salty(4.59)), salty(4.64)));
        assertFalse(Improvement.isNew(List.of(salty(4.59)), salty(4.62)));
        assertFalse(Improvement.isNew(List.of(salty(4.59)), salty(4.2)));
    }

    @Test
    void a_reservoir_too_small_by_more_is_new() {
        Warning before = outgrown(3.54);
        assertFalse(Improvement.isNew(List.of(before), outgrown(3.69)));
        assertTrue(Improvement.isNew(List.of(before), outgrown(3.4)));
    }

    private static Warning outgrown(double days) {
        return warning(Warning.Kind.OUTGROWN, MAY, Measure.atLeast(days, 4, Unit.DAYS));
    }

    @Test
    void what_no_figure_decides_is_new_when_it_comes_sooner_or_elsewhere() {
        Warning before = warning(Warning.Kind.SHORT_OF_AIR, MAY, Measure.none());
        Warning sooner = warning(Warning.Kind.SHORT_OF_AIR, MAY.minusDays(1), Measure.none());
        assertFalse(Improvement.isNew(List.of(before), before));
        assertTrue(Improvement.isNew(List.of(before), sooner));
        assertTrue(
                Improvement.isNew(
                        List.of(before),
                        new Warning(
                                before.kind(),
                                VesselId.tray("other"),
                                MAY,
                                MAY,
                                before.measure(),
                                before.cause(),
                                List.of())));
    }

    /** No crop gets over a harm, so that an earlier one is worse and a later one is not. */
    @Test
    void a_harm_that_was_not_or_comes_sooner_is_worse() {
        Verdict well = verdict(Optional.empty());
        assertFalse(Improvement.harms(well, well));
        assertTrue(Improvement.harms(well, verdict(Optional.of(MAY))));
        assertFalse(Improvement.harms(verdict(Optional.of(MAY)), well));
        assertTrue(
                Improvement.harms(
                        verdict(Optional.of(MAY)), verdict(Optional.of(MAY.minusHours(1)))));
        assertFalse(
                Improvement.harms(
                        verdict(Optional.of(MAY)), verdict(Optional.of(MAY.plusDays(1)))));
    }

    private static Verdict verdict(Optional<LocalDateTime> harm) {
        return new Verdict(
                harm.isEmpty(),
                harm.map(at -> new Verdict.Harm(Warning.Kind.WILTED, TROUGH, at)),
                List.of(),
                List.of(),
                Optional.empty());
    }
}
