package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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
        "plants = 6, plants = -6",
        "plants = 6, plants = 200000",
        "ph = 6.0, ph = 9.5",
        "ec = \"1.7 mS/cm\", ec = \"-1.7 mS/cm\"",
        "ec = \"1.7 mS/cm\", ec = \"800 ppm\"",
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

    // What an editor puts in for a key is what the schema itself takes.
    @Test
    void defaults_and_examples_are_values_of_their_keys() throws IOException {
        JsonNode schema = new ObjectMapper().readTree(ScenarioSchema.json());
        List<String> wrong = new ArrayList<>();
        int[] seen = new int[2];
        for (JsonNode key : schema.findParents("description")) {
            String text = key.toString();
            JsonSchema of =
                    JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(key.toString());
            if (key.has("default")) {
                seen[0]++;
                wrong.addAll(faults(of, key.get("default"), text));
            }
            String type = key.path("type").asText();
            if (List.of("integer", "number", "boolean").contains(type)) {
                for (JsonNode example : key.path("examples")) {
                    seen[1]++;
                    wrong.addAll(faults(of, example, text));
                }
            }
        }
        assertEquals(List.of(), wrong);
        assertTrue(seen[0] > 50, "" + seen[0]);
        assertTrue(seen[1] > 10, "" + seen[1]);
    }

    private static List<String> faults(JsonSchema of, JsonNode value, String text) {
        return of.validate(value).isEmpty() ? List.of() : List.of(value + " in " + text);
    }

    @Test
    void the_file_for_editors_is_made_from_the_keys_of_today() throws IOException {
        assertEquals(Files.readString(PAGE), ScenarioSchema.json(), "run ScenarioSchemaTest.main");
    }
}
