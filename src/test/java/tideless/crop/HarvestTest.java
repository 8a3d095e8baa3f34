package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HarvestTest {
    private static final CropTraits LETTUCE = CropFiles.read("lettuce");
    private static final OptionalDouble WANTED = OptionalDouble.of(180);

    // Growers cut heads of 150 to 250 g (suspended-pot practice, second hand), or wait. 37
    // plants/m2
    // under 11.5 mol/m2 a day: by the stage alone such heads are cut lighter than that.
    @Test
    void a_crowded_lettuce_is_waited_for() {
        double wantedG = LETTUCE.harvest().freshG().orElseThrow();
        assertTrue(150 <= wantedG && wantedG <= 250, "wanted " + wantedG);
        Plant byStage = crowded(OptionalDouble.empty());
        Plant byWeight = crowded(LETTUCE.harvest().freshG());
        assertTrue(Growing.freshG(LETTUCE, byStage) < 150);
        assertTrue(Growing.freshG(LETTUCE, byWeight) >= wantedG);
    }

    private static Plant crowded(OptionalDouble wantedG) {
        RoomSeason room = Emergence.lamp(200, 16, 21, 19, 0.65, 0.70);
        Plant plant = Growing.raisedInNursery(LETTUCE, 14);
        while (!Growing.isRipe(
                LETTUCE, plant.thermalTimeCd(), Growing.freshG(LETTUCE, plant), wantedG)) {
            plant = room.dayLater(LETTUCE, plant, 1 / 37.0);
        }
        return plant;
    }

    @Test
    void a_head_is_cut_at_the_weight_wanted_and_not_before() {
        assertFalse(Growing.isRipe(LETTUCE, 700, 179.9, WANTED));
        assertTrue(Growing.isRipe(LETTUCE, 700, 180, WANTED));
        double stage = LETTUCE.stages().firstHarvestCd();
        assertFalse(Growing.isRipe(LETTUCE, stage, 179.9, WANTED));
    }

    @Test
    void what_never_weighs_enough_is_cut_when_it_may_stand_no_longer() {
        double latest = LETTUCE.harvest().latestCd();
        assertFalse(Growing.isRipe(LETTUCE, latest - 1, 20, WANTED));
        assertTrue(Growing.isRipe(LETTUCE, latest, 20, WANTED));
    }

    @Test
    void fruit_ripens_by_its_stage_whatever_is_wanted() {
        CropTraits tomato = CropFiles.read("tomato");
        double ripe = tomato.stages().firstHarvestCd();
        assertEquals(OptionalDouble.empty(), tomato.harvest().freshG());
        assertFalse(Growing.isRipe(tomato, ripe - 1, 5000, OptionalDouble.of(100)));
        assertTrue(Growing.isRipe(tomato, ripe, 0, OptionalDouble.of(100)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lettuce",
                "pak-choi",
                "celery",
                "basil",
                "spinach",
                "kale",
                "chard",
                "rocket",
                "mizuna",
                "coriander",
                "parsley",
                "mint"
            })
    void a_leaf_crop_says_what_it_should_weigh_and_how_long_it_may_stand(String name) {
        CropTraits crop = CropFiles.read(name);
        assertTrue(crop.harvest().freshG().isPresent());
        assertTrue(crop.harvest().latestCd() > crop.stages().firstHarvestCd());
    }
}
