package tideless.advice;

import java.util.ArrayList;
import java.util.List;
import tideless.physics.Time;
import tideless.rig.Log;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.PlantingTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** What concerns the whole rig: the first filling, and reading the meters. */
final class RigAdvice {
    /** Meters are read this often, d; common practice, no source. */
    private static final double READ_DAYS = 7;

    private RigAdvice() {}

    /** Told of the first vessel, reservoirs first. */
    static void add(Trace trace, VisitTimes rounds, Findings out) {
        double m3 = 0;
        for (Reservoir reservoir : trace.scenario().reservoirs()) {
            m3 += reservoir.shape().volumeM3(reservoir.startLevelM());
        }
        for (Tray tray : trace.scenario().trays()) {
            m3 += tray.shape().volumeM3(tray.startLevelM());
        }
        VesselId first =
                trace.scenario().reservoirs().isEmpty()
                        ? trace.scenario().trays().get(0).id()
                        : trace.scenario().reservoirs().get(0).id();
        out.tasks.add(
                new Task(
                        Task.Kind.MIX,
                        first,
                        trace.clockAt(trace.scenario().visits().timeOfDayS()),
                        m3 * 1000,
                        0,
                        Measure.none(),
                        Cause.of(Cause.Kind.FIRST_FILLING),
                        List.of(),
                        List.of(),
                        true));
        addReadings(trace, rounds, first, out);
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
