package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Climate;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.TestScenario;

class SurfaceTest {
    private static final double THREE_HOURS_S = 3 * 3600;

    private static AirSeries air(double tempC, double humidityFrac, double speedMPerS) {
        Climate.Room room =
                new Climate.Room(
                        tempC,
                        tempC - 5,
                        humidityFrac,
                        0.6,
                        0,
                        43_200,
                        0,
                        Climate.Window.NONE,
                        speedMPerS,
                        420,
                        0);
        Scenario rig =
                TestScenario.of(
                                Rigs.scenario(
                                        1,
                                        THREE_HOURS_S,
                                        List.of(),
                                        List.of(
                                                Rigs.tray(
                                                        "one",
                                                        new Filling.Sealed(),
                                                        Rigs.drinking(1),
                                                        0)),
                                        Rigs.nobody()))
                        .climate(room)
                        .make();
        return AirSeries.of(rig, Timeline.of(rig, false));
    }

    private static double lossM3PerS(AirSeries air, double solutionC) {
        Surface surface = new Surface(0.02, Rigs.box(0.2, 0.1));
        // So much water that it keeps its temperature.
        surface.begin(solutionC, 0, 0, 1e12, THREE_HOURS_S, air, 0);
        return surface.m3PerS;
    }

    // What is lost into a room's air is taken as straight between quarter kelvins: within 2e-4 of
    // itself, or of what a solution three kelvins warmer loses where next to nothing evaporates.
    @ParameterizedTest
    @CsvSource({"20, 0.4, 0.05", "24, 0.7, 0.2", "30, 0.9, 0.05", "17, 0.6, 0.5"})
    void a_table_of_losses_tells_what_is_worked_out_in_full(
            double airC, double humidityFrac, double speedMPerS) {
        AirSeries known = air(airC, humidityFrac, speedMPerS);
        AirSeries unknown = air(airC, humidityFrac, speedMPerS);
        Arrays.fill(unknown.kind, AirSeries.OF_NO_KIND);
        boolean differs = false;
        for (double solutionC = 12; solutionC < 32; solutionC += 0.061) {
            double full = lossM3PerS(unknown, solutionC);
            double table = lossM3PerS(known, solutionC);
            double of = Math.max(full, lossM3PerS(unknown, solutionC + 3));
            assertEquals(full, table, 2e-4 * of, "at " + solutionC);
            differs |= full != table;
        }
        assertTrue(differs); // it was asked
    }

    @ParameterizedTest
    @CsvSource({"20, 0.4, 0.05"})
    void the_airs_of_a_room_are_two(double airC, double humidityFrac, double speedMPerS) {
        AirSeries air = air(airC, humidityFrac, speedMPerS);
        assertEquals(0, air.kind[0]);
        assertNotEquals(air.kind[0], air.kind[air.kind.length - 1]);
        for (int kind : air.kind) {
            assertTrue(kind == 0 || kind == 1);
        }
    }
}
