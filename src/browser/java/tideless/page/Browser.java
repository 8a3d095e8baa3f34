package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;

/** A browser of the Chromium family without a window, asked over its debugging protocol. */
final class Browser implements Window {
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

    /** Sets the window's size in CSS pixels, and how many of its own make one. */
    void size(int width, int height, double ratio)
            throws InterruptedException, ExecutionException, TimeoutException {
        ask(
                "Emulation.setDeviceMetricsOverride",
                Map.of(
                        "width",
                        width,
                        "height",
                        height,
                        "deviceScaleFactor",
                        ratio,
                        "mobile",
                        width < 600));
    }

    /** What a reader or the dark would see: features of media and their values. */
    void media(Map<String, String> features)
            throws InterruptedException, ExecutionException, TimeoutException {
        List<Map<String, String>> list =
                features.entrySet().stream()
                        .map(f -> Map.of("name", f.getKey(), "value", f.getValue()))
                        .toList();
        ask("Emulation.setEmulatedMedia", Map.of("features", list));
    }

    void picture(Path file, boolean isWhole)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        JsonNode picture =
                ask(
                        "Page.captureScreenshot",
                        Map.of("format", "png", "captureBeyondViewport", isWhole));
        Files.write(file, Base64.getDecoder().decode(picture.path("data").asText()));
    }

    /** A key pressed and let go. */
    void key(Key key) throws InterruptedException, ExecutionException, TimeoutException {
        for (String type : List.of("keyDown", "keyUp")) {
            Map<String, Object> given = new HashMap<>();
            given.put("type", type);
            given.put("key", key.name);
            given.put("code", key.name);
            given.put("windowsVirtualKeyCode", key.code);
            if (type.equals("keyDown") && !key.text.isEmpty()) {
                given.put("text", key.text);
            }
            ask("Input.dispatchKeyEvent", given);
        }
    }

    /** Keys of a keyboard. */
    enum Key {
        TAB("Tab", 9, ""),
        ENTER("Enter", 13, "\r"),
        DOWN("ArrowDown", 40, ""),
        UP("ArrowUp", 38, "");

        private final String name;
        private final int code;
        private final String text;

        Key(String name, int code, String text) {
            this.name = name;
            this.code = code;
            this.text = text;
        }
    }

    /** Puts what the page saves into a folder. */
    void saveInto(Path folder) throws InterruptedException, ExecutionException, TimeoutException {
        ask(
                "Browser.setDownloadBehavior",
                Map.of("behavior", "allow", "downloadPath", folder.toAbsolutePath().toString()));
    }

    /** The mouse at a place of the window. */
    void mouse(String type, double x, double y)
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

    /** What all its processes have used of the machine so far, ms. */
    double cpuMs() {
        return running.process()
                .descendants()
                .map(one -> one.info().totalCpuDuration().orElse(Duration.ZERO))
                .mapToDouble(Duration::toMillis)
                .sum();
    }

    @Override
    public void close() throws IOException {
        running.end();
    }
}
