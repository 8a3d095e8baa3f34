package tideless.sim;

import java.util.ArrayList;
import java.util.List;
import tideless.physics.Time;
import tideless.rig.Tray;

/**
 * One crop of a tray over a run, from the visit at which it was set out to the one at which it was
 * cut; a measured thirst counts as one.
 *
 * @param run of the tray, over the whole run
 * @param tray as it was planted then: with this crop, its limits and its level
 * @param number which of the tray's crops, counted from 0
 * @param fromS when it was set out, s
 * @param firstHour sample of its first hour
 * @param lastHour sample at which it was harvested or lost, at the latest the last before the next
 *     crop; the run's last one when it was not
 * @param endHour first hour of the next crop, or the run's end
 * @param events of the tray from its planting to the next, in order of time
 */
public record PlantingTrace(
        TrayTrace run,
        Tray tray,
        int number,
        double fromS,
        int firstHour,
        int lastHour,
        int endHour,
        List<Event> events) {
    public PlantingTrace {
        events = List.copyOf(events);
    }

    /** Those of a tray, in their order; only such as were set out. */
    static List<PlantingTrace> of(Trace trace, TrayTrace run) {
        List<List<Event>> parts = new ArrayList<>(List.of(new ArrayList<>()));
        for (Event event : trace.events()) {
            if (event.vessel().equals(run.tray().id())) {
                if (event.kind() == Event.Kind.PLANTED) {
                    parts.add(new ArrayList<>());
                }
                parts.get(parts.size() - 1).add(event);
            }
        }
        List<PlantingTrace> plantings = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            double fromS = fromS(parts, i);
            int end = i + 1 < parts.size() ? hourOf(fromS(parts, i + 1)) : trace.hours();
            plantings.add(
                    new PlantingTrace(
                            run,
                            run.tray().planted(i),
                            i,
                            fromS,
                            hourOf(fromS),
                            Math.min(end - 1, lastHour(trace, run, i, parts.get(i))),
                            end,
                            parts.get(i)));
        }
        return plantings;
    }

    private static double fromS(List<List<Event>> parts, int number) {
        return number == 0 ? 0 : parts.get(number).get(0).atS();
    }

    private static int hourOf(double atS) {
        return (int) (atS / Time.HOUR_S);
    }

    private static int lastHour(Trace trace, TrayTrace run, int number, List<Event> events) {
        for (Event event : events) {
            if (event.kind() == Event.Kind.HARVEST && number < run.tray().next().size()) {
                // The tray is empty at once: what closes its hour knows nothing of the crop.
                return Math.max(0, hourOf(event.atS()) - 1);
            }
            if (event.kind() == Event.Kind.HARVEST || event.kind() == Event.Kind.DIED) {
                return trace.sampleAt(event.atS());
            }
        }
        return trace.hours() - 1;
    }

    /** What the crop is called where the tray has several; else empty. */
    public String crop() {
        return run.tray().cropOf(number);
    }
}
