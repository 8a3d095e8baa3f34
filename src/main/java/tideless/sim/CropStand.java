package tideless.sim;

import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.Canopy;
import tideless.crop.CarbonDioxide;
import tideless.crop.CropTraits;
import tideless.crop.FruitSet;
import tideless.crop.Growing;
import tideless.crop.Killing;
import tideless.crop.Plant;
import tideless.crop.RootWarmth;
import tideless.crop.Rooting;
import tideless.physics.LiquidWater;
import tideless.physics.Time;
import tideless.rig.Planting;
import tideless.rig.Tending;
import tideless.rig.VesselId;

/**
 * The plants of a tray above the deck: canopy, growth, stage and demand for water and nutrients.
 * Scratch space of one run.
 */
final class CropStand {
    /** Growth left while air roots are drowned; assumed, no source. */
    private static final double DROWNED_GROWTH_FRAC = 0.5;

    /** Share of its weight when ready from which a crop is cut before an absence; assumed. */
    private static final double NEARLY_READY_FRAC = 0.9;

    /** A harvest may be so much early when it would otherwise wait for somebody to come, d. */
    private static final int EARLY_DAYS = 7;

    /** Before an absence leaves are picked from this share of the usual days on; assumed. */
    private static final double EARLY_PICKING_FRAC = 0.5;

    /** Who takes this share of what stands takes all of it; assumed. */
    private static final double ALL_FRAC = 0.95;

    private final Planting.OfCrop crop;
    private final CropTraits traits;
    private final VesselId where;

    private final PlantThirst thirst;

    private Plant plant;
    private int plants;
    private double groundM2;
    private int actsDone;
    private double lastRipeCd; // of a fruit crop
    private final double startRootM;
    private double leafM2;
    private boolean flowering;
    private double readyDays = Double.NaN;
    private boolean ripe;
    private double lastDayCd; // degree-days of the day before
    private double lastDayFreshG; // what a plant gained on it
    private boolean ready; // by the last midnight
    private boolean pickable; // likewise, as it grows
    private int pickedOnDay = -1; // as it grows, since it was set out
    private double pickedG; // leaves taken from a plant so far
    private double fruitIfAllSetG; // dry, had heat kept no flower from setting
    private boolean harvested;

    private boolean demandKnown;
    private double demandKgPerS; // of one plant, with sound roots

    final NutrientDemand nutrients;
    final DayClimate day = new DayClimate();
    private final Unharmed unharmed;
    private double dayTranspirationM3;
    private TraySeason.Left leftOfDay = TraySeason.Left.ALL;
    private double storesTakenDays;
    private double chilledKd;
    private String diesOf = "";

    /**
     * @param where told with each event
     */
    CropStand(Planting.OfCrop crop, VesselId where) {
        this.crop = crop;
        this.where = where;
        traits = crop.traits();
        plant = crop.plantAtStart();
        unharmed = new Unharmed(traits, plant);
        plants = crop.plants();
        groundM2 = crop.groundM2();
        lastRipeCd = traits.stages().lastHarvestCd();
        thirst = new PlantThirst(traits, crop.model());
        startRootM = plant.rootLengthM();
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
        return plants > 0;
    }

    /** Ground under a plant's crown over what it can reach, 0-1. */
    double coverFrac() {
        return thirst.coveredM2() / Canopy.boundGroundM2(traits, groundPerPlantM2());
    }

    /**
     * A lit step has passed over its flowers.
     *
     * @param airC degC
     */
    void flowersStandIn(double airC, double stepS) {
        day.addFlowers(FruitSet.frac(traits.response().setInHeat(), airC), stepS);
    }

    /** Dry mass of all roots, g. */
    double rootDryG() {
        return plant.rootDryG() * plants;
    }

    int plants() {
        return plants;
    }

    CropTraits traits() {
        return traits;
    }

    /** Share of the light on the tray that the canopy lets through, 0-1. */
    double lightPassedFrac() {
        return 1 - thirst.interceptedFrac() * Math.min(1, thirst.coveredM2() * plants / groundM2);
    }

    private void shapeCanopy() {
        demandKnown = false;
        thirst.shape(plant, groundPerPlantM2());
        leafM2 = Canopy.leafAreaM2(traits, plant) * plants;
    }

    private double groundPerPlantM2() {
        return groundM2 / Math.max(1, plants);
    }

    /** Light or air have changed since the step before. */
    void airChanged() {
        demandKnown = false;
    }

    /**
     * Water all plants would transpire with sound roots in a good solution, m3/s.
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
        return demandKgPerS * plants / LiquidWater.KG_PER_M3;
    }

    /** What all plants transpired in a step, m3. */
    void transpired(double m3) {
        dayTranspirationM3 += m3;
    }

    /** A day without living plants has ended: what nothing harms would have grown on. */
    void endIdleDay() {
        if (!harvested && hasPlants() && day.spanS() > 0 && !wouldBeCut()) {
            unharmed.grow(sound -> dayLater(sound, 1));
        }
        day.clear();
        nutrients.end();
        leftOfDay = TraySeason.Left.ALL;
    }

    /**
     * Grows the plants by the day that has just ended.
     *
     * @param molPerM3 dissolved; null when the tray is dry
     * @param roots what the root zone did to them
     * @param drownedS how long their air roots were drowned, s
     * @param recoveryFrac growth that wilting gone by leaves, 0-1
     */
    void endDay(
            double atS,
            int daysSincePlanted,
            double[] molPerM3,
            RootDay roots,
            double drownedS,
            double recoveryFrac,
            EventLog log) {
        double drownedFrac = 1 - (1 - DROWNED_GROWTH_FRAC) * drownedS / day.spanS();
        double warmthFrac =
                RootWarmth.besideAirFrac(
                        traits.response(),
                        roots.meanTempC(),
                        Growing.temperatureFrac(traits.growth(), day.meanTempC()));
        double airFrac = Math.min(drownedFrac, roots.airFrac()) * roots.airRootFrac();
        double waterFrac = roots.metFrac() * recoveryFrac;
        double stress =
                roots.saltFrac()
                        * roots.metFrac()
                        * Math.min(drownedFrac, roots.airFrac())
                        * roots.airRootFrac()
                        * warmthFrac
                        * recoveryFrac
                        * nutrients.growthFrac();
        double unharmedBeforeG = unharmed.freshG();
        double gainG = wouldBeCut() ? 0 : unharmed.grow(sound -> dayLater(sound, 1));
        if (gainG > 0 && wouldBeCut()) {
            unharmed.readyAfter(weighedAfter(daysSincePlanted, unharmedBeforeG, unharmed.freshG()));
        }
        // What is strong because it is little is want of water.
        double keptFull = roots.keptFullSaltFrac();
        unharmed.leave(Stress.SALT, keptFull, gainG);
        unharmed.leave(
                Stress.WATER, keptFull > 0 ? waterFrac * roots.saltFrac() / keptFull : 1, gainG);
        unharmed.leave(Stress.AIR, airFrac, gainG);
        unharmed.leave(Stress.WARMTH, warmthFrac, gainG);
        unharmed.leave(Stress.HUNGER, nutrients.growthFrac(), gainG);
        leftOfDay = new TraySeason.Left(roots.saltFrac(), nutrients.growthFrac(), airFrac);
        Plant before = plant;
        Plant grown = dayLater(before, stress);
        outlive(grown, roots.saltFrac());
        plant =
                grown.withRootLengthM(
                        rootLengthM(before, grown, daysSincePlanted, roots.metFrac()));
        fruitIfAllSetG += Growing.fruitIfAllSetG(traits, before, plant);
        lastDayCd = plant.thermalTimeCd() - before.thermalTimeCd();
        lastDayFreshG = Growing.freshG(traits, plant) - Growing.freshG(traits, before);
        day.clear();
        shapeCanopy();
        nutrients.renew(before, plant, molPerM3, dayTranspirationM3);
        dayTranspirationM3 = 0;
        noteStages(atS, daysSincePlanted, log);
    }

    // Air that kills at once, and days that give nothing. What light, air and salt alone would have
    // given is asked only of a day on which nothing came of them.
    private void outlive(Plant grown, double saltFrac) {
        double gainG = grown.dryG() - plant.dryG();
        if (Killing.isNothing(gainG, plant.dryG())) {
            gainG = dayLater(plant, saltFrac).dryG() - plant.dryG();
        }
        double taken = Killing.storesTakenDays(traits, gainG, plant.dryG(), day.meanTempC());
        storesTakenDays = Math.max(0, storesTakenDays + taken);
        chilledKd = Killing.chilledKd(traits, chilledKd, day.meanTempC());
        if (Killing.isFrozen(traits, day.lowestC())) {
            diesOf = Event.FROST;
        } else if (Killing.isChilled(chilledKd)) {
            diesOf = Event.CHILL;
        } else if (Killing.isScorched(day.highestC())) {
            diesOf = Event.HEAT;
        } else if (storesTakenDays > Killing.STORES_DAYS) {
            boolean hot = day.meanTempC() >= traits.growth().ceilingC();
            diesOf = hot ? Event.HEAT : saltFrac > 0 ? Event.DARK : Event.SALT;
        }
    }

    /** What it has died of by itself; empty while it lives. */
    String diesOf() {
        return diesOf;
    }

    // A head that is wanted at a weight comes later of a harm: that is not lost.
    private boolean wouldBeCut() {
        return !traits.stages().fruits()
                && crop.harvestAfterDays().isEmpty()
                && isReady(unharmed.plant().thermalTimeCd(), unharmed.freshG());
    }

    // Within the day that has just ended, where it was its weight that was waited for.
    private double weighedAfter(int daysSincePlanted, double beforeG, double afterG) {
        double wantedG = crop.harvestFreshG().orElse(0);
        boolean byWeight = beforeG < wantedG && afterG >= wantedG;
        return byWeight
                ? daysSincePlanted - (afterG - wantedG) / (afterG - beforeG)
                : daysSincePlanted;
    }

    private Plant dayLater(Plant before, double stressFrac) {
        return Growing.dayLater(
                traits,
                FruitSet.after(traits, before, day.setFrac(), day.meanTempC()),
                groundPerPlantM2(),
                day.molPerM2(),
                day.litPpfdUmolPerM2S(),
                day.umolPerJ(),
                day.meanTempC(),
                stressFrac * CarbonDioxide.growthFrac(day.litCo2Ppm()));
    }

    /** What its root zone left of the growth of the day that has just ended. */
    TraySeason.Left leftOfDay() {
        return leftOfDay;
    }

    /** What its root zone took of the crop so far. */
    GrowthLost lost() {
        return unharmed.lost(plant, pickedG, readyDays, notSetFrac());
    }

    // Share of the fruit that did not come of flowers that heat kept from setting.
    private double notSetFrac() {
        return fruitIfAllSetG > 0 ? Math.max(0, 1 - plant.fruitDryG() / fruitIfAllSetG) : 0;
    }

    /** What hands do on the day that begins, and what waited for it. */
    void tend(double atS, int daysSincePlanted, EventLog log) {
        List<Tending.Act> acts = crop.tending().acts();
        boolean changed = false;
        while (actsDone < acts.size() && acts.get(actsDone).day() <= daysSincePlanted) {
            if (!harvested) {
                tend(acts.get(actsDone), atS, log);
                changed = true;
            }
            actsDone++;
        }
        if (changed) {
            shapeCanopy();
        }
    }

    private void tend(Tending.Act act, double atS, EventLog log) {
        if (act instanceof Tending.LeafPicking picking) {
            pickLeaves(picking.shareFrac(), atS, "", log);
        } else if (act instanceof Tending.Thinning thinning) {
            thin(Math.max(0, plants - thinning.plants()), atS, log);
        } else if (act instanceof Tending.Spacing spacing) {
            groundM2 = spacing.groundM2();
            log.addTaken(Event.Kind.SPACED, atS, where, 0, perM2(plants / groundM2));
        } else {
            plant = plant.topped();
            unharmed.top();
            lastRipeCd = Growing.lastRipeAfterToppingCd(traits, plant.thermalTimeCd());
            log.add(Event.Kind.TOPPED, atS, where);
        }
    }

    private void pickLeaves(double shareFrac, double atS, String why, EventLog log) {
        Plant before = plant;
        Growing.Picking picked = Growing.pickLeaves(traits, before, groundPerPlantM2(), shareFrac);
        plant = picked.left();
        unharmed.pickLeaves(groundPerPlantM2(), shareFrac);
        pickedG += picked.freshG();
        nutrients.pick(before.dryG() - plant.dryG());
        log.addTaken(Event.Kind.LEAVES_PICKED, atS, where, picked.freshG() * plants, why);
    }

    /**
     * Picks a crop that is picked as it grows, where it is ready and its last picking long enough
     * ago.
     *
     * @param daysSincePlanted whole days
     * @param next visit
     */
    void pickIfDue(int daysSincePlanted, NextVisit next, double atS, EventLog log) {
        if (crop.tending().picking().isEmpty() || !pickable) {
            return;
        }
        Tending.Picking picking = crop.tending().picking().get();
        int gone = pickedOnDay < 0 ? picking.everyDays() : daysSincePlanted - pickedOnDay;
        boolean left =
                next.afterAbsence()
                        && gone + next.days() > picking.everyDays()
                        && gone >= EARLY_PICKING_FRAC * picking.everyDays();
        if (gone >= picking.everyDays() || left) {
            pickedOnDay = daysSincePlanted;
            pickLeaves(picking.shareFrac(), atS, Event.AS_IT_GROWS, log);
            shapeCanopy();
        }
    }

    /** Whether it is picked as it grows, and was not yet. */
    boolean isUnpicked() {
        return pickedOnDay < 0;
    }

    /** Fresh leaves taken from a plant so far, g. */
    double pickedG() {
        return pickedG;
    }

    /**
     * Takes leaves of so much fresh mass from all plants; all of it is a harvest.
     *
     * @param daysSincePlanted whole days
     */
    void take(double fromAllG, int daysSincePlanted, double atS, EventLog log) {
        double standsG = standingFreshG() * plants;
        if (fromAllG >= ALL_FRAC * standsG) {
            harvest(atS, "", log);
            return;
        }
        pickable = true;
        pickedOnDay = daysSincePlanted;
        pickLeaves(fromAllG / standsG, atS, Event.AS_IT_GROWS, log);
        shapeCanopy();
    }

    private void thin(int out, double atS, EventLog log) {
        nutrients.thinTo(plants - out);
        plants -= out;
        log.addTaken(
                Event.Kind.THINNED, atS, where, out * standingFreshG(), String.valueOf(plants));
    }

    /** Plants are lost; those that stay have the ground of all. */
    void lose(int lost, double atS, EventLog log) {
        thin(Math.min(plants, lost), atS, log);
        shapeCanopy();
    }

    // To a tenth, as growers tell a density.
    private static String perM2(double density) {
        double tenths = FastMath.round(density * 10) / 10.0;
        return tenths == Math.floor(tenths)
                ? String.valueOf(FastMath.round(tenths))
                : String.valueOf(tenths);
    }

    private double standingFreshG() {
        return freshG() - fruitFreshG();
    }

    // Roots grow as long as the plant has water; those of a plug have to leave it first.
    private double rootLengthM(Plant before, Plant grown, int daysSincePlanted, double metFrac) {
        double outFrac = startRootM > 0 ? 1 : Rooting.outOfPlugFrac(daysSincePlanted);
        double gainM = grown.rootLengthM() - before.rootLengthM();
        return before.rootLengthM() + outFrac * metFrac * gainM;
    }

    private void noteStages(double atS, int daysSincePlanted, EventLog log) {
        if (!flowering && Growing.isFlowering(traits, plant)) {
            flowering = true;
            log.add(Event.Kind.FLOWERING, atS, where);
        }
        if (!ripe && isReady(plant.thermalTimeCd(), freshG())) {
            ripe = true;
            readyDays = weighedAfter(daysSincePlanted, freshG() - lastDayFreshG, freshG());
            if (traits.stages().fruits()) {
                log.add(Event.Kind.FIRST_RIPE, atS, where);
            }
        }
        ready = isOver(daysSincePlanted);
        pickable |= Growing.isRipe(traits, plant.thermalTimeCd(), freshG(), crop.harvestFreshG());
    }

    /** Whether it waits to be cut, or cleared when the last fruit is picked. */
    boolean isReady() {
        return ready;
    }

    /** Whether a crop that would be ready before somebody comes again is as good as ready now. */
    boolean isNearlyReady(double sincePlantedS, NextVisit next) {
        for (int days = 1; days <= Math.min(next.days(), EARLY_DAYS); days++) {
            if (isReadyIn(days, sincePlantedS)) {
                return traits.stages().fruits()
                        || freshG() >= NEARLY_READY_FRAC * (freshG() + days * lastDayFreshG);
            }
        }
        return false;
    }

    /** Takes the crop out of its tray. */
    void harvest(double atS, String why, EventLog log) {
        harvested = true;
        nutrients.end();
        log.addTaken(Event.Kind.HARVEST, atS, where, 0, why);
    }

    /** Whether the crop is ready within a week, by its date or by the warmth of the last day. */
    boolean isNearHarvest(double sincePlantedS) {
        return isReadyIn(FlushRule.DAYS_BEFORE_HARVEST, sincePlantedS);
    }

    private boolean isReadyIn(int days, double sincePlantedS) {
        if (crop.harvestAfterDays().isPresent()) {
            return sincePlantedS / Time.DAY_S + days > crop.harvestAfterDays().getAsInt();
        }
        double thenCd = plant.thermalTimeCd() + days * lastDayCd;
        return traits.stages().fruits()
                ? thenCd >= lastRipeCd
                : isReady(thenCd, freshG() + days * lastDayFreshG);
    }

    // Leaves that are picked one by one keep the crop until it bolts.
    private boolean isReady(double thermalTimeCd, double freshG) {
        return crop.isPickedForLeaves()
                ? Growing.isSpent(traits, thermalTimeCd)
                : Growing.isRipe(traits, thermalTimeCd, freshG, crop.harvestFreshG());
    }

    private boolean isOver(int daysSincePlanted) {
        if (crop.harvestAfterDays().isPresent()) {
            return daysSincePlanted >= crop.harvestAfterDays().getAsInt();
        }
        return traits.stages().fruits() ? plant.thermalTimeCd() >= lastRipeCd : ripe;
    }
}
