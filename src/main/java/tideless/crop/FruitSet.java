package tideless.crop;

/**
 * Flowers that set no fruit in hot air, and what that takes of the growth that goes to fruit.
 *
 * <p>Pollen of tomato loses its life in warm days (Sato et al. 2000, Zhang et al. 2008, in Vanthoor
 * 2011, thesis Wageningen: none lost at 28 degC, half at 35, none set at 40). Fruit that was not
 * set draws nothing for as long as it would have grown; the plant puts what is left over into leaf,
 * stem and root (assumed).
 */
public final class FruitSet {
    /**
     * Of the growth of a fruit, after so much of it the mean fruit on the plant stands; the middle,
     * for a plant sets fruit all the time.
     */
    private static final double MEAN_AGE_FRAC = 0.5;

    private FruitSet() {}

    /**
     * Share of the flowers open in such air that set, 0-1.
     *
     * @param airC air of a lit hour, degC
     */
    public static double frac(CropTraits.SetInHeat heat, double airC) {
        if (!(airC > heat.wholeC())) {
            return 1;
        }
        return airC <= heat.halfC()
                ? 1 - 0.5 * (airC - heat.wholeC()) / (heat.halfC() - heat.wholeC())
                : Math.max(0, 0.5 * (heat.noneC() - airC) / (heat.noneC() - heat.halfC()));
    }

    /**
     * The plant as its flowers of a day leave it: what has set of the fruit that grows now follows
     * the days' flowers as the mean fruit's age lags behind them. Before the first flower there is
     * nothing to follow, and the day's share stands.
     *
     * @param dayFrac share of the day's flowers that set, 0-1
     * @param tempC mean of the day's 24 h, degC
     */
    public static Plant after(CropTraits traits, Plant plant, double dayFrac, double tempC) {
        CropTraits.Stages stages = traits.stages();
        if (!stages.fruits()) {
            return plant;
        }
        double pastFrac = 1;
        if (plant.thermalTimeCd() > stages.floweringCd()) {
            double lagCd = MEAN_AGE_FRAC * (stages.firstHarvestCd() - stages.floweringCd());
            double dayCd = Growing.warmthCd(traits, plant.thermalTimeCd(), tempC);
            pastFrac = lagCd > 0 ? Math.min(1, dayCd / lagCd) : 1;
        }
        double then = plant.setFrac() + pastFrac * (dayFrac - plant.setFrac());
        return then == plant.setFrac() ? plant : plant.withSetFrac(then);
    }
}
