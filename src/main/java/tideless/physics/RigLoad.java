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
     * Tilt at which the stand falls over: the centre of mass stands above the edge of its base.
     * What is in it is taken as rigid: water that runs to the low side tips it sooner.
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
}
