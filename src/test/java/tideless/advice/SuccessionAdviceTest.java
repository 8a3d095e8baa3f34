package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;

/**
 * What is told of a crop that follows another: a lettuce cut at hour 200 of a fortnight, basil of
 * ten days set out at 200 or at 248.
 */
class SuccessionAdviceTest {
    private static MadeTrace made(double plantedAt, boolean fresh) {
        return new MadeTrace(14)
                .event(Event.Kind.HARVEST, MadeTrace.TRAY, 200)
                .then(plantedAt, fresh);
    }

    private static LocalDateTime at(int day, int hour) {
        return Rigs.START.atTime(hour, 0).plusDays(day);
    }

    private static List<Task> tasks(MadeTrace trace, Task.Kind kind) {
        return trace.advice().tasks().stream().filter(t -> t.kind() == kind).toList();
    }

    private static List<Warning> warnings(MadeTrace trace, Warning.Kind kind) {
        return trace.advice().warnings().stream().filter(w -> w.kind() == kind).toList();
    }

    @Test
    void the_tray_is_cleaned_and_filled_at_the_planting_and_not_at_the_cut() {
        Task clean = tasks(made(248, true), Task.Kind.CLEAN).get(0);
        assertEquals(1, tasks(made(248, true), Task.Kind.CLEAN).size());
        assertEquals(at(10, 8), clean.due());
        assertEquals(10, clean.litres(), 1e-12);
        assertEquals(9, clean.drainLitres(), 1e-12);
        assertTrue(clean.isDone());
        assertEquals("", clean.crop());
    }

    @Test
    void a_tray_that_keeps_its_solution_is_topped_up_and_cleaning_advised() {
        Task clean = tasks(made(200, false), Task.Kind.CLEAN).get(0);
        assertFalse(clean.isDone());
        assertEquals(0, clean.litres() + clean.drainLitres(), 0);
        assertEquals(1, tasks(made(200, false), Task.Kind.PLANT).get(0).litres(), 1e-12);
        assertEquals(0, tasks(made(200, true), Task.Kind.PLANT).get(0).litres(), 0);
    }

    /** Ten days before hour 200 is day -2 at 08:00, ten before 248 the first day's visit. */
    @Test
    void the_next_crop_is_sown_in_time_even_before_the_run() {
        assertEquals(at(-2, 8), tasks(made(200, true), Task.Kind.SOW_NEXT).get(0).due());
        assertEquals(at(0, 8), tasks(made(248, true), Task.Kind.SOW_NEXT).get(0).due());
        assertEquals("basil", tasks(made(248, true), Task.Kind.SOW_NEXT).get(0).crop());
    }

    @Test
    void each_harvest_is_told_of_its_crop_and_the_last_is_followed_by_nothing() {
        MadeTrace both = made(200, true).event(Event.Kind.HARVEST, MadeTrace.TRAY, 320);
        List<Task> harvests = tasks(both, Task.Kind.HARVEST);
        assertEquals(List.of("lettuce", "basil"), harvests.stream().map(Task::crop).toList());
        // 100 + h grams at the last sample before the cut, closed at hour 200: sample 199.
        assertEquals(299, harvests.get(0).measure().value(), 1e-12);
        assertEquals(1, tasks(both, Task.Kind.SOW_NEXT).size());
        assertEquals(2, tasks(both, Task.Kind.CLEAN).size());
    }

    @Test
    void a_crop_that_made_room_says_so_and_of_what_its_weight_is() {
        Task lettuce = tasks(roomMade("lettuce"), Task.Kind.HARVEST).get(0);
        assertEquals(Cause.Kind.MAKES_ROOM, lettuce.cause().kind());
        assertEquals("", lettuce.cause().facts().of());
        assertEquals(299, lettuce.measure().value(), 1e-12);
        Task tomato = tasks(roomMade("dwarf-tomato"), Task.Kind.HARVEST).get(0);
        assertEquals("fruit", tomato.cause().facts().of());
        assertEquals(199, tomato.measure().value(), 1e-12);
    }

    private static MadeTrace roomMade(String crop) {
        return new MadeTrace(14)
                .of(crop)
                .event(
                        new Event(
                                Event.Kind.HARVEST,
                                200 * 3600,
                                MadeTrace.TRAY,
                                0,
                                0,
                                0,
                                Double.NaN,
                                0,
                                Event.MAKES_ROOM))
                .then(200, true);
    }

    /** A day of 3.5 mS/cm: beyond the lettuce's 3, within the basil's 4. */
    @Test
    void each_crop_is_held_to_its_own_limits_and_named() {
        Warning early =
                warnings(
                                made(200, true)
                                        .with(TraySeries.EC, h -> h >= 100 && h < 124 ? 3.5 : 2),
                                Warning.Kind.TOO_SALTY)
                        .get(0);
        assertEquals("lettuce", early.crop());
        assertEquals(
                List.of(),
                warnings(
                        made(200, true).with(TraySeries.EC, h -> h >= 220 && h < 260 ? 3.5 : 2),
                        Warning.Kind.TOO_SALTY));
        Warning late =
                warnings(
                                made(200, true)
                                        .with(TraySeries.EC, h -> h >= 220 && h < 244 ? 4.5 : 2),
                                Warning.Kind.TOO_SALTY)
                        .get(0);
        assertEquals("basil", late.crop());
        assertEquals(4, late.measure().limit(), 0);
    }

    /** Between hour 200 and 248 nothing grows: neither salt nor a dry tray is anybody's harm. */
    @Test
    void nothing_is_warned_of_while_the_tray_is_empty() {
        MadeTrace empty =
                made(248, true)
                        .with(TraySeries.EC, h -> h >= 200 && h < 248 ? 9 : 2)
                        .with(TraySeries.LEVEL, h -> h >= 200 && h < 248 ? 0.001 : 0.05)
                        .event(Event.Kind.DRIED_OUT, MadeTrace.TRAY, 210);
        assertEquals(List.of(), warnings(empty, Warning.Kind.TOO_SALTY));
        assertEquals(List.of(), warnings(empty, Warning.Kind.DRIED_OUT));
        assertTrue(empty.advice().verdict().survives());
        MadeTrace planted =
                made(200, true)
                        .with(TraySeries.LEVEL, h -> h >= 200 && h < 248 ? 0.001 : 0.05)
                        .event(Event.Kind.DRIED_OUT, MadeTrace.TRAY, 210);
        assertEquals("basil", warnings(planted, Warning.Kind.DRIED_OUT).get(0).crop());
        assertFalse(planted.advice().verdict().survives());
    }

    @Test
    void the_verdict_covers_every_crop() {
        MadeTrace lost = made(200, true).event(Event.Kind.DIED, MadeTrace.TRAY, 300);
        assertFalse(lost.advice().verdict().survives());
        assertEquals("basil", warnings(lost, Warning.Kind.DIED).get(0).crop());
        assertEquals(1, lost.advice().verdict().waterLeft().size());
    }
}
