package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Scenario;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;
import tideless.study.ObeyingRigs;

/**
 * Stands in the open drink as FAO-56 has it, leaf crops too: its coefficients of a full stand over
 * its reference evapotranspiration (Allen et al. 1998, Table 12: lettuce and spinach 1.00, mint
 * 1.15, cabbage 1.05) are what there is of them outdoors.
 */
class OpenFieldThirstTest {
    private static final Path RAFT = ObeyingRigs.named("15-raft-outdoors");

    /** Days 40 to 43 of a full stand, m3 each. */
    private static double thirstM3(String crop, String cover, String model) {
        Trace trace = Simulation.run(scenario(crop, cover, model));
        return trace.trays().get(0).thirstM3().sum(40 * 24, 44 * 24);
    }

    private static Scenario scenario(String crop, String cover, String model) {
        Reading reading =
                ChangedScenario.read(
                        RAFT,
                        List.of(
                                new ChangedScenario.Change("tray.raft.crop", crop),
                                new ChangedScenario.Change("tray.raft.aerated", "true"),
                                new ChangedScenario.Change("tray.raft.harvest_after", "50 days"),
                                new ChangedScenario.Change("climate.cover", cover),
                                new ChangedScenario.Change("tray.raft.thirst_model", model)));
        return ((Reading.Good) reading).scenario();
    }

    // By then a stage's coefficient may be on its way down from the full stand's, by a tenth.
    @ParameterizedTest(name = "{0}")
    @CsvSource({"lettuce", "spinach", "mint", "pak-choi", "kale"})
    void leaf_crops_in_the_open_drink_as_the_fields_coefficient_has_it(String crop) {
        double field = thirstM3(crop, "open", "coefficient");
        assertEquals(1.05, thirstM3(crop, "open", "combined") / field, 0.08, crop);
        assertTrue(thirstM3(crop, "open", "canopy") > 1.2 * field, crop);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"lettuce", "tomato"})
    void the_forecast_in_the_open_is_fao_56_alone(String crop) {
        assertEquals(thirstM3(crop, "open", "penman-monteith"), thirstM3(crop, "open", "combined"));
    }

    @Test
    void under_a_roof_leaf_crops_keep_the_canopy() {
        assertEquals(
                thirstM3("lettuce", "film", "canopy"), thirstM3("lettuce", "film", "combined"));
    }

    /** A stand one standard deviation up, on its first day: houses were measured, fields not. */
    @ParameterizedTest(name = "{0}, {1}")
    @CsvSource({"tomato, open, 0.40", "tomato, film, 0.25", "lettuce, open, 0.40"})
    void of_a_stand_in_the_open_little_is_known(String crop, String cover, double deviation) {
        Scenario scenario = scenario(crop, cover, "combined");
        Departures up = new Departures(new double[] {1}, new double[][] {{}}, new boolean[0], 1);
        assertEquals(
                Math.exp(deviation),
                firstDayM3(Simulation.runUnread(scenario, up))
                        / firstDayM3(Simulation.runUnread(scenario)),
                1e-9);
    }

    private static double firstDayM3(Trace trace) {
        return trace.trays().get(0).thirstM3().sum(0, 24);
    }
}
