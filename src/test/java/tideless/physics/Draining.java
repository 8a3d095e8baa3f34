package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/**
 * Upright vessels that fill and drain: closed forms, against which a stepping program can be
 * checked. All follow by integrating the stated law; the section of the vessel does not change with
 * the level.
 */
public final class Draining {
    private Draining() {}

    /**
     * Head over a hole after a time, without inflow: sqrt(h) = sqrt(h0) - (Cd a/A) sqrt(g/2) t.
     *
     * @param startHeadM m
     * @param timeS s
     * @param surfaceAreaM2 level section, m2
     * @param boreM diameter of the hole, m
     * @param dischargeCoefficient of the hole
     * @return m; 0 once empty
     */
    public static double headThroughHoleM(
            double startHeadM,
            double timeS,
            double surfaceAreaM2,
            double boreM,
            double dischargeCoefficient) {
        double root =
                Math.sqrt(startHeadM)
                        - dischargeCoefficient
                                * 0.25
                                * Math.PI
                                * boreM
                                * boreM
                                / surfaceAreaM2
                                * Math.sqrt(TubeFlow.GRAVITY_M_PER_S2 / 2)
                                * timeS;
        return root > 0 ? root * root : 0;
    }

    /**
     * Head per flow of a laminar tube, 128 nu L/(pi g d^4) (Hagen and Poiseuille).
     *
     * @param boreM m
     * @param lengthM m
     * @param kinematicViscosityM2PerS m2/s
     * @return s/m2
     */
    public static double laminarSPerM2(
            double boreM, double lengthM, double kinematicViscosityM2PerS) {
        return 128
                * kinematicViscosityM2PerS
                * lengthM
                / (Math.PI * TubeFlow.GRAVITY_M_PER_S2 * boreM * boreM * boreM * boreM);
    }

    /**
     * Head per square of the flow of fittings, 8 K/(pi^2 g d^4).
     *
     * @param boreM m
     * @param lossCoefficient sum of the minor-loss coefficients
     * @return s2/m5
     */
    public static double fittingsS2PerM5(double boreM, double lossCoefficient) {
        return 8
                * lossCoefficient
                / (Math.PI * Math.PI * TubeFlow.GRAVITY_M_PER_S2 * boreM * boreM * boreM * boreM);
    }

    /**
     * Flow of a laminar tube with fittings: the root of h = a Q + b Q^2.
     *
     * @param headM m, at least 0
     * @param laminarSPerM2 a, s/m2
     * @param fittingsS2PerM5 b, s2/m5
     * @return m3/s
     */
    public static double laminarFlowM3PerS(
            double headM, double laminarSPerM2, double fittingsS2PerM5) {
        return 2
                * headM
                / (laminarSPerM2
                        + Math.sqrt(laminarSPerM2 * laminarSPerM2 + 4 * fittingsS2PerM5 * headM));
    }

    /**
     * Time in which a vessel falls from one head to another through a laminar tube with fittings: A
     * [a ln(Q0/Q1) + 2 b (Q0 - Q1)]. For b = 0 the head falls as exp(-t/(A a)).
     *
     * @param surfaceAreaM2 level section, m2
     * @param laminarSPerM2 a, s/m2
     * @param fittingsS2PerM5 b, s2/m5
     * @param startHeadM m
     * @param endHeadM m, above 0 if a is
     * @return s
     */
    public static double laminarTimeS(
            double surfaceAreaM2,
            double laminarSPerM2,
            double fittingsS2PerM5,
            double startHeadM,
            double endHeadM) {
        double start = laminarFlowM3PerS(startHeadM, laminarSPerM2, fittingsS2PerM5);
        double end = laminarFlowM3PerS(endHeadM, laminarSPerM2, fittingsS2PerM5);
        double viscous = laminarSPerM2 == 0 ? 0 : laminarSPerM2 * FastMath.log(start / end);
        return surfaceAreaM2 * (viscous + 2 * fittingsS2PerM5 * (start - end));
    }

    /**
     * Level at which a throttling float valve comes to rest: as far below its shut-off level as the
     * thirst is a share of the full flow.
     *
     * @param shutLevelM level at which it shuts, m
     * @param bandM band over which it throttles, m
     * @param fullFlowM3PerS flow when wide open, m3/s, more than {@code thirstM3PerS}
     * @param thirstM3PerS what is taken from the tray, m3/s
     * @return m
     */
    public static double floatRestLevelM(
            double shutLevelM, double bandM, double fullFlowM3PerS, double thirstM3PerS) {
        return shutLevelM - bandM * thirstM3PerS / fullFlowM3PerS;
    }

    /**
     * Time constant of a throttling float valve, A b/Q.
     *
     * @param surfaceAreaM2 of the tray, m2
     * @param bandM m
     * @param fullFlowM3PerS m3/s
     * @return s
     */
    public static double floatTimeConstantS(
            double surfaceAreaM2, double bandM, double fullFlowM3PerS) {
        return surfaceAreaM2 * bandM / fullFlowM3PerS;
    }

    /**
     * Time in which a float-valve tray rises from below its band to the band's lower end.
     *
     * @param surfaceAreaM2 m2
     * @param startLevelM m
     * @param shutLevelM m
     * @param bandM m
     * @param fullFlowM3PerS m3/s, more than {@code thirstM3PerS}
     * @param thirstM3PerS m3/s
     * @return s; 0 when it starts within the band
     */
    public static double floatWideOpenS(
            double surfaceAreaM2,
            double startLevelM,
            double shutLevelM,
            double bandM,
            double fullFlowM3PerS,
            double thirstM3PerS) {
        double rise = Math.max(0, shutLevelM - bandM - startLevelM);
        return surfaceAreaM2 * rise / (fullFlowM3PerS - thirstM3PerS);
    }

    /**
     * Level of a float-valve tray after a time: a straight rise below the band, an exponential
     * approach within it.
     *
     * @param surfaceAreaM2 m2
     * @param startLevelM m, at most {@code shutLevelM}
     * @param shutLevelM m
     * @param bandM m
     * @param fullFlowM3PerS m3/s, more than {@code thirstM3PerS}
     * @param thirstM3PerS m3/s
     * @param timeS s
     * @return m
     */
    public static double floatLevelM(
            double surfaceAreaM2,
            double startLevelM,
            double shutLevelM,
            double bandM,
            double fullFlowM3PerS,
            double thirstM3PerS,
            double timeS) {
        double wideOpen =
                floatWideOpenS(
                        surfaceAreaM2,
                        startLevelM,
                        shutLevelM,
                        bandM,
                        fullFlowM3PerS,
                        thirstM3PerS);
        if (timeS < wideOpen) {
            return startLevelM + (fullFlowM3PerS - thirstM3PerS) / surfaceAreaM2 * timeS;
        }
        double rest = floatRestLevelM(shutLevelM, bandM, fullFlowM3PerS, thirstM3PerS);
        double entry = Math.max(startLevelM, shutLevelM - bandM);
        return rest
                + (entry - rest)
                        * FastMath.exp(
                                -(timeS - wideOpen)
                                        / floatTimeConstantS(surfaceAreaM2, bandM, fullFlowM3PerS));
    }

    /**
     * Period of a valve that snaps open and shut: A d/q + A d/(Q - q). It is open for the share q/Q
     * of it.
     *
     * @param surfaceAreaM2 m2
     * @param hysteresisM level between opening and shutting, m
     * @param fullFlowM3PerS m3/s, more than {@code thirstM3PerS}
     * @param thirstM3PerS m3/s, above 0
     * @return s
     */
    public static double snapPeriodS(
            double surfaceAreaM2, double hysteresisM, double fullFlowM3PerS, double thirstM3PerS) {
        double volume = surfaceAreaM2 * hysteresisM;
        return volume / thirstM3PerS + volume / (fullFlowM3PerS - thirstM3PerS);
    }

    /**
     * Time that a reservoir lasts under a steady loss.
     *
     * @param usableM3 volume above the outlet, m3
     * @param uptakeM3PerS taken by the plants, m3/s
     * @param openAreaM2 m2
     * @param evaporationMPerS from the open area, m/s
     * @return s
     */
    public static double reservoirLastsS(
            double usableM3, double uptakeM3PerS, double openAreaM2, double evaporationMPerS) {
        return usableM3 / (uptakeM3PerS + openAreaM2 * evaporationMPerS);
    }
}
