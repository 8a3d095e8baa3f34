package tideless.study;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.util.FastMath;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.Filling;
import tideless.rig.Liquid;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Recipe;
import tideless.solution.SourceWater;

/**
 * Tries the cures of a solution that is too strong, too lean or short of one nutrient, each in a
 * run of its own. What puts it right is told first, what halves it next, then what no file can say;
 * what does not help in its run is not told.
 */
final class CureTrials {
    static final Set<Warning.Kind> OF_SOLUTION =
            EnumSet.of(
                    Warning.Kind.SALT_WILTED,
                    Warning.Kind.TOO_SALTY,
                    Warning.Kind.TOO_LEAN,
                    Warning.Kind.SHORT_OF_ONE);

    /** Strengths of a leaner feed, as shares of the one there is, the first that does. */
    private static final double[] LEANER = {0.85, 0.7, 0.55, 0.4};

    /** Shares of plain water in each filling of a reservoir, the first that does. */
    private static final double[] WATER = {0.3, 0.5, 0.7};

    /** Plants that fare better drink more: lost anyway, so much sooner is no harm, d; assumed. */
    private static final int SOONER_DAYS = 7;

    /** Nobody changes a solution more often than so many days apart; assumed. */
    private static final double OFTENEST_DAYS = 5;

    /** A gain that is worth another warning, as a share of the harvest; assumed. */
    private static final double WELL_WORTH_FRAC = 0.1;

    /** What leaves this share of an excess over its days is worth telling; assumed. */
    private static final double HALF = 0.5;

    /** Told to half a tenth, as a pen shows it, mS/cm. */
    private static final double TOLD_TO_MS_PER_CM = 0.05;

    private CureTrials() {}

    /**
     * A cure to try.
     *
     * @param asked as the advice has it
     * @param told with the figures of this trial
     */
    record Trial(Cure asked, Cure told, Optional<VesselId> vessel, Scenario scenario) {
        boolean isOf(Cure cure, VesselId of) {
            return asked.equals(cure) && (vessel.isEmpty() || vessel.get().equals(of));
        }
    }

    /** What there is to try; nothing for a rig whose solutions are well. */
    static List<Trial> of(Trace trace, Advice advice) {
        Map<String, Trial> trials = new LinkedHashMap<>();
        for (Warning warning : advice.warnings()) {
            if (OF_SOLUTION.contains(warning.kind())) {
                for (Cure cure : warning.cures()) {
                    for (Trial trial : tries(trace.scenario(), warning, cure)) {
                        trials.putIfAbsent(
                                trial.asked() + " " + trial.told() + trial.vessel(), trial);
                    }
                }
            }
        }
        return List.copyOf(trials.values());
    }

    /** A run of one. */
    static Trace run(Trial trial) {
        return Simulation.run(trial.scenario());
    }

    private static List<Trial> tries(Scenario scenario, Warning warning, Cure cure) {
        VesselId vessel = warning.vessel();
        Tray tray = scenario.tray(vessel).orElseThrow();
        Liquid feed = scenario.feedOf(tray);
        double ec = ElectricalConductivity.at25MsPerCm(feed.composition());
        return switch (cure.kind()) {
            case CHANGE_AT_LIMIT, FRESH_SOLUTION_SOONER ->
                    scenario.visits().flush() == Visits.Flush.NEVER
                            ? List.of(
                                    new Trial(
                                            cure,
                                            cure,
                                            Optional.empty(),
                                            scenario.withVisits(
                                                    scenario.visits()
                                                            .withFlush(Visits.Flush.AT_LIMIT))))
                            : List.of();
            case LEANER_FEED -> leaner(scenario, tray, feed, ec, cure);
            case STRONGER_FEED ->
                    cure.facts().has(Quantity.FEED_EC)
                            ? fed(scenario, cure.facts().get(Quantity.FEED_EC), feed)
                                    .map(other -> new Trial(cure, cure, Optional.of(vessel), other))
                                    .stream()
                                    .toList()
                            : List.of();
            case RAIN_WATER -> inRain(scenario, cure);
            case OTHER_RECIPE -> ofRecipe(scenario, tray, feed, ec, cure);
            case TOP_UP_WITH_WATER -> thinnedByHand(scenario, tray, cure);
            case WATER_IN_THE_NEXT_REFILL -> thinned(scenario, tray, warning, cure);
            case FEED_IN_PLACE_OF_WATER -> fedByHalf(scenario, tray, cure);
            default -> List.of();
        };
    }

    // ---- the feed ------------------------------------------------------------------------------

    private static List<Trial> leaner(
            Scenario scenario, Tray tray, Liquid feed, double ec, Cure cure) {
        List<Trial> trials = new ArrayList<>();
        for (double frac : LEANER) {
            boolean isTold = cure.facts().has(Quantity.WANTED_EC);
            double to = isTold ? cure.facts().get(Quantity.WANTED_EC) : frac * ec;
            double shown = FastMath.rint(to / TOLD_TO_MS_PER_CM) * TOLD_TO_MS_PER_CM;
            double low = tray.limits().ecLowMsPerCm();
            Facts strengths =
                    Facts.of(Quantity.FEED_EC, ec).and(Quantity.WANTED_EC, isTold ? to : shown);
            Facts facts =
                    (isTold ? to : shown) < low
                            ? strengths.and(Quantity.BAND_FROM, low)
                            : strengths;
            fed(scenario, isTold ? to : shown, feed)
                    .ifPresent(
                            other ->
                                    trials.add(
                                            new Trial(
                                                    cure,
                                                    new Cure(Cure.Kind.LEANER_FEED, facts),
                                                    Optional.of(tray.id()),
                                                    other)));
            if (isTold) {
                break;
            }
        }
        return trials;
    }

    /** With the feed of a tray at another strength, for all that share it. */
    static Optional<Scenario> fed(Scenario scenario, double ec, Liquid feed) {
        Composition water = scenario.sourceWater().composition();
        return new FeedMaker(feed.composition(), water)
                .made(ec, feed, water)
                .map(other -> with(scenario, feed, other));
    }

    private static Scenario with(Scenario scenario, Liquid feed, Liquid other) {
        if (feed.equals(scenario.feed())) {
            return scenario.withFeed(other);
        }
        Map<VesselId, Liquid> own = new LinkedHashMap<>(scenario.ownFeeds());
        own.replaceAll((vessel, liquid) -> liquid.equals(feed) ? other : liquid);
        return scenario.withOwnFeeds(own);
    }

    private static List<Trial> inRain(Scenario scenario, Cure cure) {
        Composition water = scenario.sourceWater().composition();
        Composition rain = SourceWater.named("rain").orElseThrow().composition();
        UnaryOperator<Liquid> again =
                feed ->
                        new FeedMaker(feed.composition(), water)
                                .inSoftWater()
                                .made(
                                        ElectricalConductivity.at25MsPerCm(feed.composition()),
                                        feed,
                                        rain)
                                .orElse(feed);
        return List.of(
                new Trial(
                        cure,
                        cure,
                        Optional.empty(),
                        scenario.withFeeds(again)
                                .withSourceWater(new Liquid(scenario.sourceWater().name(), rain))));
    }

    private static List<Trial> ofRecipe(
            Scenario scenario, Tray tray, Liquid feed, double ec, Cure cure) {
        Composition water = scenario.sourceWater().composition();
        return Recipe.named(cure.facts().of())
                .flatMap(
                        recipe ->
                                new FeedMaker(recipe.composition(), Composition.WATER)
                                        .made(ec, feed, water))
                .map(
                        other ->
                                new Trial(
                                        cure,
                                        cure,
                                        Optional.of(tray.id()),
                                        with(scenario, feed, other)))
                .stream()
                .toList();
    }

    // ---- plain water ---------------------------------------------------------------------------

    private static List<Trial> thinnedByHand(Scenario scenario, Tray tray, Cure cure) {
        Filling.ByHand hand = (Filling.ByHand) tray.filling();
        Facts facts = cure.facts();
        LocalDate from = facts.on() == null ? scenario.start() : facts.on().toLocalDate();
        double m3 = facts.get(Quantity.WATER) / 1000;
        List<Pouring.Share> shares =
                facts.has(Quantity.LATER_SHARE)
                        ? List.of(new Pouring.Share(from, facts.get(Quantity.LATER_SHARE)))
                        : List.of();
        Pouring with = new Pouring(false, List.of(new Pouring.Dose(from, m3)), shares);
        return List.of(
                new Trial(cure, cure, Optional.of(tray.id()), by(scenario, tray, hand, with)));
    }

    private static Scenario by(Scenario scenario, Tray tray, Filling.ByHand hand, Pouring with) {
        return scenario.withTray(
                tray.withFilling(
                        new Filling.ByHand(hand.toLevelM(), hand.days(), with, hand.inSteps())));
    }

    private static List<Trial> thinned(Scenario scenario, Tray tray, Warning warning, Cure cure) {
        LocalDate from =
                (cure.facts().on() == null ? warning.from() : cure.facts().on()).toLocalDate();
        List<Trial> trials = new ArrayList<>();
        for (double frac : WATER) {
            List<Reservoir> reservoirs =
                    scenario.reservoirs().stream()
                            .map(r -> tray.isFedBy(r.name()) ? sharing(r, from, frac) : r)
                            .toList();
            Cure told =
                    new Cure(
                            Cure.Kind.WATER_SHARE,
                            Facts.of(Quantity.LATER_SHARE, frac).on(from.atStartOfDay()));
            trials.add(
                    new Trial(
                            cure,
                            told,
                            Optional.of(tray.id()),
                            scenario.withReservoirs(reservoirs)));
        }
        return trials;
    }

    private static Reservoir sharing(Reservoir reservoir, LocalDate from, double frac) {
        Reservoir.Refill refill = reservoir.refill();
        return reservoir.withRefill(
                new Reservoir.Refill(
                        refill.when(),
                        refill.belowFrac(),
                        new Pouring(
                                false,
                                refill.with().water(),
                                List.of(new Pouring.Share(from, frac)))));
    }

    private static List<Trial> fedByHalf(Scenario scenario, Tray tray, Cure cure) {
        if (!(tray.filling() instanceof Filling.ByHand hand)) {
            return List.of();
        }
        Pouring half =
                new Pouring(false, List.of(), List.of(new Pouring.Share(scenario.start(), HALF)));
        return List.of(
                new Trial(cure, cure, Optional.of(tray.id()), by(scenario, tray, hand, half)));
    }

    // ---- what came of it -----------------------------------------------------------------------

    /**
     * The advice with cures that have stood their trials.
     *
     * @param first the run as the user wrote it, judged
     * @param runs one of each trial, in their order
     */
    static Advice judged(Trials.Tried first, List<Trial> trials, List<Trace> runs) {
        if (trials.isEmpty()) {
            return first.advice();
        }
        List<Trials.Tried> tried =
                runs.stream().map(run -> new Trials.Tried(run, Advisor.advise(run, run))).toList();
        List<Task> tasks = changes(first.advice(), trials, tried);
        Advice told =
                first.advice()
                        .withEachWarning(
                                warning ->
                                        OF_SOLUTION.contains(warning.kind())
                                                ? warning.withCures(
                                                        cures(first, trials, tried, warning))
                                                : warning);
        return told.withTasks(
                Advisor.inOrder(
                        tasks.stream().map(task -> withTold(task, told)).toList(), first.trace()));
    }

    /**
     * The tasks with every change of solution that a run has which changes it whenever it is due,
     * where the run as written has none and one is advised.
     */
    private static List<Task> changes(Advice advice, List<Trial> trials, List<Trials.Tried> tried) {
        List<Task> tasks = new ArrayList<>(advice.tasks());
        for (int i = 0; i < trials.size(); i++) {
            if (isChange(trials.get(i).asked().kind())) {
                List<Task> advised = tasks.stream().filter(CureTrials::isAdvisedChange).toList();
                for (Task once : advised) {
                    List<Task> all =
                            tried.get(i).advice().tasks().stream()
                                    .filter(t -> t.kind() == once.kind() && t.isDone())
                                    .filter(t -> t.vessel().equals(once.vessel()))
                                    .filter(t -> t.crop().equals(once.crop()))
                                    .map(t -> t.withIsDone(false))
                                    .toList();
                    if (!all.isEmpty()) {
                        tasks.remove(once);
                        tasks.addAll(all);
                    }
                }
                break;
            }
        }
        return tasks;
    }

    private static boolean isChange(Cure.Kind kind) {
        return kind == Cure.Kind.CHANGE_AT_LIMIT || kind == Cure.Kind.FRESH_SOLUTION_SOONER;
    }

    private static boolean isAdvisedChange(Task task) {
        return !task.isDone() && task.isChange();
    }

    /** A cure with what its run shows of it: of changes since when and how often they come. */
    private static Cure shown(Trial trial, Trials.Tried tried, Warning warning) {
        List<Task> changes =
                tried.advice().tasks().stream()
                        .filter(t -> t.vessel().equals(warning.vessel()))
                        .filter(Task::isChange)
                        .toList();
        if (!isChange(trial.told().kind()) || changes.isEmpty()) {
            return trial.told();
        }
        Facts facts = trial.told().facts().on(changes.get(0).due());
        if (changes.size() > 1) {
            double days =
                    Duration.between(changes.get(0).due(), changes.get(changes.size() - 1).due())
                                    .toHours()
                            / 24.0
                            / (changes.size() - 1);
            facts = facts.and(Quantity.EVERY, Math.max(1, FastMath.rint(days)));
        }
        return new Cure(trial.told().kind(), facts);
    }

    /** A change of solution has the cures of its warning, as far as it had any of them. */
    private static Task withTold(Task task, Advice told) {
        Warning.Kind kind =
                task.kind() == Task.Kind.FLUSH ? Warning.Kind.TOO_SALTY : Warning.Kind.TOO_LEAN;
        return task.isChange()
                ? told.warnings().stream()
                        .filter(w -> w.kind() == kind && w.vessel().equals(task.vessel()))
                        .filter(w -> w.crop().equals(task.crop()))
                        .findFirst()
                        .map(w -> task.withCures(w.cures()))
                        .orElse(task)
                : task;
    }

    private static List<Cure> cures(
            Trials.Tried first, List<Trial> trials, List<Trials.Tried> tried, Warning warning) {
        List<Cure> right = new ArrayList<>();
        List<Cure> better = new ArrayList<>();
        List<Cure> untried = new ArrayList<>();
        for (Cure cure : warning.cures()) {
            boolean isTried = false;
            boolean isTold = false;
            Optional<Cure> helps = Optional.empty();
            for (int i = 0; i < trials.size() && !isTold; i++) {
                if (trials.get(i).isOf(cure, warning.vessel())) {
                    isTried = true;
                    double left = leftFrac(first, tried.get(i), warning);
                    Cure shown = shown(trials.get(i), tried.get(i), warning);
                    if (left == 0 && !isTooOften(shown)) {
                        right.add(shown);
                        isTold = true;
                    } else if (left <= HALF) {
                        helps = // the strongest of them
                                Optional.of(shown);
                    }
                }
            }
            if (!isTried) {
                untried.add(cure);
            } else if (!isTold) {
                helps.ifPresent(better::add);
            }
        }
        right.addAll(better);
        right.addAll(untried);
        return right;
    }

    private static boolean isTooOften(Cure cure) {
        return cure.facts().has(Quantity.EVERY) && cure.facts().get(Quantity.EVERY) < OFTENEST_DAYS;
    }

    /** Share of what is warned of that is left, 0 for nothing; infinite where it harms. */
    private static double leftFrac(Trials.Tried first, Trials.Tried tried, Warning warning) {
        if (Improvement.harms(first.advice().verdict(), tried.advice().verdict(), SOONER_DAYS)) {
            return Double.POSITIVE_INFINITY;
        }
        for (Tray tray : first.trace().scenario().trays()) {
            if (Improvement.gainFrac(first.trace(), tried.trace(), tray.id())
                    < -Improvement.BORNE_LOSS_FRAC) {
                return Double.POSITIVE_INFINITY;
            }
        }
        double gain = Improvement.gainFrac(first.trace(), tried.trace(), warning.vessel());
        boolean isElsewhere =
                tried.advice().warnings().stream()
                        .filter(w -> OF_SOLUTION.contains(w.kind()) && w.kind() != warning.kind())
                        .anyMatch(w -> Improvement.isNew(first.advice().warnings(), w));
        double was = excess(warning);
        double is =
                tried.advice().warnings().stream()
                        .filter(w -> w.kind() == warning.kind())
                        .filter(w -> w.vessel().equals(warning.vessel()))
                        .filter(w -> w.crop().equals(warning.crop()))
                        .mapToDouble(CureTrials::excess)
                        .reduce(0, Double::sum);
        if (isElsewhere) {
            return gain >= WELL_WORTH_FRAC ? HALF : Double.POSITIVE_INFINITY;
        }
        return is / was;
    }

    /** How far past its limit and for how long, in its unit times hours; never 0. */
    private static double excess(Warning warning) {
        double hours = 1 + Duration.between(warning.from(), warning.until()).toHours();
        double by =
                Double.isNaN(warning.measure().value())
                        ? 1
                        : Math.abs(warning.measure().value() - warning.measure().limit());
        return hours * Math.max(1e-3, by);
    }
}
