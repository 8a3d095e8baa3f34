package tideless.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.FastMath;
import org.apache.commons.math3.util.Pair;

/**
 * What readings say of unknowns whose doubt was known before: the most probable values and, by
 * Laplace's approximation, what doubt is left (MacKay 2003, chapter 27).
 *
 * <p>Every unknown is counted in standard deviations of its own prior: 0 is what was believed
 * before, 1 is one standard deviation more. Errors of readings are Student's t with four degrees of
 * freedom about their stated standard deviation (Lange, Little and Taylor 1989), so that one wild
 * reading does not carry the rest along. The most probable values are found from several starts by
 * Gauss and Newton's steps: the forecast is taken as straight about the point reached, least
 * squares with weights renewed until they stay (iteratively reweighted; ibid., section 3) say where
 * to go, and the way there is halved while the density falls on it.
 *
 * @param mode most probable values, in standard deviations of the prior
 * @param covariance of the unknowns about the mode, same unit
 * @param jacobian {@code [reading][unknown]}: how the reading forecast moves with the unknown, in
 *     the reading's own standard deviations
 * @param residual {@code [reading]}: reading less forecast at the mode, in the reading's own
 *     standard deviations
 * @param weight {@code [reading]}: 1.25 for one that fits, near 0 for a wild one
 * @param minusLogDensity of the mode, up to a constant: smaller is more probable
 */
record Posterior(
        double[] mode,
        double[][] covariance,
        double[][] jacobian,
        double[] residual,
        double[] weight,
        double minusLogDensity) {

    /** Degrees of freedom of Student's t for a reading's error; Lange et al. (1989) use 4. */
    static final double DEGREES = 4;

    /** Steps of Gauss and Newton; three or four serve a forecast that is gently bent. */
    private static final int STEPS = 25;

    /** Weighted passes on the straight forecast, which cost nothing. */
    private static final int PASSES = 60;

    /** Times a step is halved before it is given up. */
    private static final int HALVINGS = 6;

    /** Passes on the straight forecast end where they move less. */
    private static final double PASS_STAYS = 1e-6;

    /** Slopes at the top are of a place no farther away, in standard deviations of the prior. */
    private static final double STRAIGHT = 0.2;

    /** On the way they are taken anew after so much of it. */
    private static final double FAR = 2;

    /** Half step of central differences, in standard deviations of the prior. */
    private static final double HALF_STEP = 0.05;

    /** Forecasts for several points at once, in their order. */
    interface Forecasts {
        /**
         * Reckons them.
         *
         * @param points {@code [point][unknown]}
         * @return {@code [point][reading]}
         * @throws InterruptedException when whoever reckons them is interrupted
         */
        double[][] of(double[][] points) throws InterruptedException;
    }

    /**
     * Where a search begins.
     *
     * @param at in standard deviations of the prior
     * @param slope {@code [reading][unknown]} about how readings move there with the unknowns, in
     *     the readings' own unit; nothing where nobody knows
     */
    record Start(double[] at, Optional<double[][]> slope) {
        static Start at(double[] at) {
            return new Start(at, Optional.empty());
        }
    }

    /**
     * Finds it.
     *
     * @param forecasts readings expected for given unknowns; called again and again
     * @param readings as taken
     * @param deviations standard deviation of each reading's error, same unit as the reading
     * @param starts where to begin, at least one; slopes that nobody knows are at first those that
     *     the start before it ended with
     * @param stays the search ends where it moves less, in standard deviations of the prior
     * @throws IllegalArgumentException for lengths that differ or a deviation not above 0
     * @throws InterruptedException when whoever forecasts is interrupted
     */
    static Posterior of(
            Forecasts forecasts,
            double[] readings,
            double[] deviations,
            List<Start> starts,
            double stays)
            throws InterruptedException {
        return best(forecasts, readings, deviations, starts, stays, false);
    }

    /**
     * Finds about where it lies: as {@link #of}, but slopes are only led along with what each step
     * shows of them, so that the doubt that is left is not to be read from them.
     */
    static Posterior roughly(
            Forecasts forecasts,
            double[] readings,
            double[] deviations,
            List<Start> starts,
            double stays)
            throws InterruptedException {
        return best(forecasts, readings, deviations, starts, stays, true);
    }

    private static Posterior best(
            Forecasts forecasts,
            double[] readings,
            double[] deviations,
            List<Start> starts,
            double stays,
            boolean isRough)
            throws InterruptedException {
        if (readings.length != deviations.length) {
            throw new IllegalArgumentException(
                    "%s readings, %s deviations".formatted(readings.length, deviations.length));
        }
        for (double deviation : deviations) {
            if (!(deviation > 0)) {
                throw new IllegalArgumentException(
                        "a reading's deviation must be above 0, was " + deviation);
            }
        }
        Forecasts misfits =
                points -> {
                    double[][] expected = forecasts.of(points);
                    double[][] off = new double[points.length][readings.length];
                    for (int p = 0; p < points.length; p++) {
                        for (int i = 0; i < readings.length; i++) {
                            off[p][i] = (readings[i] - expected[p][i]) / deviations[i];
                        }
                    }
                    return off;
                };
        Posterior best = null;
        for (Start start : starts) {
            Start known =
                    best == null || start.slope().isPresent()
                            ? start
                            : new Start(start.at(), Optional.of(best.slope(deviations)));
            Posterior found = new Climb(misfits, known, deviations).top(stays, isRough);
            if (best == null || found.minusLogDensity < best.minusLogDensity - 1e-9) {
                best = found;
            }
        }
        return best;
    }

    /** Starts for so many unknowns: the prior's middle first, then others evenly about it. */
    static List<Start> starts(int unknowns, int starts) {
        List<Start> all = new ArrayList<>();
        all.add(Start.at(new double[unknowns]));
        if (starts > 1 && unknowns > 0) {
            for (double[] point : UnitSample.of(starts - 1, unknowns, 1)) {
                // Evenly over two standard deviations to either side.
                all.add(Start.at(Arrays.stream(point).map(u -> 4 * u - 2).toArray()));
            }
        }
        return all;
    }

    /** From one start to a top of the density. */
    private static final class Climb {
        private final Forecasts misfits;
        private double[] theta;
        private double[] off;
        private double[][] slope;
        private boolean areTaken; // slopes, by this search
        private double wentSinceSlope;

        Climb(Forecasts misfits, Start start, double[] deviations) throws InterruptedException {
            this.misfits = misfits;
            theta = start.at().clone();
            off = misfit(theta);
            if (start.slope().isPresent()) {
                slope = perDeviation(start.slope().get(), deviations);
            } else {
                slope = jacobian();
                areTaken = true;
            }
        }

        private static double[][] perDeviation(double[][] slope, double[] deviations) {
            double[][] per = new double[slope.length][];
            for (int i = 0; i < per.length; i++) {
                double deviation = deviations[i];
                per[i] = Arrays.stream(slope[i]).map(s -> s / deviation).toArray();
            }
            return per;
        }

        private double[] misfit(double[] at) throws InterruptedException {
            return misfits.of(new double[][] {at})[0];
        }

        /**
         * Climbs.
         *
         * @param isRough whether slopes that were led along will do at the top
         */
        Posterior top(double stays, boolean isRough) throws InterruptedException {
            for (int step = 0; step < STEPS; step++) {
                double moved = go(step(theta, off, slope));
                wentSinceSlope += moved;
                boolean stayed = moved < stays;
                if (stayed && (isRough || areTaken && wentSinceSlope <= STRAIGHT)) {
                    break;
                }
                if (stayed || wentSinceSlope > FAR) {
                    slope = jacobian();
                    areTaken = true;
                    wentSinceSlope = 0;
                }
            }
            return new Posterior(
                    theta,
                    inverse(precision(slope, curvatures(off), theta.length)),
                    slope,
                    off,
                    weights(off),
                    Posterior.minusLogDensity(off, theta));
        }

        /**
         * Leads the slopes along with what a step has shown of them: the least change by which they
         * foretell it (Broyden 1965, from memory).
         */
        private void learn(double[] step, double[] before, double[] after) {
            double square = 0;
            for (double s : step) {
                square += s * s;
            }
            if (!(square > 0)) {
                return;
            }
            for (int i = 0; i < slope.length; i++) {
                double more = before[i] - after[i];
                for (int k = 0; k < step.length; k++) {
                    more -= slope[i][k] * step[k];
                }
                for (int k = 0; k < step.length; k++) {
                    slope[i][k] += more * step[k] / square;
                }
            }
        }

        /** Goes as much of a step as leads up; how far that was, at the most of all unknowns. */
        private double go(double[] step) throws InterruptedException {
            double before = Posterior.minusLogDensity(off, theta);
            double share = 1;
            for (int halving = 0; halving < HALVINGS; halving++, share /= 2) {
                double[] there = theta.clone();
                double[] part = new double[there.length];
                double moved = 0;
                for (int k = 0; k < there.length; k++) {
                    part[k] = share * step[k];
                    there[k] += part[k];
                    moved = Math.max(moved, Math.abs(part[k]));
                }
                double[] offThere = misfit(there);
                learn(part, off, offThere);
                if (Posterior.minusLogDensity(offThere, there) <= before) {
                    theta = there;
                    off = offThere;
                    return moved;
                }
            }
            return 0;
        }

        /** How the forecast moves, in the reading's deviations for one of the prior's. */
        private double[][] jacobian() throws InterruptedException {
            double[][] points = new double[2 * theta.length][];
            for (int k = 0; k < theta.length; k++) {
                points[2 * k] = theta.clone();
                points[2 * k + 1] = theta.clone();
                points[2 * k][k] += HALF_STEP;
                points[2 * k + 1][k] -= HALF_STEP;
            }
            double[][] offs = misfits.of(points);
            double[][] moves = new double[off.length][theta.length];
            for (int i = 0; i < off.length; i++) {
                for (int k = 0; k < theta.length; k++) {
                    moves[i][k] = (offs[2 * k + 1][i] - offs[2 * k][i]) / (2 * HALF_STEP);
                }
            }
            return moves;
        }
    }

    private static double[] weights(double[] residual) {
        return Arrays.stream(residual).map(r -> (DEGREES + 1) / (DEGREES + r * r)).toArray();
    }

    /**
     * Second derivative of a reading's minus log density with its residual; a reading so wild that
     * it is negative tells nothing.
     */
    private static double[] curvatures(double[] residual) {
        return Arrays.stream(residual)
                .map(
                        r ->
                                (DEGREES + 1)
                                        * (DEGREES - r * r)
                                        / ((DEGREES + r * r) * (DEGREES + r * r)))
                .map(curvature -> Math.max(0, curvature))
                .toArray();
    }

    private static double minusLogDensity(double[] residual, double[] theta) {
        double sum = 0;
        for (double r : residual) {
            sum += 0.5 * (DEGREES + 1) * FastMath.log1p(r * r / DEGREES);
        }
        for (double t : theta) {
            sum += 0.5 * t * t;
        }
        return sum;
    }

    /** Where the density is greatest if the forecast is straight, from here. */
    private static double[] step(double[] theta, double[] off, double[][] slope) {
        double[] step = new double[theta.length];
        if (off.length == 0) {
            return Arrays.stream(theta).map(t -> -t).toArray();
        }
        for (int pass = 0; pass < PASSES; pass++) {
            double[] there = off.clone();
            for (int i = 0; i < there.length; i++) {
                for (int k = 0; k < step.length; k++) {
                    there[i] -= slope[i][k] * step[k];
                }
            }
            double[] next = leastSquares(theta, off, slope, weights(there), step);
            double moved = 0;
            for (int k = 0; k < step.length; k++) {
                moved = Math.max(moved, Math.abs(next[k] - step[k]));
            }
            step = next;
            if (moved < PASS_STAYS) {
                break;
            }
        }
        return step;
    }

    /** Readings and, below them, the prior as a reading of 0 with deviation 1 of every unknown. */
    private static double[] leastSquares(
            double[] theta, double[] off, double[][] slope, double[] weight, double[] start) {
        int readings = off.length;
        int unknowns = theta.length;
        RealMatrix rows = new Array2DRowRealMatrix(readings + unknowns, unknowns);
        double[] target = new double[readings + unknowns];
        for (int i = 0; i < readings; i++) {
            double root = Math.sqrt(weight[i]);
            target[i] = root * off[i];
            for (int k = 0; k < unknowns; k++) {
                rows.setEntry(i, k, root * slope[i][k]);
            }
        }
        for (int k = 0; k < unknowns; k++) {
            target[readings + k] = -theta[k];
            rows.setEntry(readings + k, k, 1);
        }
        MultivariateJacobianFunction model =
                point -> new Pair<RealVector, RealMatrix>(rows.operate(point), rows);
        return new LevenbergMarquardtOptimizer()
                .optimize(
                        new LeastSquaresBuilder()
                                .start(new ArrayRealVector(start))
                                .model(model)
                                .target(target)
                                .maxEvaluations(100)
                                .maxIterations(100)
                                .checker(
                                        (iteration, before, after) ->
                                                before.getPoint().getDistance(after.getPoint())
                                                        < 0.1 * PASS_STAYS)
                                .build())
                .getPoint()
                .toArray();
    }

    private static RealMatrix precision(double[][] jacobian, double[] curvature, int unknowns) {
        RealMatrix sum = new Array2DRowRealMatrix(unknowns, unknowns);
        for (int k = 0; k < unknowns; k++) {
            for (int l = 0; l < unknowns; l++) {
                double entry = k == l ? 1 : 0;
                for (int i = 0; i < curvature.length; i++) {
                    entry += curvature[i] * jacobian[i][k] * jacobian[i][l];
                }
                sum.setEntry(k, l, entry);
            }
        }
        return sum;
    }

    private static double[][] inverse(RealMatrix precision) {
        return new CholeskyDecomposition(precision, 1e-9, 0).getSolver().getInverse().getData();
    }

    /**
     * How readings move with the unknowns, in their own unit.
     *
     * @param deviations that the readings were taken to have
     */
    double[][] slope(double[] deviations) {
        double[][] slope = new double[jacobian.length][];
        for (int i = 0; i < slope.length; i++) {
            double deviation = deviations[i];
            slope[i] = Arrays.stream(jacobian[i]).map(s -> s * deviation).toArray();
        }
        return slope;
    }

    /** Doubt left of an unknown, as a share of the doubt before. */
    double deviation(int unknown) {
        return Math.sqrt(covariance[unknown][unknown]);
    }

    /** Correlation of two figures, each of which moves with the unknowns by a slope. */
    double correlation(double[] one, double[] other) {
        return quadratic(one, other) / (deviationOf(one) * deviationOf(other));
    }

    /** Standard deviation of a figure that moves with the unknowns by {@code slope}. */
    double deviationOf(double[] slope) {
        return Math.sqrt(quadratic(slope, slope));
    }

    /**
     * How the most probable values move with something that was taken as known and is not (a
     * considered parameter; Schmidt 1966, from memory).
     *
     * @param slope of each reading's forecast with it, in the reading's own standard deviations
     */
    double[] shift(double[] slope) {
        double[] bend = curvatures(residual);
        double[] pull = new double[mode.length];
        for (int i = 0; i < slope.length; i++) {
            for (int k = 0; k < pull.length; k++) {
                pull[k] -= bend[i] * jacobian[i][k] * slope[i];
            }
        }
        return new Array2DRowRealMatrix(covariance).operate(pull);
    }

    /**
     * Leads a draw of Laplace's approximation, which takes the forecast for straight, to where the
     * real forecast lies as far from the readings as the straight one does there: a step of Gauss
     * and Newton on a cost whose readings and prior are drawn along (randomized maximum likelihood;
     * Oliver, He and Reynolds 1996, from memory). Crops that drink from one vessel are known by
     * their sum; drawn straight, each by itself, they would drink more than was read.
     *
     * @param drawn by {@link #draw}
     * @param at how far it was led already; at first the draw
     * @param off readings less the real forecast there, in the readings' own standard deviations;
     *     NaN where nothing is foretold
     */
    double[] bent(double[] drawn, double[] at, double[] off) {
        double[] more = new double[off.length];
        for (int i = 0; i < more.length; i++) {
            double straight = residual[i];
            for (int k = 0; k < drawn.length; k++) {
                straight -= jacobian[i][k] * (drawn[k] - mode[k]);
            }
            more[i] = Double.isNaN(off[i]) ? 0 : straight - off[i];
        }
        double[] step = shift(more);
        double[] there = at.clone();
        for (int k = 0; k < there.length; k++) {
            there[k] += step[k];
            for (int l = 0; l < there.length; l++) {
                there[k] -= covariance[k][l] * (at[l] - drawn[l]);
            }
        }
        return there;
    }

    /**
     * Something more that moves the readings.
     *
     * @param amount most likely, in the unit of its slope
     * @param better by how much more probable the log is with it, as a logarithm
     */
    record More(double amount, double better) {}

    /**
     * What becomes of all where something more is let in, the forecast taken as straight.
     *
     * @param slope of each reading's forecast with it, in the reading's own standard deviations;
     *     nothing is believed of it before
     */
    More more(double[] slope) {
        int unknowns = mode.length;
        double[] to = new double[unknowns + 1];
        double[] off = residual;
        for (int pass = 0; pass < MORE_PASSES; pass++) {
            double[] weight = weights(off);
            RealMatrix sum = new Array2DRowRealMatrix(unknowns + 1, unknowns + 1);
            double[] pull = new double[unknowns + 1];
            for (int k = 0; k < unknowns; k++) {
                sum.setEntry(k, k, 1);
                pull[k] = -mode[k];
            }
            sum.setEntry(unknowns, unknowns, LITTLE);
            for (int i = 0; i < off.length; i++) {
                double[] row = Arrays.copyOf(jacobian[i], unknowns + 1);
                row[unknowns] = slope[i];
                for (int k = 0; k <= unknowns; k++) {
                    pull[k] += weight[i] * row[k] * residual[i];
                    for (int l = 0; l <= unknowns; l++) {
                        sum.addToEntry(k, l, weight[i] * row[k] * row[l]);
                    }
                }
            }
            to =
                    new CholeskyDecomposition(sum, 1e-9, 0)
                            .getSolver()
                            .solve(new ArrayRealVector(pull))
                            .toArray();
            off = residual.clone();
            for (int i = 0; i < off.length; i++) {
                off[i] -= to[unknowns] * slope[i];
                for (int k = 0; k < unknowns; k++) {
                    off[i] -= to[k] * jacobian[i][k];
                }
            }
        }
        double[] there = mode.clone();
        for (int k = 0; k < unknowns; k++) {
            there[k] += to[k];
        }
        return new More(to[unknowns], minusLogDensity - minusLogDensity(off, there));
    }

    private static final int MORE_PASSES = 20;

    /** Keeps something that no reading is moved by at nothing. */
    private static final double LITTLE = 1e-9;

    /**
     * Standard deviation with which the readings alone would tell something more that they are
     * moved by, everything else being as doubtful as it is: the inverse root of its Fisher
     * information (MacKay 2003, chapter 27), that of errors as they are to be expected.
     *
     * @param slope of each reading's forecast with it, in the reading's own standard deviations
     * @return infinite where they say nothing of it
     */
    double resolution(double[] slope) {
        double[] bend = new double[slope.length];
        Arrays.fill(bend, EXPECTED_CURVATURE);
        double[][] spread = inverse(precision(jacobian, bend, mode.length));
        double[] pull = new double[mode.length];
        double information = 0;
        for (int i = 0; i < slope.length; i++) {
            information += bend[i] * slope[i] * slope[i];
            for (int k = 0; k < pull.length; k++) {
                pull[k] += bend[i] * jacobian[i][k] * slope[i];
            }
        }
        for (int k = 0; k < pull.length; k++) {
            for (int l = 0; l < pull.length; l++) {
                information -= pull[k] * spread[k][l] * pull[l];
            }
        }
        return information > 0 ? 1 / Math.sqrt(information) : Double.POSITIVE_INFINITY;
    }

    /** Mean of a reading's curvature, {@link #curvatures}, over normal errors; by quadrature. */
    private static final double EXPECTED_CURVATURE = 0.79;

    /**
     * What a further reading would leave of a figure's doubt.
     *
     * @param figure slope of the figure with the unknowns
     * @param reading slope of the reading with the unknowns, in its own standard deviations
     * @return share of the figure's standard deviation that would be left, 0-1
     */
    double shareLeftAfter(double[] figure, double[] reading) {
        double before = quadratic(figure, figure);
        if (!(before > 0)) {
            return 1;
        }
        double shared = quadratic(figure, reading);
        double after = before - shared * shared / (1 + quadratic(reading, reading));
        return Math.sqrt(Math.max(0, after) / before);
    }

    /**
     * What a reading was worth.
     *
     * @param figure slope of the figure with the unknowns
     * @param reading its number
     * @return share of the figure's standard deviation without it that it took away, 0-1
     */
    double worth(double[] figure, int reading) {
        double before = quadratic(figure, figure);
        double bend = curvatures(residual)[reading];
        double[] slope = jacobian[reading];
        double known = bend * quadratic(slope, slope);
        if (!(before > 0) || !(known < 1)) {
            return known < 1 ? 0 : 1;
        }
        double shared = quadratic(figure, slope);
        double without = before + bend * shared * shared / (1 - known);
        return 1 - Math.sqrt(before / without);
    }

    private double quadratic(double[] left, double[] right) {
        double sum = 0;
        for (int k = 0; k < left.length; k++) {
            for (int l = 0; l < right.length; l++) {
                sum += left[k] * covariance[k][l] * right[l];
            }
        }
        return sum;
    }

    /**
     * Draws unknowns from Laplace's approximation.
     *
     * @param normal independent standard normal deviates, one an unknown
     */
    double[] draw(double[] normal) {
        RealMatrix root =
                new CholeskyDecomposition(new Array2DRowRealMatrix(covariance), 1e-9, 0).getL();
        double[] spread = root.operate(normal);
        double[] theta = new double[mode.length];
        for (int k = 0; k < theta.length; k++) {
            theta[k] = mode[k] + spread[k];
        }
        return theta;
    }
}
