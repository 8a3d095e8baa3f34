package tideless.solution;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.util.FastMath;

/**
 * A liquid that moves pH, and what one mole of it leaves in the solution.
 *
 * @param id lower-case words with hyphens
 * @param title as a person would say it
 * @param perMol what 1 mol/m3 of it adds, mol/m3; phosphoric acid adds only P and nitric acid only
 *     NO3, for protons follow from charge balance
 * @param pKas of an acid whose anion no component stands for (citric); empty otherwise
 * @param molPerL strength, mol of reagent a litre
 * @param densityKgPerL at 20 degC
 * @param caution what to mind
 */
public record Reagent(
        String id,
        String title,
        Composition perMol,
        List<Double> pKas,
        double molPerL,
        double densityKgPerL,
        String caution) {

    private static final String GLOVES = "Gloves and goggles; ";
    private static final String ACID_CAUTION =
            GLOVES + "pour acid into water, never water into acid.";
    private static final String TRAINED =
            " For trained staff only; private persons may not buy it above %s in the European Union"
                    + " (regulation 2019/1148) and need a licence above that in Great Britain"
                    + " (Poisons Act 1972, SI 2023/63). Read in 2026, no legal advice: ask what"
                    + " holds where you are.";
    private static final String NITRIC_CAUTION = ACID_CAUTION + TRAINED.formatted("3 %");
    private static final String SULFURIC_CAUTION = ACID_CAUTION + TRAINED.formatted("15 %");
    private static final String STRONG_PHOSPHORIC_CAUTION =
            ACID_CAUTION
                    + " For trained staff only; above 30 % it needs a licence in Great Britain"
                    + " (Poisons Act 1972, SI 2023/63). Read in 2026, no legal advice: ask what"
                    + " holds where you are.";
    private static final String BASE_CAUTION =
            GLOVES + "strong lye, for trained staff only: pour it slowly into water, which warms.";
    private static final String MILD_BASE_CAUTION =
            GLOVES + "a mild base, but it stings in the eyes; it fizzes in acid.";

    /**
     * Most phosphate a pH correction may bring, mol/m3: as much as a full feed holds (30 mg/L of
     * P).
     */
    public static final double MOST_PHOSPHATE_MOL_PER_M3 = 1;

    // Molar masses from the standard atomic weights; densities at 20 degC from memory of handbook
    // tables.
    private static final double HNO3 = 63.012;
    private static final double H3PO4 = 97.994;
    private static final double H2SO4 = 98.079;
    private static final double CITRIC = 192.123;
    private static final double KOH = 56.105;
    private static final double K2CO3 = 138.204;
    private static final double KHCO3 = 100.115;

    private static final List<Reagent> ALL =
            List.of(
                    nitric(38, 1.235),
                    nitric(53, 1.33),
                    nitric(60, 1.367),
                    phosphoric(10, 1.053, ACID_CAUTION),
                    phosphoric(30, 1.181, ACID_CAUTION),
                    phosphoric(59, 1.42, STRONG_PHOSPHORIC_CAUTION),
                    phosphoric(75, 1.579, STRONG_PHOSPHORIC_CAUTION),
                    phosphoric(85, 1.685, STRONG_PHOSPHORIC_CAUTION),
                    acid("sulfuric", Component.SO4, 15, 1.102, H2SO4, ACID_CAUTION),
                    acid("sulfuric", Component.SO4, 37, 1.28, H2SO4, SULFURIC_CAUTION),
                    // pKa 3.13, 4.76, 6.40: handbook values (read).
                    new Reagent(
                            "citric-50",
                            "citric acid 50 %",
                            Composition.WATER,
                            List.of(3.13, 4.76, 6.40),
                            1000 * 1.24 * 0.50 / CITRIC,
                            1.24,
                            GLOVES
                                    + "not for a tray with plants in it: microbes burn citric acid"
                                    + " within days, take eight times the oxygen the water holds"
                                    + " for 1 meq/L of it, and the pH comes back."),
                    new Reagent(
                            "potassium-bicarbonate-10",
                            "potassium bicarbonate 10 % (100 g made up to 1000 g)",
                            Composition.of(Map.of(Component.K, 1.0, Component.C, 1.0)),
                            List.of(),
                            1000 * 1.065 * 0.10 / KHCO3,
                            1.065,
                            MILD_BASE_CAUTION),
                    new Reagent(
                            "potassium-hydroxide-50",
                            "potassium hydroxide 50 %",
                            Composition.of(Map.of(Component.K, 1.0)),
                            List.of(),
                            1000 * 1.51 * 0.50 / KOH,
                            1.51,
                            BASE_CAUTION),
                    new Reagent(
                            "potassium-carbonate-50",
                            "potassium carbonate 50 %",
                            Composition.of(Map.of(Component.K, 2.0, Component.C, 1.0)),
                            List.of(),
                            1000 * 1.54 * 0.50 / K2CO3,
                            1.54,
                            MILD_BASE_CAUTION));

    public Reagent {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(perMol, "perMol");
        Objects.requireNonNull(caution, "caution");
        pKas = List.copyOf(pKas);
        if (!(molPerL > 0 && molPerL < 100)) {
            throw new IllegalArgumentException("molPerL must lie in (0, 100), was " + molPerL);
        }
        if (!(densityKgPerL > 0.5 && densityKgPerL < 3)) {
            throw new IllegalArgumentException(
                    "densityKgPerL must lie in (0.5, 3), was " + densityKgPerL);
        }
    }

    private static Reagent nitric(int percent, double densityKgPerL) {
        return acid("nitric", Component.NO3, percent, densityKgPerL, HNO3, NITRIC_CAUTION);
    }

    private static Reagent phosphoric(int percent, double densityKgPerL, String caution) {
        return acid("phosphoric", Component.P, percent, densityKgPerL, H3PO4, caution);
    }

    private static Reagent acid(
            String name,
            Component anion,
            int percent,
            double densityKgPerL,
            double gramsPerMol,
            String caution) {
        return new Reagent(
                name + "-" + percent,
                name + " acid " + percent + " %",
                Composition.of(Map.of(anion, 1.0)),
                List.of(),
                1000 * densityKgPerL * percent / 100 / gramsPerMol,
                densityKgPerL,
                caution);
    }

    /** Nitric acid 38 %, in the trade the usual one. */
    public static Reagent nitric() {
        return ALL.get(0);
    }

    /** One by its id. */
    public static Optional<Reagent> named(String id) {
        return ALL.stream().filter(r -> r.id().equals(id)).findFirst();
    }

    /** The ids of the acids or of the bases, in order. */
    public static List<String> names(boolean acids) {
        return ALL.stream().filter(r -> r.isAcid() == acids).map(Reagent::id).toList();
    }

    /** This one thinned or strengthened to another strength, mol a litre. */
    public Reagent withMolPerL(String newId, String newTitle, double newMolPerL) {
        return new Reagent(newId, newTitle, perMol, pKas, newMolPerL, densityKgPerL, caution);
    }

    /** Whether its caution marks it as for trained staff. */
    public boolean isForTrainedStaff() {
        return caution.contains("trained staff");
    }

    /**
     * Most of it that a feed may take, mol/m3: so much as brings {@link #MOST_PHOSPHATE_MOL_PER_M3}
     * of phosphate; infinite for one that brings none.
     */
    public double mostMolPerM3() {
        double phosphate = perMol.molPerM3(Component.P);
        return phosphate > 0 ? MOST_PHOSPHATE_MOL_PER_M3 / phosphate : Double.POSITIVE_INFINITY;
    }

    /** Whether a component stands for what it leaves behind. */
    public boolean carried() {
        return pKas.isEmpty();
    }

    /**
     * Protons one molecule has given away at a pH: 1 for nitric, 1 to 2 for phosphoric, up to 3 for
     * citric; negative for a base (potassium carbonate: with its carbon gone as CO2).
     *
     * @param ionicStrengthMolPerKg shifts the constants by Davies' equation at 25 degC
     */
    public double protonsGiven(double ph, double ionicStrengthMolPerKg) {
        double fixed = -perMol.fixedChargeMolPerM3();
        if (perMol.molPerM3(Component.P) > 0) {
            // 2.148, 7.200, 12.346: see Equilibria.
            fixed +=
                    perMol.molPerM3(Component.P)
                            * protons(List.of(2.148, 7.200, 12.346), ph, ionicStrengthMolPerKg);
        }
        return fixed + protons(pKas, ph, ionicStrengthMolPerKg);
    }

    /** Share of an acid with constants that has lost all its protons, of what holds no metal. */
    double freeShareFrac(double ph, double ionicStrengthMolPerKg) {
        double unit = Equilibria.AT_25.minusLogGamma(ionicStrengthMolPerKg);
        double last = 0;
        double sum = 1;
        double logWeight = 0;
        for (int n = 1; n <= pKas.size(); n++) {
            logWeight += ph - pKas.get(n - 1) + (2 * n - 1) * unit;
            last = FastMath.pow(10, logWeight);
            sum += last;
        }
        return last / sum;
    }

    /** Whether it lowers the pH of a neutral solution. */
    public boolean isAcid() {
        return protonsGiven(7, 0) > 0;
    }

    /** Mean number of protons lost by an acid with these constants. */
    private static double protons(List<Double> pKas, double ph, double strength) {
        double unit = Equilibria.AT_25.minusLogGamma(strength);
        double weight = 1;
        double sum = 1;
        double mean = 0;
        double logWeight = 0;
        for (int n = 1; n <= pKas.size(); n++) {
            // HA(z) = A(z-1) + H+: the proton's own activity is the pH; the anions' differ.
            double apparent = pKas.get(n - 1) - (2 * n - 1) * unit;
            logWeight += ph - apparent;
            weight = FastMath.pow(10, logWeight);
            sum += weight;
            mean += n * weight;
        }
        return mean / sum;
    }
}
