package tideless.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tideless.rig.Correction;
import tideless.rig.LogEntry;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;

/** One fit in the making. */
final class Learning {
    /** Pairs are tied that correlate so much and each of which keeps so much of its doubt. */
    private static final double TIED_CORRELATION = 0.5;

    private static final double TIED_LEFT = 0.5;

    private final Scenario scenario;
    private final LoggedReadings readings;
    private final long seed;

    Learning(LoggedReadings readings, long seed) {
        this.readings = readings;
        this.seed = seed;
        scenario = readings.scenario();
    }

    /** Learns. */
    Fit fit(int members) throws InterruptedException {
        FitSpace space = FitSpace.of(readings.coarse());
        Found without = new Found(space, readings.posterior(space));
        List<Fit.Leak> leaks = new ArrayList<>();
        Optional<Found> other = Optional.empty();
        Found best = without;
        double most = Fit.LEAK_SAID;
        for (Reservoir reservoir : scenario.reservoirs()) {
            if (readings.countOf(reservoir.id()) < 2) {
                continue;
            }
            LeakSearch.Suspected with = LeakSearch.of(readings, without, reservoir);
            leaks.add(with.leak());
            if (!with.leak().isSaid() && !with.leak().instead().isEmpty()) {
                other = Optional.of(with.found());
            }
            Optional<Found> before = other;
            if (with.leak().evidence() > most) {
                most = with.leak().evidence();
                best = with.found();
                other = with.jug().or(() -> before);
            }
        }
        return fit(best, other, leaks, members);
    }

    /**
     * The whole of it.
     *
     * @param other what it says as well, where the log does not tell which
     */
    private Fit fit(Found found, Optional<Found> other, List<Fit.Leak> leaks, int members)
            throws InterruptedException {
        List<Fit.Learned> learned = learned(found);
        Map<String, Double> left = new LinkedHashMap<>();
        for (Fit.Learned one : learned) {
            left.put(Correction.name(one.what(), one.of()), Math.min(1, one.left()));
        }
        Correction correction = found.space().at(found.posterior().mode(), left);
        List<FittedRigs.Pair> pairs = new FittedRigs(readings, seed).pairs(found, other, members);
        double lastS = scenario.log().lastS();
        ComingDates before =
                new ComingDates(pairs.stream().map(FittedRigs.Pair::stated).toList(), lastS);
        ComingDates after =
                new ComingDates(pairs.stream().map(FittedRigs.Pair::corrected).toList(), lastS);
        NextReadings next = new NextReadings(readings, found, after);
        List<Fit.Judged> judged = judged(found, next.figure());
        return new Fit(
                scenario,
                correction,
                learned,
                leaks,
                judged,
                idle(found),
                tied(found, learned),
                next.next(),
                before.dates(after),
                new Fit.Change(before.drunkL(), after.drunkL()),
                new Fit.Change(before.toDrinkL(), after.toDrinkL()),
                Oddities.of(scenario, judged, readings.lived()),
                pairs.size(),
                members);
    }

    /** What was learned of each unknown that a correction keeps. */
    static List<Fit.Learned> learned(Found found) {
        FitSpace space = found.space();
        Posterior posterior = found.posterior();
        List<Fit.Learned> learned = new ArrayList<>();
        for (int k = 0; k < space.size(); k++) {
            FitSpace.Axis axis = space.axes().get(k);
            if (!FitSpace.isKept(axis)) {
                continue;
            }
            double at = posterior.mode()[k];
            double spread = posterior.deviation(k);
            learned.add(
                    new Fit.Learned(
                            axis.what(),
                            axis.of(),
                            space.value(axis, at),
                            space.value(axis, at - Fit.AT_90 * spread),
                            space.value(axis, at + Fit.AT_90 * spread),
                            spread,
                            at));
        }
        return learned;
    }

    private static List<Fit.Tied> tied(Found found, List<Fit.Learned> learned) {
        FitSpace space = found.space();
        Posterior posterior = found.posterior();
        double[][] directions =
                learned.stream()
                        .map(one -> space.direction(space.place(one.what(), one.of())))
                        .toArray(double[][]::new);
        List<Fit.Tied> tied = new ArrayList<>();
        for (int i = 0; i < learned.size(); i++) {
            for (int j = i + 1; j < learned.size(); j++) {
                if (Math.abs(posterior.correlation(directions[i], directions[j])) > TIED_CORRELATION
                        && learned.get(i).left() > TIED_LEFT
                        && learned.get(j).left() > TIED_LEFT) {
                    tied.add(new Fit.Tied(learned.get(i), learned.get(j)));
                }
            }
        }
        return tied;
    }

    private List<Fit.Judged> judged(Found found, double[] figure) throws InterruptedException {
        Posterior posterior = found.posterior();
        double[] after = readings.at(found.space(), posterior.mode());
        List<LogEntry.Reading> believed = readings.believed();
        List<Fit.Judged> judged = new ArrayList<>();
        for (int i = 0; i < believed.size(); i++) {
            judged.add(
                    new Fit.Judged(
                            believed.get(i),
                            readings.stated()[i],
                            after[i],
                            readings.deviation()[i],
                            posterior.weight()[i],
                            posterior.worth(figure, i)));
        }
        return judged;
    }

    private List<Fit.Judged> idle(Found found) {
        FitSpace space = found.space();
        Scenario logged = readings.logged();
        double[] nothing = new double[space.size()];
        List<Double> before =
                readings.season(space.at(nothing).applied(logged), space, nothing).read();
        double[] mode = found.posterior().mode();
        List<Double> after = readings.season(space.at(mode).applied(logged), space, mode).read();
        List<LogEntry.Reading> all = scenario.log().readings();
        List<Fit.Judged> idle = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).counts() && !all.get(i).what().teaches()) {
                idle.add(new Fit.Judged(all.get(i), before.get(i), after.get(i), Double.NaN, 0, 0));
            }
        }
        return idle;
    }
}
