package tideless.crop;

/** How much leaf a plant holds over how much ground, and the light it stops. */
public final class Canopy {
    /**
     * Leaf area per crown ground of a small plant that nothing crowds, m2/m2. Assumed: the few
     * leaves of a seedling hardly shade each other, so the crown they span is about twice their
     * area.
     */
    static final double OPEN_CROWN_LEAF_AREA_INDEX = 0.5;

    private Canopy() {}

    /** Leaf area of one plant, one side, m2. Leaves that were picked off count as long as grown. */
    public static double leafAreaM2(CropTraits traits, Plant plant) {
        return traits.growth().leafAreaM2PerKg() * plant.leafDryG() / 1000;
    }

    /**
     * Ground under one plant's crown.
     *
     * <p>A small plant spans {@link #OPEN_CROWN_LEAF_AREA_INDEX} m2 of leaf per m2 of crown; the
     * crown nears its bound S, the lesser of its own spread and its share of the ground, as S (1 -
     * exp(-A / (0.5 S))), A being its leaf area. The form (cover saturating exponentially with leaf
     * area) is that of field crops' canopy cover, e.g. Raes et al. (2009), Agron. J. 101:438-447,
     * from memory; the 0.5 is assumed.
     *
     * @param groundPerPlantM2 ground there is for each plant, m2, above 0
     * @return m2, at most {@code groundPerPlantM2} and the crop's {@code spreadM2}; 0 without leaf
     */
    public static double coveredGroundM2(CropTraits traits, Plant plant, double groundPerPlantM2) {
        double boundM2 = Math.min(groundPerPlantM2, traits.growth().spreadM2());
        double openM2 = leafAreaM2(traits, plant) / OPEN_CROWN_LEAF_AREA_INDEX;
        return boundM2 * -Math.expm1(-openM2 / boundM2);
    }

    /**
     * Leaf area per ground under the crown, m2/m2, at most the crop's {@code leafAreaIndexMax}; 0
     * without leaf.
     */
    public static double leafAreaIndex(CropTraits traits, Plant plant, double groundPerPlantM2) {
        double areaM2 = leafAreaM2(traits, plant);
        if (!(areaM2 > 0)) {
            return 0;
        }
        return Math.min(
                traits.growth().leafAreaIndexMax(),
                areaM2 / coveredGroundM2(traits, plant, groundPerPlantM2));
    }

    /**
     * Share of the light over the crown that it stops, 0-1: 1 - exp(-k L).
     *
     * <p>Monsi and Saeki (1953), as used by Monteith (1977), Phil. Trans. R. Soc. B 281:277-294.
     *
     * @param extinction k for that light, dimensionless
     * @param leafAreaIndex L, m2/m2
     */
    public static double interceptedFrac(double extinction, double leafAreaIndex) {
        return -Math.expm1(-extinction * leafAreaIndex);
    }
}
