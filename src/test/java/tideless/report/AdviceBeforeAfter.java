package tideless.report;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import tideless.advice.Task;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.study.Obeyed;
import tideless.words.WarningWords;

/**
 * Writes docs/advice-before-after.md: what the advice asked of a grower at first, what it asks now,
 * and what it still asks of one who did all of it.
 */
final class AdviceBeforeAfter {
    private static final Path PAGE = Path.of("docs", "advice-before-after.md");
    private static final Path BEFORE =
            Path.of("src", "test", "resources", "tideless", "report", "advice-before.csv");
    private static final int WIDTH = 100;

    private AdviceBeforeAfter() {}

    public static void main(String[] args) throws IOException {
        Files.writeString(PAGE, page(), StandardCharsets.UTF_8);
    }

    private static String page() throws IOException {
        Map<String, String[]> before = new TreeMap<>();
        for (String row : Files.readAllLines(BEFORE, StandardCharsets.UTF_8)) {
            if (!row.startsWith("#") && !row.startsWith("scenario")) {
                String[] cells = row.split(",");
                before.put(cells[0], cells);
            }
        }
        StringBuilder text = new StringBuilder();
        text.append("# The advice before and after\n\n");
        text.append(
                "Written by `AdviceBeforeAfter.main` of the tests, from the project's folder; ");
        text.append(
                "made again whenever numbers move.\n*Before* is the advice as it stood before it ");
        text.append(
                "held figures (its counts are kept in the tests' resources), *now* is today's,\n");
        text.append(
                "*obeyed* a second run that does what today's first run advised: it refills when ");
        text.append("it would not last, takes the larger\nreservoir, flushes where told. Flushes ");
        text.append("count fresh solution too; lines are those on a screen of 100 columns.\n\n");
        text.append("| scenario | tasks | flushes | drained, L | warnings | lines |\n");
        text.append("| --- | --- | --- | --- | --- | --- |\n");
        StringBuilder left = new StringBuilder();
        for (Path path : scenarios()) {
            String name = Path.of("scenarios").relativize(path).toString().replace('\\', '/');
            if (!(ScenarioReader.read(path) instanceof Reading.Good good)) {
                throw new IllegalStateException(path + " has faults");
            }
            Forecast now = Forecasts.of(good.scenario(), 1);
            Forecast obeyed = Forecasts.of(Obeyed.of(good.scenario(), now.advice()), 1);
            text.append("| ").append(name);
            String[] was = before.getOrDefault(name, new String[] {name, "", "", "", "", ""});
            int[] order = {1, 2, 4, 3, 5};
            String[] is = counts(now);
            String[] then = counts(obeyed);
            for (int i = 0; i < order.length; i++) {
                String old = was[order[i]].isEmpty() ? "-" : was[order[i]];
                text.append(" | ").append(old).append(", now ").append(is[i]);
                text.append(", obeyed ").append(then[i]);
            }
            text.append(" |\n");
            left.append("\n## ").append(name).append("\n\n");
            if (now.advice().warnings().isEmpty()) {
                left.append("No warnings.\n");
            }
            now.advice()
                    .warnings()
                    .forEach(w -> left.append("- ").append(WarningWords.text(w)).append('\n'));
        }
        text.append("\n# What is still warned of, and why\n\n");
        text.append(
                "Each with its figure, its limit and its cause: the sentence that defends it.\n");
        return text.append(left).toString();
    }

    private static List<Path> scenarios() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("scenarios"))) {
            return files.filter(p -> p.toString().endsWith(".toml")).sorted().toList();
        }
    }

    /** Tasks, flushes, litres drained, warnings, lines. */
    private static String[] counts(Forecast forecast) {
        StringWriter table = new StringWriter();
        ForecastTable.print(new PrintWriter(table), forecast, false, WIDTH);
        long flushes = 0;
        double drained = 0;
        for (Task task : forecast.advice().tasks()) {
            if (task.kind() == Task.Kind.FLUSH || task.kind() == Task.Kind.FRESH_SOLUTION) {
                flushes++;
                drained += task.drainLitres();
            }
        }
        return new String[] {
            Integer.toString(forecast.advice().tasks().size()),
            Long.toString(flushes),
            String.format(Locale.ROOT, "%.1f", drained),
            Integer.toString(forecast.advice().warnings().size()),
            Long.toString(table.toString().lines().count())
        };
    }
}
