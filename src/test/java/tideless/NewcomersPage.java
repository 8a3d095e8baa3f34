package tideless;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Makes the two drawings of docs/newcomers.md out of the code; {@link NewcomersPageTest} holds
 * them.
 */
final class NewcomersPage {
    static final Path ROOMS = Path.of("docs/pictures/rooms.svg");
    static final Path STEP = Path.of("docs/pictures/one-step.svg");

    /** Column a room is drawn in. */
    private static final Map<String, Integer> COLUMN =
            Map.of("scenario", 0, "study", 2, "physics", 2, "study.threads", 3);

    private static final int CENTRE = 1;
    private static final int WIDTH = 190;
    private static final int HEIGHT = 58;
    private static final int COLUMN_STEP = 230;
    private static final int ROW_STEP = 92;

    /** What each call of a step is about; a call that is not told of here fails the test. */
    private static final Map<String, String> TOLD = told();

    /** A few words about each room; its package-info.java says the rest. */
    static final Map<String, String> ROOMS_TOLD =
            Map.ofEntries(
                    Map.entry("cli", "the door: commands, arguments, exit codes"),
                    Map.entry("report", "tables, plots, CSV, JSON"),
                    Map.entry("words", "sentences, from figures"),
                    Map.entry("drawing", "the rig in section, as SVG text"),
                    Map.entry("study", "many runs of one scenario"),
                    Map.entry("study.threads", "many runs at once"),
                    Map.entry("advice", "one run in; verdict, tasks and warnings out"),
                    Map.entry("sim", "all that moves in time: a run, step by step"),
                    Map.entry("scenario", "what the user wrote: text in, a rig or faults out"),
                    Map.entry("rig", "trays, reservoirs, climate, visits: plain records"),
                    Map.entry("crop", "one plant: growth, roots, thirst, hunger"),
                    Map.entry("solution", "ions, EC, pH, recipes, mixing"),
                    Map.entry("physics", "air, light, water, pipes, oxygen"));

    private NewcomersPage() {}

    public static void main(String[] args) throws IOException {
        House house = new House();
        Files.writeString(ROOMS, rooms(house.uses()));
        Files.writeString(STEP, step(house.step()));
    }

    private static Map<String, String> told() {
        Map<String, String> told = new LinkedHashMap<>();
        told.put(
                "ReservoirRun.openAccounts",
                "what a reservoir gives and gets is counted from zero");
        told.put(
                "LoggedDays.enter",
                "what the grower's log says was read and done: foretold, believed, done");
        told.put(
                "VisitRules.visit",
                "on a visit: refill, top up, flush, fresh solution, by the rules of the scenario");
        told.put(
                "TrayRun.begin",
                "what the plants want to drink and the surface to evaporate, from air, light, leaves and roots");
        told.put("ReservoirRun.begin", "what an open reservoir evaporates");
        told.put(
                "GravityFeed.step",
                "water moves: valves open and shut, the reservoir falls, trays fill, run dry or run over");
        told.put("TrayRun.took", "a tray without a reservoir: its level falls by what it lost");
        told.put(
                "TrayRun.end",
                "salts follow the water, roots take their nutrients, the solution warms or cools; wilting, drowning");
        told.put("ReservoirRun.end", "salts and heat of the reservoir");
        told.put("Recorder.addStep", "flows are added to the hour");
        told.put("Simulation.endOf", "how far: further than the next instant while all is quiet");
        told.put(
                "Simulation.saltsMayWait",
                "in an ensemble: while nobody looks, salts of a held tray wait until it has drunk a fiftieth");
        told.put("Simulation.isLeft", "nobody is there on the next day: what hands do waits");
        told.put("Simulation.settle", "once a day: what the water cannot hold drops out");
        told.put(
                "Simulation.settleWithinDay",
                "at the other hours: the same in a tray that has come nearer to that");
        told.put("Recorder.closeHour", "once an hour: a sample of every series");
        told.put(
                "TrayRun.growOvernight",
                "once a day: the crop grows by its light, leaf and root longer, fruit set, harvest");
        return told;
    }

    /** The rooms, each above those it uses. */
    static String rooms(Map<String, List<String>> uses) {
        Map<String, List<String>> arrows = House.arrows(uses);
        int top = uses.keySet().stream().mapToInt(room -> level(uses, room)).max().orElseThrow();
        Svg svg = new Svg(4 * COLUMN_STEP, (top + 1) * ROW_STEP + 20);
        for (String room : Rooms.NAMES) {
            for (String other : arrows.get(room)) {
                arrow(svg, uses, top, room, other);
            }
        }
        for (String room : Rooms.NAMES) {
            double x = x(room);
            double y = y(uses, top, room);
            svg.box(x - WIDTH / 2.0, y - HEIGHT / 2.0, WIDTH, HEIGHT);
            svg.text(x, y - 13, 14, true, true, room);
            List<String> lines = wrapped(ROOMS_TOLD.get(room), 34);
            for (int i = 0; i < Math.min(2, lines.size()); i++) {
                svg.text(x, y + 6 + 13 * i, 10, false, true, lines.get(i));
            }
        }
        return svg.toString();
    }

    private static void arrow(
            Svg svg, Map<String, List<String>> uses, int top, String room, String other) {
        double fromX = x(room);
        double fromY = y(uses, top, room);
        double toX = x(other);
        double toY = y(uses, top, other);
        if (fromX == toX) {
            svg.arrow(fromX, fromY + HEIGHT / 2.0, toX, toY - HEIGHT / 2.0 - 1);
        } else if (column(room) == CENTRE) {
            svg.arrow(fromX, fromY, toX, fromY, toX, toY - HEIGHT / 2.0 - 1);
        } else {
            double side = Math.signum(fromX - toX) * (WIDTH / 2.0 + 1);
            svg.arrow(fromX, fromY, fromX, toY, toX + side, toY);
        }
    }

    private static int column(String room) {
        return COLUMN.getOrDefault(room, CENTRE);
    }

    private static double x(String room) {
        return COLUMN_STEP * (column(room) + 0.5);
    }

    private static double y(Map<String, List<String>> uses, int top, String room) {
        return ROW_STEP * (top - level(uses, room)) + 45;
    }

    /** Rooms on the way from a room to the ground, by the longest way. */
    private static int level(Map<String, List<String>> uses, String room) {
        return uses.get(room).stream().mapToInt(other -> 1 + level(uses, other)).max().orElse(0);
    }

    /** One step from top to bottom. */
    static String step(List<String> calls) {
        int row = 56;
        Svg svg = new Svg(860, row * calls.size() + 20);
        for (int i = 0; i < calls.size(); i++) {
            String call = calls.get(i);
            double y = 30 + row * i;
            svg.box(10, y - 18, 210, 36);
            svg.text(115, y + 4, 12, true, true, call);
            svg.text(235, y + 4, 12, false, false, TOLD.getOrDefault(call, "?"));
            if (i + 1 < calls.size()) {
                svg.arrow(115, y + 18, 115, y + row - 19);
            }
        }
        return svg.toString();
    }

    /** Whether every call is told of, and nothing else. */
    static List<String> untold(List<String> calls) {
        List<String> wrong = new ArrayList<>();
        calls.stream().filter(call -> !TOLD.containsKey(call)).forEach(wrong::add);
        TOLD.keySet().stream().filter(call -> !calls.contains(call)).forEach(wrong::add);
        return wrong;
    }

    private static List<String> wrapped(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            if (line.length() > 0 && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    /** A drawing of boxes, words and arrows; black on white, so that any printer will do. */
    private static final class Svg {
        private final StringBuilder body = new StringBuilder();

        Svg(int width, int height) {
            put(
                    """
                    <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" font-family="sans-serif">
                    <defs><marker id="tip" viewBox="0 0 8 8" refX="8" refY="4" markerWidth="8" markerHeight="8" orient="auto">
                    <path d="M0,0 L8,4 L0,8 z"/></marker></defs>
                    <rect width="100%%" height="100%%" fill="white"/>
                    """,
                    width, height);
        }

        private void put(String format, Object... values) {
            body.append(String.format(Locale.ROOT, format, values));
        }

        void box(double x, double y, double width, double height) {
            put(
                    "<rect x=\"%.0f\" y=\"%.0f\" width=\"%.0f\" height=\"%.0f\" rx=\"4\""
                            + " fill=\"#f2f2f2\" stroke=\"black\"/>\n",
                    x, y, width, height);
        }

        void text(double x, double y, int size, boolean bold, boolean centred, String words) {
            put(
                    "<text x=\"%.0f\" y=\"%.0f\" font-size=\"%d\"%s%s>%s</text>\n",
                    x,
                    y,
                    size,
                    bold ? " font-weight=\"bold\"" : "",
                    centred ? " text-anchor=\"middle\"" : "",
                    words.replace("&", "&amp;").replace("<", "&lt;"));
        }

        void arrow(double... points) {
            put("<polyline fill=\"none\" stroke=\"black\" marker-end=\"url(#tip)\" points=\"");
            for (int i = 0; i < points.length; i += 2) {
                put("%s%.0f,%.0f", i > 0 ? " " : "", points[i], points[i + 1]);
            }
            put("\"/>\n");
        }

        @Override
        public String toString() {
            return body + "</svg>\n";
        }
    }
}
