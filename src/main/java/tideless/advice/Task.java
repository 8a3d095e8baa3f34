package tideless.advice;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Objects;
import tideless.rig.VesselId;

/**
 * Something the grower has to do, and when.
 *
 * @param kind what
 * @param vessel where
 * @param due the visit at which it is done, or the hour from which it is due where nobody comes
 * @param litres to pour in, L; 0 where nothing is poured
 * @param drainLitres to take out first, L
 * @param measure the figure that decides
 * @param cause why
 * @param cures what would make it come later or not at all, the first one first; may be empty
 * @param cautions what can hurt at it, where it is the first task to which that belongs
 * @param isDone whether the run did it; if not it is advised and its effect is not in the run
 * @param crop of which it is told where several follow one another in the tray, else empty
 */
@RecordBuilder
public record Task(
        Kind kind,
        VesselId vessel,
        LocalDateTime due,
        double litres,
        double drainLitres,
        Measure measure,
        Cause cause,
        List<Cure> cures,
        List<Caution> cautions,
        boolean isDone,
        String crop)
        implements TaskBuilder.With {

    /** Kinds of task, at one visit in the order in which they are done: drained before filled. */
    public enum Kind {
        SOW,
        MIX,
        REFILL,
        MOVE_VALVE,
        FRESH_SOLUTION,
        FLUSH,
        TOP_UP,
        TRANSPLANT,
        SUPPORT,
        POLLINATE,
        PICK,
        PICK_LEAVES,
        THIN_OUT,
        SPACE_OUT,
        TOP,
        HARVEST,
        CLEAN,
        SET_OUT,
        PLANT,
        SOW_NEXT,
        READ_METERS
    }

    public Task {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(vessel, "vessel");
        Objects.requireNonNull(due, "due");
        Objects.requireNonNull(measure, "measure");
        Objects.requireNonNull(cause, "cause");
        Objects.requireNonNull(crop, "crop");
        cures = List.copyOf(cures);
        cautions = List.copyOf(cautions);
    }

    /** Whether a tray's solution is drained and made anew. */
    public boolean isChange() {
        return kind == Kind.FLUSH || kind == Kind.FRESH_SOLUTION;
    }

    /** Of a vessel in which no crop follows another. */
    public Task(
            Kind kind,
            VesselId vessel,
            LocalDateTime due,
            double litres,
            double drainLitres,
            Measure measure,
            Cause cause,
            List<Cure> cures,
            List<Caution> cautions,
            boolean isDone) {
        this(kind, vessel, due, litres, drainLitres, measure, cause, cures, cautions, isDone, "");
    }
}
