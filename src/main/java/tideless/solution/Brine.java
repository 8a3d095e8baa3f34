package tideless.solution;

import java.util.Arrays;

/** The end of a drying film: how strong a solution can get before its salts come out. */
public final class Brine {
    /**
     * Depth of solution that no longer feeds a root and wets a floor in patches only, m: 1 mm.
     * Recommended, no source.
     */
    public static final double FILM_M = 1e-3;

    /** EC above which nothing is said but that it is beyond the model, mS/cm; recommended. */
    public static final double BEYOND_MS_PER_CM = 20;

    /** Ionic strength above which no pH is said, mol/kg: Davies' equation ends there. */
    public static final double BEYOND_IONIC_STRENGTH = 0.5;

    /**
     * Depth of solution below which no pH is said, m: 1 cm. The bulb of a pen is as thick (common
     * practice, no source), and what is left lies within a mat of roots, at whose surface pH is off
     * by one to two over millimetres (common knowledge of root surfaces, from memory).
     */
    public static final double NO_PH_BELOW_M = 0.01;

    private static final int COUNT = Component.COUNT;

    // Solubility of NaCl 6.1, KNO3 3.8, Ca(NO3)2 8.2, Mg(NO3)2 4.9, NH4NO3 26 and K2SO4 0.69 mol/kg
    // water at 25 degC (handbook values, from memory), taken per m3: the denser brine errs low.
    static final double[] MOST_MOL_PER_M3 = most();

    /** Charge of all cations a brine may hold, mol charge/m3: 10 eq/kg; recommended, no source. */
    private static final double MOST_CATIONS_MOL_PER_M3 = 10_000;

    private Brine() {}

    /**
     * Share of all that is dissolved which stays so, 0-1: 1 while every ion is below its bound,
     * else what brings the strongest down to it. All come out together, so that charge and
     * proportions stay; a real crust sorts its salts.
     *
     * @param mol one place a component, mol
     * @param volumeM3 m3, above 0
     */
    public static double dissolvedFrac(double[] mol, double volumeM3) {
        double fullest = 0;
        double cations = 0;
        for (int i = 0; i < COUNT; i++) {
            fullest = Math.max(fullest, mol[i] / MOST_MOL_PER_M3[i]);
            cations += Math.max(0, Component.at(i).fixedCharge()) * mol[i];
        }
        fullest = Math.max(fullest, cations / MOST_CATIONS_MOL_PER_M3);
        return fullest > volumeM3 ? volumeM3 / fullest : 1;
    }

    private static double[] most() {
        double[] most = new double[COUNT];
        Arrays.fill(most, Double.POSITIVE_INFINITY);
        most[Component.NA.ordinal()] = 6100;
        most[Component.K.ordinal()] = 3800;
        most[Component.CA.ordinal()] = 8200;
        most[Component.MG.ordinal()] = 4900;
        most[Component.NH4.ordinal()] = 26_000;
        most[Component.SO4.ordinal()] = 690;
        return most;
    }
}
