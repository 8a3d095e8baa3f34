package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.advice.Advice;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Trace;

/** How much one filling has to hold: for the whole crop, not until it is lost. */
class OneFillingTest {
    @TempDir Path folder;

    private static final String BUCKET =
            """
            shape = "bucket"
            diameter = "30 cm"
            floor_diameter = "26 cm"
            depth = "36 cm"
            cup_bottom = "30 cm"
            plants = 1
            ground = "0.4 m2"
            """;

    private Scenario scenario(String crop, String depth, String days) throws IOException {
        String tub =
                "length = \"60 cm\"\nwidth = \"35 cm\"\nplants = 6\ndepth = \"" + depth + "\"\n";
        return scenario(crop, days, tub, "1.4");
    }

    private Scenario scenario(String crop, String days, String tub, String ec) throws IOException {
        Path file = folder.resolve("once.toml");
        Files.writeString(
                file,
                """
                title = "Filled once"
                start = 2026-03-02
                length = "%s"
                [climate]
                kind = "room"
                day_temperature = "22 degC"
                night_temperature = "18 degC"
                [lamp]
                ppfd = "300 umol/m2/s"
                on = "06:00"
                off = "22:00"
                [feed]
                recipe = "hoagland-2"
                ec = "%s mS/cm"
                [tray.tub]
                crop = "%s"
                %s
                filling = "sealed"
                [visits]
                days = ["mon", "wed", "fri"]
                """
                        .formatted(days, ec, crop, tub));
        return ((Reading.Good) ScenarioReader.read(file)).scenario();
    }

    private static Optional<Warning> lost(Advice advice) {
        return advice.warnings().stream().filter(w -> w.kind() == Warning.Kind.DIED).findFirst();
    }

    private static double enough(Warning warning) {
        return warning.cures().stream()
                .filter(c -> c.isLargerVessel())
                .mapToDouble(c -> c.facts().get(Quantity.ENOUGH))
                .findFirst()
                .orElseThrow();
    }

    /**
     * 0.21 m2: a tub so deep that it holds what is told keeps the crop, and one of 0.85 loses it.
     */
    @Test
    void what_is_told_lasts_the_whole_crop() throws IOException {
        Advice small = Forecasts.of(scenario("lettuce", "8 cm", "42 days"), 1).advice();
        Warning lost = lost(small).orElseThrow();
        double litres = enough(lost);
        assertEquals(lost.cures(), small.verdict().first().orElseThrow().cures());
        // The cups hang 5 cm below the rim and are filled 1.3 cm above their underside.
        double depthCm = litres / 2.1 + 3.7;
        Advice deep = Forecasts.of(scenario("lettuce", depthCm + " cm", "42 days"), 1).advice();
        assertTrue(deep.verdict().survives());
        double tooSmallCm = 0.85 * litres / 2.1 + 3.7;
        Advice shallow =
                Forecasts.of(scenario("lettuce", tooSmallCm + " cm", "42 days"), 1).advice();
        assertFalse(shallow.verdict().survives());
    }

    @Test
    void what_would_take_more_than_twice_the_litres_is_better_topped_up() throws IOException {
        Advice lettuce = Forecasts.of(scenario("lettuce", "10 cm", "42 days"), 1).advice();
        assertEquals(Cure.Kind.DEEPER_VESSEL, lost(lettuce).orElseThrow().cures().get(0).kind());
        Advice celery = Forecasts.of(scenario("celery", "10 cm", "63 days"), 1).advice();
        List<Cure> cures = lost(celery).orElseThrow().cures();
        assertEquals(Cure.Kind.TOP_UP_BY_HAND, cures.get(0).kind());
        assertEquals(50, cures.get(0).facts().get(Quantity.LEVEL), 1e-9);
        assertTrue(enough(lost(celery).orElseThrow()) > 2 * 13.2);
    }

    /** Salt leaves nothing to drink in a bucket of strong feed before it is dry. */
    @Test
    void what_grows_too_strong_to_drink_is_tried_in_more_too() throws IOException {
        Scenario bucket = scenario("tomato", "90 days", BUCKET, "3.0");
        Warning lost = lost(Forecasts.of(bucket, 1).advice()).orElseThrow();
        assertEquals(Cure.Kind.TOP_UP_BY_HAND, lost.cures().get(0).kind());
        assertEquals(Cure.Kind.WIDER_VESSEL, lost.cures().get(1).kind()); // filled above its width
        Trace deep = OneFilling.run(bucket, Set.of(lost.vessel()));
        assertTrue(deep.events().stream().noneMatch(e -> e.kind() == Event.Kind.DIED));
        assertEquals(
                1.15 * 1000 * deep.trays().get(0).transpirationM3().sum(0, deep.hours()),
                enough(lost),
                0.1 * enough(lost)); // what evaporates besides
    }

    @Test
    void nothing_is_tried_of_tubs_that_last() throws IOException {
        Scenario deep = scenario("lettuce", "30 cm", "42 days");
        assertTrue(OneFilling.of(Forecasts.of(deep, 1).advice()).isEmpty());
    }
}
