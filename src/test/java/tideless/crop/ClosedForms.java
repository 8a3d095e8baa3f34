package tideless.crop;

import tideless.solution.Component;
import tideless.solution.MolarMass;

/** Forms of the literature that no run asks for; what runs is held against them. */
public final class ClosedForms {
    private ClosedForms() {}

    /**
     * Base left by the uptake of nitrogen and all that goes with it, mol charge per mol of N: twice
     * the neutral share less twice the share taken as ammonium. Negative for acid.
     *
     * @param neutralFrac share of ammonium at which the pH stays, 0-1
     * @param ammoniumFrac share taken, 0-1
     */
    public static double basePerNitrogen(double neutralFrac, double ammoniumFrac) {
        return 2 * (neutralFrac - ammoniumFrac);
    }

    /**
     * Share of ammonium at which uptake by content leaves the pH alone: half of what nitrogen as
     * nitrate and the other anions carry more than the cations do, per nitrogen.
     *
     * @param contents of dry mass
     */
    public static double neutralFrac(CropTraits.Contents contents) {
        double n = contents.nitrogen() / MolarMass.N;
        double anions =
                n
                        + contents.phosphorus() / Component.P.gramsPerMol()
                        + 2 * contents.sulfur() / MolarMass.S;
        double cations =
                contents.potassium() / Component.K.gramsPerMol()
                        + 2 * contents.calcium() / Component.CA.gramsPerMol()
                        + 2 * contents.magnesium() / Component.MG.gramsPerMol();
        return (anions - cations) / (2 * n);
    }

    /**
     * Transpiration of a canopy per ground it covers.
     *
     * <p>Penman and Monteith's equation for a leaf, summed over the depth of the canopy: leaf at
     * depth l (leaf area above it per ground) meets k I exp(-k l) of the light, so its stomata and
     * its radiation are its own and leaf area enters once only. Both faces of the leaf exchange
     * heat and vapour. The canopy's air is the room's air (no resistance above the leaves), leaf
     * temperature enters the stomata as the air's, and the deck's reflection is left out. Dew is
     * not modelled: leaf that would gather it counts 0.
     *
     * <p>Rises with light, deficit and leaf area. One exception lies in the published humidity
     * response of {@link CropTraits.Stomata.LightTemperatureHumidity}: above 400 umol/m2/s on thin
     * canopies in heat or cold it can close faster than the air dries, by a quarter at worst in
     * full sun; at 25 degC on a closed canopy never.
     *
     * @param stomata the crop's
     * @param extinction of the canopy for 400-700 nm light, dimensionless
     * @param lai leaf area per covered ground, m2/m2
     * @param parWPerM2 400-700 nm power above the canopy, W/m2, at least 0
     * @param ppfdUmolPerM2S the same as photons, umol/m2/s, at least 0
     * @param nearInfraredWPerM2 700-3000 nm power above the canopy, W/m2, at least 0
     * @param netLongWaveWPerM2 net long-wave gain of a surface at air temperature, W/m2; negative
     *     under a clear sky, about 0 in a room
     * @param airTempC at the leaves, degC
     * @param vapourPressurePa of the air, Pa
     * @param airPressurePa whole pressure, Pa
     * @param airSpeedMPerS at the leaves, m/s
     * @return kg/m2/s, never negative; 0 without leaf
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
            double airSpeedMPerS) {
        return Transpiration.canopyKgPerM2S(
                stomata,
                extinction,
                lai,
                parWPerM2,
                ppfdUmolPerM2S,
                nearInfraredWPerM2,
                netLongWaveWPerM2,
                airTempC,
                vapourPressurePa,
                airPressurePa,
                airSpeedMPerS,
                1);
    }

    /**
     * Internal resistance of tomato per leaf face: least resistance times factors of light,
     * temperature, carbon dioxide and humidity.
     *
     * <p>Stanghellini (1987), thesis Wageningen, pp. 37 and 87, as coded by Koerner and Holst
     * (2013).
     *
     * @param leastSPerM 82 s/m for tomato
     * @param absorbedPerFaceWPerM2 short-wave radiation absorbed over twice the leaf area, W/m2
     * @param leafTempC degC; outside 15 to 32 its factor stays at the bound's
     * @param co2Ppm umol/mol; no effect below 3 W/m2, so the resistance jumps there unless it is
     *     200
     * @param deficitPa vapour pressure deficit, Pa
     * @return s/m
     */
    public static double stanghelliniSPerM(
            double leastSPerM,
            double absorbedPerFaceWPerM2,
            double leafTempC,
            double co2Ppm,
            double deficitPa) {
        double co2 =
                absorbedPerFaceWPerM2 < 3
                        ? 1
                        : Math.min(1 + 6.08e-7 * (co2Ppm - 200) * (co2Ppm - 200), 1.49);
        return leastSPerM
                * Transpiration.lightFactor(absorbedPerFaceWPerM2)
                * Transpiration.temperatureFactor(leafTempC)
                * co2
                * Transpiration.humidityFactor(deficitPa);
    }
}
