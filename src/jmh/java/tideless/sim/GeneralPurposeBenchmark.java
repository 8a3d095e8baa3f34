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
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The same three days as {@link WaterBenchmark} by Commons Math's Dormand and Prince 8(5,3) with an
 * event for every switch: the same law of flow, the same twelve components.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
public class GeneralPurposeBenchmark {
    @Param({"1e-7", "1e-9"})
    double tolerance;

    private final RandomRig rig = new RandomRig();

    @Benchmark
    public double threeDays() {
        GeneralPurpose solver = GeneralPurpose.quick(rig, tolerance);
        solver.run();
        return solver.y[0];
    }
}
