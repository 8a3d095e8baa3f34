package tideless.solution;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.util.FastMath;

/** What a chemist may ask of a solution and no run does; tests do. */
public final class ClosedForms {
    private ClosedForms() {}

    /**
     * EC at a temperature and a stated pH, mS/cm; carbon as carried.
     *
     * @param tempC degC, 0 to 50
     * @param ph 0 to 14
     */
    public static double msPerCm(Composition composition, double tempC, double ph) {
        return Speciation.atPh(composition, tempC, ph).ecMsPerCm();
    }

    /**
     * What a meter with linear compensation shows: true EC over 1 + alpha (t - 25).
     *
     * <p>ISO 7888 gives natural waters a curved correction instead (factor 1.116 at 20 degC, 1.428
     * at 10; from memory): such a meter shows 1 to 3 % otherwise. For nutrient solution the
     * straight line with alpha 0.019 is within 2.5 % from 5 to 35 degC.
     *
     * @param trueMsPerCm EC at the solution's temperature, mS/cm
     * @param tempC of the solution, degC
     * @param alphaPerK 1/K, 0 for a meter without compensation
     * @return mS/cm referred to 25 degC
     */
    public static double meterMsPerCm(double trueMsPerCm, double tempC, double alphaPerK) {
        double factor = 1 + alphaPerK * (tempC - 25);
        if (!(factor > 0)) {
            throw new IllegalArgumentException(
                    "compensation has no meaning at %s degC with alpha %s"
                            .formatted(tempC, alphaPerK));
        }
        return trueMsPerCm / factor;
    }

    /** The reading a compensating meter gives of a composition at a temperature, mS/cm. */
    public static double meterMsPerCm(Composition composition, double tempC, double alphaPerK) {
        return meterMsPerCm(ElectricalConductivity.msPerCm(composition, tempC), tempC, alphaPerK);
    }

    /** The same with the nitric acid that brings it to a pH. */
    public static Feed.Outcome madeToEcAndPh(
            Composition recipe,
            Composition water,
            double targetMsPerCm,
            double targetPh,
            Contact contact) {
        return Feed.madeToEcAndPh(
                recipe, water, targetMsPerCm, targetPh, Reagent.nitric(), contact);
    }

    /**
     * The same from a reading: the strength of the recipe in its water is first set so that the
     * reading is met.
     *
     * @param recipe at full strength
     * @param water it was made with and is thinned with
     * @param readMsPerCm the reading at 25 degC
     * @return empty where the water itself reads the target or more, or the reading is no mix of
     *     the two
     */
    public static Optional<Dilution> fromReading(
            Composition recipe,
            Composition water,
            double readMsPerCm,
            double volumeL,
            double vesselL,
            double targetMsPerCm) {
        return Feed.madeToEc(recipe, water, readMsPerCm)
                .made()
                .flatMap(
                        made ->
                                Dilution.toEc(
                                        made.composition(),
                                        volumeL,
                                        vesselL,
                                        water,
                                        targetMsPerCm));
    }

    /**
     * A label (oxides, as most print it) from ions a kg of product.
     *
     * @param molPerKg as a composition whose numbers are mol/kg
     */
    public static Concentrate of(String name, Composition molPerKg, double densityKgPerL) {
        Map<LabelTerm, Double> label = new EnumMap<>(LabelTerm.class);
        for (LabelTerm term :
                new LabelTerm[] {
                    LabelTerm.NITRATE_N,
                    LabelTerm.AMMONIUM_N,
                    LabelTerm.P2O5,
                    LabelTerm.K2O,
                    LabelTerm.CAO,
                    LabelTerm.MGO,
                    LabelTerm.SO3,
                    LabelTerm.NA,
                    LabelTerm.CL
                }) {
            double amount = molPerKg.molPerM3(term.component());
            if (amount > 0) {
                label.put(term, amount / term.molPerKg(1));
            }
        }
        return new Concentrate(name, label, densityKgPerL);
    }

    /** Saturation index of calcite, log10, in air. */
    public static double calciteInAir(Composition solution, double tempC, double co2Ppm) {
        return calcite(Speciation.inAir(solution, tempC, co2Ppm));
    }

    /** Calcite, CaCO3; Plummer and Busenberg (1982), log K -8.48 at 25 degC. */
    public static double calcite(Speciation s) {
        return FastMath.log10(s.activity(Species.CA) * s.activity(Species.CO3))
                - Equilibria.at(s.tempC()).logKspCalcite;
    }

    /**
     * Strong base (as potassium hydroxide) that brings a solution to a pH, mol/m3.
     *
     * @return empty when the solution lies at or above that pH already
     */
    public static OptionalDouble strongBaseMolPerM3(
            Composition composition, double tempC, double targetPh, Contact contact) {
        return Acidity.root(
                composition, Composition.WATER.with(Component.K, 1), tempC, targetPh, contact, 1e4);
    }

    /**
     * Works the dose out.
     *
     * @param composition as believed
     * @param tempC degC, 0 to 50
     * @param readPh the reading
     * @param targetPh the wish
     * @return empty where the reagent moves pH the other way
     */
    public static Optional<PhCorrection> of(
            Composition composition,
            double tempC,
            double readPh,
            double targetPh,
            Reagent reagent) {
        PhCorrection.Fit fit = PhCorrection.fitted(composition, tempC, readPh);
        OptionalDouble closed =
                Acidity.doseMolPerM3(fit.composition(), tempC, targetPh, reagent, Contact.CLOSED);
        if (closed.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble air =
                Acidity.doseMolPerM3(
                        fit.composition(), tempC, targetPh, reagent, Contact.OUTDOOR_AIR);
        Composition after = fit.composition().plus(reagent.perMol().times(closed.getAsDouble()));
        Composition drifting = after;
        if (!reagent.carried()) {
            // The acid's charge as nitrate, so that the drift can be told.
            double strong =
                    Acidity.strongAcidMolPerM3(fit.composition(), tempC, targetPh, Contact.CLOSED)
                            .orElse(0);
            drifting = after.with(Component.NO3, after.molPerM3(Component.NO3) + strong);
        }
        double drift = Acidity.phInAir(drifting, tempC, ElectricalConductivity.AIR_CO2_PPM);
        return Optional.of(
                new PhCorrection(
                        reagent,
                        closed.getAsDouble(),
                        air,
                        drift,
                        fit.composition(),
                        after,
                        fit.basis()));
    }
}
