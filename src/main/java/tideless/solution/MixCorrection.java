package tideless.solution;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * What to pour when the meters read something else than the sheet said.
 *
 * <p>The solution is first made to fit the reading: the strength of the feed in its water by the
 * EC, then its carbon, or base or acid that no label names, by the pH ({@link PhCorrection}). From
 * there water thins it or more feed strengthens it, and acid or base brings the pH; the EC meant is
 * that of the end, with the ions of the acid counted.
 *
 * @param reading what it starts from
 * @param basis how the pH read was explained; null where none was read
 * @param steps in the order of pouring, with what the meters should show after each
 * @param volumeL litres in the end
 * @param stepRuleL water the straight-line rule would add, for comparison; 0 where none is needed
 * @param inAirMillilitres of the acid or base after which it reads the target when it has stood in
 *     outdoor air; NaN where none is needed or none does
 * @param ecMsPerCm in the end, at 25 degC
 * @param ph in the end, CO2 kept; NaN where no pH was read
 * @param phInAir where that pH drifts to in outdoor air; NaN where no pH was read
 * @param cautions sentences for the person who pours
 */
public record MixCorrection(
        Reading reading,
        PhCorrection.Basis basis,
        List<MixingSheet.Step> steps,
        double volumeL,
        double stepRuleL,
        double inAirMillilitres,
        double ecMsPerCm,
        double ph,
        double phInAir,
        List<String> cautions)
        implements MixingPlan {

    /**
     * What was read.
     *
     * @param ecMsPerCm at 25 degC; empty where it is as the sheet says
     * @param ph empty where none was read
     * @param volumeL litres there are
     * @param vesselL litres the vessel holds
     */
    public record Reading(
            OptionalDouble ecMsPerCm, OptionalDouble ph, double volumeL, double vesselL) {
        public Reading {
            Objects.requireNonNull(ecMsPerCm, "ecMsPerCm");
            Objects.requireNonNull(ph, "ph");
            if (!(volumeL > 0 && vesselL >= volumeL)) {
                throw new IllegalArgumentException(
                        "needs 0 < volumeL <= vesselL, had %s and %s".formatted(volumeL, vesselL));
            }
        }
    }

    /** EC a pocket meter cannot tell apart, mS/cm: its last digit and a half; assumed. */
    private static final double EC_AS_GOOD = 0.015;

    /** pH not worth a drop: what a good pen resolves. */
    private static final double PH_AS_GOOD = 0.05;

    /** EC within which the end meets the wish, mS/cm: far below a meter's last digit. */
    private static final double SOLVED_MS_PER_CM = 1e-7;

    public MixCorrection {
        steps = List.copyOf(steps);
        cautions = List.copyOf(cautions);
    }

    /**
     * Works it out.
     *
     * @param sheet what was poured
     * @return or why not, in words
     */
    public static MixingPlan of(MixingSheet.Wish wish, MixingSheet sheet, Reading reading) {
        Composition recipe = MixingSheet.recipe(wish.supply());
        Composition water = wish.water().composition();
        Composition start = sheet.composition();
        PhCorrection.Basis basis = null;
        double read = reading.ecMsPerCm().orElse(sheet.ecMsPerCm());
        double aim = read;
        // What explains the pH has ions too: a few rounds until both readings are met.
        for (int round = 0; round < 30; round++) {
            if (reading.ecMsPerCm().isPresent()) {
                Feed.Outcome fit = Feed.madeToEc(recipe, water, aim);
                if (fit.made().isEmpty()) {
                    return new MixingPlan.Refused(
                            String.format(
                                    Locale.ROOT,
                                    "A reading of %.2f mS/cm cannot be this feed in this water: %s",
                                    read,
                                    MixingSheet.inWords(fit)));
                }
                start = fit.made().orElseThrow().composition();
            }
            if (reading.ph().isEmpty()) {
                break;
            }
            PhCorrection.Fit fit = PhCorrection.fitted(start, 25, reading.ph().getAsDouble());
            start = fit.composition();
            basis = fit.basis();
            double error = ElectricalConductivity.at25MsPerCm(start) - read;
            if (reading.ecMsPerCm().isEmpty() || Math.abs(error) < SOLVED_MS_PER_CM) {
                break;
            }
            aim -= error;
            if (!(aim > 0)) {
                return new MixingPlan.Refused(
                        String.format(
                                Locale.ROOT,
                                "No solution reads %.2f mS/cm and pH %.1f: what its pH takes reads"
                                        + " more by itself. Check both meters in their standards.",
                                read,
                                reading.ph().getAsDouble()));
            }
        }
        double target = wish.targetMsPerCm();
        boolean differs = Math.abs(read - target) > EC_AS_GOOD;
        for (int round = 0; ; round++) {
            MixingPlan plan = poured(wish, reading, start, basis, recipe, target, differs);
            if (!(plan instanceof MixCorrection done)) {
                return plan;
            }
            double error = done.ecMsPerCm - wish.targetMsPerCm();
            if (!differs || Math.abs(error) < SOLVED_MS_PER_CM || round == 30) {
                return done;
            }
            target -= error;
            if (!(target > 0)) {
                return new MixingPlan.Refused(
                        String.format(
                                Locale.ROOT,
                                "What brings the pH reads more than %.2f mS/cm by itself: aim"
                                        + " higher.",
                                wish.targetMsPerCm()));
            }
        }
    }

    private static MixingPlan poured(
            MixingSheet.Wish wish,
            Reading reading,
            Composition start,
            PhCorrection.Basis basis,
            Composition recipe,
            double target,
            boolean differs) {
        List<MixingSheet.Step> steps = new ArrayList<>();
        List<String> cautions = new ArrayList<>();
        Composition now = start;
        double volumeL = reading.volumeL();
        double stepRuleL = 0;
        boolean strong = ElectricalConductivity.at25MsPerCm(start) > target;
        if (differs && strong) {
            Composition water = wish.water().composition();
            Dilution d =
                    Dilution.toEc(start, volumeL, reading.vesselL(), water, target).orElse(null);
            if (d == null) {
                return new MixingPlan.Refused(
                        String.format(
                                Locale.ROOT,
                                "The water alone reads %.2f mS/cm: it cannot thin the solution to"
                                        + " %.2f.",
                                ElectricalConductivity.at25MsPerCm(water),
                                wish.targetMsPerCm()));
            }
            if (d.takeOutL() > 0) {
                steps.add(step(MixingSheet.Kind.TAKE_OUT, "solution", d.takeOutL() * 1000, start));
                cautions.add(
                        "Keep what is taken out: it is good feed, thinned with the same share"
                                + " of water.");
            }
            now = d.after();
            volumeL = d.volumeL();
            stepRuleL = d.stepRuleL();
            steps.add(step(MixingSheet.Kind.WATER, wish.water().title(), d.addL() * 1000, now));
        } else if (differs) {
            now = strengthened(wish, start, recipe, target, volumeL, steps);
            if (now == null) {
                return new MixingPlan.Refused(
                        String.format(
                                Locale.ROOT,
                                "Even twenty times full strength does not bring it to %.2f mS/cm.",
                                wish.targetMsPerCm()));
            }
        }
        double ph = Double.NaN;
        double phInAir = Double.NaN;
        double inAirMillilitres = Double.NaN;
        if (reading.ph().isPresent()) {
            ph = Acidity.phClosed(now, 25);
            Composition drifting = now;
            if (wish.targetPh().isPresent()
                    && Math.abs(ph - wish.targetPh().getAsDouble()) > PH_AS_GOOD) {
                double wanted = wish.targetPh().getAsDouble();
                boolean sour = ph > wanted;
                Reagent reagent = sour ? wish.acid() : wish.base();
                OptionalDouble dose =
                        Acidity.doseMolPerM3(now, 25, wanted, reagent, Contact.CLOSED);
                if (dose.isEmpty()) {
                    cautions.add(
                            "The pH asked for cannot be reached with " + reagent.title() + ".");
                } else {
                    OptionalDouble air =
                            Acidity.doseMolPerM3(now, 25, wanted, reagent, Contact.OUTDOOR_AIR);
                    inAirMillilitres =
                            air.isPresent()
                                    ? air.getAsDouble() * volumeL / reagent.molPerL()
                                    : Double.NaN;
                    double most = reagent.mostMolPerM3();
                    boolean capped = dose.getAsDouble() > most;
                    double molPerM3 = Math.min(dose.getAsDouble(), most);
                    drifting =
                            capped
                                    ? now.plus(reagent.perMol().times(molPerM3))
                                    : dosed(now, wanted, reagent, molPerM3);
                    now = now.plus(reagent.perMol().times(molPerM3));
                    ph = capped ? Acidity.phClosed(now, 25) : wanted;
                    double millilitres = molPerM3 * volumeL / reagent.molPerL();
                    if (!(inAirMillilitres <= most * volumeL / reagent.molPerL())) {
                        inAirMillilitres = Double.NaN;
                    }
                    steps.add(
                            new MixingSheet.Step(
                                    sour ? MixingSheet.Kind.ACID : MixingSheet.Kind.BASE,
                                    reagent.title(),
                                    Double.NaN,
                                    millilitres,
                                    ElectricalConductivity.at25MsPerCm(now),
                                    ph));
                    cautions.add(reagent.caution());
                    if (capped) {
                        cautions.add(MixingSheet.tooMuchPhosphate(ph, OptionalDouble.empty()));
                    }
                    cautions.add(
                            "Pour two thirds of it, stir, wait ten minutes, measure, then pour the"
                                    + " rest as needed.");
                }
            }
            phInAir = Acidity.phInAir(drifting, 25, ElectricalConductivity.AIR_CO2_PPM);
            if (phInAir - ph > 0.3) {
                cautions.add(
                        String.format(
                                Locale.ROOT,
                                "It reads pH %.1f now and drifts towards %.1f as CO2 leaves the open"
                                        + " tray: measure again after a day.",
                                ph,
                                phInAir));
            }
        }
        return new MixCorrection(
                reading,
                basis,
                steps,
                volumeL,
                stepRuleL,
                inAirMillilitres,
                ElectricalConductivity.at25MsPerCm(now),
                ph,
                phInAir,
                cautions);
    }

    /** With the charge of an acid whose anion no component carries counted as nitrate. */
    private static Composition dosed(
            Composition now, double wantedPh, Reagent reagent, double doseMolPerM3) {
        if (reagent.carried()) {
            return now.plus(reagent.perMol().times(doseMolPerM3));
        }
        double strong = Acidity.strongAcidMolPerM3(now, 25, wantedPh, Contact.CLOSED).orElse(0);
        return now.with(Component.NO3, now.molPerM3(Component.NO3) + strong);
    }

    // Part A before part B; null where no strength does. The parts' volume is left out: below 1 %.
    private static Composition strengthened(
            MixingSheet.Wish wish,
            Composition start,
            Composition recipe,
            double target,
            double volumeL,
            List<MixingSheet.Step> steps) {
        double most = Feed.MAX_STRENGTH;
        if (ElectricalConductivity.at25MsPerCm(start.plus(recipe.times(most))) < target) {
            return null;
        }
        double strength =
                new BrentSolver(1e-12, 1e-12)
                        .solve(
                                200,
                                s ->
                                        ElectricalConductivity.at25MsPerCm(
                                                        start.plus(recipe.times(s)))
                                                - target,
                                0,
                                most);
        Composition now = start;
        if (wish.supply() instanceof MixingSheet.FromConcentrate bottles) {
            TwoPart parts = bottles.parts();
            double grams = strength * parts.gramsPerL() * volumeL;
            now = now.plus(parts.share(parts.a()).times(strength));
            steps.add(poured(MixingSheet.Kind.PART_A, parts.a(), grams, now));
            now = start.plus(recipe.times(strength));
            steps.add(poured(MixingSheet.Kind.PART_B, parts.b(), grams, now));
            return now;
        }
        if (wish.supply() instanceof MixingSheet.FromSalts weighed) {
            for (boolean calcium : new boolean[] {true, false}) {
                for (Map.Entry<Salt, Double> salt : weighed.salts().molPerM3().entrySet()) {
                    if ((salt.getKey().tank() != Salt.Tank.B) == calcium) {
                        double molPerM3 = salt.getValue() * strength;
                        now = now.plus(salt.getKey().perMol().times(molPerM3));
                        steps.add(
                                new MixingSheet.Step(
                                        calcium ? MixingSheet.Kind.PART_A : MixingSheet.Kind.PART_B,
                                        salt.getKey().title(),
                                        molPerM3 * volumeL * salt.getKey().gramsPerMol() / 1000,
                                        Double.NaN,
                                        ElectricalConductivity.at25MsPerCm(now),
                                        Acidity.phClosed(now, 25)));
                    }
                }
            }
            return now;
        }
        throw new AssertionError("no way to strengthen with " + wish.supply());
    }

    private static MixingSheet.Step poured(
            MixingSheet.Kind kind, Concentrate part, double grams, Composition now) {
        return new MixingSheet.Step(
                kind,
                part.name(),
                grams,
                part.millilitres(grams),
                ElectricalConductivity.at25MsPerCm(now),
                Acidity.phClosed(now, 25));
    }

    private static MixingSheet.Step step(
            MixingSheet.Kind kind, String what, double millilitres, Composition now) {
        return new MixingSheet.Step(
                kind,
                what,
                Double.NaN,
                millilitres,
                ElectricalConductivity.at25MsPerCm(now),
                Acidity.phClosed(now, 25));
    }
}
