package tideless.study;

import java.time.LocalDate;
import java.util.Set;
import java.util.TreeSet;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Task;
import tideless.rig.Scenario;
import tideless.sim.Departures;
import tideless.sim.Simulation;
import tideless.sim.Trace;

/** Tries the fills before absences that are advised and that the rules of refilling pass by. */
final class Fills {
    private Fills() {}

    /** Days of those fills; none for most rigs. */
    static Set<LocalDate> of(Advice advice) {
        Set<LocalDate> days = new TreeSet<>();
        for (Task task : advice.tasks()) {
            if (task.kind() == Task.Kind.REFILL
                    && !task.isDone()
                    && task.cause().isBeforeAbsence()) {
                days.add(task.due().toLocalDate());
            }
        }
        return days;
    }

    /** The scenario with everything filled up at the visits of those days. */
    static Trace run(Scenario scenario, Set<LocalDate> days) {
        Departures departures = Departures.NONE;
        for (LocalDate day : days) {
            departures =
                    departures.filledUp((int) (day.toEpochDay() - scenario.start().toEpochDay()));
        }
        return Simulation.runUnread(scenario, departures);
    }

    /** The advice with what the fills buy. */
    static Advice judged(Advice advice, Set<LocalDate> days, Trace filled, Trace unlimited) {
        return advice.withVerdict(
                advice.verdict().filledUp(Advisor.advise(filled, unlimited).verdict(), days));
    }
}
