package tideless.study;

import java.util.concurrent.CompletableFuture;
import tideless.advice.Advisor;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.sim.Simulation;
import tideless.sim.Trace;

/** Runs a scenario and its twin, and has them judged. */
public final class Forecasts {
    private Forecasts() {}

    /**
     * @param scenario what to run
     * @param seed carried along; a single run draws nothing
     */
    public static Forecast of(Scenario scenario, long seed) {
        if (scenario.reservoirs().isEmpty()) {
            Trace alone = Simulation.run(scenario);
            return new Forecast(alone, alone, Advisor.advise(alone, alone), seed);
        }
        // The twin runs beside it; the two share nothing that changes.
        CompletableFuture<Trace> twin =
                CompletableFuture.supplyAsync(() -> Simulation.runUnread(twin(scenario)));
        Trace trace = Simulation.run(scenario);
        Trace unlimited = twin.join();
        return new Forecast(trace, unlimited, Advisor.advise(trace, unlimited), seed);
    }

    /** The same rig with reservoirs that are refilled the moment they are empty. */
    static Scenario twin(Scenario scenario) {
        Reservoir.Refill atOnce = new Reservoir.Refill(Reservoir.Refill.When.WHEN_EMPTY, 0);
        return scenario.withReservoirs(
                scenario.reservoirs().stream().map(r -> r.withRefill(atOnce)).toList());
    }
}
