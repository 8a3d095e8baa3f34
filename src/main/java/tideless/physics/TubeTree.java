package tideless.physics;

import java.util.List;

/**
 * One trunk from a reservoir to a junction, and branches from there to the trays, each with a tube
 * and, if wanted, a valve seat. The description never changes; heads and openings come with each
 * question.
 *
 * <p>The unknown is the head at the junction: what arrives through the trunk rises as that head
 * falls, what leaves through the branches falls with it, so there is one root and it lies between
 * the lowest and the highest head around. Where a branch loses next to nothing against its trunk
 * its flow carries an error of up to about 1e-11 m3/s (0.6 uL/min). The velocity head at the
 * junction is left out. All heads are in metres above one datum.
 */
public final class TubeTree {
    private static final int MAX_ROUNDS = 200;

    /** Heads are told apart down to this, m; far below any flow that could matter. */
    private static final double LEAST_HEAD_M = 1e-18;

    private final double trunkBoreM;
    private final double trunkLengthM;
    private final double trunkLossCoefficient;
    private final double roughnessM;
    private final double[] boreM;
    private final double[] lengthM;
    private final double[] lossCoefficient;
    private final double[] openSeatLoss;

    /**
     * A branch.
     *
     * @param boreM inside diameter of the tube, m
     * @param lengthM m; 0 allowed if there is a seat or a loss
     * @param lossCoefficient sum of the minor-loss coefficients of tee leg, fittings and exit
     * @param seatBoreM bore of the valve seat, m; 0 for no seat
     * @param dischargeCoefficient of the seat; unused without one
     */
    public record Branch(
            double boreM,
            double lengthM,
            double lossCoefficient,
            double seatBoreM,
            double dischargeCoefficient) {
        public Branch {
            if (!(boreM > 0)) {
                throw new IllegalArgumentException("boreM must be above 0, was " + boreM);
            }
            if (!(lengthM >= 0 && lossCoefficient >= 0 && seatBoreM >= 0)) {
                throw new IllegalArgumentException(
                        "lengthM, lossCoefficient and seatBoreM must be at least 0, were "
                                + lengthM
                                + ", "
                                + lossCoefficient
                                + ", "
                                + seatBoreM);
            }
            if (seatBoreM > 0 && !(dischargeCoefficient > 0)) {
                throw new IllegalArgumentException(
                        "dischargeCoefficient must be above 0, was " + dischargeCoefficient);
            }
            if (lengthM == 0 && lossCoefficient == 0 && seatBoreM == 0) {
                throw new IllegalArgumentException(
                        "a branch without length and seat needs a lossCoefficient above 0");
            }
        }
    }

    /**
     * A tree of tubes.
     *
     * @param trunkBoreM inside diameter of the trunk, m
     * @param trunkLengthM m; 0 with {@code trunkLossCoefficient} 0 means that the branches start at
     *     the reservoir itself
     * @param trunkLossCoefficient sum of the minor-loss coefficients of the trunk
     * @param roughnessM wall roughness of all tubes, m
     * @param branches at least one
     */
    public TubeTree(
            double trunkBoreM,
            double trunkLengthM,
            double trunkLossCoefficient,
            double roughnessM,
            List<Branch> branches) {
        if (!(trunkBoreM > 0)) {
            throw new IllegalArgumentException("trunkBoreM must be above 0, was " + trunkBoreM);
        }
        if (!(trunkLengthM >= 0 && trunkLossCoefficient >= 0)) {
            throw new IllegalArgumentException(
                    "trunkLengthM and trunkLossCoefficient must be at least 0, were "
                            + trunkLengthM
                            + ", "
                            + trunkLossCoefficient);
        }
        if (branches.isEmpty()) {
            throw new IllegalArgumentException("branches must not be empty");
        }
        this.trunkBoreM = trunkBoreM;
        this.trunkLengthM = trunkLengthM;
        this.trunkLossCoefficient = trunkLossCoefficient;
        this.roughnessM = roughnessM;
        int size = branches.size();
        boreM = new double[size];
        lengthM = new double[size];
        lossCoefficient = new double[size];
        openSeatLoss = new double[size];
        for (int i = 0; i < size; i++) {
            Branch branch = branches.get(i);
            boreM[i] = branch.boreM;
            lengthM[i] = branch.lengthM;
            lossCoefficient[i] = branch.lossCoefficient;
            openSeatLoss[i] =
                    branch.seatBoreM == 0
                            ? 0
                            : TubeFlow.seatLossCoefficient(
                                    branch.boreM, branch.seatBoreM, branch.dischargeCoefficient, 1);
        }
    }

    /**
     * Head at the junction; the flows of the branches go into an array of the caller, and nothing
     * is allocated.
     *
     * @param reservoirHeadM m
     * @param outletHeadM head at the outlet of each branch, m
     * @param openingFrac opening of each branch's valve, 0-1
     * @param mayRunBack whether water may flow back through each branch
     * @param kinematicViscosityM2PerS of the water, m2/s
     * @param flowsM3PerS receives the flow of each branch, m3/s
     * @return m
     */
    public double junctionHeadM(
            double reservoirHeadM,
            double[] outletHeadM,
            double[] openingFrac,
            boolean[] mayRunBack,
            double kinematicViscosityM2PerS,
            double[] flowsM3PerS) {
        // The unknown is the trunk's loss: heads are taken below the reservoir's, so that levels
        // that
        // stand nearly alike are told apart by their difference and not by the digits of their
        // height.
        double least = 0;
        double most = 0;
        for (int i = 0; i < boreM.length; i++) {
            if (openingFrac[i] > 0) {
                double below = reservoirHeadM - outletHeadM[i];
                most = Math.max(most, below);
                if (mayRunBack[i]) {
                    least = Math.min(least, below);
                }
            }
        }
        double atNoLoss =
                excessM3PerS(
                        0,
                        reservoirHeadM,
                        outletHeadM,
                        openingFrac,
                        mayRunBack,
                        kinematicViscosityM2PerS,
                        flowsM3PerS);
        boolean noTrunk = trunkLengthM == 0 && trunkLossCoefficient == 0;
        if (noTrunk || atNoLoss == 0) {
            return reservoirHeadM;
        }
        // The excess falls as the trunk loses more: its sign without loss tells the side of the
        // root.
        double a = atNoLoss > 0 ? most : least;
        double fa =
                excessM3PerS(
                        a,
                        reservoirHeadM,
                        outletHeadM,
                        openingFrac,
                        mayRunBack,
                        kinematicViscosityM2PerS,
                        flowsM3PerS);
        // Chandrupatla (1997), Adv. Eng. Softw. 28, 145-149: inverse quadratic steps where they are
        // safe, halving where not; a and b hold the root, c is the point before.
        double b = 0;
        double fb = atNoLoss;
        double c = b;
        double fc = fb;
        double t = 0.5;
        double best = a;
        for (int round = 0; round < MAX_ROUNDS; round++) {
            best = Math.abs(fa) < Math.abs(fb) ? a : b;
            double width = Math.abs(b - a);
            double tolerance = 4e-16 * Math.max(Math.abs(a), Math.abs(b)) + LEAST_HEAD_M;
            if (fa == 0 || width <= tolerance) {
                break;
            }
            double x = a + t * (b - a);
            double fx =
                    excessM3PerS(
                            x,
                            reservoirHeadM,
                            outletHeadM,
                            openingFrac,
                            mayRunBack,
                            kinematicViscosityM2PerS,
                            flowsM3PerS);
            if ((fx > 0) == (fa > 0)) {
                c = a;
                fc = fa;
            } else {
                c = b;
                fc = fb;
                b = a;
                fb = fa;
            }
            a = x;
            fa = fx;
            double xi = (a - b) / (c - b);
            double phi = (fa - fb) / (fc - fb);
            if (phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi) {
                t =
                        fa / (fb - fa) * fc / (fb - fc)
                                + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb);
            } else {
                t = 0.5;
            }
            double nearest = Math.min(0.5, tolerance / Math.abs(b - a));
            t = Math.min(1 - nearest, Math.max(nearest, t));
        }
        excessM3PerS(
                best,
                reservoirHeadM,
                outletHeadM,
                openingFrac,
                mayRunBack,
                kinematicViscosityM2PerS,
                flowsM3PerS);
        return reservoirHeadM - best;
    }

    /** What leaves through the branches beyond what arrives through the trunk. */
    private double excessM3PerS(
            double trunkLossM,
            double reservoirHeadM,
            double[] outletHeadM,
            double[] openingFrac,
            boolean[] mayRunBack,
            double kinematicViscosityM2PerS,
            double[] flowsM3PerS) {
        double sum = 0;
        for (int i = 0; i < boreM.length; i++) {
            double opening = openingFrac[i];
            double head = reservoirHeadM - outletHeadM[i] - trunkLossM;
            double flow = 0;
            if (opening > 0 && (head > 0 || mayRunBack[i])) {
                flow =
                        TubeFlow.flowAtViscosityM3PerS(
                                head,
                                boreM[i],
                                lengthM[i],
                                lossCoefficient[i] + seatLoss(i, opening),
                                roughnessM,
                                kinematicViscosityM2PerS);
            }
            flowsM3PerS[i] = flow;
            sum += flow;
        }
        if (trunkLossM == 0) {
            return sum;
        }
        return sum
                - TubeFlow.flowAtViscosityM3PerS(
                        trunkLossM,
                        trunkBoreM,
                        trunkLengthM,
                        trunkLossCoefficient,
                        roughnessM,
                        kinematicViscosityM2PerS);
    }

    private double seatLoss(int branch, double opening) {
        double open = openSeatLoss[branch];
        return open == 0 ? 0 : open / (opening * opening);
    }
}
