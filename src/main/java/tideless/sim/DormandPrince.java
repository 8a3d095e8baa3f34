package tideless.sim;

/**
 * The pair of Dormand and Prince (1980; J. Comp. Appl. Math. 6, 19-26) of order 5 with its error of
 * order 4 and its dense form; coefficients as in Hairer, Norsett and Wanner (1993), table II.5.2
 * and section II.6. Holds the rates of one piece; scratch space of one run.
 */
final class DormandPrince {
    static final int STAGES = 7;

    private static final double[] C = {0, 0.2, 0.3, 0.8, 8.0 / 9, 1, 1};
    private static final double[][] A = {
        {},
        {0.2},
        {3.0 / 40, 9.0 / 40},
        {44.0 / 45, -56.0 / 15, 32.0 / 9},
        {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
        {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
        {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84},
    };
    private static final double[] E = {
        71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40
    };
    private static final double[] DENSE = {
        -12715105075.0 / 11282082432.0,
        0,
        87487479700.0 / 32700410799.0,
        -10690763975.0 / 1880347072.0,
        701980252875.0 / 199316789632.0,
        -1453857185.0 / 822651844.0,
        69997945.0 / 29380423.0
    };

    private final double[][] rate;

    DormandPrince(int size) {
        rate = new double[STAGES][size];
    }

    /** When in the piece a stage's rates are asked for, 0-1. */
    static double timeFrac(int stage) {
        return C[stage];
    }

    /** Keeps the rates of a stage. */
    void put(int stage, double[] rates) {
        System.arraycopy(rates, 0, rate[stage], 0, rates.length);
    }

    /** Rates at the start. */
    double[] first() {
        return rate[0];
    }

    /** Rates at the end. */
    double[] last() {
        return rate[STAGES - 1];
    }

    /** Mean rate of a variable up to a stage, times the stage's {@link #timeFrac}. */
    double mean(int stage, int i) {
        double sum = 0;
        for (int j = 0; j < stage; j++) {
            sum += A[stage][j] * rate[j][i];
        }
        return sum;
    }

    /** Error of the mean rate over the whole piece. */
    double error(int i) {
        double sum = 0;
        for (int j = 0; j < STAGES; j++) {
            sum += E[j] * rate[j][i];
        }
        return sum;
    }

    /** Integral of the rate up to a share of the piece, in pieces. */
    double until(double theta, int i) {
        double whole = mean(STAGES - 1, i);
        double bent = 0;
        for (int j = 0; j < STAGES; j++) {
            bent += DENSE[j] * rate[j][i];
        }
        double one = 1 - theta;
        double c3 = rate[0][i] - whole;
        double c4 = whole - rate[STAGES - 1][i] - c3;
        return theta * (whole + one * (c3 + theta * (c4 + one * bent)));
    }
}
