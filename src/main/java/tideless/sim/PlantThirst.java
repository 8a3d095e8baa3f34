package tideless.sim;

import tideless.crop.Canopy;
import tideless.crop.CarbonDioxide;
import tideless.crop.CropTraits;
import tideless.crop.Plant;
import tideless.crop.StandTranspiration;
import tideless.crop.Transpiration;
import tideless.physics.ReferenceEvapotranspiration;
import tideless.physics.Time;
import tideless.rig.Planting;

/**
 * Thirst of one plant with sound roots in fresh solution, by the planting's model. Holds what the
 * models know of the plant between two midnights.
 */
final class PlantThirst {
    private final CropTraits traits;
    private final Planting.ThirstModel model;
    private Plant plant;
    private double leafAreaIndex;
    private double extinction;
    private double coveredM2;
    private double standLeafAreaIndex;
    private double boundM2;
    private double interceptedFrac;

    PlantThirst(CropTraits traits, Planting.ThirstModel model) {
        this.traits = traits;
        this.model = model;
    }

    /**
     * A closed canopy at the crop's greatest leaf area, by the planting's model; kg/s are then
     * kg/m2/s. The stage's coefficient, which knows no closed canopy of its own, gives way to the
     * canopy.
     */
    static PlantThirst ofFullCanopy(Planting.OfCrop crop) {
        PlantThirst full =
                new PlantThirst(
                        crop.traits(),
                        crop.model() == Planting.ThirstModel.COEFFICIENT
                                ? Planting.ThirstModel.CANOPY
                                : crop.model());
        full.leafAreaIndex = crop.traits().growth().leafAreaIndexMax();
        full.standLeafAreaIndex = full.leafAreaIndex;
        full.extinction = crop.traits().growth().extinction();
        full.coveredM2 = 1;
        full.boundM2 = 1;
        full.interceptedFrac = Canopy.interceptedFrac(full.extinction, full.leafAreaIndex);
        return full;
    }

    void shape(Plant plant, double groundPerPlantM2) {
        this.plant = plant;
        extinction = Canopy.extinction(traits, plant);
        coveredM2 = Canopy.coveredGroundM2(traits, plant, groundPerPlantM2);
        leafAreaIndex = Canopy.leafAreaIndex(traits, plant, groundPerPlantM2);
        boundM2 = Canopy.boundGroundM2(traits, groundPerPlantM2);
        interceptedFrac = Canopy.interceptedFrac(extinction, leafAreaIndex);
        standLeafAreaIndex = Canopy.standLeafAreaIndex(traits, plant, groundPerPlantM2);
    }

    double leafAreaIndex() {
        return leafAreaIndex;
    }

    /** Share of the light over the crown that it stops, 0-1. */
    double interceptedFrac() {
        return interceptedFrac;
    }

    double coveredM2() {
        return coveredM2;
    }

    /**
     * Thirst now, kg/s a plant.
     *
     * @param parWPerM2 400-700 nm power above the canopy, W/m2
     * @param ppfdUmolPerM2S the same as photons, umol/m2/s
     * @param infraredWPerM2 near infrared, W/m2
     * @param sunFrac share of the day's light that is sun, 0-1
     */
    double kgPerS(
            double parWPerM2,
            double ppfdUmolPerM2S,
            double infraredWPerM2,
            double sunFrac,
            AirSeries air,
            int step) {
        double shortWave = parWPerM2 + infraredWPerM2;
        switch (model) {
            case CANOPY:
                return canopy(parWPerM2, ppfdUmolPerM2S, infraredWPerM2, air, step);
            case COEFFICIENT:
                return coveredM2
                        * Transpiration.cropCoefficient(traits, plant)
                        * referenceKgPerM2S(shortWave, air, step);
            case PENMAN_MONTEITH:
                return penmanMonteith(shortWave, ppfdUmolPerM2S, air, step);
            case RADIATION:
                return radiation(shortWave);
            case COMBINED:
                double stand = sunlitFrac(sunFrac, air);
                double kgPerS = 0;
                if (stand < 1) {
                    kgPerS =
                            (1 - stand)
                                    * canopy(parWPerM2, ppfdUmolPerM2S, infraredWPerM2, air, step);
                }
                if (stand > 0) {
                    kgPerS += stand * sunlit(shortWave, ppfdUmolPerM2S, air, step);
                }
                return kgPerS;
            default:
                throw new AssertionError("no thirst for " + model);
        }
    }

    // Leaf crops keep the canopy under a roof. In the open it has the wind at every leaf and no
    // canopy's own air between, and makes half as much again as handbooks to twice as much.
    private double sunlitFrac(double sunFrac, AirSeries air) {
        return air.place == AirSeries.Place.OPEN || traits.stages().fruits()
                ? StandTranspiration.sunlitFrac(sunFrac)
                : 0;
    }

    // The form by light and leaf is of houses, whose stands lose no long waves to the sky.
    private double sunlit(double shortWaveWPerM2, double ppfdUmolPerM2S, AirSeries air, int step) {
        double fao = penmanMonteith(shortWaveWPerM2, ppfdUmolPerM2S, air, step);
        return air.place == AirSeries.Place.OPEN ? fao : 0.5 * (fao + radiation(shortWaveWPerM2));
    }

    private double canopy(
            double parWPerM2,
            double ppfdUmolPerM2S,
            double infraredWPerM2,
            AirSeries air,
            int step) {
        return coveredM2
                * Transpiration.canopyKgPerM2S(
                        traits.stomata(),
                        extinction,
                        leafAreaIndex,
                        parWPerM2,
                        ppfdUmolPerM2S,
                        infraredWPerM2,
                        air.longWaveWPerM2[step],
                        air.tempC[step],
                        air.vapourPa[step],
                        air.pressurePa,
                        air.speedMPerS[step],
                        stomataFrac(ppfdUmolPerM2S, air, step));
    }

    // Carbon dioxide shuts stomata by day only.
    private double stomataFrac(double ppfdUmolPerM2S, AirSeries air, int step) {
        return ppfdUmolPerM2S > 0
                ? CarbonDioxide.resistanceFrac(
                        traits.thirst().conductanceAt1000PpmFrac(), air.co2Ppm[step])
                : 1;
    }

    // In the open the house's resistances do not hold: FAO-56's own wind and the field's
    // coefficient of a full stand stand in for them; assumed.
    private double penmanMonteith(
            double shortWaveWPerM2, double ppfdUmolPerM2S, AirSeries air, int step) {
        if (air.place == AirSeries.Place.OPEN) {
            return boundM2
                    * traits.coefficients().mid()
                    * Math.min(1, StandTranspiration.coverFrac(standLeafAreaIndex))
                    * referenceKgPerM2S(shortWaveWPerM2, air, step);
        }
        return boundM2
                * StandTranspiration.penmanMonteithKgPerM2S(
                        traits.thirst().fullCover(),
                        standLeafAreaIndex,
                        shortWaveWPerM2,
                        air.tempC[step],
                        air.vapourPa[step],
                        air.pressurePa,
                        stomataFrac(ppfdUmolPerM2S, air, step));
    }

    private double radiation(double shortWaveWPerM2) {
        return boundM2 * StandTranspiration.radiationKgPerM2S(standLeafAreaIndex, shortWaveWPerM2);
    }

    // FAO-56's own hourly form and wind in the open; docs/decisions/0006-air-of-the-reference.md.
    private double referenceKgPerM2S(double shortWaveWPerM2, AirSeries air, int step) {
        double absorbed = StandTranspiration.ABSORBED_FRAC * shortWaveWPerM2;
        if (air.place == AirSeries.Place.OPEN) {
            double net = absorbed + air.longWaveWPerM2[step];
            double mmPerHour =
                    ReferenceEvapotranspiration.faoHourlyMmPerHour(
                            air.tempC[step],
                            air.vapourPa[step],
                            air.speedMPerS[step],
                            net,
                            ReferenceEvapotranspiration.faoHourlySoilHeatWPerM2(net),
                            air.pressurePa);
            return Math.max(0, mmPerHour) / Time.HOUR_S;
        }
        return ReferenceEvapotranspiration.indoorKgPerM2S(
                absorbed,
                air.tempC[step],
                air.vapourPa[step],
                air.place == AirSeries.Place.HOUSE
                        ? ReferenceEvapotranspiration.HOUSE_RESISTANCE_S_PER_M
                        : ReferenceEvapotranspiration.roomResistanceSPerM(
                                air.speedMPerS[step], traits.stomata().leafSizeM()),
                air.pressurePa);
    }
}
