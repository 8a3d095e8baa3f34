package tideless.solution;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A wish, its sheet, and the correction where the meters read something else.
 *
 * @param wish what was wanted
 * @param sheet what to pour
 * @param correction what to pour then; empty where nothing was read
 * @param remarks on what the user stated, as on an analysis that did not balance
 */
public record Mix(
        MixingSheet.Wish wish,
        MixingSheet sheet,
        Optional<MixCorrection> correction,
        List<String> remarks) {
    public Mix {
        Objects.requireNonNull(wish, "wish");
        Objects.requireNonNull(sheet, "sheet");
        Objects.requireNonNull(correction, "correction");
        remarks = List.copyOf(remarks);
    }
}
