package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.GrowthLost;
import tideless.sim.Stress;
import tideless.sim.Trace;
import tideless.words.WarningWords;

/** A head that is cut at a weight loses days by a harm, and no grams. */
class LateHeadsTest {
    @TempDir Path folder;

    private Scenario lettuce(double ec) throws IOException {
        Path file =
                Files.writeString(
                        folder.resolve("strong.toml"),
                        """
                        title = "Twice the feed"
                        start = 2026-03-02
                        length = "42 days"
                        [climate]
                        kind = "room"
                        day_temperature = "22 degC"
                        night_temperature = "18 degC"
                        day_humidity = "60 %%"
                        night_humidity = "70 %%"
                        [lamp]
                        ppfd = "240 umol/m2/s"
                        on = "06:00"
                        off = "22:00"
                        [feed]
                        recipe = "hoagland-2"
                        ec = "%s mS/cm"
                        [reservoir.main]
                        volume = "40 L"
                        depth = "30 cm"
                        floor_above_bench = "60 cm"
                        [tray.one]
                        length = "60 cm"
                        width = "40 cm"
                        depth = "10 cm"
                        cup_bottom = "5 cm"
                        crop = "lettuce"
                        plants = 6
                        ground = "0.3 m2"
                        nursery_age = "14 days"
                        [tray.one.valve]
                        setting = "5.5 cm"
                        [visits]
                        days = "daily"
                        """
                                .formatted(ec));
        return ((Reading.Good) ScenarioReader.read(file)).scenario();
    }

    private static double cutDay(Trace trace) {
        return trace.events().stream()
                .filter(e -> e.kind() == Event.Kind.HARVEST)
                .mapToDouble(e -> e.atS() / 86_400)
                .findFirst()
                .orElseThrow();
    }

    private static GrowthLost lost(Trace trace) {
        return trace.trays().get(0).lost().get(0);
    }

    @Test
    void salt_that_costs_days_is_warned_of_and_the_leaner_feed_brings_them_back()
            throws IOException {
        Forecast strong = Forecasts.of(lettuce(3.2), 1);
        Warning salty =
                strong.advice().warnings().stream()
                        .filter(w -> w.kind() == Warning.Kind.TOO_SALTY)
                        .findFirst()
                        .orElseThrow();
        double late = salty.cause().facts().get(Quantity.LATE);
        assertTrue(WarningWords.brief(salty).contains("days later for it"));
        Cure first = strong.advice().verdict().first().orElseThrow().cures().get(0);
        assertEquals(Cure.Kind.LEANER_FEED, first.kind());
        Forecast obeyed = Forecasts.of(lettuce(first.facts().get(Quantity.WANTED_EC)), 1);
        assertTrue(
                obeyed.advice().warnings().stream()
                        .noneMatch(w -> w.kind() == Warning.Kind.TOO_SALTY));
        // Somebody comes daily: what is cut comes back to a day and its rounding.
        assertEquals(late, cutDay(strong.trace()) - cutDay(obeyed.trace()), 1.01);
        assertEquals(lost(strong.trace()).readyDays(), lost(obeyed.trace()).readyDays(), 0.1);
    }

    @Test
    void days_go_to_what_took_them() throws IOException {
        GrowthLost lost = lost(Forecasts.of(lettuce(3.2), 1).trace());
        double sum = 0;
        for (Stress stress : Stress.values()) {
            sum += lost.lateDays(stress);
        }
        assertEquals(lost.lateDays(), sum, 1e-9);
        assertTrue(lost.lateDays(Stress.SALT) > 0.95 * lost.lateDays());
        assertEquals(0, lost(Forecasts.of(lettuce(1.3), 1).trace()).lateDays(Stress.SALT), 0.2);
    }
}
