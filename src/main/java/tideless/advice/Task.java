package tideless.advice;

import java.time.LocalDateTime;
import java.util.Objects;

/**
 * Something the grower has to do, and when.
 *
 * @param kind what
 * @param due when: the visit at which it is done, or the hour from which it is due
 * @param where name of the tray or reservoir
 * @param isReservoir whether {@code where} is a reservoir
 * @param litres to pour in, L; 0 where nothing is poured
 * @param drainLitres to take out first, L
 * @param limiting the figure that decides, as "1.9 mS/cm"
 * @param limit what it is held against, as "above 1.6 mS/cm"
 * @param reason one short sentence
 * @param cure what would make it come later or not at all; may be empty
 */
public record Task(
        Kind kind,
        LocalDateTime due,
        String where,
        boolean isReservoir,
        double litres,
        double drainLitres,
        String limiting,
        String limit,
        String reason,
        String cure) {

    /** Kinds of task. The words are what a table prints. */
    public enum Kind {
        REFILL("refill"),
        TOP_UP("top up"),
        FRESH_SOLUTION("fresh solution"),
        FLUSH("flush"),
        LOWER_VALVE("lower valve"),
        RAISE_VALVE("raise valve"),
        HARVEST("harvest"),
        SOW_NEXT("sow next");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public Task {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(due, "due");
        Objects.requireNonNull(where, "where");
        Objects.requireNonNull(limiting, "limiting");
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(reason, "reason");
        Objects.requireNonNull(cure, "cure");
    }
}
