package tideless.report;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.advice.Task;
import tideless.physics.Time;
import tideless.rig.Scenario;
import tideless.study.Forecast;
import tideless.words.Dates;
import tideless.words.Names;
import tideless.words.Numbers;
import tideless.words.OutlookWords;
import tideless.words.TaskWords;

/** Tasks as lines with a box: equal ones of several trays are one line. */
final class Checklist {
    /** Weeks that are told one by one. */
    private static final int WEEKS = 4;

    private static final int WEEK_DAYS = 7;

    /** What is done more often later on is told in one line. */
    private static final int MOST_ALIKE = 10;

    private static final int LONG_RUN_DAYS = 330;

    private final Forecast forecast;
    private final Scenario scenario;
    private final List<List<Task>> lines = new ArrayList<>();

    Checklist(Forecast forecast) {
        this.forecast = forecast;
        scenario = forecast.trace().scenario();
        Map<String, List<Task>> alike = new LinkedHashMap<>();
        for (Task task : forecast.toDo()) {
            String key =
                    task.vessel().kind()
                            + "\n"
                            + task.kind()
                            + task.crop()
                            + task.due()
                            + Numbers.litres(task.litres())
                            + TaskWords.why(task);
            alike.computeIfAbsent(key, k -> new ArrayList<>()).add(task);
        }
        lines.addAll(alike.values());
    }

    /** The first day that is told of: what a log tells of is done. */
    private LocalDate begin() {
        return scenario.log().isEmpty()
                ? scenario.start()
                : scenario.start().plusDays(scenario.log().lastDay() + 1L);
    }

    /** What these weeks are called. */
    String title() {
        return "What to do in the " + (scenario.log().isEmpty() ? "first" : "next") + " four weeks";
    }

    /** The first weeks that lie ahead, each with its heading and its lines. */
    List<Map<String, Object>> weeks() {
        List<Map<String, Object>> weeks = new ArrayList<>();
        // As sowing for the day on which the run begins.
        List<Map<String, Object>> before = rows(LocalDate.MIN, begin());
        if (!before.isEmpty()) {
            weeks.add(week("Before " + Dates.dayMonth(begin()), before));
        }
        for (int week = 0; week < WEEKS; week++) {
            LocalDate first = begin().plusDays((long) week * WEEK_DAYS);
            if (week > 0 && first.isAfter(scenario.lastDay())) {
                break;
            }
            LocalDate last = first.plusDays(WEEK_DAYS - 1L);
            weeks.add(
                    week(
                            "Week " + (week + 1) + ", " + Dates.shortSpan(first, last),
                            rows(first, first.plusDays(WEEK_DAYS))));
        }
        return weeks;
    }

    private static Map<String, Object> week(String heading, List<Map<String, Object>> rows) {
        return Map.of("heading", heading, "isEmpty", rows.isEmpty(), "rows", rows);
    }

    /** What is to be done after them; what is done more than ten times is one line. */
    List<Map<String, Object>> later() {
        LocalDate from = begin().plusDays((long) WEEKS * WEEK_DAYS);
        Map<String, List<Integer>> often = new LinkedHashMap<>();
        for (int i = 0; i < lines.size(); i++) {
            if (!lines.get(i).get(0).due().toLocalDate().isBefore(from)) {
                often.computeIfAbsent(which(lines.get(i)), k -> new ArrayList<>()).add(i);
            }
        }
        List<Map<String, Object>> rows = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            List<Integer> same = often.getOrDefault(which(lines.get(i)), List.of());
            if (same.size() <= MOST_ALIKE && same.contains(i)) {
                rows.add(row(i));
            } else if (!same.isEmpty() && same.get(0) == i) {
                rows.add(gathered(same));
            }
        }
        return rows;
    }

    private static String which(List<Task> line) {
        return line.get(0).kind() + " " + line.stream().map(Task::vessel).toList();
    }

    /** From when on to when, how often, and how much each time. */
    private Map<String, Object> gathered(List<Integer> same) {
        Task first = lines.get(same.get(0)).get(0);
        Task last = lines.get(same.get(same.size() - 1)).get(0);
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        for (int i : same) {
            least = Math.min(least, lines.get(i).get(0).litres());
            most = Math.max(most, lines.get(i).get(0).litres());
        }
        double days =
                Duration.between(first.due(), last.due()).toSeconds()
                        / Time.DAY_S
                        / (same.size() - 1);
        String litres =
                most > 0
                        ? Numbers.litres(least) + " to " + Numbers.litres(most) + " L each time, "
                        : "";
        boolean dated = scenario.days() > LONG_RUN_DAYS;
        return Map.of(
                "id",
                "task-" + (same.get(0) + 1),
                "when",
                Dates.visit(first.due(), dated),
                "what",
                Names.of(first.kind())
                        + ", "
                        + where(lines.get(same.get(0)))
                        + ", "
                        + same.size()
                        + " times",
                "why",
                litres
                        + "about "
                        + (days < 1.5 ? "each day" : "every " + Math.round(days) + " days")
                        + ", to "
                        + Dates.visit(last.due(), dated));
    }

    private List<Map<String, Object>> rows(LocalDate from, LocalDate before) {
        List<Map<String, Object>> rows = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            Task task = lines.get(i).get(0);
            LocalDate day = task.due().toLocalDate();
            if (!day.isBefore(from) && day.isBefore(before)) {
                rows.add(row(i));
            }
        }
        return rows;
    }

    private Map<String, Object> row(int i) {
        Task task = lines.get(i).get(0);
        return Map.of(
                "id",
                "task-" + (i + 1),
                "when",
                Dates.visit(task.due(), scenario.days() > LONG_RUN_DAYS),
                "what",
                what(lines.get(i)),
                "why",
                TaskWords.why(task) + likely(task));
    }

    /** Where a task is done, of several alike: as "trays left and right (basil), each". */
    static String where(List<Task> alike) {
        return Names.each(alike.stream().map(Task::vessel).toList(), alike.get(0).crop());
    }

    private static String what(List<Task> alike) {
        Task task = alike.get(0);
        String litres = task.litres() > 0 ? ", " + Numbers.litres(task.litres()) + " L" : "";
        // Of more than the vessel it is told with: the line below says of which.
        boolean ofAll = task.kind() == Task.Kind.MIX || task.kind() == Task.Kind.READ_METERS;
        return Names.of(task.kind()) + (ofAll ? "" : ", " + where(alike)) + litres;
    }

    private String likely(Task task) {
        String days = OutlookWords.likely(forecast, task);
        return days.isEmpty() ? "" : "; " + days;
    }
}
