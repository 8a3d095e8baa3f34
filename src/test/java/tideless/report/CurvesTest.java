package tideless.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import org.junit.jupiter.api.Test;
import tideless.sim.Series;

class CurvesTest {
    private static Curves.Curve hourly(double... values) {
        return Curves.Curve.hourly(Series.of(values), 1);
    }

    @Test
    void a_straight_line_needs_its_two_ends() {
        Curves.Curve thin = hourly(0, 1, 2, 3, 4).thinned(1e-6);
        assertArrayEquals(new double[] {0, 4}, thin.value());
        assertArrayEquals(new double[] {1 / 24.0, 5 / 24.0}, thin.day());
    }

    @Test
    void a_jump_keeps_both_its_ends() {
        assertArrayEquals(new double[] {0, 0, 9, 9}, hourly(0, 0, 0, 9, 9, 9).thinned(0.1).value());
    }

    @Test
    void a_gap_stays_a_gap() {
        assertArrayEquals(
                new double[] {1, 1, Double.NaN, Double.NaN, 2, 2},
                hourly(1, 1, 1, Double.NaN, Double.NaN, 2, 2, 2).thinned(0.1).value());
        assertArrayEquals(
                new double[] {Double.NaN, 3, Double.NaN},
                hourly(Double.NaN, 3, Double.NaN).thinned(0.1).value());
    }

    @Test
    void what_is_no_number_or_out_of_reach_is_a_gap() {
        double[] values = {1, Double.POSITIVE_INFINITY, 5, Double.NaN, 2};
        assertArrayEquals(new double[] {1, Double.NaN, 5, Double.NaN, 2}, hourly(values).value());
        assertArrayEquals(
                new double[] {10, Double.NaN, Double.NaN, Double.NaN, 20},
                Curves.Curve.hourly(Series.of(values), 10, 40).value());
    }
}
