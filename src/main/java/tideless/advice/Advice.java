package tideless.advice;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;

/**
 * What a run tells its grower.
 *
 * @param verdict whether the crop survives
 * @param tasks in order of date, reservoirs before trays on the same date
 * @param warnings in order of date; of a run with a log those that are not over by its end
 * @param minor those that cost next to nothing, likewise
 * @param past those that are over by the end of a grower's log, likewise
 * @param sizings one for each reservoir
 */
@RecordBuilder
public record Advice(
        Verdict verdict,
        List<Task> tasks,
        List<Warning> warnings,
        List<Warning> minor,
        List<Warning> past,
        List<Sizing> sizings)
        implements AdviceBuilder.With {
    public Advice {
        Objects.requireNonNull(verdict, "verdict");
        tasks = List.copyOf(tasks);
        warnings = List.copyOf(warnings);
        minor = List.copyOf(minor);
        past = List.copyOf(past);
        sizings = List.copyOf(sizings);
    }

    /** Of which nothing is past, and nothing that costs next to nothing. */
    public Advice(Verdict verdict, List<Task> tasks, List<Warning> warnings, List<Sizing> sizings) {
        this(verdict, tasks, warnings, List.of(), List.of(), sizings);
    }

    /** The same with another measure of what is enough for a reservoir, wherever it is told. */
    public Advice resized(Sizing from, Sizing to) {
        Cure asked = new Cure(Cure.Kind.LARGER_RESERVOIR, from.larger());
        Cure now = new Cure(Cure.Kind.LARGER_RESERVOIR, to.larger());
        return withSizings(sizings.stream().map(s -> s.equals(from) ? to : s).toList())
                .withEachWarning(
                        w ->
                                w.withCures(
                                        w.cures().stream()
                                                .map(c -> c.equals(asked) ? now : c)
                                                .toList()));
    }

    /** The same with each warning changed, and that which is to be changed first likewise. */
    public Advice withEachWarning(UnaryOperator<Warning> to) {
        return withWarnings(warnings.stream().map(to).toList())
                .withVerdict(verdict.withFirst(verdict.first().map(to)));
    }
}
