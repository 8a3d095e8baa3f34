package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.physics.Light.Source;

class LightTest {
    // Thimijan and Heins (1983), HortScience 18(6), 818-822, second hand; the last column is plain
    // division, half the last digit.
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "SUN_AND_SKY, 54, 4.57, 185.2", "BLUE_SKY, 52, 4.24, 192.3",
        "COOL_WHITE_FLUORESCENT, 74, 4.59, 135.1", "INCANDESCENT, 50, 5.0, 200.0",
        "HIGH_PRESSURE_SODIUM, 82, 4.98, 122.0", "METAL_HALIDE, 71, 4.59, 140.8"
    })
    void lamps_convert_as_thimijan_and_heins_have_it(
            Source source, double luxPerPpfd, double umolPerJ, double at10000Lux) {
        assertEquals(luxPerPpfd, Light.ppfdToLux(1, source), 0);
        assertEquals(1 / umolPerJ, Light.ppfdToWPerM2(1, source), 1e-15);
        assertEquals(at10000Lux, Light.luxToPpfdUmolPerM2S(10_000, source), 0.051);
    }

    // Planck's law: 0.4 to 0.7 um of a black body of 5800 K carries 4.564 umol per J (recomputed
    // independently); the sun's row lies within 0.5 %. Photons of 450 and 660 nm: 3.762 and 5.517.
    @Test
    void photons_per_joule_follow_from_plancks_law() {
        double photons = 0;
        double energy = 0;
        for (int i = 0; i < 3000; i++) {
            double wave = 1e-9 * (400 + 0.1 * (i + 0.5));
            double radiance = 1 / (Math.pow(wave, 5) * Math.expm1(0.0143877688 / (wave * 5800)));
            energy += radiance;
            photons += radiance * wave;
        }
        double umolPerJ = 1e6 * photons / energy / (6.62607015e-34 * 299_792_458 * 6.02214076e23);
        assertEquals(4.564, umolPerJ, 5e-4);
        assertEquals(umolPerJ, Source.SUN_AND_SKY.umolPerJ(), 0.005 * umolPerJ);
        double four = 5 / (4 / 5.517 + 1 / 3.762);
        assertEquals(four, Source.RED_BLUE_LED.umolPerJ(), 0.02 * four);
    }

    @ParameterizedTest(name = "{0} umol, {1} h")
    @CsvSource({
        "200, 16, 11.52",
        "250, 16, 14.40",
        "300, 14, 15.12",
        "500, 12, 21.60",
        "100, 12, 4.32",
        "50, 24, 4.32",
        "400, 18, 25.92"
    })
    void the_daily_light_is_flux_times_time(double ppfd, double hours, double expectedMol) {
        assertEquals(expectedMol, Light.dailyLightMolPerM2(ppfd, 3600 * hours), 1e-9);
    }

    // 500 umol of sun 109.41 W/m2; 2000 umol 108 000 lux; 200 W/m2 of global 411 umol, and 20 MJ
    // 41.1 mol (recomputed independently).
    @Test
    void sunlight_converts_as_stated() {
        assertEquals(109.41, Light.ppfdToWPerM2(500, Source.SUN_AND_SKY), 5e-3);
        assertEquals(108_000, Light.ppfdToLux(2000, Source.SUN_AND_SKY), 1e-9);
        double mol = Light.dailyLightMolPerM2(Light.globalToPpfdUmolPerM2S(20e6 / 86400), 86400);
        assertEquals(41.1, mol, 0.05);
    }

    // 24 W, 100 lm/W, 0.25 m2: 9600 lux at most; at 70 lux per umol 137.14 umol, 12 h 5.925 mol; 70
    // %
    // landing 120 umol. A mean of 40 000 lux would need 417 lm/W: no white lamp gives it.
    @Test
    void a_lamps_lumens_bound_its_lux() {
        assertEquals(9600, Light.lampMeanLux(24, 100, 0.25, 1), 1e-9);
        double ppfd = Light.luxToPpfdUmolPerM2S(9600, Source.WHITE_LED);
        assertEquals(137.14, ppfd, 5e-3);
        assertEquals(5.925, Light.dailyLightMolPerM2(ppfd, Light.litS(8 * 3600, 20 * 3600)), 5e-4);
        assertEquals(
                96,
                Light.luxToPpfdUmolPerM2S(Light.lampMeanLux(24, 100, 0.25, 0.7), Source.WHITE_LED),
                0.05);
        double needed = ClosedForms.neededLumenPerW(40_000, 24, 0.25);
        assertEquals(416.7, needed, 0.05);
        assertTrue(needed > Light.WHITE_LIGHT_LIMIT_LM_PER_W);
    }

    // 24 W for 12 h: 1.037 MJ. 100 lm/W of light at 320 lm/W: 69 % stays at the lamp.
    @Test
    void all_of_a_lamps_power_ends_as_heat() {
        assertEquals(1.037e6, ClosedForms.lampHeatJ(24, 12 * 3600), 500);
        assertEquals(0.69 * 24, ClosedForms.heatAtLampW(24, 100, 320), 0.005 * 24);
    }

    @Test
    void a_lamp_may_burn_past_midnight() {
        assertEquals(15 * 3600, Light.litS(20 * 3600, 11 * 3600), 0);
        assertEquals(86400, Light.litS(3600, 3600), 0);
    }

    @Test
    void a_lux_meter_says_nothing_about_red_and_blue() {
        assertTrue(Double.isNaN(Light.luxToPpfdUmolPerM2S(5000, Source.RED_BLUE_LED)));
    }
}
