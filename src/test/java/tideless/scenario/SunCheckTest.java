package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.HourlyWeather;
import tideless.rig.Place;

class SunCheckTest {
    private static final LocalDate JUNE = LocalDate.of(2027, 6, 1);
    private static final int DAYS = 30;

    private static HourlyWeather weather(IntToDoubleFunction globalWPerM2) {
        double[] some = new double[24 * DAYS];
        Arrays.fill(some, 0.5);
        double[] global = new double[24 * DAYS];
        Arrays.setAll(global, globalWPerM2);
        return new HourlyWeather("made", some, some, global, some);
    }

    /**
     * A day of 5 to 19 o'clock, 400 W/m2 in each hour: 233 W/m2 in the mean. Above the air it is
     * 483 W/m2 at 45 N in June and 100 W/m2 at 45 S (FAO-56, table A2.6: 41.7 and 8.6 MJ/m2/day).
     */
    private static final HourlyWeather SUMMER = weather(h -> h % 24 >= 5 && h % 24 < 19 ? 400 : 0);

    private static List<String> odd(double latitude, double longitude, int offsetH) {
        return SunCheck.odd(SUMMER, new Place(latitude, longitude, 0), JUNE, offsetH * 3600);
    }

    @ParameterizedTest
    @CsvSource({"45, 0, 0", "45, 150, 10", "45, 15, 1", "45, 8, 2", "60, -90, -6"})
    void light_by_day_at_its_own_place_is_nothing_odd(double latitude, double longitude, int h) {
        assertEquals(List.of(), odd(latitude, longitude, h));
    }

    @ParameterizedTest
    @CsvSource({"150, 0", "-90, 0", "0, 9"})
    void light_while_the_sun_is_down_is_asked_about(double longitude, int offsetH) {
        List<String> odd = odd(45, longitude, offsetH);
        assertEquals(1, odd.size());
        assertTrue(odd.get(0).contains("while the sun is down at this place"), odd.get(0));
    }

    @Test
    void a_summer_in_the_others_winter_is_brighter_than_any_sky_there() {
        HourlyWeather noon = weather(h -> h % 24 >= 8 && h % 24 < 16 ? 700 : 0);
        assertEquals(List.of(), SunCheck.odd(noon, new Place(45, 0, 0), JUNE, 0));
        List<String> odd = SunCheck.odd(noon, new Place(-45, 0, 0), JUNE, 0);
        assertEquals(1, odd.size());
        assertTrue(odd.get(0).startsWith("on 30 of 30 days this file has more light"), odd.get(0));
    }

    /** Lamps that a sensor sees by night, a fiftieth of all, are borne; and two odd days. */
    @Test
    void a_little_of_either_is_borne() {
        for (double lampW : new double[] {10, 25}) {
            HourlyWeather lamp = weather(h -> h % 24 >= 5 && h % 24 < 19 ? 400 : lampW);
            assertEquals(
                    lampW > 20,
                    !SunCheck.odd(lamp, new Place(45, 0, 0), JUNE, 0).isEmpty(),
                    "W/m2 by night: " + lampW);
        }
        HourlyWeather odd = weather(h -> h % 24 < 8 || h % 24 >= 16 ? 0 : h < 24 ? 1800 : 500);
        assertEquals(List.of(), SunCheck.odd(odd, new Place(45, 0, 0), JUNE, 0));
    }
}
