package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir.Refill.When;
import tideless.rig.Scenario;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.Meter;

/** Whole runs of small rigs against closed forms. */
class SimulationTest {
    private static final double DAY_S = 86400;

    private static Scenario valveRig(int days, double stepS, double litresPerDay, double openM2) {
        return Rigs.scenario(
                days,
                stepS,
                List.of(Rigs.reservoir(0.1, 0.32, When.NEVER)),
                List.of(Rigs.tray("tray", Rigs.valve(), Rigs.drinking(litresPerDay), openM2)),
                Rigs.nobody());
    }

    private static double firstAtS(Trace trace, Event.Kind kind) {
        return trace.events().stream()
                .filter(event -> event.kind() == kind)
                .findFirst()
                .orElseThrow()
                .atS();
    }

    /** Days = usable / thirst: 30 L above the outlet and 1.8 L a day are 16.667 days. */
    @ParameterizedTest
    @ValueSource(doubles = {60, 600, 3600})
    void a_reservoir_under_a_constant_thirst_lasts_as_long_as_its_volume_says(double stepS) {
        Trace trace = Simulation.run(valveRig(25, stepS, 1.8, 0));
        double days = firstAtS(trace, Event.Kind.OUTLET_UNCOVERED) / DAY_S;
        // 0.1 %: the tray also gives up the little by which a throttling valve hangs below its
        // setting, some 5 mL of 30 L.
        assertEquals(30 / 1.8, days, 30 / 1.8 * 1e-3);
    }

    @Test
    void a_reservoir_that_is_refilled_when_empty_is_refilled_every_so_many_days() {
        Scenario scenario =
                Rigs.scenario(
                        60,
                        600,
                        List.of(Rigs.reservoir(0.1, 0.32, When.WHEN_EMPTY)),
                        List.of(Rigs.tray("tray", Rigs.valve(), Rigs.drinking(1.8), 0)),
                        Rigs.nobody());
        List<Event> refills =
                Simulation.run(scenario).events().stream()
                        .filter(event -> event.kind() == Event.Kind.REFILL)
                        .toList();
        assertEquals(3, refills.size());
        assertEquals(
                30 / 1.8, (refills.get(2).atS() - refills.get(1).atS()) / DAY_S, 30 / 1.8 * 1e-3);
        assertEquals(0.030, refills.get(1).volumeM3(), 1e-9);
    }

    /**
     * The seat stands 70 cm above the bench and the reservoir's floor 60 cm: of 30 L above the
     * outlet 22 feed. Every refill brings these, and the tray never dries.
     */
    @Test
    void empty_counts_from_the_seat_where_it_stands_above_the_outlet() {
        Tray high =
                Rigs.tray(
                        "tray",
                        new TestValve().seatAboveFloorM(0.70).make(),
                        Rigs.drinking(1.8),
                        0);
        Trace trace =
                Simulation.run(
                        Rigs.scenario(
                                55,
                                600,
                                List.of(Rigs.reservoir(0.1, 0.32, When.WHEN_EMPTY)),
                                List.of(high),
                                Rigs.nobody()));
        List<Event> refills =
                trace.events().stream().filter(event -> event.kind() == Event.Kind.REFILL).toList();
        assertEquals(4, refills.size());
        assertEquals(0.022, refills.get(1).volumeM3(), 0.022 * 0.025);
        assertTrue(trace.trays().get(0).levelM().min(0, 55 * 24) > 0.03);
    }

    /** V dC/dt = Cf (T + E): the tracer rises on a straight line when nobody takes it. */
    @Test
    void the_tracer_rises_with_all_that_leaves_as_water() {
        Trace trace = Simulation.run(valveRig(12, 600, 1.0, 0.01));
        TrayTrace tray = trace.trays().get(0);
        int last = trace.hours() - 1;
        double left = tray.evaporationM3().sum() + tray.transpirationM3().sum();
        double volume = 0.2 * 0.05;
        double expected = 1 + left / volume;
        assertEquals(
                expected, tray.compositionAt(last).molPerM3(Component.TRACER), expected * 1e-3);
        assertTrue(tray.evaporationM3().sum() > 1e-4, "the gap must matter in this case");
    }

    /** V dC/dt = Cf (T + E) - T C: what the plants drink with the water nears Cf (T + E) / T. */
    @Test
    void nutrients_and_EC_rise_with_evaporation_as_the_closed_form_says() {
        int days = 12;
        Trace trace = Simulation.run(valveRig(days, 600, 1.0, 0.01));
        TrayTrace tray = trace.trays().get(0);
        int last = trace.hours() - 1;
        double thirst = 1e-3 / DAY_S;
        double evaporation = tray.evaporationM3().sum() / (days * DAY_S);
        double volume = 0.2 * 0.05;
        double limit = (thirst + evaporation) / thirst;
        double share = limit + (1 - limit) * Math.exp(-thirst * days * DAY_S / volume);
        Composition got = tray.compositionAt(last);
        for (Component component : Shortage.WATCHED) {
            double expected = Rigs.FEED.molPerM3(component) * share;
            assertEquals(expected, got.molPerM3(component), expected * 1e-3, component.title());
        }
        double left = evaporation + thirst;
        double stays = 1 + left * days * DAY_S / volume;
        double[] closed = Rigs.FEED.times(share).toArray();
        for (Component component :
                new Component[] {Component.NA, Component.CL, Component.TRACER, Component.C}) {
            closed[component.ordinal()] = Rigs.FEED.molPerM3(component) * stays;
        }
        Meter meter = new Meter(420);
        meter.read(closed);
        assertEquals(meter.ecMsPerCm(), tray.ecMsPerCm().at(last), meter.ecMsPerCm() * 1e-3);
        assertTrue(tray.ecMsPerCm().at(last) > tray.ecMsPerCm().at(0) * 1.05);
    }

    /**
     * A tray of 0.2 m2 filled once with ten litres and drunk at a constant rate T falls to 2 mm in
     * (V0 - 0.4 L) / T; from there a film feeds ever less, h' = -(T / A) (h - 1 mm) / 1 mm, and a
     * tenth is left after (0.2 L / T) ln 10.
     */
    @Test
    void a_sealed_tray_runs_dry_when_its_volume_says() {
        Scenario scenario =
                Rigs.scenario(
                        12,
                        600,
                        List.of(),
                        List.of(Rigs.tray("tray", new Filling.Sealed(), Rigs.drinking(1.2), 0)),
                        Rigs.nobody());
        Trace trace = Simulation.run(scenario);
        // Noticed at the end of a step of 600 s, which takes the last millimetre a little faster.
        double driesS = (9.6 + 0.2 * Math.log(10)) / 1.2 * DAY_S;
        assertEquals(driesS, firstAtS(trace, Event.Kind.DRIED_OUT), 600);
        // A film of 1 mm stays: 0.2 L that no root can use.
        assertEquals(0.0098, trace.trays().get(0).transpirationM3().sum(), 1e-6);
        double unmet = trace.trays().get(0).of(TraySeries.UNMET_THIRST).sum();
        assertEquals(12 * 1.2e-3 - 0.0098, unmet, 1e-6);
    }

    @Test
    void a_hand_topped_tray_is_brought_back_to_its_level_at_every_visit() {
        Scenario scenario =
                Rigs.scenario(
                        15,
                        600,
                        List.of(),
                        List.of(
                                Rigs.tray(
                                        "tray",
                                        new Filling.ByHand(0.05, List.of(), Pouring.FEED),
                                        Rigs.drinking(1.2),
                                        0)),
                        Rigs.onWeekdays(DayOfWeek.MONDAY));
        List<Event> events = Simulation.run(scenario).events();
        // Day 0 is a Monday: full still but for eight hours' drinking; then every seven days.
        assertEquals(3, events.size());
        assertEquals(1.2e-3 * 8 / 24, events.get(0).volumeM3(), 1e-9);
        assertEquals(1.2e-3 * 7, events.get(1).volumeM3(), 1e-9);
        assertEquals((7 + 8.0 / 24) * DAY_S, events.get(1).atS());
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 37, 600, 3600, 21600})
    void water_and_every_ion_close_whatever_the_step(double stepS) {
        Trace trace = Simulation.run(valveRig(stepS < 60 ? 1 : 20, stepS, 3.0, 0.02));
        assertTrue(trace.water().relativeResidual() < 1e-12, "" + trace.water());
        for (Ledger ledger : trace.components()) {
            assertTrue(ledger.relativeResidual() < 1e-12, "" + ledger);
        }
    }

    @Test
    void the_same_scenario_gives_the_same_bits() {
        Scenario scenario = valveRig(20, 600, 3.0, 0.02);
        TrayTrace one = Simulation.run(scenario).trays().get(0);
        TrayTrace two = Simulation.run(scenario).trays().get(0);
        assertArrayEquals(one.levelM().toArray(), two.levelM().toArray());
        assertArrayEquals(one.ecMsPerCm().toArray(), two.ecMsPerCm().toArray());
    }

    @Test
    void reordering_the_trays_reorders_the_results_and_nothing_else() {
        var a = Rigs.tray("a", Rigs.valve(), Rigs.drinking(1.0), 0.01);
        var b = Rigs.tray("b", Rigs.valve(), Rigs.drinking(2.0), 0);
        var reservoir = List.of(Rigs.reservoir(0.1, 0.32, When.NEVER));
        Trace ab = Simulation.run(Rigs.scenario(10, 600, reservoir, List.of(a, b), Rigs.nobody()));
        Trace ba = Simulation.run(Rigs.scenario(10, 600, reservoir, List.of(b, a), Rigs.nobody()));
        // Sums over trays are taken in their order, so the last bits may differ.
        assertArrayEquals(
                ab.trays().get(0).levelM().toArray(), ba.trays().get(1).levelM().toArray(), 1e-12);
        assertArrayEquals(
                ab.reservoirs().get(0).volumeM3().toArray(),
                ba.reservoirs().get(0).volumeM3().toArray(),
                1e-12);
    }
}
