package tideless.cli;

import picocli.CommandLine.Option;
import tideless.study.threads.ThreadPool;

/** How many runs go at once, for whoever wants to see that it changes nothing. */
final class Threads {
    @Option(
            names = "--threads",
            hidden = true,
            description = "how many at once; changes nothing but the time")
    int threads;

    /** So many, or one a core where none was said. */
    ThreadPool pool() {
        return threads > 0 ? new ThreadPool(threads) : ThreadPool.ofAllCores();
    }
}
