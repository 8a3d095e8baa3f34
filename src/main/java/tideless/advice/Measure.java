package tideless.advice;

import java.util.Objects;

/**
 * A figure that decides, held against its limit.
 *
 * @param value what is or was reached
 * @param limit what it is held against, in the same unit; NaN for none
 * @param side where a value is well
 * @param unit of both
 */
public record Measure(double value, double limit, Side side, Unit unit) {
    /** On which side of its limit a value is well. */
    public enum Side {
        AT_MOST,
        AT_LEAST,
        NONE
    }

    public Measure {
        Objects.requireNonNull(side, "side");
        Objects.requireNonNull(unit, "unit");
        if (Double.isNaN(limit) != (side == Side.NONE)) {
            throw new IllegalArgumentException("a limit has a side, none has none: " + limit);
        }
    }

    public static Measure atMost(double value, double limit, Unit unit) {
        return new Measure(value, limit, Side.AT_MOST, unit);
    }

    public static Measure atLeast(double value, double limit, Unit unit) {
        return new Measure(value, limit, Side.AT_LEAST, unit);
    }

    public static Measure of(double value, Unit unit) {
        return new Measure(value, Double.NaN, Side.NONE, unit);
    }

    /** Where no figure decides. */
    public static Measure none() {
        return of(Double.NaN, Unit.NONE);
    }
}
