package tideless.study.threads;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntFunction;
import tideless.study.Workers;

/**
 * Jobs on several threads, each of which takes the next job when it is done with one.
 *
 * @param threads how many at once, at least 1
 */
public record ThreadPool(int threads) implements Workers {
    public ThreadPool {
        if (threads < 1) {
            throw new IllegalArgumentException("threads must be at least 1, was " + threads);
        }
    }

    /** As many as the machine has cores, at least 2. */
    public static ThreadPool ofAllCores() {
        return new ThreadPool(Math.max(2, Runtime.getRuntime().availableProcessors()));
    }

    /**
     * {@inheritDoc} An interruption takes effect between two jobs.
     *
     * @throws IllegalStateException when a job failed; its cause says why
     */
    @Override
    public <R> List<R> each(int jobs, IntFunction<R> job) throws InterruptedException {
        List<R> results = new ArrayList<>(Collections.nCopies(jobs, null));
        AtomicInteger next = new AtomicInteger();
        Callable<Void> worker =
                () -> {
                    for (int i = next.getAndIncrement();
                            i < jobs && !Thread.currentThread().isInterrupted();
                            i = next.getAndIncrement()) {
                        // Every place is written once, by one thread; the futures publish it.
                        results.set(i, job.apply(i));
                    }
                    return null;
                };
        int busy = Math.max(1, Math.min(threads, jobs));
        ExecutorService pool = Executors.newFixedThreadPool(busy);
        try {
            List<Future<Void>> running = new ArrayList<>();
            for (int t = 0; t < busy; t++) {
                running.add(pool.submit(worker));
            }
            for (Future<Void> one : running) {
                one.get();
            }
        } catch (ExecutionException failure) {
            throw new IllegalStateException("one of the jobs failed", failure.getCause());
        } finally {
            pool.shutdownNow();
        }
        return results;
    }
}
