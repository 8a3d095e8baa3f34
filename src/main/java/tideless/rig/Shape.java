package tideless.rig;

import java.util.Objects;

/**
 * The inside of a vessel whose floor and every level section are similar: area grows evenly from
 * the floor to the rim. What displaces solution in it is taken off: level, volume and free area are
 * those of the solution, floor, rim and wall those of the vessel.
 *
 * @param floorAreaM2 inside area at the floor, m2
 * @param rimAreaM2 inside area at the rim, m2; equal to the floor's for a box or cylinder
 * @param depthM inside depth from floor to rim, m
 * @param wettedPerimeterM mean inside perimeter, m; for the wall's heat exchange
 * @param displacement what hangs or stands in it, none above the rim
 */
public record Shape(
        double floorAreaM2,
        double rimAreaM2,
        double depthM,
        double wettedPerimeterM,
        Displacement displacement) {
    public Shape {
        if (!(floorAreaM2 > 0 && floorAreaM2 < 1000)) {
            throw new IllegalArgumentException(
                    "floorAreaM2 must lie in (0, 1000), was " + floorAreaM2);
        }
        if (!(rimAreaM2 >= floorAreaM2 && rimAreaM2 < 1000)) {
            throw new IllegalArgumentException(
                    "rimAreaM2 must be at least floorAreaM2, was " + rimAreaM2);
        }
        if (!(depthM > 0 && depthM < 10)) {
            throw new IllegalArgumentException("depthM must lie in (0, 10), was " + depthM);
        }
        Objects.requireNonNull(displacement, "displacement");
        for (int k = 0; k < displacement.layers(); k++) {
            double fromM = displacement.fromM(k);
            if (!(fromM <= depthM)) {
                throw new IllegalArgumentException(
                        "nothing may stand above depthM (%s), was %s".formatted(depthM, fromM));
            }
            // The vessel does not narrow upwards, so that a layer is tightest where it begins.
            double ownM2 = floorAreaM2 + (rimAreaM2 - floorAreaM2) * fromM / depthM;
            double sectionM2 = displacement.layerSectionM2(k);
            if (!(ownM2 - sectionM2 >= Displacement.LEAST_FREE_FRAC * ownM2)) {
                throw new IllegalArgumentException(
                        "a section of %s m2 at %s m leaves too little of %s m2"
                                .formatted(sectionM2, fromM, ownM2));
            }
        }
    }

    /** The same vessel with something else in it. */
    public Shape with(Displacement other) {
        return new Shape(floorAreaM2, rimAreaM2, depthM, wettedPerimeterM, other);
    }

    /**
     * Area of the solution's surface at a level, m2; beyond the rim, the rim's. Where something
     * begins or ends at that very level, the area just above it.
     */
    public double areaM2(double levelM) {
        double ownM2 = ownAreaM2(levelM);
        return displacement == Displacement.NONE ? ownM2 : ownM2 - displacement.sectionM2(levelM);
    }

    private double ownAreaM2(double levelM) {
        double share = Math.min(1, Math.max(0, levelM / depthM));
        return floorAreaM2 + (rimAreaM2 - floorAreaM2) * share;
    }

    /** Volume of the solution below a level, m3: the integral of {@link #areaM2}. */
    public double volumeM3(double levelM) {
        double ownM3 = ownVolumeM3(levelM);
        return displacement == Displacement.NONE ? ownM3 : ownM3 - displacement.volumeM3(levelM);
    }

    private double ownVolumeM3(double levelM) {
        double level = Math.max(0, levelM);
        if (level <= depthM) {
            return level * (floorAreaM2 + 0.5 * (rimAreaM2 - floorAreaM2) * level / depthM);
        }
        return 0.5 * depthM * (floorAreaM2 + rimAreaM2) + (level - depthM) * rimAreaM2;
    }

    /** Level of a volume of solution, m: the inverse of {@link #volumeM3}. */
    public double levelM(double volumeM3) {
        return displacement == Displacement.NONE ? ownLevelM(volumeM3) : levelAmongM(volumeM3);
    }

    private double ownLevelM(double volumeM3) {
        double volume = Math.max(0, volumeM3);
        if (floorAreaM2 == rimAreaM2) {
            return volume / floorAreaM2;
        }
        double slope = (rimAreaM2 - floorAreaM2) / depthM;
        double full = 0.5 * depthM * (floorAreaM2 + rimAreaM2);
        if (volume > full) {
            return depthM + (volume - full) / rimAreaM2;
        }
        return riseM(volume, floorAreaM2, slope);
    }

    // The highest layer whose bottom the volume reaches, and the rise in it.
    private double levelAmongM(double volumeM3) {
        int last = displacement.layers() - 1;
        for (int k = last; k >= 0; k--) {
            double fromM = displacement.fromM(k);
            double aboveM3 = volumeM3 - (ownVolumeM3(fromM) - displacement.belowM3(k));
            if (aboveM3 >= 0) {
                double slope = (rimAreaM2 - floorAreaM2) / depthM;
                double freeM2 = ownAreaM2(fromM) - displacement.layerSectionM2(k);
                double levelM = fromM + riseM(aboveM3, freeM2, slope);
                if (k < last) {
                    return Math.min(levelM, displacement.fromM(k + 1));
                }
                return levelM <= depthM ? levelM : ownLevelM(volumeM3 + displacement.belowM3(k));
            }
        }
        return ownLevelM(volumeM3);
    }

    // The form with the root below the line does not cancel.
    private static double riseM(double volumeM3, double areaM2, double slopeM) {
        return 2 * volumeM3 / (areaM2 + Math.sqrt(areaM2 * areaM2 + 2 * slopeM * volumeM3));
    }
}
