package tideless.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tideless.physics.LiquidWater;
import tideless.physics.TubeFlow;
import tideless.physics.TubeTree;
import tideless.scenario.Filling;
import tideless.scenario.Reservoir;
import tideless.scenario.Tube;

/**
 * The tubing from one reservoir to its trays: a trunk, a tee, and a branch with a valve each.
 *
 * <p>A tray that sits quietly in its valve's band is fed by a trickle; its flow when wide open is
 * then only a scale, so it is kept as a power of the head and worked out anew when head or warmth
 * have moved. Trays that are filling share the trunk and are solved together at every step.
 *
 * <p>Scratch space of one run.
 */
final class FeedLines {
    /** The power law is renewed when the head has moved by this share of itself. */
    private static final double HEAD_MOVED_FRAC = 0.02;

    /** And when the solution's temperature has moved by this much, K. */
    private static final double TEMP_MOVED_K = 1;

    /** The step of head by which the power is found. */
    private static final double PROBE_FRAC = 0.98;

    private final List<TrayRun> trays;
    private final Filling.ByValve[] valves;
    private final TubeTree tree;
    private final double[] outletM;
    private final double[] opening;
    private final double[] flow;
    private final boolean[] mayRunBack;
    private final double[] knownHeadM;
    private final double[] knownTempC;
    private final double[] knownFlow;
    private final double[] power;

    FeedLines(Reservoir reservoir, List<TrayRun> trays) {
        this.trays = trays;
        int size = trays.size();
        valves = new Filling.ByValve[size];
        List<TubeTree.Branch> branches = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            valves[i] = (Filling.ByValve) trays.get(i).tray.filling();
            Tube branch = valves[i].branch();
            branches.add(
                    new TubeTree.Branch(
                            branch.boreM(),
                            branch.lengthM(),
                            branch.lossCoefficient(),
                            valves[i].seatBoreM(),
                            valves[i].dischargeCoefficient()));
        }
        Tube trunk = reservoir.trunk();
        tree =
                size == 0
                        ? null
                        : new TubeTree(
                                trunk.boreM(),
                                trunk.lengthM(),
                                trunk.lossCoefficient(),
                                TubeFlow.PLASTIC_ROUGHNESS_M,
                                branches);
        outletM = new double[size];
        opening = new double[size];
        flow = new double[size];
        mayRunBack = new boolean[size]; // never: the valve's outlet hangs in air
        knownHeadM = new double[size];
        knownTempC = new double[size];
        knownFlow = new double[size];
        power = new double[size];
        Arrays.fill(knownHeadM, Double.NaN);
    }

    /**
     * Flow of each valve when it is wide open, m3/s; of valves that are wide open already,
     * together.
     *
     * @param surfaceM reservoir surface, m above the bench
     * @param tempC of the solution, degC
     * @param outM3PerS filled, one value a tray
     */
    void openFlows(double surfaceM, double tempC, double[] outM3PerS) {
        int filling = 0;
        for (int i = 0; i < valves.length; i++) {
            TrayRun run = trays.get(i);
            outletM[i] =
                    run.tray.floorAboveBenchM()
                            + Math.max(valves[i].seatAboveFloorM(), run.levelM());
            if (isFilling(i)) {
                filling++;
            }
        }
        for (int i = 0; i < valves.length; i++) {
            if (filling < 2 || !isFilling(i)) {
                outM3PerS[i] = alone(i, surfaceM - outletM[i], tempC);
            }
        }
        if (filling >= 2) {
            for (int i = 0; i < valves.length; i++) {
                opening[i] = isFilling(i) ? 1 : 0;
            }
            solve(surfaceM, tempC);
            for (int i = 0; i < valves.length; i++) {
                if (opening[i] > 0) {
                    outM3PerS[i] = flow[i];
                }
            }
        }
    }

    private boolean isFilling(int i) {
        TrayRun run = trays.get(i);
        return valves[i].snaps() ? run.snapOpen : run.volumeM3 <= run.wideM3;
    }

    private double alone(int i, double headM, double tempC) {
        if (!(headM > 0)) {
            return 0;
        }
        double moved = headM / knownHeadM[i] - 1;
        if (!(Math.abs(moved) <= HEAD_MOVED_FRAC)
                || Math.abs(tempC - knownTempC[i]) > TEMP_MOVED_K) {
            knownHeadM[i] = headM;
            knownTempC[i] = tempC;
            knownFlow[i] = solveAlone(i, headM, tempC);
            power[i] =
                    Math.log(solveAlone(i, PROBE_FRAC * headM, tempC) / knownFlow[i])
                            / Math.log(PROBE_FRAC);
            moved = 0;
        }
        double n = power[i];
        return knownFlow[i] * (1 + n * moved * (1 + 0.5 * (n - 1) * moved));
    }

    private double solveAlone(int i, double headM, double tempC) {
        Arrays.fill(opening, 0);
        opening[i] = 1;
        solve(outletM[i] + headM, tempC);
        return flow[i];
    }

    private void solve(double surfaceM, double tempC) {
        tree.junctionHeadM(
                surfaceM,
                outletM,
                opening,
                mayRunBack,
                LiquidWater.kinematicViscosityM2PerS(tempC),
                flow);
    }
}
