package tideless.sim;

import java.util.List;

/**
 * What one run of an ensemble leaves behind: no series, but every event and every ledger, the same
 * as those of a {@link Trace} of the scenario.
 *
 * @param events in order of time
 * @param water the water's ledger
 * @param components a ledger for each {@link tideless.solution.Component}
 * @param freshG fresh mass of shoot and fruit of one plant of each tray at the end, the last day's
 *     growth included, g; NaN where a thirst was measured
 * @param fruitFreshG of which fruit, g; NaN as above
 */
public record Season(
        List<Event> events,
        Ledger water,
        List<Ledger> components,
        List<Double> freshG,
        List<Double> fruitFreshG) {

    public Season {
        events = List.copyOf(events);
        components = List.copyOf(components);
        freshG = List.copyOf(freshG);
        fruitFreshG = List.copyOf(fruitFreshG);
    }
}
