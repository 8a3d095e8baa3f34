package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PlausibleTest {
    private static final Plausible RANGE = new Plausible(0.8, 1.5);

    @Test
    void the_stated_range_is_that_of_nine_tenths() {
        assertThat(RANGE.factorAt(DemandDoubt.deviate(0.05))).isCloseTo(0.8, within(1e-4));
        assertThat(RANGE.factorAt(DemandDoubt.deviate(0.5))).isEqualTo(1);
        assertThat(RANGE.factorAt(DemandDoubt.deviate(0.95))).isCloseTo(1.5, within(1e-4));
    }

    @Test
    void nothing_is_drawn_far_beyond_it() {
        // 2.5 standard deviations of 1.6449: 1.5^1.52.
        assertThat(RANGE.factorAt(DemandDoubt.deviate(1 - 1e-9)))
                .isCloseTo(Math.pow(1.5, 2.5 / 1.6449), within(1e-9));
        assertThat(Plausible.SURE.factorAt(DemandDoubt.deviate(0.99))).isEqualTo(1);
    }
}
