package tideless.rig;

import java.util.Objects;

/**
 * The inside of a vessel with a level floor and straight walls: a box, a cylinder, or one whose
 * sides lean outwards evenly from the floor to the rim, a bucket (frustum of a cone) or a tub
 * (prismatoid between two rectangles). Every side of a level section then grows in proportion to
 * the height, so that the area is a parabola of it and the volume a cubic, both exact.
 *
 * <p>What displaces solution in it is taken off: level, volume and free area are those of the
 * solution; floor, rim and walls those of the vessel. Immutable.
 */
public final class Shape {
    /** Outline of every level section. */
    private enum Outline {
        RECTANGLE(1),
        CIRCLE(Math.PI / 4);

        /** Area over that of the rectangle around it. */
        private final double filledFrac;

        Outline(double filledFrac) {
            this.filledFrac = filledFrac;
        }

        /** Of one with these sides, or of equal diameters, m. */
        private double perimeterM(double lengthM, double widthM) {
            return this == CIRCLE ? Math.PI * lengthM : 2 * (lengthM + widthM);
        }
    }

    private static final int MOST_ROUNDS = 100;

    private final Outline outline;
    private final double lengthM;
    private final double widthM;
    private final double floorLengthM;
    private final double floorWidthM;
    private final double depthM;
    private final boolean sidesStated;
    private final Displacement displacement;

    // Area at height z: floor + rise z + bow z^2; beyond the rim that of the rim.
    private final double floorM2;
    private final double rimM2;
    private final double riseM;
    private final double bow;
    private final double fullM3;
    // Wetted wall up to height z: z (wall + lean z).
    private final double wallM;
    private final double lean;

    private Shape(
            Outline outline,
            double lengthM,
            double widthM,
            double floorLengthM,
            double floorWidthM,
            double depthM,
            boolean sidesStated,
            Displacement displacement) {
        this.outline = outline;
        this.lengthM = lengthM;
        this.widthM = widthM;
        this.floorLengthM = floorLengthM;
        this.floorWidthM = floorWidthM;
        this.depthM = depthM;
        this.sidesStated = sidesStated;
        this.displacement = Objects.requireNonNull(displacement, "displacement");
        if (!(depthM > 0 && depthM < 10)) {
            throw new IllegalArgumentException("depthM must lie in (0, 10), was " + depthM);
        }
        if (!(floorLengthM > 0 && floorWidthM > 0)) {
            throw new IllegalArgumentException(
                    "the floor's sides must be above 0, were %s and %s"
                            .formatted(floorLengthM, floorWidthM));
        }
        if (!(floorLengthM <= lengthM && floorWidthM <= widthM)) {
            throw new IllegalArgumentException(
                    "the floor's sides must be at most the rim's, were %s of %s and %s of %s"
                            .formatted(floorLengthM, lengthM, floorWidthM, widthM));
        }
        floorM2 = outline.filledFrac * floorLengthM * floorWidthM;
        rimM2 = outline.filledFrac * lengthM * widthM;
        if (!(rimM2 < 1000)) {
            throw new IllegalArgumentException("the rim's area must be below 1000, was " + rimM2);
        }
        double longer = (lengthM - floorLengthM) / depthM;
        double wider = (widthM - floorWidthM) / depthM;
        riseM = outline.filledFrac * (floorLengthM * wider + floorWidthM * longer);
        bow = outline.filledFrac * longer * wider;
        fullM3 = ownVolumeM3(depthM);
        if (outline == Outline.CIRCLE) {
            double slant = Math.sqrt(1 + 0.25 * longer * longer);
            wallM = slant * Math.PI * floorLengthM;
            lean = 0.5 * slant * Math.PI * longer;
        } else {
            double longSlant = Math.sqrt(1 + 0.25 * wider * wider);
            double shortSlant = Math.sqrt(1 + 0.25 * longer * longer);
            wallM = 2 * (longSlant * floorLengthM + shortSlant * floorWidthM);
            lean = longSlant * longer + shortSlant * wider;
        }
        checkDisplacement();
    }

    private void checkDisplacement() {
        for (int k = 0; k < displacement.layers(); k++) {
            double fromM = displacement.fromM(k);
            if (!(fromM <= depthM)) {
                throw new IllegalArgumentException(
                        "nothing may stand above depthM (%s), was %s".formatted(depthM, fromM));
            }
            // The vessel does not narrow upwards, so that a layer is tightest where it begins.
            double ownM2 = ownAreaM2(fromM);
            double sectionM2 = displacement.layerSectionM2(k);
            if (!(ownM2 - sectionM2 >= Displacement.LEAST_FREE_FRAC * ownM2)) {
                throw new IllegalArgumentException(
                        "a section of %s m2 at %s m leaves too little of %s m2"
                                .formatted(sectionM2, fromM, ownM2));
            }
        }
    }

    /** Rectangles at rim and floor, the walls between them plane; inside measures, m. */
    public static Shape tub(
            double lengthM, double widthM, double floorLengthM, double floorWidthM, double depthM) {
        return new Shape(
                Outline.RECTANGLE,
                lengthM,
                widthM,
                floorLengthM,
                floorWidthM,
                depthM,
                true,
                Displacement.NONE);
    }

    /** Upright and round; inside measures, m. */
    public static Shape cylinder(double diameterM, double depthM) {
        return bucket(diameterM, diameterM, depthM);
    }

    /** Round and narrower at the floor, a frustum of a cone; inside measures, m. */
    public static Shape bucket(double diameterM, double floorDiameterM, double depthM) {
        return new Shape(
                Outline.CIRCLE,
                diameterM,
                diameterM,
                floorDiameterM,
                floorDiameterM,
                depthM,
                true,
                Displacement.NONE);
    }

    /**
     * A box of which only volume and depth are known: square, which has the least wall of all
     * boxes; {@link #sidesStated} is false.
     */
    public static Shape boxOf(double volumeM3, double depthM) {
        double sideM = Math.sqrt(volumeM3 / depthM);
        return new Shape(
                Outline.RECTANGLE,
                sideM,
                volumeM3 / depthM / sideM,
                sideM,
                volumeM3 / depthM / sideM,
                depthM,
                false,
                Displacement.NONE);
    }

    /** A cylinder told by volume, m3, and depth, m. */
    public static Shape cylinderOf(double volumeM3, double depthM) {
        return cylinder(Math.sqrt(4 * (volumeM3 / depthM) / Math.PI), depthM);
    }

    /** The same vessel, empty, so many times as wide in area at the same depth. */
    public Shape wider(double times) {
        double side = Math.sqrt(times);
        return new Shape(
                outline,
                side * lengthM,
                side * widthM,
                side * floorLengthM,
                side * floorWidthM,
                depthM,
                sidesStated,
                Displacement.NONE);
    }

    /** The same vessel with something else in it. */
    public Shape with(Displacement other) {
        return new Shape(
                outline, lengthM, widthM, floorLengthM, floorWidthM, depthM, sidesStated, other);
    }

    /** Inside depth from floor to rim, m. */
    public double depthM() {
        return depthM;
    }

    /** Inside area at the floor, m2. */
    public double floorAreaM2() {
        return floorM2;
    }

    /** Inside area at the rim, m2; equal to the floor's for a box or cylinder. */
    public double rimAreaM2() {
        return rimM2;
    }

    /** Inside perimeter at the rim, m. */
    public double rimPerimeterM() {
        return outline.perimeterM(lengthM, widthM);
    }

    /** Inside width at a level, across the narrower way, m; beyond the rim, the rim's. */
    public double acrossM(double levelM) {
        double part = Math.max(0, Math.min(1, levelM / depthM));
        return Math.min(
                floorLengthM + part * (lengthM - floorLengthM),
                floorWidthM + part * (widthM - floorWidthM));
    }

    /** Whether the sides are known, and not made up from a volume. */
    public boolean sidesStated() {
        return sidesStated;
    }

    /**
     * Narrower side of the rectangle that stands within the floor's outline, m: of a round floor
     * the square whose corners lie on the circle.
     */
    public double floorNarrowSideM() {
        return outline == Outline.CIRCLE
                ? floorLengthM / Math.sqrt(2)
                : Math.min(floorLengthM, floorWidthM);
    }

    /** Area of the side walls below a level, m2, along their slope; beyond the rim as upright. */
    public double wallM2(double levelM) {
        double upToM = Math.max(0, Math.min(levelM, depthM));
        double within = upToM * (wallM + lean * upToM);
        return levelM > depthM ? within + (levelM - depthM) * rimPerimeterM() : within;
    }

    /** What hangs or stands in it, none above the rim. */
    public Displacement displacement() {
        return displacement;
    }

    /**
     * Area of the solution's surface at a level, m2; beyond the rim, the rim's. Where something
     * begins or ends at that very level, the area just above it.
     */
    public double areaM2(double levelM) {
        double ownM2 = ownAreaM2(levelM);
        return displacement.isNone() ? ownM2 : ownM2 - displacement.sectionM2(levelM);
    }

    private double ownAreaM2(double levelM) {
        if (levelM >= depthM) {
            return rimM2;
        }
        double upToM = Math.max(0, levelM);
        return floorM2 + upToM * (riseM + upToM * bow);
    }

    /** Volume of the solution below a level, m3: the integral of {@link #areaM2}. */
    public double volumeM3(double levelM) {
        double ownM3 = ownVolumeM3(levelM);
        return displacement.isNone() ? ownM3 : ownM3 - displacement.volumeM3(levelM);
    }

    private double ownVolumeM3(double levelM) {
        double upToM = Math.max(0, levelM);
        if (upToM <= depthM) {
            return upToM * (floorM2 + upToM * (riseM / 2 + upToM * (bow / 3)));
        }
        return fullM3 + (upToM - depthM) * rimM2;
    }

    /** Level of a volume of solution, m: the inverse of {@link #volumeM3}. */
    public double levelM(double volumeM3) {
        return displacement.isNone() ? ownLevelM(volumeM3) : levelAmongM(volumeM3);
    }

    private double ownLevelM(double volumeM3) {
        double volume = Math.max(0, volumeM3);
        if (riseM == 0) {
            return volume / floorM2;
        }
        if (volume > fullM3) {
            return depthM + (volume - fullM3) / rimM2;
        }
        return heightM(volume, floorM2, riseM);
    }

    // The highest layer whose bottom the volume reaches, and the rise in it.
    private double levelAmongM(double volumeM3) {
        int last = displacement.layers() - 1;
        for (int k = last; k >= 0; k--) {
            double fromM = displacement.fromM(k);
            double aboveM3 = volumeM3 - (ownVolumeM3(fromM) - displacement.belowM3(k));
            if (aboveM3 >= 0) {
                double freeM2 = ownAreaM2(fromM) - displacement.layerSectionM2(k);
                double levelM = fromM + heightM(aboveM3, freeM2, riseM + 2 * bow * fromM);
                if (k < last) {
                    return Math.min(levelM, displacement.fromM(k + 1));
                }
                return levelM <= depthM ? levelM : ownLevelM(volumeM3 + displacement.belowM3(k));
            }
        }
        return ownLevelM(volumeM3);
    }

    /**
     * Height over which a volume stands where the area begins at a stated one, m2, and grows by a
     * stated rise, m, and the vessel's own bow: the root of a cubic that bends upwards everywhere.
     */
    private double heightM(double volumeM3, double areaM2, double riseM) {
        // Without the bow a parabola; the form with the root below the line does not cancel.
        double height = 2 * volumeM3 / (areaM2 + Math.sqrt(areaM2 * areaM2 + 2 * riseM * volumeM3));
        // That lies above the root, and from above Newton's steps fall until rounding ends them.
        for (int round = 0; bow > 0 && round < MOST_ROUNDS; round++) {
            double over = height * (areaM2 + height * (riseM / 2 + height * (bow / 3))) - volumeM3;
            double nearer = height - over / (areaM2 + height * (riseM + height * bow));
            if (!(nearer < height)) {
                return height;
            }
            height = nearer;
        }
        return height;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Shape that
                && outline == that.outline
                && lengthM == that.lengthM
                && widthM == that.widthM
                && floorLengthM == that.floorLengthM
                && floorWidthM == that.floorWidthM
                && depthM == that.depthM
                && sidesStated == that.sidesStated
                && displacement.equals(that.displacement);
    }

    @Override
    public int hashCode() {
        return Objects.hash(
                outline, lengthM, widthM, floorLengthM, floorWidthM, depthM, displacement);
    }

    @Override
    public String toString() {
        return "Shape[%s, rim %s x %s m, floor %s x %s m, depth %s m, %s]"
                .formatted(
                        outline, lengthM, widthM, floorLengthM, floorWidthM, depthM, displacement);
    }
}
