package tideless.solution;

import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Elementary;

/**
 * Finds the forms of every component, the pH and the ionic strength. Scratch space of one thread:
 * an instance keeps its arrays and its last solution, which the next solve may start from.
 *
 * <p>Unknowns are logarithms (activities of SO4-2, HPO4-2, HCO3- and H+, and the ionic strength),
 * so nothing can turn negative. The cations are eliminated: with at most one cation and one pairing
 * anion in each form, the free cation follows in closed form. What remains is a Newton iteration in
 * five unknowns with an exact Jacobian, steps limited in length. Should it fail, nested bracketed
 * roots take over (ionic strength inside pH), slower and sure.
 *
 * <p>Activities: Davies, log10 g = -A z^2 (sqrt I/(1 + sqrt I) - 0.3 I), log10 g = 0.1 I for
 * neutral forms; good to I about 0.5 mol/kg, stretched beyond. A mol/m3 is taken as 1e-3 mol/kg
 * (0.3 % at 25 degC).
 */
final class SpeciationSolver {
    /** Residual asked for: relative, of mass balances, charge balance and ionic strength. */
    static final double TOLERANCE = 2e-13;

    /** Above this residual a new slope pays; found by trial, it only guides the way. */
    private static final double OLD_SLOPE_FROM = 0.05;

    /** An old slope has to shrink the residual at least this far in a step; found by trial. */
    private static final double OLD_SLOPE_GAIN = 0.1;

    private static final int UNKNOWNS = 5;
    private static final int S = 0;
    private static final int P = 1;
    private static final int C = 2;
    private static final int HH = 3;
    private static final int Y = 4;
    private static final int SPECIES = Species.COUNT;
    private static final int CATIONS = Species.Cation.COUNT;
    private static final int MAX_NEWTON = 60;

    /** Amounts below this, mol/kg, count as none: far below one ion in a reservoir. */
    private static final double NOTHING = 1e-30;

    private static final int[] CHARGE = new int[SPECIES];
    private static final int[] CATION = new int[SPECIES];
    private static final int[] LIGAND = new int[SPECIES];
    private static final int[] PROTONS = new int[SPECIES];
    private static final int[] POWER = new int[SPECIES]; // place of the protons' power
    private static final int[] SIZE_OF_CHARGE = new int[SPECIES];
    private static final double[] SQUARE_OF_CHARGE = new double[SPECIES];
    private static final double[] PLUS = new double[SPECIES]; // charges of a cation, else 0
    private static final double[] MINUS = new double[SPECIES];
    private static final int NO3 = Species.NO3.ordinal();
    private static final int CL = Species.CL.ordinal();

    /** Forms of each cation, those of none first; nitrate and chloride pair with nothing. */
    private static final int[][] FORMS_OF = new int[CATIONS][];

    static {
        for (int i = 0; i < SPECIES; i++) {
            Species species = Species.at(i);
            CHARGE[i] = species.charge();
            CATION[i] = species.cation().ordinal();
            LIGAND[i] = species.ligand().ordinal();
            PROTONS[i] = species.protons();
            POWER[i] = PROTONS[i] + 1;
            SIZE_OF_CHARGE[i] = Math.abs(CHARGE[i]);
            SQUARE_OF_CHARGE[i] = CHARGE[i] * CHARGE[i];
            PLUS[i] = Math.max(0, CHARGE[i]);
            MINUS[i] = Math.max(0, -CHARGE[i]);
        }
        for (int m = 0; m < CATIONS; m++) {
            int cation = m;
            FORMS_OF[m] =
                    IntStream.range(0, SPECIES)
                            .filter(i -> CATION[i] == cation && i != NO3 && i != CL)
                            .toArray();
        }
    }

    private Equilibria k = Equilibria.AT_25;

    // Totals, mol/kg.
    private final double[] cationTotal = new double[CATIONS];
    private final double[] ligandTotal = new double[4];
    private double nitrate;
    private double chloride;

    // How the problem is posed.
    private boolean phFixed;
    private boolean open;
    private double lnHco3TimesH; // open: ln(a HCO3- * a H+)

    private final double[] u = new double[UNKNOWNS];
    private boolean started;
    private final boolean[] active = new boolean[UNKNOWNS];

    // Evaluation.
    private final double[] c = new double[SPECIES];
    private final double[] inverseGamma = new double[4];
    private final double[] dLnGamma = new double[4];
    private final double[] ligandActivity = {1, 0, 0, 0};
    private final double[] protonPower = new double[4]; // a H+ to the power -1, 0, 1, 2
    private final double[][] cationMean = new double[CATIONS][UNKNOWNS];
    private final double[] f = new double[UNKNOWNS];
    private final double[][] jacobian = new double[UNKNOWNS][UNKNOWNS];
    private final double[][] cationWeight = new double[CATIONS][UNKNOWNS];
    private final double[] cationNegative = new double[CATIONS];
    private final double[] negativeRow = new double[UNKNOWNS];
    private final double[] strengthRow = new double[UNKNOWNS];
    private final double[] ligandSum = new double[4];
    private double strengthTried; // mol/kg
    private double positive;
    private double negative;
    private double twiceStrength;

    // The last factorised Jacobian, kept for the next solve: from hour to hour it hardly changes.
    private final int[] pivot = new int[UNKNOWNS];
    private boolean factorised;
    private double tolerance;

    SpeciationSolver() {
        this(TOLERANCE);
    }

    /**
     * @param tolerance relative residual to stop at, at least {@link #TOLERANCE}
     */
    SpeciationSolver(double tolerance) {
        this.tolerance = tolerance;
    }

    /** Solves from now on to another relative residual, at least {@link #TOLERANCE}. */
    void stopAt(double residual) {
        tolerance = residual;
    }

    /** pH given; carbon as carried. The charge need not balance: see {@link #chargeMolPerKg}. */
    void solveAtPh(double[] molPerM3, Equilibria equilibria, double ph) {
        pose(molPerM3, equilibria);
        phFixed = true;
        open = false;
        u[HH] = -ph * Equilibria.LN10;
        run();
    }

    /** pH given; carbon from air. */
    void solveAtPhInAir(double[] molPerM3, Equilibria equilibria, double ph, double co2Atm) {
        pose(molPerM3, equilibria);
        phFixed = true;
        openTo(co2Atm);
        u[HH] = -ph * Equilibria.LN10;
        run();
    }

    /** pH from charge balance; carbon from air. */
    void solveInAir(double[] molPerM3, Equilibria equilibria, double co2Atm) {
        pose(molPerM3, equilibria);
        phFixed = false;
        openTo(co2Atm);
        run();
    }

    /** pH from charge balance; carbon as carried. */
    void solveClosed(double[] molPerM3, Equilibria equilibria) {
        pose(molPerM3, equilibria);
        phFixed = false;
        open = false;
        run();
    }

    private void pose(double[] molPerM3, Equilibria equilibria) {
        k = equilibria;
        for (int i = 0; i < molPerM3.length; i++) {
            if (!(molPerM3[i] >= 0 && molPerM3[i] < 1e5)) {
                throw new IllegalArgumentException(
                        Component.at(i).title()
                                + " must lie in 0 to 100000 mol/m3, was "
                                + molPerM3[i]);
            }
        }
        cationTotal[Species.Cation.CALCIUM.ordinal()] = molPerM3[Component.CA.ordinal()] * 1e-3;
        cationTotal[Species.Cation.MAGNESIUM.ordinal()] = molPerM3[Component.MG.ordinal()] * 1e-3;
        cationTotal[Species.Cation.POTASSIUM.ordinal()] = molPerM3[Component.K.ordinal()] * 1e-3;
        cationTotal[Species.Cation.SODIUM.ordinal()] = molPerM3[Component.NA.ordinal()] * 1e-3;
        cationTotal[Species.Cation.AMMONIUM.ordinal()] = molPerM3[Component.NH4.ordinal()] * 1e-3;
        ligandTotal[1 + S] = molPerM3[Component.SO4.ordinal()] * 1e-3;
        ligandTotal[1 + P] = molPerM3[Component.P.ordinal()] * 1e-3;
        ligandTotal[1 + C] = molPerM3[Component.C.ordinal()] * 1e-3;
        nitrate = molPerM3[Component.NO3.ordinal()] * 1e-3;
        chloride = molPerM3[Component.CL.ordinal()] * 1e-3;
    }

    private void openTo(double co2Atm) {
        if (!(co2Atm >= 0 && co2Atm <= 1)) {
            throw new IllegalArgumentException(
                    "pressure of CO2 must lie in 0 to 1 atm, was " + co2Atm);
        }
        open = co2Atm > NOTHING;
        if (open) {
            lnHco3TimesH = Elementary.log(k.carbonic1 * k.henryCo2 * co2Atm);
        }
        ligandTotal[1 + C] = 0;
    }

    private void run() {
        boolean warm = started;
        for (int j = S; j <= C; j++) {
            boolean wanted = ligandTotal[1 + j] > NOTHING;
            // What was absent last time has no value to start from.
            warm &= active[j] == wanted;
            active[j] = wanted;
        }
        factorised &= warm && active[HH] == !phFixed;
        active[HH] = !phFixed;
        active[Y] = true;
        started = false;
        if (warm && newton()) {
            started = true;
            return;
        }
        factorised = false;
        coldStart();
        if (!newton()) {
            nested();
        }
        started = true;
    }

    private void coldStart() {
        double sum = nitrate + chloride + 4 * ligandTotal[1 + S] + ligandTotal[1 + P];
        double alkalinity = -nitrate - chloride - 2 * ligandTotal[1 + S] - ligandTotal[1 + P];
        for (int m = 1; m < CATIONS; m++) {
            int z = m <= 2 ? 2 : 1;
            sum += z * z * cationTotal[m];
            alkalinity += z * cationTotal[m];
        }
        double start = Math.max(0.5 * sum, 1e-7);
        u[Y] = Elementary.log(start);
        if (!phFixed) {
            double ph;
            if (alkalinity < -1e-6) {
                ph = -FastMath.log10(-alkalinity);
            } else if (alkalinity <= 1e-6) {
                ph = 6;
            } else if (open) {
                ph = -(lnHco3TimesH - Elementary.log(alkalinity)) / Equilibria.LN10;
            } else {
                ph = ligandTotal[1 + C] > alkalinity || ligandTotal[1 + P] > alkalinity ? 7 : 9;
            }
            u[HH] = -Math.max(0, Math.min(13, ph)) * Equilibria.LN10;
        }
        for (int j = S; j <= C; j++) {
            u[j] = active[j] ? Elementary.log(ligandTotal[1 + j]) : 0;
        }
        // One pass of balances puts the protonated ones near their place.
        evaluate();
        for (int j = S; j <= C; j++) {
            if (active[j]) {
                u[j] -= Elementary.log(ligandSum[1 + j] / ligandTotal[1 + j]);
            }
        }
    }

    /** Forms from the unknowns. */
    private void evaluate() {
        strengthTried = Elementary.exp(u[Y]);
        double root = Math.sqrt(strengthTried);
        double base = k.debyeHuckelA * Equilibria.LN10;
        double lnGamma1 = -base * (root / (1 + root) - 0.3 * strengthTried);
        double dLnGamma1 = -base * (0.5 * root / ((1 + root) * (1 + root)) - 0.3 * strengthTried);
        double g1 = Elementary.exp(-lnGamma1);
        double g4 = g1 * g1 * g1 * g1;
        inverseGamma[0] = Elementary.exp(-0.1 * Equilibria.LN10 * strengthTried);
        inverseGamma[1] = g1;
        inverseGamma[2] = g4;
        inverseGamma[3] = g4 * g4 * g1;
        dLnGamma[0] = 0.1 * Equilibria.LN10 * strengthTried;
        dLnGamma[1] = dLnGamma1;
        dLnGamma[2] = 4 * dLnGamma1;
        dLnGamma[3] = 9 * dLnGamma1;
        double h = Elementary.exp(u[HH]);
        protonPower[0] = 1 / h;
        protonPower[1] = 1;
        protonPower[2] = h;
        protonPower[3] = h * h;
        if (open) {
            u[C] = lnHco3TimesH - u[HH];
        }
        for (int j = S; j <= C; j++) {
            ligandActivity[1 + j] = active[j] || (open && j == C) ? Elementary.exp(u[j]) : 0;
        }
        c[NO3] = nitrate;
        c[CL] = chloride;
        positive = 0;
        negative = nitrate + chloride;
        twiceStrength = nitrate + chloride;
        ligandSum[1] = 0;
        ligandSum[2] = 0;
        ligandSum[3] = 0;
        for (int m = 0; m < CATIONS; m++) {
            share(FORMS_OF[m], m == 0 ? Double.NaN : cationTotal[m]);
        }
    }

    /**
     * Amounts of all forms of one cation.
     *
     * @param total of it, mol/kg; NaN for the forms without any, whose activities say how much
     */
    private void share(int[] forms, double total) {
        if (total == 0) {
            for (int i : forms) {
                c[i] = 0;
            }
            return;
        }
        double[] formation = k.formation;
        double sum = 0;
        for (int i : forms) {
            double term =
                    formation[i]
                            * ligandActivity[LIGAND[i]]
                            * protonPower[POWER[i]]
                            * inverseGamma[SIZE_OF_CHARGE[i]];
            c[i] = term;
            sum += term;
        }
        double ratio = total > 0 ? total / sum : 1;
        double plus = 0;
        double minus = 0;
        double strengths = 0;
        for (int i : forms) {
            double amount = c[i] * ratio;
            c[i] = amount;
            plus += PLUS[i] * amount;
            minus += MINUS[i] * amount;
            strengths += SQUARE_OF_CHARGE[i] * amount;
            ligandSum[LIGAND[i]] += amount;
        }
        positive += plus;
        negative += minus;
        twiceStrength += strengths;
    }

    /** Residuals, all relative. */
    private double residuals() {
        double worst = 0;
        for (int j = S; j <= C; j++) {
            f[j] = active[j] ? Elementary.log(ligandSum[1 + j] / ligandTotal[1 + j]) : 0;
            worst = Math.max(worst, Math.abs(f[j]));
        }
        f[HH] = phFixed ? 0 : Elementary.log(positive / negative);
        f[Y] = -Elementary.log(0.5 * twiceStrength / strengthTried);
        return Math.max(worst, Math.max(Math.abs(f[HH]), Math.abs(f[Y])));
    }

    /**
     * Derivatives of the residuals by the unknowns.
     *
     * <p>ln of a form moves with its ligand (1), with H+ (its protons; in air one less for
     * carbonates, whose HCO3- falls as H+ rises) and with ln I (its activity coefficient), less the
     * mean of the same over all forms that share its cation, for their sum is fixed. The mean part
     * is gathered by cation, so each form costs three additions a row.
     */
    private void fillJacobian() {
        for (int r = 0; r < UNKNOWNS; r++) {
            negativeRow[r] = 0;
            strengthRow[r] = 0;
            for (int j = 0; j < UNKNOWNS; j++) {
                jacobian[r][j] = 0;
            }
        }
        for (int m = 1; m < CATIONS; m++) {
            for (int j = 0; j < UNKNOWNS; j++) {
                cationMean[m][j] = 0;
                cationWeight[m][j] = 0;
            }
            cationNegative[m] = 0;
        }
        double[] positiveRow = jacobian[HH];
        int carbonate = 1 + C;
        for (int i = 0; i < SPECIES; i++) {
            double amount = c[i];
            if (amount == 0) {
                continue;
            }
            int m = CATION[i];
            int z = CHARGE[i];
            int ligand = LIGAND[i];
            double byH = open && ligand == carbonate ? PROTONS[i] - 1 : PROTONS[i];
            double byY = i == NO3 || i == CL ? 0 : -dLnGamma[Math.abs(z)];
            double charge = Math.abs(z) * amount;
            double strength = z * z * amount;
            double[] chargeRow = z > 0 ? positiveRow : negativeRow;
            chargeRow[HH] += charge * byH;
            chargeRow[Y] += charge * byY;
            strengthRow[HH] += strength * byH;
            strengthRow[Y] += strength * byY;
            if (ligand != 0) {
                int l = ligand - 1;
                double[] row = jacobian[l];
                row[l] += amount;
                row[HH] += amount * byH;
                row[Y] += amount * byY;
                chargeRow[l] += charge;
                strengthRow[l] += strength;
            }
            if (m != 0) {
                double share = amount / cationTotal[m];
                double[] mean = cationMean[m];
                mean[HH] += share * byH;
                mean[Y] += share * byY;
                double[] weight = cationWeight[m];
                if (ligand != 0) {
                    mean[ligand - 1] += share;
                    weight[ligand - 1] += amount;
                }
                if (z > 0) {
                    weight[HH] += charge;
                } else {
                    cationNegative[m] += charge;
                }
                weight[Y] += strength;
            }
        }
        for (int m = 1; m < CATIONS; m++) {
            double[] weight = cationWeight[m];
            for (int j = 0; j < UNKNOWNS; j++) {
                double mean = cationMean[m][j];
                jacobian[S][j] -= weight[S] * mean;
                jacobian[P][j] -= weight[P] * mean;
                jacobian[C][j] -= weight[C] * mean;
                positiveRow[j] -= weight[HH] * mean;
                negativeRow[j] -= cationNegative[m] * mean;
                strengthRow[j] -= weight[Y] * mean;
            }
        }
        for (int j = 0; j < UNKNOWNS; j++) {
            for (int r = S; r <= C; r++) {
                jacobian[r][j] = active[r] ? jacobian[r][j] / ligandSum[1 + r] : 0;
            }
            jacobian[HH][j] = phFixed ? 0 : positiveRow[j] / positive - negativeRow[j] / negative;
            jacobian[Y][j] = -strengthRow[j] / twiceStrength;
        }
        jacobian[Y][Y] += 1;
        for (int r = 0; r < UNKNOWNS; r++) {
            if (!active[r]) {
                for (int j = 0; j < UNKNOWNS; j++) {
                    jacobian[r][j] = 0;
                    jacobian[j][r] = 0;
                }
                jacobian[r][r] = 1;
                f[r] = 0;
            }
        }
    }

    private boolean newton() {
        double before = Double.POSITIVE_INFINITY;
        for (int n = 0; n < MAX_NEWTON; n++) {
            evaluate();
            double worst = residuals();
            if (!(worst < Double.POSITIVE_INFINITY)) {
                return false;
            }
            // Rounding may hold the last digits back: no use in going on when it stops falling.
            if (worst < tolerance || (worst < 1e-11 && worst >= before)) {
                return true;
            }
            if (!factorised || worst > OLD_SLOPE_FROM || worst > OLD_SLOPE_GAIN * before) {
                fillJacobian();
                factorised = factorise();
                if (!factorised) {
                    return false;
                }
            }
            before = worst;
            solveLinear();
            for (int j = 0; j < UNKNOWNS; j++) {
                if (active[j]) {
                    // Limits on a step, in e-foldings; found by trial, they only guide the way.
                    double limit = j == HH ? 4 : 2;
                    u[j] -= Math.max(-limit, Math.min(limit, f[j]));
                }
            }
            // Keeps the exponentials finite on the way; far outside any answer.
            u[Y] = Math.max(-20, Math.min(5, u[Y]));
            u[HH] = Math.max(-40, Math.min(6, u[HH]));
        }
        return false;
    }

    /** Gauss with partial pivoting, in place: upper triangle above the multipliers. */
    private boolean factorise() {
        for (int p = 0; p < UNKNOWNS; p++) {
            int best = p;
            for (int r = p + 1; r < UNKNOWNS; r++) {
                if (Math.abs(jacobian[r][p]) > Math.abs(jacobian[best][p])) {
                    best = r;
                }
            }
            double[] row = jacobian[best];
            if (!(Math.abs(row[p]) > 1e-300)) {
                return false;
            }
            pivot[p] = best;
            jacobian[best] = jacobian[p];
            jacobian[p] = row;
            for (int r = p + 1; r < UNKNOWNS; r++) {
                double factor = jacobian[r][p] / row[p];
                jacobian[r][p] = factor;
                if (factor != 0) {
                    for (int j = p + 1; j < UNKNOWNS; j++) {
                        jacobian[r][j] -= factor * row[j];
                    }
                }
            }
        }
        return true;
    }

    /** Solves with the factorised Jacobian; the solution replaces f. */
    private void solveLinear() {
        // All exchanges first: the multipliers were exchanged along with their rows.
        for (int p = 0; p < UNKNOWNS; p++) {
            double swap = f[p];
            f[p] = f[pivot[p]];
            f[pivot[p]] = swap;
        }
        for (int p = 0; p < UNKNOWNS; p++) {
            for (int r = p + 1; r < UNKNOWNS; r++) {
                f[r] -= jacobian[r][p] * f[p];
            }
        }
        for (int p = UNKNOWNS - 1; p >= 0; p--) {
            double sum = f[p];
            for (int j = p + 1; j < UNKNOWNS; j++) {
                sum -= jacobian[p][j] * f[j];
            }
            f[p] = sum / jacobian[p][p];
        }
    }

    /** Bracketed roots, one inside the other; for the cases Newton does not settle. */
    void nested() {
        if (phFixed) {
            strengthAtPh();
        } else {
            double root =
                    new BrentSolver(1e-15, 1e-14)
                            .solve(
                                    200,
                                    h -> {
                                        u[HH] = h;
                                        strengthAtPh();
                                        return Elementary.log(positive / negative);
                                    },
                                    -16 * Equilibria.LN10,
                                    2 * Equilibria.LN10);
            u[HH] = root;
            strengthAtPh();
        }
        double worst = residuals();
        if (!(worst < 1e-9)) {
            throw new ArithmeticException(
                    "no equilibrium found: residual %s at pH %s, ionic strength %s mol/kg"
                            .formatted(worst, ph(), ionicStrength()));
        }
    }

    private void strengthAtPh() {
        u[Y] =
                new BrentSolver(1e-15, 1e-14)
                        .solve(
                                200,
                                y -> {
                                    u[Y] = y;
                                    balanceLigands();
                                    return y - Elementary.log(0.5 * twiceStrength);
                                },
                                -20,
                                5);
        balanceLigands();
    }

    /** Free ligands at given pH and strength: every pass moves each by its own balance. */
    private void balanceLigands() {
        for (int j = S; j <= C; j++) {
            if (active[j]) {
                u[j] = Elementary.log(ligandTotal[1 + j]);
            }
        }
        for (int n = 0; n < 10_000; n++) {
            evaluate();
            double worst = 0;
            for (int j = S; j <= C; j++) {
                if (active[j]) {
                    double off = Elementary.log(ligandSum[1 + j] / ligandTotal[1 + j]);
                    u[j] -= off;
                    worst = Math.max(worst, Math.abs(off));
                }
            }
            if (worst < 1e-14) {
                break;
            }
        }
        evaluate();
    }

    double ph() {
        return -u[HH] / Equilibria.LN10;
    }

    /** mol/kg. */
    double ionicStrength() {
        return 0.5 * twiceStrength;
    }

    /** Amount of one form, mol/kg. */
    double molPerKg(int species) {
        return c[species];
    }

    /** Activity of one form, molal scale. */
    double activity(int species) {
        return c[species] / inverseGamma[Math.abs(CHARGE[species])];
    }

    /** Positive less negative charge, mol/kg. */
    double chargeMolPerKg() {
        return positive - negative;
    }

    /** Inorganic carbon in all forms, mol/kg. */
    double carbonMolPerKg() {
        return ligandSum[1 + C];
    }

    /** Largest relative residual of the last solve. */
    double worstResidual() {
        return residuals();
    }

    /** Electrical conductivity at the temperature of the solve, mS/cm. */
    double ecMsPerCm() {
        double root = Math.sqrt(ionicStrength());
        double sum = 0;
        for (int i = 0; i < SPECIES; i++) {
            double lambda0 = k.lambda0[i];
            if (lambda0 > 0) {
                double lambda = lambda0 - k.lambdaA[i] * root / (1 + k.lambdaB[i] * root);
                // Far above the range of the fit (1 mol/kg) a row can cross 0.
                sum += Math.max(0, lambda) * c[i];
            }
        }
        return sum;
    }
}
