package tideless.crop;

import tideless.physics.Elementary;
import tideless.physics.Time;

/**
 * How dissolved salts hold water back from roots. By the sum of ions, so that no speciation is
 * needed and every step can follow.
 */
public final class Osmosis {
    /** Gas constant, J/(mol K); exact by definition, SI 2019. */
    static final double GAS_J_PER_MOL_K = 8.314462618;

    /**
     * Osmotic coefficient of feeds: 24.75 mol/m3 of tomato feed give -0.0571 MPa with it, -0.0357
     * MPa per mS/cm of its 1.6 mS/cm; from memory.
     */
    static final double OSMOTIC_COEFFICIENT = 0.93;

    /** Osmotic pressure of a solution per mS/cm of EC at 25 degC, Pa; US Salinity Laboratory. */
    static final double PA_PER_MS_PER_CM = 36_000;

    /** Osmotic pressure at which roots take no water at all, Pa: 0.6 to 1.2 MPa; from memory. */
    static final double NO_UPTAKE_PA = 0.8e6;

    /** The same as EC, mS/cm: 22. */
    public static final double NO_UPTAKE_MS_PER_CM = NO_UPTAKE_PA / PA_PER_MS_PER_CM;

    /**
     * A rise above what roots are used to that wilts a plant by day, mS/cm: 3 to 8; from memory,
     * low confidence.
     */
    public static final double WILTING_RISE_MS_PER_CM = 5;

    /** Days in which roots get used to a strength: recovery takes 1 to 3; from memory. */
    public static final double USED_TO_DAYS = 2;

    /**
     * EC at which a seedling of the first ten days takes harm, and at which it dies, mS/cm; from
     * memory, low confidence.
     */
    public static final double SEEDLING_HARM_MS_PER_CM = 4;

    /** See {@link #SEEDLING_HARM_MS_PER_CM}. */
    public static final double SEEDLING_DEATH_MS_PER_CM = 8;

    private Osmosis() {}

    /**
     * Osmotic pressure by van 't Hoff's law, Pa (the osmotic potential with its sign turned).
     *
     * @param ionsMolPerM3 sum of all ions, mol/m3
     * @param tempC degC
     */
    public static double pressurePa(double ionsMolPerM3, double tempC) {
        return OSMOTIC_COEFFICIENT * GAS_J_PER_MOL_K * (tempC + 273.15) * ionsMolPerM3;
    }

    /**
     * EC of the solution of that osmotic pressure, mS/cm at 25 degC.
     *
     * @param ionsMolPerM3 sum of all ions, mol/m3
     */
    public static double equivalentMsPerCm(double ionsMolPerM3) {
        return pressurePa(ionsMolPerM3, 25) / PA_PER_MS_PER_CM;
    }

    /**
     * Share of the thirst that salt leaves, 0-1: falls by the crop's share for each mS/cm above its
     * threshold, ever more towards 0 at {@link #NO_UPTAKE_PA} (22 mS/cm).
     *
     * @param thresholdMsPerCm EC up to which nothing is lost, mS/cm
     * @param fallFracPerMsPerCm 0.02 to 0.07, from memory
     * @param ecMsPerCm EC or its equivalent, mS/cm
     */
    public static double waterFrac(
            double thresholdMsPerCm, double fallFracPerMsPerCm, double ecMsPerCm) {
        double above = Math.max(0, ecMsPerCm - thresholdMsPerCm);
        double none = NO_UPTAKE_PA / PA_PER_MS_PER_CM - thresholdMsPerCm;
        double left = none > 0 ? 1 - above / none : above > 0 ? 0 : 1;
        return Math.max(0, Math.min(1 - fallFracPerMsPerCm * above, endFrac(left)));
    }

    // Holds the straight fall until the last fifth, then leads it to 0.
    private static double endFrac(double leftFrac) {
        return leftFrac >= LAST_FRAC ? 1 : Math.max(0, leftFrac / LAST_FRAC);
    }

    private static final double LAST_FRAC = 0.2;

    /**
     * Share of a rise in strength that roots get used to in a span, 0-1: they follow with a time of
     * {@link #USED_TO_DAYS}.
     */
    public static double followedFrac(double spanS) {
        return -Elementary.expm1(-spanS / (USED_TO_DAYS * Time.DAY_S));
    }

    /**
     * Strength the roots are used to after a span in a solution, mS/cm: they follow upwards, and
     * downwards are used to it at once.
     *
     * @param followedFrac {@link #followedFrac} of the span
     */
    public static double usedToMsPerCm(
            double usedToMsPerCm, double ecMsPerCm, double followedFrac) {
        return ecMsPerCm <= usedToMsPerCm
                ? ecMsPerCm
                : usedToMsPerCm + (ecMsPerCm - usedToMsPerCm) * followedFrac;
    }
}
