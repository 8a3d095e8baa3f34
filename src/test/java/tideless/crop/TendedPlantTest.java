package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Plants whose leaves are picked, or whose growing points are taken out. */
class TendedPlantTest {
    private static final CropTraits BASIL = CropFiles.read("basil");
    private static final CropTraits TOMATO = CropFiles.read("tomato");
    private static final double GROUND_M2 = 0.04;

    private static Plant dayLater(CropTraits traits, Plant plant, double groundM2) {
        return Growing.dayLater(traits, plant, groundM2, 14, 243, 4.7, 24, 1);
    }

    private static Plant grown(CropTraits traits, double groundM2, int days) {
        Plant plant = Growing.raisedInNursery(traits, traits.nursery().days());
        for (int day = 0; day < days; day++) {
            plant = dayLater(traits, plant, groundM2);
        }
        return plant;
    }

    private static double everGrownG(Plant plant) {
        return plant.dryG() + plant.pickedLeafDryG() + plant.pickedStemDryG();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.33, 0.9})
    void a_picking_takes_its_share_of_leaf_area_and_of_the_shoots_weight(double share) {
        Plant before = grown(BASIL, GROUND_M2, 20);
        Growing.Picking picking = Growing.pickLeaves(BASIL, before, GROUND_M2, share);
        Plant left = picking.left();
        assertEquals(
                (1 - share) * Canopy.leafAreaM2(BASIL, before),
                Canopy.leafAreaM2(BASIL, left),
                1e-12);
        double freshG = Growing.freshG(BASIL, before);
        assertEquals(share * freshG, picking.freshG(), 1e-9);
        assertEquals(freshG, Growing.freshG(BASIL, left) + picking.freshG(), 1e-9);
        assertEquals(everGrownG(before), everGrownG(left), 1e-12);
        assertEquals(before.rootDryG(), left.rootDryG());
    }

    // Light over covered ground times what the leaves stop, of what is left and of what was there:
    // growth goes on by the equation of an unpicked plant.
    @Test
    void a_picked_plant_grows_on_by_the_light_its_leaves_stop() {
        Plant before = grown(BASIL, GROUND_M2, 20);
        Plant left = Growing.pickLeaves(BASIL, before, GROUND_M2, 0.6).left();
        double stopped = stoppedM2(BASIL, left) / stoppedM2(BASIL, before);
        assertTrue(stopped < 0.95, "" + stopped);
        double gain = everGrownG(dayLater(BASIL, left, GROUND_M2)) - everGrownG(left);
        double whole = everGrownG(dayLater(BASIL, before, GROUND_M2)) - everGrownG(before);
        assertEquals(stopped * whole, gain, 1e-9);
    }

    private static double stoppedM2(CropTraits traits, Plant plant) {
        return Canopy.coveredGroundM2(traits, plant, GROUND_M2)
                * Canopy.interceptedFrac(
                        Canopy.extinction(traits, plant),
                        Canopy.leafAreaIndex(traits, plant, GROUND_M2));
    }

    @Test
    void regrown_leaves_are_as_thick_as_a_grown_plants_not_as_a_seedlings() {
        Plant before = grown(BASIL, GROUND_M2, 25);
        Plant left = Growing.pickLeaves(BASIL, before, GROUND_M2, 0.95).left();
        double thin = Canopy.leafAreaM2(BASIL, new Plant(0, left.leafDryG(), 0, 0, 0, 0));
        assertTrue(Canopy.leafAreaM2(BASIL, left) < 0.8 * thin);
        Plant later = dayLater(BASIL, left, GROUND_M2);
        assertTrue(Canopy.leafAreaM2(BASIL, later) > Canopy.leafAreaM2(BASIL, left));
    }

    @Test
    void of_a_fruit_crop_only_blades_go_from_the_leaf_that_still_stands() {
        double groundM2 = 0.4;
        Plant before = grown(TOMATO, groundM2, 120);
        double mostM2 = TOMATO.growth().leafAreaIndexMax() * Canopy.boundGroundM2(TOMATO, groundM2);
        assertTrue(Canopy.leafAreaM2(TOMATO, before) > 1.5 * mostM2);
        Growing.Picking picking = Growing.pickLeaves(TOMATO, before, groundM2, 0.3);
        assertEquals(0.7 * mostM2, Canopy.leafAreaM2(TOMATO, picking.left()), 1e-9);
        assertEquals(
                0.7 * TOMATO.growth().leafAreaIndexMax(),
                Canopy.standLeafAreaIndex(TOMATO, picking.left(), groundM2),
                1e-9);
        assertEquals(before.stemDryG(), picking.left().stemDryG());
        assertEquals(before.fruitDryG(), picking.left().fruitDryG());
        assertEquals(everGrownG(before), everGrownG(picking.left()), 1e-9);
        double standing = mostM2 / Canopy.leafAreaM2(TOMATO, before);
        assertEquals(
                0.3 * standing * before.leafDryG() / 0.11,
                picking.freshG(),
                0.1 * picking.freshG()); // dry share of a grown leaf about 11 %, crop file
    }

    @Test
    void a_topped_plant_under_full_load_puts_all_but_root_into_fruit() {
        Plant before = grown(TOMATO, 0.4, 120);
        Plant whole = dayLater(TOMATO, before, 0.4);
        Plant topped = dayLater(TOMATO, before.topped(), 0.4);
        assertEquals(before.leafDryG(), topped.leafDryG());
        assertEquals(before.stemDryG(), topped.stemDryG());
        assertTrue(topped.fruitDryG() > whole.fruitDryG());
        assertEquals(whole.dryG(), topped.dryG(), 1e-9);
        assertEquals(whole.rootDryG(), topped.rootDryG());
    }

    @Test
    void a_topped_plant_ends_one_growth_of_fruit_later_and_never_after_its_own_end() {
        CropTraits.Stages stages = TOMATO.stages();
        double fruitCd = stages.firstHarvestCd() - stages.floweringCd();
        double atCd = stages.floweringCd() + 300;
        assertEquals(atCd + fruitCd, Growing.lastRipeAfterToppingCd(TOMATO, atCd));
        assertEquals(stages.firstHarvestCd(), Growing.lastRipeAfterToppingCd(TOMATO, 1));
        assertEquals(
                stages.lastHarvestCd(),
                Growing.lastRipeAfterToppingCd(TOMATO, stages.lastHarvestCd() - 1));
    }

    @Test
    void picked_basil_is_spent_later_than_it_would_bolt_uncut() {
        double latest = BASIL.harvest().latestCd();
        assertFalse(Growing.isSpent(BASIL, latest));
        assertTrue(Growing.isSpent(BASIL, BASIL.harvest().pickedUntilCd()));
        CropTraits lettuce = CropFiles.read("lettuce");
        assertEquals(lettuce.harvest().latestCd(), lettuce.harvest().pickedUntilCd());
    }

    @Test
    void a_plant_on_two_stems_may_cover_twice_the_ground() {
        assertEquals(2 * TOMATO.growth().spreadM2(), Canopy.boundGroundM2(TOMATO.onStems(2), 10));
    }
}
