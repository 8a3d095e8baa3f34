package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.sim.Rigs;

/** Rounds at hours 8, 80 and 152 of a run of 200 hours, away from hour 96 to hour 144. */
class VisitTimesTest {
    private static final VisitTimes TIMES =
            new VisitTimes(List.of(8.0, 80.0, 152.0), 200, List.of(new double[] {96, 144}));
    private static final VisitTimes NONE = new VisitTimes(List.of(), 200, List.of());

    @Test
    void gaps_run_from_start_to_end_through_every_round() {
        List<double[]> gaps = TIMES.gaps();
        double[][] expected = {{0, 8}, {8, 80}, {80, 152}, {152, 200}};
        assertEquals(4, gaps.size());
        for (int i = 0; i < 4; i++) {
            assertEquals(expected[i][0], gaps.get(i)[0], 0);
            assertEquals(expected[i][1], gaps.get(i)[1], 0);
        }
        assertEquals(3, TIMES.longestGapDays(), 1e-12);
        assertEquals(1, NONE.gaps().size());
        VisitTimes whole = new VisitTimes(List.of(0.0, 200.0), 200, List.of());
        assertEquals(1, whole.gaps().size());
    }

    @ParameterizedTest
    @CsvSource({
        "7.9, 8, 0, 8",
        "8, 8, 0, 8",
        "8.1, 80, 8, 8",
        "80, 80, 8, 80",
        "152, 152, 80, 152",
        "153, 153, 152, 152"
    })
    void rounds_are_found_before_and_after_an_hour(
            double hour, double next, double before, double upTo) {
        assertEquals(next, TIMES.nextFrom(hour), 0);
        assertEquals(before, TIMES.lastBefore(hour), 0);
        assertEquals(upTo, TIMES.lastUpTo(hour), 0);
    }

    @Test
    void where_nobody_comes_an_hour_stands_for_itself() {
        assertEquals(50, NONE.nextFrom(50), 0);
        assertEquals(0, NONE.lastBefore(50), 0);
        assertEquals(50, NONE.lastUpTo(50), 0);
    }

    @ParameterizedTest
    @CsvSource({"79, false", "80, false", "81, true", "120, true", "152, true", "153, false"})
    void an_absence_lies_between_the_rounds_around_it(double hour, boolean left) {
        assertEquals(left, TIMES.isLeftFor(hour));
    }

    @Test
    void what_is_left_is_counted_from_the_round_before_or_the_start() {
        var trace = new MadeTrace(14).trace();
        Facts later = TIMES.leftBefore(100, trace);
        assertEquals(20, later.get(Quantity.HELD_WATER), 0);
        assertEquals(Rigs.START.atStartOfDay().plusHours(80), later.on());
        Facts first = TIMES.leftBefore(8, trace);
        assertEquals(8, first.get(Quantity.HELD_WATER), 0);
        assertNull(first.on());
        LocalDateTime second = TIMES.leftBefore(9, trace).on();
        assertEquals(Rigs.START.atTime(8, 0), second);
    }
}
