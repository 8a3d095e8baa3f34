package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;

/**
 * Whether everybody can use the page and nothing leaves it: an engine for accessibility (axe-core,
 * at the time of the check alone) at phone, laptop and projector, in light and dark; names for a
 * reader of the screen; motion as little as asked for; a policy that refuses every request.
 */
final class CheckAccess extends Check {
    private static final Path ENGINE =
            Path.of("src/accessibility/node_modules/axe-core/axe.min.js");

    /** WCAG 2.2 AA and what its makers hold for good practice. */
    private static final String RULES =
            "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']";

    /** Fewer rules with something to look at mean that it did not look. */
    private static final int LEAST_RULES = 30;

    private static final Map<String, int[]> SCREENS =
            Map.of(
                    "phone", new int[] {390, 844},
                    "laptop", new int[] {1366, 768},
                    "projector", new int[] {1920, 1080});

    /** Roles of what is used or looked at, as a reader of the screen tells them. */
    private static final Set<String> NAMED =
            Set.of("button", "slider", "combobox", "textbox", "spinbutton", "image", "img", "link");

    CheckAccess(Path folder, Window window, PrintStream out) {
        super(folder, window, out);
    }

    @Override
    List<String> all()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        screens();
        refuses();
        if (window instanceof Browser browser) {
            named(browser);
            still(browser);
        }
        return wrong();
    }

    // Screens.

    private void screens()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        for (Map.Entry<String, int[]> screen : SCREENS.entrySet()) {
            window.size(screen.getValue()[0], screen.getValue()[1]);
            if (window instanceof Browser browser) {
                for (String scheme : List.of("light", "dark")) {
                    browser.media("", Map.of("prefers-color-scheme", scheme));
                    screen(screen.getKey() + "-" + scheme);
                    browser.picture(folder.resolve(screen.getKey() + "-" + scheme + ".png"), true);
                }
                browser.media("", Map.of());
            } else {
                screen(screen.getKey());
            }
        }
    }

    private void screen(String name)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        await("bench.lesson && bench.lesson.guess", "the lesson");
        int wider = ask("document.documentElement.scrollWidth - innerWidth").asInt();
        hold(wider <= 0, name + ": " + wider + " px wider than the screen");
        ask("document.querySelectorAll('details').forEach(d => d.open = true)");
        ask("bench.lesson.showAnswer()");
        ask("(() => {" + Files.readString(engine()) + "\n})()");
        JsonNode found =
                ask(
                        "axe.run(document, {runOnly: RULES}).then(r => ({passes: r.passes.length, violations: r.violations.map(v => v.id + ': ' + v.help + ' ' + v.nodes.map(n => n.target + ' ' + n.failureSummary).slice(0, 5).join('; '))}))"
                                .replace("RULES", RULES));
        found.path("violations").forEach(one -> hold(false, name + ": " + one.asText()));
        int passes = found.path("passes").asInt();
        hold(passes >= LEAST_RULES, name + ": only " + passes + " rules had something to look at");
        holdQuiet(name);
        out.printf(
                "%s: %d rules of accessibility kept, %d broken%n",
                name, passes, found.path("violations").size());
    }

    /** Fetched once by npm, which is asked for nothing else. */
    private static Path engine() throws IOException, InterruptedException {
        if (!Files.exists(ENGINE)) {
            Path folder = Path.of("src/accessibility");
            Process npm =
                    new ProcessBuilder("npm", "install", "--no-audit", "--no-fund")
                            .directory(folder.toFile())
                            .inheritIO()
                            .start();
            if (npm.waitFor() != 0) {
                throw new IllegalStateException(folder + ": npm install found no axe-core");
            }
        }
        return ENGINE;
    }

    // Names and motion.

    private void named(Browser browser)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        browser.size(1366, 768);
        open(DEMO);
        await(
                "bench.lesson && bench.lesson.guess && document.querySelector('#section svg')",
                "all");
        int named = 0;
        for (JsonNode node : browser.ask("Accessibility.getFullAXTree", Map.of()).path("nodes")) {
            String role = node.at("/role/value").asText();
            if (!node.path("ignored").asBoolean() && NAMED.contains(role)) {
                String name = node.at("/name/value").asText();
                hold(!name.isBlank(), "without a name: " + node);
                named++;
            }
        }
        hold(named > 40, "only " + named + " things have a name");
        String said =
                "[...document.querySelectorAll('input[type=range]')].filter(i => !i.closest('details') && !i.getAttribute('aria-valuetext')).map(i => i.id)";
        hold(ask(said).isEmpty(), "sliders that tell no value: " + ask(said));
        for (String role :
                List.of("#verdict[role=status]", "#busy[role=status]", "#faults[role=alert]")) {
            hold(is("document.querySelector('" + role + "')"), role + " does not speak up");
        }
        out.println(named + " things to use or look at, each with a name");
    }

    /** One picture a second at most where little motion is wanted, by the page's own clock. */
    private void still(Browser browser)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        JsonNode moving = pictures(browser, "no-preference");
        JsonNode still = pictures(browser, "reduce");
        int many = moving.path("pictures").asInt();
        int few = still.path("pictures").asInt();
        double seconds = still.path("ms").asDouble() / 1000;
        hold(many > 6, "the season plays in " + many + " pictures in three seconds");
        hold(
                few >= 1 && few <= seconds,
                "with little motion wanted it plays in %d in %.1f s".formatted(few, seconds));
        hold(still.path("animations").asInt() == 0, "something moves where little is wanted");
        browser.media("", Map.of());
        out.printf(
                Locale.ROOT,
                "%d pictures of the season in %.1f s; where little motion is wanted %d in %.1f s%n",
                many,
                moving.path("ms").asDouble() / 1000,
                few,
                seconds);
    }

    /** Counts from the press of the button on, when nothing that ran before is still drawn. */
    private JsonNode pictures(Browser browser, String wanted)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        browser.media("", Map.of("prefers-reduced-motion", wanted));
        open(DEMO);
        await("bench.isQuiet()", "all is drawn");
        return ask(
                """
                (async () => { let pictures = 0;
                  const seen = new MutationObserver(() => pictures++);
                  seen.observe(document.getElementById('section'), {childList: true});
                  const from = performance.now();
                  document.getElementById('play').click();
                  await new Promise(done => setTimeout(done, 3300));
                  const animations = document.getAnimations().length;
                  document.getElementById('play').click();
                  seen.disconnect();
                  return {pictures, animations, ms: performance.now() - from}; })()
                """);
    }

    // What the page's policy refuses.

    /** Each attempt has to fail in the page and in a worker of it; no address exists. */
    private void refuses()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        String[] attempts = {
            "fetch('https://nowhere.invalid/').then(() => 'sent', () => 'refused')",
            "new Promise(d => { const i = new Image(); i.onload = () => d('sent'); i.onerror = () => d('refused'); i.src = 'https://nowhere.invalid/a.png'; })",
            "new Promise(d => { const w = new WebSocket('wss://nowhere.invalid/'); w.onerror = () => d('refused'); w.onopen = () => d('sent'); }).catch(() => 'refused')",
            "new Promise(d => { const s = document.createElement('script'); s.textContent = 'window.ran = 1'; document.body.append(s); d(window.ran ? 'ran' : 'refused'); })",
            "new Promise(d => { const s = document.createElement('script'); s.src = 'data:text/javascript,window.ran=2'; s.onload = () => d('ran'); s.onerror = () => d('refused'); document.body.append(s); })",
            "new Promise(d => { const w = new Worker(URL.createObjectURL(new Blob([`try { eval('1'); postMessage('ran'); } catch (e) { postMessage('refused'); }`]))); w.onmessage = m => d(m.data); })",
            "new Promise(d => { const w = new Worker(URL.createObjectURL(new Blob([`fetch('https://nowhere.invalid/').then(() => postMessage('sent'), e => postMessage('refused'))`]))); w.onmessage = m => d(m.data); })"
        };
        for (String attempt : attempts) {
            String end = ask(attempt).asText();
            hold(end.equals("refused"), attempt + ": " + end);
        }
        long told =
                window.complaints().stream()
                        .filter(
                                c ->
                                        c.contains("Content Security Policy")
                                                || c.contains("Content-Security-Policy"))
                        .count();
        hold(told >= attempts.length - 2, "refused, and not by the policy: " + window.complaints());
        if (window instanceof Browser browser) {
            String refused = browser.refused("new Function('return 1')()");
            hold(refused.contains("EvalError"), "a text is evaluated in the page: " + refused);
        }
        out.printf("%d ways out tried, all refused, %d of them told of%n", attempts.length, told);
    }
}
