package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.rig.Filling;
import tideless.rig.Reservoir.Refill.When;
import tideless.solution.Component;
import tideless.solution.Composition;

/**
 * Build-up and draw-down by the run's own steps against closed forms, recomputed independently.
 * Litres, days and mmol/L are used as they stand: the steps ask for one set of units, not for SI.
 */
class SaltCasesTest {
    private static final double V = 10;
    private static final double T = 1.5;
    private static final double E = 0.3;
    private static final double CF = 2;

    /** Uptake at a fixed rate: a Michaelis constant far below any concentration. */
    private static final double NO_LIMIT = 1e-12;

    private static final double STEP_D = 1.0 / 144;

    /** Level held: what leaves comes in as feed. */
    private static double heldAtFixedUptake(double c0, double cu, double days) {
        double mol = c0 * V;
        for (int i = 0; i < Math.round(days / STEP_D); i++) {
            mol = Solutes.afterUptake(mol, CF * (T + E) * STEP_D, V, cu * T, NO_LIMIT, STEP_D);
        }
        return mol / V;
    }

    private static double heldPassing(double c0, double in, double pass, double days) {
        double mol = c0 * V;
        for (int i = 0; i < Math.round(days / STEP_D); i++) {
            mol = Solutes.afterPassing(mol, CF * in * STEP_D, V, V, pass, STEP_D);
        }
        return mol / V;
    }

    @Test
    void s1_constant_level_and_fixed_uptake_rise_on_a_straight_line() {
        assertEquals(5.99, heldAtFixedUptake(2, 0.5, 14), 1e-6 * 5.99);
    }

    // Second order: uptake and bleed are taken turn about, half a bleed before and half after.
    @Test
    void s2_a_bleed_beside_fixed_uptake_nears_the_closed_form_at_second_order() {
        double exact = 11.5 + (2 - 11.5) * Math.exp(-14 / 33.333333333333336);
        assertEquals(5.25806, exact, 5e-6);
        double coarse = bled(14, 0.5) - exact;
        double fine = bled(14, 0.25) - exact;
        assertEquals(4, coarse / fine, 0.1);
        assertEquals(exact, bled(14, STEP_D), 1e-6 * exact);
    }

    private static double bled(double days, double stepD) {
        double b = 0.3;
        double mol = 2 * V;
        for (int i = 0; i < Math.round(days / stepD); i++) {
            mol = Solutes.afterPassing(mol, 0, V, V, b, stepD / 2);
            double in = CF * (T + E + b) * stepD;
            mol = Solutes.afterUptake(mol, in, V, 0.5 * T, NO_LIMIT, stepD);
            mol = Solutes.afterPassing(mol, 0, V, V, b, stepD / 2);
        }
        return mol / V;
    }

    @Test
    void s3_proportional_uptake_levels_off() {
        assertEquals(
                9.6 - 7.6 * Math.exp(-14 / (80.0 / 3)), heldPassing(2, T + E, 0.375, 14), 1e-6);
        assertEquals(5.10418, heldPassing(2, T + E, 0.375, 14), 5e-6);
    }

    @Test
    void s4_proportional_uptake_and_a_bleed_level_off_lower() {
        assertEquals(4.58113, heldPassing(2, T + E + 0.3, 0.375 + 0.3, 14), 5e-6);
    }

    @ParameterizedTest
    @ValueSource(doubles = {STEP_D, 0.5, 4})
    void s5_s6_filled_once_at_fixed_uptake(double stepD) {
        assertEquals(23.571428571428573, filledOnce(12, 9, 4, stepD), 1e-6 * 23.6);
        assertEquals(10.714285714285714, filledOnce(12, 15, 4, stepD), 1e-6 * 10.7);
    }

    private static double filledOnce(double c0, double cu, double days, double stepD) {
        double volume = V;
        double mol = c0 * V;
        for (int i = 0; i < Math.round(days / stepD); i++) {
            double left = left(volume, T + E, stepD);
            double mid = 0.5 * (volume + left);
            mol = Solutes.afterUptake(mol, 0, mid, cu * T, NO_LIMIT, stepD);
            volume = left;
        }
        return mol / volume;
    }

    @Test
    void s6_the_ion_is_gone_before_the_water_and_never_below_nothing() {
        double volume = V;
        double mol = 12 * V;
        double emptyD = Double.NaN;
        double dryD = Double.NaN;
        for (int i = 0; volume > 0; i++) {
            double left = left(volume, T + E, STEP_D);
            double mid = 0.5 * (volume + left);
            mol = Solutes.afterUptake(mol, 0, mid, 15 * T, 1e-6, STEP_D);
            volume = left;
            assertTrue(mol >= 0);
            emptyD = Double.isNaN(emptyD) && mol < 1e-3 ? (i + 1) * STEP_D : emptyD;
            dryD = volume <= 0 ? (i + 1) * STEP_D : dryD;
        }
        assertEquals(5.33333, emptyD, STEP_D);
        assertEquals(5.55556, dryD, STEP_D);
    }

    @Test
    void s7_filled_once_at_proportional_uptake_follows_the_power_law() {
        assertEquals(2 * Math.pow(0.28, 0.375 / 1.8 - 1), passedOnce(0.375), 1e-6 * 5.5);
        assertEquals(5.47894, passedOnce(0.375), 5e-6);
        assertEquals(7.142857142857143, passedOnce(0), 1e-9);
    }

    private static double passedOnce(double pass) {
        double volume = V;
        double mol = 2 * V;
        for (int i = 0; i < 4 * 144; i++) {
            double left = left(volume, T + E, STEP_D);
            mol = Solutes.afterPassing(mol, 0, volume, left, pass, STEP_D);
            volume = left;
        }
        return mol / volume;
    }

    @Test
    void s8_refilled_every_second_day_it_settles_on_the_fixed_point() {
        double c = 2;
        double before = 0;
        for (int refill = 1; refill <= 400; refill++) {
            double volume = V;
            double mol = c * V;
            for (int i = 0; i < 2 * 144; i++) {
                double left = left(volume, T + E, STEP_D);
                mol = Solutes.afterPassing(mol, 0, volume, left, 0.375, STEP_D);
                volume = left;
            }
            before = mol / volume;
            c = (mol + CF * (V - volume)) / V;
            if (refill == 5) {
                assertEquals(4.27145, c, 5e-6);
            }
        }
        assertEquals(8.10947, c, 5e-6);
        assertEquals(11.546, before, 5e-4);
    }

    private static TrayRun tray(double concentration) {
        TrayRun run =
                new TrayRun(
                        Rigs.tray("tray", new Filling.Sealed(), Rigs.drinking(1), 0),
                        0,
                        20,
                        Rigs.air(20),
                        0);
        run.salts.mol[NA] = concentration * run.water.m3;
        return run;
    }

    private static final int NA = Component.NA.ordinal();

    private static final Composition TWO = Composition.WATER.with(Component.NA, 2);

    @Test
    void s9_drains_of_a_half_leave_a_half_of_the_excess_each_time() {
        TrayRun run = tray(8);
        double poured = 0;
        for (double expected : new double[] {5, 3.5, 2.75, 2.375}) {
            poured += run.renew(0.5, TWO, 20);
            assertEquals(expected, run.salts.mol[NA] / run.water.m3, 1e-12);
        }
        assertEquals(2 * run.water.m3, poured, 1e-12);
        // Ledger: start + poured = end + drained.
        assertEquals(
                8 * run.water.m3 + run.salts.freshMol[NA],
                run.salts.mol[NA] + run.salts.drainedMol[NA],
                1e-15);
    }

    // A displacement is the limit of small drains: first order in their size.
    @Test
    void s10_small_drains_tend_to_mixed_displacement() {
        assertEquals(4.20728, displaced(1e-5), 1e-4);
        double exact = 2 + 6 / Math.E;
        assertEquals(2, (displaced(2e-3) - exact) / (displaced(1e-3) - exact), 0.01);
    }

    private static double displaced(double share) {
        TrayRun run = tray(8);
        for (int i = 0; i < Math.round(1 / share); i++) {
            run.renew(share, TWO, 20);
        }
        return run.salts.mol[NA] / run.water.m3;
    }

    // Drains of a half at the limit of 6 take as much as a bleed that holds it: 0.7125 L a day.
    @Test
    void s11_s12_s13_time_to_the_limit_and_the_drains_that_keep_it() {
        double mol = 2 * V;
        double firstD = Double.NaN;
        double lastD = 0;
        int drains = 0;
        double days = 0;
        double step = 1e-3;
        while (drains < 11) {
            mol = Solutes.afterUptake(mol, CF * (T + E) * step, V, 0.5 * T, NO_LIMIT, step);
            days += step;
            if (mol / V >= 6) {
                mol = 0.5 * mol + 0.5 * CF * V;
                drains++;
                firstD = drains == 1 ? days : firstD;
                lastD = days;
            }
        }
        assertEquals(14.0351, firstD, step);
        assertEquals(7.01754, (lastD - firstD) / 10, step);
        assertEquals(0.7125, 10 * 0.5 * V / (lastD - firstD), 1e-3);
    }

    // The tray of 6 L sees the feed of the reservoir only: no way back.
    @Test
    void s15_a_float_valve_tray_rises_while_the_reservoir_keeps_its_feed() {
        double mol = 2 * 6;
        double atFourteen = 0;
        for (int i = 1; i <= 2400; i++) {
            double step = 1.0 / 144;
            mol = Solutes.afterUptake(mol, CF * 1.8 * step, 6, 0.5 * 1.5, NO_LIMIT, step);
            atFourteen = i == 14 * 144 ? mol / 6 : atFourteen;
        }
        assertEquals(8.65, atFourteen, 1e-6 * 8.65);
        assertEquals(9.91667, mol / 6, 5e-6);
        Trace trace =
                Simulation.run(
                        Rigs.scenario(
                                14,
                                600,
                                List.of(Rigs.reservoir(0.1, 0.32, When.NEVER)),
                                List.of(Rigs.tray("tray", Rigs.valve(), Rigs.drinking(1.8), 0)),
                                Rigs.nobody()));
        ReservoirTrace reservoir = trace.reservoirs().get(0);
        Composition left = reservoir.compositionAt(trace.hours() - 1);
        for (Component component : Component.values()) {
            double feed = Rigs.FEED.molPerM3(component);
            assertEquals(feed, left.molPerM3(component), 1e-12 * (1 + feed), component.title());
        }
    }

    /** What a tray without a valve still holds after a span, as the run takes it. */
    private static double left(double volumeM3, double lossM3PerS, double spanS) {
        return volumeM3 - Math.min(volumeM3, lossM3PerS * spanS);
    }
}
