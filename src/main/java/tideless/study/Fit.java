package tideless.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntFunction;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.sim.Trace;
import tideless.sim.TraySeason;

/**
 * What a grower's log says of their own rig and plants, and what it makes of the dates.
 *
 * @param scenario as stated, with its log
 * @param correction what it is corrected by
 * @param learned of each thing that was doubted, in a fixed order
 * @param leaks of each reservoir whose levels were read
 * @param readings those that something is learned from, in order of time
 * @param idle those that nothing is learned from, with what was foretold of them
 * @param tied pairs of things the log does not tell apart
 * @param next readings that would narrow the next dates most, the best first
 * @param dates the next of each kind after the log's end
 * @param drunkL litres drunk in the whole run, as stated and as corrected
 * @param toDrinkL of those, litres drunk from the day of the log's last entry on
 * @param oddities what is no noise
 * @param members rigs of which each band of dates and litres is
 * @param asked how many were asked for: more where the work was broken off
 */
public record Fit(
        Scenario scenario,
        Correction correction,
        List<Learned> learned,
        List<Leak> leaks,
        List<Judged> readings,
        List<Judged> idle,
        List<Tied> tied,
        List<Next> next,
        List<Dated> dates,
        Change drunkL,
        Change toDrinkL,
        List<Oddity> oddities,
        int members,
        int asked) {

    /**
     * A leak is said to be there where the readings fit so much better with it, in standard
     * deviations of a normal deviate, as they do without one once in a hundred logs: the signed
     * root of the likelihood ratio, one side (Chernoff 1954, from memory).
     */
    static final double LEAK_SAID = 2.3263;

    /** Where they do once in ten it is not ruled out. */
    static final double LEAK_OPEN = 1.2816;

    /**
     * One that began within the log is told where the readings fit so much better with it: dates
     * are tried one after the other, so that more is asked for than of one that was always there.
     * Of 40 logs of eight weeks without a leak the greatest such figure was 3.0, and 2 of 40 lay
     * above 2.
     */
    static final double LEAK_BEGAN = 3.3;

    /**
     * And by so much better than with one that was always there, as a logarithm of likelihoods: one
     * chance in a hundred of chi square with one degree (Wilks 1938, from memory).
     */
    private static final double BEGAN_BETTER = 3.32;

    /** Dates of a beginning are as likely as the best by this, 19 in 20 likewise. */
    private static final double AS_LIKELY = 1.92;

    /** Readings of a reservoir before and after the beginning of a leak that is looked for. */
    private static final int BEGAN_READINGS = 3;

    /** Starts of the search. */
    private static final int STARTS = 2;

    /** The search ends where it moves less, in standard deviations of the doubt before. */
    private static final double STAYS = 0.01;

    private static final double AT_90 = 1.2816; // normal deviate

    /** Pairs are tied that correlate so much and each of which keeps so much of its doubt. */
    private static final double TIED_CORRELATION = 0.5;

    private static final double TIED_LEFT = 0.5;

    private static final double L_PER_M3 = 1000;

    public Fit {
        learned = List.copyOf(learned);
        leaks = List.copyOf(leaks);
        readings = List.copyOf(readings);
        idle = List.copyOf(idle);
        tied = List.copyOf(tied);
        next = List.copyOf(next);
        dates = List.copyOf(dates);
        oddities = List.copyOf(oddities);
    }

    /**
     * What was learned of one thing.
     *
     * @param what in the words of {@link Correction}
     * @param of the crop, tray or reservoir; empty where it is the whole rig
     * @param value most likely: a factor, or m for a valve, or m3/s for a leak
     * @param low a tenth of the chance lies below it
     * @param high a tenth of the chance lies above it
     * @param left share of the doubt before that is left, 0-1
     * @param deviate how far it lies from what was stated, in standard deviations of the doubt
     *     before
     */
    public record Learned(
            String what,
            String of,
            double value,
            double low,
            double high,
            double left,
            double deviate) {
        /** Whether the log says that it is otherwise than stated: nine tenths lie to one side. */
        public boolean isOff() {
            return Math.abs(deviate) > AT_90 * left && left < 0.95;
        }
    }

    /**
     * Whether a reservoir loses what nothing drinks.
     *
     * @param evidence by how much better the readings fit with a leak, in standard deviations of a
     *     normal deviate, at least 0
     * @param litresPerDay most likely if it does, L/day
     * @param mostLitresPerDay a tenth of the chance lies above it if it does, L/day
     * @param shownFromL leaks from this size on are said in nine of ten logs like this one, L/day:
     *     the detection limit of what the readings' own errors leave (Currie 1968, from memory)
     * @param beganS when it began at the earliest, s since the start; 0 where it is as old as the
     *     log for all that is known
     * @param beganByS when at the latest
     * @param drawnL what the trays below drew from it on an average day of the log, L
     * @param instead thirst and growth that are otherwise than stated without a leak, and with one,
     *     which the readings fit as well, are not
     */
    public record Leak(
            String reservoir,
            double evidence,
            double litresPerDay,
            double mostLitresPerDay,
            double shownFromL,
            double beganS,
            double beganByS,
            double drawnL,
            List<Learned> instead) {
        public Leak {
            instead = List.copyOf(instead);
        }

        /** Whether it began within the log. */
        public boolean hasBegun() {
            return beganByS > 0;
        }

        public boolean isSaid() {
            return evidence > LEAK_SAID;
        }

        /** Whether it is neither said nor unlikely. */
        public boolean isOpen() {
            return !isSaid() && (evidence > LEAK_OPEN || !instead.isEmpty());
        }
    }

    /**
     * A reading beside its forecasts.
     *
     * @param before as stated, in the reading's unit; NaN where nothing was foretold
     * @param after as corrected
     * @param deviation of the reading about its forecast
     * @param weight 1.25 for one that fits, near 0 for a wild one
     * @param worth share of the doubt of the next dates that it took away, 0-1
     */
    public record Judged(
            LogEntry.Reading reading,
            double before,
            double after,
            double deviation,
            double weight,
            double worth) {
        /** Reading less forecast, in standard deviations. */
        public double residual() {
            return (reading.value() - after) / deviation;
        }
    }

    /** Two things the log does not tell apart, by what and of what. */
    public record Tied(Learned one, Learned other) {}

    /**
     * A reading not taken yet.
     *
     * @param inDays from the log's last entry on
     * @param shareLeft share of the doubt of the next dates that would be left, 0-1
     */
    public record Next(LogEntry.Quantity what, VesselId where, double inDays, double shareLeft) {}

    /**
     * A date to come.
     *
     * @param statedS when it would have been as stated, s since the start
     * @param rigsS when each of the corrected rigs sees it; infinite for never
     */
    public record Dated(Event.Kind kind, VesselId where, Band statedS, List<Double> rigsS) {
        public Dated {
            rigsS = List.copyOf(rigsS);
        }

        /** When as corrected, s since the start. */
        public Band correctedS() {
            return Band.of(rigsS.stream().mapToDouble(Double::doubleValue).toArray());
        }
    }

    /** A figure as stated and as corrected. */
    public record Change(Band stated, Band corrected) {}

    /**
     * Something in the log that no noise explains.
     *
     * @param reading at which it shows
     * @param sinceS since when, s since the start
     * @param amount how much: litres, or mS/cm, or m for a level that a valve holds; above 0
     */
    public record Oddity(Kind kind, LogEntry.Reading reading, double sinceS, double amount) {
        /** Kinds of oddity. */
        public enum Kind {
            /** A vessel would have run dry, and the log holds no refill of it since. */
            NO_REFILL,
            /** The level stands higher than it can without a refill that is not in the log. */
            LEVEL_ROSE,
            /** The level fell by more than plants drink. */
            LEVEL_FELL,
            /** It fell in a night by more than plants drink then. */
            NIGHT_LOSS,
            /** A tray stands above what its valve is set to, again and again. */
            VALVE_HIGH,
            /** Below it. */
            VALVE_LOW,
            /** EC is lower than it can be without water that is not in the log. */
            THINNED,
            /** EC is higher than anything that is known makes it. */
            THICKENED,
            /** One reading lies far off all others: a slip. */
            SLIP
        }
    }

    /**
     * Learns from a log. Once something is learned, an interruption keeps it, with bands of the
     * rigs that were run.
     *
     * @param scenario with its log
     * @param members rigs that yours might be, for each of the bands, at least 1
     * @param seed of all that is drawn
     * @return empty where the log holds nothing to learn from
     * @throws InterruptedException when the workers are interrupted before that
     */
    public static Optional<Fit> of(Scenario scenario, int members, long seed, Workers workers)
            throws InterruptedException {
        List<LogEntry.Reading> believed = Believed.of(scenario);
        if (believed.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Work(scenario, believed, seed, workers).fit(members));
    }

    /**
     * Runs that do what the log says was done and believe no level that was read, so that what was
     * read can be held against them.
     *
     * @param stated the scenario as stated
     * @param corrected as corrected
     */
    public record Runs(Trace stated, Trace corrected) {}

    /**
     * Makes them.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    public Runs runs(Workers workers) throws InterruptedException {
        List<LogEntry> entries = new ArrayList<>();
        for (LogEntry entry : scenario.log().entries()) {
            entries.add(
                    entry instanceof LogEntry.Reading r
                            ? new LogEntry.Reading(
                                    r.atS(), r.where(), r.what(), r.value(), false, r.line())
                            : entry);
        }
        Scenario blind = scenario.withLog(new Log(entries));
        List<Scenario> both = List.of(blind, correction.applied(blind));
        List<Trace> traces = workers.each(2, i -> Simulation.run(both.get(i)));
        return new Runs(traces.get(0), traces.get(1));
    }

    /** One fit in the making. */
    private static final class Work {
        private final Scenario scenario;
        private final List<LogEntry.Reading> believed;
        private final long seed;
        private final Workers workers;
        private final Scenario coarse;
        private final Scenario logged; // no longer than the log
        private final Surroundings shared;
        private final int[] place; // of each believed reading among those of the log
        private final double[] value;
        private double[] deviation; // about their forecasts
        private double[] wanders; // share of the days' wandering left where several crops drink
        private double[] stated; // forecasts of the believed readings
        private List<Event> lived = List.of(); // of the log, as stated

        Work(Scenario scenario, List<LogEntry.Reading> believed, long seed, Workers workers) {
            this.scenario = scenario;
            this.believed = believed;
            this.seed = seed;
            this.workers = workers;
            coarse = Ensemble.atEnsembleStep(scenario);
            logged = coarse.withDays((int) (scenario.log().lastS() / Time.DAY_S) + 1);
            shared = Surroundings.forSeasons(logged);
            List<LogEntry.Reading> all = scenario.log().readings();
            place = believed.stream().mapToInt(all::indexOf).toArray();
            value = believed.stream().mapToDouble(LogEntry.Reading::value).toArray();
        }

        private Season season(Scenario rig, FitSpace space, double[] point) {
            return Simulation.season(rig, shared.around(rig), space.departures(point));
        }

        /** Several crops that drink from one vessel seldom all have a thirsty day. */
        private double[] wanders(Season season) {
            return believed.stream().mapToDouble(r -> wanders(r.where(), season)).toArray();
        }

        private double wanders(VesselId where, Season season) {
            Map<String, Double> drunk = new HashMap<>();
            double all = 0;
            for (int i = 0; i < scenario.trays().size(); i++) {
                Tray tray = scenario.trays().get(i);
                if (tray.isFedBy(where.name()) || tray.id().equals(where)) {
                    double m3 = season.trays().get(i).drunkM3();
                    drunk.merge(tray.planting().cropName(), m3, Double::sum);
                    all += m3;
                }
            }
            double square = 0;
            for (double m3 : drunk.values()) {
                square += m3 * m3;
            }
            return all > 0 ? Math.sqrt(square) / all : 1;
        }

        private double[] deviations(double[] foretold) {
            double[] of = new double[foretold.length];
            for (int i = 0; i < of.length; i++) {
                double about = Double.isNaN(foretold[i]) ? value[i] : foretold[i];
                of[i] =
                        Untold.isBefore(scenario, lived, believed.get(i))
                                ? Believed.anything(scenario, believed.get(i))
                                : Believed.deviation(scenario, believed.get(i), about, wanders[i])
                                        .orElseThrow();
            }
            return of;
        }

        /** Forecasts of the believed readings at points of a space. */
        private double[][] forecasts(FitSpace space, double[][] points)
                throws InterruptedException {
            return workers.each(
                            points.length,
                            p ->
                                    read(
                                            space,
                                            points[p],
                                            correction ->
                                                    season(
                                                            correction.applied(logged),
                                                            space,
                                                            points[p])))
                    .toArray(double[][]::new);
        }

        /**
         * Forecasts of the believed readings. Each level of a reservoir is foretold from the one
         * before it: up to a leak's beginning it reads as of a tight one, from there on as of one
         * that always leaked.
         */
        private double[] read(FitSpace space, double[] point, Function<Correction, Season> season) {
            double[] read = read(season.apply(space.at(point)));
            if (space.leaksFromS() > 0) {
                double[] tight = read(season.apply(space.tightAt(point)));
                for (int i = 0; i < read.length; i++) {
                    read[i] = believed.get(i).atS() > space.leaksFromS() ? read[i] : tight[i];
                }
            }
            return read;
        }

        private double[] read(Season season) {
            return Arrays.stream(place).mapToDouble(season.read()::get).toArray();
        }

        private Posterior posterior(FitSpace space, List<double[]> starts)
                throws InterruptedException {
            return Posterior.of(
                    points -> {
                        double[][] foretold = forecasts(space, points);
                        for (double[] of : foretold) {
                            for (int i = 0; i < of.length; i++) {
                                // What cannot be foretold (a dry tray's EC) fits badly.
                                of[i] = Double.isNaN(of[i]) ? value[i] + 3 * deviation[i] : of[i];
                            }
                        }
                        return foretold;
                    },
                    value,
                    deviation,
                    starts,
                    STAYS);
        }

        private double[] at(FitSpace space, double[] point) throws InterruptedException {
            return forecasts(space, new double[][] {point})[0];
        }

        Fit fit(int members) throws InterruptedException {
            FitSpace space = FitSpace.of(coarse);
            double[] asStated = new double[space.size()];
            Season before = season(space.at(asStated).applied(logged), space, asStated);
            wanders = wanders(before);
            stated = read(before);
            lived = before.events(); // before any deviation
            deviation = deviations(stated);
            Posterior rough = posterior(space, Posterior.starts(space.size(), STARTS));
            double[] foretold = at(space, rough.mode());
            deviation = deviations(foretold);
            Posterior posterior = posterior(space, List.of(rough.mode()));
            List<Leak> leaks = new ArrayList<>();
            Optional<Found> other = Optional.empty();
            FitSpace best = space;
            Posterior told = posterior;
            double most = LEAK_SAID;
            for (Reservoir reservoir : scenario.reservoirs()) {
                if (readingsOf(reservoir.id()) < 2) {
                    continue;
                }
                FitSpace leaking = space.leaking(reservoir.name());
                double[] start = Arrays.copyOf(posterior.mode(), leaking.size());
                Posterior with = posterior(leaking, List.of(start));
                Leak leak = leak(reservoir.name(), leaking, with, posterior);
                Optional<Began> began = began(reservoir, leaking, leak, posterior);
                if (began.isPresent()) {
                    leak = began.get().leak();
                    leaking = began.get().space();
                    with = began.get().posterior();
                }
                leaks.add(leak);
                if (!leak.isSaid() && !leak.instead().isEmpty()) {
                    other = Optional.of(new Found(leaking, with));
                }
                if (leak.evidence() > most) {
                    most = leak.evidence();
                    best = leaking;
                    told = with;
                }
            }
            return fit(new Found(best, told), other, leaks, members);
        }

        /** What the log says if so much is fitted. */
        private record Found(FitSpace space, Posterior posterior) {}

        private long readingsOf(VesselId where) {
            return believed.stream().filter(r -> r.where().equals(where)).count();
        }

        /** A leak that began within the log. */
        private record Began(Leak leak, FitSpace space, Posterior posterior) {}

        /**
         * Looks for one: dates are sifted on the straight forecast, and the likeliest is fitted.
         *
         * @param always the same leak as old as the log
         */
        private Optional<Began> began(
                Reservoir reservoir, FitSpace leaking, Leak always, Posterior without)
                throws InterruptedException {
            double[] slope = slope(leaking, without);
            List<Double> dates =
                    believed.stream()
                            .filter(r -> r.where().equals(reservoir.id()))
                            .map(LogEntry.Reading::atS)
                            .distinct()
                            .toList();
            List<Double> better = new ArrayList<>();
            int best = -1;
            for (int d = 0; d < dates.size(); d++) {
                double fromS = dates.get(d);
                double[] since = slope.clone();
                for (int i = 0; i < since.length; i++) {
                    since[i] = believed.get(i).atS() > fromS ? since[i] : 0;
                }
                boolean isSeen = d + 1 >= BEGAN_READINGS && d + BEGAN_READINGS < dates.size();
                Posterior.More more = isSeen ? without.more(since) : new Posterior.More(0, 0);
                better.add(more.amount() > 0 ? more.better() : 0);
                best = best < 0 || better.get(d) > better.get(best) ? d : best;
            }
            if (best < 0 || Math.sqrt(2 * better.get(best)) < LEAK_BEGAN) {
                return Optional.empty();
            }
            FitSpace space = FitSpace.of(coarse).leaking(reservoir.name(), dates.get(best));
            double[] start = Arrays.copyOf(without.mode(), space.size());
            Posterior with = posterior(space, List.of(start));
            double evidence = evidence(with, without);
            if (evidence < LEAK_BEGAN
                    || 0.5 * (evidence * evidence - always.evidence() * always.evidence())
                            < BEGAN_BETTER) {
                return Optional.empty();
            }
            int first = best;
            int last = best;
            for (int d = 0; d < dates.size(); d++) {
                if (better.get(d) > better.get(best) - AS_LIKELY) {
                    first = Math.min(first, d);
                    last = Math.max(last, d);
                }
            }
            Leak leak =
                    new Leak(
                            reservoir.name(),
                            evidence,
                            litresOf(space, with, 0),
                            litresOf(space, with, AT_90),
                            always.shownFromL(),
                            dates.get(first),
                            dates.get(last + 1),
                            always.drawnL(),
                            List.of());
            return Optional.of(new Began(leak, space, with));
        }

        /** How much better the readings are with a leak, in standard deviations. */
        private static double evidence(Posterior with, Posterior without) {
            double deviate = with.mode()[with.mode().length - 1];
            double better =
                    without.minusLogDensity() - with.minusLogDensity() + 0.5 * deviate * deviate;
            return Math.sqrt(Math.max(0, 2 * better));
        }

        /** A leak so many standard deviations above the likeliest, L/day. */
        private static double litresOf(FitSpace space, Posterior with, double deviates) {
            int k = space.size() - 1;
            return perDay(
                    space.value(
                            space.axes().get(k), with.mode()[k] + deviates * with.deviation(k)));
        }

        private Leak leak(String name, FitSpace space, Posterior with, Posterior without)
                throws InterruptedException {
            return new Leak(
                    name,
                    evidence(with, without),
                    litresOf(space, with, 0),
                    litresOf(space, with, AT_90),
                    shownFromL(space, without),
                    0,
                    0,
                    drawnL(name, without),
                    instead(space, with, without));
        }

        private double drawnL(String reservoir, Posterior without) {
            FitSpace tight = FitSpace.of(coarse);
            Season season = season(tight.at(without.mode()).applied(logged), tight, without.mode());
            double m3 = 0;
            for (int i = 0; i < scenario.trays().size(); i++) {
                if (scenario.trays().get(i).isFedBy(reservoir)) {
                    m3 += season.trays().get(i).drunkM3();
                }
            }
            return L_PER_M3 * m3 / logged.days();
        }

        /** What is claimed without a leak and might be one. */
        private List<Learned> instead(FitSpace leaking, Posterior with, Posterior without) {
            if (!(evidence(with, without) > 0)) {
                return List.of();
            }
            List<Learned> leaky = learned(leaking, with);
            return learned(FitSpace.of(coarse), without).stream()
                    .filter(
                            one ->
                                    one.what().equals(Correction.THIRST)
                                            || one.what().equals(Correction.GROWTH))
                    .filter(Learned::isOff)
                    .filter(
                            one ->
                                    leaky.stream()
                                            .anyMatch(
                                                    other ->
                                                            other.what().equals(one.what())
                                                                    && other.of().equals(one.of())
                                                                    && !other.isOff()))
                    .toList();
        }

        /** How readings move with a leak, in their own standard deviations for a litre a day. */
        private double[] slope(FitSpace leaking, Posterior without) throws InterruptedException {
            int k = leaking.size() - 1;
            double usual = perDay(leaking.value(leaking.axes().get(k), 0));
            double[] some = at(leaking, Arrays.copyOf(without.mode(), k + 1));
            double[] slope = new double[some.length];
            for (int i = 0; i < slope.length; i++) {
                double none = value[i] - deviation[i] * without.residual()[i];
                double of = (some[i] - none) / usual / deviation[i];
                slope[i] = Double.isNaN(of) ? 0 : of;
            }
            return slope;
        }

        private double shownFromL(FitSpace leaking, Posterior without) throws InterruptedException {
            FitSpace tight = FitSpace.of(coarse);
            int k = tight.size();
            LeakLimit.Rig rig =
                    new LeakLimit.Rig() {
                        @Override
                        public double[][] without(double[][] away) throws InterruptedException {
                            double[][] points = new double[away.length][k];
                            for (int p = 0; p < points.length; p++) {
                                for (int i = 0; i < k; i++) {
                                    points[p][i] = without.mode()[i] + away[p][i];
                                }
                            }
                            return forecasts(tight, points);
                        }

                        @Override
                        public double[] leaking(double litresPerDay) throws InterruptedException {
                            double[] point = Arrays.copyOf(without.mode(), k + 1);
                            point[k] = leaking.deviateOfLeak(litresPerDay);
                            return at(leaking, point);
                        }

                        @Override
                        public double[] deviations(double[] foretold) {
                            return Work.this.deviations(foretold);
                        }
                    };
            double[] slope = slope(leaking, without);
            double wanted = LEAK_SAID + AT_90 * LeakLimit.SPREAD;
            return LeakLimit.litresPerDay(rig, k, wanted * without.resolution(slope), wanted);
        }

        private static double perDay(double m3PerS) {
            return m3PerS * L_PER_M3 * Time.DAY_S;
        }

        /**
         * The whole of it.
         *
         * @param other what it says as well, where the log does not tell which: every other rig is
         *     drawn from it
         */
        private Fit fit(Found found, Optional<Found> other, List<Leak> leaks, int members)
                throws InterruptedException {
            FitSpace space = found.space();
            Posterior posterior = found.posterior();
            List<Learned> learned = learned(space, posterior);
            Map<String, Double> left = new LinkedHashMap<>();
            for (Learned one : learned) {
                left.put(Correction.name(one.what(), one.of()), Math.min(1, one.left()));
            }
            Correction correction = space.at(posterior.mode(), left);
            Ahead ahead = new Ahead(space, posterior);
            List<Judged> judged = judged(space, posterior, ahead.figure);
            List<Pair> pairs = pairs(found, other, members);
            Members before = new Members(pairs.stream().map(Pair::stated).toList());
            Members after = new Members(pairs.stream().map(Pair::corrected).toList());
            return new Fit(
                    scenario,
                    correction,
                    learned,
                    leaks,
                    judged,
                    idle(space, posterior),
                    tied(space, posterior, learned),
                    ahead.next(),
                    dates(before, after),
                    new Change(before.drunkL(), after.drunkL()),
                    new Change(before.toDrinkL(), after.toDrinkL()),
                    Oddities.of(scenario, judged, lived),
                    pairs.size(),
                    members);
        }

        /** A rig drawn from the doubt before the log, and one from what is left of it. */
        private record Pair(Season stated, Season corrected) {}

        /** As many as are run before an interruption, but one at least. */
        private List<Pair> pairs(Found found, Optional<Found> other, int members)
                throws InterruptedException {
            IntFunction<Season> stated = asStated(members);
            IntFunction<Season> one = asCorrected(found.space(), found.posterior(), members);
            IntFunction<Season> two =
                    other.map(o -> asCorrected(o.space(), o.posterior(), members)).orElse(one);
            IntFunction<Pair> pair =
                    i -> new Pair(stated.apply(i), (i % 2 == 0 ? one : two).apply(i));
            List<Pair> pairs = Kept.each(workers, members, pair);
            return pairs.isEmpty() ? List.of(pair.apply(0)) : pairs;
        }

        private static List<Learned> learned(FitSpace space, Posterior posterior) {
            List<Learned> learned = new ArrayList<>();
            for (int k = 0; k < space.size(); k++) {
                FitSpace.Axis axis = space.axes().get(k);
                if (FitSpace.isOfWeeks(axis)) {
                    continue;
                }
                double at = posterior.mode()[k];
                double spread = posterior.deviation(k);
                learned.add(
                        new Learned(
                                axis.what(),
                                axis.of(),
                                space.value(axis, at),
                                space.value(axis, at - AT_90 * spread),
                                space.value(axis, at + AT_90 * spread),
                                spread,
                                at));
            }
            return learned;
        }

        private static List<Tied> tied(FitSpace space, Posterior posterior, List<Learned> learned) {
            double[][] directions =
                    learned.stream()
                            .map(one -> space.direction(space.place(one.what(), one.of())))
                            .toArray(double[][]::new);
            List<Tied> tied = new ArrayList<>();
            for (int i = 0; i < learned.size(); i++) {
                for (int j = i + 1; j < learned.size(); j++) {
                    if (Math.abs(posterior.correlation(directions[i], directions[j]))
                                    > TIED_CORRELATION
                            && learned.get(i).left() > TIED_LEFT
                            && learned.get(j).left() > TIED_LEFT) {
                        tied.add(new Tied(learned.get(i), learned.get(j)));
                    }
                }
            }
            return tied;
        }

        private List<Judged> judged(FitSpace space, Posterior posterior, double[] figure)
                throws InterruptedException {
            double[] after = at(space, posterior.mode());
            List<Judged> judged = new ArrayList<>();
            for (int i = 0; i < believed.size(); i++) {
                judged.add(
                        new Judged(
                                believed.get(i),
                                stated[i],
                                after[i],
                                deviation[i],
                                posterior.weight()[i],
                                posterior.worth(figure, i)));
            }
            return judged;
        }

        private List<Judged> idle(FitSpace space, Posterior posterior) {
            double[] nothing = new double[space.size()];
            List<Double> before = season(space.at(nothing).applied(logged), space, nothing).read();
            double[] found = posterior.mode();
            List<Double> after = season(space.at(found).applied(logged), space, found).read();
            List<LogEntry.Reading> all = scenario.log().readings();
            List<Judged> idle = new ArrayList<>();
            for (int i = 0; i < all.size(); i++) {
                if (all.get(i).counts() && !all.get(i).what().teaches()) {
                    idle.add(new Judged(all.get(i), before.get(i), after.get(i), Double.NaN, 0, 0));
                }
            }
            return idle;
        }

        private IntFunction<Season> asStated(int members) {
            Unknowns unknowns = Unknowns.of(coarse);
            double[][] quantiles = unknowns.quantiles(members, seed);
            Surroundings around = Surroundings.forSeasons(coarse);
            return i -> unknowns.member(quantiles[i]).season(around);
        }

        /**
         * Rigs drawn from what is left of the doubt; days, weeks to come, visits, warmth, leaf and
         * roots, of which the log says little, as before. What is drunk of more leaf or in warmer
         * air was read along: whoever has these has thirst and growth that are otherwise by as much
         * ({@link Posterior#shift}).
         */
        private IntFunction<Season> asCorrected(FitSpace space, Posterior posterior, int members) {
            Surroundings around = Surroundings.forSeasons(coarse);
            double[][] drawn = UnitSample.of(members, Math.max(1, space.size()), seed + 1);
            double[][] quantiles = Unknowns.of(coarse).only(OPEN).quantiles(members, seed);
            return i -> {
                double[] normal = Arrays.stream(drawn[i]).map(DemandDoubt::deviate).toArray();
                double[] drawnPoint = posterior.draw(normal);
                double[] point = drawnPoint;
                for (int step = 0; step < BENDS; step++) {
                    double[] read = considered(space, point, quantiles[i]);
                    point = posterior.bent(drawnPoint, point, offs(read));
                }
                Scenario rig = space.at(point).applied(coarse);
                Member member = Unknowns.of(rig).only(OPEN).afterLog().member(quantiles[i]);
                return new Member(
                                member.scenario(),
                                member.departures().times(space.departures(point)))
                        .season(around);
            };
        }

        /** Steps by which a drawn rig is led to what was read. */
        private static final int BENDS = 2;

        /** What a rig that is warmer or has more leaf would have been read at. */
        private double[] considered(FitSpace space, double[] point, double[] quantiles) {
            return read(
                    space,
                    point,
                    correction -> {
                        Unknowns of = Unknowns.of(correction.applied(logged)).only(OPEN);
                        double[] quantile = quantiles.clone();
                        for (int u = 0; u < quantile.length; u++) {
                            if (!CONSIDERED.contains(of.list().get(u).kind())) {
                                quantile[u] = 0.5;
                            }
                        }
                        return season(of.member(quantile).scenario(), space, point);
                    });
        }

        private double[] offs(double[] foretold) {
            double[] off = new double[foretold.length];
            for (int i = 0; i < off.length; i++) {
                off[i] = (value[i] - foretold[i]) / deviation[i];
            }
            return off;
        }

        private List<Dated> dates(Members before, Members after) {
            List<Dated> dates = new ArrayList<>();
            for (Members.What what : before.whats(after)) {
                dates.add(
                        new Dated(what.kind(), what.where(), before.atS(what), after.eachS(what)));
            }
            return dates;
        }

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

        /** Seasons of many rigs, and when each sees what comes next. */
        private final class Members {
            private record What(Event.Kind kind, VesselId where) {}

            private final List<Season> seasons;
            private final List<Map<What, Double>> first = new ArrayList<>();

            Members(List<Season> seasons) {
                this.seasons = seasons;
                for (Season season : seasons) {
                    Map<What, Double> of = new LinkedHashMap<>();
                    for (Event event : season.events()) {
                        if (Expected.DATED.contains(event.kind())
                                && event.atS() > scenario.log().lastS()) {
                            of.putIfAbsent(new What(event.kind(), event.vessel()), event.atS());
                        }
                    }
                    first.add(of);
                }
            }

            /** All that any of these or those sees, by when the middle of those sees it. */
            List<What> whats(Members those) {
                List<What> all = new ArrayList<>();
                for (Members some : List.of(this, those)) {
                    some.first.forEach(
                            of ->
                                    of.keySet().stream()
                                            .filter(what -> !all.contains(what))
                                            .forEach(all::add));
                }
                all.sort(
                        Comparator.comparing((What what) -> those.atS(what).middle())
                                .thenComparing(What::kind)
                                .thenComparing(what -> what.where().name()));
                return all;
            }

            List<Double> eachS(What what) {
                return first.stream()
                        .map(of -> of.getOrDefault(what, Double.POSITIVE_INFINITY))
                        .toList();
            }

            Band atS(What what) {
                return Band.of(eachS(what).stream().mapToDouble(Double::doubleValue).toArray());
            }

            Band toDrinkL() {
                int from = (int) (scenario.log().lastS() / Time.DAY_S);
                return Band.of(
                        seasons.stream()
                                .mapToDouble(
                                        season ->
                                                L_PER_M3
                                                        * season.trays().stream()
                                                                .mapToDouble(t -> since(t, from))
                                                                .sum())
                                .toArray());
            }

            private static double since(TraySeason tray, int day) {
                List<Double> days = tray.drunkOfDayM3();
                return days.subList(Math.min(day, days.size()), days.size()).stream()
                        .mapToDouble(Double::doubleValue)
                        .sum();
            }

            Band drunkL() {
                return Band.of(
                        seasons.stream()
                                .mapToDouble(
                                        season ->
                                                L_PER_M3
                                                        * season.trays().stream()
                                                                .mapToDouble(TraySeason::drunkM3)
                                                                .sum())
                                .toArray());
            }
        }

        /** What is to be read next, and the figure the next dates hang on. */
        private final class Ahead {
            private static final double MOST_DAYS = 7;
            private static final double SOON_DAYS = 3;

            private final Posterior posterior;
            private final List<LogEntry.Reading> virtual = new ArrayList<>();
            private final List<Double> inDays = new ArrayList<>();
            private final double[][] slope; // by virtual reading and unknown, in its own unit
            private final double[] expected;
            private final double[] figure;

            Ahead(FitSpace space, Posterior posterior) throws InterruptedException {
                this.posterior = posterior;
                double lastS = scenario.log().lastS();
                double leftDays = scenario.days() - 1e-6 - lastS / Time.DAY_S;
                double figureDays = Math.min(MOST_DAYS, 0.5 * leftDays);
                double soonDays = Math.min(SOON_DAYS, 0.5 * leftDays);
                scenario.reservoirs()
                        .forEach(r -> add(r.id(), LogEntry.Quantity.LEVEL, figureDays));
                for (Tray tray : scenario.trays()) {
                    if (!(tray.filling() instanceof Filling.ByValve)) {
                        add(tray.id(), LogEntry.Quantity.LEVEL, figureDays);
                    }
                }
                scenario.reservoirs().forEach(r -> add(r.id(), LogEntry.Quantity.LEVEL, soonDays));
                for (Tray tray : scenario.trays()) {
                    if (isTaken(tray.id())) {
                        continue;
                    }
                    add(tray.id(), LogEntry.Quantity.LEVEL, soonDays);
                    add(tray.id(), LogEntry.Quantity.EC, soonDays);
                    if (tray.planting() instanceof Planting.OfCrop) {
                        add(tray.id(), LogEntry.Quantity.FRESH_MASS, soonDays);
                    }
                }
                double[][] points = new double[2 * space.size() + 1][];
                for (int k = 0; k < space.size(); k++) {
                    points[2 * k] = posterior.mode().clone();
                    points[2 * k + 1] = posterior.mode().clone();
                    points[2 * k][k] += STEP;
                    points[2 * k + 1][k] -= STEP;
                }
                points[2 * space.size()] = posterior.mode();
                double[][] read = read(space, points);
                expected = read[2 * space.size()];
                slope = new double[virtual.size()][space.size()];
                for (int v = 0; v < slope.length; v++) {
                    for (int k = 0; k < space.size(); k++) {
                        double rise = (read[2 * k][v] - read[2 * k + 1][v]) / (2 * STEP);
                        slope[v][k] = Double.isNaN(rise) ? 0 : rise;
                    }
                }
                figure = slope[0];
            }

            private static final double STEP = 0.05;

            private boolean isTaken(VesselId where) {
                return scenario.log().entries().stream()
                        .anyMatch(
                                e ->
                                        e instanceof LogEntry.Harvested taken
                                                && taken.where().equals(where));
            }

            private void add(VesselId where, LogEntry.Quantity what, double days) {
                virtual.add(
                        new LogEntry.Reading(
                                scenario.log().lastS() + days * Time.DAY_S,
                                where,
                                what,
                                0,
                                false,
                                virtual.size())); // told apart by their line
                inDays.add(days);
            }

            private double[][] read(FitSpace space, double[][] points) throws InterruptedException {
                List<LogEntry> entries = new ArrayList<>(scenario.log().entries());
                List<LogEntry.Reading> rising = new ArrayList<>(virtual);
                rising.sort(Comparator.comparingDouble(LogEntry.Reading::atS));
                entries.addAll(rising);
                double lastS = rising.get(rising.size() - 1).atS();
                Scenario longer =
                        coarse.withDays((int) (lastS / Time.DAY_S) + 1).withLog(new Log(entries));
                Surroundings around = Surroundings.forSeasons(longer);
                int before = scenario.log().readings().size();
                int[] at = virtual.stream().mapToInt(v -> before + rising.indexOf(v)).toArray();
                return workers.each(
                                points.length,
                                p -> {
                                    List<Double> all =
                                            Simulation.season(
                                                            space.at(points[p]).applied(longer),
                                                            around,
                                                            space.departures(points[p]))
                                                    .read();
                                    return Arrays.stream(at).mapToDouble(all::get).toArray();
                                })
                        .toArray(double[][]::new);
            }

            List<Next> next() {
                Map<String, Next> best = new HashMap<>();
                List<Next> all = new ArrayList<>();
                for (int v = 0; v < virtual.size(); v++) {
                    LogEntry.Reading one = virtual.get(v);
                    double value = expected[v];
                    double off = deviationOf(one, value);
                    if (!(off > 0) || Double.isNaN(value)) {
                        continue;
                    }
                    double[] own = Arrays.stream(slope[v]).map(s -> s / off).toArray();
                    Next next =
                            new Next(
                                    one.what(),
                                    one.where(),
                                    inDays.get(v),
                                    posterior.shareLeftAfter(figure, own));
                    if (best.putIfAbsent(one.what() + " " + one.where() + inDays.get(v), next)
                            == null) {
                        all.add(next);
                    }
                }
                all.sort(Comparator.comparingDouble(Next::shareLeft));
                return all;
            }

            private double deviationOf(LogEntry.Reading one, double value) {
                LogEntry.Reading read =
                        new LogEntry.Reading(
                                one.atS(),
                                one.where(),
                                one.what(),
                                Double.isNaN(value) ? 0 : value,
                                true,
                                0);
                return Believed.deviation(scenario, read, read.value(), 1).orElse(0.0);
            }
        }
    }
}
