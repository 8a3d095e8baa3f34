package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.crop.CropTraits;
import tideless.rig.Liquid;
import tideless.rig.Scenario;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.solution.Acidity;
import tideless.solution.Component;
import tideless.solution.Concentrate;
import tideless.solution.ElectricalConductivity;
import tideless.solution.MixingSheet;
import tideless.words.FeedWords;

/** A feed of two bottles by their labels. */
class BottlesTest {
    @TempDir Path folder;

    private static final String RIG =
            """
            title = "Two bottles"
            start = 2026-03-02
            length = "10 days"
            [climate]
            kind = "room"
            day_temperature = "22 degC"
            [water]
            source = "pure"
            [feed]
            ec = "1.4 mS/cm"
            ph = 6.0
            acid = "phosphoric"
            ratio = "1:300"
            [feed.part_a]
            label = "NO3-N 2.58 %, NH4-N 0.127 %, CaO 4.06 %, K2O 1.42 %, density 1.1 kg/L"
            [feed.part_b]
            label = "NO3-N 0.677 %, P2O5 1.93 %, K2O 4.27 %, MgO 0.913 %, SO3 2.42 %, density 1.1 kg/L"
            [tray.a]
            length = "60 cm"
            width = "40 cm"
            depth = "8 cm"
            gap = "0 %"
            start_level = "5 cm"
            thirst = "1 L/day"
            [tray.a.hand]
            to = "5 cm"
            """;

    private Reading read(String text) throws IOException {
        return ScenarioReader.read(
                Files.writeString(folder.resolve("a.toml"), text), TestCrops.LIBRARY);
    }

    private List<Problem> problems(String text) throws IOException {
        return ((Reading.Faulty) read(text)).problems();
    }

    /**
     * Calcium comes from part A alone: 4.06 % of CaO, 56.077 g/mol, are 0.724 mol/kg; so many grams
     * a litre of it as the feed holds of calcium over that, and over 1.1 g/mL so many millilitres.
     */
    @Test
    void a_feed_of_bottles_reads_what_is_asked_and_tells_their_millilitres() throws IOException {
        Scenario scenario = ((Reading.Good) read(RIG)).scenario();
        Liquid feed = scenario.feed();
        assertEquals(1.4, ElectricalConductivity.at25MsPerCm(feed.composition()), 1e-6);
        assertEquals(
                6.0,
                Acidity.phInAir(feed.composition(), 25, ElectricalConductivity.AIR_CO2_PPM),
                1e-6);
        double grams = feed.composition().molPerM3(Component.CA) / (40.6 / 56.077);
        assertEquals("part A", feed.bottles().get(0).name());
        assertEquals(grams, feed.bottles().get(0).gramsPerL(), 1e-6 * grams);
        assertEquals(grams / 1.1, feed.bottles().get(1).millilitresPerL(), 1e-6 * grams);
    }

    /** 12 L at the start, and a litre a day topped up to the level at 08:00: 9.33 L in ten days. */
    @Test
    void a_run_tells_the_litres_of_feed_and_of_each_bottle() throws IOException {
        Scenario scenario = ((Reading.Good) read(RIG)).scenario();
        Trace trace = Simulation.run(scenario);
        assertEquals(0.012 + 0.00933, trace.feedM3(), 1e-5);
        double perL = scenario.feed().bottles().get(0).millilitresPerL();
        String words = FeedWords.inAll(scenario.feed(), 1000 * trace.feedM3());
        assertTrue(words.matches("Feed in all: 21 L, of part A \\d\\d mL, .*"), words);
        assertEquals(
                perL * 21.33,
                Double.parseDouble(words.replaceAll(".*part A ([0-9.]+) mL,.*", "$1")),
                0.51);
    }

    @Test
    void water_topped_up_is_no_feed() throws IOException {
        String text = RIG.replace("to = \"5 cm\"", "to = \"5 cm\"\nwith = \"water\"");
        assertEquals(0.012, Simulation.run(((Reading.Good) read(text)).scenario()).feedM3(), 1e-12);
    }

    @Test
    void what_does_not_go_with_bottles_or_is_missing_is_a_fault_each() throws IOException {
        List<Problem> beside =
                problems(
                        RIG.replace(
                                "ratio = \"1:300\"", "ratio = \"1:300\"\nrecipe = \"steiner\""));
        assertEquals(1, beside.size(), beside.toString());
        assertEquals("feed.recipe", beside.get(0).key());
        assertTrue(beside.get(0).found().contains("beside bottles"), beside.toString());
        List<Problem> missing = problems(RIG.replace("ratio = \"1:300\"\n", ""));
        assertEquals(1, missing.size(), missing.toString());
        assertEquals("feed.ratio", missing.get(0).key());
        List<Problem> oneBottle =
                problems(RIG.replaceAll("(?s)\\[feed.part_b\\]\nlabel[^\n]*\n", ""));
        assertEquals("feed.part_b.label", oneBottle.get(0).key(), oneBottle.toString());
        List<Problem> ratio = problems(RIG.replace("1:300", "300:1"));
        assertEquals("feed.ratio", ratio.get(0).key());
    }

    /**
     * Whoever goes by the label has no meter: a crop is fed the middle of its band (lettuce 1 to 2
     * mS/cm), and where no crop is named all that the labels say.
     */
    @Test
    void bottles_of_which_no_strength_is_told_are_made_up_as_a_recipe_is() throws IOException {
        String without = RIG.replace("ec = \"1.4 mS/cm\"\n", "");
        Scenario full = ((Reading.Good) read(without)).scenario();
        assertEquals(1, full.feed().dose().orElseThrow().frac(), 0.01); // to the hundredth mS/cm
        Scenario fed =
                ((Reading.Good)
                                read(
                                        without.replace(
                                                "thirst = \"1 L/day\"",
                                                "crop = \"lettuce\"\nplants = 4\ncup_bottom = \"4 cm\"")))
                        .scenario();
        CropTraits.Needs needs = Crops.named("lettuce").needs();
        assertEquals(
                (needs.ecLowMsPerCm() + needs.ecHighMsPerCm()) / 2,
                ElectricalConductivity.at25MsPerCm(fed.feed().composition()),
                1e-6);
    }

    /**
     * A label that reads 4.2 mS/cm at its own dose, and 1.4 that were asked for: a third by mass, a
     * little less than by what conducts, for ions of a strong solution hinder each other.
     */
    @Test
    void a_feed_is_told_beside_the_dose_on_its_labels() throws IOException {
        Liquid feed = ((Reading.Good) read(RIG.replace("1:300", "1:100"))).scenario().feed();
        Liquid.Dose dose = feed.dose().orElseThrow();
        assertEquals(feed.bottles().get(0).gramsPerL(), dose.frac() * 1000 / 102, 1e-9);
        assertTrue(dose.labelMsPerCm() > 1.4 && dose.frac() < 1.4 / dose.labelMsPerCm() + 0.01);
        String words = FeedWords.main(feed);
        assertTrue(
                words.matches(
                        "1\\.40 mS/cm; pH .* just mixed; \\d\\d % of the dose on the labels, all of which"
                                + " would read \\d\\.\\d\\d mS/cm"),
                words);
        assertEquals(
                FeedWords.readings(feed.composition()),
                FeedWords.main(new Liquid("", feed.composition())));
    }

    // 5-0-1 is 5 % N, no P2O5, 1 % K2O: with the nitrogen as nitrate the same bottle.
    @Test
    void a_grade_is_read_as_its_three_terms_with_nitrate_and_says_so() {
        OptionReader reader = new OptionReader("");
        Concentrate graded = reader.label("label", "part A", "5-0-1, Ca 5 %, liquid").orElseThrow();
        assertEquals(
                reader.label(
                                "label",
                                "part A",
                                "N-NO3 5 %, P2O5 0 %, K2O 1 %, Ca 5 %, density 1.15 kg/L")
                        .orElseThrow(),
                graded);
        assertEquals(2, reader.remarks().size(), reader.remarks().toString());
        assertTrue(reader.remarks().get(0).contains("taken for nitrate"));
        assertTrue(reader.remarks().get(1).contains("1.15 kg"));
        assertEquals(
                reader.label("label", "part A", "N-NO3 2.58 %, CaO 4 %"),
                reader.label("label", "part A", "N 2.58 %, CaO 4 %"));
    }

    // Potash is K2O; a total of nitrogen is not counted beside its parts.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Total Nitrogen (N) 4 %, Soluble Potash (K2O) 1 %, Calcium 5 % | N 4 %, K2O 1 %, Ca 5 %",
                "Total Nitrogen 4 %, Nitrate Nitrogen 3.7 %, Ammoniacal Nitrogen 0.3 %"
                        + " | N-NO3 3.7 %, N-NH4 0.3 %",
                "Available Phosphate 3 %, Water Soluble Magnesium: 1 %, Sulphur 2 %"
                        + " | P2O5 3 %, Mg 1 %, S 2 %",
                "Potassium 2 %, Phosphorus 1 %, Iron 0.1 %, Chelated Zinc 0.05 % | K 2 %, P 1 %"
            })
    void a_label_may_be_typed_in_the_words_it_prints(String words, String terms) {
        OptionReader reader = new OptionReader("");
        assertEquals(
                reader.label("label", "part A", terms), reader.label("label", "part A", words));
        assertEquals(
                words.contains("Iron"),
                reader.remarks().toString().contains("trace elements are left out"));
    }

    // A US gallon is 3785.4 mL, 768 teaspoons or 256 tablespoons.
    @ParameterizedTest
    @CsvSource({
        "1:300, 300",
        "3 mL per L, 333.333",
        "10 mL per gal, 378.541",
        "4 ml/L, 250",
        "30 mL per 10 L, 333.333",
        "2 tsp per gal, 384",
        "1 tablespoon per gal, 256",
        "0.5 L in 100 L, 200"
    })
    void a_dose_is_a_ratio(String text, double ratio) {
        assertEquals(ratio, new OptionReader("").ratio("ratio", text).orElseThrow(), 0.001);
    }

    @ParameterizedTest
    @ValueSource(strings = {"300:1", "10 mL", "10 g per L", "3 mL per jug", "1 L per L", "per L"})
    void what_is_no_dose_is_refused(String text) {
        OptionReader reader = new OptionReader("");
        assertTrue(reader.ratio("ratio", text).isEmpty());
        assertEquals(1, reader.problems().size());
    }

    @Test
    void a_feed_that_is_bought_is_its_recipe_and_has_no_salts_to_weigh() throws IOException {
        String recipe = "[feed]\nrecipe = \"lettuce-water-culture\"\nec = \"1.4 mS/cm\"\n";
        String rig = RIG.replaceAll("(?s)\\[feed\\].*?(?=\\[(?!feed))", recipe);
        Reading.Good weighed = (Reading.Good) read(rig);
        Reading.Good bought = (Reading.Good) read(rig.replace(recipe, recipe + "bought = true\n"));
        String stated = recipe + "ph = 5.8\n";
        assertEquals(
                weighed.scenario().feed().composition(),
                ((Reading.Good) read(rig.replace(recipe, stated + "bought = true\n")))
                        .scenario()
                        .feed()
                        .composition());
        assertTrue(DayOneMix.of(weighed, 10).isPresent());
        assertTrue(DayOneMix.of(bought, 10).isEmpty());
        assertTrue(
                FeedWords.noSheet(bought.scenario().feed())
                        .matches(
                                "Mix what you feed \\(bought, taken as lettuce-water-culture, EC 1.4"
                                        + " mS/cm, pH [0-9.]+\\) by the label of what you bought,"
                                        + " until your meter reads 1.40 mS/cm.*"));
    }

    /** Nobody pours acid into a feed of which no acid is told: the lime of the tap stays in it. */
    @Test
    void a_bought_feed_is_reckoned_without_acid_unless_one_is_stated() throws IOException {
        String recipe = "[feed]\nrecipe = \"lettuce-water-culture\"\nec = \"1.4 mS/cm\"\n";
        String rig = RIG.replaceAll("(?s)\\[feed\\].*?(?=\\[(?!feed))", recipe);
        rig = rig.replaceAll("source = \"[a-z-]+\"", "source = \"medium-tap\"");
        double without = inAir(rig.replace(recipe, recipe + "bought = true\n"));
        assertTrue(without > 7.5, "" + without);
        String poured = recipe + "bought = true\nacid = \"sulfuric\"\n";
        assertEquals(5.8, inAir(rig.replace(recipe, poured)), 0.05);
        Reading.Good good = (Reading.Good) read(rig.replace(recipe, recipe + "bought = true\n"));
        assertTrue(
                good.notes().stream()
                        .anyMatch(n -> n.toString().contains("no acid is reckoned in a bought")));
    }

    private double inAir(String rig) throws IOException {
        return Acidity.phInAir(
                ((Reading.Good) read(rig)).scenario().feed().composition(),
                25,
                ElectricalConductivity.AIR_CO2_PPM);
    }

    // Its pH of 6.0 is what it reads once it has stood; just mixed it reads less, and that is no
    // wish that asks for more acid.
    @Test
    void the_sheet_of_a_feed_asks_for_its_acid_once() {
        Reading.Good good =
                (Reading.Good) ScenarioReader.read(Path.of("scenarios", "science-room-bench.toml"));
        MixingSheet sheet = DayOneMix.of(good, 50).orElseThrow().sheet();
        assertTrue(sheet.steps().stream().anyMatch(s -> s.kind() == MixingSheet.Kind.ACID));
        assertTrue(sheet.cautions().stream().noneMatch(c -> c.contains("the rest after that day")));
    }

    // Labels are long; both stand in full, and make the sheet: 1:100 at full strength is 10 mL of
    // each to a litre, and 1.5 mS/cm takes 0.39 of it.
    @Test
    void a_feed_by_two_labels_has_a_sheet_for_day_one() {
        Reading.Good good =
                (Reading.Good) ScenarioReader.read(Path.of("scenarios", "two-bottles.toml"));
        assertTrue(
                good.values().stream()
                        .anyMatch(value -> value.value().endsWith("SO3 1.8 %, density 1.1 kg/L")));
        MixingSheet sheet = DayOneMix.of(good, 49).orElseThrow().sheet();
        List<Double> poured =
                sheet.steps().stream()
                        .filter(
                                step ->
                                        step.kind() == MixingSheet.Kind.PART_A
                                                || step.kind() == MixingSheet.Kind.PART_B)
                        .map(MixingSheet.Step::millilitres)
                        .toList();
        assertEquals(2, poured.size());
        for (Liquid.Bottle bottle : good.scenario().feed().bottles()) {
            assertTrue(
                    poured.stream()
                            .anyMatch(mL -> Math.abs(mL - 49 * bottle.millilitresPerL()) < 2));
        }
        assertTrue(
                FeedWords.inAll(good.scenario().feed(), 49)
                        .matches(
                                "Feed in all: 49 L, of part A 1\\d\\d mL, of part B 1\\d\\d mL\\."));
    }
}
