package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.sim.Event;
import tideless.sim.TraySeries;

/**
 * Which days of a likely pH are told. The band is 5.5 to 6.5 and half a unit either way borne;
 * readings are those of the last hour of each day, 23, 47, 71 and so on.
 */
class AcidityCourseTest {
    private static Optional<AcidityCourse.Spell> of(boolean isHigh, IntToDoubleFunction ph) {
        return AcidityCourse.of(new MadeTrace(21).with(TraySeries.PH, ph).first(), isHigh);
    }

    /** Above the band from day 2 on, far above it on days 4 to 10, back within it on day 13. */
    private static double hill(int hour) {
        int day = hour / 24;
        double far = day == 8 ? 7.4 : 7.2;
        return day < 2 || day >= 13 ? 6 : day < 4 || day > 10 ? 6.7 : far;
    }

    @Test
    void it_begins_where_the_band_is_left_and_ends_where_it_is_reached_again() {
        AcidityCourse.Spell high = of(true, AcidityCourseTest::hill).orElseThrow();
        assertEquals(new AcidityCourse.Spell(true, 119, 71, 311, 11, 7.4), high);
        AcidityCourse.Spell low = of(false, h -> 12 - hill(h)).orElseThrow();
        assertEquals(4.6, low.worst(), 1e-12);
        assertEquals(71, low.fromHour());
        assertEquals(311, low.untilHour());
        assertTrue(of(false, AcidityCourseTest::hill).isEmpty());
        assertTrue(of(true, h -> 12 - hill(h)).isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"7.01, true", "6.99, false"})
    void half_a_unit_is_borne(double ph, boolean told) {
        assertEquals(told, of(true, h -> ph).isPresent());
        assertEquals(told, of(false, h -> 12 - ph).isPresent());
    }

    @ParameterizedTest
    @CsvSource({"7, true", "6, false"})
    void a_week_is_told_and_six_days_are_borne(int days, boolean told) {
        assertEquals(told, of(true, h -> h / 24 < days ? 7.2 : 6).isPresent());
    }

    /**
     * Two days of four, as between top-ups: seven of two weeks, eleven in all; and one of three.
     */
    @Test
    void a_saw_tooth_is_told_by_half_of_the_days_of_two_weeks() {
        AcidityCourse.Spell saw = of(true, h -> h / 24 % 4 < 2 ? 7.2 : 6).orElseThrow();
        assertEquals(23, saw.fromHour());
        assertEquals(11, saw.days());
        assertEquals(503, saw.untilHour());
        assertTrue(of(true, h -> h / 24 % 3 < 1 ? 7.2 : 6).isEmpty());
    }

    /** A day far out after the spell counts with it, and the days within the band do not. */
    @Test
    void later_days_are_counted_with_the_spell() {
        AcidityCourse.Spell high =
                of(true, h -> h / 24 < 8 || h / 24 == 15 ? 7.2 : 6).orElseThrow();
        assertEquals(383, high.untilHour());
        assertEquals(9, high.days());
    }

    @Test
    void neither_dregs_nor_what_stands_there_after_the_harvest_are_read() {
        MadeTrace low = new MadeTrace(21).with(TraySeries.PH, h -> 7.2);
        assertTrue(AcidityCourse.of(low.first(), true).isPresent());
        low.with(TraySeries.LEVEL, h -> 0.0099);
        assertTrue(AcidityCourse.of(low.first(), true).isEmpty());
        MadeTrace cut = new MadeTrace(21).with(TraySeries.PH, h -> h / 24 < 3 ? 6 : 7.2);
        cut.event(Event.Kind.HARVEST, MadeTrace.TRAY, 9 * 24);
        assertTrue(AcidityCourse.of(cut.first(), true).isEmpty());
    }
}
