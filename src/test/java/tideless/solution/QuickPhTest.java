package tideless.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** pH without speciation, by hand and beside the whole chemistry. */
class QuickPhTest {
    // Free acid alone, as activity 0.87 of it: 10^-4.5 is 0.0316 mmol/L, 0.03635 with all ions.
    @Test
    void free_acid_alone_is_the_ph() {
        assertEquals(4.5, QuickPh.of(0.036348, 0, 0), 1e-4);
        assertEquals(3.5, QuickPh.of(0.36348, 0, 0), 1e-4);
    }

    // 1 mmol/L of phosphate at pH 6: an eighth is HPO4 (1 / (1 + 10^0.85)): 0.1238 of alkali,
    // less the proton's 0.0011; carbon dioxide of 0.1 mmol/L holds 0.1 x 10^-0.35 / 0.87 more.
    @Test
    void phosphate_and_bicarbonate_are_the_alkali() {
        assertEquals(6.0, QuickPh.of(-0.1238 + 0.00115, 1, 0), 1e-3);
        assertEquals(6.0, QuickPh.of(-0.1238 + 0.00115 - 0.05134, 1, 0.1), 1e-3);
    }

    @Test
    void what_lies_outside_reads_as_the_end() {
        assertEquals(QuickPh.HIGHEST, QuickPh.of(-5, 1, 0.1));
        assertEquals(QuickPh.HIGHEST, QuickPh.of(0, 0, 0));
        assertEquals(QuickPh.LOWEST, QuickPh.of(5, 1, 0.1));
    }

    // A feed of 10 mmol/L of nitrate with acid or alkali, in air of 400 to 8000 ppm: within 0.12
    // of the whole chemistry at pH 4 to 6.5.
    @ParameterizedTest
    @CsvSource({
        "0.1, 400",
        "0.05, 400",
        "0.02, 400",
        "0, 400",
        "-0.02, 400",
        "-0.1, 400",
        "0.1, 8000",
        "0.02, 8000",
        "0, 8000",
        "-0.1, 8000",
        "-0.25, 8000"
    })
    void it_reads_as_the_whole_chemistry_does(double acidMolPerM3, double ppm) {
        Composition feed =
                Composition.WATER
                        .with(Component.NO3, 10 + acidMolPerM3)
                        .with(Component.P, 1)
                        .with(Component.SO4, 1)
                        .with(Component.K, 5)
                        .with(Component.CA, 3)
                        .with(Component.MG, 1);
        double ph = Acidity.phInAir(feed, 25, ppm);
        double quick = QuickPh.of(acidMolPerM3, 1, RespiredCarbon.roughlyMolPerM3(ppm));
        assertEquals(ph, quick, 0.12);
    }
}
