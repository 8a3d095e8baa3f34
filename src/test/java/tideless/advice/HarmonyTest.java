package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.rig.VesselId;

/** No output asks one crop for a stronger and a leaner feed. */
class HarmonyTest {
    private static final VesselId BASIL = VesselId.tray("basil");
    private static final VesselId TOMATO = VesselId.tray("tomato");
    private static final LocalDateTime AT = LocalDateTime.of(2026, 3, 2, 8, 0);

    private final Findings out = new Findings();

    private void warn(Warning.Kind kind, VesselId vessel, Cure.Kind... cures) {
        out.warnings.add(
                new Warning(
                        kind,
                        vessel,
                        AT,
                        AT.plusDays(1),
                        Measure.none(),
                        Cause.of(Cause.Kind.SALTS_STAY_BEHIND),
                        Arrays.stream(cures).map(Cure::of).toList()));
    }

    private Task flush(VesselId vessel, Cure.Kind... cures) {
        return change(Task.Kind.FLUSH, vessel, cures);
    }

    private Task change(Task.Kind kind, VesselId vessel, Cure.Kind... cures) {
        Task task =
                new Task(
                        kind,
                        vessel,
                        AT,
                        9,
                        8,
                        Measure.atMost(3, 2, Unit.MS_PER_CM),
                        Cause.of(Cause.Kind.SALTS_STAY_BEHIND),
                        Arrays.stream(cures).map(Cure::of).toList(),
                        List.of(Caution.DRAINED_FEED),
                        false);
        out.tasks.add(task);
        return task;
    }

    private List<Cure> cures(int warning) {
        return out.warnings.get(warning).cures();
    }

    private static Cure apart(String crops) {
        return new Cure(Cure.Kind.DO_NOT_SHARE_A_FEED, Facts.NONE.named(crops));
    }

    @Test
    void a_crop_that_wants_it_stronger_and_one_that_wants_it_leaner_do_not_share_a_feed() {
        warn(Warning.Kind.TOO_LEAN, TOMATO, Cure.Kind.STRONGER_FEED, Cure.Kind.OWN_RESERVOIR);
        warn(Warning.Kind.TOO_SALTY, BASIL, Cure.Kind.LID_ON_GAPS, Cure.Kind.LEANER_FEED);
        Harmony.bringTo(out, (a, b) -> true);
        Cure apart = apart("tomato / basil");
        assertEquals(List.of(apart, Cure.of(Cure.Kind.OWN_RESERVOIR)), cures(0));
        assertEquals(List.of(Cure.of(Cure.Kind.LID_ON_GAPS), apart), cures(1));
    }

    @Test
    void so_do_tasks_and_all_else_of_them_stays() {
        Task lean = flush(TOMATO, Cure.Kind.STRONGER_FEED, Cure.Kind.STRONGER_FEED);
        flush(BASIL, Cure.Kind.LEANER_FEED);
        Harmony.bringTo(out, (a, b) -> true);
        Task told =
                new Task(
                        lean.kind(),
                        lean.vessel(),
                        lean.due(),
                        lean.litres(),
                        lean.drainLitres(),
                        lean.measure(),
                        lean.cause(),
                        List.of(apart("tomato / basil")),
                        lean.cautions(),
                        lean.isDone());
        assertEquals(told, out.tasks.get(0));
        assertEquals(told.cures(), out.tasks.get(1).cures());
    }

    @Test
    void one_wish_alone_is_told_as_it_is() {
        warn(Warning.Kind.TOO_LEAN, TOMATO, Cure.Kind.STRONGER_FEED);
        warn(Warning.Kind.TOO_LEAN, BASIL, Cure.Kind.STRONGER_FEED);
        Task task = change(Task.Kind.FRESH_SOLUTION, BASIL, Cure.Kind.MORE_SOLUTION_PER_PLANT);
        Harmony.bringTo(out, (a, b) -> true);
        assertEquals(List.of(Cure.of(Cure.Kind.STRONGER_FEED)), cures(0));
        assertEquals(List.of(Cure.of(Cure.Kind.STRONGER_FEED)), cures(1));
        assertEquals(List.of(task), out.tasks);
    }

    @Test
    void one_crop_that_lacks_nothing_and_ends_salty_was_never_fed_too_lean() {
        warn(Warning.Kind.TOO_LEAN, BASIL, Cure.Kind.STRONGER_FEED);
        warn(Warning.Kind.TOO_SALTY, BASIL, Cure.Kind.LEANER_FEED);
        Harmony.bringTo(out, (a, b) -> true);
        assertEquals(1, out.warnings.size());
        assertEquals(List.of(Cure.of(Cure.Kind.LEANER_FEED)), cures(0));
    }

    @Test
    void one_that_is_flushed_was_never_fed_too_lean() {
        warn(Warning.Kind.TOO_LEAN, BASIL, Cure.Kind.STRONGER_FEED);
        flush(BASIL, Cure.Kind.LEANER_FEED);
        Harmony.bringTo(out, (a, b) -> true);
        assertEquals(List.of(), out.warnings);
    }

    @Test
    void one_crop_short_of_a_nutrient_in_salty_water_is_told_neither() {
        warn(
                Warning.Kind.TOO_LEAN,
                BASIL,
                Cure.Kind.STRONGER_FEED,
                Cure.Kind.MORE_SOLUTION_PER_PLANT);
        warn(Warning.Kind.TOO_SALTY, BASIL, Cure.Kind.LEANER_FEED);
        warn(Warning.Kind.SHORT_OF_ONE, BASIL, Cure.Kind.FRESH_SOLUTION_SOONER);
        Harmony.bringTo(out, (a, b) -> true);
        assertEquals(3, out.warnings.size());
        assertEquals(List.of(Cure.of(Cure.Kind.MORE_SOLUTION_PER_PLANT)), cures(0));
        assertEquals(List.of(), cures(1));
        assertEquals(List.of(Cure.of(Cure.Kind.FRESH_SOLUTION_SOONER)), cures(2));
    }

    @Test
    void another_crops_want_of_a_nutrient_does_not_speak_for_this_one() {
        warn(Warning.Kind.TOO_LEAN, BASIL, Cure.Kind.STRONGER_FEED);
        warn(Warning.Kind.TOO_SALTY, BASIL, Cure.Kind.LEANER_FEED);
        warn(Warning.Kind.SHORT_OF_ONE, TOMATO, Cure.Kind.FRESH_SOLUTION_SOONER);
        Harmony.bringTo(out, (a, b) -> true);
        assertEquals(2, out.warnings.size());
    }

    @Test
    void crops_that_hang_on_tanks_of_their_own_want_strengths_and_no_reservoirs() {
        warn(Warning.Kind.TOO_SALTY, BASIL, Cure.Kind.LEANER_FEED);
        warn(Warning.Kind.SHORT_OF_ONE, TOMATO, Cure.Kind.STRONGER_FEED);
        Harmony.bringTo(out, (a, b) -> a.equals(b));
        assertEquals(Cure.Kind.OWN_FEED, cures(0).get(0).kind());
        assertEquals("tomato / basil", cures(1).get(0).facts().of());
    }
}
