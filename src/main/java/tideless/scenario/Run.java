package tideless.scenario;

import java.time.LocalDate;

/**
 * When a run begins and how long it lasts, as far as that could be read.
 *
 * @param start first day
 * @param days whole days, at least 1
 */
record Run(Read<LocalDate> start, Read<Integer> days) {
    /** Last day of the run. */
    Read<LocalDate> last() {
        return Read.both(start, days, (from, length) -> from.plusDays(length - 1L));
    }

    /** First day after the run. */
    Read<LocalDate> end() {
        return last().map(day -> day.plusDays(1));
    }
}
