package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.advice.Advice;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** How much one filling has to hold: for the whole crop, not until it is lost. */
class OneFillingTest {
    @TempDir Path folder;

    private Scenario scenario(String crop, String depth, String days) throws IOException {
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
                ppfd = "240 umol/m2/s"
                on = "06:00"
                off = "22:00"
                [feed]
                recipe = "hoagland-2"
                ec = "1.4 mS/cm"
                [tray.tub]
                length = "60 cm"
                width = "35 cm"
                depth = "%s"
                crop = "%s"
                plants = 6
                filling = "sealed"
                [visits]
                days = ["mon", "wed", "fri"]
                """
                        .formatted(days, depth, crop));
        return ((Reading.Good) ScenarioReader.read(file)).scenario();
    }

    private static Optional<Warning> lost(Advice advice) {
        return advice.warnings().stream().filter(w -> w.kind() == Warning.Kind.DIED).findFirst();
    }

    private static double enough(Warning warning) {
        return warning.cures().stream()
                .filter(c -> c.kind() == Cure.Kind.DEEPER_VESSEL)
                .mapToDouble(c -> c.facts().get(Quantity.ENOUGH))
                .findFirst()
                .orElseThrow();
    }

    /** 0.21 m2: a tub so deep that it holds a twentieth more than told keeps the crop. */
    @Test
    void what_is_told_lasts_the_whole_crop() throws IOException {
        Advice small = Forecasts.of(scenario("lettuce", "8 cm", "42 days"), 1).advice();
        Warning lost = lost(small).orElseThrow();
        double litres = enough(lost);
        assertEquals(lost.cures(), small.verdict().first().orElseThrow().cures());
        // The cups hang 5 cm below the rim and are filled 1.3 cm above their underside.
        double depthCm = 1.05 * litres / 2.1 + 3.7;
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

    /** Each of two tubs by its own crop. */
    @Test
    void nothing_is_tried_of_tubs_that_last() throws IOException {
        Scenario deep = scenario("lettuce", "30 cm", "42 days");
        assertTrue(OneFilling.of(Forecasts.of(deep, 1).advice()).isEmpty());
    }
}
