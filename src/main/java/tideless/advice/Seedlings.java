package tideless.advice;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tideless.physics.Time;
import tideless.rig.Planting;
import tideless.rig.RootReach;
import tideless.rig.Tray;
import tideless.sim.Event;

/** Seedlings set out before their roots reach the level of their tray. */
public final class Seedlings {
    private Seedlings() {}

    /** Level that reaches the cups of a tray on the first day, or its overflow, m. */
    public static double firstLevelM(Tray tray) {
        return Math.min(tray.overflowM(), tray.wetCupM());
    }

    /** When they would have been fit for it; empty for those that are, or never will be. */
    static Optional<RootReach> tooEarly(Tray tray) {
        if (!(tray.planting() instanceof Planting.OfCrop crop) || crop.plants() == 0) {
            return Optional.empty();
        }
        RootReach reach = RootReach.of(tray, crop);
        return reach.days().orElse(0) > 0 ? Optional.of(reach) : Optional.empty();
    }

    /** What helps them until then. */
    static List<Cure> untilThen(TrayCase tray) {
        List<Cure> cures = new ArrayList<>();
        double wetCupM = tray.tray.wetCupM();
        if (wetCupM <= tray.tray.overflowM()) {
            cures.add(
                    new Cure(
                            Cure.Kind.HIGHER_LEVEL_AT_FIRST,
                            tooEarly(tray.tray)
                                    .map(
                                            reach ->
                                                    Facts.of(Quantity.LEVEL, wetCupM * 1000)
                                                            .on(reachedOn(tray, reach)))
                                    .orElse(Facts.of(Quantity.LEVEL, wetCupM * 1000))));
        }
        cures.add(Cure.of(Cure.Kind.WAIT_IN_NURSERY));
        cures.add(Cure.of(Cure.Kind.WICK));
        return cures;
    }

    /** Whether a seedling's plug was used up before its roots could reach the level. */
    static boolean isDryBeforeReach(TrayCase tray) {
        int reachDays = tooEarly(tray.tray).map(reach -> reach.days().orElseThrow()).orElse(0);
        return tray.firstS(Event.Kind.STRANDED).orElse(Double.POSITIVE_INFINITY)
                <= tray.planting.fromS() + reachDays * Time.DAY_S;
    }

    /** Told of those that were stranded for it; where the plug lasts, they grow into the level. */
    static void add(TrayCase tray, Findings out) {
        tooEarly(tray.tray)
                .filter(reach -> isDryBeforeReach(tray))
                .ifPresent(
                        reach ->
                                out.tasks.add(
                                        new Task(
                                                Task.Kind.TRANSPLANT,
                                                tray.id,
                                                dueAt(tray, reach),
                                                0,
                                                0,
                                                Measure.of(reach.rootM() * 1000, Unit.MILLIMETRES),
                                                new Cause(
                                                        Cause.Kind.ROOTS_END_ABOVE_LEVEL,
                                                        Facts.of(
                                                                Quantity.LEVEL_BELOW_CUPS,
                                                                reach.gapM() * 1000)),
                                                untilThen(tray),
                                                List.of(),
                                                false)));
    }

    /** The day on which the roots are down. */
    private static LocalDateTime reachedOn(TrayCase tray, RootReach reach) {
        return tray.trace.clockAt(tray.planting.fromS() + reach.days().orElseThrow() * Time.DAY_S);
    }

    private static LocalDateTime dueAt(TrayCase tray, RootReach reach) {
        double hour = tray.planting.fromS() / Time.HOUR_S + 24.0 * reach.days().orElseThrow();
        return tray.trace.clockAt(tray.rounds.nextFrom(hour) * Time.HOUR_S);
    }
}
