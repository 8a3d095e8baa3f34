package tideless.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.LogEntry;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.sim.Season;

/** Whether a reservoir leaks: the same log fitted with a leak beside it. */
final class LeakSearch {
    /**
     * One that began within the log is told where the readings fit so much better with it: dates
     * are tried one after the other, so that more is asked for than of one that was always there.
     * Of 40 logs of eight weeks without a leak the greatest such figure was 3.0, and 2 of 40 lay
     * above 2.
     */
    private static final double BEGAN = 3.3;

    /**
     * And by so much better than with one that was always there, as a logarithm of likelihoods: one
     * chance in a hundred of chi square with one degree (Wilks 1938, from memory).
     */
    private static final double BEGAN_BETTER = 3.32;

    /** What is as likely as the best by this, a date of a beginning or a jug, 19 in 20 likewise. */
    private static final double AS_LIKELY = 1.92;

    /** Readings of a reservoir before and after the beginning of a leak that is looked for. */
    private static final int BEGAN_READINGS = 3;

    /** Half step of a slope, in standard deviations of the prior. */
    private static final double HALF = 0.05;

    private static final double L_PER_M3 = 1000;

    private final LoggedReadings readings;
    private final FitSpace tight;
    private final Posterior without;
    private final Reservoir reservoir;
    private final FitSpace leaking;
    private final double[] slope; // of the readings, in their own deviations for a litre a day

    private LeakSearch(
            LoggedReadings readings, FitSpace tight, Posterior without, Reservoir reservoir)
            throws InterruptedException {
        this.readings = readings;
        this.tight = tight;
        this.without = without;
        this.reservoir = reservoir;
        leaking = tight.leaking(reservoir.name());
        slope = slope();
    }

    /**
     * A leak, and what the log says where there is one.
     *
     * @param jug what it says where there is none and its litres were written down otherwise than
     *     they are, if the readings fit as well with that
     */
    record Suspected(Fit.Leak leak, Found found, Optional<Found> jug) {}

    /**
     * Looks at a reservoir.
     *
     * @param without what the log says without a leak
     */
    static Suspected of(LoggedReadings readings, Found without, Reservoir reservoir)
            throws InterruptedException {
        LeakSearch search =
                new LeakSearch(readings, without.space(), without.posterior(), reservoir);
        Suspected always = search.always();
        return search.began(always.leak()).orElse(always);
    }

    private Suspected always() throws InterruptedException {
        Posterior with = readings.posterior(leaking, start(leaking));
        Fit.Leak leak = leak(with);
        Optional<Found> jug =
                leak.isSaid() || leak.isOpen()
                        ? JugSearch.of(readings, tight, reservoir)
                                .filter(
                                        j ->
                                                explainsAsWell(
                                                        evidence(j.posterior()), leak.evidence()))
                        : Optional.empty();
        double jugTimes =
                jug.map(j -> j.space().litresTimes(j.posterior().mode(), reservoir.id()))
                        .orElse(1.0);
        return new Suspected(leak.withJug(jugTimes), new Found(leaking, with), jug);
    }

    /**
     * Whether a jug explains the readings as well, and something.
     *
     * @param jug its evidence, as that of a leak
     */
    static boolean explainsAsWell(double jug, double leak) {
        return jug > Fit.LEAK_OPEN && 0.5 * (squared(leak) - squared(jug)) < AS_LIKELY;
    }

    private static double squared(double value) {
        return value * value;
    }

    /**
     * Looks for one: dates are sifted on the straight forecast, and the likeliest is fitted.
     *
     * @param always the same leak as old as the log
     */
    private Optional<Suspected> began(Fit.Leak always) throws InterruptedException {
        List<LogEntry.Reading> believed = readings.believed();
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
        if (best < 0 || Math.sqrt(2 * better.get(best)) < BEGAN) {
            return Optional.empty();
        }
        FitSpace space = tight.leaking(reservoir.name(), dates.get(best));
        Posterior with = readings.posterior(space, start(space));
        double evidence = evidence(with);
        if (evidence < BEGAN
                || 0.5 * (squared(evidence) - squared(always.evidence())) < BEGAN_BETTER) {
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
        Fit.Leak leak =
                new Fit.Leak(
                        reservoir.name(),
                        evidence,
                        litresOf(space, with, 0),
                        litresOf(space, with, Fit.AT_90),
                        always.shownFromL(),
                        dates.get(first),
                        dates.get(last + 1),
                        always.drawnL(),
                        1,
                        List.of());
        return Optional.of(new Suspected(leak, new Found(space, with), Optional.empty()));
    }

    /** How much better the readings are with what stands last, in standard deviations. */
    private double evidence(Posterior with) {
        double deviate = with.mode()[with.mode().length - 1];
        double better =
                without.minusLogDensity() - with.minusLogDensity() + 0.5 * deviate * deviate;
        return Math.sqrt(Math.max(0, 2 * better));
    }

    /** A leak so many standard deviations above the likeliest, L/day. */
    private static double litresOf(FitSpace space, Posterior with, double deviates) {
        int k = space.size() - 1;
        return perDay(
                space.value(space.axes().get(k), with.mode()[k] + deviates * with.deviation(k)));
    }

    private Fit.Leak leak(Posterior with) throws InterruptedException {
        return new Fit.Leak(
                reservoir.name(),
                evidence(with),
                litresOf(leaking, with, 0),
                litresOf(leaking, with, Fit.AT_90),
                shownFromL(),
                0,
                0,
                drawnL(),
                1,
                instead(with));
    }

    private double drawnL() {
        Scenario logged = readings.logged();
        Season season =
                readings.season(tight.at(without.mode()).applied(logged), tight, without.mode());
        double m3 = 0;
        for (int i = 0; i < logged.trays().size(); i++) {
            if (logged.trays().get(i).isFedBy(reservoir.name())) {
                m3 += season.trays().get(i).drunkM3();
            }
        }
        return L_PER_M3 * m3 / logged.days();
    }

    /** What is claimed without a leak and might be one. */
    private List<Fit.Learned> instead(Posterior with) {
        if (!(evidence(with) > 0)) {
            return List.of();
        }
        List<Fit.Learned> leaky = Learning.learned(new Found(leaking, with));
        return Learning.learned(new Found(tight, without)).stream()
                .filter(
                        one ->
                                one.what().equals(Correction.THIRST)
                                        || one.what().equals(Correction.GROWTH))
                .filter(Fit.Learned::isOff)
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

    private double[] slope() throws InterruptedException {
        int k = leaking.size() - 1;
        double usual = perDay(leaking.value(leaking.axes().get(k), 0));
        double[] some = readings.at(leaking, Arrays.copyOf(without.mode(), k + 1));
        double[] none = readings.foretold(without.residual());
        double[] deviation = readings.deviation();
        double[] slope = new double[some.length];
        for (int i = 0; i < slope.length; i++) {
            double of = (some[i] - none[i]) / usual / deviation[i];
            slope[i] = Double.isNaN(of) ? 0 : of;
        }
        return slope;
    }

    /** What was found without a leak, and the usual one besides. */
    private Posterior.Start start(FitSpace leaking) {
        int k = leaking.size() - 1;
        double rise =
                perDay(
                                leaking.value(leaking.axes().get(k), HALF)
                                        - leaking.value(leaking.axes().get(k), -HALF))
                        / (2 * HALF);
        double[] deviation = readings.deviation();
        double[][] all = without.slope(deviation);
        for (int i = 0; i < all.length; i++) {
            all[i] = Arrays.copyOf(all[i], k + 1);
            all[i][k] = slope[i] * deviation[i] * rise;
        }
        return new Posterior.Start(Arrays.copyOf(without.mode(), k + 1), Optional.of(all));
    }

    private double shownFromL() throws InterruptedException {
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
                        return readings.forecasts(tight, points);
                    }

                    @Override
                    public double[] leaking(double litresPerDay) throws InterruptedException {
                        double[] point = Arrays.copyOf(without.mode(), k + 1);
                        point[k] = leaking.deviateOfLeak(litresPerDay);
                        return readings.at(leaking, point);
                    }

                    @Override
                    public double[][] slope() {
                        return without.slope(readings.deviation());
                    }

                    @Override
                    public double[] deviations(double[] foretold) {
                        return readings.deviations(foretold);
                    }
                };
        double wanted = Fit.LEAK_SAID + Fit.AT_90 * LeakLimit.SPREAD;
        return LeakLimit.litresPerDay(rig, k, wanted * without.resolution(slope), wanted);
    }

    private static double perDay(double m3PerS) {
        return m3PerS * L_PER_M3 * Time.DAY_S;
    }
}
