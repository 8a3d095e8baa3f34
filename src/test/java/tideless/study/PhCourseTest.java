package tideless.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tideless.crop.CropTraits;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.scenario.Crops;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Series;
import tideless.sim.Simulation;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.solution.Composition;

/** The pH of a tray with what is not known of its crop's contents. */
class PhCourseTest {
    private static final Composition NITRATE = Composition.of(Map.of(Component.NO3, 10.0));
    private static final Composition AMMONIUM = Composition.of(Map.of(Component.NH4, 10.0));

    private static CropTraits.Provenance range(String key, int value, int low, int high) {
        return new CropTraits.Provenance(
                "nutrition.leaf." + key,
                value + " g/kg",
                low + " g/kg",
                high + " g/kg",
                "made up",
                "assumed");
    }

    /** A leaf crop with contents, in g/kg, and ranges made up for the sum below. */
    private static CropTraits crop(List<CropTraits.Provenance> ranges) {
        CropTraits leaf =
                Crops.named("lettuce")
                        .withContents(
                                new CropTraits.Contents(50, 8, 75, 23, 5, 3),
                                new CropTraits.Contents(50, 8, 75, 23, 5, 3));
        return leaf.withProvenance(ranges);
    }

    private static final CropTraits KNOWN_BADLY =
            crop(
                    List.of(
                            range("nitrogen", 50, 40, 55),
                            range("phosphorus", 8, 5, 13),
                            range("potassium", 75, 55, 110),
                            range("calcium", 23, 12, 28),
                            range("magnesium", 5, 4, 7),
                            range("sulfur", 3, 2, 4)));

    private static double[] held(CropTraits traits) {
        CropTraits.Contents leaf = traits.nutrition().leaf();
        return new double[] {
            leaf.nitrogen(),
            leaf.phosphorus(),
            leaf.potassium(),
            leaf.calcium(),
            leaf.magnesium(),
            leaf.sulfur()
        };
    }

    // By hand, mol charge/kg to the acid end, phosphate as H2PO4-: N -10/14.007 = 0.71393,
    // P -3/30.9738 = 0.09686, K 35/39.0983 = 0.89518, Ca 2 x 5/40.078 = 0.24951,
    // Mg 2 x 2/24.305 = 0.16458, S 2 x 1/32.06 = 0.06238; root of the sum of squares 1.18898.
    // Each goes its charge over that root of its way: N 0.60046, P 0.08146, K 0.75290, Ca 0.20985,
    // Mg 0.13842, S 0.05247. To the base end N 5/14.007 = 0.35696, P 5/30.9738 = 0.16143,
    // K 20/39.0983 = 0.51153, Ca 2 x 11/40.078 = 0.54893, Mg 2/24.305 = 0.08229, S 0.06238;
    // root 0.85271.
    @Test
    void each_content_goes_its_part_of_the_charge_of_the_way_to_its_end() {
        double[] acid = {
            50 - 10 * 0.60046,
            8 - 3 * 0.08146,
            75 + 35 * 0.75290,
            23 + 5 * 0.20985,
            5 + 2 * 0.13842,
            3 - 1 * 0.05247
        };
        double root = 0.85271;
        double[] base = {
            50 + 5 * 0.35696 / root,
            8 + 5 * 0.16143 / root,
            75 - 20 * 0.51153 / root,
            23 - 11 * 0.54893 / root,
            5 - 1 * 0.08229 / root,
            3 + 1 * 0.06238 / root
        };
        assertEquals(
                1.18898,
                Math.sqrt(
                        0.71393 * 0.71393
                                + 0.09686 * 0.09686
                                + 0.89518 * 0.89518
                                + 0.24951 * 0.24951
                                + 0.16458 * 0.16458
                                + 0.06238 * 0.06238),
                1e-5);
        for (int i = 0; i < acid.length; i++) {
            assertEquals(acid[i], held(ContentsEnd.ACID.of(KNOWN_BADLY, NITRATE))[i], 1e-3);
            assertEquals(base[i], held(ContentsEnd.BASE.of(KNOWN_BADLY, NITRATE))[i], 1e-3);
        }
    }

    @Test
    void on_ammonium_more_nitrogen_is_more_acid_and_on_half_of_it_none_matters() {
        assertTrue(held(ContentsEnd.ACID.of(KNOWN_BADLY, AMMONIUM))[0] > 50);
        assertTrue(held(ContentsEnd.BASE.of(KNOWN_BADLY, AMMONIUM))[0] < 50);
        Composition half = Composition.of(Map.of(Component.NO3, 5.0, Component.NH4, 5.0));
        assertEquals(50, held(ContentsEnd.ACID.of(KNOWN_BADLY, half))[0]);
    }

    @Test
    void fruit_has_ranges_of_its_own() {
        CropTraits tomato = Crops.named("tomato");
        CropTraits.Contents fruit = ContentsEnd.ACID.of(tomato, NITRATE).nutrition().fruit();
        assertTrue(fruit.potassium() > tomato.nutrition().fruit().potassium());
        assertTrue(fruit.nitrogen() < tomato.nutrition().fruit().nitrogen());
    }

    @Test
    void contents_without_a_range_stay_as_they_are() {
        CropTraits sure = crop(List.of());
        assertEquals(sure, ContentsEnd.ACID.of(sure, NITRATE));
    }

    @Test
    void the_lowest_and_the_highest_of_each_hour_stand_and_a_dry_tray_has_none() {
        PhCourse course =
                PhCourse.of(
                        List.of(
                                Series.of(6.0, 6.5, Double.NaN, 6.2),
                                Series.of(5.5, 6.6, 5.0, Double.NaN),
                                Series.of(6.1, 6.0, 7.0, 6.3)));
        double[] lowest = {5.5, 6.0, Double.NaN, 6.2};
        double[] highest = {6.1, 6.6, Double.NaN, 6.3};
        for (int hour = 0; hour < lowest.length; hour++) {
            assertEquals(lowest[hour], course.lowest().at(hour));
            assertEquals(highest[hour], course.highest().at(hour));
        }
    }

    private static Scenario scenario(String name) {
        Reading read = ScenarioReader.read(Path.of("scenarios", name + ".toml"));
        return assertInstanceOf(Reading.Good.class, read).scenario();
    }

    @Test
    void a_season_carries_the_doubt_of_its_ph() {
        Scenario bench = scenario("calm-bench");
        Forecast forecast = Forecasts.of(bench, 1);
        List<TrayTrace> runs = new ArrayList<>(forecast.trace().trays());
        for (ContentsEnd end : ContentsEnd.values()) {
            runs.addAll(Simulation.run(end.of(bench)).trays());
        }
        int days = 20;
        int trays = bench.trays().size();
        for (int tray = 0; tray < trays; tray++) {
            PhCourse ph = forecast.ph().get(tray);
            for (int hour = 0; hour < 24 * days; hour++) {
                double likely = runs.get(tray).ph().at(hour);
                double acid = runs.get(trays + tray).ph().at(hour);
                double base = runs.get(2 * trays + tray).ph().at(hour);
                assertEquals(Math.min(likely, Math.min(acid, base)), ph.lowest().at(hour));
                assertEquals(Math.max(likely, Math.max(acid, base)), ph.highest().at(hour));
            }
            assertTrue(ph.highest().at(24 * days - 1) - ph.lowest().at(24 * days - 1) > 0.5);
        }
    }

    @Test
    void where_no_crop_is_known_badly_no_run_is_made_and_nothing_is_in_doubt() {
        Scenario bench = scenario("calm-bench");
        assertTrue(ContentsEnd.matters(bench));
        Scenario known =
                bench.withTrays(
                        bench.trays().stream()
                                .map(
                                        tray ->
                                                tray.withPlanting(
                                                        ((Planting.OfCrop) tray.planting())
                                                                .withTraits(crop(List.of()))))
                                .toList());
        assertFalse(ContentsEnd.matters(known));
        Forecast forecast = Forecasts.of(known, 1);
        for (int tray = 0; tray < known.trays().size(); tray++) {
            double[] likely = forecast.trace().trays().get(tray).ph().toArray();
            assertArrayEquals(likely, forecast.ph().get(tray).lowest().toArray());
            assertArrayEquals(likely, forecast.ph().get(tray).highest().toArray());
        }
    }
}
