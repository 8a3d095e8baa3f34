package tideless.advice;

import java.util.List;
import java.util.OptionalDouble;
import tideless.rig.Planting;
import tideless.rig.Tending;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Trace;

/** Plants that stand so close that they shade each other for good and never get ready. */
public final class Crowding {
    /** Less than this share of what growers give a plant is no stand of that crop; assumed. */
    private static final double LEAST_FRAC = 1.0 / 3;

    private Crowding() {}

    /**
     * Room of a plant where there is too little of it for the crop to get ready; empty for crops
     * that are picked, cut or ready all the same, and where nobody says what growers give.
     *
     * @return least room, cm2 a plant
     */
    public static OptionalDouble leastCm2(Trace trace, PlantingTrace planting) {
        if (!(planting.tray().planting() instanceof Planting.OfCrop crop)
                || crop.plants() == 0
                || crop.traits().harvest().groundM2().isEmpty()
                || !isUnready(trace, planting, crop)) {
            return OptionalDouble.empty();
        }
        double leastCm2 = 1e4 * LEAST_FRAC * crop.traits().harvest().groundM2().getAsDouble();
        return roomCm2(crop) < leastCm2 ? OptionalDouble.of(leastCm2) : OptionalDouble.empty();
    }

    /** Cut light, because it bolts if left, or not cut by the end of the run. */
    private static boolean isUnready(Trace trace, PlantingTrace planting, Planting.OfCrop crop) {
        boolean isLight =
                planting.events().stream().anyMatch(e -> e.kind() == Event.Kind.HARVEST)
                        && planting.run().freshG().at(planting.lastHour())
                                < CropAdvice.LIGHT_FRAC * crop.harvestFreshG().orElse(0);
        return isLight || RoomFindings.daysShort(trace, planting) > 0;
    }

    private static double roomCm2(Planting.OfCrop crop) {
        Tending.Stand end =
                crop.tending().madeOf(new Tending.Stand(crop.plants(), crop.groundM2()));
        return 1e4 * end.groundM2() / end.plants();
    }

    static void add(TrayCase tray, Findings out) {
        leastCm2(tray.trace, tray.planting)
                .ifPresent(
                        least ->
                                out.warnings.add(
                                        new Warning(
                                                Warning.Kind.TOO_CROWDED,
                                                tray.id,
                                                tray.trace.clockAt(tray.planting.fromS()),
                                                tray.trace.clockAtSample(tray.lastHour),
                                                Measure.atLeast(
                                                        roomCm2(
                                                                (Planting.OfCrop)
                                                                        tray.tray.planting()),
                                                        least,
                                                        Unit.SQUARE_CENTIMETRES),
                                                Cause.of(Cause.Kind.PLANTS_SHADE),
                                                List.of(Cure.of(Cure.Kind.FEWER_PLANTS)))));
    }
}
