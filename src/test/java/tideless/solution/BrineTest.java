package tideless.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class BrineTest {
    private static double[] salt(double sodiumMol) {
        double[] mol = new double[Component.COUNT];
        mol[Component.NA.ordinal()] = sodiumMol;
        mol[Component.CL.ordinal()] = sodiumMol;
        return mol;
    }

    // NaCl dissolves to 6.1 mol/kg at 25 degC.
    @Test
    void a_film_keeps_its_salt_up_to_its_solubility_and_not_beyond() {
        assertEquals(1, Brine.dissolvedFrac(salt(6.09e-3), 1e-6));
        assertEquals(6.1 / 6.2, Brine.dissolvedFrac(salt(6.2e-3), 1e-6), 1e-12);
        assertEquals(0.1, Brine.dissolvedFrac(salt(61e-3), 1e-6), 1e-12);
    }

    // K2SO4 at 0.69 mol/kg bounds sulfate long before potassium's 3.8 does.
    @Test
    void the_least_soluble_salt_decides() {
        double[] mol = new double[Component.COUNT];
        mol[Component.K.ordinal()] = 2.76;
        mol[Component.SO4.ordinal()] = 1.38;
        assertEquals(0.5, Brine.dissolvedFrac(mol, 1e-3), 1e-12);
    }

    @Test
    void no_brine_holds_more_than_ten_equivalents_of_cations() {
        double[] mol = new double[Component.COUNT];
        mol[Component.CA.ordinal()] = 6;
        mol[Component.NO3.ordinal()] = 12;
        assertEquals(10.0 / 12, Brine.dissolvedFrac(mol, 1e-3), 1e-12);
        assertTrue(Brine.MOST_MOL_PER_M3[Component.NO3.ordinal()] > 1e9);
    }
}
