package tideless.advice;

import java.util.List;

/**
 * What a run tells its grower.
 *
 * @param tasks in order of date, reservoirs before trays on the same date
 * @param warnings in order of date
 * @param sizings one for each reservoir
 */
public record Advice(List<Task> tasks, List<Warning> warnings, List<Sizing> sizings) {
    public Advice {
        tasks = List.copyOf(tasks);
        warnings = List.copyOf(warnings);
        sizings = List.copyOf(sizings);
    }
}
