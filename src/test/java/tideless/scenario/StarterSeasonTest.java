package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.scenario.StarterLight.Sky;

class StarterSeasonTest {
    /**
     * Global radiation of lowlands near 50 degrees north: 2, 9, 18, 11 and 4 MJ/m2 a day in
     * December, March, June, September and November, from memory, a quarter each way; 2.057 mol a
     * MJ.
     */
    @ParameterizedTest
    @CsvSource({
        "2027-12-15, 2.0",
        "2027-03-21, 8.5",
        "2027-06-15, 18",
        "2027-09-15, 11",
        "2027-11-15, 3.5"
    })
    void the_open_sky_of_a_day_of_mean_cloud_is_that_of_its_month(LocalDate on, double mj) {
        assertEquals(mj * 2.057, StarterSeason.openMolPerM2(on), 0.25 * mj * 2.057);
    }

    /**
     * Set out on a day for so many: it was 5 mol in every month, and 19 beside the air of March.
     */
    @ParameterizedTest
    @CsvSource({
        "WINDOW, 2027-11-02, 63, 1, 1.5, November to January",
        "WINDOW, 2027-06-01, 60, 8, 10, June to July",
        "OUTDOORS, 2027-11-15, 28, 4, 5, November to December",
        "OUTDOORS, 2027-06-01, 30, 24, 30, June",
        "POLYTUNNEL, 2027-03-10, 63, 12, 16, March to May"
    })
    void light_is_the_mean_of_the_days_on_which_plants_stand(
            Sky sky, LocalDate first, int days, double low, double high, String months) {
        StarterSeason season = StarterSeason.of(sky, first, days);
        assertTrue(season.molPerM2Day() >= low && season.molPerM2Day() <= high, season.toString());
        assertEquals(months, season.months());
    }

    /** A mild coast at 50 degrees north: mean 16 to 18 in July, 4 to 6 in January, from memory. */
    @Test
    void air_is_that_of_the_same_days() {
        StarterSeason july = StarterSeason.of(Sky.OUTDOORS, LocalDate.of(2027, 7, 10), 21);
        assertEquals(22, july.dayC(), 1);
        assertEquals(8, july.nightFallC(), 1);
        StarterSeason winter = StarterSeason.of(Sky.OUTDOORS, LocalDate.of(2027, 1, 1), 31);
        assertEquals(5, winter.dayC(), 1);
        StarterSeason spring = StarterSeason.of(Sky.OUTDOORS, LocalDate.of(2027, 3, 10), 119);
        StarterSeason march = StarterSeason.of(Sky.OUTDOORS, LocalDate.of(2027, 3, 10), 14);
        assertTrue(spring.dayC() > march.dayC() + 3, spring + " " + march);
        assertTrue(spring.molPerM2Day() > march.molPerM2Day() + 5, spring + " " + march);
    }

    @Test
    void a_tunnel_is_warmer_by_day_and_a_window_is_as_warm_as_its_room_all_the_year() {
        LocalDate october = LocalDate.of(2027, 9, 15);
        StarterSeason open = StarterSeason.of(Sky.OUTDOORS, october, 35);
        StarterSeason tunnel = StarterSeason.of(Sky.POLYTUNNEL, october, 35);
        assertTrue(tunnel.dayC() > open.dayC(), tunnel + " " + open);
        // three quarters of the open sky beside a house, and a third less than all of it under film
        LocalDate june = LocalDate.of(2027, 6, 1);
        assertTrue(
                StarterSeason.of(Sky.POLYTUNNEL, june, 30).molPerM2Day()
                        < StarterSeason.of(Sky.OUTDOORS, june, 30).molPerM2Day() - 2);
        for (LocalDate on : List.of(october, october.plusMonths(3))) {
            StarterSeason window = StarterSeason.of(Sky.WINDOW, on, 35);
            assertEquals(22, window.dayC());
            assertEquals(4, window.nightFallC());
        }
    }

    /** No day is warmer or brighter than the summer's, none darker than December's. */
    @Test
    void the_year_is_one_swing() {
        for (int day = 0; day < 365; day++) {
            LocalDate on = LocalDate.of(2027, 1, 1).plusDays(day);
            double mol = StarterSeason.openMolPerM2(on);
            assertTrue(mol >= 4 && mol <= 38, on + " " + mol);
            double dayC = StarterSeason.dayC(Sky.OUTDOORS, on);
            assertTrue(dayC >= 4 && dayC <= 22.1, on + " " + dayC);
        }
    }

    private static StarterStay stay(String light, LocalDate start, String... crops) {
        return new StarterStay(
                Stream.of(crops).map(Crops::named).toList(), StarterLight.of(light), start);
    }

    /**
     * Pak choi of 9.5 degC, all of March's, took 119 days; in a spring that warms it is cut in 60
     * to 75 (growers, from memory) and watched for two weeks more.
     */
    @Test
    void a_crop_develops_by_the_air_of_each_of_its_days() {
        StarterStay spring = stay("polytunnel", LocalDate.of(2026, 3, 10), "pak-choi");
        assertTrue(spring.usualDays() >= 56 && spring.usualDays() <= 91, "" + spring.usualDays());
        // what comes after the cut is no season of it, and of what is picked it is
        assertEquals(spring.season(77), spring.season(200));
        StarterStay basil = stay("window", LocalDate.of(2026, 3, 10), "basil");
        assertTrue(basil.season(150).molPerM2Day() > basil.season(60).molPerM2Day());
    }

    /** From March to August a mean day has 21 mol at most; July's plants meet 25 to 30. */
    @Test
    void the_brightest_month_of_a_long_stay_is_told_and_none_of_a_short_one() {
        StarterStay kale = stay("outdoors", LocalDate.of(2027, 3, 1), "kale");
        StarterStay.Bright june = kale.brightest(150).orElseThrow();
        assertTrue(june.season().molPerM2Day() >= 25 && june.season().molPerM2Day() <= 30);
        assertTrue(june.season().dayC() >= kale.season(150).dayC());
        assertEquals(6, june.from().plusDays(15).getMonthValue(), 1);
        assertTrue(stay("window", LocalDate.of(2027, 3, 1), "kale").brightest(150).isEmpty());
        StarterStay rocket = stay("outdoors", LocalDate.of(2027, 6, 1), "rocket");
        assertTrue(rocket.brightest(42).isEmpty());
    }

    /** What a mean of May to October bears may be drunk dry in July: 22 degC, 25 to 30 mol. */
    @Test
    void fruit_outside_meets_the_brightest_month_of_its_stay() {
        StarterStay tomato = stay("outdoors", LocalDate.of(2027, 5, 10), "tomato");
        StarterSeason season = tomato.season(154);
        assertTrue(season.molPerM2Day() >= 25 && season.molPerM2Day() <= 30, season.toString());
        assertEquals(22, season.dayC(), 1.01);
        assertTrue(tomato.brightest(154).isEmpty());
        StarterStay autumn = stay("outdoors", LocalDate.of(2027, 9, 1), "tomato");
        assertTrue(autumn.season(60).molPerM2Day() < 20);
    }

    /** A lone nursery's weeks are no weeks of the tray: 21 degC for 42 days are 42 at 21 degC. */
    @Test
    void what_a_seedling_has_behind_it_counts_once() {
        StarterStay room = stay("unknown", LocalDate.of(2026, 3, 2), "lettuce");
        StarterStay summer = stay("outdoors", LocalDate.of(2026, 6, 20), "lettuce");
        assertTrue(Math.abs(room.usualDays() - summer.usualDays()) <= 14);
    }
}
