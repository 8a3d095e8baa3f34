package tideless.page;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.report.ForecastTable;
import tideless.report.Telling;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.scenario.Note;
import tideless.sim.Event;
import tideless.sim.HourlySeries;
import tideless.sim.ReservoirSeries;
import tideless.sim.TraySeries;
import tideless.study.Forecast;
import tideless.words.CautionWords;
import tideless.words.CropWords;
import tideless.words.CureWords;
import tideless.words.Dates;
import tideless.words.FeedWords;
import tideless.words.LogWords;
import tideless.words.MachineWords;
import tideless.words.Names;
import tideless.words.Numbers;
import tideless.words.OutlookWords;
import tideless.words.RigWords;
import tideless.words.TaskWords;
import tideless.words.VerdictWords;
import tideless.words.WarningWords;

/** A rig and what came of a run, as a page shows them: tables, lists, words and numbers. */
final class Shown {
    /** A run of more days has its dates told with their year, as the command line does. */
    private static final int LONG_RUN_DAYS = 330;

    private Shown() {}

    /** The rig of a scenario, in the units of its columns: cm, L, mS/cm. */
    static Map<String, Object> rig(Scenario scenario, List<Note> notes, List<Knob> knobs) {
        Map<String, Object> rig = new LinkedHashMap<>();
        LocalDate last = scenario.lastDay();
        rig.put("title", Names.clean(scenario.title()));
        rig.put("start", scenario.start().toString());
        rig.put("days", scenario.days());
        rig.put("opensOn", opensOn(scenario));
        rig.put("span", Dates.span(scenario.start(), last));
        rig.put("stepS", scenario.numerics().stepS());
        rig.put("trays", scenario.trays().stream().map(tray -> tray(scenario, tray)).toList());
        rig.put("reservoirs", scenario.reservoirs().stream().map(Shown::reservoir).toList());
        rig.put("notes", notes.stream().map(Object::toString).toList());
        rig.put("knobs", knobs.stream().map(Knob::told).toList());
        List<Integer> visits = new ArrayList<>();
        for (int day = 0; day < scenario.days(); day++) {
            if (scenario.visits().on(scenario.start().plusDays(day))) {
                visits.add(day);
            }
        }
        rig.put("visitDays", visits);
        rig.put("visitS", scenario.visits().timeOfDayS());
        rig.put("drawingKey", RigWords.KEY);
        return rig;
    }

    /** Day that a page shows first: today, where a log tells it, or one in the middle. */
    private static int opensOn(Scenario scenario) {
        return scenario.log().isEmpty() ? scenario.days() / 2 : scenario.log().lastDay();
    }

    private static Map<String, Object> tray(Scenario scenario, Tray tray) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("kind", MachineWords.of(tray.id().kind()));
        told.put("name", tray.name());
        told.put("label", Names.of(tray.id()));
        told.put("crop", Names.clean(tray.planting().cropName()));
        told.put("plants", tray.planting().plants());
        putShape(told, tray.shape());
        told.put("floor", 100 * tray.floorAboveBenchM());
        told.put("overflow", 100 * tray.overflowM());
        told.put("cup", 100 * tray.cupBottomM());
        told.put("floats", tray.deck().floats());
        told.put("ecLow", tray.limits().ecLowMsPerCm());
        told.put("ecHigh", tray.limits().ecHighMsPerCm());
        told.put("phLow", tray.limits().phLow());
        told.put("phHigh", tray.limits().phHigh());
        told.put("ground", ground(tray));
        told.put("lamp", tray.lamp().ppfdUmolPerM2S());
        told.put("lampOnS", tray.lamp().onS());
        told.put("lampLitS", tray.lamp().litS());
        if (tray.filling() instanceof Filling.ByValve valve) {
            told.put("filling", "valve");
            told.put("setting", 100 * valve.settingM());
            told.put("reservoir", scenario.reservoirOf(valve));
        } else if (tray.filling() instanceof Filling.ByHand hand) {
            told.put("filling", "hand");
            told.put("setting", 100 * hand.toLevelM());
        } else {
            told.put("filling", "sealed");
        }
        return told;
    }

    private static double ground(Tray tray) {
        return tray.planting() instanceof Planting.OfCrop crop
                ? crop.groundM2()
                : tray.shape().rimAreaM2();
    }

    private static Map<String, Object> reservoir(Reservoir reservoir) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("kind", MachineWords.of(reservoir.id().kind()));
        told.put("name", reservoir.name());
        told.put("label", Names.of(reservoir.id()));
        putShape(told, reservoir.shape());
        told.put("floor", 100 * reservoir.floorAboveBenchM());
        told.put("full", 100 * reservoir.fullLevelM());
        told.put("outlet", 100 * reservoir.outletLevelM());
        told.put("litres", 1000 * reservoir.fullM3());
        return told;
    }

    /** Longer side of the rectangle of this rim's area and perimeter, or a circle's diameter. */
    private static void putShape(Map<String, Object> told, Shape shape) {
        double area = shape.rimAreaM2();
        double half = shape.rimPerimeterM() / 2;
        double square = half * half - 4 * area;
        boolean isRound = square < -1e-9;
        told.put("depth", 100 * shape.depthM());
        told.put("round", isRound);
        told.put(
                "length",
                isRound
                        ? 200 * Math.sqrt(area / Math.PI)
                        : 50 * (half + Math.sqrt(Math.max(0, square))));
    }

    /**
     * What the columns of a tray and of a reservoir are called, their units, and what they hold.
     */
    static Map<String, Object> columns() {
        Map<String, Object> columns = new LinkedHashMap<>();
        columns.put("tray", columns(TraySeries.values()));
        columns.put("reservoir", columns(ReservoirSeries.values()));
        return columns;
    }

    private static List<Object> columns(HourlySeries[] all) {
        List<Object> columns = new ArrayList<>();
        for (HourlySeries series : all) {
            Map<String, Object> column = new LinkedHashMap<>();
            column.put("name", series.column().name());
            column.put("unit", series.column().unit());
            column.put("about", series.column().about());
            columns.add(column);
        }
        return columns;
    }

    /** Verdict, tasks, warnings and events, in the words of the command line. */
    static Map<String, Object> result(Forecast forecast) {
        Scenario scenario = forecast.trace().scenario();
        boolean years = scenario.days() > LONG_RUN_DAYS;
        Map<String, Object> result = new LinkedHashMap<>();
        result.put("survives", forecast.survives());
        result.put("verdict", verdict(forecast));
        result.put("feed", "Feed: " + FeedWords.main(scenario.feed()));
        result.put("tasks", forecast.toDo().stream().map(t -> task(forecast, t, years)).toList());
        result.put(
                "warnings",
                forecast.advice().warnings().stream()
                        .sorted(Warning.GRAVEST_FIRST)
                        .map(w -> warning(scenario, w, years))
                        .toList());
        result.put("events", forecast.trace().events().stream().map(Shown::event).toList());
        return result;
    }

    /** The verdict, what a log adds to it, and what is not ready by the end. */
    static List<String> verdict(Forecast forecast) {
        List<String> lines = new ArrayList<>(VerdictWords.lines(forecast));
        Scenario scenario = forecast.trace().scenario();
        lines.addAll(LogWords.lived(scenario));
        WarningWords.past(forecast.advice().past()).ifPresent(lines::add);
        if (!scenario.log().isEmpty()) {
            lines.add(
                    "What is moved is moved from the first day on; what the log read and did stays.");
        }
        lines.addAll(CropWords.unripe(forecast.trace()));
        lines.addAll(CropWords.beside(forecast.advice().verdict()));
        return lines;
    }

    private static Map<String, Object> task(Forecast forecast, Task task, boolean years) {
        LocalDate start = forecast.trace().scenario().start();
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("name", Names.of(task.kind()));
        told.put("when", Dates.visit(task.due(), years));
        told.put("atS", secondsTo(start, task.due()));
        told.put("vessel", Names.of(task.vessel()));
        told.put("litres", task.litres() > 0 ? Numbers.litres(task.litres()) : "");
        told.put("why", TaskWords.why(task));
        told.put("likely", OutlookWords.likely(forecast, task));
        told.put("cures", task.cures().isEmpty() ? "" : CureWords.of(task.cures()));
        told.put("care", task.cautions().stream().map(CautionWords::of).toList());
        told.put("text", TaskWords.text(task));
        told.put("done", task.isDone());
        return told;
    }

    private static Map<String, Object> warning(Scenario scenario, Warning warning, boolean years) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("name", Names.of(warning.kind()));
        told.put("head", WarningWords.head(List.of(warning), scenario, years));
        told.put("atS", secondsTo(scenario.start(), warning.from()));
        told.put("untilS", secondsTo(scenario.start(), warning.until()));
        told.put("vessel", Names.of(warning.vessel()));
        told.put("why", WarningWords.why(warning));
        told.put("cures", warning.cures().isEmpty() ? "" : CureWords.of(warning.cures()));
        told.put("text", WarningWords.text(warning));
        return told;
    }

    private static Map<String, Object> event(Event event) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("kind", MachineWords.of(event.kind()));
        told.put("atS", event.atS());
        told.put("vessel", Names.of(event.vessel()));
        told.put("litres", 1000 * event.volumeM3());
        told.put("detail", event.detail());
        return told;
    }

    private static long secondsTo(LocalDate start, LocalDateTime at) {
        return ChronoUnit.SECONDS.between(start.atStartOfDay(), at);
    }

    /** What the command {@code run --all} prints. */
    static String table(Forecast forecast, int width) {
        StringWriter text = new StringWriter();
        ForecastTable.print(
                new PrintWriter(text),
                forecast,
                false,
                width,
                ForecastTable.Depth.ALL,
                Telling.METRIC);
        return text.toString();
    }
}
