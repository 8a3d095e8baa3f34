package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;
import tideless.rig.VesselId;

/**
 * Looks at a season as a person would: pins a run and moves on, presses a day of a curve or of a
 * task, lets the season play; each by the mouse.
 */
final class CheckLooking extends Check {
    private static final String CURVE = "document.querySelector('canvas[data-plot=%s]')";

    /** Looks a pixel around each hour's place on a curve for the colour of the pinned run. */
    private static final String DOTTED =
            """
            ((plot, values) => { const canvas = document.querySelector(`canvas[data-plot=${plot}]`);
              const ratio = canvas.width / canvas.clientWidth;
              const style = getComputedStyle(document.documentElement);
              const pin = style.getPropertyValue('--pin').trim();
              const of = at => parseInt(pin.slice(at, at + 2), 16);
              const copy = document.createElement('canvas');
              copy.width = canvas.width;
              copy.height = canvas.height;
              const pen = copy.getContext('2d', {willReadFrequently: true});
              pen.drawImage(canvas, 0, 0);
              const pixels = pen.getImageData(0, 0, copy.width, copy.height).data;
              let seen = 0;
              values.forEach((value, hour) => {
                const x = Math.round(ratio * canvas.axes.x((hour + 1) / 24));
                const y = Math.round(ratio * canvas.axes.y(value));
                let nearest = Infinity;
                for (let row = y - 1; row <= y + 1; row++) {
                  for (let column = x - 1; column <= x + 1; column++) {
                    const at = 4 * (row * canvas.width + column);
                    nearest = Math.min(nearest, Math.abs(pixels[at] - of(1))
                      + Math.abs(pixels[at + 1] - of(3)) + Math.abs(pixels[at + 2] - of(5)));
                  }
                }
                seen += nearest < 60 ? 1 : 0;
              });
              return seen / values.length; })
            """;

    CheckLooking(Path folder, Window window, PrintStream out) {
        super(folder, window, out);
    }

    @Override
    List<String> all()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        window.size(1366, 768);
        open(DEMO);
        quiet();
        Session session = CheckPage.session(DEMO, 1);
        pin();
        day(session);
        tasks(session);
        play(session);
        holdQuiet("looking");
        return wrong();
    }

    private void quiet() throws InterruptedException, ExecutionException, TimeoutException {
        await("bench.isQuiet()", "all is run and drawn");
    }

    // Pinning.

    private void pin()
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        String verdict = ask("bench.shown.result.verdict[0]").asText();
        press(false, "document.getElementById('pin')");
        ask("bench.slide('feed.ec', [2.4])");
        await("bench.shown.result && bench.shown.text !== bench.pinned.text", "moved on");
        quiet();
        hold(is("bench.pinned.text === bench.firstText"), "another run than that shown is pinned");
        hold(
                words("pinned-said")
                        .equals(
                                "Pinned: "
                                        + verdict
                                        + " There: solution, EC of the feed 1.60 mS/cm."),
                "of the pinned run: " + words("pinned-said"));
        hold(
                is(
                        "[...document.querySelectorAll('#plots figcaption')].every(f => /; dotted the pinned run$/.test(f.textContent))"),
                "not every curve says which is the pinned run");
        String both =
                "(c => [bench.pinned, bench.shown].every(r => Math.max(...r.trays[0].ec_25C) <="
                        + " c.axes.high && Math.min(...r.trays[0].ec_25C) >= c.axes.low))("
                        + CURVE.formatted("ec")
                        + ")";
        hold(is(both), "one of two runs leaves the axes of both");
        String pinned = "('ec', [...bench.pinned.trays[0].ec_25C])";
        double dotted = ask(DOTTED.strip() + pinned).asDouble();
        hold(dotted > 0.35, "the pinned run is to be seen in " + dotted + " of its hours");
        ask("void (bench.lastPinned = [...bench.pinned.trays[0].ec_25C])");
        press(false, "document.getElementById('pin')");
        hold(
                is("bench.pinned === null && document.getElementById('pinned-said').hidden"),
                "pinned");
        double left = ask(DOTTED.strip() + "('ec', bench.lastPinned)").asDouble();
        hold(left < 0.05, "a run that was unpinned is to be seen in " + left + " of its hours");
        press(false, "document.getElementById('back')");
        await("bench.text === bench.firstText && bench.shown.result", "moved back");
        quiet();
        out.printf(
                Locale.ROOT,
                "pinned, moved, unpinned: the dots of the pinned run lie on %.0f of 100 of its"
                        + " hours, then on %.0f%n",
                100 * dotted,
                100 * left);
    }

    // A day.

    /** Presses on a curve; numbers, picture and slider go to that day. */
    private void day(Session session)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        for (String plot : List.of("level", "mass")) {
            for (int day : new int[] {3, 41}) {
                String curve = CURVE.formatted(plot);
                double[] box = box(curve);
                double x = ask(curve + ".axes.x(" + (day + 0.5) + ")").asDouble();
                window.draw(false, box[0] + x, box[1] + box[3] / 2);
                shows(session, day, "day " + day + " of " + plot);
            }
        }
        press(false, "document.getElementById('day')");
        int day = ask("bench.day").asInt();
        hold(Math.abs(day - 35) <= 1, "the middle of the days is day " + day);
        window.key(Window.Key.UP);
        await("bench.day === " + (day + 1), "a day by a key");
        out.println("days pressed on curves: numbers and picture are those of the command line");
    }

    /** Picture, numbers and slider of a day, against those of the same rig run here. */
    private void shows(Session session, int day, String what)
            throws InterruptedException, ExecutionException, TimeoutException {
        quiet();
        hold(ask("bench.day").asInt() == day, what + ": day " + ask("bench.day"));
        hold(ask("document.getElementById('day').value").asText().equals("" + day), what);
        int hour = 24 * day + 22;
        String svg = session.drawing(0, hour);
        String same =
                "document.querySelector('#section svg').isEqualNode(new DOMParser().parseFromString("
                        + quoted(svg)
                        + ", 'image/svg+xml').documentElement)";
        hold(is(same), what + ": another picture");
        double levelMm = session.series(tray(session), "level_above_floor")[hour];
        double ec = session.series(tray(session), "ec_25C")[hour];
        String numbers = words("numbers");
        String level = String.format(Locale.ROOT, "Level at 23:00%.0f mm", levelMm);
        hold(numbers.contains(level), what + ": no " + level + " in " + numbers);
        String salt = String.format(Locale.ROOT, "EC%.2f mS/cm", ec);
        hold(numbers.contains(salt), what + ": no " + salt + " in " + numbers);
        hold(numbers.contains("day " + (day + 1) + ":"), what + ": " + numbers);
    }

    private static VesselId tray(Session session) {
        return session.forecast().trace().trays().get(0).tray().id();
    }

    /**
     * The date of every task goes to its day, of sowing before the run to the first; the task and
     * its reason are told there.
     */
    private void tasks(Session session)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        JsonNode tasks = ask("bench.shown.result.tasks");
        hold(tasks.size() > 3, "only " + tasks.size() + " tasks to press on");
        for (int i = 0; i < tasks.size(); i++) {
            int day = (int) Math.max(0, tasks.get(i).path("atS").asLong() / 86_400);
            press(false, "document.querySelectorAll('#tasks li[data-text] > button')[" + i + "]");
            String text = tasks.get(i).path("text").asText();
            shows(session, day, text);
            hold(words("numbers").contains(text), "its day tells no reason: " + text);
            hold(
                    is(
                            "document.querySelectorAll('#tasks li[data-text]')["
                                    + i
                                    + "].classList.contains('on')"),
                    "not marked on its day: " + text);
        }
        out.println(
                tasks.size() + " tasks pressed: each goes to its day and tells its reason there");
    }

    // Playing.

    private void play(Session session)
            throws IOException, InterruptedException, ExecutionException, TimeoutException {
        ask(
                "(e => { e.value = '0'; e.dispatchEvent(new Event('input')); })(document.getElementById('day'))");
        press(false, button("Play the season"));
        await("bench.day > 5", "the season plays");
        press(false, button("Stop"));
        int stopped = ask("bench.day").asInt();
        shows(session, stopped, "stopped on day " + stopped);
        Thread.sleep(500);
        hold(ask("bench.day").asInt() == stopped, "a stopped season plays on");
        ask(
                "(e => { e.value = '64'; e.dispatchEvent(new Event('input')); })(document.getElementById('day'))");
        press(false, button("Play the season"));
        await("document.getElementById('play').textContent !== 'Stop'", "the season ends");
        shows(session, 69, "played to its end");
        out.println("played from the first day, stopped, and to the end of the season");
    }
}
