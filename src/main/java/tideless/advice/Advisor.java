package tideless.advice;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** Judges a finished run: what to do when, and what goes wrong if nothing changes. */
public final class Advisor {
    private Advisor() {}

    /**
     * Verdict, tasks, warnings and sizes.
     *
     * @param trace the run as the user wrote it
     * @param unlimited the same rig with reservoirs that are refilled the moment they are empty:
     *     what the crop would have drunk
     */
    public static Advice advise(Trace trace, Trace unlimited) {
        Findings out = new Findings();
        List<Sizing> sizings = new ArrayList<>();
        VisitTimes rounds = VisitTimes.of(trace.scenario());
        for (int i = 0; i < trace.reservoirs().size(); i++) {
            Sizing sizing = Sizings.of(trace, unlimited, i, rounds);
            sizings.add(sizing);
            new ReservoirAdvice(trace, trace.reservoirs().get(i), sizing, rounds, out).add();
        }
        RigAdvice.add(trace, rounds, out);
        List<TrayCase> trays = new ArrayList<>();
        for (TrayTrace of : trace.trays()) {
            for (PlantingTrace planting : trace.plantings(of)) {
                TrayCase tray = new TrayCase(trace, planting, rounds);
                trays.add(tray);
                out.take(of(tray, curesOfReservoir(tray, out)), planting.crop());
            }
        }
        out.warnings.removeIf(w -> isToldAbove(w, out.warnings, trace.scenario()));
        Harmony.bringTo(out, (one, other) -> hangOnOne(trace.scenario(), one, other));
        Comparator<VesselId> place = placeIn(trace);
        out.tasks.sort(byDate(place));
        out.warnings.sort(byBeginning(place));
        List<Warning> past = out.warnings.stream().filter(w -> isPast(w, trace)).toList();
        out.warnings.removeAll(past);
        List<Warning> minor = out.warnings.stream().filter(Warning::isMinor).toList();
        out.warnings.removeAll(minor);
        minor = minor.stream().filter(w -> !isMended(w, out.tasks)).toList();
        Verdict verdict = Verdicts.of(trace, trays, rounds, out.tasks, out.warnings);
        return new Advice(
                verdict, Cautions.addedTo(out.tasks, trace), out.warnings, minor, past, sizings);
    }

    /**
     * The same advice with what it tells of pH judged by more runs: a warning where all of them
     * leave it far out of its band, a note where the likely course alone does.
     *
     * @param trace the run that was judged
     * @param lowest lowest pH of each of its trays, in their order, in runs at both ends of what
     *     its crop's tissue may hold
     * @param highest likewise the highest
     */
    public static Advice withAcidity(
            Advice advice, Trace trace, List<Series> lowest, List<Series> highest) {
        List<Warning> warnings = new ArrayList<>();
        List<Warning> minor = new ArrayList<>();
        Stream.concat(advice.warnings().stream(), advice.minor().stream())
                .map(w -> AcidityAdvice.judged(w, trace, lowest, highest))
                .forEach(w -> (w.isMinor() ? minor : warnings).add(w));
        warnings.sort(byBeginning(placeIn(trace)));
        minor.sort(byBeginning(placeIn(trace)));
        return advice.withWarnings(warnings).withMinor(minor);
    }

    private static Comparator<Warning> byBeginning(Comparator<VesselId> place) {
        return Comparator.comparing(Warning::from)
                .thenComparing(Warning::vessel, place)
                .thenComparing(Warning::kind);
    }

    /** Whether a crust in a tray is that of the reservoir above it, and told there. */
    private static boolean isToldAbove(Warning warning, List<Warning> all, Scenario scenario) {
        return warning.kind() == Warning.Kind.PRECIPITATE
                && warning.vessel().kind() == VesselId.Kind.TRAY
                && all.stream()
                        .filter(other -> other.kind() == Warning.Kind.PRECIPITATE)
                        .filter(other -> other.vessel().kind() == VesselId.Kind.RESERVOIR)
                        .filter(other -> isFedBy(scenario, warning.vessel(), other.vessel()))
                        .anyMatch(other -> minerals(other).containsAll(minerals(warning)));
    }

    private static Set<String> minerals(Warning crust) {
        return Set.of(crust.cause().facts().of().split(" and "));
    }

    private static boolean isFedBy(Scenario scenario, VesselId tray, VesselId reservoir) {
        return scenario.tray(tray).filter(of -> of.isFedBy(reservoir.name())).isPresent();
    }

    /** Whether two trays are fed by one reservoir. */
    private static boolean hangOnOne(Scenario scenario, VesselId one, VesselId other) {
        return scenario.reservoirs().stream()
                .anyMatch(r -> isFedBy(scenario, one, r.id()) && isFedBy(scenario, other, r.id()));
    }

    /** Whether the run changes a solution for it: what costs nothing then would without. */
    private static boolean isMended(Warning warning, List<Task> tasks) {
        return switch (warning.kind()) {
            case TOO_SALTY -> isDone(Task.Kind.FLUSH, warning, tasks);
            case TOO_LEAN, SHORT_OF_ONE -> isDone(Task.Kind.FRESH_SOLUTION, warning, tasks);
            default -> false;
        };
    }

    private static boolean isDone(Task.Kind kind, Warning warning, List<Task> tasks) {
        return tasks.stream()
                .anyMatch(
                        task ->
                                task.kind() == kind
                                        && task.isDone()
                                        && task.vessel().equals(warning.vessel())
                                        && task.crop().equals(warning.crop()));
    }

    /** Whether it is over by the end of a grower's log; a death is never over. */
    private static boolean isPast(Warning warning, Trace trace) {
        return warning.kind() != Warning.Kind.DIED
                && !trace.scenario().log().isEmpty()
                && !warning.until().isAfter(trace.clockAt(trace.scenario().log().lastS()));
    }

    /** What keeps the reservoir above a tray from running dry; empty where it does not. */
    private static List<Cure> curesOfReservoir(TrayCase tray, Findings out) {
        if (tray.tray.filling() instanceof Filling.ByValve valve) {
            VesselId reservoir = VesselId.reservoir(valve.reservoir());
            for (Warning warning : out.warnings) {
                if (warning.kind() == Warning.Kind.RAN_DRY && warning.vessel().equals(reservoir)) {
                    return warning.cures();
                }
            }
        }
        return List.of();
    }

    private static Findings of(TrayCase tray, List<Cure> reservoirCures) {
        Findings found = new Findings();
        new CropAdvice(tray, found).add();
        new RootAdvice(tray, reservoirCures, found).add();
        DeepCups.add(tray, found);
        new ValveAdvice(tray, found).add();
        new SolutionAdvice(tray, found).add();
        new AirAdvice(tray, found).add();
        clear(tray, found);
        tellHungerOnce(found);
        found.warnings.replaceAll(tray::withLoss);
        if (tray.isPast()) {
            found.warnings.removeIf(w -> w.kind() != Warning.Kind.DIED);
        }
        return found;
    }

    /**
     * Of dead plants nothing is done any more but to clear them away at the next visit, for
     * hygiene, and nothing warned of. From when seedlings would have reached the level stays told:
     * whoever sows again goes by it.
     */
    private static void clear(TrayCase tray, Findings found) {
        OptionalDouble died = tray.firstS(Event.Kind.DIED);
        if (died.isEmpty()) {
            return;
        }
        LocalDateTime lost = tray.trace.clockAt(died.getAsDouble());
        found.tasks.removeIf(
                task -> task.kind() != Task.Kind.TRANSPLANT && task.due().isAfter(lost));
        found.warnings.removeIf(w -> w.from().isAfter(lost));
        double visit = tray.rounds.nextFrom(died.getAsDouble() / Time.HOUR_S);
        if (tray.rounds.hours().contains(visit)) {
            found.tasks.add(
                    new Task(
                            Task.Kind.CLEAN,
                            tray.id,
                            tray.trace.clockAt(visit * Time.HOUR_S),
                            0,
                            0,
                            Measure.none(),
                            Cause.of(Cause.Kind.CROP_IS_LOST),
                            List.of(),
                            List.of(),
                            true));
        }
    }

    /** A crop that takes all of it up is short of what runs out first: one harm, with its name. */
    private static void tellHungerOnce(Findings found) {
        found.warnings.stream()
                .filter(w -> w.kind() == Warning.Kind.SHORT_OF_ONE)
                .findFirst()
                .ifPresent(
                        one ->
                                found.warnings.removeIf(
                                        w ->
                                                w.kind() == Warning.Kind.TOO_LEAN
                                                        && w.cause().kind()
                                                                == Cause.Kind.CROP_TAKES_IT_UP
                                                        && !one.from().isAfter(w.until())));
    }

    /** Tasks as an advice tells them: by date, then by place. */
    public static List<Task> inOrder(List<Task> tasks, Trace trace) {
        List<Task> sorted = new ArrayList<>(tasks);
        sorted.sort(byDate(placeIn(trace)));
        return sorted;
    }

    private static Comparator<Task> byDate(Comparator<VesselId> place) {
        return Comparator.comparing(Task::due)
                .thenComparing(Task::vessel, place)
                .thenComparing(Task::kind);
    }

    /** Reservoirs before trays, each in the scenario's order. */
    private static Comparator<VesselId> placeIn(Trace trace) {
        List<VesselId> all = new ArrayList<>();
        trace.reservoirs().forEach(r -> all.add(r.reservoir().id()));
        trace.trays().forEach(t -> all.add(t.tray().id()));
        return Comparator.comparingInt(all::indexOf);
    }
}
