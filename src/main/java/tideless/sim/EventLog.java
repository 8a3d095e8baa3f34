package tideless.sim;

import java.util.ArrayList;
import java.util.List;
import tideless.rig.VesselId;

/** The events of one run, in order of time. */
final class EventLog {
    private final List<Event> events = new ArrayList<>();

    void add(Event.Kind kind, double atS, VesselId vessel) {
        add(new Event(kind, atS, vessel, 0, 0, 0, Double.NaN, 0, ""));
    }

    void add(Event.Kind kind, double atS, VesselId vessel, String detail) {
        addTaken(kind, atS, vessel, 0, detail);
    }

    void addPoured(Event.Kind kind, double atS, VesselId vessel, double volumeM3, double waterM3) {
        add(new Event(kind, atS, vessel, volumeM3, waterM3, 0, Double.NaN, 0, ""));
    }

    void addTaken(Event.Kind kind, double atS, VesselId vessel, double freshG, String detail) {
        add(new Event(kind, atS, vessel, 0, 0, 0, Double.NaN, freshG, detail));
    }

    void add(Event event) {
        events.add(event);
    }

    List<Event> inOrder() {
        List<Event> sorted = new ArrayList<>(events);
        sorted.sort((a, b) -> Double.compare(a.atS(), b.atS())); // stable: ties keep their order
        return sorted;
    }
}
