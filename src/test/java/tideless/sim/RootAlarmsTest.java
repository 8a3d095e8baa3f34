package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.rig.VesselId;

/**
 * Salt that rises at once, salt on seedlings and want of air, just before and just past a limit.
 */
class RootAlarmsTest {
    private static final double USED_TO = 1.5;
    private static final double HOUR_S = 3600;

    private final EventLog log = new EventLog();
    private final RootAlarms alarms = new RootAlarms(VesselId.tray("t"), USED_TO);

    private List<Event.Kind> told() {
        return log.inOrder().stream().map(Event::kind).toList();
    }

    @Test
    void a_rise_of_five_at_once_is_borne_and_a_hundredth_more_wilts() {
        assertFalse(alarms.isShockedBy(USED_TO + 5, false, HOUR_S, 1e-6, log));
        assertEquals(List.of(), told());
        assertTrue(alarms.isShockedBy(USED_TO + 5.01, false, 2 * HOUR_S, 1e-6, log));
        assertEquals(List.of(Event.Kind.SALT_WILTED), told());
        assertEquals(2 * HOUR_S, log.inOrder().get(0).atS());
    }

    @Test
    void what_is_strong_because_it_is_little_is_told_so_from_its_beginning() {
        assertTrue(alarms.isShockedBy(9, true, HOUR_S, HOUR_S, log));
        assertTrue(alarms.isShockedBy(9, false, 2 * HOUR_S, HOUR_S, log));
        assertFalse(alarms.isShockedBy(USED_TO, true, 3 * HOUR_S, HOUR_S, log));
        assertTrue(alarms.isShockedBy(9, false, 4 * HOUR_S, HOUR_S, log));
        assertEquals(
                List.of(Event.DRUNK_DOWN, "", ""),
                log.inOrder().stream().map(Event::detail).toList());
    }

    @Test
    void one_spell_of_wilting_is_told_once_and_the_next_anew() {
        for (int hour = 1; hour <= 3; hour++) {
            assertTrue(alarms.isShockedBy(9, false, hour * HOUR_S, HOUR_S, log));
        }
        assertFalse(alarms.isShockedBy(USED_TO, false, 4 * HOUR_S, HOUR_S, log));
        assertTrue(alarms.isShockedBy(9, false, 5 * HOUR_S, HOUR_S, log));
        assertEquals(
                List.of(Event.Kind.SALT_WILTED, Event.Kind.SALT_BORNE, Event.Kind.SALT_WILTED),
                told());
        assertEquals(4 * HOUR_S, log.inOrder().get(1).atS());
    }

    // 1.5 towards 8.5 with a time of two days: 8.5 - 7 exp(-t/2d) passes 3.5 after 2d ln(7/5),
    // 16.15 h; from then on 8.5 is no more than 5 above what they are used to.
    @Test
    void roots_get_used_to_a_strength_of_seven_more_within_seventeen_hours() {
        int wilted = 0;
        for (int hour = 1; hour <= 48; hour++) {
            wilted += alarms.isShockedBy(USED_TO + 7, false, hour * HOUR_S, HOUR_S, log) ? 1 : 0;
        }
        assertEquals(17, wilted);
    }

    @Test
    void the_same_rise_within_a_week_wilts_nobody() {
        for (int hour = 1; hour <= 168; hour++) {
            double risen = USED_TO + 7 * hour / 168.0;
            assertFalse(alarms.isShockedBy(risen, false, hour * HOUR_S, HOUR_S, log));
        }
        assertEquals(List.of(), told());
    }

    @Test
    void eight_is_the_death_of_seedlings_of_ten_days_and_of_none_older() {
        assertFalse(RootAlarms.killsSeedlings(1, 8));
        assertTrue(RootAlarms.killsSeedlings(1, 8.01));
        assertTrue(RootAlarms.killsSeedlings(10, 8.01));
        assertFalse(RootAlarms.killsSeedlings(11, 20));
    }

    @Test
    void a_tenth_of_growth_lost_for_want_of_oxygen_is_borne_and_more_is_told_once() {
        alarms.endDay(0.90, 1, log);
        assertEquals(List.of(), told());
        alarms.endDay(0.899, 2, log);
        alarms.endDay(0.5, 3, log);
        assertEquals(List.of(Event.Kind.SHORT_OF_AIR), told());
        assertEquals(2, log.inOrder().get(0).atS());
    }

    @Test
    void air_is_enough_again_above_nineteen_twentieths_and_not_at_it() {
        alarms.endDay(0.8, 1, log);
        alarms.endDay(0.95, 2, log);
        assertEquals(List.of(Event.Kind.SHORT_OF_AIR), told());
        alarms.endDay(0.951, 3, log);
        alarms.endDay(0.94, 4, log);
        assertEquals(List.of(Event.Kind.SHORT_OF_AIR, Event.Kind.AIR_ENOUGH), told());
    }
}
