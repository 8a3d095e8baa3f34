package tideless.drawing;

import java.util.ArrayList;
import java.util.List;
import tideless.rig.Shape;
import tideless.sim.ReservoirTrace;
import tideless.sim.Trace;
import tideless.study.Forecast;
import tideless.words.Dates;
import tideless.words.MachineWords;
import tideless.words.RigWords;
import tideless.words.Wrap;

/**
 * The rig in section at one hour, as one self-contained SVG text: above, the whole rig with its
 * reservoirs at their heights; below, each kind of tray cut across, larger. Lightness alone tells
 * things apart; a browser in dark mode gets dark paper. A reader for the blind finds title and
 * finding in it.
 */
public final class RigPicture {
    /** Of the picture, in its own units; heights follow. Drawn for a phone: one unit, one pixel. */
    static final double WIDTH = 340;

    /** Left free at both sides. */
    static final double EDGE = 10;

    /** Room for plants above a deck. */
    private static final double PLANTS = 38;

    /** Deepest tray at this many units; labels need some five lines. */
    private static final double DEEP = 92;

    /** One scale for all trays where none is more than so many times as deep as another. */
    private static final double ALIKE = 2.5;

    private static final double LINE = 15;

    /** Of the bar that tells the scale, m. */
    private static final double BAR_M = 0.1;

    /** Of every picture; stands in each but those of {@link #at}. */
    public static final String STYLE =
            """
            .tdl{--ink:#16202a;--soft:#4d5a66;--paper:#fff;--water:#b9d3e6;--dead:#5f7d94;\
            --lean:#ecf4fa;--low:#d5e6f2;--high:#d3a988;--rich:#bd7b52;\
            --leaf:#7fa667;--root:#3d2a12;--lamp:#d8b13c;font:12px system-ui,sans-serif}
            @media(prefers-color-scheme:dark){.tdl{--ink:#eef2f5;--soft:#aab6c0;--paper:#14191e;\
            --water:#31536d;--lean:#1d2b37;--low:#264052;--high:#83573a;--rich:#b5703f;\
            --dead:#9cbbd1;--leaf:#6f9a55;--root:#f0d9b5;--lamp:#e6c65c}}
            @media print{.tdl{--ink:#000;--soft:#333;--paper:#fff;--water:#c4d8e6;--dead:#5f7d94;\
            --lean:#ecf4fa;--low:#dae9f3;--high:#d3a988;--rich:#bd7b52;\
            --leaf:#8fb478;--root:#3d2a12;--lamp:#d8b13c}}
            .tdl text{fill:var(--ink)}.tdl .small{font-size:11px;fill:var(--soft)}
            .tdl .end{text-anchor:end}
            .tdl .strong,.tdl .title{font-weight:700}.tdl .title{font-size:13px}
            .tdl .paper,.tdl .gap{fill:var(--paper)}.tdl .gap{stroke:var(--soft);stroke-width:.7}
            .tdl polyline{fill:none}.tdl .water{fill:var(--water)}
            .tdl [data-ec=lean]{fill:var(--lean)}.tdl [data-ec=low]{fill:var(--low)}
            .tdl [data-ec=high]{fill:var(--high)}.tdl [data-ec=rich]{fill:var(--rich)}
            .tdl .dead{fill:var(--dead);fill-opacity:.75}
            .tdl .surface{stroke:var(--ink);stroke-width:1.4}
            .tdl .wall{stroke:var(--ink);stroke-width:2.2}
            .tdl .deck{stroke:var(--soft);stroke-width:4}
            .tdl .cup{stroke:var(--ink);stroke-width:1.2}
            .tdl .wet-root{stroke:var(--root);stroke-width:2.2}
            .tdl .air-root{stroke:var(--root);stroke-width:1.3;stroke-dasharray:1.5 2.5}
            .tdl .tube{stroke:var(--soft);stroke-width:2}.tdl .arm{stroke:var(--ink)}
            .tdl .float{fill:var(--paper);stroke:var(--ink)}
            .tdl .setting{stroke:var(--ink);stroke-width:1;stroke-dasharray:6 4}
            .tdl .range{stroke:var(--ink);stroke-width:2}
            .tdl .leader,.tdl .measure,.tdl .bench{stroke:var(--soft);stroke-width:.8}
            .tdl .bench{stroke-width:2}.tdl .leaf{fill:var(--leaf);stroke:var(--ink);\
            stroke-width:.6}
            .tdl .lost{fill:var(--paper);stroke:var(--ink);stroke-width:.8}
            .tdl .stem{stroke:var(--ink)}.tdl .lamp{fill:var(--lamp);stroke:var(--ink);\
            stroke-width:.8}
            .tdl .faded{opacity:.45}
            """;

    /** Bold letters to a line: one is some seven units wide on an average. */
    private static final int ROOM = (int) ((WIDTH - 2 * EDGE) / 7);

    private final Trace trace;
    private final double barM;
    private final List<Alike> groups;

    private RigPicture(Trace trace, double barM) {
        this.trace = trace;
        this.barM = barM;
        groups = Alike.of(trace);
    }

    /** Of a run; to be asked for any hour of it. */
    public static RigPicture of(Trace trace) {
        return new RigPicture(trace, BAR_M);
    }

    /**
     * The whole rig, and one tray of it cut across, for a page that plays the season; of one height
     * at every hour, and without {@link #STYLE}, which stands in that page.
     *
     * @param tray its place in the scenario
     * @param hour of the run, from 0
     * @throws IndexOutOfBoundsException when there is no such tray or hour
     */
    public Drawing at(int tray, int hour) {
        List<Alike> below = List.of(Alike.only(trace, trace.trays().get(tray)));
        String title = Dates.visit(trace.clockAtSample(hour), false);
        return drawn("rig-now", title, hour, below, "");
    }

    /**
     * A drawing.
     *
     * @param name in lower case with hyphens, unlike that of any other of the run
     * @param title its hour in words
     * @param finding what is to be seen in it, in words
     * @param svg the whole of it, title and finding within
     */
    public record Drawing(String name, String title, String finding, String svg) {}

    /**
     * One for each of {@link Scene#of}, in its order; all of one height.
     *
     * @param barM length of the bar that tells the scale, a round one in the units shown, m
     */
    public static List<Drawing> scenes(Forecast forecast, double barM) {
        RigPicture picture = new RigPicture(forecast.trace(), barM);
        return Scene.of(forecast).stream().map(picture::draw).toList();
    }

    private Drawing draw(Scene scene) {
        String name = "rig-" + MachineWords.of(scene.moment());
        String title = RigWords.title(scene.moment(), trace, scene.hour());
        return drawn(name, title, scene.hour(), groups, STYLE);
    }

    private Drawing drawn(String name, String title, int hour, List<Alike> below, String style) {
        String finding = finding(hour, below);
        Svg body = new Svg();
        double y = LINE + 3;
        body.label(EDGE, y, "title", title);
        Overview overview = new Overview(trace, groups, hour, y + 6);
        overview.draw(body);
        y = overview.bottom();
        double shared = sharedScale(below);
        for (Alike group : below) {
            Shape shape = group.tray().shape();
            double unitsPerM = shared > 0 ? shared : DEEP / shape.depthM();
            String heading = RigWords.heading(group.trays());
            boolean stands = Scene.stands(trace, group.drawn(), hour);
            String empty = heading + ": " + RigWords.EMPTY;
            List<String> told = Wrap.lines(stands ? heading : empty, ROOM);
            y += LINE * Wrap.lines(empty, ROOM).size(); // of one height, standing or not
            for (int i = 0; i < told.size(); i++) {
                body.label(EDGE, y - (told.size() - 1 - i) * LINE, "strong", told.get(i));
            }
            String lamp = RigWords.lamp(group.tray().lamp());
            if (!lamp.isEmpty()) {
                y += LINE - 1;
                body.label(EDGE, y, "small", lamp);
            }
            double floor = y + PLANTS + Math.max(shape.depthM() * unitsPerM, 4 * LINE);
            new TraySection(body, trace, group, hour, unitsPerM, floor).draw();
            y = floor + 9;
            scaleBar(body, unitsPerM, y, RigWords.range(group.lowestM(), group.highestM()));
            y += LINE;
        }
        Svg head = new Svg();
        head.words("title", title, "id", name + "-title");
        head.words("desc", finding, "id", name + "-finding");
        if (!style.isEmpty()) {
            head.words("style", style);
        }
        return new Drawing(name, title, finding, wrapped(name, head, body, y + 6));
    }

    /** Units to a metre for all trays; 0 where they are too unlike. */
    private static double sharedScale(List<Alike> groups) {
        double deepest = 0;
        double shallowest = Double.POSITIVE_INFINITY;
        for (Alike group : groups) {
            deepest = Math.max(deepest, group.tray().shape().depthM());
            shallowest = Math.min(shallowest, group.tray().shape().depthM());
        }
        return deepest <= ALIKE * shallowest ? DEEP / deepest : 0;
    }

    private void scaleBar(Svg svg, double unitsPerM, double y, String range) {
        double lengthM = unitsPerM > 600 ? barM / 2 : barM;
        double to = EDGE + lengthM * unitsPerM;
        svg.path("measure", EDGE, y, EDGE, y + 5, to, y + 5, to, y);
        svg.label(to + 4, y + 8, "small", RigWords.height("", lengthM));
        svg.label(WIDTH - EDGE, y + 8, "small end", range);
    }

    private static String wrapped(String id, Svg head, Svg body, double height) {
        Svg svg = new Svg();
        svg.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "viewBox",
                "0 0 " + (int) WIDTH + " " + (int) Math.ceil(height),
                "class",
                "tdl",
                "role",
                "img",
                "aria-labelledby",
                id + "-title " + id + "-finding");
        String paper =
                new Svg()
                        .element("rect", "width", "100%", "height", "100%", "class", "paper")
                        .toString();
        return svg + head.toString() + paper + body + "</svg>\n";
    }

    private String finding(int hour, List<Alike> groups) {
        List<String> parts = new ArrayList<>();
        for (ReservoirTrace reservoir : trace.reservoirs()) {
            parts.add(RigWords.finding(reservoir, hour));
        }
        for (Alike group : groups) {
            parts.add(
                    RigWords.finding(
                            group.trays(),
                            group.drawn(),
                            hour,
                            group.lowestM(),
                            group.highestM(),
                            Scene.stands(trace, group.drawn(), hour),
                            Scene.isLost(trace, group.drawn(), hour)));
        }
        return String.join(" ", parts);
    }
}
