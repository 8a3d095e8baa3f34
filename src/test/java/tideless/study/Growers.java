package tideless.study;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.NormalDistribution;
import tideless.rig.Scenario;
import tideless.sim.Departures;
import tideless.sim.Event;
import tideless.sim.Surroundings;
import tideless.sim.Wider;

/**
 * Made-up growers whose truth is drawn from the spreads the program believes in, or from wider
 * ones, each held against the band it would have been shown.
 */
final class Growers {
    static final int EACH = 60;
    static final long SEED = 20261127;
    static final int MEMBERS = 100;
    static final long MEMBERS_SEED = 1;

    /** 95 % interval of a binomial count of 300 at 0.8. */
    static final double LEAST_FRAC = 226 / 300.0;

    static final double MOST_FRAC = 253 / 300.0;

    private static final NormalDistribution NORMAL = new NormalDistribution();

    private Growers() {}

    /** What is judged. */
    enum Figure {
        FIRST_REFILL,
        FIRST_HARVEST,
        LITRES
    }

    /**
     * How many growers a band holds.
     *
     * @param growers how many there are
     * @param inBand of those, whose truth lies from its low to its high end, both included
     * @param byRank sum of their shares of the ranks from 10 to 90 %
     */
    record Held(int growers, int inBand, double byRank) {
        Held and(Held other) {
            return new Held(growers + other.growers, inBand + other.inBand, byRank + other.byRank);
        }

        double bandFrac() {
            return inBand / (double) growers;
        }

        double rankFrac() {
            return byRank / growers;
        }
    }

    /**
     * Draws growers of a scenario and holds them against its forecast.
     *
     * @param times how many times as wide as believed the truth is spread
     */
    static Map<Figure, Held> of(
            Scenario given, int growers, SplittableRandom random, double times, Workers workers)
            throws InterruptedException {
        Scenario scenario = Ensemble.atEnsembleStep(given);
        Unknowns unknowns = Unknowns.of(scenario);
        Surroundings shared = Surroundings.forSeasons(scenario);
        double[][] believed = unknowns.quantiles(MEMBERS, MEMBERS_SEED);
        double[][] truths = new double[growers][unknowns.list().size()];
        for (double[] truth : truths) {
            for (int i = 0; i < truth.length; i++) {
                double quantile = DemandDoubt.unit(random);
                Unknown.Kind kind = unknowns.list().get(i).kind();
                boolean isSeed = kind == Unknown.Kind.DAYS || kind == Unknown.Kind.VISITS;
                truth[i] = isSeed || times == 1 ? quantile : wider(quantile, times);
            }
        }
        List<double[]> forecast =
                workers.each(MEMBERS, i -> figures(scenario, unknowns.member(believed[i]), shared));
        List<double[]> came =
                workers.each(
                        growers,
                        i -> figures(scenario, wider(unknowns.member(truths[i]), times), shared));
        Map<Figure, Held> held = new EnumMap<>(Figure.class);
        for (Figure figure : Figure.values()) {
            int f = figure.ordinal();
            double[] members = forecast.stream().mapToDouble(m -> m[f]).toArray();
            double[] truth = came.stream().mapToDouble(m -> m[f]).toArray();
            held.put(figure, held(members, truth));
        }
        return held;
    }

    private static double wider(double quantile, double times) {
        double far =
                NORMAL.cumulativeProbability(times * NORMAL.inverseCumulativeProbability(quantile));
        return Math.max(0x1p-40, Math.min(1 - 0x1p-40, far));
    }

    private static Member wider(Member member, double times) {
        Scenario rig = member.scenario();
        Departures of = member.departures();
        return times == 1
                ? member
                : new Member(rig, Wider.than(of, rig.trays().size(), rig.days(), times));
    }

    private static double[] figures(Scenario scenario, Member member, Surroundings shared) {
        Fate fate = Fate.of(scenario, member.season(shared));
        double refillS = Double.POSITIVE_INFINITY;
        double harvestS = Double.POSITIVE_INFINITY;
        for (var event : fate.dated().entrySet()) {
            Event.Kind kind = event.getKey().kind();
            if (kind == Event.Kind.REFILL || kind == Event.Kind.TOP_UP) {
                refillS = Math.min(refillS, event.getValue().atS());
            } else if (kind == Event.Kind.HARVEST || kind == Event.Kind.FIRST_RIPE) {
                harvestS = Math.min(harvestS, event.getValue().atS());
            }
        }
        return new double[] {refillS, harvestS, 1000 * fate.feedM3()};
    }

    static Held held(double[] members, double[] truths) {
        Band band = Band.of(members);
        int in = 0;
        double byRank = 0;
        for (double truth : truths) {
            in += truth >= band.low() && truth <= band.high() ? 1 : 0;
            byRank += rankShare(members, truth);
        }
        return new Held(truths.length, in, byRank);
    }

    /** Of the ranks a figure may take among the members, the share from 10 to 90 %. */
    static double rankShare(double[] members, double truth) {
        int less = 0;
        int same = 0;
        for (double member : members) {
            less += member < truth ? 1 : 0;
            same += member == truth ? 1 : 0;
        }
        double from = less / (members.length + 1.0);
        double to = (less + same + 1) / (members.length + 1.0);
        return Math.max(0, Math.min(to, 0.9) - Math.max(from, 0.1)) / (to - from);
    }

    /** The five scenarios the growers stand by. */
    static List<String> scenarios() {
        return List.of(
                "calm-bench",
                "science-room-bench",
                "outgrown-trough",
                "hand-topped-bucket",
                "glasshouse-tomato-trough");
    }
}
