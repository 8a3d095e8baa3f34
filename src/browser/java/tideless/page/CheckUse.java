package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import tideless.cli.Tideless;

/**
 * Uses the page as a person would: moves every slider to its ends, saves, opens and drops files,
 * asks how sure it is, hands over what is broken, huge or long; tells how long things take.
 */
final class CheckUse extends Check {
    /** A page that does nothing for so long has stopped, to whoever waits; assumed. */
    private static final double STOPPED_MS = 1000;

    /** Rigs that are run where somebody asks how sure a forecast is. */
    private static final int MEMBERS = 100;

    /** More rigs than are run before they are dropped. */
    private static final int FAR_TOO_MANY = 20_000;

    private Waits waits;
    private double mostStoodMs;
    private double mostMuteMs;

    CheckUse(Path folder, Window window, PrintStream out) {
        super(folder, window, out);
    }

    @Override
    List<String> all()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        try (Waits looking = Waits.of(window.running())) {
            waits = looking;
            move();
            ends();
            sure();
            saved();
            dropped();
            longText();
            strain();
        }
        out.printf(
                Locale.ROOT,
                "in all of it the page stood still for %.0f ms at most, and worked for %.0f ms at"
                        + " most before it said so%n",
                mostStoodMs,
                mostMuteMs);
        return wrong();
    }

    // Moving.

    private void move()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        for (int warm = 0; warm < 2; warm++) {
            String slide =
                    "bench.slide('feed.ec', Array.from({length: 30}, (_, i) => 1.2 + 0.02 * i))";
            double cpuMs = window.cpuMs();
            Map<String, Double> threads = waits.onCoreMs();
            JsonNode times = ask(slide);
            String most = most(threads, waits.onCoreMs(), times.size());
            cpuMs = window.cpuMs() - cpuMs;
            List<Double> engine = sorted(times, "engine");
            List<Double> drawn = sorted(times, "drawn");
            out.printf(
                    Locale.ROOT,
                    "a move of a slider: season there after %.0f ms (median of %d; least %.0f, most"
                            + " %.0f), on the screen after %.0f ms (least %.0f, most %.0f); %.0f ms"
                            + " of a core each, of these %s%n",
                    engine.get(engine.size() / 2),
                    engine.size(),
                    engine.get(0),
                    engine.get(engine.size() - 1),
                    drawn.get(drawn.size() / 2),
                    drawn.get(0),
                    drawn.get(drawn.size() - 1),
                    cpuMs / times.size(),
                    most);
        }
        ask("bench.settled()");
        String steps = words("step-said");
        hold(steps.contains("off by at most"), "the error of a glance is not stated: " + steps);
        out.println(steps);
        holdQuiet("moving");
    }

    /** The threads that did most between two looks, and what for each of so many moves. */
    private static String most(Map<String, Double> before, Map<String, Double> after, int moves) {
        return after.entrySet().stream()
                .map(e -> Map.entry(e.getKey(), e.getValue() - before.getOrDefault(e.getKey(), 0.)))
                .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
                .limit(4)
                .map(e -> String.format(Locale.ROOT, "%s %.0f", e.getKey(), e.getValue() / moves))
                .collect(Collectors.joining(", "));
    }

    private static List<Double> sorted(JsonNode times, String name) {
        List<Double> sorted = new ArrayList<>();
        times.forEach(t -> sorted.add(t.path(name).asDouble()));
        sorted.sort(null);
        return sorted;
    }

    private void ends()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        int ends = 0;
        int told = 0;
        watch();
        for (JsonNode knob : ask("bench.shown.rig.knobs")) {
            List<String> values = new ArrayList<>();
            knob.path("choices").fieldNames().forEachRemaining(values::add);
            if (values.isEmpty()) {
                values.add(knob.path("low").asText());
                values.add(knob.path("high").asText());
            }
            for (String value : values) {
                ask("bench.text = bench.firstText");
                ask(
                        "bench.slide("
                                + quoted(knob.path("id").asText())
                                + ", ["
                                + quoted(value)
                                + "])");
                String faults = words("faults");
                ends++;
                told += faults.contains("allowed: ") ? 1 : 0;
                hold(
                        faults.isEmpty() || faults.contains("allowed: "),
                        knob + " at " + value + ": " + faults);
                holdQuiet(knob.toString());
            }
        }
        double stood = ask("bench.stood").asDouble();
        holdNoFreeze("at the ends of sliders");
        out.printf(
                Locale.ROOT,
                "%d ends of sliders tried; %d cannot run and say so; page stood still for %.0f ms"
                        + " at most%n",
                ends,
                told,
                stood);
    }

    /** What a hundred rigs say, word by word as on the JVM; and a move drops them. */
    private void sure()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        watch();
        double from = ask("performance.now()").asDouble();
        double cpuMs = window.cpuMs();
        ask("document.getElementById('sure').click()");
        await("bench.shown.members === " + MEMBERS, "how sure", LONG_WAITS);
        double tookMs = ask("performance.now()").asDouble() - from;
        cpuMs = window.cpuMs() - cpuMs;
        holdNoFreeze("how sure");
        JsonNode shown = ask("bench.shown.result");
        Session session = CheckPage.session(DEMO, MEMBERS);
        String here = Json.of(session.result());
        hold(
                new ObjectMapper().readTree(here).equals(CheckUse::apart, shown),
                "how sure: other words or numbers than " + here);
        hold(
                words("tasks").matches("(?s).*(likely|of 100|to ).*")
                        && shown.toString().contains("\"likely\":\"")
                        && is("bench.shown.result.tasks.some(t => t.likely)"),
                "how sure: no task tells its span");
        hold(is("document.getElementById('sure').disabled"), "it can be asked twice");
        ask("bench.slide('feed.ec', [1.5])");
        await("!document.getElementById('sure').disabled && bench.shown.result", "a move after it");
        ask("void bench.settled(" + FAR_TOO_MANY + ")");
        Thread.sleep(2000); // it is under way, and has to be for a minute
        ask("bench.lesson.begin(bench.lessons[1])");
        await("bench.lesson.guess", "a lesson while it runs");
        Thread.sleep(500);
        String sign = words("busy");
        hold(sign.contains(FAR_TOO_MANY + " rigs"), "while it runs it is said: " + sign);
        ask("bench.slide('feed.ec', [1.4])");
        await("bench.shown.result && bench.shown.members === 1", "a move while it runs");
        holdQuiet("how sure");
        out.printf(
                Locale.ROOT,
                "how sure it is: %d rigs in %.0f ms, %.0f of a core%n",
                MEMBERS,
                tookMs,
                cpuMs);
    }

    /** Where both are numbers, by what they are worth: 0.0 here is 0 in the page. */
    private static int apart(JsonNode here, JsonNode there) {
        boolean areNumbers = here.isNumber() && there.isNumber();
        boolean isSame = areNumbers ? here.asDouble() == there.asDouble() : here.equals(there);
        return isSame ? 0 : 1;
    }

    // In and out.

    private void saved()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        ask("bench.slide('feed.ec', [1.4])");
        ask("bench.settled()");
        CheckPage.delete(window.saved());
        window.saved();
        ask("document.getElementById('save-text').click()");
        Path toml = kept("science-room-bench.toml");
        String moved = Files.readString(DEMO).replace("\"1.6 mS/cm\"", "\"1.4 mS/cm\"");
        hold(Files.readString(toml).equals(moved), "the scenario saved is not the one moved");
        Path files = folder.resolve("files");
        CheckPage.delete(files);
        String[] run = {"run", toml.toString(), "-o", files.toString()};
        CheckPage.command(run[0], run[1], run[2], run[3], "--members", "1", "--no-plots");
        int tables = 0;
        for (JsonNode option :
                ask("[...document.getElementById('csv').options].map(o => o.value)")) {
            ask("document.getElementById('csv').value = " + quoted(option.asText()));
            ask("document.getElementById('save-csv').click()");
            String name = savedName(option.asText());
            hold(
                    Files.readString(kept(name)).equals(Files.readString(files.resolve(name))),
                    name + " saved is not that of the command line");
            tables++;
        }
        ask("document.getElementById('save-png').click()");
        BufferedImage png = ImageIO.read(kept("curves.png").toFile());
        hold(png != null && png.getWidth() > 300 && png.getHeight() > 600, "the picture is small");
        hold(png != null && colours(png) > 10, "the picture is empty");
        holdQuiet("saving");
        out.printf(
                "scenario, %d tables as the command line writes them, and a picture saved%n",
                tables);
    }

    private String savedName(String option)
            throws InterruptedException, ExecutionException, TimeoutException {
        String[] kindAndPlace = option.split(" ");
        String vessels =
                switch (kindAndPlace[0]) {
                    case "tray", "daily" -> "trays";
                    case "reservoir" -> "reservoirs";
                    default -> "";
                };
        if (vessels.isEmpty()) {
            return kindAndPlace[0] + ".csv";
        }
        String name = ask("bench.shown.rig." + vessels + "[" + kindAndPlace[1] + "].name").asText();
        return kindAndPlace[0] + "-" + name + ".csv";
    }

    private static int colours(BufferedImage picture) {
        Set<Integer> colours = new HashSet<>();
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                colours.add(picture.getRGB(x, y));
            }
        }
        return colours.size();
    }

    /** Weather, a crop and corrections dropped after the scenario that needs them. */
    private void dropped()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        Path desk = Files.createDirectories(folder.resolve("desk"));
        Path house = desk.resolve("house.toml");
        Files.copy(SCENARIOS.resolve("glasshouse-tomato-trough.toml"), fresh(house));
        drop(house);
        await("document.getElementById('faults').textContent.includes('house.toml')", "no weather");
        hold(words("faults").contains("house.toml:15:8: climate.file"), words("faults"));
        drop(SCENARIOS.resolve("weather/typical-year-45n-8e.csv"));
        await("/Tomato/.test(document.getElementById('title').textContent)", "weather dropped");
        String demo = Files.readString(DEMO);
        Path own = desk.resolve("own-basil.toml");
        Files.copy(Path.of("src/main/resources/tideless/crop/basil.toml"), fresh(own));
        Path bench = desk.resolve("bench.toml");
        Files.writeString(
                bench, demo.replace("crop = \"basil\"", "crop_file = \"own-basil.toml\""));
        drop(own, bench);
        await("bench.name === 'bench.toml' && bench.shown.result", "scenario and crop dropped");
        hold(words("faults").isEmpty(), words("faults"));
        double stated =
                ask("bench.shown.trays[0].transpiration.reduce((a, b) => a + b)").asDouble();
        Path corrected = desk.resolve("corrected.toml");
        Files.writeString(
                corrected, "[crop.dwarf-tomato.thirst]\ntimes = 1.5\ndoubt_left = \"40 %\"\n");
        drop(corrected);
        await(
                "/read with corrected.toml/.test(document.getElementById('files-said').textContent)",
                "corrections dropped");
        await("bench.shown.result", "corrected");
        String tomato = "bench.shown.trays[2].transpiration.reduce((a, b) => a + b)";
        hold(ask(tomato).asDouble() > 0, "the corrected tomato drinks nothing");
        hold(stated > 0, "the basil of its own file drinks nothing");
        holdQuiet("dropping");
        out.println("weather, a crop file and corrections taken in as dropped");
    }

    private static Path fresh(Path file) throws IOException {
        Files.deleteIfExists(file);
        return file;
    }

    /** From the desk where the browser can be told so, else as the event that comes of it. */
    private void drop(Path... files)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        if (window instanceof Browser browser) {
            browser.drop(List.of(files));
            return;
        }
        List<String> made = new ArrayList<>();
        for (Path one : files) {
            made.add(file(one.getFileName().toString(), Files.readString(one)));
        }
        ask(
                "(files => { const data = new DataTransfer(); files.forEach(f =>"
                        + " data.items.add(f)); document.body.dispatchEvent(new DragEvent('drop',"
                        + " {dataTransfer: data, bubbles: true, cancelable: true})); })(["
                        + String.join(", ", made)
                        + "])");
    }

    // Straining.

    /**
     * From now on the page keeps the longest time for which it stood still, and the longest for
     * which it worked with no sign of it on the screen, both by the clock on the wall.
     */
    private void watch() throws InterruptedException, ExecutionException, TimeoutException {
        ask(
                """
                (() => { bench.forget = () => { bench.stood = 0; bench.stoodTo = 0; bench.mute = 0; };
                  bench.forget(); let last = performance.now();
                  const tick = () => { const now = performance.now(); const still = now - last;
                    if (still > bench.stood) {
                      bench.stood = still; bench.stoodTo = performance.timeOrigin + now; }
                    const sign = document.getElementById('busy').textContent;
                    bench.mute = Math.max(bench.mute, sign ? 0 : bench.worksFor() - still);
                    last = now; setTimeout(tick, 5); };
                  tick(); })()
                """);
        Thread.sleep(200);
        ask("bench.forget()");
    }

    /**
     * A machine with more to do than it has cores makes each thread wait: what the page's own
     * waited for a core while it stood still is none of its doing, and is told.
     */
    private void holdNoFreeze(String what)
            throws InterruptedException, ExecutionException, TimeoutException {
        double stood = ask("bench.stood").asDouble();
        double mute = ask("bench.mute").asDouble();
        double to = ask("bench.stoodTo").asDouble();
        double waited = stood < STOPPED_MS ? 0 : waits.waitedMs(to - stood, to);
        if (waited > 0) {
            out.printf(
                    Locale.ROOT,
                    "%s: stood still for %.0f ms, %.0f of them ready without a core%n",
                    what,
                    stood,
                    waited);
        }
        hold(
                stood - waited < STOPPED_MS,
                what + ": stood still for " + stood + " ms, waited " + waited + " of them");
        hold(mute < STOPPED_MS, what + ": worked for " + mute + " ms without a sign");
        mostStoodMs = Math.max(mostStoodMs, stood);
        mostMuteMs = Math.max(mostMuteMs, mute);
    }

    /** More than can be edited in the page, pasted. */
    private void longText()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        String demo = Files.readString(DEMO);
        String text =
                ("# " + "long ".repeat(400) + "\n").repeat(200)
                        + demo.replace("wall bench", "long bench")
                                .replace("Wall bench", "Long bench");
        watch();
        // Firefox leaves the data of a ClipboardEvent made by a script aside.
        ask(
                "(words => { const data = new DataTransfer(); data.setData('text/plain', words);"
                        + " const paste = new Event('paste', {bubbles: true, cancelable: true});"
                        + " paste.clipboardData = data;"
                        + " document.getElementById('text').dispatchEvent(paste); })("
                        + quoted(text)
                        + ")");
        await(
                "/^Long/.test(document.getElementById('title').textContent)",
                "long text pasted",
                LONG_WAITS);
        hold(
                words("text-said").contains("too much to be edited here"),
                "a long text is not told of");
        hold(is("document.getElementById('text').disabled"), "a long text can be edited");
        ask("bench.slide('feed.ec', [1.4])");
        ask("bench.settled()");
        holdNoFreeze("a long text");
        CheckPage.delete(window.saved());
        window.saved();
        ask("document.getElementById('save-text').click()");
        hold(
                Files.readString(kept("long-bench-of-a-science-room.toml"))
                        .equals(text.replace("\"1.6 mS/cm\"", "\"1.4 mS/cm\"")),
                "a long text moved and saved is another one");
        holdQuiet("a long text");
        out.printf("a text of %d kB pasted, moved and saved%n", text.length() / 1000);
    }

    private void strain()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        faultsOfItsOwn();
        String demo = Files.readString(DEMO);
        take("broken", demo.replace("crop = \"basil\"", "crop = \"bazil\""), "toml:");
        take("no TOML", "]]]]", "toml:1:");
        take("an empty text", "", "allowed: ");
        take("a huge text", "# " + "x".repeat(5_000_000), "1 MB");
        take("a huge list", "a = [" + "1,".repeat(400_000) + "1]", "allowed: ");
        take("deep brackets", "a = " + "[".repeat(50_000), "toml");
        take("400 days", demo.replace("\"70 days\"", "\"400 days\""), "");
        play("400 days");
        take("empty lines", "\n".repeat(60_000) + demo, "");
        take("40 trays", manyTrays(demo), "");
        play("40 trays");
        ask("bench.slide('feed.ec', [1.4])");
        holdNoFreeze("40 trays, a slider moved");
    }

    /** What the engine cannot tell itself is told in plain words; what it tells stands beside. */
    private void faultsOfItsOwn()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        for (String words : List.of("(could not fetch message)", "out of memory")) {
            ask("bench.failed(bench.faultOf('" + words + "'))");
            String said = words("faults");
            String told =
                    "Nothing was changed.The engine met a fault of its own"
                            + (words.startsWith("(") ? "" : " (" + words + ")")
                            + ". Save the scenario: the program on the command line may run it, or"
                            + " tell more.";
            hold(said.equals(told), "a fault of the engine: " + said);
        }
        holdQuiet("a fault of the engine");
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
        window.open(folder.resolve("page.html").toUri().toString());
        ask("bench.ready");
        ask("void (bench.given = " + file("other.toml", text) + ")");
        watch();
        double tookMs =
                ask("(async () => { const from = performance.now(); await"
                                + " bench.open([bench.given], true); return performance.now() -"
                                + " from; })()")
                        .asDouble();
        String said = words("faults");
        holdNoFreeze(what);
        hold(said.contains(fault), what + ": said " + said);
        hold(!fault.isEmpty() || !said.contains("allowed: "), what + ": said " + said);
        if (!fault.isEmpty()) {
            holdSameFaults(what, text);
        }
        holdQuiet(what);
        out.printf(
                Locale.ROOT,
                "%s: answered after %.0f ms, page stood still for %.0f ms at most; %s%n",
                what,
                tookMs,
                ask("bench.stood").asDouble(),
                said.substring(0, Math.min(160, said.length())).replace('\n', ' '));
    }

    /** The page tells the faults of a text word by word as the command line does. */
    private void holdSameFaults(String what, String text)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        Path file = Files.createDirectories(folder.resolve("desk")).resolve("other.toml");
        Files.writeString(file, text);
        StringWriter err = new StringWriter();
        PrintWriter none = new PrintWriter(new StringWriter());
        int code =
                Tideless.execute(
                        none,
                        new PrintWriter(err),
                        "run",
                        file.toString(),
                        "-o",
                        folder.resolve("files").toString());
        hold(code == 2, what + ": the command line ends with " + code);
        String here = err.toString().replace(file.toString(), "other.toml").strip();
        JsonNode lines =
                ask("[...document.querySelectorAll('#faults pre')].map(p => p.textContent)");
        List<String> there = new ArrayList<>();
        lines.forEach(line -> there.add(line.asText()));
        hold(
                here.equals(String.join("\n", there).strip()),
                what + ": the command line says " + here + ", the page " + there);
    }

    /** Plays what was taken for two seconds. */
    private void play(String what)
            throws InterruptedException, ExecutionException, TimeoutException {
        ask("bench.forget()");
        int day = ask("bench.day").asInt();
        ask("document.getElementById('play').click()");
        Thread.sleep(2000);
        ask("document.getElementById('play').click()");
        hold(ask("bench.day").asInt() > day, what + ": the season does not play");
        await("document.querySelector('#section svg')", what + ": drawn");
        holdNoFreeze(what + " played");
        out.printf(
                Locale.ROOT,
                "%s played: page stood still for %.0f ms at most%n",
                what,
                ask("bench.stood").asDouble());
    }
}
