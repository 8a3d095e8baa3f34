package tideless.study;

import java.util.Objects;
import tideless.rig.Scenario;
import tideless.sim.Departures;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;

/**
 * One rig of many that the grower's might be.
 *
 * @param scenario the rig as it might be
 * @param departures what no scenario states
 */
record Member(Scenario scenario, Departures departures) {
    public Member {
        Objects.requireNonNull(scenario, "scenario");
        Objects.requireNonNull(departures, "departures");
    }

    /**
     * Runs it.
     *
     * @param shared surroundings of the scenario all members come from
     */
    public Season season(Surroundings shared) {
        return Simulation.season(scenario, shared.around(scenario), departures);
    }
}
