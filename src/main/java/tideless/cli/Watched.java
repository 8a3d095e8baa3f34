package tideless.cli;

import java.util.List;
import java.util.function.IntFunction;
import tideless.report.Progress;
import tideless.study.Workers;

/**
 * Workers whose progress is shown, with the time that is left by the pace so far.
 *
 * @param workers who do the work
 * @param progress where it is shown
 * @param what it is, a few words
 */
record Watched(Workers workers, Progress progress, String what) implements Workers {
    private static final double NS_PER_S = 1e9;

    @Override
    public <R> List<R> each(int jobs, IntFunction<R> job) throws InterruptedException {
        Count count = new Count(jobs);
        progress.show(what, 0, jobs);
        return workers.each(
                jobs,
                i -> {
                    R result = job.apply(i);
                    count.oneMore();
                    return result;
                });
    }

    private final class Count {
        private final int jobs;
        private final long begunNs = System.nanoTime();
        private int done;

        Count(int jobs) {
            this.jobs = jobs;
        }

        synchronized void oneMore() {
            done++;
            double tookS = (System.nanoTime() - begunNs) / NS_PER_S;
            long leftS = (long) Math.ceil(tookS / done * (jobs - done));
            String left = leftS < 120 ? leftS + " s" : (leftS + 59) / 60 + " min";
            progress.show(what + ", about " + left + " left:", done, jobs);
        }
    }
}
