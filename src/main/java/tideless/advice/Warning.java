package tideless.advice;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import tideless.rig.Climate;
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
        CUPS_UNDER,
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
        TOO_CROWDED,
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

    /** So warm still solution rots roots, degC; common practice, no source. */
    public static final double ROTS_C = 35;

    /** A loss from which on a crop is called a poor one, as a share; assumed. */
    public static final double POOR_FRAC = 0.25;

    /** What takes less than this share of a crop is no more than a note; assumed. */
    public static final double NOTED_FRAC = 0.02;

    /** Air out of a crop's limits for so long often brings about the rest, d; assumed. */
    static final int AIR_DAYS = 14;

    /** The gravest first: by what it kills, then by what it takes, then the earliest. */
    public static final Comparator<Warning> GRAVEST_FIRST =
            Comparator.comparing(Warning::rank)
                    .thenComparing(Comparator.comparing(Warning::lossFrac).reversed())
                    .thenComparing(Warning::gravity)
                    .thenComparing(Warning::kind)
                    .thenComparing(Warning::from);

    /** Done at the rig by what no file says, or said by nothing that a run could try. */
    private static final Set<Cure.Kind> AT_THE_RIG =
            EnumSet.of(
                    Cure.Kind.AIR_STONE, // wants a pump, which a rig without one does not have
                    Cure.Kind.LOWER_LEVEL, // from the next planting on
                    Cure.Kind.SHADE_THE_TRAY,
                    Cure.Kind.SOFTER_WATER,
                    Cure.Kind.MORE_AMMONIUM,
                    Cure.Kind.LESS_AMMONIUM,
                    Cure.Kind.ACID_BY_METER,
                    Cure.Kind.BASE_BY_METER,
                    Cure.Kind.FRESH_SOLUTION_SOONER,
                    Cure.Kind.MORE_SOLUTION_PER_PLANT);

    /** Likewise where the air is that of the weather. */
    private static final Set<Cure.Kind> OF_THE_WEATHER =
            EnumSet.of(
                    Cure.Kind.SUNNIER_PLACE,
                    Cure.Kind.WARMER_ROOM,
                    Cure.Kind.COOLER_ROOM,
                    Cure.Kind.COOLER_PLACE,
                    Cure.Kind.DRIER_NIGHTS,
                    Cure.Kind.MORE_WIND,
                    Cure.Kind.OTHER_SEASON);

    /**
     * What to change first: the gravest that kills or makes a poor crop, or whose first cure can be
     * written; empty for none.
     *
     * @param climate only that of a room is anybody's to change
     */
    public static Optional<Warning> firstOf(List<Warning> warnings, Climate climate) {
        boolean outdoors = !(climate instanceof Climate.Room);
        return warnings.stream()
                .filter(w -> w.rank() <= 1 || w.canBeWritten(outdoors))
                .min(GRAVEST_FIRST);
    }

    private boolean canBeWritten(boolean outdoors) {
        if (cures.isEmpty()) {
            return true; // looked at first
        }
        Cure.Kind first = cures.get(0).kind();
        return !AT_THE_RIG.contains(first) && !(outdoors && OF_THE_WEATHER.contains(first));
    }

    /** The same with one more figure of its cause. */
    Warning with(Quantity quantity, double value) {
        return withCause(cause.with(quantity, value));
    }

    /** Share of the crop that it takes, 0-1; 0 where that is not known. */
    public double lossFrac() {
        return isLossKnown() ? cause.facts().get(Quantity.LOSS) : 0;
    }

    private boolean isLossKnown() {
        return cause.facts().has(Quantity.LOSS);
    }

    /**
     * What kills or leaves dry, what makes a poor crop, what may yet leave it dry, what takes
     * something, air that the crop does not bear for weeks, the rest.
     */
    private int rank() {
        if (kind.compareTo(Kind.STRANDED) <= 0) {
            return 0;
        } else if (lossFrac() >= POOR_FRAC || kind == Kind.TOO_CROWDED) {
            return 1;
        } else if ((isLossKnown() ? kind : gravity()).compareTo(Kind.OUTGROWN) <= 0) {
            return 2;
        } else if (lossFrac() >= NOTED_FRAC || isLate()) {
            return 3;
        }
        boolean ofAir = kind == Kind.TOO_COLD || kind == Kind.TOO_HOT;
        return ofAir && daysBeyond() >= AIR_DAYS ? 4 : 5;
    }

    /** Days on which it is so: not all from the first to the last, where they lie apart. */
    private double daysBeyond() {
        return cause.facts().has(Quantity.DAYS_BEYOND)
                ? cause.facts().get(Quantity.DAYS_BEYOND)
                : ChronoUnit.DAYS.between(from, until);
    }

    /**
     * Whether it is no more than a note: what takes next to nothing of the crop, and air that is
     * damp or still, of which every house has its hours. Not a feed that is itself too strong: it
     * is a slip of who mixed it, and what it takes of heads that are cut at a weight is days. And a
     * pH that is likely out of its band, but may be within it for all that is known of the crop.
     */
    boolean isMinor() {
        return switch (kind) {
            case TOO_HUMID, TOO_STILL -> true;
            case PH_OUT -> !isSure() || isLossKnown() && lossFrac() < NOTED_FRAC;
            default ->
                    isLossKnown()
                            && lossFrac() < NOTED_FRAC
                            && !isLate()
                            && !isRotting()
                            && cause.kind() != Cause.Kind.FEED_IS_STRONG;
        };
    }

    /** Whether it comes whatever is not known of the crop, and not only likely. */
    private boolean isSure() {
        Facts facts = cause.facts();
        return !facts.has(Quantity.SURE) || facts.get(Quantity.SURE) > 0;
    }

    /** Whether a head comes later for it by more than is borne. */
    private boolean isLate() {
        return cause.facts().has(Quantity.LATE);
    }

    private boolean isRotting() {
        return kind == Kind.WARM_SOLUTION && measure.value() >= ROTS_C;
    }

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
