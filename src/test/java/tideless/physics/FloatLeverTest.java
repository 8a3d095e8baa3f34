package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Statics recomputed independently, twice (two sets of geometry); half the last digit. */
class FloatLeverTest {
    private static final double DENSITY = 998.204; // water at 20 degC, Kell (1975)

    @ParameterizedTest(name = "{0} cm3, {1} g, lever {2}, seat {3} mm, S {4}")
    @CsvSource({
        "30, 0, 5, 2, 1, 47.746, 1.4684",
        "30, 0, 5, 5, 1, 7.6394, 1.4684",
        "30, 8, 5, 2, 1, 34.991, 1.0761",
        "30, 8, 5, 5, 1, 5.5986, 1.0761",
        "30, 8, 5, 5, 2, 2.7993, 1.0761",
        "30, 8, 5, 4, 2, 4.3739, 1.0761",
        "15, 5, 3, 4, 2, 1.1926, 0.29341",
        "15, 5, 3, 5, 2, 0.76326, 0.29341"
    })
    void the_greatest_head_and_its_force_agree(
            double floatCm3,
            double floatGram,
            double lever,
            double seatMm,
            double sealFactor,
            double expectedM,
            double expectedN) {
        double head =
                FloatLever.greatestHeadM(
                        1e-6 * floatCm3,
                        1e-3 * floatGram,
                        lever,
                        1e-3 * seatMm,
                        sealFactor,
                        DENSITY);
        assertEquals(expectedM, head, 2e-5 * expectedM);
        assertEquals(
                expectedN,
                FloatForms.shuttingForceN(head, 1e-3 * seatMm, sealFactor, DENSITY),
                4e-5 * expectedN);
    }

    @ParameterizedTest(name = "{0} m, seat {1} mm, S {2}, lever {3}")
    @CsvSource({
        "0.4, 2, 1, 5, 12, 0.5, 0.20944, 2.7094",
        "0.4, 4, 1, 5, 12, 1.0, 0.83776, 5.8378",
        "0.8, 4, 2, 5, 12, 1.0, 3.3510, 8.3510",
        "0.8, 5, 2, 5, 12, 1.0, 5.2360, 10.236",
        "0.4, 5, 2, 3, 8, 1.0, 6.5450, 9.5450"
    })
    void the_rise_to_shut_agrees(
            double headM,
            double seatMm,
            double sealFactor,
            double lever,
            double planCm2,
            double travelMm,
            double staticMm,
            double wholeMm) {
        double plan = 1e-4 * planCm2;
        assertEquals(
                staticMm,
                1e3 * headM * FloatForms.droopPerHead(1e-3 * seatMm, sealFactor, lever, plan),
                5.1e-5);
        assertEquals(
                wholeMm,
                1e3
                        * FloatForms.riseToShutM(
                                headM, 1e-3 * seatMm, sealFactor, lever, plan, 1e-3 * travelMm),
                5.1e-4);
    }

    // The other set: arms 60 and 8 mm, a float of 30 mm diameter; seat force, and extra immersion.
    @ParameterizedTest(name = "seat {0} mm, {1} m")
    @CsvSource({
        "2, 0.40, 0.01230, 0.237",
        "2, 1.0, 0.03075, 0.593",
        "4, 0.40, 0.04920, 0.948",
        "2, 10, 0.3075, 5.93"
    })
    void the_second_geometry_agrees(
            double seatMm, double headM, double forceN, double immersionMm) {
        double plan = 0.25 * Math.PI * 0.030 * 0.030;
        // Printed to four digits with rho g of 9789 N/m3: 5e-4 relative.
        assertEquals(
                forceN, FloatForms.shuttingForceN(headM, 1e-3 * seatMm, 1, DENSITY), 5e-4 * forceN);
        assertEquals(
                immersionMm,
                1e3 * headM * FloatForms.droopPerHead(1e-3 * seatMm, 1, 60.0 / 8, plan),
                1e-3 * immersionMm);
    }

    // 4 mm seat, 5:1, 12 cm2: 2.0944 mm per metre; 2 mm seat, 7.5:1: 0.5926 mm per metre.
    @Test
    void the_level_droops_as_the_reservoir_empties() {
        assertEquals(2.0944, 1e3 * FloatForms.droopPerHead(0.004, 1, 5, 12e-4), 5e-5);
        assertEquals(
                0.5926, 1e3 * FloatForms.droopPerHead(0.002, 1, 7.5, 0.25 * Math.PI * 9e-4), 5e-5);
    }

    // A quarter of the bore; at the float 2.5 mm and 5 mm at 5:1, 3.75 mm at 7.5:1.
    @Test
    void the_throttling_band_follows_from_seat_and_lever() {
        assertEquals(0.5e-3, FloatForms.fullLiftM(0.002), 1e-15);
        assertEquals(2.5e-3, FloatForms.throttlingBandM(0.002, 5), 1e-15);
        assertEquals(5e-3, FloatForms.throttlingBandM(0.004, 5), 1e-15);
        assertEquals(3.75e-3, FloatForms.throttlingBandM(0.002, 7.5), 1e-15);
    }

    @Test
    void a_float_that_sinks_shuts_nothing() {
        assertEquals(0, FloatLever.greatestHeadM(5e-6, 0.008, 5, 0.002, 1, DENSITY), 0);
    }
}
