package tideless.sim;

import org.apache.commons.math3.util.FastMath;
import tideless.crop.CropTraits;
import tideless.crop.Osmosis;
import tideless.crop.RootBreathing;
import tideless.crop.ThirstDoubt;
import tideless.crop.Wilting;
import tideless.physics.Light;
import tideless.physics.LiquidWater;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Planting;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.solution.Brine;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Meter;

/**
 * One tray while a run goes on: its water, warmth and account, with the plants ({@link CropStand}),
 * their roots ({@link RootFate}) and what is dissolved ({@link TraySalts}) each in an object of its
 * own. Its fields change from step to step so that the inner loop allocates nothing
 * (docs/decisions/0003-mutable-run-state.md); nothing outside one run ever sees it.
 */
final class TrayRun {
    /** Share of the demand met by depth below which a tray is called dried out; assumed. */
    private static final double DRY_FRAC = 0.1;

    final Tray tray;
    final int index;
    private final Planting planting;
    private final CropStand crop; // null when the water demand was measured
    private final RootFate roots; // likewise
    private final RootDay rootDay = new RootDay();
    final RootAir air;

    // Water and what is in it.
    final VesselWater water;
    final TraySalts salts;
    final Precipitate precipitate = new Precipitate();
    double tempC;
    boolean spills;
    double settingM; // of its valve, m above the floor; NaN without one
    private boolean dry;
    private final double statedCo2Ppm; // 0 to work it out
    private double airCo2Ppm = ElectricalConductivity.AIR_CO2_PPM; // at the end of the last step
    private boolean breathesOut; // carbon dioxide follows from what the roots breathe
    private double co2AtC;
    private double saltMsPerCm;
    private final RootAlarms alarms;
    private double bearableM3;
    private final Departures departures;
    private final TrayToll toll;

    // What the step brought, for the recorder.
    double waterDemandM3;
    double transpirationM3;
    double evaporationM3;
    double inflowM3;
    double spillM3;
    double lightMolPerM2;
    double ppfdUmolPerM2S;

    // Rates of this step.
    /** Transpiration and evaporation, m3/s, as long as there is water. */
    double evapotranspirationM3PerS;

    private double lampPpfdBefore;
    private double sunFrac; // share of the day's light that is sun
    private int sunFracOfDay = -1;
    private double thirstFrac; // of this day over the model's
    private double transpirationM3PerS;
    private final Surface surface;
    private double gainW;
    private double conductanceWPerK;
    private double stepStartM3;

    // Accounts, m3.
    double transpirationTotalM3;
    double evaporationTotalM3;
    double toppedUpM3;
    double freshM3;
    double drainedM3;
    double spiltTotalM3;

    /**
     * @param air oxygen of its solution
     * @param climateCo2Ppm carbon dioxide a climate states for all solutions, ppm; 0 for none
     * @param departures of this run from its scenario
     * @param days of the run
     */
    TrayRun(
            Tray tray,
            int index,
            double startTempC,
            RootAir air,
            double climateCo2Ppm,
            Departures departures,
            int days) {
        this.tray = tray;
        this.departures = departures;
        toll = new TrayToll(days);
        this.index = index;
        planting = tray.planting();
        Shape shape = tray.shape();
        water = new VesselWater(shape.volumeM3(tray.startLevelM()));
        tempC = startTempC;
        this.air = air;
        double ownCo2Ppm = tray.deck().solutionCo2Ppm();
        statedCo2Ppm = ownCo2Ppm > 0 ? ownCo2Ppm : climateCo2Ppm;
        settingM = tray.filling() instanceof Filling.ByValve valve ? valve.settingM() : Double.NaN;
        surface = new Surface(tray.openAreaM2(), shape);
        if (planting instanceof Planting.OfCrop ofCrop) {
            crop = new CropStand(ofCrop, tray.id());
            roots =
                    new RootFate(
                            ofCrop.traits(),
                            tray.cupBottomM(),
                            shape.depthM(),
                            tray.startLevelM(),
                            crop.plant().rootLengthM(),
                            tray.deck(),
                            tray.id());
        } else {
            crop = null;
            roots = null;
        }
        salts =
                new TraySalts(
                        water.m3,
                        tray.startLiquid().composition(),
                        crop == null ? NutrientDemand.withTheWater() : crop.nutrients);
        alarms = new RootAlarms(tray.id(), salts.equivalentMsPerCm(water.m3));
    }

    /** A run without departures, of which nobody asks for its days. */
    TrayRun(Tray tray, int index, double startTempC, RootAir air, double climateCo2Ppm) {
        this(tray, index, startTempC, air, climateCo2Ppm, Departures.NONE, 0);
    }

    double levelM() {
        return tray.shape().levelM(water.m3);
    }

    double rootTipM() {
        return roots == null ? 0 : roots.tipM(levelM());
    }

    double wetRootFrac() {
        return roots == null ? (water.m3 > 0 ? 1 : 0) : roots.wetFrac(levelM());
    }

    double leafAreaIndex() {
        return crop == null ? 0 : crop.leafAreaIndex();
    }

    /**
     * Carbon dioxide the solution stood with at the end of the last step, ppm. Worked out when
     * somebody asks: few steps are asked about.
     */
    double solutionCo2Ppm() {
        return breathesOut ? air.carbonDioxidePpm(airCo2Ppm, co2AtC) : airCo2Ppm;
    }

    boolean lives() {
        return crop != null && !roots.isDead() && !crop.isHarvested() && crop.hasPlants();
    }

    /** Whether the crop leaves the tray within days. */
    boolean isNearHarvest(double timeS) {
        return crop != null && crop.isNearHarvest(timeS);
    }

    /** Takes the crop out where it is ready, or as good as ready before nobody comes for days. */
    void harvestIfReady(double timeS, NextVisit next, EventLog log) {
        if (!lives()) {
            return;
        }
        if (crop.isReady()) {
            crop.harvest(timeS, "", log);
        } else if ((next.afterAbsence() || next.isNever() && next.days() > 1)
                && crop.isNearlyReady(timeS, next)) {
            crop.harvest(timeS, Event.BEFORE_ABSENCE, log);
        }
    }

    /** A crop that is ready when the run ends is cut then. */
    void endRun(double atS, EventLog log) {
        if (lives() && crop.isReady()) {
            crop.harvest(atS, "", log);
        }
    }

    /** Highest level the roots bear, m above the floor. */
    double highestBorneM() {
        return roots == null ? tray.shape().depthM() : roots.highestBorneM();
    }

    double freshG() {
        return crop == null ? Double.NaN : crop.freshG();
    }

    double fruitFreshG() {
        return crop == null ? Double.NaN : crop.fruitFreshG();
    }

    /** What has become of it so far. */
    TraySeason season() {
        return toll.season(freshG(), fruitFreshG());
    }

    /** Works out what this step will take, from the state at its start. */
    void begin(int step, double timeS, double spanS, AirSeries air) {
        Lamp lamp = tray.lamp();
        int day = (int) (timeS / Time.DAY_S);
        if (day != sunFracOfDay) {
            sunFracOfDay = day;
            sunFrac = air.sunFrac(day, lamp);
            thirstFrac = departures.thirstFrac(index, day) * standFrac();
            if (crop != null) {
                crop.airChanged();
            }
        }
        double lampPpfd = lamp.ppfdUmolPerM2S(timeS);
        if (crop != null && (lampPpfd != lampPpfdBefore || !air.sameAsBefore[step])) {
            crop.airChanged();
        }
        lampPpfdBefore = lampPpfd;
        double lampPar = lampPpfd / lamp.umolPerJ();
        double par = lampPar + air.parWPerM2(step);
        double infrared = lampPar * lamp.nearInfraredPerPar() + air.infraredWPerM2(step);
        ppfdUmolPerM2S = lampPpfd + air.ppfdUmolPerM2S(step);
        lightMolPerM2 = Light.dailyLightMolPerM2(ppfdUmolPerM2S, spanS);

        double airC = air.tempC[step];
        waterDemandM3 =
                thirstFrac * waterDemandM3PerS(timeS, spanS, par, infrared, air, step) * spanS;
        saltMsPerCm = salts.equivalentMsPerCm(water.m3);
        double borneFrac = borneFrac();
        bearableM3 = waterDemandM3 * borneFrac;
        transpirationM3PerS = waterDemandM3 / spanS * Math.min(borneFrac, supplyFrac());

        double uncovered = crop == null ? 1 : crop.lightPassedFrac();
        gainW = VesselHeat.gainW(tray.shape(), tray.openAreaM2(), uncovered * (par + infrared));
        conductanceWPerK = VesselHeat.conductanceWPerK(tray.shape(), levelM());
        surface.begin(
                tempC,
                gainW,
                conductanceWPerK,
                VesselHeat.capacityJPerK(water.m3, tempC),
                spanS,
                air,
                step);
        evapotranspirationM3PerS = transpirationM3PerS + surface.m3PerS;
        stepStartM3 = water.m3;
        salts.begin();
        inflowM3 = 0;
        spillM3 = 0;
        transpirationM3 = 0;
        evaporationM3 = 0;
        if (crop != null) {
            crop.day.add(ppfdUmolPerM2S, lightMolPerM2, par, airC, air.co2Ppm[step], spanS);
        }
    }

    /**
     * Thirst of the stand over the model's: what it departs by, times how little is known of it.
     */
    private double standFrac() {
        double deviate = departures.standDeviate(index);
        if (deviate == 0 || !(planting instanceof Planting.OfCrop ofCrop)) {
            return 1;
        }
        ThirstDoubt doubt = ThirstDoubt.of(ofCrop.traits(), sunFrac, crop.standLeafAreaIndex());
        return FastMath.exp(deviate * doubt.stand());
    }

    private double waterDemandM3PerS(
            double timeS, double spanS, double par, double infrared, AirSeries air, int step) {
        if (planting instanceof Planting.MeasuredThirst measured) {
            return measured.thirst().meanM3PerS(timeS, timeS + spanS);
        }
        return lives()
                ? crop.waterDemandM3PerS(par, infrared, ppfdUmolPerM2S, sunFrac, air, step)
                : 0;
    }

    private double supplyFrac() {
        double levelM = levelM();
        double depthFrac = depthFrac(levelM);
        return roots == null ? depthFrac : Math.min(depthFrac, roots.supplyFrac(levelM));
    }

    /** Share of the demand that a depth of solution supplies, 0-1: a film feeds nobody. */
    private static double depthFrac(double levelM) {
        return Math.max(0, Math.min(1, levelM / Brine.FILM_M - 1));
    }

    /** Share of the demand that salt and want of oxygen leave to wet roots, 0-1. */
    private double borneFrac() {
        if (!lives()) {
            return 1;
        }
        CropTraits traits = crop.traits();
        double salt =
                Osmosis.waterFrac(
                        traits.salinity().thresholdMsPerCm(),
                        traits.response().saltThirstFallFrac(),
                        saltMsPerCm);
        double breath = RootBreathing.waterFrac(traits.response(), air.likelyGPerM3(), tempC);
        return salt * RootBreathing.ofPlant(breath, roots.soakedFrac(levelM()));
    }

    /**
     * Takes over the water of a part of the step, what came in with it, and what ran over the rim
     * with it.
     *
     * @param letOutMol what the reservoir let out in this part
     * @param shareFrac this tray's share of it
     * @param riseFrac how much more of a component came in for each litre that ran over at the end
     *     of this part than at its start
     */
    void took(
            double inM3,
            double evapotranspiredM3,
            double spiltM3,
            double[] letOutMol,
            double shareFrac,
            double riseFrac) {
        inflowM3 += inM3;
        double transpired =
                evapotranspirationM3PerS > 0
                        ? evapotranspiredM3 * (transpirationM3PerS / evapotranspirationM3PerS)
                        : 0;
        transpirationM3 += transpired;
        evaporationM3 += evapotranspiredM3 - transpired;
        if (shareFrac > 0) {
            salts.comeIn(letOutMol, shareFrac, water.m3, spiltM3, riseFrac);
        }
        spillM3 += spiltM3;
    }

    /** Ends the step: salts, heat, and the plants' clocks. */
    void end(
            int step,
            double timeS,
            double spanS,
            AirSeries airs,
            double inflowTempC,
            EventLog log) {
        transpirationTotalM3 += transpirationM3;
        evaporationTotalM3 += evaporationM3;
        spiltTotalM3 += spillM3;
        double midM3 = 0.5 * (stepStartM3 + water.m3);
        if (midM3 > 0) {
            salts.end(stepStartM3, water.m3, transpirationM3, spanS);
            moveHeat(midM3, airs.tempC[step], inflowTempC, spanS);
            if (!Double.isNaN(airs.solutionTempC[step])) {
                tempC = airs.solutionTempC[step]; // measured
            }
        } else {
            salts.endDry();
            tempC = airs.tempC[step];
        }
        double levelM = levelM();
        salts.settleFilm(water.m3, levelM);
        double endS = timeS + spanS;
        noteDryness(levelM, endS, log);
        toll.step(levelM, transpirationM3, dry, spanS);
        breathe(levelM, spanS);
        breathesOut = crop != null && !(statedCo2Ppm > 0);
        airCo2Ppm = statedCo2Ppm > 0 ? statedCo2Ppm : airs.co2Ppm[step];
        co2AtC = tempC;
        if (crop != null) {
            tendPlants(levelM, endS, spanS, log);
        }
    }

    private void noteDryness(double levelM, double endS, EventLog log) {
        double fed = depthFrac(levelM);
        if (fed < DRY_FRAC && !dry) {
            dry = true;
            log.add(Event.Kind.DRIED_OUT, endS, tray.id());
        } else if (fed > 2 * DRY_FRAC) {
            dry = false;
        }
    }

    private void breathe(double levelM, double spanS) {
        boolean rooted = crop != null && !crop.isHarvested();
        air.step(
                water.m3,
                tray.shape().areaM2(levelM),
                rooted ? roots.airGapM(levelM) : tray.shape().depthM() - levelM,
                tempC,
                rooted ? roots.soakedFrac(levelM) * crop.rootDryG() : 0,
                inflowM3,
                spanS);
    }

    private void tendPlants(double levelM, double endS, double spanS, EventLog log) {
        crop.transpired(transpirationM3);
        if (lives()) {
            double demandKgPerS = waterDemandM3 * LiquidWater.KG_PER_M3 / spanS;
            boolean supplied =
                    depthFrac(levelM) >= DRY_FRAC && saltMsPerCm < Osmosis.NO_UPTAKE_MS_PER_CM;
            roots.step(
                    levelM,
                    supplied,
                    demandKgPerS,
                    crop.leafM2(),
                    roots.storeM3(crop.plants(), crop.plant().rootDryG()),
                    endS <= Wilting.SEEDLING_DAYS * Time.DAY_S,
                    endS,
                    spanS,
                    log);
            bear(levelM, endS, spanS, log);
            toll.bear(roots, spanS);
        }
        roots.meet(levelM);
    }

    // What this step's root zone leaves of growth.
    private void bear(double levelM, double endS, double spanS, EventLog log) {
        CropTraits traits = crop.traits();
        boolean shocked = alarms.isShockedBy(saltMsPerCm, endS, spanS, log);
        boolean stopped = shocked || saltMsPerCm >= traits.response().saltStopsMsPerCm();
        double breath = RootBreathing.growthFrac(traits.response(), air.likelyGPerM3(), tempC);
        rootDay.add(
                saltMsPerCm,
                stopped ? 0 : traits.salinity().growthFrac(saltMsPerCm),
                RootBreathing.ofPlant(breath, roots.soakedFrac(levelM)),
                RootBreathing.airRootFrac(roots.airGapM(levelM), crop.coverFrac()),
                tempC,
                bearableM3,
                transpirationM3,
                spanS);
    }

    private void moveHeat(double midM3, double airC, double inflowTempC, double spanS) {
        if (inflowM3 > 0) {
            tempC += (inflowTempC - tempC) * Math.min(1, inflowM3 / (midM3 + inflowM3));
        }
        tempC =
                VesselHeat.after(
                        tempC,
                        airC,
                        gainW,
                        conductanceWPerK,
                        surface,
                        VesselHeat.capacityJPerK(midM3, tempC),
                        spanS);
    }

    /** Grows the plants by the day that has just ended. */
    void growOvernight(double atS, int daysSinceStart, EventLog log) {
        toll.endDay(crop != null && lives() && rootDay.airFrac() < RootAlarms.SHORT_OF_AIR_FRAC);
        if (crop == null) {
            return;
        }
        roots.endDay(levelM());
        if (lives()) {
            alarms.endDay(rootDay.airFrac(), atS, log);
            if (RootAlarms.killsSeedlings(daysSinceStart, rootDay.saltMsPerCm())) {
                roots.die(atS, log);
            }
            crop.endDay(
                    atS,
                    daysSinceStart,
                    water.m3 > 0 ? salts.concentrations(water.m3) : null,
                    rootDay,
                    roots.dayDrownedS(),
                    roots.recoveryGrowthFrac(atS),
                    log);
            roots.reach(crop.plant().rootLengthM());
        } else {
            crop.endIdleDay();
        }
        roots.clearDay();
        rootDay.clear();
    }

    double ecMsPerCm(Meter meter) {
        meter.read(salts.concentrations(water.m3));
        return meter.ecMsPerCm();
    }

    /** What would be poured in up to a level, m3. */
    double missingM3(double toLevelM) {
        return Math.max(0, tray.shape().volumeM3(Math.min(toLevelM, tray.overflowM())) - water.m3);
    }

    /** Pours in up to a level; returns what was poured, m3. */
    double topUp(double toLevelM, Composition liquid, double liquidC) {
        double poured = missingM3(toLevelM);
        pour(water.m3, poured, liquid, liquidC, salts.toppedUpMol);
        toppedUpM3 += poured;
        return poured;
    }

    /** Drains a share and fills up again to where the level stood; returns what was poured, m3. */
    double renew(double shareFrac, Composition liquid, double liquidC) {
        double out = shareFrac * water.m3;
        salts.drain(shareFrac);
        double target = water.m3;
        if (tray.filling() instanceof Filling.ByValve) {
            target = Math.max(target, tray.shape().volumeM3(settingM));
        }
        drainedM3 += out;
        double kept = water.m3 - out;
        double poured = target - kept;
        pour(kept, poured, liquid, liquidC, salts.freshMol);
        freshM3 += poured;
        return poured;
    }

    private void pour(
            double keptM3, double poured, Composition liquid, double liquidC, double[] account) {
        water.put(poured > 0 ? keptM3 + poured : keptM3);
        if (poured > 0) {
            tempC += (liquidC - tempC) * poured / water.m3;
            salts.pour(poured, liquid, account);
        }
    }
}
