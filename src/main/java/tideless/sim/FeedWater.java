package tideless.sim;

import java.util.Arrays;
import java.util.List;
import tideless.physics.Elementary;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Shape;
import tideless.rig.Tray;

/**
 * The water of one reservoir and of the valve trays below it, over a span of constant losses.
 *
 * <p>A valve's opening falls evenly with the level across its band; the flow at each opening is
 * that of tube and seat together ({@link FeedLines}). {@link #advance} goes on by one piece at a
 * time, in one of two ways, whichever reaches further for its work: in closed form ({@link
 * ExponentialPiece}) or by Runge and Kutta ({@link RungeKuttaPiece}), within the regimes of {@link
 * FeedRegime}. The water itself stands in the {@link VesselWater} of each vessel.
 *
 * <p>Scratch space of one run; not for more than one thread. Nothing is allocated after
 * construction.
 */
final class FeedWater {
    /** Usable volume that counts as none, m3: a millionth of a drop. */
    static final double NOTHING_M3 = 1e-13;

    /** Share of the reach an error asks for that is taken; usual. */
    static final double SAFE_FRAC = 0.9;

    /** How much further a closed form has to reach to be worth more; by trial on the rigs. */
    private static final double CLOSED_OVER_RUNGE = 3;

    /** Share of an open reservoir that may evaporate in a piece; by trial on the rigs. */
    private static final double THICKENED_FRAC = 2e-4;

    /** Pieces need not be shorter for that, s: what is left then is a puddle. */
    private static final double LEAST_THICKENING_S = 60;

    /** An opening below this is the rounding of a level. */
    private static final double ROUNDING_FRAC = 1e-12;

    static final double SHORTEST_S = 1e-9;

    final int size;
    final FeedLines lines;

    // The rig.
    private final Shape[] shape;
    private final double[] settingM;
    private final double[] bandM;
    private final double[] floorM;
    private final double[] seatM;
    private final boolean[] mayDrown;

    /** What errors are a share of: what a tray holds, or the reservoir where that is less. */
    final double[] scaleM3;

    final Shape reservoirShape;
    private final double reservoirFloorM;
    private final double reservoirFullM3;
    final double deadM3;

    // What holds over the span; the caller sets it.
    /** What plants and air take as long as there is water, m3/s. */
    final double[] evapotranspirationM3PerS;

    /** Share of the seat's area that is not clogged. */
    final double[] clearFrac;

    /** Opening that leaks whatever the float says. */
    final double[] leakFrac;

    /** Opening at which the valve is stuck, or NaN. */
    final double[] stuckFrac;

    double evaporationM3PerS;
    double viscosityM2PerS;

    /** What a piece may be off by over what it may in a step of ten minutes; at least 1. */
    double looseFactor = 1;

    // State.
    final VesselWater[] trays;
    final VesselWater reservoir;
    final FeedRegime regime;

    // What the last piece brought.
    final double[] inM3;
    final double[] evapotranspiredM3;
    final double[] spiltM3;

    /** Inflow per spill at the end of the piece over that at its start, less 1. */
    final double[] spillRiseFrac;

    double outM3;
    double evaporatedM3;

    /** Integral of time over the reservoir's volume, s/m3; only where it evaporates. */
    double thinningSPerM3;

    /** Pieces taken so far, by closed form and by Runge and Kutta. */
    long closedPieces;

    long rungePieces;

    // Scratch, shared by the two kinds of piece.
    /** How the inflow changes with the tray's volume, 1/s. */
    final double[] slope;

    /** Volumes at the end of the piece under work, m3. */
    final double[] endM3;

    /** Inflow over it, m3. */
    final double[] x;

    /** Height of the reservoir's surface above its floor as last evaluated, m. */
    double reservoirLevelM;

    /** Whether {@link #lines} holds the flows of the present state. */
    boolean known;

    private final double[] opening;
    private final double[] outletM;
    private final double[] levelsM;
    private final double[] nowM3;
    private final boolean[] hadHead;
    private final ExponentialPiece exponential;
    private final RungeKuttaPiece rungeKutta;

    /**
     * @param water of the reservoir, moved by this object
     * @param trayWater of each tray, likewise
     * @param bendMost see {@link ExponentialPiece}
     */
    FeedWater(
            Reservoir of,
            List<Tray> valveTrays,
            VesselWater water,
            List<VesselWater> trayWater,
            double bendMost) {
        size = valveTrays.size();
        reservoir = water;
        trays = trayWater.toArray(VesselWater[]::new);
        regime = new FeedRegime(valveTrays, trays);
        shape = new Shape[size];
        settingM = new double[size];
        bandM = new double[size];
        floorM = new double[size];
        seatM = new double[size];
        mayDrown = new boolean[size];
        scaleM3 = new double[size];
        reservoirFullM3 = of.fullM3();
        Filling.ByValve[] valves = new Filling.ByValve[size];
        for (int i = 0; i < size; i++) {
            Tray tray = valveTrays.get(i);
            valves[i] = (Filling.ByValve) tray.filling();
            shape[i] = tray.shape();
            bandM[i] = valves[i].bandM();
            floorM[i] = tray.floorAboveBenchM();
            seatM[i] = valves[i].seatAboveFloorM();
            mayDrown[i] = seatM[i] < tray.overflowM();
            set(i, valves[i].settingM());
        }
        lines = FeedLines.of(of, List.of(valves));
        reservoirShape = of.shape();
        reservoirFloorM = of.floorAboveBenchM();
        deadM3 = of.deadM3();
        evapotranspirationM3PerS = new double[size];
        clearFrac = filled(1);
        leakFrac = new double[size];
        stuckFrac = filled(Double.NaN);
        inM3 = new double[size];
        evapotranspiredM3 = new double[size];
        spiltM3 = new double[size];
        spillRiseFrac = new double[size];
        slope = new double[size];
        endM3 = new double[size];
        x = new double[size];
        opening = new double[size];
        outletM = new double[size];
        levelsM = new double[size];
        nowM3 = new double[size];
        hadHead = new boolean[size];
        exponential = new ExponentialPiece(this, bendMost);
        rungeKutta = new RungeKuttaPiece(this);
    }

    private double[] filled(double value) {
        double[] values = new double[size];
        Arrays.fill(values, value);
        return values;
    }

    double usableM3() {
        return Math.max(0, reservoir.m3 - deadM3);
    }

    /** Sets a valve to a level above its tray's floor, m. */
    void set(int i, double toM) {
        settingM[i] = toM;
        regime.set(i, toM);
        scaleM3[i] = Math.min(regime.shutM3[i], reservoirFullM3);
        known = false;
    }

    /** To be called when anything but {@link #advance} has changed a volume or what holds. */
    void changed() {
        known = false;
    }

    /**
     * Goes on by one piece of what is left of a step. Fills {@link #inM3}, {@link
     * #evapotranspiredM3}, {@link #spiltM3}, {@link #outM3}, {@link #evaporatedM3}. Stops where the
     * outlet comes out of the solution, and then {@link VesselWater#uncovered} is set.
     *
     * @param leftS s, above 0
     * @return length of the piece, s; 0 when the outlet came out at once
     */
    double advance(double leftS) {
        if (!reservoir.uncovered && usableM3() < NOTHING_M3) {
            reservoir.uncovered = true;
            known = false;
            clearAccounts();
            return 0;
        }
        if (!known) {
            evaluateNow(true);
            known = true;
        }
        settle();
        double spanS = evenlyThickS(leftS);
        double tookS = 0;
        while (!(tookS > 0)
                && exponential.reachS >= Math.min(spanS, CLOSED_OVER_RUNGE * rungeKutta.pieceS)) {
            tookS = exponential.advance(Math.min(spanS, exponential.reachS));
        }
        if (tookS > 0) {
            closedPieces++;
        } else {
            tookS = rungeKutta.advance(spanS);
            rungePieces++;
            exponential.reachS = 2 * Math.max(exponential.reachS, tookS);
        }
        return tookS;
    }

    /**
     * As much of a span as an open reservoir's air thickens its solution by little: what is let out
     * in a piece goes to the trays at one strength.
     */
    private double evenlyThickS(double spanS) {
        if (reservoir.uncovered || !(evaporationM3PerS > 0)) {
            return spanS;
        }
        double mostS = THICKENED_FRAC * reservoir.m3 / evaporationM3PerS;
        return Math.min(spanS, Math.max(LEAST_THICKENING_S, mostS));
    }

    void clearAccounts() {
        for (int i = 0; i < size; i++) {
            inM3[i] = 0;
            evapotranspiredM3[i] = 0;
            spiltM3[i] = 0;
        }
        outM3 = 0;
        evaporatedM3 = 0;
        thinningSPerM3 = 0;
    }

    // The law.

    /** The flows as things stand. */
    void evaluateNow(boolean withSlopes) {
        for (int i = 0; i < size; i++) {
            nowM3[i] = trays[i].m3;
        }
        evaluate(nowM3, reservoir.m3, withSlopes);
    }

    /**
     * The flows for stated volumes, with every valve in the regime it is in.
     *
     * @param withSlopes whether {@link #slope} is wanted too
     */
    void evaluate(double[] volumesM3, double inReservoirM3, boolean withSlopes) {
        if (reservoir.uncovered) {
            lines.shut();
            Arrays.fill(slope, 0);
            return;
        }
        for (int i = 0; i < size; i++) {
            boolean throttles = regime.valve[i] == FeedRegime.Valve.THROTTLING;
            // In air the level neither opens nor hinders a valve that is wide open or shut.
            double levelM = throttles || mayDrown[i] ? shape[i].levelM(volumesM3[i]) : 0;
            double open;
            if (throttles) {
                open = (settingM[i] - levelM) / bandM[i];
                if (Math.abs(open) < ROUNDING_FRAC) {
                    open = 0;
                }
            } else {
                open =
                        regime.valve[i] == FeedRegime.Valve.WIDE
                                ? 1
                                : regime.valve[i] == FeedRegime.Valve.SHUT ? 0 : stuckFrac[i];
            }
            opening[i] = clearFrac[i] * open + leakFrac[i];
            outletM[i] = floorM[i] + Math.max(seatM[i], levelM);
            levelsM[i] = levelM;
        }
        reservoirLevelM = reservoirShape.levelM(inReservoirM3);
        lines.solve(reservoirFloorM + reservoirLevelM, outletM, opening, viscosityM2PerS);
        if (withSlopes) {
            for (int i = 0; i < size; i++) {
                double perVolume = 0;
                boolean throttles = regime.valve[i] == FeedRegime.Valve.THROTTLING;
                boolean drowned = levelsM[i] > seatM[i];
                if (regime.water[i] == FeedRegime.Water.FREE && (throttles || drowned)) {
                    double areaM2 = shape[i].areaM2(levelsM[i]);
                    if (throttles) {
                        perVolume = -lines.byOpening[i] * clearFrac[i] / (bandM[i] * areaM2);
                    }
                    if (drowned) {
                        perVolume -= lines.byHead[i] / areaM2;
                    }
                }
                slope[i] = perVolume;
            }
        }
    }

    /** Puts every tray into the regime it is about to move in. */
    private void settle() {
        for (int round = 0; round < 4; round++) {
            boolean moved = false;
            for (int i = 0; i < size; i++) {
                moved |=
                        regime.settle(
                                i, lines.flowM3PerS[i], evapotranspirationM3PerS[i], stuckFrac[i]);
            }
            if (!moved) {
                return;
            }
            evaluateNow(true);
        }
    }

    /** Takes a piece to its end, so that what came in, went and stands adds up. */
    void account(int i, double endVolumeM3, double spanS) {
        double start = trays[i].m3;
        inM3[i] = spanS > 0 ? Math.max(0, x[i]) : Math.max(0, endVolumeM3 - start);
        switch (regime.water[i]) {
            case FREE -> {
                trays[i].m3 = endVolumeM3;
                evapotranspiredM3[i] = start + inM3[i] - endVolumeM3;
                if (evapotranspiredM3[i] < 0) { // by rounding
                    inM3[i] -= evapotranspiredM3[i];
                    evapotranspiredM3[i] = 0;
                }
                spiltM3[i] = 0;
            }
            case DRY -> {
                evapotranspiredM3[i] = start + inM3[i];
                trays[i].m3 = 0;
                spiltM3[i] = 0;
            }
            case BRIM -> {
                evapotranspiredM3[i] = Math.min(evapotranspirationM3PerS[i] * spanS, inM3[i]);
                spiltM3[i] = inM3[i] - evapotranspiredM3[i];
            }
            default -> throw new AssertionError("no account for " + regime.water[i]);
        }
        outM3 += inM3[i];
    }

    void noteSpillRise(double[] startFlow, double[] endFlow) {
        for (int i = 0; i < size; i++) {
            if (spiltM3[i] > 0) {
                double asked = evapotranspirationM3PerS[i];
                double before = startFlow[i] * (endFlow[i] - asked);
                double after = endFlow[i] * (startFlow[i] - asked);
                // Where the spill comes to an end no straight line holds; little is spilt there.
                spillRiseFrac[i] = before > 0.3 * after ? after / before - 1 : 0;
            }
        }
    }

    static double outflowM3PerS(double[] flows) {
        double sum = 0;
        for (double flow : flows) {
            sum += flow;
        }
        return sum;
    }

    // Exact for a volume that changes evenly; what Hermite's cubic between the ends departs from
    // that, by Simpson's rule.
    void thin(double startM3, double startRate, double endRate, double spanS) {
        if (evaporationM3PerS > 0 && reservoir.m3 > 0) {
            double evenM3 = 0.5 * (startM3 + reservoir.m3);
            double midM3 = evenM3 - 0.125 * spanS * (startRate - endRate);
            double d = 0.5 * (reservoir.m3 - startM3) / evenM3;
            double even =
                    Math.abs(d) < 1e-3
                            ? (1 + d * d / 3 * (1 + 0.6 * d * d)) / evenM3
                            : Elementary.log(reservoir.m3 / startM3) / (reservoir.m3 - startM3);
            thinningSPerM3 = spanS * (even + 2.0 / 3 * (1 / midM3 - 1 / evenM3));
        }
    }

    void finishReservoir(double spanS) {
        reservoir.m3 = Math.max(0, reservoir.m3 - outM3); // rounding must not owe water
        evaporatedM3 = Math.min(reservoir.m3, evaporationM3PerS * spanS);
        reservoir.m3 -= evaporatedM3;
    }

    void noteHeads() {
        for (int i = 0; i < size; i++) {
            hadHead[i] = lines.byOpening[i] > 0;
        }
    }

    /**
     * Whether an open line has got or lost its head since {@link #noteHeads}: its flow then starts
     * with the root of the head, which no polynomial follows and an error estimate may miss.
     */
    boolean hasOnset() {
        for (int i = 0; i < size; i++) {
            if (opening[i] > 0 && hadHead[i] != lines.byOpening[i] > 0) {
                return true;
            }
        }
        return false;
    }
}
