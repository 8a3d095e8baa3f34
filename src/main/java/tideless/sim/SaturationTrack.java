package tideless.sim;

import tideless.solution.Component;

/**
 * How far a solution has moved towards saturation since that was last worked out in full: a rough
 * measure of calcite, calcium phosphate and gypsum by products of concentrations, so that trays
 * need not be solved for by the hour to find nothing. Activities and ion pairs change little within
 * a day and are left out.
 */
final class SaturationTrack {
    /**
     * A product that has grown by less than a quarter beyond what the last judgement left room for,
     * 0.1 of an index, is let be.
     */
    private static final double LET_BE = 1.26;

    /** The same of a judgement that may be days old: 0.02 of an index. */
    private static final double LET_BE_FOR_DAYS = 1.05;

    /**
     * A solution with less than this share of its ions is judged anew: a tenth less raises the
     * index of a mineral of two twofold ions by some 0.03 at 0.03 mol/kg (Davies; derived).
     */
    private static final double THINNED_FRAC = 0.9;

    /**
     * Growth of calcite's product with warmth, as a factor for each K: 0.012 of an index, between
     * 0.009 at the same dissolved carbon dioxide and 0.021 at the same above the water (constants
     * of Plummer and Busenberg 1982, 15 to 30 degC; derived).
     */
    private static final double CALCITE_PER_K = 0.028;

    /** HCO3- over dissolved CO2 where H2PO4- and HPO4-2 are alike: pK 6.85 and 6.35. */
    private static final double BICARBONATE_AT_EQUAL_PHOSPHATES = 3.16;

    private static final double LN10 = 2.302585092994046;

    private static final int CA = Component.CA.ordinal();
    private static final int P = Component.P.ordinal();
    private static final int SO4 = Component.SO4.ordinal();

    // As last judged.
    private double calcite;
    private double phosphate;
    private double gypsum;
    private double tempC;
    private double ions; // mol/m3
    private double roomFactor; // by which each product may grow

    // Of the state that is looked at.
    private double calciteNow;
    private double phosphateNow;
    private double gypsumNow;

    /**
     * Whether a mineral stands nearer to its onset than the last judgement left room for, within a
     * day.
     *
     * @param mol dissolved
     * @param m3 of solution, above 0
     * @param carbonDioxideMolPerM3 dissolved, bicarbonate left out
     * @param nowC degC
     */
    boolean isNearer(double[] mol, double m3, double carbonDioxideMolPerM3, double nowC) {
        return isNearer(mol, m3, carbonDioxideMolPerM3, nowC, LET_BE);
    }

    /**
     * The same of a judgement that may be days old: sharper, and never where the solution has
     * become much thinner, whose activities are higher then.
     */
    boolean isNearerAfterDays(double[] mol, double m3, double carbonDioxideMolPerM3, double nowC) {
        return ionsMolPerM3(mol, m3) < THINNED_FRAC * ions
                || isNearer(mol, m3, carbonDioxideMolPerM3, nowC, LET_BE_FOR_DAYS);
    }

    private boolean isNearer(
            double[] mol, double m3, double carbonDioxideMolPerM3, double nowC, double letBe) {
        look(mol, m3, carbonDioxideMolPerM3);
        double most = letBe * roomFactor;
        double warmed = 1 + CALCITE_PER_K * Math.max(0, nowC - tempC);
        return warmed * calciteNow > most * calcite
                || phosphateNow > most * phosphate
                || gypsumNow > most * gypsum;
    }

    /**
     * Takes over a state that has been judged in full.
     *
     * @param roomIndex by which the nearest mineral stays below its onset, log10
     */
    void judged(
            double[] mol, double m3, double carbonDioxideMolPerM3, double atC, double roomIndex) {
        look(mol, m3, carbonDioxideMolPerM3);
        calcite = calciteNow;
        phosphate = phosphateNow;
        gypsum = gypsumNow;
        tempC = atC;
        ions = ionsMolPerM3(mol, m3);
        // At least so much: e to the power x is no less than 1 + x.
        roomFactor = 1 + LN10 * roomIndex;
    }

    private static double ionsMolPerM3(double[] mol, double m3) {
        double sum = 0;
        for (double each : mol) {
            sum += each;
        }
        return sum / m3;
    }

    // With x = HPO4/H2PO4 the alkali is P x/(1 + x) + 3.16 CO2 x: a quadratic.
    private void look(double[] mol, double m3, double carbonDioxideMolPerM3) {
        double ca = mol[CA] / m3;
        gypsumNow = ca * mol[SO4] / m3;
        double alkali = -TraySalts.freeAcidMol(mol) / m3;
        if (!(alkali > 0)) {
            calciteNow = 0;
            phosphateNow = 0;
            return;
        }
        double p = mol[P] / m3;
        double a = BICARBONATE_AT_EQUAL_PHOSPHATES * carbonDioxideMolPerM3;
        double b = a + p - alkali;
        double root = Math.sqrt(b * b + 4 * a * alkali);
        double x = b > 0 ? 2 * alkali / (b + root) : (root - b) / (2 * a);
        calciteNow = ca * carbonDioxideMolPerM3 * x * x;
        phosphateNow = ca * p * x / (1 + x);
    }
}
