package tideless.crop;

import tideless.physics.HumidAir;
import tideless.physics.Time;

/**
 * Thirst of a full stand on one plain day by two models that nothing measured decides between: how
 * far they lie apart is doubt that no spread of a single number tells.
 *
 * @param firstKgPerM2 by the first, kg/m2 (L/m2) in 24 hours
 * @param secondKgPerM2 by the second
 */
public record TwoForms(double firstKgPerM2, double secondKgPerM2) {
    private static final double LEAF_AREA_INDEX = 3;
    private static final double AIR_PRESSURE_PA = 101_325;
    private static final double AIR_SPEED_M_PER_S = 0.15;

    /**
     * In a house: FAO-56's form with a house's resistances, and light and leaf alone. Leaf area
     * index 3, 8 MJ/m2 of sun in 12 hours, 24 degC and 70 % by day, 18 degC and 85 % by night: the
     * day of the published example of the second form.
     */
    public static TwoForms inASunlitHouse(CropTraits crop) {
        double sun = 8e6 / (12 * Time.HOUR_S);
        double first = 0;
        double second = 0;
        for (boolean day : new boolean[] {true, false}) {
            double shortWave = day ? sun : 0;
            double tempC = day ? 24 : 18;
            first +=
                    StandTranspiration.penmanMonteithKgPerM2S(
                            crop.thirst().fullCover(),
                            LEAF_AREA_INDEX,
                            shortWave,
                            tempC,
                            (day ? 0.70 : 0.85) * HumidAir.saturationPressurePa(tempC),
                            AIR_PRESSURE_PA,
                            1);
            second += StandTranspiration.radiationKgPerM2S(LEAF_AREA_INDEX, shortWave);
        }
        return new TwoForms(12 * Time.HOUR_S * first, 12 * Time.HOUR_S * second);
    }

    /**
     * Under lamps: the canopy of leaves, and FAO-56's form. Leaf area index 3, 16 hours of 200
     * umol/m2/s of white diodes, 24 degC and 65 %, nights of 20 degC and 75 %, 0.15 m/s.
     */
    public static TwoForms underLamps(CropTraits crop) {
        double first = 0;
        double second = 0;
        for (boolean day : new boolean[] {true, false}) {
            double ppfd = day ? 200 : 0;
            double parWPerM2 = ppfd / Growing.NURSERY_UMOL_PER_J;
            double tempC = day ? 24 : 20;
            double vapourPa = (day ? 0.65 : 0.75) * HumidAir.saturationPressurePa(tempC);
            double seconds = (day ? 16 : 8) * Time.HOUR_S;
            first +=
                    seconds
                            * Transpiration.canopyKgPerM2S(
                                    crop.stomata(),
                                    crop.growth().extinction(),
                                    LEAF_AREA_INDEX,
                                    parWPerM2,
                                    ppfd,
                                    0,
                                    0,
                                    tempC,
                                    vapourPa,
                                    AIR_PRESSURE_PA,
                                    AIR_SPEED_M_PER_S,
                                    1);
            second +=
                    seconds
                            * StandTranspiration.penmanMonteithKgPerM2S(
                                    crop.thirst().fullCover(),
                                    LEAF_AREA_INDEX,
                                    parWPerM2,
                                    tempC,
                                    vapourPa,
                                    AIR_PRESSURE_PA,
                                    1);
        }
        return new TwoForms(first, second);
    }
}
