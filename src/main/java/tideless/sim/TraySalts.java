package tideless.sim;

import java.util.Arrays;
import tideless.crop.NitrogenUptake;
import tideless.crop.Osmosis;
import tideless.physics.Elementary;
import tideless.solution.Brine;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.QuickPh;

/**
 * What is dissolved in a tray, what comes into it and leaves it, and the account of both. Scratch
 * space of one run.
 */
final class TraySalts {
    private static final int NO3 = Component.NO3.ordinal();
    private static final int NH4 = Component.NH4.ordinal();
    private static final int CL = Component.CL.ordinal(); // the last of the ions

    private static final int K = Component.K.ordinal();
    private static final int P = Component.P.ordinal();

    /** What acid keeps out beside ammonium. */
    private static final boolean[] CATION = new boolean[Component.COUNT];

    static {
        CATION[Component.K.ordinal()] = true;
        CATION[Component.CA.ordinal()] = true;
        CATION[Component.MG.ordinal()] = true;
    }

    /** Of each component in nearly neutral solution, phosphate as H2PO4-. */
    private static final double[] CHARGE = charges();

    /**
     * Free acid beyond which roots take no potassium, calcium and magnesium without anions, mol/m3:
     * pH 4.6. Plants fed with ammonium hold less of these (common knowledge); below pH 4 they leak
     * out of roots (Arnon, Fratzke and Johnson 1942, from memory). A quarter to three quarters of
     * ammonium held tomato's solution at 4.5 where ammonium alone brought it to 3 (abstract, 2021).
     */
    private static final double ACID_BORNE_MOL_PER_M3 = 0.025;

    /** Depth below which a film may come to its solubility, m; assumed. */
    private static final double DRIES_BELOW_M = 5e-3;

    private NutrientDemand demand = NutrientDemand.withTheWater();

    /** Dissolved, mol. */
    final double[] mol = new double[Component.COUNT];

    /** Dried on the floor, mol: it dissolves again as soon as there is water for it. */
    final double[] driedMol = new double[Component.COUNT];

    private boolean anyDried;

    /** Come in during the step and not yet among {@link #mol}. */
    final double[] stepInMol = new double[Component.COUNT];

    private final double[] stepUptakeMol = new double[Component.COUNT];

    // Since the start of the run.
    final double[] uptakeMol = new double[Component.COUNT];
    final double[] inflowMol = new double[Component.COUNT];
    final double[] setByReadingMol = new double[Component.COUNT];
    final double[] toppedUpMol = new double[Component.COUNT];
    final double[] freshMol = new double[Component.COUNT];
    final double[] drainedMol = new double[Component.COUNT];
    final double[] spiltMol = new double[Component.COUNT];

    TraySalts(double startM3, Composition start) {
        for (int i = 0; i < mol.length; i++) {
            mol[i] = startM3 * start.molPerM3(i);
        }
    }

    /** From now on the plants of the tray ask for that. */
    void feed(NutrientDemand other) {
        demand = other;
    }

    private static double[] charges() {
        double[] charge = new double[Component.COUNT];
        for (int i = 0; i < charge.length; i++) {
            charge[i] = Component.at(i).fixedCharge();
        }
        charge[Component.P.ordinal()] = -1;
        return charge;
    }

    /** Of one component, all that came into the tray since the start, mol. */
    double broughtMol(int i) {
        return inflowMol[i] + toppedUpMol[i] + freshMol[i] + setByReadingMol[i];
    }

    /** Of one component, all that left the tray since the start, but for what plants took, mol. */
    double lostMol(int i) {
        return spiltMol[i] + drainedMol[i] + driedMol[i];
    }

    /** A fresh array: for once a day, not for a step. */
    double[] concentrations(double volumeM3) {
        double[] molPerM3 = new double[mol.length];
        for (int i = 0; i < mol.length; i++) {
            molPerM3[i] = mol[i] / volumeM3;
        }
        return molPerM3;
    }

    void begin() {
        Arrays.fill(stepInMol, 0);
    }

    /**
     * Takes over what came in with a part of the step, and what ran over the rim with it.
     *
     * @param letOutMol what the reservoir let out in this part
     * @param shareFrac this tray's share of it
     * @param volumeM3 of the tray at the end of this part, m3
     * @param spiltM3 in this part, m3
     * @param riseFrac how much more of a component came in for each litre that ran over at the end
     *     of this part than at its start
     */
    void comeIn(
            double[] letOutMol,
            double shareFrac,
            double volumeM3,
            double spiltM3,
            double riseFrac) {
        double late = spiltM3 > 0 ? riseFrac * lateness(spiltM3 / volumeM3) : 0;
        for (int i = 0; i < stepInMol.length; i++) {
            double came = shareFrac * letOutMol[i];
            inflowMol[i] += came;
            if (spiltM3 > 0) {
                spill(i, came, volumeM3, spiltM3, late);
            } else {
                stepInMol[i] += came;
            }
        }
    }

    // What comes in late is washed out less: the integral of (u - 1/2) exp(-x (1 - u)) over the
    // part, by which a solution that comes in ever stronger leaves more than its mean does.
    private static double lateness(double x) {
        if (x < 1e-2) {
            return x / 12 * (1 - 0.5 * x);
        }
        double kept = Elementary.exp(-x);
        return 0.5 * (1 - kept) / x - (1 - (1 + x) * kept) / (x * x);
    }

    // What comes in mixes with what stands there, and the mixture runs over: dM/dt = in - s M/V.
    private void spill(int i, double came, double volumeM3, double spiltM3, double late) {
        double before = mol[i] + stepInMol[i];
        double after = Solutes.afterPassing(before, came, volumeM3, volumeM3, spiltM3, 1);
        after += came * late;
        spiltMol[i] += before + came - after;
        mol[i] = after;
        stepInMol[i] = 0;
    }

    /** Ends a step without water: what came in stays. */
    void endDry() {
        for (int i = 0; i < mol.length; i++) {
            mol[i] += stepInMol[i];
        }
    }

    /**
     * Ends a step: what came in, and what the plants took up.
     *
     * @param startM3 volume at its start, m3
     * @param endM3 volume at its end, m3
     * @param transpirationM3 over it, m3
     * @param reachedFrac of what is asked for, what roots get at: of the thirst that depth and wet
     *     roots supply, 0-1; that salts are reached as water is, is assumed
     * @param carbonDioxideMolPerM3 dissolved
     */
    void end(
            double startM3,
            double endM3,
            double transpirationM3,
            double reachedFrac,
            double carbonDioxideMolPerM3,
            double spanS) {
        double midM3 = 0.5 * (startM3 + endM3);
        double acidBefore = freeAcidMol(mol) + freeAcidMol(stepInMol);
        double transpirationM3PerS = transpirationM3 / spanS;
        double ph = QuickPh.of(freeAcidMol(mol) / midM3, mol[P] / midM3, carbonDioxideMolPerM3);
        double nitrateSpared = preferAmmonium(midM3, ph, reachedFrac);
        double cationFrac = NitrogenUptake.cationAtPhFrac(ph);
        double nitrogenFrac = 1;
        double potassiumShort = 0; // told before calcium's and magnesium's turn
        for (int i = 0; i < mol.length; i++) {
            double asked =
                    reachedFrac * demand.molPerS[i] + demand.forPotassiumMolPerS(i, potassiumShort);
            double pass = demand.passFrac[i] * transpirationM3PerS;
            if (i == NO3) {
                asked -= nitrateSpared;
            } else if (CATION[i]) {
                demand.forgo(i, (1 - cationFrac) * asked * spanS);
                asked *= cationFrac;
            }
            double before = mol[i] + stepInMol[i];
            double after = before;
            if (pass > 0) {
                after = Solutes.afterPassing(mol[i], stepInMol[i], startM3, endM3, pass, spanS);
            } else if (asked > 0) {
                after =
                        Solutes.afterUptake(
                                mol[i], stepInMol[i], midM3, asked, demand.halfMolPerM3[i], spanS);
            }
            stepUptakeMol[i] = before - after;
            mol[i] = after;
            if (i == NH4) {
                double fresh = reachedFrac * demand.freshMolPerS(NO3) * spanS;
                double taken = stepUptakeMol[NO3] + stepUptakeMol[NH4];
                nitrogenFrac = taken < fresh ? Math.max(0, taken / fresh) : 1;
            } else if (i == K) {
                potassiumShort =
                        Math.max(
                                0,
                                reachedFrac * cationFrac * demand.freshMolPerS(K)
                                        - stepUptakeMol[K] / spanS);
            }
        }
        giveBackCations(Math.max(acidBefore, nitrogenFrac * ACID_BORNE_MOL_PER_M3 * endM3));
        for (int i = 0; i < mol.length; i++) {
            uptakeMol[i] += stepUptakeMol[i];
        }
        demand.meet(stepUptakeMol);
    }

    // Of the nitrogen asked for, what is asked as ammonium, and what is taken of that, mol/s.
    private double preferAmmonium(double midM3, double ph, double reachedFrac) {
        if (!(demand.molPerS[NO3] > 0)) {
            demand.molPerS[NH4] = 0;
            return 0;
        }
        double molPerM3 = mol[NH4] / midM3;
        demand.molPerS[NH4] =
                demand.molPerS[NO3]
                        * NitrogenUptake.ammoniumFrac(
                                molPerM3,
                                mol[NO3] / midM3,
                                NitrogenUptake.AMMONIUM_PREFERENCE
                                        / NitrogenUptake.nitrateAtPhFactor(ph))
                        * NitrogenUptake.cationAtPhFrac(ph);
        return reachedFrac * demand.molPerS[NH4] * molPerM3 / (demand.halfMolPerM3[NH4] + molPerM3);
    }

    /** EC that the sum of a solution's ions stands for, mS/cm. */
    static double equivalentMsPerCm(Composition of) {
        double ions = 0;
        for (int i = 0; i <= CL; i++) {
            ions += of.molPerM3(i);
        }
        return Osmosis.equivalentMsPerCm(ions);
    }

    /** EC that the sum of the ions stands for, mS/cm; 0 in a dry tray. */
    double equivalentMsPerCm(double volumeM3) {
        if (!(volumeM3 > 0)) {
            return 0;
        }
        double ions = 0;
        for (int i = 0; i <= CL; i++) {
            ions += mol[i];
        }
        return Osmosis.equivalentMsPerCm(ions / volumeM3);
    }

    /** Lets dry what a film cannot hold, and dissolves again what it can. */
    void settleFilm(double volumeM3, double levelM) {
        if (!anyDried && levelM >= DRIES_BELOW_M) {
            return;
        }
        for (int i = 0; i < mol.length; i++) {
            mol[i] += driedMol[i];
            driedMol[i] = 0;
        }
        double kept = volumeM3 > 0 ? Brine.dissolvedFrac(mol, volumeM3) : 0;
        anyDried = kept < 1;
        for (int i = 0; anyDried && i < mol.length; i++) {
            double dissolved = kept * mol[i];
            driedMol[i] = mol[i] - dissolved;
            mol[i] = dissolved;
        }
    }

    // Cations taken without anions are paid for with protons; in acid solution roots cannot, nor
    // without nitrogen, whose reduction yields the charge (Ben-Zioni, Vaadia and Lips 1971, from
    // memory). What is taken for its nitrogen is taken all the same.
    private void giveBackCations(double mostAcidMol) {
        double tooAcid = freeAcidMol(mol) - mostAcidMol;
        if (!(tooAcid > 0)) {
            return;
        }
        double cations = 0;
        for (int i = 0; i < mol.length; i++) {
            cations += i == NH4 ? 0 : Math.max(0, CHARGE[i]) * stepUptakeMol[i];
        }
        if (!(cations > 0)) {
            return;
        }
        double back = Math.min(1, tooAcid / cations);
        for (int i = 0; i < mol.length; i++) {
            if (CHARGE[i] > 0 && i != NH4) {
                mol[i] += back * stepUptakeMol[i];
                stepUptakeMol[i] -= back * stepUptakeMol[i];
            }
        }
    }

    /** Anions less cations of a solution, phosphate as H2PO4-, mol. */
    static double freeAcidMol(double[] mol) {
        double sum = 0;
        for (int i = 0; i < mol.length; i++) {
            sum -= CHARGE[i] * mol[i];
        }
        return sum;
    }

    /** All of the solution is drained, and what has dried on the floor washed off. */
    void wash() {
        for (int i = 0; i < mol.length; i++) {
            drainedMol[i] += mol[i] + driedMol[i];
            mol[i] = 0;
            driedMol[i] = 0;
        }
        anyDried = false;
    }

    /** A share of the solution is drained. */
    void drain(double shareFrac) {
        for (int i = 0; i < mol.length; i++) {
            double gone = shareFrac * mol[i];
            mol[i] -= gone;
            drainedMol[i] += gone;
        }
    }

    /**
     * Liquid is poured in.
     *
     * @param account where it is counted: {@link #toppedUpMol} or {@link #freshMol}
     */
    void pour(double pouredM3, Composition liquid, double[] account) {
        for (int i = 0; i < mol.length; i++) {
            double added = pouredM3 * liquid.molPerM3(i);
            mol[i] += added;
            account[i] += added;
        }
    }
}
