package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Against the platform's own functions, which are good to a unit in the last place. */
class ElementaryTest {
    private static final int TRIED = 200_000;

    private static double worst(
            DoubleUnaryOperator ours, DoubleUnaryOperator theirs, double from, double to) {
        SplittableRandom random = new SplittableRandom(20261127);
        double worst = 0;
        for (int i = 0; i < TRIED; i++) {
            double x = from + (to - from) * random.nextDouble();
            double right = theirs.applyAsDouble(x);
            worst = Math.max(worst, Math.abs(ours.applyAsDouble(x) - right) / Math.ulp(right));
        }
        return worst;
    }

    @Test
    void exponentials_are_off_by_two_units_in_the_last_place_at_most() {
        assertTrue(worst(Elementary::exp, StrictMath::exp, -1, 1) <= 2);
        assertTrue(worst(Elementary::exp, StrictMath::exp, -60, 60) <= 2);
        assertTrue(worst(Elementary::exp, StrictMath::exp, -699, 699) <= 2);
    }

    @Test
    void logarithms_are_off_by_two_units_in_the_last_place_at_most_near_1_too() {
        assertTrue(worst(Elementary::log, StrictMath::log, 1 - 1e-3, 1 + 1e-3) <= 2);
        assertTrue(worst(Elementary::log, StrictMath::log, 0.5, 2) <= 2);
        assertTrue(worst(Elementary::log, StrictMath::log, 0, 1e4) <= 2);
        DoubleUnaryOperator ofPower = x -> Elementary.log(StrictMath.exp(x));
        assertTrue(worst(ofPower, x -> StrictMath.log(StrictMath.exp(x)), -700, 700) <= 2);
    }

    @Test
    void exponentials_less_1_keep_their_digits_near_0() {
        assertTrue(worst(Elementary::expm1, StrictMath::expm1, -1e-6, 1e-6) <= 2);
        assertTrue(worst(Elementary::expm1, StrictMath::expm1, -0.02, 0.02) <= 2);
        // At 0.02 the power of the table is 1.02 and its last digit a fiftieth of the answer's.
        assertTrue(worst(Elementary::expm1, StrictMath::expm1, -0.2, 0.2) <= 64);
        assertTrue(worst(Elementary::expm1, StrictMath::expm1, 0.2, 60) <= 8);
    }

    @Test
    void roots_and_powers_are_good_to_a_hundredth_of_a_millionth_of_a_millionth() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < TRIED; i++) {
            double x = StrictMath.exp(20 * (2 * random.nextDouble() - 1));
            assertEquals(StrictMath.cbrt(x), Elementary.cbrt(x), 2e-15 * StrictMath.cbrt(x));
            double root = StrictMath.pow(x, 0.9);
            assertEquals(root, Elementary.pow(x, 0.9), 1e-14 * root);
        }
        assertEquals(-2, Elementary.cbrt(-8), 1e-15);
        assertEquals(0, Elementary.cbrt(0));
        assertEquals(0, Elementary.pow(0, 0.9));
    }

    @Test
    void what_lies_far_out_or_is_no_number_comes_out_as_it_should() {
        assertEquals(0, Elementary.exp(Double.NEGATIVE_INFINITY));
        assertEquals(0, Elementary.exp(-800));
        assertEquals(Double.POSITIVE_INFINITY, Elementary.exp(800));
        assertEquals(Double.NaN, Elementary.exp(Double.NaN));
        assertEquals(StrictMath.exp(-720), Elementary.exp(-720), Double.MIN_VALUE);
        assertEquals(-1, Elementary.expm1(-800));
        assertEquals(Double.NEGATIVE_INFINITY, Elementary.log(0));
        assertEquals(Double.NaN, Elementary.log(-1));
        assertEquals(Double.NaN, Elementary.log(Double.NaN));
        assertEquals(Double.POSITIVE_INFINITY, Elementary.log(Double.POSITIVE_INFINITY));
        assertEquals(StrictMath.log(1e-310), Elementary.log(1e-310), 1e-12);
        assertEquals(1, Elementary.exp(0));
        assertEquals(0, Elementary.log(1));
        assertEquals(0.0, Elementary.expm1(0));
        assertEquals(-0.0, Elementary.expm1(-0.0));
    }
}
