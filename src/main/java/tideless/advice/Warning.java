package tideless.advice;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import tideless.rig.VesselId;

/**
 * Something that goes wrong if nothing changes.
 *
 * @param kind what
 * @param vessel where
 * @param from when it begins
 * @param until when it ends for good; the beginning where it is a matter of a moment
 * @param measure the figure that decides
 * @param cause why
 * @param cures what would put it right, the first one first
 * @param crop of which it is told where several follow one another in the tray, else empty
 */
@RecordBuilder
public record Warning(
        Kind kind,
        VesselId vessel,
        LocalDateTime from,
        LocalDateTime until,
        Measure measure,
        Cause cause,
        List<Cure> cures,
        String crop)
        implements WarningBuilder.With {

    /** Kinds of warning, the gravest first. */
    public enum Kind {
        DIED,
        DRIED_OUT,
        WILTED,
        STRANDED,
        DROWNED,
        SALT_WILTED,
        SHORT_OF_AIR,
        OVERFLOW,
        RAN_DRY,
        STARVED_VALVE,
        OUTGROWN,
        TOO_SALTY,
        TOO_LEAN,
        SHORT_OF_ONE,
        TOO_MUCH_SODIUM,
        TOO_MUCH_CHLORIDE,
        PH_OUT,
        TOO_COLD,
        TOO_HOT,
        WARM_SOLUTION,
        LOW_LIGHT,
        TOO_HUMID,
        TOO_STILL,
        DAY_TOO_LONG,
        SET_TOO_COLD,
        SET_TOO_HOT,
        PRECIPITATE
    }

    public Warning {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(vessel, "vessel");
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(until, "until");
        Objects.requireNonNull(measure, "measure");
        Objects.requireNonNull(cause, "cause");
        Objects.requireNonNull(crop, "crop");
        cures = List.copyOf(cures);
        if (until.isBefore(from)) {
            throw new IllegalArgumentException("ends before it begins: " + from + " " + until);
        }
    }

    /** So far above its limit warm solution is as grave as roots short of air, K; assumed. */
    private static final double VERY_WARM_K = 5;

    /** The gravest first, then the earliest. */
    public static final Comparator<Warning> GRAVEST_FIRST =
            Comparator.comparing(Warning::gravity)
                    .thenComparing(Warning::kind)
                    .thenComparing(Warning::from);

    /** The kind it ranks with. */
    Kind gravity() {
        return kind == Kind.WARM_SOLUTION && measure.value() > measure.limit() + VERY_WARM_K
                ? Kind.SHORT_OF_AIR
                : kind;
    }

    /** Of a vessel in which no crop follows another. */
    public Warning(
            Kind kind,
            VesselId vessel,
            LocalDateTime from,
            LocalDateTime until,
            Measure measure,
            Cause cause,
            List<Cure> cures) {
        this(kind, vessel, from, until, measure, cause, cures, "");
    }

    /** The same without a cure. */
    public Warning without(Cure.Kind cure) {
        return withCures(cures.stream().filter(c -> c.kind() != cure).toList());
    }
}
