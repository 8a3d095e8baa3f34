package tideless.advice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.physics.Time;
import tideless.rig.Liquid;
import tideless.rig.Log;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.PlantingTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.solution.ElectricalConductivity;

/** What concerns the whole rig: the first filling, and reading the meters. */
final class RigAdvice {
    /** Meters are read this often, d; common practice, no source. */
    private static final double READ_DAYS = 7;

    private RigAdvice() {}

    /** Told of the first vessel, reservoirs first. */
    static void add(Trace trace, VisitTimes rounds, Findings out) {
        Scenario scenario = trace.scenario();
        VesselId first = null;
        Map<Liquid, VesselId> fed = new LinkedHashMap<>();
        Map<Liquid, Double> m3 = new HashMap<>();
        for (Reservoir reservoir : scenario.reservoirs()) {
            first = first == null ? reservoir.id() : first;
            Liquid feed = scenario.feedOf(reservoir);
            fed.putIfAbsent(feed, reservoir.id());
            m3.merge(feed, reservoir.shape().volumeM3(reservoir.startLevelM()), Double::sum);
        }
        for (Tray tray : scenario.trays()) {
            first = first == null ? tray.id() : first;
            Liquid feed = scenario.feedOf(tray);
            fed.putIfAbsent(feed, tray.id());
            m3.merge(feed, tray.shape().volumeM3(tray.startLevelM()), Double::sum);
        }
        fed.forEach((feed, vessel) -> out.tasks.add(mix(trace, feed, vessel, m3.get(feed))));
        addReadings(trace, rounds, first, out);
    }

    /** What is mixed on day one: of one feed for all, or of each where vessels have their own. */
    private static Task mix(Trace trace, Liquid feed, VesselId first, double m3) {
        Scenario scenario = trace.scenario();
        boolean isOnly = scenario.ownFeeds().isEmpty();
        double ec = ElectricalConductivity.at25MsPerCm(feed.composition());
        List<String> vessels = new ArrayList<>();
        for (Reservoir reservoir : scenario.reservoirs()) {
            if (scenario.feedOf(reservoir).equals(feed)) {
                vessels.add(reservoir.name());
            }
        }
        for (Tray tray : scenario.trays()) {
            if (scenario.feedOf(tray).equals(feed)) {
                vessels.add(tray.name());
            }
        }
        return new Task(
                Task.Kind.MIX,
                first,
                trace.clockAt(scenario.visits().timeOfDayS()),
                m3 * 1000,
                0,
                isOnly ? Measure.none() : Measure.of(ec, Unit.MS_PER_CM),
                isOnly
                        ? Cause.of(Cause.Kind.FIRST_FILLING)
                        : new Cause(
                                Cause.Kind.FIRST_FILLING,
                                Facts.NONE.named(String.join(", ", vessels))),
                List.of(),
                List.of(),
                true);
    }

    /** While something grows, in the trays in which it does. */
    private static void addReadings(Trace trace, VisitTimes rounds, VesselId first, Findings out) {
        List<String> names = new ArrayList<>();
        Log log = trace.scenario().log();
        int lastHour = 0;
        for (TrayTrace of : trace.trays()) {
            for (PlantingTrace planting : trace.plantings(of)) {
                boolean grows =
                        !(planting.tray().planting() instanceof Planting.OfCrop crop)
                                || crop.plants() > 0;
                if (grows && (planting.lastHour() + 1) * Time.HOUR_S > log.lastS()) {
                    lastHour = Math.max(lastHour, planting.lastHour());
                    if (!names.contains(of.tray().name())) {
                        names.add(of.tray().name());
                    }
                }
            }
        }
        double due = rounds.nextFrom(READ_DAYS * 24, log);
        if (!rounds.hours().isEmpty() && due < lastHour) {
            out.tasks.add(
                    new Task(
                            Task.Kind.READ_METERS,
                            first,
                            trace.clockAt(due * Time.HOUR_S),
                            0,
                            0,
                            Measure.of(READ_DAYS, Unit.DAYS),
                            new Cause(
                                    Cause.Kind.FORECAST_IS_NO_READING,
                                    Facts.NONE
                                            .on(trace.clockAt(lastHour * Time.HOUR_S))
                                            .named(String.join(", ", names))),
                            List.of(),
                            List.of(),
                            true));
        }
    }
}
