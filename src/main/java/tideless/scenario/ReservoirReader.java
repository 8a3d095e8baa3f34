package tideless.scenario;

import static tideless.scenario.Measure.plain;
import static tideless.scenario.ReservoirKeys.DEPTH;
import static tideless.scenario.ReservoirKeys.FLOOR_ABOVE_BENCH;
import static tideless.scenario.ReservoirKeys.FULL_LEVEL;
import static tideless.scenario.ReservoirKeys.LID;
import static tideless.scenario.ReservoirKeys.OUTLET_HEIGHT;
import static tideless.scenario.ReservoirKeys.REFILL;
import static tideless.scenario.ReservoirKeys.REFILL_BELOW;
import static tideless.scenario.ReservoirKeys.START;

import java.util.List;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Shape;
import tideless.rig.Tube;

/** Reads one reservoir. */
final class ReservoirReader {
    /** Stands in a record where no share is asked for. */
    private static final double UNUSED_SHARE = 0.5;

    private ReservoirReader() {}

    static Read<Reservoir> read(Table table, Run run) {
        Read<Shape> shape = VesselReader.shape(table, DEPTH);
        Read<Double> depth = table.get(DEPTH);
        Read<Double> full = table.getOr(FULL_LEVEL, depth, Heights::rim);
        Read<Double> outlet = table.get(OUTLET_HEIGHT);
        Read<Reservoir.Refill.When> when = table.get(REFILL);
        if (when.isSound()) {
            table.narrow(REFILL, whenWords(table));
        }
        boolean sound = table.isSound();
        Read<Tube> trunk = VesselReader.tube(table.child("tubing"), TubingKeys.TRUNK);
        sound &= Heights.atMost(table, FULL_LEVEL, full, "the rim", DEPTH, depth);
        sound &=
                Heights.below(
                        table,
                        OUTLET_HEIGHT,
                        outlet,
                        "the full level",
                        FULL_LEVEL,
                        full,
                        "Nothing could leave.");
        Read<Double> start = start(table, shape, full);
        Read<Pouring> with =
                PouringReader.read(
                        table,
                        ReservoirKeys.WITH,
                        ReservoirKeys.WATER,
                        ReservoirKeys.WATER_SHARE,
                        run);
        sound &= pours(table, when);
        if (!sound || !Read.allSound(shape, full, when, trunk, start, with)) {
            return Read.faulty();
        }
        double belowFrac =
                when.value() == Reservoir.Refill.When.LOW_AT_VISIT
                        ? table.value(REFILL_BELOW)
                        : UNUSED_SHARE;
        return Read.of(
                new Reservoir(
                        table.name(),
                        shape.value(),
                        full.value(),
                        outlet.value(),
                        table.value(FLOOR_ABOVE_BENCH),
                        table.value(LID) ? 0 : shape.value().rimAreaM2(),
                        start.value(),
                        new Reservoir.Refill(when.value(), belowFrac, with.value()),
                        trunk.value()));
    }

    /** Whether water is asked for only where something is poured. */
    private static boolean pours(Table table, Read<Reservoir.Refill.When> when) {
        boolean never = when.holds(Reservoir.Refill.When.NEVER::equals);
        for (Key<?> key :
                List.of(ReservoirKeys.WITH, ReservoirKeys.WATER, ReservoirKeys.WATER_SHARE)) {
            if (never && table.has(key)) {
                table.faultyValue(key, "only where it is refilled: refill is \"never\"", "");
                return false;
            }
        }
        return true;
    }

    private static String whenWords(Table table) {
        return table.has(REFILL) ? table.words(REFILL) : REFILL.fallback();
    }

    /** Level at the start, m. */
    private static Read<Double> start(Table table, Read<Shape> shape, Read<Double> full) {
        Read<Measure> start = table.get(START);
        if (start.isAbsent()) {
            if (full.isSound()) {
                table.holds(START, "full, " + Heights.cm(full.value()));
            }
            return full;
        }
        if (!Read.allSound(start, shape, full)) {
            return Read.faulty();
        }
        double fullM = full.value();
        double fullM3 = shape.value().volumeM3(fullM);
        double levelM = start.value().value();
        if (start.value().table() == UnitTable.SHARE) {
            levelM = shape.value().levelM(levelM * fullM3);
        } else if (start.value().table() == UnitTable.VOLUME) {
            levelM = shape.value().levelM(levelM);
        }
        if (levelM > fullM * (1 + 1e-9)) {
            table.faultyValue(
                    START,
                    "up to full: %s, or %s L, or 100 %%"
                            .formatted(Heights.cm(fullM), plain(fullM3 * 1000)),
                    "");
            return Read.faulty();
        }
        return Read.of(Math.min(levelM, fullM));
    }
}
