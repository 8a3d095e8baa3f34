package tideless.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tideless.rig.Reservoir;
import tideless.rig.Tray;
import tideless.sim.ReservoirTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** Judges a finished run: what to do when, and what goes wrong if nothing changes. */
public final class Advisor {
    private Advisor() {}

    /**
     * Tasks, warnings and sizes.
     *
     * @param trace the run as the user wrote it
     * @param unlimited the same rig with reservoirs that are refilled the moment they are empty:
     *     what the crop would have drunk
     */
    public static Advice advise(Trace trace, Trace unlimited) {
        List<Task> tasks = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>();
        List<Sizing> sizings = new ArrayList<>();
        Rounds rounds = Rounds.of(trace.scenario());
        for (int i = 0; i < trace.reservoirs().size(); i++) {
            ReservoirTrace reservoir = trace.reservoirs().get(i);
            Sizing sizing = Sizings.of(trace, unlimited, i, rounds);
            sizings.add(sizing);
            ReservoirAdvice.add(trace, reservoir, sizing, rounds, tasks, warnings);
        }
        for (int i = 0; i < trace.trays().size(); i++) {
            TrayTrace tray = trace.trays().get(i);
            new TrayAdvice(trace, tray, rounds, tasks, warnings).add();
        }
        tasks.sort(
                Comparator.comparing(Task::due)
                        .thenComparing(task -> !task.isReservoir())
                        .thenComparing(task -> placeOf(trace, task.where(), task.isReservoir()))
                        .thenComparing(Task::kind));
        warnings.sort(
                Comparator.comparing(Warning::from)
                        .thenComparing(warning -> !warning.isReservoir())
                        .thenComparing(
                                warning -> placeOf(trace, warning.where(), warning.isReservoir()))
                        .thenComparing(Warning::kind));
        return new Advice(tasks, warnings, sizings);
    }

    private static int placeOf(Trace trace, String where, boolean isReservoir) {
        List<String> names =
                isReservoir
                        ? trace.scenario().reservoirs().stream().map(Reservoir::name).toList()
                        : trace.scenario().trays().stream().map(Tray::name).toList();
        return names.indexOf(where);
    }
}
