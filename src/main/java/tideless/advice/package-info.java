/**
 * One finished run in; a verdict, dated tasks and warnings out, as figures with causes and cures.
 *
 * <p>Lives here: every judgement about a run, one class a theme. Does not: physics, sentences.
 *
 * <p>May import: {@code sim}, {@code rig}, {@code crop}, {@code solution}, {@code physics}, {@code
 * java.lang}, {@code java.util}, {@code java.util.function}, {@code java.util.stream}, {@code
 * java.time}, {@code java.time.temporal}, {@code org.apache.commons.math3.util}. Held by {@code
 * RoomsTest}.
 */
package tideless.advice;
