package tideless.study;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tideless.advice.Advice;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Task;
import tideless.rig.Scenario;
import tideless.sim.Event;
import tideless.sim.Trace;
import tideless.solution.ElectricalConductivity;

/**
 * A scenario, run and judged: what the {@code run} command prints and writes.
 *
 * @param trace the run as the user wrote it
 * @param unlimited its twin, in which every reservoir is refilled the moment it is empty
 * @param advice what follows
 * @param ph lowest and highest pH of each tray, in the scenario's order
 * @param members how many rigs that the grower's might be were asked for; below 2 for none
 * @param outlook how sure it is, of as many of them as were run; empty where none was
 * @param surer what makes it come through more surely, tried in runs; empty where it does, where
 *     something else is to be changed first or where nothing tried does
 * @param stepError what the members' longer step costs; empty without members
 * @param seed printed with the result; the same scenario and seed give the same bytes
 */
@RecordBuilder
public record Forecast(
        Trace trace,
        Trace unlimited,
        Advice advice,
        List<PhCourse> ph,
        int members,
        Optional<Outlook> outlook,
        Optional<Cure> surer,
        Optional<StepError> stepError,
        long seed)
        implements ForecastBuilder.With {
    public Forecast {
        ph = List.copyOf(ph);
        Objects.requireNonNull(outlook, "outlook");
        Objects.requireNonNull(surer, "surer");
        Objects.requireNonNull(stepError, "stepError");
    }

    /** Whether the work was broken off before all members were run. */
    public boolean isBrokenOff() {
        return members > 1 && outlook.map(Outlook::members).orElse(0) < members;
    }

    /** Whether the crops survive: in this run, and in nine of ten members where some were run. */
    public boolean survives() {
        return advice.verdict().survives() && outlook.map(Outlook::survives).orElse(true);
    }

    /** Whether something that was tried serves clearly more rigs than the refills told first. */
    public boolean isRefillOutdone() {
        return surer.isPresent() && OtherThanRefills.isAsked(advice.verdict().first());
    }

    /**
     * Whether a task lies before the end of the grower's log: what was done stands there, and what
     * was not is late by now.
     */
    public boolean isPast(Task task) {
        Scenario scenario = trace.scenario();
        return !scenario.log().isEmpty()
                && !task.due().isAfter(trace.clockAt(scenario.log().lastS()));
    }

    /** Tasks that are not past, in the advice's order. */
    public List<Task> toDo() {
        return advice.tasks().stream().filter(task -> !isPast(task)).toList();
    }

    /**
     * Feed to be mixed for all vessels to their first level, L; 0 where nothing is to be mixed.
     * Without those that have a feed of their own.
     */
    public double litresOnDayOne() {
        return advice.tasks().stream()
                .filter(task -> task.kind() == Task.Kind.MIX && isOfTheFeed(task))
                .mapToDouble(Task::litres)
                .reduce(0, Double::sum);
    }

    private boolean isOfTheFeed(Task mix) {
        Scenario scenario = trace.scenario();
        double ec = ElectricalConductivity.at25MsPerCm(scenario.feed().composition());
        return scenario.ownFeeds().isEmpty() || mix.measure().value() == ec;
    }

    /**
     * When a task is to be expected; empty where no event of a member answers to it, and of what is
     * done before an absence, whose day is the grower's.
     */
    public Optional<Expected> expected(Task task) {
        if (task.cause().kind() == Cause.Kind.BEFORE_ABSENCE) {
            return Optional.empty(); // whoever leaves fills up before, whatever other rigs do
        }
        Event.Kind kind =
                switch (task.kind()) {
                    case REFILL -> Event.Kind.REFILL;
                    case TOP_UP -> Event.Kind.TOP_UP;
                    case FRESH_SOLUTION -> Event.Kind.FRESH_SOLUTION;
                    case FLUSH -> Event.Kind.FLUSH;
                    case HARVEST -> Event.Kind.HARVEST;
                    case PLANT -> Event.Kind.PLANTED;
                    case PICK_LEAVES -> Event.Kind.LEAVES_PICKED;
                    default -> null;
                };
        if (kind == null || !task.isDone()) {
            return Optional.empty();
        }
        int ordinal = 0;
        for (Task other : advice.tasks()) {
            if (other.kind() == task.kind()
                    && other.isDone()
                    && other.vessel().equals(task.vessel())) {
                ordinal++;
            }
            if (other.equals(task)) {
                break;
            }
        }
        int which = ordinal;
        return outlook.flatMap(o -> o.of(kind, task.vessel(), which));
    }
}
