package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** The feed that needs no flush. */
class LeanFeedTest {
    private static Scenario scenario(String path) {
        return ((Reading.Good) ScenarioReader.read(Path.of(path))).scenario();
    }

    @Test
    void between_its_ends_every_tray_stays_in_band_and_beyond_them_one_does_not() {
        LeanFeed lean = LeanFeed.of(scenario("scenarios/lessons/rich-feed.toml"));
        assertTrue(lean.exists());
        double low = lean.leanest().orElseThrow();
        double high = lean.richest().orElseThrow();
        assertTrue(low <= lean.recommendedMsPerCm() && lean.recommendedMsPerCm() <= high);
        assertTrue(high < lean.given(), "the rich feed of the lesson is too rich");
        for (LeanFeed.Trial trial : lean.trials()) {
            boolean inside = trial.ecMsPerCm() >= low && trial.ecMsPerCm() <= high;
            boolean good = trial.tooSalty().isEmpty() && trial.tooLean().isEmpty();
            assertEquals(inside, good, trial.toString());
        }
    }

    // Its tomato wants 1.8 at least, its basil 1.8 at most, and the tomato's tray piles up.
    @Test
    void where_two_crops_want_different_feeds_none_exists_and_it_says_why() {
        LeanFeed lean = LeanFeed.of(scenario("scenarios/science-room-bench.toml"));
        assertFalse(lean.exists());
        assertTrue(Double.isNaN(lean.recommendedMsPerCm()));
        assertEquals("basil", lean.leanestTooSalty().orElseThrow().tooSalty().orElseThrow().tray());
        assertEquals("tomato", lean.richestTooLean().orElseThrow().tooLean().orElseThrow().tray());
    }

    // The same bench with the basil poured its own: what is too salty for it is nobody's business.
    @Test
    void a_tray_with_a_feed_of_its_own_is_not_judged() {
        Scenario bench = scenario("scenarios/hand-topped-bucket.toml");
        Tray bucket = bench.trays().get(0);
        Scenario own = bench.withOwnFeeds(Map.of(bucket.id(), bench.feed().times(1.01)));
        assertTrue(LeanFeed.of(bench).trials().stream().anyMatch(t -> t.tooLean().isPresent()));
        for (LeanFeed.Trial trial : LeanFeed.of(own).trials()) {
            assertTrue(trial.tooLean().isEmpty() && trial.tooSalty().isEmpty(), trial.toString());
        }
    }
}
