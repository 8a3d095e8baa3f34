package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Simulation;
import tideless.sim.Trace;

/** A tray may bear the name of a reservoir: what happens in one is told of that one alone. */
class OneNameTwoVesselsTest {
    @TempDir Path folder;

    @Test
    void a_tray_named_like_its_reservoir_gets_the_advice_it_would_get_by_any_name()
            throws IOException {
        String text = Files.readString(Path.of("scenarios", "lessons", "hard-tap.toml"));
        assertTrue(text.contains("[tray.lettuce]") && text.contains("[reservoir.shelf]"));
        Trace apart = run(text);
        Trace alike = run(text.replace("[tray.lettuce", "[tray.shelf"));
        // Without this in one of the two the test would show nothing.
        assertTrue(
                apart.events().stream()
                        .anyMatch(
                                event ->
                                        event.kind() == Event.Kind.PRECIPITATE
                                                && event.vessel()
                                                        .equals(VesselId.tray("lettuce"))));
        Advice expected = Advisor.advise(apart, apart);
        Advice got = Advisor.advise(alike, alike);
        assertEquals(
                expected.warnings().stream().map(OneNameTwoVesselsTest::unnamed).toList(),
                got.warnings().stream().map(OneNameTwoVesselsTest::unnamed).toList());
        assertEquals(
                expected.tasks().stream().map(OneNameTwoVesselsTest::unnamed).toList(),
                got.tasks().stream().map(OneNameTwoVesselsTest::unnamed).toList());
    }

    private static List<Object> unnamed(Warning warning) {
        return List.of(
                warning.kind(),
                warning.from(),
                warning.vessel().kind(),
                warning.measure().toString());
    }

    private static List<Object> unnamed(Task task) {
        return List.of(task.kind(), task.due(), task.vessel().kind(), task.measure().toString());
    }

    private Trace run(String text) throws IOException {
        Path file = folder.resolve("rig.toml");
        Files.writeString(file, text);
        Scenario scenario =
                assertInstanceOf(Reading.Good.class, ScenarioReader.read(file)).scenario();
        return Simulation.run(scenario);
    }
}
