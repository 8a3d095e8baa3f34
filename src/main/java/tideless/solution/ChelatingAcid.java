package tideless.solution;

import org.apache.commons.math3.util.FastMath;

/**
 * An acid whose anion no component stands for and which holds calcium and magnesium: citric acid.
 *
 * <p>What the metals hold has given its last proton at a pH at which free citrate has not: where
 * they are many, less acid does.
 */
final class ChelatingAcid {
    /** Ca+2 with citrate-3, log10 K at 25 degC and no ionic strength; handbook value, read. */
    private static final double LOG_K_CALCIUM = 4.87;

    /** Mg+2 likewise. */
    private static final double LOG_K_MAGNESIUM = 4.89;

    private static final int MOST_ROUNDS = 200;

    /** Change of the dose, of itself, at which it counts as found. */
    private static final double FOUND_FRAC = 1e-12;

    private ChelatingAcid() {}

    /**
     * Dose that brings a solution to a pH below its own, mol/m3.
     *
     * @param tempC degC; the acid's own constants are those of 25 degC
     */
    static double doseMolPerM3(
            Composition composition, double tempC, double ph, Reagent acid, Contact contact) {
        double heldCa = 0;
        double heldMg = 0;
        double before = 0;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            Composition rest =
                    composition
                            .with(Component.CA, composition.molPerM3(Component.CA) - heldCa)
                            .with(Component.MG, composition.molPerM3(Component.MG) - heldMg);
            Speciation at =
                    contact instanceof Contact.InAir air
                            ? Speciation.atPhInAir(rest, tempC, ph, air.co2Ppm())
                            : Speciation.atPh(rest, tempC, ph);
            double strength = at.ionicStrengthMolPerKg();
            double free = acid.freeShareFrac(ph, strength);
            // K in concentrations: a(M) [L3-] g3 = a-form [ML-] g1 / K.
            double lift = FastMath.pow(10, -8 * Equilibria.AT_25.minusLogGamma(strength));
            double perFreeCa =
                    FastMath.pow(10, LOG_K_CALCIUM) * at.activity(Species.CA) * free * lift;
            double perFreeMg =
                    FastMath.pow(10, LOG_K_MAGNESIUM) * at.activity(Species.MG) * free * lift;
            // Free acid gives so many protons; what holds a metal has one negative charge left.
            double perFree = acid.protonsGiven(ph, strength) + perFreeCa + perFreeMg;
            double freeAcid = at.chargeMolPerM3() / perFree;
            double dose = freeAcid * (1 + perFreeCa + perFreeMg);
            if (Math.abs(dose - before) <= FOUND_FRAC * dose) {
                return dose;
            }
            before = dose;
            heldCa =
                    0.5
                            * (heldCa
                                    + Math.min(
                                            freeAcid * perFreeCa, held(composition, Component.CA)));
            heldMg =
                    0.5
                            * (heldMg
                                    + Math.min(
                                            freeAcid * perFreeMg, held(composition, Component.MG)));
        }
        throw new ArithmeticException("no dose of " + acid.title() + " found for pH " + ph);
    }

    /** The most of a metal that may be held on the way to an answer. */
    private static double held(Composition composition, Component metal) {
        return 0.999 * composition.molPerM3(metal);
    }
}
