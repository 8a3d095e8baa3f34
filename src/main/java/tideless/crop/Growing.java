package tideless.crop;

import java.util.OptionalDouble;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Elementary;
import tideless.physics.Time;

/** Growth and development, a day at a time. */
public final class Growing {
    /** Photons per joule of a white light-emitting diode, umol/J; 4.6-4.9 from memory. */
    static final double NURSERY_UMOL_PER_J = 4.7;

    /**
     * Share of the crop's stem share in a seedling, and the leaf dry mass at which half of the rest
     * is reached, g. Assumed: seedlings put their mass into leaf first.
     */
    static final double SEEDLING_STEM_FRAC = 1.0 / 3;

    /** See {@link #SEEDLING_STEM_FRAC}. */
    static final double HALF_STEM_LEAF_DRY_G = 0.5;

    /**
     * Relative growth that no light exceeds at 20 degC, 1/d: the fastest of 24 herbs at 20 degC
     * (0.11 to 0.36: Poorter and Remkes 1990, Oecologia 83:553, from memory), taken for every crop;
     * growth curves of lettuce are fitted with 0.20 to 0.35 (from memory). The 5e-6 1/s of
     * lettuce's structure (Van Henten 1994) is a limit that its stores never let it reach.
     */
    static final double FASTEST_PER_DAY_AT_20C = 0.36;

    /**
     * By how much that is faster for each 10 K: Van Henten (1994), Agric. Syst. 45:55, as coded in
     * public.
     */
    static final double FASTER_PER_10_K = 1.6;

    private Growing() {}

    /** A seed that has just been sown: nothing yet. */
    public static Plant sown(CropTraits traits) {
        return new Plant(0, 0, 0, 0, 0, 0);
    }

    /**
     * A seedling at transplant, raised under white light-emitting diodes in the crop's own nursery
     * ({@link CropTraits.Nursery}), fed and watered. What hangs below its plug is as long as the
     * crop states; a plug that fills its cell ends at the cup's underside.
     *
     * @param ageDays days since sowing, at least 0; a part of a day counts as its part
     */
    public static Plant raisedInNursery(CropTraits traits, double ageDays) {
        Plant plant = rootedFreely(traits, ageDays);
        return plant.withRootLengthM(plant.dryG() > 0 ? traits.nursery().rootLengthM() : 0);
    }

    // With roots as long as they grow from emergence on by the nursery's warmth.
    private static Plant rootedFreely(CropTraits traits, double ageDays) {
        CropTraits.Nursery nursery = traits.nursery();
        Plant plant = sown(traits);
        double lightMolPerM2 = nursery.ppfdUmolPerM2S() * nursery.litH() * Time.HOUR_S * 1e-6;
        double left = ageDays;
        while (left > 0) {
            double days = Math.min(1, left);
            plant =
                    later(
                            traits,
                            plant,
                            days,
                            nursery.areaM2(),
                            lightMolPerM2 * days,
                            nursery.ppfdUmolPerM2S(),
                            NURSERY_UMOL_PER_J,
                            nursery.tempC(),
                            1);
            left -= days;
        }
        return plant;
    }

    /**
     * The plant a tray starts with: raised in the nursery to its age, then made as large as the
     * grower found it.
     *
     * <p>Leaf area and fresh weight are taken as stated; the one that is not stated, or both where
     * only leaves or height are counted, follow the nursery's own plant. Leaf area is taken to go
     * with the square of the number of leaves and, without that, of the height: leaves come in
     * number and in size, stems grow in length and in girth; assumed. A seedling that has not come
     * up by its age takes its proportions from the crop's usual transplant.
     *
     * @param ageDays days since sowing
     * @param found what the grower saw
     */
    public static Plant atStart(CropTraits traits, double ageDays, Transplant found) {
        Plant plant = asFound(traits, ageDays, found);
        double times = found.sizeFrac();
        return times == 1
                ? plant
                : plant.grown(
                        plant.thermalTimeCd(),
                        times * plant.leafDryG(),
                        times * plant.stemDryG(),
                        times * plant.fruitDryG(),
                        times * plant.rootDryG(),
                        plant.rootLengthM());
    }

    private static Plant asFound(CropTraits traits, double ageDays, Transplant found) {
        Plant raised = raisedInNursery(traits, ageDays);
        if (found.rootLengthM().isPresent()) {
            raised = raised.withRootLengthM(found.rootLengthM().getAsDouble());
        } else if (found.rootsHang()) {
            double grownM = rootedFreely(traits, ageDays).rootLengthM();
            raised = raised.withRootLengthM(Math.max(0, grownM - Rooting.PLUG_DEPTH_M));
        }
        if (!found.statesSize()) {
            return raised;
        }
        CropTraits.Nursery nursery = traits.nursery();
        Plant usual = raisedInNursery(traits, nursery.days());
        Plant like = raised.dryG() > 0 ? raised : usual;
        double thermalTimeCd = Math.max(raised.thermalTimeCd(), traits.stages().emergenceCd());
        double leafG;
        if (found.leafAreaM2().isPresent()) {
            leafG = Canopy.leafDryG(traits, found.leafAreaM2().getAsDouble());
        } else if (found.freshG().isPresent()) {
            leafG = like.leafDryG() * found.freshG().getAsDouble() / freshG(traits, like);
        } else {
            double times =
                    found.leaves().isPresent()
                            ? found.leaves().getAsDouble() / nursery.leaves()
                            : found.heightM().orElseThrow() / nursery.heightM();
            leafG = Canopy.leafDryG(traits, Canopy.leafAreaM2(traits, usual) * times * times);
        }
        double scale = leafG / like.leafDryG();
        double stemG = like.stemDryG() * scale;
        if (found.freshG().isPresent()) {
            stemG =
                    Math.max(
                            0,
                            found.freshG().getAsDouble() * dryMatterFrac(traits, thermalTimeCd)
                                    - leafG);
        }
        return new Plant(
                thermalTimeCd, leafG, stemG, 0, like.rootDryG() * scale, raised.rootLengthM());
    }

    /**
     * The plant a day later.
     *
     * <p>Dry mass by intercepted light (Monteith 1977, Phil. Trans. R. Soc. B 281:277-294): light
     * use x light over the crown x share stopped x temperature x stress, and not more than a young
     * plant can build into tissue in a day. Published light uses count the shoot, so the root's
     * share comes on top. It is split to fruit (rising from flowering to full load, less what did
     * not set, {@link FruitSet}), root and shoot; of a topped plant fruit takes the shoot's part as
     * well. Before emergence only thermal time passes; on the day it is reached the seedling
     * appears. Leading roots grow at the crop's rate times temperature.
     *
     * @param groundPerPlantM2 ground there is for each plant, m2, above 0
     * @param lightMolPerM2 photons of 400-700 nm in the day above the canopy, mol/m2, at least 0
     * @param meanLitPpfdUmolPerM2S mean PPFD while there is light, umol/m2/s
     * @param umolPerJ photons per joule of that light, umol/J
     * @param meanTempC mean of the day's 24 h, degC
     * @param stressFrac 0 (no growth) to 1 (none), above 1 in enriched air; what is taken is taken
     *     of what the plant can build as of what light gives
     */
    public static Plant dayLater(
            CropTraits traits,
            Plant plant,
            double groundPerPlantM2,
            double lightMolPerM2,
            double meanLitPpfdUmolPerM2S,
            double umolPerJ,
            double meanTempC,
            double stressFrac) {
        return later(
                traits,
                plant,
                1,
                groundPerPlantM2,
                lightMolPerM2,
                meanLitPpfdUmolPerM2S,
                umolPerJ,
                meanTempC,
                stressFrac);
    }

    private static Plant later(
            CropTraits traits,
            Plant plant,
            double days,
            double groundPerPlantM2,
            double lightMolPerM2,
            double meanLitPpfdUmolPerM2S,
            double umolPerJ,
            double meanTempC,
            double stressFrac) {
        CropTraits.Growth growth = traits.growth();
        CropTraits.Stages stages = traits.stages();
        double thermalTimeCd =
                plant.thermalTimeCd() + days * warmthCd(traits, plant.thermalTimeCd(), meanTempC);
        if (thermalTimeCd < stages.emergenceCd()) {
            return plant.grown(
                    thermalTimeCd,
                    plant.leafDryG(),
                    plant.stemDryG(),
                    plant.fruitDryG(),
                    plant.rootDryG(),
                    plant.rootLengthM());
        }
        if (!(plant.dryG() > 0)) {
            double rootG = growth.seedlingDryG() * stages.rootShare();
            return new Plant(
                    thermalTimeCd, growth.seedlingDryG() - rootG, 0, 0, rootG, plant.rootLengthM());
        }
        double temperature = temperatureFrac(growth, meanTempC);
        double coveredM2 = Canopy.coveredGroundM2(traits, plant, groundPerPlantM2);
        double stopped =
                Canopy.interceptedFrac(
                        Canopy.extinction(traits, plant),
                        Canopy.leafAreaIndex(traits, plant, groundPerPlantM2));
        double load = loadFrac(stages, thermalTimeCd) * plant.setFrac();
        double fruit = stages.fruits() ? stages.fruitShare() * load : 0;
        double root = stages.rootShare() * (1 - 0.5 * load);
        double newG =
                growth.lightUseGPerMj()
                        * lightUseFrac(growth, meanLitPpfdUmolPerM2S)
                        * (lightMolPerM2 / umolPerJ)
                        * coveredM2
                        * stopped
                        * temperature
                        * Math.max(1, stressFrac)
                        / (1 - root);
        newG =
                Math.min(1, stressFrac)
                        * Math.min(
                                newG,
                                plant.dryG() * Elementary.expm1(fastestPerDay(meanTempC) * days));
        double shoot = Math.max(0, 1 - fruit - root);
        if (plant.isTopped()) {
            fruit += shoot * load;
            shoot *= 1 - load;
        }
        double stem =
                stages.stemShare()
                        * (SEEDLING_STEM_FRAC
                                + (1 - SEEDLING_STEM_FRAC)
                                        * plant.everGrownLeafDryG()
                                        / (plant.everGrownLeafDryG() + HALF_STEM_LEAF_DRY_G));
        double newLeafG = newG * shoot * (1 - stem);
        return plant.grown(
                        thermalTimeCd,
                        plant.leafDryG() + newLeafG,
                        plant.stemDryG() + newG * shoot * stem,
                        plant.fruitDryG() + newG * fruit,
                        plant.rootDryG() + newG * root,
                        Math.min(
                                traits.roots().longestM(),
                                plant.rootLengthM()
                                        + days * traits.roots().elongationMPerDay() * temperature))
                .withLeafSpreadFrac(leafSpreadFrac(traits, plant, newLeafG, lightMolPerM2 / days));
    }

    // Relative growth that no light exceeds, 1/d.
    private static double fastestPerDay(double meanTempC) {
        return FASTEST_PER_DAY_AT_20C * FastMath.pow(FASTER_PER_10_K, (meanTempC - 20) / 10);
    }

    // What is there keeps its thickness; what comes new has that of the day's light.
    private static double leafSpreadFrac(
            CropTraits traits, Plant plant, double newLeafG, double lightMolPerM2Day) {
        double before = Canopy.everGrownAreaM2(traits, plant.everGrownLeafDryG());
        double after = Canopy.everGrownAreaM2(traits, plant.everGrownLeafDryG() + newLeafG);
        return newLeafG > 0
                ? (plant.leafSpreadFrac() * before
                                + Canopy.leafSpreadFrac(lightMolPerM2Day) * (after - before))
                        / after
                : plant.leafSpreadFrac();
    }

    /**
     * A plant with a share of its leaves picked.
     *
     * <p>Of a leaf crop blades and stalks go alike: what is eaten. Of a fruit crop only blades go,
     * the lowest; leaf beyond the crop's {@code leafAreaIndexMax} has died or been taken off before
     * and is no part of the share. Growth goes on by the light that the rest stops; stores and a
     * pause after the cut are left out (assumed).
     *
     * @param groundPerPlantM2 ground there is for each plant, m2, above 0
     * @param shareFrac share of the standing leaf, 0-1
     */
    public static Picking pickLeaves(
            CropTraits traits, Plant plant, double groundPerPlantM2, double shareFrac) {
        if (!traits.stages().fruits()) {
            double dryG = shareFrac * (plant.leafDryG() + plant.stemDryG());
            return new Picking(
                    plant.picked(shareFrac, shareFrac),
                    dryG / dryMatterFrac(traits, plant.thermalTimeCd()));
        }
        double standing =
                Math.min(
                        1,
                        traits.growth().leafAreaIndexMax()
                                * Canopy.boundGroundM2(traits, groundPerPlantM2)
                                / Math.max(1e-12, Canopy.leafAreaM2(traits, plant)));
        return new Picking(
                plant.picked(1 - standing * (1 - shareFrac), 0),
                shareFrac
                        * standing
                        * plant.leafDryG()
                        / dryMatterFrac(traits, plant.thermalTimeCd()));
    }

    /**
     * What a picking leaves and brings.
     *
     * @param left the plant that stands on
     * @param freshG fresh mass in the hand, g a plant
     */
    public record Picking(Plant left, double freshG) {}

    /**
     * Degree-days at which the last fruit of a plant that is topped now is ripe: one more growth of
     * fruit, from flower to ripe, at most the crop's own end.
     */
    public static double lastRipeAfterToppingCd(CropTraits traits, double thermalTimeCd) {
        CropTraits.Stages stages = traits.stages();
        return Math.min(
                stages.lastHarvestCd(),
                Math.max(thermalTimeCd, stages.floweringCd())
                        + stages.firstHarvestCd()
                        - stages.floweringCd());
    }

    /**
     * Degree-days a day brings: above the crop's base, and not more than at its high optimum. From
     * the flower on a fruit crop goes by the warmth its fruit ripens by, told on the same scale: as
     * many stand between flower and first ripe fruit as the crop's stages say. That all of it, full
     * load and last harvest, goes by the fruit is assumed.
     *
     * @param thermalTimeCd it stands at, degC d since sowing
     * @param meanTempC mean of the day's 24 h, degC
     * @return degC d, at least 0
     */
    public static double warmthCd(CropTraits traits, double thermalTimeCd, double meanTempC) {
        CropTraits.Stages stages = traits.stages();
        double tempC = Math.min(meanTempC, traits.growth().optimumHighC());
        double fruitCd = stages.firstHarvestCd() - stages.floweringCd();
        return stages.fruits() && fruitCd > 0 && thermalTimeCd >= stages.floweringCd()
                ? fruitCd / stages.fruitSumCd() * Math.max(0, tempC - stages.fruitBaseC())
                : Math.max(0, tempC - traits.growth().baseC());
    }

    /**
     * Share of full growth at a mean temperature: 0 at base, rising straight to 1 at the low
     * optimum, level to the high one, falling straight to 0 at the ceiling. Cardinal temperatures,
     * common practice.
     */
    public static double temperatureFrac(CropTraits.Growth growth, double meanTempC) {
        if (meanTempC <= growth.baseC() || meanTempC >= growth.ceilingC()) {
            return 0;
        }
        if (meanTempC < growth.optimumLowC()) {
            return (meanTempC - growth.baseC()) / (growth.optimumLowC() - growth.baseC());
        }
        if (meanTempC > growth.optimumHighC()) {
            return (growth.ceilingC() - meanTempC) / (growth.ceilingC() - growth.optimumHighC());
        }
        return 1;
    }

    /**
     * Share of the light use left at a PPFD: 1 up to {@code lightUseFallsFromUmol} (P), then 1 / (1
     * + fall (I - P)), so that growth keeps rising with light but ever less.
     */
    public static double lightUseFrac(CropTraits.Growth growth, double ppfdUmolPerM2S) {
        return 1
                / (1
                        + growth.lightUseFallPerUmol()
                                * Math.max(0, ppfdUmolPerM2S - growth.lightUseFallsFromUmol()));
    }

    /**
     * Dry mass that would have gone to fruit in a day had every flower set, g.
     *
     * @param after the plant a day later
     */
    public static double fruitIfAllSetG(CropTraits traits, Plant before, Plant after) {
        CropTraits.Stages stages = traits.stages();
        return stages.fruits()
                ? (after.dryG() - before.dryG())
                        * stages.fruitShare()
                        * loadFrac(stages, after.thermalTimeCd())
                : 0;
    }

    private static double loadFrac(CropTraits.Stages stages, double thermalTimeCd) {
        if (!stages.fruits() || thermalTimeCd <= stages.floweringCd()) {
            return 0;
        }
        return thermalTimeCd >= stages.fullLoadCd()
                ? 1
                : (thermalTimeCd - stages.floweringCd())
                        / (stages.fullLoadCd() - stages.floweringCd());
    }

    /**
     * Dry share of the fresh shoot, 0-1: from a seedling's at emergence straight to the grown
     * crop's at the first harvest, and level from there. Straight is assumed.
     */
    static double dryMatterFrac(CropTraits traits, double thermalTimeCd) {
        CropTraits.Growth growth = traits.growth();
        double from = traits.stages().emergenceCd();
        double age = (thermalTimeCd - from) / (traits.stages().firstHarvestCd() - from);
        return growth.youngDryMatterFrac()
                + (growth.leafDryMatterFrac() - growth.youngDryMatterFrac())
                        * Math.max(0, Math.min(1, age));
    }

    /** Fresh mass of standing shoot and of fruit, picked fruit counted, without root, g. */
    public static double freshG(CropTraits traits, Plant plant) {
        return (plant.leafDryG() + plant.stemDryG()) / dryMatterFrac(traits, plant.thermalTimeCd())
                + fruitFreshG(traits, plant);
    }

    /** Fresh mass of fruit, picked fruit counted, g; 0 for a leaf crop. */
    public static double fruitFreshG(CropTraits traits, Plant plant) {
        return plant.fruitDryG() > 0 ? plant.fruitDryG() / traits.growth().fruitDryMatterFrac() : 0;
    }

    /** Whether fruit is being filled; never for a leaf crop. */
    public static boolean isFlowering(CropTraits traits, Plant plant) {
        return traits.stages().fruits() && plant.thermalTimeCd() >= traits.stages().floweringCd();
    }

    /**
     * Whether the first fruit is ripe, or a leaf crop is ready: it weighs what is wanted of it, or
     * stands as long as it may. Without a wanted weight its stage decides.
     *
     * @param thermalTimeCd degC d since sowing
     * @param freshG fresh weight of one plant, g
     * @param wantedFreshG fresh weight of one plant to wait for, g; empty for none
     */
    public static boolean isRipe(
            CropTraits traits, double thermalTimeCd, double freshG, OptionalDouble wantedFreshG) {
        if (traits.stages().fruits() || wantedFreshG.isEmpty()) {
            return thermalTimeCd >= traits.stages().firstHarvestCd();
        }
        return freshG >= wantedFreshG.getAsDouble() || thermalTimeCd >= traits.harvest().latestCd();
    }

    /** Whether a leaf crop that is picked leaf by leaf bolts, grows tough or is spent. */
    public static boolean isSpent(CropTraits traits, double thermalTimeCd) {
        return thermalTimeCd >= traits.harvest().pickedUntilCd();
    }
}
