package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.crop.Transplant;
import tideless.rig.Planting;
import tideless.rig.Tending;
import tideless.rig.TestTray;
import tideless.scenario.Crops;
import tideless.sim.Event;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.words.CropWords;

/** Growers give a lettuce 450 cm2 (its crop file): a third of that is 150 cm2. */
class CrowdingTest {
    /** On 0.2 m2; it weighs 100 g at first and 1 g an hour more, of 1000 g that are waited for. */
    private static MadeTrace standing(int plants, Tending tending) {
        return new MadeTrace(14).rigged(planted(plants, tending));
    }

    static UnaryOperator<TestTray> planted(int plants, Tending tending) {
        return tray ->
                tray.planting(
                        new Planting.OfCrop(
                                Crops.named("lettuce"),
                                plants,
                                0.2,
                                3,
                                Transplant.AS_RAISED,
                                Planting.ThirstModel.CANOPY,
                                OptionalInt.empty(),
                                OptionalDouble.of(1000),
                                tending));
    }

    private static Optional<Warning> crowded(MadeTrace trace) {
        return trace.advice().warnings().stream()
                .filter(w -> w.kind() == Warning.Kind.TOO_CROWDED)
                .findFirst();
    }

    /** 13 plants have 153.8 cm2 each, 14 have 142.9. */
    @ParameterizedTest
    @CsvSource({"13, false", "14, true", "0, false"})
    void less_than_a_third_of_their_room_is_told(int plants, boolean told) {
        Optional<Warning> warning = crowded(standing(plants, Tending.NONE));
        assertEquals(told, warning.isPresent());
        warning.ifPresent(
                w -> {
                    assertEquals(2000.0 / 14, w.measure().value(), 1e-9);
                    assertEquals(150, w.measure().limit(), 1e-9);
                    assertEquals(List.of(Cure.of(Cure.Kind.FEWER_PLANTS)), w.cures());
                });
    }

    @Test
    void it_is_what_to_change_first_beside_what_takes_little() {
        Advice advice = standing(200, Tending.NONE).with(TraySeries.EC, h -> 4).advice();
        assertEquals(Warning.Kind.TOO_CROWDED, advice.verdict().first().orElseThrow().kind());
    }

    @Test
    void what_gets_ready_all_the_same_is_as_it_was_meant() {
        assertTrue(
                crowded(
                                standing(200, Tending.NONE)
                                        .wanting(100)
                                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 300))
                        .isPresent(),
                "cut at 399 g of the 1000 g that are waited for");
        assertTrue(
                crowded(
                                standing(200, Tending.NONE)
                                        .with(TraySeries.FRESH_MASS, h -> 960)
                                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 300))
                        .isEmpty());
    }

    @Test
    void plants_that_are_thinned_or_spaced_out_later_are_not_crowded() {
        assertTrue(
                crowded(
                                standing(
                                        200,
                                        new Tending(
                                                List.of(new Tending.Thinning(7, 13)),
                                                Optional.empty())))
                        .isEmpty());
        assertTrue(
                crowded(
                                standing(
                                        14,
                                        new Tending(
                                                List.of(new Tending.Spacing(7, 0.22)),
                                                Optional.empty())))
                        .isEmpty());
    }

    @Test
    void no_days_are_promised_to_a_crowd() {
        Trace trace = standing(200, Tending.NONE).trace();
        assertTrue(
                CropWords.unripe(trace, trace.trays().get(0))
                        .toString()
                        .contains("never will be, so crowded"));
        Trace sound = standing(4, Tending.NONE).trace();
        assertTrue(CropWords.unripe(sound, sound.trays().get(0)).toString().contains("days more"));
    }
}
