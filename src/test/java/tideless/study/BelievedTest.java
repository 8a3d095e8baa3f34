package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.physics.Time;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.VesselId;

class BelievedTest {
    private static final VesselId SHELF = VesselId.reservoir("shelf");

    private static LogEntry.Reading level(int day, double metres) {
        return new LogEntry.Reading(
                day * Time.DAY_S, SHELF, LogEntry.Quantity.LEVEL, metres, true, day);
    }

    private static double deviation(double before, double read, double foretold, double wanders) {
        LogEntry.Reading first = level(2, before);
        LogEntry.Reading second = level(6, read);
        Scenario scenario = LoggedBench.stated().withLog(new Log(List.of(first, second)));
        return Believed.deviation(scenario, second, foretold, wanders).orElseThrow();
    }

    /** Else days on which little was drunk would count for more than thirsty ones. */
    @Test
    void how_far_a_level_may_lie_off_hangs_on_what_was_foretold_and_not_on_what_was_read() {
        assertThat(deviation(0.2, 0.18, 0.15, 1)).isEqualTo(deviation(0.2, 0.11, 0.15, 1));
        // A ruler of 2 mm twice, and 0.20 of a fall of 50 mm over the root of four days.
        assertThat(deviation(0.2, 0.15, 0.15, 1))
                .isCloseTo(Math.sqrt(2 * 0.002 * 0.002 + 0.005 * 0.005), within(1e-12));
        assertThat(deviation(0.2, 0.15, 0.15, 0.5))
                .isCloseTo(Math.sqrt(2 * 0.002 * 0.002 + 0.0025 * 0.0025), within(1e-12));
    }

    /** Ten litres by a jug of 5 % are half a litre more or less, 3 mm in 0.1575 m2. */
    @Test
    void what_was_poured_in_since_is_known_as_well_as_its_jug() {
        LogEntry.Reading first = level(2, 0.1);
        LogEntry.Reading second = level(6, 0.16);
        LogEntry poured = new LogEntry.Poured(4 * Time.DAY_S, SHELF, 0.01, false);
        Scenario scenario = LoggedBench.stated().withLog(new Log(List.of(first, poured, second)));
        double foretold = 0.1 + 0.01 / 0.1575; // nothing drunk, so that no day wanders
        assertThat(Believed.deviation(scenario, second, foretold, 1).orElseThrow())
                .isCloseTo(Math.hypot(Math.sqrt(2) * 0.002, 0.0005 / 0.1575), within(1e-9));
    }

    @Test
    void nothing_is_learned_from_the_ph_nor_from_what_is_kept_out() {
        assertThat(LogEntry.Quantity.PH.teaches()).isFalse();
        LogEntry.Reading out =
                new LogEntry.Reading(0, SHELF, LogEntry.Quantity.LEVEL, 0.1, false, 1);
        assertThat(Believed.teaches(out)).isFalse();
        assertThat(Believed.teaches(level(1, 0.1))).isTrue();
    }
}
