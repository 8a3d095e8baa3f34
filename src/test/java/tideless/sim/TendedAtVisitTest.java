package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.DayOfWeek;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.crop.Transplant;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Tending;
import tideless.rig.Visits;
import tideless.scenario.Crops;

/** What a scenario dates is done on its day, but in an absence by whoever comes after it. */
class TendedAtVisitTest {
    /**
     * Looked after on Mondays and Fridays, away from day 6, a Sunday, to day 9; they come again on
     * day 11, a Friday. What is dated between two visits without an absence is done on its day.
     */
    @ParameterizedTest
    @CsvSource({"3, 3", "5, 5", "6, 11", "9, 11", "10, 11", "11, 11", "12, 12"})
    void a_picking_in_an_absence_waits_for_the_next_visit(int dated, int done) {
        Planting.OfCrop crop =
                new Planting.OfCrop(
                        Crops.named("kale"),
                        2,
                        0.2,
                        24,
                        Transplant.AS_RAISED,
                        Planting.ThirstModel.CANOPY,
                        OptionalInt.empty(),
                        OptionalDouble.empty(),
                        new Tending(
                                List.of(new Tending.LeafPicking(dated, 0.3)), Optional.empty()));
        Visits visits =
                new Visits(
                        EnumSet.of(DayOfWeek.MONDAY, DayOfWeek.FRIDAY),
                        8 * Time.HOUR_S,
                        List.of(new Visits.Absence(Rigs.START.plusDays(6), Rigs.START.plusDays(9))),
                        Visits.Flush.NEVER);
        Trace trace =
                Simulation.run(
                        Rigs.scenario(
                                14,
                                600,
                                List.of(),
                                List.of(Rigs.tray("t", new Filling.Sealed(), crop, 0)),
                                visits));
        assertEquals(
                List.of(done * Time.DAY_S),
                trace.events().stream()
                        .filter(e -> e.kind() == Event.Kind.LEAVES_PICKED)
                        .map(Event::atS)
                        .toList());
    }
}
