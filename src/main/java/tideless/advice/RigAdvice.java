package tideless.advice;

import java.util.ArrayList;
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
        Map<Liquid, FirstFilling> fillings = new LinkedHashMap<>();
        for (Reservoir of : scenario.reservoirs()) {
            fillings.computeIfAbsent(scenario.feedOf(of), feed -> new FirstFilling())
                    .add(of.id(), of.shape().volumeM3(of.startLevelM()));
        }
        for (Tray of : scenario.trays()) {
            fillings.computeIfAbsent(scenario.feedOf(of), feed -> new FirstFilling())
                    .add(of.id(), of.shape().volumeM3(of.startLevelM()));
        }
        fillings.forEach((feed, filling) -> out.tasks.add(mix(trace, feed, filling)));
        addReadings(trace, rounds, fillings.values().iterator().next().first(), out);
    }

    /** What is filled with one feed on the first day. */
    private static final class FirstFilling {
        private final Map<VesselId, Double> litres = new LinkedHashMap<>();

        private void add(VesselId vessel, double m3) {
            litres.put(vessel, m3 * 1000);
        }

        private VesselId first() {
            return litres.keySet().iterator().next();
        }

        private double allLitres() {
            return litres.values().stream().mapToDouble(l -> l).reduce(0, Double::sum);
        }
    }

    /** What is mixed on day one: of one feed for all, or of each where vessels have their own. */
    private static Task mix(Trace trace, Liquid feed, FirstFilling filling) {
        boolean isOnly = trace.scenario().ownFeeds().isEmpty();
        double ec = ElectricalConductivity.at25MsPerCm(feed.composition());
        return new Task(
                Task.Kind.MIX,
                filling.first(),
                trace.clockAt(trace.scenario().visits().timeOfDayS()),
                filling.allLitres(),
                0,
                isOnly ? Measure.none() : Measure.of(ec, Unit.MS_PER_CM),
                new Cause(Cause.Kind.FIRST_FILLING, Facts.NONE.into(filling.litres)),
                List.of(),
                List.of(),
                true);
    }

    /** While something grows, in the trays in which it does. */
    private static void addReadings(Trace trace, VisitTimes rounds, VesselId first, Findings out) {
        List<String> names = new ArrayList<>();
        Log log = trace.scenario().log();
        double due = rounds.nextFrom(READ_DAYS * 24, log);
        int lastHour = 0;
        for (TrayTrace of : trace.trays()) {
            for (PlantingTrace planting : trace.plantings(of)) {
                boolean grows =
                        !(planting.tray().planting() instanceof Planting.OfCrop crop)
                                || crop.plants() > 0;
                // Nothing is read of what is gone before the first reading.
                if (grows && planting.lastHour() >= Math.max(due, log.lastS() / Time.HOUR_S)) {
                    lastHour = Math.max(lastHour, planting.lastHour());
                    if (!names.contains(of.tray().name())) {
                        names.add(of.tray().name());
                    }
                }
            }
        }
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
