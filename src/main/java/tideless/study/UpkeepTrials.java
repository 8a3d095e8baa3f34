package tideless.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.Liquid;
import tideless.rig.Numerics;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.GrowthLost;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/**
 * Another way to keep a tray whose crop loses to salt or hunger, told in place of all else that
 * would change its solution once a whole run has shown that it helps.
 */
final class UpkeepTrials {
    /** As many rigs as a run has unless told otherwise: its next run says the same of them. */
    private static final int MEMBERS = 100;

    private UpkeepTrials() {}

    /** One for each feed of which a crop loses enough to be worth it; none for most rigs. */
    static List<UpkeepSearch.Found> of(Trace trace, long seed, Workers workers)
            throws InterruptedException {
        List<Liquid> feeds = new ArrayList<>();
        List<UpkeepSearch.Found> found = new ArrayList<>();
        Scenario scenario = trace.scenario();
        for (TrayTrace of : trace.trays()) {
            Liquid feed = scenario.feedOf(of.tray());
            if (lossFrac(of) >= UpkeepSearch.WORTH_FRAC && !feeds.contains(feed)) {
                feeds.add(feed);
                new UpkeepSearch(scenario, of.tray().id(), seed, MEMBERS, Double.NaN, workers)
                        .found()
                        .ifPresent(found::add);
            }
        }
        return found;
    }

    private static double lossFrac(TrayTrace of) {
        return of.lost().stream().mapToDouble(UpkeepSearch::ofSolution).max().orElse(0);
    }

    /** A whole run of one. */
    static Trace run(UpkeepSearch.Found found, Trace trace) {
        double stepS = trace.scenario().numerics().stepS();
        return Simulation.run(found.scenario().withNumerics(new Numerics(stepS)));
    }

    /**
     * The advice with those that have stood their trials.
     *
     * @param first the run as the user wrote it, judged
     * @param runs one of each, in their order
     */
    static Advice judged(Trials.Tried first, List<UpkeepSearch.Found> found, List<Trace> runs) {
        Advice advice = first.advice();
        for (int i = 0; i < found.size(); i++) {
            Trials.Tried tried =
                    new Trials.Tried(runs.get(i), Advisor.advise(runs.get(i), runs.get(i)));
            if (helps(first, tried, found.get(i).upkeep().tray())) {
                advice = told(advice, first.trace(), found.get(i), runs.get(i));
            }
        }
        return advice;
    }

    private static boolean helps(Trials.Tried first, Trials.Tried tried, VesselId tray) {
        return Improvement.gainFrac(first.trace(), tried.trace(), tray) >= Improvement.GAIN_FRAC
                && Improvement.dryHours(tried.trace()) <= Improvement.dryHours(first.trace())
                && !Improvement.harms(first.advice().verdict(), tried.advice().verdict());
    }

    private static Advice told(Advice advice, Trace trace, UpkeepSearch.Found found, Trace run) {
        Scenario scenario = trace.scenario();
        Liquid feed = scenario.feedOf(scenario.tray(found.upkeep().tray()).orElseThrow());
        Advice told = advice;
        for (int i = 0; i < trace.trays().size(); i++) {
            Tray tray = trace.trays().get(i).tray();
            if (scenario.feedOf(tray).equals(feed)) {
                Cure cure = cure(scenario, found, trace.trays().get(i), run.trays().get(i));
                told = told.withEachWarning(w -> w.vessel().equals(tray.id()) ? with(w, cure) : w);
            }
        }
        Advice all = told;
        return all.withTasks(all.tasks().stream().map(task -> withTold(task, all)).toList());
    }

    private static Warning with(Warning warning, Cure cure) {
        return CureTrials.OF_SOLUTION.contains(warning.kind()) || isKilledBySalt(warning)
                ? warning.withCures(List.of(cure))
                : warning;
    }

    private static boolean isKilledBySalt(Warning warning) {
        return warning.kind() == Warning.Kind.DIED
                && (warning.cause().kind() == Cause.Kind.SALT_KILLS
                        || warning.cause().kind() == Cause.Kind.SALT_KILLS_SEEDLINGS);
    }

    private static Task withTold(Task task, Advice told) {
        return told.warnings().stream()
                .filter(w -> task.isChange() && w.vessel().equals(task.vessel()))
                .flatMap(w -> w.cures().stream())
                .filter(c -> c.kind() == Cure.Kind.KEEP_OTHERWISE)
                .findFirst()
                .map(c -> task.withCures(List.of(c)))
                .orElse(task);
    }

    private static Cure cure(
            Scenario scenario, UpkeepSearch.Found found, TrayTrace was, TrayTrace is) {
        Facts facts = Facts.NONE;
        Optional<GrowthLost> before = worst(was);
        if (before.isPresent()) {
            GrowthLost after = is.lost().get(was.lost().indexOf(before.get()));
            facts =
                    facts.and(Quantity.GIVES_NOW, before.get().ownG())
                            .and(Quantity.GIVES_THEN, after.ownG());
            if (UpkeepSearch.ofSolution(after) >= UpkeepSearch.WORTH_FRAC) {
                facts = facts.and(Quantity.COULD_GIVE, after.unharmedG());
            }
        }
        return found.cure(scenario, facts);
    }

    /** Of the crops of a tray that which loses most; empty for none. */
    private static Optional<GrowthLost> worst(TrayTrace of) {
        GrowthLost worst = null;
        for (GrowthLost lost : of.lost()) {
            boolean isWorse =
                    worst == null || UpkeepSearch.ofSolution(lost) > UpkeepSearch.ofSolution(worst);
            worst = isWorse ? lost : worst;
        }
        return Optional.ofNullable(worst);
    }
}
