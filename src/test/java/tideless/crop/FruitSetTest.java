package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FruitSetTest {
    private static final CropTraits TOMATO = CropFiles.read("tomato");

    // Sato et al. (2000) and Zhang et al. (2008), in Vanthoor (2011): none lost at 28 degC, half at
    // 35, none left at 40; straight between by our own choice.
    @ParameterizedTest
    @CsvSource({"10, 1", "28, 1", "31.5, 0.75", "35, 0.5", "37.5, 0.25", "40, 0", "45, 0"})
    void pollen_of_tomato_in_warm_air(double airC, double frac) {
        assertEquals(frac, FruitSet.frac(TOMATO.response().setInHeat(), airC), 1e-12);
    }

    @Test
    void cucumber_and_lettuce_set_in_any_heat() {
        for (String name : new String[] {"cucumber", "lettuce"}) {
            assertEquals(1, FruitSet.frac(CropFiles.read(name).response().setInHeat(), 44));
        }
    }

    private static Plant at(double thermalTimeCd) {
        return new Plant(thermalTimeCd, 60, 30, 50, 10, 0.4);
    }

    private static Plant grown(Plant plant, double dayFrac, int days) {
        for (int i = 0; i < days; i++) {
            plant =
                    Growing.dayLater(
                            TOMATO,
                            FruitSet.after(TOMATO, plant, dayFrac, 22),
                            0.4,
                            20,
                            400,
                            4.57,
                            22,
                            1);
        }
        return plant;
    }

    /** From flower to ripe 46.8 days at 22 degC (De Koning 1994): half of them are 23.4. */
    @Test
    void a_hot_spell_takes_fruit_as_long_as_it_would_have_grown() {
        Plant after = grown(at(1500), 0, 1);
        assertEquals(1 - 1 / 23.4, after.setFrac(), 0.001);
        assertEquals(Math.exp(-1), grown(at(1500), 0, 23).setFrac(), 0.02);
        Plant cooled = grown(grown(at(1500), 0, 60), 1, 23);
        assertEquals(1 - Math.exp(-1), cooled.setFrac(), 0.08);
    }

    @Test
    void before_the_first_flower_nothing_is_remembered() {
        assertEquals(0, FruitSet.after(TOMATO, at(300), 0, 22).setFrac());
        assertEquals(1, FruitSet.after(TOMATO, at(300).withSetFrac(0), 1, 22).setFrac());
    }

    @Test
    void what_does_not_set_goes_to_leaf_and_stem_and_is_counted() {
        Plant before = at(1500);
        Plant all = grown(before, 1, 1);
        Plant half = grown(before.withSetFrac(0.5), 0.5, 1);
        // The root's 10 %, which comes on top of the light's, is halved by a full load of fruit.
        double more = (1 - 0.05) / (1 - 0.075);
        assertEquals(more, (half.dryG() - before.dryG()) / (all.dryG() - before.dryG()), 1e-9);
        double whole = all.fruitDryG() - before.fruitDryG();
        assertEquals(0.5 * more, (half.fruitDryG() - before.fruitDryG()) / whole, 1e-9);
        assertTrue(half.leafDryG() > all.leafDryG());
        assertEquals(whole, Growing.fruitIfAllSetG(TOMATO, before, all), 1e-9);
        assertEquals(more * whole, Growing.fruitIfAllSetG(TOMATO, before, half), 1e-9);
    }

    @Test
    void a_leaf_crop_is_left_as_it_is() {
        CropTraits lettuce = CropFiles.read("lettuce");
        Plant plant = at(900);
        assertSame(plant, FruitSet.after(lettuce, plant, 0, 22));
    }
}
