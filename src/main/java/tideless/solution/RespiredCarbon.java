package tideless.solution;

/** Carbon dioxide that roots leave in a still solution, from the oxygen they have taken. */
public final class RespiredCarbon {
    /** Molar mass of O2, g/mol; IUPAC abridged values, from memory. */
    static final double OXYGEN_G_PER_MOL = 32.0;

    /**
     * Carbon dioxide given off per oxygen taken by roots, mol/mol: 1.0 to 1.2 on nitrate, 1.0 on
     * ammonium; from memory.
     */
    static final double RESPIRATORY_QUOTIENT = 1.1;

    /**
     * Transfer velocity of CO2 over that of oxygen: Schmidt numbers 600 and 530, to the power 2/3.
     */
    static final double CO2_TO_OXYGEN_VELOCITY = 0.92;

    private RespiredCarbon() {}

    /**
     * Carbon dioxide with which a solution is at rest while roots breathe in it. What they leave
     * has to go the way the oxygen came, so its excess follows from the oxygen deficit, whatever
     * the transfer velocity and the mass of roots: (1.1 / 0.92) (S - C) / 32 mol/m3.
     *
     * @param airPpm CO2 of the air below the deck, parts per million by volume at one standard
     *     atmosphere
     * @param oxygenSaturationGPerM3 S, oxygen at rest with that air, g/m3
     * @param oxygenGPerM3 C, dissolved oxygen, g/m3; above S counts as S
     * @param tempC of the solution, degC; outside 0 to 50 counts as the bound
     * @return parts per million by volume at one standard atmosphere
     */
    public static double ppm(
            double airPpm, double oxygenSaturationGPerM3, double oxygenGPerM3, double tempC) {
        double henry = Equilibria.henryCo2MolPerKgAtm(Math.max(0, Math.min(50, tempC)));
        double excessMolPerM3 = excessMolPerM3(oxygenSaturationGPerM3, oxygenGPerM3);
        return airPpm + 1e6 * excessMolPerM3 / (1e3 * henry);
    }

    /** The excess by itself, mol/m3. */
    public static double excessMolPerM3(double oxygenSaturationGPerM3, double oxygenGPerM3) {
        double deficitGPerM3 = Math.max(0, oxygenSaturationGPerM3 - oxygenGPerM3);
        return RESPIRATORY_QUOTIENT / CO2_TO_OXYGEN_VELOCITY * deficitGPerM3 / OXYGEN_G_PER_MOL;
    }

    /** Dissolved carbon dioxide of water at rest with so many ppm, mol/m3, at 25 degC: 0.034 M. */
    public static double roughlyMolPerM3(double ppm) {
        return 34e-6 * ppm;
    }
}
