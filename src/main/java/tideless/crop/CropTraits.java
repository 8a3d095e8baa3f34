package tideless.crop;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The numbers that make one crop differ from another. Each comes from a resource file that names
 * its source; {@link #provenance()} carries those sources along.
 *
 * @param name the crop's name in the library, as "lettuce"
 * @param latinName botanical name
 * @param about what plant it is, in a few words; may be empty
 * @param growth how it turns light into dry mass and leaf
 * @param stages what happens at which thermal time
 * @param stomata how its leaves hold water back
 * @param coefficients FAO-56 crop coefficients
 * @param roots how its roots reach the water, and what they bear
 * @param salinity how salt slows it
 * @param nutrition what its tissue holds, and how it takes it up
 * @param needs the bands it wants
 * @param response what its roots and air do to it beyond that
 * @param thirst what a full stand drinks, and how well that is known
 * @param nursery how its seedlings are raised before they go into the tray
 * @param harvest when it is ready
 * @param provenance every number with its spread and its source, in the order of the file
 */
@RecordBuilder
public record CropTraits(
        String name,
        String latinName,
        String about,
        Growth growth,
        Stages stages,
        Stomata stomata,
        Coefficients coefficients,
        Roots roots,
        Salinity salinity,
        Nutrition nutrition,
        Needs needs,
        RootResponse response,
        Thirst thirst,
        Nursery nursery,
        Harvest harvest,
        List<Provenance> provenance)
        implements CropTraitsBuilder.With {

    public CropTraits {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(growth, "growth");
        Objects.requireNonNull(stages, "stages");
        Objects.requireNonNull(stomata, "stomata");
        Objects.requireNonNull(coefficients, "coefficients");
        Objects.requireNonNull(roots, "roots");
        Objects.requireNonNull(salinity, "salinity");
        Objects.requireNonNull(nutrition, "nutrition");
        Objects.requireNonNull(needs, "needs");
        Objects.requireNonNull(response, "response");
        Objects.requireNonNull(thirst, "thirst");
        Objects.requireNonNull(nursery, "nursery");
        Objects.requireNonNull(harvest, "harvest");
        provenance = List.copyOf(provenance);
    }

    /**
     * The same crop with factors on what is known badly.
     *
     * @param lightUse on the light use
     * @param leafArea on the leaf area per leaf mass
     * @param contents on all that tissue holds
     * @param elongation on the growth of the leading roots
     */
    public CropTraits times(double lightUse, double leafArea, double contents, double elongation) {
        return withGrowth(growth.times(lightUse, leafArea))
                .withRoots(roots.withElongationMPerDay(elongation * roots.elongationMPerDay()))
                .withNutrition(nutrition.times(contents));
    }

    /**
     * The same crop led up on several stems, each of which spreads over as much ground as a plant
     * of one stem: vine crops are spaced by their stems (common practice).
     *
     * @param stems of a plant, at least 1
     */
    public CropTraits onStems(int stems) {
        return withGrowth(growth.withSpreadM2(stems * growth.spreadM2()));
    }

    /**
     * The same crop with other contents; the greatest plausible ones stay.
     *
     * @param leaf of leaf, stem and root
     * @param fruit of fruit; equal to {@code leaf} for a leaf crop
     */
    public CropTraits withContents(Contents leaf, Contents fruit) {
        return withNutrition(nutrition.withLeaf(leaf).withFruit(fruit));
    }

    /**
     * Growth by intercepted light.
     *
     * @param lightUseGPerMj dry mass made per intercepted light, g per MJ of 400-700 nm, without
     *     root, at or below {@code lightUseFallsFromUmol}
     * @param lightUseFallsFromUmol PPFD above which light is used less well, umol/m2/s
     * @param lightUseFallPerUmol fall of the light use above it, 1/(umol/m2/s): the share left is 1
     *     / (1 + fall x excess), so for a small excess it is the share lost per umol/m2/s
     * @param extinction extinction coefficient of the canopy for 400-700 nm, dimensionless
     * @param leafAreaM2PerKg leaf area per leaf dry mass, m2/kg
     * @param leafAreaIndexMax ceiling of the leaf area index
     * @param spreadM2 ground one unhindered full-grown plant covers, m2
     * @param heightM height of the full-grown plant, m
     * @param seedlingDryG dry mass at emergence, g
     * @param baseC no growth at or below this mean temperature, degC
     * @param optimumLowC full growth from here, degC
     * @param optimumHighC full growth to here, degC
     * @param ceilingC no growth at or above this, degC
     * @param youngDryMatterFrac dry share of a fresh seedling's shoot, 0-1
     * @param leafDryMatterFrac dry share of the fresh shoot at the first harvest, 0-1
     * @param fruitDryMatterFrac dry share of fresh fruit, 0-1
     */
    @RecordBuilder
    public record Growth(
            double lightUseGPerMj,
            double lightUseFallsFromUmol,
            double lightUseFallPerUmol,
            double extinction,
            double leafAreaM2PerKg,
            double leafAreaIndexMax,
            double spreadM2,
            double heightM,
            double seedlingDryG,
            double baseC,
            double optimumLowC,
            double optimumHighC,
            double ceilingC,
            double youngDryMatterFrac,
            double leafDryMatterFrac,
            double fruitDryMatterFrac)
            implements CropTraitsGrowthBuilder.With {
        private Growth times(double lightUse, double leafArea) {
            return withLightUseGPerMj(lightUse * lightUseGPerMj)
                    .withLeafAreaM2PerKg(leafArea * leafAreaM2PerKg);
        }
    }

    /**
     * Development by thermal time, degree-days above {@link Growth#baseC()} since sowing.
     *
     * @param emergenceCd seedlings are up, degC d
     * @param floweringCd fruit begins to be filled, degC d; infinite for a leaf crop
     * @param fullLoadCd the fruit share of growth has reached its full value, degC d
     * @param firstHarvestCd a leaf crop is ready, or the first fruit is ripe, degC d
     * @param lastHarvestCd a fruit crop is finished, degC d; equal to firstHarvestCd for a leaf
     *     crop
     * @param fruitShare share of new dry mass that goes to fruit at full load, 0-1
     * @param rootShare share of new dry mass that goes to roots before flowering, 0-1; halved at
     *     full load
     * @param stemShare share of the rest of the shoot that goes to stem and petiole, 0-1
     * @param fruitBaseC temperature at which fruit stops ripening, degC; {@link Growth#baseC()}
     *     where nothing else is known
     * @param fruitSumCd degree-days above it from flower to ripe, degC d; what lies between
     *     flowering and first harvest where nothing else is known
     */
    public record Stages(
            double emergenceCd,
            double floweringCd,
            double fullLoadCd,
            double firstHarvestCd,
            double lastHarvestCd,
            double fruitShare,
            double rootShare,
            double stemShare,
            double fruitBaseC,
            double fruitSumCd) {
        /** Whether it bears fruit. */
        public boolean fruits() {
            return floweringCd < Double.POSITIVE_INFINITY && fruitShare > 0;
        }
    }

    /** How the leaves hold water back: resistance per leaf area, one of two published forms. */
    public sealed interface Stomata {
        /** Characteristic leaf size along the air's path, m. */
        double leafSizeM();

        /**
         * Resistance falls with light along a hyperbola: r = least (a + I) / (b + I).
         *
         * <p>Form of Graamans et al. (2017), Agric. Syst. 153, for indoor lettuce.
         *
         * <p>Resistances are per one-sided leaf area, both faces in parallel.
         *
         * @param leastSPerM resistance at great light, s/m
         * @param aUmol a, umol/m2/s
         * @param bUmol b, umol/m2/s
         * @param darkSPerM in the dark, s/m
         * @param leafSizeM leaf size, m
         */
        record LightHyperbola(
                double leastSPerM, double aUmol, double bUmol, double darkSPerM, double leafSizeM)
                implements Stomata {}

        /**
         * Stanghellini's form: light, leaf temperature and humidity deficit each multiply the least
         * resistance.
         *
         * <p>Stanghellini (1987), thesis Wageningen, for glasshouse tomato.
         *
         * @param leastSPerM least resistance of one leaf face, s/m
         * @param darkSPerM of one leaf face in the dark before temperature and humidity multiply
         *     it, s/m
         * @param leafSizeM leaf size, m
         */
        record LightTemperatureHumidity(double leastSPerM, double darkSPerM, double leafSizeM)
                implements Stomata {}
    }

    /**
     * FAO-56 crop coefficients, single, with the share of the crop's thermal time at which they
     * change. They hold for the ground that leaf covers; see {@link Transpiration#cropCoefficient}.
     *
     * @param initial at the start
     * @param mid at full cover
     * @param end at the end
     * @param initialEndsFrac share of the thermal time from emergence to last harvest, 0-1
     * @param midBeginsFrac likewise
     * @param midEndsFrac likewise
     */
    public record Coefficients(
            double initial,
            double mid,
            double end,
            double initialEndsFrac,
            double midBeginsFrac,
            double midEndsFrac) {}

    /**
     * Roots.
     *
     * @param elongationMPerDay growth of the leading roots at full growth temperature, m/d
     * @param longestM greatest length, m
     * @param dryReserveH hours a plant lives on what it holds once every root has left the water,
     *     at a thirst of 1 mm of leaf water a day; shorter in proportion at greater thirst
     * @param wiltToDeathH hours from wilting to death, h
     * @param riseBorneM rise of the level above what the roots are used to that they bear, m
     * @param drownedDeathDays days of drowned air roots after which a plant is lost, d
     */
    @RecordBuilder
    public record Roots(
            double elongationMPerDay,
            double longestM,
            double dryReserveH,
            double wiltToDeathH,
            double riseBorneM,
            double drownedDeathDays)
            implements CropTraitsRootsBuilder.With {}

    /**
     * Relative reduction by salt, Maas and Hoffman's form on the EC of the solution itself.
     *
     * <p>Thresholds and slopes are those of soilless crops, not of soil extracts; measured yields
     * bend without a sharp break (Sonneveld, van den Bos and Voogt 2004, J. Plant Nutr.).
     *
     * @param thresholdMsPerCm EC at 25 degC of the solution above which growth falls, mS/cm
     * @param fallFracPerMsPerCm share of growth lost per mS/cm above it
     */
    public record Salinity(double thresholdMsPerCm, double fallFracPerMsPerCm) {
        /**
         * EC at which a share of growth is lost.
         *
         * @param lossFrac 0-1
         * @return mS/cm at 25 degC; infinite where salt takes nothing
         */
        public double lossMsPerCm(double lossFrac) {
            return thresholdMsPerCm + lossFrac / fallFracPerMsPerCm;
        }

        /** Growth left at an EC, 0-1. */
        public double growthFrac(double ecMsPerCm) {
            return Math.max(0, 1 - fallFracPerMsPerCm * Math.max(0, ecMsPerCm - thresholdMsPerCm));
        }
    }

    /**
     * What tissue holds and how roots take it.
     *
     * @param leaf contents of leaf, stem and root dry mass
     * @param fruit contents of fruit dry mass; equal to {@code leaf} for a leaf crop
     * @param halfNitrateMolPerM3 Michaelis constant for nitrate, mol/m3
     * @param halfAmmoniumMolPerM3 for ammonium, mol/m3
     * @param halfPhosphateMolPerM3 for phosphate, mol/m3
     * @param halfPotassiumMolPerM3 for potassium, mol/m3
     * @param halfCalciumMolPerM3 for calcium, mol/m3
     * @param halfMagnesiumMolPerM3 for magnesium, mol/m3
     * @param halfSulfateMolPerM3 for sulfate, mol/m3
     * @param sodiumPassFrac sodium taken per litre drunk, as a share of what a litre of the
     *     solution holds, 0-1
     * @param chloridePassFrac likewise for chloride, 0-1
     * @param leafMost greatest plausible contents of leaf, stem and root: what luxury uptake tends
     *     to
     * @param fruitMost likewise of fruit
     */
    @RecordBuilder
    public record Nutrition(
            Contents leaf,
            Contents fruit,
            double halfNitrateMolPerM3,
            double halfAmmoniumMolPerM3,
            double halfPhosphateMolPerM3,
            double halfPotassiumMolPerM3,
            double halfCalciumMolPerM3,
            double halfMagnesiumMolPerM3,
            double halfSulfateMolPerM3,
            double sodiumPassFrac,
            double chloridePassFrac,
            Contents leafMost,
            Contents fruitMost)
            implements CropTraitsNutritionBuilder.With {
        private Nutrition times(double factor) {
            return withLeaf(leaf.times(factor))
                    .withFruit(fruit.times(factor))
                    .withLeafMost(leafMost.times(factor))
                    .withFruitMost(fruitMost.times(factor));
        }
    }

    /**
     * Contents of dry mass, g per kg.
     *
     * @param nitrogen N
     * @param phosphorus P
     * @param potassium K
     * @param calcium Ca
     * @param magnesium Mg
     * @param sulfur S
     */
    public record Contents(
            double nitrogen,
            double phosphorus,
            double potassium,
            double calcium,
            double magnesium,
            double sulfur) {
        private Contents times(double factor) {
            return new Contents(
                    factor * nitrogen,
                    factor * phosphorus,
                    factor * potassium,
                    factor * calcium,
                    factor * magnesium,
                    factor * sulfur);
        }
    }

    /**
     * Bands the crop wants.
     *
     * @param ecLowMsPerCm EC of the root solution at 25 degC, mS/cm
     * @param ecHighMsPerCm likewise
     * @param phLow pH of the root solution
     * @param phHigh likewise
     * @param sodiumHighMolPerM3 most sodium, mol/m3
     * @param chlorideHighMolPerM3 most chloride, mol/m3
     * @param lightLowMolPerM2Day least daily light integral, mol/m2/d
     * @param lightHighMolPerM2Day most daily light integral of use, mol/m2/d
     * @param solutionWarmC solution temperature above which roots suffer, degC
     */
    public record Needs(
            double ecLowMsPerCm,
            double ecHighMsPerCm,
            double phLow,
            double phHigh,
            double sodiumHighMolPerM3,
            double chlorideHighMolPerM3,
            double lightLowMolPerM2Day,
            double lightHighMolPerM2Day,
            double solutionWarmC) {

        /**
         * Light that falls short by less is as good as enough, share of the need: what a cheap
         * meter is known to at best, and less than the needs' own spread; assumed.
         */
        private static final double SAME_LIGHT_FRAC = 0.05;

        /**
         * Whether a day's light is less than a need by more than anybody tells.
         *
         * @param lowMolPerM2Day the need, mol/m2/d; NaN for none known, of which none is short
         */
        public static boolean isShortOfLight(double molPerM2Day, double lowMolPerM2Day) {
            return molPerM2Day < (1 - SAME_LIGHT_FRAC) * lowMolPerM2Day;
        }

        /** Whether growers feed it at an EC, mS/cm. */
        public boolean isUsual(double msPerCm) {
            return msPerCm >= ecLowMsPerCm && msPerCm <= ecHighMsPerCm;
        }
    }

    /**
     * How growth and thirst answer to the air, warmth and salt at the roots, and which air and day
     * the crop bears.
     *
     * @param oxygenEnoughGPerM3 dissolved oxygen of full growth up to 25 degC, g/m3 (mg/L)
     * @param oxygenEnoughWarmGPerM3 the same at 33 degC and more, g/m3
     * @param noOxygenGrowthFrac growth left in water without oxygen while roots hang in air, 0-1
     * @param oxygenEnoughForWaterGPerM3 dissolved oxygen of full water uptake, g/m3
     * @param noOxygenWaterFrac water uptake left without oxygen, 0-1
     * @param rootColdestC root temperature of half growth, degC
     * @param rootLowC full growth from here, degC
     * @param rootHighC full growth to here, degC
     * @param growthAt35Frac growth left at a root temperature of 35 degC, 0-1
     * @param saltStopsMsPerCm EC at which growth ends, mS/cm
     * @param saltThirstFallFrac share of the thirst lost per mS/cm above the threshold
     * @param chillC air below which leaves are injured, degC; -infinity for none known
     * @param frostC air that kills the plant within the hour, degC; -infinity for none known
     * @param setLowC mean air below which fruit sets badly, degC; -infinity for a leaf crop
     * @param setHighC day's air above which fruit sets badly, degC; infinite for a leaf crop
     * @param setInHeat how many flowers set in warm air
     * @param longestDayH hours of light it bears; 24 for no limit
     */
    public record RootResponse(
            double oxygenEnoughGPerM3,
            double oxygenEnoughWarmGPerM3,
            double noOxygenGrowthFrac,
            double oxygenEnoughForWaterGPerM3,
            double noOxygenWaterFrac,
            double rootColdestC,
            double rootLowC,
            double rootHighC,
            double growthAt35Frac,
            double saltStopsMsPerCm,
            double saltThirstFallFrac,
            double chillC,
            double frostC,
            double setLowC,
            double setHighC,
            SetInHeat setInHeat,
            double longestDayH) {}

    /**
     * Air in which flowers set no fruit: all set up to the first, half of those at the second, none
     * from the third on, straight between.
     *
     * @param wholeC degC; all three infinite where no heat of houses is known to matter
     * @param halfC degC, above it
     * @param noneC degC, above that
     */
    public record SetInHeat(double wholeC, double halfC, double noneC) {
        /** Flowers set in any heat that the plant bears. */
        public static final SetInHeat ALWAYS =
                new SetInHeat(
                        Double.POSITIVE_INFINITY,
                        Double.POSITIVE_INFINITY,
                        Double.POSITIVE_INFINITY);

        public SetInHeat {
            boolean rise = wholeC < halfC && halfC < noneC;
            if (!rise && !(wholeC == Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(
                        "set in heat must rise, was %s, %s, %s".formatted(wholeC, halfC, noneC));
            }
        }
    }

    /**
     * Thirst of a stand.
     *
     * @param fullCover coefficient of a full stand in a house on FAO-56's reference with a house's
     *     fixed resistance, dimensionless; see {@link StandTranspiration}
     * @param conductanceAt1000PpmFrac stomatal conductance at 1000 ppm of carbon dioxide over that
     *     at 400, 0-1
     * @param standDoubt standard deviation of the logarithm between grown stands in sunlit houses;
     *     see {@link ThirstDoubt}
     */
    public record Thirst(double fullCover, double conductanceAt1000PpmFrac, double standDoubt) {}

    /**
     * The nursery a seedling is raised in, fed and watered, and what it looks like on leaving it.
     *
     * @param areaM2 ground each seedling has: its cell, or its share of the bench where pots are
     *     spaced, m2
     * @param ppfdUmolPerM2S light, umol/m2/s
     * @param litH hours of it a day
     * @param tempC mean temperature, degC
     * @param days usual age at transplanting, days since sowing
     * @param leaves true leaves at that age
     * @param heightM height at that age, m
     * @param rootLengthM roots hanging out below its plug at transplanting, m
     * @param plugWaterM3 water its plug or pot can give it before it wilts, m3
     */
    public record Nursery(
            double areaM2,
            double ppfdUmolPerM2S,
            double litH,
            double tempC,
            double days,
            double leaves,
            double heightM,
            double rootLengthM,
            double plugWaterM3) {}

    /**
     * When a leaf crop is cut, or picked for the first time: at its weight, within a window. Fruit
     * is picked by its stages.
     *
     * @param freshG fresh weight of one plant that growers wait for, g; empty where the stage alone
     *     decides
     * @param latestCd a leaf crop past this bolts or grows tough, degC d since sowing
     * @param pickedUntilCd the same of plants that are picked leaf by leaf, degC d since sowing
     * @param pickedEveryDays days from one picking to the next of a crop that is picked as it
     *     grows, d; empty of one that is cut once
     * @param pickedFromG fresh weight of one plant at its first picking, g; empty where that is the
     *     weight at which it would be cut
     * @param pickedShareFrac share of the standing leaf that a picking takes, 0-1
     * @param groundM2 ground that growers give one plant, m2; empty where none was found
     */
    public record Harvest(
            OptionalDouble freshG,
            double latestCd,
            double pickedUntilCd,
            OptionalDouble pickedEveryDays,
            OptionalDouble pickedFromG,
            double pickedShareFrac,
            OptionalDouble groundM2) {
        public Harvest {
            Objects.requireNonNull(freshG, "freshG");
            Objects.requireNonNull(pickedEveryDays, "pickedEveryDays");
            Objects.requireNonNull(pickedFromG, "pickedFromG");
            Objects.requireNonNull(groundM2, "groundM2");
        }
    }

    /**
     * Where one number comes from.
     *
     * @param key its place in the file, as {@code growth.light_use}
     * @param value as written, with unit
     * @param low least plausible, as written; empty when none is stated
     * @param high greatest plausible, as written; empty when none is stated
     * @param source author, year, table; or "common practice, no source"
     * @param standing "read", "from memory", "common practice", "derived" or "assumed"
     */
    public record Provenance(
            String key, String value, String low, String high, String source, String standing) {}
}
