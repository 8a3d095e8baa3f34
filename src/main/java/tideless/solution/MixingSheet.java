package tideless.solution;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What to weigh and pour, in order, with what the meters should show after each step.
 *
 * <p>EC is at 25 degC in outdoor air. pH is that of the closed solution just mixed; in air it
 * drifts to {@code phInAir}.
 *
 * @param volumeL litres in the end
 * @param strength of the label or recipe, 1 = full
 * @param steps in the order of pouring
 * @param composition in the end, mol/m3
 * @param ecMsPerCm in the end
 * @param phClosed in the end, CO2 kept
 * @param phInAir after standing in outdoor air
 * @param standingMillilitres of the acid in all, after which it reads the wished pH when it has
 *     stood in outdoor air; NaN where no acid was poured
 * @param cautions sentences for the person who pours
 */
public record MixingSheet(
        double volumeL,
        double strength,
        List<Step> steps,
        Composition composition,
        double ecMsPerCm,
        double phClosed,
        double phInAir,
        double standingMillilitres,
        List<String> cautions)
        implements MixingPlan {

    /** What is poured in a step. */
    public enum Kind {
        /** Solution taken out to make room. */
        TAKE_OUT,
        WATER,
        PART_A,
        PART_B,
        /** Iron and the other micronutrients, which no salt here holds: by their own label. */
        TRACE,
        ACID,
        BASE
    }

    /**
     * One pouring.
     *
     * @param what name of the liquid or salt
     * @param grams NaN where it is measured by volume, or by its own label
     * @param millilitres NaN where it is weighed, or by its own label
     * @param ecMsPerCm expected afterwards, at 25 degC
     * @param ph expected afterwards, CO2 kept
     */
    public record Step(
            Kind kind,
            String what,
            double grams,
            double millilitres,
            double ecMsPerCm,
            double ph) {}

    /** What the ions come from. */
    public sealed interface Supply {}

    /** Bottles with a label. */
    public record FromConcentrate(TwoPart parts) implements Supply {
        public FromConcentrate {
            Objects.requireNonNull(parts, "parts");
        }
    }

    /** Salts weighed straight into the vessel. */
    public record FromSalts(Weighing salts) implements Supply {
        public FromSalts {
            Objects.requireNonNull(salts, "salts");
        }
    }

    /**
     * What is wanted.
     *
     * @param volumeL finished solution
     * @param targetMsPerCm EC at 25 degC
     * @param targetPh empty where the pH is left as it falls
     * @param acid used where the mix reads above the target
     * @param base used where it reads below
     */
    public record Wish(
            double volumeL,
            double targetMsPerCm,
            OptionalDouble targetPh,
            SourceWater water,
            Supply supply,
            Reagent acid,
            Reagent base) {
        public Wish {
            if (!(volumeL > 0 && volumeL < 1e6)) {
                throw new IllegalArgumentException("volumeL must lie in (0, 1e6), was " + volumeL);
            }
            Objects.requireNonNull(targetPh, "targetPh");
            Objects.requireNonNull(water, "water");
            Objects.requireNonNull(supply, "supply");
            Objects.requireNonNull(acid, "acid");
            Objects.requireNonNull(base, "base");
        }
    }

    /** Share of the water that goes in first, so that there is room to stir; common practice. */
    private static final double FIRST_WATER_FRAC = 0.9;

    /** Difference of pH not worth a drop: what a good pen resolves. */
    private static final double PH_AS_GOOD = 0.05;

    public MixingSheet {
        steps = List.copyOf(steps);
        cautions = List.copyOf(cautions);
    }

    /** Works the sheet out. */
    public static MixingPlan of(Wish wish) {
        return of(wish, true);
    }

    /** The same for a feed whose wished pH is what it reads just mixed: no more acid is to come. */
    public static MixingPlan ofFeed(Wish wish) {
        return of(wish, false);
    }

    private static MixingPlan of(Wish wish, boolean asStood) {
        Composition water = wish.water().composition();
        Composition recipe = recipe(wish.supply());
        // The parts take room from the water: a few rounds settle it, for it is under 1 %.
        double displacedL = 0;
        double reagent = 0;
        Reagent used = null;
        Feed.Made made = null;
        for (int round = 0; round < 5; round++) {
            Composition share = water.times(1 - displacedL / wish.volumeL());
            if (used != null && used.carried()) {
                share = share.plus(used.perMol().times(reagent));
            }
            Feed.Outcome outcome = Feed.madeToEc(recipe, share, wish.targetMsPerCm());
            if (outcome.made().isEmpty()) {
                return new MixingPlan.Refused(inWords(outcome));
            }
            made = outcome.made().orElseThrow();
            displacedL = displacedL(wish, made.strength());
            if (wish.targetPh().isPresent()) {
                Composition bare =
                        water.times(1 - displacedL / wish.volumeL())
                                .plus(recipe.times(made.strength()));
                double ph = Acidity.phClosed(bare, 25);
                double target = wish.targetPh().getAsDouble();
                used = ph > target ? wish.acid() : wish.base();
                OptionalDouble dose =
                        Math.abs(ph - target) <= PH_AS_GOOD
                                ? OptionalDouble.empty()
                                : Acidity.doseMolPerM3(bare, 25, target, used, Contact.CLOSED);
                reagent = Math.min(dose.orElse(0), used.mostMolPerM3());
                displacedL += reagent * wish.volumeL() / used.molPerL() / 1000;
            }
        }
        return written(wish, made.strength(), displacedL, used, reagent, asStood);
    }

    private static final String NO_MORE = "No more phosphoric acid";

    /**
     * Where the acid stops.
     *
     * @param ph it leaves, CO2 kept
     * @param rainShareFrac of rain in the water that would do; empty for none
     */
    static String tooMuchPhosphate(double ph, OptionalDouble rainShareFrac) {
        return String.format(
                        Locale.ROOT,
                        NO_MORE
                                + " than brings 1 mmol/L of phosphate, a full feed's"
                                + " worth: it leaves pH %.1f. ",
                        ph)
                + (rainShareFrac.isEmpty()
                        ? "Rain or reverse-osmosis water in place of this water comes nearer."
                        : String.format(
                                Locale.ROOT,
                                "Rain or reverse-osmosis water for %.0f %% of this water would bring"
                                        + " it there.",
                                100 * rainShareFrac.getAsDouble()))
                + " Stronger acids are for trained staff.";
    }

    /** A kitchen scale shows whole grams: of less than this half may be missing, g; assumed. */
    private static final double LEAST_WEIGHED_G = 2;

    private static String tooLittle(double grams) {
        return String.format(
                Locale.ROOT,
                "A kitchen scale that shows whole grams does not weigh %.2f g: take one that shows"
                        + " 0.01 g, or ten times as much in a litre of water, and of that a tenth"
                        + " (label the rest, away from children).",
                grams);
    }

    private static MixingSheet written(
            Wish wish,
            double strength,
            double displacedL,
            Reagent used,
            double reagent,
            boolean asStood) {
        List<Step> steps = new ArrayList<>();
        Vessel vessel = new Vessel();
        Composition water = wish.water().composition();
        double waterL = wish.volumeL() - displacedL;
        double firstL = FIRST_WATER_FRAC * waterL;
        vessel.pour(water.times(firstL), firstL);
        steps.add(vessel.step(Kind.WATER, wish.water().title(), Double.NaN, firstL * 1000));
        if (wish.supply() instanceof FromConcentrate bottles) {
            TwoPart parts = bottles.parts();
            pourPart(steps, vessel, parts, Kind.PART_A, strength, wish.volumeL());
            pourPart(steps, vessel, parts, Kind.PART_B, strength, wish.volumeL());
        } else if (wish.supply() instanceof FromSalts weighed) {
            for (boolean calcium : new boolean[] {true, false}) {
                for (Map.Entry<Salt, Double> salt : weighed.salts().molPerM3().entrySet()) {
                    // Salts harmless in both go in with the calcium.
                    if ((salt.getKey().tank() != Salt.Tank.B) == calcium) {
                        double mmol = salt.getValue() * strength * wish.volumeL();
                        vessel.pour(salt.getKey().perMol().times(mmol), 0);
                        steps.add(
                                vessel.step(
                                        calcium ? Kind.PART_A : Kind.PART_B,
                                        salt.getKey().title(),
                                        mmol * salt.getKey().gramsPerMol() / 1000,
                                        Double.NaN));
                    }
                }
            }
            steps.add(
                    vessel.step(
                            Kind.TRACE,
                            "Chelated iron and trace elements",
                            Double.NaN,
                            Double.NaN));
        } else {
            throw new AssertionError("no way to pour " + wish.supply());
        }
        vessel.pour(water.times(waterL - firstL), waterL - firstL);
        steps.add(
                vessel.step(
                        Kind.WATER, wish.water().title(), Double.NaN, (waterL - firstL) * 1000));
        List<String> cautions = new ArrayList<>(GENERAL);
        if (wish.supply() instanceof FromConcentrate bottles) {
            cautionOfBottles(bottles.parts(), cautions);
        }
        if (wish.supply() instanceof FromSalts) {
            cautions.add(
                    "Iron and the other micronutrients are not among these salts, and without them"
                            + " leaves turn pale within weeks: pour a chelated trace mix by its own"
                            + " label.");
            steps.stream()
                    .mapToDouble(Step::grams)
                    .filter(grams -> grams < LEAST_WEIGHED_G)
                    .min()
                    .ifPresent(grams -> cautions.add(tooLittle(grams)));
        }
        double standingMillilitres = Double.NaN;
        if (used != null && reagent > 0) {
            if (used.isAcid() && asStood) {
                standingMillilitres =
                        Acidity.doseMolPerM3(
                                                vessel.composition(),
                                                25,
                                                wish.targetPh().orElseThrow(),
                                                used,
                                                Contact.OUTDOOR_AIR)
                                        .orElse(0)
                                * wish.volumeL()
                                / used.molPerL();
            }
            double mmol = reagent * wish.volumeL();
            double millilitres = mmol / used.molPerL();
            vessel.pour(used.perMol().times(mmol), millilitres / 1000);
            Step step =
                    vessel.step(
                            used.equals(wish.acid()) ? Kind.ACID : Kind.BASE,
                            used.title(),
                            Double.NaN,
                            millilitres);
            if (!used.carried()) {
                step =
                        new Step(
                                step.kind(),
                                step.what(),
                                step.grams(),
                                step.millilitres(),
                                step.ecMsPerCm(),
                                wish.targetPh().orElseThrow());
            }
            steps.add(step);
            cautions.add(used.caution());
            if (reagent >= used.mostMolPerM3()) {
                OptionalDouble rain =
                        Feed.rainShareFrac(
                                recipe(wish.supply()),
                                wish.water().composition(),
                                wish.targetMsPerCm(),
                                wish.targetPh().orElseThrow(),
                                used,
                                Contact.CLOSED);
                cautions.add(tooMuchPhosphate(step.ph(), rain));
            }
            cautions.add(
                    "Pour two thirds of it, stir, wait ten minutes, measure, then pour the rest as"
                            + " needed: the figures of a label and of a water are seldom exact.");
            if (millilitres < 2) {
                cautions.add(
                        String.format(
                                Locale.ROOT,
                                "%.2f mL is too little to measure: thin the reagent 1:20 with water"
                                        + " first.",
                                millilitres));
            }
        } else if (wish.targetPh().isPresent()
                && Math.abs(vessel.ph() - wish.targetPh().getAsDouble()) > PH_AS_GOOD) {
            cautions.add("The pH asked for cannot be reached with the reagents named.");
        }
        Composition end = vessel.composition();
        double phInAir = Acidity.phInAir(end, 25, ElectricalConductivity.AIR_CO2_PPM);
        double phClosed = steps.get(steps.size() - 1).ph();
        if (phInAir - phClosed > 0.3) {
            cautions.add(
                    String.format(
                            Locale.ROOT,
                            "It reads pH %.1f now and drifts towards %.1f as CO2 leaves the open"
                                    + " tray: measure again after a day.",
                            phClosed,
                            phInAir));
            if (standingMillilitres > 0
                    && !(used.perMol().molPerM3(Component.P) * standingMillilitres * used.molPerL()
                            > wish.volumeL() * Reagent.MOST_PHOSPHATE_MOL_PER_M3)) {
                cautions.add(
                        String.format(
                                Locale.ROOT,
                                "To read pH %.1f once it has stood it takes %.1f mL of %s in all, the"
                                        + " rest after that day: so is the feed of a scenario.",
                                wish.targetPh().orElseThrow(),
                                standingMillilitres,
                                used.title()));
            }
        }
        if (wish.supply() instanceof FromConcentrate bottles
                && Math.abs(bottles.parts().chargeErrorMolPerM3())
                        > 0.05 * bottles.parts().atLabelStrength().molPerM3(Component.NO3)) {
            cautions.add(
                    String.format(
                            Locale.ROOT,
                            "The two labels do not balance: %.2f mmol/L of charge at full strength"
                                    + " is not named on them and was counted as %s, so EC and pH"
                                    + " are less sure.",
                            Math.abs(bottles.parts().chargeErrorMolPerM3()),
                            bottles.parts().chargeErrorMolPerM3() > 0 ? "chloride" : "sodium"));
        }
        Speciation settled = Speciation.closed(end, 25);
        boolean acidStopped = cautions.stream().anyMatch(told -> told.startsWith(NO_MORE));
        if (SaturationIndex.brushite(settled) > 0) {
            cautions.add(
                    "Calcium phosphate may fall out of this mix: "
                            + (acidStopped ? "softer water, or a leaner mix." : "lower the pH."));
        }
        if (SaturationIndex.gypsum(settled) > 0) {
            // sulfate is no weaker for acid
            cautions.add("Gypsum may fall out of this mix: softer water, or a leaner mix.");
        }
        return new MixingSheet(
                wish.volumeL(),
                strength,
                steps,
                end,
                ElectricalConductivity.at25MsPerCm(end),
                phClosed,
                phInAir,
                standingMillilitres,
                cautions);
    }

    private static void pourPart(
            List<Step> steps,
            Vessel vessel,
            TwoPart parts,
            Kind kind,
            double strength,
            double volumeL) {
        Concentrate part = kind == Kind.PART_A ? parts.a() : parts.b();
        double grams = strength * parts.gramsPerL() * volumeL;
        double millilitres = part.millilitres(grams);
        // mol/kg times g is mmol. The tracer comes by halves: each part holds some of the traces.
        Composition mmol =
                part.molPerKg().times(grams).with(Component.TRACER, 0.5 * strength * volumeL);
        // Which part holds the ions the labels do not name, nobody can tell: counted with the last.
        // Until then a meter reads a part that is neutral by itself.
        boolean last = kind == Kind.PART_B;
        if (last) {
            mmol = mmol.plus(parts.unnamed().times(strength * volumeL));
        }
        Composition unnamed =
                last ? Composition.WATER : parts.unnamed(part).times(strength * volumeL);
        vessel.pour(mmol, Double.isNaN(millilitres) ? 0 : millilitres / 1000);
        steps.add(vessel.step(kind, part.name(), grams, millilitres, unnamed));
    }

    /**
     * What these two bottles in particular would drop if one went into the other, and a bottle that
     * could not be as its label was typed: thinned to half it would still drop gypsum, whatever its
     * pH. Of one that tells no density nothing is known to be dissolved.
     */
    private static void cautionOfBottles(TwoPart parts, List<String> cautions) {
        for (Concentrate part : List.of(parts.a(), parts.b())) {
            double kgPerM3 = part.densityKgPerL() * 1000;
            if (!Double.isNaN(kgPerM3) && dropsGypsum(part.molPerKg().times(kgPerM3))) {
                cautions.add(
                        "As typed, %s holds calcium with sulfate, and no bottle stays clear so: read"
                                        .formatted(part.name())
                                + " both labels again, maybe a term stands in the wrong one.");
            }
        }
        double a = parts.a().densityKgPerL() * 1000;
        double b = parts.b().densityKgPerL() * 1000;
        if (Double.isNaN(a + b)) {
            return; // powders: nothing is dissolved yet
        }
        StockSolution together =
                StockSolution.checkTogether(
                        parts.a().molPerKg().times(a),
                        parts.b().molPerKg().times(b),
                        20,
                        StockSolution.USUAL_PH);
        if (together.gypsumMolPerM3() > 1) {
            cautions.add(
                    String.format(
                            Locale.ROOT,
                            "These two poured together undiluted would drop about %.0f g of gypsum"
                                    + " a litre%s.",
                            together.gypsumMolPerM3() * GYPSUM_KG_PER_MOL,
                            together.brushiteIndex() > 0 ? ", and calcium phosphate" : ""));
        } else if (together.brushiteIndex() > 0) {
            cautions.add("These two poured together undiluted would drop calcium phosphate.");
        }
    }

    private static boolean dropsGypsum(Composition bottle) {
        boolean holdsBoth = bottle.molPerM3(Component.CA) > 0 && bottle.molPerM3(Component.SO4) > 0;
        return holdsBoth
                && StockSolution.checkTogether(
                                        bottle, Composition.WATER, 20, StockSolution.USUAL_PH)
                                .gypsumMolPerM3()
                        > 1;
    }

    /** CaSO4.2H2O, 172.17 g/mol: standard atomic weights. */
    private static final double GYPSUM_KG_PER_MOL = 0.17217;

    static Composition recipe(Supply supply) {
        if (supply instanceof FromConcentrate bottles) {
            return bottles.parts().balancedAtLabelStrength();
        }
        if (supply instanceof FromSalts weighed) {
            return weighed.salts().composition();
        }
        throw new AssertionError("no recipe for " + supply);
    }

    /** Litres the bottles take up in the finished volume; salts and powders count as nothing. */
    private static double displacedL(Wish wish, double strength) {
        if (!(wish.supply() instanceof FromConcentrate bottles)) {
            return 0;
        }
        double grams = strength * bottles.parts().gramsPerL() * wish.volumeL();
        double a = bottles.parts().a().millilitres(grams);
        double b = bottles.parts().b().millilitres(grams);
        return ((Double.isNaN(a) ? 0 : a) + (Double.isNaN(b) ? 0 : b)) / 1000;
    }

    /** Why a feed cannot be made, with the figures. */
    public static String inWords(Feed.Outcome outcome) {
        if (outcome instanceof Feed.WaterTooSalty salty) {
            return String.format(
                    Locale.ROOT,
                    "The water alone reads %.2f mS/cm, above the target of %.2f: thin it with rain"
                            + " or reverse-osmosis water, or aim higher.",
                    salty.waterMsPerCm(),
                    salty.targetMsPerCm());
        }
        if (outcome instanceof Feed.OutOfReach far) {
            return String.format(
                    Locale.ROOT,
                    "Even twenty times full strength reads %.2f mS/cm, below the target of %.2f.",
                    far.highestMsPerCm(),
                    far.targetMsPerCm());
        }
        if (outcome instanceof Feed.Made made) {
            return String.format(Locale.ROOT, "It reads %.2f mS/cm.", made.ecMsPerCm());
        }
        throw new AssertionError("no words for " + outcome);
    }

    private static final List<String> GENERAL =
            List.of(
                    "Never pour part A and part B together undiluted: gypsum and calcium phosphate"
                            + " fall out. Stir between the two.",
                    "Keep concentrates and acids locked away from children and apart from food.",
                    "Meters are to be checked in a standard first; EC is meant at 25 degC.");

    /** What has been poured so far; lives inside one call. */
    private static final class Vessel {
        private Composition millimoles = Composition.WATER;
        private double litres;

        /** Amounts in mmol, held in a composition for their names. */
        void pour(Composition mmol, double volumeL) {
            millimoles = millimoles.plus(mmol);
            litres += volumeL;
        }

        Composition composition() {
            return millimoles.times(1 / litres);
        }

        double ph() {
            return Acidity.phClosed(composition(), 25);
        }

        Step step(Kind kind, String what, double grams, double millilitres) {
            return step(kind, what, grams, millilitres, Composition.WATER);
        }

        /** With ions beside, mmol, that are in it for this reading only. */
        Step step(Kind kind, String what, double grams, double millilitres, Composition beside) {
            Composition read = millimoles.plus(beside).times(1 / litres);
            return new Step(
                    kind,
                    what,
                    grams,
                    millilitres,
                    ElectricalConductivity.at25MsPerCm(read),
                    Acidity.phClosed(read, 25));
        }
    }
}
