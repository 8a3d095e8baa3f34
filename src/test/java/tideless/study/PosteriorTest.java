package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** Held against Bayes' rule where it has a closed form, and against plain sampling elsewhere. */
class PosteriorTest {
    private static final double[] FIRST = {1, 0};
    private static final double[] SECOND = {0, 1};

    /** With a function that is called again and again, from so many starts. */
    private static Posterior found(
            Function<double[], double[]> forecast,
            double[] readings,
            double[] deviations,
            int unknowns,
            int starts) {
        try {
            return Posterior.of(
                    points -> Arrays.stream(points).map(forecast).toArray(double[][]::new),
                    readings,
                    deviations,
                    Posterior.starts(unknowns, starts),
                    1e-6);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    private static double[] same(double value, int n) {
        double[] all = new double[n];
        Arrays.fill(all, value);
        return all;
    }

    /**
     * One unknown read n times: with errors so small that t and normal agree near the mode, the
     * mode is the mean of the readings drawn to the prior by n w / (n w + s^2), w = (v + 1) / v.
     */
    @Test
    void readings_that_agree_outweigh_the_prior_by_their_number() {
        double s = 0.5;
        Posterior found = found(theta -> same(theta[0], 8), same(0.4, 8), same(s, 8), 1, 1);
        // All residuals are equal, r = (0.4 - mode) / s; weight (5) / (4 + r^2): a fixed point.
        double mode = found.mode()[0];
        double r = (0.4 - mode) / s;
        double weight = 5 / (4 + r * r);
        double precision = 8 * weight / (s * s);
        assertThat(mode).isCloseTo(0.4 * precision / (precision + 1), within(1e-5));
        // The doubt left is of the density's own bend, -(ln p)'' = 5 (4 - r^2) / (4 + r^2)^2.
        double bend = 8 * 5 * (4 - r * r) / ((4 + r * r) * (4 + r * r)) / (s * s);
        assertThat(found.deviation(0)).isCloseTo(Math.sqrt(1 / (1 + bend)), within(1e-4));
    }

    /** Three readings of a sum of something looked for and something taken as known. */
    @Test
    void what_was_taken_as_known_moves_what_was_found_and_hides_what_more_there_is() {
        Posterior found = found(theta -> same(theta[0], 3), same(0, 3), same(0.5, 3), 1, 1);
        double[] slope = same(1 / 0.5, 3);
        // Bend 1.25 at residuals of 0: precision 1 + 3 x 1.25 x 4 = 16, pull 15.
        assertThat(found.shift(slope)[0]).isCloseTo(-15.0 / 16, within(1e-6));
        // By the mean bend of normal errors, 0.79: 9.48 of information, of which the unknown of
        // the same slope leaves 9.48 - 9.48^2 / 10.48.
        double information = 9.48 - 9.48 * 9.48 / 10.48;
        assertThat(found.resolution(slope)).isCloseTo(1 / Math.sqrt(information), within(1e-6));
        assertThat(found.resolution(same(0, 3))).isInfinite();
    }

    @Test
    void no_reading_leaves_what_was_believed() {
        Posterior found = found(theta -> new double[0], new double[0], new double[0], 2, 3);
        assertThat(found.mode()).containsExactly(new double[] {0, 0}, within(1e-9));
        assertThat(found.deviation(0)).isCloseTo(1, within(1e-9));
        assertThat(found.correlation(FIRST, SECOND)).isCloseTo(0, within(1e-9));
    }

    @Test
    void one_wild_reading_hardly_moves_the_rest() {
        double[] readings = same(1, 10);
        Posterior sound = found(theta -> same(theta[0], 10), readings, same(0.3, 10), 1, 1);
        double[] spoilt = readings.clone();
        spoilt[3] = 40; // a slip of the pen, 130 deviations off
        Posterior shaken = found(theta -> same(theta[0], 10), spoilt, same(0.3, 10), 1, 1);
        // Plain least squares would move by 3.9; t moves by less than a tenth of the doubt left.
        assertThat(shaken.mode()[0]).isCloseTo(sound.mode()[0], within(0.1 * sound.deviation(0)));
        assertThat(shaken.weight()[3]).isLessThan(0.001);
    }

    @Test
    void a_sum_alone_does_not_tell_its_parts_apart() {
        Posterior found =
                found(theta -> same(theta[0] + theta[1], 5), same(1, 5), same(0.05, 5), 2, 1);
        assertThat(found.mode()[0]).isCloseTo(found.mode()[1], within(1e-6));
        assertThat(found.correlation(FIRST, SECOND)).isLessThan(-0.98);
        assertThat(found.deviation(0)).isGreaterThan(0.7); // sqrt(1/2): half of it stays unknown
        assertThat(found.deviationOf(new double[] {1, 1})).isLessThan(0.05);
    }

    @Test
    void what_a_further_reading_would_leave_is_what_it_leaves() {
        Posterior before =
                found(theta -> same(theta[0] + theta[1], 5), same(0, 5), same(0.5, 5), 2, 1);
        double foretold = before.shareLeftAfter(new double[] {1, 0}, new double[] {0, 1 / 0.2});
        Posterior after =
                found(
                        theta -> {
                            double[] all = same(theta[0] + theta[1], 6);
                            all[5] = theta[1];
                            return all;
                        },
                        same(0, 6),
                        new double[] {0.5, 0.5, 0.5, 0.5, 0.5, 0.2 / Math.sqrt(1.0 / 1.25)},
                        2,
                        1);
        // A reading that fits weighs 1.25 under t with four degrees; the deviation undoes it.
        assertThat(after.deviation(0) / before.deviation(0)).isCloseTo(foretold, within(1e-3));
    }

    @Test
    void several_starts_find_the_deeper_of_two_valleys() {
        // Both theta = 1.5 and theta = -0.5 give the reading; the prior prefers the second.
        Posterior found =
                found(
                        theta -> same((theta[0] - 0.5) * (theta[0] - 0.5), 3),
                        same(1, 3),
                        same(0.05, 3),
                        1,
                        9);
        assertThat(found.mode()[0]).isCloseTo(-0.5, within(0.02));
    }

    /** A bent forecast: Laplace's mean and deviation against importance sampling of the density. */
    @Test
    void laplace_agrees_with_sampling_where_a_forecast_is_gently_bent() {
        double[] readings = {Math.exp(0.25), Math.exp(0.3), 1.2};
        double[] deviations = {0.1, 0.1, 0.15};
        Posterior found =
                found(theta -> same(Math.exp(0.25 * theta[0]), 3), readings, deviations, 1, 3);
        Random random = new Random(11);
        double weights = 0;
        double first = 0;
        double second = 0;
        for (int n = 0; n < 200_000; n++) {
            double theta = found.mode()[0] + 1.5 * found.deviation(0) * random.nextGaussian();
            double z = (theta - found.mode()[0]) / (1.5 * found.deviation(0));
            double logDensity = -0.5 * theta * theta;
            for (int i = 0; i < 3; i++) {
                double r = (readings[i] - Math.exp(0.25 * theta)) / deviations[i];
                logDensity -= 2.5 * Math.log1p(r * r / 4);
            }
            double w = Math.exp(logDensity + 0.5 * z * z);
            weights += w;
            first += w * theta;
            second += w * theta * theta;
        }
        double mean = first / weights;
        double deviation = Math.sqrt(second / weights - mean * mean);
        // Laplace puts the mode for the mean, which in a density bent as this one lie 0.15 of a
        // deviation apart; a fifth of the doubt left is nothing a grower could notice.
        assertThat(found.mode()[0]).isCloseTo(mean, within(0.2 * deviation));
        // The tails of three t-distributed readings are longer than Laplace's normal: 0.12
        // narrower.
        assertThat(found.deviation(0)).isCloseTo(deviation, within(0.15 * deviation));
    }

    @Test
    void draws_have_the_covariance() {
        Posterior found =
                found(theta -> same(theta[0] + theta[1], 5), same(1, 5), same(0.5, 5), 2, 1);
        Random random = new Random(5);
        double product = 0;
        int n = 100_000;
        for (int i = 0; i < n; i++) {
            double[] theta =
                    found.draw(new double[] {random.nextGaussian(), random.nextGaussian()});
            product += (theta[0] - found.mode()[0]) * (theta[1] - found.mode()[1]);
        }
        assertThat(product / n).isCloseTo(found.covariance()[0][1], within(0.01));
    }

    @Test
    void a_deviation_of_nothing_is_refused() {
        assertThatThrownBy(() -> found(t -> new double[] {0}, same(1, 1), same(0, 1), 1, 1))
                .hasMessageContaining("above 0");
    }

    /** Two that drink from one vessel, of which a sum is read. */
    private static Posterior ofSum() throws InterruptedException {
        return Posterior.of(
                points ->
                        Arrays.stream(points)
                                .map(p -> new double[] {Math.exp(p[0]) + Math.exp(p[1])})
                                .toArray(double[][]::new),
                new double[] {2},
                new double[] {0.02},
                Posterior.starts(2, 1),
                1e-4);
    }

    @Test
    void a_draw_that_is_bent_drinks_what_was_read_and_a_straight_one_more() throws Exception {
        Posterior found = ofSum();
        Random random = new Random(8);
        double straight = 0;
        double bent = 0;
        double apart = 0;
        int draws = 4000;
        for (int n = 0; n < draws; n++) {
            double[] normal = {random.nextGaussian(), random.nextGaussian()};
            double[] drawn = found.draw(normal);
            straight += (Math.exp(drawn[0]) + Math.exp(drawn[1])) / draws;
            double[] at = drawn;
            for (int step = 0; step < 8; step++) {
                double sum = Math.exp(at[0]) + Math.exp(at[1]);
                at = found.bent(drawn, at, new double[] {(2 - sum) / 0.02});
            }
            bent += (Math.exp(at[0]) + Math.exp(at[1])) / draws;
            apart += (at[0] - at[1]) * (at[0] - at[1]) / draws;
        }
        // Each by itself has a variance of a half left: its mean lies a quarter above its median.
        assertThat(straight).isCloseTo(2 * Math.exp(0.25), within(0.05));
        assertThat(bent).isCloseTo(2, within(0.01));
        // What the readings say nothing of, their difference, keeps the doubt before: two.
        assertThat(apart).isCloseTo(2, within(0.2));
    }

    @Test
    void something_more_is_found_with_what_it_betters() throws InterruptedException {
        // A level without a slope of its own: of six readings the last three lie two higher.
        double[] read = {0, 0, 0, 2, 2, 2};
        double[] one = {1, 1, 1, 1, 1, 1};
        Posterior found =
                Posterior.of(
                        points ->
                                Arrays.stream(points)
                                        .map(p -> Arrays.stream(one).map(o -> p[0]).toArray())
                                        .toArray(double[][]::new),
                        read,
                        one,
                        Posterior.starts(1, 1),
                        1e-6);
        Posterior.More late = found.more(new double[] {0, 0, 0, 1, 1, 1});
        Posterior.More early = found.more(new double[] {0, 1, 1, 1, 1, 1});
        assertThat(late.amount()).isCloseTo(2, within(1e-6));
        // With it all is explained: nothing is left of what the density lost.
        assertThat(late.better()).isCloseTo(found.minusLogDensity(), within(1e-6));
        assertThat(early.better()).isBetween(0.0, 0.8 * late.better());
        assertThat(found.more(new double[6]).better()).isCloseTo(0, within(1e-3));
    }

    /**
     * Two that are read each by itself and together, bent; and how many forecasts were asked for.
     */
    private static final class Bent implements Posterior.Forecasts {
        private int asked;

        @Override
        public double[][] of(double[][] points) {
            asked += points.length;
            return Arrays.stream(points)
                    .map(p -> new double[] {Math.exp(p[0]), Math.exp(0.5 * p[1]), p[0] + 2 * p[1]})
                    .toArray(double[][]::new);
        }

        Posterior found(boolean isRough, Posterior.Start start) throws InterruptedException {
            double[] read = {Math.exp(0.8), Math.exp(-0.3), 0.8 - 1.2};
            double[] off = {0.2, 0.1, 0.3};
            return isRough
                    ? Posterior.roughly(this, read, off, List.of(start), 1e-6)
                    : Posterior.of(this, read, off, List.of(start), 1e-6);
        }
    }

    /** As of some other place, five times too steep. */
    private static Posterior.Start misled() {
        double[][] slope = {{5, 0}, {0, 2.5}, {5, 10}};
        return new Posterior.Start(new double[2], Optional.of(slope));
    }

    @Test
    void slopes_that_were_known_at_the_start_are_those_of_the_top_in_the_end() throws Exception {
        Posterior alone = new Bent().found(false, Posterior.Start.at(new double[2]));
        Posterior misled = new Bent().found(false, misled());
        assertThat(misled.mode()).containsExactly(alone.mode(), within(1e-4));
        for (int i = 0; i < 3; i++) {
            assertThat(misled.jacobian()[i]).containsExactly(alone.jacobian()[i], within(1e-2));
        }
        assertThat(misled.deviation(0)).isCloseTo(alone.deviation(0), within(1e-3));
        // In readings' own units: those of the first at the top are exp(theta).
        assertThat(alone.slope(new double[] {0.2, 0.1, 0.3})[0][0])
                .isCloseTo(Math.exp(alone.mode()[0]), within(0.01));
    }

    @Test
    void slopes_that_are_led_along_reach_the_top_with_fewer_forecasts() throws Exception {
        Bent whole = new Bent();
        Posterior exact = whole.found(false, misled());
        Bent rough = new Bent();
        Posterior about = rough.found(true, misled());
        // By slopes that are not the top's own it ends a hair beside it: a twentieth of a
        // deviation.
        assertThat(about.mode()).containsExactly(exact.mode(), within(0.05));
        assertThat(about.minusLogDensity()).isCloseTo(exact.minusLogDensity(), within(0.05));
        assertThat(rough.asked).isLessThan(whole.asked);
    }
}
