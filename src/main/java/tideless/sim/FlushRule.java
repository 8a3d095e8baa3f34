package tideless.sim;

/** How much of a tray that has grown too salty is changed. */
public final class FlushRule {
    /** Share that is always changed at least, so that a flush is worth it; assumed. */
    private static final double LEAST_FRAC = 0.3;

    private FlushRule() {}

    /**
     * Share to drain so that the tray reads the middle between feed and limit: EC mixes nearly
     * linearly, and a later flush costs less solution than an earlier one.
     *
     * @param ecMsPerCm of the tray, above the limit, mS/cm
     * @param feedMsPerCm of the feed, below the limit, mS/cm
     * @param highMsPerCm the limit, mS/cm
     * @return 0-1
     */
    public static double shareFrac(double ecMsPerCm, double feedMsPerCm, double highMsPerCm) {
        double target = 0.5 * (feedMsPerCm + highMsPerCm);
        return Math.min(1, Math.max(LEAST_FRAC, (ecMsPerCm - target) / (ecMsPerCm - feedMsPerCm)));
    }
}
