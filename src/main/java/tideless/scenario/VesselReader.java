package tideless.scenario;

import static tideless.scenario.VesselKeys.DIAMETER;
import static tideless.scenario.VesselKeys.FLOOR_DIAMETER;
import static tideless.scenario.VesselKeys.FLOOR_LENGTH;
import static tideless.scenario.VesselKeys.FLOOR_WIDTH;
import static tideless.scenario.VesselKeys.LENGTH;
import static tideless.scenario.VesselKeys.SHAPE;
import static tideless.scenario.VesselKeys.VOLUME;
import static tideless.scenario.VesselKeys.WIDTH;

import java.util.List;
import tideless.rig.Shape;
import tideless.rig.Tube;

/** Reads the inside of a tray or reservoir, and the tubes between. */
final class VesselReader {
    private final Table vessel;
    private final Read<Double> depth;

    private VesselReader(Table vessel, Key<Double> depth) {
        this.vessel = vessel;
        this.depth = vessel.get(depth);
    }

    static Read<Shape> shape(Table vessel, Key<Double> depth) {
        return new VesselReader(vessel, depth).shape();
    }

    private Read<Shape> shape() {
        Read<String> kind =
                vessel.getOr(
                        SHAPE, Read.of(vessel.has(DIAMETER) ? "cylinder" : "box"), usual -> usual);
        if (!kind.isSound()) {
            return Read.faulty();
        }
        vessel.narrow(SHAPE, kind.value());
        boolean round = kind.value().equals("cylinder") || kind.value().equals("bucket");
        boolean tapered = kind.value().equals("tub") || kind.value().equals("bucket");
        if (vessel.has(VOLUME) && !tapered) {
            return byVolume(round);
        }
        return round ? round(tapered) : rectangular(tapered);
    }

    private Read<Shape> round(boolean tapered) {
        Read<Double> rim = needed(DIAMETER);
        Read<Double> floor = tapered ? narrower(FLOOR_DIAMETER, rim, DIAMETER) : rim;
        if (!Read.allSound(rim, floor, depth)) {
            return Read.faulty();
        }
        return Read.of(Shape.bucket(rim.value(), floor.value(), depth.value()));
    }

    private Read<Shape> rectangular(boolean tapered) {
        Read<Double> length = needed(LENGTH);
        Read<Double> width = needed(WIDTH);
        Read<Double> floorLength = tapered ? narrower(FLOOR_LENGTH, length, LENGTH) : length;
        Read<Double> floorWidth = tapered ? narrower(FLOOR_WIDTH, width, WIDTH) : width;
        if (!Read.allSound(length, width, floorLength, floorWidth, depth)) {
            return Read.faulty();
        }
        return Read.of(
                Shape.tub(
                        length.value(),
                        width.value(),
                        floorLength.value(),
                        floorWidth.value(),
                        depth.value()));
    }

    private Read<Shape> byVolume(boolean round) {
        for (Key<?> side : List.of(LENGTH, WIDTH, DIAMETER)) {
            if (vessel.has(side)) {
                vessel.fault(
                        side,
                        Key.quoted(vessel.words(side)) + " beside volume",
                        "the sides, or volume and depth",
                        "");
            }
        }
        Read<Double> volume = vessel.get(VOLUME);
        if (!Read.allSound(volume, depth)) {
            return Read.faulty();
        }
        double volumeM3 = volume.value();
        double depthM = depth.value();
        if (!(volumeM3 / depthM < 1000)) {
            vessel.faultyValue(VOLUME, "an area below 1000 m2 with this depth", "");
            return Read.faulty();
        }
        return Read.of(round ? Shape.cylinderOf(volumeM3, depthM) : Shape.boxOf(volumeM3, depthM));
    }

    private Read<Double> needed(Key<Double> side) {
        Read<Double> read = vessel.get(side);
        return read.isAbsent() ? vessel.missing(side) : read;
    }

    private Read<Double> narrower(Key<Double> side, Read<Double> rim, Key<Double> rimSide) {
        Read<Double> floor = needed(side);
        if (floor.holds(floorM -> rim.holds(rimM -> floorM > rimM))) {
            vessel.faultyValue(
                    side,
                    "up to %s (%s)"
                            .formatted(rimSide.name(), Heights.where(vessel, rimSide, rim.value())),
                    "");
            return Read.faulty();
        }
        return floor;
    }

    static Read<Tube> tube(Table tubing, TubingKeys keys) {
        boolean sound = tubing.isSound();
        Read<Double> loss = tubing.get(keys.loss);
        if (tubing.has(keys.loss)) {
            if (tubing.has(keys.fittings)) {
                tubing.faultyValue(keys.fittings, "either fittings or loss", "");
            }
        } else {
            String usual = "[\"" + keys.usual.spelling() + "\"]";
            loss =
                    tubing.getOr(keys.fittings, Read.of(List.of(keys.usual)), list -> usual)
                            .map(VesselReader::sum);
        }
        return sound && loss.isSound()
                ? Read.of(
                        new Tube(tubing.value(keys.bore), tubing.value(keys.length), loss.value()))
                : Read.faulty();
    }

    private static double sum(List<Fitting> fittings) {
        double sum = 0;
        for (Fitting fitting : fittings) {
            sum += fitting.lossCoefficient();
        }
        return sum;
    }
}
