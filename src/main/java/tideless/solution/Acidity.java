package tideless.solution;

import java.util.OptionalDouble;

/**
 * pH of a solution, and the acid or base that brings it elsewhere.
 *
 * <p>pH follows from charge balance. The same solution has two: with its CO2 kept in, and after it
 * has stood in air. Acid dosed for the first drifts back up towards the second.
 */
public final class Acidity {
    private static final int MAX_STEPS = 60;

    /** Charge still open when a dose counts as found, mol/m3: 1e-7 of a usual dose. */
    private static final double CHARGE_TOLERANCE_MOL_PER_M3 = 1e-10;

    private Acidity() {}

    /** No acid that is sold is stronger, mol/L of acid: sulfuric of 96 % has 36; from memory. */
    private static final double STRONGEST_MOL_PER_L = 40;

    /**
     * pH in equilibrium with air.
     *
     * @param tempC degC, 0 to 50
     * @param co2Ppm parts per million by volume at one standard atmosphere
     */
    public static double phInAir(Composition composition, double tempC, double co2Ppm) {
        return Speciation.inAir(composition, tempC, co2Ppm).ph();
    }

    /**
     * pH with the inorganic carbon the composition carries.
     *
     * @param tempC degC, 0 to 50
     */
    public static double phClosed(Composition composition, double tempC) {
        return Speciation.closed(composition, tempC).ph();
    }

    /** pH in either contact. */
    public static double ph(Composition composition, double tempC, Contact contact) {
        return contact instanceof Contact.InAir air
                ? phInAir(composition, tempC, air.co2Ppm())
                : phClosed(composition, tempC);
    }

    /** The composition with the carbon that air puts into it. */
    public static Composition inAir(Composition composition, double tempC, double co2Ppm) {
        return composition.with(
                Component.C, Speciation.inAir(composition, tempC, co2Ppm).carbonMolPerM3());
    }

    /**
     * Inorganic carbon that makes a closed solution read a pH, mol/m3; empty when none does
     * (measured pH above what the solution has without carbon, or more than 1 mol/L needed).
     */
    public static OptionalDouble carbonForPh(Composition composition, double tempC, double ph) {
        Composition bare = composition.with(Component.C, 0);
        Composition one = Composition.WATER.with(Component.C, 1);
        return root(bare, one, tempC, ph, Contact.CLOSED, 1000);
    }

    /**
     * Strong acid that brings a solution to a pH, mol/m3 (with nitrate as its anion).
     *
     * @return empty when the solution lies at or below that pH already
     */
    public static OptionalDouble strongAcidMolPerM3(
            Composition composition, double tempC, double targetPh, Contact contact) {
        return doseMolPerM3(composition, tempC, targetPh, Reagent.nitric(), contact);
    }

    /**
     * Amount of a reagent that brings a solution to a pH, mol/m3; its ions are counted. Of a
     * reagent that no component carries (citric acid) the anion holds some of the calcium and
     * magnesium.
     *
     * @return empty when the pH lies on the wrong side already, or this reagent cannot reach it
     */
    public static OptionalDouble doseMolPerM3(
            Composition composition,
            double tempC,
            double targetPh,
            Reagent reagent,
            Contact contact) {
        if (!reagent.carried()) {
            return strongAcidMolPerM3(composition, tempC, targetPh, contact).isEmpty()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(
                            ChelatingAcid.doseMolPerM3(
                                    composition, tempC, targetPh, reagent, contact));
        }
        return root(composition, reagent.perMol(), tempC, targetPh, contact, 1e4);
    }

    /**
     * Strength of a pH liquid found by one trial: a sample of known composition and pH, so many
     * millilitres, the pH after. Counted as a strong acid with nitrate for anion.
     *
     * @param sample its carbon is reset so that it reads {@code phBefore}
     * @param sampleL litres titrated
     * @param millilitres added
     * @return the reagent, or empty when the sample cannot have read {@code phBefore}, the pH did
     *     not fall, or no acid is strong enough to do it with so little
     */
    public static java.util.Optional<Reagent> calibrated(
            Composition sample,
            double tempC,
            double sampleL,
            double millilitres,
            double phBefore,
            double phAfter) {
        if (!(sampleL > 0 && millilitres > 0)) {
            throw new IllegalArgumentException(
                    "sampleL and millilitres must be above 0, were %s and %s"
                            .formatted(sampleL, millilitres));
        }
        OptionalDouble carbon = carbonForPh(sample, tempC, phBefore);
        if (carbon.isEmpty()) {
            return java.util.Optional.empty();
        }
        OptionalDouble dose =
                strongAcidMolPerM3(
                        sample.with(Component.C, carbon.getAsDouble()),
                        tempC,
                        phAfter,
                        Contact.CLOSED);
        if (dose.isEmpty()) {
            return java.util.Optional.empty();
        }
        // mmol/L times litres over millilitres: mol/L.
        double molPerL = dose.getAsDouble() * sampleL / millilitres;
        if (!(molPerL > 0 && molPerL <= STRONGEST_MOL_PER_L)) {
            return java.util.Optional.empty();
        }
        return java.util.Optional.of(
                Reagent.nitric().withMolPerL("own-ph-minus", "own pH minus, calibrated", molPerL));
    }

    /** Amount x of an addition so that the charge balances at the pH; charge is nearly linear. */
    static OptionalDouble root(
            Composition composition,
            Composition perMol,
            double tempC,
            double ph,
            Contact contact,
            double most) {
        if (!(ph >= 0 && ph <= 14)) {
            throw new IllegalArgumentException("ph must lie in 0 to 14, was " + ph);
        }
        SpeciationSolver solver = new SpeciationSolver();
        Equilibria k = Equilibria.at(tempC);
        double[] base = composition.toArray();
        double[] unit = perMol.toArray();
        double[] mixed = base.clone();
        double x0 = 0;
        double f0 = charge(solver, k, mixed, ph, contact);
        if (Math.abs(f0) <= CHARGE_TOLERANCE_MOL_PER_M3) {
            return OptionalDouble.of(0);
        }
        double x1 = 0.01 * Math.abs(f0);
        for (int n = 0; n < MAX_STEPS; n++) {
            for (int i = 0; i < mixed.length; i++) {
                mixed[i] = base[i] + x1 * unit[i];
            }
            double f1 = charge(solver, k, mixed, ph, contact);
            if (Math.abs(f1) <= CHARGE_TOLERANCE_MOL_PER_M3) {
                return OptionalDouble.of(x1);
            }
            if (f1 == f0) {
                return OptionalDouble.empty();
            }
            double next = x1 - f1 * (x1 - x0) / (f1 - f0);
            if (!(next > 0 && next < most)) {
                return OptionalDouble.empty();
            }
            x0 = x1;
            f0 = f1;
            x1 = next;
        }
        throw new ArithmeticException(
                "no dose found for pH %s: %s mol/m3 leaves a charge of %s mol/m3"
                        .formatted(ph, x1, f0));
    }

    private static double charge(
            SpeciationSolver solver, Equilibria k, double[] molPerM3, double ph, Contact contact) {
        if (contact instanceof Contact.InAir air) {
            solver.solveAtPhInAir(molPerM3, k, ph, air.co2Ppm() * 1e-6);
        } else {
            solver.solveAtPh(molPerM3, k, ph);
        }
        return solver.chargeMolPerKg() * 1e3;
    }
}
