package tideless.sim;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** What the root zone makes of every shipped scenario and lesson, a line a tray. */
final class SeasonFigures {
    /** Head of the lines. */
    static final String HEAD =
            "scenario,tray,g a plant,fruit g,lowest mm,highest EC,highest pH,h stranded,h wilted,h"
                    + " short of air";

    private SeasonFigures() {}

    /** Prints the lines as CSV. */
    public static void main(String[] args) throws IOException {
        System.out.println(HEAD);
        lines().forEach(System.out::println);
    }

    static List<String> lines() throws IOException {
        List<Path> files = new ArrayList<>();
        for (String folder : new String[] {"scenarios", "scenarios/lessons"}) {
            try (Stream<Path> all = Files.list(Path.of(folder))) {
                all.filter(f -> f.toString().endsWith(".toml")).sorted().forEach(files::add);
            }
        }
        List<String> lines = new ArrayList<>();
        for (Path file : files) {
            Trace trace = Simulation.run(((Reading.Good) ScenarioReader.read(file)).scenario());
            for (TrayTrace tray : trace.trays()) {
                lines.add(line(file, trace, tray));
            }
        }
        return lines;
    }

    private static String line(Path file, Trace trace, TrayTrace tray) {
        int last = trace.hours() - 1;
        return String.format(
                Locale.ROOT,
                "%s,%s,%.0f,%.0f,%.1f,%.2f,%.2f,%.0f,%.0f,%.0f",
                file.getFileName().toString().replace(".toml", ""),
                tray.tray().name(),
                tray.freshG().at(last),
                tray.fruitFreshG().at(last),
                1000 * tray.levelM().min(0, last + 1),
                most(tray.ecMsPerCm(), last),
                most(tray.ph(), last),
                hours(trace, tray, "STRANDED", "REWETTED"),
                hours(trace, tray, "WILTED", "RECOVERED"),
                hours(trace, tray, "SHORT_OF_AIR", "AIR_ENOUGH"));
    }

    private static double most(Series series, int last) {
        double most = Double.NaN;
        for (int h = 0; h <= last; h++) {
            double value = series.at(h);
            most = Double.isNaN(value) || value <= most ? most : value;
        }
        return most;
    }

    // From one kind of event to the next that ends it, death, harvest or the end of the run.
    private static double hours(Trace trace, TrayTrace tray, String begins, String ends) {
        double sumS = 0;
        double fromS = Double.NaN;
        for (Event event : trace.events()) {
            if (!event.vessel().equals(tray.tray().id())) {
                continue;
            }
            String kind = event.kind().name();
            boolean over = kind.equals(ends) || kind.equals("DIED") || kind.equals("HARVEST");
            if (kind.equals(begins) && Double.isNaN(fromS)) {
                fromS = event.atS();
            } else if (over && !Double.isNaN(fromS)) {
                sumS += event.atS() - fromS;
                fromS = Double.NaN;
            }
        }
        return (sumS + (Double.isNaN(fromS) ? 0 : trace.hours() * 3600.0 - fromS)) / 3600;
    }
}
