package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.crop.CropTraits;
import tideless.rig.Planting;

class CropReaderTest {
    private static final String CROP = TestCrops.crop();
    private static final String FRUIT_NUMBER =
            " = { value = \"%s\", source = \"invented for tests\", standing = \"assumed\" }\n";

    private final TomlFile source = new TomlFile("my.toml");

    private CropTraits read(String text) {
        return CropReader.read(source, text).orElse(null);
    }

    private List<String> faults() {
        return source.problems().stream().map(Problem::toString).toList();
    }

    @Test
    void a_leaf_crop_leaves_out_what_fruit_would_need() {
        CropTraits crop = read(CROP);
        assertEquals(List.of(), faults());
        assertFalse(crop.stages().fruits());
        assertEquals(Double.POSITIVE_INFINITY, crop.stages().floweringCd());
        assertEquals(crop.stages().firstHarvestCd(), crop.stages().lastHarvestCd());
        assertEquals(crop.nutrition().leaf(), crop.nutrition().fruit());
        assertEquals(0.06, crop.stages().stemShare() * 0.2, 1e-12);
    }

    @Test
    void values_arrive_in_the_units_of_the_traits() {
        CropTraits crop = read(CROP);
        assertEquals(0.06, crop.growth().spreadM2(), 1e-12); // 600 cm2
        assertEquals(0.002, crop.growth().seedlingDryG(), 1e-12); // 2 mg
        assertEquals(0.015, crop.roots().elongationMPerDay(), 1e-12); // 1.5 cm/day
        assertEquals(0.13, crop.salinity().fallFracPerMsPerCm(), 1e-12); // 13 % per mS/cm
        assertEquals(0.06, crop.growth().leafDryMatterFrac(), 1e-12); // 6 %
        assertEquals(7, crop.roots().drownedDeathDays());
        assertInstanceOf(CropTraits.Stomata.LightHyperbola.class, crop.stomata());
        assertEquals(
                new CropTraits.Provenance(
                        "growth.light_use", "3.0 g/MJ", "", "", "invented for tests", "assumed"),
                crop.provenance().get(0));
    }

    @Test
    void a_fruit_crop_must_state_its_fruit() {
        assertNull(
                read(
                        CROP.replace(
                                "[stages]\n",
                                "[stages]\nflowering" + FRUIT_NUMBER.formatted("400 degC d"))));
        assertThat(faults())
                .hasSize(10)
                .anySatisfy(f -> assertThat(f).contains("stages.full_load: found nothing"))
                .anySatisfy(f -> assertThat(f).contains("nutrition.fruit.sulfur: found nothing"));
    }

    private static String heat(String... numbers) {
        StringBuilder text = new StringBuilder(CROP).append("\n[root_zone]\n");
        for (int i = 0; i < numbers.length; i += 2) {
            text.append(numbers[i]).append(FRUIT_NUMBER.formatted(numbers[i + 1]));
        }
        return text.toString();
    }

    @Test
    void heat_that_keeps_flowers_from_setting_is_three_numbers_that_rise() {
        assertEquals(CropTraits.SetInHeat.ALWAYS, read(CROP).response().setInHeat());
        assertEquals(
                new CropTraits.SetInHeat(28, 35, 40),
                read(heat("set_whole", "28 degC", "set_half", "35 degC", "set_none", "40 degC"))
                        .response()
                        .setInHeat());
        assertEquals(List.of(), faults());
        assertNull(read(heat("set_half", "35 degC")));
        assertThat(faults())
                .hasSize(2)
                .anySatisfy(f -> assertThat(f).contains("root_zone.set_whole: found nothing"))
                .anySatisfy(f -> assertThat(f).contains("root_zone.set_none: found nothing"));
    }

    @Test
    void in_more_heat_fewer_flowers_set() {
        assertNull(
                read(heat("set_whole", "28 degC", "set_half", "35 degC", "set_none", "35 degC")));
        assertThat(faults())
                .anySatisfy(
                        f ->
                                assertThat(f)
                                        .contains("set_none: found \"35 degC\", allowed: above")
                                        .contains("root_zone.set_half (35 degC)"));
    }

    @Test
    void a_number_without_source_is_a_fault() {
        assertNull(read(CROP.replaceFirst("light_use = .*\n", "light_use = \"3.0 g/MJ\"\n")));
        assertThat(faults())
                .containsExactly(
                        "my.toml:6:13: growth.light_use: found \"3.0 g/MJ\", allowed: { value ="
                                + " \"3.0 g/MJ\", source = \"...\", standing = \"...\" }\n"
                                + "    Every number of a crop says where it comes from.");
    }

    @Test
    void a_wrong_unit_in_a_crop_is_a_fault_at_its_key() {
        assertNull(read(CROP.replace("value = \"3.0 g/MJ\"", "value = \"3.0 g/kJ\"")));
        assertThat(faults())
                .singleElement()
                .asString()
                .startsWith(
                        "my.toml:6:1: growth.light_use: found \"3.0 g/kJ\", allowed: above 0 g/MJ");
    }

    @Test
    void a_band_that_leaves_its_value_out_is_a_fault() {
        assertNull(
                read(
                        CROP.replace(
                                "value = \"3.0 g/MJ\"",
                                "value = \"3.0 g/MJ\", low = \"3.2 g/MJ\"")));
        assertThat(faults())
                .singleElement()
                .asString()
                .contains("growth.light_use: found value 3.0 g/MJ outside low 3.2 g/MJ");
    }

    @Test
    void stages_out_of_order_are_a_fault() {
        assertNull(read(CROP.replace("\"700 degC d\"", "\"50 degC d\"")));
        assertThat(faults()).singleElement().asString().contains("stages.first_harvest");
    }

    @Test
    void a_misspelt_key_gets_a_suggestion_and_is_not_missing_besides() {
        assertNull(read(CROP.replaceFirst("extinction", "extincton")));
        assertThat(faults())
                .singleElement()
                .asString()
                .startsWith(
                        "my.toml:9:1: growth.extincton: found an unknown key (did you mean"
                                + " \"extinction\"?), allowed: ");
    }

    @Test
    void numbers_without_unit_may_stand_bare() {
        CropTraits crop = read(CROP.replace("value = \"0.7\"", "value = 0.7"));
        assertNotNull(crop);
        assertEquals(0.7, crop.growth().extinction());
    }

    @TempDir Path folder;

    private Reading tray(String more) throws IOException {
        Files.writeString(folder.resolve("my.toml"), CROP);
        Path file = folder.resolve("bench.toml");
        Files.writeString(
                file,
                ScenarioReaderTest.GOOD.replace("crop = \"basil\"", "crop_file = \"my.toml\"")
                        + more);
        return ScenarioReader.read(file, TestCrops.LIBRARY);
    }

    @Test
    void a_tray_may_put_its_own_number_in_place_of_the_crops() throws IOException {
        Reading.Good good =
                assertInstanceOf(
                        Reading.Good.class,
                        tray("[tray.basil.crop_override]\ngrowth.light_use = \"2.6 g/MJ\"\n"));
        Planting.OfCrop crop =
                assertInstanceOf(Planting.OfCrop.class, good.scenario().trays().get(0).planting());
        assertEquals("test-crop", crop.cropName());
        assertEquals(2.6, crop.traits().growth().lightUseGPerMj());
        assertEquals(1.0, good.scenario().trays().get(0).limits().ecLowMsPerCm());
        assertThat(crop.traits().provenance())
                .contains(
                        new CropTraits.Provenance(
                                "growth.light_use", "2.6 g/MJ", "", "", "the scenario", "assumed"));
    }

    @Test
    void a_fault_in_an_override_has_its_place_in_the_scenario() throws IOException {
        Reading reading = tray("[tray.basil.crop_override]\ngrowth.light_use = \"2.6\"\n");
        Problem problem = assertInstanceOf(Reading.Faulty.class, reading).problems().get(0);
        assertEquals("tray.basil.crop_override.growth.light_use", problem.key());
        assertEquals(32, problem.line());
        assertThat(assertInstanceOf(Reading.Faulty.class, reading).problems()).hasSize(1);
    }

    /** It would stand for nothing, and nobody would know. */
    @Test
    void a_dotted_name_in_quotes_is_refused() throws IOException {
        Reading reading = tray("[tray.basil.crop_override]\n\"growth.light_use\" = \"2.6 g/MJ\"\n");
        assertTrue(
                reading.toString().contains("Maybe write growth.light_use without quotes."),
                reading.toString());
    }

    @Test
    void every_crop_of_the_library_reads_clean() {
        for (String name : CropLibrary.SHIPPED.names()) {
            TomlFile crop = new TomlFile(name);
            CropTraits traits = CropReader.read(crop, CropLibrary.SHIPPED.text(name)).orElse(null);
            assertEquals(List.of(), crop.problems());
            assertEquals(name, traits.name());
        }
    }
}
