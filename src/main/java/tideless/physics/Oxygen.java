package tideless.physics;

/** Oxygen dissolved in water under moist air. */
public final class Oxygen {
    private static final double PA_PER_ATM = 101_325; // by definition

    private Oxygen() {}

    /**
     * Oxygen in water at rest with water-saturated air.
     *
     * <p>Benson and Krause (1984), Limnol. Oceanogr. 29, 620-632, with the pressure factor of the
     * standard methods (constants second hand; table values agree with EN 25814 to its digits). The
     * salt term is that of sea water; for a nutrient solution it is below 1 % whatever the ions.
     *
     * @param tempC degC, 0 to 40
     * @param salinityGPerKg 0 to 40
     * @param airPressurePa 50 000 to 110 000
     * @return mg/L
     */
    public static double saturationMgPerL(
            double tempC, double salinityGPerKg, double airPressurePa) {
        double inverse = 1 / (tempC + 273.15);
        double log =
                -139.34411
                        + inverse
                                * (1.575701e5
                                        + inverse
                                                * (-6.642308e7
                                                        + inverse
                                                                * (1.243800e10
                                                                        - inverse * 8.621949e11)))
                        - salinityGPerKg * (0.017674 + inverse * (-10.754 + inverse * 2140.7));
        double atOneAtm = Elementary.exp(log);
        double pressureAtm = airPressurePa / PA_PER_ATM;
        double vapourAtm = Elementary.exp(11.8571 + inverse * (-3840.70 - inverse * 216_961));
        double theta = 0.000975 + tempC * (-1.426e-5 + tempC * 6.436e-8);
        return atOneAtm
                * (pressureAtm - vapourAtm)
                * (1 - theta * pressureAtm)
                / ((1 - vapourAtm) * (1 - theta));
    }
}
