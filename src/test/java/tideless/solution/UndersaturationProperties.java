package tideless.solution;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** What is called certainly undersaturated is so by the full solution. */
class UndersaturationProperties {
    @Property(tries = 2000)
    void what_is_certain_is_so(@ForAll long seed) {
        certainIsSo(seed);
    }

    /** Whether it was called certain. */
    static boolean certainIsSo(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] mol = randomSolution(random);
        double tempC = 50 * random.nextDouble();
        double co2Atm = 1e-6 * Math.exp(Math.log(50) + random.nextDouble() * Math.log(2000));
        Equilibria k = Equilibria.at(tempC);
        if (!Undersaturation.isCertain(mol, k, co2Atm)) {
            return false;
        }
        SpeciationSolver solver = new SpeciationSolver();
        solver.solveInAir(mol, k, co2Atm);
        double ca = solver.activity(Species.CA.ordinal());
        assertBelow(Precipitation.Mineral.GYPSUM, ca, solver, Species.SO4, k.logKspGypsum);
        assertBelow(
                Precipitation.Mineral.CALCIUM_PHOSPHATE,
                ca,
                solver,
                Species.HPO4,
                k.logKspBrushite);
        assertBelow(Precipitation.Mineral.CALCITE, ca, solver, Species.CO3, k.logKspCalcite);
        return true;
    }

    private static void assertBelow(
            Precipitation.Mineral mineral,
            double ca,
            SpeciationSolver solver,
            Species anion,
            double logSolubility) {
        double index = Math.log10(ca * solver.activity(anion.ordinal())) - logSolubility;
        assertTrue(index < mineral.onsetIndex(), mineral + " stands at " + index);
    }

    // Feeds, waters, thin and thick ones, of any acidity: the anions or cations that would balance
    // them are there in part, whole, or too many.
    static double[] randomSolution(SplittableRandom random) {
        double[] mol = new double[Component.COUNT];
        double strength = Math.exp(Math.log(0.1) + random.nextDouble() * Math.log(1000));
        double charge = 0;
        for (Component component :
                new Component[] {
                    Component.CA,
                    Component.MG,
                    Component.K,
                    Component.NA,
                    Component.NH4,
                    Component.SO4,
                    Component.P,
                    Component.CL
                }) {
            double amount =
                    random.nextDouble() < 0.2
                            ? 0
                            : strength * random.nextDouble() * random.nextDouble();
            mol[component.ordinal()] = amount;
            charge += component == Component.P ? -amount : component.fixedCharge() * amount;
        }
        double alkaline = strength * (random.nextDouble() - 0.2) * Math.pow(random.nextDouble(), 2);
        mol[Component.NO3.ordinal()] = Math.max(0, charge - alkaline);
        return mol;
    }

    // Else the law above would say nothing.
    @Test
    void it_is_certain_of_many_and_not_of_all() {
        int certain = 0;
        for (long seed = 0; seed < 2000; seed++) {
            certain += certainIsSo(seed) ? 1 : 0;
        }
        assertTrue(certain > 400 && certain < 1900, "certain of " + certain + " of 2000");
    }

    @Test
    void a_solution_above_an_onset_is_never_called_certain() {
        double[] gypsum = new double[Component.COUNT];
        gypsum[Component.CA.ordinal()] = 40;
        gypsum[Component.SO4.ordinal()] = 40;
        assertFalse(Undersaturation.isCertain(gypsum, Equilibria.AT_25, 420e-6));
        double[] hardWater = new double[Component.COUNT];
        hardWater[Component.CA.ordinal()] = 3;
        assertFalse(Undersaturation.isCertain(hardWater, Equilibria.AT_25, 420e-6));
        double[] phosphate = new double[Component.COUNT];
        phosphate[Component.CA.ordinal()] = 5;
        phosphate[Component.K.ordinal()] = 5;
        phosphate[Component.P.ordinal()] = 3;
        phosphate[Component.NO3.ordinal()] = 10.5;
        assertFalse(Undersaturation.isCertain(phosphate, Equilibria.AT_25, 420e-6));
    }
}
