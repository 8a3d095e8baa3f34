package tideless.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
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
 * reading does not carry the rest along; the most probable values are found by least squares with
 * weights renewed until they stay (iteratively reweighted; ibid., section 3), from several starts.
 *
 * @param mode most probable values, in standard deviations of the prior
 * @param covariance of the unknowns about the mode, same unit
 * @param jacobian {@code [reading][unknown]}: how the reading forecast moves with the unknown
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

    /** Weighted passes; they converge linearly, ten leave less than 1e-3 of a deviation. */
    private static final int PASSES = 30;

    private static final double STAYS = 1e-6;

    /** Half step of central differences, in standard deviations of the prior. */
    private static final double HALF_STEP = 0.05;

    /**
     * Finds it.
     *
     * @param forecast readings expected for given unknowns; called again and again
     * @param readings as taken
     * @param deviations standard deviation of each reading's error, same unit as the reading
     * @param unknowns how many
     * @param starts how many starts, at least 1: the prior's middle first
     * @throws IllegalArgumentException for lengths that differ or a deviation not above 0
     */
    static Posterior of(
            Function<double[], double[]> forecast,
            double[] readings,
            double[] deviations,
            int unknowns,
            int starts) {
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
        UnaryOperator<double[]> misfit =
                theta -> {
                    double[] expected = forecast.apply(theta);
                    double[] off = new double[readings.length];
                    for (int i = 0; i < off.length; i++) {
                        off[i] = (readings[i] - expected[i]) / deviations[i];
                    }
                    return off;
                };
        Posterior best = null;
        for (double[] start : startsOf(unknowns, starts)) {
            Posterior found = from(misfit, start);
            if (best == null || found.minusLogDensity < best.minusLogDensity - 1e-9) {
                best = found;
            }
        }
        return best;
    }

    private static List<double[]> startsOf(int unknowns, int starts) {
        List<double[]> all = new ArrayList<>();
        all.add(new double[unknowns]);
        if (starts > 1) {
            for (double[] point : UnitSample.of(starts - 1, unknowns, 1)) {
                // Evenly over two standard deviations to either side.
                all.add(Arrays.stream(point).map(u -> 4 * u - 2).toArray());
            }
        }
        return all;
    }

    private static Posterior from(UnaryOperator<double[]> misfit, double[] start) {
        double[] theta = start.clone();
        double[] weight = weights(misfit.apply(theta));
        for (int pass = 0; pass < PASSES; pass++) {
            double[] next = leastSquares(misfit, weight, theta);
            double moved = 0;
            for (int k = 0; k < theta.length; k++) {
                moved = Math.max(moved, Math.abs(next[k] - theta[k]));
            }
            theta = next;
            weight = weights(misfit.apply(theta));
            if (moved < STAYS) {
                break;
            }
        }
        double[] residual = misfit.apply(theta);
        double[][] jacobian = jacobian(misfit, theta);
        return new Posterior(
                theta,
                inverse(precision(jacobian, curvatures(residual), theta.length)),
                jacobian,
                residual,
                weight,
                minusLogDensity(residual, theta));
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

    /** Readings and, below them, the prior as a reading of 0 with deviation 1 of every unknown. */
    private static double[] leastSquares(
            UnaryOperator<double[]> misfit, double[] weight, double[] start) {
        int readings = weight.length;
        int unknowns = start.length;
        MultivariateJacobianFunction model =
                point -> {
                    double[] theta = point.toArray();
                    double[] off = misfit.apply(theta);
                    double[][] slope = jacobian(misfit, theta);
                    RealVector value = new ArrayRealVector(readings + unknowns);
                    RealMatrix rows = new Array2DRowRealMatrix(readings + unknowns, unknowns);
                    for (int i = 0; i < readings; i++) {
                        double root = Math.sqrt(weight[i]);
                        value.setEntry(i, -root * off[i]);
                        for (int k = 0; k < unknowns; k++) {
                            rows.setEntry(i, k, root * slope[i][k]);
                        }
                    }
                    for (int k = 0; k < unknowns; k++) {
                        value.setEntry(readings + k, theta[k]);
                        rows.setEntry(readings + k, k, 1);
                    }
                    return new Pair<>(value, rows);
                };
        LeastSquaresOptimizer.Optimum optimum =
                new LevenbergMarquardtOptimizer()
                        .optimize(
                                new LeastSquaresBuilder()
                                        .start(start)
                                        .model(model)
                                        .target(new double[readings + unknowns])
                                        .maxEvaluations(200)
                                        .maxIterations(100)
                                        .checker(
                                                (iteration, before, after) ->
                                                        before.getPoint()
                                                                        .getDistance(
                                                                                after.getPoint())
                                                                < STAYS)
                                        .build());
        return optimum.getPoint().toArray();
    }

    /** How the forecast moves, in the reading's deviations for one of the prior's. */
    private static double[][] jacobian(UnaryOperator<double[]> misfit, double[] theta) {
        double[][] slope = null;
        for (int k = 0; k < theta.length; k++) {
            double[] up = theta.clone();
            double[] down = theta.clone();
            up[k] += HALF_STEP;
            down[k] -= HALF_STEP;
            double[] offUp = misfit.apply(up);
            double[] offDown = misfit.apply(down);
            if (slope == null) {
                slope = new double[offUp.length][theta.length];
            }
            for (int i = 0; i < offUp.length; i++) {
                slope[i][k] = (offDown[i] - offUp[i]) / (2 * HALF_STEP);
            }
        }
        return slope;
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

    /** Doubt left of an unknown, as a share of the doubt before. */
    double deviation(int unknown) {
        return Math.sqrt(covariance[unknown][unknown]);
    }

    /** Correlation of two unknowns. */
    double correlation(int one, int other) {
        return covariance[one][other] / (deviation(one) * deviation(other));
    }

    /** Standard deviation of a figure that moves with the unknowns by {@code slope}. */
    double deviationOf(double[] slope) {
        return Math.sqrt(quadratic(slope, slope));
    }

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
