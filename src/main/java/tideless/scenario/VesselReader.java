package tideless.scenario;

import static tideless.scenario.Measure.plain;

import java.util.ArrayList;
import java.util.List;
import tideless.rig.Reservoir;
import tideless.rig.Shape;
import tideless.rig.Tube;

/** Reads the inside of a tray or reservoir, and the tubes between. */
final class VesselReader {
    private VesselReader() {}

    /** Null when faulty. */
    static Shape shape(Table vessel) {
        String kind;
        if (vessel.meant("shape")) {
            kind = vessel.choice("shape");
        } else {
            kind = vessel.has("diameter") ? "cylinder" : "box";
            vessel.holds("shape", kind);
        }
        double depthM = vessel.quantity("depth");
        if (kind == null) {
            return null;
        }
        vessel.refuseWhatDoesNotGoWith("shape", kind);
        boolean round = kind.equals("cylinder") || kind.equals("bucket");
        if (vessel.has("volume") && (kind.equals("box") || kind.equals("cylinder"))) {
            return byVolume(vessel, depthM, round);
        }
        if (round) {
            double rimM = needed(vessel, "diameter");
            double floorM =
                    kind.equals("bucket")
                            ? narrower(vessel, "floor_diameter", rimM, "diameter")
                            : rimM;
            if (Double.isNaN(rimM + floorM + depthM)) {
                return null;
            }
            return Shape.bucket(rimM, floorM, depthM);
        }
        double lengthM = needed(vessel, "length");
        double widthM = needed(vessel, "width");
        boolean tub = kind.equals("tub");
        double floorLengthM = tub ? narrower(vessel, "floor_length", lengthM, "length") : lengthM;
        double floorWidthM = tub ? narrower(vessel, "floor_width", widthM, "width") : widthM;
        if (Double.isNaN(lengthM + widthM + floorLengthM + floorWidthM + depthM)) {
            return null;
        }
        return Shape.tub(lengthM, widthM, floorLengthM, floorWidthM, depthM);
    }

    private static Shape byVolume(Table vessel, double depthM, boolean round) {
        for (String side : new String[] {"length", "width", "diameter"}) {
            if (vessel.has(side)) {
                vessel.fault(
                        side,
                        Key.quoted(vessel.words(side)) + " beside volume",
                        "the sides, or volume and depth",
                        "");
            }
        }
        double volumeM3 = vessel.quantity("volume");
        if (Double.isNaN(volumeM3 + depthM)) {
            return null;
        }
        if (!(volumeM3 / depthM < 1000)) {
            vessel.faultyValue("volume", "an area below 1000 m2 with this depth", "");
            return null;
        }
        return round ? Shape.cylinderOf(volumeM3, depthM) : Shape.boxOf(volumeM3, depthM);
    }

    private static double needed(Table vessel, String side) {
        if (!vessel.meant(side)) {
            vessel.missing(side);
            return Double.NaN;
        }
        return vessel.quantityOr(side, Double.NaN, "");
    }

    private static double narrower(Table vessel, String side, double rimM, String rimSide) {
        double floorM = needed(vessel, side);
        if (floorM > rimM) {
            vessel.faultyValue(
                    side, "up to %s (%s)".formatted(rimSide, where(vessel, rimSide, rimM)), "");
            return Double.NaN;
        }
        return floorM;
    }

    /** Null when faulty. */
    static Tube tube(Table tubing, Fitting usual) {
        double boreM = tubing.quantity("bore");
        double lengthM = tubing.quantity("length");
        double loss;
        if (tubing.has("loss")) {
            loss = tubing.quantity("loss");
            if (tubing.has("fittings")) {
                tubing.faultyValue("fittings", "either fittings or loss", "");
            }
        } else if (tubing.meant("fittings")) {
            List<String> names = tubing.names("fittings");
            loss = names == null ? Double.NaN : 0;
            for (String name : names == null ? List.<String>of() : names) {
                loss += Fitting.of(name).lossCoefficient();
            }
        } else {
            tubing.holds("fittings", "[\"" + usual.spelling() + "\"]");
            loss = usual.lossCoefficient();
        }
        return Double.isNaN(boreM + lengthM + loss) ? null : new Tube(boreM, lengthM, loss);
    }

    /** Null when faulty. */
    static Reservoir reservoir(Table table) {
        Shape shape = shape(table);
        double depthM = table.quietly("depth");
        double fullM = table.quantityOr("full_level", depthM, cm(depthM) + ", the rim");
        double outletM = table.quantity("outlet_height");
        double floorM = table.quantity("floor_above_bench");
        Boolean lid = table.flag("lid");
        String when = table.choice("refill");
        double belowFrac = 0.5;
        if (when != null) {
            table.refuseWhatDoesNotGoWith("refill", when);
            if (when.equals("when low at a visit")) {
                belowFrac = table.quantity("refill_below");
            }
        }
        Tube trunk = tube(table.child("tubing"), Fitting.ENTRANCE);
        List<Boolean> good = new ArrayList<>();
        good.add(atMost(table, "full_level", fullM, "the rim", "depth", depthM, ""));
        good.add(
                below(
                        table,
                        "outlet_height",
                        outletM,
                        "the full level",
                        "full_level",
                        fullM,
                        "Nothing could leave."));
        double startM = start(table, shape, fullM);
        if (shape == null
                || lid == null
                || when == null
                || trunk == null
                || good.contains(false)
                || Double.isNaN(fullM + outletM + floorM + belowFrac + startM)) {
            return null;
        }
        return new Reservoir(
                table.name(),
                shape,
                fullM,
                outletM,
                floorM,
                lid ? 0 : shape.rimAreaM2(),
                startM,
                new Reservoir.Refill(whenOf(when), belowFrac),
                trunk);
    }

    private static Reservoir.Refill.When whenOf(String words) {
        return switch (words) {
            case "when it would not last" -> Reservoir.Refill.When.BEFORE_NEXT_VISIT;
            case "when low at a visit" -> Reservoir.Refill.When.LOW_AT_VISIT;
            case "at every visit" -> Reservoir.Refill.When.EVERY_VISIT;
            case "when empty" -> Reservoir.Refill.When.WHEN_EMPTY;
            case "never" -> Reservoir.Refill.When.NEVER;
            default -> throw new AssertionError("no occasion for " + words);
        };
    }

    private static double start(Table table, Shape shape, double fullM) {
        if (!table.meant("start")) {
            if (!Double.isNaN(fullM)) {
                table.holds("start", "full, " + cm(fullM));
            }
            return fullM;
        }
        if (!table.has("start")) {
            return Double.NaN;
        }
        Measure.Read start = table.measure("start");
        if (!start.good() || shape == null || Double.isNaN(fullM)) {
            return Double.NaN;
        }
        double levelM = start.value();
        double fullM3 = shape.volumeM3(fullM);
        if (start.table() == UnitTable.SHARE) {
            levelM = shape.levelM(start.value() * fullM3);
        } else if (start.table() == UnitTable.VOLUME) {
            levelM = shape.levelM(start.value());
        }
        if (levelM > fullM * (1 + 1e-9)) {
            table.faultyValue(
                    "start",
                    "up to full: %s, or %s L, or 100 %%".formatted(cm(fullM), plain(fullM3 * 1000)),
                    "");
            return Double.NaN;
        }
        return Math.min(levelM, fullM);
    }

    // Comparisons of one height with another, in the words of the user's own file.

    /** Says so and gives false when a height lies above another; NaN is never above. */
    static boolean atMost(
            Table table,
            String key,
            double heightM,
            String limitName,
            String limitKey,
            double limitM,
            String hint) {
        if (heightM > limitM + 1e-9) {
            table.faultyValue(
                    key,
                    "up to %s (%s)".formatted(limitName, where(table, limitKey, limitM)),
                    hint);
            return false;
        }
        return true;
    }

    /** Likewise when it does not lie below. */
    static boolean below(
            Table table,
            String key,
            double heightM,
            String limitName,
            String limitKey,
            double limitM,
            String hint) {
        if (heightM >= limitM - 1e-9) {
            table.fault(
                    key,
                    found(table, key, heightM),
                    "below %s (%s)".formatted(limitName, where(table, limitKey, limitM)),
                    hint);
            return false;
        }
        return true;
    }

    /** The user's own words, or the default that holds. */
    static String found(Table table, String key, double heightM) {
        return table.has(key) ? Key.quoted(table.words(key)) : cm(heightM) + ", the default";
    }

    /** A height and where it was stated. */
    static String where(Table table, String key, double heightM) {
        return table.has(key)
                ? table.words(key) + ", line " + table.line(key)
                : cm(heightM) + ", the default";
    }

    static String cm(double heightM) {
        return plain(heightM, UnitTable.LENGTH, "cm");
    }
}
