package tideless.study;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.apache.commons.math3.util.FastMath;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Measure;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.advice.Unit;
import tideless.advice.VisitTimes;
import tideless.advice.Warning;
import tideless.physics.StillWater;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.PlantingTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/**
 * Tries what one run's advice proposes for a valve: the move is told where a run with it is better
 * by {@link Improvement}, and struck out elsewhere.
 */
final class Trials {
    /** A float is set no finer than this by hand, m; common practice, no source. */
    static final double STEP_M = 0.01;

    /** Days between two steps, so that roots follow; assumed, as roots get used to a level in 7. */
    static final int STEP_DAYS = 7;

    /** Of the hanging roots this share is wet; the trade's rule of thumb. */
    private static final double WET_FRAC = 1.0 / 3;

    private Trials() {}

    /**
     * A move to try.
     *
     * @param tray whose valve
     * @param moves settings by date, one step each
     * @param scenario the scenario with them
     */
    record Trial(VesselId tray, List<Filling.Move> moves, Scenario scenario) {}

    /** A run and what is advised after it. */
    record Tried(Trace trace, Advice advice) {}

    /**
     * What there is to try; nothing for most rigs. Of one tray the steps of all its crops come
     * first, then those of each crop, then the first of them alone. For the next crop, whose young
     * roots end in their cups, the valve goes back to where it was.
     */
    static List<Trial> of(Trace trace, Trace unlimited, Advice advice) {
        List<Trial> trials = new ArrayList<>();
        for (int i = 0; i < trace.trays().size(); i++) {
            Tray tray = trace.trays().get(i).tray();
            if (tray.filling() instanceof Filling.ByValve valve && valve.moves().isEmpty()) {
                for (List<Filling.Move> moves : tries(trace, unlimited, advice, i, valve)) {
                    trials.add(trial(trace, i, valve, moves));
                }
            }
        }
        return trials;
    }

    private static Set<List<Filling.Move>> tries(
            Trace trace, Trace unlimited, Advice advice, int index, Filling.ByValve valve) {
        List<Filling.Move> all = new ArrayList<>();
        List<List<Filling.Move>> whole = new ArrayList<>();
        List<List<Filling.Move>> first = new ArrayList<>();
        List<PlantingTrace> crops = trace.plantings(trace.trays().get(index));
        for (PlantingTrace crop : crops) {
            if (crop.tray().planting() instanceof Planting.OfCrop) {
                List<Filling.Move> back = new ArrayList<>();
                if (crop.number() + 1 < crops.size()) {
                    double nextS = crops.get(crop.number() + 1).fromS();
                    back.add(
                            new Filling.Move(trace.clockAt(nextS).toLocalDate(), valve.settingM()));
                }
                movesFor(trace, unlimited, advice, index, crop, valve)
                        .ifPresent(
                                moves -> {
                                    whole.add(joined(moves, back));
                                    first.add(joined(moves.subList(0, 1), back));
                                    all.addAll(joined(moves, back));
                                });
            }
        }
        Set<List<Filling.Move>> tries = new LinkedHashSet<>();
        if (!all.isEmpty()) {
            tries.add(all);
        }
        tries.addAll(whole);
        tries.addAll(first);
        return tries;
    }

    private static List<Filling.Move> joined(List<Filling.Move> moves, List<Filling.Move> back) {
        List<Filling.Move> all = new ArrayList<>(moves);
        all.addAll(back);
        return all;
    }

    private static Trial trial(
            Trace trace, int index, Filling.ByValve valve, List<Filling.Move> moves) {
        List<Tray> trays = new ArrayList<>(trace.scenario().trays());
        Tray tray = trays.get(index);
        trays.set(index, tray.withFilling(valve.withMoves(moves)));
        return new Trial(tray.id(), moves, trace.scenario().withTrays(trays));
    }

    private static Optional<List<Filling.Move>> movesFor(
            Trace trace,
            Trace unlimited,
            Advice advice,
            int index,
            PlantingTrace crop,
            Filling.ByValve valve) {
        TrayTrace of = trace.trays().get(index);
        OptionalDouble lowered = asked(trace, advice, crop);
        double deckM = of.tray().deck().undersideM(valve.settingM(), of.tray().shape().depthM());
        double freeM = deckM - StillWater.FREE_FROM_GAP_M;
        boolean touches = valve.settingM() > freeM && !of.tray().deck().floats();
        if (lowered.isEmpty() && !touches) {
            return Optional.empty(); // cup and roots are served as it stands
        }
        double wishM =
                lowered.isPresent()
                        ? Math.min(
                                touches ? freeM : valve.settingM(),
                                WET_FRAC * of.tray().cupBottomM())
                        : freeM;
        double boundM =
                boundM(trace, unlimited, index, valve, crop.firstHour(), crop.lastHour() + 1);
        return lower(trace, crop, valve, steps(valve.settingM(), wishM, boundM), lowered.orElse(0));
    }

    /** Hour from which a warning of a crop asks for a lower level. */
    private static OptionalDouble asked(Trace trace, Advice advice, PlantingTrace crop) {
        return advice.warnings().stream()
                .filter(w -> w.vessel().equals(crop.tray().id()) && w.crop().equals(crop.crop()))
                .filter(w -> hoursTo(trace, w) >= crop.firstHour())
                .filter(w -> hoursTo(trace, w) < crop.endHour())
                .filter(w -> w.cures().stream().anyMatch(c -> c.kind() == Cure.Kind.LOWER_LEVEL))
                .mapToDouble(w -> hoursTo(trace, w))
                .min();
    }

    private static double hoursTo(Trace trace, Warning warning) {
        return Duration.between(trace.scenario().start().atStartOfDay(), warning.from()).toHours();
    }

    /**
     * Lowest setting at which what the tray holds and its share of a full reservoir last over every
     * gap between visits, m above the floor.
     *
     * @param fromHour first hour that counts
     * @param toHour first hour that does not any more
     */
    static double boundM(
            Trace trace,
            Trace unlimited,
            int index,
            Filling.ByValve valve,
            int fromHour,
            int toHour) {
        TrayTrace own = unlimited.trays().get(index);
        Scenario scenario = trace.scenario();
        double usableM3 =
                scenario.feedingM3(scenario.reservoirs().get(scenario.reservoirOf(valve)));
        double needM3 = 0;
        for (double[] whole : VisitTimes.of(scenario).gaps()) {
            double[] gap = {Math.max(whole[0], fromHour), Math.min(whole[1], toHour)};
            double drawnM3 = leaves(own, gap);
            double allM3 = 0;
            for (TrayTrace other : unlimited.trays()) {
                allM3 += other.tray().isFedBy(valve.reservoir()) ? leaves(other, gap) : 0;
            }
            double shareM3 = allM3 > 0 ? usableM3 * drawnM3 / allM3 : usableM3;
            needM3 = Math.max(needM3, drawnM3 - shareM3);
        }
        var shape = own.tray().shape();
        double filmM3 = shape.volumeM3(Improvement.FILM_M);
        double roomM3 = shape.volumeM3(shape.depthM());
        return Math.max(
                valve.bandM() + Improvement.FILM_M,
                shape.levelM(Math.min(roomM3, filmM3 + needM3)));
    }

    private static double leaves(TrayTrace of, double[] gap) {
        int from = (int) gap[0];
        int to = Math.max(from, (int) gap[1]);
        return of.transpirationM3().sum(from, to) + of.evaporationM3().sum(from, to);
    }

    /** Whole steps down to a wished level or just past it, but not past a bound. */
    static int steps(double settingM, double wishM, double boundM) {
        int wished = (int) Math.ceil((settingM - wishM) / STEP_M - 1e-9);
        int borne = (int) Math.floor((settingM - boundM) / STEP_M + 1e-9);
        return Math.max(0, Math.min(wished, borne));
    }

    private static Optional<List<Filling.Move>> lower(
            Trace trace, PlantingTrace crop, Filling.ByValve valve, int steps, double fromHour) {
        if (steps < 1) {
            return Optional.empty();
        }
        // Never below roots that still grow down: from when they hang below the lowest level.
        double lastM = valve.settingM() - steps * STEP_M;
        int hour = crop.firstHour();
        int last = crop.lastHour();
        while (hour <= last
                && crop.run().rootTipM().at(hour) > lastM - valve.bandM() - Improvement.FILM_M) {
            hour++;
        }
        List<Filling.Move> moves = new ArrayList<>();
        Scenario scenario = trace.scenario();
        LocalDate end = trace.clockAt(last * Time.HOUR_S).toLocalDate().minusDays(STEP_DAYS);
        LocalDate day =
                trace.clockAt(Math.max(hour, fromHour) * Time.HOUR_S).toLocalDate().plusDays(1);
        while (moves.size() < steps && day.isBefore(end)) {
            if (scenario.visits().on(day)) {
                double settingM = valve.settingM() - (moves.size() + 1) * STEP_M;
                moves.add(new Filling.Move(day, FastMath.rint(settingM * 1e6) / 1e6));
                day = day.plusDays(STEP_DAYS);
            } else {
                day = day.plusDays(1);
            }
        }
        return moves.isEmpty() ? Optional.empty() : Optional.of(moves);
    }

    /**
     * The advice with every move that has stood its trial, and without those that have not.
     *
     * @param first the run as the user wrote it, judged
     * @param tried a run of each trial, in their order
     */
    static Advice judged(Tried first, List<Trial> trials, List<Tried> tried) {
        Trace trace = first.trace();
        List<Task> tasks = new ArrayList<>(first.advice().tasks());
        Map<VesselId, List<Filling.Move>> confirmed = new HashMap<>();
        for (int i = 0; i < trials.size(); i++) {
            Trial trial = trials.get(i);
            if (Improvement.isBetter(first, tried.get(i), trial.tray())
                    && confirmed.putIfAbsent(trial.tray(), trial.moves()) == null) {
                double gain = Improvement.gainFrac(trace, tried.get(i).trace(), trial.tray());
                addTasks(trace, trial, gain, tasks);
            }
        }
        return first.advice()
                .withTasks(Advisor.inOrder(tasks, trace))
                .withEachWarning(warning -> struck(warning, confirmed.get(warning.vessel())));
    }

    /** With a lower level as the moves have it, or without one that no trial has confirmed. */
    private static Warning struck(Warning warning, List<Filling.Move> moves) {
        if (moves == null) {
            return warning.without(Cure.Kind.LOWER_LEVEL);
        }
        Facts facts =
                Facts.of(Quantity.LEVEL, 1000 * moves.get(moves.size() - 1).settingM())
                        .on(moves.get(0).on().atStartOfDay());
        return warning.withCures(
                warning.cures().stream()
                        .map(
                                cure ->
                                        cure.kind() == Cure.Kind.LOWER_LEVEL
                                                ? new Cure(Cure.Kind.LOWER_LEVEL, facts)
                                                : cure)
                        .toList());
    }

    private static void addTasks(Trace trace, Trial trial, double gain, List<Task> tasks) {
        double beforeM = Double.NaN;
        for (Tray tray : trace.scenario().trays()) {
            if (tray.id().equals(trial.tray())) {
                beforeM = ((Filling.ByValve) tray.filling()).settingM();
            }
        }
        for (Filling.Move move : trial.moves()) {
            tasks.add(
                    new Task(
                            Task.Kind.MOVE_VALVE,
                            trial.tray(),
                            move.on()
                                    .atStartOfDay()
                                    .plusSeconds((long) trace.scenario().visits().timeOfDayS()),
                            0,
                            0,
                            Measure.of(move.settingM() * 1000, Unit.MILLIMETRES),
                            new Cause(
                                    Cause.Kind.GROWS_MORE_IN_A_TRIAL,
                                    Facts.of(Quantity.SETTING, beforeM * 1000)
                                            .and(Quantity.GAIN, gain)),
                            List.of(),
                            List.of(),
                            false));
            beforeM = move.settingM();
        }
    }
}
