package tideless.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import tideless.advice.Advisor;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.sim.Simulation;
import tideless.sim.Trace;

/** Runs a scenario and its twin, and has them judged. */
public final class Forecasts {
    private Forecasts() {}

    /**
     * Runs them one after the other.
     *
     * @param scenario what to run
     * @param seed carried along; a single run draws nothing
     */
    public static Forecast of(Scenario scenario, long seed) {
        List<Supplier<Trace>> runs = runs(scenario);
        return judged(scenario, new InTurn().each(runs.size(), i -> runs.get(i).get()), seed);
    }

    /**
     * The same, with others to do the runs, which share nothing that changes.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    public static Forecast of(Scenario scenario, long seed, Workers workers)
            throws InterruptedException {
        List<Supplier<Trace>> runs = runs(scenario);
        return judged(scenario, workers.each(runs.size(), i -> runs.get(i).get()), seed);
    }

    /**
     * The same with members that say how sure it is.
     *
     * @param members how many; below 2 for none
     * @throws InterruptedException when the workers are interrupted
     */
    public static Forecast of(Scenario scenario, long seed, int members, Workers workers)
            throws InterruptedException {
        Forecast alone = of(scenario, seed, workers);
        if (members < 2) {
            return alone;
        }
        return new Forecast(
                alone.trace(),
                alone.unlimited(),
                alone.advice(),
                alone.ph(),
                Optional.of(Outlook.of(scenario, members, seed, workers)),
                seed);
    }

    /**
     * The run itself, its twin but where there is no reservoir and it would be the run itself, and
     * those at both ends of the contents where they matter.
     */
    private static List<Supplier<Trace>> runs(Scenario scenario) {
        List<Supplier<Trace>> runs = new ArrayList<>();
        runs.add(() -> Simulation.run(scenario));
        if (!scenario.reservoirs().isEmpty()) {
            runs.add(() -> Simulation.runUnread(twin(scenario)));
        }
        if (ContentsEnd.matters(scenario)) {
            for (ContentsEnd end : ContentsEnd.values()) {
                runs.add(() -> Simulation.run(end.of(scenario)));
            }
        }
        return runs;
    }

    private static Forecast judged(Scenario scenario, List<Trace> traces, long seed) {
        Trace trace = traces.get(0);
        int twin = scenario.reservoirs().isEmpty() ? 0 : 1;
        List<Trace> read = new ArrayList<>(List.of(trace));
        read.addAll(traces.subList(twin + 1, traces.size()));
        return new Forecast(
                trace,
                traces.get(twin),
                Advisor.advise(trace, traces.get(twin)),
                PhCourse.over(read),
                Optional.empty(),
                seed);
    }

    /** The same rig with reservoirs that are refilled the moment they are empty. */
    static Scenario twin(Scenario scenario) {
        return scenario.withReservoirs(
                scenario.reservoirs().stream()
                        .map(r -> r.withRefill(r.refill().on(Reservoir.Refill.When.WHEN_EMPTY)))
                        .toList());
    }
}
