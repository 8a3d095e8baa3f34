package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

/** Laws of one tray's water, whatever the valve, the thirst and the span. */
class LevelStepProperties {
    @Property
    void a_step_neither_makes_nor_loses_water(
            @ForAll @DoubleRange(min = 0, max = 0.03) @Scale(12) double startM3,
            @ForAll @DoubleRange(min = 0, max = 1e-5) @Scale(15) double lossM3PerS,
            @ForAll @DoubleRange(min = 0, max = 5e-5) @Scale(15) double openM3PerS,
            @ForAll @DoubleRange(min = 1e-3, max = 0.02) @Scale(12) double shutM3,
            @ForAll @DoubleRange(min = 0.01, max = 1) double bandFrac,
            @ForAll @DoubleRange(min = 1, max = 21600) double spanS) {
        balances(startM3, lossM3PerS, openM3PerS, shutM3, bandFrac, spanS);
    }

    @Property
    void two_half_steps_are_one_step(
            @ForAll @DoubleRange(min = 0, max = 0.03) @Scale(12) double startM3,
            @ForAll @DoubleRange(min = 0, max = 1e-5) @Scale(15) double lossM3PerS,
            @ForAll @DoubleRange(min = 0, max = 5e-5) @Scale(15) double openM3PerS,
            @ForAll @DoubleRange(min = 1e-3, max = 0.02) @Scale(12) double shutM3,
            @ForAll @DoubleRange(min = 0.01, max = 1) double bandFrac,
            @ForAll @DoubleRange(min = 1, max = 21600) double spanS) {
        halvesAgree(startM3, lossM3PerS, openM3PerS, shutM3, bandFrac, spanS);
    }

    @Property
    void a_snapping_valve_neither_makes_nor_loses_water_and_halves_agree(
            @ForAll @DoubleRange(min = 0, max = 0.03) @Scale(12) double startM3,
            @ForAll @DoubleRange(min = 0, max = 1e-5) @Scale(15) double lossM3PerS,
            @ForAll @DoubleRange(min = 0, max = 5e-5) @Scale(15) double openM3PerS,
            @ForAll @DoubleRange(min = 1e-3, max = 0.02) @Scale(12) double shutM3,
            @ForAll @DoubleRange(min = 0.01, max = 1) double bandFrac,
            @ForAll boolean open,
            @ForAll @DoubleRange(min = 1, max = 21600) double spanS) {
        snapsSoundly(startM3, lossM3PerS, openM3PerS, shutM3, bandFrac, open, spanS);
    }

    static void balances(
            double startM3,
            double lossM3PerS,
            double openM3PerS,
            double shutM3,
            double bandFrac,
            double spanS) {
        LevelStep step = new LevelStep();
        double wideM3 = shutM3 * (1 - bandFrac);
        step.throttling(startM3, lossM3PerS, openM3PerS, shutM3, wideM3, spanS);
        double passed = startM3 + step.inflowM3;
        assertEquals(passed, step.volumeM3 + step.lossM3, 1e-14 + 1e-12 * passed);
        assertTrue(step.volumeM3 >= 0 && step.inflowM3 >= 0 && step.lossM3 >= 0);
        assertTrue(step.volumeM3 <= Math.max(startM3, shutM3) * (1 + 1e-12));
        assertTrue(step.lossM3 <= lossM3PerS * spanS * (1 + 1e-9) + 1e-14);
        assertTrue(step.inflowM3 <= openM3PerS * spanS * (1 + 1e-9) + 1e-14);
    }

    static void halvesAgree(
            double startM3,
            double lossM3PerS,
            double openM3PerS,
            double shutM3,
            double bandFrac,
            double spanS) {
        LevelStep whole = new LevelStep();
        LevelStep half = new LevelStep();
        double wideM3 = shutM3 * (1 - bandFrac);
        whole.throttling(startM3, lossM3PerS, openM3PerS, shutM3, wideM3, spanS);
        half.throttling(startM3, lossM3PerS, openM3PerS, shutM3, wideM3, spanS / 2);
        double in = half.inflowM3;
        half.throttling(half.volumeM3, lossM3PerS, openM3PerS, shutM3, wideM3, spanS / 2);
        // Exact in real numbers, so only rounding may part them; the exponent's rounding grows with
        // the number of time constants in the span, which is why this is not 1e-15.
        double scale = startM3 + shutM3 + whole.inflowM3;
        assertEquals(whole.volumeM3, half.volumeM3, 1e-10 * scale);
        assertEquals(whole.inflowM3, in + half.inflowM3, 1e-10 * scale);
    }

    static void snapsSoundly(
            double startM3,
            double lossM3PerS,
            double openM3PerS,
            double shutM3,
            double bandFrac,
            boolean open,
            double spanS) {
        LevelStep whole = new LevelStep();
        LevelStep half = new LevelStep();
        double openAtM3 = shutM3 * (1 - bandFrac);
        whole.snapping(startM3, lossM3PerS, openM3PerS, shutM3, openAtM3, open, spanS);
        double passed = startM3 + whole.inflowM3;
        assertEquals(passed, whole.volumeM3 + whole.lossM3, 1e-14 + 1e-12 * passed);
        assertTrue(whole.volumeM3 >= 0 && whole.inflowM3 >= 0 && whole.lossM3 >= 0);
        half.snapping(startM3, lossM3PerS, openM3PerS, shutM3, openAtM3, open, spanS / 2);
        double in = half.inflowM3;
        half.snapping(
                half.volumeM3, lossM3PerS, openM3PerS, shutM3, openAtM3, half.snapOpen, spanS / 2);
        assertEquals(whole.inflowM3, in + half.inflowM3, 1e-9 * (passed + 1e-6));
        assertEquals(whole.volumeM3, half.volumeM3, 1e-9 * (passed + 1e-6));
    }
}
