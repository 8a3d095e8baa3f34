package tideless.solution;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Acid or base that brings a solution from the pH somebody read to the pH wished for.
 *
 * @param reagent what is poured
 * @param closedMolPerM3 dose if the CO2 stays in: what to pour now
 * @param inAirMolPerM3 dose after which it reads the target when it has stood in outdoor air; above
 *     the closed dose for an acid, for the rest of the bicarbonate then counts too
 * @param driftPh pH the closed dose drifts to in outdoor air
 * @param before composition that reads the pH before
 * @param after composition with the closed dose (a reagent that no component carries: unchanged)
 * @param basis how the pH before was explained
 */
record PhCorrection(
        Reagent reagent,
        double closedMolPerM3,
        OptionalDouble inAirMolPerM3,
        double driftPh,
        Composition before,
        Composition after,
        Basis basis) {

    /** How a solution was made to fit the pH that was read. */
    public enum Basis {
        /** Its inorganic carbon was set: more or less CO2 than carried. */
        CARBON("carbon dioxide explains the reading"),
        /** Base the figures do not hold was added, as sodium. */
        MORE_BASE("the reading needs more base than the figures hold"),
        /** Acid the figures do not hold was added. */
        MORE_ACID("the reading needs more acid than the figures hold");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        /** For a reader. */
        public String words() {
            return words;
        }
    }

    /** Most CO2 believed of a tap water or a solution, atm; common practice, no source. */
    private static final double MOST_CO2_ATM = 0.05;

    public PhCorrection {
        Objects.requireNonNull(reagent, "reagent");
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(after, "after");
        Objects.requireNonNull(basis, "basis");
    }

    /**
     * A composition that reads a pH, nothing else changed but what a grower cannot know: first its
     * carbon (CO2 lost or taken up), and where no believable carbon does it, base (sodium, the
     * carbon left as it is) or acid (nitrate) that label and water analysis do not name.
     *
     * @param tempC degC, 0 to 50
     */
    public static Fit fitted(Composition composition, double tempC, double readPh) {
        OptionalDouble carbon = Acidity.carbonForPh(composition, tempC, readPh);
        if (carbon.isPresent()) {
            Composition fit = composition.with(Component.C, carbon.getAsDouble());
            double pressure = Speciation.atPh(fit, tempC, readPh).co2PressureAtm();
            // Less CO2 than outdoor air holds is no loss of gas: it is base the figures lack.
            double air = ElectricalConductivity.AIR_CO2_PPM * 1e-6;
            if (pressure <= MOST_CO2_ATM && pressure >= air / 2) {
                return new Fit(fit, Basis.CARBON);
            }
        }
        double ph = Acidity.phClosed(composition, tempC);
        if (ph > readPh) {
            double acid =
                    Acidity.strongAcidMolPerM3(composition, tempC, readPh, Contact.CLOSED)
                            .orElse(0);
            return new Fit(
                    composition.with(Component.NO3, composition.molPerM3(Component.NO3) + acid),
                    Basis.MORE_ACID);
        }
        double base =
                Acidity.doseMolPerM3(composition, tempC, readPh, SODIUM, Contact.CLOSED).orElse(0);
        return new Fit(composition.plus(SODIUM.perMol().times(base)), Basis.MORE_BASE);
    }

    /** Charge without a name: the ion that analyses and labels leave out most. */
    private static final Reagent SODIUM =
            new Reagent(
                    "sodium",
                    "unnamed base as sodium",
                    Composition.WATER.with(Component.NA, 1),
                    List.of(),
                    1,
                    1,
                    "");

    /**
     * A composition fitted to a pH.
     *
     * @param composition reads it, closed
     * @param basis what was changed
     */
    public record Fit(Composition composition, Basis basis) {}
}
