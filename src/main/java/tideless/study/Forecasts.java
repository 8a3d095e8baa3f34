package tideless.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Cure;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.sim.Simulation;
import tideless.sim.Trace;

/** Runs a scenario and its twin, has them judged, and tries what the advice would move. */
public final class Forecasts {
    private Forecasts() {}

    /**
     * Runs them one after the other.
     *
     * @param scenario what to run
     * @param seed of the rigs in which other ways to keep a tray are tried
     */
    public static Forecast of(Scenario scenario, long seed) {
        try {
            return of(scenario, seed, new InTurn());
        } catch (InterruptedException e) {
            throw new IllegalStateException("nobody interrupts what is done in turn", e);
        }
    }

    /**
     * A run of its own, before any of its advice is tried: several times as quick as a forecast.
     *
     * @param advice what it tells
     * @param feedTookFrac share of growth that salt and hunger took of the crop that lost most, 0-1
     */
    public record Sketch(Advice advice, double feedTookFrac) {}

    /** One run and what it tells. */
    public static Sketch sketch(Scenario scenario) {
        Trace trace = Simulation.run(scenario);
        Advice advice =
                Advisor.advise(
                        trace,
                        scenario.reservoirs().isEmpty()
                                ? trace
                                : Simulation.runUnread(twin(scenario)));
        double took =
                trace.trays().stream()
                        .flatMap(tray -> tray.lost().stream())
                        .mapToDouble(UpkeepSearch::ofSolution)
                        .max()
                        .orElse(0);
        return new Sketch(advice, took);
    }

    /**
     * The same, with others to do the runs, which share nothing that changes.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    public static Forecast of(Scenario scenario, long seed, Workers workers)
            throws InterruptedException {
        List<Supplier<Trace>> runs = runs(scenario);
        Judging judging =
                new Judging(
                        scenario, workers.each(runs.size(), i -> runs.get(i).get()), seed, workers);
        List<Supplier<Trace>> trials = judging.runs();
        return judging.after(workers.each(trials.size(), i -> trials.get(i).get()));
    }

    /**
     * The same with members that say how sure it is. An interruption keeps those that were run.
     *
     * @param members how many; below 2 for none
     * @throws InterruptedException when the workers are interrupted before the run itself is judged
     */
    public static Forecast of(Scenario scenario, long seed, int members, Workers workers)
            throws InterruptedException {
        Forecast alone = of(scenario, seed, workers);
        if (members < 2) {
            return alone;
        }
        Optional<Outlook> outlook = Outlook.of(scenario, members, seed, workers);
        Forecast sized =
                outlook.isEmpty() || outlook.get().members() < members
                        ? alone
                        : alone.withAdvice(
                                Enough.told(
                                        alone.advice(), scenario, outlook.get(), seed, workers));
        return withAirTried(sized, outlook, workers)
                .withMembers(members)
                .withOutlook(outlook)
                .withSurer(surer(alone, outlook, workers))
                .withStepError(outlook.map(of -> StepError.of(alone.trace())));
    }

    private static Forecast withAirTried(
            Forecast alone, Optional<Outlook> outlook, Workers workers) {
        try {
            return outlook.isEmpty()
                    ? alone
                    : alone.withAdvice(
                            FewerFlushes.told(
                                    AirStones.told(
                                            alone.advice(),
                                            alone.trace().scenario(),
                                            outlook.get(),
                                            alone.seed(),
                                            workers),
                                    alone.trace().scenario(),
                                    outlook.get(),
                                    alone.seed(),
                                    workers));
        } catch (InterruptedException e) {
            return alone; // what was run is told without it
        }
    }

    private static Optional<Cure> surer(
            Forecast alone, Optional<Outlook> outlook, Workers workers) {
        try {
            return outlook.isEmpty() ? Optional.empty() : Surer.of(alone, outlook.get(), workers);
        } catch (InterruptedException e) {
            return Optional.empty(); // what was run is told without it
        }
    }

    /**
     * The run itself, its twin but where there is no reservoir and it would be the run itself, and
     * those at both ends of the contents where they matter.
     */
    private static List<Supplier<Trace>> runs(Scenario scenario) {
        List<Supplier<Trace>> runs = new ArrayList<>();
        runs.add(() -> Simulation.run(scenario));
        if (!scenario.reservoirs().isEmpty()) {
            runs.add(() -> Simulation.runUnread(twin(scenario)));
        }
        if (ContentsEnd.matters(scenario)) {
            for (ContentsEnd end : ContentsEnd.values()) {
                runs.add(() -> Simulation.run(end.of(scenario)));
            }
        }
        return runs;
    }

    /** The runs judged, and what their advice wants tried. */
    private static final class Judging {
        private final Trace trace;
        private final Trace unlimited;
        private final List<PhCourse> ph;
        private final boolean hasEnds; // of what crops hold, each with a run of its own
        private final Advice advice;
        private final List<Trials.Trial> trials;
        private final List<CureTrials.Trial> cures;
        private final List<UpkeepSearch.Found> upkeeps;
        private final List<HeatTrials.Trial> heats;
        private final Set<LocalDate> fills;
        private final Set<VesselId> filledOnce;
        private final long seed;

        Judging(Scenario scenario, List<Trace> traces, long seed, Workers workers)
                throws InterruptedException {
            this.seed = seed;
            trace = traces.get(0);
            int twin = scenario.reservoirs().isEmpty() ? 0 : 1;
            unlimited = traces.get(twin);
            List<Trace> read = new ArrayList<>(List.of(trace));
            read.addAll(traces.subList(twin + 1, traces.size()));
            ph = PhCourse.over(read);
            advice = Advisor.advise(trace, unlimited);
            hasEnds = read.size() > 1;
            trials = Trials.of(trace, unlimited, advice);
            cures = CureTrials.of(trace, advice);
            upkeeps = UpkeepTrials.of(trace, seed, workers);
            heats = HeatTrials.of(trace, advice);
            fills = Fills.of(advice);
            filledOnce = OneFilling.of(advice);
        }

        /**
         * Each trial and its twin, then that of each cure, upkeep and change against heat, then the
         * one run with all fills before absences, then the one with deeper trays.
         */
        List<Supplier<Trace>> runs() {
            List<Supplier<Trace>> runs = new ArrayList<>();
            for (Trials.Trial trial : trials) {
                runs.add(() -> Simulation.run(trial.scenario()));
                runs.add(() -> Simulation.runUnread(twin(trial.scenario())));
            }
            cures.forEach(cure -> runs.add(() -> CureTrials.run(cure)));
            upkeeps.forEach(upkeep -> runs.add(() -> UpkeepTrials.run(upkeep, trace)));
            heats.forEach(heat -> runs.add(() -> HeatTrials.run(heat)));
            if (!fills.isEmpty()) {
                runs.add(() -> Fills.run(trace.scenario(), fills));
            }
            if (!filledOnce.isEmpty()) {
                runs.add(() -> OneFilling.run(trace.scenario(), filledOnce));
            }
            return runs;
        }

        Forecast after(List<Trace> runs) {
            List<Trials.Tried> tried = new ArrayList<>();
            for (int i = 0; i < 2 * trials.size(); i += 2) {
                Trace run = runs.get(i);
                tried.add(new Trials.Tried(run, Advisor.advise(run, runs.get(i + 1))));
            }
            Advice judged = Trials.judged(new Trials.Tried(trace, advice), trials, tried);
            int afterCures = 2 * trials.size() + cures.size();
            judged =
                    CureTrials.judged(
                            new Trials.Tried(trace, judged),
                            cures,
                            runs.subList(2 * trials.size(), afterCures));
            int afterUpkeeps = afterCures + upkeeps.size();
            judged =
                    UpkeepTrials.judged(
                            new Trials.Tried(trace, judged),
                            upkeeps,
                            runs.subList(afterCures, afterUpkeeps));
            int afterHeats = afterUpkeeps + heats.size();
            judged =
                    HeatTrials.judged(
                            new Trials.Tried(trace, judged),
                            heats,
                            runs.subList(afterUpkeeps, afterHeats));
            if (!fills.isEmpty()) {
                judged = Fills.judged(judged, fills, runs.get(afterHeats), unlimited);
            }
            if (!filledOnce.isEmpty()) {
                Trace deep = runs.get(runs.size() - 1);
                judged = OneFilling.judged(judged, trace.scenario(), deep);
            }
            judged = AbsenceTrials.judged(judged, trace.scenario(), seed);
            judged = CupTrials.judged(new Trials.Tried(trace, judged));
            judged = oneLevelTold(hasEnds ? withAcidity(judged) : judged);
            Optional<Warning> first =
                    Warning.firstOf(judged.warnings(), trace.scenario().climate());
            judged = judged.withVerdict(judged.verdict().withFirst(first));
            return new Forecast(
                    trace,
                    unlimited,
                    judged,
                    ph,
                    1,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    seed);
        }

        /** Judged last: the runs of trials, each of its own contents alone, are compared alike. */
        private Advice withAcidity(Advice judged) {
            return Advisor.withAcidity(
                    judged,
                    trace,
                    ph.stream().map(PhCourse::lowest).toList(),
                    ph.stream().map(PhCourse::highest).toList());
        }
    }

    /** Where a run has shown that a valve is to be moved, no other level is told beside it. */
    static Advice oneLevelTold(Advice advice) {
        Set<VesselId> moved =
                advice.tasks().stream()
                        .filter(task -> task.kind() == Task.Kind.MOVE_VALVE && !task.isDone())
                        .map(Task::vessel)
                        .collect(Collectors.toSet());
        return advice.withEachWarning(
                w -> moved.contains(w.vessel()) ? w.without(Cure.Kind.LOWER_LEVEL) : w);
    }

    /** The same rig with reservoirs that are refilled the moment they are empty. */
    static Scenario twin(Scenario scenario) {
        return scenario.withReservoirs(
                scenario.reservoirs().stream()
                        .map(r -> r.withRefill(r.refill().on(Reservoir.Refill.When.WHEN_EMPTY)))
                        .toList());
    }
}
