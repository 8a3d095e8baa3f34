package tideless.crop;

import tideless.solution.Component;
import tideless.solution.MolarMass;

/** Which nutrients growth asks for. */
public final class Hunger {
    private static final int NO3 = Component.NO3.ordinal();
    private static final int NH4 = Component.NH4.ordinal();
    private static final int P = Component.P.ordinal();
    private static final int K = Component.K.ordinal();
    private static final int CA = Component.CA.ordinal();
    private static final int MG = Component.MG.ordinal();
    private static final int SO4 = Component.SO4.ordinal();

    private Hunger() {}

    /**
     * What new tissue holds, as amounts of each {@link Component}: growth times content.
     *
     * <p>All nitrogen stands under {@link Component#NO3}; the caller splits it by what there is.
     * Sodium, chloride, carbon and tracer are 0.
     *
     * @param dryGrowthLeafLikeG new dry mass of leaf, stem and root, g
     * @param dryGrowthFruitG new dry mass of fruit, g
     * @param outMolByComponent filled with mol, one place a component
     */
    public static void demandMol(
            CropTraits traits,
            double dryGrowthLeafLikeG,
            double dryGrowthFruitG,
            double[] outMolByComponent) {
        CropTraits.Contents leaf = traits.nutrition().leaf();
        CropTraits.Contents fruit = traits.nutrition().fruit();
        double leafKg = dryGrowthLeafLikeG / 1000;
        double fruitKg = dryGrowthFruitG / 1000;
        for (int i = 0; i < outMolByComponent.length; i++) {
            outMolByComponent[i] = 0;
        }
        outMolByComponent[NO3] =
                (leafKg * leaf.nitrogen() + fruitKg * fruit.nitrogen()) / MolarMass.N;
        outMolByComponent[P] =
                (leafKg * leaf.phosphorus() + fruitKg * fruit.phosphorus())
                        / Component.P.gramsPerMol();
        outMolByComponent[K] =
                (leafKg * leaf.potassium() + fruitKg * fruit.potassium())
                        / Component.K.gramsPerMol();
        outMolByComponent[CA] =
                (leafKg * leaf.calcium() + fruitKg * fruit.calcium()) / Component.CA.gramsPerMol();
        outMolByComponent[MG] =
                (leafKg * leaf.magnesium() + fruitKg * fruit.magnesium())
                        / Component.MG.gramsPerMol();
        outMolByComponent[SO4] = (leafKg * leaf.sulfur() + fruitKg * fruit.sulfur()) / MolarMass.S;
    }

    /**
     * Concentration at which luxury uptake of phosphate is half, mol/m3: low-affinity transport,
     * 0.05 to 0.3 mmol/L, from memory; rounded middle taken.
     */
    static final double LUXURY_HALF_PHOSPHATE_MOL_PER_M3 = 0.2;

    /**
     * Likewise for potassium: the second mechanism of Epstein, Rains and Elzam (1963), barley, 16
     * mmol/L, from memory.
     */
    static final double LUXURY_HALF_POTASSIUM_MOL_PER_M3 = 16;

    /**
     * Calcium that comes in with a litre drunk, as a share of what a litre of the solution holds:
     * it moves with the transpiration stream (mass flow), past the root's barrier in part. Assumed,
     * no source.
     */
    static final double CALCIUM_WITH_WATER_FRAC = 0.5;

    /**
     * Phosphate and potassium a plant holds beyond need when it has had plenty: its tissue fills
     * from the sufficient content towards the greatest plausible one as the solution is richer, by
     * Michaelis and Menten's law of low affinity. It lives on this when the solution is empty.
     *
     * @param molPerM3 the solution, one place a component
     * @param outMolByComponent filled with mol a plant, one place a component; others 0
     */
    public static void storeMol(
            CropTraits traits, Plant plant, double[] molPerM3, double[] outMolByComponent) {
        CropTraits.Nutrition n = traits.nutrition();
        double fruitKg = plant.fruitDryG() / 1000;
        double leafKg = plant.dryG() / 1000 - fruitKg;
        for (int i = 0; i < outMolByComponent.length; i++) {
            outMolByComponent[i] = 0;
        }
        outMolByComponent[P] =
                (leafKg * (n.leafMost().phosphorus() - n.leaf().phosphorus())
                                + fruitKg * (n.fruitMost().phosphorus() - n.fruit().phosphorus()))
                        / Component.P.gramsPerMol()
                        * molPerM3[P]
                        / (LUXURY_HALF_PHOSPHATE_MOL_PER_M3 + molPerM3[P]);
        outMolByComponent[K] =
                (leafKg * (n.leafMost().potassium() - n.leaf().potassium())
                                + fruitKg * (n.fruitMost().potassium() - n.fruit().potassium()))
                        / Component.K.gramsPerMol()
                        * molPerM3[K]
                        / (LUXURY_HALF_POTASSIUM_MOL_PER_M3 + molPerM3[K]);
    }

    /**
     * Calcium that comes in with the water beyond need, mol: what is drunk brings it along until
     * the new tissue holds the greatest plausible content. It does not move within the plant, so it
     * is no store.
     *
     * @param dryGrowthLeafLikeG as in {@link #demandMol}
     * @param dryGrowthFruitG likewise
     * @param calciumMolPerM3 in the solution
     * @param drunkM3 water drunk over the same growth, m3
     */
    public static double calciumWithWaterMol(
            CropTraits traits,
            double dryGrowthLeafLikeG,
            double dryGrowthFruitG,
            double calciumMolPerM3,
            double drunkM3) {
        CropTraits.Nutrition n = traits.nutrition();
        double molPerMg = 1e-3 / Component.CA.gramsPerMol();
        double needed =
                molPerMg
                        * (dryGrowthLeafLikeG * n.leaf().calcium()
                                + dryGrowthFruitG * n.fruit().calcium());
        double most =
                molPerMg
                        * (dryGrowthLeafLikeG * n.leafMost().calcium()
                                + dryGrowthFruitG * n.fruitMost().calcium());
        double brought = CALCIUM_WITH_WATER_FRAC * calciumMolPerM3 * drunkM3;
        return Math.max(0, Math.min(brought, most) - needed);
    }

    /**
     * Concentration at which uptake of a component is half of what the plant would take, mol/m3;
     * infinite for those it does not take by hunger, so that c / (half + c) is 0.
     */
    public static double halfSaturationMolPerM3(CropTraits traits, int componentIndex) {
        CropTraits.Nutrition nutrition = traits.nutrition();
        if (componentIndex == NO3) {
            return nutrition.halfNitrateMolPerM3();
        }
        if (componentIndex == NH4) {
            return nutrition.halfAmmoniumMolPerM3();
        }
        if (componentIndex == P) {
            return nutrition.halfPhosphateMolPerM3();
        }
        if (componentIndex == K) {
            return nutrition.halfPotassiumMolPerM3();
        }
        if (componentIndex == CA) {
            return nutrition.halfCalciumMolPerM3();
        }
        if (componentIndex == MG) {
            return nutrition.halfMagnesiumMolPerM3();
        }
        return componentIndex == SO4 ? nutrition.halfSulfateMolPerM3() : Double.POSITIVE_INFINITY;
    }
}
