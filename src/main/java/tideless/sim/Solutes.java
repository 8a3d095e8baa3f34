package tideless.sim;

/** How one dissolved component of a tray changes over a span. */
final class Solutes {
    private Solutes() {}

    /**
     * Amount left after a span in which some came in and the plants took some.
     *
     * <p>dM/dt = in - D C / (Km + C) - p C, with C = M / V. The rate of taking per amount, k = D /
     * (V (Km + C)) + p / V, is held at its mid-span value, which makes the answer an exponential:
     * second order in the span, and never negative whatever the span.
     *
     * @param startMol at the start, mol
     * @param inMol come in over the span, evenly, mol
     * @param midVolumeM3 volume at the middle of the span, m3, above 0
     * @param demandMolPerS D, taken when there is plenty, mol/s
     * @param halfMolPerM3 Km, Michaelis constant, mol/m3
     * @param passM3PerS p, solution drunk with the component in it, m3/s
     * @param spanS s
     * @return mol, at least 0
     */
    static double afterUptake(
            double startMol,
            double inMol,
            double midVolumeM3,
            double demandMolPerS,
            double halfMolPerM3,
            double passM3PerS,
            double spanS) {
        double taking = demandMolPerS + passM3PerS;
        if (!(taking > 0)) {
            return startMol + inMol;
        }
        double roughMol = startMol + 0.5 * inMol;
        double roughRate =
                demandMolPerS / (halfMolPerM3 * midVolumeM3 + roughMol) + passM3PerS / midVolumeM3;
        double midMol = roughMol / (1 + 0.5 * spanS * roughRate);
        double rate =
                demandMolPerS / (halfMolPerM3 * midVolumeM3 + midMol) + passM3PerS / midVolumeM3;
        double x = rate * spanS;
        double kept;
        double keptOfIn;
        if (x < 1e-2) {
            // Series of exp(-x) and (1 - exp(-x)) / x; the terms left out are below 1e-12.
            kept = 1 - x * (1 - x / 2 * (1 - x / 3 * (1 - x / 4 * (1 - x / 5))));
            keptOfIn = 1 - x / 2 * (1 - x / 3 * (1 - x / 4 * (1 - x / 5)));
        } else {
            kept = Math.exp(-x);
            keptOfIn = (1 - kept) / x;
        }
        return startMol * kept + inMol * keptOfIn;
    }
}
