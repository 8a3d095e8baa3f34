package tideless.crop;

import java.util.OptionalDouble;

/**
 * A young plant as its grower found it when it went into the tray; what was not looked at is empty.
 *
 * @param leaves true leaves
 * @param leafAreaM2 of the whole plant, one side, m2
 * @param freshG fresh weight of the shoot, without root and plug, g
 * @param heightM m
 * @param rootLengthM of the leading roots below the cup's underside, m
 * @param rootsHang whether the nursery lets roots hang out of plug or damp paper, so that they grow
 *     on by its warmth; else they end in their plug, unless their length is stated
 */
public record Transplant(
        OptionalDouble leaves,
        OptionalDouble leafAreaM2,
        OptionalDouble freshG,
        OptionalDouble heightM,
        OptionalDouble rootLengthM,
        boolean rootsHang) {
    /** Nothing was looked at: a plant as the crop's nursery raises it. */
    public static final Transplant AS_RAISED =
            new Transplant(
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    false);

    boolean statesSize() {
        return leaves.isPresent()
                || leafAreaM2.isPresent()
                || freshG.isPresent()
                || heightM.isPresent();
    }
}
