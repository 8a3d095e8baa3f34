package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One tray's water against closed forms.
 *
 * <p>The expected figures were recomputed independently of this project from the standard solutions
 * A dh/dt = Qmax (hs - h) / b - q and T = A d / q + A d / (Qf - q); printed to five digits, so the
 * tolerance is half of the last.
 */
class LevelStepTest {
    private static final double ML_PER_MIN = 1e-6 / 60;
    private static final double ML_PER_H = 1e-6 / 3600;

    private final LevelStep step = new LevelStep();

    @ParameterizedTest(name = "A {0} m2, Qmax {1} mL/min, q {2} mL/h, band {3} mm: {7} mm")
    @CsvSource({
        "0.20, 300,  400, 10,  80, 75, 600, 78.712",
        "0.20, 300,  400, 10,  80, 40, 600, 54.667",
        "0.50, 100, 1000,  8, 100, 80, 600, 81.667",
        "0.20,  50,    0, 10,  80, 72, 600, 73.770",
    })
    void a_throttling_valve_approaches_its_rest_level_exponentially(
            double areaM2,
            double openMlPerMin,
            double lossMlPerH,
            double bandMm,
            double setMm,
            double startMm,
            double afterS,
            double expectedMm) {
        step.throttling(
                areaM2 * startMm / 1000,
                lossMlPerH * ML_PER_H,
                openMlPerMin * ML_PER_MIN,
                areaM2 * setMm / 1000,
                areaM2 * (setMm - bandMm) / 1000,
                afterS);
        assertEquals(expectedMm, step.volumeM3 / areaM2 * 1000, 0.0005);
    }

    @ParameterizedTest(name = "1 mm below rest after {5} s")
    @CsvSource({
        "0.20, 300,  400, 10,  80, 75,  625.59, 79.778",
        "0.20, 300,  400, 10,  80, 40, 2139.3, 79.778",
        "0.50, 100, 1000,  8, 100, 80, 8873.1, 98.667",
        "0.20,  50,    0, 10,  80, 72, 4990.7, 80.000",
    })
    void the_time_to_one_millimetre_below_rest_is_the_published_one(
            double areaM2,
            double openMlPerMin,
            double lossMlPerH,
            double bandMm,
            double setMm,
            double startMm,
            double afterS,
            double restMm) {
        step.throttling(
                areaM2 * startMm / 1000,
                lossMlPerH * ML_PER_H,
                openMlPerMin * ML_PER_MIN,
                areaM2 * setMm / 1000,
                areaM2 * (setMm - bandMm) / 1000,
                afterS);
        // Five printed digits of the time are worth less than 0.0005 mm of level here, and the rest
        // level is printed to 0.0005 mm as well.
        assertEquals(restMm - 1, step.volumeM3 / areaM2 * 1000, 0.001);
    }

    @ParameterizedTest(name = "period {4} min")
    @CsvSource({
        "0.20, 3,  400, 300,  92.045, 122.73",
        "0.20, 5,  400, 300, 153.41, 204.55",
        "0.50, 5, 1000, 100, 180.00, 1800.0",
        "0.20, 3, 9000, 300,   8.0000, 240.00",
    })
    void a_snapping_valve_cycles_with_the_published_period(
            double areaM2,
            double hysteresisMm,
            double lossMlPerH,
            double openMlPerMin,
            double periodMin,
            double openS) {
        double shutM3 = areaM2 * 0.08;
        double openAtM3 = shutM3 - areaM2 * hysteresisMm / 1000;
        double inflow = 0;
        double volume = shutM3;
        boolean open = false;
        int cycles = 40;
        // A step that does not divide the period: 40 periods must come out in any case.
        double stepS = 137;
        double totalS = cycles * periodMin * 60;
        int steps = (int) Math.floor(totalS / stepS);
        for (int i = 0; i <= steps; i++) {
            double span = i < steps ? stepS : totalS - steps * stepS;
            step.snapping(
                    volume,
                    lossMlPerH * ML_PER_H,
                    openMlPerMin * ML_PER_MIN,
                    shutM3,
                    openAtM3,
                    open,
                    span);
            volume = step.volumeM3;
            open = step.snapOpen;
            inflow += step.inflowM3;
        }
        // 40 whole cycles: back at the start. The period has five digits, so 40 of them are off by
        // 0.02 of a period at most; one cycle pours openS x flow.
        double perCycle = openS * openMlPerMin * ML_PER_MIN;
        assertEquals(cycles * perCycle, inflow, 0.05 * perCycle);
    }

    @Test
    void a_valve_that_cannot_keep_up_leaves_its_band_at_the_instant_of_the_closed_form() {
        // Qmax 60 mL/h, q 100 mL/h, A 0.1 m2, set 50 mm, band 10 mm, from 50 mm:
        // rest = 50 - 10 * 100 / 60 = 33.33 mm; leaves at t = tau ln((50 - rest) / (40 - rest)),
        // tau = A b / Qmax = 0.1 * 0.01 / (60e-6 / 3600) = 60000 s; then falls at 40 mL/h.
        double tau = 60_000;
        double leavesS = tau * Math.log((50 - 100 / 3.0) / (40 - 100 / 3.0));
        double afterS = leavesS + 36_000;
        step.throttling(0.1 * 0.05, 100 * ML_PER_H, 60 * ML_PER_H, 0.1 * 0.05, 0.1 * 0.04, afterS);
        assertEquals(0.1 * 0.04 - 40 * ML_PER_H * 36_000, step.volumeM3, 1e-12);
    }

    @Test
    void a_tray_that_runs_dry_gives_what_comes_in_and_no_more() {
        step.throttling(1e-3, 2e-6, 5e-7, 2e-3, 1.5e-3, 3600);
        assertEquals(0, step.volumeM3);
        assertEquals(5e-7 * 3600, step.inflowM3, 1e-15);
        assertEquals(1e-3 + 5e-7 * 3600, step.lossM3, 1e-15);
    }

    @Test
    void a_starved_line_lets_the_level_fall_straight_through_the_band() {
        step.throttling(2.2e-3, 1e-6, 0, 2e-3, 1.5e-3, 1000);
        assertEquals(1.2e-3, step.volumeM3, 1e-15);
        assertEquals(0, step.inflowM3);
    }

    @Test
    void without_loss_a_tray_fills_to_the_setting_and_never_past_it() {
        step.throttling(0, 0, 5e-6, 2e-3, 1.5e-3, 1e7);
        assertEquals(2e-3, step.volumeM3, 1e-12);
        assertTrue(step.volumeM3 <= 2e-3);
    }
}
