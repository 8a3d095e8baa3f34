package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import tideless.rig.Deck;
import tideless.rig.Scenario;
import tideless.rig.TestScenario;
import tideless.rig.TestTray;
import tideless.rig.Tray;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** A sealed tank far too small for its crop: everything runs out. */
class ExhaustionProperties {
    private static final Scenario TANK =
            ((Reading.Good) ScenarioReader.read(Path.of("scenarios/sealed-lettuce-tank.toml")))
                    .scenario();

    @Property(tries = 12)
    void no_ion_goes_below_nothing_and_every_ledger_closes_when_all_runs_out(
            @ForAll @DoubleRange(min = 0.01, max = 0.08) double startM,
            @ForAll @DoubleRange(min = 0, max = 0.2) double openM2) {
        Tray t = TANK.trays().get(0);
        Tray shallow =
                TestTray.of(t).openAreaM2(openM2).startLevelM(startM).deck(Deck.PLAIN).make();
        Trace trace =
                Simulation.run(
                        TestScenario.of(TANK).reservoirs(List.of()).trays(List.of(shallow)).make());
        nothingBelowNothing(trace);
    }

    // Once a counterexample: the last drops of a tray with a wide gap are no solution any more.
    @Example
    void a_tray_that_dries_up_through_a_wide_gap_can_still_be_read() {
        no_ion_goes_below_nothing_and_every_ledger_closes_when_all_runs_out(0.01, 0.09);
    }

    private static void nothingBelowNothing(Trace trace) {
        for (Series ion : trace.trays().get(0).componentMol()) {
            assertTrue(ion.min(0, trace.hours()) >= 0);
        }
        for (Ledger ledger : trace.components()) {
            assertTrue(ledger.relativeResidual() < 1e-12, ledger.toString());
            for (Ledger.Entry entry : ledger.out()) {
                assertTrue(entry.amount() >= 0, ledger.toString());
            }
        }
        assertTrue(trace.water().relativeResidual() < 1e-12);
    }
}
