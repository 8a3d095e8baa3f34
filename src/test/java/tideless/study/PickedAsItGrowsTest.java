package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.GrowingBench;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.sim.TraySeason;

/** What studies make of leaf crops that are picked as they grow. */
class PickedAsItGrowsTest {
    private static final VesselId BENCH = VesselId.tray("bench");

    @TempDir Path folder;

    private Scenario scenario(int days, String more) throws IOException {
        Path file = folder.resolve("bench.toml");
        Files.writeString(
                file,
                GrowingBench.text(
                        days, "visits.days = \"daily\"", 23, 240, "basil", "plants = 6\n" + more));
        Reading reading = ScenarioReader.read(file);
        return assertInstanceOf(Reading.Good.class, reading, () -> "" + reading).scenario();
    }

    private static Season season(Scenario scenario) {
        return Simulation.season(scenario, Surroundings.forSeasons(scenario));
    }

    @Test
    void what_a_plant_gave_and_what_is_asked_of_its_weight_count_what_was_picked()
            throws IOException {
        Scenario scenario = scenario(56, "crop_override.harvest.picked_share = \"80 %\"");
        Season season = season(scenario);
        TraySeason.Yield yield = season.trays().get(0).yields().get(0);
        Fate fate = Fate.of(scenario, season);
        assertThat(yield.freshG()).isLessThan(45);
        assertThat(yield.pickedG()).isGreaterThan(40);
        assertThat(fate.freshG()[0]).isCloseTo(yield.allG(), within(1e-9));
        assertThat(
                        Survival.Judge.harmOrLightness(Survival.Judge.harmTo(Set.of(BENCH)), BENCH)
                                .first(scenario, fate))
                .isEmpty();
        Scenario early = scenario(14, "");
        Fate young = Fate.of(early, season(early));
        assertThat(
                        Survival.Judge.harmOrLightness(Survival.Judge.harmTo(Set.of(BENCH)), BENCH)
                                .first(early, young))
                .isPresent();
    }

    @Test
    void growth_that_was_picked_is_growth_where_designs_are_compared() throws IOException {
        double gain =
                Improvement.gainFrac(
                        Simulation.run(scenario(56, "harvest_after = \"100 days\"")),
                        Simulation.run(scenario(56, "")),
                        BENCH);
        // Picked plants stop less light, yet most of what the others are stands in the kitchen.
        assertThat(gain).isBetween(-0.35, 0.0);
    }

    @Test
    void the_first_picking_is_dated_and_asked_for_as_the_first_harvest() throws IOException {
        Scenario scenario = scenario(56, "");
        Season season = season(scenario);
        List<Event> pickings =
                season.events().stream().filter(e -> e.kind() == Event.Kind.LEAVES_PICKED).toList();
        assertThat(pickings.size()).isGreaterThan(2);
        Fate fate = Fate.of(scenario, season);
        assertThat(fate.dated().keySet())
                .filteredOn(what -> what.kind() == Event.Kind.LEAVES_PICKED)
                .containsExactly(new Expected.What(Event.Kind.LEAVES_PICKED, BENCH, 1));
        assertEquals(
                pickings.get(0).atS(),
                fate.dated().get(new Expected.What(Event.Kind.LEAVES_PICKED, BENCH, 1)).atS());

        Scenario dated =
                scenario(56, "leaf_picking.from = 2026-03-20\nleaf_picking.every = \"9 days\"");
        assertThat(Fate.of(dated, season(dated)).dated().keySet())
                .noneMatch(what -> what.kind() == Event.Kind.LEAVES_PICKED);
    }
}
