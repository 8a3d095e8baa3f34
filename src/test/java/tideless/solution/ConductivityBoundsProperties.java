package tideless.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** The EC of the full solution lies between its bounds. */
class ConductivityBoundsProperties {
    @Property(tries = 3000)
    void the_reading_lies_between_its_bounds(@ForAll long seed) {
        liesBetween(seed);
    }

    /** How far the bounds lie apart, over the reading. */
    static double liesBetween(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] mol = UndersaturationProperties.randomSolution(random);
        double co2Ppm = Math.exp(Math.log(50) + random.nextDouble() * Math.log(2000));
        Meter meter = new Meter(co2Ppm);
        meter.read(mol);
        ConductivityBounds bounds = new ConductivityBounds(mol);
        String told =
                meter.ecMsPerCm() + " in " + bounds.leastMsPerCm() + " to " + bounds.mostMsPerCm();
        assertTrue(bounds.leastMsPerCm() <= meter.ecMsPerCm(), told);
        assertTrue(meter.ecMsPerCm() <= bounds.mostMsPerCm(), told);
        return (bounds.mostMsPerCm() - bounds.leastMsPerCm()) / meter.ecMsPerCm();
    }

    // Else the law above would say nothing: a feed of half strength, and a whole one. Where sulfate
    // has piled up they lie farther apart, for it hides calcium.
    @Test
    void of_what_stands_in_trays_they_lie_near() {
        assertTrue(apart(5, 3, 2, 1, 0.5, 0.5) < 0.5);
        assertTrue(apart(12, 5, 4, 2, 1.5, 1) < 0.5);
    }

    private static double apart(double no3, double k, double ca, double mg, double so4, double p) {
        double[] mol = new double[Component.COUNT];
        mol[Component.K.ordinal()] = k;
        mol[Component.CA.ordinal()] = ca;
        mol[Component.MG.ordinal()] = mg;
        mol[Component.SO4.ordinal()] = so4;
        mol[Component.P.ordinal()] = p;
        mol[Component.NO3.ordinal()] = no3;
        double charge = k + 2 * (ca + mg) - 2 * so4 - p - no3;
        mol[Component.CL.ordinal()] = Math.max(0, charge);
        Meter meter = new Meter(420);
        meter.read(mol);
        ConductivityBounds bounds = new ConductivityBounds(mol);
        return (bounds.mostMsPerCm() - bounds.leastMsPerCm()) / meter.ecMsPerCm();
    }

    @Test
    void nothing_is_told_of_brine() {
        double[] mol = new double[Component.COUNT];
        mol[Component.K.ordinal()] = 900;
        mol[Component.CL.ordinal()] = 900;
        ConductivityBounds bounds = new ConductivityBounds(mol);
        assertEquals(0, bounds.leastMsPerCm());
        assertEquals(Double.POSITIVE_INFINITY, bounds.mostMsPerCm());
    }
}
