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
                                    "as carotti-dry; besides 3.5 % dry matter there, 4.5 % here"),
                            Map.entry(
                                    "kratky-head",
                                    "light, density and days are not published; at 17 mol/d ours has "
                                            + "the published weight after 26 days"),
                            Map.entry(
                                    "kratky-days",
                                    "two days early, as the heavier head; light assumed, no loss to "
                                            + "still roots"),
                            Map.entry(
                                    "chamber-strawberry",
                                    "ours starts from a small plug and does not close its canopy in 85 "
                                            + "days; the published crop's start is not known"),
                            Map.entry(
                                    "ksc-lettuce-peak",
                                    "from memory; carbon dioxide takes 12 % off ours, and the leaf area "
                                            + "of that stand is not known"),
                            Map.entry(
                                    "mature-chilli",
                                    "a canopy of 4 at a stand of 6 plants/m2 drinks like any other; the "
                                            + "published figure has low confidence"),
                            Map.entry(
                                    "graamans-day",
                                    "dark leaf at 1000 s/m, there 450; and deeper leaf in weaker light "
                                            + "opens less, there all leaf is lit alike"),
                            Map.entry("basil-water", "0.1 g/L short of the band"),
                            Map.entry(
                                    "two-models-lettuce",
                                    "the stage's coefficient of a field crop is low beside a canopy in "
                                            + "moving dry air; in lamp rooms nothing measured decides"),
                            Map.entry(
                                    "pond-lettuce",
                                    "the 11-day seedling is small in our nursery, and the crop of 35 "
                                            + "days never makes it up; light of the published nursery not known"),
                            Map.entry(
                                    "walters-dry",
                                    "our young basil grows by a fifth a day and is still open after 28 "
                                            + "days in dull light, so that its ratio is that of open stands; age "
                                            + "and density assumed"),
                            Map.entry(
                                    "walters-fresh",
                                    "as walters-dry; the dry share does not follow light in ours"),
                            Map.entry("dou-basil", "as walters-dry"),
                            Map.entry(
                                    "gobilik-pak-choi",
                                    "28 degC costs ours a quarter and its canopy closes late; light "
                                            + "assumed"),
                            Map.entry(
                                    "mizuna-over-lettuce",
                                    "petioles take nearly half of its shoot and it stays "
                                            + "behind lettuce until its canopy closes"),
                            Map.entry(
                                    "dry-per-litre-tomato",
                                    "our assumed house air is drier than where such yields are made; a "
                                            + "tenth short"),
                            Map.entry(
                                    "uptake-tomato-Ca",
                                    "leaf of 44 g/kg asks for less than comes with the water, 2.0; more "
                                            + "would turn the tray acid; in water culture 1.76 to 2.03 was "
                                            + "measured"),
                            Map.entry("dry-per-litre-cucumber", "one hundredth short of the band"),
                            Map.entry(
                                    "dry-per-litre-sweet-pepper",
                                    "as tomato; light use from memory"),
                            Map.entry(
                                    "dry-per-litre-strawberry",
                                    "as tomato; light use from memory with low confidence"),
                            Map.entry(
                                    "uptake-sweet-pepper-Ca",
                                    "would need 60 g/kg in leaf and stem; old leaves hold 28-40: part "
                                            + "of the published calcium is not in the plant"),
                            Map.entry(
                                    "uptake-strawberry-NO3",
                                    "contents of strawberry times its dry matter per litre give half of "
                                            + "the published row, which is from memory with low confidence"),
                            Map.entry(
                                    "uptake-strawberry-P",
                                    "contents of strawberry times its dry matter per litre give half of "
                                            + "the published row, which is from memory with low confidence"),
                            Map.entry(
                                    "uptake-strawberry-K",
                                    "contents of strawberry times its dry matter per litre give half of "
                                            + "the published row, which is from memory with low confidence"),
                            Map.entry(
                                    "uptake-strawberry-Ca",
                                    "contents of strawberry times its dry matter per litre give half of "
                                            + "the published row, which is from memory with low confidence"),
                            Map.entry(
                                    "uptake-strawberry-Mg",
                                    "contents of strawberry times its dry matter per litre give half of "
                                            + "the published row, which is from memory with low confidence")));

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
