package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tideless.solution.Component;

/** Luxury and depletion by hand. */
class HungerTest {
    private static final CropTraits.Contents ENOUGH = new CropTraits.Contents(40, 5, 50, 10, 5, 3);
    private static final CropTraits.Contents MOST = new CropTraits.Contents(50, 8, 80, 20, 8, 5);

    private static CropTraits crop() {
        return CropFiles.read("lettuce")
                .withNutrition(
                        new CropTraits.Nutrition(
                                ENOUGH, ENOUGH, 0.01, 0.05, 0.005, 0.02, 0.04, 0.05, 0.02, 0.1, 0.1,
                                MOST, MOST));
    }

    // 10 g of dry mass: (8 - 5) g/kg * 10 g = 30 mg of P, 0.9686 mmol, of which 1/(1 + 0.2) at
    // 1 mmol/L; (80 - 50) * 10 = 300 mg of K, 7.673 mmol, of which 8/(8 + 16) at 8 mmol/L.
    @Test
    void a_plant_in_a_rich_solution_stores_phosphate_and_potassium() {
        double[] solution = new double[Component.COUNT];
        solution[Component.P.ordinal()] = 1;
        solution[Component.K.ordinal()] = 8;
        double[] store = new double[Component.COUNT];
        Hunger.storeMol(crop(), new Plant(0, 7, 2, 0, 1, 0), solution, store);
        assertEquals(0.9686e-3 / 1.2, store[Component.P.ordinal()], 1e-7);
        assertEquals(7.673e-3 / 3, store[Component.K.ordinal()], 1e-6);
        assertEquals(0, store[Component.NO3.ordinal()] + store[Component.CA.ordinal()]);
    }

    // A gram of growth needs 10 mg of Ca, 0.2495 mmol, and holds 20 mg at most. Half a litre at 1
    // mmol/L brings 0.25 mmol: hardly more than need. A litre at 4 brings 2: the ceiling holds.
    @Test
    void calcium_comes_with_the_water_between_need_and_ceiling() {
        assertEquals(
                0.25e-3 - 10e-3 / 40.078,
                Hunger.calciumWithWaterMol(crop(), 1, 0, 1, 0.5e-3),
                1e-12);
        assertEquals(10e-3 / 40.078, Hunger.calciumWithWaterMol(crop(), 1, 0, 4, 1e-3), 1e-12);
        assertEquals(0, Hunger.calciumWithWaterMol(crop(), 1, 0, 0.1, 0.1e-3));
        assertEquals(0, Hunger.calciumWithWaterMol(crop(), 0, 0, 4, 1e-3));
    }

    @Test
    void a_richer_solution_never_stores_less() {
        double last = -1;
        for (double k = 0; k < 30; k += 0.5) {
            double[] solution = new double[Component.COUNT];
            solution[Component.K.ordinal()] = k;
            double[] store = new double[Component.COUNT];
            Hunger.storeMol(crop(), new Plant(0, 7, 2, 0, 1, 0), solution, store);
            assertTrue(store[Component.K.ordinal()] > last);
            last = store[Component.K.ordinal()];
        }
    }
}
