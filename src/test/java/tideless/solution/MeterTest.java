package tideless.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A meter in cool and warm solutions, against the whole chemistry at their temperature. */
class MeterTest {
    private static Composition feed(double alkaliMolPerM3) {
        return Composition.WATER
                .with(Component.NO3, 10 - alkaliMolPerM3)
                .with(Component.P, 0.5)
                .with(Component.SO4, 1)
                .with(Component.K, 4.5)
                .with(Component.CA, 3)
                .with(Component.MG, 1);
    }

    private static double ph(Composition solution, double tempC, double ppm) {
        Meter meter = new Meter(420);
        meter.dipInto(tempC, ppm);
        meter.read(solution.toArray());
        return meter.ph();
    }

    @ParameterizedTest
    @CsvSource({
        "10, 2, 3000",
        "15, 2, 3000",
        "20, 2, 1300",
        "20, 0.5, 6000",
        "20, 0.1, 1000",
        "20, -0.05, 3000",
        "25, 2, 3000",
        "27, 1, 2000",
        "32, 2, 6000"
    })
    void it_reads_the_ph_of_the_solution_as_warm_as_it_is(double tempC, double alkali, double ppm) {
        Composition solution = feed(alkali);
        double whole = Acidity.phInAir(solution, tempC, ppm);
        assertEquals(whole, ph(solution, tempC, ppm), 0.025);
    }

    // pK1 falls from 6.382 to 6.352 and Henry's pK rises from 1.407 to 1.468 between 20 and 25
    // degC: the same alkali under the same air is 0.031 more acid in the cooler water.
    @ParameterizedTest
    @CsvSource("2, 3000")
    void cool_water_holds_more_carbon_dioxide(double alkali, double ppm) {
        double cooler = ph(feed(alkali), 20, ppm);
        double warmer = ph(feed(alkali), 25, ppm);
        assertTrue(cooler < warmer);
        assertEquals(0.031, warmer - cooler, 0.003);
    }
}
