package tideless.scenario;

import java.time.LocalDate;
import java.util.List;

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

    /** Those of some days that do not lie in the run; none while the run is not known. */
    List<LocalDate> outside(List<LocalDate> some) {
        return Read.both(
                        start,
                        last(),
                        (first, last) ->
                                some.stream()
                                        .filter(day -> day.isBefore(first) || day.isAfter(last))
                                        .toList())
                .orElse(List.of());
    }

    /** First day after the run. */
    Read<LocalDate> end() {
        return last().map(day -> day.plusDays(1));
    }
}
