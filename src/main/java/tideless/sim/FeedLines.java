package tideless.sim;

import java.util.List;
import tideless.physics.Elementary;
import tideless.physics.LiquidWater;
import tideless.physics.TubeFlow;
import tideless.physics.TubeTree;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Tube;

/**
 * The tubing from one reservoir to its trays: a trunk, a tee, and a branch with a valve each. Gives
 * the flow of every branch for any set of openings and heads, and how it changes with them.
 *
 * <p>The law is that of {@link TubeTree}. Where the flow is laminar (a trickle: nearly always) a
 * branch is the root of a quadratic, else it is sought from where it stood; the flow of the trunk
 * is sought around that by Newton's method, from where it stood. Should that go round in a circle,
 * the general solver is asked. A line never runs backwards: the outlet hangs in air, or has a check
 * valve.
 *
 * <p>Scratch space of one run.
 */
final class FeedLines {
    /**
     * Up to this Reynolds number 64/Re is the friction law to the last digit; see {@link
     * TubeFlow#friction}.
     */
    private static final double LAMINAR_REYNOLDS = 800;

    /**
     * The trunk's loss is known when it moves by less than this share of the least head: the last
     * step is taken along the slopes and leaves the square of it.
     */
    private static final double LOSS_MOVED_FRAC = 1e-6;

    /** A step of a flow's logarithm below this leaves an error of some tens of its square. */
    private static final double LAST_STEP = 1e-8;

    /** Rounds after which a branch is searched for by itself: Newton may go round in a circle. */
    private static final int SEARCHED_FROM = 8;

    private static final int MAX_ROUNDS = 30;

    /** Exponent of the flow in the losses beyond the laminar range; only for slopes. Blasius. */
    private static final double ROUGH_POWER = 1.75;

    private static final double G = TubeFlow.GRAVITY_M_PER_S2;

    /** Flow of each branch, m3/s, at least 0 for an opening of at least 0. */
    final double[] flowM3PerS;

    /** Its change with its own opening, m3/s. */
    final double[] byOpening;

    /** Its change with the height of the reservoir's surface, m2/s. */
    final double[] byHead;

    private final int size;
    private final boolean hasTrunk;
    private final double trunkViscousM; // head per flow and viscosity
    private final double trunkFittings;
    private final double trunkLaminarMost; // flow per viscosity
    private final Tube trunk;
    private final Tube[] branch;
    private final double[] viscousM;
    private final double[] fittings;
    private final double[] seat;
    private final double[] laminarMost;
    private final TubeTree tree;
    private final boolean[] mayRunBack;
    private final double[] openingSound;
    private double trunkM3PerS;

    // Friction beyond the laminar range as last looked at, of each branch and then the trunk; 0
    // before.
    private final double[] factor;
    private final double[] factorSlope;

    // Of the round under work.
    private double headOrder; // d ln head / d ln flow of the branch
    private double stepTaken; // longest step of a flow's logarithm

    FeedLines(Tube trunk, List<Filling.ByValve> valves) {
        size = valves.size();
        hasTrunk = trunk.lengthM() > 0 || trunk.lossCoefficient() > 0;
        trunkViscousM = viscousM(trunk);
        trunkFittings = quadratic(trunk.boreM()) * trunk.lossCoefficient();
        trunkLaminarMost = LAMINAR_REYNOLDS * 0.25 * Math.PI * trunk.boreM();
        this.trunk = trunk;
        branch = new Tube[size];
        viscousM = new double[size];
        fittings = new double[size];
        seat = new double[size];
        laminarMost = new double[size];
        TubeTree.Branch[] branches = new TubeTree.Branch[size];
        for (int i = 0; i < size; i++) {
            Filling.ByValve valve = valves.get(i);
            Tube tube = valve.branch();
            branch[i] = tube;
            viscousM[i] = viscousM(tube);
            double q = quadratic(tube.boreM());
            fittings[i] = q * tube.lossCoefficient();
            seat[i] =
                    q
                            * TubeFlow.seatLossCoefficient(
                                    tube.boreM(),
                                    valve.seatBoreM(),
                                    valve.dischargeCoefficient(),
                                    1);
            laminarMost[i] = LAMINAR_REYNOLDS * 0.25 * Math.PI * tube.boreM();
            branches[i] =
                    new TubeTree.Branch(
                            tube.boreM(),
                            tube.lengthM(),
                            tube.lossCoefficient(),
                            valve.seatBoreM(),
                            valve.dischargeCoefficient());
        }
        tree =
                size == 0
                        ? null
                        : new TubeTree(
                                trunk.boreM(),
                                trunk.lengthM(),
                                trunk.lossCoefficient(),
                                TubeFlow.PLASTIC_ROUGHNESS_M,
                                List.of(branches));
        mayRunBack = new boolean[size];
        openingSound = new double[size];
        flowM3PerS = new double[size];
        byOpening = new double[size];
        byHead = new double[size];
        factor = new double[size + 1];
        factorSlope = new double[size + 1];
    }

    static FeedLines of(Reservoir reservoir, List<Filling.ByValve> valves) {
        return new FeedLines(reservoir.trunk(), valves);
    }

    // Hagen and Poiseuille: head = viscous * viscosity * flow.
    private static double viscousM(Tube tube) {
        double d2 = tube.boreM() * tube.boreM();
        return 128 * tube.lengthM() / (Math.PI * G * d2 * d2);
    }

    private static double quadratic(double boreM) {
        double d2 = boreM * boreM;
        return 8 / (Math.PI * Math.PI * G * d2 * d2);
    }

    /** No flow at all: the outlet hangs in air. */
    void shut() {
        for (int i = 0; i < size; i++) {
            flowM3PerS[i] = 0;
            byOpening[i] = 0;
            byHead[i] = 0;
        }
    }

    /**
     * Works out {@link #flowM3PerS}, {@link #byOpening} and {@link #byHead}. The flows are exact to
     * about 1e-13 and the slopes with them; but where the general solver had to be asked the slopes
     * are within some tens of percent.
     *
     * @param surfaceM reservoir's surface, m above the bench
     * @param outletM where each branch ends, m above the bench
     * @param openingFrac free share of each seat; below 0 the law is continued through 0
     * @param viscosityM2PerS kinematic viscosity of the solution
     */
    void solve(double surfaceM, double[] outletM, double[] openingFrac, double viscosityM2PerS) {
        double most = trunkLaminarMost * viscosityM2PerS;
        double flow = hasTrunk ? trunkM3PerS : 0;
        double a = trunkViscousM * viscosityM2PerS;
        double b = trunkFittings;
        for (int round = 0; round < MAX_ROUNDS; round++) {
            double amount = Math.abs(flow);
            double loss = (a + b * amount) * flow;
            double lossSlope = a + 2 * b * amount;
            stepTaken = 0;
            if (amount > most) {
                double reynolds = LAMINAR_REYNOLDS * amount / most;
                lookAt(size, trunk, reynolds, round);
                double friction = a * flow * reynolds / 64 * factor[size];
                loss = friction + b * amount * flow;
                lossSlope = (2 + factorSlope[size]) * friction / flow + 2 * b * amount;
            }
            double sum = 0;
            double sumSlope = 0;
            double leastM = 1;
            for (int i = 0; i < size; i++) {
                double headM = surfaceM - outletM[i] - loss;
                double s = openingFrac[i];
                if (!(headM > 0) || s == 0) {
                    flowM3PerS[i] = 0;
                    byHead[i] = 0;
                    byOpening[i] = headM > 0 ? Math.sqrt(headM / seat[i]) : 0;
                    continue;
                }
                double s2 = s * s;
                double viscous = viscousM[i] * viscosityM2PerS * Math.abs(s);
                double loose = fittings[i] * s2 + seat[i];
                double u = 2 * headM / (viscous + Math.sqrt(viscous * viscous + 4 * loose * headM));
                double stiff = viscous + 2 * loose * u;
                double q = u * s;
                if (Math.abs(q) > laminarMost[i] * viscosityM2PerS) {
                    q = Math.copySign(beyondLaminar(i, headM, s, q, viscosityM2PerS, round), s);
                    u = q / s;
                    stiff = headOrder * headM / u;
                }
                flowM3PerS[i] = q;
                byHead[i] = Math.abs(s) / stiff;
                byOpening[i] = 2 * seat[i] * u * u / stiff;
                leastM = Math.min(leastM, headM);
                sum += q;
                sumSlope += byHead[i];
            }
            if (!hasTrunk) {
                if (stepTaken <= LAST_STEP) {
                    return;
                }
                continue;
            }
            double change = (sum - flow) / (1 + lossSlope * sumSlope);
            double lossChange = lossSlope * change;
            flow += change;
            if (stepTaken <= LAST_STEP && Math.abs(lossChange) <= LOSS_MOVED_FRAC * leastM) {
                trunkM3PerS = flow;
                double kept = 1 / (1 + lossSlope * sumSlope);
                for (int i = 0; i < size; i++) {
                    flowM3PerS[i] -= byHead[i] * lossChange;
                    byOpening[i] *= 1 - byHead[i] * lossSlope * kept;
                    byHead[i] *= kept;
                }
                return;
            }
        }
        solveAnyRegime(surfaceM, outletM, openingFrac, viscosityM2PerS);
    }

    /**
     * A step of Newton's on the logarithms of a branch's flow and head, from where the flow stood;
     * the branches and the trunk close in together. Sets {@link #headOrder} and {@link #stepTaken}.
     *
     * @param mostM3PerS flow by the laminar law, which the flow does not exceed
     */
    private double beyondLaminar(
            int i,
            double headM,
            double opening,
            double mostM3PerS,
            double viscosityM2PerS,
            int round) {
        double amount = Math.abs(flowM3PerS[i]);
        double leastM3PerS = laminarMost[i] * viscosityM2PerS;
        if (!(amount > leastM3PerS) || round >= SEARCHED_FROM) {
            return searchBeyond(i, headM, opening, viscosityM2PerS);
        }
        double reynolds = LAMINAR_REYNOLDS * amount / leastM3PerS;
        lookAt(i, branch[i], reynolds, round);
        double friction = viscousM[i] * viscosityM2PerS * amount * reynolds / 64 * factor[i];
        double fixed = (fittings[i] + seat[i] / (opening * opening)) * amount * amount;
        double needsM = friction + fixed;
        headOrder = ((2 + factorSlope[i]) * friction + 2 * fixed) / needsM;
        double step = Elementary.log(headM / needsM) / headOrder;
        stepTaken = Math.max(stepTaken, Math.abs(step));
        double most = Math.abs(mostM3PerS);
        return Math.min(most, Math.max(leastM3PerS, amount * Elementary.exp(step)));
    }

    // In the first round the friction is taken as it was last: near enough for the way.
    private void lookAt(int line, Tube tube, double reynolds, int round) {
        if (round == 0 && factor[line] > 0) {
            stepTaken = Double.POSITIVE_INFINITY;
            return;
        }
        TubeFlow.Friction law =
                TubeFlow.friction(reynolds, TubeFlow.PLASTIC_ROUGHNESS_M / tube.boreM());
        factor[line] = law.factor();
        factorSlope[line] = law.slope();
    }

    private double searchBeyond(int i, double headM, double opening, double viscosityM2PerS) {
        Tube tube = branch[i];
        TubeFlow.Flow found =
                TubeFlow.flowNear(
                        headM,
                        tube.boreM(),
                        tube.lengthM(),
                        tube.lossCoefficient()
                                + seat[i] / (opening * opening * quadratic(tube.boreM())),
                        TubeFlow.PLASTIC_ROUGHNESS_M,
                        viscosityM2PerS,
                        Math.abs(flowM3PerS[i]));
        factor[i] = 0;
        headOrder = found.headOrder();
        return found.m3PerS();
    }

    private void solveAnyRegime(
            double surfaceM, double[] outletM, double[] openingFrac, double viscosityM2PerS) {
        for (int i = 0; i < size; i++) {
            openingSound[i] = Math.max(0, openingFrac[i]);
        }
        double teeM =
                tree.junctionHeadM(
                        surfaceM, outletM, openingSound, mayRunBack, viscosityM2PerS, flowM3PerS);
        double total = 0;
        double slopes = 0;
        for (int i = 0; i < size; i++) {
            double q = flowM3PerS[i];
            byHead[i] = 0;
            byOpening[i] = 0;
            if (q > 0) {
                double s = openingSound[i];
                double seatSlope = 2 * seat[i] * q / (s * s);
                double line = teeM - outletM[i] - 0.5 * seatSlope * q;
                double slope = Math.max(0, ROUGH_POWER * line / q) + seatSlope;
                byHead[i] = 1 / slope;
                byOpening[i] = seatSlope * q / (s * slope);
                total += q;
                slopes += byHead[i];
            }
        }
        trunkM3PerS = total;
        double lossSlope = total > 0 ? ROUGH_POWER * (surfaceM - teeM) / total : 0;
        double kept = 1 / (1 + lossSlope * slopes);
        for (int i = 0; i < size; i++) {
            byOpening[i] *= 1 - byHead[i] * lossSlope * kept;
            byHead[i] *= kept;
        }
    }

    /**
     * Opening that passes a small flow through one branch alone: a leak past the seat.
     *
     * @param branch its index
     * @param leakM3PerS m3/s, laminar
     * @param headM from the reservoir's surface to the branch's end, m
     * @param tempC of the solution, degC
     * @return free share of the seat; infinite when the line itself cannot pass it
     */
    double openingOfLeak(int branch, double leakM3PerS, double headM, double tempC) {
        double viscosity = LiquidWater.kinematicViscosityM2PerS(tempC);
        double line =
                ((viscousM[branch] + trunkViscousM) * viscosity
                                + (fittings[branch] + trunkFittings) * leakM3PerS)
                        * leakM3PerS;
        return headM > line
                ? leakM3PerS * Math.sqrt(seat[branch] / (headM - line))
                : Double.POSITIVE_INFINITY;
    }
}
