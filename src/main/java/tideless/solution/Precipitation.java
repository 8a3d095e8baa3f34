package tideless.solution;

import java.util.List;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import tideless.physics.Elementary;

/**
 * What falls out of a solution that stands well above saturation, by whole formula units.
 *
 * <p>An equilibrium rule with an apparent solubility: a mineral whose saturation index exceeds its
 * onset falls out until the index is back at the onset. The onset stands for the slowness of the
 * first crystals; on surfaces that carry them already the solution would go further down, towards
 * 0. Nothing dissolves again: what has fallen lies as a crust. The carbon of calcite is the air's,
 * as all carbon in contact with air is. Struvite, magnesium carbonates and the iron phosphates are
 * not among the minerals.
 *
 * <p>An instance is scratch space of one thread.
 */
public final class Precipitation {
    /** What may fall. */
    public enum Mineral {
        /**
         * CaCO3. Waters scale from an index of about 0.5 on: common practice for boilers and drip
         * lines, from memory.
         */
        CALCITE("calcite (lime scale)", Component.C, 0.5),
        /**
         * CaHPO4.2H2O, stands for all calcium phosphates: less soluble ones follow from it over
         * weeks. Onset assumed, no source.
         */
        CALCIUM_PHOSPHATE("calcium phosphate", Component.P, 0.3),
        /** CaSO4.2H2O, which crystallises readily. Onset assumed, no source. */
        GYPSUM("gypsum", Component.SO4, 0.1);

        private final String title;
        private final Component partner;
        private final double onsetIndex;

        Mineral(String title, Component partner, double onsetIndex) {
            this.title = title;
            this.partner = partner;
            this.onsetIndex = onsetIndex;
        }

        /** English name. */
        public String title() {
            return title;
        }

        /** What falls with the calcium, one for one. */
        public Component partner() {
            return partner;
        }

        /** Saturation index, log10, above which it falls. */
        public double onsetIndex() {
            return onsetIndex;
        }
    }

    /** All minerals, in order. */
    public static final List<Mineral> MINERALS = List.of(Mineral.values());

    /** Index above the onset that is let be: 0.2 % of a product of concentrations. */
    private static final double SETTLED = 1e-3;

    /** How near to the onset a fall is found: far below {@link #SETTLED}. */
    private static final double NEAR = 0.1 * SETTLED;

    /** Secants after which the root is bracketed; two or three do. */
    private static final int MOST_SECANTS = 12;

    /** Rounds in which one mineral's fall lets another rest; they close in geometrically. */
    private static final int MOST_ROUNDS = 60;

    /** Beyond this sum of amounts, mol/m3, Davies' activities mean nothing: nothing is judged. */
    private static final double MOST_MOL_PER_M3 = 2000;

    /** Warmth within which the constants are those of last time, K: 2e-4 of an index. */
    private static final double SAME_K = 0.01;

    private static final int CA = Component.CA.ordinal();

    /**
     * Relative residual of what an index is judged by. Where little buffers, the acid may be a
     * hundred times as far off: as good as {@link #NEAR}.
     */
    private static final double JUDGED = 1e-6;

    private final SpeciationSolver solver = new SpeciationSolver(JUDGED);
    private final double[] trial = new double[Component.COUNT];
    private final double[] overPlain = {1, 1, 1}; // of each mineral, its last fall over a guess
    private double roomIndex;
    private Equilibria known = Equilibria.AT_25;
    private double solvedAt; // fall, mol/m3, after which the solver last found the forms

    /**
     * By how much the nearest mineral stood below its onset when {@link #settle} last worked that
     * out, log10; 0 where it fell, or where a quick proof was enough.
     */
    public double roomIndex() {
        return roomIndex;
    }

    /**
     * Lets fall what stands above its onset.
     *
     * @param molPerM3 changed in place; carbon is left as it is, for the air decides it
     * @param tempC degC, 0 to 50
     * @param co2Ppm of the air above, parts per million by volume at one standard atmosphere
     * @param fallenMolPerM3 one place a mineral, in the order of {@link #MINERALS}; added to
     * @return whether anything fell
     */
    public boolean settle(double[] molPerM3, double tempC, double co2Ppm, double[] fallenMolPerM3) {
        roomIndex = 0;
        double sum = 0;
        for (int i = 0; i < molPerM3.length; i++) {
            sum += molPerM3[i];
        }
        if (!(sum < MOST_MOL_PER_M3) || !(molPerM3[CA] > 0)) {
            return false;
        }
        Equilibria k = about(Math.max(0, Math.min(50, tempC)));
        double co2Atm = co2Ppm * 1e-6;
        if (Undersaturation.isCertain(molPerM3, k, co2Atm)) {
            roomIndex = Undersaturation.CAREFUL;
            return false;
        }
        boolean fell = false;
        boolean solved = false;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            if (!solved) {
                solver.solveInAir(molPerM3, k, co2Atm);
            }
            int worst = 0;
            double most = Double.NEGATIVE_INFINITY;
            for (int m = 0; m < MINERALS.size(); m++) {
                double above = aboveOnset(MINERALS.get(m), k);
                if (above > most) {
                    most = above;
                    worst = m;
                }
            }
            if (!(most > SETTLED)) {
                roomIndex = Math.max(0, -most);
                return fell;
            }
            double falls = falls(MINERALS.get(worst), most, molPerM3, k, co2Atm);
            take(MINERALS.get(worst), molPerM3, falls, molPerM3);
            fallenMolPerM3[worst] += falls;
            fell = true;
            solved = solvedAt == falls;
        }
        return fell;
    }

    private Equilibria about(double tempC) {
        if (!(Math.abs(tempC - known.tempC) <= SAME_K)) {
            known = Equilibria.at(tempC);
        }
        return known;
    }

    // By secants: the index is all but straight in what falls.
    private double falls(
            Mineral mineral, double aboveIndex, double[] molPerM3, Equilibria k, double co2Atm) {
        double partner =
                mineral.partner() == Component.C
                        ? Double.POSITIVE_INFINITY
                        : molPerM3[mineral.partner().ordinal()];
        // Never the last of it: the index is -infinity there.
        double most = Math.min(molPerM3[CA], partner) * (1 - 1e-9);
        UnivariateFunction above =
                x -> {
                    take(mineral, molPerM3, x, trial);
                    solver.solveInAir(trial, k, co2Atm);
                    solvedAt = x;
                    return aboveOnset(mineral, k);
                };
        // As if the product of the two totals alone had to fall; of lime, which takes two parts of
        // alkalinity for each of calcium, with the square of that. It takes a little more, and
        // about as much as the last time.
        double partnerLike =
                mineral == Mineral.CALCITE ? solver.carbonMolPerKg() * 1e3 / 4 : partner;
        double plain = aboveIndex * Equilibria.LN10 / (1 / molPerM3[CA] + 1 / partnerLike);
        double before = 0;
        double atBefore = aboveIndex;
        double falls = Math.min(most, plain * overPlain[mineral.ordinal()]);
        double atFalls = above.value(falls);
        for (int round = 0; Math.abs(atFalls) > NEAR; round++) {
            double next = falls - atFalls * ((falls - before) / (atFalls - atBefore));
            if (round == MOST_SECANTS || !(next > 0 && next <= most)) {
                return bracketed(above, most);
            }
            before = falls;
            atBefore = atFalls;
            falls = next;
            atFalls = above.value(falls);
        }
        overPlain[mineral.ordinal()] = falls / plain;
        return falls;
    }

    private static double bracketed(UnivariateFunction above, double most) {
        return above.value(most) > 0
                ? most
                : new BrentSolver(1e-10, 1e-12 * most).solve(200, above, 0, most);
    }

    private static void take(Mineral mineral, double[] from, double molPerM3, double[] to) {
        System.arraycopy(from, 0, to, 0, from.length);
        to[CA] = from[CA] - molPerM3;
        if (mineral.partner() != Component.C) {
            int partner = mineral.partner().ordinal();
            to[partner] = from[partner] - molPerM3;
        }
    }

    private double aboveOnset(Mineral mineral, Equilibria k) {
        Species anion;
        double logK;
        switch (mineral) {
            case CALCITE -> {
                anion = Species.CO3;
                logK = k.logKspCalcite;
            }
            case CALCIUM_PHOSPHATE -> {
                anion = Species.HPO4;
                logK = k.logKspBrushite;
            }
            default -> {
                anion = Species.SO4;
                logK = k.logKspGypsum;
            }
        }
        double product = solver.activity(Species.CA.ordinal()) * solver.activity(anion.ordinal());
        return Elementary.log(product) / Equilibria.LN10 - logK - mineral.onsetIndex();
    }
}
