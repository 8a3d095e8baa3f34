package tideless.study;

import tideless.advice.Advice;
import tideless.sim.Trace;

/**
 * A scenario, run and judged: what the {@code run} command prints and writes.
 *
 * @param trace the run as the user wrote it
 * @param unlimited its twin, in which every reservoir is refilled the moment it is empty
 * @param advice what follows
 * @param seed printed with the result; the same scenario and seed give the same bytes
 */
public record Forecast(Trace trace, Trace unlimited, Advice advice, long seed) {}
