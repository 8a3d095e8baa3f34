package tideless.report;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.math3.util.FastMath;
import tideless.advice.Cause;
import tideless.advice.Caution;
import tideless.advice.Cure;
import tideless.advice.Sizing;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.TrayTrace;
import tideless.study.Forecast;
import tideless.words.CautionWords;
import tideless.words.CropWords;
import tideless.words.CureWords;
import tideless.words.Dates;
import tideless.words.FeedWords;
import tideless.words.LogWords;
import tideless.words.Names;
import tideless.words.Numbers;
import tideless.words.OutlookWords;
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
    /** A cure that is that of the warning before. */
    private static final String AS_ABOVE = "; cure: as above";

    private static final int LISTED_WHOLE = 4;

    private static final int NEXT_FEW = 3;

    /** More lines of warnings than this are left to the file. */
    private static final int WARNING_LINES = 10;

    private static final int NARROWEST = 56;
    private static final int NARROWEST_WHY = 26;
    private static final int LITRES_WIDTH = 8;
    private static final int LONG_RUN_DAYS = 330;

    private static final String BOLD = "\u001b[1m";
    private static final String YELLOW = "\u001b[33m";
    private static final String CYAN = "\u001b[36m";
    private static final String PLAIN = "\u001b[0m";

    /** How much is told. */
    public enum Depth {
        /** What to do and what goes wrong, a line each; the rest is in the files. */
        BRIEF,
        /** All reasons, cautions and dates. */
        ALL
    }

    private final PrintWriter out;
    private final Forecast forecast;
    private final boolean colour;
    private final int width;
    private final boolean brief;
    private final Telling telling;
    private final boolean years;
    private final int whenWidth;
    private final int whatWidth;

    private ForecastTable(
            PrintWriter out,
            Forecast forecast,
            boolean colour,
            int width,
            Depth depth,
            Telling telling) {
        this.out = out;
        this.telling = telling;
        this.forecast = forecast;
        this.colour = colour;
        this.width = Math.max(NARROWEST, width);
        this.brief = depth == Depth.BRIEF;
        this.years = forecast.trace().scenario().days() > LONG_RUN_DAYS;
        this.whenWidth = years ? 18 : 17;
        int what = "WHAT".length();
        for (List<Task> group : groups(forecast.toDo()).values()) {
            what = Math.max(what, 2 + title(group).length());
            if (group.size() <= LISTED_WHOLE) {
                what = Math.max(what, 2 + longest(group));
            }
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
     * @param depth how much of it
     * @param telling in which units
     */
    public static void print(
            PrintWriter out,
            Forecast forecast,
            boolean colour,
            int width,
            Depth depth,
            Telling telling) {
        new ForecastTable(out, forecast, colour, width, depth, telling).print();
        out.flush();
    }

    private void print() {
        Scenario scenario = forecast.trace().scenario();
        LocalDate last = scenario.lastDay();
        paragraph(BOLD, "", Names.clean(scenario.title()));
        paragraph(
                "",
                "",
                Dates.span(scenario.start(), last)
                        + ", "
                        + count(scenario.days(), "day")
                        + ", seed "
                        + forecast.seed());
        paragraph("", "", "Feed: " + FeedWords.main(scenario.feed()));
        FeedWords.own(scenario).forEach(feed -> paragraph("", "", "Feed of " + feed));
        LogWords.lived(scenario).forEach(words -> paragraph("", "", words));
        line("");
        for (String verdict : VerdictWords.lines(forecast)) {
            paragraph(BOLD, "", verdict);
        }
        if (forecast.isBrokenOff()) {
            paragraph("", "", OutlookWords.brokenOff(forecast));
        }
        line("");
        printTasks(scenario);
        forecast.trace().trays().forEach(this::printUnripe);
        CropWords.beside(forecast.advice().verdict()).forEach(words -> paragraph("", "", words));
        CropWords.fruitOfTrials(forecast.trace()).ifPresent(words -> paragraph("", "", words));
        if (!scenario.feed().bottles().isEmpty()) {
            line("");
            paragraph("", "", FeedWords.inAll(scenario.feed(), 1000 * forecast.trace().feedM3()));
        }
        line("");
        printWarnings();
        if (brief) {
            printCare();
            return;
        }
        forecast.stepError()
                .ifPresent(
                        error -> {
                            line("");
                            paragraph("", "", OutlookWords.step(error));
                        });
    }

    /** Crops that are not ready at the end, and those whose turn does not come. */
    private void printUnripe(TrayTrace tray) {
        CropWords.unripe(forecast.trace(), tray).forEach(line -> paragraph("", "", line));
    }

    /** The cautions in a few words each, and where all of it is to be had. */
    private void printCare() {
        Set<Caution> cautions = new TreeSet<>();
        forecast.toDo().forEach(task -> cautions.addAll(task.cautions()));
        if (!cautions.isEmpty()) {
            paragraph("", "", CautionWords.brief(cautions) + " More: --all, report.html.");
        }
    }

    private void printTasks(Scenario scenario) {
        List<Task> tasks = forecast.toDo();
        if (tasks.isEmpty()) {
            line("Nothing to do before the end of the run.");
        } else {
            String head = pad("WHAT", whatWidth) + pad("WHEN", whenWidth);
            line(
                    paint(
                            BOLD,
                            head
                                    + right(telling.litresHead(), LITRES_WIDTH)
                                    + (beside() ? "  WHY" : "")));
        }
        if (brief) {
            printSowings(scenario, tasks);
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
        Map<String, List<Tray>> alike = new LinkedHashMap<>();
        Map<String, List<List<Task>>> tasksOf = new LinkedHashMap<>();
        for (Tray tray : scenario.trays()) {
            List<List<Task>> own = of(groups, tray.id());
            String key = Names.crops(tray) + "\n" + likeness(own);
            if (!own.isEmpty()) {
                alike.computeIfAbsent(key, k -> new ArrayList<>()).add(tray);
                tasksOf.putIfAbsent(key, own);
            }
        }
        alike.forEach(
                (key, trays) -> {
                    paragraph(CYAN, "", nameOf(trays));
                    tasksOf.get(key).forEach(this::printGroup);
                });
        for (List<Task> group : groups.values()) {
            printGroup(group); // Of a place the scenario does not name: never silently dropped.
        }
    }

    /** What is to be sown before day one, of all trays in a line. */
    private void printSowings(Scenario scenario, List<Task> tasks) {
        List<Task> sowings = tasks.stream().filter(t -> t.kind() == Task.Kind.SOW).toList();
        if (!sowings.isEmpty()) {
            row(
                    "sow",
                    Dates.weekday(day(sowings.get(0))),
                    "",
                    TaskWords.sowings(
                            sowings,
                            task ->
                                    Names.clean(
                                            scenario.tray(task.vessel())
                                                    .orElseThrow()
                                                    .planting()
                                                    .cropName())));
        }
    }

    /** Equal for trays of which the table would say the same. */
    private String likeness(List<List<Task>> groups) {
        StringBuilder key = new StringBuilder();
        for (List<Task> group : groups) {
            for (Task task : group) {
                key.append(task.kind()).append(task.due()).append(pour(task.litres()));
                key.append(TaskWords.why(task)).append('\n');
            }
        }
        return key.toString();
    }

    private static String nameOf(List<Tray> trays) {
        List<String> names = trays.stream().map(t -> Names.clean(t.name())).toList();
        String crop = Names.crops(trays.get(0));
        return Names.begun(Names.trays(names))
                + (names.equals(List.of(crop)) ? "" : " (" + crop + ")")
                + (names.size() > 1 ? ", each:" : "");
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
        int now = Math.max(0, forecast.trace().scenario().log().lastDay());
        for (int day = now; day < days.size(); day++) {
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
        text.append(", lasts ").append(Numbers.days(days.get(now)));
        text.append(now > 0 ? " now" : " at first");
        if (worst > now) {
            text.append(", ").append(Numbers.days(days.get(worst))).append(" at worst (");
            text.append(Dates.dayMonth(on)).append(')');
        }
        if (sizing.longestGapDays() > 0 && sizing.isShort()) {
            text.append(brief ? "; enough: " : "; enough for nine of ten rigs like yours: ");
            text.append(Numbers.litres(sizing.enoughUsableLitres())).append(" L");
            text.append(
                    CropWords.isForPoor(forecast, sizing.reservoir())
                            ? " for crops as poor as here, more for sound ones"
                            : "");
        } else if (!brief && sizing.longestGapDays() > 0) {
            text.append("; in the run as stated ");
            text.append(Numbers.litres(sizing.enoughUsableLitres()));
            text.append(" L last the longest gap between visits, ");
            text.append(Numbers.days(sizing.longestGapDays()));
        }
        return text.toString();
    }

    /** Fresh feed is poured in, or nothing was harvested. */
    private static boolean isNoEndOfHarvest(Task cleaning) {
        return cleaning.litres() > 0 || cleaning.cause().kind() == Cause.Kind.CROP_IS_LOST;
    }

    /** What was sown for day one has a line of its own. */
    private static boolean isOfDayOne(Task task) {
        return task.kind() == Task.Kind.SET_OUT || task.kind() == Task.Kind.SOW;
    }

    private void printGroup(List<Task> all) {
        // What stands there on day one is known to whoever set it out; since when it was raised is
        // told with all reasons. Cleaning is told at the harvest it follows; what is poured in then
        // is told by its litres.
        List<Task> group =
                brief && all.get(0).kind() == Task.Kind.CLEAN
                        ? all.stream().filter(ForecastTable::isNoEndOfHarvest).toList()
                        : all;
        if (group.isEmpty() || brief && isOfDayOne(group.get(0))) {
            return;
        }
        if (group.size() <= LISTED_WHOLE) {
            String before = "";
            for (Task task : group) {
                before = printTask(what(task), task, before);
            }
            return;
        }
        Task first = group.get(0);
        Task last = group.get(group.size() - 1);
        row(title(group), "from " + Dates.weekday(day(first)), litresOf(group), intervals(group));
        Task most = most(group);
        if (brief) {
            printTask("  first", first, "");
            if (!most.equals(first) && first.kind() == Task.Kind.TOP_UP) {
                printTask("  most", most, "");
            }
            return;
        }
        String before = "";
        for (Task task : group.subList(0, NEXT_FEW)) {
            before = printTask(task.equals(first) ? "  first" : "", task, before);
        }
        if (!most.equals(last) && !group.subList(0, NEXT_FEW).contains(most)) {
            printTask("  most", most, "");
        }
        row("  last", Dates.visit(last.due(), years), pour(last.litres()), "all in tasks.csv");
    }

    /** The one with the most litres, the first of several; what has none has its first. */
    private static Task most(List<Task> group) {
        Task most = group.get(0);
        for (Task task : group) {
            most = task.litres() > most.litres() ? task : most;
        }
        return most;
    }

    /** As "harvest"; of one crop among several as "harvest, lettuce". */
    private static String what(Task task) {
        return Names.of(task.kind())
                + (task.crop().isEmpty() ? "" : ", " + Names.clean(task.crop()));
    }

    private static int longest(List<Task> group) {
        return group.stream().mapToInt(task -> what(task).length()).max().orElse(0);
    }

    private String printTask(String what, Task task, String before) {
        String why = brief ? TaskWords.brief(task) : TaskWords.why(task);
        row(
                what,
                Dates.visit(task.due(), years),
                pour(task.litres()),
                (why.equals(before) ? "as above" : why) + likely(task));
        for (Caution caution : brief ? List.<Caution>of() : task.cautions()) {
            int indent = beside() ? whatWidth : 6;
            String start = "care: ";
            for (String line : Wrap.lines(CautionWords.of(caution), width - indent - 6)) {
                line(" ".repeat(indent) + start + line);
                start = "      ";
            }
        }
        return why;
    }

    private String likely(Task task) {
        String days = OutlookWords.likely(forecast, task);
        return days.isEmpty() ? "" : "; " + days;
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
        String low = most >= 19.95 ? Long.toString(FastMath.round(least)) : Numbers.litres(least);
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

    /**
     * Tasks of one kind at one place, in the order of their first date. Where there are too many to
     * list, those that are advised and not done stand by themselves, or nobody would see them.
     */
    private static Map<String, List<Task>> groups(List<Task> tasks) {
        Map<String, List<Task>> groups = new LinkedHashMap<>();
        for (Task task : tasks) {
            groups.computeIfAbsent(key(task), k -> new ArrayList<>()).add(task);
        }
        Map<String, List<Task>> parted = new LinkedHashMap<>();
        for (Task task : tasks) {
            boolean isApart = !task.isDone() && groups.get(key(task)).size() > LISTED_WHOLE;
            parted.computeIfAbsent(key(task) + (isApart ? " advised" : ""), k -> new ArrayList<>())
                    .add(task);
        }
        return parted;
    }

    private static String key(Task task) {
        return key(task.vessel()) + task.kind();
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
        return own.stream().flatMap(List::stream).allMatch(task -> task.crop().isEmpty())
                ? own
                : inTurn(own);
    }

    /** Of crops in turn: what is told one by one in the order of its dates, not by its kind. */
    private static List<List<Task>> inTurn(List<List<Task>> groups) {
        List<List<Task>> turns = new ArrayList<>();
        for (List<Task> group : groups) {
            if (group.size() > LISTED_WHOLE) {
                turns.add(group);
            } else {
                group.forEach(task -> turns.add(List.of(task)));
            }
        }
        turns.sort(Comparator.comparing(group -> group.get(0).due()));
        return turns;
    }

    private void printWarnings() {
        printWarnings(new ArrayList<>(forecast.advice().warnings()));
        WarningWords.minor(forecast.advice().minor()).ifPresent(words -> paragraph("", "", words));
        WarningWords.past(forecast.advice().past()).ifPresent(words -> paragraph("", "", words));
    }

    private void printWarnings(List<Warning> warnings) {
        if (warnings.isEmpty()) {
            paragraph("", "", WarningWords.none(forecast.outlook()));
            return;
        }
        line(paint(BOLD, "WARNINGS"));
        warnings.sort(Warning.GRAVEST_FIRST);
        List<List<Warning>> alike = WarningWords.alike(warnings);
        int lines = 0;
        int told = 0;
        String cureBefore = brief ? toldFirst() : "";
        for (List<Warning> group : alike) {
            String cure = cure(group.get(0));
            List<String> text =
                    Wrap.lines(
                            telling.told(
                                    warning(group)
                                            + (!cure.isEmpty() && cure.equals(cureBefore)
                                                    ? AS_ABOVE
                                                    : cure)),
                            width - 2);
            if (brief && told > 0 && lines + text.size() > WARNING_LINES) {
                break;
            }
            line(paint(YELLOW, "! " + text.get(0)));
            for (String more : text.subList(1, text.size())) {
                line("  " + more);
            }
            lines += text.size();
            told++;
            cureBefore = cure;
        }
        if (told < alike.size()) {
            line("  " + count(alike.size() - told, "lesser warning") + " more in warnings.csv");
        }
    }

    /**
     * The cure that the verdict names, as it would follow its warning; empty where it names none.
     */
    private String toldFirst() {
        return forecast.advice()
                .verdict()
                .first()
                .filter(first -> !first.cures().isEmpty())
                .filter(
                        first ->
                                VerdictWords.lines(forecast).stream()
                                        .anyMatch(
                                                line ->
                                                        line.contains(
                                                                CureWords.of(
                                                                        first.cures().get(0)))))
                .map(this::cure)
                .orElse("");
    }

    private String warning(List<Warning> group) {
        return WarningWords.head(group, forecast.trace().scenario(), years)
                + ": "
                + WarningWords.brief(group.get(0));
    }

    /** The first cure, or all of them, as they follow the warning; empty for none. */
    private String cure(Warning warning) {
        List<Cure> cures = brief ? warning.cures().stream().limit(1).toList() : warning.cures();
        return cures.isEmpty() ? "" : "; cure: " + CureWords.of(cures);
    }

    /** Whether there is room for the reason beside the litres. */
    private boolean beside() {
        return width - whatWidth - whenWidth - LITRES_WIDTH - 2 >= NARROWEST_WHY;
    }

    private void row(String what, String when, String litres, String because) {
        String why = telling.told(because);
        String poured = right(telling.litres(litres), LITRES_WIDTH);
        String start = pad("  " + what, whatWidth) + pad(when, whenWidth) + poured;
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
        for (String part : Wrap.lines(telling.told(text), width - indent.length())) {
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
