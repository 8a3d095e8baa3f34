package tideless.sim;

import tideless.physics.Elementary;

/** How one dissolved component of a tray changes over a span of constant rates. */
final class Solutes {
    /** Above this the short form's error, a twelfth of its cube, would show; derived. */
    private static final double SHORT_FORM_MOST = 1e-3;

    /** What stands below this is none: an atom in some picolitres, mol/m3. */
    private static final double NOTHING_MOL_PER_M3 = 1e-9;

    /** A step of the logarithm below this leaves half of its square; derived. */
    private static final double LAST_CHANGE = 1e-5;

    private static final int NEWTON_MOST = 60;

    private Solutes() {}

    /**
     * Amount left after plants took by Michaelis and Menten's law while some came in.
     *
     * <p>dM/dt = in - D M / (Km V + M). Far from shortage the implicit midpoint rule is exact but
     * for rounding, since the rate is nearly constant; near it the integrated law, M + Km V ln M =
     * M0 + Km V ln M0 - D t, is solved, with half of the inflow before and half after. Second order
     * in the span with an inflow, exact without, never negative. What would be less than a
     * billionth of a mol/m3 is taken whole.
     *
     * @param startMol at the start, mol, at least 0
     * @param inMol come in over the span, evenly, mol, at least 0
     * @param volumeM3 mean volume over the span, m3, above 0
     * @param demandMolPerS D, taken when there is plenty, mol/s, at least 0
     * @param halfMolPerM3 Km, mol/m3, above 0
     * @param spanS s
     * @return mol, at least 0
     */
    static double afterUptake(
            double startMol,
            double inMol,
            double volumeM3,
            double demandMolPerS,
            double halfMolPerM3,
            double spanS) {
        double wanted = demandMolPerS * spanS;
        double half = halfMolPerM3 * volumeM3;
        double sum = half + startMol;
        if (wanted * half < SHORT_FORM_MOST * sum * sum && wanted < 0.5 * startMol) {
            double twice = 2 * startMol + inMol;
            double p = 2 * half - twice + wanted;
            double root = Math.sqrt(p * p + 8 * twice * half);
            double mid = p > 0 ? 2 * twice * half / (p + root) : (root - p) / 4;
            return 2 * mid - startMol;
        }
        double left = drawnDown(startMol + 0.5 * inMol, half, wanted);
        return (left > NOTHING_MOL_PER_M3 * volumeM3 ? left : 0) + 0.5 * inMol;
    }

    // Root of M + half ln M = M0 + half ln M0 - wanted, by Newton in ln M, where the function is
    // convex and rising and the start lies to the right of the root: it can only close in.
    private static double drawnDown(double startMol, double half, double wanted) {
        if (!(startMol > 0)) {
            return 0;
        }
        double drop = 0; // ln M0 - ln M, so that nothing is lost when it is small
        double taken = 0; // exactly what belongs to that drop
        for (int i = 0; i < NEWTON_MOST; i++) {
            double change = (taken + half * drop - wanted) / (startMol - taken + half);
            drop -= change;
            if (Math.abs(change) <= LAST_CHANGE) {
                break;
            }
            taken = startMol * -Elementary.expm1(-drop);
        }
        return startMol * Elementary.exp(-drop);
    }

    /**
     * Amount left after some was drunk with the water while some came in.
     *
     * <p>dM/dt = in - p M / V, exact for a volume that changes evenly when nothing comes in.
     *
     * @param startMol at the start, mol
     * @param inMol come in over the span, evenly, mol
     * @param startM3 volume at the start, m3, above 0
     * @param endM3 volume at the end, m3, at least 0
     * @param passM3PerS p, solution drunk with the component in it, m3/s
     * @param spanS s
     */
    static double afterPassing(
            double startMol,
            double inMol,
            double startM3,
            double endM3,
            double passM3PerS,
            double spanS) {
        double x = passM3PerS * spanS / logMean(startM3, endM3);
        if (x < 1e-2) {
            // Series of exp(-x) and (1 - exp(-x)) / x; the terms left out are below 1e-12.
            double tail = 1 - x / 2 * (1 - x / 3 * (1 - x / 4 * (1 - x / 5)));
            return startMol * (1 - x * tail) + inMol * tail;
        }
        double kept = Elementary.exp(-x);
        return startMol * kept + inMol * (1 - kept) / x;
    }

    // Mean whose reciprocal is the mean reciprocal of a volume that changes evenly.
    private static double logMean(double a, double b) {
        double d = (b - a) / (b + a);
        if (Math.abs(d) < 1e-3) {
            return 0.5 * (a + b) * (1 - d * d / 3); // next term d^4
        }
        return b > 0
                ? (b - a) / Elementary.log(b / a)
                : a / 50; // dry at the end: all but e^-50 is drunk
    }
}
