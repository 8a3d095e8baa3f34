package tideless.rig;

/** Shapes that tests ask for. */
public final class TestShape {
    private TestShape() {}

    /** Upright walls on a rectangular floor; inside measures, m. */
    public static Shape box(double lengthM, double widthM, double depthM) {
        return Shape.tub(lengthM, widthM, lengthM, widthM, depthM);
    }
}
