/**
 * One finished run in, dated tasks and warnings with reasons out.
 *
 * <p>Lives here: every judgement about a run. Does not: physics, printing.
 *
 * <p>May import: {@code sim}, {@code scenario}, {@code crop}, {@code solution}, {@code physics}.
 * Held by {@code RoomsTest}.
 */
package tideless.advice;
