package tideless.solution;

import tideless.physics.Elementary;

/**
 * pH below 6.5 without speciation, for what is asked in every step of a run: free acid, phosphate
 * and bicarbonate alone, at 25 degC and an ionic strength of 0.02 mol/L (activity of a single
 * charge 0.87, Davies). Read off a line between points a quarter of a pH apart.
 */
public final class QuickPh {
    /** What is less acid reads as this. */
    public static final double HIGHEST = 6.5;

    /** What is more acid reads as this. */
    public static final double LOWEST = 3.0;

    private static final double STEP = 0.25;

    /** Of a single charge. */
    private static final double ACTIVITY = 0.87;

    /** HPO4-2 from H2PO4-: 7.20, less 0.18 for activities and 0.17 for pairs with calcium. */
    private static final double SECOND_PHOSPHATE_PK = 6.85;

    /** HCO3- from dissolved carbon dioxide; Plummer and Busenberg (1982). */
    private static final double FIRST_CARBONATE_PK = 6.35;

    private static final int POINTS = (int) ((HIGHEST - LOWEST) / STEP) + 1;
    private static final double[] PROTONS_MOL_PER_M3 = new double[POINTS];
    private static final double[] SECOND_PHOSPHATE_FRAC = new double[POINTS];
    private static final double[] BICARBONATE_PER_CO2 = new double[POINTS];

    static {
        for (int i = 0; i < POINTS; i++) {
            double h = Elementary.pow(10, -ph(i));
            double second = Elementary.pow(10, -SECOND_PHOSPHATE_PK);
            PROTONS_MOL_PER_M3[i] = 1e3 * h / ACTIVITY;
            SECOND_PHOSPHATE_FRAC[i] = second / (second + h);
            BICARBONATE_PER_CO2[i] = Elementary.pow(10, -FIRST_CARBONATE_PK) / h / ACTIVITY;
        }
    }

    private QuickPh() {}

    private static double ph(int point) {
        return HIGHEST - STEP * point;
    }

    /**
     * @param freeAcidMolPerM3 anions less cations with phosphate as H2PO4-, carbonate left out, mol
     *     charge/m3; below 0 what the solution holds of alkali
     * @param phosphateMolPerM3 all of it
     * @param carbonDioxideMolPerM3 dissolved, bicarbonate left out
     * @return pH, {@link #LOWEST} to {@link #HIGHEST}
     */
    public static double of(
            double freeAcidMolPerM3, double phosphateMolPerM3, double carbonDioxideMolPerM3) {
        double before = Double.NaN;
        for (int i = 0; i < POINTS; i++) {
            double acid =
                    PROTONS_MOL_PER_M3[i]
                            - SECOND_PHOSPHATE_FRAC[i] * phosphateMolPerM3
                            - BICARBONATE_PER_CO2[i] * carbonDioxideMolPerM3;
            if (freeAcidMolPerM3 <= acid) {
                return i == 0
                        ? HIGHEST
                        : ph(i) + STEP * (acid - freeAcidMolPerM3) / (acid - before);
            }
            before = acid;
        }
        return LOWEST;
    }
}
