package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.rig.Liquid;
import tideless.solution.Acidity;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;

class LiquidReaderTest {
    private final TomlFile source = new TomlFile("bench.toml");

    private Table root(String text) {
        source.parse(text);
        return Table.root(source, ScenarioKeys.TABLE);
    }

    private List<String> faults() {
        return source.problems().stream().map(Problem::toString).toList();
    }

    // Molar masses from the IUPAC abridged standard atomic weights: Ca 40.078, HCO3 61.017, CaCO3
    // 100.087 with two HCO3 to one; so 40.078 mg/L Ca and 50.043 mg/L as CaCO3 are 1 mmol/L each.
    @Test
    void an_analysis_in_mg_arrives_in_mol_per_m3() {
        Liquid water =
                LiquidReader.water(
                                root("[water.analysis]\ncalcium = \"40.078 mg/L\"\n"
                                                + "bicarbonate = \"100.09 mg/L CaCO3\"\n")
                                        .child("water"),
                                Solutions.CURRENT)
                        .value();
        assertEquals(List.of(), faults());
        Composition composition = water.composition();
        assertEquals(1, composition.molPerM3(Component.CA), 1e-9);
        assertEquals(2, composition.molPerM3(Component.C), 2e-4); // printed to five digits
        assertEquals(0, composition.molPerM3(Component.NA));
        assertThat(source.notes()).isEmpty(); // it balances
    }

    @Test
    void an_analysis_that_does_not_balance_is_noted() {
        LiquidReader.water(
                root("[water.analysis]\nsodium = \"3 mmol/L\"\n").child("water"),
                Solutions.CURRENT);
        assertEquals(List.of(), faults());
        assertThat(source.notes())
                .singleElement()
                .asString()
                .startsWith(
                        "bench.toml:1: the analysis does not balance: 3 mmol/L of positive and 0");
    }

    @Test
    void plain_mg_of_nitrate_is_a_fault_that_lists_both_meanings() {
        assertFalse(
                LiquidReader.water(
                                root("[water.analysis]\nnitrate = \"25 mg/L\"\n").child("water"),
                                Solutions.CURRENT)
                        .isSound());
        assertThat(faults())
                .containsExactly(
                        "bench.toml:2:11: water.analysis.nitrate: found \"25 mg/L\", allowed: from 0"
                                + " mmol/L up to 100 mmol/L, in mmol/L, umol/L, mg/L NO3, mg/L N, meq/L");
    }

    @Test
    void a_name_and_an_analysis_are_one_too_many() {
        root("[water]\nsource = \"rain\"\n[water.analysis]\nsodium = \"1 mmol/L\"\n");
        assertFalse(
                LiquidReader.water(
                                Table.root(source, ScenarioKeys.TABLE).child("water"),
                                Solutions.CURRENT)
                        .isSound());
        assertThat(faults())
                .containsExactly(
                        "bench.toml:2:10: water.source: found \"rain\" beside [water.analysis],"
                                + " allowed: one of the two");
    }

    @Test
    void a_feed_weaker_than_its_water_is_a_fault() {
        Table root =
                root(
                        "[water]\nsource = \"hard-tap\"\n[feed]\nrecipe = \"steiner\"\nec = \"0.2 mS/cm\"\n");
        Read<Liquid> water = LiquidReader.water(root.child("water"), Solutions.CURRENT);
        assertFalse(
                LiquidReader.feed(root.child("feed"), water, 0, Solutions.CURRENT, Read::absent)
                        .isSound());
        assertThat(faults())
                .singleElement()
                .asString()
                .startsWith("bench.toml:5:6: feed.ec: found \"0.2 mS/cm\", allowed: above the ");
    }

    private Liquid feedIn(String water, String more) {
        Table root = root(water + "[feed]\nrecipe = \"hoagland-2\"\nec = \"1.6 mS/cm\"\n" + more);
        Read<Liquid> read = LiquidReader.water(root.child("water"), Solutions.CURRENT);
        Read<Liquid> feed =
                LiquidReader.feed(root.child("feed"), read, 0, Solutions.CURRENT, Read::absent);
        assertEquals(List.of(), faults());
        return feed.value();
    }

    /** Hard tap holds some 4 meq/L of bicarbonate: four feeds' worth of phosphate would do it. */
    @Test
    void acid_by_default_stops_at_a_feeds_worth_of_phosphate_and_says_what_it_leaves() {
        Composition hard = feedIn("[water]\nsource = \"hard-tap\"\n", "ph = 6.0\n").composition();
        Composition without =
                feedIn("[water]\nsource = \"pure\"\n", "ph = 6.0\nacid = \"sulfuric\"\n")
                        .composition();
        assertThat(hard.molPerM3(Component.P)).isBetween(1.0, 1 + without.molPerM3(Component.P));
        double inAir = Acidity.phInAir(hard, 25, ElectricalConductivity.AIR_CO2_PPM);
        assertThat(inAir).isGreaterThan(7.5);
        assertThat(source.notes())
                .singleElement()
                .asString()
                .startsWith("bench.toml:6: feed.ph: pH 6 is not reached: phosphoric acid stops at")
                .contains("leaves pH " + Math.round(10 * inAir) / 10.0)
                .contains("% of the water would do it", "goggles")
                .contains("or sulfuric acid, which brings none");
        // And it does.
        Composition sulfuric =
                feedIn("[water]\nsource = \"hard-tap\"\n", "ph = 6.0\nacid = \"sulfuric\"\n")
                        .composition();
        assertEquals(6.0, Acidity.phInAir(sulfuric, 25, ElectricalConductivity.AIR_CO2_PPM), 0.05);
    }

    @Test
    void the_share_of_rain_that_is_told_does_it_and_a_twentieth_less_does_not() {
        Composition hard = Solutions.CURRENT.water("hard-tap");
        Composition rain = Solutions.CURRENT.water("rain");
        double share = made("hoagland-2", hard, 1.6, 6).rainShareFrac().orElseThrow();
        assertThat(share).isBetween(0.5, 0.95);
        Solutions.Made does = mixed(hard, rain, share);
        assertEquals(6, does.ph(), 1e-6);
        assertTrue(does.phReached());
        assertThat(mixed(hard, rain, share - 0.05).ph()).isGreaterThan(6.05);
    }

    private static Solutions.Made mixed(Composition hard, Composition rain, double share) {
        Composition water = hard.times(1 - share).plus(rain.times(share));
        return made("hoagland-2", water, 1.6, 6);
    }

    private static Solutions.Made made(
            String recipe, Composition water, double ecMsPerCm, double ph) {
        return assertInstanceOf(
                Solutions.Made.class,
                Solutions.CURRENT.feed(recipe, water, ecMsPerCm, ph, "phosphoric"),
                recipe);
    }

    @Test
    void an_acid_for_trained_staff_is_marked_and_one_for_anybody_is_not() {
        feedIn("[water]\nsource = \"hard-tap\"\n", "acid = \"nitric\"\n");
        assertThat(source.notes())
                .singleElement()
                .asString()
                .startsWith("bench.toml:6: feed.acid: nitric acid 38 %: Gloves and goggles")
                .contains("trained staff only", "3 %", "Read in 2026");
    }

    @Test
    void soft_water_takes_acid_for_anybody_without_a_word() {
        feedIn("[water]\nsource = \"soft-tap\"\n", "ph = 5.8\n");
        assertThat(source.notes()).isEmpty();
    }

    @Test
    void every_named_water_and_recipe_can_be_made() {
        for (String recipe : Solutions.CURRENT.recipes()) {
            for (String name : Solutions.CURRENT.waters()) {
                made(recipe, Solutions.CURRENT.water(name), 2.0, 5.8);
            }
        }
    }

    private Composition water(String keys) {
        Liquid of =
                LiquidReader.water(root("[water]\n" + keys).child("water"), Solutions.CURRENT)
                        .value();
        assertEquals(List.of(), faults());
        return of.composition();
    }

    // 150 ppm on the 500 scale are 0.3 mS/cm: between soft and medium tap water. 0.9 is stronger
    // than hard tap water, and of its make.
    @Test
    void tap_water_by_its_ec_reads_so_and_lies_between_its_neighbours() {
        Composition pen = water("ec = \"150 ppm-500\"\n");
        assertEquals(0.3, ElectricalConductivity.at25MsPerCm(pen), 1e-9);
        Composition soft = Solutions.CURRENT.water("soft-tap");
        Composition medium = Solutions.CURRENT.water("medium-tap");
        assertTrue(pen.molPerM3(Component.CA) > soft.molPerM3(Component.CA));
        assertTrue(pen.molPerM3(Component.CA) < medium.molPerM3(Component.CA));
        Composition hard = Solutions.CURRENT.water("hard-tap");
        Composition harder = Solutions.CURRENT.waterReading(0.9);
        assertEquals(0.9, ElectricalConductivity.at25MsPerCm(harder), 1e-9);
        assertEquals(
                hard.molPerM3(Component.CA) / hard.molPerM3(Component.MG),
                harder.molPerM3(Component.CA) / harder.molPerM3(Component.MG),
                1e-9);
    }

    @Test
    void a_share_of_rain_thins_a_water_by_that_share() {
        Composition tap = Solutions.CURRENT.water("hard-tap");
        Composition rain = Solutions.CURRENT.water("rain");
        Composition half = water("source = \"hard-tap\"\nrain_share = \"40 %\"\n");
        for (Component ion : Component.values()) {
            assertEquals(
                    0.6 * tap.molPerM3(ion) + 0.4 * rain.molPerM3(ion), half.molPerM3(ion), 1e-12);
        }
    }

    @Test
    void a_water_is_told_by_one_of_its_name_its_ec_and_its_analysis() {
        String both = "[water]\nsource = \"rain\"\nec = \"0.3 mS/cm\"\n";
        LiquidReader.water(root(both).child("water"), Solutions.CURRENT);
        assertThat(faults()).singleElement().asString().contains("beside ec");
    }

    // What is told as enough is enough: half of it rain already, 80 % in all.
    @Test
    void the_share_of_rain_that_is_told_is_that_of_all_the_water() {
        String feed = "[feed]\nrecipe = \"hoagland-2\"\nec = \"1.8 mS/cm\"\n";
        String water = "[water]\nec = \"0.65 mS/cm\"\nrain_share = \"%s\"\n";
        String told = rainNote(feed + water.formatted("50 %"), 0.5);
        assertThat(told)
                .contains("rain or reverse-osmosis water for 80 % of the water would do it");
        assertThat(rainNote(feed + water.formatted("80 %"), 0.8)).isEmpty();
    }

    private static String rainNote(String text, double rainFrac) {
        TomlFile file = new TomlFile("bench.toml");
        file.parse(text);
        Table root = Table.root(file, ScenarioKeys.TABLE);
        Read<Liquid> water = LiquidReader.water(root.child("water"), Solutions.CURRENT);
        assertTrue(
                LiquidReader.feed(
                                root.child("feed"),
                                water,
                                rainFrac,
                                Solutions.CURRENT,
                                Read::absent)
                        .isSound());
        return file.notes().stream().map(Object::toString).reduce("", String::concat);
    }
}
