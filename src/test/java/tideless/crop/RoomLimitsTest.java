package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RoomLimitsTest {
    // mean, lowest, lit mean, humidity, lit hours, light, air speed, flowering; just within a limit
    // and just beyond it. Lettuce: base 4, full 20 to 26, ceiling 35: a quarter of growth at 8,
    // three
    // quarters at 28.25. Basil leaves are injured below 12 degC (Lang and Cameron 1994), tomato
    // sets
    // from 16 to 32 degC and bears 18 h, spinach 14 h.
    @ParameterizedTest
    @CsvSource({
        "lettuce, 22, 18, 23, 0.6, 16, 14, 0.1, false, ",
        "lettuce, 8.1, 4, 9, 0.6, 16, 14, 0.1, false, ",
        "lettuce, 7.9, 4, 9, 0.6, 16, 14, 0.1, false, TOO_COLD",
        "lettuce, 28.2, 25, 30, 0.6, 16, 14, 0.1, false, ",
        "lettuce, 28.3, 25, 30, 0.6, 16, 14, 0.1, false, TOO_HOT",
        "lettuce, 22, 18, 23, 0.90, 16, 14, 0.1, false, ",
        "lettuce, 22, 18, 23, 0.91, 16, 14, 0.1, false, TOO_HUMID",
        "lettuce, 22, 18, 23, 0.6, 16, 17.1, 0.31, false, ",
        "lettuce, 22, 18, 23, 0.6, 16, 17.1, 0.29, false, TOO_STILL",
        "lettuce, 22, 18, 23, 0.6, 24, 14, 0.1, false, ",
        "basil, 18, 12.1, 19, 0.6, 16, 14, 0.1, false, ",
        "basil, 18, 11.9, 19, 0.6, 16, 14, 0.1, false, TOO_COLD",
        "spinach, 18, 15, 19, 0.6, 14, 14, 0.1, false, ",
        "spinach, 18, 15, 19, 0.6, 14.5, 14, 0.1, false, DAY_TOO_LONG",
        "tomato, 22, 18, 23, 0.6, 18, 30, 0.1, true, ",
        "tomato, 22, 18, 23, 0.6, 24, 30, 0.1, true, DAY_TOO_LONG",
        "tomato, 16.1, 13, 18, 0.6, 16, 20, 0.1, true, ",
        "tomato, 15.9, 13, 18, 0.6, 16, 20, 0.1, true, SET_TOO_COLD",
        "tomato, 15.9, 13, 18, 0.6, 16, 20, 0.1, false, ",
        "tomato, 27, 22, 32, 0.6, 16, 20, 0.1, true, ",
        "tomato, 27, 22, 32.1, 0.6, 16, 20, 0.1, true, SET_TOO_HOT"
    })
    void a_day_beyond_a_limit_is_told_and_one_within_it_is_not(
            String crop,
            double mean,
            double low,
            double lit,
            double humidity,
            double hours,
            double mol,
            double speed,
            boolean flowering,
            RoomLimits.Kind kind) {
        Map<RoomLimits.Kind, RoomLimits.Beyond> found =
                RoomLimits.beyond(
                        CropFiles.read(crop),
                        day(mean, low, lit, humidity, hours, mol, speed, flowering));
        assertEquals(kind == null ? Set.of() : Set.of(kind), found.keySet());
    }

    /** A day of which no hour is hotter than its lit ones are in the mean. */
    private static RoomLimits.Day day(
            double mean,
            double low,
            double lit,
            double humidity,
            double hours,
            double mol,
            double speed,
            boolean flowering) {
        return new RoomLimits.Day(mean, low, lit, lit, humidity, hours, mol, speed, flowering);
    }

    @Test
    void a_limit_is_told_with_what_broke_it() {
        RoomLimits.Day day = day(31, 27, 33, 0.95, 16, 14, 0.1, false);
        Map<RoomLimits.Kind, RoomLimits.Beyond> found =
                RoomLimits.beyond(CropFiles.read("lettuce"), day);
        assertEquals(new RoomLimits.Beyond(0.95, 0.90), found.get(RoomLimits.Kind.TOO_HUMID));
        assertEquals(31, found.get(RoomLimits.Kind.TOO_HOT).value());
        assertEquals(28.25, found.get(RoomLimits.Kind.TOO_HOT).limit(), 1e-9);
        double cold =
                RoomLimits.beyond(CropFiles.read("lettuce"), day(5, 4, 6, 0.6, 16, 14, 0.1, false))
                        .get(RoomLimits.Kind.TOO_COLD)
                        .limit();
        assertEquals(8, cold, 1e-9);
    }

    // De Koning (1994), in Vanthoor (2011), Table 9.1: days from flower to ripe fruit, printed to a
    // tenth; the sum is rounded to a degree-day. Above the crop's high optimum of 27 no faster.
    @ParameterizedTest
    @CsvSource({"18, 57.5", "20, 51.6", "22, 46.8", "24, 42.7", "27, 37.9", "30, 37.9"})
    void tomatoes_ripen_by_the_warmth_of_fruit(double meanC, double days) {
        CropTraits tomato = CropFiles.read("tomato");
        CropTraits.Stages stages = tomato.stages();
        assertEquals(
                days,
                RoomLimits.daysTo(tomato, stages.floweringCd(), stages.firstHarvestCd(), meanC),
                0.06);
        double flowersAfter = stages.floweringCd() / (Math.min(meanC, 27) - 10);
        assertEquals(
                flowersAfter + days,
                RoomLimits.daysTo(tomato, 0, stages.firstHarvestCd(), meanC),
                0.06);
    }

    @Test
    void a_crop_that_says_nothing_of_its_fruit_goes_by_its_own_base_throughout() {
        CropTraits pepper = CropFiles.read("sweet-pepper");
        double base = pepper.growth().baseC();
        double flower = pepper.stages().floweringCd();
        assertEquals(20 - base, Growing.warmthCd(pepper, flower - 1, 20), 1e-12);
        assertEquals(20 - base, Growing.warmthCd(pepper, flower + 1, 20), 1e-12);
        assertEquals(0, Growing.warmthCd(pepper, flower + 1, base - 1));
    }
}
