package tideless.crop;

import org.apache.commons.math3.util.FastMath;
import tideless.physics.Elementary;

/** How much leaf a plant holds over how much ground, and the light it stops. */
public final class Canopy {
    /**
     * Leaf area per crown ground of a small plant that nothing crowds, m2/m2. Assumed: the few
     * leaves of a seedling hardly shade each other, so the crown they span is about twice their
     * area.
     */
    static final double OPEN_CROWN_LEAF_AREA_INDEX = 0.5;

    /**
     * Leaf area per leaf dry mass of a seedling, m2/kg, where the grown crop's is less. Assumed:
     * the top of lettuce's range of 40 to 75 (from memory) for every crop raised from seed; lettuce
     * seedlings then gain 0.2 to 0.35 a day, as fitted growth curves do (from memory).
     */
    static final double SEEDLING_LEAF_AREA_M2_PER_KG = 75;

    /** Leaf dry mass over which a seedling's thin leaves give way to the crop's own, g. Assumed. */
    static final double THIN_LEAF_DRY_G = 2;

    /**
     * Extinction coefficient of leaves that lie flat: sqrt(1 - 0.2), leaf scattering 0.2. Goudriaan
     * (1977), Crop Micrometeorology, from memory. A seedling's few leaves do.
     */
    static final double FLAT_LEAF_EXTINCTION = 0.894;

    /** A plant that starts heavier than this was planted with grown leaves, g. Assumed. */
    static final double SEEDLING_HEAVIEST_G = 0.1;

    /**
     * Daily light for which the crops' leaf area per mass holds, mol/m2/d: that of their nurseries,
     * 16 hours of 200 umol/m2/s, for the sources name none. Tomato's is the mean of a year of Dutch
     * houses, which have about as much (derived). Assumed.
     */
    static final double LEAF_AREA_LIGHT_MOL_PER_M2 = 11.52;

    /**
     * Leaf area per mass goes with daily light to minus this. Leaf mass per area rises threefold
     * from 1 to 50 mol/m2/d over many species (Poorter et al. 2009, New Phytol. 182:565, from
     * memory): 0.28; tomato's leaf area per mass in Dutch houses is 266 + 88 sin(2 pi (day + 68) /
     * 365) cm2/g (Heuvelink 1999, Ann. Bot. 83:413, from memory), a half in July of what it is in
     * January under an eighth of the light: 0.33.
     */
    static final double LEAF_AREA_LIGHT_EXPONENT = 0.3;

    /** Least daily light for which that is followed, mol/m2/d. Assumed. */
    static final double DULLEST_MOL_PER_M2 = 2;

    /** Most daily light for which it is, mol/m2/d: the end of the range of the first source. */
    static final double BRIGHTEST_MOL_PER_M2 = 50;

    private Canopy() {}

    /**
     * Area of a leaf that grows in this light over that of the same mass in the light for which the
     * crops' figures hold.
     *
     * @param lightMolPerM2 photons of 400-700 nm in the day, mol/m2, at least 0
     */
    public static double leafSpreadFrac(double lightMolPerM2) {
        return FastMath.pow(
                Math.max(DULLEST_MOL_PER_M2, Math.min(BRIGHTEST_MOL_PER_M2, lightMolPerM2))
                        / LEAF_AREA_LIGHT_MOL_PER_M2,
                -LEAF_AREA_LIGHT_EXPONENT);
    }

    /**
     * Leaf area of one plant, one side, m2.
     *
     * <p>Dry mass W of all leaf it ever grew times the crop's {@code leafAreaM2PerKg} a, and while
     * it is young (s - a) x W0 (1 - exp(-W / W0)) more, s being a seedling's and W0 2 g; of leaves
     * that were picked off their share by mass is gone (a picking takes young and old alike;
     * assumed). That young leaves are thin is common knowledge (leaf area of young crops outruns
     * their mass, as in the juvenile phase of Spitters and Schapendonk 1990, from memory); s and W0
     * are not from a paper. What grew in dull light is thinner ({@link Plant#leafSpreadFrac}).
     */
    public static double leafAreaM2(CropTraits traits, Plant plant) {
        double grownG = plant.everGrownLeafDryG();
        double areaM2 = plant.leafSpreadFrac() * everGrownAreaM2(traits, grownG);
        return plant.pickedLeafDryG() > 0 ? areaM2 * plant.leafDryG() / grownG : areaM2;
    }

    /** Area of all leaf a plant ever grew, had it grown in the light of nurseries, m2. */
    static double everGrownAreaM2(CropTraits traits, double grownG) {
        CropTraits.Growth growth = traits.growth();
        double areaM2 = growth.leafAreaM2PerKg() * grownG / 1000;
        double thinner = SEEDLING_LEAF_AREA_M2_PER_KG - growth.leafAreaM2PerKg();
        if (thinner > 0 && growth.seedlingDryG() < SEEDLING_HEAVIEST_G) {
            areaM2 +=
                    thinner
                            * (THIN_LEAF_DRY_G / 1000)
                            * -Elementary.expm1(-grownG / THIN_LEAF_DRY_G);
        }
        return areaM2;
    }

    /**
     * Extinction coefficient of the plant's leaves for 400-700 nm: the crop's own, and while it is
     * young nearer that of flat leaves, along with its thin leaves. That seedlings hold their
     * leaves flat is common knowledge; the pace is assumed.
     */
    public static double extinction(CropTraits traits, Plant plant) {
        CropTraits.Growth growth = traits.growth();
        double flatter = FLAT_LEAF_EXTINCTION - growth.extinction();
        return flatter > 0 && growth.seedlingDryG() < SEEDLING_HEAVIEST_G
                ? growth.extinction()
                        + flatter * Elementary.exp(-plant.everGrownLeafDryG() / THIN_LEAF_DRY_G)
                : growth.extinction();
    }

    /**
     * Leaf dry mass at which {@link #leafAreaM2} is this, g: its inverse, by halving, for it rises
     * with mass throughout.
     */
    static double leafDryG(CropTraits traits, double leafAreaM2) {
        double low = 0;
        double high = 1000 * leafAreaM2 / traits.growth().leafAreaM2PerKg();
        for (int i = 0; i < 60; i++) {
            double mid = 0.5 * (low + high);
            Plant plant = new Plant(0, mid, 0, 0, 0, 0);
            if (leafAreaM2(traits, plant) < leafAreaM2) {
                low = mid;
            } else {
                high = mid;
            }
        }
        return high;
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
        double boundM2 = boundGroundM2(traits, groundPerPlantM2);
        double openM2 = leafAreaM2(traits, plant) / OPEN_CROWN_LEAF_AREA_INDEX;
        return boundM2 * -Elementary.expm1(-openM2 / boundM2);
    }

    /**
     * Ground a plant may come to cover, m2: its share of the ground, at most its own spread.
     *
     * @param groundPerPlantM2 ground there is for each plant, m2, above 0
     */
    public static double boundGroundM2(CropTraits traits, double groundPerPlantM2) {
        return Math.min(groundPerPlantM2, traits.growth().spreadM2());
    }

    /**
     * Leaf area per ground the plant may cover, spread evenly over it, m2/m2; at most the crop's
     * {@code leafAreaIndexMax}.
     */
    public static double standLeafAreaIndex(
            CropTraits traits, Plant plant, double groundPerPlantM2) {
        return Math.min(
                traits.growth().leafAreaIndexMax(),
                leafAreaM2(traits, plant) / boundGroundM2(traits, groundPerPlantM2));
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
        return -Elementary.expm1(-extinction * leafAreaIndex);
    }
}
