package tideless.sim;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.solution.Composition;
import tideless.solution.Meter;

/** Runs a scenario from its first day to its last. */
public final class Simulation {
    /**
     * Up to this step every part of a run is as exact as the engine's pages show, s; in the longer
     * ones of ensembles what costs most is known less exactly (docs/decisions/0014-speed.md).
     */
    static final double EXACT_UP_TO_S = 600;

    /** A step of a run that is quiet may be so long, s; see {@link TrayRun#isQuiet}. */
    static final double QUIET_STEP_S = 6 * Time.HOUR_S;

    private final Scenario scenario;
    private final boolean isLoose; // the long steps of an ensemble, of which no series is kept
    private final Timeline timeline;
    private final AirSeries air;
    private final EventLog log = new EventLog();
    private final Meter[] meters; // one a tray, so that each starts from its own last reading
    private final List<TrayRun> trays = new ArrayList<>();
    private final List<ReservoirRun> reservoirs = new ArrayList<>();
    private final List<GravityFeed> feeds = new ArrayList<>();
    private final List<TrayRun> unfed = new ArrayList<>();
    private final ReservoirRun[] feedOf;
    private final VisitRules visits;
    private final LoggedDays logged;
    private final Recorder recorder;

    private Simulation(
            Scenario scenario,
            Surroundings surroundings,
            boolean keepsSeries,
            Departures departures) {
        this.scenario = scenario;
        isLoose = !keepsSeries && scenario.numerics().stepS() > EXACT_UP_TO_S;
        timeline = surroundings.timeline;
        air = surroundings.air;
        meters = new Meter[scenario.trays().size()];
        Arrays.setAll(meters, i -> new Meter(air.co2Ppm[0]));
        double startC = air.tempC[0];
        feedOf = new ReservoirRun[scenario.trays().size()];
        for (int i = 0; i < scenario.trays().size(); i++) {
            trays.add(
                    new TrayRun(
                            scenario.trays().get(i),
                            i,
                            scenario.plantingsBefore(i),
                            startC,
                            new RootAir(
                                    air.pressurePa,
                                    startC,
                                    keepsSeries,
                                    scenario.trays().get(i).deck().aerated()),
                            air.solutionCo2Ppm,
                            departures,
                            scenario.days()));
            trays.get(i).correction = scenario.correction();
        }
        for (int i = 0; i < scenario.reservoirs().size(); i++) {
            Reservoir reservoir = scenario.reservoirs().get(i);
            Composition feed = scenario.feedOf(reservoir).composition();
            ReservoirRun run =
                    new ReservoirRun(reservoir, i, scenario.feedingM3(reservoir), feed, startC);
            run.leakM3PerS = scenario.correction().leakM3PerS(reservoir.name());
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
                            GravityFeed.BEND_MOST,
                            true));
        }
        for (TrayRun tray : trays) {
            if (feedOf[tray.index] == null) {
                unfed.add(tray);
            }
        }
        visits = new VisitRules(scenario, meters, departures, log);
        logged =
                new LoggedDays(
                        scenario,
                        visits,
                        meters,
                        departures.meterFrac() * scenario.correction().meter(),
                        air.co2Ppm[0],
                        log);
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
        return new Simulation(scenario, Surroundings.of(scenario), true, Departures.NONE)
                .trace(true);
    }

    /**
     * Runs a scenario for its water alone: EC and pH of the trace are NaN, all else is as in {@link
     * #run}. Reading meters is a large part of a run's work.
     */
    public static Trace runUnread(Scenario scenario) {
        return runUnread(scenario, Departures.NONE);
    }

    /** The same of a run that departs from its scenario. */
    public static Trace runUnread(Scenario scenario, Departures departures) {
        return new Simulation(scenario, Surroundings.of(scenario), true, departures).trace(false);
    }

    /**
     * Runs a member of an ensemble: the whole model, no series kept.
     *
     * @param surroundings of this scenario or of one they {@link Surroundings#suit}
     * @throws IllegalArgumentException when they do not suit
     */
    public static Season season(Scenario scenario, Surroundings surroundings) {
        return season(scenario, surroundings, Departures.NONE);
    }

    /**
     * The same for a member that departs from its scenario.
     *
     * @throws IllegalArgumentException when the surroundings do not suit
     */
    public static Season season(
            Scenario scenario, Surroundings surroundings, Departures departures) {
        if (!surroundings.suit(scenario)) {
            throw new IllegalArgumentException(
                    "these surroundings are not those of '" + scenario.title() + "'");
        }
        return new Simulation(scenario, surroundings, false, departures).season();
    }

    private void goThrough() {
        GravityFeed.Refiller refiller = visits::refill;
        int end;
        for (int step = 0; step < timeline.steps; step = end) {
            double timeS = timeline.instantS[step];
            for (ReservoirRun reservoir : reservoirs) {
                reservoir.openAccounts();
            }
            logged.enter(timeS, air.tempC[step], reservoirs, trays);
            if (timeline.visit[step]) {
                visits.visit(timeS, air.tempC[step], reservoirs, trays);
            }
            end = endOf(step);
            double endS = timeline.instantS[end];
            double spanS = endS - timeS;
            for (TrayRun tray : trays) {
                tray.begin(step, timeS, spanS, air);
            }
            for (ReservoirRun reservoir : reservoirs) {
                reservoir.begin(step, spanS, air);
            }
            for (GravityFeed gravity : feeds) {
                gravity.step(timeS, spanS, refiller, log);
            }
            for (TrayRun tray : unfed) {
                double lost = Math.min(tray.water.m3, tray.evapotranspirationM3PerS * spanS);
                tray.water.m3 -= lost;
                tray.took(0, lost, 0, null, 0, 0);
            }
            boolean saltsMayWait = saltsMayWait(end);
            for (TrayRun tray : trays) {
                ReservoirRun source = feedOf[tray.index];
                double inflowC = source == null ? tray.tempC : source.tempC;
                tray.end(step, timeS, spanS, air, inflowC, saltsMayWait, log);
            }
            for (ReservoirRun reservoir : reservoirs) {
                reservoir.end(step, spanS, air);
            }
            recorder.addStep(step, air, trays, reservoirs);
            if (timeline.endsDay[end - 1]) {
                settle(endS);
            } else if (timeline.endsHour[end - 1]) {
                settleWithinDay(endS);
            }
            if (timeline.endsHour[end - 1]) {
                recorder.closeHour(step, air, trays, reservoirs);
            }
            if (timeline.endsDay[end - 1]) {
                int day = (int) FastMath.round(endS / Time.DAY_S);
                boolean isLeft = isLeft(day);
                for (TrayRun tray : trays) {
                    tray.growOvernight(endS, day, !isLeft, log);
                }
            }
        }
    }

    /** Whether nobody is there on a day: in an absence, and from it on to the next visit. */
    private boolean isLeft(int day) {
        LocalDate date = scenario.start().plusDays(day);
        if (day * Time.DAY_S < scenario.log().lastS()) {
            return false; // what was done is told, or done as dated
        }
        while (!scenario.visits().isAway(date)) {
            if (scenario.visits().on(date) || !date.isAfter(scenario.start())) {
                return false;
            }
            date = date.minusDays(1);
        }
        return true;
    }

    /** The instant up to which a step goes: past those of the grid as long as all is quiet. */
    private int endOf(int step) {
        int end = step + 1;
        double farthestS = timeline.instantS[step] + QUIET_STEP_S;
        while (timeline.mayPass[end]
                && air.sameAsBefore[end]
                && timeline.instantS[end + 1] <= farthestS
                && (end > step + 1 || air.sameAsBefore[step] && isQuiet(timeline.instantS[step]))) {
            end++;
        }
        return end;
    }

    // Nobody looks, nothing falls, and no day ends.
    private boolean saltsMayWait(int end) {
        return isLoose
                && !timeline.endsDay[end - 1]
                && !timeline.visit[end]
                && scenario.log().entries().isEmpty();
    }

    private boolean isQuiet(double timeS) {
        for (GravityFeed feed : feeds) {
            if (!feed.isQuiet(timeS, QUIET_STEP_S)) {
                return false;
            }
        }
        return unfed.isEmpty();
    }

    private void endRun() {
        for (TrayRun tray : trays) {
            tray.endRun(timeline.instantS[timeline.steps], log);
        }
    }

    /**
     * Every vessel, once a day; in an ensemble's long steps only trays where something may fall.
     */
    private void settle(double atS) {
        double co2Ppm = air.co2Ppm[0];
        for (TrayRun tray : trays) {
            if (!isLoose || tray.mayPrecipitateAfterDays()) {
                tray.settle(atS, log);
            }
        }
        for (ReservoirRun r : reservoirs) {
            r.precipitate.settle(r.mol, r.water.m3, r.tempC, co2Ppm, atS, r.reservoir.id(), log);
        }
    }

    /** By the hour, a tray whose water its roots change fast. */
    private void settleWithinDay(double atS) {
        for (TrayRun tray : trays) {
            if (tray.mayPrecipitate()) {
                tray.settle(atS, log);
            }
        }
    }

    private Season season() {
        Stock start = Stock.of(trays, reservoirs);
        goThrough();
        endRun();
        Stock end = Stock.of(trays, reservoirs);
        return new Season(
                log.inOrder(),
                Stock.waterLedger(start, end, trays, reservoirs, logged),
                Stock.componentLedgers(start, end, trays, reservoirs, logged),
                trays.stream().map(TrayRun::season).toList(),
                logged.read());
    }

    private Trace trace(boolean read) {
        Stock start = Stock.of(trays, reservoirs);
        goThrough();
        endRun();
        Stock end = Stock.of(trays, reservoirs);
        double co2Ppm = read ? air.co2Ppm[0] : Double.NaN;
        List<TrayTrace> trayTraces = new ArrayList<>();
        for (TrayRun run : trays) {
            Tray tray = scenario.trays().get(run.index);
            trayTraces.add(recorder.trayTrace(run, tray, read));
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
                Stock.waterLedger(start, end, trays, reservoirs, logged),
                Stock.componentLedgers(start, end, trays, reservoirs, logged));
    }
}
