package tideless.page;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;

/**
 * Pastes a text of one's own into the page, with slips in it, as a pupil would: it is kept whatever
 * is pressed or moved, is called by its own name, and no verdict of another rig stands as if of it.
 * Then moves what {@code check} has to look at.
 */
final class CheckOwnText extends Check {
    private static final Path LETTUCE = SCENARIOS.resolve("lessons/lid.toml");
    private static final String BOX = "document.getElementById('text').value";

    private String mended;
    private String slips;

    CheckOwnText(Path folder, Window window, PrintStream out) {
        super(folder, window, out);
    }

    @Override
    List<String> all()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        window.size(1366, 768);
        mended =
                Files.readString(LETTUCE)
                        .replaceFirst("title = \"[^\"]*\"", "title = \"My own, first\"");
        slips = mended.replace("plants = ", "plnts = ").replace("crop = \"let", "crop = \"lat");
        slipped();
        setAside();
        typed();
        looks();
        out.println("a text with slips is kept, and told by its own name");
        return wrong();
    }

    /** Into the box over all that stands there, as by keys or a paste. */
    private void paste(String text)
            throws InterruptedException, ExecutionException, TimeoutException {
        ask(
                "(words => { const box = document.getElementById('text'); box.focus(); box.select();"
                        + " const data = new DataTransfer(); data.setData('text/plain', words);"
                        + " const paste = new Event('paste', {bubbles: true, cancelable: true});"
                        + " paste.clipboardData = data; box.dispatchEvent(paste); box.value = words;"
                        + " box.dispatchEvent(new Event('input', {bubbles: true})); })("
                        + quoted(text)
                        + ")");
    }

    private void run() throws InterruptedException, ExecutionException, TimeoutException {
        press(false, "document.getElementById('run-text')");
    }

    private void holdKept(String text, String when)
            throws InterruptedException, ExecutionException, TimeoutException {
        hold(ask(BOX).asText().equals(text), "the text is gone: " + when);
    }

    private boolean isOfLast() throws InterruptedException, ExecutionException, TimeoutException {
        return is(
                "!document.getElementById('of-last').hidden"
                        + " && ['verdict', 'looks', 'tasks', 'warnings'].every(id =>"
                        + " document.getElementById(id).classList.contains('last'))"
                        + " && getComputedStyle(document.querySelector('#verdict p')).color =="
                        + " getComputedStyle(document.getElementById('step-said')).color");
    }

    private void slipped()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        await("bench.isQuiet()", "all is run");
        hold(!isOfLast(), "a verdict of the rig shown is said to be of another");
        paste(slips);
        run();
        await("!document.getElementById('faults').hidden", "the faults of a text");
        String faults = words("faults");
        hold(faults.contains("my-own-first.toml:"), "a pasted text's faults: " + faults);
        hold(!faults.contains("science-room"), "a pasted text's faults: " + faults);
        hold(faults.contains("plnts") && faults.contains("lattuce"), "its slips: " + faults);
        hold(words("text-faults").contains("plnts"), "no faults stand by the text");
        hold(isOfLast(), "the verdict of the rig before stands as if of the text");
        hold(
                words("of-last").endsWith("rig that could run: Wall bench of a science room."),
                words("of-last"));
        holdKept(slips, "run");
        ask("dispatchEvent(new Event('resize'))");
        holdKept(slips, "the window made larger");
        ask("document.getElementById('tray').dispatchEvent(new Event('change'))");
        holdKept(slips, "another tray looked at");
        ask("bench.slide('feed.ec', [1.4])");
        await("bench.isQuiet()", "moved");
        holdKept(slips, "a slider moved");
        hold(!isOfLast() && words("faults").isEmpty(), "a rig that runs is said to be the last");
        press(false, "document.getElementById('back')");
        await("bench.isQuiet() && bench.text === bench.firstText", "moves undone");
        holdKept(slips, "moves undone");
        CheckPage.delete(window.saved());
        window.saved();
        press(false, "document.getElementById('save-text')");
        hold(Files.readString(kept("my-own-first.toml")).equals(slips), "another text is saved");
        ask("bench.slide('feed.ec', [1.4])");
        CheckPage.delete(window.saved());
        paste(mended);
        run();
        await("/^My own/.test(document.getElementById('title').textContent)", "a text mended");
        hold(is("bench.name === 'my-own-first.toml'"), "its name: " + ask("bench.name").asText());
        hold(!isOfLast() && words("faults").isEmpty(), "a text that runs has faults");
        hold(is("document.getElementById('text-shown').hidden"), "it is still not the rig shown");
        holdQuiet("a text with slips");
    }

    /** The rig shown laid into the box, and what stood there brought back; a rig opened over it. */
    private void setAside()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        await("bench.isQuiet()", "all is run");
        String shown = ask(BOX).asText();
        paste(slips.replaceFirst("title = [^\n]*\n", ""));
        run();
        await("!document.getElementById('faults').hidden", "the faults of a text");
        hold(words("faults").contains("pasted.toml:"), "no title: " + words("faults"));
        press(false, button("Put the rig shown here"));
        holdKept(shown, "the rig shown is asked for");
        hold(!isOfLast() && words("faults").isEmpty(), "faults of what was set aside stand");
        press(false, button("Bring back what stood here"));
        holdKept(slips.replaceFirst("title = [^\n]*\n", ""), "brought back");
        hold(words("text-faults").contains("plnts"), "brought back without its faults");
        String other = file("other.toml", Files.readString(LETTUCE));
        ask("bench.open([" + other + "], true)");
        await("bench.name === 'other.toml'", "another file opened");
        holdKept(Files.readString(LETTUCE), "another file opened");
        press(false, button("Bring back what stood here"));
        holdKept(slips.replaceFirst("title = [^\n]*\n", ""), "brought back from under a file");
        holdQuiet("a text set aside");
    }

    /** What is typed and not yet run stays; a file that it waits for is taken in for it. */
    private void typed()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        open(DEMO);
        await("bench.isQuiet()", "all is run");
        String waits = Files.readString(DEMO).replace("\"basil\"", "\"mine\"");
        ask("void (" + BOX + " = " + quoted(waits) + ")");
        ask("document.activeElement.blur()");
        ask("bench.slide('feed.ec', [1.4])");
        await("bench.isQuiet()", "moved");
        holdKept(waits, "typed, and a slider moved");
        hold(words("text-said").contains("not the rig shown"), words("text-said"));
        run();
        await("!document.getElementById('faults').hidden", "the faults of a text");
        hold(
                words("faults").contains("science-room-bench.toml:"),
                "a text with its own title unchanged is another file: " + words("faults"));
        ask("bench.slide('feed.ec', [1.5])");
        await("bench.isQuiet()", "moved");
        holdKept(waits, "a slider moved after its faults");
        hold(is("bench.text.includes('1.5 mS/cm')"), "the rig shown cannot be moved any more");
        holdQuiet("a text typed");
    }

    /** What check says of a rig as it was moved, and no verdict that calls it well. */
    private void looks()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        String[][] moves = {
            {"tray.lettuce.valve.setting", "1", "the cups hang"},
            {"tray.lettuce.valve.setting", "7", "above the underside of the cups"},
            {"feed.ec", "3.5", "stronger than lettuce bears"},
            {"tray.lettuce.plants", "20", "shade each other"}
        };
        for (String[] move : moves) {
            open(LETTUCE);
            await("bench.isQuiet()", move[0]);
            hold(is("document.getElementById('looks').hidden"), "a sound rig is to be looked at");
            ask("bench.slide('" + move[0] + "', ['" + move[1] + "'])");
            await("bench.isQuiet()", move[0]);
            hold(words("looks").contains(move[2]), move[0] + ": " + words("looks"));
            hold(
                    is("!document.getElementById('verdict').classList.contains('good')"),
                    move[0] + " at " + move[1] + " is called well");
            hold(!words("warnings").equals("No warnings."), move[0] + " is called well below");
        }
        holdQuiet("looked at");
    }
}
