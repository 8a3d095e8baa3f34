package tideless.solution;

/**
 * EC at 25 degC, as a compensated meter shows it, and pH from bare amounts, many times over.
 *
 * <p>An instance is scratch space of one thread: it holds the arrays of the solve and starts each
 * reading from the last one. It allocates nothing while reading. The last digits (1e-10 of the
 * charges: up to some 1e-6 of pH in a strong solution that buffers little) of a reading depend on
 * the reading before it; where bytes must repeat, read in the same order.
 */
public final class Meter {
    /**
     * Amounts in all, mol/m3, beyond which a drying puddle reads as this brine: no activity
     * equation holds there, salts crystallise, and every meter is off its scale. Assumed.
     */
    private static final double BRINE_MOL_PER_M3 = 4000;

    /** Relative residual a reading is solved to: far below a meter's last digit. */
    private static final double READING = 1e-10;

    /**
     * The same where EC alone is asked for. Where little buffers, the acid may be a thousand times
     * as far off, and its own share of EC is a thousandth: EC is good to 1e-5 of itself.
     */
    private static final double READING_OF_EC = 1e-6;

    private final SpeciationSolver solver = new SpeciationSolver(READING);
    private double co2Atm;
    private final double[] brine = new double[Component.COUNT];
    private double ecMsPerCm = Double.NaN;
    private double ph = Double.NaN;

    /**
     * Of a solution of 25 degC.
     *
     * @param co2Ppm CO2 in the air, parts per million by volume at one standard atmosphere
     */
    public Meter(double co2Ppm) {
        dipInto(25, co2Ppm);
    }

    /**
     * Carries on in a solution of another temperature, under other air. Of what makes its pH the
     * carbon dioxide it holds and its first dissociation are taken at that temperature, all else at
     * 25 degC: within 0.025 of the whole chemistry from 10 to 32 degC.
     *
     * @param co2Ppm as of {@link #Meter}
     * @param solutionC degC; outside 0 to 50 counts as the bound
     */
    public void dipInto(double solutionC, double co2Ppm) {
        if (!(co2Ppm >= 0 && co2Ppm <= 1e6)) {
            throw new IllegalArgumentException("co2Ppm must lie in 0 to 1e6, was " + co2Ppm);
        }
        double in = Math.max(0, Math.min(50, solutionC));
        co2Atm = 1e-6 * co2Ppm * (Equilibria.carbonicInAir(in) / CARBONIC_IN_AIR_AT_25);
    }

    private static final double CARBONIC_IN_AIR_AT_25 = Equilibria.carbonicInAir(25);

    /**
     * EC of one solution alone, in fewer rounds; what {@link #ph()} says then may be off by 1e-2.
     *
     * @param molPerM3 as of {@link #read}
     * @return at 25 degC, mS/cm, to 1e-5 of itself
     */
    public double readEcMsPerCm(double[] molPerM3) {
        solver.stopAt(READING_OF_EC);
        read(molPerM3);
        solver.stopAt(READING);
        return ecMsPerCm;
    }

    /**
     * Reads one solution.
     *
     * @param molPerM3 in the order of {@link Component}; carbon is put aside, for air decides it
     */
    public void read(double[] molPerM3) {
        double sum = 0;
        for (int i = 0; i < molPerM3.length; i++) {
            sum += molPerM3[i];
        }
        double[] solution = molPerM3;
        if (sum > BRINE_MOL_PER_M3) {
            for (int i = 0; i < brine.length; i++) {
                brine[i] = molPerM3[i] * BRINE_MOL_PER_M3 / sum;
            }
            solution = brine;
        }
        solver.solveInAir(solution, Equilibria.AT_25, co2Atm);
        ecMsPerCm = solver.ecMsPerCm();
        ph = solver.ph();
    }

    /** EC of the last reading at 25 degC, mS/cm; NaN before the first. */
    public double ecMsPerCm() {
        return ecMsPerCm;
    }

    /** pH of the last reading; NaN before the first. */
    public double ph() {
        return ph;
    }

    /** Ionic strength of the last reading, mol/kg. */
    public double ionicStrengthMolPerKg() {
        return solver.ionicStrength();
    }
}
