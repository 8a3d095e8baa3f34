package tideless.sim;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The water part alone: three throttling trays under a thirst by day and night, twelve components
 * carried along, three days an operation. Divide by the tray-steps of three days (1296 at 600 s,
 * 216 at 3600 s) for the cost of one. The reservoir is filled up between operations, so that
 * nothing happens that has to be told of: whatever the profiler finds allocated is the inner
 * loop's.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
public class WaterBenchmark {
    @Param({"600", "3600"})
    double stepS;

    private EngineRun engine;

    @Setup
    public void build() {
        engine = new EngineRun(new RandomRig(), GravityFeed.BEND_MOST);
    }

    @Benchmark
    public double threeDays() {
        engine.reservoir.refill(Rigs.FEED, EngineRun.TEMP_C);
        engine.run(stepS);
        return engine.reservoir.water.m3;
    }
}
