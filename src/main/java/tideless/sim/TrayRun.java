package tideless.sim;

import java.util.Arrays;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.Canopy;
import tideless.crop.CropTraits;
import tideless.crop.Growing;
import tideless.crop.Hunger;
import tideless.crop.Plant;
import tideless.crop.RootZone;
import tideless.crop.Transpiration;
import tideless.physics.LiquidWater;
import tideless.physics.ReferenceEvapotranspiration;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Planting;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.Meter;

/**
 * One tray while a run goes on. Its fields change from step to step so that the inner loop
 * allocates nothing (docs/decisions/0003-mutable-run-state.md); nothing outside one run ever sees
 * it.
 */
final class TrayRun {
    /** Density of the solution, kg/m3: water at 20 degC; Kell (1975). Salts add 0.1-0.2 %. */
    static final double WATER_KG_PER_M3 = 998.2;

    private static final int CA = Component.CA.ordinal();
    private static final int NO3 = Component.NO3.ordinal();
    private static final int NH4 = Component.NH4.ordinal();

    /** Of each component in nearly neutral solution, phosphate as H2PO4-. */
    private static final int[] CHARGE = charges();

    /**
     * Days in air after which a root is an air root, and in water after which it is not; assumed.
     */
    private static final int ROOT_MEMORY_DAYS = 7;

    /** Growth left while air roots are drowned; assumed, no source. */
    private static final double DROWNED_GROWTH_FRAC = 0.5;

    /**
     * Share of a sufficient content a plant can go without and still grow in full: the lower end of
     * the sufficiency ranges of the crop files lies 15 to 30 % below their middle; rounded.
     */
    private static final double HUNGER_BORNE_FRAC = 0.2;

    /** Share of a sufficient content at which growth ends; assumed, no source. */
    private static final double STARVED_FRAC = 0.4;

    /** Heat transfer through tray walls and deck; 6-10 W/m2/K for bare plastic, from memory. */
    static final double WALL_W_PER_M2K = 8;

    /** Share of light on a pale deck that ends in the solution; 0.3 white lid, from memory. */
    private static final double DECK_GAIN_FRAC = 0.3;

    final Tray tray;
    final int index;
    private final CropTraits traits; // null when the thirst was measured
    private final Planting planting;
    private final double wallM2;

    // Water and what is in it.
    double volumeM3;
    final double[] mol = new double[Component.COUNT];
    final Precipitate precipitate = new Precipitate();
    double tempC;
    boolean snapOpen;
    boolean spills;
    private double shutM3;

    // The plants.
    Plant plant;
    private double leafAreaIndex;
    private double coveredM2;
    private double interceptedFrac;

    /** Short of a sufficient content, all plants together; below 0 what they hold beyond it. */
    private final double[] debtMol = new double[Component.COUNT];

    /** What a sufficient content of all plants comes to. */
    private final double[] heldMol = new double[Component.COUNT];

    private final double[] demandMolPerS = new double[Component.COUNT];
    private final double[] wantedMol = new double[Component.COUNT];
    private final double[] halfMolPerM3 = new double[Component.COUNT];

    /** Share of a component's strength that goes with the water drunk; 0 where hunger takes it. */
    private final double[] passFrac = new double[Component.COUNT];

    private double salinityFrac = 1;
    private double hungerFrac = 1;
    private double reserveFrac = 1;
    private double wiltedS;
    private double drownedS;
    private boolean wilted;
    private boolean stranded;
    private boolean drowned;
    private boolean dead;
    private boolean harvested;
    private boolean flowering;
    private boolean ripe;
    private boolean dry;
    private final double[] highestOfDayM = new double[ROOT_MEMORY_DAYS];
    private double highestTodayM;
    private double highestBeforeM = Double.NEGATIVE_INFINITY; // of those days
    private int daysSeen;

    // What the day has brought.
    private double dayLightMolPerM2;
    private double dayLitS;
    private double dayLitPpfdS;
    private double dayJoulesPerM2;
    private double dayTempCS;
    private double dayS;
    private double dayIdleS;
    private double dayDrownedS;
    private double dayDrunkM3;

    // What the step brought, for the recorder.
    double thirstM3;
    double drunkM3;
    double evaporatedM3;
    double inflowM3;
    double spillM3;
    double lightMolPerM2;
    double ppfdUmolPerM2S;

    // Rates of this step.
    double lossM3PerS;
    private boolean lit;
    private boolean thirstKnown;
    private double thirstKgPerM2S; // of covered ground, with sound roots
    private double drinkM3PerS;
    private final Surface surface;
    private double gainW;
    final double[] stepInMol = new double[Component.COUNT];
    private final double[] stepTakenMol = new double[Component.COUNT];
    private double stepStartM3;

    // Ledgers, m3 and mol.
    double drunkTotalM3;
    double evaporatedTotalM3;
    double toppedUpM3;
    double freshM3;
    double drainedM3;
    final double[] takenMol = new double[Component.COUNT];
    final double[] toppedUpMol = new double[Component.COUNT];
    final double[] freshMol = new double[Component.COUNT];
    final double[] drainedMol = new double[Component.COUNT];
    double spiltTotalM3;
    final double[] spiltMol = new double[Component.COUNT];

    TrayRun(Tray tray, int index, double startTempC) {
        this.tray = tray;
        this.index = index;
        planting = tray.planting();
        Shape shape = tray.shape();
        volumeM3 = shape.volumeM3(tray.startLevelM());
        for (int i = 0; i < mol.length; i++) {
            mol[i] = volumeM3 * tray.startLiquid().composition().molPerM3(i);
        }
        tempC = startTempC;
        if (tray.filling() instanceof Filling.ByValve valve) {
            shutM3 = shape.volumeM3(valve.settingM());
        }
        wallM2 = shape.rimAreaM2() + shape.floorAreaM2();
        surface = new Surface(tray.openAreaM2(), gapLengthM());
        Arrays.fill(highestOfDayM, Double.NEGATIVE_INFINITY);
        highestTodayM = tray.startLevelM();
        if (planting instanceof Planting.OfCrop crop) {
            traits = crop.traits();
            plant = Growing.raisedInNursery(traits, crop.ageAtStartDays());
            flowering = Growing.isFlowering(traits, plant);
            double fruitG = plant.fruitDryG();
            Hunger.demandMol(traits, plant.dryG() - fruitG, fruitG, heldMol);
            for (int i = 0; i < heldMol.length; i++) {
                heldMol[i] *= crop.plants();
            }
            for (int i = 0; i < halfMolPerM3.length; i++) {
                halfMolPerM3[i] = Hunger.halfSaturationMolPerM3(traits, i);
            }
            passFrac[Component.NA.ordinal()] = traits.nutrition().sodiumPassFrac();
            passFrac[Component.CL.ordinal()] = traits.nutrition().chloridePassFrac();
            shapeCanopy();
        } else {
            traits = null;
            // A measured thirst comes without a hunger: every nutrient goes with the water, at the
            // strength it stands in the tray; sodium, chloride, carbon and the tracer stay.
            // Assumed.
            for (Component component : Shortage.WATCHED) {
                passFrac[component.ordinal()] = 1;
            }
            passFrac[NH4] = 1;
        }
    }

    private Planting.OfCrop crop() {
        return (Planting.OfCrop) planting;
    }

    double levelM() {
        return tray.shape().levelM(volumeM3);
    }

    double rootTipM() {
        return traits == null ? 0 : RootZone.tipM(tray.cupBottomM(), plant.rootLengthM());
    }

    double wetRootFrac() {
        return traits == null
                ? (volumeM3 > 0 ? 1 : 0)
                : RootZone.wetFrac(tray.cupBottomM(), rootTipM(), levelM());
    }

    double leafAreaIndex() {
        return leafAreaIndex;
    }

    boolean lives() {
        return traits != null && !dead && !harvested && crop().plants() > 0;
    }

    /** Highest level the roots bear, m above the floor. */
    double usedToM() {
        if (traits == null || daysSeen == 0) {
            return tray.shape().depthM();
        }
        return RootZone.highestBorneM(traits, wontedM());
    }

    /** Highest level of the last days at which the roots were not drowned, m above the floor. */
    private double wontedM() {
        return Math.max(highestTodayM, highestBeforeM);
    }

    double freshG() {
        return traits == null ? Double.NaN : Growing.freshG(traits, plant);
    }

    double fruitFreshG() {
        return traits == null ? Double.NaN : Growing.fruitFreshG(traits, plant);
    }

    private void shapeCanopy() {
        thirstKnown = false;
        double ground = groundPerPlantM2();
        coveredM2 = Canopy.coveredGroundM2(traits, plant, ground);
        leafAreaIndex = Canopy.leafAreaIndex(traits, plant, ground);
        interceptedFrac = Canopy.interceptedFrac(traits.growth().extinction(), leafAreaIndex);
    }

    private double groundPerPlantM2() {
        return crop().groundM2() / Math.max(1, crop().plants());
    }

    /** Works out what this step will take, from the state at its start. */
    void begin(int step, double timeS, double spanS, AirSeries air) {
        Lamp lamp = tray.lamp();
        boolean wasLit = lit;
        lit = lamp.ppfdUmolPerM2S() > 0 && Timeline.isWithin(timeS, lamp.onS(), lamp.offS());
        thirstKnown &= lit == wasLit && air.sameAsBefore[step];
        double lampPpfd = lit ? lamp.ppfdUmolPerM2S() : 0;
        double lampPar = lampPpfd / lamp.umolPerJ();
        double par = lampPar + air.sunParWPerM2[step];
        double infrared = lampPar * lamp.nearInfraredPerPar() + air.sunInfraredWPerM2[step];
        ppfdUmolPerM2S = lampPpfd + air.sunParWPerM2[step] * AirSeries.SUN_UMOL_PER_J;
        lightMolPerM2 = ppfdUmolPerM2S * 1e-6 * spanS;

        double airC = air.tempC[step];
        thirstM3 = thirstM3PerS(timeS, spanS, par, infrared, air, step) * spanS;
        drinkM3PerS = wilted ? 0 : thirstM3 / spanS * supplyFrac();

        surface.begin(volumeM3 > 0, tempC, air, step);
        lossM3PerS = drinkM3PerS + surface.m3PerS;
        double uncovered =
                traits == null
                        ? 1
                        : 1
                                - interceptedFrac
                                        * Math.min(
                                                1, coveredM2 * crop().plants() / crop().groundM2());
        gainW = DECK_GAIN_FRAC * uncovered * (par + infrared) * tray.shape().rimAreaM2();
        stepStartM3 = volumeM3;
        Arrays.fill(stepInMol, 0);
        inflowM3 = 0;
        spillM3 = 0;
        drunkM3 = 0;
        evaporatedM3 = 0;

        if (traits != null) {
            dayLightMolPerM2 += lightMolPerM2;
            dayJoulesPerM2 += par * spanS;
            if (ppfdUmolPerM2S > 1) {
                dayLitS += spanS;
                dayLitPpfdS += ppfdUmolPerM2S * spanS;
            }
            dayTempCS += airC * spanS;
            dayS += spanS;
        }
    }

    // A slot shelters as its own size does, not as the tray's: gaps are taken as round holes of
    // 5 cm, the size of a net cup's hole; assumed.
    private double gapLengthM() {
        return Math.min(0.0125, Math.sqrt(tray.openAreaM2()));
    }

    private double thirstM3PerS(
            double timeS, double spanS, double par, double infrared, AirSeries air, int step) {
        if (planting instanceof Planting.MeasuredThirst measured) {
            return measured.thirst().m3PerS(timeS + 0.5 * spanS);
        }
        if (!lives()) {
            return 0;
        }
        if (!thirstKnown) {
            thirstKgPerM2S = canopyKgPerM2S(par, infrared, air, step);
            thirstKnown = true;
        }
        return salinityFrac * thirstKgPerM2S * coveredM2 * crop().plants() / WATER_KG_PER_M3;
    }

    private double canopyKgPerM2S(double par, double infrared, AirSeries air, int step) {
        if (crop().model() == Planting.ThirstModel.CANOPY) {
            return Transpiration.canopyKgPerM2S(
                    traits.stomata(),
                    traits.growth().extinction(),
                    leafAreaIndex,
                    par,
                    ppfdUmolPerM2S,
                    infrared,
                    air.longWaveWPerM2[step],
                    air.tempC[step],
                    air.vapourPa[step],
                    air.pressurePa,
                    air.speedMPerS[step]);
        }
        return Transpiration.cropCoefficient(traits, plant)
                * referenceKgPerM2S(GRASS_ABSORBED_FRAC * (par + infrared), air, step);
    }

    // FAO-56's own hourly form and wind in the open; docs/decisions/0006-air-of-the-reference.md.
    private double referenceKgPerM2S(double shortWaveWPerM2, AirSeries air, int step) {
        if (air.place == AirSeries.Place.OPEN) {
            double net = shortWaveWPerM2 + air.longWaveWPerM2[step];
            double mmPerHour =
                    ReferenceEvapotranspiration.faoHourlyMmPerHour(
                            air.tempC[step],
                            air.vapourPa[step],
                            air.speedMPerS[step],
                            net,
                            ReferenceEvapotranspiration.faoHourlySoilHeatWPerM2(net),
                            air.pressurePa);
            return Math.max(0, mmPerHour) / Timeline.HOUR_S;
        }
        return ReferenceEvapotranspiration.indoorKgPerM2S(
                shortWaveWPerM2,
                air.tempC[step],
                air.vapourPa[step],
                air.place == AirSeries.Place.HOUSE
                        ? ReferenceEvapotranspiration.HOUSE_RESISTANCE_S_PER_M
                        : ReferenceEvapotranspiration.roomResistanceSPerM(
                                air.speedMPerS[step], traits.stomata().leafSizeM()),
                air.pressurePa);
    }

    /** 1 less the albedo of the reference grass; FAO-56 (Allen et al. 1998), eq. 38. */
    private static final double GRASS_ABSORBED_FRAC = 0.77;

    private double supplyFrac() {
        if (volumeM3 <= 0) {
            return 0;
        }
        if (traits == null) {
            return 1;
        }
        return RootZone.supplyFrac(wetRootFrac());
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
            double endM3,
            double inM3,
            double lostM3,
            double spiltM3,
            double[] letOutMol,
            double shareFrac,
            double riseFrac) {
        volumeM3 = endM3;
        inflowM3 += inM3;
        double drunk = lossM3PerS > 0 ? lostM3 * (drinkM3PerS / lossM3PerS) : 0;
        drunkM3 += drunk;
        evaporatedM3 += lostM3 - drunk;
        if (shareFrac > 0) {
            double late = spiltM3 > 0 ? riseFrac * lateness(spiltM3 / endM3) : 0;
            for (int i = 0; i < stepInMol.length; i++) {
                double came = shareFrac * letOutMol[i];
                if (spiltM3 > 0) {
                    spill(i, came, spiltM3, late);
                } else {
                    stepInMol[i] += came;
                }
            }
        }
        spillM3 += spiltM3;
    }

    // What comes in late is washed out less: the integral of (u - 1/2) exp(-x (1 - u)) over the
    // part,
    // by which a solution that comes in ever stronger leaves more than its mean does.
    private static double lateness(double x) {
        if (x < 1e-2) {
            return x / 12 * (1 - 0.5 * x);
        }
        double kept = FastMath.exp(-x);
        return 0.5 * (1 - kept) / x - (1 - (1 + x) * kept) / (x * x);
    }

    // What comes in mixes with what stands there, and the mixture runs over: dM/dt = in - s M/V.
    private void spill(int i, double came, double spiltM3, double late) {
        double before = mol[i] + stepInMol[i];
        double after = Solutes.afterPassing(before, came, volumeM3, volumeM3, spiltM3, 1);
        after += came * late;
        spiltMol[i] += before + came - after;
        mol[i] = after;
        stepInMol[i] = 0;
    }

    /** Ends the step: salts, heat, and the plants' clocks. */
    void end(
            int step, double timeS, double spanS, AirSeries air, double inflowTempC, EventLog log) {
        drunkTotalM3 += drunkM3;
        dayDrunkM3 += drunkM3;
        evaporatedTotalM3 += evaporatedM3;
        spiltTotalM3 += spillM3;
        double midM3 = 0.5 * (stepStartM3 + volumeM3);
        if (midM3 > 0) {
            moveSalts(midM3, spanS);
            moveHeat(midM3, air.tempC[step], inflowTempC, spanS);
        } else {
            for (int i = 0; i < mol.length; i++) {
                mol[i] += stepInMol[i];
            }
            tempC = air.tempC[step];
        }
        double endS = timeS + spanS;
        if (volumeM3 <= 0 && !dry) {
            dry = true;
            log.add(Event.Kind.TRAY_DRY, endS, tray.id());
        } else if (volumeM3 > 0) {
            dry = false;
        }
        if (lives()) {
            tendRoots(endS, spanS, log);
        }
        if (!drowned) {
            highestTodayM = Math.max(highestTodayM, levelM());
        }
    }

    private void moveSalts(double midM3, double spanS) {
        double acidBefore = freeAcidMol(stepInMol);
        double drinkM3PerSNow = drunkM3 / spanS;
        double ammoniumMolPerM3 = mol[NH4] / midM3;
        double nitrateSpared =
                demandMolPerS[NH4] > 0
                        ? demandMolPerS[NH4]
                                * ammoniumMolPerM3
                                / (halfMolPerM3[NH4] + ammoniumMolPerM3)
                        : 0;
        for (int i = 0; i < mol.length; i++) {
            double demand = demandMolPerS[i];
            double pass = passFrac[i] * drinkM3PerSNow;
            if (i == NO3) {
                demand -= nitrateSpared;
            }
            double before = mol[i] + stepInMol[i];
            double after = before;
            if (pass > 0) {
                after =
                        Solutes.afterPassing(
                                mol[i], stepInMol[i], stepStartM3, volumeM3, pass, spanS);
            } else if (demand > 0) {
                after =
                        Solutes.afterUptake(
                                mol[i], stepInMol[i], midM3, demand, halfMolPerM3[i], spanS);
            }
            stepTakenMol[i] = before - after;
            mol[i] = after;
        }
        giveBackCations(Math.max(acidBefore, ACID_BORNE_MOL_PER_M3 * volumeM3));
        for (int i = 0; i < mol.length; i++) {
            takenMol[i] += stepTakenMol[i];
            debtMol[i == NH4 ? NO3 : i] -= stepTakenMol[i];
        }
    }

    // Cations taken without anions are paid for with protons; in acid solution roots cannot.
    private void giveBackCations(double mostAcidMol) {
        double tooAcid = freeAcidMol(null) - mostAcidMol;
        if (!(tooAcid > 0)) {
            return;
        }
        double cations = 0;
        for (int i = 0; i < mol.length; i++) {
            cations += Math.max(0, CHARGE[i]) * stepTakenMol[i];
        }
        if (!(cations > 0)) {
            return;
        }
        double back = Math.min(1, tooAcid / cations);
        for (int i = 0; i < mol.length; i++) {
            if (CHARGE[i] > 0) {
                mol[i] += back * stepTakenMol[i];
                stepTakenMol[i] -= back * stepTakenMol[i];
            }
        }
    }

    /** Anions less cations, phosphate as H2PO4-; with what comes in besides. */
    private double freeAcidMol(double[] moreMol) {
        double sum = 0;
        for (int i = 0; i < mol.length; i++) {
            sum -= CHARGE[i] * (mol[i] + (moreMol == null ? 0 : moreMol[i]));
        }
        return sum;
    }

    private static int[] charges() {
        int[] charge = new int[Component.COUNT];
        for (int i = 0; i < charge.length; i++) {
            charge[i] = Component.at(i).fixedCharge();
        }
        charge[Component.P.ordinal()] = -1;
        return charge;
    }

    /**
     * Free acid beyond which roots take no cations without anions, mol/m3: pH 4, below which
     * cations leak out of roots (Arnon, Fratzke and Johnson 1942, from memory).
     */
    private static final double ACID_BORNE_MOL_PER_M3 = 0.1;

    private void moveHeat(double midM3, double airC, double inflowTempC, double spanS) {
        if (inflowM3 > 0) {
            tempC += (inflowTempC - tempC) * Math.min(1, inflowM3 / (midM3 + inflowM3));
        }
        tempC =
                VesselHeat.after(
                        tempC,
                        airC,
                        gainW,
                        WALL_W_PER_M2K * wallM2,
                        surface.m3PerS * WATER_KG_PER_M3,
                        surface.slopeM3PerSK * WATER_KG_PER_M3,
                        midM3 * WATER_KG_PER_M3 * LiquidWater.heatCapacityJPerKgK(tempC),
                        spanS);
    }

    private void tendRoots(double endS, double spanS, EventLog log) {
        double level = levelM();
        boolean out = volumeM3 <= 0 || level <= rootTipM();
        if (out && !stranded) {
            log.add(Event.Kind.STRANDED, endS, tray.id());
        } else if (!out && stranded) {
            log.add(Event.Kind.REWETTED, endS, tray.id());
            if (wilted) {
                wilted = false;
                wiltedS = 0;
                log.add(Event.Kind.RECOVERED, endS, tray.id());
            }
            reserveFrac = 1;
        }
        stranded = out;
        if (stranded) {
            double leafM2 = Canopy.leafAreaM2(traits, plant) * crop().plants();
            double thirstKgPerM2S = thirstM3 * WATER_KG_PER_M3 / spanS / leafM2;
            reserveFrac -= spanS / RootZone.dryReserveS(traits, thirstKgPerM2S);
            dayIdleS += spanS;
            if (reserveFrac <= 0 && !wilted) {
                wilted = true;
                log.add(Event.Kind.WILTED, endS, tray.id());
            }
            if (wilted) {
                wiltedS += spanS;
                if (wiltedS >= RootZone.wiltToDeathS(traits)) {
                    die(endS, log);
                }
            }
        }
        boolean under = !out && level > usedToM();
        if (under) {
            if (!drowned) {
                log.add(Event.Kind.DROWNED, endS, tray.id());
            }
            drownedS += spanS;
            dayDrownedS += spanS;
            boolean noneInAir = level >= tray.cupBottomM();
            if (noneInAir && drownedS >= traits.roots().drownedDeathDays() * Timeline.DAY_S) {
                die(endS, log);
            } else if (drownedS >= ROOT_MEMORY_DAYS * Timeline.DAY_S) {
                highestTodayM = level; // new water roots have taken over
                under = false;
            }
        } else {
            drownedS = 0;
        }
        drowned = under;
    }

    private void die(double atS, EventLog log) {
        if (!dead) {
            dead = true;
            log.add(Event.Kind.DIED, atS, tray.id());
        }
    }

    /** Grows the plants by the day that has just ended. */
    void growOvernight(double atS, int daysSinceStart, Meter meter, EventLog log) {
        highestOfDayM[daysSeen % ROOT_MEMORY_DAYS] = drowned ? wontedM() : highestTodayM;
        highestTodayM = drowned ? Double.NEGATIVE_INFINITY : levelM();
        highestBeforeM = Arrays.stream(highestOfDayM).max().orElseThrow();
        daysSeen++;
        if (!lives()) {
            clearDay();
            Arrays.fill(demandMolPerS, 0);
            return;
        }
        takeStockOfHunger();
        salinityFrac = 1;
        if (volumeM3 > 0) {
            salinityFrac = Transpiration.saltFrac(traits, ecMsPerCm(meter));
        }
        double awakeFrac = 1 - dayIdleS / dayS;
        double drownedFrac = 1 - (1 - DROWNED_GROWTH_FRAC) * dayDrownedS / dayS;
        double stress = salinityFrac * hungerFrac * awakeFrac * drownedFrac;
        Plant before = plant;
        double umolPerJ =
                dayJoulesPerM2 > 0
                        ? dayLightMolPerM2 * 1e6 / dayJoulesPerM2
                        : AirSeries.SUN_UMOL_PER_J;
        plant =
                Growing.dayLater(
                        traits,
                        before,
                        groundPerPlantM2(),
                        dayLightMolPerM2,
                        dayLitS > 0 ? dayLitPpfdS / dayLitS : 0,
                        umolPerJ,
                        dayTempCS / dayS,
                        stress);
        clearDay();
        shapeCanopy();
        want(before);
        if (!flowering && Growing.isFlowering(traits, plant)) {
            flowering = true;
            log.add(Event.Kind.FLOWERING, atS, tray.id());
        }
        if (!ripe && Growing.isRipe(traits, plant)) {
            ripe = true;
            if (traits.stages().fruits()) {
                log.add(Event.Kind.FIRST_RIPE, atS, tray.id());
            }
        }
        if (isOver(daysSinceStart)) {
            harvested = true;
            Arrays.fill(demandMolPerS, 0);
            log.add(Event.Kind.HARVEST, atS, tray.id());
        }
    }

    private boolean isOver(int daysSinceStart) {
        if (crop().harvestAfterDays() >= 0) {
            return daysSinceStart >= crop().harvestAfterDays();
        }
        return traits.stages().fruits()
                ? plant.thermalTimeCd() >= traits.stages().lastHarvestCd()
                : ripe;
    }

    private void clearDay() {
        dayLightMolPerM2 = 0;
        dayLitS = 0;
        dayLitPpfdS = 0;
        dayJoulesPerM2 = 0;
        dayTempCS = 0;
        dayS = 0;
        dayIdleS = 0;
        dayDrownedS = 0;
    }

    // Content of the whole plant against a sufficient one, for the scarcest nutrient.
    private void takeStockOfHunger() {
        double least = 1;
        for (int i = 0; i < debtMol.length; i++) {
            if (heldMol[i] > 0) {
                least = Math.min(least, 1 - debtMol[i] / heldMol[i]);
            }
        }
        double frac = (least - STARVED_FRAC) / (1 - HUNGER_BORNE_FRAC - STARVED_FRAC);
        hungerFrac = Math.max(0, Math.min(1, frac));
    }

    // Today's growth is fed by what is drunk until the next midnight.
    private void want(Plant before) {
        double fruitG = plant.fruitDryG() - before.fruitDryG();
        double leafLikeG = Math.max(0, plant.dryG() - before.dryG() - fruitG);
        Hunger.demandMol(traits, leafLikeG, Math.max(0, fruitG), wantedMol);
        double[] beyondMol = new double[debtMol.length];
        int plants = crop().plants();
        if (volumeM3 > 0) {
            double[] molPerM3 = concentrations();
            Hunger.storeMol(traits, plant, molPerM3, beyondMol);
            beyondMol[CA] =
                    Hunger.calciumWithWaterMol(
                            traits,
                            leafLikeG,
                            Math.max(0, fruitG),
                            molPerM3[CA],
                            dayDrunkM3 / Math.max(1, plants));
        }
        dayDrunkM3 = 0;
        debtMol[CA] = Math.max(0, debtMol[CA]); // does not move within the plant: no store
        for (int i = 0; i < debtMol.length; i++) {
            debtMol[i] += wantedMol[i] * plants;
            heldMol[i] += wantedMol[i] * plants;
            demandMolPerS[i] = Math.max(0, debtMol[i] + beyondMol[i] * plants) / Timeline.DAY_S;
        }
        demandMolPerS[NH4] = traits.nutrition().ammoniumShare() * demandMolPerS[NO3];
    }

    double ecMsPerCm(Meter meter) {
        meter.read(concentrations());
        return meter.ecMsPerCm();
    }

    private double[] concentrations() {
        double[] molPerM3 = new double[mol.length];
        for (int i = 0; i < mol.length; i++) {
            molPerM3[i] = mol[i] / volumeM3;
        }
        return molPerM3;
    }

    /** Pours in up to a level; returns what was poured, m3. */
    double topUp(double toLevelM, Composition liquid, double liquidC) {
        double poured =
                Math.max(0, tray.shape().volumeM3(Math.min(toLevelM, tray.overflowM())) - volumeM3);
        pour(poured, liquid, liquidC, toppedUpMol);
        toppedUpM3 += poured;
        return poured;
    }

    /** Drains a share and fills up again to where the level stood; returns what was poured, m3. */
    double renew(double shareFrac, Composition liquid, double liquidC) {
        double out = shareFrac * volumeM3;
        for (int i = 0; i < mol.length; i++) {
            double gone = shareFrac * mol[i];
            mol[i] -= gone;
            drainedMol[i] += gone;
        }
        double target = volumeM3;
        if (tray.filling() instanceof Filling.ByValve) {
            target = Math.max(target, shutM3);
        }
        volumeM3 -= out;
        drainedM3 += out;
        double poured = target - volumeM3;
        pour(poured, liquid, liquidC, freshMol);
        freshM3 += poured;
        return poured;
    }

    private void pour(double poured, Composition liquid, double liquidC, double[] ledger) {
        if (!(poured > 0)) {
            return;
        }
        tempC += (liquidC - tempC) * poured / (volumeM3 + poured);
        volumeM3 += poured;
        for (int i = 0; i < mol.length; i++) {
            double added = poured * liquid.molPerM3(i);
            mol[i] += added;
            ledger[i] += added;
        }
    }
}
