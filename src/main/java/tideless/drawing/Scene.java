package tideless.drawing;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import tideless.advice.Verdict;
import tideless.physics.Time;
import tideless.sim.Event;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.study.Forecast;
import tideless.words.RigWords;

/**
 * An hour of a run that is worth a look at the rig.
 *
 * @param moment which
 * @param hour the sample it shows
 */
record Scene(RigWords.Moment moment, int hour) {

    /** Day one, the worst hour, and before the first harvest or at the end, in order of time. */
    public static List<Scene> of(Forecast forecast) {
        Trace trace = forecast.trace();
        Scene worst = new Scene(RigWords.Moment.WORST, worst(trace, forecast.advice().verdict()));
        Scene last = last(trace);
        Scene first = new Scene(RigWords.Moment.DAY_ONE, 0);
        return worst.hour <= last.hour ? List.of(first, worst, last) : List.of(first, last, worst);
    }

    /** The first harm that is past mending, or else when a tray lived closest to dryness. */
    private static int worst(Trace trace, Verdict verdict) {
        Optional<LocalDateTime> harm = verdict.firstHarm().map(Verdict.Harm::at);
        return harm.or(() -> verdict.tightest().map(Verdict.WaterLeft::at))
                .map(at -> Duration.between(trace.scenario().start().atStartOfDay(), at))
                .map(since -> trace.sampleAt((double) since.toSeconds()))
                .orElse(0);
    }

    private static Scene last(Trace trace) {
        for (Event event : trace.events()) {
            if (event.kind() == Event.Kind.HARVEST) {
                int before = trace.sampleAt(event.atS()) - 1;
                return new Scene(RigWords.Moment.HARVEST, Math.max(0, before));
            }
        }
        return new Scene(RigWords.Moment.END, trace.hours() - 1);
    }

    /** Whether a tray's plants still stand in it, alive or dead. */
    static boolean stands(Trace trace, TrayTrace tray, int hour) {
        return !happened(trace, tray, hour, Event.Kind.HARVEST);
    }

    /** Whether they are lost. */
    static boolean isLost(Trace trace, TrayTrace tray, int hour) {
        return happened(trace, tray, hour, Event.Kind.DIED);
    }

    /** Since what stands in it, or stood last, was set out. */
    private static boolean happened(Trace trace, TrayTrace tray, int hour, Event.Kind kind) {
        boolean did = false;
        for (Event event : trace.events()) {
            if (event.vessel().equals(tray.tray().id())
                    && event.atS() <= (hour + 1) * Time.HOUR_S) {
                did = event.kind() == kind || did && event.kind() != Event.Kind.PLANTED;
            }
        }
        return did;
    }
}
