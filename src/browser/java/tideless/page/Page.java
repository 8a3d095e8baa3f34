package tideless.page;

import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.teavm.jso.JSExport;
import tideless.rig.VesselId;
import tideless.words.MachineWords;
import tideless.words.TaskWords;
import tideless.words.VerdictWords;
import tideless.words.WarningWords;

/**
 * What a page of a browser may call. One page is one {@link Session}; faults of the user come back
 * as text, faults of the caller as exceptions.
 */
public final class Page {
    private static final Session SESSION = new Session(Path.of("/rig"), 1);

    private Page() {}

    /** Lays a file that the scenario names beside it. */
    @JSExport
    public static void file(String name, String text) throws IOException {
        SESSION.file(name, text);
    }

    /** Reads a scenario's text; gives its faults, none when it is sound. */
    @JSExport
    public static String[] read(String toml) throws IOException {
        return SESSION.read(toml).toArray(String[]::new);
    }

    /** Runs what was read. */
    @JSExport
    public static void run() {
        SESSION.run();
    }

    /**
     * One hourly series.
     *
     * @param kind "tray" or "reservoir"
     * @param vessel its name
     * @param series name of the column
     */
    @JSExport
    public static double[] series(String kind, String vessel, String series) {
        return SESSION.series(
                "reservoir".equals(kind) ? VesselId.reservoir(vessel) : VesselId.tray(vessel),
                series);
    }

    /** The lines of the verdict. */
    @JSExport
    public static String[] verdict() {
        return VerdictWords.lines(SESSION.forecast().advice().verdict()).toArray(String[]::new);
    }

    /** What is to be done: for each task six texts: kind, when, tray or reservoir, name, L, why. */
    @JSExport
    public static String[] tasks() {
        return SESSION.tasks().stream()
                .flatMap(
                        task ->
                                Stream.of(
                                        MachineWords.of(task.kind()),
                                        task.due().toString(),
                                        MachineWords.of(task.vessel().kind()),
                                        task.vessel().name(),
                                        Double.toString(task.litres()),
                                        TaskWords.text(task)))
                .toArray(String[]::new);
    }

    /** What goes wrong: for each warning five texts: kind, from, tray or reservoir, name, why. */
    @JSExport
    public static String[] warnings() {
        return SESSION.warnings().stream()
                .flatMap(
                        warning ->
                                Stream.of(
                                        MachineWords.of(warning.kind()),
                                        warning.from().toString(),
                                        MachineWords.of(warning.vessel().kind()),
                                        warning.vessel().name(),
                                        WarningWords.text(warning)))
                .toArray(String[]::new);
    }

    /** Every number of the run to its last bit and every word: see {@link EveryBit}. */
    @JSExport
    public static String everyBit() {
        return EveryBit.of(SESSION.forecast());
    }
}
