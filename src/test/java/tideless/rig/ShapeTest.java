package tideless.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Displacement.Solid;

/** Vessels with cups and a valve in them, worked out by hand; tolerance: rounding of doubles. */
class ShapeTest {
    private static final double ROUNDING = 1e-15;

    /** Eight cups of 20 cm2 from 4 cm to the deck. */
    private static final Solid CUPS = new Solid(8 * 20e-4, 0.04, 0.10);

    /** A valve body of 100 cm2 that stands between 2 and 6 cm. */
    private static final Solid BODY = new Solid(100e-4, 0.02, 0.06);

    private static Shape box(Solid... solids) {
        return TestShape.box(0.5, 0.4, 0.10).with(Displacement.of(List.of(solids)));
    }

    // Box of 0.2 m2, cups of 0.016 m2 from 4 cm:
    // at 4 cm 0.2 x 0.04 = 8 L; at 5 cm 8 L + 0.184 x 0.01 = 9.84 L;
    // at the rim, 10 cm, 8 L + 0.184 x 0.06 = 19.04 L; a centimetre above it 2 L more.
    @ParameterizedTest(name = "{1} L at {0} cm")
    @CsvSource({"0, 0", "2, 4", "4, 8", "5, 9.84", "10, 19.04", "11, 21.04"})
    void cups_in_a_box(double cm, double litres) {
        Shape tray = box(CUPS);
        assertEquals(litres / 1000, tray.volumeM3(cm / 100), ROUNDING);
        assertEquals(cm / 100, tray.levelM(litres / 1000), ROUNDING);
    }

    // The body takes 0.01 m2 from 2 to 6 cm, the cups 0.016 m2 from 4 cm:
    // 3 cm: 6 - 0.1 = 5.9 L; 5 cm: 10 - 0.3 - 0.16 = 9.54 L; 8 cm: 16 - 0.4 - 0.64 = 14.96 L.
    @ParameterizedTest(name = "{1} L at {0} cm, surface {2} m2")
    @CsvSource({"1, 2, 0.2", "3, 5.9, 0.19", "5, 9.54, 0.174", "8, 14.96, 0.184"})
    void cups_and_a_valve_body_overlap_in_height(double cm, double litres, double areaM2) {
        Shape tray = box(CUPS, BODY);
        assertEquals(litres / 1000, tray.volumeM3(cm / 100), ROUNDING);
        assertEquals(cm / 100, tray.levelM(litres / 1000), ROUNDING);
        assertEquals(areaM2, tray.areaM2(cm / 100), ROUNDING);
    }

    // A tub of 1 m by 10 cm at the floor and 1 m by 20 cm at the rim, 10 cm up: area 0.1 + z,
    // volume
    // 0.1 z + z2/2. At 6 cm 6 + 1.8 = 7.8 L; cups of 0.04 m2 from 4 cm take 0.8 L of it: 7 L.
    // At 3 cm 3 + 0.45 = 3.45 L; at the rim 15 L less 0.04 x 0.06 = 2.4 L.
    @ParameterizedTest(name = "{1} L at {0} cm")
    @CsvSource({"3, 3.45", "6, 7", "10, 12.6"})
    void cups_in_a_tub(double cm, double litres) {
        Shape tub =
                Shape.tub(1, 0.2, 1, 0.1, 0.10)
                        .with(Displacement.of(List.of(new Solid(0.04, 0.04, 0.10))));
        assertEquals(litres / 1000, tub.volumeM3(cm / 100), ROUNDING);
        assertEquals(cm / 100, tub.levelM(litres / 1000), ROUNDING);
        assertEquals(0.12, tub.areaM2(0.06), ROUNDING); // 0.1 + 0.06 - 0.04
    }

    // Frustum of a cone: pi h/12 (D^2 + D d + d^2), as in any table of solids, here up to the
    // diameter at the level. 40/20 cm, 30 deep: at 20 cm the diameter is 33.333 cm.
    @ParameterizedTest(name = "{0}/{1} cm, {2} deep, at {3}: {4} L")
    @CsvSource({
        "40, 20, 30, 20, 11.4028",
        "40, 20, 30, 30, 21.9911",
        "28, 22, 30, 20, 9.0687",
        "25, 25, 40, 38, 18.6532"
    })
    void a_bucket_is_a_frustum(double rim, double floor, double depth, double at, double litres) {
        Shape bucket = Shape.bucket(rim / 100, floor / 100, depth / 100);
        assertEquals(litres / 1000, bucket.volumeM3(at / 100), 5e-8);
        assertEquals(at / 100, bucket.levelM(bucket.volumeM3(at / 100)), ROUNDING);
    }

    // Prismatoid: h/6 (floor + 4 middle + section), the middle from its own sides. 60 x 40 cm over
    // 40 x 20 cm, 30 deep: at 20 cm 53.33 x 33.33 cm, at 10 cm 46.67 x 26.67 cm, 25.185 L; full
    // 1/6 x 30 x (800 + 4 x 50 x 30 + 2400) cm3 = 46 L.
    @ParameterizedTest(name = "at {0} cm {1} L")
    @CsvSource({"20, 25.185185185185187", "30, 46", "33, 53.2"})
    void a_tub_is_a_prismatoid(double at, double litres) {
        Shape tub = Shape.tub(0.60, 0.40, 0.40, 0.20, 0.30);
        assertEquals(litres / 1000, tub.volumeM3(at / 100), ROUNDING);
        assertEquals(at / 100, tub.levelM(litres / 1000), ROUNDING);
    }

    // Cone: pi (r + R) times the slant, sqrt(h^2 + (R - r)^2): 40/20 cm, 30 deep:
    // pi x 0.3 x sqrt(0.09 + 0.01) m2. Tub: two trapezia of (60 + 40)/2 cm by sqrt(30^2 + 10^2)
    // and two of (40 + 20)/2 cm by the same. Cylinder: pi d h.
    @Test
    void walls_lie_along_their_slope() {
        double slantM = Math.sqrt(0.1);
        assertEquals(Math.PI * 0.3 * slantM, Shape.bucket(0.4, 0.2, 0.3).wallM2(0.3), ROUNDING);
        assertEquals(1.6 * slantM, Shape.tub(0.6, 0.4, 0.4, 0.2, 0.3).wallM2(0.3), ROUNDING);
        assertEquals(Math.PI * 0.25 * 0.38, Shape.cylinder(0.25, 0.4).wallM2(0.38), ROUNDING);
        // Half way up the bucket is 30 cm across: pi x (0.10 + 0.15) x half the slant.
        assertEquals(Math.PI * 0.125 * slantM, Shape.bucket(0.4, 0.2, 0.3).wallM2(0.15), ROUNDING);
    }

    @Test
    void floor_rim_and_depth_stay_the_vessels_own() {
        Shape tray = box(CUPS, BODY);
        assertEquals(0.2, tray.floorAreaM2());
        assertEquals(0.2, tray.rimAreaM2());
        assertEquals(0.10, tray.depthM());
    }

    // Everything that a full vessel holds less: 0.016 x 0.06 + 0.01 x 0.04 = 1.36 L.
    @Test
    void what_is_displaced_adds_up() {
        Displacement both = Displacement.NONE.and(CUPS).and(BODY);
        assertEquals(1.36e-3, both.volumeM3(0.10), ROUNDING);
        assertEquals(1.36e-3, box().volumeM3(0.10) - box(CUPS, BODY).volumeM3(0.10), ROUNDING);
    }

    @Test
    void nothing_in_it_is_one_and_the_same_nothing() {
        assertSame(Displacement.NONE, Displacement.of(List.of()));
        assertEquals(box(CUPS), box(CUPS));
        assertNotEquals(box(CUPS), box(BODY));
    }

    @Test
    void what_leaves_no_room_or_stands_over_the_rim_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> box(new Solid(0.199, 0, 0.05)));
        assertThrows(
                IllegalArgumentException.class,
                () -> box(new Solid(0.1, 0, 0.05), new Solid(0.1, 0.04, 0.06)));
        assertThrows(IllegalArgumentException.class, () -> box(new Solid(0.01, 0.05, 0.11)));
        assertThrows(IllegalArgumentException.class, () -> new Solid(0.01, 0.05, 0.05));
        assertThrows(IllegalArgumentException.class, () -> new Solid(0.01, -0.01, 0.05));
        assertThrows(IllegalArgumentException.class, () -> new Solid(0, 0.01, 0.05));
        assertThrows(IllegalArgumentException.class, () -> new Solid(Double.NaN, 0.01, 0.05));
    }
}
