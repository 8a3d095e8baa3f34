package tideless.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import tideless.drawing.DaysOff;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.LogEntry;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.study.Fit;
import tideless.words.Dates;
import tideless.words.FitWords;
import tideless.words.LogWords;
import tideless.words.Names;

/** What a log teaches: the corrections, each reading beside its forecasts, and pictures. */
public final class FitFiles {
    private static final double MM_PER_CM = 10;

    private FitFiles() {}

    /**
     * Writes {@code corrected.toml}, {@code fit.csv} and the pictures, all of them or none.
     *
     * @param runs of the pictures
     * @param shown units of the pictures; the tables keep their own
     * @param folder where to; made when it is not there
     * @param inputs files that were read for it, which none may take the place of
     */
    public static WriteResult write(
            Fit fit, Fit.Runs runs, ShownIn shown, Path folder, Collection<Path> inputs) {
        return ResultFiles.put(folder, () -> files(fit, runs, shown), inputs);
    }

    static Map<String, byte[]> files(Fit fit, Fit.Runs runs, ShownIn shown)
            throws ResultFiles.NotDrawn {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("corrected.toml", FitWords.fragment(fit).getBytes(StandardCharsets.UTF_8));
        files.put("fit.csv", readings(fit));
        for (Map.Entry<String, Picture> picture : pictures(fit, runs, shown).entrySet()) {
            files.putAll(ResultFiles.drawn(picture.getKey(), picture.getValue()));
        }
        return files;
    }

    static Map<String, Picture> pictures(Fit fit, Fit.Runs runs, ShownIn shown) {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        // A ruler shows centimetres, or inches.
        double perM = shown.us() ? shown.perM() : shown.perM() / MM_PER_CM;
        double perEc = shown.perMsPerCm();
        Trace before = runs.stated();
        Trace after = runs.corrected();
        List<Panel> levels = new ArrayList<>();
        for (int i = 0; i < fit.scenario().reservoirs().size(); i++) {
            int which = i;
            Reservoir reservoir = fit.scenario().reservoirs().get(i);
            panel(
                    fit,
                    reservoir.id(),
                    LogEntry.Quantity.LEVEL,
                    perM,
                    before,
                    after,
                    trace -> levels(trace, which, perM),
                    levels);
        }
        for (int i = 0; i < fit.scenario().trays().size(); i++) {
            int which = i;
            Tray tray = fit.scenario().trays().get(i);
            if (!(tray.filling() instanceof Filling.ByValve)) { // which holds its level
                panel(
                        fit,
                        tray.id(),
                        LogEntry.Quantity.LEVEL,
                        perM,
                        before,
                        after,
                        trace -> Curves.Curve.hourly(trace.trays().get(which).levelM(), perM),
                        levels);
            }
        }
        List<Panel> ecs = new ArrayList<>();
        for (int i = 0; i < fit.scenario().trays().size(); i++) {
            int which = i;
            Tray tray = fit.scenario().trays().get(i);
            panel(
                    fit,
                    tray.id(),
                    LogEntry.Quantity.EC,
                    perEc,
                    before,
                    after,
                    trace -> Curves.Curve.hourly(trace.trays().get(which).ecMsPerCm(), perEc),
                    ecs);
        }
        for (List<Panel> panels : List.of(levels, ecs)) {
            if (!panels.isEmpty()) {
                Panel.alike(panels);
            }
        }
        if (!levels.isEmpty()) {
            pictures.put(
                    "fit-level",
                    picture(
                            fit,
                            "Level read and foretold",
                            "level (" + (shown.us() ? "in" : "cm") + ")",
                            levels,
                            shown.told(FitWords.finding(fit, LogEntry.Quantity.LEVEL))));
        }
        if (!ecs.isEmpty()) {
            pictures.put(
                    "fit-ec",
                    picture(
                            fit,
                            "EC read and foretold",
                            shown.ecLabel(),
                            ecs,
                            shown.told(FitWords.finding(fit, LogEntry.Quantity.EC))));
        }
        return pictures;
    }

    private static Curves.Curve levels(Trace trace, int reservoir, double perM) {
        Shape shape = trace.scenario().reservoirs().get(reservoir).shape();
        Series volume = trace.reservoirs().get(reservoir).volumeM3();
        double[] day = new double[volume.size()];
        double[] level = new double[volume.size()];
        for (int h = 0; h < day.length; h++) {
            day[h] = (h + 1) / 24.0;
            level[h] = perM * shape.levelM(volume.at(h));
        }
        return new Curves.Curve(day, level);
    }

    private static void panel(
            Fit fit,
            VesselId where,
            LogEntry.Quantity what,
            double factor,
            Trace before,
            Trace after,
            Function<Trace, Curves.Curve> curve,
            List<Panel> panels) {
        List<Fit.Judged> own =
                fit.readings().stream()
                        .filter(r -> r.reading().where().equals(where))
                        .filter(r -> r.reading().what() == what)
                        .toList();
        if (own.isEmpty()) {
            return;
        }
        int days = days(fit);
        double[] day = own.stream().mapToDouble(r -> r.reading().atS() / Time.DAY_S).toArray();
        double[] value = own.stream().mapToDouble(r -> factor * r.reading().value()).toArray();
        panels.add(
                new Panel(fit.scenario().start(), days)
                        .shade(DaysOff.of(fit.scenario().withDays(days)))
                        .curve("as stated", curve.apply(before).until(days), Look.CUP, null)
                        .curve("by the log", curve.apply(after).until(days), Look.LEVEL, null)
                        .points(
                                "read, " + Names.clean(where.name()),
                                new Curves.Curve(day, value)));
    }

    /** Days drawn: the log, and a fortnight to come. */
    private static int days(Fit fit) {
        int logged = (int) (fit.scenario().log().lastS() / Time.DAY_S) + 1;
        return Math.min(fit.scenario().days(), logged + 14);
    }

    private static Picture picture(
            Fit fit, String title, String label, List<Panel> panels, String finding) {
        Scenario scenario = fit.scenario();
        return new Picture(
                title,
                scenario.title()
                        + "; log up to "
                        + Dates.dayMonth(LogWords.day(scenario, scenario.log().lastS())),
                label,
                Dates.span(scenario.start(), scenario.start().plusDays(days(fit) - 1L)),
                panels,
                finding);
    }

    private static byte[] readings(Fit fit) {
        StringWriter text = new StringWriter();
        CsvWriter csv = CsvFiles.writerOf(text);
        csv.writeRecord(
                "line",
                "time",
                "where",
                "what",
                "unit",
                "read",
                "foretold_as_stated",
                "foretold_by_the_log",
                "deviation",
                "residual",
                "weight",
                "worth");
        List<Fit.Judged> all = new ArrayList<>(fit.readings());
        all.addAll(fit.idle());
        all.sort(Comparator.comparingDouble(one -> one.reading().atS())); // stable
        for (Fit.Judged one : all) {
            LogEntry.Reading reading = one.reading();
            csv.writeRecord(
                    Integer.toString(reading.line()),
                    LogWords.clock(fit.scenario(), reading.atS()).toString(),
                    Names.of(reading.where()),
                    LogWords.name(reading.what()),
                    unit(reading.what()),
                    figure(reading.value()),
                    figure(one.before()),
                    figure(one.after()),
                    figure(one.deviation()),
                    figure(one.residual()),
                    figure(one.weight()),
                    figure(one.worth()));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String figure(double value) {
        return SignificantDigits.six(value);
    }

    private static String unit(LogEntry.Quantity what) {
        return switch (what) {
            case LEVEL, ROOT_LENGTH -> "m";
            case POURED -> "m3";
            case EC -> "mS/cm";
            case PH -> "";
            case TEMPERATURE -> "degC";
            case FRESH_MASS -> "g";
        };
    }
}
