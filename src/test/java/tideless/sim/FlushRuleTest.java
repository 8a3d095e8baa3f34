package tideless.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each condition of a change just before its limit and just past it. */
class FlushRuleTest {
    // limit 2.0: beyond a meter's doubt of 5 % above 2.10; a feed of 1.6 pays from 1.92 on, one of
    // 1.99 from 2.39 on.
    @ParameterizedTest
    @CsvSource({"2.09, 1.6, false", "2.11, 1.6, true", "2.38, 1.99, false", "2.4, 1.99, true"})
    void a_salty_tray_is_flushed_beyond_the_doubt_of_a_meter_and_where_it_pays(
            double ec, double feed, boolean flushed) {
        assertThat(FlushRule.isTooSalty(ec, feed, 2.0)).isEqualTo(flushed);
    }

    // limit 1.2: beyond the doubt below 1.14; a feed of 1.3 pays from 1.083 down.
    @ParameterizedTest
    @CsvSource({"1.15, 1.6, false", "1.13, 1.6, true", "1.09, 1.3, false", "1.08, 1.3, true"})
    void a_lean_tray_is_renewed_beyond_the_doubt_of_a_meter_and_where_it_pays(
            double ec, double feed, boolean renewed) {
        assertThat(FlushRule.isTooLean(ec, feed, 1.2)).isEqualTo(renewed);
    }

    @Test
    void a_feed_on_the_wrong_side_of_the_limit_mends_nothing() {
        assertThat(FlushRule.isTooSalty(4.0, 2.0, 2.0)).isFalse();
        assertThat(FlushRule.isTooLean(0.5, 1.2, 1.2)).isFalse();
    }
}
