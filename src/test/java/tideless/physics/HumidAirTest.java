package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.hummeling.if97.IF97;
import com.hummeling.if97.OutOfRangeException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HumidAirTest {
    /** Wagner and Pruss (1993), IAPWS SR1-86(1992), Pa; a reference for checking only. */
    static double wagnerPrussPa(double tempC) {
        double tempK = tempC + 273.15;
        double x = 1 - tempK / 647.096;
        return 22.064e6
                * Math.exp(
                        647.096
                                / tempK
                                * (-7.85951783 * x
                                        + 1.84408259 * Math.pow(x, 1.5)
                                        - 11.7866497 * Math.pow(x, 3)
                                        + 22.6807411 * Math.pow(x, 3.5)
                                        - 15.9618719 * Math.pow(x, 4)
                                        + 1.80122502 * Math.pow(x, 7.5)));
    }

    // Half the last printed digit where the same form is meant; Tetens 0.15 % from the steam table,
    // the accuracy its Javadoc states; latent heat 0.04 %, the linear form's distance up to 45
    // degC.
    @ParameterizedTest(name = "{0} degC")
    @CsvFileSource(resources = "saturated-vapour.csv", useHeadersInDisplayName = true)
    void saturation_pressure_and_latent_heat_agree_with_the_steam_table(
            double tempC,
            double wagnerPruss,
            double hylandWexler,
            double tetens,
            double latentLinear,
            double latentSteam) {
        double pressure = 1e-3 * HumidAir.saturationPressurePa(tempC);
        assertEquals(tetens, pressure, 5.1e-6);
        assertEquals(wagnerPruss, pressure, 1.5e-3 * wagnerPruss);
        assertEquals(hylandWexler, pressure, 1.5e-3 * hylandWexler);
        assertEquals(wagnerPruss, 1e-3 * wagnerPrussPa(tempC), 5.1e-6);
        assertEquals(latentLinear, 1e-6 * HumidAir.latentHeatJPerKg(tempC), 5.1e-5);
        assertEquals(latentSteam, 1e-6 * HumidAir.latentHeatJPerKg(tempC), 4e-4 * latentSteam);
    }

    @ParameterizedTest
    @ValueSource(doubles = {5, 10, 15, 20, 25, 30, 35, 40, 45})
    void saturation_pressure_agrees_with_the_industrial_formulation(double tempC)
            throws OutOfRangeException {
        double expected = new IF97(IF97.UnitSystem.SI).saturationPressureT(tempC + 273.15);
        assertEquals(expected, HumidAir.saturationPressurePa(tempC), 1.5e-3 * expected);
    }

    // FAO-56 (Allen et al. 1998), annex 2, tables 2.3 and 2.4: recomputed from the equations, spot
    // values second hand; half the last digit.
    @ParameterizedTest(name = "{0} degC")
    @CsvSource({
        "0, 0.6108, 0.04445",
        "1, 0.6567, 0.04739",
        "5, 0.8723, 0.06089",
        "10, 1.2280, 0.08228",
        "15, 1.7053, 0.10979",
        "20, 2.3383, 0.14474",
        "22, 2.6439, 0.16115",
        "25, 3.1678, 0.18868",
        "28, 3.7799, 0.22008",
        "30, 4.2431, 0.24336",
        "35, 5.6227, 0.31076",
        "40, 7.3756, 0.39307"
    })
    void pressure_and_slope_agree_with_the_tables_of_FAO_56(
            double tempC, double kPa, double slopeKPaPerK) {
        assertEquals(kPa, 1e-3 * HumidAir.saturationPressurePa(tempC), 5.1e-5);
        assertEquals(slopeKPaPerK, 1e-3 * HumidAir.saturationSlopePaPerK(tempC), 5.1e-6);
    }

    // FAO-56, annex 2, tables 2.1 and 2.2 (recomputed) and example 2 (1800 m: 81.8 kPa, 0.054).
    @ParameterizedTest(name = "{0} m")
    @CsvSource({
        "0, 101.30, .0674", "100, 100.12, .0666", "200, 98.96, .0658", "500, 95.53, .0635",
        "1000, 90.02, .0599", "1500, 84.78, .0564", "1800, 81.76, .0544", "2000, 79.79, .0531",
        "3000, 70.51, .0469"
    })
    void pressure_falls_with_altitude_as_FAO_56_has_it(
            double altitudeM, double kPa, double psychrometricKPaPerK) {
        assertEquals(kPa, 1e-3 * HumidAir.pressurePa(altitudeM), 5.1e-3);
        // Eq. 8 with its fixed latent heat of 2.45 MJ/kg, which holds at 21.6 degC: 0.5 %.
        assertEquals(
                psychrometricKPaPerK,
                1e-3 * HumidAir.psychrometricPaPerK(HumidAir.pressurePa(altitudeM), 21.6),
                5e-3 * psychrometricKPaPerK);
    }

    // Recomputed independently: cp P/(0.622 latent heat).
    @ParameterizedTest(name = "{0} kPa, {1} degC")
    @CsvSource({
        "101.325, 10, 0.06661", "101.325, 20, 0.06725", "101.325, 30, 0.06790",
        "95, 25, 0.06336", "80, 10, 0.05259", "80, 30, 0.05361"
    })
    void the_psychrometric_constant_uses_the_latent_heat_of_its_temperature(
            double kPa, double tempC, double expectedKPaPerK) {
        assertEquals(
                expectedKPaPerK, 1e-3 * HumidAir.psychrometricPaPerK(1e3 * kPa, tempC), 5.1e-6);
    }

    // FAO-56, example 3: 24.5 degC 3.075 kPa, 15 degC 1.705 kPa, mean 2.39; example 4: 25.6/19.5
    // degC at 1200 m, 1.91 kPa; examples 5 and 6: 1.70 (1.69, 1.78) and 0.91 kPa. Printed digits.
    @Test
    void vapour_pressures_agree_with_the_worked_examples_of_FAO_56() {
        double warm = HumidAir.saturationPressurePa(24.5);
        double cool = HumidAir.saturationPressurePa(15);
        assertEquals(3075, warm, 0.5);
        assertEquals(1705, cool, 0.5);
        assertEquals(2390, 0.5 * (warm + cool), 5);
        double pressure = HumidAir.pressurePa(1200);
        assertEquals(87_900, pressure, 50);
        assertEquals(2267, HumidAir.saturationPressurePa(19.5), 0.5);
        assertEquals(
                1910, ClosedForms.psychrometerVapourPressurePa(25.6, 19.5, 0.000662, pressure), 5);
        double atMin = HumidAir.saturationPressurePa(18);
        double atMax = HumidAir.saturationPressurePa(25);
        double vapour =
                0.5 * (HumidAir.vapourPressurePa(18, 0.82) + HumidAir.vapourPressurePa(25, 0.54));
        assertEquals(2064, atMin, 0.5);
        assertEquals(3168, atMax, 0.5);
        assertEquals(1700, vapour, 5);
        assertEquals(1690, HumidAir.vapourPressurePa(18, 0.82), 5);
        assertEquals(1780, 0.68 * 0.5 * (atMin + atMax), 5);
        assertEquals(910, 0.5 * (atMin + atMax) - vapour, 5);
    }

    // Recomputed independently, Tetens; half the last digit.
    @ParameterizedTest(name = "{0} degC, {1}")
    @CsvSource({
        "18, 0.40, 1.2384", "20, 0.60, 0.9353", "22, 0.50, 1.3220", "22, 0.70, 0.7932",
        "24, 0.60, 1.1936", "26, 0.90, 0.3361", "28, 0.60, 1.5120", "30, 0.80, 0.8486"
    })
    void the_vapour_pressure_deficit_agrees_with_the_table(
            double tempC, double humidityFrac, double expectedKPa) {
        double vapour = HumidAir.vapourPressurePa(tempC, humidityFrac);
        assertEquals(expectedKPa, 1e-3 * HumidAir.vapourPressureDeficitPa(tempC, vapour), 5.1e-5);
    }

    // Recomputed independently: air 24 degC 60 %, leaf 22 degC.
    @Test
    void the_deficit_of_a_cool_leaf_is_smaller_than_that_of_the_air() {
        double vapour = HumidAir.vapourPressurePa(24, 0.6);
        assertEquals(853.6, HumidAir.vapourPressureDeficitPa(22, vapour), 0.06);
    }

    // The table uses Wagner and Pruss: up to 0.13 % in the vapour, hence 2e-4 in density and 3e-4
    // in
    // the heat capacity.
    @ParameterizedTest(name = "{0} degC, {1} %")
    @CsvFileSource(resources = "moist-air.csv", useHeadersInDisplayName = true)
    void moist_air_agrees_with_the_table(
            double tempC,
            double humidityPct,
            double vapourKPa,
            double mixingGPerKg,
            double densityKgPerM3,
            double heatCapacityJPerKgK,
            double heatCapacityJPerM3K) {
        double vapour = HumidAir.vapourPressurePa(tempC, 0.01 * humidityPct);
        assertEquals(1e3 * vapourKPa, vapour, 0.05 + 1.5e-3 * vapour);
        assertEquals(
                densityKgPerM3,
                HumidAir.densityKgPerM3(tempC, vapour, 101_325),
                2e-4 * densityKgPerM3);
        assertEquals(
                heatCapacityJPerM3K,
                HumidAir.heatCapacityJPerM3K(tempC, vapour, 101_325),
                3e-4 * heatCapacityJPerM3K);
    }

    // Dry air at one atmosphere, recomputed independently (Sutherland, Campbell and Norman); half
    // the last digit, 0.3 % for the conductivity's own straight line.
    @ParameterizedTest(name = "{0} degC")
    @CsvSource({
        "10, 1.416, .0249, 22.7",
        "20, 1.506, .0256, 24.2",
        "25, 1.552, .0260, 25.0",
        "30, 1.598, .0263, 25.7"
    })
    void dry_air_conducts_as_tabled(
            double tempC, double viscosity5, double conductivity, double diffusivity6) {
        assertEquals(1e-5 * viscosity5, HumidAir.kinematicViscosityM2PerS(tempC, 0, 101_325), 1e-8);
        assertEquals(conductivity, HumidAir.conductivityWPerMK(tempC), 1e-4);
        assertEquals(1e-6 * diffusivity6, HumidAir.vapourDiffusivityM2PerS(tempC, 101_325), 5.1e-8);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-5, 0, 12.3, 25, 41})
    void the_dew_point_gives_back_the_temperature_of_saturation(double tempC) {
        assertEquals(tempC, ClosedForms.dewPointC(HumidAir.saturationPressurePa(tempC)), 1e-9);
    }
}
