package tideless.sim;

import java.util.List;
import tideless.rig.Log;

/**
 * What one run of an ensemble leaves behind: no series, but every event and every ledger, the same
 * as those of a {@link Trace} of the scenario.
 *
 * @param events in order of time
 * @param water the water's ledger
 * @param components a ledger for each {@link tideless.solution.Component}
 * @param trays what became of each tray, in the scenario's order
 * @param read what each of the {@link Log#readings} of the scenario's log would have been, in its
 *     unit; NaN where it lies outside the run
 */
public record Season(
        List<Event> events,
        Ledger water,
        List<Ledger> components,
        List<TraySeason> trays,
        List<Double> read) {

    public Season {
        events = List.copyOf(events);
        components = List.copyOf(components);
        trays = List.copyOf(trays);
        read = List.copyOf(read);
    }
}
