package tideless.study;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.util.FastMath;

/**
 * From which size on a leak is said in nine of ten logs like one that was kept (a detection limit;
 * Currie 1968, from memory).
 *
 * <p>What that log would have read with a leak, errors aside, is fitted without one: how much worse
 * it fits is how plainly such a leak shows in the middle of many logs (Cowan and others 2011,
 * section 3.2, from memory). Found by the rig itself and not by slopes: plants that may be
 * thirstier or larger drink up more of a leak the larger it is, and the slopes of the log without
 * one said a sixth too little.
 */
final class LeakLimit {
    /**
     * Standard deviation of the signed root of the likelihood ratio where errors are normal and
     * taken for Student's t with 4: root of the mean square of the score over the mean of its slope
     * (Huber 1967, from memory), 0.668 over 0.786 by quadrature.
     */
    static final double SPREAD = 0.92;

    /**
     * Errors blunt the loss of a reading that lies off: by quadrature over normal ones its mean is,
     * within a tenth, the loss itself of a deviation larger by this, root of 1.25 over 0.786.
     */
    private static final double BLUNT = 1.26;

    /** Beyond so many times the first guess, or as little of it, nobody looks. */
    private static final double MOST = 4;

    /** The search moves less than this in the end, in standard deviations of the prior. */
    private static final double STAYS = 0.02;

    /** How a rig is read. */
    interface Rig {
        /**
         * Readings without a leak.
         *
         * @param away {@code [point][unknown]}: from what was found, in the prior's deviations
         */
        double[][] without(double[][] away) throws InterruptedException;

        /** Readings as it was found, and a leak of so much besides. */
        double[] leaking(double litresPerDay) throws InterruptedException;

        /**
         * How readings move with the unknowns where they were found, {@code [reading][unknown]}, in
         * their own unit.
         */
        double[][] slope();

        /** Standard deviations of readings about such a forecast. */
        double[] deviations(double[] foretold);
    }

    private final Rig rig;
    private final int unknowns;

    private LeakLimit(Rig rig, int unknowns) {
        this.rig = rig;
        this.unknowns = unknowns;
    }

    /**
     * Finds it.
     *
     * @param guess L/day; returned as it is where it is infinite
     * @param plainness wanted of it, in standard deviations of a normal deviate
     */
    static double litresPerDay(Rig rig, int unknowns, double guess, double plainness)
            throws InterruptedException {
        if (Double.isInfinite(guess)) {
            return guess;
        }
        LeakLimit of = new LeakLimit(rig, unknowns);
        double first = of.plainness(guess);
        double second = within(guess, guess * plainness / first);
        double there = of.plainness(second);
        // Straight on by their logarithms; two fits come within a hundredth or two.
        double power = FastMath.log(there / first) / FastMath.log(second / guess);
        return power > 0 && power < Double.POSITIVE_INFINITY
                ? within(guess, second * FastMath.pow(plainness / there, 1 / power))
                : second;
    }

    private static double within(double guess, double litres) {
        return Math.max(guess / MOST, Math.min(guess * MOST, litres));
    }

    /** How plainly a leak shows in the middle of many logs. */
    private double plainness(double litresPerDay) throws InterruptedException {
        double[] read = rig.leaking(litresPerDay);
        double[] blunt =
                Arrays.stream(rig.deviations(read)).map(deviation -> BLUNT * deviation).toArray();
        double[] told = Arrays.stream(read).map(r -> Double.isNaN(r) ? 0 : r).toArray();
        Posterior fitted =
                Posterior.roughly(
                        away -> {
                            double[][] foretold = rig.without(away);
                            for (double[] of : foretold) {
                                for (int i = 0; i < of.length; i++) {
                                    // What cannot be foretold tells nothing of a leak.
                                    of[i] = Double.isNaN(read[i] + of[i]) ? told[i] : of[i];
                                }
                            }
                            return foretold;
                        },
                        told,
                        blunt,
                        List.of(
                                new Posterior.Start(
                                        new double[unknowns], Optional.of(slope(read)))),
                        STAYS);
        return Math.sqrt(2 * fitted.minusLogDensity());
    }

    private double[][] slope(double[] read) {
        double[][] slope = rig.slope();
        for (int i = 0; i < slope.length; i++) {
            if (Double.isNaN(read[i])) {
                slope[i] = new double[unknowns];
            }
        }
        return slope;
    }
}
