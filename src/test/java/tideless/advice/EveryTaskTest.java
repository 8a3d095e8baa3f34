package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Pouring;
import tideless.rig.TestValve;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;
import tideless.solution.Component;

/** Each task on a trace written by hand, beside one just short of it; and where each caution is. */
class EveryTaskTest {
    private static final LocalDate START = Rigs.START;

    /** A task, a trace that has it once, when it is due, and a trace just short of it. */
    private record Case(
            Task.Kind kind, MadeTrace has, LocalDateTime due, Cause.Kind cause, MadeTrace hasNot) {}

    private static LocalDateTime at(int day, int hour) {
        return START.plusDays(day).atTime(hour, 0);
    }

    private static MadeTrace made() {
        return new MadeTrace(14);
    }

    private static MadeTrace fruiting() {
        return made().of("dwarf-tomato");
    }

    private static MadeTrace byHand() {
        return made().filled(new Filling.ByHand(0.05, List.of(), Pouring.FEED));
    }

    private static MadeTrace inTray(MadeTrace trace, Event.Kind kind, double hour) {
        return trace.event(kind, MadeTrace.TRAY, hour);
    }

    /** 32 L full, 30 L above the outlet at 20 mm: a twentieth of them is 1.5 L of 32. */
    /** Below a band of 1 mS/cm from hour 100 on, with so much potassium. */
    private static MadeTrace lean(int until, double potassium) {
        return made().with(TraySeries.EC, h -> h >= 100 && h < until ? 0.949 : 2)
                .holding(Rigs.FEED.with(Component.K, potassium));
    }

    private static MadeTrace leftAt(double frac) {
        return made().visited(MadeTrace.away(5, 9)).drawing(h -> 4e-4).reservoirAt(frac);
    }

    private static MadeTrace moved(int day) {
        return made().filled(
                        new TestValve()
                                .moves(List.of(new Filling.Move(START.plusDays(day), 0.04)))
                                .make());
    }

    private static final List<Case> CASES =
            List.of(
                    new Case(
                            Task.Kind.READ_METERS,
                            new MadeTrace(8),
                            at(7, 8),
                            Cause.Kind.FORECAST_IS_NO_READING,
                            new MadeTrace(7)),
                    new Case(
                            Task.Kind.REFILL,
                            made().event(Event.Kind.REFILL, MadeTrace.RESERVOIR, 32),
                            at(1, 8),
                            Cause.Kind.RUNNING_LOW,
                            made()),
                    new Case(
                            Task.Kind.REFILL,
                            leftAt(1 - 1.51 / 32),
                            at(4, 8),
                            Cause.Kind.BEFORE_ABSENCE,
                            leftAt(1 - 1.49 / 32)),
                    new Case(
                            Task.Kind.REFILL,
                            leftAt(0.5),
                            at(4, 8),
                            Cause.Kind.BEFORE_ABSENCE,
                            inTray(leftAt(0.5), Event.Kind.HARVEST, 100)),
                    new Case(
                            Task.Kind.TOP_UP,
                            inTray(byHand(), Event.Kind.TOP_UP, 32),
                            at(1, 8),
                            Cause.Kind.KEPT_BY_HAND,
                            byHand()),
                    new Case(
                            Task.Kind.FLUSH,
                            inTray(made(), Event.Kind.FLUSH, 80),
                            at(3, 8),
                            Cause.Kind.SALTS_STAY_BEHIND,
                            made()),
                    // Nobody flushes: beyond 3.15 for a day it is told all the same.
                    new Case(
                            Task.Kind.FLUSH,
                            made().with(TraySeries.EC, h -> h >= 100 && h < 124 ? 3.16 : 2),
                            at(4, 8),
                            Cause.Kind.SALTS_STAY_BEHIND,
                            made().with(TraySeries.EC, h -> h >= 100 && h < 123 ? 3.16 : 2)),
                    // And not in the last week of a crop.
                    new Case(
                            Task.Kind.FLUSH,
                            inTray(salty(100), Event.Kind.HARVEST, 310),
                            at(4, 8),
                            Cause.Kind.SALTS_STAY_BEHIND,
                            inTray(salty(150), Event.Kind.HARVEST, 310)),
                    new Case(
                            Task.Kind.FRESH_SOLUTION,
                            inTray(made(), Event.Kind.FRESH_SOLUTION, 56),
                            at(2, 8),
                            Cause.Kind.ONE_RUNS_OUT,
                            made()),
                    new Case(
                            Task.Kind.FRESH_SOLUTION,
                            lean(172, 0.44),
                            at(4, 8),
                            Cause.Kind.CROP_TAKES_IT_UP,
                            lean(171, 0.44)),
                    // Three times the 0.15 mmol/L of potassium that slow its uptake.
                    new Case(
                            Task.Kind.FRESH_SOLUTION,
                            lean(172, 0.449),
                            at(4, 8),
                            Cause.Kind.CROP_TAKES_IT_UP,
                            lean(172, 0.451)),
                    new Case(
                            Task.Kind.MOVE_VALVE,
                            inTray(moved(4), Event.Kind.VALVE_MOVED, 104),
                            at(4, 8),
                            Cause.Kind.AS_PLANNED,
                            moved(20)),
                    new Case(
                            Task.Kind.SUPPORT,
                            inTray(fruiting(), Event.Kind.FLOWERING, 120),
                            at(5, 8),
                            Cause.Kind.GROWS_TALL,
                            fruiting()),
                    new Case(
                            Task.Kind.POLLINATE,
                            inTray(fruiting(), Event.Kind.FLOWERING, 120),
                            at(5, 8),
                            Cause.Kind.FLOWERS_OPEN,
                            fruiting()),
                    // The last visit is that of day 13, hour 320.
                    new Case(
                            Task.Kind.PICK,
                            inTray(fruiting(), Event.Kind.FIRST_RIPE, 320),
                            at(13, 8),
                            Cause.Kind.FIRST_FRUIT_RIPE,
                            inTray(fruiting(), Event.Kind.FIRST_RIPE, 321)),
                    new Case(
                            Task.Kind.HARVEST,
                            inTray(made(), Event.Kind.HARVEST, 248),
                            at(10, 8),
                            Cause.Kind.READY,
                            made()),
                    new Case(
                            Task.Kind.CLEAN,
                            inTray(made(), Event.Kind.HARVEST, 248),
                            at(10, 8),
                            Cause.Kind.CROP_LEAVES_THE_TRAY,
                            made()),
                    // Set out at three days: to be sown that long before, and not before the run.
                    new Case(
                            Task.Kind.SOW_NEXT,
                            inTray(made(), Event.Kind.HARVEST, 80),
                            at(0, 8),
                            Cause.Kind.NEXT_IN_TIME,
                            inTray(made(), Event.Kind.HARVEST, 56)),
                    // The crop that follows, in the hour after the cut.
                    new Case(
                            Task.Kind.PLANT,
                            followed(200, 200, true),
                            at(8, 8),
                            Cause.Kind.FOLLOWS,
                            inTray(made(), Event.Kind.HARVEST, 200)));

    /** A lettuce cut at an hour, and basil set out at another. */
    private static MadeTrace followed(int cutAt, int plantedAt, boolean fresh) {
        return inTray(made(), Event.Kind.HARVEST, cutAt).then(plantedAt, fresh);
    }

    private static MadeTrace salty(int from) {
        return made().with(TraySeries.EC, h -> h >= from ? 3.16 : 2);
    }

    private static List<Task> tasks(MadeTrace trace, Task.Kind kind) {
        return trace.advice().tasks().stream().filter(t -> t.kind() == kind).toList();
    }

    @TestFactory
    Stream<DynamicTest> a_task_is_due_with_its_cause_and_not_just_short_of_it() {
        return CASES.stream()
                .map(
                        c ->
                                DynamicTest.dynamicTest(
                                        c.kind() + " " + c.cause() + " " + c.due(),
                                        () -> {
                                            List<Task> has = tasks(c.has(), c.kind());
                                            assertEquals(1, has.size(), has.toString());
                                            assertEquals(c.due(), has.get(0).due());
                                            assertEquals(c.cause(), has.get(0).cause().kind());
                                            assertEquals(List.of(), tasks(c.hasNot(), c.kind()));
                                        }));
    }

    /**
     * A rig is always mixed for; DayOneAdviceTest, SeedlingsTest and TendedStandTest hold the rest.
     */
    @Test
    void every_kind_of_task_has_its_case() {
        Set<Task.Kind> kinds =
                EnumSet.of(Task.Kind.SOW, Task.Kind.MIX, Task.Kind.SET_OUT, Task.Kind.TRANSPLANT);
        kinds.addAll(
                List.of(
                        Task.Kind.PICK_LEAVES,
                        Task.Kind.THIN_OUT,
                        Task.Kind.SPACE_OUT,
                        Task.Kind.TOP));
        CASES.forEach(c -> kinds.add(c.kind()));
        assertEquals(EnumSet.allOf(Task.Kind.class), kinds);
    }

    /** A caution, the task that has it, and a trace of the same tasks where it has no place. */
    private record Told(Caution caution, Task.Kind at, MadeTrace has, MadeTrace hasNot) {}

    private static MadeTrace cut(MadeTrace trace) {
        return inTray(trace, Event.Kind.HARVEST, 240);
    }

    private static final List<Told> TOLD =
            List.of(
                    new Told(Caution.CHEMICALS, Task.Kind.MIX, made(), null),
                    new Told(Caution.NO_BRASS_OR_ZINC, Task.Kind.MIX, made(), null),
                    new Told(Caution.LIGHT_TIGHT, Task.Kind.MIX, made(), null),
                    new Told(
                            Caution.MOSQUITO_MESH,
                            Task.Kind.MIX,
                            made().rigged(t -> t.openAreaM2(0.001)),
                            made()),
                    new Told(
                            Caution.LAMP_DRIVERS,
                            Task.Kind.MIX,
                            made().rigged(
                                            t ->
                                                    t.lamp(
                                                            new Lamp(
                                                                    200, 2.5, 0.02, 6 * 3600,
                                                                    22 * 3600))),
                            made()),
                    new Told(Caution.TAP_AND_TRAY, Task.Kind.REFILL, leftAt(0.5), leftAt(1)),
                    new Told(
                            Caution.DRAINED_FEED,
                            Task.Kind.FLUSH,
                            cut(inTray(made(), Event.Kind.FLUSH, 80)),
                            made()),
                    new Told(Caution.DRAINED_FEED, Task.Kind.CLEAN, cut(made()), made()),
                    // Legionella grows from 20 degC.
                    new Told(
                            Caution.NO_SPRAY,
                            Task.Kind.CLEAN,
                            cut(made().with(TraySeries.SOLUTION_TEMP, h -> 20.1)),
                            cut(made().with(TraySeries.SOLUTION_TEMP, h -> 20))),
                    new Told(
                            Caution.ROOF_RAIN,
                            Task.Kind.HARVEST,
                            cut(made().from("rain")),
                            cut(made().from("soft-tap"))));

    @TestFactory
    Stream<DynamicTest> a_caution_stands_once_at_the_task_of_its_hand() {
        return TOLD.stream()
                .map(
                        c ->
                                DynamicTest.dynamicTest(
                                        c.caution() + " at " + c.at(),
                                        () -> {
                                            assertEquals(
                                                    List.of(c.at()),
                                                    tasksWith(c.has(), c.caution()));
                                            if (c.hasNot() != null) {
                                                assertEquals(
                                                        List.of(),
                                                        tasksWith(c.hasNot(), c.caution()));
                                            }
                                        }));
    }

    private static List<Task.Kind> tasksWith(MadeTrace trace, Caution caution) {
        return trace.advice().tasks().stream()
                .filter(t -> t.cautions().contains(caution))
                .map(Task::kind)
                .toList();
    }

    @Test
    void every_caution_has_its_case() {
        Set<Caution> told = new HashSet<>();
        TOLD.forEach(t -> told.add(t.caution()));
        assertEquals(EnumSet.allOf(Caution.class), told);
    }
}
