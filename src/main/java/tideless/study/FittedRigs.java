package tideless.study;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import tideless.rig.Scenario;
import tideless.sim.Season;
import tideless.sim.Surroundings;

/** Rigs that yours might be by all that is doubted before a log, and by what is left of it. */
final class FittedRigs {
    /** Of what the log says too little to narrow it. */
    private static final Set<Unknown.Kind> OPEN =
            Set.of(
                    Unknown.Kind.DAYS,
                    Unknown.Kind.VISITS,
                    Unknown.Kind.WARMTH,
                    Unknown.Kind.LEAF,
                    Unknown.Kind.ROOTS);

    /** Of these, what was drunk by in the log. */
    private static final Set<Unknown.Kind> CONSIDERED =
            Set.of(Unknown.Kind.WARMTH, Unknown.Kind.LEAF);

    /** Steps by which a drawn rig is led to what was read. */
    private static final int BENDS = 2;

    private final LoggedReadings readings;
    private final Scenario coarse;
    private final long seed;

    FittedRigs(LoggedReadings readings, long seed) {
        this.readings = readings;
        this.seed = seed;
        coarse = readings.coarse();
    }

    /** A rig drawn from the doubt before the log, and one from what is left of it. */
    record Pair(Season stated, Season corrected) {}

    /**
     * Runs them: as many as are run before an interruption, but one at least.
     *
     * @param other what the log says as well, where it does not tell which: every other rig is
     *     drawn from it
     */
    List<Pair> pairs(Found found, Optional<Found> other, int members) throws InterruptedException {
        IntFunction<Season> stated = asStated(members);
        IntFunction<Season> one = asCorrected(found, members);
        IntFunction<Season> two = other.map(o -> asCorrected(o, members)).orElse(one);
        IntFunction<Pair> pair = i -> new Pair(stated.apply(i), (i % 2 == 0 ? one : two).apply(i));
        List<Pair> pairs = Kept.each(readings.workers(), members, pair);
        return pairs.isEmpty() ? List.of(pair.apply(0)) : pairs;
    }

    private IntFunction<Season> asStated(int members) {
        Unknowns unknowns = Unknowns.of(coarse);
        double[][] quantiles = unknowns.quantiles(members, seed);
        Surroundings around = Surroundings.forSeasons(coarse);
        return i -> unknowns.member(quantiles[i]).season(around);
    }

    /**
     * Rigs drawn from what is left of the doubt; days, weeks to come, visits, warmth, leaf and
     * roots, of which the log says little, as before. What is drunk of more leaf or in warmer air
     * was read along: whoever has these has thirst and growth that are otherwise by as much ({@link
     * Posterior#shift}).
     */
    private IntFunction<Season> asCorrected(Found found, int members) {
        FitSpace space = found.space();
        Posterior posterior = found.posterior();
        Surroundings around = Surroundings.forSeasons(coarse);
        double[][] drawn = UnitSample.of(members, Math.max(1, space.size()), seed + 1);
        double[][] quantiles = Unknowns.of(coarse).only(OPEN).quantiles(members, seed);
        return i -> {
            double[] normal = Arrays.stream(drawn[i]).map(DemandDoubt::deviate).toArray();
            double[] drawnPoint = posterior.draw(normal);
            double[] point = drawnPoint;
            for (int step = 0; step < BENDS; step++) {
                double[] read = considered(space, point, quantiles[i]);
                point = posterior.bent(drawnPoint, point, readings.offs(read));
            }
            Scenario rig = space.at(point).applied(coarse);
            Member member = Unknowns.of(rig).only(OPEN).afterLog().member(quantiles[i]);
            return new Member(member.scenario(), member.departures().times(space.departures(point)))
                    .season(around);
        };
    }

    /** What a rig that is warmer or has more leaf would have been read at. */
    private double[] considered(FitSpace space, double[] point, double[] quantiles) {
        return readings.read(
                space,
                point,
                correction -> {
                    Unknowns of = Unknowns.of(correction.applied(readings.logged())).only(OPEN);
                    double[] quantile = quantiles.clone();
                    for (int u = 0; u < quantile.length; u++) {
                        if (!CONSIDERED.contains(of.list().get(u).kind())) {
                            quantile[u] = 0.5;
                        }
                    }
                    return readings.season(of.member(quantile).scenario(), space, point);
                });
    }
}
