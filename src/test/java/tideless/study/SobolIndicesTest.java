package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Variance shares held against functions whose shares are known in closed form. */
class SobolIndicesTest {
    private static final int POINTS = 4096;

    // Ishigami and Homma (1990), a = 7, b = 0.1; shares by their closed form:
    // V1 = 0.5 (1 + b pi^4/5)^2, V2 = a^2/8, V13 = b^2 pi^8 (1/18 - 1/50).
    private static final double PI4 = Math.pow(Math.PI, 4);
    private static final double V1 = 0.5 * (1 + 0.1 * PI4 / 5) * (1 + 0.1 * PI4 / 5);
    private static final double V2 = 49.0 / 8;
    private static final double V13 = 0.01 * PI4 * PI4 * (1.0 / 18 - 1.0 / 50);

    private static SobolIndices of(
            ToDoubleFunction<double[]> result, int unknowns, int points, long seed) {
        List<int[]> alone = IntStream.range(0, unknowns).mapToObj(i -> new int[] {i}).toList();
        SobolIndices.Plan plan = SobolIndices.Plan.of(unknowns, alone, points, seed);
        return plan.shares(
                IntStream.range(0, plan.size())
                        .mapToDouble(job -> result.applyAsDouble(plan.point(job)))
                        .toArray(),
                seed);
    }

    private static double ishigami(double[] u) {
        double x1 = Math.PI * (2 * u[0] - 1);
        double x2 = Math.PI * (2 * u[1] - 1);
        double x3 = Math.PI * (2 * u[2] - 1);
        return Math.sin(x1)
                + 7 * Math.sin(x2) * Math.sin(x2)
                + 0.1 * Math.pow(x3, 4) * Math.sin(x1);
    }

    @Test
    void the_function_of_ishigami_has_its_known_shares() {
        SobolIndices found = of(SobolIndicesTest::ishigami, 3, POINTS, 1);
        double all = V1 + V2 + V13;
        // Within 0.02: three standard errors of 4096 points are 0.01 to 0.02 here.
        assertThat(found.first()[0]).isCloseTo(V1 / all, within(0.02)); // 0.3139
        assertThat(found.first()[1]).isCloseTo(V2 / all, within(0.02)); // 0.4424
        assertThat(found.first()[2]).isCloseTo(0, within(0.02));
        assertThat(found.total()[0]).isCloseTo((V1 + V13) / all, within(0.02)); // 0.5576
        assertThat(found.total()[1]).isCloseTo(V2 / all, within(0.02));
        assertThat(found.total()[2]).isCloseTo(V13 / all, within(0.02)); // 0.2437
        assertThat(found.mean()).isCloseTo(3.5, within(0.02)); // a/2
        assertThat(found.variance()).isCloseTo(all, within(0.2)); // 13.84
    }

    // Sobol's g-function (Saltelli and Sobol 1995): f = prod (|4x - 2| + a) / (1 + a);
    // V_i = 1 / (3 (1 + a_i)^2), V = prod (1 + V_i) - 1, V_Ti = V_i prod_{j != i} (1 + V_j).
    @Test
    void the_g_function_has_its_known_shares() {
        double[] a = {0, 1, 4.5, 9};
        double[] part = new double[a.length];
        double product = 1;
        for (int i = 0; i < a.length; i++) {
            part[i] = 1 / (3 * (1 + a[i]) * (1 + a[i]));
            product *= 1 + part[i];
        }
        SobolIndices found =
                of(
                        u -> {
                            double g = 1;
                            for (int i = 0; i < a.length; i++) {
                                g *= (Math.abs(4 * u[i] - 2) + a[i]) / (1 + a[i]);
                            }
                            return g;
                        },
                        a.length,
                        POINTS,
                        2);
        for (int i = 0; i < a.length; i++) {
            assertThat(found.first()[i]).isCloseTo(part[i] / (product - 1), within(0.02));
            assertThat(found.total()[i])
                    .isCloseTo(part[i] * product / (1 + part[i]) / (product - 1), within(0.02));
        }
    }

    @Test
    void the_errors_tell_how_far_off_the_shares_are() {
        int inside = 0;
        int all = 0;
        double truth = V2 / (V1 + V2 + V13);
        for (long seed = 1; seed <= 40; seed++) {
            SobolIndices found = of(SobolIndicesTest::ishigami, 3, 256, seed);
            if (Math.abs(found.first()[1] - truth) < 2 * found.firstError()[1]) {
                inside++;
            }
            all++;
        }
        // Two standard errors hold at least nine in ten; a low-discrepancy sample does better than
        // the bootstrap of independent points says, so the error errs on the large side.
        assertThat(inside).isGreaterThanOrEqualTo(all * 9 / 10);
    }

    @Test
    void a_result_that_never_moves_has_no_shares() {
        SobolIndices found = of(u -> 5, 2, 64, 3);
        assertThat(found.variance()).isZero();
        assertThat(found.first()).containsExactly(0, 0);
        assertThat(found.total()).containsExactly(0, 0);
    }

    @Test
    void unknowns_told_together_have_the_share_of_all_that_is_theirs() {
        // 1 + 2 u0 + 3 u1 + 4 u2: variances 4, 9 and 16 of 29 in twelfths; u0 and u2 together 20.
        SobolIndices.Plan plan =
                SobolIndices.Plan.of(3, List.of(new int[] {0, 2}, new int[] {1}), 2048, 5);
        double[] results = new double[plan.size()];
        for (int job = 0; job < results.length; job++) {
            double[] u = plan.point(job);
            results[job] = 1 + 2 * u[0] + 3 * u[1] + 4 * u[2];
        }
        SobolIndices found = plan.shares(results, 1);
        assertThat(found.total()[0]).isCloseTo(20 / 29.0, within(0.02));
        assertThat(found.first()[0]).isCloseTo(20 / 29.0, within(0.02));
        assertThat(found.total()[1]).isCloseTo(9 / 29.0, within(0.02));
        // A point that was broken off is left out and spoils nothing.
        results[plan.perPoint() * 7 + 1] = Double.NaN;
        assertThat(plan.shares(results, 1).total()[1]).isCloseTo(9 / 29.0, within(0.02));
    }
}
