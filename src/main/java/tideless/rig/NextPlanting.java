package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * A crop that follows another in the same tray.
 *
 * <p>The crop before is out by then: where it is not, it makes room at that visit. Until a stated
 * day the tray is empty once the crop before is out.
 *
 * @param crop what is set out; its days count from the day on which it is
 * @param limits bands its solution must keep
 * @param on the day at whose visit it is set out, or the next one that takes place; empty for the
 *     visit at which the crop before is cut
 * @param fresh whether the tray is emptied, cleaned and filled with fresh feed first; else what it
 *     holds stays, and is topped up with feed
 * @param startLevelM level it is filled or topped up to, m above the floor
 */
@RecordBuilder
public record NextPlanting(
        Planting.OfCrop crop,
        Limits limits,
        Optional<LocalDate> on,
        boolean fresh,
        double startLevelM)
        implements NextPlantingBuilder.With {
    public NextPlanting {
        Objects.requireNonNull(crop, "crop");
        Objects.requireNonNull(limits, "limits");
        Objects.requireNonNull(on, "on");
        if (!(startLevelM >= 0)) {
            throw new IllegalArgumentException(
                    "startLevelM must be at least 0, was " + startLevelM);
        }
    }
}
