package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.LogNormalDistribution;
import org.junit.jupiter.api.Test;

class BandTest {
    @Test
    void the_quantiles_of_a_lognormal_come_out_and_come_closer() {
        // Exact: exp(sd z), z(0.1) = -1.28155.
        LogNormalDistribution exact = new LogNormalDistribution(0, 0.25);
        double before = Double.POSITIVE_INFINITY;
        for (int n : new int[] {64, 1024, 16384}) {
            double[] values = new double[n];
            double[][] sample = UnitSample.of(n, 1, 7);
            for (int i = 0; i < n; i++) {
                values[i] = exact.inverseCumulativeProbability(sample[i][0]);
            }
            Band band = Band.of(values);
            double off =
                    Math.abs(band.low() - exact.inverseCumulativeProbability(0.1))
                            + Math.abs(band.middle() - 1)
                            + Math.abs(band.high() - exact.inverseCumulativeProbability(0.9));
            assertThat(off).isLessThan(before / 4); // sixteen times the points, evenly spread
            before = off;
        }
        assertThat(before).isLessThan(2e-4);
    }

    @Test
    void what_never_comes_about_counts_as_later_than_all_else() {
        double never = Double.POSITIVE_INFINITY;
        Band band = Band.of(new double[] {never, 3, 1, 2, never, 4, 5, never, never, never});
        assertThat(band.neverFrac()).isEqualTo(0.5);
        assertThat(band.low()).isCloseTo(1.5, within(1e-12)); // place 0.1 * 10 - 0.5
        assertThat(band.middle()).isEqualTo(never);
        assertThat(band.high()).isEqualTo(never);
    }

    @Test
    void one_member_is_its_own_band() {
        assertThat(Band.of(new double[] {7})).isEqualTo(new Band(7, 7, 7, 0, 1));
    }

    @Test
    void no_member_and_no_number_are_refused() {
        assertThatThrownBy(() -> Band.of(new double[0])).hasMessageContaining("a member");
        assertThatThrownBy(() -> Band.of(new double[] {1, Double.NaN}))
                .hasMessageContaining("not a number");
    }

    @Test
    void a_larger_sample_begins_with_the_smaller_and_lies_inside_the_cube() {
        double[][] small = UnitSample.of(10, 5, 3);
        double[][] large = UnitSample.of(1000, 5, 3);
        assertThat(java.util.Arrays.copyOf(large, 10)).isDeepEqualTo(small);
        for (double[] point : large) {
            for (double u : point) {
                assertThat(u).isStrictlyBetween(0.0, 1.0);
            }
        }
        assertThat(UnitSample.of(10, 5, 4)).isNotEqualTo(small);
    }
}
