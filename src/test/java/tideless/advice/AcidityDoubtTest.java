package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.Series;
import tideless.sim.TraySeries;
import tideless.solution.Acidity;
import tideless.solution.Component;
import tideless.solution.Composition;

/**
 * Which pH is sure. The band is 5.5 to 6.5 and half a unit either way borne; readings are those of
 * the last hour of each day, 23, 47, 71 and so on.
 */
class AcidityDoubtTest {
    private static final Composition BASIC = Rigs.FEED.with(Component.NA, 5.9);
    private static final Composition ACID = Rigs.FEED.with(Component.CL, 1);

    private static boolean isOut(MadeTrace made, boolean isHigh) {
        return AcidityDoubt.isOut(made.first(), isHigh);
    }

    private static boolean isHigh(MadeTrace made) {
        return isOut(made, true);
    }

    private static MadeTrace reading(Composition held, IntToDoubleFunction ph) {
        return new MadeTrace(14).holding(held).with(TraySeries.PH, ph);
    }

    /** Out on days 2 to 4, to one side and not to the other. */
    @Test
    void a_spell_of_three_days_is_sure() {
        MadeTrace high = reading(BASIC, h -> h / 24 < 2 || h / 24 > 4 ? 6 : 8.5);
        assertTrue(isOut(high, true));
        assertFalse(isOut(high, false));
        MadeTrace low = reading(ACID, h -> h / 24 < 2 || h / 24 > 4 ? 6 : 4.4);
        assertTrue(isOut(low, false));
        assertFalse(isOut(low, true));
    }

    @Test
    void two_days_are_borne_and_so_are_two_and_two() {
        assertFalse(isHigh(reading(BASIC, h -> h / 24 >= 2 && h / 24 < 4 ? 8.5 : 6)));
        assertFalse(isHigh(reading(BASIC, h -> h / 24 % 5 < 2 ? 8.5 : 6)));
    }

    /** Two days of three, as between top-ups that bring it back: ten of fourteen. */
    @Test
    void half_of_the_days_of_two_weeks_are_sure_though_no_three_are_together() {
        assertTrue(isHigh(reading(BASIC, h -> h / 24 % 3 < 2 ? 8.5 : 6)));
    }

    /** The last three of fourteen days. */
    @Test
    void a_spell_may_last_to_the_end() {
        assertTrue(isHigh(reading(BASIC, h -> h / 24 >= 11 ? 8.5 : 6)));
        assertFalse(isHigh(reading(BASIC, h -> h / 24 >= 12 ? 8.5 : 6)));
    }

    /** Cut at hour 150: days 4 and 5 are over by then, and day 6 not any more. */
    @Test
    void what_reads_so_after_the_harvest_is_nothing_of_the_crop() {
        MadeTrace late = reading(BASIC, h -> h / 24 >= 4 ? 8.5 : 6);
        assertFalse(isHigh(late.event(Event.Kind.HARVEST, MadeTrace.TRAY, 150)));
        MadeTrace later = reading(BASIC, h -> h / 24 >= 4 ? 8.5 : 6);
        assertTrue(isHigh(later.event(Event.Kind.HARVEST, MadeTrace.TRAY, 168)));
    }

    /** Runs at both ends of the contents tell in place of it, and only of what is likely too. */
    @Test
    void by_more_runs_it_is_the_one_nearest_to_the_band_that_tells() {
        MadeTrace high = reading(ACID, h -> 7.6);
        assertTrue(AcidityDoubt.isOut(high.first(), true, steady(7.01)));
        assertFalse(AcidityDoubt.isOut(high.first(), true, steady(6.99)));
        MadeTrace low = reading(BASIC, h -> 4.4);
        assertTrue(AcidityDoubt.isOut(low.first(), false, steady(4.99)));
        assertFalse(AcidityDoubt.isOut(low.first(), false, steady(5.01)));
        assertFalse(AcidityDoubt.isOut(reading(BASIC, h -> 6).first(), true, steady(7.6)));
    }

    private static Series steady(double ph) {
        double[] hours = new double[14 * 24];
        Arrays.fill(hours, ph);
        return Series.of(hours);
    }

    @ParameterizedTest
    @CsvSource({"7.01, true", "6.99, false"})
    void half_a_unit_above_the_band_is_borne(double ph, boolean told) {
        assertEquals(told, isHigh(reading(BASIC, h -> ph)));
    }

    @ParameterizedTest
    @CsvSource({"4.99, true", "5.01, false"})
    void half_a_unit_below_the_band_is_borne(double ph, boolean told) {
        assertEquals(told, isOut(reading(ACID, h -> ph), false));
    }

    @Test
    void the_dregs_of_a_tray_are_not_read() {
        assertFalse(isHigh(reading(BASIC, h -> 8.5).with(TraySeries.LEVEL, h -> 0.0099)));
        assertTrue(isHigh(reading(BASIC, h -> 8.5).with(TraySeries.LEVEL, h -> 0.0101)));
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
        assertTrue(isHigh(reading(BASIC, h -> 8.5).taking(Component.NO3, h -> 0.99 * acid)));
        assertFalse(isHigh(reading(BASIC, h -> 8.5).taking(Component.NO3, h -> 1.01 * acid)));
        double base = borne(ACID, Component.NA, 5.0) * 0.010 / 0.15;
        MadeTrace low = reading(ACID, h -> 4.4).taking(Component.NO3, h -> 0.99 * base);
        assertTrue(isOut(low, false));
        low.taking(Component.NO3, h -> 1.01 * base);
        assertFalse(isOut(low, false));
    }

    /** Changed at hour 30: what was taken before is gone with the old solution. */
    @Test
    void uptake_counts_from_the_last_change() {
        double acid = borne(BASIC, Component.CL, 7.0) * 0.010 / 0.15;
        IntToDoubleFunction taken = h -> h < 30 ? 5 * acid : 5.9 * acid;
        MadeTrace kept = reading(BASIC, h -> 8.5).taking(Component.NO3, taken);
        assertFalse(isHigh(kept));
        MadeTrace changed =
                reading(BASIC, h -> h < 48 ? 6 : 8.5)
                        .taking(Component.NO3, h -> h < 31 ? 5 * acid : 5.9 * acid);
        assertTrue(isHigh(changed.event(Event.Kind.FLUSH, MadeTrace.TRAY, 30)));
        MadeTrace soon =
                reading(BASIC, h -> h < 48 ? 6 : 8.5)
                        .taking(Component.NO3, h -> h < 31 ? 4.8 * acid : 5.9 * acid);
        assertFalse(isHigh(soon.event(Event.Kind.FLUSH, MadeTrace.TRAY, 30)));
    }
}
