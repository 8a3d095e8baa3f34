package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class OpenWaterTest {
    private static final double LENGTH_M = 0.09375; // 0.5 m x 0.3 m: area over perimeter
    private static final double RUN_M = 0.5;
    private static final double ATM_PA = 101_325;
    private static final double MM_PER_DAY = 1.0 / 86400; // kg/m2/s

    private static double vapour(double airTempC, double humidityPct) {
        return HumidAir.vapourPressurePa(airTempC, 0.01 * humidityPct);
    }

    private static double mmPerDay(double transferMPerS, double water, double air, double vapour) {
        return transferMPerS
                * ClosedForms.vapourDensityDifferenceKgPerM3(water, air, vapour)
                / MM_PER_DAY;
    }

    // 2 %: the table uses the Wagner-Pruss vapour pressure and its own air properties. Where the
    // vapour difference nearly vanishes (18 degC under 22 degC, 80 %) only the sign and the size.
    @ParameterizedTest(name = "water {0}, air {1} degC, {2} %")
    @CsvFileSource(resources = "open-water.csv", useHeadersInDisplayName = true)
    void evaporation_agrees_with_the_sherwood_table(
            double water,
            double air,
            double humidityPct,
            String surfaceAir,
            double rayleigh,
            double freeMmPerS,
            double stillMmPerDay,
            double forcedMmPerDay,
            double combinedMmPerDay) {
        double vapour = vapour(air, humidityPct);
        double free = ClosedForms.freeMassTransferMPerS(water, air, vapour, LENGTH_M, ATM_PA);
        double forced =
                OpenWater.forcedMassTransferMPerS(0.2, RUN_M, 0.5 * (water + air), vapour, ATM_PA);
        double both = OpenWater.massTransferMPerS(water, air, vapour, 0.2, LENGTH_M, RUN_M, ATM_PA);
        assertEquals(freeMmPerS, 1e3 * free, 0.02 * freeMmPerS);
        double still = mmPerDay(free, water, air, vapour);
        double blended = mmPerDay(both, water, air, vapour);
        if (Math.abs(stillMmPerDay) < 0.1) {
            assertTrue(still < 0 && still > -0.1, "condensing a little, was " + still);
            assertTrue(blended < 0 && blended > -0.1, "condensing a little, was " + blended);
            return;
        }
        assertEquals(stillMmPerDay, still, 0.02 * stillMmPerDay);
        assertEquals(forcedMmPerDay, mmPerDay(forced, water, air, vapour), 0.02 * forcedMmPerDay);
        if (surfaceAir.equals("light")) {
            assertEquals(combinedMmPerDay, blended, 0.02 * combinedMmPerDay);
        } else {
            // The table calls its combined figure an upper value here.
            assertTrue(blended <= 1.02 * combinedMmPerDay);
            assertTrue(blended >= 0.98 * Math.max(stillMmPerDay, forcedMmPerDay));
        }
    }

    // A second independent recomputation (dry-air viscosity, hence 3 %), mm/d.
    @ParameterizedTest(name = "water {0}, air {1} degC, {2} %")
    @CsvSource({
        "22, 22, 50, 2.14",
        "20, 22, 50, 0.73",
        "18, 22, 50, 0.75",
        "25, 22, 50, 4.02",
        "25, 25, 50, 2.68",
        "28, 24, 60, 4.52"
    })
    void still_air_agrees_with_the_second_recomputation(
            double water, double air, double humidityPct, double expectedMmPerDay) {
        double vapour = vapour(air, humidityPct);
        double free = ClosedForms.freeMassTransferMPerS(water, air, vapour, 0.0938, ATM_PA);
        assertEquals(expectedMmPerDay, mmPerDay(free, water, air, vapour), 0.03 * expectedMmPerDay);
    }

    // Shah (2002; 18 % mean deviation over 11 data sets) 2.36, and the pool equation scaled by the
    // measured 74 % of Smith, Lof and Jones (1998) 3.07 mm/d bound the still-air figure at 22 degC,
    // 50 %: accepted between 2.0 and 3.1.
    @Test
    void isothermal_water_lies_between_the_empirical_pool_forms() {
        double vapour = vapour(22, 50);
        double mm =
                SettledWater.evaporationKgPerM2S(22, 22, vapour, 0, LENGTH_M, ATM_PA) / MM_PER_DAY;
        assertTrue(mm > 2.0 && mm < 3.1, "was " + mm);
    }

    // The correlation alone gives 0.141 mm/d over water at 21 degC under air of 22 degC, 60 %, for
    // want of any density difference; the draught's floor is 0.754 mm/d at equal temperatures.
    @Test
    void the_draught_keeps_neutral_air_from_stopping_evaporation() {
        double vapour = vapour(22, 60);
        double still =
                mmPerDay(
                        ClosedForms.freeMassTransferMPerS(21, 22, vapour, LENGTH_M, ATM_PA),
                        21,
                        22,
                        vapour);
        assertTrue(still < 0.25, "free convection alone, was " + still);
        double floor =
                OpenWater.forcedMassTransferMPerS(
                        OpenWater.DRAUGHT_M_PER_S, RUN_M, 22, vapour, ATM_PA);
        assertEquals(0.754, mmPerDay(floor, 22, 22, vapour), 0.02 * 0.754);
        double real =
                SettledWater.evaporationKgPerM2S(21, 22, vapour, 0, LENGTH_M, ATM_PA) / MM_PER_DAY;
        assertTrue(real > 0.55 && real < 0.9, "was " + real);
    }

    // Recomputed independently with the larger of still and 0.05 m/s instead of our blend, and a
    // run
    // of 0.5 m instead of 4 x 0.09375 m: 19.64 degC and 0.592 mm/d. 0.25 K and 12 %, the size of
    // these two differences.
    @Test
    void water_insulated_below_settles_well_under_the_air() {
        double vapour = vapour(22, 60);
        double water = SettledWater.equilibriumTempC(22, vapour, 0, LENGTH_M, ATM_PA, 5.7, 0);
        assertEquals(19.64, water, 0.25);
        double mm =
                SettledWater.evaporationKgPerM2S(water, 22, vapour, 0, LENGTH_M, ATM_PA)
                        / MM_PER_DAY;
        assertEquals(0.592, mm, 0.12 * 0.592);
        double held =
                SettledWater.evaporationKgPerM2S(22, 22, vapour, 0, LENGTH_M, ATM_PA) / MM_PER_DAY;
        assertTrue(held > 2.2 * mm, "holding the water at 22 degC gives " + held);
    }

    // Second recomputation, without a draught: 22 degC, 50 %: 18.8 degC with the room's radiation,
    // 15.0 degC without any. Without radiation the coefficient cancels, so 0.2 K; with it 0.4 K.
    @Test
    void without_radiation_the_water_settles_near_the_wet_bulb() {
        double vapour = vapour(22, 50);
        assertEquals(
                15.0, SettledWater.equilibriumTempC(22, vapour, 0, LENGTH_M, ATM_PA, 0, 0), 0.2);
        assertEquals(
                18.8, SettledWater.equilibriumTempC(22, vapour, 0, LENGTH_M, ATM_PA, 5.7, 0), 0.4);
    }

    @Test
    void heat_follows_mass_by_the_analogy() {
        double vapour = vapour(22, 50);
        double transfer = OpenWater.massTransferMPerS(26, 22, vapour, 0.3, LENGTH_M, ATM_PA);
        double heat = SettledWater.sensibleHeatWPerM2K(26, 22, vapour, 0.3, LENGTH_M, ATM_PA);
        // (alpha/D)^(2/3) = 0.91 and rho cp = 1205 J/m3/K at 22 degC (recomputed independently).
        assertEquals(0.91 * 1205 * transfer, heat, 0.02 * heat);
    }

    // A grid, because random trials pass by the narrow place near no density difference where a
    // larger surface breaks this law (from 0.2 m of area over perimeter on, up to 0.04 mm/d at 0.5
    // m).
    @Test
    void moister_air_never_evaporates_more_on_a_fine_grid() {
        for (double length : new double[] {0.02, LENGTH_M, 0.175}) {
            for (int water = 2; water <= 40; water += 2) {
                for (int air = 2; air <= 40; air++) {
                    double before = Double.POSITIVE_INFINITY;
                    for (int humidity = 0; humidity <= 100; humidity++) {
                        double now =
                                SettledWater.evaporationKgPerM2S(
                                        water, air, vapour(air, humidity), 0, length, ATM_PA);
                        assertTrue(
                                now <= before + 1e-15,
                                "water " + water + " air " + air + " humidity " + humidity);
                        before = now;
                    }
                }
            }
        }
    }

    // Level plates, McAdams: the greater of both correlations, whichever is asked for first.
    @Test
    void free_convection_is_the_greater_of_both_correlations_at_any_size() {
        double vapour = vapour(22, 50);
        double smallest = Double.POSITIVE_INFINITY;
        double greatest = 0;
        for (double length = 1e-3; length < 3; length *= 1.01) {
            double mean = 0.5 * (26 + 22);
            double density = HumidAir.densityKgPerM3(mean, vapour, ATM_PA);
            double viscosity = HumidAir.viscosityPaS(mean) / density;
            double diffusivity = HumidAir.vapourDiffusivityM2PerS(mean, ATM_PA);
            double excess =
                    HumidAir.densityKgPerM3(22, vapour, ATM_PA)
                            - HumidAir.densityKgPerM3(
                                    26, HumidAir.saturationPressurePa(26), ATM_PA);
            double rayleigh =
                    9.80665
                            * length
                            * length
                            * length
                            * excess
                            / (density * viscosity * diffusivity);
            double sherwood = Math.max(0.54 * Math.pow(rayleigh, 0.25), 0.15 * Math.cbrt(rayleigh));
            double expected = sherwood * diffusivity / length;
            assertEquals(
                    expected,
                    ClosedForms.freeMassTransferMPerS(26, 22, vapour, length, ATM_PA),
                    1e-12 * expected);
            smallest = Math.min(smallest, rayleigh);
            greatest = Math.max(greatest, rayleigh);
        }
        assertTrue(smallest < 1e2 && greatest > 1e8, "both sides of the crossing");
    }
}
