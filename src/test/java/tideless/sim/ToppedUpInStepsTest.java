package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;
import tideless.study.ObeyingRigs;

/** A chilli in a bucket that falls far while nobody is there, and is topped up again. */
class ToppedUpInStepsTest {
    private static final Path BUCKET = ObeyingRigs.named("18-chilli-weekends");

    /** What a level is off by within an hour of drinking, m. */
    private static final double HOUR_M = 0.003;

    private static Trace run(boolean inSteps) {
        Reading reading =
                ChangedScenario.read(
                        BUCKET,
                        List.of(
                                new ChangedScenario.Change(
                                        "tray.bucket.hand.in_steps", Boolean.toString(inSteps)),
                                // Enough to come through the holiday.
                                new ChangedScenario.Change("tray.bucket.diameter", "60 cm"),
                                new ChangedScenario.Change("tray.bucket.floor_diameter", "60 cm"),
                                new ChangedScenario.Change("tray.bucket.ground", "0.3 m2")));
        return Simulation.run(((Reading.Good) reading).scenario());
    }

    @Test
    void no_step_is_higher_than_roots_in_air_bear_and_none_drowns() {
        Trace trace = run(true);
        TrayTrace bucket = trace.trays().get(0);
        assertTrue(trace.events().stream().noneMatch(e -> e.kind() == Event.Kind.DROWNED));
        int steps = 0;
        for (Event event : trace.events()) {
            if (event.kind() == Event.Kind.TOP_UP) {
                int hour = trace.sampleAt(event.atS());
                double borneM = bucket.usedToLevelM().at(hour - 1);
                assertTrue(bucket.levelM().at(hour + 1) <= borneM + HOUR_M, "hour " + hour);
                steps++;
            }
        }
        assertTrue(steps > 3);
    }

    @Test
    void at_once_it_rises_further_and_they_do() {
        Trace trace = run(false);
        assertFalse(trace.events().stream().noneMatch(e -> e.kind() == Event.Kind.DROWNED));
        assertEquals(
                0,
                trace.events().stream().filter(e -> e.kind() == Event.Kind.DIED).count(),
                "it is lost for want of water: the test would show nothing");
    }
}
