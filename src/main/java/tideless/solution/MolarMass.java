package tideless.solution;

/**
 * Molar masses, g/mol, stated once: standard atomic weights (IUPAC, abridged values, from memory)
 * and what labels, laboratories and recipes state that is made of them.
 */
public final class MolarMass {
    static final double H = 1.008;
    static final double C = 12.011;

    /** Nitrogen, as which laboratories and labels state nitrate and ammonium. */
    public static final double N = 14.007;

    static final double O = 15.999;
    static final double NA = 22.98977;
    static final double MG = 24.305;

    /** Phosphorus. */
    public static final double P = 30.973762;

    /** Sulfur, as which laboratories and labels state sulfate. */
    public static final double S = 32.06;

    static final double CL = 35.453;
    static final double K = 39.0983;
    static final double CA = 40.078;

    static final double NO3 = N + 3 * O;
    static final double NH4 = N + 4 * H;

    /** Phosphate, PO4. */
    public static final double PO4 = P + 4 * O;

    static final double SO4 = S + 4 * O;

    /** Bicarbonate, HCO3. */
    public static final double HCO3 = H + C + 3 * O;

    /** Lime, CaCO3, as which hardness and alkalinity are stated. */
    public static final double CACO3 = CA + C + 3 * O;

    static final double CAO = CA + O;
    static final double MGO = MG + O;
    static final double K2O = 2 * K + O;
    static final double P2O5 = 2 * P + 5 * O;
    static final double SO3 = S + 3 * O;

    private MolarMass() {}
}
