package tideless.advice;

import java.time.LocalDateTime;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import tideless.sim.Event;

/**
 * The figures behind a cause or a cure.
 *
 * @param figures each in the unit of its quantity; never NaN
 * @param on a date it names, or null
 * @param of what else it names (an ion, a mineral), or empty
 */
public record Facts(Map<Quantity, Double> figures, LocalDateTime on, String of) {
    /** Nothing to add. */
    public static final Facts NONE = new Facts(Map.of(), null, "");

    public Facts {
        Objects.requireNonNull(of, "of");
        EnumMap<Quantity, Double> copy = new EnumMap<>(Quantity.class);
        copy.putAll(figures);
        if (copy.containsValue(Double.NaN)) {
            throw new IllegalArgumentException("a figure is missing: " + figures);
        }
        figures = Collections.unmodifiableMap(copy);
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
        return new Facts(more, on, of);
    }

    public Facts on(LocalDateTime date) {
        return new Facts(figures, date, of);
    }

    public Facts named(String name) {
        return new Facts(figures, on, name);
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
