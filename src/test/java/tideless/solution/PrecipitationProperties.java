package tideless.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** Laws of what falls out. */
class PrecipitationProperties {
    @Property(tries = 60)
    void whole_formula_units_fall_nothing_goes_below_zero_and_a_second_look_finds_nothing(
            @ForAll @DoubleRange(min = 0, max = 40) double ca,
            @ForAll @DoubleRange(min = 0, max = 20) double p,
            @ForAll @DoubleRange(min = 0, max = 60) double so4,
            @ForAll @DoubleRange(min = 0, max = 40) double k,
            @ForAll @DoubleRange(min = 0, max = 30) double no3,
            @ForAll @DoubleRange(min = 300, max = 20000) double co2Ppm) {
        double[] before =
                Composition.of(
                                Map.of(
                                        Component.CA, ca,
                                        Component.P, p,
                                        Component.SO4, so4,
                                        Component.K, k,
                                        Component.NO3, no3))
                        .toArray();
        double[] after = before.clone();
        double[] fallen = new double[3];
        new Precipitation().settle(after, 25, co2Ppm, fallen);
        for (double value : after) {
            assertTrue(value >= 0);
        }
        assertEquals(
                ca - fallen[0] - fallen[1] - fallen[2],
                after[Component.CA.ordinal()],
                1e-12 * (1 + ca));
        assertEquals(p - fallen[1], after[Component.P.ordinal()], 1e-12 * (1 + p));
        assertEquals(so4 - fallen[2], after[Component.SO4.ordinal()], 1e-12 * (1 + so4));
        assertEquals(k, after[Component.K.ordinal()]);
        double[] again = new double[3];
        assertFalse(new Precipitation().settle(after.clone(), 25, co2Ppm, again));
    }
}
