package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class OxygenTest {
    // Half the last digit (asked for: 0.5 %).
    @ParameterizedTest(name = "{0} degC")
    @CsvFileSource(resources = "oxygen.csv", useHeadersInDisplayName = true)
    void saturation_and_diffusivity_agree_with_the_recomputed_table(
            double tempC,
            double mgPerL,
            double umolPerL,
            double salt2,
            double salt5,
            double at500M,
            double at1000M,
            double at2000M,
            double diffusivity) {
        assertEquals(mgPerL, Oxygen.saturationMgPerL(tempC, 0, 101_325), 5.1e-4);
        assertEquals(
                umolPerL, Oxygen.saturationMgPerL(tempC, 0, 101_325) / 31.998e-3, 1e-3 * umolPerL);
        assertEquals(salt2, Oxygen.saturationMgPerL(tempC, 2, 101_325), 5.1e-4);
        assertEquals(salt5, Oxygen.saturationMgPerL(tempC, 5, 101_325), 5.1e-4);
        assertEquals(at500M, Oxygen.saturationMgPerL(tempC, 0, 95_461), 1e-3);
        assertEquals(at1000M, Oxygen.saturationMgPerL(tempC, 0, 89_875), 1e-3);
        assertEquals(at2000M, Oxygen.saturationMgPerL(tempC, 0, 79_495), 1e-3);
        assertEquals(diffusivity, 1e9 * ClosedForms.diffusivityM2PerS(tempC), 5.1e-4);
    }

    // EN 25814:1992, table (read second hand), three digits. 0.5 %.
    @ParameterizedTest(name = "{0} degC")
    @CsvSource({
        "0, 14.6",
        "5, 12.8",
        "10, 11.3",
        "15, 10.1",
        "18, 9.47",
        "20, 9.09",
        "22, 8.74",
        "24, 8.42",
        "25, 8.26",
        "28, 7.83",
        "30, 7.56"
    })
    void saturation_agrees_with_the_standard_table(double tempC, double mgPerL) {
        assertEquals(mgPerL, Oxygen.saturationMgPerL(tempC, 0, 101_325), 5e-3 * mgPerL);
    }

    // EN 25814: 0.0475 mg/L per g/kg of salt at 20 degC (read second hand); the mean slope over the
    // first 10 g/kg, 10 %: the standard's own is for sea water.
    @Test
    void salt_drives_oxygen_out_as_the_standard_has_it() {
        double fresh = Oxygen.saturationMgPerL(20, 0, 101_325);
        double salty = Oxygen.saturationMgPerL(20, 10, 101_325);
        assertEquals(0.0475, (fresh - salty) / 10, 0.1 * 0.0475);
    }

    // ISO 2533: 500 m 95.461, 1000 m 89.875, 2000 m 79.495 kPa (from memory). Half the last digit.
    @ParameterizedTest(name = "{0} m")
    @CsvSource({"0, 101.325", "500, 95.461", "1000, 89.875", "2000, 79.495"})
    void the_standard_atmosphere_thins_with_altitude(double altitudeM, double kPa) {
        assertEquals(kPa, 1e-3 * ClosedForms.standardPressurePa(altitudeM), 5.1e-4);
        assertEquals(
                1,
                HumidAir.pressurePa(altitudeM) / ClosedForms.standardPressurePa(altitudeM),
                5e-3);
    }

    // Recomputed independently: 8.26 to 2 mg/L over 10 mm of still water at 25 degC, 4.5041
    // mg/m2/h;
    // 9.09 mg/L over 50 mm at 20 degC, 28 mg/m2/d.
    @Test
    void still_water_hardly_lets_oxygen_through() {
        double perHour = 3600 * ClosedForms.diffusivityM2PerS(25) * (8.263 - 2) * 1e3 / 0.010;
        assertEquals(4.5041, perHour, 5e-3);
        double perDay = 86400 * ClosedForms.diffusivityM2PerS(20) * 9.092 * 1e3 / 0.050;
        assertEquals(28, perDay, 0.5);
    }
}
