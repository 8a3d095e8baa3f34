package tideless.sim;

import java.time.LocalDate;
import tideless.rig.Scenario;
import tideless.rig.Visits;

/**
 * When somebody comes again.
 *
 * @param days until then, or until the run ends when nobody does, d
 * @param afterAbsence whether an absence lies between
 * @param isNever whether nobody does before the run ends
 */
record NextVisit(int days, boolean afterAbsence, boolean isNever) {
    /** The run has ended. */
    static final NextVisit NONE = new NextVisit(0, false, true);

    static NextVisit after(Scenario scenario, LocalDate date) {
        Visits visits = scenario.visits();
        LocalDate end = scenario.start().plusDays(scenario.days());
        LocalDate next = date.plusDays(1);
        boolean away = false;
        while (next.isBefore(end) && !visits.on(next)) {
            away |= visits.isAway(next);
            next = next.plusDays(1);
        }
        return new NextVisit(
                (int) (next.toEpochDay() - date.toEpochDay()), away, !next.isBefore(end));
    }
}
