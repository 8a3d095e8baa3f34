package tideless.page;

import org.teavm.jso.JSExport;
import tideless.rig.VesselId;

/**
 * What a page of a browser may call. One page is one {@link Session}; faults of the user come back
 * as text, faults of the caller as exceptions.
 */
public final class Page {
    private static final Session SESSION = new Session(1);

    private Page() {}

    /** Lays a file that the scenario names beside it. */
    @JSExport
    public static void file(String name, String text) {
        SESSION.file(name, text);
    }

    /** Lays a log or corrections beside the scenario; see {@link Session#beside}. */
    @JSExport
    public static void beside(String kind, String name, String text) {
        SESSION.beside(kind, name, text);
    }

    /** What messages call the scenario from now on. */
    @JSExport
    public static void call(String name) {
        SESSION.call(name);
    }

    /** Reads a scenario's text; gives its faults, none when it is sound. */
    @JSExport
    public static String[] read(String toml) {
        return SESSION.read(toml).toArray(String[]::new);
    }

    /** The rig that was read, and what can be moved in it, as JSON. */
    @JSExport
    public static String rig() {
        return Json.of(SESSION.rig());
    }

    /** Names, units and meaning of the hourly series, as JSON. */
    @JSExport
    public static String columns() {
        return Json.of(Shown.columns());
    }

    /** The text that was read, with one thing moved. */
    @JSExport
    public static String turned(String knob, String to) {
        return SESSION.turned(knob, to);
    }

    /** Runs what was read alone, in steps of that many seconds at most. */
    @JSExport
    public static void glance(double stepS) {
        SESSION.glance(stepS);
    }

    /** Runs what was read as the command line does, with as many rigs that it might be. */
    @JSExport
    public static void run(int members) {
        SESSION.run(members);
    }

    /**
     * One hourly series of the last run.
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

    /**
     * The rig of the last run at an hour, one tray cut across, as the text of an SVG picture.
     *
     * @param tray its place in the scenario
     */
    @JSExport
    public static String drawing(int tray, int hour) {
        return SESSION.drawing(tray, hour);
    }

    /** Verdict, things to look at, tasks, warnings and events of the last run, as JSON. */
    @JSExport
    public static String result() {
        return Json.of(SESSION.result());
    }

    /** What the command {@code run} prints of it. */
    @JSExport
    public static String table(int width) {
        return Shown.table(SESSION.forecast(), width);
    }

    /** A file as the command {@code run} writes it; see {@link Session#csv}. */
    @JSExport
    public static String csv(String kind, int place) {
        return SESSION.csv(kind, place);
    }

    /** Every number of the run to its last bit and every word: see {@link EveryBit}. */
    @JSExport
    public static String everyBit() {
        return EveryBit.of(SESSION.forecast());
    }
}
