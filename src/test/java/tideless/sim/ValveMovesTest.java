package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.TestValve;
import tideless.rig.Tray;

/**
 * A valve that is set to another level in the course of a run: 0.2 m2, 4 L a day, so that the level
 * falls by 20 mm a day while the valve is shut; set to 50 mm, to 30 mm at 08:00 on day 2, to 60 mm
 * at 08:00 on day 5.
 */
class ValveMovesTest {
    private static final int LOWERED_H = 2 * 24 + 8;
    private static final int RAISED_H = 5 * 24 + 8;

    private static final Filling.ByValve MOVED =
            new TestValve()
                    .moves(
                            List.of(
                                    new Filling.Move(Rigs.START.plusDays(2), 0.03),
                                    new Filling.Move(Rigs.START.plusDays(5), 0.06)))
                    .make();

    private static Trace run(Filling.ByValve valve, double stepS) {
        Tray tray = Rigs.tray("t", valve, Rigs.drinking(4), 0);
        Scenario scenario =
                Rigs.scenario(
                        7,
                        stepS,
                        List.of(Rigs.reservoir(0.2, 0.3, Reservoir.Refill.When.NEVER)),
                        List.of(tray),
                        Rigs.onWeekdays(DayOfWeek.values()));
        return Simulation.run(scenario);
    }

    /**
     * Lowered, the valve is shut until the plants have drunk down to the new band; raised, it
     * stands wide open until the tray is full. The sample of hour h is taken at its end.
     */
    @Test
    void the_level_follows_the_setting_from_the_visit_on() {
        Trace trace = run(MOVED, 600);
        Series level = trace.trays().get(0).levelM();
        Series in = trace.trays().get(0).inflowM3();
        double held = level.at(LOWERED_H - 1);
        assertEquals(0.05, held, 0.0005); // a twentieth of its opening passes 4 L a day
        assertEquals(0, in.sum(LOWERED_H, LOWERED_H + 20), 0);
        for (int h = 1; h <= 20; h++) {
            assertEquals(held - h * 0.02 / 24, level.at(LOWERED_H - 1 + h), 1e-12);
        }
        // The same drop below the setting as before: opening and flow are the same but for the
        // head.
        assertEquals(0.03, level.at(RAISED_H - 1), 0.0005);
        assertTrue(level.at(RAISED_H) > level.at(RAISED_H - 1) + 0.005, "it fills at once");
        assertEquals(0.06, level.at(RAISED_H + 24), 0.0005);
    }

    @Test
    void each_move_is_told_at_the_hour_of_the_visit() {
        List<Event> moves =
                run(MOVED, 600).events().stream()
                        .filter(e -> e.kind() == Event.Kind.VALVE_MOVED)
                        .toList();
        assertEquals(2, moves.size());
        assertEquals(LOWERED_H * 3600.0, moves.get(0).atS());
        assertEquals("30.0 mm", moves.get(0).detail());
        assertEquals(RAISED_H * 3600.0, moves.get(1).atS());
    }

    /**
     * However the run is cut into steps, levels agree to 1e-7 m: 2e-6 of the tray, of which a piece
     * may err by 2e-8 and some dozens lie in the filling.
     */
    @ParameterizedTest
    @ValueSource(doubles = {60, 137, 3600, 21_600})
    void the_moves_do_not_depend_on_the_step(double stepS) {
        for (boolean snaps : new boolean[] {false, true}) {
            Filling.ByValve valve = TestValve.of(MOVED).snaps(snaps).make();
            Series fine = run(valve, 600).trays().get(0).levelM();
            Series other = run(valve, stepS).trays().get(0).levelM();
            for (int h = 0; h < fine.size(); h++) {
                assertEquals(fine.at(h), other.at(h), 1e-7, "hour " + h + " snaps " + snaps);
            }
        }
    }

    @Test
    void moving_a_valve_neither_makes_nor_loses_water_or_salts() {
        Trace trace = run(MOVED, 600);
        assertTrue(trace.water().relativeResidual() < 1e-12);
        trace.components()
                .forEach(
                        ledger -> assertTrue(ledger.relativeResidual() < 1e-12, ledger.toString()));
    }

    /** A snapping valve stands open below the band and stays so up to the setting, moved or not. */
    @Test
    void a_snapping_valve_that_is_raised_fills_to_its_new_setting() {
        Trace trace = run(TestValve.of(MOVED).snaps(true).make(), 600);
        Series level = trace.trays().get(0).levelM();
        double most = 0;
        for (int h = RAISED_H; h < trace.hours(); h++) {
            most = Math.max(most, level.at(h));
        }
        assertEquals(0.06, most, 0.001);
    }

    /** A fifth of 30 mm over 0.2 m2 are 1.2 L; of 50 mm they would be 2. */
    @Test
    void what_a_tray_is_meant_to_hold_follows_its_valve() {
        Tray tray = Rigs.tray("t", MOVED, Rigs.drinking(4), 0);
        assertTrue(FlushRule.mayChange(tray, Rigs.START.plusDays(2), 0.00121));
        assertTrue(!FlushRule.mayChange(tray, Rigs.START.plusDays(1), 0.00199));
        assertTrue(!FlushRule.mayChange(tray, Rigs.START.plusDays(2), 0.00119));
    }
}
