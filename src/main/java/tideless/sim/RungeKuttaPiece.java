package tideless.sim;

import java.util.function.DoubleUnaryOperator;
import tideless.physics.Elementary;

/**
 * A piece of {@link FeedWater}'s way by the pair of Dormand and Prince (1980; J. Comp. Appl. Math.
 * 6, 19-26), order 5 with error control; its crossings are found on its dense form (Hairer, Norsett
 * and Wanner 1993, II.6) and stepped to.
 */
final class RungeKuttaPiece implements DoubleUnaryOperator {
    /**
     * Error of a piece of Runge and Kutta, share of the tray's volume; two hundred pieces of a
     * filling then stay below 1e-7.
     */
    private static final double PIECE_ERROR_FRAC = 5e-10;

    /** Length of the piece in which an open line begins to run, s; by trial on the rigs. */
    private static final double ONSET_S = 0.1;

    private static final int MAX_ROUNDS = 200;

    private final FeedWater feed;
    private final FeedRegime regime;
    private final FeedLines lines;
    private final VesselWater[] trays;
    private final int size;
    private final double[] scaleM3;
    private final double[] evapotranspirationM3PerS;
    private final double[] endM3;
    private final double[] x;
    private final DormandPrince pair;

    /** How long the next one may be, s. */
    double pieceS = 60;

    private double triedS;
    private double crossedM3;
    private int searched; // tray, or size for the reservoir
    private double searchedM3;

    RungeKuttaPiece(FeedWater feed) {
        this.feed = feed;
        regime = feed.regime;
        lines = feed.lines;
        trays = feed.trays;
        size = feed.size;
        scaleM3 = feed.scaleM3;
        evapotranspirationM3PerS = feed.evapotranspirationM3PerS;
        endM3 = feed.endM3;
        x = feed.x;
        pair = new DormandPrince(size);
    }

    double advance(double spanS) {
        double h = Math.min(spanS, pieceS);
        double keptS =
                h < pieceS ? pieceS : FeedWater.SHORTEST_S; // the end of a step proves nothing
        boolean located = false;
        int leaver = -1;
        for (int round = 0; round < MAX_ROUNDS; round++) {
            double error = tryPiece(h);
            if (error > 1 && h > FeedWater.SHORTEST_S && !located) {
                h *= Math.max(0.2, FeedWater.SAFE_FRAC / fifthRoot(error));
                keptS = FeedWater.SHORTEST_S;
                continue;
            }
            if (!located && h > ONSET_S && feed.hasOnset()) {
                h = Math.max(ONSET_S, 0.25 * h);
                keptS = FeedWater.SHORTEST_S;
                continue;
            }
            if (!located) {
                double grown =
                        h * Math.min(5, FeedWater.SAFE_FRAC / fifthRoot(Math.max(error, 1e-5)));
                leaver = -1;
                double at = 1;
                for (int i = 0; i <= size; i++) {
                    double theta = i < size ? crossingOf(i) : emptyOf(h);
                    if (theta < at) {
                        at = theta;
                        leaver = i;
                        if (i < size) {
                            crossedM3 =
                                    endM3[i] < regime.lowM3(i) ? regime.lowM3(i) : regime.highM3(i);
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
            feed.clearAccounts();
            for (int i = 0; i < size; i++) {
                double end = endM3[i];
                if (i == leaver && regime.water[i] == FeedRegime.Water.FREE) {
                    end = crossedM3;
                    x[i] = end - trays[i].m3 + evapotranspirationM3PerS[i] * h;
                }
                feed.account(i, end, h);
            }
            double startM3 = feed.reservoir.m3;
            feed.finishReservoir(h);
            feed.thin(
                    startM3,
                    FeedWater.outflowM3PerS(pair.first()),
                    FeedWater.outflowM3PerS(pair.last()),
                    h);
            feed.noteSpillRise(pair.first(), pair.last());
            feed.known = false;
            if (leaver == size) {
                feed.reservoir.uncovered = true;
            }
            return h;
        }
        throw new ArithmeticException("no piece found from a span of " + spanS + " s");
    }

    private static double fifthRoot(double x) {
        return Elementary.exp(0.2 * Elementary.log(x));
    }

    // Inflow of a piece is what is integrated: x, with the volume following from it.
    private double tryPiece(double h) {
        triedS = h;
        if (!feed.known) {
            feed.evaluateNow(false);
        }
        feed.known = false;
        feed.noteHeads();
        pair.put(0, lines.flowM3PerS);
        for (int s = 1; s < DormandPrince.STAGES; s++) {
            double atS = DormandPrince.timeFrac(s) * h;
            double leaves = feed.evaporationM3PerS * atS;
            for (int i = 0; i < size; i++) {
                x[i] = h * pair.mean(s, i);
                endM3[i] =
                        regime.water[i] == FeedRegime.Water.FREE
                                ? trays[i].m3 + x[i] - evapotranspirationM3PerS[i] * atS
                                : trays[i].m3;
                leaves += x[i];
            }
            feed.evaluate(endM3, feed.reservoir.m3 - leaves, false);
            pair.put(s, lines.flowM3PerS);
        }
        double worst = 0;
        for (int i = 0; i < size; i++) {
            worst =
                    Math.max(
                            worst,
                            Math.abs(h * pair.error(i))
                                    / (feed.looseFactor * PIECE_ERROR_FRAC * scaleM3[i]));
        }
        return worst;
    }

    /** Inflow up to a share of the piece just tried, m3. */
    private double denseX(int i, double theta, double h) {
        return h * pair.until(theta, i);
    }

    private double crossingOf(int i) {
        if (regime.water[i] != FeedRegime.Water.FREE) {
            double from = pair.first()[i] - evapotranspirationM3PerS[i];
            double to = pair.last()[i] - evapotranspirationM3PerS[i];
            boolean leaves = regime.water[i] == FeedRegime.Water.DRY ? to > 0 : to < 0;
            return leaves && from != to ? Math.min(1, Math.max(1e-3, from / (from - to))) : 1;
        }
        double low = regime.lowM3(i);
        double high = regime.highM3(i);
        double end = endM3[i];
        if (end >= low && end <= high) {
            return 1;
        }
        double bound = end < low ? low : high;
        double start = trays[i].m3 - bound;
        if (start == 0 || start > 0 == end - bound > 0) {
            return Math.abs(end - bound) <= 1e-15 * regime.shutM3[i] ? 1 : 1e-6;
        }
        searched = i;
        searchedM3 = bound;
        return RootSearch.passed(this, 0, start, 1, end - bound, 0);
    }

    private double emptyOf(double h) {
        double end = usableAfter(1, h);
        if (feed.reservoir.uncovered || end >= FeedWater.NOTHING_M3) {
            return 1;
        }
        searched = size;
        return Math.min(RootSearch.passed(this, 0, usableAfter(0, h), 1, end, 0), 1 - 1e-16);
    }

    /** How far a tray stands from the bound that is sought, or a reservoir from empty, m3. */
    @Override
    public double applyAsDouble(double theta) {
        if (searched == size) {
            return usableAfter(theta, triedS);
        }
        return trays[searched].m3
                + denseX(searched, theta, triedS)
                - evapotranspirationM3PerS[searched] * theta * triedS
                - searchedM3;
    }

    private double usableAfter(double theta, double h) {
        double left = feed.reservoir.m3 - feed.deadM3 - feed.evaporationM3PerS * theta * h;
        for (int i = 0; i < size; i++) {
            left -= theta == 1 ? x[i] : denseX(i, theta, h);
        }
        return left;
    }
}
