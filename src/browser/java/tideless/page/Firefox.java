package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
        firefox.context =
                firefox.ask("browsingContext.getTree", Map.of()).at("/contexts/0/context").asText();
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
