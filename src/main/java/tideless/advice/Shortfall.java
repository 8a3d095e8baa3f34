package tideless.advice;

import java.time.Duration;
import java.time.LocalDateTime;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
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
        Tray of = scenario.tray(tray).orElseThrow();
        if (of.filling() instanceof Filling.Sealed) {
            return Cure.largerThan(of, Facts.NONE);
        }
        if (isBeforeRootsReach(of, Duration.between(scenario.start().atStartOfDay(), at))) {
            return Cure.of(Cure.Kind.WAIT_IN_NURSERY);
        }
        if (of.filling() instanceof Filling.ByValve valve && isNeverRefilled(scenario, valve)) {
            return Cure.of(Cure.Kind.PLAN_REFILLS);
        }
        if (scenario.visits().isAway(at.toLocalDate())) {
            return new Cure(Cure.Kind.TOPPED_UP_MEANWHILE, Facts.NONE.on(at.minusDays(1)));
        }
        boolean isHigher =
                of.filling() instanceof Filling.ByHand hand && hand.toLevelM() < of.cupBottomM();
        return Cure.of(isHigher ? Cure.Kind.FILL_HIGHER : Cure.Kind.VISIT_MORE_OFTEN);
    }

    private static boolean isNeverRefilled(Scenario scenario, Filling.ByValve valve) {
        return scenario.reservoirs().get(scenario.reservoirOf(valve)).refill().when()
                == Reservoir.Refill.When.NEVER;
    }

    private static boolean isBeforeRootsReach(Tray tray, Duration sincePlanted) {
        return Seedlings.tooEarly(tray)
                .filter(reach -> sincePlanted.toDays() <= reach.days().orElseThrow())
                .isPresent();
    }
}
