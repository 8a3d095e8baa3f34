package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.physics.HumidAir;

class StandTranspirationTest {
    // FAO-56's equation with ra 150 and rs 70 s/m and 0.77 of the short wave, at 101.3 kPa and a
    // coefficient of 1 over full cover, worked out by hand outside this project; printed to 1 g,
    // which is also what the choice of constants moves.
    @ParameterizedTest(name = "{3} g/m2/h at {0} W/m2, {1} degC, {2}")
    @CsvSource({
        "300, 25, 0.65, 268",
        "100, 22, 0.75, 100",
        "0, 18, 0.85, 16",
        "81.6, 25, 0.60, 112",
        "500, 28, 0.55, 454"
    })
    void the_house_form_agrees_with_its_worked_values(
            double shortWave, double tempC, double humidity, double gPerM2H) {
        double vapourPa = humidity * HumidAir.saturationPressurePa(tempC);
        double kgPerM2S =
                StandTranspiration.penmanMonteithKgPerM2S(
                        1, 3, shortWave, tempC, vapourPa, 101_300, 1);
        assertEquals(gPerM2H, 3.6e6 * kgPerM2S, 1.5);
    }

    // Carmassi et al. (2007): leaf area index 3 and 8 MJ/m2 a day give 2.89 mm; printed digits.
    @Test
    void light_and_leaf_alone_agree_with_the_worked_day() {
        double kgPerM2 = 86400 * StandTranspiration.radiationKgPerM2S(3, 8e6 / 86400);
        assertEquals(2.89, kgPerM2, 0.005);
    }

    @Test
    void a_full_stand_has_a_leaf_area_index_of_three_and_none_has_no_thirst() {
        assertEquals(1, StandTranspiration.coverFrac(3), 1e-12);
        assertEquals(0, StandTranspiration.coverFrac(0));
        assertEquals(0, StandTranspiration.radiationKgPerM2S(0, 300));
        assertEquals(
                0, StandTranspiration.penmanMonteithKgPerM2S(1.3, 0, 300, 25, 2000, 101_300, 1));
    }

    // Stanghellini's factor, Vanthoor (2011), Table 8.1: 1.0244, 1.1525, 1.3904 and the cap 1.5.
    @ParameterizedTest(name = "{1} at {0} ppm")
    @CsvSource({"400, 1.0244", "700, 1.1525", "1000, 1.3904", "1200, 1.5", "150, 1"})
    void carbon_dioxide_shuts_stomata_by_the_published_factor(double ppm, double factor) {
        assertEquals(factor, CarbonDioxide.stanghelliniFactor(ppm), 1e-4);
    }

    @Test
    void a_crop_has_its_own_conductance_at_a_thousand_ppm_and_all_of_it_at_four_hundred() {
        assertEquals(1, CarbonDioxide.resistanceFrac(0.65, 400), 1e-12);
        assertEquals(1 / 0.65, CarbonDioxide.resistanceFrac(0.65, 1000), 1e-12);
        // Tomato's own factor at 1000 ppm over that at 400 is 0.737; the file rounds to 0.74.
        assertEquals(
                CarbonDioxide.stanghelliniFactor(700) / CarbonDioxide.stanghelliniFactor(400),
                CarbonDioxide.resistanceFrac(0.737, 700),
                0.002);
    }

    // Electron-transport limited canopies at 20 degC, constants of Vanthoor (2011), Table 9.1,
    // worked
    // out by hand: 502/604, 636/738 and so on over 234/336. Beside them the rule of Nederhoff
    // (1994)
    // for crops: exp(150 (1/400 - 1/c)), within two in a hundred.
    @ParameterizedTest(name = "{1} at {0} ppm, {2} by the rule for crops")
    @CsvSource({
        "300, 0.8914, 0.8825",
        "400, 1, 1",
        "600, 1.1243, 1.1331",
        "800, 1.1934, 1.2062",
        "1000, 1.2374, 1.2523",
        "1200, 1.2679, 1.2840"
    })
    void carbon_dioxide_feeds_growth_along_its_curve(double ppm, double frac, double rule) {
        assertEquals(frac, CarbonDioxide.growthFrac(ppm), 1e-4);
        assertEquals(rule, CarbonDioxide.growthFrac(ppm), 0.02);
    }

    @Test
    void nothing_grows_at_the_compensation_point_and_below() {
        assertEquals(0, CarbonDioxide.growthFrac(34 / 0.67), 1e-12);
        assertEquals(0, CarbonDioxide.growthFrac(40));
    }

    // Tomato, leaf area index 3, 300 W/m2, 23 degC, 75 %: 0.93 at 1000 over 400 ppm by
    // Stanghellini's resistances (0.88-0.96). The house's form has fewer resistances in it.
    @Test
    void enriched_air_takes_some_per_cent_off_a_stands_thirst() {
        double vapourPa = 0.75 * HumidAir.saturationPressurePa(23);
        double at400 =
                StandTranspiration.penmanMonteithKgPerM2S(1.4, 3, 300, 23, vapourPa, 101_300, 1);
        double at1000 =
                StandTranspiration.penmanMonteithKgPerM2S(
                        1.4,
                        3,
                        300,
                        23,
                        vapourPa,
                        101_300,
                        CarbonDioxide.resistanceFrac(0.74, 1000));
        assertTrue(0.88 < at1000 / at400 && at1000 / at400 < 0.97, "ratio " + at1000 / at400);
    }

    @Test
    void doubt_is_least_for_a_grown_stand_in_the_sun() {
        CropTraits cucumber = CropFiles.read("cucumber");
        assertEquals(0.25, ThirstDoubt.of(cucumber, 1, 3).stand(), 1e-12);
        assertEquals(0.40, ThirstDoubt.of(cucumber, 0, 3).stand(), 1e-12);
        assertEquals(0.40, ThirstDoubt.of(cucumber, 1, 0).stand(), 1e-12);
        assertEquals(0.40, ThirstDoubt.of(CropFiles.read("lettuce"), 1, 3).stand(), 1e-12);
    }

    // The houses that 0.25 was read off had down to a third of sun: what the sunlit forms forecast
    // has the doubt of those forms.
    @Test
    void the_doubt_of_sunlit_stands_goes_with_the_forms_of_sunlit_stands() {
        CropTraits cucumber = CropFiles.read("cucumber");
        assertEquals(0.25, ThirstDoubt.of(cucumber, 0.5, 3).stand(), 1e-12);
        assertEquals(0.325, ThirstDoubt.of(cucumber, 0.25, 3).stand(), 1e-12);
        assertEquals(0.325, ThirstDoubt.besideLeaf(cucumber, 0.25), 1e-12);
    }

    // What is little known of a young stand is its leaf: where that is drawn beside, it is not
    // drawn
    // a second time.
    @Test
    void beside_a_leaf_in_doubt_a_stand_is_known_as_a_grown_one_is() {
        CropTraits cucumber = CropFiles.read("cucumber");
        assertEquals(0.25, ThirstDoubt.besideLeaf(cucumber, 1), 1e-12);
        assertEquals(
                ThirstDoubt.of(cucumber, 1, 3).stand(), ThirstDoubt.besideLeaf(cucumber, 1), 1e-12);
        assertEquals(0.40, ThirstDoubt.besideLeaf(CropFiles.read("lettuce"), 1), 1e-12);
    }
}
