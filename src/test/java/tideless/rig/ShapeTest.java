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
        return new Shape(0.2, 0.2, 0.10, 1.8, Displacement.of(List.of(solids)));
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

    // A tub of 0.1 m2 at the floor and 0.2 m2 at the rim, 10 cm up: area 0.1 + z, volume
    // 0.1 z + z2/2. At 6 cm 6 + 1.8 = 7.8 L; cups of 0.04 m2 from 4 cm take 0.8 L of it: 7 L.
    // At 3 cm 3 + 0.45 = 3.45 L; at the rim 15 L less 0.04 x 0.06 = 2.4 L.
    @ParameterizedTest(name = "{1} L at {0} cm")
    @CsvSource({"3, 3.45", "6, 7", "10, 12.6"})
    void cups_in_a_tub(double cm, double litres) {
        Shape tub =
                new Shape(
                        0.1, 0.2, 0.10, 1.6, Displacement.of(List.of(new Solid(0.04, 0.04, 0.10))));
        assertEquals(litres / 1000, tub.volumeM3(cm / 100), ROUNDING);
        assertEquals(cm / 100, tub.levelM(litres / 1000), ROUNDING);
        assertEquals(0.12, tub.areaM2(0.06), ROUNDING); // 0.1 + 0.06 - 0.04
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
