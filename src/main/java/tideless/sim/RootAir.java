package tideless.sim;

import java.util.Arrays;
import tideless.crop.RootBreathing;
import tideless.physics.Oxygen;
import tideless.physics.StillWater;
import tideless.physics.Time;
import tideless.solution.RespiredCarbon;

/**
 * Oxygen in one tray's solution while a run goes on: the likely course and, where a band is asked
 * for, the poorest and the richest its figures allow. Scratch space of one run.
 */
final class RootAir {
    /**
     * Saturation and breathing are worked out at temperatures so far apart, K, and taken as
     * straight between: within 3e-5 of themselves.
     */
    private static final double APART_K = 0.5;

    /** Beyond these temperatures of the solution they stand still, degC. */
    private static final double MOST_C = 40;

    private static final int KNOTS = (int) (MOST_C / APART_K) + 2;

    private static final RootBreathing.Figures[] BAND = {
        RootBreathing.MIDDLE, RootBreathing.POOREST, RootBreathing.RICHEST
    };

    private final double airPressurePa;
    private final boolean aerated;
    private final int courses;
    private final double[] oxygenGPerM3 = new double[BAND.length];
    private final double[] perRootGPerS = new double[BAND.length];
    private double saturationGPerM3 = Double.NaN;

    /**
     * Part of the oxygen deficit that no root has made: what warming gave it less what has come in
     * since, g/m3. Carbon dioxide knows nothing of it.
     */
    private double warmedGPerM3;

    // What the last step went by.
    private double volumeM3;
    private double exchangeM3PerS;
    private double inflowM3PerS;
    private double rootsGPerS;

    private final double[] saturationAt = new double[KNOTS];
    private final double[][] perRootAt; // of each course

    /**
     * @param startC of the solution, saturated at the start, degC
     * @param band whether the poorest and the richest course are followed too
     * @param aerated whether the solution stays saturated whatever the roots breathe
     */
    RootAir(double airPressurePa, double startC, boolean band, boolean aerated) {
        this.airPressurePa = airPressurePa;
        this.aerated = aerated;
        courses = band ? BAND.length : 1;
        perRootAt = new double[courses][KNOTS];
        Arrays.fill(saturationAt, Double.NaN);
        know(startC);
        Arrays.fill(oxygenGPerM3, saturationGPerM3);
    }

    /**
     * Follows a step of constant rates.
     *
     * @param volumeM3 solution; without any it counts as saturated
     * @param surfaceM2 its surface
     * @param airGapM from it up to the deck, m
     * @param wetRootDryG dry mass of the roots in it, g
     * @param inflowM3 come in over the step, saturated, m3
     */
    void step(
            double volumeM3,
            double surfaceM2,
            double airGapM,
            double tempC,
            double wetRootDryG,
            double inflowM3,
            double spanS) {
        double saturatedBefore = saturationGPerM3;
        know(tempC);
        this.volumeM3 = volumeM3;
        if (aerated || !(volumeM3 > 0)) {
            Arrays.fill(oxygenGPerM3, saturationGPerM3);
            warmedGPerM3 = 0;
            return;
        }
        exchangeM3PerS = StillWater.transferMPerS(airGapM) * surfaceM2;
        inflowM3PerS = inflowM3 / spanS;
        rootsGPerS = perRootGPerS[0] * wetRootDryG;
        double exchangeM3 = exchangeM3PerS * spanS;
        warmedGPerM3 += saturationGPerM3 - saturatedBefore;
        warmedGPerM3 *= volumeM3 / (volumeM3 + inflowM3 + exchangeM3);
        for (int i = 0; i < courses; i++) {
            oxygenGPerM3[i] =
                    StillWater.afterGPerM3(
                            oxygenGPerM3[i],
                            volumeM3,
                            BAND[i].transferFrac() * StillWater.transferMPerS(airGapM) * surfaceM2,
                            saturationGPerM3,
                            inflowM3 / spanS,
                            saturationGPerM3,
                            perRootGPerS[i] * wetRootDryG,
                            BAND[i].halfGPerM3(),
                            BAND[i].microbesGPerM3H() / Time.HOUR_S * volumeM3,
                            spanS);
        }
    }

    /** The tray was filled with fresh solution, which is saturated. */
    void renew(double tempC) {
        know(tempC);
        Arrays.fill(oxygenGPerM3, saturationGPerM3);
        warmedGPerM3 = 0;
    }

    private void know(double tempC) {
        double knots = Math.max(0, Math.min(MOST_C, tempC)) / APART_K;
        int knot = (int) knots;
        double on = knots - knot;
        workOut(knot);
        workOut(knot + 1);
        saturationGPerM3 = saturationAt[knot] + on * (saturationAt[knot + 1] - saturationAt[knot]);
        for (int i = 0; i < courses; i++) {
            double[] at = perRootAt[i];
            perRootGPerS[i] = at[knot] + on * (at[knot + 1] - at[knot]);
        }
    }

    private void workOut(int knot) {
        if (Double.isNaN(saturationAt[knot])) {
            double atC = Math.min(MOST_C, knot * APART_K);
            saturationAt[knot] = Oxygen.saturationMgPerL(atC, 0, airPressurePa);
            for (int i = 0; i < courses; i++) {
                perRootAt[i][knot] = RootBreathing.demandGPerS(BAND[i], 1, atC);
            }
        }
    }

    /** The likely course, g/m3. */
    double likelyGPerM3() {
        return oxygenGPerM3[0];
    }

    /** Where the likely course will be if all goes on as in the last step, g/m3. */
    double soonGPerM3(double spanS) {
        if (aerated || !(volumeM3 > 0)) {
            return oxygenGPerM3[0];
        }
        return StillWater.afterGPerM3(
                oxygenGPerM3[0],
                volumeM3,
                BAND[0].transferFrac() * exchangeM3PerS,
                saturationGPerM3,
                inflowM3PerS,
                saturationGPerM3,
                rootsGPerS,
                BAND[0].halfGPerM3(),
                BAND[0].microbesGPerM3H() / Time.HOUR_S * volumeM3,
                spanS);
    }

    /** The poorest course, g/m3; the likely one where no band is followed. */
    double poorestGPerM3() {
        return courses == 1 ? oxygenGPerM3[0] : Math.min(oxygenGPerM3[0], oxygenGPerM3[1]);
    }

    /** The richest course, g/m3; the likely one where no band is followed. */
    double richestGPerM3() {
        return courses == 1 ? oxygenGPerM3[0] : Math.max(oxygenGPerM3[0], oxygenGPerM3[2]);
    }

    /** Carbon dioxide dissolved beyond what the air leaves there, mol/m3; by the likely course. */
    double respiredMolPerM3() {
        return RespiredCarbon.excessMolPerM3(saturationGPerM3 - warmedGPerM3, oxygenGPerM3[0]);
    }

    /** Carbon dioxide the solution stands with, ppm; by the likely course. */
    double carbonDioxidePpm(double airPpm, double tempC) {
        return RespiredCarbon.ppm(airPpm, saturationGPerM3 - warmedGPerM3, oxygenGPerM3[0], tempC);
    }
}
