package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;

/** A browser of the Chromium family without a window, asked over its debugging protocol. */
final class Browser implements Window {
    /** A finger rests so long, or it is taken for one that slipped; assumed. */
    private static final int TAP_MS = 80;

    private final Running running;
    private final Wire wire;
    private String session = "";

    private Browser(Running running, Wire wire) {
        this.running = running;
        this.wire = wire;
    }

    /** Begins one with a profile of its own and an empty page. */
    static Browser begin(String command)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        Path profile = Running.newProfile();
        Running running =
                Running.begin(
                        profile,
                        List.of(
                                command,
                                "--headless=new",
                                "--no-sandbox",
                                "--disable-gpu",
                                "--no-first-run",
                                "--remote-debugging-port=0",
                                "--user-data-dir=" + profile,
                                "about:blank"));
        Path port = profile.resolve("DevToolsActivePort");
        for (int tries = 0; tries < 600 && !Files.exists(port); tries++) {
            Thread.sleep(100);
        }
        Thread.sleep(100); // until it is written whole
        List<String> lines = Files.readAllLines(port);
        String address = "ws://127.0.0.1:" + lines.get(0) + lines.get(1);
        Browser browser = new Browser(running, new Wire(address));
        String target =
                browser.ask("Target.createTarget", Map.of("url", "about:blank"))
                        .path("targetId")
                        .asText();
        browser.session =
                browser.ask("Target.attachToTarget", Map.of("targetId", target, "flatten", true))
                        .path("sessionId")
                        .asText();
        for (String domain : List.of("Page", "Runtime", "Log", "Network")) {
            browser.ask(domain + ".enable", Map.of());
        }
        String saved = running.saved().toAbsolutePath().toString();
        browser.ask(
                "Browser.setDownloadBehavior", Map.of("behavior", "allow", "downloadPath", saved));
        return browser;
    }

    /** Asks and waits for the answer. */
    JsonNode ask(String method, Map<String, Object> given)
            throws InterruptedException, ExecutionException, TimeoutException {
        return wire.ask(session, method, given);
    }

    /** What an expression gives in the page; a promise is waited for. */
    @Override
    public JsonNode evaluate(String expression)
            throws InterruptedException, ExecutionException, TimeoutException {
        JsonNode result =
                ask(
                        "Runtime.evaluate",
                        Map.of(
                                "expression",
                                expression,
                                "awaitPromise",
                                true,
                                "returnByValue",
                                true));
        if (result.has("exceptionDetails")) {
            throw new IllegalStateException(expression + ": " + result.get("exceptionDetails"));
        }
        return result.path("result").path("value");
    }

    /** Opens a file or address and waits until the page is loaded. */
    @Override
    public void open(String address)
            throws InterruptedException, ExecutionException, TimeoutException {
        wire.events().clear();
        ask("Page.navigate", Map.of("url", address));
        while (!evaluate("document.readyState").asText().equals("complete")) {
            Thread.sleep(20);
        }
    }

    @Override
    public void size(int width, int height)
            throws InterruptedException, ExecutionException, TimeoutException {
        ask(
                "Emulation.setDeviceMetricsOverride",
                Map.of(
                        "width",
                        width,
                        "height",
                        height,
                        "deviceScaleFactor",
                        1,
                        "mobile",
                        width < 600));
    }

    /**
     * What a sheet of paper, a reader or the dark would see.
     *
     * @param kind "print", or empty for a screen
     * @param features of media and their values
     */
    void media(String kind, Map<String, String> features)
            throws InterruptedException, ExecutionException, TimeoutException {
        List<Map<String, String>> list =
                features.entrySet().stream()
                        .map(f -> Map.of("name", f.getKey(), "value", f.getValue()))
                        .toList();
        ask("Emulation.setEmulatedMedia", Map.of("media", kind, "features", list));
    }

    void picture(Path file, boolean isWhole)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        JsonNode picture =
                ask(
                        "Page.captureScreenshot",
                        Map.of("format", "png", "captureBeyondViewport", isWhole));
        Files.write(file, Base64.getDecoder().decode(picture.path("data").asText()));
    }

    @Override
    public void key(Key key) throws InterruptedException, ExecutionException, TimeoutException {
        for (String type : List.of("keyDown", "keyUp")) {
            Map<String, Object> given = new HashMap<>();
            given.put("type", type);
            given.put("key", key.told);
            given.put("code", key.told);
            given.put("windowsVirtualKeyCode", key.code);
            if (type.equals("keyDown") && !key.text.isEmpty()) {
                given.put("text", key.text);
            }
            ask("Input.dispatchKeyEvent", given);
        }
    }

    @Override
    public Path saved() throws IOException {
        return Files.createDirectories(running.saved());
    }

    @Override
    public void draw(boolean isFinger, double... places)
            throws InterruptedException, ExecutionException, TimeoutException {
        for (int i = 0; i < places.length; i += 2) {
            if (isFinger) {
                finger(i == 0 ? "touchStart" : "touchMove", places[i], places[i + 1]);
            } else {
                mouse(i == 0 ? "mousePressed" : "mouseMoved", places[i], places[i + 1]);
            }
        }
        if (isFinger) {
            Thread.sleep(TAP_MS);
            ask("Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
        } else {
            mouse("mouseReleased", places[places.length - 2], places[places.length - 1]);
        }
    }

    private void finger(String type, double x, double y)
            throws InterruptedException, ExecutionException, TimeoutException {
        List<Map<String, Double>> points = List.of(Map.of("x", x, "y", y));
        ask("Input.dispatchTouchEvent", Map.of("type", type, "touchPoints", points));
    }

    /** Files dragged from the desk over the page and let go there. */
    void drop(List<Path> files) throws InterruptedException, ExecutionException, TimeoutException {
        Map<String, Object> data =
                Map.of(
                        "items",
                        List.of(),
                        "files",
                        files.stream().map(file -> file.toAbsolutePath().toString()).toList(),
                        "dragOperationsMask",
                        1);
        for (String type : List.of("dragEnter", "dragOver", "drop")) {
            ask("Input.dispatchDragEvent", Map.of("type", type, "x", 200, "y", 200, "data", data));
        }
    }

    /** Lets it be a phone under a finger, or a desk again. */
    void touch(boolean isPhone) throws InterruptedException, ExecutionException, TimeoutException {
        ask("Emulation.setTouchEmulationEnabled", Map.of("enabled", isPhone, "maxTouchPoints", 1));
    }

    /** The page as it would be printed on sheets of A4. */
    byte[] printed() throws InterruptedException, ExecutionException, TimeoutException {
        JsonNode pdf =
                ask(
                        "Page.printToPDF",
                        Map.of("paperWidth", 8.27, "paperHeight", 11.69, "printBackground", false));
        return Base64.getDecoder().decode(pdf.path("data").asText());
    }

    /** The fault of an expression that is held to the page's policy, or nothing. */
    String refused(String expression)
            throws InterruptedException, ExecutionException, TimeoutException {
        Map<String, Object> given =
                Map.of(
                        "expression",
                        expression,
                        "allowUnsafeEvalBlockedByCSP",
                        false,
                        "awaitPromise",
                        true);
        return ask("Runtime.evaluate", given)
                .at("/exceptionDetails/exception/description")
                .asText();
    }

    /** The mouse at a place of the window. */
    private void mouse(String type, double x, double y)
            throws InterruptedException, ExecutionException, TimeoutException {
        ask(
                "Input.dispatchMouseEvent",
                Map.of(
                        "type",
                        type,
                        "x",
                        x,
                        "y",
                        y,
                        "button",
                        "left",
                        "buttons",
                        type.equals("mouseReleased") ? 0 : 1,
                        "clickCount",
                        1));
    }

    /** Faults and warnings of the page since it was opened, as the console shows them. */
    @Override
    public List<String> complaints() {
        return wire.events().stream()
                .filter(
                        e ->
                                List.of("Runtime.exceptionThrown", "Log.entryAdded")
                                                .contains(e.path("method").asText())
                                        || (e.path("method")
                                                        .asText()
                                                        .equals("Runtime.consoleAPICalled")
                                                && e.at("/params/type")
                                                        .asText()
                                                        .matches("error|warning")))
                .map(JsonNode::toString)
                .toList();
    }

    /** Addresses the page asked the browser for since it was opened. */
    @Override
    public List<String> requests() {
        return wire.events().stream()
                .filter(e -> e.path("method").asText().equals("Network.requestWillBeSent"))
                .map(e -> e.at("/params/request/url").asText())
                .toList();
    }

    @Override
    public Running running() {
        return running;
    }

    @Override
    public void close() throws IOException {
        running.end();
    }
}
