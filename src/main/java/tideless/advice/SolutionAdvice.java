package tideless.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.function.Predicate;
import tideless.crop.CropTraits;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.Filling;
import tideless.rig.Limits;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.FlushRule;
import tideless.sim.Shortage;
import tideless.sim.Stress;
import tideless.sim.Trace;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Recipe;

/** EC, ions, pH and crusts of one tray, and the fresh solution they call for. */
final class SolutionAdvice {
    /** A lean solution has to last for this long before it is worth a word, h; assumed. */
    private static final int LEAN_PATIENCE_H = 72;

    /** Water that reads more than this brings salts worth leaving out, mS/cm; assumed. */
    private static final double SALTY_WATER_MS_PER_CM = 0.25;

    /** What falls out sooner than this is the feed's doing whatever hangs above it, h; assumed. */
    private static final int ROOTS_MOVE_PH_AFTER_H = 3;

    /** Above its limit by less than this, a tray that is soon topped up is borne; assumed. */
    private static final double FAR_ABOVE = 1.5;

    /** A level is read to this by a rule in a tray, m; assumed. */
    private static final double LEVEL_DOUBT_M = 0.002;

    /** And the inner sizes of a tray are known to a hundredth each: its litres to this; assumed. */
    private static final double SIZE_DOUBT_FRAC = 0.03;

    /**
     * A limit may be passed for so long before the run's own change, h: a long weekend. The limit
     * costs 5 % of growth, so that four days of a crop of forty cost half a hundredth; assumed.
     */
    private static final int CHANGE_AWAITED_H = 96;

    /** A recipe with so many times a nutrient at one EC is worth a change; assumed. */
    private static final double RICHER = 1.2;

    /** Share of a feed's EC from which its water leaves too little room for salts; assumed. */
    private static final double CROWDING_FRAC = 0.3;

    /** A feed up to this share of the limit is worth a trial before more solution; assumed. */
    private static final double ROOM_FRAC = 0.9;

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
        if (TrayCase.drinks(tray.tray.planting())) {
            addPrecipitates(tray.trace, tray.events(), this::isFalling, out);
        }
        if (tray.traits == null) {
            return;
        }
        addUnheededChanges();
        addStrength();
        AcidityAdvice.add(tray, out);
        addShortages();
        addIon(Warning.Kind.TOO_MUCH_SODIUM, Component.NA, limits.sodiumHighMolPerM3());
        addIon(Warning.Kind.TOO_MUCH_CHLORIDE, Component.CL, limits.chlorideHighMolPerM3());
    }

    /**
     * Whether a crust is told: not in the dregs of a tray that wants water, nor after its crop; and
     * while the model cannot tell how the roots move the pH, only what falls at any pH.
     */
    private boolean isFalling(Event event) {
        int hour = tray.trace.sampleAt(event.atS());
        boolean phIsOpen = tray.traits != null && !isOutOfBand();
        boolean isThere = hour < tray.lastHour && !tray.isLow(hour);
        boolean isOfFeed = hour < tray.firstHour + ROOTS_MOVE_PH_AFTER_H;
        return isThere && (isAtAnyPh(event) || isOfFeed || !phIsOpen);
    }

    private boolean isOutOfBand() {
        return AcidityDoubt.isOut(tray, true) || AcidityDoubt.isOut(tray, false);
    }

    private static boolean isAtAnyPh(Event event) {
        return event.detail().startsWith("gypsum");
    }

    // ---- tasks ---------------------------------------------------------------------------------

    private void addChanges() {
        for (Event event : tray.events()) {
            if (event.kind() == Event.Kind.FLUSH) {
                addChange(
                        event,
                        Task.Kind.FLUSH,
                        Cause.Kind.SALTS_STAY_BEHIND,
                        saltCures(Math.max(0, tray.trace.sampleAt(event.atS()) - 1)));
            } else if (event.kind() == Event.Kind.FRESH_SOLUTION) {
                addChange(
                        event,
                        Task.Kind.FRESH_SOLUTION,
                        isLeanFor(event) ? Cause.Kind.CROP_TAKES_IT_UP : Cause.Kind.ONE_RUNS_OUT,
                        leanCures());
            }
        }
    }

    /** Whether a lean reading is what it is changed for. */
    private boolean isLeanFor(Event event) {
        int hour = tray.trace.sampleAt(event.atS());
        return event.ecMsPerCm() < tray.leanMsPerCm(hour) && isMendedByFeed(hour);
    }

    /** Whether a lean reading says anything: of a feed below the band each one is lean. */
    private boolean isMendedByFeed(int hour) {
        return FlushRule.mendsLean(tray.feedMsPerCm, tray.leanMsPerCm(hour));
    }

    private void addChange(Event event, Task.Kind kind, Cause.Kind cause, List<Cure> cures) {
        int hour = tray.trace.sampleAt(event.atS());
        int after = Math.min(tray.trace.hours() - 1, (int) (event.atS() / 3600));
        double ecAfter = tray.of.ecMsPerCm().at(after);
        Facts facts = Double.isNaN(ecAfter) ? Facts.NONE : Facts.of(Quantity.EC_AFTER, ecAfter);
        if (kind == Task.Kind.FRESH_SOLUTION) {
            facts = facts.named(scarcest(Math.max(0, hour - 1)));
        }
        out.tasks.add(
                new Task(
                        kind,
                        tray.id,
                        tray.trace.clockAt(event.atS()),
                        event.volumeM3() * 1000,
                        event.drainedM3() * 1000,
                        kind == Task.Kind.FLUSH
                                ? salty(event.ecMsPerCm())
                                : isMendedByFeed(hour)
                                        ? lean(event.ecMsPerCm(), hour)
                                        : Measure.of(event.ecMsPerCm(), Unit.MS_PER_CM),
                        new Cause(
                                cause, doubted(facts, after, event.volumeM3(), event.ecMsPerCm())),
                        cures,
                        List.of(),
                        true));
    }

    /** The nutrient nearest to what slows its uptake; empty where none is near. */
    private String scarcest(int hour) {
        String scarcest = "";
        double least = FlushRule.NEARLY_SHORT;
        for (Component component : Shortage.WATCHED) {
            double times =
                    tray.of.molPerM3(component.ordinal(), hour) / Shortage.leastMolPerM3(component);
            scarcest = times < least ? component.title() : scarcest;
            least = Math.min(least, times);
        }
        return scarcest;
    }

    /** Whether a stress takes so little of the crop that nobody pours a solution away for it. */
    private boolean isWorthNothing(Stress stress) {
        return tray.lost().filter(lost -> lost.frac(stress) < Warning.NOTED_FRAC).isPresent();
    }

    /** With how well the litres of a change and the EC that calls for it are known. */
    private Facts doubted(Facts facts, int hour, double m3, double ecMsPerCm) {
        double areaM2 = tray.tray.shape().areaM2(tray.of.levelM().at(hour));
        double byLevel = areaM2 * LEVEL_DOUBT_M;
        double bySize = SIZE_DOUBT_FRAC * m3;
        return facts.and(
                        Quantity.LITRES_DOUBT,
                        1000 * Math.sqrt(byLevel * byLevel + bySize * bySize))
                .and(Quantity.METER_DOUBT, ecMsPerCm * FlushRule.METER_DOUBT_FRAC);
    }

    private Measure salty(double ec) {
        return Measure.atMost(ec, limits.ecHighMsPerCm(), Unit.MS_PER_CM);
    }

    private Measure lean(double ec, int hour) {
        return Measure.atLeast(ec, tray.leanMsPerCm(hour), Unit.MS_PER_CM);
    }

    /** What would be due on a tray whose visitors neither flush nor renew. */
    private void addUnheededChanges() {
        if (tray.trace.scenario().visits().flush() != Visits.Flush.NEVER) {
            return;
        }
        IntToDoubleFunction ec = tray.of.ecMsPerCm()::at;
        double feed = tray.feedMsPerCm;
        IntPredicate isSalty =
                h ->
                        mayChange(h)
                                && FlushRule.isTooSalty(
                                        ec.applyAsDouble(h), feed, limits.ecHighMsPerCm());
        int salty =
                seenAtAVisit(tray.firstSpell(isSalty), h -> isSalty.test(h) && !isMendedByTopUp(h));
        if (salty >= 0 && !isWorthNothing(Stress.SALT)) {
            addUnheeded(
                    Task.Kind.FLUSH,
                    salty,
                    salty(ec.applyAsDouble(salty)),
                    Cause.Kind.SALTS_STAY_BEHIND,
                    saltCures(salty));
        }
        IntPredicate isLean =
                h ->
                        mayChange(h)
                                && FlushRule.isTooLean(
                                        ec.applyAsDouble(h), feed, tray.leanMsPerCm(h))
                                && !scarcest(h).isEmpty();
        int lean = seenAtAVisit(tray.firstSpell(LEAN_PATIENCE_H, isLean), isLean);
        if (lean >= 0 && !isWorthNothing(Stress.HUNGER)) {
            addUnheeded(
                    Task.Kind.FRESH_SOLUTION,
                    lean,
                    lean(ec.applyAsDouble(lean), lean),
                    Cause.Kind.CROP_TAKES_IT_UP,
                    leanCures());
        }
    }

    /**
     * The hour before the first visit after the beginning of a spell at which the meter still shows
     * it; -1 for none.
     */
    private int seenAtAVisit(int begins, IntPredicate is) {
        if (begins >= 0) {
            for (double visit : tray.rounds.hours()) {
                int before = (int) visit - 1;
                if (before >= begins && before <= tray.lastHour && is.test(before)) {
                    return before;
                }
            }
        }
        return -1;
    }

    /** Whether a change would still pay: not into a sealed or low tray, not just before harvest. */
    private boolean mayChange(int hour) {
        return FlushRule.mayChange(tray.tray, tray.setOn(hour), tray.of.volumeM3().at(hour))
                && !tray.isNearHarvest(hour);
    }

    private void addUnheeded(
            Task.Kind kind, int hour, Measure measure, Cause.Kind cause, List<Cure> cures) {
        double litres = tray.of.volumeM3().at(hour) * 1000;
        out.tasks.add(
                new Task(
                        kind,
                        tray.id,
                        tray.trace.clockAt(tray.rounds.nextFrom(hour + 1) * 3600),
                        litres,
                        litres,
                        measure,
                        new Cause(
                                cause,
                                doubted(
                                        Facts.of(Quantity.EC_AFTER, tray.feedMsPerCm),
                                        hour,
                                        tray.of.volumeM3().at(hour),
                                        measure.value())),
                        cures,
                        List.of(),
                        false));
    }

    // ---- warnings ------------------------------------------------------------------------------

    private void addStrength() {
        IntToDoubleFunction ec = tray.of.ecMsPerCm()::at;
        double high = limits.ecHighMsPerCm() * (1 + FlushRule.METER_DOUBT_FRAC);
        IntPredicate isSalty =
                h ->
                        !tray.isLow(h)
                                && ec.applyAsDouble(h) > high
                                && !isChangedAfter(h, Event.Kind.FLUSH)
                                && !(ec.applyAsDouble(h) < FAR_ABOVE * limits.ecHighMsPerCm()
                                        && isMendedByTopUp(h));
        int salty = tray.firstSpell(isSalty);
        if (salty >= 0) {
            warn(
                    Warning.Kind.TOO_SALTY,
                    salty,
                    isSalty,
                    salty(tray.greatest(salty, h -> tray.isLow(h) ? 0 : ec.applyAsDouble(h))),
                    strongFeed()
                            ? new Cause(
                                    Cause.Kind.FEED_IS_STRONG,
                                    Facts.of(Quantity.FEED_EC, tray.feedMsPerCm))
                            : Cause.of(Cause.Kind.SALTS_STAY_BEHIND),
                    saltCures(salty));
        }
        IntPredicate isLean =
                h ->
                        ec.applyAsDouble(h) < tray.leanMsPerCm(h) * (1 - FlushRule.METER_DOUBT_FRAC)
                                && !isChangedAfter(h, Event.Kind.FRESH_SOLUTION);
        int lean = tray.firstSpell(LEAN_PATIENCE_H, isLean);
        boolean isTold = lean >= 0 && !tray.isNearHarvest(lean);
        boolean leanFeed = isTold && isBelow(tray.feedMsPerCm, tray.leanMsPerCm(lean));
        if (isTold && !(leanFeed && leavesSaltAfter(lean) && firstShortage() == null)) {
            warn(
                    Warning.Kind.TOO_LEAN,
                    lean,
                    isLean,
                    lean(tray.least(lean, ec), lean),
                    leanFeed
                            ? new Cause(
                                    Cause.Kind.FEED_IS_LEAN,
                                    Facts.of(Quantity.FEED_EC, tray.feedMsPerCm))
                            : Cause.of(Cause.Kind.CROP_TAKES_IT_UP),
                    leanFeed
                            ? List.of(strongerThanLean(), Cure.of(Cure.Kind.OWN_RESERVOIR))
                            : takenUpCures(lean));
        }
    }

    /** Whether a meter would tell a feed from the least that is wanted. */
    private static boolean isBelow(double feedMsPerCm, double leastMsPerCm) {
        return feedMsPerCm < leastMsPerCm * (1 - FlushRule.METER_DOUBT_FRAC);
    }

    /** Whether the run changes the solution so soon after an hour that the crop bears it. */
    private boolean isChangedAfter(int hour, Event.Kind kind) {
        for (Event event : tray.events()) {
            int wait = tray.trace.sampleAt(event.atS()) - hour;
            if (event.kind() == kind && wait >= 0 && wait <= CHANGE_AWAITED_H) {
                return true;
            }
        }
        return false;
    }

    /**
     * Whether the next top-up, which is near enough that the crop bears it, brings a reading back
     * within its limit: after an absence a tray is strong because it is half empty.
     */
    private boolean isMendedByTopUp(int hour) {
        for (Event event : tray.events()) {
            int after = tray.trace.sampleAt(event.atS()) + 1;
            if (event.kind() == Event.Kind.TOP_UP && after > hour) {
                return after - hour <= CHANGE_AWAITED_H
                        && after <= tray.lastHour
                        && tray.of.ecMsPerCm().at(after) <= limits.ecHighMsPerCm();
            }
        }
        return false;
    }

    /**
     * Whether a feed below the crop's band leaves salt behind all the same: then the crop drinks
     * more water than it eats of this feed, and a stronger one would only pile up sooner.
     */
    private boolean leavesSaltAfter(int lean) {
        double more = Math.max(tray.feedMsPerCm, limits.ecLowMsPerCm());
        return tray.firstSpell(h -> h > lean && !tray.isLow(h) && tray.of.ecMsPerCm().at(h) > more)
                >= 0;
    }

    /** Of a feed below the least that the crop wants: the middle of what growers feed it. */
    private Cure strongerThanLean() {
        double least = limits.ecLowMsPerCm();
        double middle =
                tray.traits == null
                        ? least
                        : 0.5
                                * (tray.traits.needs().ecLowMsPerCm()
                                        + tray.traits.needs().ecHighMsPerCm());
        Facts facts = Facts.of(Quantity.FEED_EC, Math.max(least, middle));
        return new Cure(
                Cure.Kind.STRONGER_FEED,
                middle > least ? facts.and(Quantity.WANTED_EC, middle) : facts);
    }

    private List<Cure> takenUpCures(int lean) {
        Cure sooner = Cure.of(Cure.Kind.FRESH_SOLUTION_SOONER);
        if (isBelow(tray.feedMsPerCm, tray.leanMsPerCm(lean))) {
            return List.of(strongerThanLean(), sooner);
        }
        Cure stronger = strongerFeed(lean);
        if (isCrowdedByWater()) {
            return List.of(softerWater(), stronger, sooner);
        }
        if (isFilledWithWater()) {
            return List.of(Cure.of(Cure.Kind.FEED_IN_PLACE_OF_WATER), sooner);
        }
        if (tray.tray.filling() instanceof Filling.Sealed) {
            return List.of(stronger, Cure.of(Cure.Kind.MORE_SOLUTION_PER_PLANT));
        }
        // Where somebody renews what is lean, the harvest is too near for it.
        return tray.trace.scenario().visits().flush() == Visits.Flush.NEVER
                ? List.of(sooner, stronger)
                : List.of(stronger, sooner);
    }

    /** Whether what is poured in after the start is all plain water. */
    private boolean isFilledWithWater() {
        if (tray.tray.filling() instanceof Filling.ByHand hand) {
            return hand.with().withWater();
        }
        return tray.tray.filling() instanceof Filling.ByValve valve
                && tray.trace
                        .reservoirs()
                        .get(tray.trace.scenario().reservoirOf(valve))
                        .reservoir()
                        .refill()
                        .with()
                        .withWater();
    }

    /**
     * The feed that would bring what the crop takes: as much stronger as what it took until an
     * hour, drawn on to its end with what it drinks, exceeds what this feed brings; at most to the
     * limit.
     */
    private Cure strongerFeed(int hour) {
        int from = tray.firstHour;
        int end = tray.lastHour + 1;
        double drunk = tray.of.transpirationM3().sum(from, hour + 1);
        double start = tray.of.volumeM3().at(from);
        double times = 1;
        for (Component component : Shortage.WATCHED) {
            double feed = tray.feed.molPerM3(component);
            double brought = feed * (start + tray.of.inflowM3().sum(from, hour + 1));
            double held = tray.of.volumeM3().at(hour) * tray.of.molPerM3(component.ordinal(), hour);
            double all = feed * (start + tray.of.inflowM3().sum(from, end));
            double wanted = (brought - held) / drunk * tray.of.transpirationM3().sum(from, end);
            times = all > 0 && drunk > 0 ? Math.max(times, wanted / all) : times;
        }
        double ec = Math.min(tray.feedMsPerCm * times, limits.ecHighMsPerCm());
        return ec > tray.feedMsPerCm * (1 + FlushRule.METER_DOUBT_FRAC)
                ? new Cure(Cure.Kind.STRONGER_FEED, Facts.of(Quantity.FEED_EC, ec))
                : Cure.of(Cure.Kind.STRONGER_FEED);
    }

    /** The nutrient that runs out first; null for none. */
    private Component firstShortage() {
        int first = -1;
        Component scarce = null;
        for (Component component : Shortage.WATCHED) {
            int at = tray.firstSpell(isShortOf(component));
            if (at >= 0 && (first < 0 || at < first)) {
                first = at;
                scarce = component;
            }
        }
        return scarce == null || tray.isNearHarvest(first) ? null : scarce;
    }

    private void addShortages() {
        Component scarce = firstShortage();
        if (scarce != null) {
            int first = tray.firstSpell(isShortOf(scarce));
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
                    shortageCures(scarce, first));
        }
    }

    private List<Cure> shortageCures(Component scarce, int first) {
        List<Cure> cures = new ArrayList<>();
        Cure more = Cure.of(Cure.Kind.MORE_SOLUTION_PER_PLANT);
        if (tray.rounds.isLeftFor(first)) {
            cures.add(more); // nobody is there to change it
        }
        boolean crowded = waterCrowdsOut(scarce);
        if (crowded) {
            cures.add(softerWater());
        }
        boolean isSealed = tray.tray.filling() instanceof Filling.Sealed;
        boolean isLean = tray.of.ecMsPerCm().at(first) < tray.leanMsPerCm(first);
        if (isLean) {
            takenUpCures(first).stream().filter(c -> !cures.contains(c)).forEach(cures::add);
        } else {
            Cure stronger = strongerFeed(first);
            if (isWellBelowLimit(stronger)) {
                cures.add(stronger);
            }
            if (!isSealed) {
                cures.add(Cure.of(Cure.Kind.FRESH_SOLUTION_SOONER));
            }
        }
        String richer = crowded ? "" : richerIn(scarce);
        if (!richer.isEmpty()) {
            cures.add(new Cure(Cure.Kind.OTHER_RECIPE, Facts.NONE.named(richer)));
        } else if (!crowded) {
            cures.add(new Cure(Cure.Kind.FEED_WITH_MORE, Facts.NONE.named(scarce.title())));
        }
        if (!cures.contains(more)) {
            cures.add(more);
        }
        return cures;
    }

    /** Whether a feed that brings all that is taken leaves room for what stays behind. */
    private boolean isWellBelowLimit(Cure stronger) {
        return stronger.facts().has(Quantity.FEED_EC)
                && stronger.facts().get(Quantity.FEED_EC) < ROOM_FRAC * limits.ecHighMsPerCm();
    }

    /** Whether the source water takes up the feed's EC with other things than a component. */
    private boolean waterCrowdsOut(Component scarce) {
        double brings = tray.trace.scenario().sourceWater().composition().molPerM3(scarce);
        double fed = tray.feed.molPerM3(scarce);
        return brings < CROWDING_FRAC * fed && isCrowdedByWater();
    }

    private boolean isCrowdedByWater() {
        return waterMsPerCm() > CROWDING_FRAC * tray.feedMsPerCm;
    }

    private Cure softerWater() {
        return new Cure(Cure.Kind.RAIN_WATER, Facts.of(Quantity.WATER_EC, waterMsPerCm()));
    }

    private double waterMsPerCm() {
        return ElectricalConductivity.at25MsPerCm(
                tray.trace.scenario().sourceWater().composition());
    }

    /** The recipe that holds most of a component at one EC, where that is worth it; or empty. */
    private String richerIn(Component scarce) {
        Composition feed = tray.feed;
        double most = RICHER * feed.molPerM3(scarce) / tray.feedMsPerCm;
        String richest = "";
        for (String id : Recipe.names()) {
            Recipe recipe = Recipe.named(id).orElseThrow();
            double share =
                    recipe.composition().molPerM3(scarce)
                            / ElectricalConductivity.at25MsPerCm(recipe.composition());
            if (share > most) {
                most = share;
                richest = id;
            }
        }
        return richest;
    }

    private IntPredicate isShortOf(Component component) {
        double least = Shortage.leastMolPerM3(component);
        return h -> !tray.isLow(h) && tray.of.molPerM3(component.ordinal(), h) < least;
    }

    private void addIon(Warning.Kind kind, Component ion, double high) {
        int i = ion.ordinal();
        IntPredicate isMuch = isMuch(ion, high);
        int from = tray.firstSpell(isMuch);
        if (from < 0) {
            return;
        }
        double feed = tray.feed.molPerM3(ion);
        double water = tray.trace.scenario().sourceWater().composition().molPerM3(ion);
        warn(
                kind,
                from,
                isMuch,
                Measure.atMost(
                        tray.greatest(from, h -> tray.isLow(h) ? 0 : tray.of.molPerM3(i, h)),
                        high,
                        Unit.MMOL_PER_L),
                new Cause(
                        Cause.Kind.CROP_LEAVES_IT,
                        Facts.of(Quantity.FEED_CONTENT, feed)
                                .and(Quantity.WATER_CONTENT, water)
                                .named(ion.title())),
                List.of(
                        isOfWater(ion)
                                ? Cure.of(Cure.Kind.RAIN_WATER)
                                : new Cure(Cure.Kind.FEED_WITHOUT, Facts.NONE.named(ion.title()))));
    }

    /** Whether most of what the feed holds of an ion comes with the water. */
    private boolean isOfWater(Component ion) {
        double feed = tray.feed.molPerM3(ion);
        return tray.trace.scenario().sourceWater().composition().molPerM3(ion) > 0.5 * feed;
    }

    /** Whether sodium or chloride of the water pile up beyond what the crop bears. */
    private boolean leavesIonOfWater() {
        return waterMsPerCm() > SALTY_WATER_MS_PER_CM
                && (isOfWater(Component.NA) && pilesUp(Component.NA, limits.sodiumHighMolPerM3())
                        || isOfWater(Component.CL)
                                && pilesUp(Component.CL, limits.chlorideHighMolPerM3()));
    }

    private boolean pilesUp(Component ion, double high) {
        return tray.firstSpell(isMuch(ion, high)) >= 0;
    }

    private IntPredicate isMuch(Component ion, double high) {
        return h -> !tray.isLow(h) && tray.of.molPerM3(ion.ordinal(), h) > high;
    }

    /** A crust in a tray or a reservoir: one warning for all minerals that one cure helps. */
    static void addPrecipitates(
            Trace trace, List<Event> events, Predicate<Event> isTold, Findings out) {
        List<Event> crusts =
                events.stream()
                        .filter(e -> e.kind() == Event.Kind.PRECIPITATE && isTold.test(e))
                        .toList();
        addCrust(
                trace,
                crusts.stream().filter(e -> !isAtAnyPh(e)).toList(),
                AcidityAdvice.isLimed(trace)
                        ? List.of(Cure.of(Cure.Kind.SOFTER_WATER), Cure.of(Cure.Kind.ACID_BY_METER))
                        : List.of(Cure.of(Cure.Kind.ACID_BY_METER)),
                out);
        addCrust(
                trace,
                crusts.stream().filter(SolutionAdvice::isAtAnyPh).toList(),
                List.of(Cure.of(Cure.Kind.LEANER_FEED), Cure.of(Cure.Kind.FRESH_SOLUTION_SOONER)),
                out);
    }

    private static void addCrust(Trace trace, List<Event> crusts, List<Cure> cures, Findings out) {
        if (crusts.isEmpty()) {
            return;
        }
        List<String> minerals = crusts.stream().map(Event::detail).distinct().toList();
        Event first = crusts.get(0);
        Event last = crusts.get(crusts.size() - 1);
        out.warnings.add(
                new Warning(
                        Warning.Kind.PRECIPITATE,
                        first.vessel(),
                        trace.clockAt(first.atS()),
                        trace.clockAt(last.atS()),
                        Measure.none(),
                        new Cause(
                                Cause.Kind.SUPERSATURATED,
                                Facts.NONE.named(String.join(" and ", minerals))),
                        cures));
    }

    // ---- cures ---------------------------------------------------------------------------------

    private List<Cure> leanCures() {
        return List.of(
                Cure.of(Cure.Kind.STRONGER_FEED), Cure.of(Cure.Kind.MORE_SOLUTION_PER_PLANT));
    }

    /** Whether the feed itself harms the crop, so that neither flush nor lid can help. */
    private boolean strongFeed() {
        return tray.feedMsPerCm > limits.ecHighMsPerCm();
    }

    /** Middle of what growers feed the crop, within the grower's own limit, mS/cm. */
    private double usualFeedMsPerCm() {
        CropTraits.Needs needs = tray.traits.needs();
        return Math.min(
                0.5 * (needs.ecLowMsPerCm() + needs.ecHighMsPerCm()), limits.ecHighMsPerCm());
    }

    /** Whether it is strong because it is half empty and nobody is there to fill it up. */
    private boolean isDryingWhileAway(int hour) {
        double full = FlushRule.workingM3(tray.tray, tray.setOn(hour));
        double filledMsPerCm = tray.of.ecMsPerCm().at(hour) * tray.of.volumeM3().at(hour) / full;
        return tray.tray.filling() instanceof Filling.ByHand
                && filledMsPerCm < limits.ecHighMsPerCm()
                && tray.rounds.isLeftFor(hour);
    }

    /** What would make a flush come later or not at all: first plain water in place of feed. */
    private List<Cure> saltCures(int hour) {
        if (tray.traits != null && strongFeed()) {
            return List.of(
                    new Cure(
                            Cure.Kind.LEANER_FEED,
                            Facts.of(Quantity.FEED_EC, tray.feedMsPerCm)
                                    .and(Quantity.WANTED_EC, usualFeedMsPerCm())));
        }
        List<Cure> cures = new ArrayList<>();
        boolean byWater = isCrowdedByWater() || leavesIonOfWater();
        if (byWater) {
            cures.add(softerWater());
        }
        if (isDryingWhileAway(hour)) {
            cures.add(
                    new Cure(
                            Cure.Kind.TOPPED_UP_MEANWHILE,
                            Facts.NONE.on(tray.trace.clockAtSample(hour))));
        }
        PlainWater water = plainWaterFrom(hour);
        if (water != null) {
            cures.add(
                    new Cure(
                            tray.tray.filling() instanceof Filling.ByValve
                                    ? Cure.Kind.WATER_IN_THE_NEXT_REFILL
                                    : Cure.Kind.TOP_UP_WITH_WATER,
                            fromTheVisitBefore(hour, water.facts())));
        }
        OptionalDouble wanted = leanerMsPerCm(hour);
        if (wanted.isPresent()) {
            cures.add(leanerFeed(wanted));
        }
        if (isNeverChanged()) {
            cures.add(
                    new Cure(
                            Cure.Kind.CHANGE_AT_LIMIT,
                            Facts.of(Quantity.EC_LIMIT, limits.ecHighMsPerCm())));
        }
        if (wanted.isEmpty()) {
            cures.add(leanerFeed(wanted));
        }
        int from = tray.firstHour;
        double evaporated = tray.of.evaporationM3().sum(from, tray.lastHour + 1);
        double left = evaporated + tray.of.transpirationM3().sum(from, tray.lastHour + 1);
        double share = left > 0 ? evaporated / left : 0;
        if (tray.tray.openAreaM2() > 0 && share >= LID_WORTH_FRAC) {
            cures.add(new Cure(Cure.Kind.LID_ON_GAPS, Facts.of(Quantity.EVAPORATED_SHARE, share)));
        }
        if (!byWater && waterMsPerCm() > SALTY_WATER_MS_PER_CM) {
            cures.add(softerWater());
        }
        return cures;
    }

    /** Whoever begins at the visit before keeps the reading from passing its limit at all. */
    private Facts fromTheVisitBefore(int hour, Facts facts) {
        double before = tray.rounds.lastBefore(hour);
        return before * Time.HOUR_S > tray.planting.fromS()
                ? facts.on(tray.trace.clockAt(before * Time.HOUR_S))
                : facts;
    }

    /** Plain water from an hour on, or from the next visit where it is too soon to tell. */
    private PlainWater plainWaterFrom(int hour) {
        PlainWater water = PlainWater.of(tray, hour);
        int visit = (int) tray.rounds.nextFrom(hour + 1.0) - 1;
        return water == null && visit <= tray.lastHour ? PlainWater.of(tray, visit) : water;
    }

    private boolean isNeverChanged() {
        return tray.trace.scenario().visits().flush() == Visits.Flush.NEVER
                && !(tray.tray.filling() instanceof Filling.Sealed);
    }

    /**
     * A feed with which the worst moment from an hour on would just keep the limit, had nothing
     * else been changed, mS/cm: what was poured in by then brings so much less as stood in the tray
     * too much. Empty where that is leaner than the crop wants, where the solution was changed or
     * plain water poured, and outside a room, where a crop that stands less salty drinks so much
     * more by the sun that no feed suits all season.
     */
    private OptionalDouble leanerMsPerCm(int hour) {
        int worst = hour;
        for (int h = hour; h <= tray.lastHour; h++) {
            boolean more = tray.of.ecMsPerCm().at(h) > tray.of.ecMsPerCm().at(worst);
            worst = !tray.isLow(h) && more ? h : worst;
        }
        double pouredM3 =
                tray.of.volumeM3().at(tray.firstHour)
                        + tray.of.inflowM3().sum(tray.firstHour, worst + 1);
        double tooMuch =
                Math.max(0, tray.of.ecMsPerCm().at(worst) - limits.ecHighMsPerCm())
                        * tray.of.volumeM3().at(worst)
                        / pouredM3;
        double wanted = tray.feedMsPerCm - tooMuch;
        boolean isTold =
                tray.trace.scenario().climate() instanceof Climate.Room
                        && isFeedAloneUntil(worst)
                        && wanted >= limits.ecLowMsPerCm();
        return isTold ? OptionalDouble.of(wanted) : OptionalDouble.empty();
    }

    private boolean isFeedAloneUntil(int hour) {
        for (Event event : tray.events()) {
            boolean isSo = TrayCase.isChange(event) || event.waterM3() > 0;
            if (isSo && tray.trace.sampleAt(event.atS()) <= hour) {
                return false;
            }
        }
        return true;
    }

    /** With its figure where a meter tells it from the feed as it is. */
    private Cure leanerFeed(OptionalDouble wanted) {
        Facts facts = Facts.of(Quantity.FEED_EC, tray.feedMsPerCm);
        double visible = tray.feedMsPerCm * (1 - FlushRule.METER_DOUBT_FRAC);
        return new Cure(
                Cure.Kind.LEANER_FEED,
                wanted.isPresent() && wanted.getAsDouble() < visible
                        ? facts.and(Quantity.WANTED_EC, wanted.getAsDouble())
                        : facts);
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
