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
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;

/** What checks of the page have in common: a window to look into, and what is wrong so far. */
abstract class Check {
    static final Path SCENARIOS = Path.of("scenarios");
    static final Path DEMO = SCENARIOS.resolve("science-room-bench.toml");

    /** Nobody waits longer for an answer of the page; it has a busy machine's season to run. */
    private static final int MOST_WAITS = 1200;

    /** For what runs a hundred seasons, and says so all the while. */
    static final int LONG_WAITS = 12_000;

    private static final int WAIT_MS = 50;

    final Path folder;
    final Window window;
    final PrintStream out;
    private final List<String> wrong = new ArrayList<>();

    Check(Path folder, Window window, PrintStream out) {
        this.folder = folder;
        this.window = window;
        this.out = out;
    }

    /** What is wrong. */
    abstract List<String> all()
            throws IOException, InterruptedException, ExecutionException, TimeoutException;

    List<String> wrong() {
        return wrong;
    }

    void hold(boolean isRight, String otherwise) {
        if (!isRight) {
            wrong.add(otherwise);
        }
    }

    /** Nothing on the console since the page was opened. */
    void holdQuiet(String what) {
        hold(window.complaints().isEmpty(), what + ": " + window.complaints());
    }

    /** Opens the page of a scenario and waits for its first season. */
    void open(Path scenario)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        window.open(CheckPage.page(folder, scenario).toUri().toString());
        ask("bench.ready");
    }

    JsonNode ask(String expression)
            throws InterruptedException, ExecutionException, TimeoutException {
        return window.evaluate(expression);
    }

    boolean is(String expression)
            throws InterruptedException, ExecutionException, TimeoutException {
        return ask("!!(" + expression + ")").asBoolean();
    }

    /** The words in an element. */
    String words(String id) throws InterruptedException, ExecutionException, TimeoutException {
        return ask("document.getElementById('" + id + "').textContent").asText();
    }

    /** Waits until something is so; tells when it never is. */
    void await(String expression, String what)
            throws InterruptedException, ExecutionException, TimeoutException {
        await(expression, what, MOST_WAITS);
    }

    void await(String expression, String what, int most)
            throws InterruptedException, ExecutionException, TimeoutException {
        for (int waits = 0; waits < most && !is(expression); waits++) {
            Thread.sleep(WAIT_MS);
        }
        hold(is(expression), what + ": never " + expression);
    }

    /** The middle of an element, scrolled to the middle of the window. */
    double[] middle(String element)
            throws InterruptedException, ExecutionException, TimeoutException {
        double[] box = box(element);
        return new double[] {box[0] + box[2] / 2, box[1] + box[3] / 2};
    }

    /** Left, top, width and height of an element, scrolled to the middle of the window. */
    double[] box(String element) throws InterruptedException, ExecutionException, TimeoutException {
        JsonNode box =
                ask(
                        "(e => { e.scrollIntoView({block: 'center'}); const b ="
                                + " e.getBoundingClientRect(); return [b.x, b.y, b.width, b.height]; })("
                                + element
                                + ")");
        double[] numbers = new double[4];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = box.get(i).asDouble();
        }
        return numbers;
    }

    void press(boolean isFinger, String element)
            throws InterruptedException, ExecutionException, TimeoutException {
        window.draw(isFinger, middle(element));
    }

    static String button(String words) {
        return "[...document.querySelectorAll('button')].find(b => b.textContent === '"
                + words
                + "')";
    }

    /** A text as an expression. */
    static String quoted(String text) {
        String base64 = Base64.getEncoder().encodeToString(text.getBytes(StandardCharsets.UTF_8));
        return "new TextDecoder().decode(Uint8Array.from(atob('"
                + base64
                + "'), c => c.charCodeAt(0)))";
    }

    /** A file as an expression. */
    static String file(String name, String text) {
        return "new File([" + quoted(text) + "], '" + name + "')";
    }

    /** A file that the page was asked to save. */
    Path kept(String name)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        Path file = window.saved().resolve(name);
        long before = -1;
        for (int waits = 0; waits < MOST_WAITS; waits++) {
            Thread.sleep(WAIT_MS);
            long now = Files.exists(file) ? Files.size(file) : -1;
            if (now > 0 && now == before) {
                return file;
            }
            before = now;
        }
        throw new IllegalStateException(name + " was not saved");
    }
}
