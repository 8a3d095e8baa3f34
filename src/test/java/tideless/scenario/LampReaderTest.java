package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Lamp;

class LampReaderTest {
    private final TomlFile source = new TomlFile("bench.toml");

    private Lamp lamp(String keys) {
        source.parse("[lamp]\n" + keys);
        return LampReader.read(
                Table.root(source, ScenarioKeys.TABLE).child("lamp"),
                new Run(Read.of(LocalDate.of(2026, 3, 2)), Read.of(70)));
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
    // That both stand there is told as a fault of the file; a missing area ended in a trace.
    @Test
    void watts_beside_a_measured_light_are_read_without_an_area() {
        Lamp told = lamp("ppfd = \"200 umol/m2/s\"\nwatts = \"24 W\"");
        assertEquals(200, told.ppfdUmolPerM2S());
        assertEquals(Lamp.Plug.UNKNOWN, told.plug());
    }

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
                lamp("watts = \"100 W\"\n"
                                + "efficacy = \"2.5 umol/J\"\n"
                                + "area = \"1 m2\"\n"
                                + "type = \"red-blue-led\"")
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
                        "bench.toml:1:1: lamp.ppfd: found nothing, allowed: one of ppfd, lux, or"
                                + " watts");
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

    // By hand: 200 umol/m2/s from 06:00 to 22:00; half until 09:00, full until 18:00, a quarter to
    // the end: 200e-6 x 3600 x (3 x 0.5 + 9 + 4 x 0.25) = 8.28 mol/m2.
    @Test
    void a_lamp_dimmed_by_the_hour_gives_the_sum_of_its_hours() {
        Lamp lamp =
                lamp(
                        "ppfd = \"200 umol/m2/s\"\non = \"06:00\"\noff = \"22:00\"\n"
                                + "levels = [{ from = \"00:00\", share = 0.5 },"
                                + " { from = 09:00:00, share = \"100 %\" },"
                                + " { from = \"18:00\", share = \"25 %\" }]\n");
        assertEquals(List.of(), faults());
        assertEquals(8.28, lamp.molPerM2(0, 86400), 1e-12);
        assertEquals(0, lamp.ppfdUmolPerM2S(6 * 3600 - 1));
        assertEquals(100, lamp.ppfdUmolPerM2S(6 * 3600));
        assertEquals(200, lamp.ppfdUmolPerM2S(9 * 3600));
        assertEquals(50, lamp.ppfdUmolPerM2S(86400 + 22 * 3600 - 1));
        assertEquals(0, lamp.ppfdUmolPerM2S(22 * 3600));
    }

    @Test
    void the_last_level_holds_past_midnight_to_the_first() {
        Lamp lamp =
                lamp(
                        "ppfd = \"200 umol/m2/s\"\non = \"20:00\"\noff = \"11:00\"\n"
                                + "levels = [{ from = \"05:00\", share = 1 },"
                                + " { from = \"22:00\", share = 0.3 }]\n");
        assertEquals(60, lamp.ppfdUmolPerM2S(2 * 3600), 1e-12);
        assertEquals(200, lamp.ppfdUmolPerM2S(20 * 3600), 1e-12);
    }

    @Test
    void a_lamp_may_be_turned_up_by_date() {
        Lamp lamp =
                lamp(
                        "ppfd = \"200 umol/m2/s\"\non = \"06:00\"\noff = \"22:00\"\n"
                                + "strengths = [{ from = 2026-03-01, share = 0.5 },"
                                + " { from = \"2026-03-05\", share = 0.75 }]\n");
        assertEquals(List.of(), faults());
        assertEquals(100, lamp.ppfdUmolPerM2S(2.5 * 86400), 1e-12);
        assertEquals(150, lamp.ppfdUmolPerM2S(3.5 * 86400), 1e-12);
    }

    @Test
    void levels_that_do_not_rise_or_exceed_the_lamp_are_faults() {
        lamp(
                "ppfd = \"200 umol/m2/s\"\nlevels = [{ from = \"09:00\", share = 1 },"
                        + " { from = \"06:00\", share = 0.3 }]\n");
        lamp("ppfd = \"200 umol/m2/s\"\nlevels = [{ from = \"09:00\", share = 1.5 }]\n");
        lamp("ppfd = \"200 umol/m2/s\"\nstrengths = [{ from = \"09:00\", share = 1 }]\n");
        assertThat(faults())
                .hasSize(3)
                .anyMatch(f -> f.contains("lamp.levels: ") && f.contains("entries that rise"))
                .anyMatch(f -> f.contains("lamp.levels: ") && f.contains("share = \"50 %\""))
                .anyMatch(f -> f.contains("lamp.strengths: "));
    }

    // On from 06:00 to 20:00, dark from 12:00 on: six hours of light.
    @Test
    void hours_that_dimming_takes_away_do_not_count() {
        String dark =
                "ppfd = \"200 umol/m2/s\"\nlevels = [{ from = \"06:00\", share = 0.5 },"
                        + " { from = \"12:00\", share = 0 }]\n";
        assertEquals(6 * 3600, lamp(dark + "hours = \"6 h\"\n").litS());
        assertEquals(List.of(), faults());
        lamp(dark + "hours = \"14 h\"\n");
        assertThat(faults())
                .singleElement()
                .asString()
                .contains("lamp.hours: found \"14 h\", allowed: 6 h")
                .contains("with levels say");
    }

    @Test
    void a_level_that_holds_while_the_lamp_is_off_alone_is_said_and_a_dark_lamp_too() {
        lamp(
                "ppfd = \"200 umol/m2/s\"\nlevels = [{ from = \"21:00\", share = 0.5 },"
                        + " { from = \"23:00\", share = 1 }]\n");
        assertThat(source.notes())
                .singleElement()
                .asString()
                .contains("the level from 21:00 on is not used")
                .contains("off from 20:00 to 06:00");
        lamp("ppfd = \"200 umol/m2/s\"\nlevels = [{ from = \"00:00\", share = 0 }]\n");
        assertThat(source.notes()).hasSize(2).last().asString().contains("dark all day");
        lamp(
                "ppfd = \"200 umol/m2/s\"\n"
                        + "on = \"18:00\"\n"
                        + "off = \"10:00\"\n"
                        + "levels = [{ from = \"08:00\", share = 0.5 }, { from = \"18:00\", share = 0.5"
                        + " }, { from = \"20:00\", share = 1 }]\n");
        lamp("ppfd = \"200 umol/m2/s\"\nlevels = [{ from = \"09:00\", share = 0.5 }]\n");
        lamp("ppfd = \"200 umol/m2/s\"\non = \"00:00\"\noff = \"00:00\"\n");
        assertThat(source.notes()).hasSize(2);
    }
}
