package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.solution.Acidity;
import tideless.solution.Component;
import tideless.solution.Composition;

/**
 * Which pH is told. The band is 5.5 to 6.5 and half a unit either way borne; readings are those of
 * the last hour of each day, 23, 47, 71 and so on.
 */
class AcidityDoubtTest {
    private static final Composition BASIC = Rigs.FEED.with(Component.NA, 5.9);
    private static final Composition ACID = Rigs.FEED.with(Component.CL, 1);

    private static AcidityDoubt.Finding of(MadeTrace made) {
        Trace trace = made.trace();
        return AcidityDoubt.of(
                new TrayCase(
                        trace,
                        trace.plantings(trace.trays().get(0)).get(0),
                        VisitTimes.of(trace.scenario())));
    }

    private static MadeTrace reading(Composition held, IntToDoubleFunction ph) {
        return new MadeTrace(14).holding(held).with(TraySeries.PH, ph);
    }

    /** Out on days 2 to 4, worst on day 3. */
    @Test
    void a_spell_of_three_days_is_told_with_its_ends_and_its_worst() {
        AcidityDoubt.Finding high =
                of(reading(BASIC, h -> h / 24 < 2 || h / 24 > 4 ? 6 : h / 24 == 3 ? 8.9 : 8.5));
        assertTrue(high.isHigh());
        assertEquals(71, high.fromHour());
        assertEquals(119, high.untilHour());
        assertEquals(8.9, high.worst(), 0);
        AcidityDoubt.Finding low =
                of(reading(ACID, h -> h / 24 < 2 || h / 24 > 4 ? 6 : h / 24 == 3 ? 3.9 : 4.4));
        assertFalse(low.isHigh());
        assertEquals(71, low.fromHour());
        assertEquals(119, low.untilHour());
        assertEquals(3.9, low.worst(), 0);
    }

    @Test
    void two_days_are_borne_and_so_are_two_and_two() {
        assertNull(of(reading(BASIC, h -> h / 24 >= 2 && h / 24 < 4 ? 8.5 : 6)));
        assertNull(of(reading(BASIC, h -> h / 24 % 5 < 2 ? 8.5 : 6)));
    }

    /**
     * Two days of three, as between top-ups that bring it back: ten of fourteen, from the first.
     */
    @Test
    void half_of_the_days_of_two_weeks_are_told_though_no_three_are_together() {
        AcidityDoubt.Finding saw = of(reading(BASIC, h -> h / 24 % 3 < 2 ? 8.5 : 6));
        assertEquals(23, saw.fromHour());
        assertEquals(335, saw.untilHour());
        assertEquals(10, saw.days());
    }

    /** Out on days 2 to 4, and on day 8 again: as many days, from the first to the last. */
    @Test
    void later_days_out_to_the_same_side_are_counted_with_the_spell() {
        IntToDoubleFunction ph = h -> h / 24 >= 2 && h / 24 <= 4 ? 8.5 : h / 24 == 8 ? 8.7 : 6;
        AcidityDoubt.Finding high = of(reading(BASIC, ph));
        assertEquals(71, high.fromHour());
        assertEquals(215, high.untilHour());
        assertEquals(4, high.days());
        assertEquals(8.7, high.worst(), 0);
    }

    /** The last three of fourteen days: hours 287, 311 and 335. */
    @Test
    void a_spell_may_last_to_the_end() {
        AcidityDoubt.Finding end = of(reading(BASIC, h -> h / 24 >= 11 ? 8.5 : 6));
        assertEquals(287, end.fromHour());
        assertEquals(335, end.untilHour());
        assertNull(of(reading(BASIC, h -> h / 24 >= 12 ? 8.5 : 6)));
    }

    /** Cut at hour 150: days 4 and 5 are over by then, and day 6 not any more. */
    @Test
    void what_reads_so_after_the_harvest_is_nothing_of_the_crop() {
        MadeTrace late = reading(BASIC, h -> h / 24 >= 4 ? 8.5 : 6);
        assertNull(of(late.event(Event.Kind.HARVEST, MadeTrace.TRAY, 150)));
        MadeTrace later = reading(BASIC, h -> h / 24 >= 4 ? 8.5 : 6);
        AcidityDoubt.Finding told = of(later.event(Event.Kind.HARVEST, MadeTrace.TRAY, 168));
        assertEquals(119, told.fromHour());
        assertEquals(167, told.untilHour());
    }

    @ParameterizedTest
    @CsvSource({"7.01, true", "6.99, false"})
    void half_a_unit_above_the_band_is_borne(double ph, boolean told) {
        assertEquals(told, of(reading(BASIC, h -> ph)) != null);
    }

    @ParameterizedTest
    @CsvSource({"4.99, true", "5.01, false"})
    void half_a_unit_below_the_band_is_borne(double ph, boolean told) {
        assertEquals(told, of(reading(ACID, h -> ph)) != null);
    }

    @Test
    void the_dregs_of_a_tray_are_not_read() {
        assertNull(of(reading(BASIC, h -> 8.5).with(TraySeries.LEVEL, h -> 0.0099)));
        assertNotNull(of(reading(BASIC, h -> 8.5).with(TraySeries.LEVEL, h -> 0.0101)));
    }

    /** So much acid or base, mol/m3, brings the solution just to the borne end of the band. */
    private static double borne(Composition held, Component by, double ph) {
        double low = 0;
        double high = 8;
        for (int i = 0; i < 40; i++) {
            double middle = 0.5 * (low + high);
            double reads = Acidity.phInAir(held.with(by, held.molPerM3(by) + middle), 20, 420);
            boolean isOut = by == Component.CL ? reads > ph : reads < ph;
            low = isOut ? middle : low;
            high = isOut ? high : middle;
        }
        return low;
    }

    /** Of the nitrate taken, in 10 L, 15 % may be acid or base either way. */
    @Test
    void what_the_doubt_of_uptake_brings_back_is_not_told() {
        double acid = borne(BASIC, Component.CL, 7.0) * 0.010 / 0.15;
        assertTrue(acid > 0.01, "" + acid);
        assertNotNull(of(reading(BASIC, h -> 8.5).taking(Component.NO3, h -> 0.99 * acid)));
        assertNull(of(reading(BASIC, h -> 8.5).taking(Component.NO3, h -> 1.01 * acid)));
        double base = borne(ACID, Component.NA, 5.0) * 0.010 / 0.15;
        assertNotNull(of(reading(ACID, h -> 4.4).taking(Component.NO3, h -> 0.99 * base)));
        assertNull(of(reading(ACID, h -> 4.4).taking(Component.NO3, h -> 1.01 * base)));
    }

    /** Changed at hour 30: what was taken before is gone with the old solution. */
    @Test
    void uptake_counts_from_the_last_change() {
        double acid = borne(BASIC, Component.CL, 7.0) * 0.010 / 0.15;
        IntToDoubleFunction taken = h -> h < 30 ? 5 * acid : 5.9 * acid;
        MadeTrace kept = reading(BASIC, h -> 8.5).taking(Component.NO3, taken);
        assertNull(of(kept));
        MadeTrace changed =
                reading(BASIC, h -> h < 48 ? 6 : 8.5)
                        .taking(Component.NO3, h -> h < 31 ? 5 * acid : 5.9 * acid);
        assertNotNull(of(changed.event(Event.Kind.FLUSH, MadeTrace.TRAY, 30)));
        MadeTrace soon =
                reading(BASIC, h -> h < 48 ? 6 : 8.5)
                        .taking(Component.NO3, h -> h < 31 ? 4.8 * acid : 5.9 * acid);
        assertNull(of(soon.event(Event.Kind.FLUSH, MadeTrace.TRAY, 30)));
    }
}
