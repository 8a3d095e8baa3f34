package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.physics.Time;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/**
 * A young tomato in a bucket whose mark lies 9 cm below the cup: whoever comes wets the cup until
 * roots hang into the solution, and leaves air above them from then on.
 */
class YoungPlantsToppedUpTest {
    private static final double MARK_M = 0.11;

    /** What a level falls within the hour after a filling, m. */
    private static final double HOUR_M = 0.002;

    /** Its roots hang down to the mark from the eighth day on. */
    private static final double YOUNG_S = 7 * Time.DAY_S;

    private static Trace run(String startLevel, String days) {
        String text =
                """
                title = "A young tomato"
                start = 2027-06-01
                length = "40 days"
                [climate]
                kind = "room"
                day_temperature = "24 degC"
                night_temperature = "18 degC"
                day_humidity = "60 %%"
                night_humidity = "75 %%"
                window_light = "25 mol/m2/day"
                [feed]
                recipe = "tomato-closed"
                ec = "2 mS/cm"
                [tray.bucket]
                diameter = "25 cm"
                depth = "30 cm"
                cup_bottom = "20 cm"
                start_level = "%s"
                crop = "tomato"
                plants = 1
                ground = "0.4 m2"
                [tray.bucket.hand]
                to = "11 cm"
                [visits]
                days = %s
                """
                        .formatted(startLevel, days);
        Reading reading = ScenarioReader.read("bucket.toml", new FilesInMemory(text));
        return Simulation.run(assertInstanceOf(Reading.Good.class, reading).scenario());
    }

    private static List<Double> filledTo(Trace trace, boolean young) {
        TrayTrace bucket = trace.trays().get(0);
        return trace.events().stream()
                .filter(e -> e.kind() == Event.Kind.TOP_UP && e.atS() <= YOUNG_S == young)
                .map(e -> bucket.levelM().at(trace.sampleAt(e.atS()) + 1))
                .toList();
    }

    private static boolean strandedYoung(Trace trace) {
        return trace.events().stream()
                .anyMatch(e -> e.kind() == Event.Kind.STRANDED && e.atS() <= YOUNG_S);
    }

    @Test
    void cups_are_kept_wet_until_roots_hang_and_never_again() {
        Trace trace = run("21 cm", "\"daily\"");
        List<Double> young = filledTo(trace, true);
        assertFalse(young.isEmpty());
        young.forEach(level -> assertEquals(0.21, level, HOUR_M));
        assertFalse(strandedYoung(trace));
        List<Double> later = filledTo(trace, false);
        assertFalse(later.isEmpty());
        later.forEach(level -> assertTrue(level <= MARK_M + HOUR_M, "filled to " + level));
    }

    @Test
    void who_comes_seldom_fills_up_though_cups_are_wet_still() {
        // On Thursday some 10 mm of the cup are wet, and nobody comes before Monday.
        assertFalse(filledTo(run("22 cm", "[\"mon\", \"thu\"]"), true).isEmpty());
    }
}
