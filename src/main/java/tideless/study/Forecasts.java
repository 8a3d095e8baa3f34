package tideless.study;

import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
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
        return judged(new InTurn().each(runs(scenario), run(scenario)), seed);
    }

    /**
     * The same, with others to do the runs, which share nothing that changes.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    public static Forecast of(Scenario scenario, long seed, Workers workers)
            throws InterruptedException {
        return judged(workers.each(runs(scenario), run(scenario)), seed);
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
                Optional.of(Outlook.of(scenario, members, seed, workers)),
                seed);
    }

    /** Without a reservoir the twin would be the run itself. */
    private static int runs(Scenario scenario) {
        return scenario.reservoirs().isEmpty() ? 1 : 2;
    }

    private static IntFunction<Trace> run(Scenario scenario) {
        return i -> i == 0 ? Simulation.run(scenario) : Simulation.runUnread(twin(scenario));
    }

    private static Forecast judged(List<Trace> traces, long seed) {
        Trace trace = traces.get(0);
        Trace unlimited = traces.get(traces.size() - 1);
        return new Forecast(trace, unlimited, Advisor.advise(trace, unlimited), seed);
    }

    /** The same rig with reservoirs that are refilled the moment they are empty. */
    static Scenario twin(Scenario scenario) {
        return scenario.withReservoirs(
                scenario.reservoirs().stream()
                        .map(r -> r.withRefill(r.refill().on(Reservoir.Refill.When.WHEN_EMPTY)))
                        .toList());
    }
}
