package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.rig.Tube;

/**
 * What a hung valve brings against what the overflow passes. The lines have no tube, so that the
 * valve's seat alone limits the flow: Cd a sqrt(2 g h) with Cd 0.61 and g 9.80665 m/s2 for seat and
 * hole alike.
 */
class OverflowHoleTest {
    private static final double ML_PER_MIN = 1e-6 / 60;

    /** Full, its surface stands 0.60 m above the bench. */
    private static final Reservoir SHELF =
            new Reservoir(
                    "wall",
                    Rigs.box(0.1, 0.4),
                    0.30,
                    0.02,
                    0.30,
                    0,
                    0.30,
                    new Reservoir.Refill(Reservoir.Refill.When.NEVER, 0.5, Pouring.FEED),
                    new Tube(0.01, 0, 0));

    private static List<RigCheck.Feed> feeds(Tray... trays) {
        RigCheck check =
                RigCheck.of(Rigs.scenario(1, 3600, List.of(SHELF), List.of(trays), Rigs.nobody()))
                        .get(0);
        return check.trays();
    }

    /** Ten centimetres deep on the bench, setting 5 cm. */
    private static Tray tray(
            String name, double seatM, double seatHeightM, double overflowM, double boreM) {
        return tray(name, seatM, seatHeightM, overflowM, OptionalDouble.of(boreM));
    }

    private static Tray tray(
            String name, double seatM, double seatHeightM, double overflowM, OptionalDouble boreM) {
        Filling valve =
                new TestValve()
                        .seatBoreM(seatM)
                        .seatAboveFloorM(seatHeightM)
                        .branch(new Tube(0.01, 0, 0))
                        .make();
        return Rigs.withOverflow(Rigs.tray(name, valve, Rigs.drinking(1), 0), overflowM, boreM);
    }

    // A hole of 16 mm from 8 cm up in a tray of 10 cm: its middle lies at 8.8 cm, 12 mm below the
    // rim. a = 2.01062e-4 m2, sqrt(2 g 0.012) = 0.485139 m/s, 0.61 a v = 5.95012e-5 m3/s,
    // 3570.1 mL/min. From 7 cm up: 22 mm, 0.656881 m/s, 8.05653e-5 m3/s, 4833.9 mL/min.
    // Of 5 mm from 8 cm up: 17.5 mm, 1.96350e-5 m2, 0.585861 m/s, 421.03 mL/min.
    @ParameterizedTest(name = "{1} mm from {0} cm up pass {2} mL/min")
    @CsvSource({"8, 16, 3570.1", "7, 16, 4833.9", "8, 5, 421.03"})
    void a_hole_passes_what_the_orifice_law_says(double cm, double mm, double mlPerMin) {
        RigCheck.Feed feed = feeds(tray("a", 0.002, 0.1, cm / 100, mm / 1000)).get(0);
        assertEquals(mlPerMin, feed.holeM3PerS() / ML_PER_MIN, 0.05);
    }

    // Seat of 4 mm at the rim, 10 cm up: head 0.5 m, a = 1.256637e-5 m2, v = 3.131557 m/s,
    // 2.400491e-5 m3/s = 1440.3 mL/min. Sunk to 3 cm, it is drowned by the full tray: the same.
    // 20 cm up: head 0.4 m, v = 2.800950 m/s, 1288.2 mL/min.
    @ParameterizedTest(name = "a seat {0} cm up brings {1} mL/min")
    @CsvSource({"10, 1440.3", "3, 1440.3", "20, 1288.2"})
    void a_hung_valve_brings_what_its_seat_passes_with_the_tray_full(double cm, double mlPerMin) {
        RigCheck.Feed feed = feeds(tray("a", 0.004, cm / 100, 0.08, 0.016)).get(0);
        assertEquals(mlPerMin, feed.stuckM3PerS() / ML_PER_MIN, 0.05);
    }

    // 3570.1 / 1440.3 = 2.479; 421.03 / 1440.3 = 0.2923.
    @Test
    void a_wide_hole_carries_a_hung_valve_and_a_narrow_one_does_not() {
        List<RigCheck.Feed> feeds =
                feeds(tray("a", 0.004, 0.1, 0.08, 0.016), tray("b", 0.004, 0.1, 0.08, 0.005));
        assertEquals(2.479, feeds.get(0).holeMargin(), 0.001);
        assertEquals(0.2923, feeds.get(1).holeMargin(), 0.0001);
    }

    @Test
    void of_no_hole_nothing_is_said() {
        RigCheck.Feed feed = feeds(tray("a", 0.004, 0.1, 0.09, OptionalDouble.empty())).get(0);
        assertTrue(Double.isNaN(feed.holeM3PerS()) && Double.isNaN(feed.holeMargin()));
    }

    // One valve hung open has the trunk to itself; with the others open it gets less.
    @Test
    void a_valve_that_hangs_alone_brings_more_than_beside_the_others() {
        Reservoir narrow = Rigs.reservoir(0.1, 0.3, Reservoir.Refill.When.NEVER);
        List<Tray> trays = new ArrayList<>();
        for (String name : List.of("a", "b", "c")) {
            trays.add(Rigs.tray(name, Rigs.valve(), Rigs.drinking(1), 0));
        }
        RigCheck check =
                RigCheck.of(Rigs.scenario(1, 3600, List.of(narrow), trays, Rigs.nobody())).get(0);
        for (RigCheck.Feed feed : check.trays()) {
            assertTrue(feed.stuckM3PerS() > feed.fullM3PerS(), feed.toString());
        }
    }
}
