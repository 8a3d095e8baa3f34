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
                                    "carotti-dry",
                                    "nearly twice the mean of 53 studies, which sets our light use: an "
                                            + "upper case"),
                            Map.entry(
                                    "carotti-fresh",
                                    "as its dry weight; besides 3.5 % of dry matter there, 4.5 % here"),
                            Map.entry(
                                    "kratky-head",
                                    "light, warmth, density and days are not published: at 12 mol/d "
                                            + "ours weighs 248 g after 35 days, at 19/14 degC 240 g"),
                            Map.entry(
                                    "kratky-days",
                                    "two days early, as the heavier head: light and warmth assumed, no "
                                            + "loss to still roots here"),
                            Map.entry(
                                    "chamber-strawberry",
                                    "ours is planted as a plug and closes its canopy on the last of "
                                            + "the 85 days, when it drinks 1.7; the published crop's start is "
                                            + "not known"),
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
                                    "basil-water",
                                    "0.1 g/L short, with seedlings of 14 days as assumed; with our "
                                            + "usual ones of 21 days, 28 days on, 25.5"),
                            Map.entry(
                                    "two-models-lettuce",
                                    "the stage's coefficient of a field crop is low beside a canopy in "
                                            + "moving dry air; in lamp rooms nothing measured decides"),
                            Map.entry(
                                    "pond-lettuce",
                                    "one gram short of the band: the 11-day seedling is small in ours, "
                                            + "and 24 days never make it up; its nursery is from memory"),
                            Map.entry(
                                    "walters-dry",
                                    "leaves of ours are as thick in dull light as in bright, so that it stays open "
                                            + "there for longer; from seedlings of 21 days, as our nursery raises them, the "
                                            + "ratio is 2.87"),
                            Map.entry(
                                    "walters-fresh",
                                    "as its dry weight; the dry share does not follow light in ours"),
                            Map.entry(
                                    "dou-basil",
                                    "as the ratio of dry weights in 15 over 7 mol/d; age and density assumed"),
                            Map.entry(
                                    "gobilik-pak-choi",
                                    "28 degC costs ours a quarter (72 g at 24/20 degC) and its canopy closes late; light assumed"),
                            Map.entry(
                                    "light-rocket",
                                    "as basil: leaves as thick in dull light as in bright; from memory, low confidence"),
                            Map.entry(
                                    "dry-per-litre-tomato",
                                    "a tenth short with a light use from memory; damper air explains "
                                            + "little of it (4.3 at 85 % by day), and such yields are those of "
                                            + "the best houses"),
                            Map.entry("dry-per-litre-cucumber", "one hundredth short of the band"),
                            Map.entry(
                                    "dry-per-litre-sweet-pepper",
                                    "as tomato, a fifth short: light use from memory, and the yield of "
                                            + "a year from memory"),
                            Map.entry(
                                    "dry-per-litre-strawberry",
                                    "as tomato, a twentieth short; light use from memory with low "
                                            + "confidence"),
                            Map.entry(
                                    "uptake-tomato-Ca",
                                    "leaf of 44 g/kg asks for less than comes with the water, 2.0; "
                                            + "more would turn the tray acid; in water culture 1.76 to 2.03 was "
                                            + "measured"),
                            Map.entry(
                                    "uptake-sweet-pepper-Ca",
                                    "would need 60 g/kg in leaf and stem; old leaves hold 28-40: part "
                                            + "of the published calcium is not in the plant"),
                            Map.entry(
                                    "uptake-strawberry-NO3",
                                    "contents of strawberry times its dry matter per litre give half "
                                            + "of the published row, which is from memory with low confidence"),
                            Map.entry(
                                    "uptake-strawberry-P",
                                    "contents of strawberry times its dry matter per litre give half "
                                            + "of the published row, which is from memory with low confidence"),
                            Map.entry(
                                    "uptake-strawberry-K",
                                    "contents of strawberry times its dry matter per litre give half "
                                            + "of the published row, which is from memory with low confidence"),
                            Map.entry(
                                    "uptake-strawberry-Ca",
                                    "contents of strawberry times its dry matter per litre give half "
                                            + "of the published row, which is from memory with low confidence"),
                            Map.entry(
                                    "uptake-strawberry-Mg",
                                    "contents of strawberry times its dry matter per litre give half "
                                            + "of the published row, which is from memory with low confidence"),
                            Map.entry(
                                    "chamber-celery",
                                    "ours has the stomata of lettuce; the published figure, from "
                                            + "memory, is two thirds of what the same table gives every other "
                                            + "leaf crop"),
                            Map.entry(
                                    "weekly-cucumber",
                                    "at 400 ppm as assumed; enriched to the 800 of such houses ours is "
                                            + "771 g, 4 % short"),
                            Map.entry(
                                    "weekly-tomato",
                                    "at 400 ppm and 60 % of growth in fruit; enriched to the 800 of such houses "
                                            + "ours is 420 g, with the 74 % that full bearing has 518 g"),
                            Map.entry(
                                    "weekly-strawberry",
                                    "a plug of 2.5 g is still half open after 75 days in cool light of "
                                            + "ours; the handbooks' plants are older and larger, and light use "
                                            + "is from memory with low confidence"),
                            Map.entry(
                                    "weekly-chilli",
                                    "the trial is of small sweet fruit; ours are chillies of 12 % dry "
                                            + "matter and 45 % of growth, both assumed"),
                            Map.entry(
                                    "nederhoff-cucumber",
                                    "two thirds of the published gain are more fruits set; ours gain "
                                            + "by growth alone, by the middle of several crops"),
                            Map.entry(
                                    "ripening-sweet-pepper",
                                    "ours is picked green, 35 to 45 days after the flower; the trial's "
                                            + "fruit was ripe"),
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
