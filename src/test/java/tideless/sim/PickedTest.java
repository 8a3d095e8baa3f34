package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import tideless.crop.CropTraits;
import tideless.scenario.Crops;

/** Fruit as it ripens, by the rule's own consequences. */
class PickedTest {
    private static final CropTraits TOMATO = Crops.named("tomato");
    private static final double PER_DAY_CD = 10;
    private static final double PER_DAY_G = 30;

    /** Ripening of one fruit, d. */
    private static final double SPAN_D =
            (TOMATO.stages().firstHarvestCd() - TOMATO.stages().floweringCd()) / PER_DAY_CD;

    /** From the first flower on, at a steady warmth; growth for some days and none after. */
    private static double[] ripe(int days, int growing) {
        double[] grown = new double[days];
        double[] warmth = new double[days];
        for (int day = 0; day < days; day++) {
            grown[day] = day < growing ? PER_DAY_G : 0;
            warmth[day] = TOMATO.stages().floweringCd() + PER_DAY_CD * (day + 1);
        }
        return Picked.ripe(grown, warmth, TOMATO);
    }

    @Test
    void no_fruit_is_picked_before_the_first_is_ripe() {
        double[] picked = ripe(200, 200);
        for (int day = 0; day + 1 < SPAN_D; day++) {
            assertEquals(0, picked[day], 1e-12, "day " + day);
        }
        assertTrue(picked[(int) SPAN_D + 2] > 0);
    }

    @Test
    void a_steady_plant_gives_as_much_as_it_grows() {
        double[] picked = ripe(300, 300);
        assertEquals(PER_DAY_G, picked[299], 1e-9);
    }

    // A day's growth in fruit of all ages waits half of the ripening in the mean.
    @Test
    void what_hangs_is_half_of_what_grows_while_a_fruit_ripens() {
        double[] picked = ripe(300, 300);
        double hangs = 300 * PER_DAY_G - Arrays.stream(picked).sum();
        assertEquals(0.5 * SPAN_D * PER_DAY_G, hangs, 0.03 * hangs);
    }

    @Test
    void all_fruit_is_ripe_one_ripening_after_growth_has_ended() {
        double[] picked = ripe(300, 200);
        assertEquals(200 * PER_DAY_G, Arrays.stream(picked).sum(), 1e-6);
        for (double g : picked) {
            assertTrue(g >= -1e-9, "" + g);
        }
        assertEquals(0, picked[299], 1e-9);
    }
}
