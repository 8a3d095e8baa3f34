package tideless.physics;

/** Moist air near one atmosphere. */
public final class HumidAir {
    /** Ratio of the molar masses of water and dry air; FAO-56 (Allen et al. 1998), eq. 8. */
    public static final double MOLAR_MASS_RATIO = 0.622;

    /** Specific heat of moist air, J/kg/K; FAO-56 (Allen et al. 1998), eq. 8. */
    public static final double SPECIFIC_HEAT_J_PER_KG_K = 1013;

    /** Gas constant of dry air, J/kg/K; physical constant, from memory. */
    public static final double GAS_CONSTANT_DRY_J_PER_KG_K = 287.055;

    /** Gas constant of water vapour, J/kg/K; physical constant, from memory. */
    public static final double GAS_CONSTANT_VAPOUR_J_PER_KG_K = 461.52;

    private HumidAir() {}

    /**
     * Saturation vapour pressure over liquid water.
     *
     * <p>Tetens form; Allen et al. (1998), FAO Irrigation and Drainage Paper 56, eq. 11 (there in
     * kPa). Within 0.15 % of the steam-table values from 5 to 45 degC.
     *
     * @param tempC temperature, degC, 0 to 50; below 0 it follows supercooled water
     * @return Pa
     */
    public static double saturationPressurePa(double tempC) {
        return 610.8 * Math.exp(17.27 * tempC / (tempC + 237.3));
    }

    /**
     * Slope of {@link #saturationPressurePa}.
     *
     * <p>FAO-56 (Allen et al. 1998), eq. 13.
     *
     * @param tempC temperature, degC
     * @return Pa/K
     */
    public static double saturationSlopePaPerK(double tempC) {
        double base = tempC + 237.3;
        return 4098 * saturationPressurePa(tempC) / (base * base);
    }

    /**
     * Latent heat of vaporisation.
     *
     * <p>Linear form of Harrison (1963), as FAO-56 annex 3, eq. 3-1.
     *
     * @param tempC temperature, degC, 0 to 50
     * @return J/kg
     */
    public static double latentHeatJPerKg(double tempC) {
        return 2.501e6 - 2361 * tempC;
    }

    /**
     * Psychrometric constant with the latent heat at the stated temperature.
     *
     * <p>FAO-56 (Allen et al. 1998), eq. 8, without the fixed latent heat of 2.45 MJ/kg.
     *
     * @param airPressurePa Pa
     * @param tempC degC
     * @return Pa/K
     */
    public static double psychrometricPaPerK(double airPressurePa, double tempC) {
        return SPECIFIC_HEAT_J_PER_KG_K
                * airPressurePa
                / (MOLAR_MASS_RATIO * latentHeatJPerKg(tempC));
    }

    /**
     * Air pressure at a height.
     *
     * <p>FAO-56 (Allen et al. 1998), eq. 7.
     *
     * @param altitudeM above sea level, m
     * @return Pa
     */
    public static double pressurePa(double altitudeM) {
        return 101_300 * Math.pow((293 - 0.0065 * altitudeM) / 293, 5.26);
    }

    /**
     * Density of moist air, ideal gas.
     *
     * @param tempC degC
     * @param vapourPressurePa Pa
     * @param airPressurePa whole pressure, Pa
     * @return kg/m3
     */
    public static double densityKgPerM3(
            double tempC, double vapourPressurePa, double airPressurePa) {
        double tempK = tempC + 273.15;
        return (airPressurePa - vapourPressurePa) / (GAS_CONSTANT_DRY_J_PER_KG_K * tempK)
                + vapourPressurePa / (GAS_CONSTANT_VAPOUR_J_PER_KG_K * tempK);
    }
}
