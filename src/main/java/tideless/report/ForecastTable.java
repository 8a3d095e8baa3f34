package tideless.report;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.advice.Sizing;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.study.Forecast;
import tideless.words.CureWords;
import tideless.words.Dates;
import tideless.words.Names;
import tideless.words.Numbers;
import tideless.words.TaskWords;
import tideless.words.VerdictWords;
import tideless.words.WarningWords;
import tideless.words.Wrap;

/**
 * A forecast as a short table for a terminal: what to do, when, how many litres, why; then what
 * goes wrong if nothing changes. Its own words are plain ASCII and carry the whole meaning; colour
 * only repeats it.
 */
public final class ForecastTable {
    /** More than this many tasks of one kind at one place become a line and the next few. */
    private static final int LISTED_WHOLE = 4;

    private static final int NEXT_FEW = 3;
    private static final int NARROWEST = 56;
    private static final int NARROWEST_WHY = 26;
    private static final int LITRES_WIDTH = 8;
    private static final int LONG_RUN_DAYS = 330;

    private static final String BOLD = "\u001b[1m";
    private static final String YELLOW = "\u001b[33m";
    private static final String CYAN = "\u001b[36m";
    private static final String PLAIN = "\u001b[0m";

    private final PrintWriter out;
    private final Forecast forecast;
    private final boolean colour;
    private final int width;
    private final boolean years;
    private final int whenWidth;
    private final int whatWidth;

    private ForecastTable(PrintWriter out, Forecast forecast, boolean colour, int width) {
        this.out = out;
        this.forecast = forecast;
        this.colour = colour;
        this.width = Math.max(NARROWEST, width);
        this.years = forecast.trace().scenario().days() > LONG_RUN_DAYS;
        this.whenWidth = years ? 18 : 17;
        int what = "WHAT".length();
        for (List<Task> group : groups(forecast.advice().tasks()).values()) {
            what = Math.max(what, 2 + title(group).length());
        }
        this.whatWidth = what + 2;
    }

    /**
     * Prints the table.
     *
     * @param out where to
     * @param forecast what
     * @param colour whether the terminal shows colours and its owner wants them
     * @param width columns to fill; less than 56 counts as 56
     */
    public static void print(PrintWriter out, Forecast forecast, boolean colour, int width) {
        new ForecastTable(out, forecast, colour, width).print();
        out.flush();
    }

    private void print() {
        Scenario scenario = forecast.trace().scenario();
        LocalDate last = scenario.start().plusDays(scenario.days() - 1L);
        paragraph(BOLD, "", Names.clean(scenario.title()));
        paragraph(
                "",
                "",
                Dates.span(scenario.start(), last)
                        + ", "
                        + count(scenario.days(), "day")
                        + ", seed "
                        + forecast.seed());
        line("");
        for (String verdict : VerdictWords.lines(forecast.advice().verdict())) {
            paragraph(BOLD, "", verdict);
        }
        line("");
        printTasks(scenario);
        line("");
        printWarnings();
    }

    private void printTasks(Scenario scenario) {
        List<Task> tasks = forecast.advice().tasks();
        if (tasks.isEmpty()) {
            line("Nothing to do before the end of the run.");
        } else {
            String head = pad("WHAT", whatWidth) + pad("WHEN", whenWidth);
            line(paint(BOLD, head + right("LITRES", LITRES_WIDTH) + (beside() ? "  WHY" : "")));
        }
        Map<String, List<Task>> groups = groups(tasks);
        for (Reservoir reservoir : scenario.reservoirs()) {
            List<List<Task>> own = of(groups, reservoir.id());
            Sizing sizing = sizingOf(reservoir.name());
            if (!own.isEmpty() || sizing != null) {
                paragraph(CYAN, "", "Reservoir " + Names.clean(reservoir.name()));
            }
            if (sizing != null) {
                paragraph("", "  ", lasts(sizing));
            }
            own.forEach(this::printGroup);
        }
        for (Tray tray : scenario.trays()) {
            List<List<Task>> own = of(groups, tray.id());
            if (!own.isEmpty()) {
                String crop = tray.planting().cropName();
                paragraph(
                        CYAN,
                        "",
                        "Tray "
                                + Names.clean(tray.name())
                                + (crop.equals(tray.name()) ? "" : " (" + Names.clean(crop) + ")"));
            }
            own.forEach(this::printGroup);
        }
        for (List<Task> group : groups.values()) {
            printGroup(group); // Of a place the scenario does not name: never silently dropped.
        }
    }

    private Sizing sizingOf(String reservoir) {
        for (Sizing sizing : forecast.advice().sizings()) {
            if (sizing.reservoir().equals(reservoir)) {
                return sizing;
            }
        }
        return null;
    }

    /** How long a full one lasts at first and at the worst, and what would be enough. */
    private String lasts(Sizing sizing) {
        List<Double> days = sizing.daysWhenFull();
        int worst = -1;
        for (int day = 0; day < days.size(); day++) {
            // A value that only says "to the end of the run" is no measure of the reservoir.
            boolean runsOut = days.get(day) < days.size() - day - 1e-6;
            if (runsOut && (worst < 0 || days.get(day) < days.get(worst))) {
                worst = day;
            }
        }
        StringBuilder text = new StringBuilder();
        text.append("full: ").append(Numbers.litres(sizing.usableLitres())).append(" L usable");
        if (worst < 0) {
            return text.append(", lasts to the end of the run").toString();
        }
        LocalDate on = forecast.trace().scenario().start().plusDays(worst);
        text.append(", lasts ").append(Numbers.days(days.get(0))).append(" at first");
        if (worst > 0) {
            text.append(", ").append(Numbers.days(days.get(worst))).append(" at worst (");
            text.append(Dates.dayMonth(on)).append(')');
        }
        if (sizing.longestGapDays() > 0) {
            text.append("; ").append(Numbers.litres(sizing.enoughUsableLitres()));
            text.append(" L usable would last the longest gap between visits, ");
            text.append(Numbers.days(sizing.longestGapDays()));
        }
        return text.toString();
    }

    private void printGroup(List<Task> group) {
        if (group.size() <= LISTED_WHOLE) {
            String before = "";
            for (Task task : group) {
                before = printTask(Names.of(task.kind()), task, before);
            }
            return;
        }
        Task first = group.get(0);
        Task last = group.get(group.size() - 1);
        row(title(group), "from " + Dates.weekday(day(first)), litresOf(group), intervals(group));
        String before = "";
        for (Task task : group.subList(0, NEXT_FEW)) {
            before = printTask(task == first ? "  first" : "", task, before);
        }
        row("  last", Dates.visit(last.due(), years), pour(last.litres()), "all in tasks.csv");
    }

    private String printTask(String what, Task task, String before) {
        String why = TaskWords.why(task);
        row(
                what,
                Dates.visit(task.due(), years),
                pour(task.litres()),
                why.equals(before) ? "as above" : why);
        return why;
    }

    private static String intervals(List<Task> group) {
        List<Double> gaps = new ArrayList<>();
        for (int i = 1; i < group.size(); i++) {
            Duration gap = Duration.between(group.get(i - 1).due(), group.get(i).due());
            gaps.add(gap.toMinutes() / 1440.0);
        }
        // The mean of three, so that a weekend at either end does not stand for the whole.
        double early = mean(gaps.subList(0, Math.min(3, gaps.size())));
        double late = mean(gaps.subList(Math.max(0, gaps.size() - 3), gaps.size()));
        if (late < 0.8 * early) {
            return Numbers.days(early) + " apart at first, shortening to " + Numbers.days(late);
        }
        if (early < 0.8 * late) {
            return Numbers.days(early) + " apart at first, lengthening to " + Numbers.days(late);
        }
        return "about " + Numbers.days(mean(gaps)) + " apart";
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(v -> v).average().orElse(Double.NaN);
    }

    private static String litresOf(List<Task> group) {
        double least = group.stream().mapToDouble(Task::litres).min().orElse(0);
        double most = group.stream().mapToDouble(Task::litres).max().orElse(0);
        if (most <= 0) {
            return "";
        }
        String high = Numbers.litres(most);
        // Both ends to the same place: "18-41", not "17.5-41".
        String low = most >= 19.95 ? Long.toString(Math.round(least)) : Numbers.litres(least);
        return low.equals(high) ? high : low + "-" + high;
    }

    private static String pour(double litres) {
        return litres > 0 ? Numbers.litres(litres) : "";
    }

    private static LocalDate day(Task task) {
        return task.due().toLocalDate();
    }

    private static String title(List<Task> group) {
        String word = Names.of(group.get(0).kind());
        return group.size() > LISTED_WHOLE ? word + ", " + group.size() + " times" : word;
    }

    /** Tasks of one kind at one place, in the order of their first date. */
    private static Map<String, List<Task>> groups(List<Task> tasks) {
        Map<String, List<Task>> groups = new LinkedHashMap<>();
        for (Task task : tasks) {
            String key = key(task.vessel()) + task.kind();
            groups.computeIfAbsent(key, k -> new ArrayList<>()).add(task);
        }
        return groups;
    }

    private static String key(VesselId vessel) {
        return vessel.kind() + vessel.name() + "\n";
    }

    private static List<List<Task>> of(Map<String, List<Task>> groups, VesselId vessel) {
        List<List<Task>> own = new ArrayList<>();
        String prefix = key(vessel);
        for (String key : List.copyOf(groups.keySet())) {
            if (key.startsWith(prefix)) {
                own.add(groups.remove(key));
            }
        }
        return own;
    }

    private void printWarnings() {
        List<Warning> warnings = forecast.advice().warnings();
        if (warnings.isEmpty()) {
            line("No warnings.");
            return;
        }
        line(paint(BOLD, "WARNINGS"));
        Map<String, List<Warning>> groups = new LinkedHashMap<>();
        for (Warning warning : warnings) {
            String key = key(warning.vessel()) + warning.kind();
            groups.computeIfAbsent(key, k -> new ArrayList<>()).add(warning);
        }
        for (List<Warning> group : groups.values()) {
            printWarning(group);
        }
    }

    private void printWarning(List<Warning> group) {
        Warning first = group.get(0);
        String head = "! " + WarningWords.head(first, years);
        if (group.size() > 1) {
            LocalDateTime last = group.get(group.size() - 1).from();
            head += ", " + group.size() + " times, last " + Dates.visit(last, years);
        }
        paragraph(YELLOW, "", head);
        paragraph("", "    ", WarningWords.why(first));
        if (!first.cures().isEmpty()) {
            paragraph("", "    ", "cure: " + CureWords.of(first.cures()));
        }
    }

    /** Whether there is room for the reason beside the litres. */
    private boolean beside() {
        return width - whatWidth - whenWidth - LITRES_WIDTH - 2 >= NARROWEST_WHY;
    }

    private void row(String what, String when, String litres, String why) {
        String start =
                pad("  " + what, whatWidth) + pad(when, whenWidth) + right(litres, LITRES_WIDTH);
        if (why.isEmpty()) {
            line(start);
        } else if (beside()) {
            int indent = whatWidth + whenWidth + LITRES_WIDTH + 2;
            List<String> lines = Wrap.lines(why, width - indent);
            line(pad(start, indent) + lines.get(0));
            for (String more : lines.subList(1, lines.size())) {
                line(" ".repeat(indent) + more);
            }
        } else {
            line(start);
            paragraph("", "      ", why);
        }
    }

    private void paragraph(String style, String indent, String text) {
        for (String part : Wrap.lines(text, width - indent.length())) {
            line(indent + paint(style, part));
        }
    }

    private void line(String text) {
        // Not println: the same bytes on every system.
        out.print(text.stripTrailing() + "\n");
    }

    private String paint(String style, String text) {
        return colour && !style.isEmpty() && !text.isEmpty() ? style + text + PLAIN : text;
    }

    private static String pad(String text, int to) {
        return text + " ".repeat(Math.max(text.isEmpty() ? 0 : 1, to - Wrap.length(text)));
    }

    private static String right(String text, int to) {
        return " ".repeat(Math.max(0, to - Wrap.length(text))) + text;
    }

    private static String count(int n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }
}
