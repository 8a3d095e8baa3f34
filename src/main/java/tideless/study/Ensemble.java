package tideless.study;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Function;
import tideless.physics.Time;
import tideless.rig.Numerics;
import tideless.rig.Scenario;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;

/**
 * Many seasons of one scenario, each of a rig drawn a little differently.
 *
 * <p>Clock and air are worked out once and shared. Every member has a seed of its own, drawn before
 * any member runs, and its result has a place of its own: the results are the same to the last bit
 * on any number of threads, and a larger ensemble begins with the smaller one.
 */
public final class Ensemble {
    /**
     * Step that serves an ensemble, s: against ten minutes it shifts the hour a reservoir is empty
     * by some minutes (docs/validation-engine.md) and takes a fifth of the time. What is noticed at
     * the end of a step (stranded, drowned, wilted roots) is noticed up to as much later. Weather
     * is stepped through by the hour all the same.
     */
    public static final double STEP_S = 3 * Time.HOUR_S;

    private Ensemble() {}

    /** Draws one member. */
    public interface Draw {
        /**
         * Draws one.
         *
         * @param scenario the one all members come from
         * @param random this member's own; nothing else may be random
         * @return a scenario in the same surroundings, see {@link Surroundings#suit}
         */
        Scenario member(Scenario scenario, SplittableRandom random);
    }

    /** The scenario at the step of an ensemble, or at its own where that is longer. */
    public static Scenario atEnsembleStep(Scenario scenario) {
        double stepS = Math.max(STEP_S, scenario.numerics().stepS());
        return scenario.withNumerics(new Numerics(stepS));
    }

    /**
     * Runs an ensemble.
     *
     * @param scenario as it is to be run, its step included
     * @param draw how members differ; may be called from several threads
     * @param members how many, at least 1
     * @param seed of all that is drawn
     * @param workers who run the members
     * @param keep what is kept of each season; may be called from several threads
     * @return what was kept, by member
     * @throws InterruptedException when the workers are interrupted; nothing is kept then
     */
    public static <R> List<R> of(
            Scenario scenario,
            Draw draw,
            int members,
            long seed,
            Workers workers,
            Function<Season, R> keep)
            throws InterruptedException {
        if (members < 1) {
            throw new IllegalArgumentException("members must be at least 1, were " + members);
        }
        Surroundings surroundings = Surroundings.forSeasons(scenario);
        long[] seeds = new SplittableRandom(seed).longs(members).toArray();
        return workers.each(
                members,
                i -> {
                    Scenario member = draw.member(scenario, new SplittableRandom(seeds[i]));
                    return keep.apply(Simulation.season(member, surroundings));
                });
    }
}
