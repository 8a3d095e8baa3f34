package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.tomlj.Toml;

/** Held by a validator that knows nothing of this program. */
class ScenarioSchemaTest {
    private static final Path PAGE = Path.of("scenarios/scenario.schema.json");
    private static final JsonSchema SCHEMA =
            JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(ScenarioSchema.json());

    /** Makes the file: run this class's main. */
    public static void main(String[] args) throws IOException {
        Files.writeString(PAGE, ScenarioSchema.json());
    }

    private static Set<ValidationMessage> faults(String toml) {
        return SCHEMA.validate(Toml.parse(toml).toJson(), InputFormat.JSON);
    }

    static Stream<Path> scenarios() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("scenarios"))) {
            List<Path> found = files.filter(f -> f.toString().endsWith(".toml")).sorted().toList();
            assertTrue(found.size() > 10, "" + found);
            return found.stream();
        }
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void every_shipped_scenario_is_sound(Path scenario) throws IOException {
        assertEquals(Set.of(), faults(Files.readString(scenario)));
    }

    // One thing changed in a sound scenario; what an editor should underline.
    @ParameterizedTest
    @CsvSource({
        "title = , titel = ",
        "start = 2026-03-02, start = 'tomorrow'",
        "lid = true, lid = 'yes'",
        "plants = 6, plants = 6.5",
        "plants = 6, plants = '6'",
        "kind = \"room\", kind = \"rooms\"",
        "day_temperature = \"22 degC\", day_temperature = \"22 cm\"",
        "day_temperature = \"22 degC\", day_temperature = 22",
        "ph = 6.0, ph = \"6.0\"",
        "depth = \"8 cm\", deepness = \"8 cm\"",
        "[visits], [visit]",
        "[tray.left.valve], [tray.left.valves]"
    })
    void a_fault_is_seen(String sound, String faulty) throws IOException {
        String text = Files.readString(Path.of("scenarios/calm-bench.toml"));
        assertTrue(text.contains(sound), sound);
        assertFalse(faults(text.replaceFirst(quoted(sound), faulty)).isEmpty(), faulty);
    }

    private static String quoted(String text) {
        return Pattern.quote(text);
    }

    @Test
    void the_file_for_editors_is_made_from_the_keys_of_today() throws IOException {
        assertEquals(Files.readString(PAGE), ScenarioSchema.json(), "run ScenarioSchemaTest.main");
    }
}
