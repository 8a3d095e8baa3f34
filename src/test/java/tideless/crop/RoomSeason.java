package tideless.crop;

import tideless.physics.HumidAir;
import tideless.physics.ReferenceEvapotranspiration;

/**
 * One crop in one room, day by day, without a tray: what the simulator does with this room's
 * functions, in small, so that growth and thirst can be held against published crops.
 *
 * @param ppfdUmolPerM2S lamp, umol/m2/s
 * @param litH hours of lamp a day
 * @param umolPerJ photons per joule of it
 * @param nearInfraredPerPar W/W
 * @param dayTempC while lit, degC
 * @param nightTempC while dark, degC
 * @param dayHumidityFrac while lit
 * @param nightHumidityFrac while dark
 * @param airSpeedMPerS at the leaves
 * @param house under glass or film, so that the reference's resistance is that of houses
 */
record RoomSeason(
        double ppfdUmolPerM2S,
        double litH,
        double umolPerJ,
        double nearInfraredPerPar,
        double dayTempC,
        double nightTempC,
        double dayHumidityFrac,
        double nightHumidityFrac,
        double airSpeedMPerS,
        boolean house) {
    static final double AIR_PRESSURE_PA = 101_325;

    /**
     * After some days.
     *
     * @param plant as it stands
     * @param canopyKg drunk since the start by the canopy model, kg a plant
     * @param coefficientKg the same by crop coefficient
     * @param lastDayCanopyKg on the last day
     * @param lastDayCoefficientKg likewise
     */
    record Outcome(
            Plant plant,
            double canopyKg,
            double coefficientKg,
            double lastDayCanopyKg,
            double lastDayCoefficientKg) {}

    double lightMolPerM2() {
        return ppfdUmolPerM2S * litH * 0.0036;
    }

    double meanTempC() {
        return (dayTempC * litH + nightTempC * (24 - litH)) / 24;
    }

    Plant dayLater(CropTraits traits, Plant plant, double groundPerPlantM2) {
        return Growing.dayLater(
                traits,
                plant,
                groundPerPlantM2,
                lightMolPerM2(),
                ppfdUmolPerM2S,
                umolPerJ,
                meanTempC(),
                1);
    }

    /** Water of a plant in a day by the canopy model, kg. */
    double canopyKg(CropTraits traits, Plant plant, double groundPerPlantM2) {
        double lai = Canopy.leafAreaIndex(traits, plant, groundPerPlantM2);
        return 3600
                * Canopy.coveredGroundM2(traits, plant, groundPerPlantM2)
                * (litH * canopyKgPerM2S(traits, lai, true)
                        + (24 - litH) * canopyKgPerM2S(traits, lai, false));
    }

    /** Thirst of a canopy, kg/m2/s. */
    double canopyKgPerM2S(CropTraits traits, double lai, boolean lit) {
        double tempC = lit ? dayTempC : nightTempC;
        double parWPerM2 = lit ? ppfdUmolPerM2S / umolPerJ : 0;
        return Transpiration.canopyKgPerM2S(
                traits.stomata(),
                traits.growth().extinction(),
                lai,
                parWPerM2,
                lit ? ppfdUmolPerM2S : 0,
                parWPerM2 * nearInfraredPerPar,
                0,
                tempC,
                HumidAir.saturationPressurePa(tempC) * (lit ? dayHumidityFrac : nightHumidityFrac),
                AIR_PRESSURE_PA,
                airSpeedMPerS);
    }

    /**
     * Reference evapotranspiration, kg/m2/d: 70 s/m, and in a house the fixed 150 s/m of Fernandez
     * et al. (2010), in a room the resistance of a stand in its own air; albedo 0.23 of FAO-56.
     */
    double referenceKgPerM2(CropTraits traits) {
        return 3600
                * (litH * referenceKgPerM2S(traits, true)
                        + (24 - litH) * referenceKgPerM2S(traits, false));
    }

    private double referenceKgPerM2S(CropTraits traits, boolean lit) {
        double tempC = lit ? dayTempC : nightTempC;
        double vapourPa =
                HumidAir.saturationPressurePa(tempC) * (lit ? dayHumidityFrac : nightHumidityFrac);
        double shortWave = lit ? ppfdUmolPerM2S / umolPerJ * (1 + nearInfraredPerPar) : 0;
        return ReferenceEvapotranspiration.indoorKgPerM2S(
                0.77 * shortWave,
                tempC,
                vapourPa,
                house
                        ? ReferenceEvapotranspiration.HOUSE_RESISTANCE_S_PER_M
                        : ReferenceEvapotranspiration.roomResistanceSPerM(
                                airSpeedMPerS, traits.stomata().leafSizeM()),
                AIR_PRESSURE_PA);
    }

    double coefficientKg(CropTraits traits, Plant plant, double groundPerPlantM2) {
        return Canopy.coveredGroundM2(traits, plant, groundPerPlantM2)
                * Transpiration.cropCoefficient(traits, plant)
                * referenceKgPerM2(traits);
    }

    Outcome run(CropTraits traits, Plant start, double groundPerPlantM2, int days) {
        Plant plant = start;
        double canopy = 0;
        double coefficient = 0;
        double lastCanopy = 0;
        double lastCoefficient = 0;
        for (int day = 0; day < days; day++) {
            lastCanopy = canopyKg(traits, plant, groundPerPlantM2);
            lastCoefficient = coefficientKg(traits, plant, groundPerPlantM2);
            canopy += lastCanopy;
            coefficient += lastCoefficient;
            plant = dayLater(traits, plant, groundPerPlantM2);
        }
        return new Outcome(plant, canopy, coefficient, lastCanopy, lastCoefficient);
    }
}
