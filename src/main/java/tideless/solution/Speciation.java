package tideless.solution;

/**
 * A solution at equilibrium: pH, ionic strength and the amount of every form. Immutable.
 *
 * <p>Range: pure water to an ionic strength of about 0.5 mol/kg (Davies activities); beyond it the
 * signs hold and the figures do not. Residuals of mass action, mass and charge balance lie below
 * 1e-10, relative.
 */
final class Speciation {
    /** One standard atmosphere, Pa; exact by definition. */
    public static final double STANDARD_ATMOSPHERE_PA = 101_325;

    private final double tempC;
    private final double ph;
    private final double ionicStrengthMolPerKg;
    private final double chargeMolPerM3;
    private final double ecMsPerCm;
    private final double henryCo2;
    private final double logKspGypsum;
    private final double logKspBrushite;
    private final double worstResidual;
    private final double[] molPerM3 = new double[Species.COUNT];
    private final double[] activity = new double[Species.COUNT];

    Speciation(SpeciationSolver solved, Equilibria k) {
        tempC = k.tempC;
        ph = solved.ph();
        ionicStrengthMolPerKg = solved.ionicStrength();
        chargeMolPerM3 = solved.chargeMolPerKg() * 1e3;
        ecMsPerCm = solved.ecMsPerCm();
        henryCo2 = k.henryCo2;
        logKspGypsum = k.logKspGypsum;
        logKspBrushite = k.logKspBrushite;
        worstResidual = solved.worstResidual();
        for (int i = 0; i < molPerM3.length; i++) {
            molPerM3[i] = solved.molPerKg(i) * 1e3;
            activity[i] = solved.activity(i);
        }
    }

    /**
     * At a pH somebody measured or wishes; carbon as the composition carries it. The charge need
     * not balance: what is missing is {@link #chargeMolPerM3()}.
     *
     * @param tempC degC, 0 to 50
     * @param ph 0 to 14
     */
    public static Speciation atPh(Composition composition, double tempC, double ph) {
        requirePh(ph);
        Equilibria k = Equilibria.at(tempC);
        SpeciationSolver solver = new SpeciationSolver();
        solver.solveAtPh(composition.toArray(), k, ph);
        return new Speciation(solver, k);
    }

    /**
     * At a stated pH and in equilibrium with air; the carbon carried is put aside.
     *
     * @param tempC degC, 0 to 50
     * @param ph 0 to 14
     * @param co2Ppm CO2 in the air, parts per million by volume, at one standard atmosphere
     */
    public static Speciation atPhInAir(
            Composition composition, double tempC, double ph, double co2Ppm) {
        requirePh(ph);
        Equilibria k = Equilibria.at(tempC);
        SpeciationSolver solver = new SpeciationSolver();
        solver.solveAtPhInAir(composition.toArray(), k, ph, co2Ppm * 1e-6);
        return new Speciation(solver, k);
    }

    /**
     * In equilibrium with air; the carbon carried is put aside, pH follows from charge balance.
     *
     * @param tempC degC, 0 to 50
     * @param co2Ppm CO2 in the air, parts per million by volume, at one standard atmosphere
     */
    public static Speciation inAir(Composition composition, double tempC, double co2Ppm) {
        return inAir(composition, tempC, co2Ppm, STANDARD_ATMOSPHERE_PA);
    }

    /**
     * In equilibrium with air of a stated pressure. The share of water vapour in it (up to 4 %) is
     * left out: below 0.02 pH.
     *
     * @param tempC degC, 0 to 50
     * @param co2Ppm CO2 in the air, parts per million by volume
     * @param airPressurePa Pa
     */
    public static Speciation inAir(
            Composition composition, double tempC, double co2Ppm, double airPressurePa) {
        Equilibria k = Equilibria.at(tempC);
        SpeciationSolver solver = new SpeciationSolver();
        solver.solveInAir(
                composition.toArray(), k, co2Ppm * 1e-6 * airPressurePa / STANDARD_ATMOSPHERE_PA);
        return new Speciation(solver, k);
    }

    /**
     * No gas leaves or enters: carbon as carried, pH from charge balance.
     *
     * @param tempC degC, 0 to 50
     */
    public static Speciation closed(Composition composition, double tempC) {
        Equilibria k = Equilibria.at(tempC);
        SpeciationSolver solver = new SpeciationSolver();
        solver.solveClosed(composition.toArray(), k);
        return new Speciation(solver, k);
    }

    private static void requirePh(double ph) {
        if (!(ph >= 0 && ph <= 14)) {
            throw new IllegalArgumentException("ph must lie in 0 to 14, was " + ph);
        }
    }

    /** degC. */
    public double tempC() {
        return tempC;
    }

    /** -log10 of the activity of H+, molal scale. */
    public double ph() {
        return ph;
    }

    /** Ionic strength with the ion pairs taken out, mol/kg. */
    public double ionicStrengthMolPerKg() {
        return ionicStrengthMolPerKg;
    }

    /** Amount of one form, mol/m3. */
    public double molPerM3(Species species) {
        return molPerM3[species.ordinal()];
    }

    /** Activity of one form, molal scale. */
    public double activity(Species species) {
        return activity[species.ordinal()];
    }

    /** Inorganic carbon in all its forms, mol/m3. */
    public double carbonMolPerM3() {
        double sum = 0;
        for (int i = 0; i < molPerM3.length; i++) {
            if (Species.at(i).ligand() == Species.Ligand.CARBONATE) {
                sum += molPerM3[i];
            }
        }
        return sum;
    }

    /**
     * Positive less negative charge, mol/m3: 0 where pH follows from it; at a given pH the strong
     * acid (if above 0) or strong base (below 0) that is missing.
     */
    public double chargeMolPerM3() {
        return chargeMolPerM3;
    }

    /** Pressure of CO2 this solution would be in equilibrium with, atm. */
    public double co2PressureAtm() {
        return activity(Species.CO2) / henryCo2;
    }

    /** Electrical conductivity at this temperature, mS/cm: see {@link ElectricalConductivity}. */
    public double ecMsPerCm() {
        return ecMsPerCm;
    }

    /** Largest relative residual the solve ended with. */
    public double worstResidual() {
        return worstResidual;
    }

    double logKspGypsum() {
        return logKspGypsum;
    }

    double logKspBrushite() {
        return logKspBrushite;
    }
}
