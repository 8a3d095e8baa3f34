package tideless.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;

/** What a root zone takes of a crop: told by a second plant, so held against a second run. */
class GrowthLostTest {
    private static GrowthLost of(String name, String tray, ChangedScenario.Change... changes) {
        Reading reading =
                ChangedScenario.read(Path.of("scenarios", name + ".toml"), List.of(changes));
        Trace trace = Simulation.run(((Reading.Good) reading).scenario());
        return trace.trays().stream()
                .filter(t -> t.tray().name().equals(tray))
                .findFirst()
                .orElseThrow()
                .lost()
                .get(0);
    }

    private static ChangedScenario.Change set(String key, String value) {
        return new ChangedScenario.Change(key, value);
    }

    @Test
    void a_good_root_zone_takes_next_to_nothing() {
        GrowthLost calm = of("calm-bench", "left");
        assertThat(calm.frac()).isLessThan(0.05);
        assertThat(calm.ownG()).isGreaterThan(150);
    }

    /**
     * The plant that nothing harms is the one of a good run, but that this one is ready on a day
     * and cut at the visit after it, two days on at most: an eighth of a head.
     */
    @Test
    void salt_takes_what_a_second_run_without_it_gives_more() {
        GrowthLost calm = of("calm-bench", "left", set("visits.flush", "never"));
        GrowthLost salty =
                of("calm-bench", "left", set("feed.ec", "4.5 mS/cm"), set("visits.flush", "never"));
        assertThat(salty.frac()).isGreaterThan(0.25);
        assertThat(salty.unharmedG()).isCloseTo(calm.unharmedG(), within(calm.unharmedG() / 8));
        assertThat(salty.frac()).isCloseTo(1 - salty.ownG() / calm.ownG(), within(0.1));
        assertThat(salty.frac(Stress.SALT)).isGreaterThan(0.8 * salty.frac());
    }

    /** Salt that costs a head a week costs nobody a head. */
    @Test
    void a_head_that_comes_later_is_not_lost() {
        GrowthLost later =
                of("calm-bench", "left", set("feed.ec", "3.2 mS/cm"), set("visits.flush", "never"));
        assertThat(later.ownG()).isGreaterThan(170);
        assertThat(later.frac()).isLessThan(0.15);
    }

    @Test
    void hunger_is_told_apart_from_salt() {
        GrowthLost starved =
                of(
                        "calm-bench",
                        "left",
                        set("feed.ec", "0.35 mS/cm"),
                        set("visits.flush", "never"));
        assertThat(starved.frac(Stress.HUNGER)).isGreaterThan(0.1);
        assertThat(starved.frac(Stress.HUNGER)).isGreaterThan(0.8 * starved.frac());
        assertThat(starved.frac(Stress.SALT)).isEqualTo(0);
    }

    /** Leaves are picked from both plants, or the unharmed one would be the heavier by them. */
    @Test
    void what_was_picked_is_not_lost() {
        GrowthLost kale =
                of("calm-bench", "left", set("tray.left.crop", "kale"), set("length", "70 days"));
        assertThat(kale.frac()).isLessThan(0.05);
    }

    @Test
    void of_fruit_crops_the_fruit_counts() {
        GrowthLost fruit = of("hand-topped-bucket", "bucket");
        assertThat(fruit.ownG()).isLessThanOrEqualTo(fruit.unharmedG());
        assertThat(fruit.shares().values().stream().mapToDouble(s -> s).sum())
                .isCloseTo(1, within(1e-12));
    }
}
