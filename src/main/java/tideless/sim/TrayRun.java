package tideless.sim;

import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Planting;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.solution.Composition;
import tideless.solution.Meter;

/**
 * One tray while a run goes on: its water, warmth and account, with the plants ({@link CropStand}),
 * their roots ({@link RootFate}) and what is dissolved ({@link TraySalts}) each in an object of its
 * own. Its fields change from step to step so that the inner loop allocates nothing
 * (docs/decisions/0003-mutable-run-state.md); nothing outside one run ever sees it.
 */
final class TrayRun {
    /** Density of the solution, kg/m3: water at 20 degC; Kell (1975). Salts add 0.1-0.2 %. */
    static final double WATER_KG_PER_M3 = 998.2;

    final Tray tray;
    final int index;
    private final Planting planting;
    private final CropStand crop; // null when the water demand was measured
    private final RootFate roots; // likewise

    // Water and what is in it.
    final VesselWater water;
    final TraySalts salts;
    final Precipitate precipitate = new Precipitate();
    double tempC;
    boolean spills;
    private double shutM3;
    private boolean dry;

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
    double lossM3PerS;

    private double lampPpfdBefore;
    private double sunFrac; // share of the day's light that is sun
    private int sunFracOfDay = -1;
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

    TrayRun(Tray tray, int index, double startTempC) {
        this.tray = tray;
        this.index = index;
        planting = tray.planting();
        Shape shape = tray.shape();
        water = new VesselWater(shape.volumeM3(tray.startLevelM()));
        tempC = startTempC;
        if (tray.filling() instanceof Filling.ByValve valve) {
            shutM3 = shape.volumeM3(valve.settingM());
        }
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
    }

    double levelM() {
        return tray.shape().levelM(water.m3);
    }

    double rootTipM() {
        return roots == null ? 0 : roots.tipM();
    }

    double wetRootFrac() {
        return roots == null ? (water.m3 > 0 ? 1 : 0) : roots.wetFrac(levelM());
    }

    double leafAreaIndex() {
        return crop == null ? 0 : crop.leafAreaIndex();
    }

    boolean lives() {
        return crop != null && !roots.isDead() && !crop.isHarvested() && crop.hasPlants();
    }

    /** Whether the crop leaves the tray within days. */
    boolean isNearHarvest(double timeS) {
        return crop != null && crop.isNearHarvest(timeS);
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

    /** Works out what this step will take, from the state at its start. */
    void begin(int step, double timeS, double spanS, AirSeries air) {
        Lamp lamp = tray.lamp();
        int day = (int) (timeS / Timeline.DAY_S);
        if (day != sunFracOfDay) {
            sunFracOfDay = day;
            sunFrac = air.sunFrac(day, lamp);
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
        lightMolPerM2 = ppfdUmolPerM2S * 1e-6 * spanS;

        double airC = air.tempC[step];
        waterDemandM3 = waterDemandM3PerS(timeS, spanS, par, infrared, air, step) * spanS;
        transpirationM3PerS = waterDemandM3 / spanS * supplyFrac();

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
        lossM3PerS = transpirationM3PerS + surface.m3PerS;
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
        if (water.m3 <= 0) {
            return 0;
        }
        return roots == null ? 1 : roots.supplyFrac(levelM());
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
            double lostM3,
            double spiltM3,
            double[] letOutMol,
            double shareFrac,
            double riseFrac) {
        inflowM3 += inM3;
        double transpired = lossM3PerS > 0 ? lostM3 * (transpirationM3PerS / lossM3PerS) : 0;
        transpirationM3 += transpired;
        evaporationM3 += lostM3 - transpired;
        if (shareFrac > 0) {
            salts.comeIn(letOutMol, shareFrac, water.m3, spiltM3, riseFrac);
        }
        spillM3 += spiltM3;
    }

    /** Ends the step: salts, heat, and the plants' clocks. */
    void end(
            int step, double timeS, double spanS, AirSeries air, double inflowTempC, EventLog log) {
        transpirationTotalM3 += transpirationM3;
        evaporationTotalM3 += evaporationM3;
        spiltTotalM3 += spillM3;
        double midM3 = 0.5 * (stepStartM3 + water.m3);
        if (midM3 > 0) {
            salts.end(stepStartM3, water.m3, transpirationM3, spanS);
            moveHeat(midM3, air.tempC[step], inflowTempC, spanS);
            if (!Double.isNaN(air.solutionTempC[step])) {
                tempC = air.solutionTempC[step]; // measured
            }
        } else {
            salts.endDry();
            tempC = air.tempC[step];
        }
        double endS = timeS + spanS;
        if (water.m3 <= 0 && !dry) {
            dry = true;
            log.add(Event.Kind.TRAY_DRY, endS, tray.id());
        } else if (water.m3 > 0) {
            dry = false;
        }
        if (crop != null) {
            tendPlants(endS, spanS, log);
        }
    }

    private void tendPlants(double endS, double spanS, EventLog log) {
        crop.transpired(transpirationM3);
        double levelM = levelM();
        if (lives()) {
            double demandKgPerS = waterDemandM3 * WATER_KG_PER_M3 / spanS;
            roots.step(levelM, demandKgPerS, crop.leafM2(), endS, spanS, log);
        }
        roots.meet(levelM);
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
    void growOvernight(double atS, int daysSinceStart, Meter meter, EventLog log) {
        if (crop == null) {
            return;
        }
        roots.endDay(levelM());
        if (lives()) {
            boolean wet = water.m3 > 0;
            crop.endDay(
                    atS,
                    daysSinceStart,
                    wet ? ecMsPerCm(meter) : Double.NaN,
                    wet ? salts.concentrations(water.m3) : null,
                    roots.dayStrandedS(),
                    roots.dayDrownedS(),
                    log);
            roots.reach(crop.plant().rootLengthM());
        } else {
            crop.endIdleDay();
        }
        roots.clearDay();
    }

    double ecMsPerCm(Meter meter) {
        meter.read(salts.concentrations(water.m3));
        return meter.ecMsPerCm();
    }

    /** Pours in up to a level; returns what was poured, m3. */
    double topUp(double toLevelM, Composition liquid, double liquidC) {
        double poured =
                Math.max(0, tray.shape().volumeM3(Math.min(toLevelM, tray.overflowM())) - water.m3);
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
            target = Math.max(target, shutM3);
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
