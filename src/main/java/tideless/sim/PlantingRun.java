package tideless.sim;

import tideless.crop.CropTraits;
import tideless.crop.Osmosis;
import tideless.crop.RootBreathing;
import tideless.crop.ThirstDoubt;
import tideless.crop.Transpiration;
import tideless.crop.Wilting;
import tideless.physics.Elementary;
import tideless.physics.LiquidWater;
import tideless.physics.Time;
import tideless.rig.Planting;
import tideless.rig.Tray;

/**
 * One planting of a tray while a run goes on: its plants above the deck ({@link CropStand}), their
 * roots ({@link RootFate}) and what the root zone does to both. Another crop in the same tray is
 * another of these. Scratch space of one run.
 */
final class PlantingRun {
    /**
     * Share of a long step after which {@link RootAir#soonGPerM3} stands near the mean over it: 1 /
     * (1 + 0.65 x) for (1 - exp(-x)) / x, within 0.05 up to x = 8; derived.
     */
    private static final double MEAN_AFTER_FRAC = 0.65;

    private final Planting.OfCrop of;
    private final CropStand stand;
    private final RootFate roots;
    private final RootAlarms alarms;
    private final RootAir air;
    private final TrayToll toll;
    private final int fromDay;
    private final double highMsPerCm; // what the crop bears, as a grower would read it
    private final RootDay rootDay = new RootDay();
    private double bearableM3;

    /**
     * @param fromDay day of the run on which it is set out
     * @param levelM the roots find, m above the floor
     * @param usedToMsPerCm strength of the solution they come from, mS/cm
     * @param air oxygen of the tray's solution
     * @param toll of the tray
     */
    PlantingRun(
            Planting.OfCrop of,
            Tray tray,
            int fromDay,
            double levelM,
            double usedToMsPerCm,
            RootAir air,
            TrayToll toll) {
        this.of = of;
        this.fromDay = fromDay;
        this.air = air;
        this.toll = toll;
        highMsPerCm = tray.limits().ecHighMsPerCm() * (1 + FlushRule.METER_DOUBT_FRAC);
        stand = new CropStand(of, tray.id());
        roots =
                new RootFate(
                        of.traits(),
                        tray.cupBottomM(),
                        tray.shape().depthM(),
                        levelM,
                        stand.plant().rootLengthM(),
                        tray.deck(),
                        tray.id());
        alarms = new RootAlarms(tray.id(), usedToMsPerCm);
    }

    CropStand stand() {
        return stand;
    }

    RootFate roots() {
        return roots;
    }

    boolean lives() {
        return !roots.isDead() && !stand.isHarvested() && stand.hasPlants();
    }

    /** Whether its plants are dead. */
    boolean isLost() {
        return roots.isDead();
    }

    /** Whether the crop leaves the tray within days. */
    boolean isNearHarvest(double timeS) {
        return stand.isNearHarvest(sincePlantedS(timeS));
    }

    /** Since the midnight of the day on which it was set out, s. */
    private double sincePlantedS(double timeS) {
        return timeS - fromDay * Time.DAY_S;
    }

    /**
     * Takes the crop out where it is ready, or as good as ready before nobody comes for days; or
     * picks it where it is picked as it grows.
     */
    void harvestIfReady(double timeS, NextVisit next, EventLog log) {
        if (!lives()) {
            return;
        }
        if (stand.isReady()) {
            stand.harvest(timeS, "", log);
        } else if ((next.afterAbsence() || next.isNever() && next.days() > 1)
                && stand.isNearlyReady(sincePlantedS(timeS), next)) {
            stand.harvest(timeS, Event.BEFORE_ABSENCE, log);
        } else {
            stand.pickIfDue(daysSincePlanted(timeS), next, timeS, log);
        }
    }

    /** Level to which whoever comes fills it up by hand, m: of young plants as roots reach. */
    double filledToM(double markM, double levelM, double timeS, int daysAhead) {
        boolean isYoung = lives() && sincePlantedS(timeS) <= Wilting.SEEDLING_DAYS * Time.DAY_S;
        return isYoung ? roots.youngMarkM(markM, levelM, daysAhead) : markM;
    }

    private int daysSincePlanted(double timeS) {
        return (int) (sincePlantedS(timeS) / Time.DAY_S);
    }

    /** Takes leaves of so much fresh mass from all plants, g. */
    void take(double fromAllG, double timeS, EventLog log) {
        stand.take(fromAllG, daysSincePlanted(timeS), timeS, log);
    }

    /** Takes the crop out, ripe or not, for another that waits. */
    void makeRoom(double timeS, EventLog log) {
        if (lives()) {
            stand.harvest(timeS, Event.MAKES_ROOM, log);
        }
    }

    /** A crop that is ready when the run ends is cut then, or picked for the first time. */
    void endRun(double atS, EventLog log) {
        if (lives() && stand.isReady()) {
            stand.harvest(atS, "", log);
        } else if (lives() && stand.isUnpicked()) {
            stand.pickIfDue(daysSincePlanted(atS), NextVisit.NONE, atS, log);
        }
    }

    /**
     * Thirst of the stand over the model's: what it departs by, times how little is known of it
     * beside its leaf, which departs by itself.
     *
     * @param deviate how far it departs, in standard deviations of the logarithm
     * @param sunFrac share of the day's light that is a house's sun, 0-1; 0 in the open
     */
    double thirstFrac(double deviate, double sunFrac) {
        if (deviate == 0) {
            return 1;
        }
        return Elementary.exp(deviate * ThirstDoubt.besideLeaf(of.traits(), sunFrac));
    }

    /**
     * Share of the demand that salt and want of oxygen leave to wet roots, 0-1.
     *
     * @param saltMsPerCm strength of the solution, mS/cm
     * @param levelM m above the floor
     * @param waterDemandM3 what they would drink of a good solution in this step, m3
     * @param spanS of the step, s
     */
    double bearAtBegin(
            double saltMsPerCm, double tempC, double levelM, double waterDemandM3, double spanS) {
        double borneFrac = lives() ? borneFrac(saltMsPerCm, tempC, levelM, spanS) : 1;
        bearableM3 = waterDemandM3 * borneFrac;
        return borneFrac;
    }

    private double borneFrac(double saltMsPerCm, double tempC, double levelM, double spanS) {
        CropTraits traits = stand.traits();
        double salt = Transpiration.saltFrac(traits, saltMsPerCm);
        double oxygen =
                spanS > Simulation.EXACT_UP_TO_S
                        ? air.soonGPerM3(MEAN_AFTER_FRAC * spanS)
                        : air.likelyGPerM3();
        double breath = RootBreathing.waterFrac(traits.response(), oxygen, tempC);
        return salt * RootBreathing.ofPlant(breath, roots.soakedFrac(levelM));
    }

    /** Whether its roots, dead or alive, are still in the tray. */
    boolean isRooted() {
        return !stand.isHarvested();
    }

    /** Dry mass of the roots below a level, g. */
    double wetRootDryG(double levelM) {
        return roots.soakedFrac(levelM) * stand.rootDryG();
    }

    /**
     * Ends a step.
     *
     * @param levelM m above the floor
     * @param isDeep whether there is more than a film of solution
     * @param saltMsPerCm its strength at the start of the step, mS/cm
     * @param keptFullMsPerCm what the same salts would be in a vessel kept full of feed, mS/cm
     * @param tempC of the solution
     * @param waterDemandM3 thirst of the step, m3
     * @param transpirationM3 what was drunk, m3
     */
    void end(
            double levelM,
            boolean isDeep,
            double saltMsPerCm,
            double keptFullMsPerCm,
            double tempC,
            double waterDemandM3,
            double transpirationM3,
            double endS,
            double spanS,
            EventLog log) {
        stand.transpired(transpirationM3);
        if (lives()) {
            double demandKgPerS = waterDemandM3 * LiquidWater.KG_PER_M3 / spanS;
            boolean supplied = isDeep && saltMsPerCm < Osmosis.NO_UPTAKE_MS_PER_CM;
            roots.step(
                    levelM,
                    supplied,
                    demandKgPerS,
                    stand.leafM2(),
                    stand.plants(),
                    stand.plant().rootDryG(),
                    sincePlantedS(endS) <= Wilting.SEEDLING_DAYS * Time.DAY_S,
                    endS,
                    spanS,
                    log);
            bear(levelM, saltMsPerCm, keptFullMsPerCm, tempC, transpirationM3, endS, spanS, log);
            toll.bear(roots, spanS);
        }
        roots.meet(levelM);
    }

    // What this step's root zone leaves of growth.
    private void bear(
            double levelM,
            double saltMsPerCm,
            double keptFullMsPerCm,
            double tempC,
            double transpirationM3,
            double endS,
            double spanS,
            EventLog log) {
        CropTraits traits = stand.traits();
        // Strong because it is little: kept full, it would suit the crop.
        boolean drunkDown = keptFullMsPerCm < saltMsPerCm && keptFullMsPerCm <= highMsPerCm;
        boolean shocked = alarms.isShockedBy(saltMsPerCm, drunkDown, endS, spanS, log);
        boolean stopped = shocked || saltMsPerCm >= traits.response().saltStopsMsPerCm();
        double saltFrac = stopped ? 0 : traits.salinity().growthFrac(saltMsPerCm);
        double breath = RootBreathing.growthFrac(traits.response(), air.likelyGPerM3(), tempC);
        rootDay.add(
                saltMsPerCm,
                saltFrac,
                drunkDown ? traits.salinity().growthFrac(keptFullMsPerCm) : saltFrac,
                RootBreathing.ofPlant(breath, roots.soakedFrac(levelM)),
                RootBreathing.airRootFrac(roots.airGapM(levelM), stand.coverFrac()),
                tempC,
                bearableM3,
                roots.drinksCupWater() ? bearableM3 : transpirationM3,
                spanS);
    }

    /** Whether want of oxygen has cost living plants growth on the day so far. */
    boolean isShortOfAir() {
        return lives() && rootDay.airFrac() < RootAlarms.SHORT_OF_AIR_FRAC;
    }

    /** What hands do on the day that begins. */
    void tend(double atS, int day, EventLog log) {
        if (lives()) {
            stand.tend(atS, day - fromDay, log);
        }
    }

    /**
     * Grows the plants by the day that has just ended.
     *
     * @param day of the run, the one that has ended among them
     * @param molPerM3 dissolved; null when the tray is dry
     */
    void growOvernight(double atS, int day, double levelM, double[] molPerM3, EventLog log) {
        int daysSincePlanted = day - fromDay;
        roots.endDay(levelM);
        if (lives()) {
            alarms.endDay(rootDay.airFrac(), atS, log);
            if (RootAlarms.killsSeedlings(daysSincePlanted, rootDay.saltMsPerCm())) {
                roots.die(atS, log);
            }
            stand.endDay(
                    atS,
                    daysSincePlanted,
                    molPerM3,
                    rootDay,
                    roots.dayDrownedS(),
                    roots.recoveryGrowthFrac(atS),
                    log);
            if (!stand.diesOf().isEmpty()) {
                roots.die(atS, stand.diesOf(), log);
            }
            roots.reach(stand.plant().rootLengthM());
        } else {
            stand.endIdleDay();
        }
        roots.clearDay();
        rootDay.clear();
    }
}
