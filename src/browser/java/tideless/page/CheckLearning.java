package tideless.page;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;
import java.util.regex.Pattern;

/** Goes through lessons as a pupil would: by mouse alone, by keys alone, by finger, on paper. */
final class CheckLearning extends Check {
    private static final List<String> HEADS =
            List.of(
                    "1. Where the salts go",
                    "2. Why valve height matters",
                    "3. Why tomatoes outgrow",
                    "4. Rain or tap",
                    "5. Away for a week",
                    "6. Build, predict, measure");

    private static final String CANVAS = "document.querySelector('#lesson canvas')";
    private static final Pattern SHEET = Pattern.compile("/Type\\s*/Page\\b(?!s)");

    CheckLearning(Path folder, Window window, PrintStream out) {
        super(folder, window, out);
    }

    @Override
    List<String> all()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        unguessed();
        byMouse();
        byKeys();
        byFinger();
        every();
        measured();
        if (window instanceof Browser browser) {
            onPaper(browser);
        }
        return wrong();
    }

    private void lesson() throws InterruptedException, ExecutionException, TimeoutException {
        await("bench.lesson && bench.lesson.guess", "the lesson");
    }

    private void byMouse()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        window.size(1366, 768);
        open(DEMO);
        lesson();
        hold(
                ask("[...document.getElementById('lesson-choice').options].map(o => o.textContent)")
                        .toString()
                        .equals(quotedList()),
                "the lessons are others");
        guess(false);
        press(false, button("Run it"));
        tell("by mouse alone");
    }

    /** Run without a guess a lesson asks for it first, and a guess takes the question away. */
    private void unguessed()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        window.size(1366, 768);
        open(DEMO);
        lesson();
        String answer = "document.querySelector('#lesson div[role=status]').textContent";
        press(false, button("Run it"));
        await("/^The guess comes first/.test(" + answer + ")", "a guess is asked for");
        hold(is("bench.lesson.after === null"), "a lesson runs without a guess, unasked");
        guess(false);
        hold(ask(answer).asText().isEmpty(), "asked for a guess that is there");
        press(false, button("Run it"));
        tell("asked for a guess");
        press(false, button("Begin again"));
        lesson();
        press(false, button("Run it"));
        press(false, button("Run it without a guess"));
        await("/^At .*you made no guess/.test(" + answer + ")", "a lesson without a guess");
        holdQuiet("a guess asked for");
    }

    private static String quotedList() {
        return "[\"" + String.join("\",\"", HEADS) + "\"]";
    }

    /** A guess drawn across the plot. */
    private void guess(boolean isFinger)
            throws InterruptedException, ExecutionException, TimeoutException {
        double[] box = box(CANVAS);
        double[] places = new double[42];
        for (int i = 0; i < places.length / 2; i++) {
            places[2 * i] = box[0] + box[2] * (0.15 + 0.04 * i);
            places[2 * i + 1] = box[1] + 0.6 * box[3] + i;
        }
        window.draw(isFinger, places);
        hold(is("bench.lesson.touched"), "no guess was drawn " + (isFinger ? "by finger" : ""));
    }

    private void byKeys()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        lesson();
        hold(is("document.hasFocus()"), "the window has no keys: what follows shows nothing");
        hold(tabTo("e.id === 'lesson-choice'"), "no key reaches the lessons");
        window.key(Window.Key.DOWN);
        await("bench.lesson.lesson.id === 'valve'", "the second lesson chosen by keys");
        lesson();
        hold(tabTo("e.tagName === 'SUMMARY' && /guess/.test(e.textContent)"), "no guess by keys");
        window.key(Window.Key.ENTER);
        hold(tabTo("e.id === 'guess-5'"), "no key reaches the guess");
        for (int i = 0; i < 5; i++) {
            window.key(Window.Key.UP);
        }
        hold(tabTo("e.textContent === 'Run it'"), "no key reaches the run");
        window.key(Window.Key.ENTER);
        tell("by keys alone");
        hold(tabTo("e.textContent === 'For the teacher'"), "no key reaches the teacher's notes");
        window.key(Window.Key.ENTER);
        hold(is("document.activeElement.parentElement.open"), "the teacher's notes do not unfold");
    }

    /** Presses the key for the next place until it is the wanted one, each in sight and marked. */
    private boolean tabTo(String what)
            throws InterruptedException, ExecutionException, TimeoutException {
        for (int tabs = 0; tabs < 160; tabs++) {
            window.key(Window.Key.TAB);
            if (is("(e => " + what + ")(document.activeElement)")) {
                hold(
                        is(
                                "(e => { const b = e.getBoundingClientRect(); const head ="
                                        + " document.querySelector('header').getBoundingClientRect();"
                                        + " return b.bottom > 0 && b.top < innerHeight && b.bottom >"
                                        + " head.bottom; })(document.activeElement)"),
                        what + " has the keys and is out of sight");
                return true;
            }
        }
        return false;
    }

    private void byFinger()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        window.size(390, 844);
        if (window instanceof Browser browser) {
            browser.touch(true);
        }
        open(DEMO);
        lesson();
        int day = ask("bench.day").asInt();
        double[] box = box("document.getElementById('day')");
        double y = box[1] + box[3] / 2;
        window.draw(
                true, box[0] + box[2] / 2, y, box[0] + 0.6 * box[2], y, box[0] + 0.8 * box[2], y);
        hold(ask("bench.day").asInt() > day, "the day does not follow a finger");
        press(true, button("Play the season"));
        await("document.getElementById('play').textContent === 'Stop'", "played by finger");
        press(true, button("Stop"));
        guess(true);
        press(true, button("Run it"));
        tell("by finger alone on a phone");
        if (window instanceof Browser browser) {
            browser.touch(false);
        }
        window.size(1366, 768);
    }

    private void tell(String how)
            throws InterruptedException, ExecutionException, TimeoutException {
        String answer = "document.querySelector('#lesson div[role=status]').textContent";
        await("/^At /.test(" + answer + ")", "lesson " + how);
        String said = ask(answer).asText();
        hold(said.contains("by your guess"), how + ": " + said);
        holdQuiet(how);
        out.println("lesson " + how + ": " + said.substring(0, Math.min(120, said.length())));
    }

    /** Each lesson runs, gives nothing away before it, and can be loaded into the page. */
    private void every()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        for (int i = 0; i < HEADS.size(); i++) {
            lesson();
            ask("bench.lesson.begin(LESSON)".replace("LESSON", "bench.lessons[" + i + "]"));
            lesson();
            hold(
                    is("bench.lesson.after === null"),
                    HEADS.get(i) + " is answered before it is asked");
            ask("bench.lesson.showAnswer()");
            String said = ask("bench.lesson.answer.textContent").asText();
            hold(said.contains("you made no guess"), HEADS.get(i) + ": " + said);
            hold(
                    is(
                            "[...document.querySelectorAll('#lesson summary')].at(-1).parentElement.open === false"),
                    HEADS.get(i) + ": the teacher's notes are open");
        }
        ask("bench.lesson.begin(bench.lessons[2])");
        lesson();
        ask("bench.lesson.loaded()");
        await("bench.name === 'outgrown-trough.toml'", "a lesson's rig loaded");
        holdQuiet("every lesson");
    }

    /** The pupil's own rig: the scenario of the page, and readings beside its run. */
    private void measured()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(SCENARIOS.resolve("sealed-lettuce-tank.toml"));
        await("bench.lesson && bench.lesson.guess", "the lesson");
        ask("bench.lesson.begin(bench.lessons[5])");
        lesson();
        hold(is("bench.lesson.plot.id === 'level'"), "a sealed tank is not told by its level");
        ask("bench.lesson.showAnswer()");
        String enter =
                "(e => { e.value = %s; e.dispatchEvent(new Event('input', {bubbles: true})); })(document.getElementById('%s'))";
        double levelMm =
                ask("bench.lesson.after.trays[0].level_above_floor[24 * 7 - 1]").asDouble();
        ask(enter.formatted("7", "day-0"));
        ask(enter.formatted(String.valueOf(levelMm - 4), "value-0"));
        ask(enter.formatted("-3", "day-1"));
        String said = ask("bench.lesson.distance.textContent").asText();
        hold(
                said.equals(
                        "1 reading: on average 4.0 mm below the run, at most 4.0 mm below the run."),
                "a reading 4 mm below the run: " + said);
        holdQuiet("measuring");
        out.println("readings: " + said);
    }

    private void onPaper(Browser browser)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        lesson();
        browser.media("", Map.of("prefers-color-scheme", "dark"));
        int whole = sheets("bench", browser.printed());
        hold(whole >= 1 && whole <= 6, "the page prints on " + whole + " sheets");
        ask("bench.lesson.showAnswer()");
        ask("document.body.classList.add('printing-lesson')");
        int folded = sheets("lesson", browser.printed());
        hold(folded == 1, "a lesson prints on " + folded + " sheets");
        browser.media("print", Map.of());
        String notes = "[...document.querySelectorAll('#lesson details')].at(-1)";
        hold(is("getComputedStyle(" + notes + ").display === 'none'"), "folded notes are printed");
        ask(notes + ".open = true");
        hold(
                is("getComputedStyle(" + notes + ").display !== 'none'"),
                "open notes are not printed");
        hold(
                is("getComputedStyle(document.getElementById('rig')).display === 'none'"),
                "more than the lesson is printed");
        browser.media("", Map.of());
        holdQuiet("printing");
        out.printf(
                Locale.ROOT,
                "printed: the page on %d sheets of A4, a lesson on %d%n",
                whole,
                folded);
    }

    private int sheets(String name, byte[] pdf) throws IOException {
        Files.write(folder.resolve("printed-" + name + ".pdf"), pdf);
        return (int) SHEET.matcher(new String(pdf, StandardCharsets.ISO_8859_1)).results().count();
    }
}
