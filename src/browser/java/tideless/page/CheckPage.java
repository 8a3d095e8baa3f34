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
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import tideless.cli.Tideless;
import tideless.scenario.FilesInMemory;
import tideless.words.TaskWords;

/**
 * Makes the page of every shipped scenario, opens it from the disk in a browser without a window,
 * and holds what it shows against the command line: every hourly number and word to its last bit,
 * every file byte by byte. Then uses it as a person would ({@link CheckUse}).
 */
public final class CheckPage extends Check {
    private static final long MOST_BYTES = 1_500_000;

    private final List<String> wanted;

    private CheckPage(Path folder, Window window, PrintStream out, List<String> wanted) {
        super(folder, window, out);
        this.wanted = wanted;
    }

    /**
     * Checks all.
     *
     * @param args the folder to work in; the browsers' commands with commas between them, of the
     *     Chromium or Firefox family; then maybe parts of names of scenarios and checks, all where
     *     none
     */
    public static void main(String[] args)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        List<String> wanted = Arrays.asList(args).subList(2, args.length);
        List<String> wrong = new ArrayList<>();
        for (String command : args[1].split(",")) {
            System.out.println(command);
            try (Window window =
                    command.contains("firefox") ? Firefox.begin(command) : Browser.begin(command)) {
                for (Check check : checks(folder, window, wanted)) {
                    check.all().forEach(one -> wrong.add(command + ": " + one));
                }
            }
        }
        if (!wrong.isEmpty()) {
            wrong.forEach(System.out::println);
            throw new IllegalStateException(wrong.size() + " things are wrong");
        }
    }

    /** All of them, or those that are asked for by parts of their names and of scenarios'. */
    private static List<Check> checks(Path folder, Window window, List<String> wanted) {
        List<Check> checks = new ArrayList<>();
        checks.add(new CheckAccess(folder, window, System.out));
        checks.add(new CheckLearning(folder, window, System.out));
        checks.add(new CheckLooking(folder, window, System.out));
        checks.add(new CheckOwnText(folder, window, System.out));
        checks.add(new CheckUse(folder, window, System.out));
        checks.removeIf(
                check ->
                        !wanted.isEmpty()
                                && wanted.stream()
                                        .noneMatch(check.getClass().getSimpleName()::contains));
        checks.add(0, new CheckPage(folder, window, System.out, wanted));
        return checks;
    }

    @Override
    List<String> all()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        for (Path scenario : scenarios()) {
            if (wanted.isEmpty() || wanted.stream().anyMatch(scenario.toString()::contains)) {
                compare(scenario);
            }
        }
        return wrong();
    }

    private static List<Path> scenarios() throws IOException {
        try (Stream<Path> files = Files.walk(SCENARIOS)) {
            return files.filter(file -> file.toString().endsWith(".toml")).sorted().toList();
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

    private JsonNode asked(String call, String given)
            throws InterruptedException, ExecutionException, TimeoutException {
        return ask("bench.ask('" + call + "', " + given + ")");
    }

    // The same as the command line.

    private void compare(Path scenario)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        Path page = page(folder, scenario);
        long bytes = Files.size(page);
        hold(bytes < MOST_BYTES, scenario + ": the page has " + bytes + " bytes");
        window.open(page.toUri().toString());
        ask("bench.ready");
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
        JsonNode rig = ask("bench.shown.rig");
        compareFiles(scenario, files, rig);
        String table = asked("table", "{width: 100}").asText();
        hold(said.startsWith(table), scenario + ": the table differs");
        compareShown(scenario, files);
        Comparison bits = Comparison.of(here(scenario), asked("everyBit", "{}").asText());
        hold(bits.bytesDiffer() == 0, scenario + ": " + bits.firstDifference().orElse(""));
        hold(window.complaints().isEmpty(), scenario + ": " + window.complaints());
        List<String> away =
                window.requests().stream()
                        .filter(
                                r ->
                                        !r.equals(page.toUri().toString())
                                                && !r.matches("(?s)(blob|data):.*"))
                        .toList();
        hold(away.isEmpty(), scenario + ": asked for " + away);
        double paint = ask("performance.getEntriesByType('paint').at(-1).startTime").asDouble();
        double ready = ask("bench.readyMs").asDouble();
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

    /**
     * What stands on the page itself: what is to do, as on the command line's screen, the warnings
     * and the verdict. All tasks, those done too, stand in tasks.csv ({@link #compareFiles}).
     */
    private void compareShown(Path scenario, Path files)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        String texts =
                "[...document.querySelectorAll('#%s')].map(e => e.dataset.text || e.textContent)";
        JsonNode tasks = ask(texts.formatted("tasks li[data-text]"));
        JsonNode warnings = ask(texts.formatted("warnings li"));
        Session session = session(scenario, 1);
        List<String> toDo = session.forecast().toDo().stream().map(TaskWords::text).toList();
        hold(toDo.equals(list(tasks)), scenario + ": tasks " + toDo + " / " + tasks);
        List<String> sorted = new ArrayList<>(lastColumn(files.resolve("warnings.csv")));
        List<String> shown = new ArrayList<>(list(warnings));
        sorted.sort(null);
        shown.sort(null);
        hold(sorted.equals(shown), scenario + ": warnings " + sorted + " / " + shown);
        JsonNode verdict = ask(texts.formatted("verdict p"));
        List<String> lines = Shown.verdict(session.forecast());
        hold(lines.equals(list(verdict)), scenario + ": verdict " + lines + " / " + verdict);
        List<String> looks = new ArrayList<>();
        ((List<?>) session.result().get("looks"))
                .forEach(look -> looks.add(String.valueOf(((Map<?, ?>) look).get("text"))));
        JsonNode looked = ask(texts.formatted("looks li"));
        hold(looks.equals(list(looked)), scenario + ": looks " + looks + " / " + looked);
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

    /** What a page of a scenario holds once it has run, of so many rigs. */
    static Session session(Path scenario, int members) {
        Session session = new Session(1);
        FilesInMemory.of(scenario).texts().forEach(session::file);
        String text = FilesInMemory.of(scenario).texts().get("");
        session.call(String.valueOf(scenario.getFileName()));
        List<String> faults = session.read(text);
        if (!faults.isEmpty()) {
            throw new IllegalStateException(scenario + ": " + faults);
        }
        session.run(members);
        return session;
    }

    private static String here(Path scenario) {
        return EveryBit.of(session(scenario, 1).forecast());
    }

    static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> files = Files.walk(folder)) {
                files.sorted((a, b) -> b.compareTo(a)).map(Path::toFile).forEach(File::delete);
            }
        }
    }
}
