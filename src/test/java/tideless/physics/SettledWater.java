package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/**
 * Closed forms of a water surface by itself, to hold the engine's against: what it loses, what heat
 * it takes from the air, and where its temperature settles.
 */
public final class SettledWater {
    private static final double COLDEST_C = -5;
    private static final double HOTTEST_C = 90;

    private SettledWater() {}

    /**
     * Evaporation; negative when vapour condenses on the water.
     *
     * @param waterTempC temperature of the surface, degC, 0 to 60
     * @param airTempC degC, 0 to 50
     * @param vapourPressurePa of the air, Pa
     * @param airSpeedMPerS along the surface, m/s; see {@link OpenWater#DRAUGHT_M_PER_S}
     * @param characteristicLengthM area over perimeter, m; the way the air runs over the water is
     *     taken as four times this, which is exact for a square
     * @param airPressurePa Pa
     * @return kg/m2/s
     */
    public static double evaporationKgPerM2S(
            double waterTempC,
            double airTempC,
            double vapourPressurePa,
            double airSpeedMPerS,
            double characteristicLengthM,
            double airPressurePa) {
        return OpenWater.massTransferMPerS(
                        waterTempC,
                        airTempC,
                        vapourPressurePa,
                        airSpeedMPerS,
                        characteristicLengthM,
                        airPressurePa)
                * ClosedForms.vapourDensityDifferenceKgPerM3(
                        waterTempC, airTempC, vapourPressurePa);
    }

    /**
     * Heat transfer between surface and air by the analogy of Chilton and Colburn: h = k rho cp
     * (alpha/D)^(2/3).
     *
     * @param waterTempC degC
     * @param airTempC degC
     * @param vapourPressurePa of the air, Pa
     * @param airSpeedMPerS m/s
     * @param characteristicLengthM area over perimeter, m
     * @param airPressurePa Pa
     * @return W/m2/K
     */
    public static double sensibleHeatWPerM2K(
            double waterTempC,
            double airTempC,
            double vapourPressurePa,
            double airSpeedMPerS,
            double characteristicLengthM,
            double airPressurePa) {
        return heatPerMassTransferJPerM3K(waterTempC, airTempC, vapourPressurePa, airPressurePa)
                * OpenWater.massTransferMPerS(
                        waterTempC,
                        airTempC,
                        vapourPressurePa,
                        airSpeedMPerS,
                        characteristicLengthM,
                        airPressurePa);
    }

    /**
     * Temperature at which a water surface settles when nothing passes through the water from
     * below: what it absorbs and gains from air and walls it spends on evaporation.
     *
     * @param airTempC degC, also the temperature of the walls seen by the surface
     * @param vapourPressurePa of the air, Pa
     * @param airSpeedMPerS m/s
     * @param characteristicLengthM area over perimeter, m
     * @param airPressurePa Pa
     * @param radiationCoefficientWPerM2K long-wave exchange with the walls, W/m2/K; about 5.7 for
     *     water in a room at 22 degC, 0 for none
     * @param absorbedRadiationWPerM2 light and heat of lamps and sun taken up by the water, W/m2
     * @return degC; held within -5 to 90
     */
    public static double equilibriumTempC(
            double airTempC,
            double vapourPressurePa,
            double airSpeedMPerS,
            double characteristicLengthM,
            double airPressurePa,
            double radiationCoefficientWPerM2K,
            double absorbedRadiationWPerM2) {
        // The balance falls with the temperature. False position, halving the older value when one
        // end stays (Dowell and Jarratt 1971, BIT 11, 168-174, the Illinois rule).
        double low = COLDEST_C;
        double high = HOTTEST_C;
        double atLow =
                balanceWPerM2(
                        low,
                        airTempC,
                        vapourPressurePa,
                        airSpeedMPerS,
                        characteristicLengthM,
                        airPressurePa,
                        radiationCoefficientWPerM2K,
                        absorbedRadiationWPerM2);
        double atHigh =
                balanceWPerM2(
                        high,
                        airTempC,
                        vapourPressurePa,
                        airSpeedMPerS,
                        characteristicLengthM,
                        airPressurePa,
                        radiationCoefficientWPerM2K,
                        absorbedRadiationWPerM2);
        if (!(atLow > 0)) {
            return low;
        }
        if (!(atHigh < 0)) {
            return high;
        }
        // From the air's own temperature on, where the answer mostly is near.
        double guess = Math.min(high - 1, Math.max(low + 1, airTempC));
        int kept = 0;
        for (int round = 0; round < 100; round++) {
            double balance =
                    balanceWPerM2(
                            guess,
                            airTempC,
                            vapourPressurePa,
                            airSpeedMPerS,
                            characteristicLengthM,
                            airPressurePa,
                            radiationCoefficientWPerM2K,
                            absorbedRadiationWPerM2);
            if (Math.abs(balance) < 1e-9 || high - low < 1e-10) {
                return guess;
            }
            if (balance > 0) {
                low = guess;
                atLow = balance;
                if (kept > 0) {
                    atHigh *= 0.5;
                }
                kept = 1;
            } else {
                high = guess;
                atHigh = balance;
                if (kept < 0) {
                    atLow *= 0.5;
                }
                kept = -1;
            }
            guess = (low * atHigh - high * atLow) / (atHigh - atLow);
        }
        return guess;
    }

    private static double balanceWPerM2(
            double waterTempC,
            double airTempC,
            double vapourPressurePa,
            double airSpeedMPerS,
            double characteristicLengthM,
            double airPressurePa,
            double radiationCoefficientWPerM2K,
            double absorbedRadiationWPerM2) {
        double transfer =
                OpenWater.massTransferMPerS(
                        waterTempC,
                        airTempC,
                        vapourPressurePa,
                        airSpeedMPerS,
                        characteristicLengthM,
                        airPressurePa);
        double heat =
                transfer
                        * heatPerMassTransferJPerM3K(
                                waterTempC, airTempC, vapourPressurePa, airPressurePa);
        return (heat + radiationCoefficientWPerM2K) * (airTempC - waterTempC)
                + absorbedRadiationWPerM2
                - HumidAir.latentHeatJPerKg(waterTempC)
                        * transfer
                        * ClosedForms.vapourDensityDifferenceKgPerM3(
                                waterTempC, airTempC, vapourPressurePa);
    }

    private static double heatPerMassTransferJPerM3K(
            double waterTempC, double airTempC, double vapourPressurePa, double airPressurePa) {
        double meanTempC = 0.5 * (waterTempC + airTempC);
        double capacity = HumidAir.heatCapacityJPerM3K(meanTempC, vapourPressurePa, airPressurePa);
        double ratio =
                HumidAir.conductivityWPerMK(meanTempC)
                        / (capacity * HumidAir.vapourDiffusivityM2PerS(meanTempC, airPressurePa));
        return capacity * FastMath.cbrt(ratio * ratio);
    }
}
