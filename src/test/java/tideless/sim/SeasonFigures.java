package tideless.sim;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/**
 * What the root zone makes of every shipped scenario and lesson, a line a tray, beside what stood
 * before it: the page {@code docs/seasons-before-after.md}.
 */
public final class SeasonFigures {
    /** Head of the lines. */
    static final String HEAD =
            "scenario,tray,g a plant,fruit g,lowest mm,highest EC,highest pH,h stranded,h wilted,h"
                    + " short of air";

    static final Path PAGE = Path.of("docs", "seasons-before-after.md");

    private static final String BEFORE = "/tideless/sim/season-figures-before.csv";

    private SeasonFigures() {}

    /** Writes the page, from the project's folder. */
    public static void main(String[] args) throws IOException {
        Files.writeString(PAGE, page(lines()));
    }

    static String page(List<String> now) throws IOException {
        Map<String, String[]> before = before();
        StringBuilder text =
                new StringBuilder(
                        """
                        # Every shipped season before the root zone and after

                        Before: commit 26f77bb, whose roots knew no oxygen, no respired carbon dioxide, no salt or drought
                        within the hour (figures taken once, kept with the tests). After: this version, in which crops,
                        feeds and advice have moved as well (docs/CHANGELOG.md). Before -> after; "-" where there was none.
                        Masses are of one plant at the end, of the crop cut or all its fruit; level, EC and pH the extremes
                        of the whole run, spent solution after the harvest and a sealed tank's last litre included (in
                        brackets: while the crop lives; of less than a centimetre no pH is said). Made by
                        `SeasonFigures.main` of the tests.

                        | scenario | tray | g | fruit g | lowest mm | highest EC | highest pH | h stranded | h wilted | h short of air |
                        | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |
                        """);
        for (String line : now) {
            String[] after = line.split(",");
            String[] then = before.get(after[0] + "," + after[1]);
            text.append("| ").append(after[0]).append(" | ").append(after[1]);
            for (int i = 2; i < after.length; i++) {
                text.append(" | ").append(then == null ? "-" : then[i]);
                text.append(" -> ").append(after[i]);
            }
            text.append(" |\n");
        }
        return text.toString();
    }

    private static Map<String, String[]> before() throws IOException {
        Map<String, String[]> before = new HashMap<>();
        try (InputStream in = SeasonFigures.class.getResourceAsStream(BEFORE)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            text.lines()
                    .filter(line -> !line.startsWith("#") && !line.equals(HEAD))
                    .map(line -> line.split(","))
                    .forEach(cells -> before.put(cells[0] + "," + cells[1], cells));
        }
        return before;
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
                for (PlantingTrace planting : trace.plantings(tray)) {
                    lines.add(line(file, trace, planting));
                }
            }
        }
        return lines;
    }

    private static String line(Path file, Trace trace, PlantingTrace planting) {
        TrayTrace tray = planting.run();
        int first = planting.firstHour();
        int last = planting.endHour() - 1;
        int living = planting.lastHour();
        String crop = planting.crop().isEmpty() ? "" : " (" + planting.crop() + ")";
        return String.format(
                Locale.ROOT,
                "%s,%s,%.0f,%.0f,%.1f,%.2f (%.2f),%.2f (%.2f),%.0f,%.0f,%.0f",
                file.getFileName().toString().replace(".toml", ""),
                tray.tray().name() + crop,
                tray.freshG().at(crop.isEmpty() ? last : living),
                tray.fruitFreshG().at(crop.isEmpty() ? last : living),
                1000 * tray.levelM().min(first, last + 1),
                most(tray.ecMsPerCm(), first, last),
                most(tray.ecMsPerCm(), first, living),
                most(tray.ph(), first, last),
                most(tray.ph(), first, living),
                hours(trace, planting, "STRANDED", "REWETTED"),
                hours(trace, planting, "WILTED", "RECOVERED"),
                hours(trace, planting, "SHORT_OF_AIR", "AIR_ENOUGH"));
    }

    private static double most(Series series, int first, int last) {
        double most = Double.NaN;
        for (int h = first; h <= last; h++) {
            double value = series.at(h);
            most = Double.isNaN(value) || value <= most ? most : value;
        }
        return most;
    }

    // From one kind of event to the next that ends it, death, harvest or the end of the run.
    private static double hours(Trace trace, PlantingTrace planting, String begins, String ends) {
        double sumS = 0;
        double fromS = Double.NaN;
        for (Event event : planting.events()) {
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
