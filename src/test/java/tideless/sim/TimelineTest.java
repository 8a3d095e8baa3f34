package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import tideless.physics.Time;
import tideless.rig.Numerics;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

class TimelineTest {
    private static final Scenario BENCH =
            ((Reading.Good) ScenarioReader.read(Path.of("scenarios/science-room-bench.toml")))
                    .scenario()
                    .withNumerics(new Numerics(3 * Time.HOUR_S));

    // A lamp, a dawn, a visit or a midnight inside a step would be missed.
    @Test
    void a_quiet_run_may_pass_nothing_but_instants_of_the_grid() {
        Timeline timeline = Timeline.of(BENCH, false);
        int passes = 0;
        for (int i = 0; i < timeline.instantS.length; i++) {
            double atS = timeline.instantS[i];
            double ofDayS = atS % Time.DAY_S;
            boolean switches = ofDayS == 0 || timeline.visit[i];
            for (Tray tray : BENCH.trays()) {
                switches |= ofDayS == tray.lamp().onS() || ofDayS == tray.lamp().offS();
            }
            if (switches) {
                assertFalse(timeline.mayPass[i], "at " + atS);
            }
            passes += timeline.mayPass[i] ? 1 : 0;
        }
        assertTrue(passes > 4 * BENCH.days());
        assertFalse(timeline.mayPass[timeline.steps]);
    }

    // A trace keeps every hour, and a run at ten minutes is the run that is told.
    @Test
    void a_trace_and_a_run_by_minutes_pass_nothing() {
        for (boolean mayPass : Timeline.of(BENCH.withNumerics(new Numerics(600)), false).mayPass) {
            assertFalse(mayPass);
        }
        Timeline hourly = Timeline.of(BENCH, true);
        for (int i = 0; i < hourly.instantS.length; i++) {
            assertFalse(hourly.mayPass[i]);
        }
        assertEquals(hourly.steps, Timeline.of(BENCH).steps);
    }
}
