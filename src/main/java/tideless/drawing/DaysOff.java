package tideless.drawing;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import tideless.rig.Scenario;
import tideless.rig.Visits;

/**
 * What is shaded behind a season: weekends, and when nobody comes.
 *
 * @param weekends from and to, days since the start, rising; none in a long run, where they would
 *     be a haze
 * @param absences likewise
 */
public record DaysOff(List<double[]> weekends, List<double[]> absences) {
    /** Weekends are shaded in runs up to so many days. */
    private static final int SHADED_DAYS = 130;

    public DaysOff {
        weekends = List.copyOf(weekends);
        absences = List.copyOf(absences);
    }

    /** Those of a run, cut at its ends; a weekend in an absence is a part of it. */
    public static DaysOff of(Scenario scenario) {
        LocalDate start = scenario.start();
        List<double[]> absences = new ArrayList<>();
        for (Visits.Absence absence : scenario.visits().absences()) {
            double from = Math.max(0, absence.from().toEpochDay() - start.toEpochDay());
            double to =
                    Math.min(scenario.days(), absence.to().toEpochDay() - start.toEpochDay() + 1.0);
            if (to > from) {
                absences.add(new double[] {from, to});
            }
        }
        List<double[]> weekends = new ArrayList<>();
        for (int day = 0; scenario.days() <= SHADED_DAYS && day < scenario.days(); day++) {
            int at = day;
            boolean away = absences.stream().anyMatch(span -> span[0] <= at && at < span[1]);
            DayOfWeek of = start.plusDays(day).getDayOfWeek();
            if (away || of != DayOfWeek.SATURDAY && of != DayOfWeek.SUNDAY) {
                continue;
            }
            int last = weekends.size() - 1;
            if (last >= 0 && weekends.get(last)[1] == day) {
                weekends.get(last)[1] = day + 1;
            } else {
                weekends.add(new double[] {day, day + 1});
            }
        }
        return new DaysOff(weekends, absences);
    }
}
