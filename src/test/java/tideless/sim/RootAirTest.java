package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tideless.physics.Oxygen;

class RootAirTest {
    private static final double SATURATED = Oxygen.saturationMgPerL(25, 0, 101_325);

    /** 20 L under 0.2 m2 with 30 mm of air, 8 g of wet roots, a day long. */
    private static RootAir afterADay(boolean aerated) {
        RootAir air = new RootAir(101_325, 25, true, aerated);
        for (int hour = 0; hour < 24; hour++) {
            air.step(0.02, 0.2, 0.03, 25, 8, 0, 3600);
        }
        return air;
    }

    @Test
    void roots_draw_a_still_solution_down_and_an_aerated_one_not() {
        assertTrue(afterADay(false).likelyGPerM3() < 0.5 * SATURATED);
        RootAir aerated = afterADay(true);
        assertEquals(SATURATED, aerated.likelyGPerM3(), 1e-12);
        assertEquals(SATURATED, aerated.poorestGPerM3(), 1e-12);
        assertEquals(SATURATED, aerated.richestGPerM3(), 1e-12);
    }

    @Test
    void where_oxygen_will_soon_be_is_where_the_next_step_finds_it() {
        RootAir air = new RootAir(101_325, 25, false, false);
        air.step(0.02, 0.2, 0.03, 25, 8, 0.001, 3600);
        double soon = air.soonGPerM3(2 * 3600);
        assertTrue(soon < 0.9 * air.likelyGPerM3());
        air.step(0.02, 0.2, 0.03, 25, 8, 0.002, 2 * 3600);
        assertEquals(air.likelyGPerM3(), soon, 1e-12);
        RootAir aerated = afterADay(true);
        assertEquals(aerated.likelyGPerM3(), aerated.soonGPerM3(3600));
    }

    @Test
    void an_aerated_solution_stands_with_the_carbon_dioxide_of_the_air() {
        assertEquals(420, afterADay(true).carbonDioxidePpm(420, 25), 1e-9);
        assertTrue(afterADay(false).carbonDioxidePpm(420, 25) > 2000);
    }

    @Test
    void an_aerated_solution_that_warms_holds_what_warm_water_holds() {
        RootAir air = new RootAir(101_325, 15, false, true);
        air.step(0.02, 0.2, 0.03, 30, 8, 0, 3600);
        assertEquals(Oxygen.saturationMgPerL(30, 0, 101_325), air.likelyGPerM3(), 1e-12);
    }

    // The oxygen that cold water could hold and has not got yet is no oxygen that roots breathed.
    @Test
    void cooling_and_warming_leave_the_carbon_dioxide_of_a_tray_without_roots_alone() {
        RootAir air = new RootAir(101_325, 25, false, false);
        for (double tempC : new double[] {15, 15, 25, 25}) {
            air.step(0.02, 0.2, 0.03, tempC, 0, 0, 3600);
            // Microbes breathe 0.02 mg/L an hour, 22 ppm at 25 degC; cooling by 10 K would be 2000.
            assertEquals(420, air.carbonDioxidePpm(420, tempC), 4 * 22);
        }
    }

    // The oxygen that warm water lets go leaves within days, and is no longer counted then.
    @Test
    void a_tray_that_was_warmed_long_ago_stands_as_one_that_was_always_warm() {
        RootAir always = new RootAir(101_325, 25, false, false);
        RootAir warmed = new RootAir(101_325, 15, false, false);
        for (int hour = 0; hour < 200; hour++) {
            always.step(0.02, 0.2, 0.03, 25, 1, 0, 3600);
            warmed.step(0.02, 0.2, 0.03, 25, 1, 0, 3600);
        }
        assertEquals(always.respiredMolPerM3(), warmed.respiredMolPerM3(), 1e-6);
        assertTrue(always.respiredMolPerM3() > 0.01);
    }

    // Roots' carbon dioxide neither leaves nor comes because the water warms by a few kelvin.
    @Test
    void warming_does_not_take_away_what_roots_have_breathed_out() {
        RootAir even = new RootAir(101_325, 18, false, false);
        RootAir warmed = new RootAir(101_325, 18, false, false);
        for (int hour = 0; hour < 48; hour++) {
            even.step(0.005, 0.2, 0.03, 18, 2, 0, 3600);
            warmed.step(0.005, 0.2, 0.03, 18, 2, 0, 3600);
        }
        double before = even.respiredMolPerM3();
        warmed.step(0.005, 0.2, 0.03, 22, 2, 0, 600);
        assertTrue(before > 0.02, "" + before);
        assertEquals(before, warmed.respiredMolPerM3(), 0.03 * before);
    }
}
