package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;

/** A bucket that nobody tops up for three weeks is drunk empty: members want water there, too. */
class DrunkDownTest {
    private static final Path HOLIDAY = ObeyingRigs.still("tomato-holiday");

    @Test
    void what_wilts_in_a_bucket_drunk_down_wants_water_in_members_as_in_the_run() {
        Scenario scenario =
                Ensemble.atEnsembleStep(((Reading.Good) ScenarioReader.read(HOLIDAY)).scenario());
        Season season = Simulation.season(scenario, Surroundings.forSeasons(scenario));
        assertTrue(
                season.events().stream()
                        .filter(e -> e.kind() == Event.Kind.SALT_WILTED)
                        .anyMatch(e -> e.detail().equals(Event.DRUNK_DOWN)));
        assertEquals(Event.Kind.WILTED, Fate.of(scenario, season).firstHarm().orElseThrow().kind());
    }
}
