package tideless.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tideless.rig.Filling;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.sim.Trace;
import tideless.words.RigWords;

/** A tray cut across, to scale: cup, deck, roots, level and its range, valve, overflow. */
final class TraySection {
    /** Most of the width that the tray itself takes, units; the labels stand right of it. */
    private static final double WIDE = 170;

    private static final double GAP = 8;
    private static final double LINE = 13;

    /** Mouth and underside of a cup, m: assumed, for the drawing alone. */
    private static final double CUP_MOUTH_M = 0.05;

    private static final double CUP_UNDERSIDE_M = 0.036;

    /** Height of an overflow hole of unstated bore, m: assumed, for the drawing alone. */
    private static final double HOLE_M = 0.012;

    private final Svg svg;
    private final Trace trace;
    private final Alike group;
    private final int hour;
    private final double unitsPerM;
    private final double floorY;
    private final Tray tray;
    private final Shape shape;
    private final double levelM;
    private final double cupM;
    private final double deckM;
    private final double left = RigPicture.EDGE;
    private final double right;
    private final boolean cut;
    private final double cutX;

    TraySection(Svg svg, Trace trace, Alike group, int hour, double unitsPerM, double floorY) {
        this.svg = svg;
        this.trace = trace;
        this.group = group;
        this.hour = hour;
        this.unitsPerM = unitsPerM;
        this.floorY = floorY;
        tray = group.tray();
        shape = tray.shape();
        levelM = group.drawn().levelM().at(hour);
        cupM = tray.deck().cupBottomM(levelM, shape.depthM(), tray.cupBottomM());
        deckM = tray.deck().undersideM(levelM, shape.depthM());
        double rim = shape.acrossM(shape.depthM()) * unitsPerM;
        cut = rim > WIDE;
        right = left + Math.min(WIDE, rim);
        cutX = left + (right - left) * 0.58;
    }

    private double y(double aboveFloorM) {
        return floorY - aboveFloorM * unitsPerM;
    }

    /** How far a wall leans in from the rim at a height, units. */
    private double lean(double heightM) {
        return (shape.acrossM(shape.depthM()) - shape.acrossM(heightM)) * unitsPerM / 2;
    }

    void draw() {
        boolean stands = Scene.stands(trace, group.drawn(), hour);
        svg.open("g", "class", stands ? "tray" : "tray faded");
        water();
        boolean lost = Scene.isLost(trace, group.drawn(), hour);
        for (double x : cups()) {
            if (stands && tray.planting().plants() > 0) {
                roots(x);
                Sprout.draw(svg, x, y(deckM) - 3, Sprout.share(group.drawn(), hour), lost);
            }
            cup(x);
        }
        walls();
        if (tray.filling() instanceof Filling.ByValve valve) {
            valve(valve);
        }
        if (cut) {
            opening();
        }
        svg.close("g");
        range();
        labels(stands);
    }

    private double[] cups() {
        int plants = group.plantsAcross();
        if (cut) {
            double first = (left + cutX) / 2 + 8;
            return plants > 1 ? new double[] {first, (cutX + GAP + right) / 2} : one(first);
        }
        double[] x = new double[plants];
        for (int i = 0; i < plants; i++) {
            x[i] = left + (right - left) * (i + 0.5) / plants;
        }
        return x;
    }

    private static double[] one(double x) {
        return new double[] {x};
    }

    private void water() {
        if (levelM > 0) {
            double low = lean(0);
            double high = lean(levelM);
            double ec = group.drawn().ecMsPerCm().at(hour);
            svg.water(
                    Salt.of(ec, Salt.limits(trace, group.drawn(), hour)),
                    left + low,
                    y(0),
                    right - low,
                    y(0),
                    right - high,
                    y(levelM),
                    left + high,
                    y(levelM));
            svg.line(left + high, y(levelM), right - high, y(levelM), "surface");
        }
    }

    private void cup(double x) {
        double mouth = CUP_MOUTH_M * unitsPerM / 2;
        double underside = CUP_UNDERSIDE_M * unitsPerM / 2;
        svg.path(
                "cup",
                x - mouth,
                y(deckM),
                x - underside,
                y(cupM),
                x + underside,
                y(cupM),
                x + mouth,
                y(deckM));
    }

    /** Strands from the cup down to the tips, and along the floor where they have come to it. */
    private void roots(double x) {
        double tipM = Math.min(cupM, group.drawn().rootTipM().at(hour));
        double half = CUP_UNDERSIDE_M * unitsPerM / 2;
        for (int strand = -1; strand <= 1; strand++) {
            double from = x + strand * half * 0.6;
            double to = x + strand * half * 1.1;
            double lengthM = cupM - tipM;
            double surfaceM = Math.max(tipM, Math.min(cupM, levelM));
            double share = lengthM > 0 ? (cupM - surfaceM) / lengthM : 0;
            double middle = from + share * (to - from);
            if (surfaceM < cupM) {
                svg.line(from, y(cupM), middle, y(surfaceM), "air-root");
            }
            if (surfaceM > tipM) {
                svg.line(middle, y(surfaceM), to, y(tipM), "wet-root");
            }
            if (tipM <= 0.001 && levelM > 0.001) {
                double along = to + strand * half * 1.6;
                double end = Math.max(left + lean(0) + 2, Math.min(right - lean(0) - 2, along));
                svg.line(to, y(0) - 1.5, end, y(0) - 1.5, "wet-root");
            }
        }
    }

    private void walls() {
        double low = lean(0);
        double over = tray.overflowM();
        double hole =
                tray.overflowBoreM().orElse(Math.min(HOLE_M, shape.depthM() - tray.overflowM()));
        svg.path("wall", left, y(shape.depthM()), left + low, y(0), right - low, y(0));
        svg.line(right - low, y(0), right - lean(over), y(over), "wall");
        if (over + hole < shape.depthM()) {
            svg.line(right - lean(over + hole), y(over + hole), right, y(shape.depthM()), "wall");
        }
        double deck = y(deckM);
        double at = left;
        double mouth = CUP_MOUTH_M * unitsPerM / 2;
        for (double x : cups()) {
            svg.line(at, deck, x - mouth, deck, "deck");
            at = x + mouth;
        }
        svg.line(at, deck, right, deck, "deck");
    }

    private double settingM() {
        if (tray.filling() instanceof Filling.ByValve valve) {
            return valve.settingM(trace.clockAtSample(hour).toLocalDate());
        }
        return tray.filling() instanceof Filling.ByHand hand ? hand.toLevelM() : Double.NaN;
    }

    /** Seat at the left wall, arm, float on the water, and the setting as a dashed line. */
    private void valve(Filling.ByValve valve) {
        double x = left + lean(valve.seatAboveFloorM());
        double seat = y(valve.seatAboveFloorM());
        svg.line(x - 6, seat, x + 6, seat, "tube");
        double floats = Math.min(y(levelM), y(0) - 5);
        svg.line(x + 6, seat, x + 20, floats - 3, "arm");
        svg.element("ellipse", "cx", x + 22, "cy", floats - 1, "rx", 7, "ry", 4, "class", "float");
    }

    private void opening() {
        double top = y(deckM) - 24;
        double bottom = y(0) + 4;
        int teeth = 8;
        double[] area = new double[4 * (teeth + 1)];
        for (int i = 0; i <= teeth; i++) {
            double at = top + (bottom - top) * i / teeth;
            double swing = i % 2 == 0 ? -1.5 : 1.5;
            area[2 * i] = cutX + swing;
            area[2 * i + 1] = at;
            area[area.length - 2 - 2 * i] = cutX + GAP + swing;
            area[area.length - 1 - 2 * i] = at;
        }
        svg.area("gap", area);
    }

    private void range() {
        double x = right + 5;
        svg.line(x, y(group.lowestM()), x, y(group.highestM()), "range");
        svg.line(x - 3, y(group.lowestM()), x + 3, y(group.lowestM()), "range");
        svg.line(x - 3, y(group.highestM()), x + 3, y(group.highestM()), "range");
    }

    /** A word at the right of the tray, led to its height. */
    private record Word(double heightM, String text, String kind) {}

    private void labels(boolean stands) {
        List<Word> words = new ArrayList<>();
        words.add(
                new Word(tray.overflowM(), RigWords.height("overflow", tray.overflowM()), "text"));
        words.add(new Word(cupM, RigWords.height("cups", cupM), "text"));
        words.add(new Word(levelM, RigWords.height("level", levelM), "strong"));
        double settingM = settingM();
        if (settingM > 0) {
            words.add(new Word(settingM, RigWords.filling(settingM, tray.filling()), "text"));
            double to = right - lean(settingM);
            svg.line(left + lean(settingM), y(settingM), to, y(settingM), "setting");
        }
        double tipM = group.drawn().rootTipM().at(hour);
        if (stands && tray.planting().plants() > 0 && tipM < cupM) {
            words.add(new Word(tipM, RigWords.rootTips(tipM), "text"));
        }
        words.sort(Comparator.comparingDouble(Word::heightM).reversed());
        place(words);
    }

    /** From the top down, pushed apart where they would touch, then up off the floor. */
    private void place(List<Word> words) {
        double[] at = new double[words.size()];
        double above = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < at.length; i++) {
            at[i] = Math.max(y(words.get(i).heightM()) + 4, above + LINE);
            above = at[i];
        }
        double below = Math.max(floorY + 4, above - LINE * at.length / 2);
        for (int i = at.length - 1; i >= 0; i--) {
            at[i] = Math.min(at[i], below);
            below = at[i] - LINE;
        }
        for (int i = 0; i < at.length; i++) {
            Word word = words.get(i);
            svg.path("leader", right + 9, y(word.heightM()), right + 20, at[i] - 4);
            svg.label(right + 22, at[i], word.kind(), word.text());
        }
    }
}
