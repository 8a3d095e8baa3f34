package tideless.study;

import java.util.List;
import java.util.function.IntFunction;

/** Whoever does many like jobs: one after the other, or several at once. */
public interface Workers {
    /**
     * Does them all.
     *
     * @param jobs how many
     * @param job does the one of a number from 0 up; may be called from several threads
     * @return what each gave, in the order of their numbers, whoever was ready first
     * @throws InterruptedException when the calling thread is interrupted; nothing is kept then
     */
    <R> List<R> each(int jobs, IntFunction<R> job) throws InterruptedException;
}
