package tideless.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.physics.Time;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.ReservoirTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.study.Forecast;
import tideless.words.Dates;
import tideless.words.RigWords;
import tideless.words.Wrap;

/**
 * The whole season of every vessel, one strip each: how full it stands, when somebody is away, what
 * is done, where harm is done.
 */
public final class SeasonStrip {
    private static final double WIDTH = 360;
    private static final double EDGE = 8;
    private static final double HIGH = 26;
    private static final double TOP = 18;

    /** How wide a letter may be on an average. */
    private static final double LETTER = 6.2;

    private static final int ROOM = (int) ((WIDTH - 2 * EDGE) / LETTER);
    private static final double LINE = 12;

    /** More tasks of one kind than this are ticks at the top, or they would hide the strip. */
    private static final int MANY = 20;

    /** Points of a strip; more than its pixels tell nothing. */
    private static final int POINTS = 400;

    private static final String STYLE =
            """
            .tds{--ink:#16202a;--soft:#4d5a66;--paper:#fff;--water:#9fc3de;--away:#d9d2c4;\
            --rest:#f0ede7;--harm:#a3201a;font:11px system-ui,sans-serif}
            @media(prefers-color-scheme:dark){.tds{--ink:#eef2f5;--soft:#aab6c0;--paper:#14191e;\
            --water:#3f6b8c;--away:#4a4438;--rest:#22272d;--harm:#ff8f85}}
            @media print{.tds{--ink:#000;--soft:#333;--paper:#fff;--water:#9fc3de;--away:#d9d2c4;\
            --rest:#f0ede7;--harm:#a3201a}}
            .tds text{fill:var(--ink)}.tds .name{font-weight:700}.tds .end{text-anchor:end}
            .tds .small{fill:var(--soft)}.tds .paper{fill:var(--paper)}
            .tds .water{fill:var(--water);stroke:var(--ink);stroke-width:.7}
            .tds .away{fill:var(--away)}.tds .rest{fill:var(--rest)}
            .tds .frame{fill:none;stroke:var(--soft);stroke-width:.8}
            .tds .task{stroke:var(--ink);stroke-width:1.6}
            .tds .advised{stroke:var(--ink);stroke-width:1.6;stroke-dasharray:2 1.5}
            .tds .harm{fill:var(--harm)}.tds text.harm{font-weight:700}
            .tds .week{stroke:var(--soft);stroke-width:.8}.tds .faded{opacity:.4}
            """;

    private final Forecast forecast;
    private final Trace trace;
    private final Scenario scenario;
    private final Svg svg = new Svg();

    private SeasonStrip(Forecast forecast) {
        this.forecast = forecast;
        trace = forecast.trace();
        scenario = trace.scenario();
    }

    /** Of a forecast; trays alike are drawn once. */
    public static RigPicture.Drawing of(Forecast forecast) {
        return new SeasonStrip(forecast).draw();
    }

    private RigPicture.Drawing draw() {
        List<String> findings = new ArrayList<>();
        double y = TOP;
        for (ReservoirTrace run : trace.reservoirs()) {
            Reservoir reservoir = run.reservoir();
            y =
                    strip(
                            y,
                            RigWords.strip(reservoir),
                            run.usableM3(),
                            reservoir.usableM3(),
                            List.of(new int[] {0, trace.hours()}),
                            reservoir.id(),
                            findings);
        }
        for (Alike group : Alike.of(trace)) {
            y =
                    strip(
                            y,
                            RigWords.strip(group.trays()),
                            group.drawn().levelM(),
                            group.tray().overflowM(),
                            trace.plantings(group.drawn()).stream()
                                    .map(of -> new int[] {of.firstHour(), of.lastHour() + 1})
                                    .toList(),
                            group.tray().id(),
                            findings);
        }
        axis(y);
        return finished(findings, y + 24);
    }

    /** Room for the word that a vessel is empty, units. */
    private static final double WORD = 40;

    private double x(double day) {
        return EDGE + day / scenario.days() * (WIDTH - 2 * EDGE);
    }

    /** One vessel from a height on; returns where the next begins. */
    private double strip(
            double y,
            String name,
            Series series,
            double full,
            List<int[]> inUse,
            VesselId vessel,
            List<String> findings) {
        Map<Task.Kind, List<RigWords.Mark>> tasks = marks(vessel);
        List<String> named = Wrap.lines(name, ROOM);
        for (int i = 0; i < named.size(); i++) {
            svg.label(EDGE, y + 8 + i * LINE, "name", named.get(i));
        }
        String counted = RigWords.counted(tasks);
        // A long name and many tasks do not go into one line.
        boolean fits = named.size() == 1 && name.length() + counted.length() <= ROOM;
        double under = LINE * (named.size() - (fits ? 1 : 0));
        svg.label(WIDTH - EDGE, y + 8 + under, "small end", counted);
        double top = y + 18 + under;
        shade(top);
        int last = 0;
        List<int[]> empty = new ArrayList<>();
        for (int[] span : inUse) {
            empty.add(new int[] {last, span[0]});
            filled(series, full, span[0], span[1], top, "water");
            last = span[1];
        }
        empty.add(new int[] {last, trace.hours()});
        empty.forEach(span -> filled(series, full, span[0], span[1], top, "water faded"));
        svg.box(x(0), top, x(scenario.days()) - x(0), HIGH, "frame");
        for (List<RigWords.Mark> of : tasks.values()) {
            double foot = of.size() > MANY ? top + 4 : top + HIGH;
            for (RigWords.Mark mark : of) {
                double at = x(mark.day());
                svg.line(at, top - 5, at, foot, mark.isDone() ? "task" : "advised");
            }
        }
        for (int[] span : empty) {
            if (x(span[1] / 24.0) - x(span[0] / 24.0) > WORD) {
                svg.label(x(span[0] / 24.0) + 4, top + HIGH - 7, "small", RigWords.EMPTY);
            }
        }
        double below = top + HIGH;
        List<Warning> harms = harms(vessel, top);
        if (!harms.isEmpty()) {
            for (String line : Wrap.lines(RigWords.harms(harms), ROOM - 2)) { // bold is wider
                below += LINE;
                svg.label(EDGE, below, "harm", line);
            }
        }
        findings.add(RigWords.finding(name, tasks, harms));
        empty.stream()
                .filter(span -> span[1] - span[0] > 24)
                .map(
                        span ->
                                RigWords.emptyFinding(
                                        name,
                                        scenario.start().plusDays(span[0] / 24),
                                        scenario.start().plusDays((span[1] - 1) / 24)))
                .forEach(findings::add);
        return below + 10;
    }

    /** What is done to a vessel and when; each picking, where a task stands for all of them. */
    private Map<Task.Kind, List<RigWords.Mark>> marks(VesselId vessel) {
        Map<Task.Kind, List<RigWords.Mark>> marks = new EnumMap<>(Task.Kind.class);
        for (Task task : forecast.advice().tasks()) {
            if (task.vessel().equals(vessel) && RigWords.isMarked(task.kind())) {
                marks.computeIfAbsent(task.kind(), kind -> new ArrayList<>())
                        .add(new RigWords.Mark(scenario.dayOf(task.due()), task.isDone()));
            }
        }
        List<RigWords.Mark> picked =
                trace.events().stream()
                        .filter(event -> event.kind() == Event.Kind.LEAVES_PICKED)
                        .filter(event -> event.vessel().equals(vessel))
                        .map(event -> new RigWords.Mark(event.atS() / Time.DAY_S, true))
                        .toList();
        if (!picked.isEmpty()) {
            marks.put(Task.Kind.PICK_LEAVES, picked);
        }
        return marks;
    }

    private void shade(double top) {
        DaysOff off = DaysOff.of(scenario);
        off.weekends().forEach(span -> box(span, top, "rest"));
        off.absences().forEach(span -> box(span, top, "away"));
    }

    private void box(double[] days, double top, String kind) {
        svg.box(x(days[0]), top, x(days[1]) - x(days[0]), HIGH, kind);
    }

    private void filled(Series series, double full, int from, int to, double top, String kind) {
        int step = Math.max(1, trace.hours() / POINTS);
        int points = (to - from + step - 1) / step;
        if (points < 2) {
            return;
        }
        double[] area = new double[2 * points + 4];
        double at = 0;
        for (int i = 0; i < points; i++) {
            int hour = Math.min(to - 1, from + i * step);
            at = x((hour + 1) / 24.0);
            area[2 * i] = at;
            area[2 * i + 1] = top + HIGH * (1 - Math.min(1, series.at(hour) / full));
        }
        area[2 * points] = at;
        area[2 * points + 1] = top + HIGH;
        area[2 * points + 2] = area[0];
        area[2 * points + 3] = top + HIGH;
        svg.area(kind, area);
    }

    /** A bar at the foot for each harm; the first of each kind, as they begin. */
    private List<Warning> harms(VesselId vessel, double top) {
        Map<Warning.Kind, Warning> first = new EnumMap<>(Warning.Kind.class);
        for (Warning warning : forecast.advice().warnings()) {
            if (warning.vessel().equals(vessel)) {
                double from = x(Math.max(0, scenario.dayOf(warning.from())));
                double to = x(Math.min(scenario.days(), scenario.dayOf(warning.until())));
                svg.box(from, top + HIGH - 5, Math.max(3, to - from), 5, "harm");
                first.merge(
                        warning.kind(),
                        warning,
                        (one, other) -> other.from().isBefore(one.from()) ? other : one);
            }
        }
        return first.values().stream().sorted(Comparator.comparing(Warning::from)).toList();
    }

    /** A tick for each Monday, a date for some of them. */
    private void axis(double y) {
        int every = 7 * Math.max(1, (int) Math.ceil(scenario.days() / 7.0 / 6));
        int first = (8 - scenario.start().getDayOfWeek().getValue()) % 7;
        for (int day = first; day < scenario.days(); day += 7) {
            boolean dated = (day - first) % every == 0 && x(day) < WIDTH - 40;
            svg.line(x(day), y - 4, x(day), y + (dated ? 3 : 0), "week");
            if (dated) {
                svg.label(x(day), y + 14, "small", Dates.dayMonth(scenario.start().plusDays(day)));
            }
        }
    }

    private RigPicture.Drawing finished(List<String> findings, double height) {
        String title = RigWords.SEASON;
        String finding = String.join(" ", findings);
        String whole =
                new Svg()
                        .open(
                                "svg",
                                "xmlns",
                                "http://www.w3.org/2000/svg",
                                "viewBox",
                                "0 0 " + (int) WIDTH + " " + (int) Math.ceil(height),
                                "class",
                                "tds",
                                "role",
                                "img",
                                "aria-labelledby",
                                "season-title season-finding")
                        .words("title", title, "id", "season-title")
                        .words("desc", finding, "id", "season-finding")
                        .words("style", STYLE)
                        .element("rect", "width", "100%", "height", "100%", "class", "paper")
                        .label(EDGE, 12, "small", RigWords.SEASON_KEY)
                        .toString();
        return new RigPicture.Drawing("season", title, finding, whole + svg + "</svg>\n");
    }
}
