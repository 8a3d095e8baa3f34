package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class DemandDoubtTest {
    private static final DemandDoubt USUAL = new DemandDoubt(0.25, 0.13, 0.5, 0.20);

    @Test
    void without_doubt_every_day_is_the_forecast() {
        assertThat(new DemandDoubt(0, 0, 0, 0).factors(10, 0.9, new SplittableRandom(1)))
                .containsOnly(1.0);
    }

    @Test
    void a_stand_one_deviation_up_drinks_so_much_more_all_along() {
        // Standard normal: 0.841345 lies at one standard deviation.
        double[] factors =
                new DemandDoubt(0.25, 0, 0.5, 0)
                        .factors(30, 0.8413447460685429, new SplittableRandom(1));
        for (double factor : factors) {
            assertThat(factor).isCloseTo(Math.exp(0.25), within(1e-9));
        }
    }

    @Test
    void weeks_spread_and_remember_as_stated_and_days_forget() {
        SplittableRandom random = new SplittableRandom(3);
        DemandDoubt weeks = new DemandDoubt(0, 0.13, 0.5, 0);
        int n = 20_000;
        double[] all = weeks.factors(7 * n, 0.5, random);
        double sum = 0;
        double squares = 0;
        double beside = 0;
        double mean = 0;
        double[] log = new double[n];
        for (int w = 0; w < n; w++) {
            log[w] = Math.log(all[7 * w]) + 0.5 * 0.13 * 0.13;
            mean += all[7 * w] / n;
            assertThat(all[7 * w + 6]).isEqualTo(all[7 * w]);
            sum += log[w];
            squares += log[w] * log[w];
            beside += w > 0 ? log[w] * log[w - 1] : 0;
        }
        // Standard errors of 20,000 weeks: 0.001 of the mean, 0.7 % of the deviation, 0.01 of r.
        assertThat(sum / n).isCloseTo(0, within(0.005));
        assertThat(Math.sqrt(squares / n)).isCloseTo(0.13, within(0.003));
        assertThat(beside / squares).isCloseTo(0.5, within(0.03));
        assertThat(mean).isCloseTo(1, within(0.005));
    }

    @Test
    void of_weeks_after_one_that_is_known_what_is_new_is_drawn() {
        SplittableRandom random = new SplittableRandom(5);
        DemandDoubt weeks = new DemandDoubt(0, 0.13, 0.5, 0);
        int n = 20_000;
        double[] square = new double[6];
        double mean = 0;
        for (int run = 0; run < n; run++) {
            double[] factors = weeks.factorsAfter(42, 0.5, random, 2);
            for (int week = 0; week < 6; week++) {
                double of = Math.log(factors[7 * week]);
                square[week] += of * of / n;
            }
            mean += factors[41] / n;
        }
        // Known up to week 2; then 1 - 0.5^2k of the variance is new. Mean 1.
        for (int week = 0; week < 6; week++) {
            double old = week <= 2 ? 1 : Math.pow(0.25, week - 2);
            double expected = 0.13 * 0.13 * (1 - old);
            double shift = 0.5 * expected;
            // 3 % is thrice the standard error of a variance of 20,000.
            assertThat(square[week])
                    .isCloseTo(expected + shift * shift, within(0.03 * expected + 1e-12));
        }
        assertThat(mean).isCloseTo(1, within(0.004));
    }

    @Test
    void a_season_of_days_and_weeks_keeps_its_litres_on_the_whole() {
        SplittableRandom random = new SplittableRandom(9);
        double sum = 0;
        for (int run = 0; run < 2000; run++) {
            for (double factor : USUAL.factors(70, 0.5, random)) {
                sum += factor;
            }
        }
        assertThat(sum / (2000 * 70)).isCloseTo(1, within(0.005));
    }

    @Test
    void a_memory_of_one_is_refused() {
        assertThatThrownBy(() -> new DemandDoubt(0.2, 0.1, 1, 0.1)).hasMessageContaining("[0, 1)");
        assertThatThrownBy(() -> new DemandDoubt(-0.2, 0.1, 0, 0.1))
                .hasMessageContaining("at least 0");
    }
}
