package tideless.sim;

import java.util.List;
import tideless.physics.TubeFlow;
import tideless.scenario.Filling;
import tideless.scenario.Reservoir;
import tideless.scenario.Tube;

/** The tubing from one reservoir to its trays: a trunk, a tee, and a branch with a valve each. */
final class FeedLines {
    private final Reservoir reservoir;
    private final List<TrayRun> trays;

    FeedLines(Reservoir reservoir, List<TrayRun> trays) {
        this.reservoir = reservoir;
        this.trays = trays;
    }

    /**
     * Flow of each valve when it is wide open, m3/s. A line never runs backwards: the valve's
     * outlet hangs in air.
     *
     * @param surfaceAboveBenchM reservoir surface, m above the bench
     * @param tempC of the solution, degC
     * @param outM3PerS filled, one value a tray
     */
    void openFlows(double surfaceAboveBenchM, double tempC, double[] outM3PerS) {
        for (int i = 0; i < trays.size(); i++) {
            TrayRun run = trays.get(i);
            Filling.ByValve valve = (Filling.ByValve) run.tray.filling();
            double outletM =
                    run.tray.floorAboveBenchM() + Math.max(valve.seatAboveFloorM(), run.levelM());
            double headM = surfaceAboveBenchM - outletM;
            outM3PerS[i] = headM > 0 ? openFlow(headM, valve, tempC) : 0;
        }
    }

    private double openFlow(double headM, Filling.ByValve valve, double tempC) {
        Tube trunk = reservoir.trunk();
        double high = branchFlow(headM, valve, tempC);
        if (trunk.lengthM() == 0 && trunk.lossCoefficient() == 0) {
            return high;
        }
        // The head the trunk takes only grows with the flow: halve the bracket.
        double low = 0;
        for (int i = 0; i < 40; i++) {
            double flow = 0.5 * (low + high);
            double left =
                    headM
                            - TubeFlow.headLossM(
                                    flow,
                                    trunk.boreM(),
                                    trunk.lengthM(),
                                    trunk.lossCoefficient(),
                                    TubeFlow.PLASTIC_ROUGHNESS_M,
                                    tempC);
            if (left > 0 && branchFlow(left, valve, tempC) > flow) {
                low = flow;
            } else {
                high = flow;
            }
        }
        return 0.5 * (low + high);
    }

    private static double branchFlow(double headM, Filling.ByValve valve, double tempC) {
        Tube branch = valve.branch();
        return TubeFlow.flowThroughSeatM3PerS(
                headM,
                branch.boreM(),
                branch.lengthM(),
                branch.lossCoefficient(),
                TubeFlow.PLASTIC_ROUGHNESS_M,
                valve.seatBoreM(),
                valve.dischargeCoefficient(),
                1,
                tempC);
    }
}
