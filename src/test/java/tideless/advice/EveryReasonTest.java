package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;
import tideless.rig.TestValve;
import tideless.rig.ValveFaults;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Recipe;

/** Why something is told and what helps, each by a trace written by hand and one just short. */
class EveryReasonTest {
    private static final double STARVED_M = 0.0419; // 50 mm less band 5 less 3 is 42 mm
    private static final LocalDate DAY_4 = Rigs.START.plusDays(4);

    private static MadeTrace low(IntPredicate when) {
        return new MadeTrace(14).with(TraySeries.LEVEL, h -> when.test(h) ? STARVED_M : 0.05);
    }

    private static Warning one(MadeTrace trace, Warning.Kind kind) {
        List<Warning> found =
                trace.advice().warnings().stream().filter(w -> w.kind() == kind).toList();
        assertEquals(1, found.size(), kind.name());
        return found.get(0);
    }

    private static boolean tells(MadeTrace trace, Warning.Kind kind) {
        return trace.warned().contains(kind);
    }

    private static boolean cures(MadeTrace trace, Warning.Kind kind, Cure.Kind cure) {
        return one(trace, kind).cures().stream().anyMatch(c -> c.kind() == cure);
    }

    @Test
    void a_tray_that_starts_low_is_filling_and_not_starved() {
        assertFalse(tells(low(h -> h < 72), Warning.Kind.STARVED_VALVE));
        assertTrue(tells(low(h -> h >= 1 && h < 72), Warning.Kind.STARVED_VALVE));
        // Filled by hour 30, it starves like any other.
        assertTrue(tells(low(h -> h < 30 || h >= 40 && h < 64), Warning.Kind.STARVED_VALVE));
        assertFalse(tells(low(h -> h < 30 || h >= 40 && h < 63), Warning.Kind.STARVED_VALVE));
    }

    // 32 cm deep, the outlet at 2 cm: from a sixteenth of it on there is none to give.
    @Test
    void a_valve_starves_only_while_its_reservoir_has_water() {
        IntPredicate aDay = h -> h >= 100 && h < 124;
        assertTrue(tells(low(aDay).reservoirAt(0.0626), Warning.Kind.STARVED_VALVE));
        assertFalse(tells(low(aDay).reservoirAt(0.0625), Warning.Kind.STARVED_VALVE));
    }

    private static Warning starvedBy(ValveFaults faults) {
        return one(
                low(h -> h >= 100 && h < 124).filled(new TestValve().faults(faults).make()),
                Warning.Kind.STARVED_VALVE);
    }

    private static ValveFaults shut(LocalDate from) {
        return new ValveFaults(
                ValveFaults.Stuck.SHUT,
                from,
                from.plusDays(9),
                0,
                ValveFaults.NO_DAY,
                0,
                ValveFaults.NO_DAY);
    }

    private static ValveFaults silting(LocalDate from) {
        return new ValveFaults(
                ValveFaults.Stuck.NOT,
                ValveFaults.NO_DAY,
                ValveFaults.NO_DAY,
                0,
                ValveFaults.NO_DAY,
                0.1,
                from);
    }

    // Hour 100 is on day 4.
    @Test
    void a_valve_that_hangs_shut_is_to_be_freed() {
        Warning hangs = starvedBy(shut(DAY_4));
        assertEquals(Cause.Kind.VALVE_HANGS_SHUT, hangs.cause().kind());
        assertEquals(Cure.Kind.FREE_VALVE, hangs.cures().get(0).kind());
        Warning sound = starvedBy(shut(DAY_4.plusDays(1)));
        assertEquals(Cause.Kind.VALVE_TOO_SLOW, sound.cause().kind());
        assertEquals(Cure.Kind.WIDER_FEED_LINE, sound.cures().get(0).kind());
    }

    @Test
    void a_valve_that_silts_up_is_to_be_cleaned() {
        Warning silts = starvedBy(silting(DAY_4));
        assertEquals(Cause.Kind.VALVE_SILTS_UP, silts.cause().kind());
        assertEquals(Cure.Kind.CLEAN_SEAT, silts.cures().get(0).kind());
        assertEquals(
                Cause.Kind.VALVE_TOO_SLOW, starvedBy(silting(DAY_4.plusDays(1))).cause().kind());
    }

    private static Cure.Kind driedOut(double inReservoirFrac, ValveFaults faults) {
        return one(
                        new MadeTrace(14)
                                .with(TraySeries.LEVEL, h -> h >= 110 ? 0.0019 : 0.05)
                                .reservoirAt(inReservoirFrac)
                                .filled(new TestValve().faults(faults).make()),
                        Warning.Kind.DRIED_OUT)
                .cures()
                .get(0)
                .kind();
    }

    @Test
    void a_tray_that_dries_out_below_a_full_reservoir_wants_its_valve_mended_and_no_refill() {
        assertEquals(Cure.Kind.FREE_VALVE, driedOut(1, shut(DAY_4)));
        assertEquals(Cure.Kind.CLEAN_SEAT, driedOut(1, silting(DAY_4)));
        assertEquals(Cure.Kind.WIDER_FEED_LINE, driedOut(0.0626, ValveFaults.NONE));
        assertEquals(Cure.Kind.REFILL_IN_TIME, driedOut(0.0625, shut(DAY_4)));
    }

    // The last visit is that of day 13, hour 320.
    @Test
    void nobody_is_told_to_tie_up_or_shake_what_flowers_after_the_last_visit() {
        for (int hour : new int[] {320, 321}) {
            List<Task.Kind> told =
                    new MadeTrace(14)
                                    .of("dwarf-tomato")
                                    .event(Event.Kind.FLOWERING, MadeTrace.TRAY, hour)
                                    .advice()
                                    .tasks()
                                    .stream()
                                    .map(Task::kind)
                                    .toList();
            assertEquals(hour == 320, told.contains(Task.Kind.SUPPORT));
            assertEquals(hour == 320, told.contains(Task.Kind.POLLINATE));
        }
    }

    // Lean from hour 100 on and renewed at hour E: of the hours before, those within 96 of E are
    // borne, so that E - 196 are left; three days of them are told.
    @Test
    void a_tray_that_is_renewed_within_four_days_is_not_lean() {
        assertFalse(tells(leanUntil(267), Warning.Kind.TOO_LEAN));
        assertTrue(tells(leanUntil(270), Warning.Kind.TOO_LEAN));
    }

    private static MadeTrace leanUntil(int renewedAt) {
        return new MadeTrace(14)
                .with(TraySeries.EC, h -> h >= 100 && h < renewedAt ? 0.94 : 2)
                .event(Event.Kind.FRESH_SOLUTION, MadeTrace.TRAY, renewedAt);
    }

    private static double perEc(Composition of) {
        return of.molPerM3(Component.K) / ElectricalConductivity.at25MsPerCm(of);
    }

    /** The feed with so much potassium that the richest recipe holds so many times as much. */
    private static Composition outdone(double times) {
        double best = 0;
        for (String id : Recipe.names()) {
            best = Math.max(best, perEc(Recipe.named(id).orElseThrow().composition()));
        }
        double low = 0;
        double high = 10;
        while (high - low > 1e-9) {
            double middle = 0.5 * (low + high);
            if (perEc(Rigs.FEED.with(Component.K, middle)) * times < best) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Rigs.FEED.with(Component.K, low);
    }

    @Test
    void another_recipe_is_named_from_a_fifth_more_of_what_runs_short() {
        Composition held = Rigs.FEED.with(Component.K, 0.149);
        for (double times : new double[] {1.19, 1.21}) {
            MadeTrace hungry = new MadeTrace(14).holding(held).fed(outdone(times));
            boolean other = cures(hungry, Warning.Kind.SHORT_OF_ONE, Cure.Kind.OTHER_RECIPE);
            assertEquals(times > 1.2, other);
            assertEquals(
                    !other, cures(hungry, Warning.Kind.SHORT_OF_ONE, Cure.Kind.FEED_WITH_MORE));
        }
    }

    private static MadeTrace salty() {
        return new MadeTrace(14).with(TraySeries.EC, h -> h >= 100 && h < 124 ? 3.16 : 2);
    }

    @Test
    void a_lid_is_worth_it_from_a_hundredth_that_leaves_through_the_gap() {
        for (double share : new double[] {0.0099, 0.0101}) {
            MadeTrace drying =
                    salty().rigged(t -> t.openAreaM2(0.001))
                            .with(TraySeries.TRANSPIRATION, h -> 1e-4 * (1 - share))
                            .with(TraySeries.EVAPORATION, h -> 1e-4 * share);
            assertEquals(
                    share > 0.01, cures(drying, Warning.Kind.TOO_SALTY, Cure.Kind.LID_ON_GAPS));
        }
        MadeTrace closed =
                salty().with(TraySeries.TRANSPIRATION, h -> 9e-5)
                        .with(TraySeries.EVAPORATION, h -> 1e-5);
        assertFalse(cures(closed, Warning.Kind.TOO_SALTY, Cure.Kind.LID_ON_GAPS));
    }

    // 2 mmol/L of sodium chloride read 0.245 mS/cm (0.1264 a mmol without end dilution, less 3 %).
    @Test
    void water_that_is_salty_itself_is_named_from_a_quarter() {
        for (double molPerM3 : new double[] {2.0, 2.1}) {
            Composition water =
                    Composition.WATER.with(Component.NA, molPerM3).with(Component.CL, molPerM3);
            assertEquals(
                    molPerM3 > 2.05,
                    cures(salty().from(water), Warning.Kind.TOO_SALTY, Cure.Kind.RAIN_WATER));
        }
    }
}
