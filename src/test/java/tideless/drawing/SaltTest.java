package tideless.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Limits;
import tideless.sim.Trace;

class SaltTest {
    /** EC 1.0 to 2.0 mS/cm. */
    private static final Limits BAND = new Limits(1, 2, 5, 7, 5, 5);

    @ParameterizedTest
    @CsvSource({
        "0, LEAN",
        "0.59, LEAN",
        "0.61, LOW",
        "0.99, LOW",
        "1, WITHIN",
        "2, WITHIN",
        "2.01, HIGH",
        "2.59, HIGH",
        "2.61, RICH",
        "20, RICH",
        "NaN, WITHIN"
    })
    void a_solution_is_held_against_its_band(double ec, Salt salt) {
        assertThat(Salt.of(ec, BAND)).isEqualTo(salt);
    }

    @Test
    void without_a_band_nothing_is_salty() {
        Limits none = new Limits(0, Double.POSITIVE_INFINITY, 5, 7, 5, 5);
        assertThat(Salt.of(30, none)).isEqualTo(Salt.WITHIN);
        assertThat(Salt.of(0, none)).isEqualTo(Salt.WITHIN);
    }

    // The left tray's lettuce makes room for basil, which bears more.
    @Test
    void each_crop_has_its_own_band_and_keeps_it_until_the_next() {
        Trace trace = DrawRig.forecast("scenarios/two-crops.toml").trace();
        var left = trace.trays().get(0);
        var plantings = trace.plantings(left);
        for (int i = 0; i < plantings.size(); i++) {
            Limits own = plantings.get(i).tray().limits();
            assertThat(Salt.limits(trace, left, plantings.get(i).firstHour())).isEqualTo(own);
            int until =
                    i + 1 < plantings.size()
                            ? plantings.get(i + 1).firstHour() - 1
                            : trace.hours() - 1;
            assertThat(Salt.limits(trace, left, until)).isEqualTo(own);
        }
        assertThat(plantings.get(0).tray().limits().ecHighMsPerCm())
                .isLessThan(plantings.get(1).tray().limits().ecHighMsPerCm());
    }
}
