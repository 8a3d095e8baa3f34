package tideless.sim;

import java.time.LocalDate;
import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.Visits;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ConductivityBounds;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Meter;

/**
 * What whoever looks in does at a visit: refills, top-ups, flushes and fresh solution, each by its
 * rule. Scratch space of one run.
 */
final class VisitRules {
    /** So far below where it is kept a level is worth a jug, m; assumed. */
    private static final double LOW_M = 0.002;

    /** Before nobody comes for long: what a rule shows, m; assumed. */
    private static final double SEEN_LOW_M = 0.0005;

    /** Whoever comes again within so many days comes again soon, d; assumed. */
    private static final int SOON_DAYS = 3;

    /** With so much of a filling left a reservoir may hold plenty before an absence; assumed. */
    private static final double PLENTY_FRAC = 0.5;

    /** And where that would last so many times as long: crops grow meanwhile; assumed. */
    private static final double AWAY_TIMES = 2;

    private final Scenario scenario;
    private final double[] feedMsPerCm; // of each tray's
    private final Composition sourceWater;

    /**
     * Whether a tray that is plainly fit goes unread: in the long steps of ensembles, for a meter
     * starts each reading from its last.
     */
    private final boolean boundsDecide;

    private final Meter[] meters; // one a tray, so that each starts from its own last reading
    private final Departures departures;
    private final double[] reservoirDosesM3; // source water of doses poured so far
    private final double[] trayDosesM3; // likewise
    private final double[] plannedM; // setting of each valve by the scenario, m
    private final EventLog log;
    private final double keptFromS; // by the grower's log
    private final boolean[] reservoirIsTold; // likewise
    private final boolean[] trayIsTold;

    VisitRules(Scenario scenario, Meter[] meters, Departures departures, EventLog log) {
        this.scenario = scenario;
        this.meters = meters;
        this.departures = departures;
        this.log = log;
        feedMsPerCm =
                scenario.trays().stream()
                        .mapToDouble(t -> ElectricalConductivity.at25MsPerCm(feed(t)))
                        .toArray();
        sourceWater = scenario.sourceWater().composition();
        boundsDecide = scenario.numerics().stepS() > Simulation.EXACT_UP_TO_S;
        keptFromS = scenario.log().keptFromS();
        reservoirIsTold = new boolean[scenario.reservoirs().size()];
        for (int i = 0; i < reservoirIsTold.length; i++) {
            reservoirIsTold[i] = scenario.log().tellsOfWater(scenario.reservoirs().get(i).id());
        }
        trayIsTold = new boolean[scenario.trays().size()];
        for (int i = 0; i < trayIsTold.length; i++) {
            trayIsTold[i] = scenario.log().tellsOfWater(scenario.trays().get(i).id());
        }
        reservoirDosesM3 = new double[scenario.reservoirs().size()];
        trayDosesM3 = new double[scenario.trays().size()];
        plannedM = new double[scenario.trays().size()];
        for (int i = 0; i < plannedM.length; i++) {
            plannedM[i] =
                    scenario.trays().get(i).filling() instanceof Filling.ByValve valve
                            ? valve.settingM()
                            : Double.NaN;
        }
    }

    /**
     * A visit: what is ready is cut, then reservoirs, then each tray.
     *
     * @param timeS s since the start
     * @param airC what is poured is as warm as the air, degC
     */
    void visit(double timeS, double airC, List<ReservoirRun> reservoirs, List<TrayRun> trays) {
        int day = (int) (timeS / Time.DAY_S);
        if (departures.isMissed(day)) {
            return;
        }
        boolean fillsUp = departures.isFilledUp(day);
        LocalDate date = dateAt(timeS);
        boolean onRound = scenario.visits().on(date);
        if (timeS >= keptFromS && timeS <= scenario.log().lastS()) {
            keepLog(date, onRound, timeS, airC, reservoirs, trays);
            return;
        }
        for (TrayRun tray : trays) {
            if (onRound) {
                tray.harvestIfReady(timeS, NextVisit.after(scenario, date), log);
            }
        }
        for (ReservoirRun reservoir : reservoirs) {
            if (onRound) {
                refillIfDue(reservoir, date, fillsUp, timeS, trays);
                reservoir.lookedAt(timeS);
            }
        }
        for (TrayRun tray : trays) {
            moveValve(tray, date, timeS);
            plantIfDue(tray, date, timeS, airC);
            if (onRound && scenario.visits().flush() == Visits.Flush.AT_LIMIT) {
                renewIfOut(tray, date, timeS, airC);
            }
            topUpIfDue(tray, date, onRound, fillsUp, timeS, airC);
        }
    }

    /** Whether all that a reservoir feeds has been cut or lost. */
    private static boolean isDoneFor(ReservoirRun reservoir, List<TrayRun> trays) {
        boolean fed = false;
        for (TrayRun tray : trays) {
            if (tray.tray.isFedBy(reservoir.reservoir.name())) {
                if (!tray.isOver()) {
                    return false;
                }
                fed = true;
            }
        }
        return fed;
    }

    private void refillIfDue(
            ReservoirRun reservoir,
            LocalDate date,
            boolean fillsUp,
            double timeS,
            List<TrayRun> trays) {
        if (!isDoneFor(reservoir, trays) && (fillsUp || isDue(reservoir, date, timeS, trays))) {
            refill(reservoir, timeS);
        }
    }

    // What is done is told by the log; only what the scenario dates itself is done besides, and
    // what is of vessels of whose water it tells nothing.
    private void keepLog(
            LocalDate date,
            boolean onRound,
            double timeS,
            double airC,
            List<ReservoirRun> reservoirs,
            List<TrayRun> trays) {
        for (TrayRun tray : trays) {
            moveValve(tray, date, timeS);
            plantIfDue(tray, date, timeS, airC);
        }
        for (ReservoirRun reservoir : reservoirs) {
            if (onRound && !reservoirIsTold[reservoir.index]) {
                refillIfDue(reservoir, date, false, timeS, trays);
            }
            if (onRound) {
                reservoir.lookedAt(timeS);
            }
        }
        for (TrayRun tray : trays) {
            if (!trayIsTold[tray.index]) {
                topUpIfDue(tray, date, onRound, false, timeS, airC);
            }
        }
    }

    private void plantIfDue(TrayRun tray, LocalDate date, double timeS, double airC) {
        if (tray.isPlantedOn(date)) {
            tray.plantNext(timeS, (int) (timeS / Time.DAY_S), feed(tray.tray), airC, log);
        }
    }

    /** Fills a reservoir with what it is refilled with, as warm as what stands in it. */
    void refill(ReservoirRun reservoir, double atS) {
        double wanted = reservoir.missingM3();
        double water =
                reservoir
                        .reservoir
                        .refill()
                        .with()
                        .waterM3(dateAt(atS), wanted, reservoirDosesM3[reservoir.index]);
        reservoirDosesM3[reservoir.index] +=
                reservoir
                        .reservoir
                        .refill()
                        .with()
                        .doseM3(dateAt(atS), wanted, reservoirDosesM3[reservoir.index]);
        Composition of = scenario.feedOf(reservoir.reservoir).composition();
        double poured = reservoir.refill(mixed(of, wanted, water), reservoir.tempC);
        log.addPoured(Event.Kind.REFILL, atS, reservoir.reservoir.id(), poured, water);
    }

    private LocalDate dateAt(double atS) {
        return scenario.start().plusDays((long) (atS / Time.DAY_S));
    }

    private Composition feed(Tray tray) {
        return scenario.feedOf(tray).composition();
    }

    /** Feed with so much source water in its place. */
    private Composition mixed(Composition feed, double pouredM3, double waterM3) {
        if (!(waterM3 > 0)) {
            return feed;
        }
        double share = waterM3 / pouredM3;
        return share < 1 ? feed.times(1 - share).plus(sourceWater.times(share)) : sourceWater;
    }

    /**
     * Whether what is left outlasts an absence with plenty to spare, so that nobody carries water
     * before it: at least half of a filling, which would last twice as long; or, where all that it
     * feeds is about to be cut, just as long.
     */
    private static boolean outlasts(ReservoirRun run, double timeS, int days, List<TrayRun> trays) {
        return isNearlyCut(run, timeS, trays)
                ? run.wouldLast(timeS, days)
                : run.feedingFrac() >= PLENTY_FRAC && run.wouldLast(timeS, AWAY_TIMES * days);
    }

    /** Whether all that a reservoir feeds is cut soon, and nothing follows it. */
    private static boolean isNearlyCut(ReservoirRun run, double timeS, List<TrayRun> trays) {
        boolean isFeeding = false;
        for (TrayRun tray : trays) {
            if (tray.tray.isFedBy(run.reservoir.name()) && !tray.isOver()) {
                if (!tray.tray.next().isEmpty() || !tray.isNearHarvest(timeS)) {
                    return false;
                }
                isFeeding = true;
            }
        }
        return isFeeding;
    }

    /** Whether what is left lasts until all that it feeds has been cut. */
    private static boolean lastsToHarvest(ReservoirRun run, double timeS, List<TrayRun> trays) {
        return isNearlyCut(run, timeS, trays)
                && run.wouldLast(timeS, FlushRule.DAYS_BEFORE_HARVEST);
    }

    private boolean isDue(ReservoirRun run, LocalDate date, double timeS, List<TrayRun> trays) {
        Reservoir.Refill rule = run.reservoir.refill();
        return switch (rule.when()) {
            case BEFORE_NEXT_VISIT -> {
                NextVisit next = NextVisit.after(scenario, date);
                yield next.afterAbsence()
                        ? !run.reservoir.isAsGoodAsFull(run.water.m3)
                                && !outlasts(run, timeS, next.days(), trays)
                        : run.water.m3 < run.reservoir.fullM3()
                                && !run.wouldLast(timeS, next.days());
            }
            case LOW_AT_VISIT ->
                    run.feedingFrac() < rule.belowFrac() && !lastsToHarvest(run, timeS, trays);
            case EVERY_VISIT ->
                    !run.reservoir.isAsGoodAsFull(run.water.m3)
                            && !lastsToHarvest(run, timeS, trays);
            case WHEN_EMPTY, NEVER -> false;
        };
    }

    private void moveValve(TrayRun tray, LocalDate date, double timeS) {
        if (tray.tray.filling() instanceof Filling.ByValve valve) {
            double toM = valve.settingM(date);
            if (toM != plannedM[tray.index]) {
                plannedM[tray.index] = toM;
                setValve(tray, toM, timeS);
            }
        }
    }

    /** Sets the valve of a tray to a level above its floor, m. */
    void setValve(TrayRun tray, double toM, double timeS) {
        tray.settingM = toM;
        String toMm = FastMath.round(toM * 1e4) / 10.0 + " mm";
        log.add(
                new Event(
                        Event.Kind.VALVE_MOVED,
                        timeS,
                        tray.tray.id(),
                        0,
                        0,
                        0,
                        Double.NaN,
                        0,
                        toMm));
    }

    private void topUpIfDue(
            TrayRun tray,
            LocalDate date,
            boolean onRound,
            boolean fillsUp,
            double timeS,
            double airC) {
        if (tray.tray.filling() instanceof Filling.ByHand hand
                && !tray.isOver()
                && !tray.isWaiting()
                && (hand.days().isEmpty() || fillsUp ? onRound : hand.days().contains(date))) {
            int daysAhead = NextVisit.after(scenario, date).days();
            double toM = tray.filledToM(hand.toLevelM(), timeS, daysAhead);
            if (fillsUp || borneM(tray, hand, toM) - tray.levelM() >= worthAJugM(date)) {
                topUp(tray, hand, toM, timeS, airC);
            }
        }
    }

    private double worthAJugM(LocalDate date) {
        return NextVisit.after(scenario, date).days() > SOON_DAYS ? SEEN_LOW_M : LOW_M;
    }

    private static double borneM(TrayRun tray, Filling.ByHand hand, double toM) {
        return hand.inSteps() ? Math.min(toM, tray.highestBorneM()) : toM;
    }

    /** Fills a tray up to its mark by hand, with what its rule says. */
    void topUp(TrayRun tray, Filling.ByHand hand, double timeS, double airC) {
        topUp(tray, hand, hand.toLevelM(), timeS, airC);
    }

    private void topUp(
            TrayRun tray, Filling.ByHand hand, double levelM, double timeS, double airC) {
        double toM = borneM(tray, hand, levelM);
        double wanted = tray.missingM3(toM);
        double water = hand.with().waterM3(dateAt(timeS), wanted, trayDosesM3[tray.index]);
        trayDosesM3[tray.index] +=
                hand.with().doseM3(dateAt(timeS), wanted, trayDosesM3[tray.index]);
        double poured = tray.topUp(toM, mixed(feed(tray.tray), wanted, water), airC);
        if (poured > 0) {
            log.addPoured(Event.Kind.TOP_UP, timeS, tray.tray.id(), poured, water);
        }
    }

    private void renewIfOut(TrayRun tray, LocalDate date, double timeS, double airC) {
        if (!tray.lives()
                || tray.isNearHarvest(timeS)
                || tray.isNearPlanting(date)
                || !FlushRule.mayChange(tray.tray, date, tray.water.m3)) {
            return;
        }
        double meter = departures.meterFrac() * scenario.correction().meter();
        double high = tray.tray.limits().ecHighMsPerCm();
        double lean =
                FlushRule.leanMsPerCm(tray.tray.limits().ecLowMsPerCm(), tray.leafAreaIndex());
        if (boundsDecide && isPlainlyFit(tray, meter, lean, high) && !isShortOfOne(tray, 1)) {
            return;
        }
        meters[tray.index].dipInto(tray.tempC, tray.solutionCo2Ppm());
        double ec = meter * tray.ecMsPerCm(meters[tray.index]);
        if (FlushRule.isTooSalty(ec, feedMsPerCm[tray.index], high)) {
            renew(tray, Event.Kind.FLUSH, timeS, airC, ec);
        } else if (FlushRule.isTooLean(ec, feedMsPerCm[tray.index], lean)
                        && isShortOfOne(tray, FlushRule.NEARLY_SHORT)
                || isShortOfOne(tray, 1)) {
            renew(tray, Event.Kind.FRESH_SOLUTION, timeS, airC, ec);
        }
    }

    // Bounds of what the meter would show leave neither rule a chance.
    private boolean isPlainlyFit(TrayRun tray, double meter, double lean, double high) {
        ConductivityBounds bounds = tray.conductivityBounds();
        double feed = feedMsPerCm[tray.index];
        return !FlushRule.isTooSalty(meter * bounds.mostMsPerCm(), feed, high)
                && !FlushRule.isTooLean(meter * bounds.leastMsPerCm(), feed, lean);
    }

    private boolean isShortOfOne(TrayRun tray, double times) {
        Composition feed = feed(tray.tray);
        for (Component component : Shortage.WATCHED) {
            int i = component.ordinal();
            double held = tray.salts.mol[i] / tray.water.m3;
            if (isShort(component, held / times, feed.molPerM3(i))) {
                return true;
            }
        }
        return false;
    }

    /**
     * Whether a nutrient is below the concentration at which uptake slows, and fresh solution would
     * put it right.
     *
     * @param heldMolPerM3 in the tray
     * @param feedMolPerM3 in the feed; at least twice the least, or it would soon be short again
     *     (assumed)
     */
    static boolean isShort(Component component, double heldMolPerM3, double feedMolPerM3) {
        double least = Shortage.leastMolPerM3(component);
        return heldMolPerM3 < least && feedMolPerM3 > 2 * least;
    }

    // All of it: a part would cost the same litres in the end, and come again within days.
    void renew(TrayRun tray, Event.Kind kind, double timeS, double airC, double ec) {
        double drained = tray.water.m3;
        double poured = tray.renew(1, feed(tray.tray), airC);
        log.add(new Event(kind, timeS, tray.tray.id(), poured, 0, drained, ec, 0, ""));
    }
}
