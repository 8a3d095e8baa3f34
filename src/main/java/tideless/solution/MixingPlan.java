package tideless.solution;

import java.util.Objects;

/** A mixing sheet, a correction of one, or why there is none. */
public sealed interface MixingPlan permits MixingSheet, MixCorrection, MixingPlan.Refused {

    /**
     * No sheet.
     *
     * @param inWords one sentence with the figures
     */
    record Refused(String inWords) implements MixingPlan {
        public Refused {
            Objects.requireNonNull(inWords, "inWords");
        }
    }
}
