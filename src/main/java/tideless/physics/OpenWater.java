package tideless.physics;

/**
 * Evaporation from a level water surface into a room or house, and what goes with it.
 *
 * <p>Similarity of heat and mass transfer; no Stefan flow (below 4 % up to 40 degC). The best
 * published correlations for pools scatter by 18 % (Shah 2002, HVAC&amp;R Research 8(1), 125-131);
 * no measured evaporation from a small tray is known to us, so take every figure as good to a
 * factor of 1.5 at best. A rim standing above the water shelters it further and is left out.
 *
 * <p>Multiply by the open area, and use the water's own temperature: holding it at the air's
 * temperature overstates evaporation in still air about threefold.
 */
public final class OpenWater {
    /**
     * Air is never quite still, m/s: below this speed the forced value at this speed is used. A
     * judgement (draught of a closed room), no source.
     */
    public static final double DRAUGHT_M_PER_S = 0.05;

    /**
     * Rayleigh number below which 0.54 Ra^(1/4) is the greater of the two without asking: they
     * cross at (0.54 / 0.15)^12 = 4.7e6; derived.
     */
    private static final double THIRD_ROOT_FROM = 4.5e6;

    private OpenWater() {}

    /**
     * Vapour density over the water less that of the air.
     *
     * @param waterTempC degC
     * @param saturationPa {@link HumidAir#saturationPressurePa} at it, Pa
     * @param airTempC degC
     * @param vapourPressurePa of the air, Pa
     * @return kg/m3
     */
    public static double vapourDensityDifferenceKgPerM3(
            double waterTempC, double saturationPa, double airTempC, double vapourPressurePa) {
        return HumidAir.vapourDensityKgPerM3(waterTempC, saturationPa)
                - HumidAir.vapourDensityKgPerM3(airTempC, vapourPressurePa);
    }

    /**
     * Mass-transfer coefficient, free and forced flow together, with the air's way over the water
     * taken as four times the characteristic length.
     *
     * @param waterTempC degC
     * @param airTempC degC
     * @param vapourPressurePa of the air, Pa
     * @param airSpeedMPerS m/s
     * @param characteristicLengthM area over perimeter, m
     * @param airPressurePa Pa
     * @return m/s
     */
    public static double massTransferMPerS(
            double waterTempC,
            double airTempC,
            double vapourPressurePa,
            double airSpeedMPerS,
            double characteristicLengthM,
            double airPressurePa) {
        return massTransferMPerS(
                waterTempC,
                airTempC,
                vapourPressurePa,
                airSpeedMPerS,
                characteristicLengthM,
                4 * characteristicLengthM,
                airPressurePa);
    }

    /**
     * Mass-transfer coefficient, free and forced flow together.
     *
     * <p>The two are blended by a power mean, never summed: of order 3 when the air at the surface
     * is the lighter and rises (the usual order for flows that help each other; Churchill 1977,
     * from memory), and of order 6, hardly more than the larger of the two, when it is the heavier
     * and damps the draught (our choice; it also keeps evaporation falling as the air grows
     * moister, near the point of no density difference). Continuous everywhere.
     *
     * @param waterTempC degC
     * @param airTempC degC
     * @param vapourPressurePa of the air, Pa
     * @param airSpeedMPerS m/s
     * @param characteristicLengthM area over perimeter, for free convection, m
     * @param runM way of the air over the water, for the draught, m
     * @param airPressurePa Pa
     * @return m/s
     */
    public static double massTransferMPerS(
            double waterTempC,
            double airTempC,
            double vapourPressurePa,
            double airSpeedMPerS,
            double characteristicLengthM,
            double runM,
            double airPressurePa) {
        return massTransferMPerS(
                waterTempC,
                HumidAir.saturationPressurePa(waterTempC),
                airTempC,
                vapourPressurePa,
                airSpeedMPerS,
                characteristicLengthM,
                runM,
                airPressurePa);
    }

    /**
     * The same for callers that know the saturation pressure of the water already.
     *
     * @param waterTempC degC
     * @param saturationPa {@link HumidAir#saturationPressurePa} at it, Pa
     * @param airTempC degC
     * @param vapourPressurePa of the air, Pa
     * @param airSpeedMPerS m/s
     * @param characteristicLengthM area over perimeter, for free convection, m
     * @param runM way of the air over the water, for the draught, m
     * @param airPressurePa Pa
     * @return m/s
     */
    public static double massTransferMPerS(
            double waterTempC,
            double saturationPa,
            double airTempC,
            double vapourPressurePa,
            double airSpeedMPerS,
            double characteristicLengthM,
            double runM,
            double airPressurePa) {
        double excess =
                HumidAir.densityKgPerM3(airTempC, vapourPressurePa, airPressurePa)
                        - HumidAir.densityKgPerM3(waterTempC, saturationPa, airPressurePa);
        double meanTempC = 0.5 * (waterTempC + airTempC);
        double density = HumidAir.densityKgPerM3(meanTempC, vapourPressurePa, airPressurePa);
        double viscosity = HumidAir.viscosityPaS(meanTempC) / density;
        double diffusivity = HumidAir.vapourDiffusivityM2PerS(meanTempC, airPressurePa);
        double free =
                freeAtExcessMPerS(excess, density, viscosity, diffusivity, characteristicLengthM);
        double free3 = free * free * free;
        double forced3 =
                cubeOfForced(
                        Math.max(airSpeedMPerS, DRAUGHT_M_PER_S), runM, viscosity, diffusivity);
        return excess > 0
                ? Elementary.cbrt(free3 + forced3)
                : Elementary.exp(Elementary.log(free3 * free3 + forced3 * forced3) / 6);
    }

    static double freeAtExcessMPerS(
            double excessKgPerM3,
            double density,
            double viscosity,
            double diffusivity,
            double characteristicLengthM) {
        double rayleigh =
                TubeFlow.GRAVITY_M_PER_S2
                        * characteristicLengthM
                        * characteristicLengthM
                        * characteristicLengthM
                        * Math.abs(excessKgPerM3)
                        / (density * viscosity * diffusivity);
        double fourthRoot = Math.sqrt(Math.sqrt(rayleigh));
        double sherwood = (excessKgPerM3 > 0 ? 0.54 : 0.27) * fourthRoot;
        if (excessKgPerM3 > 0 && rayleigh > THIRD_ROOT_FROM) {
            sherwood = Math.max(sherwood, 0.15 * Elementary.cbrt(rayleigh));
        }
        return sherwood * diffusivity / characteristicLengthM;
    }

    /**
     * Mass transfer by a draught alone: laminar flow along a flat plate, Sh = 0.664 Re^(1/2)
     * Sc^(1/3), the mean over the plate (textbook form, from memory). Real draughts are turbulent;
     * ripples and eddies raise it.
     *
     * @param airSpeedMPerS m/s
     * @param runM way of the air over the water, m
     * @param tempC mean of surface and air, degC
     * @param vapourPressurePa Pa
     * @param airPressurePa Pa
     * @return m/s
     */
    public static double forcedMassTransferMPerS(
            double airSpeedMPerS,
            double runM,
            double tempC,
            double vapourPressurePa,
            double airPressurePa) {
        return Elementary.cbrt(
                cubeOfForced(
                        airSpeedMPerS,
                        runM,
                        HumidAir.kinematicViscosityM2PerS(tempC, vapourPressurePa, airPressurePa),
                        HumidAir.vapourDiffusivityM2PerS(tempC, airPressurePa)));
    }

    // Its cube is what the blend wants, and has no root of the Schmidt number.
    private static double cubeOfForced(
            double airSpeedMPerS, double runM, double viscosity, double diffusivity) {
        double rest = 0.664 * Math.sqrt(airSpeedMPerS * runM / viscosity) * diffusivity / runM;
        return rest * rest * rest * (viscosity / diffusivity);
    }
}
