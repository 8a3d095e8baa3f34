package tideless.advice;

import java.time.LocalDateTime;
import java.util.Objects;

/**
 * Something that goes wrong if nothing changes.
 *
 * @param kind what
 * @param from when it begins
 * @param where name of the tray or reservoir
 * @param isReservoir whether {@code where} is a reservoir
 * @param limiting the figure that decides, as "2.1 days"
 * @param limit what it is held against, as "3 days between visits"
 * @param reason one short sentence
 * @param cure what would put it right
 */
public record Warning(
        Kind kind,
        LocalDateTime from,
        String where,
        boolean isReservoir,
        String limiting,
        String limit,
        String reason,
        String cure) {

    /** Kinds of warning. The words are what a table prints. */
    public enum Kind {
        OUTGROWN("outgrown"),
        RAN_DRY("ran dry"),
        STARVED_VALVE("starved valve"),
        STRANDED("roots stranded"),
        WILTED("wilted"),
        DIED("crop lost"),
        DROWNED("air roots drowned"),
        OVERFLOW("overflow"),
        TOO_SALTY("too salty"),
        TOO_LEAN("too lean"),
        SHORT_OF_ONE("short of one nutrient"),
        PH_OUT("pH out"),
        TOO_MUCH_SODIUM("too much sodium"),
        TOO_MUCH_CHLORIDE("too much chloride"),
        PRECIPITATE("precipitate"),
        WARM_SOLUTION("warm solution"),
        LOW_LIGHT("low light");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public Warning {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(where, "where");
        Objects.requireNonNull(limiting, "limiting");
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(reason, "reason");
        Objects.requireNonNull(cure, "cure");
    }
}
