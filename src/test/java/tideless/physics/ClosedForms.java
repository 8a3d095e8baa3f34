package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/** Forms of the handbooks that no run asks for; what runs is held against them. */
public final class ClosedForms {
    private ClosedForms() {}

    /**
     * Dew point: the temperature at which the vapour pressure would saturate. Exact inverse of
     * {@link HumidAir#saturationPressurePa}.
     *
     * @param vapourPressurePa Pa, above 0
     * @return degC
     */
    public static double dewPointC(double vapourPressurePa) {
        double log = FastMath.log(vapourPressurePa / 610.8);
        return 237.3 * log / (17.27 - log);
    }

    /**
     * Vapour pressure from a wet and a dry thermometer.
     *
     * <p>FAO-56 (Allen et al. 1998), eqs. 15 and 16; 0.000662 1/K aspirated at about 5 m/s,
     * 0.000800 ventilated by nature, 0.001200 in still air (the last two from memory).
     *
     * @param dryTempC degC
     * @param wetTempC degC
     * @param coefficientPerK of the instrument, 1/K
     * @param airPressurePa Pa
     * @return Pa
     */
    public static double psychrometerVapourPressurePa(
            double dryTempC, double wetTempC, double coefficientPerK, double airPressurePa) {
        return HumidAir.saturationPressurePa(wetTempC)
                - coefficientPerK * airPressurePa * (dryTempC - wetTempC);
    }

    /**
     * Heat, one side, forced flow along a smooth plate.
     *
     * <p>Nu = 0.664 Re^(1/2) Pr^(1/3), mean of a laminar plate (textbook form, from memory).
     *
     * @param airSpeedMPerS m/s, above 0
     * @param leafLengthM along the wind, m
     * @param airTempC degC
     * @param vapourPressurePa Pa
     * @param airPressurePa Pa
     * @return s/m of one face
     */
    public static double plateHeatOneSideSPerM(
            double airSpeedMPerS,
            double leafLengthM,
            double airTempC,
            double vapourPressurePa,
            double airPressurePa) {
        double viscosity =
                HumidAir.kinematicViscosityM2PerS(airTempC, vapourPressurePa, airPressurePa);
        double diffusivity =
                HumidAir.heatDiffusivityM2PerS(airTempC, vapourPressurePa, airPressurePa);
        return leafLengthM
                / (0.664
                        * Math.sqrt(airSpeedMPerS * leafLengthM / viscosity)
                        * FastMath.cbrt(viscosity / diffusivity)
                        * diffusivity);
    }

    /**
     * Heat, both sides side by side, forced flow: 151 sqrt(d/u).
     *
     * <p>Jones, Plants and Microclimate (constant from memory).
     *
     * @param airSpeedMPerS m/s, above 0
     * @param leafLengthM m
     * @return s/m of leaf, both faces counted
     */
    public static double forcedHeatBothSidesSPerM(double airSpeedMPerS, double leafLengthM) {
        return 151 * Math.sqrt(leafLengthM / airSpeedMPerS);
    }

    /**
     * Vapour, one side only (stomata on one face), from heat of both sides: twice, times 0.91.
     *
     * @param heatBothSidesSPerM s/m of leaf, both faces counted
     * @param airTempC degC
     * @param vapourPressurePa Pa
     * @param airPressurePa Pa
     * @return s/m of one face
     */
    public static double vapourOneSideFromHeatBothSidesSPerM(
            double heatBothSidesSPerM,
            double airTempC,
            double vapourPressurePa,
            double airPressurePa) {
        return LeafBoundaryLayer.vapourFromHeatSPerM(
                2 * heatBothSidesSPerM, airTempC, vapourPressurePa, airPressurePa);
    }

    /**
     * Luminous efficacy that a lamp would need to give a mean lux over an area; above {@link
     * Light#WHITE_LIGHT_LIMIT_LM_PER_W} the reading cannot be a mean of that area.
     *
     * @param meanLux lx
     * @param lampW electrical power, W
     * @param areaM2 lit area, m2
     * @return lm/W
     */
    public static double neededLumenPerW(double meanLux, double lampW, double areaM2) {
        return meanLux * areaM2 / lampW;
    }

    /**
     * Heat that a lamp leaves in the room: all of its power, light included, in the end.
     *
     * @param lampW electrical power, W
     * @param litS lit time, s
     * @return J
     */
    public static double lampHeatJ(double lampW, double litS) {
        return lampW * litS;
    }

    /**
     * Heat set free at the lamp itself, before its light is absorbed elsewhere.
     *
     * @param lampW electrical power, W
     * @param lumenPerW luminous efficacy at the plug, lm/W
     * @param lumenPerRadiantW luminous efficacy of the radiation alone, lm/W; 280 to 370 for white
     *     diodes (from memory)
     * @return W
     */
    public static double heatAtLampW(double lampW, double lumenPerW, double lumenPerRadiantW) {
        return lampW * (1 - lumenPerW / lumenPerRadiantW);
    }

    /**
     * Mass transfer by free convection alone, in air that is perfectly still. It vanishes when the
     * air at the surface is as heavy as the air above it.
     *
     * <p>Level plates: Sh = 0.54 Ra^(1/4), from where they cross 0.15 Ra^(1/3), when the air at the
     * surface is the lighter; 0.27 Ra^(1/4) when it is the heavier (McAdams 1954; Lloyd and Moran
     * 1974; constants second hand). The handbooks change from 0.54 to 0.15 at Ra 1e7 with a jump of
     * 6 %; we change at the crossing, Ra 4.7e6. Fitted from Ra 1e4.
     *
     * @param waterTempC degC
     * @param airTempC degC
     * @param vapourPressurePa of the air, Pa
     * @param characteristicLengthM area over perimeter, m
     * @param airPressurePa Pa
     * @return m/s
     */
    public static double freeMassTransferMPerS(
            double waterTempC,
            double airTempC,
            double vapourPressurePa,
            double characteristicLengthM,
            double airPressurePa) {
        double meanTempC = 0.5 * (waterTempC + airTempC);
        double density = HumidAir.densityKgPerM3(meanTempC, vapourPressurePa, airPressurePa);
        return OpenWater.freeAtExcessMPerS(
                densityExcessKgPerM3(waterTempC, airTempC, vapourPressurePa, airPressurePa),
                density,
                HumidAir.viscosityPaS(meanTempC) / density,
                HumidAir.vapourDiffusivityM2PerS(meanTempC, airPressurePa),
                characteristicLengthM);
    }

    /**
     * Vapour density at the surface less that of the air.
     *
     * @param waterTempC degC
     * @param airTempC degC
     * @param vapourPressurePa of the air, Pa
     * @return kg/m3
     */
    public static double vapourDensityDifferenceKgPerM3(
            double waterTempC, double airTempC, double vapourPressurePa) {
        return OpenWater.vapourDensityDifferenceKgPerM3(
                waterTempC, HumidAir.saturationPressurePa(waterTempC), airTempC, vapourPressurePa);
    }

    /**
     * Time in which an upright vessel without inflow falls from one head to another through a hole.
     *
     * <p>Closed form t = A/(Cd a) sqrt(2/g) (sqrt h0 - sqrt h1), from integrating Torricelli.
     *
     * @param surfaceAreaM2 level section of the vessel, m2
     * @param boreM diameter of the hole, m
     * @param dischargeCoefficient 0.6 to 0.82
     * @param startHeadM head at the start, m
     * @param endHeadM head at the end, m, 0 to {@code startHeadM}
     * @return s
     */
    public static double emptyingTimeS(
            double surfaceAreaM2,
            double boreM,
            double dischargeCoefficient,
            double startHeadM,
            double endHeadM) {
        return surfaceAreaM2
                / (dischargeCoefficient * Orifice.areaM2(boreM))
                * Math.sqrt(2 / TubeFlow.GRAVITY_M_PER_S2)
                * (Math.sqrt(startHeadM) - Math.sqrt(endHeadM));
    }

    /**
     * Diffusivity of oxygen in water.
     *
     * <p>Han and Bartels (1996), J. Phys. Chem. 100, 5597-5602. Older handbook tables lie 9 to 21 %
     * higher.
     *
     * @param tempC degC, 0 to 95
     * @return m2/s
     */
    public static double diffusivityM2PerS(double tempC) {
        double inverse = 1 / (tempC + 273.15);
        double root = 506.4 * inverse;
        return 1e-4 * FastMath.pow(10, -4.410 + 773.8 * inverse - root * root);
    }

    /**
     * Air pressure of the standard atmosphere; ISO 2533, from memory. {@link HumidAir#pressurePa}
     * is FAO-56's and lies within 0.5 % of it up to 2000 m.
     *
     * @param altitudeM m
     * @return Pa
     */
    public static double standardPressurePa(double altitudeM) {
        return 101_325 * FastMath.pow(1 - 2.25577e-5 * altitudeM, 5.25588);
    }

    /**
     * Length of the day between geometric sunrise and sunset; FAO-56, eq. 34.
     *
     * @param latitudeRad rad
     * @param dayOfYear 1 to 366
     * @return s
     */
    public static double dayLengthS(double latitudeRad, double dayOfYear) {
        return Time.DAY_S / Math.PI * Sun.sunsetHourAngleRad(latitudeRad, dayOfYear);
    }

    /**
     * Flow that a head drives through a tube and its fittings. Odd in the head, 0 at 0, strictly
     * rising; the inverse of {@link #headLossM} to about 1e-13 relative.
     *
     * @param headM head difference, m, either sign
     * @param boreM inside diameter, m
     * @param lengthM m, 0 allowed if {@code lossCoefficient} is above 0
     * @param lossCoefficient sum of the minor-loss coefficients
     * @param roughnessM wall roughness, m
     * @param tempC water temperature, degC
     * @return m3/s, with the sign of the head
     */
    public static double flowM3PerS(
            double headM,
            double boreM,
            double lengthM,
            double lossCoefficient,
            double roughnessM,
            double tempC) {
        return TubeFlow.flowAtViscosityM3PerS(
                headM,
                boreM,
                lengthM,
                lossCoefficient,
                roughnessM,
                LiquidWater.kinematicViscosityM2PerS(tempC));
    }

    /**
     * Flow through a tube and a valve seat in series: the whole energy of the jet behind the seat
     * is lost. The seat adds {@link TubeFlow#seatLossCoefficient}.
     *
     * @param headM head difference, m, either sign
     * @param boreM inside diameter of the tube, m
     * @param lengthM m, 0 allowed
     * @param lossCoefficient sum of the minor-loss coefficients of the tube
     * @param roughnessM wall roughness, m
     * @param seatBoreM bore of the seat, m
     * @param dischargeCoefficient of the seat; 0.61 for a sharp edge, 0.7 to 0.82 for a short land
     *     (from memory)
     * @param openingFrac share of the seat's area that is free, 0-1; at 0 and below nothing flows
     * @param tempC water temperature, degC
     * @return m3/s, with the sign of the head
     */
    public static double flowThroughSeatM3PerS(
            double headM,
            double boreM,
            double lengthM,
            double lossCoefficient,
            double roughnessM,
            double seatBoreM,
            double dischargeCoefficient,
            double openingFrac,
            double tempC) {
        if (!(openingFrac > 0)) {
            return 0;
        }
        return TubeFlow.flowAtViscosityM3PerS(
                headM,
                boreM,
                lengthM,
                lossCoefficient
                        + TubeFlow.seatLossCoefficient(
                                boreM, seatBoreM, dischargeCoefficient, openingFrac),
                roughnessM,
                LiquidWater.kinematicViscosityM2PerS(tempC));
    }

    /**
     * Head lost in a tube and its fittings at a given flow. Odd in the flow.
     *
     * @param flowM3PerS m3/s, either sign
     * @param boreM inside diameter, m
     * @param lengthM m, 0 allowed
     * @param lossCoefficient sum of the minor-loss coefficients
     * @param roughnessM wall roughness, m
     * @param tempC water temperature, degC
     * @return m of water, with the sign of the flow
     */
    public static double headLossM(
            double flowM3PerS,
            double boreM,
            double lengthM,
            double lossCoefficient,
            double roughnessM,
            double tempC) {
        if (flowM3PerS == 0) {
            return 0;
        }
        double speed = Math.abs(flowM3PerS) / TubeFlow.areaM2(boreM);
        double reynolds = speed * boreM / LiquidWater.kinematicViscosityM2PerS(tempC);
        double factor =
                TubeFlow.friction(reynolds, roughnessM / boreM).factor() * lengthM / boreM
                        + lossCoefficient;
        return Math.copySign(factor * speed * speed / (2 * TubeFlow.GRAVITY_M_PER_S2), flowM3PerS);
    }

    /**
     * Flows of the branches.
     *
     * @param tree the tubes
     * @param reservoirHeadM m
     * @param outletHeadM per branch: level of the tray if the outlet is under water, else height of
     *     the outlet, m
     * @param openingFrac per branch: free share of the seat, 0-1; 0 shuts it. Without a seat
     *     anything above 0 is open.
     * @param mayRunBack per branch: true for an outlet under water; a free jet draws air instead
     *     and gives 0
     * @param tempC water temperature, degC
     * @return m3/s per branch, negative towards the junction; their sum is the trunk's flow
     */
    public static double[] flowsM3PerS(
            TubeTree tree,
            double reservoirHeadM,
            double[] outletHeadM,
            double[] openingFrac,
            boolean[] mayRunBack,
            double tempC) {
        double[] flows = new double[outletHeadM.length];
        tree.junctionHeadM(
                reservoirHeadM,
                outletHeadM,
                openingFrac,
                mayRunBack,
                LiquidWater.kinematicViscosityM2PerS(tempC),
                flows);
        return flows;
    }

    /** Density of the air less that of saturated air at the surface: above 0 it rises. */
    static double densityExcessKgPerM3(
            double waterTempC, double airTempC, double vapourPressurePa, double airPressurePa) {
        return HumidAir.densityKgPerM3(airTempC, vapourPressurePa, airPressurePa)
                - HumidAir.densityKgPerM3(
                        waterTempC, HumidAir.saturationPressurePa(waterTempC), airPressurePa);
    }
}
