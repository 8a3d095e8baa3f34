package tideless.advice;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import tideless.crop.CropTraits;
import tideless.physics.HumidAir;
import tideless.physics.Oxygen;
import tideless.rig.Filling;
import tideless.rig.Limits;
import tideless.rig.Planting;
import tideless.rig.Tray;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.FlushRule;
import tideless.sim.Shortage;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.solution.ElectricalConductivity;

/** Tasks and warnings of one tray. */
final class TrayAdvice {
    /** Share of the hanging roots that belongs in the solution; common practice, no source. */
    private static final double WET_THIRD = 1.0 / 3;

    /** Above this wet share a valve is worth lowering once the roots reach the floor; assumed. */
    private static final double TOO_WET = 0.55;

    /**
     * A young plant wants its cup wet; the level may leave it "a few weeks" after transplanting,
     * Kratky (2010), CTAHR VC-1, read; taken as two, h.
     */
    private static final int SETTLING_H = 14 * 24;

    /** A pH meter of a grower reads to this. */
    private static final double PH_READING = 0.1;

    /** A valve tray this far below its band is starved, m; assumed. */
    private static final double STARVED_M = 0.003;

    private final Trace trace;
    private final TrayTrace of;
    private final Tray tray;
    private final Rounds rounds;
    private final List<Task> tasks;
    private final List<Warning> warnings;
    private final CropTraits traits;
    private final int lastHour;

    TrayAdvice(Trace trace, TrayTrace of, Rounds rounds, List<Task> tasks, List<Warning> warnings) {
        this.trace = trace;
        this.of = of;
        this.rounds = rounds;
        this.tasks = tasks;
        this.warnings = warnings;
        tray = of.tray();
        traits = tray.planting() instanceof Planting.OfCrop crop ? crop.traits() : null;
        lastHour = trace.lastLivingHour(of);
    }

    void add() {
        for (Event event : trace.events()) {
            if (event.vessel().equals(tray.id())) {
                addTask(event);
            }
        }
        addUnheededChanges();
        addValveHeights();
        addRootWarnings();
        addStarvedValve();
        addOverflow();
        addBandWarnings();
        addShortages();
        if (traits != null) {
            new SaltAdvice(trace, of, warnings, lastHour).add();
        }
        addWarmth();
        addLowLight();
    }

    // ---- tasks ---------------------------------------------------------------------------------

    private void addTask(Event event) {
        switch (event.kind()) {
            case TOP_UP ->
                    task(
                            Task.Kind.TOP_UP,
                            event.atS(),
                            event.volumeM3() * 1000,
                            0,
                            Figures.millimetres(levelBefore(event.atS())) + " deep",
                            "to "
                                    + Figures.millimetres(
                                            ((Filling.ByHand) tray.filling()).toLevelM()),
                            "brings the level back to where it is kept by hand",
                            "");
            case FLUSH ->
                    task(
                            Task.Kind.FLUSH,
                            event.atS(),
                            event.volumeM3() * 1000,
                            event.drainedM3() * 1000,
                            Figures.ec(event.ecMsPerCm()),
                            "above " + Figures.ec(limits().ecHighMsPerCm()),
                            "salts have built up; afterwards it reads "
                                    + Figures.ec(ecAfter(event.atS())),
                            saltCure());
            case FRESH_SOLUTION ->
                    task(
                            Task.Kind.FRESH_SOLUTION,
                            event.atS(),
                            event.volumeM3() * 1000,
                            event.drainedM3() * 1000,
                            Figures.ec(event.ecMsPerCm()),
                            leanLimit(event),
                            "the crop has taken what it held; afterwards it reads "
                                    + Figures.ec(ecAfter(event.atS())),
                            "a stronger feed, or more solution per plant");
            case FIRST_RIPE ->
                    task(
                            Task.Kind.HARVEST,
                            event.atS(),
                            0,
                            0,
                            Figures.grams(of.fruitFreshG().at(trace.sampleAt(event.atS())))
                                    + " of fruit on a plant",
                            "first fruit ripe",
                            "picking begins",
                            "");
            case HARVEST -> addHarvest(event);
            default -> {}
        }
    }

    private void addHarvest(Event event) {
        int hour = trace.sampleAt(event.atS());
        boolean fruits = traits != null && traits.stages().fruits();
        double grams = fruits ? of.fruitFreshG().at(hour) : of.freshG().at(hour);
        task(
                Task.Kind.HARVEST,
                event.atS(),
                0,
                0,
                Figures.grams(grams) + (fruits ? " of fruit a plant in all" : " a plant"),
                fruits ? "last fruit picked" : "ready",
                fruits ? "the crop is finished" : "the crop is ready",
                "");
        if (tray.planting() instanceof Planting.OfCrop crop) {
            double sowS = event.atS() - crop.ageAtStartDays() * 86400;
            if (sowS >= 0) {
                task(
                        Task.Kind.SOW_NEXT,
                        sowS,
                        0,
                        0,
                        Figures.days(crop.ageAtStartDays()) + " in the nursery",
                        "ready for the tray on " + trace.clockAt(event.atS()).toLocalDate(),
                        "so that seedlings are ready when this crop leaves the tray",
                        "");
            }
        }
    }

    /** What would be due on a tray whose visitors neither flush nor renew. */
    private void addUnheededChanges() {
        if (trace.scenario().visits().flush() != Visits.Flush.NEVER || traits == null) {
            return;
        }
        double feedEc = ElectricalConductivity.at25MsPerCm(trace.scenario().feed().composition());
        double high = limits().ecHighMsPerCm();
        int salty = firstSpell(h -> of.ecMsPerCm().at(h) > high);
        if (salty >= 0 && feedEc < high) {
            double ec = of.ecMsPerCm().at(salty);
            double share = FlushRule.shareFrac(ec, feedEc, high);
            double litres = share * of.volumeM3().at(salty) * 1000;
            task(
                    Task.Kind.FLUSH,
                    rounds.nextFrom(salty + 1) * 3600,
                    litres,
                    litres,
                    Figures.ec(ec),
                    "above " + Figures.ec(high),
                    "salts have built up and nobody is down to flush; afterwards it would read "
                            + Figures.ec(ec + share * (feedEc - ec)),
                    saltCure());
        }
        double low = limits().ecLowMsPerCm();
        int lean = firstSpell(h -> of.ecMsPerCm().at(h) < low);
        if (lean >= 0 && feedEc > low) {
            double litres = of.volumeM3().at(lean) * 1000;
            task(
                    Task.Kind.FRESH_SOLUTION,
                    rounds.nextFrom(lean + 1) * 3600,
                    litres,
                    litres,
                    Figures.ec(of.ecMsPerCm().at(lean)),
                    "below " + Figures.ec(low),
                    "the crop has taken what it held and nobody is down to renew it",
                    "a stronger feed, or more solution per plant");
        }
    }

    private void addValveHeights() {
        if (!(tray.filling() instanceof Filling.ByValve valve) || traits == null) {
            return;
        }
        for (int h = SETTLING_H; h <= lastHour; h++) {
            double tip = of.rootTipM().at(h);
            boolean reachesFloor = tip <= 0;
            if (reachesFloor && of.wetRootFrac().at(h) > TOO_WET) {
                double setting = Math.max(0.01, WET_THIRD * tray.cupBottomM());
                task(
                        Task.Kind.LOWER_VALVE,
                        rounds.nextFrom(h + 1) * 3600,
                        0,
                        0,
                        Figures.percent(of.wetRootFrac().at(h)) + " of the hanging roots wet",
                        "about a third",
                        "lower it from "
                                + Figures.millimetres(valve.settingM())
                                + " to "
                                + Figures.millimetres(setting)
                                + " a little at a time, so that air roots form",
                        "");
                return;
            }
            if (reachesFloor) {
                return;
            }
        }
    }

    // ---- warnings ------------------------------------------------------------------------------

    private void addRootWarnings() {
        spell(
                Event.Kind.STRANDED,
                Warning.Kind.STRANDED,
                h -> of.levelM().at(h) <= of.rootTipM().at(h),
                "the level fell below the root tips",
                strandedCure());
        once(
                Event.Kind.WILTED,
                Warning.Kind.WILTED,
                "the plants had used up what they hold",
                strandedCure());
        spell(
                Event.Kind.DROWNED,
                Warning.Kind.DROWNED,
                h -> of.levelM().at(h) > of.usedToLevelM().at(h),
                "the level rose above what the air roots were used to",
                "top up a little and often: no more than "
                        + (traits == null
                                ? "20 mm"
                                : Figures.millimetres(traits.roots().riseBorneM()))
                        + " above the highest level of the last week");
        once(
                Event.Kind.DIED,
                Warning.Kind.DIED,
                "the plants were without water, or without air at their roots, for too long",
                strandedCure());
    }

    private String strandedCure() {
        if (tray.filling() instanceof Filling.ByValve) {
            return "raise the valve, or refill the reservoir before it is empty";
        }
        if (tray.filling() instanceof Filling.ByHand) {
            return "top up more often, or start with a deeper vessel";
        }
        return "a deeper tray or fewer plants: one filling has to last the whole crop";
    }

    private void spell(
            Event.Kind begins, Warning.Kind kind, IntPredicate is, String reason, String cure) {
        double first = firstEventS(begins);
        if (first < 0) {
            return;
        }
        int hours = 0;
        for (int h = 0; h <= lastHour; h++) {
            if (is.test(h)) {
                hours++;
            }
        }
        warn(kind, first, Figures.hours(Math.max(1, hours)) + " in all", "none", reason, cure);
    }

    private void once(Event.Kind begins, Warning.Kind kind, String reason, String cure) {
        double first = firstEventS(begins);
        if (first >= 0) {
            warn(kind, first, trace.clockAt(first).toLocalDate().toString(), "never", reason, cure);
        }
    }

    private double firstEventS(Event.Kind kind) {
        for (Event event : trace.events()) {
            if (event.kind() == kind && event.vessel().equals(tray.id())) {
                return event.atS();
            }
        }
        return -1;
    }

    private void addOverflow() {
        double litres = 1000 * of.spillM3().sum();
        for (Event event : trace.events()) {
            if (event.kind() == Event.Kind.OVERFLOW_BEGAN && event.vessel().equals(tray.id())) {
                warn(
                        Warning.Kind.OVERFLOW,
                        event.atS(),
                        String.format(Locale.ROOT, "%.1f L on the floor", litres),
                        "overflow at " + Figures.millimetres(tray.overflowM()),
                        "more comes in than the valve should let in, to the end of the run",
                        "an isolating tap at the reservoir, a sound valve, a tray below the overflow;"
                                + " keep leads and lamps clear of the water");
                return;
            }
        }
    }

    private void addStarvedValve() {
        if (!(tray.filling() instanceof Filling.ByValve valve)) {
            return;
        }
        int reservoir = trace.scenario().reservoirIndex(valve.reservoir());
        double wideM = valve.settingM() - valve.bandM() - STARVED_M;
        int filledBy = 0; // a tray that starts low is filling, not starved
        while (filledBy <= lastHour && of.levelM().at(filledBy) < wideM) {
            filledBy++;
        }
        int from = filledBy;
        int starved =
                firstSpell(
                        h ->
                                h > from
                                        && of.levelM().at(h) < wideM
                                        && trace.reservoirs().get(reservoir).usableM3().at(h)
                                                > 1e-6);
        if (starved >= 0) {
            LocalDate day = trace.clockAt(starved * 3600.0).toLocalDate();
            boolean hangs = valve.faults().isStuckShutOn(day);
            boolean silts = valve.faults().isCloggedOn(day);
            warn(
                    Warning.Kind.STARVED_VALVE,
                    (starved + 1) * 3600.0,
                    Figures.millimetres(of.levelM().at(starved)) + " deep",
                    "setting " + Figures.millimetres(valve.settingM()),
                    hangs
                            ? "the valve hangs shut"
                            : silts
                                    ? "the valve silts up and cannot keep up"
                                    : "the valve stands wide open and cannot keep up",
                    hangs
                            ? "free the valve, and top up by hand until then"
                            : silts
                                    ? "clean the seat, and strain what goes into the reservoir"
                                    : "a higher reservoir, a wider seat, or wider and shorter"
                                            + " tubing");
        }
    }

    private void addBandWarnings() {
        if (traits == null) {
            return;
        }
        Limits limits = limits();
        band(
                Warning.Kind.TOO_SALTY,
                h -> of.ecMsPerCm().at(h) > limits.ecHighMsPerCm(),
                h -> "up to " + Figures.ec(worst(of.ecMsPerCm()::at, h, true)),
                "above " + Figures.ec(limits.ecHighMsPerCm()),
                "salts stay behind as water leaves",
                saltCure());
        double feedEc = ElectricalConductivity.at25MsPerCm(trace.scenario().feed().composition());
        boolean leanFeed = feedEc < limits.ecLowMsPerCm();
        band(
                Warning.Kind.TOO_LEAN,
                h -> of.ecMsPerCm().at(h) < limits.ecLowMsPerCm(),
                h -> "down to " + Figures.ec(worst(of.ecMsPerCm()::at, h, false)),
                "below " + Figures.ec(limits.ecLowMsPerCm()),
                leanFeed
                        ? "the feed itself ("
                                + Figures.ec(feedEc)
                                + ") is leaner than this crop wants"
                        : "the crop takes nutrients faster than they come",
                leanFeed
                        ? "a stronger feed, or a reservoir of its own for this crop"
                        : "a stronger feed, or fresh solution sooner");
        int acid = firstSpell(h -> of.ph().at(h) < limits.phLow() - PH_READING);
        int basic = firstSpell(h -> of.ph().at(h) > limits.phHigh() + PH_READING);
        int out = acid < 0 ? basic : basic < 0 ? acid : Math.min(acid, basic);
        if (out >= 0) {
            boolean high = out == basic;
            warn(
                    Warning.Kind.PH_OUT,
                    (out + 1) * 3600.0,
                    "pH " + Figures.one(worst(of.ph()::at, out, high)),
                    "pH " + Figures.one(limits.phLow()) + " to " + Figures.one(limits.phHigh()),
                    high
                            ? "the roots take more nitrate than cations, and leave alkali behind"
                            : "the roots take more cations than nitrate, and leave acid behind",
                    high
                            ? "a little more ammonium in the feed, or acid by the meter (gloves,"
                                    + " goggles, acid into water)"
                            : "less ammonium in the feed, or a little potassium hydroxide or"
                                    + " carbonate by the meter");
        }
    }

    private interface Reading {
        double at(int hour);
    }

    private double worst(Reading reading, int from, boolean high) {
        double worst = reading.at(from);
        for (int h = from; h <= lastHour; h++) {
            double value = reading.at(h);
            if (high ? value > worst : value < worst) {
                worst = value;
            }
        }
        return worst;
    }

    private interface Words {
        String at(int hour);
    }

    private void band(
            Warning.Kind kind,
            IntPredicate is,
            Words figure,
            String limit,
            String reason,
            String cure) {
        int from = firstSpell(is);
        if (from >= 0) {
            warn(kind, (from + 1) * 3600.0, figure.at(from), limit, reason, cure);
        }
    }

    private void addShortages() {
        if (traits == null) {
            return;
        }
        int first = -1;
        Component scarce = null;
        for (Component component : Shortage.WATCHED) {
            double least = Shortage.leastMolPerM3(component);
            int i = component.ordinal();
            int at = firstSpell(h -> of.molPerM3(i, h) < least);
            if (at >= 0 && (first < 0 || at < first)) {
                first = at;
                scarce = component;
            }
        }
        if (first >= 0) {
            warn(
                    Warning.Kind.SHORT_OF_ONE,
                    (first + 1) * 3600.0,
                    scarce.title() + " nearly gone",
                    "at least " + Figures.two(Shortage.leastMolPerM3(scarce)) + " mmol/L",
                    "one nutrient runs out before the rest",
                    "fresh solution, a feed with more of it, or more solution per plant");
        }
    }

    private void addWarmth() {
        if (traits == null) {
            return;
        }
        double warm = traits.needs().solutionWarmC();
        int from = firstSpell(h -> of.solutionTempC().at(h) > warm, 6);
        if (from >= 0) {
            double most = worst(of.solutionTempC()::at, from, true);
            double oxygen =
                    Oxygen.saturationMgPerL(
                            most, 0, HumidAir.pressurePa(trace.scenario().place().altitudeM()));
            warn(
                    Warning.Kind.WARM_SOLUTION,
                    (from + 1) * 3600.0,
                    "up to " + Figures.celsius(most),
                    "above " + Figures.celsius(warm),
                    "warm solution holds little oxygen ("
                            + Figures.one(oxygen)
                            + " mg/L at most) and suits root rot",
                    "shade the tray, a pale deck, a deeper body of solution");
        }
    }

    private void addLowLight() {
        if (traits == null) {
            return;
        }
        int days = Math.min(14, (lastHour + 1) / 24);
        if (days == 0) {
            return;
        }
        double light = of.lightMolPerM2().sum(0, days * 24) / days;
        double low = traits.needs().lightLowMolPerM2Day();
        if (light < low) {
            warn(
                    Warning.Kind.LOW_LIGHT,
                    0,
                    Figures.one(light) + " mol/m2/day",
                    "at least " + Figures.one(low) + " mol/m2/day",
                    "the crop will be slow and thin",
                    "a stronger or nearer lamp, or longer hours");
        }
    }

    // ---- small things --------------------------------------------------------------------------

    private Limits limits() {
        return tray.limits();
    }

    private String saltCure() {
        return new SaltAdvice(trace, of, warnings, lastHour).cure();
    }

    private String leanLimit(Event event) {
        return event.ecMsPerCm() < limits().ecLowMsPerCm()
                ? "below " + Figures.ec(limits().ecLowMsPerCm())
                : "one nutrient nearly gone";
    }

    private double levelBefore(double atS) {
        return of.levelM().at(trace.sampleAt(atS));
    }

    private double ecAfter(double atS) {
        return of.ecMsPerCm().at(Math.min(trace.hours() - 1, (int) (atS / 3600)));
    }

    private int firstSpell(IntPredicate is) {
        return firstSpell(is, Spells.PATIENCE_H);
    }

    /** First hour of a spell that lasts, while the crop lives, or -1. */
    private int firstSpell(IntPredicate is, int patienceH) {
        return Spells.first(lastHour, patienceH, is);
    }

    private void task(
            Task.Kind kind,
            double atS,
            double litres,
            double drainLitres,
            String limiting,
            String limit,
            String reason,
            String cure) {
        tasks.add(
                new Task(
                        kind,
                        trace.clockAt(atS),
                        tray.name(),
                        false,
                        litres,
                        drainLitres,
                        limiting,
                        limit,
                        reason,
                        cure));
    }

    private void warn(
            Warning.Kind kind,
            double atS,
            String limiting,
            String limit,
            String reason,
            String cure) {
        warnings.add(
                new Warning(
                        kind,
                        trace.clockAt(atS),
                        tray.name(),
                        false,
                        limiting,
                        limit,
                        reason,
                        cure));
    }
}
