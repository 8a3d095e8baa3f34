package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LoggedWeeksTest {
    private static final double DRIFT = 0.064 * 0.064; // variance of a week's drift
    private static final double ALONE = 0.09 * 0.09;

    @Test
    void weeks_long_ago_are_taken_together() {
        int[] spans = new int[9];
        for (int weeks = 1; weeks < spans.length; weeks++) {
            spans[weeks] = LoggedWeeks.of(0, weeks - 1).spans();
        }
        // 1, 1, 2, 4, 8, ... from the last week back.
        assertThat(spans).containsExactly(0, 1, 2, 3, 3, 4, 4, 4, 4);
    }

    private static double covariance(LoggedWeeks weeks, int oneDay, int otherDay) {
        double sum = 0;
        for (int k = 0; k < weeks.spans(); k++) {
            double[] deviates = new double[weeks.spans()];
            deviates[k] = 1;
            double[] byDay = weeks.factors(deviates);
            sum += Math.log(byDay[oneDay]) * Math.log(byDay[otherDay]);
        }
        return sum;
    }

    @Test
    void what_was_longer_ago_tells_less_of_the_end() {
        LoggedWeeks weeks = LoggedWeeks.of(0, 3); // two, one, one
        assertThat(covariance(weeks, 27, 27)).isCloseTo(ALONE, within(1e-12));
        assertThat(covariance(weeks, 20, 20)).isCloseTo(ALONE + DRIFT, within(1e-12));
        // The mean of two weeks, two and three back, which share two weeks of drift.
        assertThat(covariance(weeks, 0, 0))
                .isCloseTo(ALONE / 2 + (2 + 3 + 2 * 2) * DRIFT / 4, within(1e-12));
        assertThat(covariance(weeks, 0, 20)).isCloseTo(DRIFT, within(1e-12));
        assertThat(covariance(weeks, 0, 27)).isCloseTo(0, within(1e-12));
    }

    @Test
    void days_before_the_log_are_left_alone_and_its_last_week_is_whole() {
        double[] byDay = LoggedWeeks.of(2, 4).factors(new double[] {1, 1, 1});
        assertThat(byDay).hasSize(35);
        assertThat(byDay[13]).isEqualTo(1);
        assertThat(byDay[14]).isGreaterThan(1);
        assertThat(byDay[34]).isEqualTo(byDay[28]);
    }
}
