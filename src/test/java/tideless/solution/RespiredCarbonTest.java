package tideless.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.physics.Oxygen;

class RespiredCarbonTest {
    // Worked by hand: 420 + 1e6 (1.1 / 0.92)(S - C) / 32 / KH, KH 45.62, 39.19, 34.05, 29.89
    // mol/m3/atm at 15, 20, 25, 30 degC. 1 % for the rounding of the oxygen.
    @ParameterizedTest
    @CsvSource({
        "25, 1.841, 7469",
        "30, 0.725, 8962",
        "15, 6.301, 3519",
        "25, 6.370, 2498",
        "24, 1.394, 7922",
        "18, 3.578, 5711",
        "25, 2.0, 7300",
        "25, 0, 9490"
    })
    void carbon_dioxide_follows_the_oxygen_deficit(double tempC, double mgPerL, double ppm) {
        double saturated = Oxygen.saturationMgPerL(tempC, 0, 101_325);
        assertEquals(ppm, RespiredCarbon.ppm(420, saturated, mgPerL, tempC), 0.01 * ppm);
    }

    @Test
    void saturated_water_stands_in_the_air_above_it() {
        assertEquals(600, RespiredCarbon.ppm(600, 8, 8, 20));
        assertEquals(600, RespiredCarbon.ppm(600, 8, 9, 20));
    }

    // Alkalinity and CO2 alone, pK1 6.352 at 25 degC, without ionic strength, whose
    // effect at 1 to 2 meq/L lowers pH by 0.015 to 0.02, and without the carbonate above pH 8;
    // 0.03.
    @ParameterizedTest
    @CsvSource({
        "1, 420, 8.20",
        "1, 3000, 7.34",
        "1, 6000, 7.04",
        "2, 10000, 7.12",
        "0.5, 1000, 7.52"
    })
    void respired_carbon_keeps_a_solution_from_the_ph_of_open_water(
            double alkalinity, double ppm, double ph) {
        Composition water = Composition.WATER.with(Component.NA, alkalinity);
        assertEquals(ph, Acidity.phInAir(water, 25, ppm), 0.03);
    }
}
