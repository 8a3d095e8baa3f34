package tideless.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import tideless.crop.Transplant;
import tideless.scenario.Crops;

/** Lettuce: 2 cm of root a day at full warmth, 30 cm at most, an eighth of a day's on the first. */
class RootReachTest {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private static RootReach reach(double gapM, double ageDays, Transplant as) {
        return RootReach.of(
                new Planting.OfCrop(
                        Crops.named("lettuce"),
                        1,
                        0.05,
                        ageDays,
                        as,
                        Planting.ThirstModel.CANOPY,
                        OptionalInt.empty(),
                        NONE,
                        Tending.NONE),
                gapM);
    }

    private static Transplant roots(double lengthM) {
        return new Transplant(NONE, NONE, NONE, NONE, OptionalDouble.of(lengthM), false);
    }

    @Test
    void roots_that_dip_three_millimetres_are_ready_and_shorter_ones_are_not() {
        assertEquals(OptionalInt.of(0), reach(0.050, 14, roots(0.053)).days());
        RootReach shorter = reach(0.050, 14, roots(0.0529));
        assertEquals(OptionalInt.of(1), shorter.days());
        assertEquals(0.0729, shorter.rootM(), 1e-12);
        assertEquals(0.050, shorter.gapM());
    }

    /** Out of a plug by an eighth, 3/8, 5/8 and 7/8 of a day's growth: 40 mm in four days. */
    @Test
    void roots_that_end_in_their_plug_leave_it_over_four_days() {
        assertEquals(OptionalInt.of(4), reach(0.0369, 14, Transplant.AS_RAISED).days());
        RootReach five = reach(0.0371, 14, Transplant.AS_RAISED);
        assertEquals(OptionalInt.of(5), five.days());
        assertEquals(0.060, five.rootM(), 1e-12);
    }

    @Test
    void a_seed_has_to_come_up_first() {
        int seed = reach(0.03, 0, Transplant.AS_RAISED).days().orElseThrow();
        int seedling = reach(0.03, 14, Transplant.AS_RAISED).days().orElseThrow();
        assertTrue(seed >= seedling + 3, seed + " against " + seedling);
    }

    @Test
    void a_wet_cup_is_ready_at_once_and_a_level_below_the_longest_roots_never() {
        assertEquals(OptionalInt.of(0), reach(-0.005, 14, Transplant.AS_RAISED).days());
        assertEquals(OptionalInt.empty(), reach(0.2971, 14, roots(0.05)).days());
        assertTrue(reach(0.2969, 14, roots(0.05)).days().isPresent());
    }
}
