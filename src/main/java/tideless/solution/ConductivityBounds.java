package tideless.solution;

/**
 * Between which two figures the EC of a solution at 25 degC lies, by sums over its components: for
 * a rule that asks whether a limit is passed, and mostly is nowhere near it. A solution is solved
 * for in full a hundred times as slowly.
 *
 * <p>EC is the sum of the forms' amounts times their conductivities (see {@link
 * ElectricalConductivity}). A form holds at most one cation and one of the pairing anions. So if
 * every component is given a weight such that no form conducts more than the weights of what it
 * holds together, EC is at most the sum of components times weights; if no form conducts less, at
 * least (weak duality of linear programming). Conductivities fall with the ionic strength, which is
 * at least the charge of nitrate and chloride and at most all forms at their most charged.
 *
 * <p>Of the acid and the alkali that phosphate (as H2PO4-) does not carry, each mol is counted at
 * the most it can do either way. What dissociates of pure water and carbonic acid beside it is an
 * allowance. Held against {@link Meter} over random solutions by a test.
 */
public final class ConductivityBounds {
    /** 1 mol/m3 times S cm2/mol is so many mS/cm; exact. */
    private static final double MS_PER_CM = 1e-3;

    /** 1 mol/m3 is so many mol/kg, as in {@link SpeciationSolver}. */
    private static final double MOL_PER_L = 1e-3;

    /** Nothing is told of what is stronger, mol/m3 in all: far above any limit of a crop. */
    private static final double MOST_MOL_PER_M3 = 1000;

    /**
     * Hydrogen ions and bicarbonate where neither acid nor alkali is in excess, and what little
     * phosphoric acid gives in acid solution, mS/cm: at 0.1 mol/m3 of either some 0.04; rounded up.
     */
    private static final double ALLOWANCE_MS_PER_CM = 0.06;

    private static final Equilibria K25 = Equilibria.AT_25;

    private final double leastMsPerCm;
    private final double mostMsPerCm;

    /**
     * @param molPerM3 in the order of {@link Component}; carbon is put aside, for air decides it
     */
    public ConductivityBounds(double[] molPerM3) {
        double ca = molPerM3[Component.CA.ordinal()];
        double mg = molPerM3[Component.MG.ordinal()];
        double k = molPerM3[Component.K.ordinal()];
        double na = molPerM3[Component.NA.ordinal()];
        double nh4 = molPerM3[Component.NH4.ordinal()];
        double no3 = molPerM3[Component.NO3.ordinal()];
        double cl = molPerM3[Component.CL.ordinal()];
        double so4 = molPerM3[Component.SO4.ordinal()];
        double p = molPerM3[Component.P.ordinal()];
        if (!(ca + mg + k + na + nh4 + no3 + cl + so4 + p < MOST_MOL_PER_M3)) {
            leastMsPerCm = 0;
            mostMsPerCm = Double.POSITIVE_INFINITY;
            return;
        }
        double plus = 2 * (ca + mg) + k + na + nh4;
        double alkali = plus - no3 - cl - 2 * so4 - p;
        double unbalanced = Math.abs(alkali);

        double weak = Math.sqrt(MOL_PER_L * (no3 + cl));
        double most =
                lambda(Species.CA, weak) * ca
                        + lambda(Species.MG, weak) * mg
                        + lambda(Species.K, weak) * k
                        + lambda(Species.NA, weak) * na
                        + lambda(Species.NH4, weak) * nh4
                        + lambda(Species.NO3, weak) * no3
                        + lambda(Species.CL, weak) * cl
                        + sulfateMost(weak) * so4
                        + lambda(Species.H2PO4, weak) * p
                        + (alkali < 0 ? lambda(Species.H, 0) : lambda(Species.OH, 0)) * unbalanced;
        mostMsPerCm = MS_PER_CM * most + ALLOWANCE_MS_PER_CM;

        double minus = no3 + cl + 2 * so4 + 3 * p;
        double strong =
                Math.sqrt(
                        MOL_PER_L
                                * (0.5 * (2 * plus + no3 + cl + 4 * so4 + 9 * p)
                                        + Math.max(plus, minus)));
        double single =
                lambda(Species.K, strong) * k
                        + lambda(Species.NA, strong) * na
                        + lambda(Species.NH4, strong) * nh4
                        + lambda(Species.NO3, strong) * no3
                        + lambda(Species.CL, strong) * cl;
        // Either calcium and magnesium count, and each anion may hide one of the better; or they
        // do not, and each may only hide what its pair with a single charge lacks.
        double calcium = lambda(Species.CA, strong);
        double twofold =
                calcium * ca + lambda(Species.MG, strong) * mg - calcium * (so4 + p + unbalanced);
        double without = pairLacks(strong) * (so4 + p) + lambda(Species.NH4, strong) * unbalanced;
        leastMsPerCm = MS_PER_CM * (single + Math.max(twofold, -without)) - ALLOWANCE_MS_PER_CM;
    }

    /** EC is at least that, mS/cm. */
    public double leastMsPerCm() {
        return leastMsPerCm;
    }

    /** EC is at most that, mS/cm. */
    public double mostMsPerCm() {
        return mostMsPerCm;
    }

    // A pair may conduct more than its two ions do.
    private static double sulfateMost(double root) {
        return Math.max(
                lambda(Species.SO4, root),
                Math.max(
                        lambda(Species.KSO4, root) - lambda(Species.K, root),
                        lambda(Species.NASO4, root) - lambda(Species.NA, root)));
    }

    private static double pairLacks(double root) {
        return Math.max(
                lambda(Species.K, root) - lambda(Species.KHPO4, root),
                Math.max(
                        lambda(Species.NH4, root) - lambda(Species.NH4SO4, root),
                        lambda(Species.NA, root) - lambda(Species.NAHPO4, root)));
    }

    private static double lambda(Species species, double root) {
        int i = species.ordinal();
        return Math.max(0, K25.lambda0[i] - K25.lambdaA[i] * root / (1 + K25.lambdaB[i] * root));
    }
}
