package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.Displacement;
import tideless.rig.Tray;

/** Cups, a valve body and an overflow hole as they are written. */
class DisplacementReaderTest {
    @TempDir Path folder;

    /** The tray begins in line 13, its valve's setting stands in the line after the tray's own. */
    private Reading read(String tray, String valve) throws IOException {
        Path file = folder.resolve("bench.toml");
        Files.writeString(
                file,
                """
                title = "t"
                start = 2026-03-02
                length = "10 days"
                climate.kind = "room"
                climate.day_temperature = "22 degC"
                lamp.ppfd = "200 umol/m2/s"
                feed.recipe = "steiner"
                [reservoir.shelf]
                length = "40 cm"
                width = "30 cm"
                depth = "30 cm"
                floor_above_bench = "60 cm"
                [tray.bench]
                length = "50 cm"
                width = "40 cm"
                depth = "10 cm"
                crop = "lettuce"
                plants = 8
                cup_bottom = "4 cm"
                %s
                [tray.bench.valve]
                setting = "5 cm"
                %s
                """
                        .formatted(tray, valve));
        return ScenarioReader.read(file, TestCrops.LIBRARY);
    }

    private Tray tray(String tray, String valve) throws IOException {
        Reading reading = read(tray, valve);
        assertEquals(List.of(), faults(reading));
        return assertInstanceOf(Reading.Good.class, reading).scenario().trays().get(0);
    }

    private List<String> faults(Reading reading) {
        return reading instanceof Reading.Faulty faulty
                ? faulty.problems().stream()
                        .map(p -> p.toString().replace(folder + File.separator, ""))
                        .toList()
                : List.of();
    }

    private String fault(String tray, String valve) throws IOException {
        List<String> faults = faults(read(tray, valve));
        assertEquals(1, faults.size(), faults.toString());
        return faults.get(0);
    }

    @Test
    void where_nothing_is_said_of_cups_they_take_no_room() throws IOException {
        Tray bench = tray("", "");
        assertSame(Displacement.NONE, bench.shape().displacement());
        assertTrue(bench.overflowBoreM().isEmpty());
    }

    // 0.5 x 0.4 m, 8 cups of 20 cm2 from 4 cm: at 5 cm 8 + 0.184 x 0.01 m3 = 9.84 L.
    @Test
    void as_many_cups_as_plants_hang_from_their_underside_to_the_deck() throws IOException {
        Tray bench = tray("cup_solid = \"20 cm2\"", "");
        assertEquals(9.84e-3, bench.shape().volumeM3(0.05), 1e-15);
        assertEquals(
                List.of(new Displacement.Solid(8 * 20e-4, 0.04, 0.10)),
                bench.shape().displacement().solids());
        assertEquals(0.2, bench.shape().rimAreaM2(), 1e-15);
    }

    // 10 cups instead: 0.2 x 0.05 - 0.02 x 0.01 = 9.8 L.
    @Test
    void cups_may_be_more_than_the_plants() throws IOException {
        Tray bench = tray("cup_solid = \"20 cm2\"\ncups = 10", "");
        assertEquals(9.8e-3, bench.shape().volumeM3(0.05), 1e-15);
    }

    // A body of 100 cm2 from 2 to 6 cm beside the 8 cups: at 5 cm 10 - 0.3 - 0.16 = 9.54 L.
    @Test
    void a_valve_body_stands_between_its_heights() throws IOException {
        Tray bench =
                tray(
                        "cup_solid = \"20 cm2\"",
                        "body = \"100 cm2\"\nbody_from = \"2 cm\"\nbody_to = \"6 cm\"");
        assertEquals(9.54e-3, bench.shape().volumeM3(0.05), 1e-15);
    }

    // From the floor to the rim: 0.19 x 0.05 = 9.5 L.
    @Test
    void a_valve_body_without_heights_goes_from_the_floor_to_the_rim() throws IOException {
        assertEquals(9.5e-3, tray("", "body = \"100 cm2\"").shape().volumeM3(0.05), 1e-15);
    }

    @Test
    void cups_larger_than_the_tray_are_refused() throws IOException {
        assertEquals(
                "bench.toml:20:13: tray.bench.cup_solid: found \"250 cm2\", 2000 cm2 for all cups,"
                        + " allowed: below the tray's own 2000 cm2 at 4 cm, all cups together\n"
                        + "    Solution must have room at every level: at least a hundredth of the"
                        + " tray's.",
                fault("cup_solid = \"250 cm2\"", ""));
    }

    // 8 x 120 cm2 = 0.096 m2 of cups; 0.2 - 0.096 = 0.104 m2 is left for the body.
    @Test
    void a_body_that_does_not_fit_between_the_cups_is_refused() throws IOException {
        String fault = fault("cup_solid = \"120 cm2\"", "body = \"1100 cm2\"\nbody_to = \"7 cm\"");
        assertThat(fault)
                .startsWith(
                        "bench.toml:23:8: tray.bench.valve.body: found \"1100 cm2\", allowed:"
                                + " below 1040 cm2: the tray's own 2000 cm2 at 4 cm less 960 cm2 of"
                                + " cups");
        // Below the cups it has room.
        tray("cup_solid = \"120 cm2\"", "body = \"1100 cm2\"\nbody_to = \"4 cm\"");
    }

    @Test
    void a_body_upside_down_or_over_the_rim_is_refused() throws IOException {
        assertEquals(
                "bench.toml:24:13: tray.bench.valve.body_from: found \"6 cm\", allowed: below"
                        + " body_to (2 cm, line 25)",
                fault("", "body = \"30 cm2\"\nbody_from = \"6 cm\"\nbody_to = \"2 cm\""));
        assertThat(fault("", "body = \"30 cm2\"\nbody_to = \"12 cm\""))
                .startsWith(
                        "bench.toml:24:11: tray.bench.valve.body_to: found \"12 cm\", allowed: up"
                                + " to the rim (10 cm, line 16)");
        assertThat(fault("", "body = \"30 cm2\"\nbody_from = \"10 cm\""))
                .contains("body_from: found \"10 cm\", allowed: below the rim (10 cm, line 16)");
        assertThat(fault("", "body = \"30 cm2\"\nbody_to = \"0 cm\"")).contains("above 0 cm");
    }

    @Test
    void what_belongs_to_a_thing_unstated_is_refused() throws IOException {
        assertThat(fault("cups = 8", "")).contains("cups: found 8, allowed: only beside cup_solid");
        assertThat(fault("", "body_from = \"2 cm\"")).contains("allowed: only beside body");
        assertThat(fault("", "bodyy = \"30 cm2\"\nbody_from = \"2 cm\""))
                .contains("did you mean \"body\"?");
        assertThat(fault("cup_solod = \"20 cm2\"\ncups = 8", ""))
                .contains("did you mean \"cup_solid\"?");
    }

    @Test
    void a_faulty_tray_is_told_of_once() throws IOException {
        assertThat(faults(read("cup_solid = \"20 cm\"", ""))).hasSize(1);
        assertThat(faults(read("cup_solid = \"20 cm2\"\noverflow = \"11 cm\"", ""))).hasSize(1);
    }

    @Test
    void cups_of_no_number_are_noted() throws IOException {
        Reading reading = read("cup_solid = \"20 cm2\"\ncups = 0", "");
        assertThat(assertInstanceOf(Reading.Good.class, reading).notes().toString())
                .contains("no cups are counted");
    }

    @Test
    void an_overflow_hole_must_lie_below_the_rim() throws IOException {
        assertEquals(
                0.016,
                tray("overflow = \"8 cm\"\noverflow_bore = \"16 mm\"", "")
                        .overflowBoreM()
                        .orElseThrow(),
                1e-15);
        assertThat(fault("overflow = \"9 cm\"\noverflow_bore = \"16 mm\"", ""))
                .startsWith(
                        "bench.toml:21:17: tray.bench.overflow_bore: found \"16 mm\", allowed: up"
                                + " to 1 cm, from the overflow (9 cm, line 20) to the rim (10 cm,"
                                + " line 16)");
        assertThat(fault("overflow_bore = \"16 mm\"", "")).contains("up to 0 cm");
    }
}
