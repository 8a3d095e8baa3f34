package tideless.report;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.drawing.DaysOff;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Limits;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.PlantingTrace;
import tideless.sim.ReservoirTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.study.Band;
import tideless.study.Expected;
import tideless.study.Forecast;
import tideless.study.PhCourse;
import tideless.words.Dates;
import tideless.words.Names;
import tideless.words.Numbers;
import tideless.words.OutlookWords;
import tideless.words.PlotWords;

/** The pictures of a forecast, one idea each, every one with the due dates that belong to it. */
final class Pictures {
    /** More panels than this do not fit a page; the rest go on a second one. */
    private static final int PANELS = 3;

    private static final int CURVES = Look.TRAYS.size();

    /** An EC of so many times the highest band is off the scale, or the bands would be lines. */
    private static final double OFF_SCALE = 2;

    // Each picture tells what moves its curve; what moves none is told with the level.
    private static final Set<Task.Kind> OF_SOLUTION =
            EnumSet.of(
                    Task.Kind.FLUSH,
                    Task.Kind.FRESH_SOLUTION,
                    Task.Kind.TOP_UP,
                    Task.Kind.HARVEST,
                    Task.Kind.CLEAN,
                    Task.Kind.PLANT);
    private static final Set<Task.Kind> OF_STAND =
            EnumSet.of(
                    Task.Kind.HARVEST,
                    Task.Kind.PLANT,
                    Task.Kind.PICK_LEAVES,
                    Task.Kind.THIN_OUT,
                    Task.Kind.SPACE_OUT,
                    Task.Kind.TOP);
    private static final Set<Warning.Kind> SALTS =
            EnumSet.of(
                    Warning.Kind.SALT_WILTED,
                    Warning.Kind.TOO_SALTY,
                    Warning.Kind.TOO_LEAN,
                    Warning.Kind.SHORT_OF_ONE,
                    Warning.Kind.TOO_MUCH_SODIUM,
                    Warning.Kind.TOO_MUCH_CHLORIDE,
                    Warning.Kind.PH_OUT,
                    Warning.Kind.PRECIPITATE);
    private static final Set<Warning.Kind> AIR_AND_LIGHT =
            EnumSet.range(Warning.Kind.TOO_COLD, Warning.Kind.SET_TOO_HOT);

    /** A reservoir with less above its outlet is dry, m3. */
    private static final double DRY_M3 = 1e-5;

    /** Drawn from the hours themselves. */
    private static final Set<Warning.Kind> OF_ROOTS =
            EnumSet.of(Warning.Kind.STRANDED, Warning.Kind.DROWNED);

    private final Forecast forecast;
    private final Trace trace;
    private final Scenario scenario;
    private final DaysOff off;
    private final ShownIn shown;
    private final double perM;
    private final double perM3;

    private Pictures(Forecast forecast, ShownIn shown) {
        this.shown = shown;
        this.perM = shown.perM();
        this.perM3 = shown.perM3();
        this.forecast = forecast;
        this.trace = forecast.trace();
        this.scenario = trace.scenario();
        this.off = DaysOff.of(scenario);
    }

    /**
     * All of them by file name without its ending, in a fixed order. Trays whose curves lie on one
     * another are drawn once, under the first one's name.
     *
     * @param trayFiles the plain name of each tray
     * @param reservoirFiles the plain name of each reservoir
     * @param shown units of the axes
     */
    static Map<String, Picture> of(
            Forecast forecast, List<String> trayFiles, List<String> reservoirFiles, ShownIn shown) {
        Pictures of = new Pictures(forecast, shown);
        Map<String, Picture> pictures = new LinkedHashMap<>();
        for (int i = 0; i < reservoirFiles.size(); i++) {
            pictures.put(
                    "reservoir-" + reservoirFiles.get(i),
                    of.reservoir(of.trace.reservoirs().get(i)));
        }
        List<OneCurve> trays = OneCurve.of(forecast);
        List<Panel> levels = trays.stream().map(of::level).toList();
        Panel.alike(levels);
        for (int i = 0; i < trays.size(); i++) {
            OneCurve tray = trays.get(i);
            pictures.put(
                    "level-" + trayFiles.get(of.trace.trays().indexOf(tray.run())),
                    of.picture(
                            tray.title() + ": level and roots",
                            "height above the tray floor (" + shown.lengthUnit() + ")",
                            List.of(levels.get(i)),
                            PlotWords.level(of.trace, tray.run())));
        }
        List<OneCurve> solutions = OneCurve.ofSolution(forecast);
        List<Panel> strengths = of.strengths(solutions);
        Panel.alike(strengths);
        for (int from = 0; from < solutions.size(); from += PANELS) {
            int to = Math.min(solutions.size(), from + PANELS);
            pictures.put(
                    page("ec", from / PANELS),
                    of.picture(
                            "Strength of the solution in the trays",
                            shown.ecLabel(),
                            strengths.subList(from, to),
                            PlotWords.ec(of.trace, drawn(solutions.subList(from, to)))));
        }
        List<Panel> acidities = solutions.stream().map(of::acidity).toList();
        Panel.alike(acidities);
        for (int from = 0; from < solutions.size(); from += PANELS) {
            int to = Math.min(solutions.size(), from + PANELS);
            pictures.put(
                    page("ph", from / PANELS),
                    of.picture(
                            "pH of the solution in the trays",
                            "pH",
                            acidities.subList(from, to),
                            PlotWords.ph(of.trace, drawn(solutions.subList(from, to)))));
        }
        List<OneCurve> drinkers = OneCurve.ofThirst(forecast);
        List<Panel> thirsts = new ArrayList<>();
        for (int from = 0; from < drinkers.size(); from += CURVES) {
            int to = Math.min(drinkers.size(), from + CURVES);
            thirsts.add(of.thirst(drinkers.subList(from, to)));
        }
        Panel.alike(thirsts);
        for (int i = 0; i < thirsts.size(); i++) {
            int to = Math.min(drinkers.size(), (i + 1) * CURVES);
            pictures.put(
                    page("thirst", i),
                    of.picture(
                            "What the plants drink",
                            "drunk by the plants of a tray (" + shown.volumeUnit() + " a day)",
                            List.of(thirsts.get(i)),
                            PlotWords.thirst(of.trace, drawn(drinkers.subList(i * CURVES, to)))));
        }
        return pictures;
    }

    private static String page(String name, int number) {
        return number == 0 ? name : name + "-" + (number + 1);
    }

    private static List<PlotWords.Drawn> drawn(List<OneCurve> trays) {
        return trays.stream().map(of -> new PlotWords.Drawn(of.run(), of.label())).toList();
    }

    private Panel panel() {
        return new Panel(scenario.start(), scenario.days()).shade(off);
    }

    private Picture reservoir(ReservoirTrace run) {
        Reservoir reservoir = run.reservoir();
        Panel panel = panel().reach(0);
        int growing = growingHours(reservoir);
        addDue(panel, task -> task.vessel().equals(reservoir.id()));
        addHarm(
                panel,
                warning ->
                        warning.vessel().equals(reservoir.id())
                                && warning.kind() != Warning.Kind.RAN_DRY,
                growing / 24.0);
        panel.spans(
                Names.of(Warning.Kind.RAN_DRY),
                spans(growing, h -> run.usableM3().at(h) < DRY_M3),
                Look.HARM);
        if (growing < trace.hours()) {
            panel.fadedAs("nothing grows").empty(growing / 24.0, scenario.days());
        }
        double full = perM3 * reservoir.fullM3();
        double dead = perM3 * reservoir.deadM3();
        if (dead > 0) {
            panel.band("", 0, dead, Look.DEAD);
            panel.level("dead, " + litres(reservoir.deadM3()), dead, Look.DEAD_VOLUME);
        }
        panel.level("full, " + litres(reservoir.fullM3()), full, Look.FULL);
        panel.curve("solution", Curves.Curve.hourly(run.volumeM3(), perM3), Look.LEVEL, null);
        return picture(
                "Reservoir " + reservoir.name() + ": how long it lasts",
                "solution in the reservoir (" + shown.volumeUnit() + ")",
                List.of(panel),
                PlotWords.reservoir(trace, run));
    }

    /** Until the last crop below a reservoir is cut or lost; all of them where nothing is below. */
    private int growingHours(Reservoir reservoir) {
        int growing = 0;
        for (TrayTrace run : trace.trays()) {
            if (run.tray().filling() instanceof Filling.ByValve valve
                    && valve.reservoir().equals(reservoir.name())) {
                for (PlantingTrace planting : trace.plantings(run)) {
                    growing = Math.max(growing, planting.lastHour() + 1);
                }
            }
        }
        return growing > 0 ? Math.min(growing, trace.hours()) : trace.hours();
    }

    private Panel level(OneCurve of) {
        TrayTrace run = of.run();
        Tray tray = run.tray();
        Panel panel = panel().reach(0);
        VesselId own = tray.id();
        VesselId source =
                tray.filling() instanceof Filling.ByValve valve
                        ? VesselId.reservoir(valve.reservoir())
                        : own;
        addDue(
                panel,
                task ->
                        task.vessel().equals(own)
                                || task.vessel().equals(source) && task.kind() == Task.Kind.REFILL);
        addHarm(
                panel,
                warning ->
                        warning.vessel().equals(own)
                                && !SALTS.contains(warning.kind())
                                && !AIR_AND_LIGHT.contains(warning.kind())
                                && !OF_ROOTS.contains(warning.kind()));
        Series level = run.levelM();
        addCrops(panel, run);
        int alive = lastThirst(run) + 1;
        panel.spans("stranded", stranded(run, alive), Look.STRANDED);
        panel.spans(
                "drowned", spans(alive, h -> level.at(h) > run.usedToLevelM().at(h)), Look.DROWNED);
        panel.level("cup at " + mm(tray.cupBottomM()), perM * tray.cupBottomM(), Look.CUP);
        if (tray.filling() instanceof Filling.ByValve valve) {
            if (valve.moves().isEmpty()) {
                panel.level(
                        "valve at " + mm(valve.settingM()), perM * valve.settingM(), Look.VALVE);
            } else {
                panel.curve("valve set to", settings(valve), Look.VALVE, null);
            }
        } else if (tray.filling() instanceof Filling.ByHand hand) {
            panel.level("filled to " + mm(hand.toLevelM()), perM * hand.toLevelM(), Look.VALVE);
        }
        panel.curve(
                "roots drown above",
                Curves.Curve.hourly(run.usedToLevelM(), perM, perM * tray.shape().depthM()),
                Look.BORNE,
                null);
        panel.curve("root tips", Curves.Curve.hourly(run.rootTipM(), perM), Look.ROOT_TIP, null);
        panel.curve("level", Curves.Curve.hourly(level, perM), Look.LEVEL, null);
        return panel;
    }

    /** Where all roots hang above the level, and where a film or a brine feeds none of them. */
    private List<double[]> stranded(TrayTrace run, int alive) {
        List<double[]> spans =
                spans(
                        alive,
                        h ->
                                !(run.levelM().at(h) > 0)
                                        || run.rootTipM().at(h) > run.levelM().at(h));
        for (Warning warning : forecast.advice().warnings()) {
            if (warning.kind() == Warning.Kind.STRANDED
                    && warning.vessel().equals(run.tray().id())) {
                spans.add(
                        new double[] {
                            Math.max(0, scenario.dayOf(warning.from())),
                            Math.min(scenario.days(), scenario.dayOf(warning.until()))
                        });
            }
        }
        spans.sort(Comparator.comparingDouble(span -> span[0]));
        return united(spans);
    }

    private String mm(double lengthM) {
        return shown.told(Math.round(1000 * lengthM) + " mm");
    }

    private String litres(double m3) {
        return shown.told(Numbers.litres(1000 * m3) + " L");
    }

    /** A panel for each, all within what is worth their scale. */
    private List<Panel> strengths(List<OneCurve> trays) {
        double highest = 0;
        for (OneCurve of : trays) {
            for (PlantingTrace planting : trace.plantings(of.run())) {
                double high = planting.tray().limits().ecHighMsPerCm();
                highest = Double.isFinite(high) ? Math.max(highest, high) : highest;
            }
        }
        double most = highest > 0 ? OFF_SCALE * highest : Double.POSITIVE_INFINITY;
        return trays.stream().map(of -> strength(of, most)).toList();
    }

    private Panel strength(OneCurve of, double most) {
        TrayTrace run = of.run();
        Tray tray = run.tray();
        double ec = shown.perMsPerCm();
        Panel panel = panel().within(ec * most);
        addDue(panel, task -> task.vessel().equals(tray.id()) && OF_SOLUTION.contains(task.kind()));
        addHarm(
                panel,
                warning -> warning.vessel().equals(tray.id()) && SALTS.contains(warning.kind()));
        addCrops(panel, run);
        if (tray.plantings() > 1) {
            addBands(
                    panel,
                    run,
                    limits -> ec * limits.ecLowMsPerCm(),
                    limits -> ec * limits.ecHighMsPerCm());
        } else if (Double.isFinite(tray.limits().ecHighMsPerCm())) {
            Limits limits = tray.limits();
            panel.band(
                    band(limits),
                    ec * limits.ecLowMsPerCm(),
                    ec * limits.ecHighMsPerCm(),
                    Look.BAND);
        }
        panel.curve(of.brief(), Curves.Curve.hourly(run.ecMsPerCm(), ec), Look.LEVEL, null);
        return panel;
    }

    /** The course as written, and between which it may lie for what is not known of a crop. */
    private Panel acidity(OneCurve of) {
        TrayTrace run = of.run();
        Tray tray = run.tray();
        Panel panel = panel();
        addDue(panel, task -> task.vessel().equals(tray.id()) && OF_SOLUTION.contains(task.kind()));
        addHarm(
                panel,
                warning ->
                        warning.vessel().equals(tray.id())
                                && warning.kind() == Warning.Kind.PH_OUT);
        addCrops(panel, run);
        Limits limits = tray.limits();
        if (tray.plantings() > 1) {
            addBands(panel, run, Limits::phLow, Limits::phHigh);
        } else {
            panel.band(
                    "band "
                            + Numbers.label(limits.phLow())
                            + " to "
                            + Numbers.label(limits.phHigh()),
                    limits.phLow(),
                    limits.phHigh(),
                    Look.BAND);
        }
        PhCourse course = forecast.ph().get(trace.trays().indexOf(run));
        panel.curve("may be as high", Curves.Curve.hourly(course.highest(), 1), Look.BORNE, null);
        panel.curve("may be as low", Curves.Curve.hourly(course.lowest(), 1), Look.BORNE, null);
        panel.curve(of.brief(), Curves.Curve.hourly(run.ph(), 1), Look.LEVEL, null);
        return panel;
    }

    /** Each crop's own band while it is planted. */
    private void addBands(
            Panel panel,
            TrayTrace run,
            ToDoubleFunction<Limits> least,
            ToDoubleFunction<Limits> most) {
        double middle = Double.NaN;
        for (PlantingTrace planting : trace.plantings(run)) {
            double low = least.applyAsDouble(planting.tray().limits());
            double high = most.applyAsDouble(planting.tray().limits());
            double from = planting.firstHour() / 24.0;
            double to = (planting.lastHour() + 1) / 24.0;
            panel.area(
                    Curves.Curve.steady(from, to, low),
                    Curves.Curve.steady(from, to, high),
                    Look.BAND);
            middle = (low + high) / 2;
        }
        if (Double.isFinite(middle)) {
            panel.name("each crop's band", middle);
        }
    }

    /** A line where another crop is set out; what stands empty is faded. */
    private void addCrops(Panel panel, TrayTrace run) {
        PlantingTrace before = null;
        for (PlantingTrace planting : trace.plantings(run)) {
            if (before != null) {
                panel.empty((before.lastHour() + 1) / 24.0, planting.firstHour() / 24.0);
                panel.change(Names.clean(planting.crop()), planting.fromS() / Time.DAY_S);
            }
            before = planting;
        }
        if (before != null && before.lastHour() + 1 < trace.hours()) {
            panel.empty((before.lastHour() + 1) / 24.0, scenario.days());
        }
    }

    private String band(Limits limits) {
        double ec = shown.perMsPerCm();
        String high = Numbers.label(ec * limits.ecHighMsPerCm());
        return limits.ecLowMsPerCm() > 0
                ? "band " + Numbers.label(ec * limits.ecLowMsPerCm()) + " to " + high
                : "up to " + high;
    }

    private Panel thirst(List<OneCurve> trays) {
        Panel panel = panel().reach(0);
        List<VesselId> shown =
                trays.stream().flatMap(of -> of.trays().stream()).map(Tray::id).toList();
        addDue(panel, task -> OF_STAND.contains(task.kind()) && shown.contains(task.vessel()));
        addHarm(
                panel,
                warning ->
                        shown.contains(warning.vessel()) && AIR_AND_LIGHT.contains(warning.kind()));
        for (int i = 0; i < trays.size(); i++) {
            OneCurve of = trays.get(i);
            panel.curve(
                    of.each(),
                    planted(of.run(), Curves.Curve.daily(of.run().transpirationM3(), perM3)),
                    Look.TRAYS.get(i),
                    Panel.marker(i));
        }
        return panel;
    }

    /** A gap in place of the days on which a tray is empty. */
    private Curves.Curve planted(TrayTrace run, Curves.Curve daily) {
        double[] value = daily.value().clone();
        for (int day = 0; day < value.length; day++) {
            boolean grows = false;
            for (PlantingTrace planting : trace.plantings(run)) {
                grows |= planting.firstHour() / 24 <= day && 24 * day + 23 <= planting.lastHour();
            }
            value[day] = grows ? value[day] : Double.NaN;
        }
        return new Curves.Curve(daily.day(), value);
    }

    private Picture picture(String title, String valueLabel, List<Panel> panels, String finding) {
        LocalDate last = scenario.lastDay();
        String years =
                scenario.start().getYear() == last.getYear()
                        ? Integer.toString(last.getYear())
                        : scenario.start().getYear() + " to " + last.getYear();
        return new Picture(
                title,
                scenario.title()
                        + ", "
                        + Dates.span(scenario.start(), last)
                        + ", seed "
                        + forecast.seed(),
                valueLabel,
                "day and month, " + years,
                panels,
                shown.told(finding));
    }

    /** A valve's setting over the run, mm; straight up or down where it is moved. */
    private Curves.Curve settings(Filling.ByValve valve) {
        double[] day = new double[2 * valve.moves().size() + 2];
        double[] mm = new double[day.length];
        double now = valve.settingM();
        int i = 0;
        mm[i++] = perM * now;
        for (Filling.Move move : valve.moves()) {
            double at =
                    ChronoUnit.DAYS.between(scenario.start(), move.on())
                            + scenario.visits().timeOfDayS() / Time.DAY_S;
            day[i] = at;
            mm[i++] = perM * now;
            now = move.settingM();
            day[i] = at;
            mm[i++] = perM * now;
        }
        day[i] = scenario.days();
        mm[i] = perM * now;
        return new Curves.Curve(day, mm);
    }

    /** A row of marks for each kind of task, in the order of the kinds; one for those that meet. */
    private void addDue(Panel panel, Predicate<Task> belongs) {
        Map<Task.Kind, TreeMap<Double, Row.Mark>> marks = new EnumMap<>(Task.Kind.class);
        for (Task task : forecast.advice().tasks()) {
            double day = scenario.dayOf(task.due());
            if (belongs.test(task) && day >= 0 && day <= scenario.days()) {
                marks.computeIfAbsent(task.kind(), kind -> new TreeMap<>())
                        .put(day, mark(task, day));
            }
        }
        Map<String, List<Row.Mark>> rows = new LinkedHashMap<>();
        for (Map.Entry<Task.Kind, TreeMap<Double, Row.Mark>> kind : marks.entrySet()) {
            String name = Names.of(kind.getKey());
            List<Row.Mark> own = List.copyOf(kind.getValue().values());
            String same = "";
            for (Map.Entry<String, List<Row.Mark>> other : rows.entrySet()) {
                if (days(other.getValue()).equals(days(own))
                        && Row.fitTogether(other.getKey(), name)) {
                    same = other.getKey();
                }
            }
            List<Row.Mark> before = rows.remove(same);
            rows.put(same.isEmpty() ? name : same + ", " + name, before == null ? own : before);
        }
        rows.forEach((name, of) -> panel.due(name, apart(of)));
    }

    /** Only the first bands, until one runs into the next: what follows would be one bar. */
    private static List<Row.Mark> apart(List<Row.Mark> marks) {
        List<Row.Mark> apart = new ArrayList<>();
        double taken = Double.NEGATIVE_INFINITY;
        for (Row.Mark mark : marks) {
            boolean free = mark.from() > taken;
            apart.add(free ? mark : new Row.Mark(mark.day(), mark.done(), Double.NaN, Double.NaN));
            taken = free ? mark.to() : mark.to() > mark.from() ? Double.POSITIVE_INFINITY : taken;
        }
        return apart;
    }

    private static List<Double> days(List<Row.Mark> marks) {
        return marks.stream().map(Row.Mark::day).toList();
    }

    private Row.Mark mark(Task task, double day) {
        Optional<Band> at =
                forecast.expected(task)
                        .filter(expected -> OutlookWords.tells(expected.what().kind()))
                        .map(Expected::atS);
        return new Row.Mark(
                day,
                task.isDone(),
                at.map(band -> band.low() / Time.DAY_S).orElse(Double.NaN),
                at.map(band -> Math.min(scenario.days(), band.high() / Time.DAY_S))
                        .orElse(Double.NaN));
    }

    /** A row for each kind of harm, and the days of it tinted in the panel. */
    private void addHarm(Panel panel, Predicate<Warning> belongs) {
        addHarm(panel, belongs, scenario.days());
    }

    private void addHarm(Panel panel, Predicate<Warning> belongs, double lastDay) {
        Map<Warning.Kind, List<double[]>> harms = new EnumMap<>(Warning.Kind.class);
        for (Warning warning : forecast.advice().warnings()) {
            double from = Math.max(0, scenario.dayOf(warning.from()));
            double to = Math.min(lastDay, scenario.dayOf(warning.until()));
            if (belongs.test(warning) && from <= lastDay) {
                harms.computeIfAbsent(warning.kind(), kind -> new ArrayList<>())
                        .add(new double[] {from, Math.max(from, to)});
            }
        }
        harms.forEach(
                (kind, spans) -> {
                    spans.sort(Comparator.comparingDouble(span -> span[0]));
                    // Outgrown is a state from a day on, and nothing is harmed by it yet.
                    boolean harmful = kind != Warning.Kind.OUTGROWN;
                    panel.spans(Names.of(kind), united(spans), Look.HARM, harmful);
                });
    }

    /** Spans in order of their starts as those in which any of them lasts. */
    private static List<double[]> united(List<double[]> spans) {
        List<double[]> united = new ArrayList<>();
        for (double[] span : spans) {
            double[] before = united.isEmpty() ? null : united.get(united.size() - 1);
            if (before != null && span[0] <= before[1]) {
                before[1] = Math.max(before[1], span[1]);
            } else {
                united.add(span.clone());
            }
        }
        return united;
    }

    /** Last hour in which the plants wanted water, or -1; after it no root is there. */
    private static int lastThirst(TrayTrace run) {
        for (int h = run.thirstM3().size() - 1; h >= 0; h--) {
            if (run.thirstM3().at(h) > 0) {
                return h;
            }
        }
        return -1;
    }

    /** Stretches of hours, days since the start; joined over pauses too short to see. */
    private static List<double[]> spans(int hours, IntPredicate in) {
        int pause = 12;
        List<double[]> spans = new ArrayList<>();
        for (int h = 0; h < hours; h++) {
            if (in.test(h)) {
                double from = h / 24.0;
                double to = (h + 1) / 24.0;
                if (!spans.isEmpty() && from - spans.get(spans.size() - 1)[1] < pause / 24.0) {
                    spans.get(spans.size() - 1)[1] = to;
                } else {
                    spans.add(new double[] {from, to});
                }
            }
        }
        return spans;
    }
}
