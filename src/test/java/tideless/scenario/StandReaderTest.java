package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Planting;
import tideless.rig.Tending;

/** Density as growers say it, and what they do to a stand by date. The deck is 0.21 m2. */
class StandReaderTest {
    @TempDir Path folder;

    private Reading read(String crop, String more) throws IOException {
        Path file = folder.resolve("bench.toml");
        Files.writeString(
                file,
                """
                title = "t"
                start = 2026-03-02
                length = "60 days"
                climate.kind = "room"
                climate.day_temperature = "22 degC"
                lamp.ppfd = "200 umol/m2/s"
                feed.recipe = "steiner"
                [tray.bench]
                length = "60 cm"
                width = "35 cm"
                depth = "10 cm"
                crop = "%s"
                filling = "sealed"
                %s
                """
                        .formatted(crop, more));
        return ScenarioReader.read(file);
    }

    private Planting.OfCrop planting(String crop, String more) throws IOException {
        Reading reading = read(crop, more);
        return (Planting.OfCrop)
                assertInstanceOf(Reading.Good.class, reading, () -> "" + reading)
                        .scenario()
                        .trays()
                        .get(0)
                        .planting();
    }

    private String fault(String crop, String more) throws IOException {
        Reading reading = read(crop, more);
        List<Problem> problems =
                assertInstanceOf(Reading.Faulty.class, reading, () -> "" + reading).problems();
        assertThat(problems).hasSize(1);
        return problems.get(0).toString();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lettuce | plants = 8 | 8 | 0.21",
                "lettuce | plants = 8, ground = '0.5 m2' | 8 | 0.5",
                "lettuce | plants = 8, plants_per_m2 = 20 | 8 | 0.4",
                "lettuce | plants_per_m2 = 20 | 4 | 0.21",
                "lettuce | plants_per_m2 = 20, ground = '0.5 m2' | 10 | 0.5",
                "lettuce | plants = 10, plants_per_m2 = 20, ground = '0.5 m2' | 10 | 0.5",
                "lettuce | plants = 4, plants_per_m2 = 20 | 4 | 0.21",
                "tomato | plants_per_m2 = 2.5 | 1 | 0.4",
                "tomato | plants = 4, stems = 2, stems_per_m2 = 4 | 4 | 2",
            })
    void any_two_of_plants_ground_and_density_give_the_third(
            String crop, String keys, int plants, double groundM2) throws IOException {
        Planting.OfCrop made = planting(crop, keys.replace(", ", "\n").replace('\'', '"'));
        assertEquals(plants, made.plants());
        assertEquals(groundM2, made.groundM2(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "plants = 3, plants_per_m2 = 20 | plants on the deck | Maybe plants_per_m2 = 14.29",
                "plants = 8, plants_per_m2 = 20, ground = '0.5 m2' | means 10 plants on the ground"
                        + " | Maybe plants_per_m2 = 16",
                "plants_per_m2 = 20, stems_per_m2 = 20 | stems_per_m2 | State one of the two.",
                "stems = 2, plants = 8 | only with a fruit crop | stems",
                "plants_per_m2 = 20, ground = '0.1 m2' | at least the deck | Plants that do not"
                        + " use",
                "plants_per_m2 = 0 | above 0 up to 10000 | plants_per_m2",
            })
    void a_contradiction_is_one_fault(String keys, String found, String hint) throws IOException {
        assertThat(fault("lettuce", keys.replace(", ", "\n").replace('\'', '"')))
                .contains(found)
                .contains(hint);
    }

    @Test
    void without_plants_or_density_plants_are_missed() throws IOException {
        assertThat(fault("lettuce", "")).contains("plants").contains("Maybe add plants = 6.");
    }

    @Test
    void a_week_s_picking_is_dated_to_the_run_s_end() throws IOException {
        Planting.OfCrop basil =
                planting(
                        "basil",
                        "plants = 8\n"
                                + "[tray.bench.leaf_picking]\n"
                                + "from = 2026-03-30\n"
                                + "every = \"7 days\"\n"
                                + "to = 2026-04-15");
        assertThat(basil.tending().acts())
                .containsExactly(
                        new Tending.LeafPicking(28, 0.33),
                        new Tending.LeafPicking(35, 0.33),
                        new Tending.LeafPicking(42, 0.33));
        assertThat(basil.harvestFreshG()).isEmpty();
        assertThat(basil.isPickedForLeaves()).isTrue();
    }

    @Test
    void acts_stand_in_the_order_of_their_days() throws IOException {
        Planting.OfCrop tomato =
                planting(
                        "tomato",
                        """
                        plants = 4
                        ground = "1 m2"
                        topped = 2026-04-20
                        thinning = [{ from = 2026-03-12, plants = 2 }]
                        respacing = [{ from = 2026-03-07, plants_per_m2 = 3.2 },
                                     { from = 2026-03-20, plants_per_m2 = 2 }]
                        [tray.bench.leaf_picking]
                        dates = [2026-04-10]
                        share = "20 %"
                        """);
        assertThat(tomato.tending().acts())
                .containsExactly(
                        new Tending.Spacing(5, 1.25),
                        new Tending.Thinning(10, 2),
                        new Tending.Spacing(18, 1),
                        new Tending.LeafPicking(39, 0.2),
                        new Tending.Topping(49));
        assertEquals(1.25, tomato.mostGroundM2());
        assertThat(tomato.isPickedForLeaves()).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "topped = 2026-04-20 | only with a fruit crop",
                "thinning = [{ from = 2026-03-12, plants = 8 }] | below the 8 that hang there",
                "thinning = [{ from = 2026-03-12, plants = 2.5 }] | a whole number of plants",
                "thinning = [{ from = 2026-03-12, plants_per_m2 = 2 }] | as [{ from = 2026-03-16,"
                        + " plants = 4 }]",
                "respacing = [{ from = 2026-03-12, plants_per_m2 = 90 }] | at most 38.1 a m2",
                "respacing = [{ from = 2026-03-02, plants_per_m2 = 20 }] | days after the start",
                "thinning = [{ from = 2027-03-02, plants = 4 }] | to the end, 2026-04-30",
                "leaf_picking.every = '7 days' | either dates, or from with every",
                "leaf_picking.from = 2026-02-20 | days after the start",
                "leaf_picking.share = '99 %' | share",
                "thinning = [{ from = 2026-03-12, plants = 0 }] | with plants above 0 up to 100000",
                "leaf_picking = { from = 2026-03-12, to = 2026-04-02 } | only with every",
                "leaf_picking = { from = 2026-03-12, every = '7 days', to = 2026-03-11 } | days"
                        + " from the first picking on, 2026-03-12",
                "leaf_picking = { dates = [2026-03-12], every = '7 days' } | either dates, or from"
                        + " with every",
                "leaf_picking = { dates = [2026-03-12], to = 2026-04-02 } | either dates, or from"
                        + " with every",
                "leaf_picking = { dates = [] } | at least one date",
                "leaf_picking.from = 2026-03-02 | State what leaf is there on the first day",
            })
    void what_cannot_be_done_is_refused(String key, String allowed) throws IOException {
        String text = key.replace('\'', '"');
        if (key.startsWith("leaf_picking.share")) {
            text += "\nleaf_picking.from = 2026-03-20";
        }
        assertThat(fault("lettuce", "plants = 8\n" + text)).contains(allowed);
    }

    @Test
    void a_wanted_weight_beside_picked_leaves_is_a_fault() throws IOException {
        assertThat(
                        fault(
                                "lettuce",
                                "plants = 8\n"
                                        + "harvest_weight = \"150 g\"\n"
                                        + "leaf_picking.from = 2026-03-20"))
                .contains("leaf_picking or harvest_weight");
    }

    @Test
    void beside_a_measured_thirst_none_of_it_stands() throws IOException {
        Reading reading =
                read(
                        "x",
                        "thirst = \"1 L/day\"\nplants_per_m2 = 3\nleaf_picking.from = 2026-03-20");
        assertInstanceOf(Reading.Faulty.class, reading);
    }

    @ParameterizedTest
    @CsvSource({"30 g, 900 cm2", "0.47 g, 22 cm2", "30 g, 181 cm2", "2 g, 110 cm2"})
    void a_young_plant_as_it_was_found(String fresh, String area) throws IOException {
        Planting.OfCrop made =
                planting(
                        "tomato",
                        "plants = 2\ntransplant.fresh = \"%s\"\ntransplant.leaf_area = \"%s\""
                                .formatted(fresh, area));
        double grams = Double.parseDouble(fresh.substring(0, fresh.indexOf(' ')));
        assertEquals(
                grams,
                tideless.crop.Growing.freshG(made.traits(), made.plantAtStart()),
                0.05 * grams);
    }

    @ParameterizedTest
    @CsvSource({"2 kg, 900 cm2", "30 g, 179 cm2", "300 mg, 0.5 m2", "2 g, 161 cm2"})
    void leaf_and_weight_that_no_plant_has_together(String fresh, String area) throws IOException {
        assertThat(
                        fault(
                                "tomato",
                                "plants = 2\ntransplant.fresh = \"%s\"\ntransplant.leaf_area = \"%s\""
                                        .formatted(fresh, area)))
                .contains("bench.toml:16:24: tray.bench.transplant.leaf_area: found \"" + area)
                .contains("of leaf for the \"" + fresh + "\" that the plant weighs")
                .endsWith("Maybe one of the two is of the whole tray; or leave one of them out.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "leaves = 6, height = '20 cm' | height | leaves tells the size",
                "leaf_area = '1400 cm2', height = '20 cm' | height | leaf_area tells the size",
                "leaf_area = '1400 cm2', leaves = 6 | leaves | leaf_area tells the size",
                "fresh = '35 g', leaves = 6 | leaves | fresh tells the size",
                "root_length = '3 cm', roots_hang = true | roots_hang | root_length tells the"
                        + " roots",
            })
    void what_a_better_measure_leaves_without_use_is_said(String keys, String unused, String why)
            throws IOException {
        assertThat(transplanted(keys).stream().map(Note::toString))
                .filteredOn(note -> note.contains("transplant"))
                .singleElement()
                .asString()
                .contains("tray.bench.transplant." + unused + ": not used: " + why);
    }

    @ParameterizedTest
    @CsvSource({"leaves = 6", "height = '20 cm'", "'fresh = \"35 g\", leaf_area = \"1400 cm2\"'"})
    void what_is_used_is_not_said_to_be_idle(String keys) throws IOException {
        assertThat(transplanted(keys)).noneMatch(note -> note.toString().contains("not used"));
    }

    private List<Note> transplanted(String keys) throws IOException {
        String tray = "plants = 2\ntransplant = { %s }".formatted(keys.replace('\'', '"'));
        return assertInstanceOf(Reading.Good.class, read("cucumber", tray)).notes();
    }
}
