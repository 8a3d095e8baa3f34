package tideless.report;

import java.time.Duration;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import tideless.advice.Task;
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
import tideless.study.Forecast;
import tideless.words.Dates;
import tideless.words.Names;
import tideless.words.Numbers;
import tideless.words.PlotWords;

/** The pictures of a forecast, one idea each, every one with the due dates that belong to it. */
final class Pictures {
    private static final double MM_PER_M = 1000;
    private static final double L_PER_M3 = 1000;

    /** More panels than this do not fit a page; the rest go on a second one. */
    private static final int PANELS = 3;

    private static final int CURVES = Look.TRAYS.size();

    private final Forecast forecast;
    private final Trace trace;
    private final Scenario scenario;

    private Pictures(Forecast forecast) {
        this.forecast = forecast;
        this.trace = forecast.trace();
        this.scenario = trace.scenario();
    }

    /**
     * All of them by file name without its ending, in a fixed order.
     *
     * @param trayFiles the plain name of each tray
     * @param reservoirFiles the plain name of each reservoir
     */
    static Map<String, Picture> of(
            Forecast forecast, List<String> trayFiles, List<String> reservoirFiles) {
        Pictures of = new Pictures(forecast);
        Map<String, Picture> pictures = new LinkedHashMap<>();
        for (int i = 0; i < reservoirFiles.size(); i++) {
            pictures.put(
                    "reservoir-" + reservoirFiles.get(i),
                    of.reservoir(of.trace.reservoirs().get(i)));
        }
        for (int i = 0; i < trayFiles.size(); i++) {
            pictures.put("level-" + trayFiles.get(i), of.level(of.trace.trays().get(i)));
        }
        of.pages(pictures, "ec", PANELS, true);
        of.pages(pictures, "thirst", CURVES, false);
        return pictures;
    }

    private void pages(Map<String, Picture> pictures, String name, int each, boolean ec) {
        List<TrayTrace> trays = trace.trays();
        for (int from = 0; from < trays.size(); from += each) {
            List<TrayTrace> page = trays.subList(from, Math.min(trays.size(), from + each));
            String file = from == 0 ? name : name + "-" + (from / each + 1);
            pictures.put(file, ec ? ec(page) : thirst(page));
        }
    }

    private Picture reservoir(ReservoirTrace run) {
        Reservoir reservoir = run.reservoir();
        Panel panel = new Panel(scenario.start(), scenario.days()).reach(0);
        addDue(panel, task -> task.vessel().equals(reservoir.id()));
        double full = L_PER_M3 * reservoir.fullM3();
        double dead = L_PER_M3 * reservoir.deadM3();
        if (dead > 0) {
            panel.band("", 0, dead, Look.DEAD);
            panel.level("dead, " + Numbers.litres(dead) + " L", dead, Look.DEAD_VOLUME);
        }
        panel.level("full, " + Numbers.litres(full) + " L", full, Look.FULL);
        panel.curve("solution", Curves.Curve.hourly(run.volumeM3(), L_PER_M3), Look.LEVEL, null);
        return picture(
                "Reservoir " + reservoir.name() + ": how long it lasts",
                "solution in the reservoir (L)",
                List.of(panel),
                PlotWords.reservoir(trace, run));
    }

    private Picture level(TrayTrace run) {
        Tray tray = run.tray();
        Panel panel = new Panel(scenario.start(), scenario.days()).reach(0);
        VesselId own = tray.id();
        VesselId source =
                tray.filling() instanceof Filling.ByValve valve
                        ? VesselId.reservoir(valve.reservoir())
                        : own;
        addDue(panel, task -> task.vessel().equals(own) || task.vessel().equals(source));
        Series level = run.levelM();
        addCrops(panel, run);
        int alive = lastThirst(run) + 1;
        panel.spans(
                "stranded",
                spans(alive, h -> !(level.at(h) > 0) || run.rootTipM().at(h) > level.at(h)),
                Look.STRANDED);
        panel.spans(
                "drowned", spans(alive, h -> level.at(h) > run.usedToLevelM().at(h)), Look.DROWNED);
        panel.level("cup at " + mm(tray.cupBottomM()), MM_PER_M * tray.cupBottomM(), Look.CUP);
        if (tray.filling() instanceof Filling.ByValve valve) {
            if (valve.moves().isEmpty()) {
                panel.level(
                        "valve at " + mm(valve.settingM()),
                        MM_PER_M * valve.settingM(),
                        Look.VALVE);
            } else {
                panel.curve("valve set to", settings(valve), Look.VALVE, null);
            }
        } else if (tray.filling() instanceof Filling.ByHand hand) {
            panel.level("filled to " + mm(hand.toLevelM()), MM_PER_M * hand.toLevelM(), Look.VALVE);
        }
        panel.curve(
                "roots bear up to",
                Curves.Curve.hourly(run.usedToLevelM(), MM_PER_M, MM_PER_M * tray.shape().depthM()),
                Look.BORNE,
                null);
        panel.curve(
                "root tips", Curves.Curve.hourly(run.rootTipM(), MM_PER_M), Look.ROOT_TIP, null);
        panel.curve("level", Curves.Curve.hourly(level, MM_PER_M), Look.LEVEL, null);
        return picture(
                "Tray " + named(tray) + ": level and roots",
                "height above the tray floor (mm)",
                List.of(panel),
                PlotWords.level(trace, run));
    }

    private static String mm(double lengthM) {
        return Math.round(MM_PER_M * lengthM) + " mm";
    }

    private Picture ec(List<TrayTrace> trays) {
        List<Panel> panels = new ArrayList<>();
        for (TrayTrace run : trays) {
            Tray tray = run.tray();
            Panel panel = new Panel(scenario.start(), scenario.days());
            addDue(panel, task -> task.vessel().equals(tray.id()));
            addCrops(panel, run);
            if (tray.plantings() > 1) {
                addBands(panel, run);
            } else if (Double.isFinite(tray.limits().ecHighMsPerCm())) {
                Limits limits = tray.limits();
                panel.band(band(limits), limits.ecLowMsPerCm(), limits.ecHighMsPerCm(), Look.BAND);
            }
            panel.curve(tray.name(), Curves.Curve.hourly(run.ecMsPerCm(), 1), Look.LEVEL, null);
            panels.add(panel);
        }
        return picture(
                "Strength of the solution in the trays",
                "EC at 25 \u00b0C (mS/cm)",
                panels,
                PlotWords.ec(trace, trays));
    }

    /** Each crop's own band while it is planted. */
    private void addBands(Panel panel, TrayTrace run) {
        for (PlantingTrace planting : trace.plantings(run)) {
            Limits limits = planting.tray().limits();
            double from = planting.firstHour() / 24.0;
            double to = (planting.lastHour() + 1) / 24.0;
            panel.area(
                    Curves.Curve.steady(from, to, limits.ecLowMsPerCm()),
                    Curves.Curve.steady(from, to, limits.ecHighMsPerCm()),
                    Look.BAND);
        }
    }

    /** A line where another crop is set out, and one where a tray stands empty until then. */
    private void addCrops(Panel panel, TrayTrace run) {
        PlantingTrace before = null;
        for (PlantingTrace planting : trace.plantings(run)) {
            if (before != null) {
                int emptyFrom = before.lastHour() + 1;
                if (emptyFrom < planting.firstHour()) {
                    panel.change("empty", emptyFrom / 24.0);
                }
                panel.change(Names.clean(planting.crop()), planting.fromS() / Time.DAY_S);
            }
            before = planting;
        }
    }

    private static String band(Limits limits) {
        String high = Numbers.label(limits.ecHighMsPerCm());
        return limits.ecLowMsPerCm() > 0
                ? "band " + Numbers.label(limits.ecLowMsPerCm()) + " to " + high
                : "up to " + high;
    }

    private Picture thirst(List<TrayTrace> trays) {
        Panel panel = new Panel(scenario.start(), scenario.days()).reach(0);
        addDue(panel, task -> true);
        for (int i = 0; i < trays.size(); i++) {
            TrayTrace run = trays.get(i);
            panel.curve(
                    run.tray().name(),
                    Curves.Curve.daily(run.transpirationM3(), L_PER_M3),
                    Look.TRAYS.get(i),
                    Panel.marker(i));
        }
        return picture(
                "What the plants drink",
                "drunk by the plants (L a day)",
                List.of(panel),
                PlotWords.thirst(trace, trays));
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
                finding);
    }

    /** A valve's setting over the run, mm; straight up or down where it is moved. */
    private Curves.Curve settings(Filling.ByValve valve) {
        double[] day = new double[2 * valve.moves().size() + 2];
        double[] mm = new double[day.length];
        double now = valve.settingM();
        int i = 0;
        mm[i++] = MM_PER_M * now;
        for (Filling.Move move : valve.moves()) {
            double at =
                    ChronoUnit.DAYS.between(scenario.start(), move.on())
                            + scenario.visits().timeOfDayS() / Time.DAY_S;
            day[i] = at;
            mm[i++] = MM_PER_M * now;
            now = move.settingM();
            day[i] = at;
            mm[i++] = MM_PER_M * now;
        }
        day[i] = scenario.days();
        mm[i] = MM_PER_M * now;
        return new Curves.Curve(day, mm);
    }

    private static String named(Tray tray) {
        String crop = Names.crops(tray);
        return crop.equals(tray.name()) ? tray.name() : tray.name() + " (" + crop + ")";
    }

    /** A row of marks for each kind of task, in the order of the kinds. */
    private void addDue(Panel panel, Predicate<Task> belongs) {
        Map<Task.Kind, TreeSet<Double>> marks = new EnumMap<>(Task.Kind.class);
        for (Task task : forecast.advice().tasks()) {
            double day =
                    Duration.between(scenario.start().atStartOfDay(), task.due()).toMinutes()
                            / 1440.0;
            if (belongs.test(task) && day >= 0 && day <= scenario.days()) {
                marks.computeIfAbsent(task.kind(), kind -> new TreeSet<>()).add(day);
            }
        }
        marks.forEach((kind, days) -> panel.due(Names.of(kind), List.copyOf(days)));
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
