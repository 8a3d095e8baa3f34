package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
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
 * every file byte by byte. Then moves, breaks and loads it, and tells how long things take.
 */
public final class CheckPage {
    private static final Path SCENARIOS = Path.of("scenarios");
    private static final Path DEMO = SCENARIOS.resolve("science-room-bench.toml");

    /** A page that does nothing for so long has stopped, to whoever waits; assumed. */
    private static final double MOST_FREEZE_MS = 1000;

    private static final long MOST_BYTES = 1_500_000;

    private final Path folder;
    private final Browser browser;
    private final PrintStream out;
    private final List<String> wrong = new ArrayList<>();

    private CheckPage(Path folder, Browser browser, PrintStream out) {
        this.folder = folder;
        this.browser = browser;
        this.out = out;
    }

    /**
     * Checks all.
     *
     * @param args the folder to work in, and the browser's command: one of the Chromium family that
     *     knows WebAssembly with garbage collection; then maybe names of scenarios, all where none
     */
    public static void main(String[] args)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        List<String> wanted = Arrays.asList(args).subList(2, args.length);
        try (Browser browser = Browser.begin(args[1])) {
            CheckPage check = new CheckPage(folder, browser, System.out);
            for (Path scenario : scenarios()) {
                if (wanted.isEmpty() || wanted.stream().anyMatch(scenario.toString()::contains)) {
                    check.compare(scenario);
                }
            }
            check.move();
            check.strain();
            if (!check.wrong.isEmpty()) {
                check.wrong.forEach(System.out::println);
                throw new IllegalStateException(check.wrong.size() + " things are wrong");
            }
        }
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

    private static String command(String... words) {
        StringWriter said = new StringWriter();
        StringWriter complained = new StringWriter();
        PrintWriter err = new PrintWriter(complained);
        if (Tideless.execute(new PrintWriter(said), err, words) != 0) {
            throw new IllegalStateException(String.join(" ", words) + ": " + complained);
        }
        return said.toString();
    }

    private Path page(Path scenario) {
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
        Path page = page(scenario);
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
                        .filter(r -> !r.equals(page.toUri().toString()) && !r.startsWith("blob:"))
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

    // Moving.

    private void move()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(page(DEMO));
        for (int warm = 0; warm < 2; warm++) {
            String slide =
                    "bench.slide('feed.ec', Array.from({length: 30}, (_, i) => 1.2 + 0.02 * i))";
            double cpuMs = browser.cpuMs();
            JsonNode times = browser.evaluate(slide);
            cpuMs = browser.cpuMs() - cpuMs;
            List<Double> engine = new ArrayList<>();
            List<Double> drawn = new ArrayList<>();
            times.forEach(t -> engine.add(t.path("engine").asDouble()));
            times.forEach(t -> drawn.add(t.path("drawn").asDouble()));
            engine.sort(null);
            drawn.sort(null);
            out.printf(
                    Locale.ROOT,
                    "a move of a slider: season there after %.0f ms (median of %d; most %.0f), on"
                            + " the screen after %.0f ms (most %.0f); %.0f ms of a core each%n",
                    engine.get(engine.size() / 2),
                    engine.size(),
                    engine.get(engine.size() - 1),
                    drawn.get(drawn.size() / 2),
                    drawn.get(drawn.size() - 1),
                    cpuMs / times.size());
        }
        hold(browser.complaints().isEmpty(), "moving: " + browser.complaints());
        int ends = 0;
        int told = 0;
        for (JsonNode knob : browser.evaluate("bench.shown.rig.knobs")) {
            List<String> values = new ArrayList<>();
            knob.path("choices").fieldNames().forEachRemaining(values::add);
            if (values.isEmpty()) {
                values.add(knob.path("low").asText());
                values.add(knob.path("high").asText());
            }
            for (String value : values) {
                open(folder.resolve("page.html"));
                String to =
                        "bench.slide('%s', [%s])"
                                .formatted(knob.path("id").asText(), quoted(value));
                browser.evaluate(to);
                String faults =
                        browser.evaluate("document.getElementById('faults').textContent").asText();
                ends++;
                told += faults.contains("allowed: ") ? 1 : 0;
                hold(
                        faults.isEmpty()
                                || faults.contains("allowed: ")
                                || faults.startsWith("Notes"),
                        knob + " at " + value + ": " + faults);
                hold(browser.complaints().isEmpty(), knob + ": " + browser.complaints());
            }
        }
        out.printf("%d ends of sliders tried; %d cannot run and say so%n", ends, told);
    }

    private static String quoted(String text) {
        return "'" + text.replace("\\", "\\\\").replace("'", "\\'").replace("\n", "\\n") + "'";
    }

    // Straining.

    private void strain()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        String demo = Files.readString(DEMO);
        take("broken", demo.replace("crop = \"basil\"", "crop = \"bazil\""), "toml:");
        take("no TOML", "]]]]", "toml:1:");
        take("an empty text", "", "allowed: ");
        take("a huge text", "# " + "x".repeat(5_000_000), "1 MB");
        take("a huge list", "a = [" + "1,".repeat(400_000) + "1]", "allowed: ");
        take("deep brackets", "a = " + "[".repeat(50_000), "toml");
        take("400 days", demo.replace("\"70 days\"", "\"400 days\""), "");
        take("40 trays", manyTrays(demo), "");
    }

    private static String manyTrays(String demo) {
        int from = demo.indexOf("[tray.basil]");
        int to = demo.indexOf("[tray.pak-choi]");
        StringBuilder text = new StringBuilder(demo);
        for (int i = 0; i < 37; i++) {
            text.append(demo.substring(from, to).replace("tray.basil", "tray.basil-" + i));
        }
        return text.toString();
    }

    /** Hands over a text as if it were opened, and watches how long the page stands still. */
    private void take(String what, String text, String fault)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(folder.resolve("page.html"));
        browser.evaluate(
                """
                bench.stood = 0; bench.signs = 0;
                (() => { let last = performance.now();
                  const tick = () => { const now = performance.now();
                    bench.stood = Math.max(bench.stood, now - last); last = now;
                    bench.signs += document.getElementById('busy').textContent ? 1 : 0;
                    setTimeout(tick, 5); };
                  tick(); })()
                """);
        String base64 = Base64.getEncoder().encodeToString(text.getBytes(StandardCharsets.UTF_8));
        double tookMs =
                browser.evaluate(
                                "(async () => { const text = new TextDecoder().decode(Uint8Array.from(atob('"
                                        + base64
                                        + "'), c => c.charCodeAt(0))); await new Promise(r =>"
                                        + " setTimeout(r, 100)); bench.stood = 0; const from ="
                                        + " performance.now(); await bench.open([new File([text],"
                                        + " 'other.toml')], true); return performance.now() - from; })()")
                        .asDouble();
        double stood = browser.evaluate("bench.stood").asDouble();
        int signs = browser.evaluate("bench.signs").asInt();
        String said = browser.evaluate("document.getElementById('faults').textContent").asText();
        hold(stood < MOST_FREEZE_MS, what + ": stood still for " + stood + " ms");
        hold(tookMs < MOST_FREEZE_MS || signs > 0, what + ": no sign for " + tookMs + " ms");
        hold(said.contains(fault), what + ": said " + said);
        hold(!fault.isEmpty() || !said.contains("allowed: "), what + ": said " + said);
        hold(browser.complaints().isEmpty(), what + ": " + browser.complaints());
        out.printf(
                Locale.ROOT,
                "%s: answered after %.0f ms, page stood still for %.0f ms at most; %s%n",
                what,
                tookMs,
                stood,
                said.substring(0, Math.min(160, said.length())).replace('\n', ' '));
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> files = Files.walk(folder)) {
                files.sorted((a, b) -> b.compareTo(a)).map(Path::toFile).forEach(File::delete);
            }
        }
    }
}
