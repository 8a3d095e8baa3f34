package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.Planting;

/** Reads the examples of docs/crops.md. */
class CropsPageTest {
    private static final String HEAD =
            """
            title = "t"
            start = 2026-03-02
            length = "10 days"
            climate.kind = "room"
            climate.day_temperature = "22 degC"
            lamp.ppfd = "200 umol/m2/s"
            feed.recipe = "steiner"
            """;

    @TempDir Path folder;
    private String override;
    private String crop;

    @BeforeEach
    void cut() throws IOException {
        String[] parts = Files.readString(Path.of("docs/crops.md")).split("```(toml)?\n");
        override = parts[1];
        crop = parts[3];
    }

    private Planting.OfCrop planting(Reading reading) {
        Reading.Good good = assertInstanceOf(Reading.Good.class, reading, reading.toString());
        return assertInstanceOf(Planting.OfCrop.class, good.scenario().trays().get(0).planting());
    }

    private Reading run(String tray) throws IOException {
        Files.writeString(folder.resolve("wall-cress.toml"), crop);
        Path file = folder.resolve("bench.toml");
        Files.writeString(file, HEAD + tray);
        return ScenarioReader.read(file);
    }

    @Test
    void the_example_of_an_override_is_read() throws IOException {
        Planting.OfCrop bench = planting(run(override));
        assertEquals("lettuce", bench.cropName());
        assertEquals(2.8, bench.traits().growth().lightUseGPerMj());
        assertEquals(0.04, bench.traits().growth().leafDryMatterFrac(), 1e-12);
        assertThat(bench.traits().provenance())
                .anySatisfy(p -> assertEquals("our own oven", p.source()));
    }

    @Test
    void the_example_of_a_crop_is_read_as_a_file() throws IOException {
        String tray = override.substring(0, override.indexOf("[tray.bench.crop_override]"));
        Planting.OfCrop bench =
                planting(
                        run(tray.replace("crop = \"lettuce\"", "crop_file = \"wall-cress.toml\"")));
        assertEquals("wall-cress", bench.cropName());
        assertThat(bench.traits().provenance()).anySatisfy(p -> assertEquals("3.5 g/MJ", p.high()));
    }

    @Test
    void the_example_states_every_key_a_leaf_crop_needs() {
        TomlFile source = new TomlFile("wall-cress.toml");
        CropReader.read(source, crop);
        assertEquals(List.of(), source.problems());
        for (Key<?> key : CropKeys.TABLE.keys().values()) {
            if (key.need() == Key.Need.REQUIRED) {
                assertThat(crop).contains(key.name() + " = ");
            }
        }
    }
}
