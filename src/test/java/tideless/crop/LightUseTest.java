package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Tomato's light use against what the photosynthesis and respiration of a whole canopy make: leaf
 * area index 3, 22 degC, 400 ppm, constants of Vanthoor (2011), thesis Wageningen, Table 9.1 (after
 * Farquhar, and Heuvelink 1996; 0.385 half illegible). 6 g/m2/d of maintenance is assumed.
 */
class LightUseTest {
    private static final double INSIDE_LEAF_PPM = 0.67 * 400;
    private static final double COMPENSATION_PPM = 1.7 * 22;
    private static final double MOST_ELECTRONS_UMOL = 210 * 3;
    private static final double MAINTENANCE_G_PER_M2 = 6;
    private static final double GROWTH_RESPIRATION = 0.28;

    private static double assimilatesUmol(double ppfd) {
        double driven = 0.385 * 0.93 * ppfd * (1 - Math.exp(-0.7 * 3));
        double sum = MOST_ELECTRONS_UMOL + driven;
        double electrons = (sum - Math.sqrt(sum * sum - 2.8 * driven * MOST_ELECTRONS_UMOL)) / 1.4;
        double gross =
                electrons
                        * (INSIDE_LEAF_PPM - COMPENSATION_PPM)
                        / (4 * (INSIDE_LEAF_PPM + 2 * COMPENSATION_PPM));
        return gross * (1 - COMPENSATION_PPM / INSIDE_LEAF_PPM);
    }

    /** Dry matter of the whole plant per light stopped, g/MJ of sun. */
    private static double gPerMj(double assimilatesUmolPerM2, double lightMolPerM2) {
        double sugarG = 30 * 1e-6 * assimilatesUmolPerM2 - MAINTENANCE_G_PER_M2;
        return sugarG
                / (1 + GROWTH_RESPIRATION)
                / (lightMolPerM2 * (1 - Math.exp(-0.7 * 3)) / 4.57);
    }

    private static double lamps(double ppfd) {
        return gPerMj(assimilatesUmol(ppfd) * 16 * 3600, ppfd * 16 * 0.0036);
    }

    private static double sun(double middayPpfd) {
        double umol = 0;
        double mol = 0;
        for (int i = 0; i < 720; i++) {
            double ppfd = middayPpfd * Math.sin(Math.PI * (i + 0.5) / 720);
            umol += assimilatesUmol(ppfd) * 60;
            mol += ppfd * 60e-6;
        }
        return gPerMj(umol, mol);
    }

    // Worked out elsewhere from the same constants: 3.4, 4.0 and 4.2 g/MJ; 5 % for what is rounded.
    @ParameterizedTest(name = "{1} g/MJ under {0} umol/m2/s for 16 h")
    @CsvSource({"200, 3.4", "300, 4.0", "400, 4.2"})
    void a_canopy_makes_more_of_light_up_to_four_hundred(double ppfd, double gPerMj) {
        assertEquals(gPerMj, lamps(ppfd), 0.05 * gPerMj);
    }

    @Test
    void a_canopy_of_vines_does_not_tire_of_the_sun_where_dwarf_tomatoes_do() {
        assertTrue(sun(800) > sun(500));
        assertTrue(CropFiles.read("tomato").growth().lightUseFallsFromUmol() > 400);
    }

    // Means of days in houses: 2.8 from memory (2.5-3.1), and the canopy's. The file is to lie
    // between
    // them, with roots, by the light in which the mean photon of such days falls (pi / 4 of
    // midday).
    @Test
    void tomatos_light_use_is_the_middle_of_what_houses_and_canopies_make() {
        CropTraits.Growth tomato = CropFiles.read("tomato").growth();
        double canopy = 0.5 * (sun(500) + sun(800));
        double ours =
                0.5
                        * tomato.lightUseGPerMj()
                        / (1 - 0.034)
                        * (Growing.lightUseFrac(tomato, 500 * Math.PI / 4)
                                + Growing.lightUseFrac(tomato, 800 * Math.PI / 4));
        assertEquals(0.5 * (2.8 + canopy), ours, 0.15);
    }
}
