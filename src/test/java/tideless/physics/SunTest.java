package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import net.e175.klaus.solarpositioning.SPA;
import net.e175.klaus.solarpositioning.SunriseResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SunTest {
    // FAO-56, eqs. 21 to 34, recomputed independently; half the last digit.
    @ParameterizedTest(name = "{0} N, day {1}")
    @CsvSource({
        "0, 15, 36.16, 12.00", "40, 80, 28.77, 11.97", "40, 172, 41.87, 14.84",
        "40, 355, 13.52, 9.16", "52, 172, 41.70, 16.49", "52, 355, 6.29, 7.51",
        "60, 196, 39.14, 17.72"
    })
    void radiation_above_the_air_and_day_length_agree(
            double latitudeDeg, double dayOfYear, double expectedMj, double expectedH) {
        double latitude = Math.toRadians(latitudeDeg);
        assertEquals(
                expectedMj, 0.0864 * Sun.extraterrestrialDailyWPerM2(latitude, dayOfYear), 5.1e-3);
        assertEquals(expectedH, ClosedForms.dayLengthS(latitude, dayOfYear) / 3600, 5.1e-3);
    }

    // The solar position algorithm of NREL (Reda and Andreas 2004) by an independent library. FAO's
    // declination is good to about 0.5 degrees and its equation of time to a minute: 0.9 degrees
    // for
    // the altitude, a bound found by trial over these days.
    @ParameterizedTest(name = "{0} N, {1} E")
    @CsvSource({"50.8, 4.35", "-33.9, 18.4", "13.7, 100.5", "64, -22", "0, 0", "40, -105"})
    void the_sun_stands_where_the_almanac_puts_it(double latitudeDeg, double longitudeDeg) {
        double latitude = Math.toRadians(latitudeDeg);
        for (int day = 5; day <= 365; day += 20) {
            for (int hour = 0; hour < 24; hour += 3) {
                ZonedDateTime time =
                        ZonedDateTime.of(2026, 1, 1, hour, 0, 0, 0, ZoneOffset.UTC)
                                .plusDays(day - 1L);
                double expected =
                        90
                                - SPA.calculateSolarPosition(time, latitudeDeg, longitudeDeg, 0, 69)
                                        .zenithAngle();
                double solar = 3600.0 * hour + SunForms.solarAheadOfClockS(longitudeDeg, 0, day);
                double altitude = Math.toDegrees(SunForms.altitudeRad(latitude, day, solar));
                assertEquals(expected, altitude, 1.3, "day " + day + " hour " + hour);
            }
        }
    }

    // Same library, geometric horizon. The same miss: 1.2 degrees of declination is 11.2 min of day
    // at
    // 52 degrees in October. 12 min, found by trial.
    @ParameterizedTest(name = "{0} N")
    @CsvSource({"0", "20", "-35", "45", "52"})
    void the_day_is_as_long_as_the_almanac_has_it(double latitudeDeg) {
        for (int day = 5; day <= 365; day += 20) {
            ZonedDateTime noon =
                    ZonedDateTime.of(2026, 1, 1, 12, 0, 0, 0, ZoneOffset.UTC).plusDays(day - 1L);
            SunriseResult.RegularDay found =
                    (SunriseResult.RegularDay)
                            SPA.calculateSunriseTransitSet(noon, latitudeDeg, 0, 69, 0.0);
            double expected = Duration.between(found.sunrise(), found.sunset()).toMillis() / 1000.0;
            assertEquals(
                    expected,
                    ClosedForms.dayLengthS(Math.toRadians(latitudeDeg), day),
                    720,
                    "day " + day);
        }
    }

    @Test
    void the_hours_of_a_day_add_up_to_the_day() {
        double latitude = Math.toRadians(47);
        double sum = 0;
        for (int hour = 0; hour < 24; hour++) {
            sum +=
                    SunForms.extraterrestrialWPerM2(
                            latitude, 200, 3600.0 * hour, 3600.0 * (hour + 1));
        }
        double daily = Sun.extraterrestrialDailyWPerM2(latitude, 200);
        assertEquals(daily, sum / 24, 1e-12 * daily);
    }

    @Test
    void the_polar_night_and_the_midnight_sun_are_no_fault() {
        double latitude = Math.toRadians(75);
        assertEquals(0, ClosedForms.dayLengthS(latitude, 355), 0);
        assertEquals(0, Sun.extraterrestrialDailyWPerM2(latitude, 355), 0);
        assertEquals(86400, ClosedForms.dayLengthS(latitude, 172), 1e-9);
    }

    // FAO-56, example 18: clear sky at 100 m from 41.09 gives 30.90 MJ.
    @Test
    void a_clear_sky_lets_three_quarters_through() {
        assertEquals(30.90, Sun.clearSkyWPerM2(41.09, 100), 5e-3);
    }
}
