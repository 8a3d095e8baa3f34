package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.crop.Transplant;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Tending;
import tideless.scenario.Crops;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;

/** What was odd when all answers on small rigs of every water, room and filling were read. */
class ReadAsAWholeTest {
    /** Sealed, filled to 60 mm. */
    private static MadeTrace sealed(double airC, double levelM) {
        return new MadeTrace(14)
                .filled(new Filling.Sealed())
                .rigged(t -> t.startLevelM(0.06))
                .with(TraySeries.AIR_TEMP, h -> airC)
                .with(TraySeries.LEVEL, h -> h < 100 ? 0.06 : levelM)
                .event(Event.Kind.WILTED, MadeTrace.TRAY, 101)
                .event(Event.Kind.DIED, MadeTrace.TRAY, 150);
    }

    private static List<Cure.Kind> cures(MadeTrace trace) {
        return trace.advice().warnings().stream()
                .filter(w -> w.kind() == Warning.Kind.DIED)
                .findFirst()
                .orElseThrow()
                .cures()
                .stream()
                .map(Cure::kind)
                .toList();
    }

    /** A tray that still holds half was not too small; below that it was. */
    @ParameterizedTest
    @CsvSource({
        "22, 0.0301, HANG_CUP_LOWER",
        "22, 0.0299, DEEPER_VESSEL",
        "4, 0.0301, WARMER_ROOM",
        "4, 0.0299, DEEPER_VESSEL"
    })
    void plants_that_thirst_above_a_half_full_tray_want_no_larger_one(
            double airC, double levelM, Cure.Kind first) {
        assertEquals(first, cures(sealed(airC, levelM)).get(0));
    }

    private static MadeTrace planted(int plants) {
        return new MadeTrace(14)
                .rigged(
                        t ->
                                t.planting(
                                        new Planting.OfCrop(
                                                Crops.named("lettuce"),
                                                plants,
                                                0.2,
                                                3,
                                                Transplant.AS_RAISED,
                                                Planting.ThirstModel.CANOPY,
                                                OptionalInt.empty(),
                                                OptionalDouble.empty(),
                                                Tending.NONE)))
                .with(TraySeries.SOLUTION_TEMP, h -> 33)
                .with(TraySeries.EC, h -> 6)
                .event(Event.Kind.PRECIPITATE, MadeTrace.TRAY, 1)
                .event(Event.Kind.PRECIPITATE, MadeTrace.RESERVOIR, 1);
    }

    @Test
    void a_tray_without_plants_is_warned_of_nothing_that_harms_plants() {
        assertEquals(List.of(), planted(0).warned());
        List<Warning.Kind> one = planted(1).warned();
        for (Warning.Kind kind :
                List.of(
                        Warning.Kind.WARM_SOLUTION,
                        Warning.Kind.TOO_SALTY,
                        Warning.Kind.PRECIPITATE)) {
            assertTrue(one.contains(kind), kind + " of " + one);
        }
        assertEquals(
                1, one.stream().filter(k -> k == Warning.Kind.PRECIPITATE).count()); // one crust
    }

    private static Warning warning(Warning.Kind kind, Measure measure, Facts loss) {
        return new Warning(
                kind,
                MadeTrace.TRAY,
                Rigs.START.atStartOfDay(),
                Rigs.START.atTime(8, 0),
                measure,
                new Cause(Cause.Kind.SALTS_STAY_BEHIND, loss),
                List.of());
    }

    /** Very warm solution whose harm is known stands by it; unknown, it stands before salt. */
    @Test
    void what_takes_more_is_told_before_very_warm_solution_that_takes_less() {
        Measure hot = Measure.atMost(34, 28, Unit.CELSIUS);
        Warning warm = warning(Warning.Kind.WARM_SOLUTION, hot, Facts.of(Quantity.LOSS, 0.16));
        Warning salt =
                warning(
                        Warning.Kind.TOO_SALTY,
                        Measure.atMost(5, 4, Unit.MS_PER_CM),
                        Facts.of(Quantity.LOSS, 0.17));
        assertTrue(Warning.GRAVEST_FIRST.compare(salt, warm) < 0);
        assertFalse(
                Warning.GRAVEST_FIRST.compare(
                                salt, warning(Warning.Kind.WARM_SOLUTION, hot, Facts.NONE))
                        < 0);
    }
}
