package tideless.scenario;

import java.time.LocalDate;

/**
 * A number that holds from a day on.
 *
 * @param from first day of it
 * @param value above 0
 */
record DatedNumber(LocalDate from, double value) {}
