package tideless.solution;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** What falls out, and how much. */
class PrecipitationTest {
    private static final int GYPSUM = Precipitation.Mineral.GYPSUM.ordinal();

    private static double[] fallen(double[] molPerM3, double co2Ppm) {
        double[] fallen = new double[Precipitation.MINERALS.size()];
        new Precipitation().settle(molPerM3, 25, co2Ppm, fallen);
        return fallen;
    }

    // Gypsum dissolves to 15.1 to 15.5 mmol/L in water at 25 degC (recomputed independently from
    // pKsp 4.58 with ion pairs; measured 14.7 to 18.2, Lebedev and Kosorukov 2017). Started from 40
    // mmol/L it must come down to that times what the onset of 0.1 allows: the index of calcium
    // sulfate rises by some 1.25 times log10 of the amount (activities and pairs take the rest), so
    // 10^(0.1/1.25) = 1.20: 18.4 mmol/L. 5 %.
    @Test
    void gypsum_falls_to_its_apparent_solubility() {
        double[] molPerM3 =
                Composition.of(Map.of(Component.CA, 40.0, Component.SO4, 40.0)).toArray();
        double[] fallen = fallen(molPerM3, 420);
        assertEquals(18.4, molPerM3[Component.CA.ordinal()], 18.4 * 0.05);
        assertEquals(40 - molPerM3[Component.CA.ordinal()], fallen[GYPSUM], 1e-9);
        assertEquals(molPerM3[Component.CA.ordinal()], molPerM3[Component.SO4.ordinal()], 1e-9);
        assertEquals(0, fallen[0] + fallen[1]);
    }

    // Hard water left open: with 2.75 mmol/L of calcium and 5 of alkalinity in air of 420 ppm the
    // index of calcite is log10 of 3.16 (0.5) in the end; at pH about 8.3 and I 0.004 alkalinity
    // and calcium that satisfy it are 1.3 to 2 and 0.8 to 1.3 mmol/L: more than half of the
    // calcium lies on the floor. Alkalinity falls by two for each calcium.
    @Test
    void hard_water_left_open_drops_more_than_half_of_its_lime() {
        Composition hard = SourceWater.named("hard-tap").orElseThrow().composition();
        double[] molPerM3 = hard.toArray();
        double[] fallen = fallen(molPerM3, 420);
        double lime = fallen[Precipitation.Mineral.CALCITE.ordinal()];
        assertTrue(lime > 0.5 * 2.75 && lime < 2.4, "fell " + lime);
        assertEquals(
                Precipitation.Mineral.CALCITE.onsetIndex(),
                ClosedForms.calcite(Speciation.inAir(Composition.of(molPerM3), 25, 420)),
                2e-3);
        assertEquals(2.75 - lime, molPerM3[Component.CA.ordinal()], 1e-9);
    }

    @Test
    void carbon_dioxide_below_a_deck_keeps_lime_dissolved() {
        Composition hard = SourceWater.named("hard-tap").orElseThrow().composition();
        double open = fallen(hard.toArray(), 420)[0];
        double close = fallen(hard.toArray(), 5000)[0];
        assertTrue(close < open, close + " against " + open);
    }

    // Hoagland no. 1 at full strength: brushite index -0.56 at pH 5.8 (recomputed independently),
    // so
    // nothing may fall. Near neutral it comes up to the onset of 0.3 and no further, for calcium
    // and
    // magnesium hold PO4-3 ever more; thickened to twice its strength it loses some.
    @Test
    void a_feed_keeps_its_phosphate_in_acid_and_thickened_loses_some_near_neutral() {
        Composition feed = Recipe.named("hoagland-1").orElseThrow().composition();
        assertArrayEquals(new double[3], fallen(feed.toArray(), 420));
        Composition thick = feed.times(2);
        double base =
                ClosedForms.strongBaseMolPerM3(thick, 25, 7.5, Contact.OUTDOOR_AIR).orElseThrow();
        double[] molPerM3 = thick.with(Component.K, 12 + base).toArray();
        assertTrue(fallen(molPerM3, 420)[1] > 0.01);
    }
}
