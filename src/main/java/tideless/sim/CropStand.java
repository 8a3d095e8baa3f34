package tideless.sim;

import tideless.crop.Canopy;
import tideless.crop.CarbonDioxide;
import tideless.crop.CropTraits;
import tideless.crop.Growing;
import tideless.crop.Plant;
import tideless.crop.Transpiration;
import tideless.rig.Planting;
import tideless.rig.VesselId;

/**
 * The plants of a tray above the deck: canopy, growth, stage and demand for water and nutrients.
 * Scratch space of one run.
 */
final class CropStand {
    /** Growth left while air roots are drowned; assumed, no source. */
    private static final double DROWNED_GROWTH_FRAC = 0.5;

    private final Planting.OfCrop crop;
    private final CropTraits traits;
    private final VesselId where;

    private final PlantThirst thirst;

    private Plant plant;
    private double leafM2;
    private double salinityFrac = 1;
    private boolean flowering;
    private boolean ripe;
    private double lastDayCd; // degree-days of the day before
    private boolean harvested;

    private boolean demandKnown;
    private double demandKgPerS; // of one plant, with sound roots

    final NutrientDemand nutrients;
    final DayClimate day = new DayClimate();
    private double dayTranspirationM3;

    /**
     * @param where told with each event
     */
    CropStand(Planting.OfCrop crop, VesselId where) {
        this.crop = crop;
        this.where = where;
        traits = crop.traits();
        plant = crop.plantAtStart();
        thirst = new PlantThirst(traits, crop.model());
        flowering = Growing.isFlowering(traits, plant);
        nutrients = NutrientDemand.ofCrop(traits, crop.plants(), plant);
        shapeCanopy();
    }

    Plant plant() {
        return plant;
    }

    double leafAreaIndex() {
        return thirst.leafAreaIndex();
    }

    /** Of all plants, m2. */
    double leafM2() {
        return leafM2;
    }

    double freshG() {
        return Growing.freshG(traits, plant);
    }

    double fruitFreshG() {
        return Growing.fruitFreshG(traits, plant);
    }

    boolean isHarvested() {
        return harvested;
    }

    boolean hasPlants() {
        return crop.plants() > 0;
    }

    /** Share of the light on the tray that the canopy lets through, 0-1. */
    double lightPassedFrac() {
        return 1
                - thirst.interceptedFrac()
                        * Math.min(1, thirst.coveredM2() * crop.plants() / crop.groundM2());
    }

    private void shapeCanopy() {
        demandKnown = false;
        thirst.shape(plant, groundPerPlantM2());
        leafM2 = Canopy.leafAreaM2(traits, plant) * crop.plants();
    }

    private double groundPerPlantM2() {
        return crop.groundM2() / Math.max(1, crop.plants());
    }

    /** Light or air have changed since the step before. */
    void airChanged() {
        demandKnown = false;
    }

    /**
     * Water all plants would transpire with sound roots, m3/s.
     *
     * @param parWPerM2 photosynthetic light on the canopy, W/m2
     * @param infraredWPerM2 the rest of the light, W/m2
     * @param ppfdUmolPerM2S the photons of the first
     * @param sunFrac share of the day's light that is sun, 0-1
     */
    double waterDemandM3PerS(
            double parWPerM2,
            double infraredWPerM2,
            double ppfdUmolPerM2S,
            double sunFrac,
            AirSeries air,
            int step) {
        if (!demandKnown) {
            demandKgPerS =
                    thirst.kgPerS(parWPerM2, ppfdUmolPerM2S, infraredWPerM2, sunFrac, air, step);
            demandKnown = true;
        }
        return salinityFrac * demandKgPerS * crop.plants() / TrayRun.WATER_KG_PER_M3;
    }

    /** What all plants transpired in a step, m3. */
    void transpired(double m3) {
        dayTranspirationM3 += m3;
    }

    /** A day without living plants has ended. */
    void endIdleDay() {
        day.clear();
        nutrients.end();
    }

    /**
     * Grows the plants by the day that has just ended.
     *
     * @param ecMsPerCm of the solution, mS/cm; NaN when the tray is dry
     * @param molPerM3 dissolved; null when the tray is dry
     * @param strandedS how long the plants lived on their reserve, s
     * @param drownedS how long their air roots were drowned, s
     */
    void endDay(
            double atS,
            int daysSinceStart,
            double ecMsPerCm,
            double[] molPerM3,
            double strandedS,
            double drownedS,
            EventLog log) {
        salinityFrac = molPerM3 == null ? 1 : Transpiration.saltFrac(traits, ecMsPerCm);
        double awakeFrac = 1 - strandedS / day.spanS();
        double drownedFrac = 1 - (1 - DROWNED_GROWTH_FRAC) * drownedS / day.spanS();
        double stress = salinityFrac * nutrients.growthFrac() * awakeFrac * drownedFrac;
        Plant before = plant;
        plant =
                Growing.dayLater(
                        traits,
                        before,
                        groundPerPlantM2(),
                        day.molPerM2(),
                        day.litPpfdUmolPerM2S(),
                        day.umolPerJ(),
                        day.meanTempC(),
                        stress * CarbonDioxide.growthFrac(day.litCo2Ppm()));
        lastDayCd = plant.thermalTimeCd() - before.thermalTimeCd();
        day.clear();
        shapeCanopy();
        nutrients.renew(before, plant, molPerM3, dayTranspirationM3);
        dayTranspirationM3 = 0;
        noteStages(atS, daysSinceStart, log);
    }

    private void noteStages(double atS, int daysSinceStart, EventLog log) {
        if (!flowering && Growing.isFlowering(traits, plant)) {
            flowering = true;
            log.add(Event.Kind.FLOWERING, atS, where);
        }
        if (!ripe && Growing.isRipe(traits, plant)) {
            ripe = true;
            if (traits.stages().fruits()) {
                log.add(Event.Kind.FIRST_RIPE, atS, where);
            }
        }
        if (isOver(daysSinceStart)) {
            harvested = true;
            nutrients.end();
            log.add(Event.Kind.HARVEST, atS, where);
        }
    }

    /** Whether the crop is ready within days, by its date or by the warmth of the last day. */
    boolean isNearHarvest(double timeS) {
        int days = FlushRule.DAYS_BEFORE_HARVEST;
        if (crop.harvestAfterDays().isPresent()) {
            return timeS / Timeline.DAY_S + days > crop.harvestAfterDays().getAsInt();
        }
        double endCd =
                traits.stages().fruits()
                        ? traits.stages().lastHarvestCd()
                        : traits.stages().firstHarvestCd();
        return plant.thermalTimeCd() + days * lastDayCd >= endCd;
    }

    private boolean isOver(int daysSinceStart) {
        if (crop.harvestAfterDays().isPresent()) {
            return daysSinceStart >= crop.harvestAfterDays().getAsInt();
        }
        return traits.stages().fruits()
                ? plant.thermalTimeCd() >= traits.stages().lastHarvestCd()
                : ripe;
    }
}
