package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.scenario.StarterLight.Sky;

/** Above the air at 50 N, MJ/m2/day: 42 in June, 21 at the equinoxes, 8 in December (handbooks). */
class StarterSeasonTest {
    @ParameterizedTest
    @CsvSource({
        "2027-11-15, false, December, 6, 7, 5", // set out in November: it was a summer's 30 mol, 22
        // degC
        "2027-09-01, false, September, 16, 17, 6",
        "2027-03-02, false, March, 18, 10, 6",
        "2027-04-25, false, '', 30, 22, 8",
        "2027-07-10, false, '', 30, 22, 8",
        "2027-03-10, true, '', 30, 22, 8", // fruit bears two months later
        "2027-09-01, true, October, 10, 10, 5"
    })
    void outdoors_follows_the_month(
            LocalDate start, boolean fruits, String month, double mol, double dayC, double fall) {
        StarterSeason season = StarterSeason.of(Sky.OUTDOORS, start, fruits);
        assertEquals(month, season.month());
        assertEquals(mol, season.molPerM2Day(), 1.01);
        assertEquals(dayC, season.dayC(), 1.01);
        assertEquals(fall, season.nightFallC(), 1.01);
    }

    @Test
    void a_tunnel_is_warmer_by_day_and_a_window_is_a_room_all_the_year() {
        LocalDate october = LocalDate.of(2027, 9, 15);
        StarterSeason open = StarterSeason.of(Sky.OUTDOORS, october, false);
        StarterSeason tunnel = StarterSeason.of(Sky.POLYTUNNEL, october, false);
        assertTrue(tunnel.dayC() > open.dayC(), tunnel + " " + open);
        assertEquals(open.molPerM2Day(), tunnel.molPerM2Day());
        StarterSeason window = StarterSeason.of(Sky.WINDOW, october, false);
        assertEquals(new StarterSeason(5, 22, 4, ""), window);
    }

    /** No month is warmer or brighter than the summer, none darker than December. */
    @Test
    void the_year_is_one_swing() {
        for (int day = 0; day < 365; day++) {
            StarterSeason season =
                    StarterSeason.of(Sky.OUTDOORS, LocalDate.of(2027, 1, 1).plusDays(day), false);
            assertTrue(season.molPerM2Day() >= 5 && season.molPerM2Day() <= 30, "" + season);
            assertTrue(season.dayC() >= 4 && season.dayC() <= 22, "" + season);
        }
    }
}
