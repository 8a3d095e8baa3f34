package tideless.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.util.FastMath;
import tideless.advice.Advice;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.rig.Liquid;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.sim.TraySeason;
import tideless.solution.ElectricalConductivity;

/**
 * Tries leaner feeds, within the band of every crop that gets them, for a tray whose solution is
 * changed again and again: the strongest with which it is changed half as often, that costs no
 * harvest in its season and no rig in all members.
 */
final class FewerFlushes {
    /** Who drains a tray oftener than this in a season looks for another feed; assumed. */
    static final int OFTEN = 4;

    /** What is worth another feed, as a share of the changes; assumed. */
    private static final double HALF = 0.5;

    /** A pen tells feeds this far apart, and a grower mixes no closer, mS/cm. */
    private static final double STEP_MS_PER_CM = 0.1;

    private final Scenario scenario;
    private final Tray tray;
    private final Liquid feed;

    private FewerFlushes(Scenario scenario, VesselId tray) {
        this.scenario = scenario;
        this.tray = scenario.tray(tray).orElseThrow();
        feed = scenario.feedOf(this.tray);
    }

    /**
     * The advice with what was found, as the first cure of each flush of the tray that is flushed
     * oftenest.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    static Advice told(
            Advice advice, Scenario scenario, Outlook outlook, long seed, Workers workers)
            throws InterruptedException {
        Optional<VesselId> often = oftenest(advice);
        if (often.isEmpty()) {
            return advice;
        }
        FewerFlushes trials = new FewerFlushes(Ensemble.atEnsembleStep(scenario), often.get());
        Optional<Cure> cure = trials.found(outlook, seed, workers);
        if (cure.isEmpty()) {
            return advice;
        }
        return advice.withTasks(
                advice.tasks().stream()
                        .map(
                                task ->
                                        task.kind() == Task.Kind.FLUSH
                                                        && task.vessel().equals(often.get())
                                                ? task.withCures(List.of(cure.get()))
                                                : task)
                        .toList());
    }

    private static Optional<VesselId> oftenest(Advice advice) {
        Map<VesselId, Integer> times = new LinkedHashMap<>();
        for (Task task : advice.tasks()) {
            if (task.kind() == Task.Kind.FLUSH && task.isDone()) {
                times.merge(task.vessel(), 1, Integer::sum);
            }
        }
        return times.entrySet().stream()
                .filter(e -> e.getValue() > OFTEN)
                .reduce((a, b) -> b.getValue() > a.getValue() ? b : a)
                .map(Map.Entry::getKey);
    }

    private Optional<Cure> found(Outlook outlook, long seed, Workers workers)
            throws InterruptedException {
        Surroundings shared = Surroundings.forSeasons(scenario);
        Outcome given = outcome(scenario, shared);
        double is = ElectricalConductivity.at25MsPerCm(feed.composition());
        for (double ec : leaner(is)) {
            Optional<Scenario> so = CureTrials.fed(scenario, ec, feed);
            if (so.isPresent()) {
                Outcome outcome = outcome(so.get(), shared);
                if (outcome.changes() <= HALF * given.changes()
                        && outcome.isNoWorse(given)
                        && Outlook.chance(so.get(), outlook.members(), seed, workers)
                                >= outlook.chance() - Outlook.HARDLY_FEWER_FRAC) {
                    return Optional.of(
                            new Cure(
                                    Cure.Kind.KEEP_OTHERWISE,
                                    Facts.of(Quantity.FEED_EC, is)
                                            .and(Quantity.WANTED_EC, ec)
                                            .and(Quantity.CHANGES_NOW, given.changes())
                                            .and(Quantity.CHANGES_THEN, outcome.changes())));
                }
            }
        }
        return Optional.empty();
    }

    /** As a pen shows them, down to the greatest least of the crops that get this feed, mS/cm. */
    private List<Double> leaner(double thanMsPerCm) {
        double least =
                scenario.trays().stream()
                        .filter(of -> scenario.feedOf(of).equals(feed))
                        .mapToDouble(of -> of.limits().ecLowMsPerCm())
                        .max()
                        .orElse(0);
        List<Double> strengths = new ArrayList<>();
        int step = (int) FastMath.ceil(thanMsPerCm / STEP_MS_PER_CM - 1e-6) - 1;
        while (step > 0 && step * STEP_MS_PER_CM >= least - 1e-9) {
            strengths.add(FastMath.rint(step * STEP_MS_PER_CM * 100) / 100);
            step--;
        }
        return strengths;
    }

    /**
     * What came of a season.
     *
     * @param changes of the tray's solution, flushed or renewed
     * @param harmedH hours dry, stranded, wilted or drowned of all trays, h
     * @param grams of all plants of each tray
     */
    private record Outcome(int changes, double harmedH, List<Double> grams) {
        boolean isNoWorse(Outcome than) {
            boolean loses = harmedH > than.harmedH();
            for (int i = 0; i < grams.size(); i++) {
                loses |= grams.get(i) < (1 - Improvement.BORNE_LOSS_FRAC) * than.grams().get(i);
            }
            return !loses;
        }
    }

    private Outcome outcome(Scenario so, Surroundings shared) {
        Season season = Simulation.season(so, shared);
        int changes = 0;
        for (Event event : season.events()) {
            boolean isChange =
                    event.kind() == Event.Kind.FLUSH || event.kind() == Event.Kind.FRESH_SOLUTION;
            changes += isChange && event.vessel().equals(tray.id()) ? 1 : 0;
        }
        double harmedH = 0;
        List<Double> grams = new ArrayList<>();
        for (int i = 0; i < season.trays().size(); i++) {
            TraySeason of = season.trays().get(i);
            harmedH += of.dryH() + of.strandedH() + of.wiltedH() + of.drownedH();
            double sumG = 0;
            for (int n = 0; n < of.yields().size(); n++) {
                Planting planting = so.trays().get(i).planted(n).planting();
                TraySeason.Yield yield = of.yields().get(n);
                sumG +=
                        planting.plants()
                                * (planting.fruits() ? yield.fruitFreshG() : yield.allG());
            }
            grams.add(sumG);
        }
        return new Outcome(changes, harmedH, grams);
    }
}
