package tideless.study;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import tideless.rig.Numerics;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.study.threads.ThreadPool;

/**
 * The whole model over the 70 days and three trays of the first scenario: one season alone, and the
 * season of an ensemble on two threads.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
public class SeasonBenchmark {
    private static final int MEMBERS = 200;

    @Param({"600", "10800"})
    double stepS;

    private Scenario scenario;
    private Surroundings surroundings;

    @Setup
    public void read() {
        Path file = Path.of("scenarios/science-room-bench.toml");
        scenario =
                ((Reading.Good) ScenarioReader.read(file))
                        .scenario()
                        .withNumerics(new Numerics(stepS));
        surroundings = Surroundings.forSeasons(scenario);
    }

    @Benchmark
    public Season alone() {
        return Simulation.season(scenario, surroundings);
    }

    @Benchmark
    @OperationsPerInvocation(MEMBERS)
    public List<Double> ofAnEnsembleOnTwoThreads() throws InterruptedException {
        Function<Season, Double> left = season -> season.water().end();
        return Ensemble.of(scenario, Tolerances.USUAL, MEMBERS, 1, new ThreadPool(2), left);
    }
}
