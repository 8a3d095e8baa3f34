package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import tideless.cli.Tideless;
import tideless.scenario.FilesInMemory;
import tideless.words.VerdictWords;

/**
 * Makes the page of every shipped scenario, opens it from the disk in a browser without a window,
 * and holds what it shows against the command line: every hourly number and word to its last bit,
 * every file byte by byte. Then uses it as a person would ({@link CheckUse}).
 */
public final class CheckPage {
    private static final Path SCENARIOS = Path.of("scenarios");
    private static final long MOST_BYTES = 1_500_000;

    private final Path folder;
    private final Window browser;
    private final PrintStream out;
    private final List<String> wrong = new ArrayList<>();

    private CheckPage(Path folder, Window browser, PrintStream out) {
        this.folder = folder;
        this.browser = browser;
        this.out = out;
    }

    /**
     * Checks all.
     *
     * @param args the folder to work in; the browsers' commands with commas between them, of the
     *     Chromium or Firefox family; then maybe parts of names of scenarios, all where none
     */
    public static void main(String[] args)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        List<String> wanted = Arrays.asList(args).subList(2, args.length);
        List<String> wrong = new ArrayList<>();
        for (String command : args[1].split(",")) {
            if (command.contains("firefox")) {
                try (Window browser = Firefox.begin(command)) {
                    System.out.println(command);
                    wrong.addAll(new CheckPage(folder, browser, System.out).compareAll(wanted));
                }
            } else {
                try (Browser browser = Browser.begin(command)) {
                    System.out.println(command);
                    wrong.addAll(new CheckPage(folder, browser, System.out).compareAll(wanted));
                    wrong.addAll(new CheckUse(folder, browser, System.out).all());
                }
            }
        }
        if (!wrong.isEmpty()) {
            wrong.forEach(System.out::println);
            throw new IllegalStateException(wrong.size() + " things are wrong");
        }
    }

    private List<String> compareAll(List<String> wanted)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        for (Path scenario : scenarios()) {
            if (wanted.isEmpty() || wanted.stream().anyMatch(scenario.toString()::contains)) {
                compare(scenario);
            }
        }
        return wrong;
    }

    private static List<Path> scenarios() throws IOException {
        try (Stream<Path> files = Files.walk(SCENARIOS)) {
            return files.filter(file -> file.toString().endsWith(".toml")).sorted().toList();
        }
    }

    private void hold(boolean isRight, String otherwise) {
        if (!isRight) {
            wrong.add(otherwise);
        }
    }

    static String command(String... words) {
        StringWriter said = new StringWriter();
        StringWriter complained = new StringWriter();
        PrintWriter err = new PrintWriter(complained);
        if (Tideless.execute(new PrintWriter(said), err, words) != 0) {
            throw new IllegalStateException(String.join(" ", words) + ": " + complained);
        }
        return said.toString();
    }

    /** The page of a scenario, made in a folder. */
    static Path page(Path folder, Path scenario) {
        Path page = folder.resolve("page.html");
        command("page", scenario.toString(), "-o", page.toString());
        return page;
    }

    private void open(Path page) throws InterruptedException, ExecutionException, TimeoutException {
        browser.open(page.toUri().toString());
        browser.evaluate("bench.ready");
    }

    private JsonNode asked(String call, String given)
            throws InterruptedException, ExecutionException, TimeoutException {
        return browser.evaluate("bench.ask('" + call + "', " + given + ")");
    }

    // The same as the command line.

    private void compare(Path scenario)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        Path page = page(folder, scenario);
        long bytes = Files.size(page);
        hold(bytes < MOST_BYTES, scenario + ": the page has " + bytes + " bytes");
        open(page);
        Path files = folder.resolve("files");
        delete(files);
        String said =
                command(
                        "run",
                        "--all",
                        scenario.toString(),
                        "-o",
                        files.toString(),
                        "--members",
                        "1",
                        "--no-plots");
        JsonNode rig = browser.evaluate("bench.shown.rig");
        compareFiles(scenario, files, rig);
        String table = asked("table", "{width: 100}").asText();
        hold(said.startsWith(table), scenario + ": the table differs");
        compareShown(scenario, files);
        Comparison bits = Comparison.of(here(scenario), asked("everyBit", "{}").asText());
        hold(bits.bytesDiffer() == 0, scenario + ": " + bits.firstDifference().orElse(""));
        hold(browser.complaints().isEmpty(), scenario + ": " + browser.complaints());
        List<String> away =
                browser.requests().stream()
                        .filter(
                                r ->
                                        !r.equals(page.toUri().toString())
                                                && !r.matches("(?s)(blob|data):.*"))
                        .toList();
        hold(away.isEmpty(), scenario + ": asked for " + away);
        double paint =
                browser.evaluate("performance.getEntriesByType('paint').at(-1).startTime")
                        .asDouble();
        double ready = browser.evaluate("bench.readyMs").asDouble();
        out.printf(
                Locale.ROOT,
                "%-44s page %,d bytes; %,d numbers, %d differ; %,d bytes, %d differ; first paint"
                        + " %.0f ms, shown after %.0f ms%n",
                scenario,
                bytes,
                bits.numbers(),
                bits.numbersDiffer(),
                bits.bytes(),
                bits.bytesDiffer(),
                paint,
                ready);
    }

    private void compareFiles(Path scenario, Path files, JsonNode rig)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        compareFile(scenario, files.resolve("tasks.csv"), "tasks", 0);
        compareFile(scenario, files.resolve("warnings.csv"), "warnings", 0);
        for (int i = 0; i < rig.path("trays").size(); i++) {
            String name = rig.path("trays").get(i).path("name").asText();
            compareFile(scenario, files.resolve("tray-" + name + ".csv"), "tray", i);
            compareFile(scenario, files.resolve("daily-" + name + ".csv"), "daily", i);
        }
        for (int i = 0; i < rig.path("reservoirs").size(); i++) {
            String name = rig.path("reservoirs").get(i).path("name").asText();
            compareFile(scenario, files.resolve("reservoir-" + name + ".csv"), "reservoir", i);
        }
    }

    private void compareFile(Path scenario, Path file, String kind, int place)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        String csv = asked("csv", "{kind: '" + kind + "', place: " + place + "}").asText();
        hold(csv.equals(Files.readString(file)), scenario + ": " + file.getFileName() + " differs");
    }

    /** What stands on the page itself, against the files. */
    private void compareShown(Path scenario, Path files)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        String texts =
                "[...document.querySelectorAll('#%s')].map(e => e.dataset.text || e.textContent)";
        JsonNode tasks = browser.evaluate(texts.formatted("tasks li[data-text]"));
        JsonNode warnings = browser.evaluate(texts.formatted("warnings li"));
        hold(lastColumn(files.resolve("tasks.csv")).equals(list(tasks)), scenario + ": tasks");
        List<String> sorted = new ArrayList<>(lastColumn(files.resolve("warnings.csv")));
        List<String> shown = new ArrayList<>(list(warnings));
        sorted.sort(null);
        shown.sort(null);
        hold(sorted.equals(shown), scenario + ": warnings " + sorted + " / " + shown);
        JsonNode verdict = browser.evaluate(texts.formatted("verdict p"));
        Session session = session(scenario);
        List<String> lines = VerdictWords.lines(session.forecast());
        hold(lines.equals(list(verdict)), scenario + ": verdict " + lines + " / " + verdict);
    }

    private static List<String> list(JsonNode texts) {
        List<String> list = new ArrayList<>();
        texts.forEach(text -> list.add(text.asText()));
        return list;
    }

    private static List<String> lastColumn(Path csv) throws IOException {
        List<String> texts = new ArrayList<>();
        try (var reader = CsvReader.builder().ofNamedCsvRecord(Files.readString(csv))) {
            reader.forEach(row -> texts.add(row.getField("text")));
        }
        return texts;
    }

    private static Session session(Path scenario) {
        Session session = new Session(1);
        FilesInMemory.of(scenario).texts().forEach(session::file);
        String text = FilesInMemory.of(scenario).texts().get("");
        session.call(String.valueOf(scenario.getFileName()));
        List<String> faults = session.read(text);
        if (!faults.isEmpty()) {
            throw new IllegalStateException(scenario + ": " + faults);
        }
        session.run(1);
        return session;
    }

    private static String here(Path scenario) {
        return EveryBit.of(session(scenario).forecast());
    }

    static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> files = Files.walk(folder)) {
                files.sorted((a, b) -> b.compareTo(a)).map(Path::toFile).forEach(File::delete);
            }
        }
    }
}
