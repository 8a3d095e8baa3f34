package tideless.solution;

/**
 * Electrical conductivity of a solution of known composition, and what a meter makes of it.
 *
 * <p>Ionic conductivities of McCleskey, Nordstrom, Ryan and Ball (2012), Geochim. Cosmochim. Acta
 * 77, 369, on the free ions at the whole solution's ionic strength, ion pairs from {@link
 * Speciation}. Phosphate and small pairs are not in that set: they take the curve of bicarbonate
 * (of sulfate, where twice charged) scaled to their own limiting conductivity. Errors seen at 10
 * mmol/L: +1 % for chlorides and nitrates of potassium, up to +4 % for magnesium chloride, -5 % for
 * magnesium sulfate alone. Far above feeds (40 to 90 mmol/L of one salt): ammonium chloride +6 %,
 * calcium chloride +5 %, magnesium sulfate -5 to -16 %. Recipes lie 4 to 11 % above their printed,
 * rounded figures, most of which come from a linear rule.
 *
 * <p>1 mS/cm = 1 dS/m = 0.1 S/m.
 */
public final class ElectricalConductivity {
    /** CO2 of outdoor air where none is stated, ppm; common round figure of the 2020s. */
    public static final double AIR_CO2_PPM = 420;

    /** Linear coefficient most meters use, 1/K; from memory (Standard Methods 2510: 0.0191). */
    public static final double METER_ALPHA_PER_K = 0.0191;

    private ElectricalConductivity() {}

    /** EC at 25 degC with the pH that air of 420 ppm CO2 gives it, mS/cm. */
    public static double at25MsPerCm(Composition composition) {
        return msPerCm(composition, 25);
    }

    /**
     * EC at a temperature with the pH that air of 420 ppm CO2 gives it, mS/cm; uncompensated.
     *
     * @param tempC degC, 0 to 50
     */
    public static double msPerCm(Composition composition, double tempC) {
        return Speciation.inAir(composition, tempC, AIR_CO2_PPM).ecMsPerCm();
    }

    /** Labels some meters print in place of EC: parts per million for 1 mS/cm. */
    public enum PpmScale {
        /** Sodium chloride basis, roughly; common practice, no source. */
        PPM_500(500),
        /** Dissolved solids of irrigation waters below 5 mS/cm; irrigation literature. */
        PPM_640(640),
        /** Mixed salts basis; common practice, no source. */
        PPM_700(700);

        private final double ppmPerMsPerCm;

        PpmScale(double ppmPerMsPerCm) {
            this.ppmPerMsPerCm = ppmPerMsPerCm;
        }

        /** ppm on this scale. */
        public double ppm(double ecMsPerCm) {
            return ppmPerMsPerCm * ecMsPerCm;
        }
    }
}
