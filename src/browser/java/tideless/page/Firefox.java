package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A browser of the Firefox family without a window, asked over WebDriver BiDi. */
final class Firefox implements Window {
    private static final Pattern LISTENS = Pattern.compile("listening on (ws://[0-9.:]+)");

    private final ObjectMapper mapper = new ObjectMapper();
    private final Running running;
    private final Wire wire;
    private String context = "";

    private Firefox(Running running, Wire wire) {
        this.running = running;
        this.wire = wire;
    }

    /** Begins one with a profile of its own and an empty page. */
    static Firefox begin(String command)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        Path profile = Running.newProfile();
        Files.writeString(
                profile.resolve("user.js"),
                """
                user_pref("browser.download.folderList", 2);
                user_pref("browser.download.dir", "%s");
                user_pref("browser.download.useDownloadDir", true);
                """
                        .formatted(profile.resolve("saved")));
        Running running =
                Running.begin(
                        profile,
                        List.of(
                                command,
                                "--headless",
                                "--no-remote",
                                "--profile",
                                profile.toString(),
                                "--remote-debugging-port=0"));
        Matcher listens = LISTENS.matcher("");
        for (int tries = 0; tries < 900 && !listens.find(); tries++) {
            Thread.sleep(100);
            listens = LISTENS.matcher(Files.readString(running.said()));
        }
        Firefox firefox = new Firefox(running, new Wire(listens.group(1) + "/session"));
        firefox.ask("session.new", Map.of("capabilities", Map.of()));
        firefox.ask(
                "session.subscribe",
                Map.of("events", List.of("log.entryAdded", "network.beforeRequestSent")));
        // The tab it begins with is not in front: no key pressed there presses a button.
        firefox.context =
                firefox.ask("browsingContext.create", Map.of("type", "tab"))
                        .path("context")
                        .asText();
        firefox.ask("browsingContext.activate", Map.of("context", firefox.context));
        return firefox;
    }

    private JsonNode ask(String method, Map<String, Object> given)
            throws InterruptedException, ExecutionException, TimeoutException {
        return wire.ask("", method, given);
    }

    @Override
    public void open(String address)
            throws InterruptedException, ExecutionException, TimeoutException {
        wire.events().clear();
        ask(
                "browsingContext.navigate",
                Map.of("context", context, "url", address, "wait", "complete"));
    }

    /** By way of JSON, for the protocol has its own words for every value. */
    @Override
    public JsonNode evaluate(String expression)
            throws InterruptedException, ExecutionException, TimeoutException {
        JsonNode result =
                ask(
                        "script.evaluate",
                        Map.of(
                                "expression",
                                "(async () => JSON.stringify(await (" + expression + ")))()",
                                "target",
                                Map.of("context", context),
                                "awaitPromise",
                                true));
        if (!result.path("type").asText().equals("success")) {
            throw new IllegalStateException(expression + ": " + result);
        }
        try {
            String json = result.at("/result/value").asText();
            return mapper.readTree(json.isEmpty() ? "null" : json);
        } catch (IOException e) {
            throw new IllegalStateException(expression, e);
        }
    }

    @Override
    public void size(int width, int height)
            throws InterruptedException, ExecutionException, TimeoutException {
        Map<String, Object> viewport = Map.of("width", width, "height", height);
        ask("browsingContext.setViewport", Map.of("context", context, "viewport", viewport));
    }

    @Override
    public void key(Key key) throws InterruptedException, ExecutionException, TimeoutException {
        String value = String.valueOf(key.value);
        act(
                Map.of(
                        "type",
                        "key",
                        "id",
                        "keys",
                        "actions",
                        List.of(
                                Map.of("type", "keyDown", "value", value),
                                Map.of("type", "keyUp", "value", value))));
    }

    @Override
    public void draw(boolean isFinger, double... places)
            throws InterruptedException, ExecutionException, TimeoutException {
        List<Map<String, Object>> actions = new ArrayList<>();
        for (int i = 0; i < places.length; i += 2) {
            Map<String, Object> move =
                    Map.of("type", "pointerMove", "x", (int) places[i], "y", (int) places[i + 1]);
            actions.add(move);
            if (i == 0) {
                actions.add(Map.of("type", "pointerDown", "button", 0));
            }
        }
        actions.add(Map.of("type", "pointerUp", "button", 0));
        act(
                Map.of(
                        "type",
                        "pointer",
                        "id",
                        isFinger ? "finger" : "mouse",
                        "parameters",
                        Map.of("pointerType", isFinger ? "touch" : "mouse"),
                        "actions",
                        actions));
    }

    private void act(Map<String, Object> source)
            throws InterruptedException, ExecutionException, TimeoutException {
        ask("input.performActions", Map.of("context", context, "actions", List.of(source)));
    }

    @Override
    public Path saved() throws IOException {
        return Files.createDirectories(running.saved());
    }

    @Override
    public Running running() {
        return running;
    }

    @Override
    public List<String> complaints() {
        return wire.events().stream()
                .filter(e -> e.path("method").asText().equals("log.entryAdded"))
                .filter(e -> e.at("/params/level").asText().matches("error|warn"))
                .map(JsonNode::toString)
                .toList();
    }

    @Override
    public List<String> requests() {
        return wire.events().stream()
                .filter(e -> e.path("method").asText().equals("network.beforeRequestSent"))
                .map(e -> e.at("/params/request/url").asText())
                .toList();
    }

    @Override
    public void close() throws IOException {
        running.end();
    }
}
