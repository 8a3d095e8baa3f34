package tideless.study;

import java.util.SplittableRandom;
import org.apache.commons.math3.random.SobolSequenceGenerator;

/**
 * Points spread evenly over a unit cube: Sobol's sequence (Joe and Kuo 2008, direction numbers of
 * Commons Math), shifted by a vector of the seed modulo one (Cranley and Patterson 1976), so that
 * every point is uniform by itself and a larger sample begins with the smaller one.
 */
final class UnitSample {
    private UnitSample() {}

    /**
     * The first points.
     *
     * @param points how many, at least 1
     * @param dimensions of the cube, 1 to 1000
     * @param seed of the shift
     * @return {@code [point][dimension]}, each in (0, 1)
     * @throws IllegalArgumentException when a count lies outside its range
     */
    static double[][] of(int points, int dimensions, long seed) {
        if (points < 1 || dimensions < 1 || dimensions > 1000) {
            throw new IllegalArgumentException(
                    "points at least 1 and dimensions 1 to 1000, were %s and %s"
                            .formatted(points, dimensions));
        }
        double[] shift = new SplittableRandom(seed).doubles(dimensions).toArray();
        SobolSequenceGenerator sobol = new SobolSequenceGenerator(dimensions);
        double[][] sample = new double[points][];
        for (int i = 0; i < points; i++) {
            double[] point = sobol.nextVector();
            for (int k = 0; k < dimensions; k++) {
                point[k] = inside(point[k] + shift[k]);
            }
            sample[i] = point;
        }
        return sample;
    }

    /** Into (0, 1): a quantile of exactly 0 or 1 has no finite normal deviate. */
    private static double inside(double sum) {
        double wrapped = sum >= 1 ? sum - 1 : sum;
        return Math.min(1 - LEAST, Math.max(LEAST, wrapped));
    }

    /**
     * Half the distance between two points of a sequence of 2^31: below any sample's resolution.
     */
    private static final double LEAST = 0x1p-32;
}
