package tideless.scenario;

import java.time.LocalDate;

/**
 * A share that holds from a day on.
 *
 * @param from first day of it
 * @param frac 0-1
 */
record DatedShare(LocalDate from, double frac) {}
