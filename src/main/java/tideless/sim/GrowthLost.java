package tideless.sim;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * What its root zone took of one crop: its plant beside the plant that the same light, air and
 * hands would have given in a root zone that harms nothing.
 *
 * <p>What all stresses took together is the difference of the two. A day's growth is the product of
 * what each leaves, so each has a share of it by the logarithm of what it left, weighted by the
 * growth of the plant that nothing harms.
 *
 * <p>A crop that is cut at a weight is compared with the plant that would have been cut at it: what
 * only takes longer is not lost, and counts in days.
 *
 * @param ownG of one plant: of a fruit crop its fruit (of one that bears none yet, the shoot), else
 *     shoot and what was picked, fresh, g
 * @param unharmedG the same of the plant that nothing harms, g
 * @param shares of each stress in the difference, 0-1, together 1 where any took something
 * @param lateDays by how much a head came later to its weight than the plant that nothing harms, d;
 *     0 of what is not cut at a weight, or was not by the end
 * @param readyDays when that plant came to it, d after it was set out; NaN where it did not
 * @param notSetFrac share of the fruit that hot air kept from setting, of either plant, 0-1
 */
public record GrowthLost(
        double ownG,
        double unharmedG,
        Map<Stress, Double> shares,
        double lateDays,
        double readyDays,
        double notSetFrac) {
    public GrowthLost {
        Map<Stress, Double> all = new EnumMap<>(Stress.class);
        all.putAll(shares);
        shares = Collections.unmodifiableMap(all);
    }

    /** Of what is not cut at a weight, and bears no fruit in heat. */
    public GrowthLost(double ownG, double unharmedG, Map<Stress, Double> shares) {
        this(ownG, unharmedG, shares, 0, Double.NaN, 0);
    }

    /** Days that one stress took. */
    public double lateDays(Stress stress) {
        return lateDays * shares.getOrDefault(stress, 0.0);
    }

    /** Share of the unharmed plant that was lost to all stresses, 0-1. */
    public double frac() {
        return unharmedG > 0 ? Math.max(0, 1 - ownG / unharmedG) : 0;
    }

    /** Share of the unharmed plant that was lost to one stress, 0-1. */
    public double frac(Stress stress) {
        return frac() * shares.getOrDefault(stress, 0.0);
    }
}
