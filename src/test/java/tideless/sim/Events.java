package tideless.sim;

/** Looks into the events of a run. */
public final class Events {
    private Events() {}

    /**
     * When the first of a kind came, s since the start.
     *
     * @throws java.util.NoSuchElementException when none came
     */
    public static double firstS(Trace trace, Event.Kind kind) {
        return trace.events().stream()
                .filter(e -> e.kind() == kind)
                .mapToDouble(Event::atS)
                .findFirst()
                .orElseThrow();
    }
}
