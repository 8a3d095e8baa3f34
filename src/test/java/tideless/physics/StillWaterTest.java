package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StillWaterTest {
    private static final double HOUR = 3600;

    // Worked by hand for 1 m2 from the balance k A (S - C) = D C / (C + 0.5): transfer in mm/h,
    // full demand in mg/h, steady oxygen in mg/L to four digits; 1 % covers the rounding of the
    // demands and of the saturation.
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "O1, 6, 25, 49.0, 1.841",
        "O2, 6, 30, 69.3, 0.725",
        "O3, 6, 15, 24.5, 6.301",
        "O4, 6, 25, 12.25, 6.370",
        "O5, 6, 25, 98.0, 0.458",
        "O6, 4, 24, 38.2, 1.394",
        "O7, 6, 24, 15.3, 6.067",
        "O8, 4, 27, 50.1, 0.693",
        "O9, 4, 18, 26.9, 3.578",
        "O10, 4, 24, 34.3, 1.751"
    })
    void still_water_settles_where_supply_meets_demand(
            String id, double mmPerH, double tempC, double demandMgPerH, double mgPerL) {
        double steady =
                StillWater.steadyGPerM3(
                        mmPerH * 1e-3 / HOUR,
                        Oxygen.saturationMgPerL(tempC, 0, 101_325),
                        0,
                        0,
                        demandMgPerH * 1e-3 / HOUR,
                        0.5,
                        0);
        assertEquals(mgPerL, steady, 0.01 * mgPerL);
    }

    // Recommended figures: 0.1 cm/h touching, 0.6 cm/h from 10 mm of air on, straight between.
    @ParameterizedTest
    @CsvSource({"-0.02, 0.1", "0, 0.1", "0.005, 0.35", "0.0099, 0.595", "0.01, 0.6", "0.05, 0.6"})
    void the_surface_passes_air_by_the_gap_above_it(double gapM, double cmPerH) {
        assertEquals(cmPerH, StillWater.transferMPerS(gapM) * 100 * HOUR, 1e-9);
    }

    @Test
    void without_roots_water_is_saturated_and_with_microbes_alone_a_little_below() {
        assertEquals(8.0, StillWater.steadyGPerM3(2e-6, 8, 0, 0, 0, 0.5, 0), 1e-12);
        // 8 - B / kA = 8 - 1e-6 / 2e-6
        assertEquals(7.5, StillWater.steadyGPerM3(2e-6, 8, 0, 0, 0, 0.5, 1e-6), 1e-12);
        assertEquals(0, StillWater.steadyGPerM3(2e-6, 8, 0, 0, 1e-5, 0.5, 1e-3));
    }

    // Inflow of its own strength counts as so much more surface: 1e-6 of 4 beside 1e-6 of 8 is 6.
    @Test
    void what_flows_in_brings_its_oxygen() {
        assertEquals(6.0, StillWater.steadyGPerM3(1e-6, 8, 1e-6, 4, 0, 0.5, 0), 1e-12);
    }

    // Without roots the course is exponential: C = S - (S - C0) exp(-k A t / V). One implicit step
    // of a twentieth of the time constant errs by half its square, 0.12 % of the gap.
    @Test
    void oxygen_follows_in_the_time_of_its_surface_and_depth() {
        double way = 1.6667e-6;
        double volume = 0.05;
        double tau = volume / way;
        double after = StillWater.afterGPerM3(2, volume, way, 8, 0, 0, 0, 0.5, 0, tau / 20);
        assertEquals(8 - 6 * Math.exp(-0.05), after, 6 * 0.00125);
    }

    // Closed form of the balance of roots: t = V integral dC / (k A (S - C) - D C / (C + K)), by
    // partial fractions on the two roots of the quadratic.
    @Test
    void the_course_with_roots_closes_in_on_the_exact_one_as_the_step_is_halved() {
        double way = StillWater.FREE_M_PER_S;
        double demand = 49e-3 / HOUR;
        double start = 8;
        double end = 4;
        double p = 0.5 + demand / way - 8.26;
        double high = (-p + Math.sqrt(p * p + 4 * 8.26 * 0.5)) / 2;
        double low = (-p - Math.sqrt(p * p + 4 * 8.26 * 0.5)) / 2;
        double a = (high + 0.5) / (high - low);
        double b = (low + 0.5) / (high - low);
        double exactS =
                0.05
                        / way
                        * (a * Math.log((start - high) / (end - high))
                                - b * Math.log((start - low) / (end - low)));
        double coarse = Math.abs(course(start, way, demand, exactS, 20) - end);
        double fine = Math.abs(course(start, way, demand, exactS, 40) - end);
        assertTrue(coarse < 0.1, "was " + coarse);
        assertEquals(2, coarse / fine, 0.2); // first order
    }

    private static double course(double start, double way, double demand, double spanS, int steps) {
        double c = start;
        for (int i = 0; i < steps; i++) {
            c = StillWater.afterGPerM3(c, 0.05, way, 8.26, 0, 0, demand, 0.5, 0, spanS / steps);
        }
        return c;
    }

    // 1 meq/L of citric acid burns with 68 mg/L of oxygen: without exchange water at 25 degC is
    // empty when 8.263 / 68 = 12.15 % of it is gone.
    @Test
    void a_burning_dose_of_citric_acid_empties_the_water() {
        double burntPerS = 68.0 / (24 * HOUR);
        double justBefore = 0.1210 * 24 * HOUR;
        double justAfter = 0.1220 * 24 * HOUR;
        double saturated = Oxygen.saturationMgPerL(25, 0, 101_325);
        assertTrue(
                StillWater.afterGPerM3(
                                saturated, 1, 0, saturated, 0, 0, 0, 0.5, burntPerS, justBefore)
                        > 0.02);
        assertEquals(
                0,
                StillWater.afterGPerM3(
                        saturated, 1, 0, saturated, 0, 0, 0, 0.5, burntPerS, justAfter));
    }

    @Test
    void a_long_step_ends_at_rest_and_never_below_nothing() {
        double steady = StillWater.steadyGPerM3(1e-6, 8, 0, 0, 5e-5, 0.5, 0);
        assertEquals(
                steady, StillWater.afterGPerM3(8, 0.05, 1e-6, 8, 0, 0, 5e-5, 0.5, 0, 1e9), 1e-3);
        assertTrue(StillWater.afterGPerM3(0, 0.05, 1e-6, 8, 0, 0, 5e-5, 0.5, 1, 600) >= 0);
    }
}
