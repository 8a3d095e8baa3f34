package tideless.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;

/**
 * Jobs of which an interruption keeps what was done: as far as none is missing from the first on,
 * so that the threads decide nothing and what is kept is what a smaller number of jobs gives.
 */
final class Kept {
    private final Object[] results;

    private Kept(int jobs) {
        results = new Object[jobs];
    }

    /**
     * Does them.
     *
     * @param jobs how many
     * @param job as of {@link Workers#each}; never null
     * @return what the first ones gave: all of them, or fewer where the work was broken off
     */
    static <R> List<R> each(Workers workers, int jobs, IntFunction<R> job) {
        Kept kept = new Kept(jobs);
        try {
            workers.each(
                    jobs,
                    i -> {
                        kept.keep(i, job.apply(i));
                        return i;
                    });
        } catch (InterruptedException e) {
            // What was done is told, and that it is less than was asked for.
        }
        return kept.fromTheFirstOn();
    }

    private synchronized void keep(int job, Object result) {
        results[job] = result;
    }

    /** Some threads may yet be at work on more. */
    @SuppressWarnings("unchecked")
    private synchronized <R> List<R> fromTheFirstOn() {
        int done = 0;
        while (done < results.length && results[done] != null) {
            done++;
        }
        return new ArrayList<>((List<R>) Arrays.asList(results).subList(0, done));
    }
}
