package tideless.physics;

/**
 * Evapotranspiration of a reference crop, Penman-Monteith.
 *
 * <p>Water is counted as 1 mm = 1 kg/m2, as the papers do. Fluxes of heat come in as W/m2: 1
 * MJ/m2/d is 11.574 W/m2, 1 MJ/m2/h is 277.78 W/m2.
 */
public final class ReferenceEvapotranspiration {
    /** Surface resistance of the reference crop, s/m; FAO-56 (Allen et al. 1998), box 5. */
    public static final double SURFACE_RESISTANCE_S_PER_M = 70;

    /**
     * Aerodynamic resistance for houses and rooms, s/m; Fernandez et al. (2010), Irrigation Science
     * 28, 497-509 (abstract), among the best of their methods in unheated plastic houses.
     */
    public static final double HOUSE_RESISTANCE_S_PER_M = 150;

    /**
     * Leaf area index of the reference grass: 24 x 0.12 m of height; FAO-56 (Allen et al. 1998),
     * box 5.
     */
    public static final double REFERENCE_LEAF_AREA_INDEX = 24 * 0.12;

    /**
     * Air speed that stirs as much as free convection does at a leaf 1-2 K off the air, m/s.
     * Derived from plate correlations (0.664 Re^1/2 Pr^1/3 against the mean of 0.54 and 0.27
     * Ra^1/4) at 5-10 cm.
     */
    private static final double STILL_AIR_M_PER_S = 0.03;

    static final double MJ_PER_HOUR = 0.0036; // of 1 W, by definition

    private ReferenceEvapotranspiration() {}

    /**
     * Reference evapotranspiration of an hour; may come out slightly negative at night.
     *
     * <p>FAO-56 (Allen et al. 1998), eq. 53.
     *
     * @param tempC mean of the hour, degC
     * @param vapourPressurePa Pa
     * @param windAt2MMPerS m/s
     * @param netRadiationWPerM2 mean of the hour, W/m2
     * @param soilHeatWPerM2 mean of the hour, W/m2; see {@link #faoHourlySoilHeatWPerM2}
     * @param airPressurePa Pa
     * @return mm/h
     */
    public static double faoHourlyMmPerHour(
            double tempC,
            double vapourPressurePa,
            double windAt2MMPerS,
            double netRadiationWPerM2,
            double soilHeatWPerM2,
            double airPressurePa) {
        return standardizedMm(
                37,
                0.34,
                tempC,
                HumidAir.vapourPressureDeficitPa(tempC, vapourPressurePa),
                windAt2MMPerS,
                MJ_PER_HOUR * (netRadiationWPerM2 - soilHeatWPerM2),
                airPressurePa);
    }

    /**
     * Heat into the soil under grass in an hour: 0.1 of the net radiation by day, 0.5 by night.
     *
     * <p>FAO-56 (Allen et al. 1998), eqs. 45 and 46; night is where the net radiation is negative.
     *
     * @param netRadiationWPerM2 W/m2
     * @return W/m2
     */
    public static double faoHourlySoilHeatWPerM2(double netRadiationWPerM2) {
        return (netRadiationWPerM2 < 0 ? 0.5 : 0.1) * netRadiationWPerM2;
    }

    /**
     * Reference evapotranspiration in a house or room, where the wind at 2 m means nothing: the
     * equation of Penman and Monteith with the reference crop's surface resistance of 70 s/m and a
     * given aerodynamic resistance. No heat goes into a soil.
     *
     * <p>FAO-56 (Allen et al. 1998), eq. 3; Fernandez et al. (2010) for {@link
     * #HOUSE_RESISTANCE_S_PER_M}.
     *
     * @param netRadiationWPerM2 W/m2 of floor
     * @param airTempC degC
     * @param vapourPressurePa Pa
     * @param aerodynamicResistanceSPerM s/m
     * @param airPressurePa Pa
     * @return kg/m2/s; negative when dew would form
     */
    public static double indoorKgPerM2S(
            double netRadiationWPerM2,
            double airTempC,
            double vapourPressurePa,
            double aerodynamicResistanceSPerM,
            double airPressurePa) {
        return penmanMonteithKgPerM2S(
                netRadiationWPerM2,
                airTempC,
                vapourPressurePa,
                aerodynamicResistanceSPerM,
                SURFACE_RESISTANCE_S_PER_M,
                airPressurePa);
    }

    /**
     * Aerodynamic resistance of a reference stand in a room, by the room's own air speed: {@link
     * LeafBoundaryLayer#canopySPerM} with the reference's leaf area index, for {@link
     * #indoorKgPerM2S}.
     *
     * <p>Form as used for plants in rooms by Graamans et al. (2017), Agricultural Systems 153
     * (second hand). Air that stands still counts as 0.03 m/s.
     *
     * @param airSpeedMPerS m/s, 0 allowed
     * @param leafLengthM of the crop, m
     * @return s/m of floor
     */
    public static double roomResistanceSPerM(double airSpeedMPerS, double leafLengthM) {
        return LeafBoundaryLayer.canopySPerM(
                Math.sqrt(airSpeedMPerS * airSpeedMPerS + STILL_AIR_M_PER_S * STILL_AIR_M_PER_S),
                leafLengthM,
                REFERENCE_LEAF_AREA_INDEX);
    }

    /**
     * The equation of Penman and Monteith as it stands.
     *
     * <p>Monteith (1965) as FAO-56 (Allen et al. 1998), eq. 3.
     *
     * @param netRadiationWPerM2 less what goes into storage, W/m2
     * @param airTempC degC
     * @param vapourPressurePa Pa
     * @param aerodynamicResistanceSPerM to heat and vapour, s/m
     * @param surfaceResistanceSPerM to vapour, s/m
     * @param airPressurePa Pa
     * @return kg/m2/s; negative when dew would form
     */
    public static double penmanMonteithKgPerM2S(
            double netRadiationWPerM2,
            double airTempC,
            double vapourPressurePa,
            double aerodynamicResistanceSPerM,
            double surfaceResistanceSPerM,
            double airPressurePa) {
        double saturation = HumidAir.saturationPressurePa(airTempC);
        double base = airTempC + 237.3;
        double slope = 4098 * saturation / (base * base); // eq. 13, without a second exponential
        double latentHeat = HumidAir.latentHeatJPerKg(airTempC);
        double psychrometric =
                HumidAir.SPECIFIC_HEAT_J_PER_KG_K
                        * airPressurePa
                        / (HumidAir.MOLAR_MASS_RATIO * latentHeat);
        double capacity =
                HumidAir.SPECIFIC_HEAT_J_PER_KG_K
                        * HumidAir.densityKgPerM3(airTempC, vapourPressurePa, airPressurePa);
        double heat =
                (slope * netRadiationWPerM2
                                + capacity
                                        * (saturation - vapourPressurePa)
                                        / aerodynamicResistanceSPerM)
                        / (slope
                                + psychrometric
                                        * (1
                                                + surfaceResistanceSPerM
                                                        / aerodynamicResistanceSPerM));
        return heat / latentHeat;
    }

    /** The shared form; the papers' units (kPa, MJ/m2 per step) stay inside. */
    static double standardizedMm(
            double numerator,
            double denominator,
            double tempC,
            double deficitPa,
            double windAt2MMPerS,
            double availableMjPerM2,
            double airPressurePa) {
        double slopeKPaPerK = 1e-3 * HumidAir.saturationSlopePaPerK(tempC);
        double psychrometricKPaPerK = 0.665e-6 * airPressurePa;
        return (0.408 * slopeKPaPerK * availableMjPerM2
                        + psychrometricKPaPerK
                                * numerator
                                / (tempC + 273)
                                * windAt2MMPerS
                                * 1e-3
                                * deficitPa)
                / (slopeKPaPerK + psychrometricKPaPerK * (1 + denominator * windAt2MMPerS));
    }
}
