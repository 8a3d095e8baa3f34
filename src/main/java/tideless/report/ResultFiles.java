package tideless.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import tideless.drawing.RigPicture;
import tideless.rig.Reservoir;
import tideless.rig.Tray;
import tideless.sim.Trace;
import tideless.study.Forecast;

/** All files of one forecast. */
public final class ResultFiles {
    private ResultFiles() {}

    /** Which files are wanted. */
    public enum Wanted {
        ALL,
        TEXTS,
        PICTURES
    }

    /**
     * Writes {@code report.html}, {@code result.json}, {@code tasks.csv}, {@code warnings.csv}, a
     * CSV file for each tray and reservoir and, when asked, the pictures and the rig drawn at three
     * hours, all of them or none.
     *
     * @param forecast what
     * @param folder where to; made when it is not there, and other files in it are left alone
     * @param wanted which of them
     * @param origins what it was made from; none of the files read may be written over
     * @param shown units of the page and the pictures; CSV and JSON keep theirs
     * @return the files, or why there are none
     */
    public static WriteResult write(
            Forecast forecast, Path folder, Wanted wanted, Origins origins, ShownIn shown) {
        return put(folder, () -> render(forecast, wanted, origins, shown), origins.files());
    }

    /** What makes the bytes of each file. */
    interface Rendering {
        Map<String, byte[]> files() throws NotDrawn;
    }

    /** Writes a set of files, all of them or none. */
    static WriteResult put(Path folder, Rendering rendering, Collection<Path> inputs) {
        // Pictures go to files alone: a screen that is announced but not there must not matter.
        System.setProperty("java.awt.headless", "true");
        try {
            return new WriteResult(
                    OutputFolder.write(folder, rendering.files(), inputs), "", false);
        } catch (OutputFolder.NotWritten e) {
            return new WriteResult(
                    List.of(), e.getMessage(), e instanceof OutputFolder.WouldOverwrite);
        } catch (NotDrawn e) {
            return new WriteResult(List.of(), folder + ": " + e.getMessage(), false);
        }
    }

    /** A picture could not be drawn on this machine; the message says why in plain words. */
    static final class NotDrawn extends Exception {
        private static final long serialVersionUID = 1L;

        NotDrawn(String message, Throwable cause) {
            super(message, cause);
        }
    }

    /** The name and the bytes of each file, in a fixed order. */
    static Map<String, byte[]> render(
            Forecast forecast, Wanted wanted, Origins origins, ShownIn shown) throws NotDrawn {
        Trace trace = forecast.trace();
        List<String> trays = FileNames.of(names(trace, false));
        List<String> reservoirs = FileNames.of(names(trace, true));
        Map<String, Callable<Map<String, byte[]>>> jobs = new LinkedHashMap<>();
        if (wanted != Wanted.PICTURES) {
            jobs.put("texts", () -> texts(forecast, trays, reservoirs));
        }
        Map<String, Picture> pictures =
                wanted == Wanted.TEXTS ? Map.of() : Pictures.of(forecast, trays, reservoirs, shown);
        List<RigPicture.Drawing> rig = RigPicture.scenes(forecast, shown.barM());
        if (wanted != Wanted.TEXTS) {
            jobs.put("rig", () -> svgs(rig, shown));
            pictures.forEach((name, picture) -> jobs.put(name, () -> images(name, picture)));
        }
        Map<String, byte[]> files = run(jobs);
        if (wanted != Wanted.PICTURES) {
            Map<String, byte[]> plots = new LinkedHashMap<>();
            pictures.forEach((name, p) -> plots.put(p.finding(), files.get(name + ".svg")));
            String page = ReportPage.of(forecast, origins, rig, plots, shown);
            String told = ReportPage.unbroken(shown.page(page));
            files.put("report.html", told.getBytes(StandardCharsets.UTF_8));
        }
        return files;
    }

    private static Map<String, byte[]> svgs(List<RigPicture.Drawing> rig, ShownIn shown) {
        Map<String, byte[]> drawings = new LinkedHashMap<>();
        for (RigPicture.Drawing drawing : rig) {
            String svg = shown.page(drawing.svg());
            drawings.put(drawing.name() + ".svg", svg.getBytes(StandardCharsets.UTF_8));
        }
        return drawings;
    }

    private static Map<String, byte[]> images(String name, Page picture) {
        Map<String, byte[]> images = new LinkedHashMap<>();
        images.put(name + ".png", Images.png(picture));
        images.put(name + ".svg", Images.svg(picture));
        return images;
    }

    /** A picture in both forms. */
    static Map<String, byte[]> drawn(String name, Page picture) throws NotDrawn {
        return run(Map.of(name, () -> images(name, picture)));
    }

    private static Map<String, byte[]> texts(
            Forecast forecast, List<String> trays, List<String> reservoirs) throws IOException {
        Trace trace = forecast.trace();
        Map<String, byte[]> texts = new LinkedHashMap<>();
        texts.put("result.json", ResultJson.of(forecast, trays, reservoirs));
        texts.put("tasks.csv", CsvFiles.tasks(forecast.advice().tasks()));
        texts.put("warnings.csv", CsvFiles.warnings(forecast.advice().warnings()));
        for (int i = 0; i < reservoirs.size(); i++) {
            texts.put(
                    "reservoir-" + reservoirs.get(i) + ".csv",
                    CsvFiles.reservoir(trace, trace.reservoirs().get(i)));
        }
        for (int i = 0; i < trays.size(); i++) {
            texts.put(
                    "tray-" + trays.get(i) + ".csv",
                    CsvFiles.tray(trace, trace.trays().get(i), forecast.ph().get(i)));
            texts.put("daily-" + trays.get(i) + ".csv", CsvFiles.day(trace, trace.trays().get(i)));
        }
        return texts;
    }

    private static List<String> names(Trace trace, boolean ofReservoirs) {
        return ofReservoirs
                ? trace.scenario().reservoirs().stream().map(Reservoir::name).toList()
                : trace.scenario().trays().stream().map(Tray::name).toList();
    }

    // Two threads: each job draws from its own objects, and the results are gathered in order, so
    // that the bytes do not depend on which is done first.
    private static Map<String, byte[]> run(Map<String, Callable<Map<String, byte[]>>> jobs)
            throws NotDrawn {
        ExecutorService pool = Executors.newFixedThreadPool(2);
        try {
            Map<String, Future<Map<String, byte[]>>> begun = new LinkedHashMap<>();
            jobs.forEach((name, job) -> begun.put(name, pool.submit(job)));
            Map<String, byte[]> files = new LinkedHashMap<>();
            for (Map.Entry<String, Future<Map<String, byte[]>>> job : begun.entrySet()) {
                try {
                    files.putAll(job.getValue().get());
                } catch (ExecutionException e) {
                    throw notDrawn(e.getCause());
                }
            }
            return files;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new NotDrawn("interrupted; nothing was written", e);
        } finally {
            pool.shutdownNow();
        }
    }

    /**
     * What to say of a failed drawing.
     *
     * @return when the machine cannot draw; any other fault is thrown as it is
     */
    static NotDrawn notDrawn(Throwable cause) {
        for (Throwable at = cause; at != null; at = at.getCause()) {
            String said = String.valueOf(at.getMessage());
            if (said.toLowerCase(Locale.ROOT).contains("font")) {
                return new NotDrawn(
                        "the pictures could not be drawn: no fonts on this machine ("
                                + said
                                + "); a whole Java (not a \"headless\" one) and a package of fonts"
                                + " mend it, and \"run --no-plots\" does without",
                        cause);
            }
        }
        // A Java without its drawing libraries fails while it links them.
        if (cause instanceof LinkageError || cause instanceof java.awt.AWTError) {
            return new NotDrawn(
                    "the pictures could not be drawn: this Java cannot draw (" + cause + ")",
                    cause);
        }
        if (cause instanceof OutOfMemoryError) {
            return new NotDrawn("the pictures could not be drawn: not enough memory", cause);
        }
        if (cause instanceof Error error) {
            throw error;
        }
        if (cause instanceof RuntimeException fault) {
            throw fault;
        }
        return new NotDrawn("could not be rendered: " + cause.getMessage(), cause);
    }
}
