package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** One dissolved component against closed forms. */
class SolutesTest {
    /**
     * Draw-down limited by uptake: t = V / D [(C0 - C) + Km ln(C0 / C)]; recomputed independently
     * with V 10 L, root 20 g, Imax 6 umol/g/h, Km 0.04, Cmin 0.002, from 1.0 to 0.05 mmol/L:
     * 89.2818 h. Cmin is carried by measuring concentrations from it.
     */
    @Test
    void uptake_draws_a_solution_down_in_the_time_of_the_integrated_rate_law() {
        double volumeM3 = 0.010;
        double demandMolPerS = 6e-6 * 20 / 3600;
        double mol = (1.0 - 0.002) * volumeM3;
        double stepS = 600;
        double endS = 89.2818 * 3600;
        double timeS = 0;
        while (timeS < endS) {
            double span = Math.min(stepS, endS - timeS);
            mol = Solutes.afterUptake(mol, 0, volumeM3, demandMolPerS, 0.04, span);
            timeS += span;
        }
        // The time is printed to 0.0001 h, worth 0.5e-4 x 0.115 mmol/h x 5/9 in 10 L: 3e-7 mmol/L.
        assertEquals(0.05, mol / volumeM3 + 0.002, 3e-7);
    }

    /** dC/dt at C0 = 1.0 mmol/L is 0.115376 mmol/h, same source. */
    @Test
    void uptake_starts_at_the_rate_of_the_law() {
        double mol = (1.0 - 0.002) * 0.010;
        double left = Solutes.afterUptake(mol, 0, 0.010, 6e-6 * 20 / 3600, 0.04, 1.0);
        assertEquals(0.115376e-3 / 3600, mol - left, 0.115376e-3 / 3600 * 5e-6);
    }

    /** C = C0 exp(-p t / V) when a share is drunk with the water, at constant volume. */
    @Test
    void what_passes_with_the_water_falls_exponentially() {
        double left = Solutes.afterPassing(2.0, 0, 0.010, 0.010, 1e-6, 7200);
        assertEquals(2.0 * Math.exp(-0.72), left, 1e-15);
    }

    /** Inflow against passing: M = in / k (1 - exp(-k t)) from an empty start. */
    @Test
    void inflow_and_passing_settle_on_the_closed_form() {
        double left = Solutes.afterPassing(0, 3.0, 0.010, 0.010, 1e-6, 7200);
        assertEquals(3.0 / 0.72 * (1 - Math.exp(-0.72)), left, 1e-15);
    }

    /** Filled once, C = C0 (V / V0)^(a - 1): M = M0 (V / V0)^a; with a 0.25, V / V0 0.28. */
    @Test
    void what_passes_from_a_falling_tray_follows_the_power_law_exactly() {
        double left = Solutes.afterPassing(2.0, 0, 0.010, 0.0028, 0.25 * 0.0072 / 3600, 3600);
        assertEquals(2.0 * Math.pow(0.28, 0.25), left, 1e-14);
    }

    @Test
    void a_tray_drawn_empty_holds_a_trace_and_never_less_than_nothing() {
        double left = Solutes.afterUptake(1e-3, 0, 0.001, 1e-5, 0.05, 3600);
        assertEquals(0, left, 1e-12);
        assertEquals(true, left >= 0);
    }

    @Test
    void with_an_inflow_the_order_of_the_uptake_step_is_two() {
        double best = settled(10);
        double coarse = Math.abs(settled(1200) - best);
        double fine = Math.abs(settled(600) - best);
        // A second-order step quarters its error when halved; the next order leaves it near 4.
        assertEquals(4, coarse / fine, 0.4);
    }

    private static double settled(double stepS) {
        double mol = 2e-4;
        for (double t = 0; t < 14_400; t += stepS) {
            mol = Solutes.afterUptake(mol, 2e-9 * stepS, 0.001, 1e-8, 0.05, stepS);
        }
        return mol;
    }
}
