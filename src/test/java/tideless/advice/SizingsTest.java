package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.time.DayOfWeek;
import org.junit.jupiter.api.Test;
import tideless.rig.Visits;
import tideless.sim.Rigs;
import tideless.sim.Trace;
import tideless.sim.TraySeries;

/**
 * How long a reservoir lasts, worked out by hand: 30 L above its outlet; 0.1 L an hour are drawn,
 * from hour 100 on 0.3 L.
 */
class SizingsTest {
    private static final Visits MONDAYS =
            Rigs.onWeekdays(DayOfWeek.MONDAY).withTimeOfDayS(8.5 * 3600);

    private static Sizing of(MadeTrace made) {
        Trace trace = made.trace();
        return Sizings.of(trace, trace, 0, VisitTimes.of(trace.scenario()));
    }

    private static MadeTrace drawn() {
        return new MadeTrace(14).visited(MONDAYS).drawing(h -> h < 100 ? 1e-4 : 3e-4);
    }

    /** From day 3, hour 72, 28 h take 2.8 L; the rest goes at 0.3 L an hour. */
    @Test
    void a_full_reservoir_lasts_until_what_it_gives_is_drawn() {
        Sizing sizing = of(drawn());
        double usable = sizing.usableLitres();
        assertEquals(30, usable, 1e-9);
        assertEquals((28 + (usable - 2.8) / 0.3) / 24, sizing.daysWhenFull().get(3), 1e-9);
        assertEquals((100 + (usable - 10) / 0.3) / 24, sizing.daysWhenFull().get(0), 1e-9);
        assertEquals(usable / 0.3 / 24, sizing.daysWhenFull().get(5), 1e-9);
        assertEquals(1, sizing.daysWhenFull().get(13), 1e-9);
        assertEquals(14, sizing.daysWhenFull().size());
    }

    /**
     * Visits at hours 8.5 and 176.5 and the end, hour 336: 91.5 x 0.1 + 76.5 x 0.3 and 159.5 x 0.3
     * L.
     */
    @Test
    void enough_is_what_the_longest_gap_draws() {
        Sizing sizing = of(drawn());
        assertEquals(159.5 * 0.3, sizing.enoughUsableLitres(), 1e-9);
        assertEquals(7, sizing.longestGapDays(), 1e-12);
    }

    /** 9.15 + 22.95 = 32.1 L of the first week, or at less to begin with 29.7 L, against 30. */
    @Test
    void it_is_outgrown_from_the_visit_from_which_it_does_not_last() {
        assertEquals(Rigs.START, of(drawn()).outgrownFrom());
        MadeTrace later = new MadeTrace(14).visited(MONDAYS).drawing(h -> h < 112 ? 1e-4 : 3e-4);
        assertEquals(Rigs.START.plusDays(7), of(later).outgrownFrom());
        assertNull(of(new MadeTrace(14).visited(MONDAYS).drawing(h -> 1e-5)).outgrownFrom());
    }

    /** What runs over a rim is no thirst: 0.3 L drawn, 0.2 L of it spilt. */
    @Test
    void what_is_spilt_does_not_count() {
        Sizing sizing =
                of(
                        new MadeTrace(14)
                                .visited(MONDAYS)
                                .drawing(h -> 3e-4)
                                .with(TraySeries.SPILL, h -> 2e-4));
        assertEquals(168 * 0.1, sizing.enoughUsableLitres(), 1e-9);
    }
}
