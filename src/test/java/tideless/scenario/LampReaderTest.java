package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Lamp;

class LampReaderTest {
    private final Source source = new Source("bench.toml");

    private Lamp lamp(String keys) {
        source.parse("[lamp]\n" + keys);
        return LampReader.read(Table.root(source, ScenarioKeys.TABLE).child("lamp"));
    }

    private List<String> faults() {
        return source.problems().stream().map(Problem::toString).toList();
    }

    // Thimijan and Heins (1983), HortScience 18(6):818-822, quoted second-hand: photons at 10,000
    // lux, worked out from the printed factors to 0.1 umol/m2/s.
    @ParameterizedTest(name = "10 klux of {0} are {1} umol/m2/s")
    @CsvSource({
        "sun, 185.2",
        "fluorescent, 135.1",
        "incandescent, 200.0",
        "high-pressure-sodium, 122.0",
        "metal-halide, 140.8",
        "white-led, 142.9"
    })
    void lux_becomes_photons_by_the_kind_of_light(String type, double expected) {
        Lamp lamp = lamp("lux = \"10 klux\"\ntype = \"" + type + "\"\n");
        assertEquals(List.of(), faults());
        assertEquals(expected, lamp.ppfdUmolPerM2S(), 0.05);
    }

    // By hand: 24 W x 100 lm/W / 0.25 m2 = 9600 lux; / 70 = 137.1; 70 % of it on target: 96.0.
    @Test
    void watts_become_photons_by_efficacy_area_and_share() {
        assertEquals(137.14, lamp("watts = \"24 W\"\narea = \"0.25 m2\"").ppfdUmolPerM2S(), 0.005);
        assertEquals(
                96,
                lamp("watts = \"24 W\"\narea = \"0.25 m2\"\non_target = \"70 %\"").ppfdUmolPerM2S(),
                0.005);
        // 100 W x 2.5 umol/J / 1 m2 = 250 umol/m2/s.
        assertEquals(
                250,
                lamp("watts = \"100 W\"\nefficacy = \"2.5 umol/J\"\narea = \"1 m2\"\ntype = \"red-blue-led\"")
                        .ppfdUmolPerM2S(),
                1e-9);
        assertEquals(List.of(), faults());
    }

    @Test
    void a_lamp_past_midnight_counts_its_hours_through() {
        // On 20:00, off 11:00: 4 h to midnight and 11 h after it.
        Lamp lamp =
                lamp("ppfd = \"100 umol/m2/s\"\non = \"20:00\"\noff = \"11:00\"\nhours = \"15 h\"");
        assertEquals(List.of(), faults());
        assertEquals(15 * 3600, lamp.litS());
    }

    @Test
    void lux_of_a_red_and_blue_lamp_is_refused() {
        lamp("lux = \"10 klux\"\ntype = \"red-blue-led\"");
        assertThat(faults()).singleElement().asString().contains("Lux counts green light");
    }

    @Test
    void a_lamp_says_how_bright_it_is() {
        lamp("on = \"06:00\"");
        assertThat(faults())
                .singleElement()
                .asString()
                .startsWith(
                        "bench.toml:1:1: lamp.ppfd: found nothing, allowed: one of ppfd, lux, or watts");
    }

    @Test
    void watts_without_an_area_are_not_enough() {
        lamp("watts = \"24 W\"");
        assertThat(faults()).singleElement().asString().contains("lamp.area: found nothing");
    }

    @Test
    void a_lamp_brighter_than_any_is_refused() {
        lamp("watts = \"10 kW\"\narea = \"100 cm2\"");
        assertThat(faults()).singleElement().asString().contains("worked out from it");
    }
}
