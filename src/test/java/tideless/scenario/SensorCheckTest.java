package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SensorCheckTest {
    private static double[] hours(double... values) {
        double[] all = new double[100];
        Arrays.setAll(all, h -> values[h % values.length]);
        return all;
    }

    @ParameterizedTest
    @CsvSource({
        "humidity, 0.0070, true", // 0.70 under a unit of %
        "humidity, 0.0299, true",
        "humidity, 0.0301, false",
        "deficit, 0.8, true", // 0.8 kPa under a unit of Pa
        "deficit, 19.9, true",
        "deficit, 20.1, false",
        "co2, 9999, true",
        "co2, 5001, true",
        "co2, 4999, false",
        "lamp, 0.01, true", // 1 of 0 to 1 under a unit of %
        "lamp, 0.02, false",
        "lamp, 0, false", // never lit
        "air_speed, 0, false",
        "vapour_pressure, 0.8, false"
    })
    void what_no_air_at_plants_is_like_is_asked_about(String column, double most, boolean odd) {
        assertEquals(odd, SensorCheck.odd(column, hours(0, most / 2, most)).isPresent());
    }

    /** 17 to 30 degF are -8 to -1 degC. */
    @Test
    void air_in_which_no_crop_is_raised_is_asked_about() {
        assertTrue(SensorCheck.odd("temperature", hours(-8, -1)).isPresent());
        assertTrue(SensorCheck.odd("temperature", hours(0, 4.9)).isPresent());
        assertFalse(SensorCheck.odd("temperature", hours(-8, 5.1)).isPresent());
    }

    /** 71 hours on end are a calm cellar, 72 a dead sensor; at the end of a run too. */
    @Test
    void a_temperature_that_stands_still_for_three_days_is_asked_about() {
        for (int from : new int[] {0, 10, 24}) {
            for (int still : new int[] {71, 72}) {
                double[] air = hours(20, 21);
                Arrays.fill(air, from, from + still, 19);
                assertEquals(
                        still == 72, SensorCheck.odd("temperature", air).isPresent(), from + "h");
            }
        }
    }
}
