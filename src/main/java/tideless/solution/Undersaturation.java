package tideless.solution;

import tideless.physics.Elementary;

/**
 * A quick proof, where there is one, that a solution in air is below the onset of every mineral of
 * {@link Precipitation}: without it most days of most vessels would be solved for in full to find
 * nothing.
 *
 * <p>A single activity coefficient is bounded by Davies' equation at a bound of the ionic strength.
 * Free calcium and sulfate are at most all there is. Carbonate in air, and what of phosphate is
 * HPO4-2, fall as the acid rises; so there is an acidity from where on neither mineral can be above
 * its onset. At that acidity the charges are counted with every doubt on the side of the positive
 * ones. They rise with the acidity throughout (at fixed coefficients their change with ln a(H+) is
 * the variance of the protons the forms carry), so that where they fall short of the negative ones
 * the solution that balances is more acid still.
 *
 * <p>By some {@link #CAREFUL} of an index it is more careful than the truth; it never says what is
 * not so.
 */
final class Undersaturation {
    /** Kept clear of the onset, log10: far above any rounding. */
    private static final double CLEAR = 1e-2;

    /** By so much of an index it is more careful than the truth, about. */
    static final double CAREFUL = 0.2;

    /** Greatest value of sqrt I/(1 + sqrt I) - 0.3 I, at I = 0.31: 0.2648; derived. */
    private static final double DAVIES_MOST = 0.265;

    private Undersaturation() {}

    /**
     * Whether nothing can fall.
     *
     * @param molPerM3 all that is dissolved; carbon is the air's
     * @param k constants at the solution's temperature
     * @param co2Atm of the air, atm
     * @return true only where it is certain
     */
    static boolean isCertain(double[] molPerM3, Equilibria k, double co2Atm) {
        double ca = 1e-3 * molPerM3[Component.CA.ordinal()];
        double mg = 1e-3 * molPerM3[Component.MG.ordinal()];
        double p = 1e-3 * molPerM3[Component.P.ordinal()];
        double so4 = 1e-3 * molPerM3[Component.SO4.ordinal()];
        double inert =
                1e-3 * (molPerM3[Component.NO3.ordinal()] + molPerM3[Component.CL.ordinal()]);
        double single =
                1e-3
                        * (molPerM3[Component.K.ordinal()]
                                + molPerM3[Component.NA.ordinal()]
                                + molPerM3[Component.NH4.ordinal()]);
        double plus = 2 * (ca + mg) + single;
        double minus = inert + 2 * so4 + 3 * p;
        // I is at least the charges of either sign, and at most all forms at their most charged,
        // with as much more of H+, or of OH- and carbonates, as balances the rest.
        double leastDavies = davies(inert);
        double mostStrength = 0.5 * (2 * plus + inert + 4 * so4 + 9 * p) + Math.max(plus, minus);
        leastDavies = Math.min(leastDavies, davies(mostStrength));
        double gamma1 = power10(-k.debyeHuckelA * leastDavies);
        double gamma2 = gamma1 * gamma1 * gamma1 * gamma1;
        double leastGamma1 = power10(-k.debyeHuckelA * Math.max(leastDavies, DAVIES_MOST));
        double freeCa = gamma2 * ca;

        double gypsum = onset(Precipitation.Mineral.GYPSUM, k.logKspGypsum);
        if (!(freeCa * gamma2 * so4 <= gypsum)) {
            return false;
        }
        // Acidity from which on neither of the other two is above its onset.
        double hco3TimesH = k.carbonic1 * k.henryCo2 * co2Atm;
        double co3TimesH2 = k.formation[Species.CO3.ordinal()] * hco3TimesH;
        double h =
                Math.sqrt(
                        freeCa
                                * co3TimesH2
                                / onset(Precipitation.Mineral.CALCITE, k.logKspCalcite));
        double first = k.formation[Species.H2PO4.ordinal()];
        double hpo4Most = onset(Precipitation.Mineral.CALCIUM_PHOSPHATE, k.logKspBrushite) / freeCa;
        h = Math.max(h, (p / hpo4Most - 1 / gamma2) * gamma1 / first);
        if (!(h > 0)) {
            return true;
        }
        // The positive charge less the negative one there, at most: all as their bare forms, and
        // then the protons they carry.
        double paired =
                k.formation[Species.CAH2PO4.ordinal()] * freeCa
                        + k.formation[Species.MGH2PO4.ordinal()] * gamma2 * mg;
        double one = h * gamma1 * gamma1 * gamma1 * (first + paired);
        double two = h * h * gamma2 * k.formation[Species.H3PO4.ordinal()];
        if (!(two < 1)) {
            return false; // the protons of phosphate are bounded otherwise there
        }
        double protons =
                h / leastGamma1
                        + p * (one + 2 * two) / (1 + one + two)
                        + k.formation[Species.HSO4.ordinal()] * gamma2 * so4 * h / leastGamma1
                        - hco3TimesH / (h * gamma1);
        return plus - inert - 2 * so4 - 2 * p + protons < 0;
    }

    private static double onset(Precipitation.Mineral mineral, double logSolubility) {
        return power10(logSolubility + mineral.onsetIndex() - CLEAR);
    }

    private static double davies(double strength) {
        double root = Math.sqrt(strength);
        return root / (1 + root) - 0.3 * strength;
    }

    private static double power10(double log10) {
        return Elementary.exp(log10 * Equilibria.LN10);
    }
}
