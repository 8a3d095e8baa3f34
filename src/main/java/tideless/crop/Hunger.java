package tideless.crop;

import tideless.solution.Component;

/** Which nutrients growth asks for. */
public final class Hunger {
    /** Molar mass of nitrogen, g/mol; IUPAC abridged value, from memory. */
    static final double NITROGEN_G_PER_MOL = 14.007;

    /** Molar mass of sulfur, g/mol; IUPAC abridged value, from memory. */
    static final double SULFUR_G_PER_MOL = 32.06;

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
     * <p>All nitrogen stands under {@link Component#NO3}; the caller splits it by the crop's {@code
     * ammoniumShare} and by what there is. Sodium, chloride, carbon and tracer are 0.
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
                (leafKg * leaf.nitrogen() + fruitKg * fruit.nitrogen()) / NITROGEN_G_PER_MOL;
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
        outMolByComponent[SO4] =
                (leafKg * leaf.sulfur() + fruitKg * fruit.sulfur()) / SULFUR_G_PER_MOL;
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
