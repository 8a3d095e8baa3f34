package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Rigs so simple that the size is worked out by hand. */
class LeakLimitTest {
    private static final double WANTED = 3.5;

    /** Readings whose error is 1, so many of which see a leak, and its thirst some of them. */
    private record Straight(int readings, double perLitre, double perThirst, double bend)
            implements LeakLimit.Rig {
        @Override
        public double[][] without(double[][] away) {
            return Arrays.stream(away).map(at -> foretold(at[0], 0)).toArray(double[][]::new);
        }

        @Override
        public double[] leaking(double litresPerDay) {
            return foretold(0, litresPerDay);
        }

        /** That at nothing away, as it would be known from a fit. */
        @Override
        public double[][] slope() {
            double[][] slope = new double[readings][1];
            for (int i = 0; i < readings; i += 2) {
                slope[i][0] = -perThirst;
            }
            return slope;
        }

        /** Half of the readings do not see the plants. */
        private double[] foretold(double thirst, double litres) {
            double[] read = new double[readings];
            for (int i = 0; i < readings; i++) {
                double drunk = i % 2 == 0 ? perThirst * (Math.exp(bend * thirst) - 1) / bend : 0;
                read[i] = -perLitre * litres - drunk;
            }
            return read;
        }

        @Override
        public double[] deviations(double[] foretold) {
            double[] one = new double[foretold.length];
            Arrays.fill(one, 1);
            return one;
        }

        double found(double guess) {
            try {
                return LeakLimit.litresPerDay(this, 1, guess, WANTED);
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
        }
    }

    /**
     * 800 readings that each see 0.1 of a deviation by the litre, of which nothing is drunk: a mean
     * bend of 0.786 each makes 6.29 of information, and 3.5 / sqrt(6.29) of it the size.
     */
    @Test
    void it_is_what_shows_by_so_many_standard_deviations() {
        double size = WANTED / Math.sqrt(800 * 0.1 * 0.1 * 0.786);
        Straight rig = new Straight(800, 0.1, 0, 1e-6);
        assertThat(rig.found(size)).isCloseTo(size, within(0.01 * size));
        assertThat(rig.found(2 * size)).isCloseTo(size, within(0.01 * size));
        assertThat(rig.found(0.5 * size)).isCloseTo(size, within(0.01 * size));
    }

    /** Plants of little doubt hide little; of great doubt all that the readings of them tell. */
    @Test
    void what_plants_may_have_drunk_hides_a_leak() {
        double alone = WANTED / Math.sqrt(800 * 0.1 * 0.1 * 0.786);
        double hidden = new Straight(800, 0.1, 100, 1e-6).found(alone);
        assertThat(hidden).isCloseTo(alone * Math.sqrt(2), within(0.02 * alone));
    }

    /** Thirst that may grow by more than in proportion hides more than slopes at none say. */
    @Test
    void plants_that_may_be_the_thirstier_the_more_hide_more() {
        double straight = new Straight(8, 1, 0.5, 1e-6).found(2);
        double bent = new Straight(8, 1, 0.5, 0.5).found(2);
        assertThat(bent).isGreaterThan(1.05 * straight);
    }

    @Test
    void where_readings_say_nothing_there_is_no_size() {
        assertThat(new Straight(8, 1, 1, 1).found(Double.POSITIVE_INFINITY)).isInfinite();
    }
}
