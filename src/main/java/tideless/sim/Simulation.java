package tideless.sim;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.Visits;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Meter;

/** Runs a scenario from its first day to its last. */
public final class Simulation {
    private final Scenario scenario;
    private final Timeline timeline;
    private final AirSeries air;
    private final Composition feed;
    private final double feedMsPerCm;
    private final Composition sourceWater;
    private final EventLog log = new EventLog();
    private final Meter[] meters; // one a tray, so that each starts from its own last reading
    private final List<TrayRun> trays = new ArrayList<>();
    private final List<ReservoirRun> reservoirs = new ArrayList<>();
    private final List<GravityFeed> feeds = new ArrayList<>();
    private final List<TrayRun> unfed = new ArrayList<>();
    private final ReservoirRun[] feedOf;
    private final Recorder recorder;

    private Simulation(Scenario scenario, Surroundings surroundings, boolean keepsSeries) {
        this.scenario = scenario;
        timeline = surroundings.timeline;
        air = surroundings.air;
        feed = scenario.feed().composition();
        feedMsPerCm = ElectricalConductivity.at25MsPerCm(feed);
        sourceWater = scenario.sourceWater().composition();
        meters = new Meter[scenario.trays().size()];
        Arrays.setAll(meters, i -> new Meter(air.solutionCo2Ppm));
        double startC = air.tempC[0];
        feedOf = new ReservoirRun[scenario.trays().size()];
        for (int i = 0; i < scenario.trays().size(); i++) {
            trays.add(new TrayRun(scenario.trays().get(i), i, startC));
        }
        for (int i = 0; i < scenario.reservoirs().size(); i++) {
            Reservoir reservoir = scenario.reservoirs().get(i);
            ReservoirRun run = new ReservoirRun(reservoir, i, feed, startC);
            reservoirs.add(run);
            List<TrayRun> fed = new ArrayList<>();
            for (TrayRun tray : trays) {
                if (tray.tray.isFedBy(reservoir.name())) {
                    fed.add(tray);
                    feedOf[tray.index] = run;
                }
            }
            feeds.add(
                    new GravityFeed(
                            run,
                            fed,
                            reservoir.refill().when() == Reservoir.Refill.When.WHEN_EMPTY,
                            scenario.start(),
                            GravityFeed.BEND_MOST));
        }
        for (TrayRun tray : trays) {
            if (feedOf[tray.index] == null) {
                unfed.add(tray);
            }
        }
        recorder =
                new Recorder(
                        keepsSeries ? scenario.days() * 24 : 0, trays.size(), reservoirs.size());
    }

    /**
     * Runs a scenario.
     *
     * @param scenario what to run
     * @return its trace; the same scenario gives the same bits
     */
    public static Trace run(Scenario scenario) {
        return new Simulation(scenario, Surroundings.of(scenario), true).trace(true);
    }

    /**
     * Runs a scenario for its water alone: EC and pH of the trace are NaN, all else is as in {@link
     * #run}. Reading meters is a large part of a run's work.
     */
    public static Trace runUnread(Scenario scenario) {
        return new Simulation(scenario, Surroundings.of(scenario), true).trace(false);
    }

    /**
     * Runs a member of an ensemble: the whole model, no series kept.
     *
     * @param surroundings of this scenario or of one they {@link Surroundings#suit}
     * @throws IllegalArgumentException when they do not suit
     */
    public static Season season(Scenario scenario, Surroundings surroundings) {
        if (!surroundings.suit(scenario)) {
            throw new IllegalArgumentException(
                    "these surroundings are not those of '" + scenario.title() + "'");
        }
        return new Simulation(scenario, surroundings, false).season();
    }

    private void goThrough() {
        GravityFeed.Refiller refiller = this::refill;
        for (int step = 0; step < timeline.steps; step++) {
            double timeS = timeline.instantS[step];
            double spanS = timeline.instantS[step + 1] - timeS;
            for (ReservoirRun reservoir : reservoirs) {
                reservoir.openAccounts();
            }
            if (timeline.visit[step]) {
                visit(timeS, air.tempC[step]);
            }
            for (TrayRun tray : trays) {
                tray.begin(step, timeS, spanS, air);
            }
            for (ReservoirRun reservoir : reservoirs) {
                reservoir.begin(step, air);
            }
            for (GravityFeed gravity : feeds) {
                gravity.step(timeS, spanS, refiller, log);
            }
            for (TrayRun tray : unfed) {
                double lost = Math.min(tray.volumeM3, tray.lossM3PerS * spanS);
                tray.took(tray.volumeM3 - lost, 0, lost, 0, null, 0, 0);
            }
            for (TrayRun tray : trays) {
                ReservoirRun source = feedOf[tray.index];
                tray.end(step, timeS, spanS, air, source == null ? tray.tempC : source.tempC, log);
            }
            for (ReservoirRun reservoir : reservoirs) {
                reservoir.end(step, spanS, air);
            }
            recorder.addStep(step, air, trays, reservoirs);
            if (timeline.endsDay[step]) {
                settle(timeline.instantS[step + 1]);
            }
            if (timeline.endsHour[step]) {
                recorder.closeHour(step, air, trays, reservoirs);
            }
            if (timeline.endsDay[step]) {
                double atS = timeline.instantS[step + 1];
                int day = (int) FastMath.round(atS / Timeline.DAY_S);
                for (TrayRun tray : trays) {
                    tray.growOvernight(atS, day, meters[tray.index], log);
                }
            }
        }
    }

    /** Once a day: crystals take hours to days to grow; assumed. */
    private void settle(double atS) {
        double co2Ppm = air.solutionCo2Ppm;
        for (TrayRun t : trays) {
            t.precipitate.settle(t.salts.mol, t.volumeM3, t.tempC, co2Ppm, atS, t.tray.id(), log);
        }
        for (ReservoirRun r : reservoirs) {
            r.precipitate.settle(r.mol, r.volumeM3, r.tempC, co2Ppm, atS, r.reservoir.id(), log);
        }
    }

    private void refill(ReservoirRun reservoir, double atS) {
        double poured = reservoir.refill(feed, reservoir.tempC);
        log.addPoured(Event.Kind.REFILL, atS, reservoir.reservoir.id(), poured);
    }

    private void visit(double timeS, double airC) {
        LocalDate date = scenario.start().plusDays((long) (timeS / Timeline.DAY_S));
        boolean onRound = scenario.visits().on(date);
        for (ReservoirRun reservoir : reservoirs) {
            if (onRound && isDue(reservoir)) {
                refill(reservoir, timeS);
            }
        }
        for (TrayRun tray : trays) {
            if (onRound && scenario.visits().flush() == Visits.Flush.AT_LIMIT) {
                renewIfOut(tray, timeS, airC);
            }
            if (tray.tray.filling() instanceof Filling.ByHand hand
                    && (hand.days().isEmpty() ? onRound : hand.days().contains(date))) {
                Composition liquid = hand.withWater() ? sourceWater : feed;
                double poured = tray.topUp(hand.toLevelM(), liquid, airC);
                if (poured > 0) {
                    log.addPoured(Event.Kind.TOP_UP, timeS, tray.tray.id(), poured);
                }
            }
        }
    }

    private static boolean isDue(ReservoirRun run) {
        Reservoir.Refill rule = run.reservoir.refill();
        return switch (rule.when()) {
            case LOW_AT_VISIT -> run.usableFrac() < rule.belowFrac();
            case EVERY_VISIT -> run.volumeM3 < run.reservoir.fullM3();
            case WHEN_EMPTY, NEVER -> false;
        };
    }

    private void renewIfOut(TrayRun tray, double timeS, double airC) {
        if (!(tray.volumeM3 > 0) || !tray.lives()) {
            return;
        }
        double ec = tray.ecMsPerCm(meters[tray.index]);
        double low = tray.tray.limits().ecLowMsPerCm();
        double high = tray.tray.limits().ecHighMsPerCm();
        if (ec > high && feedMsPerCm < high) {
            double share = FlushRule.shareFrac(ec, feedMsPerCm, high);
            renew(tray, Event.Kind.FLUSH, share, timeS, airC, ec);
        } else if ((ec < low && feedMsPerCm > low) || isShort(tray)) {
            renew(tray, Event.Kind.FRESH_SOLUTION, 1, timeS, airC, ec);
        }
    }

    /** Whether a nutrient the feed holds is below the concentration at which uptake slows. */
    private boolean isShort(TrayRun tray) {
        for (Component component : Shortage.WATCHED) {
            int i = component.ordinal();
            double least = Shortage.leastMolPerM3(component);
            double held = tray.salts.mol[i] / tray.volumeM3;
            if (held < least && feed.molPerM3(i) > 2 * least) {
                return true;
            }
        }
        return false;
    }

    private void renew(
            TrayRun tray, Event.Kind kind, double share, double timeS, double airC, double ec) {
        double drained = share * tray.volumeM3;
        double poured = tray.renew(share, feed, airC);
        log.add(new Event(kind, timeS, tray.tray.id(), poured, drained, ec, ""));
    }

    private Season season() {
        Stock start = Stock.of(trays, reservoirs);
        goThrough();
        Stock end = Stock.of(trays, reservoirs);
        return new Season(
                log.inOrder(),
                Stock.waterLedger(start, end, trays, reservoirs),
                Stock.componentLedgers(start, end, trays, reservoirs),
                trays.stream().map(TrayRun::freshG).toList(),
                trays.stream().map(TrayRun::fruitFreshG).toList());
    }

    private Trace trace(boolean read) {
        Stock start = Stock.of(trays, reservoirs);
        goThrough();
        Stock end = Stock.of(trays, reservoirs);
        double co2Ppm = read ? air.solutionCo2Ppm : Double.NaN;
        List<TrayTrace> trayTraces = new ArrayList<>();
        for (Tray tray : scenario.trays()) {
            trayTraces.add(recorder.trayTrace(trayTraces.size(), tray, co2Ppm));
        }
        List<ReservoirTrace> reservoirTraces = new ArrayList<>();
        for (Reservoir reservoir : scenario.reservoirs()) {
            reservoirTraces.add(recorder.reservoirTrace(reservoirTraces.size(), reservoir, co2Ppm));
        }
        return new Trace(
                scenario,
                scenario.days() * 24,
                trayTraces,
                reservoirTraces,
                log.inOrder(),
                Stock.waterLedger(start, end, trays, reservoirs),
                Stock.componentLedgers(start, end, trays, reservoirs));
    }
}
