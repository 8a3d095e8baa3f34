package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Recomputed independently; half the last digit. */
class RigLoadTest {
    @Test
    void sixty_litres_weigh_587_newtons() {
        assertEquals(587.34, RigLoad.weightN(0.060, 998.204), 0.01);
    }

    @ParameterizedTest(name = "base {0} m, centre {1} m")
    @CsvSource({"0.30, 0.9, 9.46", "0.30, 1.2, 7.13", "0.40, 1.0, 11.31", "0.45, 0.5, 24.23"})
    void a_stand_tips_at_the_stated_angle(double baseM, double centreM, double expectedDeg) {
        assertEquals(
                expectedDeg, Math.toDegrees(RigLoad.tippingAngleRad(0.5 * baseM, centreM)), 5.1e-3);
    }

    // 12 kg frame at 0.8 m, 10 kg at 0.35, 0.85 and 1.35 m, a reservoir of 10 kg at 1.70 m, base
    // 0.30
    // m: centre 1.002 m, 8.51 degrees, 45.0 N at 1.7 m.
    @Test
    void a_rack_with_its_reservoir_on_top_tips_at_a_light_push() {
        assertEquals(8.51, Math.toDegrees(RigLoad.tippingAngleRad(0.15, 1.002)), 5.1e-3);
        assertEquals(45.0, RigLoad.tippingPushN(52, 0.15, 1.7), 0.05);
    }

    // 30 kg of water at 0.95 m on a stand of 5 kg at 0.55 m: centre 0.89286 m; half width 0.20 m
    // 12.626 degrees and 62.406 N at 1.1 m; half width 0.30 m 18.572 degrees and 93.609 N.
    @Test
    void a_wider_foot_steadies_a_stand() {
        double centre = 0.89286;
        assertEquals(12.626, Math.toDegrees(RigLoad.tippingAngleRad(0.20, centre)), 5e-4);
        assertEquals(62.406, RigLoad.tippingPushN(35, 0.20, 1.1), 5.1e-4);
        assertEquals(18.572, Math.toDegrees(RigLoad.tippingAngleRad(0.30, centre)), 5e-4);
        assertEquals(93.609, RigLoad.tippingPushN(35, 0.30, 1.1), 5.1e-4);
    }
}
