package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Recomputed independently; half the last digit unless said. */
class HeatExchangeTest {
    // Foam lid 20 and 30 mm between still air on both faces, 3 mm plastic wall with water behind
    // it,
    // 25 mm foam with 8 W/m2/K on the outside.
    @ParameterizedTest(name = "{1} m of {2} W/m/K")
    @CsvSource({
        "0.10, 0.020, 0.035, 0.10, 1.296, 6e-4", "0.10, 0.030, 0.035, 0.10, 0.946, 6e-4",
        "0.13, 0.003, 0.2, 0.005, 6.67, 5e-3", "0.125, 0.025, 0.035, 0, 1.1915, 5.1e-5"
    })
    void walls_and_lids_transmit_as_stated(
            double insideM2KPerW,
            double thicknessM,
            double conductivity,
            double outsideM2KPerW,
            double expected,
            double tolerance) {
        assertEquals(
                expected,
                HeatExchange.transmittanceWPerM2K(
                        insideM2KPerW, thicknessM, conductivity, outsideM2KPerW),
                tolerance);
    }

    @ParameterizedTest(name = "{0} kg, {1} m2, {2} W/m2/K")
    @CsvSource({
        "10, 0.5, 8, 4180, 2.9028, 0.79618, 2.4822",
        "20, 0.6, 8, 4180, 4.8380, 0.61967, 3.4472",
        "20, 0.6, 2, 4180, 19.352, 0.19365, 5.2556",
        "40, 1.0, 8, 4180, 5.8056, 0.54964, 3.7772",
        "5, 0.3, 10, 4180, 1.9352, 0.89205, 1.7912"
    })
    void time_constant_swing_and_lag_agree(
            double massKg,
            double areaM2,
            double transmittance,
            double heatCapacity,
            double expectedH,
            double expectedSwing,
            double expectedLagH) {
        double constant = HeatExchange.timeConstantS(massKg, heatCapacity, areaM2 * transmittance);
        assertEquals(expectedH, constant / 3600, 5.1e-4);
        assertEquals(expectedSwing, HeatExchange.swingFrac(constant, 86400), 5.1e-6);
        assertEquals(expectedLagH, HeatExchange.lagS(constant, 86400) / 3600, 5.1e-5);
    }

    // The second set takes 998.2 kg/m3 and 4182 J/kg/K.
    @ParameterizedTest(name = "{0} L, {1} m2, {2} W/m2/K")
    @CsvSource({"10, 0.15, 10, 7.73", "20, 0.4, 5, 11.60", "40, 0.8, 3, 19.33"})
    void the_second_set_of_time_constants_agrees(
            double litres, double areaM2, double transmittance, double expectedH) {
        assertEquals(
                expectedH,
                HeatExchange.timeConstantS(0.9982 * litres, 4182, areaM2 * transmittance) / 3600,
                5.1e-3);
    }

    @ParameterizedTest(name = "{0} h")
    @CsvSource({"4, 0.691, 3.09", "8, 0.431, 4.30", "24, 0.157, 5.40"})
    void the_second_set_of_swings_agrees(double constantH, double swing, double lagH) {
        assertEquals(swing, HeatExchange.swingFrac(3600 * constantH, 86400), 5.1e-4);
        assertEquals(lagH, HeatExchange.lagS(3600 * constantH, 86400) / 3600, 5.1e-3);
    }

    // The closed form of the first-order step: 1 - 1/e of the way after one time constant.
    @Test
    void a_step_is_followed_exponentially() {
        assertEquals(10 + 10 / Math.E, HeatExchange.afterC(20, 10, 7200, 7200), 1e-12);
        double half = HeatExchange.afterC(20, 10, 3600, 7200);
        assertEquals(
                HeatExchange.afterC(20, 10, 7200, 7200),
                HeatExchange.afterC(half, 10, 3600, 7200),
                1e-12);
    }

    // White lid 0.3 and black lid 0.9, 600 W/m2, 0.2 m2, 4 W/K: 9 K and 27 K.
    @Test
    void a_black_lid_cooks_the_roots() {
        assertEquals(9, HeatExchange.steadyRiseK(0.3, 600, 0.2, 4), 1e-12);
        assertEquals(27, HeatExchange.steadyRiseK(0.9, 600, 0.2, 4), 1e-12);
    }

    // Emissivity 0.9 at 22 degC: 5.25 W/m2/K.
    @Test
    void radiation_between_like_temperatures_is_linear() {
        assertEquals(5.25, HeatExchange.radiationWPerM2K(0.9, 22), 5e-3);
    }
}
