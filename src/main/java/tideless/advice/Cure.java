package tideless.advice;

import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Tray;

/**
 * What would put something right, or make it come later or not at all.
 *
 * @param kind what to do or change
 * @param facts its figures
 * @param then what is to be done with it, the one that brings more first; mostly nothing
 */
public record Cure(Kind kind, Facts facts, List<Cure> then) {
    /** Kinds of cure, by theme. */
    public enum Kind {
        // Reservoirs and visits.
        FILL_AT_THE_VISIT_BEFORE,
        START_FULL,
        LARGER_RESERVOIR,
        VISIT_MORE_OFTEN,
        PLAN_REFILLS,
        // Levels and roots.
        WAIT_IN_NURSERY,
        HIGHER_LEVEL_AT_FIRST,
        WICK,
        REFILL_IN_TIME,
        TOPPED_UP_MEANWHILE,
        HOLD_MORE,
        FILL_HIGHER,
        HANG_CUP_LOWER,
        HANG_CUP_HIGHER,
        LEVEL_AT_CUPS,
        DEEPER_VESSEL,
        WIDER_VESSEL,
        FEWER_PLANTS,
        TOP_UP_BY_HAND,
        TOP_UP_LITTLE_AND_OFTEN,
        RAISE_BY_STEPS,
        RAISE_LEVEL,
        // Valves.
        MEND_VALVE,
        ISOLATING_TAP,
        FREE_VALVE,
        CLEAN_SEAT,
        WIDER_FEED_LINE,
        // Solution.
        KEEP_OTHERWISE,
        TOP_UP_WITH_WATER,
        WATER_IN_THE_NEXT_REFILL,
        WATER_SHARE,
        CHANGE_AT_LIMIT,
        LEANER_FEED,
        STRONGER_FEED,
        FEED_IN_PLACE_OF_WATER,
        OWN_RESERVOIR,
        DO_NOT_SHARE_A_FEED,
        OWN_FEED,
        LID_ON_GAPS,
        RAIN_WATER,
        FRESH_SOLUTION_SOONER,
        MORE_SOLUTION_PER_PLANT,
        MORE_AMMONIUM,
        LESS_AMMONIUM,
        ACID_BY_METER,
        BASE_BY_METER,
        SOFTER_WATER,
        FEED_WITH_MORE,
        OTHER_RECIPE,
        FEED_WITHOUT,
        // Air and light.
        SHADE_THE_TRAY,
        MORE_LIGHT,
        STRONGER_LAMP,
        SUNNIER_PLACE,
        LOWER_LEVEL,
        AIR_STONE,
        WARMER_ROOM,
        COOLER_ROOM,
        COOLER_PLACE,
        WIDER_VENTS,
        SHADE_OVERHEAD,
        CLOSED_DECK,
        DRIER_NIGHTS,
        MORE_WIND,
        SHORTER_DAY,
        OTHER_SEASON
    }

    public Cure {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(facts, "facts");
        then = List.copyOf(then);
    }

    /** By itself. */
    public Cure(Kind kind, Facts facts) {
        this(kind, facts, List.of());
    }

    /**
     * What holds more than a tray that is filled once: a deeper one, or a wider one where it is
     * narrower than it is filled, as a bucket.
     */
    static Cure largerThan(Tray tray, Facts facts) {
        double levelM = tray.startLevelM();
        double widthM = FastMath.sqrt(tray.shape().areaM2(levelM));
        return new Cure(levelM > widthM ? Kind.WIDER_VESSEL : Kind.DEEPER_VESSEL, facts);
    }

    /** Whether it is a tray that holds more of one filling. */
    public boolean isLargerVessel() {
        return kind == Kind.DEEPER_VESSEL || kind == Kind.WIDER_VESSEL;
    }

    public static Cure of(Kind kind) {
        return new Cure(kind, Facts.NONE);
    }
}
