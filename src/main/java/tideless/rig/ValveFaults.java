package tideless.rig;

import java.time.LocalDate;
import java.util.Objects;

/**
 * What goes wrong with a valve, and from which day; each from 00:00.
 *
 * @param stuck whether it hangs, and where
 * @param stuckFrom first day it hangs
 * @param stuckTo first day it no longer hangs
 * @param seepM3PerS leaks past the seat whatever the float says, with the reservoir full, m3/s; 0
 *     for none
 * @param seepFrom first day it seeps
 * @param cloggingFracPerDay share of the seat's free area that silts up each day, 0 to below 1
 * @param cloggingFrom first day of it
 */
public record ValveFaults(
        Stuck stuck,
        LocalDate stuckFrom,
        LocalDate stuckTo,
        double seepM3PerS,
        LocalDate seepFrom,
        double cloggingFracPerDay,
        LocalDate cloggingFrom) {
    /** Where a valve hangs. */
    public enum Stuck {
        NOT,
        OPEN,
        SHUT
    }

    /** Some day, where none is meant: any would do. */
    public static final LocalDate NO_DAY = LocalDate.ofEpochDay(0);

    /** A sound valve. */
    public static final ValveFaults NONE =
            new ValveFaults(Stuck.NOT, NO_DAY, NO_DAY, 0, NO_DAY, 0, NO_DAY);

    public ValveFaults {
        Objects.requireNonNull(stuck, "stuck");
        Objects.requireNonNull(stuckFrom, "stuckFrom");
        Objects.requireNonNull(stuckTo, "stuckTo");
        Objects.requireNonNull(seepFrom, "seepFrom");
        Objects.requireNonNull(cloggingFrom, "cloggingFrom");
        if (!(seepM3PerS >= 0)) {
            throw new IllegalArgumentException("seepM3PerS must be at least 0, was " + seepM3PerS);
        }
        if (!(cloggingFracPerDay >= 0 && cloggingFracPerDay < 1)) {
            throw new IllegalArgumentException(
                    "cloggingFracPerDay must lie in [0, 1), was " + cloggingFracPerDay);
        }
    }

    /** Whether nothing ever goes wrong. */
    public boolean isNone() {
        return stuck == Stuck.NOT && seepM3PerS == 0 && cloggingFracPerDay == 0;
    }

    /** Whether it hangs shut on a day. */
    public boolean isStuckShutOn(LocalDate day) {
        return stuck == Stuck.SHUT && !day.isBefore(stuckFrom) && day.isBefore(stuckTo);
    }

    /** Whether its seat silts up on a day. */
    public boolean isCloggedOn(LocalDate day) {
        return cloggingFracPerDay > 0 && !day.isBefore(cloggingFrom);
    }
}
