package tideless.sim;

import java.util.function.DoubleUnaryOperator;
import tideless.physics.Elementary;

/**
 * A piece of {@link FeedWater}'s way in closed form: in every regime the rates are taken as
 * straight in the tray's volume and in time, which gives a line, a parabola or an exponential
 * approach, and from it the instant at which one regime turns into the next.
 *
 * <p>The rates at its end tell how far they were from straight. Up to {@code bendMost} of the
 * tray's volume that bend is put in as growing evenly (exponential Runge and Kutta of second order:
 * Cox and Matthews 2002, J. Comp. Phys. 176, 430-455, ETD2RK; from memory); beyond it the rates at
 * the middle are asked as well and it is put in as a parabola (an exponential Rosenbrock method of
 * third order: Hochbruck and Ostermann 2010, Acta Numerica 19, 209-286; from memory), over as long
 * a span as the parabola holds.
 */
final class ExponentialPiece implements DoubleUnaryOperator {
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

    private static final double MOST_GROWTH = 4;

    /**
     * How far on towards a crossing that bends too much; the rest then bends a thousandth of it.
     */
    private static final double NEARER_FRAC = 0.9;

    /** Largest bend of the rates that may be put in, share of the tray's volume. */
    private final double bendMost;

    private final FeedWater feed;
    private final FeedRegime regime;
    private final FeedLines lines;
    private final VesselWater[] trays;
    private final int size;
    private final double[] scaleM3;
    private final double[] evapotranspirationM3PerS;
    private final double[] slope;
    private final double[] endM3;
    private final double[] x;

    /** How far the next one may reach, s. */
    double reachS = Double.POSITIVE_INFINITY;

    // Scratch.
    private final Phi phi = new Phi();
    private final double[] phi2;
    private final double[] rate;
    private final double[] drift;
    private final double[] bend;
    private final double[] stage;
    private final double[] middleM3;
    private final double[] bowM3;
    private final double[] bowedFlow;
    private int first; // tray that crosses into another regime at the end of the piece, or -1
    private int searched;
    private double searchedM3;

    ExponentialPiece(FeedWater feed, double bendMost) {
        this.bendMost = bendMost;
        this.feed = feed;
        regime = feed.regime;
        lines = feed.lines;
        trays = feed.trays;
        size = feed.size;
        scaleM3 = feed.scaleM3;
        evapotranspirationM3PerS = feed.evapotranspirationM3PerS;
        slope = feed.slope;
        endM3 = feed.endM3;
        x = feed.x;
        phi2 = new double[size];
        rate = new double[size];
        drift = new double[size];
        bend = new double[size];
        stage = new double[size];
        middleM3 = new double[size];
        bowM3 = new double[size];
        bowedFlow = new double[size];
    }

    /**
     * 0 when the rates bend too much, or the outlet comes out; then {@link #reachS} says how far.
     */
    double advance(double spanS) {
        double startRate = FeedWater.outflowM3PerS(lines.flowM3PerS);
        double span = untilFirstCrossing(spanS, startRate + feed.evaporationM3PerS);
        if (!(span > FeedWater.SHORTEST_S)) {
            return crossAtOnce(span);
        }
        double reservoirEnd = feed.reservoir.m3 - projectEnds(span);
        if (!feed.reservoir.uncovered && reservoirEnd - feed.deadM3 < FeedWater.NOTHING_M3) {
            reachS = 0;
            return 0;
        }
        if (feed.reservoir.uncovered) {
            feed.known = true;
        } else if (!correctEnds(span, reservoirEnd)) {
            feed.evaluateNow(true);
            return 0;
        }
        double[] endFlow = feed.known ? lines.flowM3PerS : bowedFlow;
        feed.clearAccounts();
        for (int i = 0; i < size; i++) {
            feed.account(i, endM3[i], span);
        }
        double startM3 = feed.reservoir.m3;
        feed.finishReservoir(span);
        feed.thin(startM3, startRate, FeedWater.outflowM3PerS(endFlow), span);
        feed.noteSpillRise(rate, endFlow);
        feed.known &= first < 0;
        return span;
    }

    /** The rates as straight lines, and when the first of them leads out of its regime, s. */
    private double untilFirstCrossing(double spanS, double reservoirLossM3PerS) {
        double fallMPerS =
                !feed.reservoir.uncovered && feed.reservoir.m3 > 0
                        ? -reservoirLossM3PerS / feed.reservoirShape.areaM2(feed.reservoirLevelM)
                        : 0;
        double span = spanS;
        first = -1;
        feed.noteHeads();
        for (int i = 0; i < size; i++) {
            drift[i] = feed.reservoir.uncovered ? 0 : lines.byHead[i] * fallMPerS;
            rate[i] = lines.flowM3PerS[i];
            if (regime.water[i] == FeedRegime.Water.FREE) {
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
        feed.clearAccounts();
        feed.account(first, boundM3(first), 0);
        feed.finishReservoir(0);
        feed.known = false;
        return Double.MIN_NORMAL;
    }

    /** Volumes and inflows at the end of a span; returns what leaves the reservoir, m3. */
    private double projectEnds(double span) {
        double leaves = feed.evaporationM3PerS * span;
        for (int i = 0; i < size; i++) {
            if (regime.water[i] == FeedRegime.Water.FREE) {
                if (i == first) {
                    endM3[i] = boundM3(i);
                } else {
                    if (first >= 0) {
                        endM3[i] = freeM3(i, span);
                    }
                    endM3[i] = Math.min(regime.highM3(i), Math.max(regime.lowM3(i), endM3[i]));
                }
                boolean shut = rate[i] == 0 && slope[i] == 0 && drift[i] == 0;
                x[i] = shut ? 0 : endM3[i] - trays[i].m3 + evapotranspirationM3PerS[i] * span;
            } else {
                endM3[i] = trays[i].m3;
                x[i] = (rate[i] + 0.5 * drift[i] * span) * span;
            }
            leaves += x[i];
        }
        return leaves;
    }

    /**
     * Puts in the bend found at the end; leaves in {@code feed.known} whether the rates there are
     * those of the end, else {@link #bowedFlow} has them.
     *
     * @return false when it bends too much; {@link #reachS} tells how far a piece may reach
     */
    private boolean correctEnds(double span, double reservoirEnd) {
        System.arraycopy(slope, 0, stage, 0, size);
        feed.evaluate(endM3, reservoirEnd, true);
        double worst = feed.hasOnset() ? Double.POSITIVE_INFINITY : findBend(span);
        feed.known = worst <= 1;
        if (feed.known) {
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
            reachS =
                    span * Math.max(0.2, FeedWater.SAFE_FRAC * Elementary.cbrt(BOWED_MOST / worst));
            return false;
        }
        System.arraycopy(lines.flowM3PerS, 0, bowedFlow, 0, size);
        worst = bow(span);
        boolean good = worst <= 1;
        double shrunk = span * FeedWater.SAFE_FRAC / Elementary.cbrt(Math.max(worst, 1e-3));
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
            double net = lines.flowM3PerS[i] - evapotranspirationM3PerS[i];
            double expected = rate[i] + drift[i] * span;
            if (regime.water[i] == FeedRegime.Water.FREE) {
                expected += stage[i] * (endM3[i] - trays[i].m3);
            } else {
                phi2[i] = 0.5;
                if (regime.water[i] == FeedRegime.Water.DRY ? net > 0 : net < 0) {
                    return Double.POSITIVE_INFINITY;
                }
            }
            bend[i] = lines.flowM3PerS[i] - expected;
            worst = Math.max(worst, Math.abs(span * phi2[i] * bend[i]) / scaleM3[i]);
        }
        return worst / (feed.looseFactor * bendMost * Math.min(1, span / BEND_SPAN_S));
    }

    private void putInBend(double span) {
        for (int i = 0; i < size; i++) {
            double change = span * phi2[i] * bend[i];
            if (regime.water[i] == FeedRegime.Water.FREE) {
                if (i != first) {
                    double end = endM3[i] + change;
                    if (end < regime.lowM3(i) || end > regime.highM3(i)) {
                        end = endM3[i];
                    }
                    lines.flowM3PerS[i] += slope[i] * (end - endM3[i]);
                    endM3[i] = end;
                }
                if (x[i] != 0 || change != 0) {
                    x[i] = endM3[i] - trays[i].m3 + evapotranspirationM3PerS[i] * span;
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
        double leaves = feed.evaporationM3PerS * half;
        for (int i = 0; i < size; i++) {
            double come;
            if (regime.water[i] == FeedRegime.Water.FREE) {
                Phi p = phi.of(stage[i] * half);
                double net = rate[i] - evapotranspirationM3PerS[i];
                double risen =
                        half * (net * p.one + half * drift[i] * p.two + 0.5 * p.three * bend[i]);
                middleM3[i] = trays[i].m3 + risen;
                come = risen + evapotranspirationM3PerS[i] * half;
            } else {
                middleM3[i] = trays[i].m3;
                come = half * (rate[i] + 0.5 * half * drift[i] + bend[i] / 12);
            }
            leaves += come;
        }
        feed.evaluate(middleM3, feed.reservoir.m3 - leaves, false);
        double worst = 0;
        for (int i = 0; i < size; i++) {
            boolean free = regime.water[i] == FeedRegime.Water.FREE;
            Phi p = phi.of(free ? stage[i] * span : 0);
            double straight = rate[i] + drift[i] * half;
            if (free) {
                straight += stage[i] * (middleM3[i] - trays[i].m3);
            }
            double middle = lines.flowM3PerS[i] - straight;
            double change = span * p.parabola(middle, bend[i]);
            if (free) {
                // The end at which the bend was read lies off by as much.
                change = span * p.parabola(middle, bend[i] + (slope[i] - stage[i]) * change);
                double end = endM3[i] + change;
                if (end < regime.lowM3(i) || end > regime.highM3(i)) {
                    return Double.POSITIVE_INFINITY;
                }
            }
            bowM3[i] = change;
            double off = Math.abs(change - span * 2 * p.three * bend[i]);
            worst = Math.max(worst, off / scaleM3[i]);
        }
        worst /= feed.looseFactor * BOW_TO_BEND * bendMost * Math.min(1, span / BEND_SPAN_S);
        if (worst <= 1) {
            for (int i = 0; i < size; i++) {
                if (regime.water[i] == FeedRegime.Water.FREE) {
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
        double net = rate[i] - evapotranspirationM3PerS[i];
        return trays[i].m3 + spanS * (net * p.one + spanS * drift[i] * p.two);
    }

    private double boundM3(int i) {
        return rate[i] - evapotranspirationM3PerS[i] < 0 ? regime.lowM3(i) : regime.highM3(i);
    }

    /** When a tray's closed form leaves its regime, s; the span itself when it does not. */
    private double crossingS(int i, double spanS, double end) {
        double net = rate[i] - evapotranspirationM3PerS[i];
        double bound = boundM3(i);
        boolean falls = net < 0;
        if (falls ? end > bound : end < bound) {
            return spanS;
        }
        if (end == bound || net == 0) {
            return spanS;
        }
        double before = trays[i].m3 - bound;
        if (falls ? before <= 0 : before >= 0) {
            return 0;
        }
        searched = i;
        searchedM3 = bound;
        // The closed form runs one way between its start and the bound.
        return RootSearch.passed(this, 0, before, spanS, end - bound, 1e-16 * bound);
    }

    /** How far the closed form stands from the bound that is sought, m3. */
    @Override
    public double applyAsDouble(double atS) {
        return freeM3(searched, atS) - searchedM3;
    }
}
