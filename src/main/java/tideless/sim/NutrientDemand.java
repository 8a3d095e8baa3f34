package tideless.sim;

import java.util.Arrays;
import tideless.crop.CropTraits;
import tideless.crop.Hunger;
import tideless.crop.Plant;
import tideless.physics.Time;
import tideless.solution.Component;

/**
 * What the plants of a tray ask of each dissolved component, and how far they are from a sufficient
 * content. Scratch space of one run.
 */
final class NutrientDemand {
    private static final int CA = Component.CA.ordinal();
    private static final int MG = Component.MG.ordinal();
    private static final int NO3 = Component.NO3.ordinal();
    private static final int NH4 = Component.NH4.ordinal();

    /**
     * Share of a sufficient content a plant can go without and still grow in full: the lower end of
     * the sufficiency ranges of the crop files lies 15 to 30 % below their middle; rounded.
     */
    private static final double HUNGER_BORNE_FRAC = 0.2;

    /** Share of a sufficient content at which growth ends; assumed, no source. */
    private static final double STARVED_FRAC = 0.4;

    private final CropTraits traits; // null when the water demand was measured
    private int plants;

    /** Short of a sufficient content, all plants together; below 0 what they hold beyond it. */
    private final double[] debtMol = new double[Component.COUNT];

    /** What a sufficient content of all plants comes to. */
    private final double[] heldMol = new double[Component.COUNT];

    /** Kept out by acid while it was asked for; not asked for again. */
    private final double[] forgoneMol = new double[Component.COUNT];

    private final double[] wantedMol = new double[Component.COUNT];

    /** Taken up when there is plenty, mol/s; all nitrogen under nitrate, part of it ammonium. */
    final double[] molPerS = new double[Component.COUNT];

    /** Concentration at which half of that is taken up, mol/m3. */
    final double[] halfMolPerM3 = new double[Component.COUNT];

    /** Share of a component's strength that goes with the water drunk; 0 where demand takes it. */
    final double[] passFrac = new double[Component.COUNT];

    private NutrientDemand(CropTraits traits, int plants) {
        this.traits = traits;
        this.plants = plants;
    }

    /** Of a crop that starts with a sufficient content. */
    static NutrientDemand ofCrop(CropTraits traits, int plants, Plant start) {
        NutrientDemand demand = new NutrientDemand(traits, plants);
        double fruitG = start.fruitDryG();
        Hunger.demandMol(traits, start.dryG() - fruitG, fruitG, demand.heldMol);
        for (int i = 0; i < Component.COUNT; i++) {
            demand.heldMol[i] *= plants;
            demand.halfMolPerM3[i] = Hunger.halfSaturationMolPerM3(traits, i);
        }
        demand.passFrac[Component.NA.ordinal()] = traits.nutrition().sodiumPassFrac();
        demand.passFrac[Component.CL.ordinal()] = traits.nutrition().chloridePassFrac();
        return demand;
    }

    /**
     * A measured water demand comes without one for nutrients: every nutrient goes with the water,
     * at the strength it stands in the tray; sodium, chloride, carbon and the tracer stay. Assumed.
     */
    static NutrientDemand withTheWater() {
        NutrientDemand demand = new NutrientDemand(null, 0);
        for (Component component : Shortage.WATCHED) {
            demand.passFrac[component.ordinal()] = 1;
        }
        demand.passFrac[NH4] = 1;
        return demand;
    }

    /**
     * What is asked of a cation besides, mol/s, so that calcium and magnesium stand in for the
     * potassium that new growth did not get: the charge of all cations in a gram stays nearly the
     * same (Bear and Prince 1945, lucerne, from memory).
     *
     * @param shortMolPerS of potassium
     */
    double forPotassiumMolPerS(int component, double shortMolPerS) {
        double both = molPerS[CA] + molPerS[MG];
        return both > 0 && (component == CA || component == MG)
                ? 0.5 * shortMolPerS * molPerS[component] / both
                : 0;
    }

    /** What new growth alone asks for, without what is owed, mol/s. */
    double freshMolPerS(int component) {
        return Math.min(molPerS[component], wantedMol[component] * plants / Time.DAY_S);
    }

    /** Nothing more is asked for. */
    void end() {
        Arrays.fill(molPerS, 0);
    }

    /** What was taken up of each component, mol; ammonium stands for nitrate. */
    void meet(double[] uptakeMol) {
        for (int i = 0; i < debtMol.length; i++) {
            debtMol[i == NH4 ? NO3 : i] -= uptakeMol[i];
        }
    }

    /** Acid keeps out what was asked for: the plants make do without. */
    void forgo(int component, double mol) {
        forgoneMol[component] += mol;
    }

    /**
     * Leaf-like tissue is taken off each plant, with its share of what the plant holds, lacks and
     * stores.
     *
     * @param dryG dry mass taken off a plant, g
     */
    void pick(double dryG) {
        double[] goneMol = new double[Component.COUNT];
        Hunger.demandMol(traits, dryG, 0, goneMol);
        for (int i = 0; i < goneMol.length; i++) {
            if (heldMol[i] > 0) {
                keep(i, Math.max(0, 1 - goneMol[i] * plants / heldMol[i]));
            }
        }
    }

    /** Plants are taken out with all they hold. */
    void thinTo(int left) {
        for (int i = 0; i < heldMol.length; i++) {
            keep(i, left / (double) plants);
        }
        plants = left;
    }

    private void keep(int component, double frac) {
        heldMol[component] *= frac;
        debtMol[component] *= frac;
        forgoneMol[component] *= frac;
        molPerS[component] *= frac;
    }

    /** Growth left by the content of the whole plant, of its scarcest nutrient, 0-1. */
    double growthFrac() {
        double least = 1;
        for (int i = 0; i < debtMol.length; i++) {
            if (heldMol[i] > 0) {
                least = Math.min(least, 1 - debtMol[i] / heldMol[i]);
            }
        }
        double frac = (least - STARVED_FRAC) / (1 - HUNGER_BORNE_FRAC - STARVED_FRAC);
        return Math.max(0, Math.min(1, frac));
    }

    /**
     * Once a day: the growth that has just ended is fed by what is taken up until the next
     * midnight.
     *
     * @param molPerM3 the solution; null when the tray is dry
     * @param transpirationM3 of all plants over the day, m3
     */
    void renew(Plant before, Plant after, double[] molPerM3, double transpirationM3) {
        double fruitG = after.fruitDryG() - before.fruitDryG();
        double leafLikeG = Math.max(0, after.dryG() - before.dryG() - fruitG);
        Hunger.demandMol(traits, leafLikeG, Math.max(0, fruitG), wantedMol);
        double[] beyondMol = new double[debtMol.length];
        if (molPerM3 != null) {
            Hunger.storeMol(traits, after, molPerM3, beyondMol);
            beyondMol[CA] =
                    Hunger.calciumWithWaterMol(
                            traits,
                            leafLikeG,
                            Math.max(0, fruitG),
                            molPerM3[CA],
                            transpirationM3 / Math.max(1, plants));
        }
        debtMol[CA] = Math.max(0, debtMol[CA]); // does not move within the plant: no store
        for (int i = 0; i < debtMol.length; i++) {
            debtMol[i] += wantedMol[i] * plants;
            heldMol[i] += wantedMol[i] * plants;
            double asked = debtMol[i] - forgoneMol[i] + beyondMol[i] * plants;
            molPerS[i] = Math.max(0, asked) / Time.DAY_S;
        }
    }
}
