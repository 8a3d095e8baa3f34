package tideless.solution;

import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.util.FastMath;

/** A recipe in a water, made to a target EC and pH. */
public final class Feed {
    /** Strongest feed looked for, times full strength; far above use and still inside Davies. */
    static final double MAX_STRENGTH = 20;

    private Feed() {}

    /** What came of the wish. */
    public sealed interface Outcome {
        /** The feed, or empty where there is none. */
        default java.util.Optional<Made> made() {
            return this instanceof Made made
                    ? java.util.Optional.of(made)
                    : java.util.Optional.empty();
        }
    }

    /**
     * It can be made.
     *
     * @param strength of the recipe, 1 = full
     * @param reagentMolPerM3 acid or base in it, 0 where none was asked for or needed
     * @param composition water, recipe and reagent
     * @param ecMsPerCm read at 25 degC in air
     * @param ph in the contact asked for (in air where none was)
     * @param phReached false where the pH lies on the wrong side and this reagent cannot help
     */
    public record Made(
            double strength,
            double reagentMolPerM3,
            Composition composition,
            double ecMsPerCm,
            double ph,
            boolean phReached)
            implements Outcome {}

    /**
     * The water alone (with the reagent its pH needs) reads more than the target.
     *
     * @param waterMsPerCm what it reads
     * @param targetMsPerCm what was asked
     */
    public record WaterTooSalty(double waterMsPerCm, double targetMsPerCm) implements Outcome {}

    /**
     * Even the strongest mix looked for reads less than the target.
     *
     * @param highestMsPerCm what twenty times full strength reads
     * @param targetMsPerCm what was asked
     */
    public record OutOfReach(double highestMsPerCm, double targetMsPerCm) implements Outcome {}

    /**
     * Strength of a recipe so that water + strength * recipe reads a target EC at 25 degC in air.
     *
     * @param recipe at full strength, mol/m3
     * @param water mol/m3
     * @param targetMsPerCm above 0
     */
    public static Outcome madeToEc(Composition recipe, Composition water, double targetMsPerCm) {
        return made(recipe, water, targetMsPerCm, Double.NaN, null, Contact.OUTDOOR_AIR);
    }

    /**
     * The same with the reagent that brings it to a pH at 25 degC; its ions count in the EC.
     *
     * @param contact kept closed (as just mixed) or after standing in air
     */
    public static Outcome madeToEcAndPh(
            Composition recipe,
            Composition water,
            double targetMsPerCm,
            double targetPh,
            Reagent reagent,
            Contact contact) {
        if (!reagent.carried()) {
            throw new IllegalArgumentException(
                    "a feed cannot carry %s: no component stands for its anion"
                            .formatted(reagent.title()));
        }
        return made(recipe, water, targetMsPerCm, targetPh, reagent, contact);
    }

    /**
     * The same with no more of the reagent than {@link Reagent#mostMolPerM3}: where that stops it,
     * {@code phReached} is false, {@code reagentMolPerM3} that most and {@code ph} what it leaves.
     */
    public static Outcome madeWithinCap(
            Composition recipe,
            Composition water,
            double targetMsPerCm,
            double targetPh,
            Reagent reagent,
            Contact contact) {
        Outcome free = madeToEcAndPh(recipe, water, targetMsPerCm, targetPh, reagent, contact);
        double most = reagent.mostMolPerM3();
        boolean within = free instanceof Made made && made.reagentMolPerM3() <= most;
        if (within || Double.isInfinite(most)) {
            return free;
        }
        Composition acid = reagent.perMol().times(most);
        Outcome capped = madeToEc(recipe, water.plus(acid), targetMsPerCm);
        if (!(capped instanceof Made made)) {
            return capped;
        }
        return new Made(
                made.strength(),
                most,
                made.composition(),
                made.ecMsPerCm(),
                Acidity.ph(made.composition(), 25, contact),
                false);
    }

    /** Shares of rain are told in steps of this, 1 = all: what a watering can measures. */
    private static final double RAIN_STEP = 0.05;

    /**
     * Share of rain in a water with which an acid reaches a pH within its cap, by the twentieth.
     *
     * @return empty where not even rain alone does
     */
    public static OptionalDouble rainShareFrac(
            Composition recipe,
            Composition water,
            double targetMsPerCm,
            double targetPh,
            Reagent reagent,
            Contact contact) {
        int low = -1;
        int high = (int) FastMath.round(1 / RAIN_STEP) + 1;
        while (high - low > 1) {
            int mid = (low + high) / 2;
            double share = mid * RAIN_STEP;
            Composition mixed = SourceWater.withRain(water, share);
            Outcome outcome =
                    madeWithinCap(recipe, mixed, targetMsPerCm, targetPh, reagent, contact);
            // Without any acid it lies at the pH or below: a little base does the rest.
            boolean does =
                    outcome instanceof Made made
                            && (made.phReached() || made.reagentMolPerM3() == 0);
            if (does) {
                high = mid;
            } else {
                low = mid;
            }
        }
        double share = high * RAIN_STEP;
        return share > 1 + RAIN_STEP / 2 ? OptionalDouble.empty() : OptionalDouble.of(share);
    }

    private static Outcome made(
            Composition recipe,
            Composition water,
            double targetMsPerCm,
            double targetPh,
            Reagent reagent,
            Contact contact) {
        if (!(targetMsPerCm > 0 && targetMsPerCm < 100)) {
            throw new IllegalArgumentException(
                    "targetMsPerCm must lie in (0, 100), was " + targetMsPerCm);
        }
        Meter meter = new Meter(ElectricalConductivity.AIR_CO2_PPM);
        double waterMsPerCm = ec(meter, recipe, water, 0, targetPh, reagent, contact);
        if (waterMsPerCm > targetMsPerCm) {
            return new WaterTooSalty(waterMsPerCm, targetMsPerCm);
        }
        double high = 1;
        double highMsPerCm = ec(meter, recipe, water, high, targetPh, reagent, contact);
        while (highMsPerCm < targetMsPerCm) {
            if (high >= MAX_STRENGTH) {
                return new OutOfReach(highMsPerCm, targetMsPerCm);
            }
            high = Math.min(2 * high, MAX_STRENGTH);
            highMsPerCm = ec(meter, recipe, water, high, targetPh, reagent, contact);
        }
        double strength =
                new BrentSolver(1e-12, 1e-12)
                        .solve(
                                200,
                                s ->
                                        ec(meter, recipe, water, s, targetPh, reagent, contact)
                                                - targetMsPerCm,
                                0,
                                high);
        Composition plain = water.plus(recipe.times(strength));
        OptionalDouble dose = dose(plain, targetPh, reagent, contact);
        Composition composition =
                dose.isPresent() && reagent != null
                        ? plain.plus(reagent.perMol().times(dose.getAsDouble()))
                        : plain;
        return new Made(
                strength,
                dose.orElse(0),
                composition,
                ElectricalConductivity.at25MsPerCm(composition),
                Acidity.ph(composition, 25, contact),
                reagent == null || dose.isPresent());
    }

    private static OptionalDouble dose(
            Composition plain, double targetPh, Reagent reagent, Contact contact) {
        return reagent == null
                ? OptionalDouble.of(0)
                : Acidity.doseMolPerM3(plain, 25, targetPh, reagent, contact);
    }

    private static double ec(
            Meter meter,
            Composition recipe,
            Composition water,
            double strength,
            double targetPh,
            Reagent reagent,
            Contact contact) {
        Composition plain = water.plus(recipe.times(strength));
        double dose = dose(plain, targetPh, reagent, contact).orElse(0);
        Composition whole =
                reagent == null || dose == 0 ? plain : plain.plus(reagent.perMol().times(dose));
        meter.read(whole.toArray());
        return meter.ecMsPerCm();
    }
}
