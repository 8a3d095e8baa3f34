package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Questions with a number to a browser over a web socket, their answers, and what it tells unasked.
 */
final class Wire {
    private static final long PATIENCE_S = 240;

    private final ObjectMapper mapper = new ObjectMapper();
    private final Map<Integer, CompletableFuture<JsonNode>> asked = new ConcurrentHashMap<>();
    private final List<JsonNode> events = new CopyOnWriteArrayList<>();
    private final WebSocket socket;
    private int next = 1;

    Wire(String address) throws ExecutionException, InterruptedException {
        socket =
                HttpClient.newHttpClient()
                        .newWebSocketBuilder()
                        .buildAsync(URI.create(address), new Listener())
                        .get();
    }

    /** Gathers the parts of a message. */
    private final class Listener implements WebSocket.Listener {
        private final StringBuilder message = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence part, boolean isLast) {
            message.append(part);
            if (isLast) {
                take(message.toString());
                message.setLength(0);
            }
            from.request(1);
            return null;
        }
    }

    private void take(String message) {
        JsonNode node;
        try {
            node = mapper.readTree(message);
        } catch (IOException e) {
            throw new IllegalStateException(message, e);
        }
        CompletableFuture<JsonNode> answer = asked.remove(node.path("id").asInt());
        if (answer != null) {
            answer.complete(node);
        } else {
            events.add(node);
        }
    }

    /**
     * Asks and waits for the answer.
     *
     * @param session empty for none
     */
    JsonNode ask(String session, String method, Map<String, Object> given)
            throws InterruptedException, ExecutionException, TimeoutException {
        ObjectNode message = mapper.createObjectNode();
        int id = next++;
        message.put("id", id).put("method", method);
        if (!session.isEmpty()) {
            message.put("sessionId", session);
        }
        message.set("params", mapper.valueToTree(given));
        CompletableFuture<JsonNode> answer = new CompletableFuture<>();
        asked.put(id, answer);
        socket.sendText(message.toString(), true).join();
        JsonNode node = answer.get(PATIENCE_S, TimeUnit.SECONDS);
        if (node.has("error")) {
            throw new IllegalStateException(method + ": " + node);
        }
        return node.path("result");
    }

    /** What was told unasked, in order. */
    List<JsonNode> events() {
        return events;
    }
}
