package tideless.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import tideless.rig.Limits;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.FlushRule;
import tideless.sim.Shortage;
import tideless.sim.Trace;
import tideless.solution.Component;
import tideless.solution.ElectricalConductivity;

/** EC, ions, pH and crusts of one tray, and the fresh solution they call for. */
final class SolutionAdvice {
    /** A pH meter of a grower reads to this. */
    private static final double PH_READING = 0.1;

    /** Water that reads more than this brings salts worth leaving out, mS/cm; assumed. */
    private static final double SALTY_WATER_MS_PER_CM = 0.25;

    /** Open water that takes less than this share of what leaves is not worth a lid; assumed. */
    private static final double LID_WORTH_FRAC = 0.01;

    private final TrayCase tray;
    private final Findings out;
    private final Limits limits;

    SolutionAdvice(TrayCase tray, Findings out) {
        this.tray = tray;
        this.out = out;
        limits = tray.tray.limits();
    }

    void add() {
        addChanges();
        addPrecipitates(tray.trace, tray.id, out);
        if (tray.traits == null) {
            return;
        }
        addUnheededChanges();
        addStrength();
        addAcidity();
        addShortages();
        addIon(Warning.Kind.TOO_MUCH_SODIUM, Component.NA, limits.sodiumHighMolPerM3());
        addIon(Warning.Kind.TOO_MUCH_CHLORIDE, Component.CL, limits.chlorideHighMolPerM3());
    }

    // ---- tasks ---------------------------------------------------------------------------------

    private void addChanges() {
        for (Event event : tray.events()) {
            if (event.kind() == Event.Kind.FLUSH) {
                addChange(event, Task.Kind.FLUSH, Cause.Kind.SALTS_STAY_BEHIND, saltCures());
            } else if (event.kind() == Event.Kind.FRESH_SOLUTION) {
                addChange(
                        event,
                        Task.Kind.FRESH_SOLUTION,
                        event.ecMsPerCm() < limits.ecLowMsPerCm()
                                ? Cause.Kind.CROP_TAKES_IT_UP
                                : Cause.Kind.ONE_RUNS_OUT,
                        leanCures());
            }
        }
    }

    private void addChange(Event event, Task.Kind kind, Cause.Kind cause, List<Cure> cures) {
        int after = Math.min(tray.trace.hours() - 1, (int) (event.atS() / 3600));
        double ecAfter = tray.of.ecMsPerCm().at(after);
        out.tasks.add(
                new Task(
                        kind,
                        tray.id,
                        tray.trace.clockAt(event.atS()),
                        event.volumeM3() * 1000,
                        event.drainedM3() * 1000,
                        kind == Task.Kind.FLUSH
                                ? salty(event.ecMsPerCm())
                                : lean(event.ecMsPerCm()),
                        new Cause(
                                cause,
                                Double.isNaN(ecAfter)
                                        ? Facts.NONE
                                        : Facts.of(Quantity.EC_AFTER, ecAfter)),
                        cures,
                        true));
    }

    private Measure salty(double ec) {
        return Measure.atMost(ec, limits.ecHighMsPerCm(), Unit.MS_PER_CM);
    }

    private Measure lean(double ec) {
        return Measure.atLeast(ec, limits.ecLowMsPerCm(), Unit.MS_PER_CM);
    }

    /** What would be due on a tray whose visitors neither flush nor renew. */
    private void addUnheededChanges() {
        if (tray.trace.scenario().visits().flush() != Visits.Flush.NEVER) {
            return;
        }
        double high = limits.ecHighMsPerCm();
        int salty = tray.firstSpell(h -> tray.of.ecMsPerCm().at(h) > high);
        if (salty >= 0 && tray.feedMsPerCm < high) {
            double ec = tray.of.ecMsPerCm().at(salty);
            double share = FlushRule.shareFrac(ec, tray.feedMsPerCm, high);
            addUnheeded(
                    Task.Kind.FLUSH,
                    salty,
                    share,
                    salty(ec),
                    Cause.Kind.SALTS_STAY_BEHIND,
                    ec + share * (tray.feedMsPerCm - ec),
                    saltCures());
        }
        double low = limits.ecLowMsPerCm();
        int lean = tray.firstSpell(h -> tray.of.ecMsPerCm().at(h) < low);
        if (lean >= 0 && tray.feedMsPerCm > low) {
            addUnheeded(
                    Task.Kind.FRESH_SOLUTION,
                    lean,
                    1,
                    lean(tray.of.ecMsPerCm().at(lean)),
                    Cause.Kind.CROP_TAKES_IT_UP,
                    tray.feedMsPerCm,
                    leanCures());
        }
    }

    private void addUnheeded(
            Task.Kind kind,
            int hour,
            double share,
            Measure measure,
            Cause.Kind cause,
            double ecAfter,
            List<Cure> cures) {
        double litres = share * tray.of.volumeM3().at(hour) * 1000;
        out.tasks.add(
                new Task(
                        kind,
                        tray.id,
                        tray.trace.clockAt(tray.rounds.nextFrom(hour + 1) * 3600),
                        litres,
                        litres,
                        measure,
                        new Cause(cause, Facts.of(Quantity.EC_AFTER, ecAfter)),
                        cures,
                        false));
    }

    // ---- warnings ------------------------------------------------------------------------------

    private void addStrength() {
        IntToDoubleFunction ec = tray.of.ecMsPerCm()::at;
        IntPredicate isSalty = h -> ec.applyAsDouble(h) > limits.ecHighMsPerCm();
        int salty = tray.firstSpell(isSalty);
        if (salty >= 0) {
            warn(
                    Warning.Kind.TOO_SALTY,
                    salty,
                    isSalty,
                    salty(tray.greatest(salty, ec)),
                    Cause.of(Cause.Kind.SALTS_STAY_BEHIND),
                    saltCures());
        }
        IntPredicate isLean = h -> ec.applyAsDouble(h) < limits.ecLowMsPerCm();
        int lean = tray.firstSpell(isLean);
        if (lean >= 0) {
            boolean leanFeed = tray.feedMsPerCm < limits.ecLowMsPerCm();
            warn(
                    Warning.Kind.TOO_LEAN,
                    lean,
                    isLean,
                    lean(tray.least(lean, ec)),
                    leanFeed
                            ? new Cause(
                                    Cause.Kind.FEED_IS_LEAN,
                                    Facts.of(Quantity.FEED_EC, tray.feedMsPerCm))
                            : Cause.of(Cause.Kind.CROP_TAKES_IT_UP),
                    leanFeed
                            ? List.of(
                                    Cure.of(Cure.Kind.STRONGER_FEED),
                                    Cure.of(Cure.Kind.OWN_RESERVOIR))
                            : List.of(
                                    Cure.of(Cure.Kind.FRESH_SOLUTION_SOONER),
                                    Cure.of(Cure.Kind.STRONGER_FEED)));
        }
    }

    private void addAcidity() {
        IntToDoubleFunction ph = tray.of.ph()::at;
        IntPredicate isAcid = h -> ph.applyAsDouble(h) < limits.phLow() - PH_READING;
        IntPredicate isBasic = h -> ph.applyAsDouble(h) > limits.phHigh() + PH_READING;
        int acid = tray.firstSpell(isAcid);
        int basic = tray.firstSpell(isBasic);
        if (basic >= 0 && (acid < 0 || basic < acid)) {
            warn(
                    Warning.Kind.PH_OUT,
                    basic,
                    isBasic,
                    Measure.atMost(tray.greatest(basic, ph), limits.phHigh(), Unit.PH),
                    Cause.of(Cause.Kind.ANIONS_TAKEN),
                    List.of(Cure.of(Cure.Kind.MORE_AMMONIUM), Cure.of(Cure.Kind.ACID_BY_METER)));
        } else if (acid >= 0) {
            warn(
                    Warning.Kind.PH_OUT,
                    acid,
                    isAcid,
                    Measure.atLeast(tray.least(acid, ph), limits.phLow(), Unit.PH),
                    Cause.of(Cause.Kind.CATIONS_TAKEN),
                    List.of(Cure.of(Cure.Kind.LESS_AMMONIUM), Cure.of(Cure.Kind.BASE_BY_METER)));
        }
    }

    private void addShortages() {
        int first = -1;
        Component scarce = null;
        for (Component component : Shortage.WATCHED) {
            int at = tray.firstSpell(isShortOf(component));
            if (at >= 0 && (first < 0 || at < first)) {
                first = at;
                scarce = component;
            }
        }
        if (first >= 0) {
            int i = scarce.ordinal();
            warn(
                    Warning.Kind.SHORT_OF_ONE,
                    first,
                    isShortOf(scarce),
                    Measure.atLeast(
                            tray.least(first, h -> tray.of.molPerM3(i, h)),
                            Shortage.leastMolPerM3(scarce),
                            Unit.MMOL_PER_L),
                    new Cause(Cause.Kind.ONE_RUNS_OUT, Facts.NONE.named(scarce.title())),
                    List.of(
                            Cure.of(Cure.Kind.FRESH_SOLUTION_SOONER),
                            new Cure(Cure.Kind.FEED_WITH_MORE, Facts.NONE.named(scarce.title())),
                            Cure.of(Cure.Kind.MORE_SOLUTION_PER_PLANT)));
        }
    }

    private IntPredicate isShortOf(Component component) {
        double least = Shortage.leastMolPerM3(component);
        return h -> tray.of.molPerM3(component.ordinal(), h) < least;
    }

    private void addIon(Warning.Kind kind, Component ion, double high) {
        int i = ion.ordinal();
        IntPredicate isMuch = h -> tray.of.molPerM3(i, h) > high;
        int from = tray.firstSpell(isMuch);
        if (from < 0) {
            return;
        }
        double feed = tray.trace.scenario().feed().composition().molPerM3(ion);
        double water = tray.trace.scenario().sourceWater().composition().molPerM3(ion);
        warn(
                kind,
                from,
                isMuch,
                Measure.atMost(
                        tray.greatest(from, h -> tray.of.molPerM3(i, h)), high, Unit.MMOL_PER_L),
                new Cause(
                        Cause.Kind.CROP_LEAVES_IT,
                        Facts.of(Quantity.FEED_CONTENT, feed)
                                .and(Quantity.WATER_CONTENT, water)
                                .named(ion.title())),
                List.of(
                        water > 0.5 * feed
                                ? Cure.of(Cure.Kind.RAIN_WATER)
                                : new Cure(Cure.Kind.FEED_WITHOUT, Facts.NONE.named(ion.title()))));
    }

    /** A crust in a tray or a reservoir, one warning a mineral. */
    static void addPrecipitates(Trace trace, VesselId vessel, Findings out) {
        for (Event event : TrayCase.eventsOf(trace, vessel)) {
            if (event.kind() == Event.Kind.PRECIPITATE) {
                out.warnings.add(
                        new Warning(
                                Warning.Kind.PRECIPITATE,
                                vessel,
                                trace.clockAt(event.atS()),
                                trace.clockAt(event.atS()),
                                Measure.none(),
                                new Cause(
                                        Cause.Kind.SUPERSATURATED,
                                        Facts.NONE.named(event.detail())),
                                event.detail().startsWith("gypsum")
                                        ? List.of(
                                                Cure.of(Cure.Kind.LEANER_FEED),
                                                Cure.of(Cure.Kind.FRESH_SOLUTION_SOONER))
                                        : List.of(
                                                Cure.of(Cure.Kind.SOFTER_WATER),
                                                Cure.of(Cure.Kind.ACID_BY_METER))));
            }
        }
    }

    // ---- cures ---------------------------------------------------------------------------------

    private List<Cure> leanCures() {
        return List.of(
                Cure.of(Cure.Kind.STRONGER_FEED), Cure.of(Cure.Kind.MORE_SOLUTION_PER_PLANT));
    }

    /** What would make a flush come later or not at all, with its figure. */
    private List<Cure> saltCures() {
        List<Cure> cures = new ArrayList<>();
        cures.add(new Cure(Cure.Kind.LEANER_FEED, Facts.of(Quantity.FEED_EC, tray.feedMsPerCm)));
        double evaporated = tray.of.evaporationM3().sum(0, tray.lastHour + 1);
        double left = evaporated + tray.of.transpirationM3().sum(0, tray.lastHour + 1);
        double share = left > 0 ? evaporated / left : 0;
        if (tray.tray.openAreaM2() > 0 && share >= LID_WORTH_FRAC) {
            cures.add(new Cure(Cure.Kind.LID_ON_GAPS, Facts.of(Quantity.EVAPORATED_SHARE, share)));
        }
        double waterEc =
                ElectricalConductivity.at25MsPerCm(
                        tray.trace.scenario().sourceWater().composition());
        if (waterEc > SALTY_WATER_MS_PER_CM) {
            cures.add(new Cure(Cure.Kind.RAIN_WATER, Facts.of(Quantity.WATER_EC, waterEc)));
        }
        return cures;
    }

    private void warn(
            Warning.Kind kind,
            int from,
            IntPredicate is,
            Measure measure,
            Cause cause,
            List<Cure> cures) {
        out.warnings.add(
                new Warning(
                        kind,
                        tray.id,
                        tray.trace.clockAtSample(from),
                        tray.lastOf(from, is),
                        measure,
                        cause,
                        cures));
    }
}
