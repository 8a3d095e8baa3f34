package tideless.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.HourlySeries;
import tideless.sim.ReservoirSeries;
import tideless.sim.ReservoirTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.study.Forecast;
import tideless.study.Forecasts;

/** What a page does from one keystroke to the next: takes files, reads, runs, and shows. */
final class Session {
    private static final String SCENARIO = "scenario.toml";

    private final Path folder;
    private final long seed;
    private Reading reading;
    private Forecast forecast;

    /**
     * @param folder where the files lie; in a browser it is in memory
     * @param seed of what is drawn
     */
    Session(Path folder, long seed) {
        this.folder = folder;
        this.seed = seed;
    }

    /**
     * Lays a file that a scenario names (weather, thirst, a crop) beside it.
     *
     * @param name as the scenario names it: a plain relative path
     * @throws IllegalArgumentException when the name leads out of the folder
     */
    void file(String name, String text) throws IOException {
        Path file = folder.resolve(name).normalize();
        if (!file.startsWith(folder.normalize()) || file.equals(folder.normalize())) {
            throw new IllegalArgumentException("not a name of a file beside a scenario: " + name);
        }
        makeFolder(file.getParent());
        Files.write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    /** A browser's own makes a folder that is there into a fault, so it is asked for first. */
    private static void makeFolder(Path wanted) throws IOException {
        if (wanted != null && !Files.isDirectory(wanted)) {
            makeFolder(wanted.getParent());
            Files.createDirectory(wanted);
        }
    }

    /**
     * Reads a scenario; what was run before is forgotten.
     *
     * @return its faults, one a line of the list, as the command line prints them; empty when there
     *     are none
     */
    List<String> read(String toml) throws IOException {
        file(SCENARIO, toml);
        forecast = null;
        reading = ScenarioReader.read(folder.resolve(SCENARIO));
        if (reading instanceof Reading.Good) {
            return List.of();
        }
        return reading instanceof Reading.Faulty faulty
                ? faulty.problems().stream().map(Object::toString).toList()
                : List.of(reading.toString());
    }

    /**
     * Runs what was read, and its twin.
     *
     * @throws IllegalStateException when nothing sound was read
     */
    void run() {
        if (!(reading instanceof Reading.Good good)) {
            throw new IllegalStateException("no sound scenario was read");
        }
        forecast = Forecasts.of(good.scenario(), seed);
    }

    /** What the run gave. */
    Forecast forecast() {
        if (forecast == null) {
            throw new IllegalStateException("nothing was run");
        }
        return forecast;
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
     * @param name of the column
     * @throws IllegalArgumentException when there is no such vessel or series
     */
    double[] series(VesselId vessel, String name) {
        Trace trace = forecast().trace();
        for (TrayTrace tray : trace.trays()) {
            if (tray.tray().id().equals(vessel)) {
                for (TraySeries kind : TraySeries.values()) {
                    if (kind.column().name().equals(name)) {
                        return inItsUnit(tray.of(kind), kind);
                    }
                }
            }
        }
        for (ReservoirTrace reservoir : trace.reservoirs()) {
            if (reservoir.reservoir().id().equals(vessel)) {
                for (ReservoirSeries kind : ReservoirSeries.values()) {
                    if (kind.column().name().equals(name)) {
                        return inItsUnit(reservoir.of(kind), kind);
                    }
                }
            }
        }
        throw new IllegalArgumentException("no series %s of %s".formatted(name, vessel));
    }

    private static double[] inItsUnit(Series series, HourlySeries kind) {
        double[] values = series.toArray();
        for (int i = 0; i < values.length; i++) {
            values[i] *= kind.column().factor();
        }
        return values;
    }
}
