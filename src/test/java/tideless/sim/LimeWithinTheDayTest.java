package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.physics.Time;
import tideless.rig.Numerics;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.solution.ClosedForms;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.Precipitation.Mineral;
import tideless.solution.RespiredCarbon;
import tideless.solution.SourceWater;

/** What falls out falls in the hour in which it no longer can be held, not at midnight alone. */
class LimeWithinTheDayTest {
    private static final double PPM = 3000;
    private static final double CO2 = RespiredCarbon.roughlyMolPerM3(PPM);
    private static final double ONSET = Mineral.CALCITE.onsetIndex();
    private static final VesselId TRAY = VesselId.tray("tray");

    private final Precipitate lime = new Precipitate();
    private final EventLog log = new EventLog();

    private void settle(double[] mol, double m3) {
        lime.settle(mol, m3, CO2, 20, PPM, 0, TRAY, log);
    }

    private static double index(double[] mol, double m3) {
        double[] molPerM3 = new double[mol.length];
        for (int i = 0; i < mol.length; i++) {
            molPerM3[i] = mol[i] / m3;
        }
        return ClosedForms.calciteInAir(Composition.of(molPerM3), 20, PPM);
    }

    // Of hard water all of calcium, and of its square the alkali, grow with what dries: ten
    // percent less water are 1.1 to the power 3, more than the quarter that is let be.
    @Test
    void water_that_is_concentrated_by_a_tenth_is_judged_again() {
        double[] mol = SourceWater.named("hard-tap").orElseThrow().composition().toArray();
        assertTrue(lime.mayFall(mol, 1, CO2, 20), "never judged yet");
        double[] strong = new double[mol.length];
        for (int i = 0; i < mol.length; i++) {
            strong[i] = 3 * mol[i];
        }
        settle(strong, 1);
        assertEquals(ONSET, index(strong, 1), 2e-3);
        assertFalse(lime.mayFall(strong, 1, CO2, 20));
        assertFalse(lime.mayFall(strong, 0.95, CO2, 20));
        assertTrue(lime.mayFall(strong, 0.9, CO2, 20));
        double before = strong[Component.CA.ordinal()];
        double fallenBefore = lime.mol(Component.CA);
        settle(strong, 0.9);
        assertEquals(ONSET, index(strong, 0.9), 2e-3);
        double fell = before - strong[Component.CA.ordinal()];
        assertTrue(fell > 0);
        assertEquals(fallenBefore + fell, lime.mol(Component.CA), 1e-12);
    }

    // A judgement may be days old in an ensemble: a product may then grow by a twentieth, and
    // thinner solution, whose activities are higher, is looked at whatever its products say.
    @Test
    void after_days_it_is_asked_sooner_and_of_thinner_solution() {
        double[] mol = SourceWater.named("hard-tap").orElseThrow().composition().toArray();
        for (int i = 0; i < mol.length; i++) {
            mol[i] *= 3;
        }
        settle(mol, 1);
        assertFalse(lime.mayFallAfterDays(mol, 0.99, CO2, 20), "3 % of the product");
        assertFalse(lime.mayFall(mol, 0.97, CO2, 20));
        assertTrue(lime.mayFallAfterDays(mol, 0.97, CO2, 20), "9 % of the product");
        assertFalse(lime.mayFallAfterDays(mol, 1.1, CO2, 20));
        assertTrue(lime.mayFallAfterDays(mol, 1.12, CO2, 20));
        assertFalse(lime.mayFallAfterDays(mol, 0, CO2, 20), "nothing stands there");
    }

    // Of a season in an ensemble's steps, in which trays are judged when something may fall, as
    // much falls as of one that judges each midnight.
    @Test
    void what_falls_in_a_season_does_not_hang_on_the_days_it_is_looked_for() {
        Scenario bench =
                ((Reading.Good) ScenarioReader.read(Path.of("scenarios/science-room-bench.toml")))
                        .scenario();
        double exact = fallenMol(bench);
        double quick = fallenMol(bench.withNumerics(new Numerics(3 * Time.HOUR_S)));
        assertTrue(exact > 0);
        assertEquals(exact, quick, 0.02 * exact);
    }

    private static double fallenMol(Scenario scenario) {
        return Simulation.season(scenario, Surroundings.forSeasons(scenario)).components().stream()
                .filter(ledger -> ledger.name().equals(Component.CA.symbol()))
                .flatMap(ledger -> ledger.out().stream())
                .filter(entry -> entry.what().equals("precipitated"))
                .mapToDouble(Ledger.Entry::amount)
                .sum();
    }

    @Test
    void warmth_and_lost_carbon_dioxide_bring_it_nearer_too() {
        double[] mol = SourceWater.named("hard-tap").orElseThrow().composition().toArray();
        for (int i = 0; i < mol.length; i++) {
            mol[i] *= 3;
        }
        settle(mol, 1);
        assertFalse(lime.mayFall(mol, 1, 0.9 * CO2, 20));
        assertTrue(lime.mayFall(mol, 1, 0.7 * CO2, 20));
        assertFalse(lime.mayFall(mol, 1, CO2, 24));
        assertTrue(lime.mayFall(mol, 1, CO2, 31));
        assertFalse(lime.mayFall(mol, 0, CO2, 20), "nothing stands there");
    }

    // The quick proof is careful by 0.2 of an index, of which 1 + 0.2 ln 10 is taken as room: of
    // calcium and sulfate each 1.36 times as strong, 1.84 of the product.
    @Test
    void an_acid_feed_is_asked_again_once_it_has_thickened() {
        double[] mol =
                Composition.WATER
                        .with(Component.NO3, 10)
                        .with(Component.SO4, 1)
                        .with(Component.P, 0.5)
                        .with(Component.K, 4)
                        .with(Component.CA, 3)
                        .with(Component.MG, 1.1)
                        .toArray();
        settle(mol, 1);
        assertFalse(lime.mayFall(mol, 0.75, CO2, 20));
        assertTrue(lime.mayFall(mol, 0.72, CO2, 20));
    }

    // At pH 6.85 half of phosphate is HPO4: with 0.3 mmol/L of alkali as bicarbonate the feed's is
    // 0.82. More of both, at the same pH, leaves calcite and gypsum where they were.
    @Test
    void phosphate_that_gathers_is_judged_by_itself() {
        double[] mol =
                Composition.WATER
                        .with(Component.NO3, 10)
                        .with(Component.SO4, 1)
                        .with(Component.P, 1)
                        .with(Component.K, 10 + 2 + 1 + 0.5 + 3.16 * CO2 - 2 * (3 + 1.1))
                        .with(Component.CA, 3)
                        .with(Component.MG, 1.1)
                        .toArray();
        settle(mol, 1);
        mol[Component.P.ordinal()] += 0.1;
        mol[Component.K.ordinal()] += 0.15;
        assertFalse(lime.mayFall(mol, 1, CO2, 20));
        mol[Component.P.ordinal()] += 1.9;
        mol[Component.K.ordinal()] += 2.85;
        assertTrue(lime.mayFall(mol, 1, CO2, 20));
    }

    // The sealed tank's evenings: alkali grows by the hour and carbon dioxide leaves as roots calm
    // down. A tenth of an index is let be and a hidden one of the rough measure may come on top;
    // by falls at midnight alone the index went up to 0.7.
    @Test
    void the_index_of_a_tank_stays_near_its_onset_in_every_hour() throws IOException {
        Reading read = ScenarioReader.read(Path.of("scenarios", "sealed-lettuce-tank.toml"));
        Trace run = Simulation.run(assertInstanceOf(Reading.Good.class, read).scenario());
        TrayTrace tank = run.trays().get(0);
        double most = 0;
        List<Integer> fallsAt = new ArrayList<>();
        for (int hour = 15 * 24; hour < 22 * 24; hour++) {
            double index =
                    ClosedForms.calciteInAir(
                            tank.compositionAt(hour),
                            tank.of(TraySeries.SOLUTION_TEMP).at(hour),
                            tank.of(TraySeries.SOLUTION_CO2).at(hour));
            most = Math.max(most, index);
            double calcium = tank.compositionAt(hour).molPerM3(Component.CA);
            double was = tank.compositionAt(hour - 1).molPerM3(Component.CA);
            if (calcium < 0.98 * was) {
                fallsAt.add((hour + 1) % 24);
            }
        }
        assertTrue(most > ONSET && most < ONSET + 0.12, "" + most);
        assertTrue(fallsAt.stream().anyMatch(hour -> hour != 0), fallsAt.toString());
    }
}
