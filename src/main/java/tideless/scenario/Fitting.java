package tideless.scenario;

/**
 * Fittings of a tube and the loss coefficient of each, on the tube's own velocity.
 *
 * <p>Munson, Young and Okiishi, Fundamentals of Fluid Mechanics, Table 8.2 (read second-hand):
 * turbulent values for larger pipes. A barb narrower than the tube loses several times more; state
 * {@code loss} where it is known.
 */
enum Fitting {
    ENTRANCE("entrance", 0.5),
    EXIT("exit", 1.0),
    ELBOW("elbow", 1.5),
    TEE_RUN("tee-run", 0.9),
    TEE_BRANCH("tee-branch", 2.0),
    BALL_VALVE("ball-valve", 0.05);

    private final String spelling;
    private final double lossCoefficient;

    Fitting(String spelling, double lossCoefficient) {
        this.spelling = spelling;
        this.lossCoefficient = lossCoefficient;
    }

    String spelling() {
        return spelling;
    }

    double lossCoefficient() {
        return lossCoefficient;
    }
}
