package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TransplantTest {
    private static final CropTraits CUCUMBER = CropFiles.read("cucumber");
    private static final OptionalDouble NONE = OptionalDouble.empty();

    // Weights and leaf areas of transplants of usual age as nurseries hand them over, from memory,
    // low confidence: tomato with its first truss in sight 40-70 g and 800-2000 cm2, sweet pepper
    // 25-50 g, cucumber with four leaves 20-60 g and 700-1600 cm2.
    @ParameterizedTest(name = "{0} of {1} days")
    @CsvSource({
        "tomato, 42, 40, 70, 800, 2000",
        "sweet-pepper, 49, 25, 50, 700, 1700",
        "cucumber, 24, 20, 60, 700, 1600"
    })
    void the_nursery_hands_over_what_nurseries_do(
            String name, double days, double lowG, double highG, double lowCm2, double highCm2) {
        CropTraits crop = CropFiles.read(name);
        assertEquals(days, crop.nursery().days());
        Plant young = Growing.raisedInNursery(crop, days);
        double freshG = Growing.freshG(crop, young);
        double leafCm2 = 1e4 * Canopy.leafAreaM2(crop, young);
        assertTrue(lowG <= freshG && freshG <= highG, "g " + freshG);
        assertTrue(lowCm2 <= leafCm2 && leafCm2 <= highCm2, "cm2 " + leafCm2);
    }

    @Test
    void a_transplant_is_taken_as_it_was_found() {
        Plant plant =
                Growing.atStart(
                        CUCUMBER,
                        24,
                        new Transplant(
                                NONE,
                                OptionalDouble.of(0.06),
                                OptionalDouble.of(25),
                                NONE,
                                OptionalDouble.of(0.04),
                                false));
        assertEquals(0.06, Canopy.leafAreaM2(CUCUMBER, plant), 1e-9);
        assertEquals(25, Growing.freshG(CUCUMBER, plant), 1e-6);
        assertEquals(0.04, plant.rootLengthM());
    }

    @Test
    void leaves_alone_scale_the_usual_transplant_by_their_square() {
        Plant usual = Growing.raisedInNursery(CUCUMBER, CUCUMBER.nursery().days());
        Plant half =
                Growing.atStart(
                        CUCUMBER,
                        CUCUMBER.nursery().days(),
                        new Transplant(
                                OptionalDouble.of(0.5 * CUCUMBER.nursery().leaves()),
                                NONE,
                                NONE,
                                NONE,
                                NONE,
                                false));
        assertEquals(
                0.25 * Canopy.leafAreaM2(CUCUMBER, usual), Canopy.leafAreaM2(CUCUMBER, half), 1e-9);
    }

    /**
     * Lettuce comes up and its roots grow 2 cm a day at 22 degC, less 4 cm of plug; none of it in a
     * plug that fills its cell.
     */
    @Test
    void roots_that_hang_in_the_nursery_grow_on_from_emergence_by_its_warmth() {
        CropTraits lettuce = CropFiles.read("lettuce");
        double early = hanging(lettuce, 8);
        double dayM = lettuce.roots().elongationMPerDay();
        assertTrue(early > 0.02 && early < 0.08, "" + early);
        assertEquals(early + 2 * dayM, hanging(lettuce, 10), 1e-12);
        assertEquals(0, hanging(lettuce, 4));
        assertEquals(0, Growing.raisedInNursery(lettuce, 10).rootLengthM());
    }

    private static double hanging(CropTraits crop, double ageDays) {
        Transplant hung = new Transplant(NONE, NONE, NONE, NONE, NONE, true);
        return Growing.atStart(crop, ageDays, hung).rootLengthM();
    }

    @Test
    void what_was_not_looked_at_is_as_the_nursery_raised_it() {
        assertEquals(
                Growing.raisedInNursery(CUCUMBER, 21),
                Growing.atStart(CUCUMBER, 21, Transplant.AS_RAISED));
        Plant seed =
                Growing.atStart(
                        CUCUMBER,
                        0,
                        new Transplant(NONE, NONE, OptionalDouble.of(10), NONE, NONE, false));
        assertEquals(10, Growing.freshG(CUCUMBER, seed), 1e-6);
    }
}
