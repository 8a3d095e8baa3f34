package tideless.rig;

/**
 * A run of tube.
 *
 * @param boreM inside diameter, m
 * @param lengthM m; 0 means no tube at all
 * @param lossCoefficient sum of the minor-loss coefficients of its fittings, on the tube's velocity
 */
public record Tube(double boreM, double lengthM, double lossCoefficient) {
    public Tube {
        if (!(boreM > 0 && boreM < 0.2)) {
            throw new IllegalArgumentException("boreM must lie in (0, 0.2), was " + boreM);
        }
        if (!(lengthM >= 0 && lengthM < 1000)) {
            throw new IllegalArgumentException("lengthM must lie in [0, 1000), was " + lengthM);
        }
        if (!(lossCoefficient >= 0)) {
            throw new IllegalArgumentException(
                    "lossCoefficient must be at least 0, was " + lossCoefficient);
        }
    }
}
