package tideless.sim;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import tideless.physics.LiquidWater;
import tideless.physics.TubeFlow;
import tideless.physics.TubeTree;
import tideless.rig.Filling;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.rig.ValveFaults;
import tideless.solution.Component;

/**
 * A random rig's water and tracer by a general-purpose solver: Commons Math's Dormand and Prince
 * 8(5,3) with an event for every switch. The flows are those of {@link TubeTree}, asked at every
 * evaluation; nothing of the engine is used.
 *
 * <p>State: volume, tracer, cumulative inflow and spill of each tray; volume and tracer of the
 * reservoir.
 */
final class GeneralPurpose implements FirstOrderDifferentialEquations {
    final RandomRig rig;
    final int size;
    final double[] y;
    long evaluations;
    private final double tolerance;
    private final Filling.ByValve[] valves;
    private final TubeTree tree;
    private final double viscosity;
    private final double[] leak;
    private final boolean[] snapOpen;
    private final boolean[] dry;
    private final boolean[] brim;
    private boolean uncovered;
    private double[] asked;
    private final double[] flow;
    private final double[] opening;
    private final double[] outlet;
    private final boolean[] mayRunBack;
    private final double[] shut;
    private final double[] wide;
    private final double[] full;
    private final double dead;
    private final FeedLines lines; // in place of the tree, or null
    private final int more; // components carried beside the tracer
    private final double checkS;

    /** For the comparison of errors: the tree at every evaluation, events looked for often. */
    GeneralPurpose(RandomRig rig, double tempC, double tolerance) {
        this(rig, tempC, tolerance, false, 0, 120);
    }

    /**
     * For the comparison of speeds, the same work as the engine's: the flows by its own quick
     * lines, twelve components, events looked for once in ten minutes.
     */
    static GeneralPurpose quick(RandomRig rig, double tolerance) {
        return new GeneralPurpose(rig, EngineRun.TEMP_C, tolerance, true, Component.COUNT - 1, 600);
    }

    private GeneralPurpose(
            RandomRig rig,
            double tempC,
            double tolerance,
            boolean quickLines,
            int more,
            double checkS) {
        this.rig = rig;
        this.tolerance = tolerance;
        this.more = more;
        this.checkS = checkS;
        size = rig.trays.size();
        y = new double[4 * size + 2 + more * (size + 1)];
        valves = new Filling.ByValve[size];
        leak = new double[size];
        snapOpen = new boolean[size];
        dry = new boolean[size];
        brim = new boolean[size];
        flow = new double[size];
        opening = new double[size];
        outlet = new double[size];
        mayRunBack = new boolean[size];
        shut = new double[size];
        wide = new double[size];
        full = new double[size];
        viscosity = LiquidWater.kinematicViscosityM2PerS(tempC);
        List<TubeTree.Branch> branches = new ArrayList<>();
        var trunk = rig.reservoir.trunk();
        for (int i = 0; i < size; i++) {
            Tray tray = rig.trays.get(i);
            valves[i] = (Filling.ByValve) tray.filling();
            var b = valves[i].branch();
            branches.add(
                    new TubeTree.Branch(
                            b.boreM(),
                            b.lengthM(),
                            b.lossCoefficient(),
                            valves[i].seatBoreM(),
                            valves[i].dischargeCoefficient()));
            Shape shape = tray.shape();
            shut[i] = shape.volumeM3(valves[i].settingM());
            wide[i] = shape.volumeM3(valves[i].settingM() - valves[i].bandM());
            full[i] = shape.volumeM3(tray.overflowM());
            y[4 * i] = shape.volumeM3(tray.startLevelM());
            y[4 * i + 1] = y[4 * i]; // the feed's tracer is 1 mol/m3
            snapOpen[i] = y[4 * i] <= wide[i];
            double head =
                    rig.reservoir.floorAboveBenchM()
                            + rig.reservoir.fullLevelM()
                            - tray.floorAboveBenchM()
                            - valves[i].seatAboveFloorM();
            leak[i] = leakOpening(valves[i], trunk, head);
        }
        tree =
                new TubeTree(
                        trunk.boreM(),
                        trunk.lengthM(),
                        trunk.lossCoefficient(),
                        TubeFlow.PLASTIC_ROUGHNESS_M,
                        branches);
        y[4 * size] = rig.reservoir.shape().volumeM3(rig.reservoir.startLevelM());
        y[4 * size + 1] = y[4 * size];
        for (int k = 0; k < more; k++) {
            int at = 4 * size + 2 + k * (size + 1);
            for (int i = 0; i < size; i++) {
                y[at + i] = y[4 * i];
            }
            y[at + size] = y[4 * size];
        }
        lines = quickLines ? FeedLines.of(rig.reservoir, List.of(valves)) : null;
        dead = rig.reservoir.deadM3();
        uncovered = y[4 * size] <= dead;
    }

    // The opening at which the line passes the leak with the reservoir full, by bisection.
    private double leakOpening(Filling.ByValve valve, tideless.rig.Tube trunk, double head) {
        double wanted = valve.faults().seepM3PerS();
        if (wanted == 0) {
            return 0;
        }
        var b = valve.branch();
        TubeTree alone =
                new TubeTree(
                        trunk.boreM(),
                        trunk.lengthM(),
                        trunk.lossCoefficient(),
                        TubeFlow.PLASTIC_ROUGHNESS_M,
                        List.of(
                                new TubeTree.Branch(
                                        b.boreM(),
                                        b.lengthM(),
                                        b.lossCoefficient(),
                                        valve.seatBoreM(),
                                        valve.dischargeCoefficient())));
        double low = 0;
        double high = 1;
        double[] q = new double[1];
        for (int round = 0; round < 100; round++) {
            double mid = 0.5 * (low + high);
            alone.junctionHeadM(
                    head, new double[1], new double[] {mid}, new boolean[1], viscosity, q);
            if (q[0] < wanted) {
                low = mid;
            } else {
                high = mid;
            }
        }
        return 0.5 * (low + high);
    }

    @Override
    public int getDimension() {
        return y.length;
    }

    private void flows(double[] at) {
        evaluations++;
        for (int i = 0; i < size; i++) {
            double level = rig.trays.get(i).shape().levelM(at[4 * i]);
            double open;
            if (valves[i].faults().stuck() != ValveFaults.Stuck.NOT) {
                open = valves[i].faults().stuck() == ValveFaults.Stuck.OPEN ? 1 : 0;
            } else if (valves[i].snaps()) {
                open = snapOpen[i] ? 1 : 0;
            } else {
                open = Math.max(0, Math.min(1, (valves[i].settingM() - level) / valves[i].bandM()));
            }
            opening[i] = uncovered ? 0 : open + leak[i];
            outlet[i] =
                    rig.trays.get(i).floorAboveBenchM()
                            + Math.max(valves[i].seatAboveFloorM(), level);
        }
        double surface =
                rig.reservoir.floorAboveBenchM() + rig.reservoir.shape().levelM(at[4 * size]);
        if (lines == null) {
            tree.junctionHeadM(surface, outlet, opening, mayRunBack, viscosity, flow);
        } else {
            lines.solve(surface, outlet, opening, viscosity);
            System.arraycopy(lines.flowM3PerS, 0, flow, 0, size);
        }
    }

    @Override
    public void computeDerivatives(double t, double[] at, double[] dot) {
        flows(at);
        double out = 0;
        double tracerOut = 0;
        double strength = at[4 * size] > 0 ? at[4 * size + 1] / at[4 * size] : 0;
        for (int i = 0; i < size; i++) {
            double net = flow[i] - asked[i];
            double spill = brim[i] ? Math.max(0, net) : 0;
            dot[4 * i] = dry[i] || brim[i] ? 0 : net;
            dot[4 * i + 1] =
                    flow[i] * strength - (spill > 0 ? spill * at[4 * i + 1] / at[4 * i] : 0);
            dot[4 * i + 2] = flow[i];
            dot[4 * i + 3] = spill;
            out += flow[i];
            tracerOut += flow[i] * strength;
        }
        boolean some = at[4 * size] > 0;
        dot[4 * size] = some ? -out - rig.evaporationM3PerS : 0;
        dot[4 * size + 1] = -tracerOut;
        for (int k = 0; k < more; k++) {
            carry(at, dot, 4 * size + 2 + k * (size + 1));
        }
    }

    private void carry(double[] at, double[] dot, int from) {
        double strength = at[4 * size] > 0 ? at[from + size] / at[4 * size] : 0;
        double out = 0;
        for (int i = 0; i < size; i++) {
            double spill = dot[4 * i + 3];
            double came = flow[i] * strength;
            dot[from + i] = came - (spill > 0 ? spill * at[from + i] / at[4 * i] : 0);
            out += came;
        }
        dot[from + size] = -out;
    }

    /** Runs all spans. */
    void run() {
        double t = 0;
        for (double[] losses : rig.evapotranspirationM3PerS) {
            asked = losses;
            double end = t + rig.changeS;
            for (int restarts = 0; t < end - 1e-9; restarts++) {
                if (restarts > 2_000) {
                    throw new IllegalStateException("the reference turns in a circle");
                }
                settle();
                t = integrate(t, end);
            }
            t = end;
        }
    }

    private void settle() {
        if (!uncovered && y[4 * size] <= dead) {
            uncovered = true;
        }
        for (int i = 0; i < size; i++) {
            if (valves[i].snaps()) {
                snapOpen[i] = y[4 * i] <= wide[i] || (snapOpen[i] && y[4 * i] < shut[i]);
            }
        }
        flows(y);
        for (int i = 0; i < size; i++) {
            double net = flow[i] - asked[i];
            dry[i] = y[4 * i] <= 0 && net <= 0;
            brim[i] = y[4 * i] >= full[i] && net >= 0 && flow[i] > 0;
        }
    }

    private double integrate(double from, double to) {
        DormandPrince853Integrator integrator =
                new DormandPrince853Integrator(1e-9, to - from, 1e-2 * tolerance, tolerance);
        double[] hit = {-1, 0};
        for (int i = 0; i < size; i++) {
            int at = 4 * i;
            if (dry[i] || brim[i]) {
                release(integrator, i);
                continue;
            }
            if (y[at] > 1e-12 * full[i]) {
                bound(integrator, hit, at, 0);
            }
            if (y[at] < (1 - 1e-12) * full[i]) {
                bound(integrator, hit, at, full[i]);
            }
            // The bends of a throttling valve are left to the step control; a snap is an event.
            if (valves[i].snaps() && valves[i].faults().stuck() == ValveFaults.Stuck.NOT) {
                bound(integrator, hit, at, snapOpen[i] ? shut[i] : wide[i]);
            }
        }
        if (!uncovered) {
            bound(integrator, hit, 4 * size, dead);
        } else if (rig.evaporationM3PerS > 0) {
            bound(integrator, hit, 4 * size, 0);
        }
        if (to - from < 1e-6) {
            return to;
        }
        double reached = integrator.integrate(this, from, y, to, y);
        if (hit[0] >= 0) {
            y[(int) hit[0]] = hit[1];
        }
        return reached;
    }

    /** A full tray no longer spills, or a dry one fills, from where its inflow is its loss. */
    private void release(DormandPrince853Integrator integrator, int i) {
        flows(y);
        if (flow[i] == asked[i]) {
            return;
        }
        integrator.addEventHandler(
                new EventHandler() {
                    @Override
                    public void init(double t0, double[] y0, double t) {}

                    @Override
                    public double g(double t, double[] y) {
                        flows(y);
                        return (flow[i] - asked[i]) * 1e6;
                    }

                    @Override
                    public Action eventOccurred(double t, double[] y, boolean increasing) {
                        return Action.STOP;
                    }

                    @Override
                    public void resetState(double t, double[] y) {}
                },
                checkS,
                1e-10,
                200);
    }

    private void bound(
            DormandPrince853Integrator integrator, double[] hit, int index, double value) {
        integrator.addEventHandler(
                new EventHandler() {
                    @Override
                    public void init(double t0, double[] y0, double t) {}

                    @Override
                    public double g(double t, double[] y) {
                        return y[index] - value;
                    }

                    @Override
                    public Action eventOccurred(double t, double[] y, boolean increasing) {
                        hit[0] = index;
                        hit[1] = value;
                        return Action.STOP;
                    }

                    @Override
                    public void resetState(double t, double[] y) {}
                },
                checkS,
                1e-10,
                200);
    }
}
