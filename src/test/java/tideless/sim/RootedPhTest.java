package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.solution.Brine;

/**
 * pH of trays with living roots in shipped scenarios: what roots breathe out caps it. Published
 * courses of unaerated trays and drains lie between 4.5 and 8.0 for feeds with up to 30 % ammonium
 * (Savvas et al. 2006: 6.5 to 8.0). Of a film below a centimetre no pH is said.
 */
class RootedPhTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "science-room-bench",
                "calm-bench",
                "low-held-trays",
                "low-held-tomatoes",
                "glasshouse-tomato-trough",
                "depth-and-valve",
                "hand-topped-bucket",
                "sealed-lettuce-tank",
                "outgrown-trough",
                "lessons/hard-tap",
                "lessons/rain",
                "lessons/rich-feed",
                "lessons/lean-feed"
            })
    void a_rooted_tray_stays_between_four_and_a_half_and_eight(String name) throws IOException {
        Trace trace = run(name);
        for (TrayTrace tray : trace.trays()) {
            int end = endOfRoots(trace, tray);
            assertTrue(end > 20 * 24, "" + end);
            for (int hour = 0; hour < end; hour++) {
                double ph = tray.ph().at(hour);
                if (tray.levelM().at(hour) < Brine.NO_PH_BELOW_M) {
                    assertTrue(Double.isNaN(ph), "no bulb is wetted in hour " + hour);
                } else {
                    assertTrue(ph >= 4.5 && ph <= 8.0, tray.tray().name() + ": " + ph);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"science-room-bench"})
    void spent_solution_loses_its_carbon_dioxide_and_reads_as_in_the_room(String name)
            throws IOException {
        Trace trace = run(name);
        for (TrayTrace tray : trace.trays().subList(0, 2)) {
            int end = endOfRoots(trace, tray);
            double rooted = tray.of(TraySeries.SOLUTION_CO2).at(end - 2);
            double spent = tray.of(TraySeries.SOLUTION_CO2).at(end + 7 * 24);
            assertTrue(rooted > 2 * spent, rooted + " and " + spent);
            assertTrue(tray.ph().at(end + 7 * 24) > tray.ph().at(end - 2) + 0.1);
        }
    }

    private static Trace run(String name) throws IOException {
        Reading read = ScenarioReader.read(Path.of("scenarios", name + ".toml"));
        return Simulation.run(assertInstanceOf(Reading.Good.class, read).scenario());
    }

    private static int endOfRoots(Trace trace, TrayTrace tray) {
        int end = trace.hours();
        for (Event event : trace.events()) {
            boolean over = event.kind() == Event.Kind.HARVEST || event.kind() == Event.Kind.DIED;
            if (over && event.vessel().equals(tray.tray().id())) {
                end = Math.min(end, (int) (event.atS() / 3600));
            }
        }
        return end;
    }
}
