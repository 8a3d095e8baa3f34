package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LoggedWeeksTest {
    private static final double WEEK = 0.13 * 0.13; // variance of a week's thirst

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
            double[] middle = weeks.factors(new double[weeks.spans()]);
            sum +=
                    Math.log(byDay[oneDay] / middle[oneDay])
                            * Math.log(byDay[otherDay] / middle[otherDay]);
        }
        return sum;
    }

    @Test
    void weeks_remember_each_other_by_half() {
        LoggedWeeks weeks = LoggedWeeks.of(0, 3); // two, one, one
        assertThat(covariance(weeks, 27, 27)).isCloseTo(WEEK, within(1e-12));
        assertThat(covariance(weeks, 20, 20)).isCloseTo(WEEK, within(1e-12));
        assertThat(covariance(weeks, 20, 27)).isCloseTo(WEEK / 2, within(1e-12));
        // The mean of two weeks, two and three back, correlated by a half.
        assertThat(covariance(weeks, 0, 0)).isCloseTo((2 + 2 * 0.5) / 4 * WEEK, within(1e-12));
        assertThat(covariance(weeks, 0, 27)).isCloseTo((0.25 + 0.125) / 2 * WEEK, within(1e-12));
    }

    @Test
    void weeks_after_the_log_remember_its_last_and_weeks_have_a_mean_of_one() {
        LoggedWeeks weeks = LoggedWeeks.of(0, 1);
        double last = deviation(weeks, 13);
        assertThat(deviation(weeks, 14)).isCloseTo(last / 2, within(1e-12));
        assertThat(deviation(weeks, 27)).isCloseTo(last / 4, within(1e-12));
        // What is remembered of a week, and of which a mean of one is left: exp(-v / 2).
        double[] middle = weeks.factors(new double[weeks.spans()]);
        assertThat(middle[13]).isCloseTo(Math.exp(-0.5 * WEEK), within(1e-12));
        assertThat(middle[14]).isCloseTo(Math.exp(-0.5 * WEEK / 4), within(1e-12));
    }

    /** Of the logarithm on a day, where the last deviate is one more. */
    private static double deviation(LoggedWeeks weeks, int day) {
        double[] none = new double[weeks.spans()];
        double[] one = new double[weeks.spans()];
        one[weeks.spans() - 1] = 1;
        return Math.log(weeks.factors(one)[day] / weeks.factors(none)[day]);
    }

    @Test
    void days_before_the_log_are_left_alone_and_its_last_week_is_whole() {
        double[] byDay = LoggedWeeks.of(2, 4).factors(new double[] {1, 1, 1});
        assertThat(byDay[13]).isEqualTo(1);
        assertThat(byDay[14]).isGreaterThan(1);
        assertThat(byDay[34]).isEqualTo(byDay[28]);
    }
}
