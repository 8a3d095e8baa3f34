package tideless.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.sim.Event;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.sim.TraySeason;

/**
 * Growers that do not exist, whose rigs hide what no scenario states. Seeds, noise and how they are
 * judged were written down before the first of them was run, and stay.
 *
 * <p>The rig is that of {@code scenarios/logged-bench.toml}: one reservoir, three trays, somebody
 * there every day. Each grower's is drawn by {@link Unknowns} with all its doubts, the thirst of
 * single weeks and days included, and a reservoir that holds more or less a centimetre than stated.
 * Each keeps a log of fourteen days: the level of the reservoir on three days of a week, the EC of
 * each tray on one, and litres poured. They are judged by the first refill after the log, by how
 * many of the bands of eight tenths hold it, and by the litres drunk in the season; leaks by a
 * second set in which one grower of two has one.
 */
final class SyntheticGrowers {
    /** How many. */
    static final int GROWERS = 200;

    /** Of what they hide. */
    static final long HIDDEN_SEED = 20_261_127;

    /** Of the noise of their ruler, meter and jug. */
    static final long NOISE_SEED = 80_415;

    /** Of those some of whom have a leak. */
    static final long LEAK_SEED = 31_337;

    /** Of those whose leak is as large as their own log says it would show. */
    static final long LIMIT_SEED = 271_828;

    /** How many of these. */
    static final int AT_LIMIT = 60;

    /** Days of log. */
    static final int LOG_DAYS = 14;

    /** Standard deviation of a level, m. */
    static final double RULER_M = 0.002;

    /** Of an EC, of its value. */
    static final double EC_FRAC = 0.03;

    /** Of litres poured, of their value. */
    static final double JUG_FRAC = 0.05;

    /** A date is hit within a day, or this share of the days from the log's end to it. */
    static final double HIT_FRAC = 0.1;

    /** Leaks that are tried, L/day; 0 for none. */
    static final double[] LEAKS_L_PER_DAY = {0, 0.05, 0.1, 0.2, 0.4, 0.8};

    /**
     * Bands are made of as many members as {@code fit} draws if it is not asked for others; of 40
     * the middle wandered and the band was too narrow.
     */
    static final int MEMBERS = 128;

    private static final double L_PER_M3 = 1000;

    private SyntheticGrowers() {}

    /**
     * A grower whose log was fitted.
     *
     * @param leakL hidden, L/day
     * @param lastDay on which the log ends, days since the start
     * @param trueDay of the first refill after the log; infinite for none
     * @param stated the same as stated
     * @param fitted and by the log
     * @param rigsS of which rigs' dates that is
     * @param trueL drunk in the season, L
     * @param statedL as stated
     * @param litres by the log
     * @param leak what the fit says of one
     */
    record Outcome(
            double leakL,
            double lastDay,
            double trueDay,
            Band stated,
            Band fitted,
            List<Double> rigsS,
            double trueL,
            double statedL,
            Band litres,
            Fit.Leak leak) {
        boolean isHitBy(Band band) {
            double borne = Math.max(1, HIT_FRAC * (trueDay - lastDay));
            return Double.isInfinite(trueDay)
                    ? Double.isInfinite(band.middle())
                    : Math.abs(band.middle() / Time.DAY_S - trueDay) <= borne + 1e-9;
        }

        /** Share of the band's own rigs that lie in it: whole days hold more than eight tenths. */
        double ownFrac() {
            return rigsS.stream().filter(s -> s >= fitted.low() && s <= fitted.high()).count()
                    / (double) rigsS.size();
        }

        /** Of the ranks the true date may take among the rigs', the share from 10 to 90 %. */
        double rankShare() {
            double[] days = rigsS.stream().mapToDouble(s -> s / Time.DAY_S).toArray();
            return Growers.rankShare(days, trueDay);
        }

        double fittedL() {
            return litres.middle();
        }

        boolean drinksIn() {
            return trueL >= litres.low() && trueL <= litres.high();
        }

        boolean isIn(Band band) {
            double atS = trueDay * Time.DAY_S;
            return atS >= band.low() - 1e-6 && atS <= band.high() + 1e-6;
        }
    }

    /** One grower of a set. */
    static Outcome run(Scenario stated, double[] quantile, long noise, double leakL, int members)
            throws InterruptedException {
        SplittableRandom random = new SplittableRandom(noise);
        Scenario coarse = Ensemble.atEnsembleStep(stated);
        Member member = Unknowns.of(coarse).member(quantile);
        double litres =
                Math.exp(FitSpace.LITRES_SD * DemandDoubt.deviate(DemandDoubt.unit(random)));
        String name = stated.reservoirs().get(0).name();
        Scenario hidden =
                new Correction(
                                Map.of(),
                                1,
                                1,
                                1,
                                Map.of(),
                                Map.of(name, litres),
                                leakL > 0 ? Map.of(name, leakL / L_PER_M3 / Time.DAY_S) : Map.of(),
                                Map.of())
                        .applied(member.scenario());
        Log log =
                new InventedLog(hidden, member.departures(), LOG_DAYS, random)
                        .log(InventedLog.usual(hidden));
        List<LogEntry> done =
                log.entries().stream().filter(e -> !(e instanceof LogEntry.Reading)).toList();
        List<LogEntry> lived = new ArrayList<>(done);
        lived.add(new LogEntry.Looked(log.lastS()));
        Scenario truth = hidden.withLog(new Log(lived));
        Season season =
                Simulation.season(truth, Surroundings.forSeasons(truth), member.departures());
        double trueDay =
                season.events().stream()
                        .filter(e -> e.kind() == Event.Kind.REFILL && e.atS() > log.lastS())
                        .mapToDouble(e -> e.atS() / Time.DAY_S)
                        .findFirst()
                        .orElse(Double.POSITIVE_INFINITY);
        Fit fit = Fit.of(stated.withLog(log), members, 1, new InTurn()).orElseThrow();
        Fit.Dated refill =
                fit.dates().stream()
                        .filter(d -> d.kind() == Event.Kind.REFILL)
                        .findFirst()
                        .orElseThrow();
        double trueL = L_PER_M3 * season.trays().stream().mapToDouble(TraySeason::drunkM3).sum();
        return new Outcome(
                leakL,
                log.lastS() / Time.DAY_S,
                trueDay,
                refill.statedS(),
                refill.correctedS(),
                refill.rigsS(),
                trueL,
                fit.drunkL().stated().middle(),
                fit.drunkL().corrected(),
                fit.leaks().get(0));
    }

    /** The first growers of the set whose dates are judged. */
    static List<Outcome> dated(int growers, Workers workers) throws InterruptedException {
        Scenario stated = LoggedBench.stated();
        double[][] hidden =
                Unknowns.of(Ensemble.atEnsembleStep(stated)).quantiles(growers, HIDDEN_SEED);
        long[] noise = new SplittableRandom(NOISE_SEED).longs(growers).toArray();
        return workers.each(growers, i -> uninterrupted(stated, hidden[i], noise[i], 0, MEMBERS));
    }

    /** The first growers of the set whose leaks are judged: every other has one. */
    static List<Outcome> leaking(int growers, Workers workers) throws InterruptedException {
        Scenario stated = LoggedBench.stated();
        double[][] hidden =
                Unknowns.of(Ensemble.atEnsembleStep(stated)).quantiles(growers, LEAK_SEED);
        long[] noise = new SplittableRandom(LEAK_SEED).longs(growers).toArray();
        return workers.each(
                growers,
                i -> {
                    double leak =
                            i % 2 == 0
                                    ? 0
                                    : LEAKS_L_PER_DAY[1 + i / 2 % (LEAKS_L_PER_DAY.length - 1)];
                    return uninterrupted(stated, hidden[i], noise[i], leak, 1);
                });
    }

    /** Growers each with a leak just as large as their log without one says would be shown. */
    static List<Outcome> atLimit(Workers workers) throws InterruptedException {
        Scenario stated = LoggedBench.stated();
        double[][] hidden =
                Unknowns.of(Ensemble.atEnsembleStep(stated)).quantiles(AT_LIMIT, LIMIT_SEED);
        long[] noise = new SplittableRandom(LIMIT_SEED).longs(AT_LIMIT).toArray();
        return workers.each(
                AT_LIMIT,
                i -> {
                    double limit =
                            uninterrupted(stated, hidden[i], noise[i], 0, 1).leak().shownFromL();
                    return uninterrupted(stated, hidden[i], noise[i], limit, 1);
                });
    }

    private static Outcome uninterrupted(
            Scenario stated, double[] quantile, long noise, double leak, int members) {
        try {
            return run(stated, quantile, noise, leak, members);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
