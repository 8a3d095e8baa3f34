package tideless.rig;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What hands do to a stand that stands on: on stated days, each at the midnight that begins its
 * day, and leaf by leaf as it grows.
 *
 * @param acts in order of their days
 * @param picking how a leaf crop is picked from the day on it is ready; empty where it is cut once,
 *     or picked on stated days
 */
public record Tending(List<Act> acts, Optional<Picking> picking) {
    /** Nothing but planting and harvest. */
    public static final Tending NONE = new Tending(List.of(), Optional.empty());

    public Tending {
        acts = List.copyOf(acts);
        Objects.requireNonNull(picking, "picking");
    }

    /**
     * Leaves are taken off every plant again and again, at visits, from the one on at which the
     * crop is ready.
     *
     * @param everyDays least days from one picking to the next, d, at least 1
     * @param shareFrac share of the standing leaf, with its stalks, 0-1
     */
    public record Picking(int everyDays, double shareFrac) {
        public Picking {
            if (everyDays < 1) {
                throw new IllegalArgumentException(
                        "everyDays must be at least 1, was " + everyDays);
            }
        }
    }

    /** One of them. */
    public sealed interface Act {
        /** Days after the crop is set out, at least 1. */
        int day();
    }

    /**
     * Leaves are taken off every plant and the rest stands on.
     *
     * @param day days after the crop is set out
     * @param shareFrac share of the standing leaf, with its stalks in a leaf crop, 0-1
     */
    public record LeafPicking(int day, double shareFrac) implements Act {}

    /**
     * Plants are taken out; those that stay have the ground of all.
     *
     * @param day days after the crop is set out
     * @param plants how many stay
     */
    public record Thinning(int day, int plants) implements Act {}

    /**
     * The same plants are given other ground.
     *
     * @param day days after the crop is set out
     * @param groundM2 floor the canopy may spread over from then on, m2
     */
    public record Spacing(int day, double groundM2) implements Act {}

    /**
     * The growing points are taken out: no new leaf, no new flower.
     *
     * @param day days after the crop is set out
     */
    public record Topping(int day) implements Act {}

    /** Whether leaves are picked at any time. */
    public boolean picksLeaves() {
        if (picking.isPresent()) {
            return true;
        }
        for (Act act : acts) {
            if (act instanceof LeafPicking) {
                return true;
            }
        }
        return false;
    }

    /**
     * Plants and their ground as they stand in the end, thinned and spaced apart.
     *
     * @param groundM2 of all of them, m2
     */
    public record Stand(int plants, double groundM2) {}

    /** What it makes of a stand. */
    public Stand madeOf(Stand first) {
        Stand stand = first;
        for (Act act : acts) {
            if (act instanceof Thinning thinning) {
                stand = new Stand(Math.min(stand.plants, thinning.plants()), stand.groundM2);
            } else if (act instanceof Spacing spacing) {
                stand = new Stand(stand.plants, spacing.groundM2());
            }
        }
        return stand;
    }

    /** The most ground it ever gives, m2; 0 where it gives none. */
    public double mostGroundM2() {
        double most = 0;
        for (Act act : acts) {
            if (act instanceof Spacing spacing) {
                most = Math.max(most, spacing.groundM2());
            }
        }
        return most;
    }
}
