package tideless.sim;

import tideless.physics.HumidAir;
import tideless.physics.Time;
import tideless.rig.Cover;

/**
 * The air under a glass or film cover in steady balance with the weather outside, per floor area.
 *
 * <p>Heat: (1 - latent) absorbed sun + heating = (heat loss + air exchange) (inside - outside).
 * Vapour: latent sun / latent heat = air exchange (inside - outside vapour density). The vents open
 * in proportion over 4 K above their setting. A steady single-zone balance is the usual first model
 * of a glasshouse (Seginer and others; written here from memory); the share of absorbed sun that
 * leaves as vapour is assumed, so that the air does not depend on the crop that stands in it.
 */
final class CoveredAir {
    /**
     * Share of transmitted sun that the inside absorbs; FAO-56 (1998) grass albedo 0.23, rounded.
     */
    private static final double ABSORBED_FRAC = 0.8;

    /** Share of the absorbed sun that leaves as vapour; assumed, no source. */
    private static final double LATENT_FRAC = 0.5;

    /** Vents go from shut to wide open over this rise, K; common practice, no source. */
    private static final double VENT_BAND_K = 4;

    /** Greatest relative humidity: beyond it the cover condenses the rest; common practice. */
    private static final double MOST_HUMID_FRAC = 0.95;

    private CoveredAir() {}

    /**
     * Inside temperature, degC.
     *
     * @param outsideC outside air, degC
     * @param globalWPerM2 outside global radiation, W/m2
     * @param cover the house
     * @param airPressurePa Pa
     */
    static double tempC(double outsideC, double globalWPerM2, Cover cover, double airPressurePa) {
        double sensible = (1 - LATENT_FRAC) * absorbedWPerM2(globalWPerM2, cover);
        double perChange = heatPerChangeWPerM2K(outsideC, cover, airPressurePa);
        double shut = cover.heatLossWPerM2K() + perChange * cover.ventsShutPerH();
        double open = cover.heatLossWPerM2K() + perChange * cover.ventsOpenPerH();
        double inside = outsideC + sensible / shut;
        if (inside > cover.ventsFromC()) {
            inside = outsideC + sensible / open;
            if (inside < cover.ventsFromC() + VENT_BAND_K) {
                inside = throttled(outsideC, sensible, shut, open, cover.ventsFromC());
            }
        }
        return Math.max(inside, cover.heatedToC());
    }

    // (shut + slope (y - from)) (y - outside) = sensible, with y the inside temperature.
    private static double throttled(
            double outsideC, double sensible, double shut, double open, double fromC) {
        double slope = (open - shut) / VENT_BAND_K;
        double b = shut + slope * (outsideC - fromC); // conductance if inside were outside
        double rise = (-b + Math.sqrt(b * b + 4 * slope * sensible)) / (2 * slope);
        return outsideC + rise;
    }

    /**
     * Inside vapour pressure, Pa.
     *
     * @param insideC as {@link #tempC} gives it
     * @param outsideC outside air, degC
     * @param outsideVapourPa outside vapour pressure, Pa
     */
    static double vapourPa(
            double insideC,
            double outsideC,
            double outsideVapourPa,
            double globalWPerM2,
            Cover cover) {
        double openFrac = Math.min(1, Math.max(0, (insideC - cover.ventsFromC()) / VENT_BAND_K));
        double changesPerH =
                cover.ventsShutPerH() + openFrac * (cover.ventsOpenPerH() - cover.ventsShutPerH());
        double kgPerM2S =
                LATENT_FRAC
                        * absorbedWPerM2(globalWPerM2, cover)
                        / HumidAir.latentHeatJPerKg(insideC);
        double exchangeMPerS = changesPerH * cover.meanHeightM() / Time.HOUR_S;
        double outsideDensity =
                outsideVapourPa / (HumidAir.GAS_CONSTANT_VAPOUR_J_PER_KG_K * (outsideC + 273.15));
        // By night a shut house gains nothing: what is inside came from outside.
        double gained = kgPerM2S > 0 ? kgPerM2S / exchangeMPerS : 0;
        double density = outsideDensity + gained;
        double pressure = density * HumidAir.GAS_CONSTANT_VAPOUR_J_PER_KG_K * (insideC + 273.15);
        return Math.min(pressure, MOST_HUMID_FRAC * HumidAir.saturationPressurePa(insideC));
    }

    private static double absorbedWPerM2(double globalWPerM2, Cover cover) {
        return ABSORBED_FRAC * cover.transmissionFrac() * globalWPerM2;
    }

    private static double heatPerChangeWPerM2K(double outsideC, Cover cover, double airPressurePa) {
        return HumidAir.densityKgPerM3(outsideC, 0, airPressurePa)
                * HumidAir.SPECIFIC_HEAT_J_PER_KG_K
                * cover.meanHeightM()
                / Time.HOUR_S;
    }
}
