package tideless.crop;

import tideless.physics.Elementary;
import tideless.physics.HumidAir;
import tideless.physics.LeafBoundaryLayer;

/** What a canopy would drink with all the water it wants at its roots. */
public final class Transpiration {
    /**
     * Share of 400-700 nm light a deep canopy throws back; leaf scattering 0.2, horizontal leaves:
     * (1 - sqrt(1 - 0.2)) / (1 + sqrt(1 - 0.2)). Goudriaan (1977), Crop Micrometeorology, from
     * memory; Graamans et al. (2017) take 0.05.
     */
    static final double PAR_REFLECTED_FRAC = 0.056;

    /** As {@link #PAR_REFLECTED_FRAC} for near infrared, leaf scattering 0.8; same source. */
    static final double NEAR_INFRARED_REFLECTED_FRAC = 0.382;

    /**
     * Extinction for near infrared over that for 400-700 nm light, sqrt((1 - 0.8) / (1 - 0.2));
     * Goudriaan (1977), from memory.
     */
    static final double NEAR_INFRARED_TO_PAR_EXTINCTION = 0.5;

    /** Extinction for black leaves over that for 400-700 nm light, 1 / sqrt(1 - 0.2); as above. */
    static final double BLACK_TO_PAR_EXTINCTION = 1.118;

    /**
     * Light on a leaf at which its stomata are half out of their dark state, umol/m2/s. Assumed; it
     * joins night and day without a jump.
     */
    static final double WAKING_UMOL_PER_M2_S = 10;

    /** The same as absorbed by one face, W/m2: 10 umol/m2/s / 4.57 umol/J x 0.9 / 2; derived. */
    static final double WAKING_W_PER_M2 = 1;

    /** Cover at which the initial stage ends, 0-1; FAO-56 (Allen et al. 1998), ch. 6. */
    static final double INITIAL_COVER_FRAC = 0.1;

    /** Effective full cover, 0-1; FAO-56 (Allen et al. 1998), ch. 6, 0.7 to 0.8, from memory. */
    static final double FULL_COVER_FRAC = 0.8;

    /**
     * Difference of leaf and air that drives free convection at the leaf, K. Well-watered leaves
     * lie within 2 K of the air under any lamp (Nelson and Bugbee 2015, PLoS ONE 10:e0138930);
     * taken as 1.5 K, for the leaf's own temperature is not solved for.
     */
    static final double LEAF_OFF_AIR_K = 1.5;

    /**
     * Bounds beyond which Stanghellini's parabola of temperature is held level, degC. Assumed: a
     * glasshouse's range; followed to 40 degC it would shut the leaf six-fold and let a hot tray's
     * thirst be missed.
     */
    static final double COLDEST_FITTED_C = 15;

    /** See {@link #COLDEST_FITTED_C}. */
    static final double HOTTEST_FITTED_C = 32;

    /** Abscissae and weights of Gauss and Legendre's five points on 0 to 1; handbook. */
    private static final double[] NODE = {
        0.04691007703066800, 0.23076534494715845, 0.5, 0.76923465505284155, 0.95308992296933200
    };

    private static final double[] WEIGHT = {
        0.11846344252809454,
        0.23931433524968324,
        0.28444444444444444,
        0.23931433524968324,
        0.11846344252809454
    };

    private Transpiration() {}

    /**
     * The same in air of other carbon dioxide than 400 ppm.
     *
     * @param openFrac what the resistance of lit stomata is multiplied by, see {@link
     *     CarbonDioxide#resistanceFrac}
     */
    public static double canopyKgPerM2S(
            CropTraits.Stomata stomata,
            double extinction,
            double lai,
            double parWPerM2,
            double ppfdUmolPerM2S,
            double nearInfraredWPerM2,
            double netLongWaveWPerM2,
            double airTempC,
            double vapourPressurePa,
            double airPressurePa,
            double airSpeedMPerS,
            double openFrac) {
        if (!(lai > 0)) {
            return 0;
        }
        double deficitPa = Math.max(0, HumidAir.saturationPressurePa(airTempC) - vapourPressurePa);
        double slope = HumidAir.saturationSlopePaPerK(airTempC);
        double gamma = HumidAir.psychrometricPaPerK(airPressurePa, airTempC);
        double heatCapacity =
                HumidAir.densityKgPerM3(airTempC, vapourPressurePa, airPressurePa)
                        * HumidAir.SPECIFIC_HEAT_J_PER_KG_K;
        double heatSPerM =
                LeafBoundaryLayer.heatBothSidesSPerM(
                        airSpeedMPerS,
                        stomata.leafSizeM(),
                        LEAF_OFF_AIR_K,
                        airTempC,
                        vapourPressurePa,
                        airPressurePa);
        double layerSPerM =
                LeafBoundaryLayer.vapourFromHeatSPerM(
                        heatSPerM, airTempC, vapourPressurePa, airPressurePa);
        double closing = closing(stomata, airTempC, deficitPa);
        double latent = HumidAir.latentHeatJPerKg(airTempC);

        if (ppfdUmolPerM2S <= 0
                && parWPerM2 <= 0
                && nearInfraredWPerM2 <= 0
                && netLongWaveWPerM2 == 0) {
            // Every leaf is alike in the dark.
            double vapourSPerM = layerSPerM + leafStomataSPerM(stomata, 0, 0, closing, openFrac);
            return lai
                    * Math.max(
                            0,
                            penmanMonteithWPerM2(
                                    0,
                                    deficitPa,
                                    slope,
                                    gamma,
                                    heatCapacity,
                                    heatSPerM,
                                    vapourSPerM))
                    / latent;
        }
        double nirExtinction = NEAR_INFRARED_TO_PAR_EXTINCTION * extinction;
        double blackExtinction = BLACK_TO_PAR_EXTINCTION * extinction;
        double sum = 0;
        for (int i = 0; i < NODE.length; i++) {
            double depth = NODE[i] * lai;
            double lightShare = extinction * Elementary.exp(-extinction * depth);
            double shortWave =
                    (1 - PAR_REFLECTED_FRAC) * parWPerM2 * lightShare
                            + (1 - NEAR_INFRARED_REFLECTED_FRAC)
                                    * nearInfraredWPerM2
                                    * nirExtinction
                                    * Elementary.exp(-nirExtinction * depth);
            double longWave =
                    netLongWaveWPerM2 == 0
                            ? 0
                            : netLongWaveWPerM2
                                    * blackExtinction
                                    * Elementary.exp(-blackExtinction * depth);
            double vapourSPerM =
                    layerSPerM
                            + leafStomataSPerM(
                                    stomata,
                                    ppfdUmolPerM2S * lightShare,
                                    shortWave / 2,
                                    closing,
                                    openFrac);
            sum +=
                    WEIGHT[i]
                            * Math.max(
                                    0,
                                    penmanMonteithWPerM2(
                                            shortWave + longWave,
                                            deficitPa,
                                            slope,
                                            gamma,
                                            heatCapacity,
                                            heatSPerM,
                                            vapourSPerM));
        }
        return lai * sum / latent;
    }

    /**
     * What multiplies a leaf's resistance whatever its light: temperature and humidity, or 1 for
     * the form that knows neither.
     */
    private static double closing(CropTraits.Stomata stomata, double leafTempC, double deficitPa) {
        return stomata instanceof CropTraits.Stomata.LightTemperatureHumidity
                ? temperatureFactor(leafTempC) * humidityFactor(deficitPa)
                : 1;
    }

    /**
     * Resistance of a leaf's stomata per one-sided leaf area, both faces in parallel, s/m.
     *
     * @param ppfdUmolPerM2S light on the leaf, umol/m2/s
     * @param absorbedPerFaceWPerM2 short-wave radiation absorbed, shared by two faces, W/m2
     * @param closing as of {@link #closing}
     * @param openFrac what carbon dioxide multiplies the lit resistance by
     */
    private static double leafStomataSPerM(
            CropTraits.Stomata stomata,
            double ppfdUmolPerM2S,
            double absorbedPerFaceWPerM2,
            double closing,
            double openFrac) {
        if (stomata instanceof CropTraits.Stomata.LightHyperbola light) {
            double open =
                    1
                            / openFrac
                            / lightHyperbolaSPerM(
                                    light.leastSPerM(),
                                    light.aUmol(),
                                    light.bUmol(),
                                    ppfdUmolPerM2S);
            double dark = 1 / light.darkSPerM();
            double awake = ppfdUmolPerM2S / (ppfdUmolPerM2S + WAKING_UMOL_PER_M2_S);
            return 1 / (dark + (open - dark) * awake);
        }
        if (stomata instanceof CropTraits.Stomata.LightTemperatureHumidity tomato) {
            double open =
                    2
                            / (tomato.leastSPerM()
                                    * lightFactor(absorbedPerFaceWPerM2)
                                    * closing
                                    * openFrac);
            double dark = 2 / (tomato.darkSPerM() * closing);
            double awake = absorbedPerFaceWPerM2 / (absorbedPerFaceWPerM2 + WAKING_W_PER_M2);
            return 1 / (dark + (open - dark) * awake);
        }
        throw new AssertionError("no resistance for " + stomata);
    }

    /**
     * Stomatal resistance of indoor lettuce: least (a + I) / (b + I).
     *
     * <p>Graamans et al. (2017), Agric. Syst. 153, with least 60 s/m, a 1500 and b 200 umol/m2/s.
     *
     * @param ppfdUmolPerM2S I, umol/m2/s, at least 0
     * @return s/m
     */
    public static double lightHyperbolaSPerM(
            double leastSPerM, double aUmol, double bUmol, double ppfdUmolPerM2S) {
        return leastSPerM * (aUmol + ppfdUmolPerM2S) / (bUmol + ppfdUmolPerM2S);
    }

    static double lightFactor(double absorbedPerFaceWPerM2) {
        return (absorbedPerFaceWPerM2 + 4.30) / (absorbedPerFaceWPerM2 + 0.54);
    }

    static double temperatureFactor(double leafTempC) {
        double offC = Math.max(COLDEST_FITTED_C, Math.min(HOTTEST_FITTED_C, leafTempC)) - 24.5;
        return 1 + 2.2593e-2 * offC * offC;
    }

    static double humidityFactor(double deficitPa) {
        return 4 / Math.sqrt(Math.sqrt(1 + 255 * Elementary.exp(-0.5427 * deficitPa / 100)));
    }

    /**
     * Latent heat flux of a wetted or stomatal surface, W/m2.
     *
     * <p>Penman and Monteith's combination equation, Monteith (1965): [s R + c D / rh] / [s + g rv
     * / rh]. Negative when dew would form.
     *
     * @param netWPerM2 R, net radiation of the surface at air temperature, W/m2
     * @param deficitPa D, vapour pressure deficit, Pa
     * @param slopePaPerK s, slope of saturation pressure, Pa/K
     * @param psychrometricPaPerK g, Pa/K
     * @param heatCapacityJPerM3K c, density times specific heat of air, J/m3/K
     * @param heatSPerM rh, resistance to heat, s/m
     * @param vapourSPerM rv, whole resistance to vapour, s/m
     */
    public static double penmanMonteithWPerM2(
            double netWPerM2,
            double deficitPa,
            double slopePaPerK,
            double psychrometricPaPerK,
            double heatCapacityJPerM3K,
            double heatSPerM,
            double vapourSPerM) {
        return (slopePaPerK * netWPerM2 + heatCapacityJPerM3K * deficitPa / heatSPerM)
                / (slopePaPerK + psychrometricPaPerK * vapourSPerM / heatSPerM);
    }

    /**
     * Crop coefficient of the plant's stage, to be multiplied with reference evapotranspiration and
     * with the ground the plants cover ({@link Canopy#coveredGroundM2}), never with the bare deck.
     *
     * <p>FAO-56 (Allen et al. 1998), ch. 6: level, then linear, level, linear. There the early
     * coefficient spreads over a field's whole ground, much of it wet soil; here it stands for the
     * thin crown of a young plant and the deck's own evaporation is reckoned apart (the dual view).
     * A seedling is charged about twice too much by it, while that is still a few grams a day.
     *
     * <p>Stages go by thermal time from emergence to last harvest. Since field stages are far too
     * long for a crop that closes its canopy in weeks, the rise from the first level also follows
     * cover, by FAO-56's own marks (a tenth covered, effective full cover at eight tenths of the
     * plant's spread), whichever is ahead.
     *
     * @return dimensionless; 0 before emergence
     */
    public static double cropCoefficient(CropTraits traits, Plant plant) {
        CropTraits.Stages stages = traits.stages();
        CropTraits.Coefficients kc = traits.coefficients();
        if (plant.thermalTimeCd() < stages.emergenceCd()) {
            return 0;
        }
        double time =
                (plant.thermalTimeCd() - stages.emergenceCd())
                        / (stages.lastHarvestCd() - stages.emergenceCd());
        if (time > kc.midEndsFrac()) {
            return kc.mid() + (kc.end() - kc.mid()) * share(time, kc.midEndsFrac(), 1);
        }
        double spreadM2 = traits.growth().spreadM2();
        double cover = Canopy.coveredGroundM2(traits, plant, spreadM2) / spreadM2;
        double risen =
                Math.max(
                        share(time, kc.initialEndsFrac(), kc.midBeginsFrac()),
                        share(cover, INITIAL_COVER_FRAC, FULL_COVER_FRAC));
        return kc.initial() + (kc.mid() - kc.initial()) * risen;
    }

    private static double share(double x, double from, double to) {
        return Math.max(0, Math.min(1, (x - from) / (to - from)));
    }

    /**
     * Share of thirst left in a salty solution, 0-1: {@link Osmosis#waterFrac} from the threshold
     * of the root solution in soilless culture on; growth falls faster.
     *
     * @param ecMsPerCm EC of the solution at 25 degC or what its salt comes to, mS/cm
     */
    public static double saltFrac(CropTraits traits, double ecMsPerCm) {
        return Osmosis.waterFrac(
                traits.salinity().thresholdMsPerCm(),
                traits.response().saltThirstFallFrac(),
                ecMsPerCm);
    }
}
