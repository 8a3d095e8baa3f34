package tideless.page;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.drawing.RigPicture;
import tideless.report.CsvFiles;
import tideless.rig.Numerics;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.Beside;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;
import tideless.scenario.Rereading;
import tideless.sim.HourlySeries;
import tideless.sim.ReservoirSeries;
import tideless.sim.ReservoirTrace;
import tideless.sim.Series;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.study.InTurn;

/** What a page does from one keystroke to the next: takes files, reads, runs, and shows. */
final class Session {
    private final long seed;
    private final Map<String, String> files = new LinkedHashMap<>();
    private final List<Beside.Text> beside = new ArrayList<>();
    private Rereading readings = new Rereading();
    private String name = "scenario.toml";
    private String toml = "";
    private Reading reading;
    private Trace trace;
    private RigPicture picture;
    private Forecast forecast;

    /**
     * @param seed of what is drawn
     */
    Session(long seed) {
        this.seed = seed;
    }

    /**
     * Lays a file that a scenario names (weather, thirst, a crop) beside it.
     *
     * @param file as the scenario names it
     */
    void file(String file, String text) {
        files.put(file, text);
        readings = new Rereading();
    }

    /**
     * Lays a log or corrections beside the scenario, in place of those that lie there.
     *
     * @param kind "log" or "corrected"
     * @param file what messages call it
     * @param text empty for none
     * @throws IllegalArgumentException when it is of another kind
     */
    void beside(String kind, String file, String text) {
        beside.removeIf(one -> one.kind().equals(kind));
        Beside.Text laid = new Beside.Text(kind, file, text);
        Beside.of(List.of(laid)); // refuses another kind
        if (!text.isEmpty()) {
            beside.add(laid);
        }
        readings = new Rereading();
    }

    /** What messages call the scenario from now on. */
    void call(String other) {
        name = other;
    }

    /**
     * Reads a scenario; what was run before is forgotten.
     *
     * @return its faults, one a line of the list, as the command line prints them; empty when there
     *     are none
     */
    List<String> read(String text) {
        toml = text;
        trace = null;
        picture = null;
        forecast = null;
        FilesInMemory named = new FilesInMemory(text);
        files.forEach(named::put);
        reading = readings.read(name, named, Beside.of(beside));
        if (reading instanceof Reading.Good) {
            return List.of();
        }
        return reading instanceof Reading.Faulty faulty
                ? faulty.problems().stream().map(Object::toString).toList()
                : List.of(reading.toString());
    }

    private Reading.Good good() {
        if (!(reading instanceof Reading.Good good)) {
            throw new IllegalStateException("no sound scenario was read");
        }
        return good;
    }

    /** The rig and what can be moved in it. */
    Map<String, Object> rig() {
        Scenario scenario = good().scenario();
        return Shown.rig(scenario, Knobs.of(new ScenarioText(toml), scenario));
    }

    /**
     * The text with one thing moved; what was read stays as it is.
     *
     * @param knob the id of one of {@link #rig}
     * @param to its new value in decimal digits, or one of its choices
     * @throws IllegalArgumentException when there is no such knob or the text cannot be changed
     */
    String turned(String knob, String to) {
        ScenarioText text = new ScenarioText(toml);
        for (Knob one : Knobs.of(text, good().scenario())) {
            if (one.id().equals(knob)) {
                return text.with(one.change().apply(to));
            }
        }
        throw new IllegalArgumentException("nothing to move is called " + knob);
    }

    /**
     * Runs what was read and its twin, and judges, as the command {@code run} does.
     *
     * @param members rigs that this one might be, run too; below 2 for none
     * @throws IllegalStateException when nothing sound was read
     */
    void run(int members) {
        try {
            forecast = Forecasts.of(good().scenario(), seed, members, new InTurn());
        } catch (InterruptedException e) {
            throw new IllegalStateException(e); // one after the other, nobody interrupts
        }
        trace = forecast.trace();
        picture = null;
    }

    /**
     * Runs what was read alone, in longer steps and unjudged, while a slider is under way.
     *
     * @param stepS longest step, s
     */
    void glance(double stepS) {
        forecast = null;
        trace = Simulation.run(good().scenario().withNumerics(new Numerics(stepS)));
        picture = null;
    }

    /**
     * The rig of the last run at an hour, one tray cut across.
     *
     * @param tray its place in the scenario
     * @return the text of an SVG picture without a style
     */
    String drawing(int tray, int hour) {
        if (picture == null) {
            picture = RigPicture.of(trace());
        }
        return picture.at(tray, hour).svg();
    }

    /** What the run gave. */
    Forecast forecast() {
        if (forecast == null) {
            throw new IllegalStateException("nothing was run");
        }
        return forecast;
    }

    /** What came of the run, and what {@code check} says of the rig, as a page shows it. */
    Map<String, Object> result() {
        return Shown.result(forecast(), good().notes());
    }

    private Trace trace() {
        if (trace == null) {
            throw new IllegalStateException("nothing was run");
        }
        return trace;
    }

    List<Task> tasks() {
        return forecast().advice().tasks();
    }

    List<Warning> warnings() {
        return forecast().advice().warnings();
    }

    /**
     * One hourly series, in the unit of its column.
     *
     * @param vessel of the rig
     * @param name of the column; "level" of a reservoir is that above its floor, mm
     * @throws IllegalArgumentException when there is no such vessel or series
     */
    double[] series(VesselId vessel, String name) {
        for (TrayTrace tray : trace().trays()) {
            if (tray.tray().id().equals(vessel)) {
                for (TraySeries kind : TraySeries.values()) {
                    if (kind.column().name().equals(name)) {
                        return inItsUnit(tray.of(kind), kind);
                    }
                }
            }
        }
        for (ReservoirTrace reservoir : trace().reservoirs()) {
            if (reservoir.reservoir().id().equals(vessel)) {
                if (name.equals("level")) {
                    return levelsMm(reservoir);
                }
                for (ReservoirSeries kind : ReservoirSeries.values()) {
                    if (kind.column().name().equals(name)) {
                        return inItsUnit(reservoir.of(kind), kind);
                    }
                }
            }
        }
        throw new IllegalArgumentException("no series %s of %s".formatted(name, vessel));
    }

    private static double[] levelsMm(ReservoirTrace reservoir) {
        double[] values = reservoir.volumeM3().toArray();
        for (int i = 0; i < values.length; i++) {
            values[i] = 1000 * reservoir.reservoir().shape().levelM(values[i]);
        }
        return values;
    }

    private static double[] inItsUnit(Series series, HourlySeries kind) {
        double[] values = series.toArray();
        for (int i = 0; i < values.length; i++) {
            values[i] *= kind.column().factor();
        }
        return values;
    }

    /**
     * A file of comma-separated values as the command {@code run} writes it.
     *
     * @param kind "tasks", "warnings", "reservoir", "tray" or "daily"
     * @param place of the reservoir or tray in the scenario
     * @throws IllegalArgumentException when there is no such file
     */
    String csv(String kind, int place) {
        byte[] csv =
                switch (kind) {
                    case "tasks" -> CsvFiles.tasks(tasks());
                    case "warnings" -> CsvFiles.warnings(warnings());
                    case "reservoir" ->
                            CsvFiles.reservoir(trace(), trace().reservoirs().get(place));
                    case "tray" ->
                            CsvFiles.tray(
                                    trace(),
                                    trace().trays().get(place),
                                    forecast().ph().get(place));
                    case "daily" -> CsvFiles.day(trace(), trace().trays().get(place));
                    default -> throw new IllegalArgumentException("no file of " + kind);
                };
        return new String(csv, StandardCharsets.UTF_8);
    }
}
