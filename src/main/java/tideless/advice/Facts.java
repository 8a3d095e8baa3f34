package tideless.advice;

import java.time.LocalDateTime;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import tideless.rig.VesselId;
import tideless.sim.Event;

/**
 * The figures behind a cause or a cure.
 *
 * @param figures each in the unit of its quantity; never NaN
 * @param on a date it names, or null
 * @param of what else it names (an ion, a mineral), or empty
 * @param litresInto how much goes into each of several vessels, L, in their order; may be empty
 */
public record Facts(
        Map<Quantity, Double> figures,
        LocalDateTime on,
        String of,
        Map<VesselId, Double> litresInto) {
    /** Nothing to add. */
    public static final Facts NONE = new Facts(Map.of(), null, "", Map.of());

    public Facts {
        Objects.requireNonNull(of, "of");
        EnumMap<Quantity, Double> copy = new EnumMap<>(Quantity.class);
        copy.putAll(figures);
        if (copy.containsValue(Double.NaN)) {
            throw new IllegalArgumentException("a figure is missing: " + figures);
        }
        figures = Collections.unmodifiableMap(copy);
        litresInto = Collections.unmodifiableMap(new LinkedHashMap<>(litresInto));
    }

    public static Facts of(Quantity quantity, double value) {
        return NONE.and(quantity, value);
    }

    /** Litres of plain water in what was poured, where there was any. */
    static Facts waterIn(Event poured) {
        return poured.waterM3() > 0 ? of(Quantity.WATER, poured.waterM3() * 1000) : NONE;
    }

    public Facts and(Quantity quantity, double value) {
        EnumMap<Quantity, Double> more = new EnumMap<>(Quantity.class);
        more.putAll(figures);
        more.put(quantity, value);
        return new Facts(more, on, of, litresInto);
    }

    /** With the figures of others besides. */
    public Facts and(Facts others) {
        EnumMap<Quantity, Double> more = new EnumMap<>(Quantity.class);
        more.putAll(figures);
        more.putAll(others.figures);
        return new Facts(more, on, of, litresInto);
    }

    public Facts on(LocalDateTime date) {
        return new Facts(figures, date, of, litresInto);
    }

    public Facts named(String name) {
        return new Facts(figures, on, name, litresInto);
    }

    /** The same with what goes into each of several vessels, L. */
    public Facts into(Map<VesselId, Double> litres) {
        return new Facts(figures, on, of, litres);
    }

    public boolean has(Quantity quantity) {
        return figures.containsKey(quantity);
    }

    /**
     * A figure that is known to be there.
     *
     * @throws IllegalStateException when there is no such figure
     */
    public double get(Quantity quantity) {
        Double value = figures.get(quantity);
        if (value == null) {
            throw new IllegalStateException("no " + quantity + " among " + figures);
        }
        return value;
    }
}
