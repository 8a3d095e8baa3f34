package tideless.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.Stream;
import tideless.rig.Liquid;
import tideless.rig.VesselId;
import tideless.sim.PlantingTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.solution.Acidity;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Recipe;

/**
 * What is said of the pH that a tray will read: a warning where it is far out of its band whatever
 * is not known of the crop, a note where it likely is. Either has the dates of the likely course.
 */
final class AcidityAdvice {
    /** A pH pen is no surer than this; common practice, no source. */
    private static final double PH_PEN_DOUBT = 0.2;

    /** Roots bear so much acid and lose little by it; common practice, no source. */
    private static final double BORNE_PH = 5;

    /** And a few days of acid show on no leaf, h; assumed. */
    private static final int ACID_PATIENCE_H = 7 * 24;

    /** Water with less alkali than this is not what brings a pH up, meq/L; assumed. */
    private static final double SOFT_MEQ_PER_L = 1;

    /**
     * Share of the nitrogen as ammonium at which lettuce, of eight species the one that wants
     * least, leaves pH as it is (Dickson and Fisher 2018): of a feed with less, ammonium is not
     * what turns it acid.
     */
    private static final double LEAST_AMMONIUM_FRAC = 0.06;

    private AcidityAdvice() {}

    static void add(TrayCase tray, Findings out) {
        boolean isAcid = add(tray, false, out);
        add(tray, true, out);
        if (!isAcid) {
            addALittleAcid(tray, out);
        }
    }

    private static boolean add(TrayCase tray, boolean isHigh, Findings out) {
        Optional<AcidityCourse.Spell> spell =
                AcidityCourse.of(tray, isHigh)
                        // iron runs out by weeks, not by days
                        .filter(s -> !tray.isNearHarvest(s.farHour()));
        spell.ifPresent(
                s -> out.warnings.add(told(warning(tray, s), AcidityDoubt.isOut(tray, isHigh))));
        return spell.isPresent();
    }

    private static Warning warning(TrayCase tray, AcidityCourse.Spell spell) {
        boolean isHigh = spell.isHigh();
        double feedPh = Acidity.phInAir(tray.feed, 25, ElectricalConductivity.AIR_CO2_PPM);
        boolean byFeed = isHigh && feedPh > tray.tray.limits().phHigh();
        Cause cause =
                byFeed
                        ? new Cause(
                                isLimed(tray.trace)
                                        ? Cause.Kind.FEED_IS_ALKALINE
                                        : Cause.Kind.SALTS_ARE_ALKALINE,
                                Facts.of(Quantity.FEED_PH, feedPh))
                        : Cause.of(isHigh ? Cause.Kind.ANIONS_TAKEN : Cause.Kind.CATIONS_TAKEN);
        return new Warning(
                Warning.Kind.PH_OUT,
                tray.id,
                // an hour before midnight, which is the next day's
                tray.trace.clockAtSample(spell.fromHour() - 1),
                tray.trace.clockAtSample(spell.untilHour() - 1),
                isHigh
                        ? Measure.atMost(spell.worst(), tray.tray.limits().phHigh(), Unit.PH)
                        : Measure.atLeast(spell.worst(), tray.tray.limits().phLow(), Unit.PH),
                cause.with(Quantity.DAYS_BEYOND, spell.days()),
                isHigh ? againstBase(tray, byFeed) : againstAcid(tray));
    }

    /** As a warning where it is sure, else as a note of what is likely. */
    private static Warning told(Warning warning, boolean isSure) {
        return warning.with(Quantity.SURE, isSure ? 1 : 0);
    }

    /** What the grower has comes first: a meter and drops of acid; but no acid for a limed feed. */
    private static List<Cure> againstBase(TrayCase tray, boolean byFeed) {
        List<Cure> cures = new ArrayList<>(List.of(Cure.of(Cure.Kind.ACID_BY_METER)));
        if (isLimed(tray.trace)) {
            cures.add(byFeed ? 0 : 1, Cure.of(Cure.Kind.RAIN_WATER));
        }
        if (!byFeed && isWeighed(tray.trace.scenario().feedOf(tray.tray))) {
            cures.add(Cure.of(Cure.Kind.MORE_AMMONIUM));
        }
        return cures;
    }

    private static List<Cure> againstAcid(TrayCase tray) {
        double ammonium = tray.feed.molPerM3(Component.NH4);
        double nitrogen = ammonium + tray.feed.molPerM3(Component.NO3);
        Cure base = Cure.of(Cure.Kind.BASE_BY_METER);
        return ammonium > LEAST_AMMONIUM_FRAC * nitrogen
                ? List.of(base, Cure.of(Cure.Kind.LESS_AMMONIUM))
                : List.of(base);
    }

    /** Whether the source water brings so much alkali that a softer one is worth a word. */
    static boolean isLimed(Trace trace) {
        Composition water = trace.scenario().sourceWater().composition();
        return water.fixedChargeMolPerM3() >= SOFT_MEQ_PER_L;
    }

    /**
     * Whether a feed is made of salts that are weighed out by a recipe, so that one of them can be
     * changed: the name it is read by begins with it. Of bottles and bought feeds it does not.
     */
    private static boolean isWeighed(Liquid feed) {
        return feed.bottles().isEmpty()
                && Recipe.names().stream().anyMatch(id -> feed.name().startsWith(id + ","));
    }

    /**
     * Below the band by more than a pen may be off for a week, though not far: what roots bear
     * costs next to nothing, and more of it, if only for hours, is likely worth a drop of base.
     */
    private static void addALittleAcid(TrayCase tray, Findings out) {
        double limit = tray.tray.limits().phLow();
        double low = limit - PH_PEN_DOUBT;
        IntPredicate isAcid = h -> !tray.isLow(h) && tray.of.ph().at(h) < low;
        int from = tray.firstSpell(ACID_PATIENCE_H, isAcid);
        if (from < 0) {
            return;
        }
        double worst = tray.least(from, h -> isAcid.test(h) ? tray.of.ph().at(h) : low);
        boolean isBorne = worst >= BORNE_PH;
        out.warnings.add(
                new Warning(
                        Warning.Kind.PH_OUT,
                        tray.id,
                        tray.trace.clockAtSample(from),
                        tray.lastOf(from, isAcid),
                        Measure.atLeast(worst, limit, Unit.PH),
                        new Cause(
                                Cause.Kind.CATIONS_TAKEN,
                                isBorne
                                        ? Facts.of(Quantity.LOSS, 0)
                                        : Facts.of(Quantity.SURE, 0)
                                                .and(
                                                        Quantity.DAYS_BEYOND,
                                                        AcidityCourse.days(tray, isAcid).size())),
                        isBorne ? List.of() : againstAcid(tray)));
    }

    // ---- by runs at both ends of the contents --------------------------------------------------

    /**
     * What is told of a warning by the lowest and the highest pH of its tray in all runs there are,
     * in place of what the one run alone tells of its own doubt; any other as it is.
     */
    static Warning judged(Warning warning, Trace trace, List<Series> lowest, List<Series> highest) {
        if (!warning.cause().facts().has(Quantity.SURE)) {
            return warning;
        }
        boolean isHigh = warning.measure().side() == Measure.Side.AT_MOST;
        for (int i = 0; i < trace.trays().size(); i++) {
            Series nearest = (isHigh ? lowest : highest).get(i);
            Optional<TrayCase> of = caseOf(trace.trays().get(i), warning, trace);
            if (of.isPresent()) {
                return told(warning, AcidityDoubt.isOut(of.get(), isHigh, nearest));
            }
        }
        throw new IllegalArgumentException("of no tray: " + warning);
    }

    /** The crop that a warning is of, where it is one of this tray's. */
    private static Optional<TrayCase> caseOf(TrayTrace tray, Warning warning, Trace trace) {
        VesselId id = tray.tray().id();
        Stream<PlantingTrace> plantings =
                id.equals(warning.vessel()) ? trace.plantings(tray).stream() : Stream.empty();
        return plantings
                .map(planting -> new TrayCase(trace, planting, VisitTimes.of(trace.scenario())))
                .filter(of -> !trace.clockAtSample(of.firstHour - 1).isAfter(warning.from()))
                .filter(of -> trace.clockAtSample(of.lastHour).isAfter(warning.from()))
                .findFirst();
    }
}
