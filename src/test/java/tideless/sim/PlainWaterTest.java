package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.solution.Component;

/**
 * Source water in place of feed, by dose and date: a tray that drinks 3 L a day, looked at daily at
 * 08:00. The feed holds 7 mol/m3 of potassium, the source water none.
 */
class PlainWaterTest {
    private static final double K_MOL_PER_M3 = 7;

    private static Trace byHand(Pouring with) {
        Tray tray = Rigs.tray("t", new Filling.ByHand(0.05, List.of(), with), Rigs.drinking(3), 0);
        return run(List.of(), tray);
    }

    private static Trace byReservoir(Pouring with) {
        Reservoir plain = Rigs.reservoir(0.1, 0.3, Reservoir.Refill.When.EVERY_VISIT);
        Reservoir reservoir =
                plain.withRefill(
                        new Reservoir.Refill(Reservoir.Refill.When.EVERY_VISIT, 0.5, with));
        return run(List.of(reservoir), Rigs.tray("t", Rigs.valve(), Rigs.drinking(3), 0));
    }

    private static Trace run(List<Reservoir> reservoirs, Tray tray) {
        Scenario scenario =
                Rigs.scenario(
                        8, 600, reservoirs, List.of(tray), Rigs.onWeekdays(DayOfWeek.values()));
        return Simulation.run(scenario);
    }

    /** 7 L from day 3 on, and half a litre from day 6 on. */
    private static Pouring doses() {
        return new Pouring(
                false,
                List.of(
                        new Pouring.Dose(Rigs.START.plusDays(3), 0.007),
                        new Pouring.Dose(Rigs.START.plusDays(6), 0.0005)));
    }

    private static List<Double> waterLitres(Trace trace, Event.Kind kind) {
        return trace.events().stream()
                .filter(e -> e.kind() == kind)
                .map(e -> Math.round(e.waterM3() * 1e9) / 1e6)
                .toList();
    }

    /** Day 0 replaces what eight hours have drunk; every other day 3 L, of which the dose first. */
    @Test
    void a_dose_is_poured_from_its_day_on_until_it_is_used_up() {
        assertEquals(
                List.of(0.0, 0.0, 0.0, 3.0, 3.0, 1.0, 0.5, 0.0),
                waterLitres(byHand(doses()), Event.Kind.TOP_UP));
        double water =
                waterLitres(byReservoir(doses()), Event.Kind.REFILL).stream()
                        .mapToDouble(litres -> litres)
                        .sum();
        assertEquals(7.5, water, 1e-5);
    }

    @Test
    void the_salts_that_come_in_are_those_of_the_feed_in_the_mixture() {
        for (Trace trace : List.of(byHand(doses()), byReservoir(doses()))) {
            double poured = came(trace.water());
            double potassium = came(trace.components().get(Component.K.ordinal()));
            assertEquals(K_MOL_PER_M3 * (poured - 0.0075), potassium, 1e-12);
        }
    }

    private static double came(Ledger ledger) {
        return ledger.in().stream()
                .filter(
                        e ->
                                e.what().equals("hand top-ups")
                                        || e.what().equals("reservoir refills"))
                .mapToDouble(Ledger.Entry::amount)
                .sum();
    }

    @Test
    void with_water_alone_no_potassium_comes_in_after_the_first_filling() {
        for (Trace trace : List.of(byHand(Pouring.WATER), byReservoir(Pouring.WATER))) {
            assertEquals(0, came(trace.components().get(Component.K.ordinal())));
            assertTrue(came(trace.water()) > 0.02);
        }
    }

    @Test
    void water_in_place_of_feed_keeps_the_ledgers() {
        for (Trace trace : List.of(byHand(doses()), byReservoir(doses()))) {
            assertTrue(trace.water().relativeResidual() < 1e-12);
            trace.components().forEach(l -> assertTrue(l.relativeResidual() < 1e-12, l.toString()));
        }
    }

    @Test
    void what_is_made_of_feed_leaves_the_water_out() {
        double allFeed = byHand(Pouring.FEED).feedM3();
        assertEquals(allFeed - 0.0075, byHand(doses()).feedM3(), 1e-9);
    }
}
