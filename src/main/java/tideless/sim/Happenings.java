package tideless.sim;

import java.util.ArrayList;
import java.util.List;

/** The events of one run, in order of time. */
final class Happenings {
    private final List<Event> events = new ArrayList<>();

    void add(Event.Kind kind, double atS, String where) {
        add(kind, atS, where, 0, 0, "");
    }

    void add(
            Event.Kind kind,
            double atS,
            String where,
            double volumeM3,
            double drainedM3,
            String detail) {
        events.add(new Event(kind, atS, where, volumeM3, drainedM3, detail));
    }

    List<Event> inOrder() {
        List<Event> sorted = new ArrayList<>(events);
        sorted.sort((a, b) -> Double.compare(a.atS(), b.atS())); // stable: ties keep their order
        return sorted;
    }
}
