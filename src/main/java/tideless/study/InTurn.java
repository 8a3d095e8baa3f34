package tideless.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;

/** One job after the other, on the thread that asks: the way where there are no threads. */
public final class InTurn implements Workers {
    @Override
    public <R> List<R> each(int jobs, IntFunction<R> job) {
        List<R> results = new ArrayList<>(jobs);
        for (int i = 0; i < jobs; i++) {
            results.add(job.apply(i));
        }
        return results;
    }
}
