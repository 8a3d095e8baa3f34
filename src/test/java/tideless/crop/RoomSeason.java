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
 * @param co2Ppm carbon dioxide of the air, umol/mol
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
        double co2Ppm,
        boolean house) {
    static final double AIR_PRESSURE_PA = 101_325;

    /**
     * After some days.
     *
     * @param plant as it stands
     * @param thirstKg drunk since the start by the forecast's own choice of forms, kg a plant
     * @param canopyKg the same by the canopy model
     * @param coefficientKg the same by crop coefficient
     * @param lastDayThirstKg on the last day, by the forecast's own choice
     */
    record Outcome(
            Plant plant,
            double thirstKg,
            double canopyKg,
            double coefficientKg,
            double lastDayThirstKg) {}

    double lightMolPerM2() {
        return ppfdUmolPerM2S * litH * 0.0036;
    }

    /**
     * Light at which the mean photon falls: the sun is spread evenly here for thirst, a half-sine
     * for growth.
     */
    private double meanPhotonPpfdUmolPerM2S() {
        return house ? Math.PI * Math.PI / 8 * ppfdUmolPerM2S : ppfdUmolPerM2S;
    }

    double meanTempC() {
        return (dayTempC * litH + nightTempC * (24 - litH)) / 24;
    }

    Plant dayLater(CropTraits traits, Plant plant, double groundPerPlantM2) {
        return Growing.dayLater(
                traits,
                FruitSet.after(
                        traits,
                        plant,
                        FruitSet.frac(traits.response().setInHeat(), dayTempC),
                        meanTempC()),
                groundPerPlantM2,
                lightMolPerM2(),
                meanPhotonPpfdUmolPerM2S(),
                umolPerJ,
                meanTempC(),
                CarbonDioxide.growthFrac(co2Ppm));
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
                airSpeedMPerS,
                stomataFrac(traits, lit));
    }

    private double stomataFrac(CropTraits traits, boolean lit) {
        return lit
                ? CarbonDioxide.resistanceFrac(traits.thirst().conductanceAt1000PpmFrac(), co2Ppm)
                : 1;
    }

    /** Water of a plant in a day by the forecast's own choice of forms, kg. */
    double thirstKg(CropTraits traits, Plant plant, double groundPerPlantM2) {
        if (!house || !traits.stages().fruits()) {
            return canopyKg(traits, plant, groundPerPlantM2);
        }
        double lai = Canopy.standLeafAreaIndex(traits, plant, groundPerPlantM2);
        return 3600
                * Canopy.boundGroundM2(traits, groundPerPlantM2)
                * (litH * standKgPerM2S(traits, lai, true)
                        + (24 - litH) * standKgPerM2S(traits, lai, false));
    }

    /** Mean of the two forms of a sunlit stand, kg/m2/s. */
    double standKgPerM2S(CropTraits traits, double lai, boolean lit) {
        double tempC = lit ? dayTempC : nightTempC;
        double shortWave = lit ? ppfdUmolPerM2S / umolPerJ * (1 + nearInfraredPerPar) : 0;
        return 0.5
                * (StandTranspiration.penmanMonteithKgPerM2S(
                                traits.thirst().fullCover(),
                                lai,
                                shortWave,
                                tempC,
                                HumidAir.saturationPressurePa(tempC)
                                        * (lit ? dayHumidityFrac : nightHumidityFrac),
                                AIR_PRESSURE_PA,
                                stomataFrac(traits, lit))
                        + StandTranspiration.radiationKgPerM2S(lai, shortWave));
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
        double thirst = 0;
        double canopy = 0;
        double coefficient = 0;
        double lastThirst = 0;
        for (int day = 0; day < days; day++) {
            lastThirst = thirstKg(traits, plant, groundPerPlantM2);
            thirst += lastThirst;
            canopy += canopyKg(traits, plant, groundPerPlantM2);
            coefficient += coefficientKg(traits, plant, groundPerPlantM2);
            plant = dayLater(traits, plant, groundPerPlantM2);
        }
        return new Outcome(plant, thirst, canopy, coefficient, lastThirst);
    }
}
