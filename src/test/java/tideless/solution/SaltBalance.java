package tideless.solution;

import org.apache.commons.math3.util.FastMath;

/**
 * How one ion builds up in a well-mixed tray, and what flushing it takes: closed forms of the
 * balance V dC/dt = (T + E + B) Cf - T Cu - B C.
 *
 * <p>T is what plants take up, E what evaporates, B what is bled off, Cf the feed, Cu the uptake
 * concentration (mol of ion a volume of water the plants absorb), either fixed or a share of C.
 * Derived from the mass balance; every form is checked against numerical integration. Any
 * consistent units do: the names say SI, litres and days give the same.
 */
public final class SaltBalance {
    private SaltBalance() {}

    /**
     * Constant level, fixed uptake concentration.
     *
     * @param startMolPerM3 C at time 0
     * @param feedMolPerM3 Cf
     * @param uptakeMolPerM3 Cu
     * @param bleedM3PerS B, 0 for a closed tray
     * @return mol/m3; negative where the plants would have taken more than there was
     */
    public static double constantLevelFixedUptake(
            double startMolPerM3,
            double feedMolPerM3,
            double uptakeMolPerM3,
            double volumeM3,
            double transpirationM3PerS,
            double evaporationM3PerS,
            double bleedM3PerS,
            double timeS) {
        double net =
                feedMolPerM3 * (transpirationM3PerS + evaporationM3PerS + bleedM3PerS)
                        - uptakeMolPerM3 * transpirationM3PerS;
        return approach(startMolPerM3, net, bleedM3PerS, volumeM3, timeS);
    }

    /**
     * Constant level, uptake concentration a share of what is there (0: none is taken up, 1: taken
     * as it stands).
     *
     * @return mol/m3
     */
    public static double constantLevelProportionalUptake(
            double startMolPerM3,
            double feedMolPerM3,
            double uptakeShare,
            double volumeM3,
            double transpirationM3PerS,
            double evaporationM3PerS,
            double bleedM3PerS,
            double timeS) {
        double in = feedMolPerM3 * (transpirationM3PerS + evaporationM3PerS + bleedM3PerS);
        double out = uptakeShare * transpirationM3PerS + bleedM3PerS;
        return approach(startMolPerM3, in, out, volumeM3, timeS);
    }

    /** V dC/dt = gain - loss C; the form with expm1 also holds at loss = 0. */
    private static double approach(
            double start, double gain, double loss, double volume, double time) {
        double x = loss * time / volume;
        double mean = x == 0 ? 1 : -FastMath.expm1(-x) / x;
        return start * FastMath.exp(-x) + gain * time / volume * mean;
    }

    /** Steady state with a bleed and fixed uptake, mol/m3; needs a bleed above 0. */
    public static double steadyFixedUptake(
            double feedMolPerM3,
            double uptakeMolPerM3,
            double transpirationM3PerS,
            double evaporationM3PerS,
            double bleedM3PerS) {
        return (feedMolPerM3 * (transpirationM3PerS + evaporationM3PerS + bleedM3PerS)
                        - uptakeMolPerM3 * transpirationM3PerS)
                / bleedM3PerS;
    }

    /** Steady state with proportional uptake, mol/m3; infinite where nothing leaves. */
    public static double steadyProportionalUptake(
            double feedMolPerM3,
            double uptakeShare,
            double transpirationM3PerS,
            double evaporationM3PerS,
            double bleedM3PerS) {
        return feedMolPerM3
                * (transpirationM3PerS + evaporationM3PerS + bleedM3PerS)
                / (uptakeShare * transpirationM3PerS + bleedM3PerS);
    }

    /** Time constant V/(a T + B), s; a = 0 for fixed uptake. */
    public static double timeConstantS(
            double volumeM3, double uptakeShare, double transpirationM3PerS, double bleedM3PerS) {
        return volumeM3 / (uptakeShare * transpirationM3PerS + bleedM3PerS);
    }

    /** Time until a limit, constant level, fixed uptake, no bleed, s; infinite if never. */
    public static double timeToLimitS(
            double startMolPerM3,
            double limitMolPerM3,
            double feedMolPerM3,
            double uptakeMolPerM3,
            double volumeM3,
            double transpirationM3PerS,
            double evaporationM3PerS) {
        if (startMolPerM3 >= limitMolPerM3) {
            return 0;
        }
        double net =
                feedMolPerM3 * (transpirationM3PerS + evaporationM3PerS)
                        - uptakeMolPerM3 * transpirationM3PerS;
        return net > 0
                ? volumeM3 * (limitMolPerM3 - startMolPerM3) / net
                : Double.POSITIVE_INFINITY;
    }

    /** Bleed that holds a limit at steady state, fixed uptake, m3/s; 0 where none is needed. */
    public static double bleedToHoldM3PerS(
            double limitMolPerM3,
            double feedMolPerM3,
            double uptakeMolPerM3,
            double transpirationM3PerS,
            double evaporationM3PerS) {
        if (!(limitMolPerM3 > feedMolPerM3)) {
            throw new IllegalArgumentException(
                    "no bleed holds %s mol/m3 with a feed of %s"
                            .formatted(limitMolPerM3, feedMolPerM3));
        }
        double net =
                feedMolPerM3 * (transpirationM3PerS + evaporationM3PerS)
                        - uptakeMolPerM3 * transpirationM3PerS;
        return Math.max(0, net / (limitMolPerM3 - feedMolPerM3));
    }

    /**
     * Filled once and left to fall, fixed uptake, mol/m3.
     *
     * @param timeS before the water is gone
     */
    public static double filledOnceFixedUptake(
            double startMolPerM3,
            double uptakeMolPerM3,
            double startVolumeM3,
            double transpirationM3PerS,
            double evaporationM3PerS,
            double timeS) {
        double volume = startVolumeM3 - (transpirationM3PerS + evaporationM3PerS) * timeS;
        if (!(volume > 0)) {
            throw new IllegalArgumentException("the tray is dry after " + timeS + " s");
        }
        return (startMolPerM3 * startVolumeM3 - uptakeMolPerM3 * transpirationM3PerS * timeS)
                / volume;
    }

    /**
     * Filled once, proportional uptake, mol/m3.
     *
     * @param volumeShare volume left over volume at the start, above 0
     */
    public static double filledOnceProportionalUptake(
            double startMolPerM3,
            double uptakeShare,
            double transpirationM3PerS,
            double evaporationM3PerS,
            double volumeShare) {
        double plantsShare = transpirationM3PerS / (transpirationM3PerS + evaporationM3PerS);
        return startMolPerM3 * FastMath.pow(volumeShare, uptakeShare * plantsShare - 1);
    }

    /**
     * Fallen to a share of full and refilled to full, proportional uptake: C after so many rounds.
     *
     * @param lowShare volume before a refill over full volume
     * @return mol/m3 just after the last refill
     */
    public static double afterRefills(
            double startMolPerM3,
            double feedMolPerM3,
            double uptakeShare,
            double transpirationM3PerS,
            double evaporationM3PerS,
            double lowShare,
            int refills) {
        double plantsShare = transpirationM3PerS / (transpirationM3PerS + evaporationM3PerS);
        double kept = FastMath.pow(lowShare, uptakeShare * plantsShare);
        double c = startMolPerM3;
        for (int i = 0; i < refills; i++) {
            c = c * kept + feedMolPerM3 * (1 - lowShare);
        }
        return c;
    }

    /** Where {@link #afterRefills} ends, mol/m3. */
    public static double refillSteady(
            double feedMolPerM3,
            double uptakeShare,
            double transpirationM3PerS,
            double evaporationM3PerS,
            double lowShare) {
        double plantsShare = transpirationM3PerS / (transpirationM3PerS + evaporationM3PerS);
        return feedMolPerM3
                * (1 - lowShare)
                / (1 - FastMath.pow(lowShare, uptakeShare * plantsShare));
    }

    /** After draining a fraction and refilling with feed, so many times, mol/m3. */
    public static double afterDrains(
            double startMolPerM3, double feedMolPerM3, double drainedFrac, int times) {
        return feedMolPerM3 + (startMolPerM3 - feedMolPerM3) * FastMath.pow(1 - drainedFrac, times);
    }

    /**
     * Times a fraction must be drained and refilled to come to a target; a real number, to be
     * rounded up. Infinite where the feed itself lies above the target.
     */
    public static double drainsNeeded(
            double startMolPerM3, double feedMolPerM3, double targetMolPerM3, double drainedFrac) {
        if (startMolPerM3 <= targetMolPerM3) {
            return 0;
        }
        if (targetMolPerM3 <= feedMolPerM3) {
            return Double.POSITIVE_INFINITY;
        }
        return FastMath.log((targetMolPerM3 - feedMolPerM3) / (startMolPerM3 - feedMolPerM3))
                / FastMath.log1p(-drainedFrac);
    }

    /**
     * Fraction to drain once and refill with feed to come to a target, 0 to 1; above 1 where the
     * feed itself lies above the target.
     */
    public static double drainFraction(
            double startMolPerM3, double feedMolPerM3, double targetMolPerM3) {
        if (startMolPerM3 <= targetMolPerM3) {
            return 0;
        }
        if (targetMolPerM3 < feedMolPerM3) {
            return Double.POSITIVE_INFINITY;
        }
        return (startMolPerM3 - targetMolPerM3) / (startMolPerM3 - feedMolPerM3);
    }

    /**
     * Feed to run through a well-mixed tray at constant level to come to a target, m3; infinite
     * where the feed lies at or above it. The least thinkable (no mixing at all) is one volume.
     */
    public static double displacementM3(
            double volumeM3, double startMolPerM3, double feedMolPerM3, double targetMolPerM3) {
        if (startMolPerM3 <= targetMolPerM3) {
            return 0;
        }
        if (targetMolPerM3 <= feedMolPerM3) {
            return Double.POSITIVE_INFINITY;
        }
        return volumeM3
                * FastMath.log((startMolPerM3 - feedMolPerM3) / (targetMolPerM3 - feedMolPerM3));
    }

    /** C after so much feed ran through a well-mixed tray, mol/m3. */
    public static double afterDisplacement(
            double volumeM3, double startMolPerM3, double feedMolPerM3, double throughM3) {
        return feedMolPerM3 + (startMolPerM3 - feedMolPerM3) * FastMath.exp(-throughM3 / volumeM3);
    }

    /**
     * Tray and reservoir exchanging a flow, level held in the reservoir, fixed uptake.
     *
     * @param trayMolPerM3 of the tray
     * @param reservoirMolPerM3 of the reservoir
     */
    public record TwoVessels(double trayMolPerM3, double reservoirMolPerM3) {}

    /**
     * Both start at one concentration; flow Q goes to the tray, Q less the loss comes back.
     *
     * @param flowM3PerS Q, above the loss T + E
     */
    public static TwoVessels twoVessels(
            double startMolPerM3,
            double feedMolPerM3,
            double uptakeMolPerM3,
            double trayM3,
            double reservoirM3,
            double flowM3PerS,
            double transpirationM3PerS,
            double evaporationM3PerS,
            double timeS) {
        double w = transpirationM3PerS + evaporationM3PerS;
        double back = flowM3PerS - w;
        if (!(back > 0)) {
            throw new IllegalArgumentException(
                    "the flow %s must exceed the loss %s".formatted(flowM3PerS, w));
        }
        double taken = uptakeMolPerM3 * transpirationM3PerS;
        double rate = back / trayM3 + flowM3PerS / reservoirM3;
        double zEnd = -(back * taken / trayM3 + flowM3PerS * w * feedMolPerM3 / reservoirM3) / rate;
        double z0 = back * startMolPerM3 - flowM3PerS * startMolPerM3;
        double z = zEnd + (z0 - zEnd) * FastMath.exp(-rate * timeS);
        double mol = startMolPerM3 * (trayM3 + reservoirM3) + (feedMolPerM3 * w - taken) * timeS;
        // Solves Vt Ct + Vr Cr = mol and (Q - W) Ct - Q Cr = z.
        double tray =
                (flowM3PerS * mol + reservoirM3 * z) / (flowM3PerS * trayM3 + back * reservoirM3);
        return new TwoVessels(tray, (mol - trayM3 * tray) / reservoirM3);
    }

    /**
     * Leaching requirement of irrigation: ECw/(5 ECe - ECw); Ayers and Westcot (1985), FAO
     * Irrigation and Drainage Paper 29, eq. 9.
     *
     * @param waterMsPerCm EC of the water
     * @param thresholdMsPerCm soil-paste EC the crop bears without loss
     * @return share of the applied water that must drain; 1 or more: not possible
     */
    public static double leachingRequirement(double waterMsPerCm, double thresholdMsPerCm) {
        double spare = 5 * thresholdMsPerCm - waterMsPerCm;
        return spare > 0 ? waterMsPerCm / spare : Double.POSITIVE_INFINITY;
    }

    /** The same for frequent watering: ECw/(2 max ECe), EC at which yield is nil; FAO-29. */
    public static double leachingRequirementFrequent(double waterMsPerCm, double maxMsPerCm) {
        return waterMsPerCm / (2 * maxMsPerCm);
    }

    /** Water to apply so that a share drains, same unit as the crop's use. */
    public static double grossWater(double cropUse, double leachingShare) {
        if (!(leachingShare >= 0 && leachingShare < 1)) {
            throw new IllegalArgumentException(
                    "leachingShare must lie in [0, 1), was " + leachingShare);
        }
        return cropUse / (1 - leachingShare);
    }

    /**
     * Time to draw a still volume down by Michaelis-Menten uptake M (C - Cmin)/(Km + C - Cmin), s.
     *
     * @param capacityMolPerS largest uptake of all roots together
     * @param halfMolPerM3 Km
     * @param leastMolPerM3 Cmin, below both concentrations
     */
    public static double drawDownS(
            double volumeM3,
            double capacityMolPerS,
            double halfMolPerM3,
            double leastMolPerM3,
            double startMolPerM3,
            double endMolPerM3) {
        if (!(endMolPerM3 > leastMolPerM3 && startMolPerM3 >= endMolPerM3)) {
            throw new IllegalArgumentException(
                    "needs least < end <= start, had %s, %s, %s"
                            .formatted(leastMolPerM3, endMolPerM3, startMolPerM3));
        }
        return volumeM3
                / capacityMolPerS
                * (startMolPerM3
                        - endMolPerM3
                        + halfMolPerM3
                                * FastMath.log(
                                        (startMolPerM3 - leastMolPerM3)
                                                / (endMolPerM3 - leastMolPerM3)));
    }
}
