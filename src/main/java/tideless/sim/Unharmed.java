package tideless.sim;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.UnaryOperator;
import tideless.crop.CropTraits;
import tideless.crop.Growing;
import tideless.crop.Plant;
import tideless.physics.Elementary;

/**
 * The plant that the same light, air and hands would have given in a root zone that harms nothing,
 * and what each stress took of its growth. Scratch space of one crop.
 */
final class Unharmed {
    /** A stress that leaves less counts as if it left so much, 0-1; chosen. */
    private static final double LEAST_FRAC = 0.01;

    private final CropTraits traits;
    private final double[] taken = new double[Stress.values().length];
    private Plant plant;
    private double pickedG;
    private double readyDays = Double.NaN;

    Unharmed(CropTraits traits, Plant plant) {
        this.traits = traits;
        this.plant = plant;
    }

    Plant plant() {
        return plant;
    }

    double freshG() {
        return Growing.freshG(traits, plant);
    }

    /** A day has ended: what the roots' day left of its growth, 0-1, by what took the rest. */
    void leave(Stress stress, double frac, double gainG) {
        if (frac < 1) {
            taken[stress.ordinal()] -= gainG * Elementary.log(Math.max(LEAST_FRAC, frac));
        }
    }

    /** Grows it by a day; returns by how much, dry, g. */
    double grow(UnaryOperator<Plant> later) {
        double before = plant.dryG();
        plant = later.apply(plant);
        return plant.dryG() - before;
    }

    /** It came to its weight, d after it was set out. */
    void readyAfter(double days) {
        if (Double.isNaN(readyDays)) {
            readyDays = days;
        }
    }

    /** Leaves are picked from it as from the other. */
    void pickLeaves(double groundPerPlantM2, double shareFrac) {
        Growing.Picking picked = Growing.pickLeaves(traits, plant, groundPerPlantM2, shareFrac);
        plant = picked.left();
        pickedG += picked.freshG();
    }

    /** Its tip is taken as the other's. */
    void top() {
        plant = plant.topped();
    }

    /**
     * What was lost so far.
     *
     * @param own the plant as it is
     * @param ownPickedG fresh leaves taken from it, g
     * @param ownReadyDays when it came to its weight, d after it was set out; NaN where it did not
     * @param notSetFrac share of its fruit that did not set for heat, 0-1
     */
    GrowthLost lost(Plant own, double ownPickedG, double ownReadyDays, double notSetFrac) {
        double sum = 0;
        for (double each : taken) {
            sum += each;
        }
        Map<Stress, Double> shares = new EnumMap<>(Stress.class);
        for (Stress stress : Stress.values()) {
            if (sum > 0) {
                shares.put(stress, taken[stress.ordinal()] / sum);
            }
        }
        double fruitG = Growing.fruitFreshG(traits, plant);
        return fruitG > 0
                ? new GrowthLost(
                        Growing.fruitFreshG(traits, own), fruitG, shares, 0, Double.NaN, notSetFrac)
                : new GrowthLost(
                        Growing.freshG(traits, own) + ownPickedG,
                        Growing.freshG(traits, plant) + pickedG,
                        shares,
                        ownReadyDays > readyDays ? ownReadyDays - readyDays : 0,
                        readyDays,
                        notSetFrac);
    }
}
