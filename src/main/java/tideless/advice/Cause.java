package tideless.advice;

import java.util.Objects;

/**
 * Why something is due or goes wrong.
 *
 * @param kind what is behind it
 * @param facts its figures
 */
public record Cause(Kind kind, Facts facts) {
    /** Kinds of cause, by theme. */
    public enum Kind {
        // Reservoirs and visits.
        RUN_DOWN_TO_OUTLET,
        RUNNING_LOW,
        NO_REFILL_PLANNED,
        EMPTY_BEFORE_THE_VISIT,
        DRAWN_FASTER_THAN_VISITS,
        BEFORE_ABSENCE,
        /** A valve that was moved up took from what was filled at the same visit. */
        TRAY_TOOK_IT,
        // Levels and roots.
        KEPT_BY_HAND,
        DRUNK_UP,
        ROOTS_END_ABOVE_LEVEL,
        LEVEL_BELOW_ROOT_TIPS,
        FILM_FEEDS_NO_ROOT,
        TOO_STRONG_TO_DRINK,
        RESERVE_USED_UP,
        /** Strong because it is little. */
        DRUNK_DOWN,
        ROSE_ABOVE_AIR_ROOTS,
        CUPS_STAY_UNDER,
        WITHOUT_WATER,
        WITHOUT_AIR,
        SALT_KILLS_SEEDLINGS,
        SALT_KILLS,
        FROST_KILLS,
        CHILL_KILLS,
        HEAT_KILLS,
        DARK_KILLS,
        // Valves.
        VALVE_LETS_IN_TOO_MUCH,
        VALVE_HANGS_SHUT,
        VALVE_SILTS_UP,
        VALVE_TOO_SLOW,
        AS_PLANNED,
        GROWS_MORE_IN_A_TRIAL,
        // Solution.
        SALTS_STAY_BEHIND,
        SALTIER_THAN_ROOTS_ARE_USED_TO,
        FEED_IS_LEAN,
        FEED_IS_STRONG,
        CROP_TAKES_IT_UP,
        FEED_IS_ALKALINE,
        SALTS_ARE_ALKALINE,
        ANIONS_TAKEN,
        CATIONS_TAKEN,
        ONE_RUNS_OUT,
        CROP_LEAVES_IT,
        SUPERSATURATED,
        // Air and light.
        WARM_HOLDS_LITTLE_OXYGEN,
        TOO_LITTLE_LIGHT,
        AIR_OF_THE_ROOM,
        BOLTS_IN_LONG_DAYS,
        BOLTS_IN_HEAT,
        BURNS_IN_HOT_HOURS,
        ROOTS_BREATHE_MORE_THAN_COMES,
        // The crop.
        READY,
        /** The crop is lighter than wanted, but would bolt or grow tough. */
        WINDOW_ENDS,
        /** Plants that are picked leaf by leaf bolt or grow tough. */
        PICKED_OUT,
        /** Nearly ready, and nobody comes again before the run ends. */
        LAST_VISIT,
        LEAVES_GROW_AGAIN,
        OLD_LEAVES_GIVE_LITTLE,
        PLANTS_CROWD,
        PLANTS_SHADE,
        SEASON_ENDS,
        FIRST_FRUIT_RIPE,
        LAST_FRUIT_PICKED,
        /** The next crop does not wait for it, ripe or not. */
        MAKES_ROOM,
        BEGINS,
        FOLLOWS,
        NEXT_IN_TIME,
        FLOWERS_OPEN,
        GROWS_TALL,
        CROP_LEAVES_THE_TRAY,
        /** Dead plants rot in it. */
        CROP_IS_LOST,
        // The whole rig.
        FIRST_FILLING,
        FORECAST_IS_NO_READING
    }

    public Cause {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(facts, "facts");
    }

    /** The same with one more figure. */
    Cause with(Quantity quantity, double value) {
        return new Cause(kind, facts.and(quantity, value));
    }

    public static Cause of(Kind kind) {
        return new Cause(kind, Facts.NONE);
    }

    /** Whether it is that somebody leaves, also where a tray took of what was filled for it. */
    public boolean isBeforeAbsence() {
        return kind == Kind.BEFORE_ABSENCE || kind == Kind.TRAY_TOOK_IT;
    }
}
