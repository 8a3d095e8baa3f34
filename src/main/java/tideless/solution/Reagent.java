package tideless.solution;

import java.util.ArrayList;
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

    private static final String ACID_CAUTION =
            "Gloves and goggles; pour acid into water, never water into acid.";
    private static final String BASE_CAUTION =
            "Gloves and goggles; strong lye: pour it slowly into water, which warms.";

    // Molar masses from the standard atomic weights; densities at 20 degC from memory of handbook
    // tables.
    private static final double HNO3 = 63.012;
    private static final double H3PO4 = 97.994;
    private static final double H2SO4 = 98.079;
    private static final double CITRIC = 192.123;
    private static final double KOH = 56.105;
    private static final double K2CO3 = 138.204;

    private static final List<Reagent> ALL =
            List.of(
                    acid("nitric-38", "nitric acid 38 %", Component.NO3, 0.38, 1.235, HNO3),
                    acid("nitric-53", "nitric acid 53 %", Component.NO3, 0.53, 1.33, HNO3),
                    acid("nitric-60", "nitric acid 60 %", Component.NO3, 0.60, 1.367, HNO3),
                    acid("phosphoric-59", "phosphoric acid 59 %", Component.P, 0.59, 1.42, H3PO4),
                    acid("phosphoric-75", "phosphoric acid 75 %", Component.P, 0.75, 1.579, H3PO4),
                    acid("phosphoric-85", "phosphoric acid 85 %", Component.P, 0.85, 1.685, H3PO4),
                    acid("sulfuric-37", "sulfuric acid 37 %", Component.SO4, 0.37, 1.28, H2SO4),
                    // pKa 3.13, 4.76, 6.40: handbook values (read).
                    new Reagent(
                            "citric-50",
                            "citric acid 50 %",
                            Composition.WATER,
                            List.of(3.13, 4.76, 6.40),
                            1000 * 1.24 * 0.50 / CITRIC,
                            1.24,
                            "Goggles. Microbes eat citric acid within days: the pH comes back."),
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
                            BASE_CAUTION));

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

    private static Reagent acid(
            String id,
            String title,
            Component anion,
            double massFrac,
            double densityKgPerL,
            double gramsPerMol) {
        return new Reagent(
                id,
                title,
                Composition.of(Map.of(anion, 1.0)),
                List.of(),
                1000 * densityKgPerL * massFrac / gramsPerMol,
                densityKgPerL,
                ACID_CAUTION);
    }

    /** Nitric acid 38 %: the usual one, and the default. */
    public static Reagent nitric() {
        return ALL.get(0);
    }

    /** All that are known here. */
    public static List<Reagent> all() {
        return ALL;
    }

    /** One by its id. */
    public static Optional<Reagent> named(String id) {
        return ALL.stream().filter(r -> r.id().equals(id)).findFirst();
    }

    /** The ids, in order. */
    public static List<String> names() {
        List<String> names = new ArrayList<>();
        ALL.forEach(r -> names.add(r.id()));
        return List.copyOf(names);
    }

    /** This one thinned or strengthened to another strength, mol a litre. */
    public Reagent withMolPerL(String newId, String newTitle, double newMolPerL) {
        return new Reagent(newId, newTitle, perMol, pKas, newMolPerL, densityKgPerL, caution);
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

    /** Mean number of protons lost by an acid with these constants. */
    private static double protons(List<Double> pKas, double ph, double strength) {
        double root = Math.sqrt(strength);
        double unit =
                Equilibria.AT_25.debyeHuckelA * (root / (1 + root) - 0.3 * strength); // -log g1
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
