package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.RandomDistribution;
import net.jqwik.api.ShrinkingMode;
import tideless.rig.Filling;
import tideless.rig.Tray;

/**
 * The water of a random rig does not depend on how the run is cut into steps, nor on the order of
 * its trays.
 *
 * <p>A rig is known by its seed ({@link RandomRig}), which a failure prints; seeds are not shrunk,
 * as a smaller one is no simpler. Unlike {@link ConservationTest} no outcome is summed up over rigs
 * and unlike {@link EngineAgainstGeneralPurposeTest} nothing but the engine runs: it is held
 * against itself, cut differently.
 *
 * <p>Volumes, inflows and spills are held to 1e-6 of what a tray holds at its setting, or of all
 * that passed through it where that is more: a piece of closed form may bend by 2e-8 of the tray,
 * one of Runge and Kutta errs by 1e-10 of it, and a few dozen pieces lie between two changes of the
 * thirst, after which the valve pulls the level back to its rest. Both cuts may err, in opposite
 * ways.
 */
class StepIndependenceProperties {
    private static final double LAW = 1e-6;

    /** Spans of 10 to 60 minutes between changes of the thirst. */
    private static final int CHANGES = 8;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs().withDistribution(RandomDistribution.uniform());
    }

    @Provide
    Arbitrary<Double> steps() {
        return Arbitraries.of(60.0, 137.0, 600.0, 1800.0, 3600.0, 21600.0);
    }

    /** A run of a rig with its steps cut as stated. */
    private interface Cut {
        /** Steps that fill a span, s. */
        List<Double> of(double spanS);
    }

    private static Cut even(double stepS) {
        return spanS -> {
            List<Double> steps = new ArrayList<>();
            double done = 0;
            while (spanS - done > 1e-6) {
                double step = Math.min(stepS, spanS - done);
                steps.add(step);
                done += step;
            }
            return steps;
        };
    }

    /** Every step of an even cut in two to five parts, some of them tiny. */
    private static Cut ragged(double stepS, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return spanS -> {
            List<Double> steps = new ArrayList<>();
            for (double step : even(stepS).of(spanS)) {
                double left = step;
                for (int parts = random.nextInt(1, 5); parts > 0; parts--) {
                    double share = Math.pow(random.nextDouble(), 3);
                    if (share * left > 1e-3) {
                        steps.add(share * left);
                        left -= share * left;
                    }
                }
                steps.add(left);
            }
            return steps;
        };
    }

    /** What a run came to. */
    private static final class Outcome {
        final EngineRun run;
        double emptiedAtS = Double.POSITIVE_INFINITY;

        Outcome(RandomRig rig, Cut cut) {
            run = new EngineRun(rig, GravityFeed.BEND_MOST);
            double atS = 0;
            for (double[] asked : rig.evapotranspirationM3PerS) {
                for (double spanS : cut.of(rig.changeS)) {
                    run.step(asked, atS, spanS);
                    atS += spanS;
                    for (int i = 0; i < asked.length; i++) {
                        TrayRun tray = run.trays.get(i);
                        nothingBelowNothing(
                                tray, run.inM3[i], run.evapotranspiredM3[i], run.spiltM3(i));
                    }
                    assertTrue(run.reservoir.water.m3 >= 0, "holds " + run.reservoir.water.m3);
                }
            }
            for (Event event : run.log.inOrder()) {
                if (event.kind() == Event.Kind.OUTLET_UNCOVERED) {
                    emptiedAtS = Math.min(emptiedAtS, event.atS());
                }
            }
        }

        double heldM3(int i) {
            Tray tray = run.rig.trays.get(i);
            double held = tray.shape().volumeM3(((Filling.ByValve) tray.filling()).settingM());
            return Math.max(held, run.inM3[i]);
        }
    }

    static void nothingBelowNothing(
            TrayRun tray, double inM3, double evapotranspiredM3, double spiltM3) {
        assertTrue(tray.water.m3 >= 0, "volume " + tray.water.m3);
        assertTrue(inM3 >= 0, "came " + inM3);
        assertTrue(evapotranspiredM3 >= 0, "lost " + evapotranspiredM3);
        assertTrue(spiltM3 >= 0, "spilt " + spiltM3);
        for (double mol : tray.salts.mol) {
            assertTrue(mol >= 0, "amount " + mol);
        }
    }

    /** Each tray of one against the tray of the other that {@code to} names. */
    private static void alike(Outcome one, Outcome other, int[] to, double share, String what) {
        for (int i = 0; i < to.length; i++) {
            int j = to[i];
            double held = one.heldM3(i);
            String where = what + ", tray " + i + ": ";
            assertEquals(
                    one.run.trays.get(i).water.m3,
                    other.run.trays.get(j).water.m3,
                    share * held,
                    where + "volume");
            assertEquals(one.run.inM3[i], other.run.inM3[j], share * held, where + "inflow");
            assertEquals(one.run.spiltM3(i), other.run.spiltM3(j), share * held, where + "spill");
            assertEquals(
                    one.run.evapotranspiredM3[i],
                    other.run.evapotranspiredM3[j],
                    share * held,
                    where + "loss");
        }
        assertEquals(
                one.run.reservoir.water.m3,
                other.run.reservoir.water.m3,
                share * one.run.rig.reservoir.fullM3(),
                what + ", reservoir");
    }

    private static int[] inOrder(int size) {
        int[] order = new int[size];
        for (int i = 0; i < size; i++) {
            order[i] = i;
        }
        return order;
    }

    // Half the step.

    @Property(tries = 150, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void half_the_step_gives_the_same_water(
            @ForAll("seeds") long seed, @ForAll("steps") double stepS) {
        halvingChangesNothing(seed, stepS);
    }

    static void halvingChangesNothing(long seed, double stepS) {
        RandomRig rig = new RandomRig(seed, CHANGES);
        Outcome whole = new Outcome(rig, even(stepS));
        Outcome half = new Outcome(rig, even(stepS / 2));
        alike(whole, half, inOrder(rig.trays.size()), LAW, "seed " + seed + ", step " + stepS);
    }

    /** Ten minutes of a rig: a second has to add up as six hours do. */
    @Property(tries = 40, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void steps_of_a_second_give_the_same_water(@ForAll("seeds") long seed) {
        secondsAddUp(seed);
    }

    static void secondsAddUp(long seed) {
        RandomRig rig = new RandomRig(seed, 1);
        Outcome whole = new Outcome(rig, even(21600));
        Outcome seconds = new Outcome(rig, even(1));
        alike(whole, seconds, inOrder(rig.trays.size()), LAW, "seed " + seed);
    }

    // Unequal parts.

    @Property(tries = 150, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void ragged_steps_give_the_same_water(
            @ForAll("seeds") long seed,
            @ForAll("steps") double stepS,
            @ForAll("seeds") long cutSeed) {
        raggedChangesNothing(seed, stepS, cutSeed);
    }

    static void raggedChangesNothing(long seed, double stepS, long cutSeed) {
        RandomRig rig = new RandomRig(seed, CHANGES);
        Outcome whole = new Outcome(rig, even(stepS));
        Outcome ragged = new Outcome(rig, ragged(stepS, cutSeed));
        alike(
                whole,
                ragged,
                inOrder(rig.trays.size()),
                LAW,
                "seed " + seed + ", step " + stepS + ", cut " + cutSeed);
    }

    // The order of the trays.

    @Property(tries = 150, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void reordered_trays_bring_reordered_results(
            @ForAll("seeds") long seed,
            @ForAll("steps") double stepS,
            @ForAll("seeds") long orderSeed) {
        orderDoesNotTell(seed, stepS, orderSeed);
    }

    /**
     * Sums over the trays are taken in their order, so that flows differ in their last digits, and
     * a tray that sits within rounding of a bend's limit may be taken by the other kind of piece:
     * then the two differ by as much as two cuts do. 1e-7 is a tenth of that law.
     */
    static void orderDoesNotTell(long seed, double stepS, long orderSeed) {
        RandomRig rig = new RandomRig(seed, CHANGES);
        List<Integer> order = new ArrayList<>();
        for (int i : inOrder(rig.trays.size())) {
            order.add(i);
        }
        Collections.shuffle(order, new Random(orderSeed));
        RandomRig other = rig.reordered(order);
        int[] to = new int[order.size()];
        for (int i = 0; i < to.length; i++) {
            to[order.get(i)] = i;
        }
        alike(
                new Outcome(rig, even(stepS)),
                new Outcome(other, even(stepS)),
                to,
                1e-7,
                "seed " + seed + ", step " + stepS + ", order " + order);
    }

    // A larger reservoir.

    @Property(tries = 150, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void a_larger_reservoir_of_the_same_head_never_empties_earlier(
            @ForAll("seeds") long seed, @ForAll("steps") double stepS) {
        largerLastsLonger(seed, stepS, 1.5);
    }

    /** A millisecond: the instant is found from volumes that are off by 1e-7 of a tray. */
    static void largerLastsLonger(long seed, double stepS, double times) {
        RandomRig rig = new RandomRig(seed, CHANGES);
        // A tenth of the drawn reservoir, so that nearly every other rig runs out.
        Outcome small = new Outcome(rig.withReservoirTimes(0.1), even(stepS));
        Outcome large = new Outcome(rig.withReservoirTimes(0.1 * times), even(stepS));
        assertTrue(
                large.emptiedAtS >= small.emptiedAtS - 1e-3,
                "seed "
                        + seed
                        + ", step "
                        + stepS
                        + ": "
                        + large.emptiedAtS
                        + " s before "
                        + small.emptiedAtS
                        + " s");
    }

    // Water.

    @Property(tries = 100, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void water_is_kept_whatever_the_cut(
            @ForAll("seeds") long seed,
            @ForAll("steps") double stepS,
            @ForAll("seeds") long cutSeed) {
        waterIsKept(seed, stepS, cutSeed);
    }

    static void waterIsKept(long seed, double stepS, long cutSeed) {
        RandomRig rig = new RandomRig(seed, CHANGES);
        Outcome outcome = new Outcome(rig, ragged(stepS, cutSeed));
        double start = rig.reservoir.shape().volumeM3(rig.reservoir.startLevelM());
        double end = outcome.run.reservoir.water.m3 + outcome.run.reservoir.evaporatedTotalM3;
        double passed = 0;
        for (int i = 0; i < rig.trays.size(); i++) {
            Tray tray = rig.trays.get(i);
            start += tray.shape().volumeM3(tray.startLevelM());
            end +=
                    outcome.run.trays.get(i).water.m3
                            + outcome.run.evapotranspiredM3[i]
                            + outcome.run.spiltM3(i);
            passed += outcome.run.inM3[i];
        }
        assertEquals(
                start,
                end,
                1e-12 * (start + passed),
                "seed " + seed + ", step " + stepS + ", cut " + cutSeed);
    }
}
