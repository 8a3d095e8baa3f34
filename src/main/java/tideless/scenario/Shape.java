package tideless.scenario;

/**
 * The inside of a vessel whose floor and every level section are similar: area grows evenly from
 * the floor to the rim.
 *
 * @param floorAreaM2 inside area at the floor, m2
 * @param rimAreaM2 inside area at the rim, m2; equal to the floor's for a box or cylinder
 * @param depthM inside depth from floor to rim, m
 * @param wettedPerimeterM mean inside perimeter, m; for the wall's heat exchange
 */
public record Shape(double floorAreaM2, double rimAreaM2, double depthM, double wettedPerimeterM) {
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
    }

    /** Area of the surface at a level, m2; beyond the rim, the rim's. */
    public double areaM2(double levelM) {
        double share = Math.min(1, Math.max(0, levelM / depthM));
        return floorAreaM2 + (rimAreaM2 - floorAreaM2) * share;
    }

    /** Volume below a level, m3: the integral of {@link #areaM2}. */
    public double volumeM3(double levelM) {
        double level = Math.max(0, levelM);
        if (level <= depthM) {
            return level * (floorAreaM2 + 0.5 * (rimAreaM2 - floorAreaM2) * level / depthM);
        }
        return 0.5 * depthM * (floorAreaM2 + rimAreaM2) + (level - depthM) * rimAreaM2;
    }

    /** Level of a volume, m: the inverse of {@link #volumeM3}. */
    public double levelM(double volumeM3) {
        double volume = Math.max(0, volumeM3);
        double slope = (rimAreaM2 - floorAreaM2) / depthM;
        double full = 0.5 * depthM * (floorAreaM2 + rimAreaM2);
        if (volume > full) {
            return depthM + (volume - full) / rimAreaM2;
        }
        // The form with the root below the line neither cancels nor divides by zero for a box.
        return 2
                * volume
                / (floorAreaM2 + Math.sqrt(floorAreaM2 * floorAreaM2 + 2 * slope * volume));
    }
}
