package tideless.advice;

import static java.time.temporal.ChronoUnit.DAYS;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import tideless.physics.Time;
import tideless.rig.Log;
import tideless.rig.Scenario;
import tideless.rig.Visits;
import tideless.sim.Trace;

/**
 * The moments at which somebody looks during a run.
 *
 * @param hours hours since the start, rising; the run's start is not one of them unless somebody
 *     looks then
 * @param endHours length of the run, h
 * @param away first and last hour of each absence, in the scenario's order
 */
public record VisitTimes(List<Double> hours, double endHours, List<double[]> away) {
    private static final double WEEK_H = 7 * 24;

    /** Of a scenario. */
    public static VisitTimes of(Scenario scenario) {
        List<Double> hours = new ArrayList<>();
        for (int day = 0; day < scenario.days(); day++) {
            LocalDate date = scenario.start().plusDays(day);
            if (scenario.visits().on(date)) {
                hours.add(day * 24 + scenario.visits().timeOfDayS() / Time.HOUR_S);
            }
        }
        List<double[]> away = new ArrayList<>();
        for (Visits.Absence absence : scenario.visits().absences()) {
            away.add(
                    new double[] {
                        24.0 * DAYS.between(scenario.start(), absence.from()),
                        24.0 * (DAYS.between(scenario.start(), absence.to()) + 1)
                    });
        }
        return new VisitTimes(List.copyOf(hours), scenario.days() * 24.0, List.copyOf(away));
    }

    /** The spans in which nobody looks, from the start through every visit to the end, in hours. */
    public List<double[]> gaps() {
        List<double[]> gaps = new ArrayList<>();
        double from = 0;
        for (double at : hours) {
            if (at > from) {
                gaps.add(new double[] {from, at});
            }
            from = at;
        }
        if (endHours > from) {
            gaps.add(new double[] {from, endHours});
        }
        return gaps;
    }

    double longestGapDays() {
        double longest = 0;
        for (double[] gap : gaps()) {
            longest = Math.max(longest, gap[1] - gap[0]);
        }
        return longest / 24;
    }

    /** The first round at or after an hour, or that hour itself when nobody comes any more. */
    double nextFrom(double hour) {
        for (double at : hours) {
            if (at >= hour) {
                return at;
            }
        }
        return hour;
    }

    /** The same, but after all that a log tells. */
    double nextFrom(double hour, Log log) {
        double toldHour = log.lastS() / Time.HOUR_S;
        for (double at : hours) {
            if (at >= hour && at > toldHour) {
                return at;
            }
        }
        return Math.max(hour, toldHour);
    }

    /** Whether somebody comes at least so often in the week that follows a round, d apart. */
    boolean comesEvery(double days, double roundHour) {
        double from = roundHour;
        for (double at : hours) {
            if (at > from && from < roundHour + WEEK_H) {
                if (at - from > 24 * days) {
                    return false;
                }
                from = at;
            }
        }
        return true;
    }

    /** The last round before an hour, or 0. */
    double lastBefore(double hour) {
        double last = 0;
        for (double at : hours) {
            if (at >= hour) {
                break;
            }
            last = at;
        }
        return last;
    }

    /** Whether an absence lies between the rounds before and after an hour. */
    boolean isLeftFor(double hour) {
        double before = lastBefore(hour);
        double after = nextFrom(hour);
        return away.stream().anyMatch(span -> span[0] <= after && span[1] > before);
    }

    /**
     * How long it took from the last round before an hour to that hour: the time that was left to
     * whoever looked then; without a date where only the run's start lies before.
     */
    Facts leftBefore(double hour, Trace trace) {
        double round = lastBefore(hour);
        Facts left = Facts.of(Quantity.HELD_WATER, hour - round);
        return round > 0 ? left.on(trace.clockAt(round * Time.HOUR_S)) : left;
    }

    /** The last round at or before an hour; the first one when none is, that hour without any. */
    double lastUpTo(double hour) {
        double last = hours.isEmpty() ? hour : hours.get(0);
        for (double at : hours) {
            if (at > hour) {
                break;
            }
            last = at;
        }
        return last;
    }
}
