package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * Predicted beside published, nothing fitted. A miss stands here with its reason; a miss that turns
 * into a hit fails the test too, so that somebody looks.
 */
class EmergenceTest {
    static final Map<String, String> MISSES =
            new TreeMap<>(
                    Map.ofEntries(
                            Map.entry(
                                    "screenhouse-sweet-pepper",
                                    "a third of what the open field loses, the abstract says: how much leaf and light there was under the screen is not in it; at leaf area index 1 ours drinks 2.7"),
                            Map.entry(
                                    "bright-dwarf-tomato",
                                    "shares of growth go by thermal time in ours, not by light"),
                            Map.entry(
                                    "fan-cucumber",
                                    "the form's answer to dry air is half of the published gain at the air assumed here; on measured cucumber houses, day by day, its answer is that of the plants (1.3 against 1.6 L/m2/d per kPa), and the light of the two houses is not in the abstract"),
                            Map.entry(
                                    "uptake-lettuce-Ca",
                                    "a hundredth short of three quarters of the row: contents were chosen at a growth that was 6 % more for the same water, and were left as they are"),
                            Map.entry(
                                    "chamber-lettuce",
                                    "a fifth short: its seedling is 4 days old and no light makes it grow faster than the fastest herbs; the published crop's start is not known"),
                            Map.entry(
                                    "summer-lettuce-fresh",
                                    "the litres are those of the other forms (2.5 L/m2/d; a full stand 3.6 by the canopy and by the house's form alike), the growth is not theirs: 0.44 g of shoot per mol in ours, 0.39 on average in greenhouses (a row of its own), and with that 14.5 L/kg; at 30 degC and 45 % by day ours takes 17.8 L/kg, and the row is met. Suspended pots in the sun take 11 to 20 (second hand). Light, density, salt and air of that house are not in the abstract"),
                            Map.entry("summer-lettuce-dry", "as its fresh weight"),
                            Map.entry(
                                    "season-strawberry",
                                    "four in a hundred short: its plugs close over half a year in such cool air (leaf area index 1.8 after 90 days, 2.4 after 120) and drink 1.5 L/m2/d at full leaf; days and light of that house are not in the abstract"),
                            Map.entry(
                                    "light-spinach",
                                    "ours gains ever less from light but does not stop: leaves are as many times thicker as their source says, and light use falls from 200 umol/m2/s on"),
                            Map.entry(
                                    "ropokis-sweet-pepper-K",
                                    "one hundredth short; figures of a summary, above those of other houses"),
                            Map.entry(
                                    "nederhoff-sweet-pepper",
                                    "a third of the published gain is a larger share to fruit; ours gains by growth alone (two thirds of the published gain would be 1.31, the crop's rule gives 1.18 for growth)"),
                            Map.entry(
                                    "bush-chilli",
                                    "three in a thousand short, where it covers 0.33 m2 (92 L when it covered 0.16); the trial's is a bush of a metre that drank 5.9 L on its best day"),
                            Map.entry(
                                    "carotti-dry",
                                    "nearly twice the mean of 53 studies, which sets our light use: an "
                                            + "upper case"),
                            Map.entry(
                                    "carotti-fresh",
                                    "as its dry weight; besides 3.5 % of dry matter there, 4.5 % here"),
                            Map.entry(
                                    "kratky-head",
                                    "light, warmth, density and days are not published: at 12 mol/d ours weighs 235 g after 35 days, at 19/14 degC 216 g, after 28 days 235 g, 36 to the tank at 12 mol/d 200 g"),
                            Map.entry(
                                    "kratky-days",
                                    "one day early, as the heavier head: light and warmth assumed, no loss to still roots here"),
                            Map.entry(
                                    "chamber-strawberry",
                                    "ours is planted as a plug of 2.5 g and has a leaf area index of 1.8 after 40 of the 85 days; closed it drinks 1.7, in the band; the published crop's start is not known"),
                            Map.entry(
                                    "ksc-lettuce-peak",
                                    "from memory, and the leaf area of that stand is not known: at an "
                                            + "index of 3 ours drinks 2.1, at the 4.5 it has here 2.8"),
                            Map.entry(
                                    "mature-chilli",
                                    "a canopy of 4 at a stand of 6 plants/m2 drinks like any other; "
                                            + "the published figure is of compact plants and has low confidence"),
                            Map.entry(
                                    "graamans-day",
                                    "dark leaf at 1000 s/m, there 450: with 450 ours is 2.19 and this "
                                            + "row met, but the day's water of four other trials lies further "
                                            + "off (fresh per water 55 and 60 g/L, published up to 75 and 71)"),
                            Map.entry(
                                    "two-models-lettuce",
                                    "the stage's coefficient of a field crop is low beside a canopy in "
                                            + "moving dry air; in lamp rooms nothing measured decides"),
                            Map.entry(
                                    "pond-lettuce",
                                    "the 11-day seedling is small in ours, and 24 days never make it up; its nursery is from memory"),
                            Map.entry(
                                    "gobilik-pak-choi",
                                    "28 degC costs ours a third (65 g at 24/20 degC) and its canopy closes late; light assumed"),
                            Map.entry(
                                    "dry-per-litre-sweet-pepper",
                                    "four in a hundred short: yield and litres of a year of the best houses, from memory; of a crop whose fruit and water were read (Meca et al. 2007) ours has both within the band"),
                            Map.entry(
                                    "uptake-tomato-Ca",
                                    "three in a hundred short of three quarters of the row, which no plant holds: 2.75 mmol/L at 4.8 g of dry matter a litre with three quarters of it in fruit (2 g/kg) would be 85 g/kg of leaf and stem; old leaves hold 35-50 (from memory). In water culture 1.76-2.03 was measured, and by tissue 1.06 reckoned; balances of solutions come out above tissue for calcium (Savvas et al. 2014, abstract): part falls out or is thrown away"),
                            Map.entry(
                                    "uptake-sweet-pepper-Ca",
                                    "would need 60 g/kg in leaf and stem; old leaves hold 28-40: part of the published calcium is not in the plant; what Ropokis et al. (2018) measured (2.4-3.7) is met"),
                            Map.entry(
                                    "uptake-strawberry-NO3",
                                    "9.5 mmol/L in 3.3 g of dry matter a litre would be 40 g/kg of nitrogen in the whole plant; leaves hold 25-35, fruit 10-16: the row is the strength of a feed, from memory with low confidence; contents by dry matter are 5.5"),
                            Map.entry(
                                    "uptake-strawberry-P",
                                    "a feed's strength, as nitrogen: contents by dry matter are 0.35"),
                            Map.entry(
                                    "uptake-strawberry-K",
                                    "a feed's strength, as nitrogen: contents by dry matter are 1.7"),
                            Map.entry(
                                    "uptake-strawberry-Ca",
                                    "a feed's strength, as nitrogen: contents by dry matter are 0.64"),
                            Map.entry(
                                    "uptake-strawberry-Mg",
                                    "a feed's strength, as nitrogen: contents by dry matter are 0.39"),
                            Map.entry(
                                    "chamber-celery",
                                    "ours has the stomata of lettuce; the published figure, from "
                                            + "memory, is two thirds of what the same table gives every other "
                                            + "leaf crop"),
                            Map.entry(
                                    "weekly-cucumber",
                                    "at 400 ppm as assumed; enriched to the 800 of such houses ours is 904 g, and the row is met"),
                            Map.entry(
                                    "weekly-strawberry",
                                    "a plug of 2.5 g is still half open after 75 days in cool light of ours; the handbooks' plants are older and larger"),
                            Map.entry(
                                    "held-level-tomato",
                                    "twice the published: three trials of tomatoes over still or held solution gave 2.7, 3.1 and 5.1 kg where ours makes 5.3, 4.8 and 6.7, in light, warmth, density and days that are assumed, while of four lit and enriched houses ours is a tenth to a fifth low; what was sold is less than what grew, and pests, cracked fruit and failed set are not in ours"),
                            Map.entry(
                                    "day-4-lettuce",
                                    "a seedling of 14 days and 0.5 g, 22 cm2 of leaf; one of 18 days drinks 0.018 L on that day, one of 21 days 0.028, and nurseries hand over lettuce of one to three weeks"),
                            Map.entry(
                                    "by-leaf-cucumber",
                                    "two in a hundred beyond; the reference is made here without long wave, which would make it less"),
                            Map.entry(
                                    "edible-sweet-pepper",
                                    "the table gives pepper the figures of tomato; ours flowers 34 days after such a seedling is planted and bears fully a month and a half later"),
                            Map.entry(
                                    "edible-strawberry",
                                    "as its water: a plug of 2.5 g; the table's other 12 kg/m2 of leaf and stem, from memory, would be nine times ours at a leaf area index of 3"),
                            Map.entry(
                                    "flower-strawberry",
                                    "ours is a plug with flowers laid down, 4 weeks at 20 degC; the "
                                            + "trial's was bare root and had to make leaves first")));

    @Test
    void what_is_not_a_known_miss_lies_within_the_published_band() {
        List<Emergence.Row> rows = Emergence.rows();
        int seen = 0;
        for (Emergence.Row row : rows) {
            if (!MISSES.containsKey(row.id())) {
                assertTrue(
                        row.hit(),
                        "%s: %s %s, published %s to %s"
                                .formatted(
                                        row.id(), row.found(), row.unit(), row.low(), row.high()));
                seen++;
            }
        }
        assertEquals(rows.size(), seen + MISSES.size(), "a known miss that is no row");
    }

    @Test
    void a_known_miss_is_still_one_and_has_its_reason() {
        for (Emergence.Row row : Emergence.rows()) {
            String reason = MISSES.get(row.id());
            if (reason != null) {
                assertFalse(reason.isBlank());
                assertFalse(row.hit(), row.id() + " is met now: " + row.found());
                assertTrue(row.found() > 0 && row.found() < 1000, row.id());
            }
        }
    }

    // Commercial single plants in 3.8-4 L without refill last to a head of 150-250 g in 5 to 7
    // weeks
    // from seed (Kratky 2002 and 2009, second hand): so the middle of such heads has drunk less
    // than
    // the bottle by then.
    @Test
    void a_bottle_of_four_litres_raises_a_lettuce() {
        CropTraits lettuce = CropFiles.read("lettuce");
        RoomSeason window = Emergence.sun(15, 24, 18, 0.60, 0.75);
        Plant young = Growing.raisedInNursery(lettuce, 10);
        int days = 1;
        while (Growing.freshG(lettuce, window.run(lettuce, young, 0.07, days).plant()) < 200) {
            days++;
        }
        double litres = window.run(lettuce, young, 0.07, days).thirstKg();
        assertTrue(35 <= 10 + days && 10 + days <= 49, "days from seed " + (10 + days));
        assertTrue(litres < 3.8, "litres " + litres);
    }
}
