package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;

/**
 * Uses the page as a person would: moves every slider to its ends, saves and opens, goes through a
 * lesson by mouse and by keys, hands over what is broken, huge or long; tells how long things take.
 */
final class CheckUse {
    private static final Path SCENARIOS = Path.of("scenarios");
    private static final Path DEMO = SCENARIOS.resolve("science-room-bench.toml");

    /** A page that does nothing for so long has stopped, to whoever waits; assumed. */
    private static final double MOST_FREEZE_MS = 1000;

    private final Path folder;
    private final Browser browser;
    private final PrintStream out;
    private final List<String> wrong = new ArrayList<>();

    CheckUse(Path folder, Browser browser, PrintStream out) {
        this.folder = folder;
        this.browser = browser;
        this.out = out;
    }

    /** Does it all; gives what is wrong. */
    List<String> all()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        move();
        saved();
        lessonByMouse();
        lessonByKeys();
        strain();
        return wrong;
    }

    private void hold(boolean isRight, String otherwise) {
        if (!isRight) {
            wrong.add(otherwise);
        }
    }

    private void open(Path page) throws InterruptedException, ExecutionException, TimeoutException {
        browser.open(page.toUri().toString());
        browser.evaluate("bench.ready");
    }

    private Path page(Path scenario) {
        return CheckPage.page(folder, scenario);
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
                browser.evaluate("bench.text = bench.firstText");
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

    // In and out.

    private void saved()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(page(DEMO));
        browser.evaluate("bench.slide('feed.ec', [1.4])");
        browser.evaluate("bench.settled()");
        Path folderOfSaved = folder.resolve("saved");
        CheckPage.delete(folderOfSaved);
        Files.createDirectories(folderOfSaved);
        browser.saveInto(folderOfSaved);
        for (String id : List.of("save-text", "save-csv", "save-png")) {
            browser.evaluate("document.getElementById('" + id + "').click()");
        }
        for (String name : List.of("science-room-bench.toml", "tasks.csv", "curves.png")) {
            Path file = folderOfSaved.resolve(name);
            for (int tries = 0; tries < 100 && !Files.exists(file); tries++) {
                Thread.sleep(100);
            }
            hold(Files.exists(file), name + " was not saved");
        }
        Path toml = folderOfSaved.resolve("science-room-bench.toml");
        String moved = Files.readString(DEMO).replace("\"1.6 mS/cm\"", "\"1.4 mS/cm\"");
        hold(Files.readString(toml).equals(moved), "the scenario saved is not the one moved");
        String[] run = {"run", toml.toString(), "-o", folder.resolve("files").toString()};
        CheckPage.command(run[0], run[1], run[2], run[3], "--members", "1", "--no-plots");
        hold(
                Files.readString(folder.resolve("files/tasks.csv"))
                        .equals(Files.readString(folderOfSaved.resolve("tasks.csv"))),
                "the tasks saved are not those of the scenario saved");
        hold(browser.complaints().isEmpty(), "saving: " + browser.complaints());
        weatherDropped();
        out.println("scenario, CSV and PNG saved; weather taken in");
    }

    /** A scenario opened without its weather says so, and runs when the weather comes. */
    private void weatherDropped()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        Path house = SCENARIOS.resolve("glasshouse-tomato-trough.toml");
        Path weather = SCENARIOS.resolve("weather/typical-year-45n-8e.csv");
        browser.evaluate("bench.open([" + file("house.toml", house) + "])");
        String said = browser.evaluate("document.getElementById('faults').textContent").asText();
        hold(said.contains("house.toml:15:8: climate.file"), "without weather: " + said);
        browser.evaluate("bench.open([" + file(weather.getFileName().toString(), weather) + "])");
        String verdict = browser.evaluate("document.getElementById('title').textContent").asText();
        hold(verdict.contains("Tomato"), "with weather: " + verdict);
    }

    private static String file(String name, Path path) throws IOException {
        String base64 = Base64.getEncoder().encodeToString(Files.readAllBytes(path));
        return "new File([Uint8Array.from(atob('%s'), c => c.charCodeAt(0))], '%s')"
                .formatted(base64, name);
    }

    // Learning.

    private void lessonByMouse()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        browser.size(1366, 768, 1);
        open(page(DEMO));
        browser.evaluate("bench.lesson.ready");
        browser.evaluate(
                "document.querySelector('#lesson canvas').scrollIntoView({block: 'center'})");
        JsonNode box =
                browser.evaluate(
                        "(({x, y, width, height}) => ({x, y, width, height}))(document.querySelector("
                                + "'#lesson canvas').getBoundingClientRect())");
        double left = box.path("x").asDouble() + 0.1 * box.path("width").asDouble();
        double y = box.path("y").asDouble() + 0.6 * box.path("height").asDouble();
        browser.mouse("mousePressed", left, y);
        for (int i = 1; i <= 20; i++) {
            browser.mouse("mouseMoved", left + 0.04 * i * box.path("width").asDouble(), y + i);
        }
        browser.mouse("mouseReleased", left, y);
        click("#lesson button:nth-of-type(1)");
        tellLesson("by mouse alone");
    }

    private void click(String selector)
            throws InterruptedException, ExecutionException, TimeoutException {
        JsonNode at =
                browser.evaluate(
                        "(e => { e.scrollIntoView({block: 'center'}); const b ="
                                + " e.getBoundingClientRect(); return [b.x + b.width / 2, b.y +"
                                + " b.height / 2]; })(document.querySelector(\""
                                + selector
                                + "\"))");
        browser.mouse("mousePressed", at.get(0).asDouble(), at.get(1).asDouble());
        browser.mouse("mouseReleased", at.get(0).asDouble(), at.get(1).asDouble());
    }

    private void lessonByKeys()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(page(DEMO));
        browser.evaluate("bench.lesson.ready");
        hold(tabTo("e.id === 'lesson-choice'"), "no key reaches the lessons");
        browser.key(Browser.Key.DOWN);
        browser.evaluate("bench.lesson.ready");
        String chosen = browser.evaluate("bench.lesson.lesson.id").asText();
        hold(chosen.equals("meter"), "the second lesson chosen by keys is " + chosen);
        hold(tabTo("e.tagName === 'SUMMARY' && /guess/.test(e.textContent)"), "no guess by keys");
        browser.key(Browser.Key.ENTER);
        hold(tabTo("e.id === 'guess-5'"), "no key reaches the guess");
        for (int i = 0; i < 5; i++) {
            browser.key(Browser.Key.UP);
        }
        hold(tabTo("e.textContent === 'Run it'"), "no key reaches the run");
        browser.key(Browser.Key.ENTER);
        tellLesson("by keys alone");
    }

    private boolean tabTo(String what)
            throws InterruptedException, ExecutionException, TimeoutException {
        for (int tabs = 0; tabs < 120; tabs++) {
            browser.key(Browser.Key.TAB);
            if (browser.evaluate("(e => " + what + ")(document.activeElement)").asBoolean()) {
                return true;
            }
        }
        return false;
    }

    private void tellLesson(String how)
            throws InterruptedException, ExecutionException, TimeoutException {
        String answer = "document.querySelector('#lesson div[role=status]').textContent";
        for (int tries = 0;
                tries < 200 && !browser.evaluate(answer).asText().contains("end");
                tries++) {
            Thread.sleep(100);
        }
        String said = browser.evaluate(answer).asText();
        hold(said.contains("by your guess"), how + ": " + said);
        hold(browser.complaints().isEmpty(), how + ": " + browser.complaints());
        out.println("lesson " + how + ": " + said);
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
}
