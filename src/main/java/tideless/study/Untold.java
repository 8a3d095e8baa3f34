package tideless.study;

import java.util.List;
import java.util.Set;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.sim.Event;

/** What was done before a log began, and nobody wrote down when. */
final class Untold {
    /** What is done to a vessel after which its level is another. */
    static final Set<Event.Kind> FILLS =
            Set.of(
                    Event.Kind.REFILL,
                    Event.Kind.TOP_UP,
                    Event.Kind.FRESH_SOLUTION,
                    Event.Kind.FLUSH);

    private Untold() {}

    /**
     * Whether a level is the first that the log tells of a vessel that somebody will have filled
     * before.
     *
     * @param events of the run as stated, with the deeds of the log
     */
    static boolean isBefore(Scenario scenario, List<Event> events, LogEntry.Reading reading) {
        boolean isOfWater =
                reading.what() == LogEntry.Quantity.LEVEL
                        || reading.what() == LogEntry.Quantity.POURED;
        return isOfWater
                && scenario.log().entries().stream()
                        .takeWhile(entry -> !entry.equals(reading))
                        .noneMatch(entry -> Oddities.tellsOf(reading.where(), entry))
                && events.stream()
                        .anyMatch(
                                event ->
                                        event.vessel().equals(reading.where())
                                                && event.atS() < reading.atS()
                                                && FILLS.contains(event.kind()));
    }
}
