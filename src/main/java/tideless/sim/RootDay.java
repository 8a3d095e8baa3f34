package tideless.sim;

/** What the root zone has done to the plants over the day so far; scratch space of one run. */
final class RootDay {
    private double saltS;
    private double keptFullSaltS;
    private double saltMsPerCmS;
    private double airS;
    private double airRootS;
    private double tempCS;
    private double spanS;
    private double bearableM3;
    private double shortM3;

    /**
     * Adds a step.
     *
     * @param saltMsPerCm strength of the solution, mS/cm
     * @param saltFrac growth that it leaves, 0-1
     * @param keptFullSaltFrac growth that it would leave in a vessel kept full of feed, 0-1
     * @param airFrac growth that dissolved oxygen leaves, 0-1
     * @param airRootFrac growth that the roots in air leave, 0-1
     * @param solutionC degC
     * @param bearableM3OfStep what wet roots would have drunk of that solution, m3
     * @param drunkM3OfStep what was drunk, of solution or of the plugs, m3
     */
    void add(
            double saltMsPerCm,
            double saltFrac,
            double keptFullSaltFrac,
            double airFrac,
            double airRootFrac,
            double solutionC,
            double bearableM3OfStep,
            double drunkM3OfStep,
            double stepS) {
        saltMsPerCmS += saltMsPerCm * stepS;
        saltS += saltFrac * stepS;
        keptFullSaltS += keptFullSaltFrac * stepS;
        airS += airFrac * stepS;
        airRootS += airRootFrac * stepS;
        tempCS += solutionC * stepS;
        bearableM3 += bearableM3OfStep;
        shortM3 += Math.max(0, bearableM3OfStep - drunkM3OfStep);
        spanS += stepS;
    }

    private double mean(double sum, double otherwise) {
        return spanS > 0 ? sum / spanS : otherwise;
    }

    /** Mean strength of the solution, mS/cm. */
    double saltMsPerCm() {
        return mean(saltMsPerCmS, 0);
    }

    /** Growth that salt leaves, 0-1. */
    double saltFrac() {
        return mean(saltS, 1);
    }

    /** Growth that salt would leave in a vessel kept full of feed, 0-1. */
    double keptFullSaltFrac() {
        return mean(keptFullSaltS, 1);
    }

    /** Growth that dissolved oxygen leaves, 0-1. */
    double airFrac() {
        return mean(airS, 1);
    }

    /** Growth that the roots in air leave, 0-1. */
    double airRootFrac() {
        return mean(airRootS, 1);
    }

    /** Mean temperature of the solution, degC. */
    double meanTempC() {
        return mean(tempCS, Double.NaN);
    }

    /** Share of the day's bearable thirst that was met, 0-1: without water nothing grows. */
    double metFrac() {
        return bearableM3 > 0 ? 1 - shortM3 / bearableM3 : 1;
    }

    void clear() {
        saltS = 0;
        keptFullSaltS = 0;
        saltMsPerCmS = 0;
        airS = 0;
        airRootS = 0;
        tempCS = 0;
        spanS = 0;
        bearableM3 = 0;
        shortM3 = 0;
    }
}
