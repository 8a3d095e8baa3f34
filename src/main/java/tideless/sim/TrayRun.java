package tideless.sim;

import java.time.LocalDate;
import java.util.Optional;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Light;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.NextPlanting;
import tideless.rig.Planting;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.solution.Brine;
import tideless.solution.Composition;
import tideless.solution.ConductivityBounds;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Meter;
import tideless.solution.RespiredCarbon;

/**
 * One tray while a run goes on: its water, warmth and account, with what grows in it ({@link
 * PlantingRun}) and what is dissolved ({@link TraySalts}) each in an object of its own. Its fields
 * change from step to step so that the inner loop allocates nothing
 * (docs/decisions/0003-mutable-run-state.md); nothing outside one run ever sees it.
 */
final class TrayRun {
    /** Share of the demand met by depth below which a tray is called dried out; assumed. */
    private static final double DRY_FRAC = 0.1;

    /**
     * Where salts may wait, they are worked out when so much of the water has been drunk: in a day
     * as in three hours then, as far as roots take salts at an even pace.
     */
    private static final double SALTS_WAIT_FRAC = 0.02;

    /** Bound of what plants may drink over what they drank since yesterday; assumed. */
    private static final double MOST_GROWTH = 1.5;

    Tray tray; // as it is planted now
    final int index;
    private final int firstPlanting; // its first one among those of all trays
    private LocalDate lossFoundOn; // day on which the crop was found dead; null for none
    private int number; // of the crop that grows in it, or grew last
    private PlantingRun growing; // null when the water demand was measured, or nothing grows
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
    private final double feedMsPerCm; // of what it is filled with at first
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
    Correction correction = Correction.NONE; // of its plants, as readings say
    private double transpirationM3PerS;
    private double suppliedFrac; // of the thirst, by what stands in the tray and the roots in it
    private final Surface surface;
    private double gainW;
    private double conductanceWPerK;
    private double stepStartM3;

    // What its salts have not been told yet, of the steps since they last were.
    private double saltSpanS;
    private double saltStartM3;
    private double saltDrunkM3;

    // Greatest of its losses, m3/s: of the day before, and of today so far.
    private double mostBeforeM3PerS = Double.POSITIVE_INFINITY;
    private double mostTodayM3PerS;

    // Accounts, m3.
    double transpirationTotalM3;
    double evaporationTotalM3;
    double toppedUpM3;
    double freshM3;
    double drainedM3;
    double spiltTotalM3;
    double setByReadingM3; // less than 0 where less was found than was reckoned

    /**
     * @param firstPlanting place of its first crop among those of all trays, one tray after another
     * @param air oxygen of its solution
     * @param climateCo2Ppm carbon dioxide a climate states for all solutions, ppm; 0 for none
     * @param departures of this run from its scenario
     * @param days of the run
     */
    TrayRun(
            Tray tray,
            int index,
            int firstPlanting,
            double startTempC,
            RootAir air,
            double climateCo2Ppm,
            Departures departures,
            int days) {
        this.tray = tray;
        this.departures = departures;
        toll = new TrayToll(days);
        this.index = index;
        this.firstPlanting = firstPlanting;
        Shape shape = tray.shape();
        water = new VesselWater(shape.volumeM3(tray.startLevelM()));
        tempC = startTempC;
        this.air = air;
        double ownCo2Ppm = tray.deck().solutionCo2Ppm();
        statedCo2Ppm = ownCo2Ppm > 0 ? ownCo2Ppm : climateCo2Ppm;
        settingM = tray.filling() instanceof Filling.ByValve valve ? valve.settingM() : Double.NaN;
        surface = new Surface(tray.openAreaM2(), shape);
        salts = new TraySalts(water.m3, tray.startLiquid().composition());
        feedMsPerCm = TraySalts.equivalentMsPerCm(tray.startLiquid().composition());
        if (tray.planting() instanceof Planting.OfCrop crop) {
            grow(crop, 0, tray.startLevelM(), salts.equivalentMsPerCm(water.m3));
        }
    }

    private void grow(Planting.OfCrop crop, int fromDay, double levelM, double usedToMsPerCm) {
        growing = new PlantingRun(crop, tray, fromDay, levelM, usedToMsPerCm, air, toll);
        salts.feed(growing.stand().nutrients);
        sunFracOfDay = -1; // another stand has another doubt
    }

    /** A run without departures, of which nobody asks for its days. */
    TrayRun(Tray tray, int index, double startTempC, RootAir air, double climateCo2Ppm) {
        this(tray, index, 0, startTempC, air, climateCo2Ppm, Departures.NONE, 0);
    }

    private double ownThirstFrac() {
        return own().thirst();
    }

    private Correction.OfCrop own() {
        return correction.of(
                growing == null ? tray.planting().cropName() : growing.stand().traits().name());
    }

    double levelM() {
        return tray.shape().levelM(water.m3);
    }

    double rootTipM() {
        return growing == null ? emptyOr(0) : growing.roots().tipM(levelM());
    }

    double wetRootFrac() {
        return growing == null ? emptyOr(water.m3 > 0 ? 1 : 0) : growing.roots().wetFrac(levelM());
    }

    /** What is said of the roots whose thirst was measured; NaN of a tray without any. */
    private double emptyOr(double ofMeasured) {
        return tray.planting() instanceof Planting.OfCrop ? Double.NaN : ofMeasured;
    }

    double leafAreaIndex() {
        return growing == null ? 0 : growing.stand().leafAreaIndex();
    }

    /**
     * Carbon dioxide the solution stood with at the end of the last step, ppm. Worked out when
     * somebody asks: few steps are asked about.
     */
    double solutionCo2Ppm() {
        return breathesOut ? air.carbonDioxidePpm(airCo2Ppm, co2AtC) : airCo2Ppm;
    }

    /** Roughly what is dissolved of it, mol/m3: for what roots take, not for what is told. */
    private double carbonDioxideMolPerM3() {
        double inAir = RespiredCarbon.roughlyMolPerM3(airCo2Ppm);
        return breathesOut ? inAir + air.respiredMolPerM3() : inAir;
    }

    /** Whether lime, phosphate or gypsum may have come to fall since that was last worked out. */
    boolean mayPrecipitate() {
        return saltSpanS == 0
                && precipitate.mayFall(salts.mol, water.m3, carbonDioxideMolPerM3(), tempC);
    }

    /** The same where it was last worked out days ago. */
    boolean mayPrecipitateAfterDays() {
        return precipitate.mayFallAfterDays(salts.mol, water.m3, carbonDioxideMolPerM3(), tempC);
    }

    /** Lets fall what stands well above saturation. */
    void settle(double atS, EventLog log) {
        precipitate.settle(
                salts.mol,
                water.m3,
                carbonDioxideMolPerM3(),
                tempC,
                solutionCo2Ppm(),
                atS,
                tray.id(),
                log);
    }

    boolean lives() {
        return growing != null && growing.lives();
    }

    /** Whether its crop is cut or lost and nothing follows: nobody pours anything in any more. */
    boolean isOver() {
        return tray.planting() instanceof Planting.OfCrop
                && next() == null
                && (growing == null || !growing.isRooted() || growing.isLost());
    }

    /** Whether nothing lives in it until its next crop is set out. */
    boolean isWaiting() {
        return next() != null && (growing == null || growing.isLost());
    }

    /** Whether the crop leaves the tray within days. */
    boolean isNearHarvest(double timeS) {
        return growing != null && growing.isNearHarvest(timeS);
    }

    /** What is set out in it next; null for nothing more. */
    private NextPlanting next() {
        return number < tray.next().size() ? tray.next().get(number) : null;
    }

    /** Whether the next crop is set out at the visit of a day. */
    boolean isPlantedOn(LocalDate day) {
        NextPlanting next = next();
        return next != null
                && next.on()
                        .map(on -> !day.isBefore(on))
                        .orElse(growing == null || growing.isLost() && isRaised(next, day));
    }

    /** Whether seedlings that were sown when the crop was found dead are fit to be set out. */
    private boolean isRaised(NextPlanting next, LocalDate day) {
        lossFoundOn = lossFoundOn == null ? day : lossFoundOn;
        return !day.isBefore(
                lossFoundOn.plusDays((long) FastMath.ceil(next.crop().ageAtStartDays())));
    }

    /**
     * Whether the next crop of the tray comes within days, with clean water or without the crop
     * that is there.
     */
    boolean isNearPlanting(LocalDate day) {
        NextPlanting next = next();
        return next != null
                && next.on().isPresent()
                && day.plusDays(FlushRule.DAYS_BEFORE_HARVEST).isAfter(next.on().get());
    }

    /**
     * Sets out the next crop; what is left of the one before makes room.
     *
     * @param day of the run
     * @param feed the tray is filled with, as warm as the air
     */
    void plantNext(double atS, int day, Composition feed, double airC, EventLog log) {
        NextPlanting next = next();
        if (growing != null) {
            growing.makeRoom(atS, log);
            clear();
        }
        number++;
        lossFoundOn = null;
        tray = tray.planted(number);
        double drained = next.fresh() ? wash() : 0;
        double poured = missingM3(next.startLevelM());
        if (next.fresh()) {
            pour(0, poured, feed, airC, salts.freshMol);
            freshM3 += poured;
            air.renew(tempC);
            surface.renew();
        } else {
            topUp(next.startLevelM(), feed, airC);
        }
        dry = false; // if it is, that is told anew
        // Young plants come from a nursery that is watered with the same feed.
        grow(next.crop(), day, levelM(), feedMsPerCm);
        log.add(
                new Event(
                        Event.Kind.PLANTED,
                        atS,
                        tray.id(),
                        poured,
                        0,
                        drained,
                        Double.NaN,
                        0,
                        next.crop().cropName()));
    }

    /** Empties and cleans it; returns what was drained, m3. */
    private double wash() {
        double drained = water.m3;
        salts.wash();
        drainedM3 += drained;
        water.put(0);
        return drained;
    }

    /** Nothing grows in it any more. */
    private void clear() {
        toll.reap(
                freshG(),
                fruitFreshG(),
                growing == null ? 0 : growing.stand().pickedG(),
                Optional.ofNullable(growing).map(g -> g.stand().lost()));
        growing = null;
    }

    /** Takes the crop out where it is ready, or as good as ready before nobody comes for days. */
    void harvestIfReady(double timeS, NextVisit next, EventLog log) {
        if (growing != null) {
            growing.harvestIfReady(timeS, next, log);
            clearIfCut();
        }
    }

    /** Takes the crop out, ready or not. */
    void harvestNow(double timeS, EventLog log) {
        if (lives()) {
            growing.stand().harvest(timeS, "", log);
            clearIfCut();
        }
    }

    /** Takes leaves of so much fresh mass from all plants, g. */
    void take(double fromAllG, double timeS, EventLog log) {
        if (lives()) {
            growing.take(fromAllG, timeS, log);
            clearIfCut();
        }
    }

    private void clearIfCut() {
        if (!growing.isRooted() && next() != null) {
            clear();
        }
    }

    /** Plants are lost. */
    void lose(int plants, double timeS, EventLog log) {
        if (lives()) {
            growing.stand().lose(plants, timeS, log);
        }
    }

    /** Of the longest roots, m below the cups; NaN where a thirst was measured. */
    double rootLengthM() {
        return growing == null ? Double.NaN : growing.stand().plant().rootLengthM();
    }

    /** A crop that is ready when the run ends is cut then. */
    void endRun(double atS, EventLog log) {
        if (growing != null) {
            growing.endRun(atS, log);
        }
        if (growing != null || !(tray.planting() instanceof Planting.OfCrop)) {
            clear();
        }
    }

    /** Level to which whoever comes now fills it up by hand, m, whose mark that is. */
    double filledToM(double markM, double timeS, int daysAhead) {
        return growing == null ? markM : growing.filledToM(markM, levelM(), timeS, daysAhead);
    }

    /** Highest level the roots bear, m above the floor. */
    double highestBorneM() {
        return growing == null ? emptyOr(tray.shape().depthM()) : growing.roots().highestBorneM();
    }

    double freshG() {
        return growing == null ? Double.NaN : growing.stand().freshG();
    }

    double fruitFreshG() {
        return growing == null ? Double.NaN : growing.stand().fruitFreshG();
    }

    /** What has become of it so far. */
    TraySeason season() {
        return toll.season();
    }

    /** Works out what this step will take, from the state at its start. */
    void begin(int step, double timeS, double spanS, AirSeries air) {
        Lamp lamp = tray.lamp();
        int day = (int) (timeS / Time.DAY_S);
        if (day != sunFracOfDay) {
            sunFracOfDay = day;
            sunFrac = air.sunFrac(day, lamp);
            thirstFrac = departures.thirstFrac(firstPlanting + number, day) * ownThirstFrac();
            if (growing != null) {
                thirstFrac *=
                        growing.thirstFrac(
                                departures.standDeviate(firstPlanting + number),
                                air.place == AirSeries.Place.OPEN ? 0 : sunFrac);
                growing.stand().airChanged();
            }
        }
        double lampPpfd = lamp.ppfdUmolPerM2S(timeS);
        if (growing != null && (lampPpfd != lampPpfdBefore || !air.sameAsBefore[step])) {
            growing.stand().airChanged();
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
        if (saltSpanS == 0) {
            saltMsPerCm = salts.equivalentMsPerCm(water.m3);
            saltStartM3 = water.m3;
            salts.begin();
        }
        double borneFrac =
                growing == null
                        ? 1
                        : growing.bearAtBegin(saltMsPerCm, tempC, levelM(), waterDemandM3, spanS);
        suppliedFrac = supplyFrac();
        transpirationM3PerS = waterDemandM3 / spanS * Math.min(borneFrac, suppliedFrac);

        double uncovered = growing == null ? 1 : growing.stand().lightPassedFrac();
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
        mostTodayM3PerS = Math.max(mostTodayM3PerS, evapotranspirationM3PerS);
        stepStartM3 = water.m3;
        inflowM3 = 0;
        spillM3 = 0;
        transpirationM3 = 0;
        evaporationM3 = 0;
        if (growing != null) {
            growing.stand()
                    .day
                    .add(ppfdUmolPerM2S, lightMolPerM2, par, airC, air.co2Ppm[step], spanS);
            if (ppfdUmolPerM2S > 0) {
                growing.stand().flowersStandIn(airC, spanS);
            }
        }
    }

    private double waterDemandM3PerS(
            double timeS, double spanS, double par, double infrared, AirSeries air, int step) {
        if (tray.planting() instanceof Planting.MeasuredThirst measured) {
            return measured.thirst().meanM3PerS(timeS, timeS + spanS);
        }
        return lives()
                ? growing.stand()
                        .waterDemandM3PerS(par, infrared, ppfdUmolPerM2S, sunFrac, air, step)
                : 0;
    }

    /** More than it will lose in a span, by what it lost since yesterday, m3. */
    double mostLossM3(double spanS) {
        return MOST_GROWTH * Math.max(mostBeforeM3PerS, mostTodayM3PerS) * spanS;
    }

    /**
     * Whether nothing in it is about to change course as long as it is fed: its valve holds the
     * level, its lamp goes on as it was, its plants drink all they want and no roots are in
     * trouble, nor would be at the level that is held. Then rates hold until light or air change.
     */
    boolean isQuiet(double timeS) {
        double levelM = levelM();
        return tray.filling() instanceof Filling.ByValve valve
                && levelM >= settingM - valve.bandM()
                && tray.lamp().ppfdUmolPerM2S(timeS) == lampPpfdBefore
                && depthFrac(levelM) >= 1
                && (!lives() || growing.roots().isSound(levelM, Math.max(settingM, levelM)));
    }

    private double supplyFrac() {
        double levelM = levelM();
        double depthFrac = depthFrac(levelM);
        return growing == null
                ? depthFrac
                : Math.min(depthFrac, growing.roots().supplyFrac(levelM));
    }

    /** Share of the demand that a depth of solution supplies, 0-1: a film feeds nobody. */
    private static double depthFrac(double levelM) {
        return Math.max(0, Math.min(1, levelM / Brine.FILM_M - 1));
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

    /**
     * Ends the step: salts, heat, and the plants' clocks.
     *
     * @param saltsMayWait whether nobody asks for the salts before the next step
     */
    void end(
            int step,
            double timeS,
            double spanS,
            AirSeries airs,
            double inflowTempC,
            boolean saltsMayWait,
            EventLog log) {
        transpirationTotalM3 += transpirationM3;
        evaporationTotalM3 += evaporationM3;
        spiltTotalM3 += spillM3;
        double midM3 = 0.5 * (stepStartM3 + water.m3);
        double levelM = levelM();
        if (midM3 > 0) {
            saltSpanS += spanS;
            saltDrunkM3 += transpirationM3;
            if (!saltsMayWait || saltsAreDue(levelM)) {
                endSalts();
            }
            moveHeat(midM3, airs.tempC[step], inflowTempC, spanS);
            if (!Double.isNaN(airs.solutionTempC[step])) {
                tempC = airs.solutionTempC[step]; // measured
            }
        } else {
            salts.endDry();
            tempC = airs.tempC[step];
        }
        if (saltSpanS == 0) {
            salts.settleFilm(water.m3, levelM);
        }
        double endS = timeS + spanS;
        noteDryness(levelM, endS, log);
        toll.step(levelM, transpirationM3, dry, endS, spanS);
        breathe(levelM, spanS);
        breathesOut = tray.planting() instanceof Planting.OfCrop && !(statedCo2Ppm > 0);
        airCo2Ppm = statedCo2Ppm > 0 ? statedCo2Ppm : airs.co2Ppm[step];
        co2AtC = tempC;
        if (growing != null) {
            growing.end(
                    levelM,
                    depthFrac(levelM) >= DRY_FRAC,
                    saltMsPerCm,
                    keptFullMsPerCm(),
                    tempC,
                    waterDemandM3,
                    transpirationM3,
                    endS,
                    spanS,
                    log);
        }
    }

    /** What the same salts would be in a vessel that is kept full of feed, mS/cm. */
    private double keptFullMsPerCm() {
        double full =
                tray.shape()
                        .volumeM3(
                                tray.filling() instanceof Filling.ByHand hand
                                        ? hand.toLevelM()
                                        : tray.filling() instanceof Filling.ByValve
                                                ? settingM
                                                : tray.startLevelM());
        double drunkM3 = full - saltStartM3;
        return drunkM3 > 0
                ? (saltMsPerCm * saltStartM3 + feedMsPerCm * drunkM3) / full
                : saltMsPerCm;
    }

    private boolean saltsAreDue(double levelM) {
        return saltDrunkM3 > SALTS_WAIT_FRAC * water.m3
                || spillM3 > 0
                || !(tray.filling() instanceof Filling.ByValve)
                || suppliedFrac < 1
                || depthFrac(levelM) < 1;
    }

    private void endSalts() {
        salts.end(
                saltStartM3,
                water.m3,
                saltDrunkM3,
                suppliedFrac,
                carbonDioxideMolPerM3(),
                saltSpanS);
        saltSpanS = 0;
        saltDrunkM3 = 0;
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
        boolean rooted = growing != null && growing.isRooted();
        air.step(
                water.m3,
                tray.shape().areaM2(levelM),
                rooted ? growing.roots().airGapM(levelM) : tray.shape().depthM() - levelM,
                tempC,
                rooted ? growing.wetRootDryG(levelM) : 0,
                inflowM3,
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

    /**
     * Grows the plants by the day that has just ended.
     *
     * @param day of the run, the one that has ended among them
     * @param isTended whether somebody may be there on the day that begins
     */
    void growOvernight(double atS, int day, boolean isTended, EventLog log) {
        toll.endDay(growing != null && growing.isShortOfAir());
        mostBeforeM3PerS = mostTodayM3PerS;
        mostTodayM3PerS = 0;
        if (growing != null) {
            growing.growOvernight(
                    atS, day, levelM(), water.m3 > 0 ? salts.concentrations(water.m3) : null, log);
            if (isTended) {
                growing.tend(atS, day, log);
            }
        }
        toll.leave(growing == null ? TraySeason.Left.ALL : growing.stand().leftOfDay());
    }

    ConductivityBounds conductivityBounds() {
        return new ConductivityBounds(salts.concentrations(water.m3));
    }

    double ecMsPerCm(Meter meter) {
        return meter.readEcMsPerCm(salts.concentrations(water.m3));
    }

    /** What would be poured in up to a level, m3. */
    double missingM3(double toLevelM) {
        return Math.max(0, tray.shape().volumeM3(Math.min(toLevelM, tray.overflowM())) - water.m3);
    }

    /** Pours in up to a level; returns what was poured, m3. */
    double topUp(double toLevelM, Composition liquid, double liquidC) {
        return pourIn(missingM3(toLevelM), liquid, liquidC);
    }

    /** Pours in so much, as far as it stays in; returns what was poured, m3. */
    double pourIn(double m3, Composition liquid, double liquidC) {
        double poured = Math.min(m3, missingM3(tray.overflowM()));
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
