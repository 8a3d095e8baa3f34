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
 * @param sizeFrac how many times as heavy, in leaf, stem and root, as all this makes it
 */
public record Transplant(
        OptionalDouble leaves,
        OptionalDouble leafAreaM2,
        OptionalDouble freshG,
        OptionalDouble heightM,
        OptionalDouble rootLengthM,
        boolean rootsHang,
        double sizeFrac) {
    public Transplant {
        if (!(sizeFrac > 0 && sizeFrac < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("sizeFrac must be above 0, was " + sizeFrac);
        }
    }

    /** A plant as it was found. */
    public Transplant(
            OptionalDouble leaves,
            OptionalDouble leafAreaM2,
            OptionalDouble freshG,
            OptionalDouble heightM,
            OptionalDouble rootLengthM,
            boolean rootsHang) {
        this(leaves, leafAreaM2, freshG, heightM, rootLengthM, rootsHang, 1);
    }

    /** The same, so many times as heavy. */
    public Transplant times(double size) {
        return new Transplant(
                leaves, leafAreaM2, freshG, heightM, rootLengthM, rootsHang, size * sizeFrac);
    }

    /** Nothing was looked at: a plant as the crop's nursery raises it. */
    public static final Transplant AS_RAISED =
            new Transplant(
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    false);

    /** Whether anything was said of its size. */
    public boolean statesSize() {
        return leaves.isPresent()
                || leafAreaM2.isPresent()
                || freshG.isPresent()
                || heightM.isPresent();
    }
}
