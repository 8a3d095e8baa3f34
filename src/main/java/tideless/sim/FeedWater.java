package tideless.sim;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Shape;
import tideless.rig.Tray;

/**
 * The water of one reservoir and of the valve trays below it, over a span of constant losses.
 *
 * <p>A valve's opening falls evenly with the level across its band; the flow at each opening is
 * that of tube and seat together ({@link FeedLines}). {@link #advance} goes on by one piece at a
 * time, in one of two ways, whichever reaches further for its work:
 *
 * <ul>
 *   <li><b>Closed form.</b> In every regime the rates are taken as straight in the tray's volume
 *       and in time, which gives a line, a parabola or an exponential approach, and from it the
 *       instant at which one regime turns into the next. The rates at its end tell how far they
 *       were from straight. Up to {@link #bendMost} of the tray's volume that bend is put in as
 *       growing evenly (exponential Runge and Kutta of second order: Cox and Matthews 2002, J.
 *       Comp. Phys. 176, 430-455, ETD2RK; from memory); beyond it the rates at the middle are asked
 *       as well and it is put in as a parabola (an exponential Rosenbrock method of third order:
 *       Hochbruck and Ostermann 2010, Acta Numerica 19, 209-286; from memory), over as long a span
 *       as the parabola holds.
 *   <li><b>Runge and Kutta.</b> A piece of the pair of Dormand and Prince (1980; J. Comp. Appl.
 *       Math. 6, 19-26), order 5 with error control; its crossings are found on its dense form
 *       (Hairer, Norsett and Wanner 1993, II.6) and stepped to.
 * </ul>
 *
 * <p>Scratch space of one run; not for more than one thread. Nothing is allocated after
 * construction.
 */
final class FeedWater {
    /** Where a tray's valve stands. */
    enum Valve {
        SHUT,
        THROTTLING,
        WIDE,
        STUCK
    }

    /** What a tray's water is bounded by. */
    enum Water {
        FREE,
        DRY,
        BRIM
    }

    /** Usable volume that counts as none, m3: a millionth of a drop. */
    private static final double NOTHING_M3 = 1e-13;

    /**
     * Error of a piece of Runge and Kutta, share of the tray's volume; two hundred pieces of a
     * filling then stay below 1e-7.
     */
    private static final double PIECE_ERROR_FRAC = 5e-10;

    /**
     * Pieces shorter than this may bend in proportion less, so that short steps add up alike, s.
     */
    private static final double BEND_SPAN_S = 600;

    /** What a parabola of the bend may be off by, over {@link #bendMost}; by trial on the rigs. */
    private static final double BOW_TO_BEND = 2;

    /**
     * Bend that a parabola may hold, over {@link #bendMost}: beyond it two looks at the bend may by
     * chance agree and yet tell little. By trial on 40,000 rigs.
     */
    private static final double BOWED_MOST = 50;

    /** Share of the reach an error asks for that is taken; usual. */
    private static final double SAFE_FRAC = 0.9;

    private static final double MOST_GROWTH = 4;

    /**
     * How far on towards a crossing that bends too much; the rest then bends a thousandth of it.
     */
    private static final double NEARER_FRAC = 0.9;

    /** Length of the piece in which an open line begins to run, s; by trial on the rigs. */
    private static final double ONSET_S = 0.1;

    /** How much further a closed form has to reach to be worth more; by trial on the rigs. */
    private static final double CLOSED_OVER_RUNGE = 3;

    /** Share of an open reservoir that may evaporate in a piece; by trial on the rigs. */
    private static final double THICKENED_FRAC = 2e-4;

    /** Pieces need not be shorter for that, s: what is left then is a puddle. */
    private static final double LEAST_THICKENING_S = 60;

    /** An opening below this is the rounding of a level. */
    private static final double ROUNDING_FRAC = 1e-12;

    private static final double SHORTEST_S = 1e-9;
    private static final int MAX_ROUNDS = 200;

    /** Largest bend of the rates that the closed form may put in, share of the tray's volume. */
    private final double bendMost;

    final int size;
    final FeedLines lines;

    // The rig.
    private final Shape[] shape;
    private final double[] settingM;
    private final double[] bandM;
    private final boolean[] snaps;
    private final double[] floorM;
    private final double[] seatM;
    private final boolean[] mayDrown;
    private final double[] shutM3;
    private final double[] wideM3;

    /** What errors are a share of: what a tray holds, or the reservoir where that is less. */
    private final double[] scaleM3;

    private final double[] brimM3;
    private final Shape reservoirShape;
    private final double reservoirFloorM;
    private final double deadM3;

    // What holds over the span; the caller sets it.
    /** Asked for by plants and air, m3/s. */
    final double[] askedM3PerS;

    /** Share of the seat's area that is not clogged. */
    final double[] clearFrac;

    /** Opening that leaks whatever the float says. */
    final double[] leakFrac;

    /** Opening at which the valve is stuck, or NaN. */
    final double[] stuckFrac;

    double evaporationM3PerS;
    double viscosityM2PerS;

    // State.
    final double[] volumeM3;
    final boolean[] snapOpen;
    final Water[] water;
    double reservoirM3;
    boolean uncovered;

    // What the last piece brought.
    final double[] inM3;
    final double[] lostM3;
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

    // Scratch.
    private final Valve[] valve;
    private final double[] opening;
    private final double[] outletM;
    private final double[] levelsM;
    private final double[] rate;
    private final double[] slope;
    private final double[] drift;
    private final double[] endM3;
    private final Phi phi = new Phi();
    private final double[] phi2;
    private final double[] bend;
    private final boolean[] hadHead;
    private final double[] middleM3;
    private final double[] bowM3;
    private final double[] bowedFlow;
    private final double[] x;
    private final DormandPrince pair;
    private final double[] stage;
    private double pieceS = 60;
    private double reachS = Double.POSITIVE_INFINITY; // of the next closed form, s
    private double crossedM3;
    private double reservoirLevelM;
    private int first; // tray that crosses into another regime at the end of the piece, or -1
    private boolean known;

    FeedWater(Reservoir reservoir, List<Tray> trays, double bendMost) {
        this.bendMost = bendMost;
        size = trays.size();
        shape = new Shape[size];
        settingM = new double[size];
        bandM = new double[size];
        snaps = new boolean[size];
        floorM = new double[size];
        seatM = new double[size];
        mayDrown = new boolean[size];
        shutM3 = new double[size];
        wideM3 = new double[size];
        scaleM3 = new double[size];
        brimM3 = new double[size];
        Filling.ByValve[] valves = new Filling.ByValve[size];
        for (int i = 0; i < size; i++) {
            Tray tray = trays.get(i);
            valves[i] = (Filling.ByValve) tray.filling();
            shape[i] = tray.shape();
            settingM[i] = valves[i].settingM();
            bandM[i] = valves[i].bandM();
            snaps[i] = valves[i].snaps();
            floorM[i] = tray.floorAboveBenchM();
            seatM[i] = valves[i].seatAboveFloorM();
            mayDrown[i] = seatM[i] < tray.overflowM();
            shutM3[i] = shape[i].volumeM3(settingM[i]);
            scaleM3[i] = Math.min(shutM3[i], reservoir.fullM3());
            wideM3[i] = shape[i].volumeM3(settingM[i] - bandM[i]);
            brimM3[i] = shape[i].volumeM3(tray.overflowM());
        }
        lines = FeedLines.of(reservoir, List.of(valves));
        reservoirShape = reservoir.shape();
        reservoirFloorM = reservoir.floorAboveBenchM();
        deadM3 = reservoir.deadM3();
        askedM3PerS = new double[size];
        clearFrac = filled(1);
        leakFrac = new double[size];
        stuckFrac = filled(Double.NaN);
        volumeM3 = new double[size];
        snapOpen = new boolean[size];
        water = new Water[size];
        Arrays.fill(water, Water.FREE);
        valve = new Valve[size];
        Arrays.fill(valve, Valve.SHUT);
        inM3 = new double[size];
        lostM3 = new double[size];
        spiltM3 = new double[size];
        spillRiseFrac = new double[size];
        opening = new double[size];
        outletM = new double[size];
        levelsM = new double[size];
        rate = new double[size];
        slope = new double[size];
        drift = new double[size];
        endM3 = new double[size];
        bend = new double[size];
        hadHead = new boolean[size];
        middleM3 = new double[size];
        bowM3 = new double[size];
        bowedFlow = new double[size];
        phi2 = new double[size];
        x = new double[size];
        pair = new DormandPrince(size);
        stage = new double[size];
    }

    private double[] filled(double value) {
        double[] values = new double[size];
        Arrays.fill(values, value);
        return values;
    }

    double usableM3() {
        return Math.max(0, reservoirM3 - deadM3);
    }

    double brimM3(int i) {
        return brimM3[i];
    }

    Valve valve(int i) {
        return valve[i];
    }

    /** To be called when anything but {@link #advance} has changed a volume or what holds. */
    void changed() {
        known = false;
    }

    /**
     * Goes on by one piece of what is left of a step. Fills {@link #inM3}, {@link #lostM3}, {@link
     * #spiltM3}, {@link #outM3}, {@link #evaporatedM3}. Stops where the outlet comes out of the
     * solution, and then {@link #uncovered} is set.
     *
     * @param leftS s, above 0
     * @return length of the piece, s; 0 when the outlet came out at once
     */
    double advance(double leftS) {
        if (!uncovered && usableM3() < NOTHING_M3) {
            uncovered = true;
            known = false;
            clearAccounts();
            return 0;
        }
        if (!known) {
            evaluate(volumeM3, reservoirM3, true);
            known = true;
        }
        settle();
        double spanS = evenlyThickS(leftS);
        double tookS = 0;
        while (!(tookS > 0) && reachS >= Math.min(spanS, CLOSED_OVER_RUNGE * pieceS)) {
            tookS = closedForm(Math.min(spanS, reachS));
        }
        if (tookS > 0) {
            closedPieces++;
        } else {
            tookS = rungeKutta(spanS);
            rungePieces++;
            reachS = 2 * Math.max(reachS, tookS);
        }
        return tookS;
    }

    /**
     * As much of a span as an open reservoir's air thickens its solution by little: what is let out
     * in a piece goes to the trays at one strength.
     */
    private double evenlyThickS(double spanS) {
        if (uncovered || !(evaporationM3PerS > 0)) {
            return spanS;
        }
        double mostS = THICKENED_FRAC * reservoirM3 / evaporationM3PerS;
        return Math.min(spanS, Math.max(LEAST_THICKENING_S, mostS));
    }

    private void clearAccounts() {
        for (int i = 0; i < size; i++) {
            inM3[i] = 0;
            lostM3[i] = 0;
            spiltM3[i] = 0;
        }
        outM3 = 0;
        evaporatedM3 = 0;
        thinningSPerM3 = 0;
    }

    // The law.

    /** Inflow of tray {@code i} as last evaluated, m3/s. */
    double flowM3PerS(int i) {
        return lines.flowM3PerS[i];
    }

    /**
     * The flows for stated volumes, with every valve in the regime it is in.
     *
     * @param withSlopes whether {@link #slope} is wanted too
     */
    void evaluate(double[] volumesM3, double inReservoirM3, boolean withSlopes) {
        if (uncovered) {
            lines.shut();
            Arrays.fill(slope, 0);
            return;
        }
        for (int i = 0; i < size; i++) {
            boolean throttles = valve[i] == Valve.THROTTLING;
            // In air the level neither opens nor hinders a valve that is wide open or shut.
            double levelM = throttles || mayDrown[i] ? shape[i].levelM(volumesM3[i]) : 0;
            double open;
            if (throttles) {
                open = (settingM[i] - levelM) / bandM[i];
                if (Math.abs(open) < ROUNDING_FRAC) {
                    open = 0;
                }
            } else {
                open = valve[i] == Valve.WIDE ? 1 : valve[i] == Valve.SHUT ? 0 : stuckFrac[i];
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
                boolean throttles = valve[i] == Valve.THROTTLING;
                boolean drowned = levelsM[i] > seatM[i];
                if (water[i] == Water.FREE && (throttles || drowned)) {
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

    // Regimes.

    private double lowM3(int i) {
        return switch (valve[i]) {
            case SHUT -> snaps[i] ? wideM3[i] : shutM3[i];
            case THROTTLING -> wideM3[i];
            case WIDE, STUCK -> 0;
        };
    }

    private double highM3(int i) {
        return switch (valve[i]) {
            case SHUT, STUCK -> brimM3[i];
            case THROTTLING -> shutM3[i];
            case WIDE -> snaps[i] ? shutM3[i] : wideM3[i];
        };
    }

    /** Puts every tray into the regime it is about to move in. */
    private void settle() {
        for (int round = 0; round < 4; round++) {
            boolean moved = false;
            for (int i = 0; i < size; i++) {
                moved |= settleValve(i);
                moved |= settleWater(i);
            }
            if (!moved) {
                return;
            }
            evaluate(volumeM3, reservoirM3, true);
        }
    }

    private boolean settleValve(int i) {
        Valve before = valve[i];
        double v = volumeM3[i];
        if (!Double.isNaN(stuckFrac[i])) {
            valve[i] = Valve.STUCK;
        } else if (snaps[i]) {
            boolean open = v <= wideM3[i] || (snapOpen[i] && v < shutM3[i]);
            snapOpen[i] = open;
            valve[i] = open ? Valve.WIDE : Valve.SHUT;
        } else if (v > shutM3[i]) {
            valve[i] = Valve.SHUT;
        } else if (v < wideM3[i]) {
            valve[i] = Valve.WIDE;
        } else if (v == shutM3[i] || v == wideM3[i]) {
            double net = lines.flowM3PerS[i] - askedM3PerS[i];
            if (v == shutM3[i]) {
                valve[i] = net >= 0 ? Valve.SHUT : Valve.THROTTLING;
            } else {
                valve[i] = net < 0 ? Valve.WIDE : Valve.THROTTLING;
            }
        } else {
            valve[i] = Valve.THROTTLING;
        }
        return valve[i] != before;
    }

    private boolean settleWater(int i) {
        Water before = water[i];
        double net = lines.flowM3PerS[i] - askedM3PerS[i];
        if (volumeM3[i] <= 0 && net <= 0) {
            water[i] = Water.DRY;
        } else if (volumeM3[i] >= brimM3[i] && net >= 0 && lines.flowM3PerS[i] > 0) {
            water[i] = Water.BRIM;
        } else {
            water[i] = Water.FREE;
        }
        return water[i] != before;
    }

    // Closed form.

    /**
     * 0 when the rates bend too much, or the outlet comes out; then {@link #reachS} says how far.
     */
    private double closedForm(double spanS) {
        double startRate = outflowM3PerS(lines.flowM3PerS);
        double span = untilFirstCrossing(spanS, startRate + evaporationM3PerS);
        if (!(span > SHORTEST_S)) {
            return crossAtOnce(span);
        }
        double reservoirEnd = reservoirM3 - projectEnds(span);
        if (!uncovered && reservoirEnd - deadM3 < NOTHING_M3) {
            reachS = 0;
            return 0;
        }
        if (uncovered) {
            known = true;
        } else if (!correctEnds(span, reservoirEnd)) {
            evaluate(volumeM3, reservoirM3, true);
            return 0;
        }
        double[] endFlow = known ? lines.flowM3PerS : bowedFlow;
        clearAccounts();
        for (int i = 0; i < size; i++) {
            account(i, endM3[i], span);
        }
        double startM3 = reservoirM3;
        finishReservoir(span);
        thin(startM3, startRate, outflowM3PerS(endFlow), span);
        noteSpillRise(rate, endFlow);
        known &= first < 0;
        return span;
    }

    /** The rates as straight lines, and when the first of them leads out of its regime, s. */
    private double untilFirstCrossing(double spanS, double reservoirLossM3PerS) {
        double fallMPerS =
                !uncovered && reservoirM3 > 0
                        ? -reservoirLossM3PerS / reservoirShape.areaM2(reservoirLevelM)
                        : 0;
        double span = spanS;
        first = -1;
        noteHeads();
        for (int i = 0; i < size; i++) {
            drift[i] = uncovered ? 0 : lines.byHead[i] * fallMPerS;
            rate[i] = lines.flowM3PerS[i];
            if (water[i] == Water.FREE) {
                endM3[i] = freeM3(i, span);
                double until = crossingS(i, span, endM3[i]);
                if (until < span) {
                    span = until;
                    first = i;
                }
            }
        }
        return span;
    }

    /** Where a tray already stands at its bound but for rounding. */
    private double crossAtOnce(double span) {
        if (first < 0 || span < 0) {
            reachS = 0;
            return 0;
        }
        clearAccounts();
        account(first, boundM3(first), 0);
        finishReservoir(0);
        known = false;
        return Double.MIN_NORMAL;
    }

    /** Volumes and inflows at the end of a span; returns what leaves the reservoir, m3. */
    private double projectEnds(double span) {
        double leaves = evaporationM3PerS * span;
        for (int i = 0; i < size; i++) {
            if (water[i] == Water.FREE) {
                if (i == first) {
                    endM3[i] = boundM3(i);
                } else {
                    if (first >= 0) {
                        endM3[i] = freeM3(i, span);
                    }
                    endM3[i] = Math.min(highM3(i), Math.max(lowM3(i), endM3[i]));
                }
                boolean shut = rate[i] == 0 && slope[i] == 0 && drift[i] == 0;
                x[i] = shut ? 0 : endM3[i] - volumeM3[i] + askedM3PerS[i] * span;
            } else {
                endM3[i] = volumeM3[i];
                x[i] = (rate[i] + 0.5 * drift[i] * span) * span;
            }
            leaves += x[i];
        }
        return leaves;
    }

    /**
     * Puts in the bend found at the end; leaves in {@link #known} whether the rates there are those
     * of the end, else {@link #bowedFlow} has them.
     *
     * @return false when it bends too much; {@link #reachS} tells how far a piece may reach
     */
    private boolean correctEnds(double span, double reservoirEnd) {
        System.arraycopy(slope, 0, stage, 0, size);
        evaluate(endM3, reservoirEnd, true);
        double worst = hasOnset() ? Double.POSITIVE_INFINITY : findBend(span);
        known = worst <= 1;
        if (known) {
            putInBend(span);
            reachS = Math.max(reachS, span * MOST_GROWTH);
            return true;
        }
        if (worst == Double.POSITIVE_INFINITY) {
            reachS = 0;
            return false;
        }
        if (first >= 0) {
            reachS = NEARER_FRAC * span;
            return false;
        }
        if (worst > BOWED_MOST) {
            reachS = span * Math.max(0.2, SAFE_FRAC * FastMath.cbrt(BOWED_MOST / worst));
            return false;
        }
        System.arraycopy(lines.flowM3PerS, 0, bowedFlow, 0, size);
        worst = bow(span);
        boolean good = worst <= 1;
        double shrunk = span * SAFE_FRAC / FastMath.cbrt(Math.max(worst, 1e-3));
        if (good) {
            reachS = Math.max(reachS, Math.min(shrunk, span * MOST_GROWTH));
        } else {
            reachS = worst < Double.POSITIVE_INFINITY ? Math.max(shrunk, 0.2 * span) : 0;
        }
        return good;
    }

    /**
     * How far the flows at the end are from straight.
     *
     * @return what that is worth in the volume over what may be put in as growing evenly; infinite
     *     when a tray has left its regime
     */
    private double findBend(double span) {
        double worst = 0;
        for (int i = 0; i < size; i++) {
            double net = lines.flowM3PerS[i] - askedM3PerS[i];
            double expected = rate[i] + drift[i] * span;
            if (water[i] == Water.FREE) {
                expected += stage[i] * (endM3[i] - volumeM3[i]);
            } else {
                phi2[i] = 0.5;
                if (water[i] == Water.DRY ? net > 0 : net < 0) {
                    return Double.POSITIVE_INFINITY;
                }
            }
            bend[i] = lines.flowM3PerS[i] - expected;
            worst = Math.max(worst, Math.abs(span * phi2[i] * bend[i]) / scaleM3[i]);
        }
        return worst / (bendMost * Math.min(1, span / BEND_SPAN_S));
    }

    private void putInBend(double span) {
        for (int i = 0; i < size; i++) {
            double change = span * phi2[i] * bend[i];
            if (water[i] == Water.FREE) {
                if (i != first) {
                    double end = endM3[i] + change;
                    if (end < lowM3(i) || end > highM3(i)) {
                        end = endM3[i];
                    }
                    lines.flowM3PerS[i] += slope[i] * (end - endM3[i]);
                    endM3[i] = end;
                }
                if (x[i] != 0 || change != 0) {
                    x[i] = endM3[i] - volumeM3[i] + askedM3PerS[i] * span;
                }
            } else {
                x[i] += change;
            }
        }
    }

    /**
     * Puts in a bend that grows as a parabola of time through its value at the middle of the span.
     *
     * @return how far that is from a bend that grows with the square of time, over what it may be;
     *     infinite when a tray would leave its regime. Only up to 1 are the ends changed.
     */
    private double bow(double span) {
        double half = 0.5 * span;
        double leaves = evaporationM3PerS * half;
        for (int i = 0; i < size; i++) {
            double come;
            if (water[i] == Water.FREE) {
                Phi p = phi.of(stage[i] * half);
                double net = rate[i] - askedM3PerS[i];
                double risen =
                        half * (net * p.one + half * drift[i] * p.two + 0.5 * p.three * bend[i]);
                middleM3[i] = volumeM3[i] + risen;
                come = risen + askedM3PerS[i] * half;
            } else {
                middleM3[i] = volumeM3[i];
                come = half * (rate[i] + 0.5 * half * drift[i] + bend[i] / 12);
            }
            leaves += come;
        }
        evaluate(middleM3, reservoirM3 - leaves, false);
        double worst = 0;
        for (int i = 0; i < size; i++) {
            boolean free = water[i] == Water.FREE;
            Phi p = phi.of(free ? stage[i] * span : 0);
            double straight = rate[i] + drift[i] * half;
            if (free) {
                straight += stage[i] * (middleM3[i] - volumeM3[i]);
            }
            double middle = lines.flowM3PerS[i] - straight;
            double change = span * p.parabola(middle, bend[i]);
            if (free) {
                // The end at which the bend was read lies off by as much.
                change = span * p.parabola(middle, bend[i] + (slope[i] - stage[i]) * change);
                double end = endM3[i] + change;
                if (end < lowM3(i) || end > highM3(i)) {
                    return Double.POSITIVE_INFINITY;
                }
            }
            bowM3[i] = change;
            double off = Math.abs(change - span * 2 * p.three * bend[i]);
            worst = Math.max(worst, off / scaleM3[i]);
        }
        worst /= BOW_TO_BEND * bendMost * Math.min(1, span / BEND_SPAN_S);
        if (worst <= 1) {
            for (int i = 0; i < size; i++) {
                if (water[i] == Water.FREE) {
                    endM3[i] += bowM3[i];
                    bowedFlow[i] += slope[i] * bowM3[i];
                }
                x[i] += bowM3[i];
            }
        }
        return worst;
    }

    /** Volume at the end of a span when the rates are straight and no regime ends before, m3. */
    private double freeM3(int i, double spanS) {
        Phi p = phi.of(slope[i] * spanS);
        phi2[i] = p.two;
        double net = rate[i] - askedM3PerS[i];
        return volumeM3[i] + spanS * (net * p.one + spanS * drift[i] * p.two);
    }

    private double boundM3(int i) {
        return rate[i] - askedM3PerS[i] < 0 ? lowM3(i) : highM3(i);
    }

    /** When a tray's closed form leaves its regime, s; the span itself when it does not. */
    private double crossingS(int i, double spanS, double end) {
        double net = rate[i] - askedM3PerS[i];
        double bound = boundM3(i);
        boolean falls = net < 0;
        if (falls ? end > bound : end < bound) {
            return spanS;
        }
        if (end == bound || net == 0) {
            return spanS;
        }
        // Illinois: the closed form runs one way between its start and the bound.
        double a = 0;
        double fa = volumeM3[i] - bound;
        double b = spanS;
        double fb = end - bound;
        if (falls ? fa <= 0 : fa >= 0) {
            return 0;
        }
        int side = 0;
        for (int round = 0; round < MAX_ROUNDS; round++) {
            double at = (a * fb - b * fa) / (fb - fa);
            double f = freeM3(i, at) - bound;
            if (f == 0 || b - a <= 1e-15 * b || Math.abs(f) <= 1e-16 * bound) {
                return at;
            }
            if ((f > 0) == (fa > 0)) {
                a = at;
                fa = f;
                if (side == 1) {
                    fb *= 0.5;
                }
                side = 1;
            } else {
                b = at;
                fb = f;
                if (side == -1) {
                    fa *= 0.5;
                }
                side = -1;
            }
        }
        return b;
    }

    /** Takes a piece to its end, so that what came in, went and stands adds up. */
    private void account(int i, double endVolumeM3, double spanS) {
        double start = volumeM3[i];
        inM3[i] = spanS > 0 ? Math.max(0, x[i]) : Math.max(0, endVolumeM3 - start);
        switch (water[i]) {
            case FREE -> {
                volumeM3[i] = endVolumeM3;
                lostM3[i] = start + inM3[i] - endVolumeM3;
                if (lostM3[i] < 0) { // by rounding
                    inM3[i] -= lostM3[i];
                    lostM3[i] = 0;
                }
                spiltM3[i] = 0;
            }
            case DRY -> {
                lostM3[i] = start + inM3[i];
                volumeM3[i] = 0;
                spiltM3[i] = 0;
            }
            case BRIM -> {
                lostM3[i] = Math.min(askedM3PerS[i] * spanS, inM3[i]);
                spiltM3[i] = inM3[i] - lostM3[i];
            }
            default -> throw new AssertionError("no account for " + water[i]);
        }
        outM3 += inM3[i];
    }

    private void noteSpillRise(double[] startFlow, double[] endFlow) {
        for (int i = 0; i < size; i++) {
            if (spiltM3[i] > 0) {
                double asked = askedM3PerS[i];
                double before = startFlow[i] * (endFlow[i] - asked);
                double after = endFlow[i] * (startFlow[i] - asked);
                // Where the spill comes to an end no straight line holds; little is spilt there.
                spillRiseFrac[i] = before > 0.3 * after ? after / before - 1 : 0;
            }
        }
    }

    private double outflowM3PerS(double[] flows) {
        double sum = 0;
        for (double flow : flows) {
            sum += flow;
        }
        return sum;
    }

    // Exact for a volume that changes evenly; what Hermite's cubic between the ends departs from
    // that, by Simpson's rule.
    private void thin(double startM3, double startRate, double endRate, double spanS) {
        if (evaporationM3PerS > 0 && reservoirM3 > 0) {
            double evenM3 = 0.5 * (startM3 + reservoirM3);
            double midM3 = evenM3 - 0.125 * spanS * (startRate - endRate);
            double d = 0.5 * (reservoirM3 - startM3) / evenM3;
            double even =
                    Math.abs(d) < 1e-3
                            ? (1 + d * d / 3 * (1 + 0.6 * d * d)) / evenM3
                            : FastMath.log(reservoirM3 / startM3) / (reservoirM3 - startM3);
            thinningSPerM3 = spanS * (even + 2.0 / 3 * (1 / midM3 - 1 / evenM3));
        }
    }

    private void finishReservoir(double spanS) {
        reservoirM3 -= outM3;
        evaporatedM3 = Math.min(Math.max(0, reservoirM3), evaporationM3PerS * spanS);
        reservoirM3 -= evaporatedM3;
    }

    // Runge and Kutta.

    private double rungeKutta(double spanS) {
        double h = Math.min(spanS, pieceS);
        double keptS = h < pieceS ? pieceS : SHORTEST_S; // the end of a step proves nothing
        boolean located = false;
        int leaver = -1;
        for (int round = 0; round < MAX_ROUNDS; round++) {
            double error = tryPiece(h);
            if (error > 1 && h > SHORTEST_S && !located) {
                h *= Math.max(0.2, SAFE_FRAC / FastMath.pow(error, 0.2));
                keptS = SHORTEST_S;
                continue;
            }
            if (!located && h > ONSET_S && hasOnset()) {
                h = Math.max(ONSET_S, 0.25 * h);
                keptS = SHORTEST_S;
                continue;
            }
            if (!located) {
                double grown =
                        h * Math.min(5, SAFE_FRAC / FastMath.pow(Math.max(error, 1e-5), 0.2));
                leaver = -1;
                double at = 1;
                for (int i = 0; i <= size; i++) {
                    double theta = i < size ? crossingOf(i, h) : emptyOf(h);
                    if (theta < at) {
                        at = theta;
                        leaver = i;
                        if (i < size) {
                            crossedM3 = endM3[i] < lowM3(i) ? lowM3(i) : highM3(i);
                        }
                    }
                }
                pieceS = Math.max(keptS, grown);
                if (leaver >= 0) {
                    located = true;
                    h = Math.max(at * h, Double.MIN_NORMAL);
                    continue;
                }
            }
            clearAccounts();
            for (int i = 0; i < size; i++) {
                double end = endM3[i];
                if (i == leaver && water[i] == Water.FREE) {
                    end = crossedM3;
                    x[i] = end - volumeM3[i] + askedM3PerS[i] * h;
                }
                account(i, end, h);
            }
            double startM3 = reservoirM3;
            finishReservoir(h);
            thin(startM3, outflowM3PerS(pair.first()), outflowM3PerS(pair.last()), h);
            noteSpillRise(pair.first(), pair.last());
            known = false;
            if (leaver == size) {
                uncovered = true;
            }
            return h;
        }
        throw new ArithmeticException("no piece found from a span of " + spanS + " s");
    }

    private void noteHeads() {
        for (int i = 0; i < size; i++) {
            hadHead[i] = lines.byOpening[i] > 0;
        }
    }

    /**
     * Whether an open line has got or lost its head since {@link #noteHeads}: its flow then starts
     * with the root of the head, which no polynomial follows and an error estimate may miss.
     */
    private boolean hasOnset() {
        for (int i = 0; i < size; i++) {
            if (opening[i] > 0 && hadHead[i] != lines.byOpening[i] > 0) {
                return true;
            }
        }
        return false;
    }

    // Inflow of a piece is what is integrated: x, with the volume following from it.
    private double tryPiece(double h) {
        if (!known) {
            evaluate(volumeM3, reservoirM3, false);
        }
        known = false;
        noteHeads();
        pair.put(0, lines.flowM3PerS);
        for (int s = 1; s < DormandPrince.STAGES; s++) {
            double atS = DormandPrince.timeFrac(s) * h;
            double leaves = evaporationM3PerS * atS;
            for (int i = 0; i < size; i++) {
                x[i] = h * pair.mean(s, i);
                endM3[i] =
                        water[i] == Water.FREE
                                ? volumeM3[i] + x[i] - askedM3PerS[i] * atS
                                : volumeM3[i];
                leaves += x[i];
            }
            evaluate(endM3, reservoirM3 - leaves, false);
            pair.put(s, lines.flowM3PerS);
        }
        double worst = 0;
        for (int i = 0; i < size; i++) {
            worst = Math.max(worst, Math.abs(h * pair.error(i)) / (PIECE_ERROR_FRAC * scaleM3[i]));
        }
        return worst;
    }

    /** Inflow up to a share of the piece just tried, m3. */
    private double denseX(int i, double theta, double h) {
        return h * pair.until(theta, i);
    }

    private double crossingOf(int i, double h) {
        if (water[i] != Water.FREE) {
            double from = pair.first()[i] - askedM3PerS[i];
            double to = pair.last()[i] - askedM3PerS[i];
            boolean leaves = water[i] == Water.DRY ? to > 0 : to < 0;
            return leaves && from != to ? Math.min(1, Math.max(1e-3, from / (from - to))) : 1;
        }
        double low = lowM3(i);
        double high = highM3(i);
        double end = endM3[i];
        if (end >= low && end <= high) {
            return 1;
        }
        double bound = end < low ? low : high;
        double start = volumeM3[i] - bound;
        if (start == 0 || start > 0 == end - bound > 0) {
            return Math.abs(end - bound) <= 1e-15 * shutM3[i] ? 1 : 1e-6;
        }
        double a = 0;
        double b = 1;
        for (int round = 0; round < 60; round++) {
            double mid = 0.5 * (a + b);
            double v = volumeM3[i] + denseX(i, mid, h) - askedM3PerS[i] * mid * h - bound;
            if (v > 0 == start > 0) {
                a = mid;
            } else {
                b = mid;
            }
        }
        return b;
    }

    private double emptyOf(double h) {
        if (uncovered || usableAfter(1, h) >= NOTHING_M3) {
            return 1;
        }
        double a = 0;
        double b = 1;
        for (int round = 0; round < 60; round++) {
            double mid = 0.5 * (a + b);
            if (usableAfter(mid, h) > 0) {
                a = mid;
            } else {
                b = mid;
            }
        }
        return Math.min(b, 1 - 1e-16);
    }

    private double usableAfter(double theta, double h) {
        double left = reservoirM3 - deadM3 - evaporationM3PerS * theta * h;
        for (int i = 0; i < size; i++) {
            left -= theta == 1 ? x[i] : denseX(i, theta, h);
        }
        return left;
    }
}
