package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/**
 * Weight and balance of a stand with water on it. Water up high is heavy and moves when it tilts:
 * put the reservoir low where the feed allows, fix a tall stand to the wall. Rigid statics; they
 * advise and do not certify.
 */
public final class RigLoad {
    private RigLoad() {}

    /**
     * Weight of a volume of liquid.
     *
     * @param volumeM3 m3
     * @param densityKgPerM3 kg/m3
     * @return N
     */
    public static double weightN(double volumeM3, double densityKgPerM3) {
        return volumeM3 * densityKgPerM3 * TubeFlow.GRAVITY_M_PER_S2;
    }

    /**
     * Height of the common centre of mass.
     *
     * @param massesKg kg, at least one above 0
     * @param heightsM of each one's centre above the feet, m
     * @return m
     */
    public static double centreHeightM(double[] massesKg, double[] heightsM) {
        if (massesKg.length != heightsM.length) {
            throw new IllegalArgumentException(
                    "as many heights as masses are needed, were "
                            + heightsM.length
                            + " and "
                            + massesKg.length);
        }
        double mass = 0;
        double moment = 0;
        for (int i = 0; i < massesKg.length; i++) {
            mass += massesKg[i];
            moment += massesKg[i] * heightsM[i];
        }
        return moment / mass;
    }

    /**
     * Tilt at which the stand falls over: the centre of mass stands above the edge of its base.
     *
     * @param baseHalfWidthM from the line below the centre to the nearest edge, m
     * @param centreHeightM m
     * @return rad
     */
    public static double tippingAngleRad(double baseHalfWidthM, double centreHeightM) {
        return FastMath.atan2(baseHalfWidthM, centreHeightM);
    }

    /**
     * Sideways push that lifts the far feet: m g w/h.
     *
     * @param massKg whole mass, kg
     * @param baseHalfWidthM m
     * @param pushHeightM height of the push above the feet, m
     * @return N
     */
    public static double tippingPushN(double massKg, double baseHalfWidthM, double pushHeightM) {
        return massKg * TubeFlow.GRAVITY_M_PER_S2 * baseHalfWidthM / pushHeightM;
    }

    /**
     * Height by which the free surface of a box of water seems to lift the water's own centre of
     * mass when it tilts: I/V = B^2/(12 h).
     *
     * @param breadthM inside breadth across the tilt, m
     * @param depthM depth of the water, m
     * @return m
     */
    public static double freeSurfaceRiseM(double breadthM, double depthM) {
        return breadthM * breadthM / (12 * depthM);
    }

    /**
     * Mean pressure on the floor.
     *
     * @param massKg kg
     * @param footprintM2 area that carries it, m2
     * @return Pa
     */
    public static double floorPressurePa(double massKg, double footprintM2) {
        return massKg * TubeFlow.GRAVITY_M_PER_S2 / footprintM2;
    }
}
