/**
 * One finished run in, dated tasks and warnings with reasons out.
 *
 * <p>Lives here: every judgement about a run. Does not: physics, printing.
 *
 * <p>May import: {@code sim}, {@code rig}, {@code crop}, {@code solution}, {@code physics}, {@code
 * java.lang}, {@code java.util}, {@code java.util.function}, {@code java.util.stream}, {@code
 * java.time}, {@code java.time.format}, {@code java.time.temporal}, {@code
 * org.apache.commons.math3.util}. Held by {@code RoomsTest}.
 */
package tideless.advice;
