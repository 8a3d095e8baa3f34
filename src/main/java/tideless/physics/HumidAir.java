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
        return 610.8 * Elementary.exp(17.27 * tempC / (tempC + 237.3));
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
        return saturationSlopePaPerK(tempC, saturationPressurePa(tempC));
    }

    /**
     * {@link #saturationSlopePaPerK(double)} for callers that know the saturation pressure already.
     *
     * @param tempC temperature, degC
     * @param saturationPa {@link #saturationPressurePa} at it, Pa
     * @return Pa/K
     */
    public static double saturationSlopePaPerK(double tempC, double saturationPa) {
        double base = tempC + 237.3;
        return 4098 * saturationPa / (base * base);
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
        return 101_300 * Elementary.pow((293 - 0.0065 * altitudeM) / 293, 5.26);
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

    /**
     * Vapour pressure of air of a known relative humidity.
     *
     * @param tempC degC
     * @param humidityFrac relative humidity over liquid water, 0-1
     * @return Pa
     */
    public static double vapourPressurePa(double tempC, double humidityFrac) {
        return humidityFrac * saturationPressurePa(tempC);
    }

    /**
     * Vapour pressure deficit of the air: how much more it could hold. Negative when the air is
     * given more vapour than it can hold.
     *
     * @param tempC degC; the leaf's temperature gives the deficit between leaf and air
     * @param vapourPressurePa of the air, Pa
     * @return Pa
     */
    public static double vapourPressureDeficitPa(double tempC, double vapourPressurePa) {
        return saturationPressurePa(tempC) - vapourPressurePa;
    }

    /**
     * Heat capacity of moist air per volume, rho cp.
     *
     * <p>Ideal gas with 1006 J/kg/K for dry air and 1860 J/kg/K for vapour (handbook values, from
     * memory).
     *
     * @param tempC degC
     * @param vapourPressurePa Pa
     * @param airPressurePa whole pressure, Pa
     * @return J/m3/K
     */
    public static double heatCapacityJPerM3K(
            double tempC, double vapourPressurePa, double airPressurePa) {
        double tempK = tempC + 273.15;
        return 1006 * (airPressurePa - vapourPressurePa) / (GAS_CONSTANT_DRY_J_PER_KG_K * tempK)
                + 1860 * vapourPressurePa / (GAS_CONSTANT_VAPOUR_J_PER_KG_K * tempK);
    }

    /**
     * Density of the vapour alone, ideal gas.
     *
     * @param tempC degC
     * @param vapourPressurePa Pa
     * @return kg/m3
     */
    public static double vapourDensityKgPerM3(double tempC, double vapourPressurePa) {
        return vapourPressurePa / (GAS_CONSTANT_VAPOUR_J_PER_KG_K * (tempC + 273.15));
    }

    /**
     * Diffusivity of water vapour in air.
     *
     * <p>Campbell and Norman (1998), An Introduction to Environmental Biophysics: 21.2 (1 + 0.0071
     * t) mm2/s at 101.3 kPa, from memory; falls with pressure.
     *
     * @param tempC degC, 0 to 50
     * @param airPressurePa Pa
     * @return m2/s
     */
    public static double vapourDiffusivityM2PerS(double tempC, double airPressurePa) {
        return 21.2e-6 * (1 + 0.0071 * tempC) * (101_325 / airPressurePa);
    }

    /**
     * Dynamic viscosity of dry air.
     *
     * <p>Sutherland's law with 1.716e-5 Pa s at 273.15 K and 110.4 K (White, Viscous Fluid Flow,
     * table 1-2; from memory). Vapour changes it by less than 1 %.
     *
     * @param tempC degC, 0 to 50
     * @return Pa s
     */
    public static double viscosityPaS(double tempC) {
        double tempK = tempC + 273.15;
        // 1.458e-6 sqrt(T) / (1 + 110.4/T) is the same law with its constant gathered.
        return 1.458e-6 * Math.sqrt(tempK) / (1 + 110.4 / tempK);
    }

    /**
     * Kinematic viscosity of moist air.
     *
     * @param tempC degC, 0 to 50
     * @param vapourPressurePa Pa
     * @param airPressurePa Pa
     * @return m2/s
     */
    public static double kinematicViscosityM2PerS(
            double tempC, double vapourPressurePa, double airPressurePa) {
        return viscosityPaS(tempC) / densityKgPerM3(tempC, vapourPressurePa, airPressurePa);
    }

    /**
     * Heat conductivity of dry air.
     *
     * <p>Straight line through 0.0249 at 10 degC and 0.0263 at 30 degC, W/m/K (handbook values from
     * memory, +-1 %).
     *
     * @param tempC degC, 0 to 50
     * @return W/m/K
     */
    public static double conductivityWPerMK(double tempC) {
        return 0.0242 + 7.0e-5 * tempC;
    }

    /**
     * Diffusivity of heat in moist air: conductivity over heat capacity.
     *
     * @param tempC degC, 0 to 50
     * @param vapourPressurePa Pa
     * @param airPressurePa Pa
     * @return m2/s
     */
    public static double heatDiffusivityM2PerS(
            double tempC, double vapourPressurePa, double airPressurePa) {
        return conductivityWPerMK(tempC)
                / heatCapacityJPerM3K(tempC, vapourPressurePa, airPressurePa);
    }
}
