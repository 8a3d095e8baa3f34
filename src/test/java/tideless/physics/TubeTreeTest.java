package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * N1 to N4 and T1 to T8: tees recomputed independently by damped Newton and by nested bisection,
 * with Churchill's friction and IAPWS R12-08 viscosity. 1e-4 for the flows (the viscosity's short
 * form, and the printed digits), 1e-5 m for the head; asked for: 1e-3.
 */
class TubeTreeTest {
    private static final double ML_PER_MIN = 1e-6 / 60; // m3/s

    private static TubeTree.Branch tube(double boreMm, double lengthM, double loss) {
        return new TubeTree.Branch(1e-3 * boreMm, lengthM, loss, 0, 1);
    }

    private static void check(
            TubeTree tree,
            double reservoirHeadM,
            double tempC,
            double[] outletHeadM,
            double[] openingFrac,
            boolean[] mayRunBack,
            double expectedJunctionM,
            double... expectedMlPerMin) {
        double[] flows = new double[outletHeadM.length];
        double junction =
                tree.junctionHeadM(
                        reservoirHeadM,
                        outletHeadM,
                        openingFrac,
                        mayRunBack,
                        LiquidWater.kinematicViscosityM2PerS(tempC),
                        flows);
        assertEquals(expectedJunctionM, junction, 1e-5);
        for (int i = 0; i < flows.length; i++) {
            assertEquals(
                    expectedMlPerMin[i],
                    flows[i] / ML_PER_MIN,
                    2e-4 * Math.abs(expectedMlPerMin[i]) + 1e-9);
        }
        assertArrayEquals(
                flows,
                ClosedForms.flowsM3PerS(
                        tree, reservoirHeadM, outletHeadM, openingFrac, mayRunBack, tempC));
    }

    private static void checkN(
            double trunkMm,
            double trunkLengthM,
            List<TubeTree.Branch> branches,
            double[] outletHeadM,
            double junctionM,
            double... mlPerMin) {
        double[] open = new double[branches.size()];
        boolean[] back = new boolean[branches.size()];
        for (int i = 0; i < open.length; i++) {
            open[i] = 1;
            back[i] = true;
        }
        TubeTree tree = new TubeTree(1e-3 * trunkMm, trunkLengthM, 0.5, 1.5e-6, branches);
        check(tree, 0.30, 20, outletHeadM, open, back, junctionM, mlPerMin);
    }

    @Test
    void N1_two_alike() {
        checkN(
                6,
                2,
                List.of(tube(4, 1, 3), tube(4, 1, 3)),
                new double[] {0, 0},
                0.14767,
                390.90,
                390.90);
    }

    @Test
    void N2_short_and_long() {
        checkN(
                6,
                2,
                List.of(tube(4, 0.5, 3), tube(4, 2, 3)),
                new double[] {0, 0},
                0.16382,
                488.69,
                266.58);
    }

    @Test
    void N3_low_and_high() {
        checkN(
                6,
                2,
                List.of(tube(4, 1, 3), tube(4, 1, 3)),
                new double[] {0, 0.05},
                0.16775,
                421.32,
                327.51);
    }

    @Test
    void N4_three_on_a_thin_trunk() {
        checkN(
                4,
                1,
                List.of(tube(4, 1, 3), tube(4, 1, 3), tube(4, 1, 3)),
                new double[3],
                0.05414,
                170.63,
                170.63,
                170.63);
    }

    private static void checkT(
            TubeTree.Branch second,
            double secondHeadM,
            double secondOpening,
            boolean secondMayRunBack,
            double junctionM,
            double... mlPerMin) {
        TubeTree tree = new TubeTree(0.006, 0.5, 0.5, 0, List.of(tube(4, 1, 3.5), second));
        check(
                tree,
                0.4,
                25,
                new double[] {0, secondHeadM},
                new double[] {1, secondOpening},
                new boolean[] {true, secondMayRunBack},
                junctionM,
                mlPerMin);
    }

    @Test
    void T1_equal() {
        checkT(tube(4, 1, 3.5), 0, 1, true, 0.32925, 507.45, 507.45);
    }

    @Test
    void T2_unequal_length() {
        TubeTree tree =
                new TubeTree(0.006, 0.5, 0.5, 0, List.of(tube(4, 0.5, 3.5), tube(4, 2, 3.5)));
        check(
                tree,
                0.4,
                25,
                new double[2],
                new double[] {1, 1},
                new boolean[2],
                0.32340,
                646.08,
                416.58);
    }

    @Test
    void T3_unequal_height() {
        checkT(tube(4, 1, 3.5), 0.15, 1, false, 0.33905, 514.52, 416.65);
    }

    @Test
    void T4_second_branch_shut() {
        checkT(tube(4, 1, 3.5), 0, 0, true, 0.38396, 548.20, 0);
    }

    @Test
    void T5_two_seats() {
        TubeTree.Branch seat = new TubeTree.Branch(0.004, 1, 3.5, 0.002, 0.61);
        TubeTree tree = new TubeTree(0.006, 0.5, 0.5, 0, List.of(seat, seat));
        check(
                tree,
                0.4,
                25,
                new double[2],
                new double[] {1, 1},
                new boolean[2],
                0.38378,
                275.79,
                275.79);
    }

    @Test
    void T6_thin_trunk_all_laminar() {
        TubeTree tree = new TubeTree(0.004, 3, 0.5, 0, List.of(tube(4, 1.5, 3.5), tube(4, 3, 3.5)));
        check(
                tree,
                0.1,
                25,
                new double[2],
                new double[] {1, 1},
                new boolean[2],
                0.02568,
                67.022,
                34.929);
    }

    // The near miss: 3.23 mm of head on the branch, so that 1e-5 m of head is 0.3 % of flow; the
    // print carries 5 digits and we hold 5e-4.
    @Test
    void T7_second_outlet_barely_below_the_junction() {
        TubeTree tree = new TubeTree(0.006, 0.5, 0.5, 0, List.of(tube(4, 1, 3.5), tube(4, 1, 3.5)));
        double[] flows =
                ClosedForms.flowsM3PerS(
                        tree,
                        0.4,
                        new double[] {0, 0.38},
                        new double[] {1, 1},
                        new boolean[] {true, true},
                        25);
        assertEquals(547.64, flows[0] / ML_PER_MIN, 1e-4 * 547.64);
        assertEquals(13.145, flows[1] / ML_PER_MIN, 5e-4 * 13.145);
    }

    @Test
    void T8_second_outlet_under_water_runs_backwards() {
        checkT(tube(4, 1, 3.5), 0.395, 1, true, 0.38545, 549.34, -37.692);
    }

    @Test
    void T8_as_a_free_jet_is_T4() {
        checkT(tube(4, 1, 3.5), 0.395, 1, false, 0.38396, 548.20, 0);
    }

    @Test
    void without_a_trunk_each_branch_is_alone() {
        TubeTree tree = new TubeTree(0.006, 0, 0, 0, List.of(tube(4, 1, 3.5), tube(4, 2, 3.5)));
        double[] flows =
                ClosedForms.flowsM3PerS(
                        tree, 0.4, new double[2], new double[] {1, 1}, new boolean[2], 25);
        assertEquals(ClosedForms.flowM3PerS(0.4, 0.004, 1, 3.5, 0, 25), flows[0], 0);
        assertEquals(ClosedForms.flowM3PerS(0.4, 0.004, 2, 3.5, 0, 25), flows[1], 0);
    }

    @Test
    void with_all_shut_nothing_flows_and_the_junction_stands_at_the_reservoir() {
        TubeTree tree = new TubeTree(0.006, 0.5, 0.5, 0, List.of(tube(4, 1, 3.5)));
        double[] flows = {9};
        double junction =
                tree.junctionHeadM(0.4, new double[1], new double[1], new boolean[1], 1e-6, flows);
        assertEquals(0.4, junction, 0);
        assertEquals(0, flows[0], 0);
    }

    @Test
    void a_reservoir_below_every_tray_is_filled_by_those_under_water() {
        TubeTree tree = new TubeTree(0.006, 0.5, 0.5, 0, List.of(tube(4, 1, 3.5), tube(4, 1, 3.5)));
        double[] flows =
                ClosedForms.flowsM3PerS(
                        tree,
                        0.0,
                        new double[] {0.1, 0.1},
                        new double[] {1, 1},
                        new boolean[] {true, false},
                        20);
        assertTrue(flows[0] < 0);
        assertEquals(0, flows[1], 0);
    }
}
