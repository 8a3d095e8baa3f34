package tideless.study;

import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;
import tideless.rig.VesselId;
import tideless.sim.Event;

/**
 * When something is to be expected, and how much of it.
 *
 * @param what it is
 * @param atS seconds since the start; infinite quantiles where so many members never see it
 * @param litres poured at it by the members that see it, L; 0 where nothing is poured
 */
public record Expected(What what, Band atS, Band litres) {
    /** Kinds of event that a forecast dates. */
    public static final Set<Event.Kind> DATED =
            Set.copyOf(
                    EnumSet.of(
                            Event.Kind.REFILL,
                            Event.Kind.TOP_UP,
                            Event.Kind.FRESH_SOLUTION,
                            Event.Kind.FLUSH,
                            Event.Kind.FIRST_RIPE,
                            Event.Kind.LEAVES_PICKED,
                            Event.Kind.HARVEST,
                            Event.Kind.PLANTED));

    /**
     * The so-manieth event of a kind in a vessel.
     *
     * @param ordinal counted from 1
     */
    public record What(Event.Kind kind, VesselId vessel, int ordinal) {
        public What {
            Objects.requireNonNull(kind, "kind");
            Objects.requireNonNull(vessel, "vessel");
        }
    }
}
