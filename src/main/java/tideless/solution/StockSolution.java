package tideless.solution;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Whether something falls out of a concentrate, or of two poured together.
 *
 * <p>Above an ionic strength of 0.5 mol/kg the activity equation is stretched: the sign and the
 * rough amount hold, the second figure does not.
 *
 * @param gypsumIndex log10 of saturation, CaSO4.2H2O
 * @param brushiteIndex log10 of saturation, CaHPO4.2H2O
 * @param gypsumMolPerM3 gypsum that falls out until the rest is just saturated
 * @param ionicStrengthMolPerKg before anything falls out
 */
record StockSolution(
        double gypsumIndex,
        double brushiteIndex,
        double gypsumMolPerM3,
        double ionicStrengthMolPerKg) {
    /** pH taken for a stock that states none; stocks are slightly acid (common practice). */
    public static final double USUAL_PH = 5;

    /** Share of the cold solubility a stock may use; common practice, for salts share ions. */
    public static final double SAFE_SOLUBILITY_FRAC = 0.8;

    /**
     * Looks at a stock.
     *
     * @param composition mol/m3 of the stock
     * @param tempC degC, 0 to 50
     */
    public static StockSolution check(Composition composition, double tempC, double ph) {
        Speciation whole = Speciation.atPh(composition, tempC, ph);
        double gypsum = SaturationIndex.gypsum(whole);
        double falls = 0;
        if (gypsum > 0) {
            double ca = composition.molPerM3(Component.CA);
            double so4 = composition.molPerM3(Component.SO4);
            falls =
                    new BrentSolver(1e-9, 1e-9)
                            .solve(
                                    200,
                                    x -> {
                                        Composition rest =
                                                composition
                                                        .with(Component.CA, ca - x)
                                                        .with(Component.SO4, so4 - x);
                                        return SaturationIndex.gypsum(
                                                Speciation.atPh(rest, tempC, ph));
                                    },
                                    0,
                                    Math.min(ca, so4) * (1 - 1e-9));
        }
        return new StockSolution(
                gypsum, SaturationIndex.brushite(whole), falls, whole.ionicStrengthMolPerKg());
    }

    /** Two stocks poured together in equal volumes. */
    public static StockSolution checkTogether(
            Composition a, Composition b, double tempC, double ph) {
        return check(a.plus(b).times(0.5), tempC, ph);
    }
}
