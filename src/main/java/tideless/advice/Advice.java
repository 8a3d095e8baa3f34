package tideless.advice;

import java.util.List;
import java.util.Objects;

/**
 * What a run tells its grower.
 *
 * @param verdict whether the crop survives
 * @param tasks in order of date, reservoirs before trays on the same date
 * @param warnings in order of date
 * @param sizings one for each reservoir
 */
public record Advice(
        Verdict verdict, List<Task> tasks, List<Warning> warnings, List<Sizing> sizings) {
    public Advice {
        Objects.requireNonNull(verdict, "verdict");
        tasks = List.copyOf(tasks);
        warnings = List.copyOf(warnings);
        sizings = List.copyOf(sizings);
    }
}
