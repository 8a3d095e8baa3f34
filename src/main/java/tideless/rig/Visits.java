package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import tideless.physics.Time;

/**
 * When somebody looks, and what that person does besides refilling.
 *
 * @param weekdays the weekdays somebody looks
 * @param timeOfDayS at what time, seconds after midnight
 * @param absences spans in which nobody comes, both ends included
 * @param flush what is done about a tray that is too salty or too lean
 */
@RecordBuilder
public record Visits(
        Set<DayOfWeek> weekdays, double timeOfDayS, List<Absence> absences, Flush flush)
        implements VisitsBuilder.With {
    public Visits {
        weekdays = Set.copyOf(weekdays);
        absences = List.copyOf(absences);
        Objects.requireNonNull(flush, "flush");
        if (!(timeOfDayS >= 0 && timeOfDayS < Time.DAY_S)) {
            throw new IllegalArgumentException(
                    "timeOfDayS must lie in [0, 86400), was " + timeOfDayS);
        }
    }

    /** Whether somebody looks on a day. */
    public boolean on(LocalDate day) {
        if (!weekdays.contains(day.getDayOfWeek())) {
            return false;
        }
        return !isAway(day);
    }

    /** Whether a day lies in an absence. */
    public boolean isAway(LocalDate day) {
        for (Absence absence : absences) {
            if (!day.isBefore(absence.from()) && !day.isAfter(absence.to())) {
                return true;
            }
        }
        return false;
    }

    /**
     * A span in which nobody comes.
     *
     * @param from first day away
     * @param to last day away
     */
    public record Absence(LocalDate from, LocalDate to) {
        public Absence {
            if (to.isBefore(from)) {
                throw new IllegalArgumentException("absence ends before it begins: " + from);
            }
        }
    }

    /** What is done about a tray that is out of its EC band. */
    public enum Flush {
        /** The tray is drained and filled again with feed at the first visit that finds it so. */
        AT_LIMIT,
        /** Nothing is done; the run only says when it would be due. */
        NEVER
    }
}
