package tideless.crop;

/**
 * A young plant as its grower found it when it went into the tray; what was not looked at is NaN.
 *
 * @param leaves true leaves
 * @param leafAreaM2 of the whole plant, one side, m2
 * @param freshG fresh weight of the shoot, without root and plug, g
 * @param heightM m
 * @param rootLengthM of the leading roots below the cup's underside, m
 */
public record Transplant(
        double leaves, double leafAreaM2, double freshG, double heightM, double rootLengthM) {
    /** Nothing was looked at: a plant as the crop's nursery raises it. */
    public static final Transplant AS_RAISED =
            new Transplant(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);

    boolean statesSize() {
        return !(Double.isNaN(leaves)
                && Double.isNaN(leafAreaM2)
                && Double.isNaN(freshG)
                && Double.isNaN(heightM));
    }
}
