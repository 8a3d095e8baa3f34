package tideless.drawing;

import java.util.List;
import tideless.rig.Filling;
import tideless.rig.Limits;
import tideless.rig.Reservoir;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.sim.ReservoirTrace;
import tideless.sim.Trace;
import tideless.words.RigWords;

/** The whole rig at one scale: reservoirs at their heights, a tray of each kind on the bench. */
final class Overview {
    private static final double MOST_HIGH = 150;
    private static final double LINE = 14;

    /** Between two vessels, units; room for a tube, and less where many stand. */
    private static final double GAP = 22;

    /** Gaps take no more than this of the width. */
    private static final double MOST_GAPS_FRAC = 0.5;

    /** Tubes of two reservoirs run so far apart, units. */
    private static final double APART = 3;

    /** How wide a letter may be on an average, units. */
    private static final double LETTER = 5.6;

    /** A lamp is drawn so far above the rim, m; nothing tells how high it hangs. */
    private static final double LAMP_M = 0.3;

    private final Trace trace;
    private final List<Alike> groups;
    private final int hour;
    private final double gap;
    private final double unitsPerM;
    private final double top;
    private final double bench;

    /** Laid out from a height on. */
    Overview(Trace trace, List<Alike> groups, int hour, double from) {
        this.trace = trace;
        this.groups = groups;
        this.hour = hour;
        double widthM = 0;
        double highestM = 0.1;
        double lowestM = 0;
        for (ReservoirTrace run : trace.reservoirs()) {
            Reservoir reservoir = run.reservoir();
            widthM += rimM(reservoir.shape());
            highestM =
                    Math.max(highestM, reservoir.floorAboveBenchM() + reservoir.shape().depthM());
            lowestM = Math.min(lowestM, reservoir.floorAboveBenchM());
        }
        for (Alike group : groups) {
            Tray tray = group.tray();
            widthM += rimM(tray.shape());
            highestM = Math.max(highestM, tray.floorAboveBenchM() + tray.shape().depthM() + LAMP_M);
            lowestM = Math.min(lowestM, tray.floorAboveBenchM());
        }
        int vessels = trace.reservoirs().size() + groups.size();
        double room = RigPicture.WIDTH - 2 * RigPicture.EDGE;
        gap = Math.min(GAP, room * MOST_GAPS_FRAC / Math.max(1, vessels));
        unitsPerM = Math.min((room - gap * vessels) / widthM, MOST_HIGH / (highestM - lowestM));
        top = from + 4;
        bench = top + highestM * unitsPerM;
        this.bottom = bench - lowestM * unitsPerM + 8;
    }

    private final double bottom;
    private double labelledTo;

    private static double rimM(Shape shape) {
        return shape.acrossM(shape.depthM());
    }

    /** Where it ends, names of the reservoirs included. */
    double bottom() {
        return captions() + LINE * (trace.reservoirs().size() + 1);
    }

    /** Where the names begin: below the numbers of trays alike, where there are such. */
    private double captions() {
        boolean isCounted = groups.stream().anyMatch(group -> group.trays().size() > 1);
        return isCounted ? bottom + LINE : bottom;
    }

    void draw(Svg svg) {
        svg.line(RigPicture.EDGE, bench, RigPicture.WIDTH - RigPicture.EDGE, bench, "bench");
        double x = RigPicture.EDGE + gap / 2;
        double[] outletX = new double[trace.reservoirs().size()];
        for (int i = 0; i < outletX.length; i++) {
            ReservoirTrace run = trace.reservoirs().get(i);
            double width = rimM(run.reservoir().shape()) * unitsPerM;
            reservoir(svg, run, x, width);
            outletX[i] = x + width;
            x += width + gap;
        }
        for (Alike group : groups) {
            double width = rimM(group.tray().shape()) * unitsPerM;
            tube(svg, group.tray(), x, outletX);
            tray(svg, group, x, width);
            x += width + gap;
        }
        double y = captions() + LINE - 4;
        for (ReservoirTrace run : trace.reservoirs()) {
            svg.label(RigPicture.EDGE, y, "text", RigWords.litres(run, hour));
            y += LINE;
        }
    }

    private double y(double aboveBenchM) {
        return bench - aboveBenchM * unitsPerM;
    }

    private void reservoir(Svg svg, ReservoirTrace run, double x, double width) {
        Reservoir reservoir = run.reservoir();
        Shape shape = reservoir.shape();
        double floor = reservoir.floorAboveBenchM();
        double levelM = shape.levelM(run.volumeM3().at(hour));
        double deadM = Math.min(levelM, reservoir.outletLevelM());
        water(svg, shape, floor, x, width, levelM, salt(run));
        water(svg, shape, floor, x, width, deadM, null);
        wall(svg, shape, floor, x, width);
        double outlet = y(floor + reservoir.outletLevelM());
        svg.line(x + width - 3, outlet, x + width + gap / 2, outlet, "tube");
        if (floor > 0) {
            svg.line(x + 3, y(floor), x + 3, bench, "measure");
            String height = RigWords.height("", floor);
            if (x + 6 >= labelledTo) { // or it would lie over that of the reservoir before
                svg.label(x + 6, (y(floor) + bench) / 2 + 4, "small", height);
                labelledTo = x + 6 + LETTER * height.length();
            }
        }
    }

    /** From the outlet down beside the reservoir and along to the tray's seat. */
    private void tube(Svg svg, Tray tray, double x, double[] outletX) {
        if (!(tray.filling() instanceof Filling.ByValve valve)) {
            return;
        }
        int which = trace.scenario().reservoirOf(valve);
        Reservoir reservoir = trace.scenario().reservoirs().get(which);
        double from = y(reservoir.floorAboveBenchM() + reservoir.outletLevelM());
        double seat = y(tray.floorAboveBenchM() + valve.seatAboveFloorM());
        double along = y(tray.floorAboveBenchM() + tray.shape().depthM()) - 5 - APART * which;
        double down = outletX[which] + gap / 2;
        svg.path("tube", down, from, down, along, x + 4, along, x + 4, seat);
    }

    private void tray(Svg svg, Alike group, double x, double width) {
        Tray tray = group.tray();
        Shape shape = tray.shape();
        double floor = tray.floorAboveBenchM();
        double levelM = group.drawn().levelM().at(hour);
        Limits limits = Salt.limits(trace, group.drawn(), hour);
        Salt salt = Salt.of(group.drawn().ecMsPerCm().at(hour), limits);
        water(svg, shape, floor, x, width, levelM, salt);
        wall(svg, shape, floor, x, width);
        double rim = y(floor + tray.deck().undersideM(levelM, shape.depthM()));
        svg.line(x, rim, x + width, rim, "deck");
        if (Scene.stands(trace, group.drawn(), hour)) {
            int plants = group.plantsAcross();
            for (int i = 0; i < plants; i++) {
                double at = x + width * (i + 0.5) / plants;
                Sprout.draw(svg, at, rim, Sprout.share(group.drawn(), hour), false);
            }
        }
        if (tray.lamp().isElectric()) {
            double lamp = y(floor + shape.depthM() + LAMP_M);
            svg.box(x + width * 0.2, lamp, width * 0.6, 4, "lamp");
        }
        if (group.trays().size() > 1) {
            svg.label(x + width / 2 - 8, bench + 12, "small", group.trays().size() + " x");
        }
    }

    /** Held against the band of the first tray that it feeds. */
    private Salt salt(ReservoirTrace run) {
        for (Alike group : groups) {
            if (group.tray().isFedBy(run.reservoir().name())) {
                Limits limits = Salt.limits(trace, group.drawn(), hour);
                return Salt.of(run.ecMsPerCm().at(hour), limits);
            }
        }
        return Salt.WITHIN;
    }

    /** From the floor to a level; of what never leaves no salts are told. */
    private void water(
            Svg svg, Shape shape, double floorM, double x, double width, double toM, Salt salt) {
        if (toM > 0) {
            double low = shape.acrossM(0) * unitsPerM / 2;
            double high = shape.acrossM(toM) * unitsPerM / 2;
            double middle = x + width / 2;
            double bottomY = y(floorM);
            double topY = y(floorM + toM);
            double[] corners = {
                middle - low,
                bottomY,
                middle + low,
                bottomY,
                middle + high,
                topY,
                middle - high,
                topY
            };
            if (salt == null) {
                svg.area("dead", corners);
            } else {
                svg.water(salt, corners);
            }
        }
    }

    private void wall(Svg svg, Shape shape, double floorM, double x, double width) {
        double inset = width / 2 - shape.acrossM(0) * unitsPerM / 2;
        double rim = y(floorM + shape.depthM());
        double floor = y(floorM);
        svg.path("wall", x, rim, x + inset, floor, x + width - inset, floor, x + width, rim);
    }
}
