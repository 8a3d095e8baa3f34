package tideless.advice;

import java.time.Duration;
import java.time.LocalDateTime;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.RootReach;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;

/** What brings water in time to a tray that comes through as stated, but not surely. */
public final class Shortfall {
    private Shortfall() {}

    /**
     * The first cure.
     *
     * @param tray that may run dry
     * @param at when it would
     */
    public static Cure cureOf(Scenario scenario, VesselId tray, LocalDateTime at) {
        Tray of =
                scenario.trays().stream()
                        .filter(t -> t.id().equals(tray))
                        .findFirst()
                        .orElseThrow();
        if (of.filling() instanceof Filling.Sealed) {
            return Cure.of(Cure.Kind.DEEPER_VESSEL);
        }
        if (isBeforeRootsReach(of, Duration.between(scenario.start().atStartOfDay(), at))) {
            return Cure.of(Cure.Kind.WAIT_IN_NURSERY);
        }
        return scenario.visits().isAway(at.toLocalDate())
                ? new Cure(Cure.Kind.TOPPED_UP_MEANWHILE, Facts.NONE.on(at.minusDays(1)))
                : Cure.of(Cure.Kind.VISIT_MORE_OFTEN);
    }

    private static boolean isBeforeRootsReach(Tray tray, Duration sincePlanted) {
        return tray.planting() instanceof Planting.OfCrop crop
                && crop.plants() > 0
                && sincePlanted.toDays() <= RootReach.of(tray, crop).days().orElse(-1);
    }
}
