package tideless.study;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.sim.Event;

/**
 * Where plants want water soon after the start and no valve holds it, a first filling that wets
 * their cups is tried in all members before anybody is sent to look more often.
 */
final class FirstFilling {
    /** Harm so soon after the start is of roots that are not down yet, s; assumed. */
    private static final double EARLY_S = 10 * Time.DAY_S;

    /** A level is told as higher where it is by so much, m; assumed. */
    private static final double STEP_M = 0.003;

    private static final Set<Event.Kind> OF_WATER =
            EnumSet.of(
                    Event.Kind.STRANDED, Event.Kind.WILTED, Event.Kind.DRIED_OUT, Event.Kind.DIED);

    private FirstFilling() {}

    /**
     * A higher first filling that lets clearly more rigs come through; empty where none would.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    static Optional<Cure> cure(Scenario scenario, Outlook outlook, long seed, Workers workers)
            throws InterruptedException {
        Outlook.LikelyHarm harm = outlook.harms().get(0);
        Tray tray = scenario.tray(harm.tray()).orElseThrow();
        double wetM = Upkeep.wetCupM(tray);
        boolean isLow = wetM >= tray.startLevelM() + STEP_M && wetM <= tray.overflowM();
        boolean isEarly = OF_WATER.contains(harm.kind()) && harm.atS().low() < EARLY_S;
        if (!isLow || !isEarly || tray.filling() instanceof Filling.ByValve) {
            return Optional.empty();
        }
        Scenario so = scenario.withTray(tray.withStartLevelM(wetM));
        double chance = Outlook.chance(so, outlook.members(), seed, workers);
        return chance >= outlook.chance() + Outlook.CLEARLY_MORE_FRAC
                ? Optional.of(
                        new Cure(
                                Cure.Kind.KEEP_OTHERWISE,
                                Facts.of(Quantity.START_LEVEL, 1000 * wetM)
                                        .and(Quantity.CHANCE, chance)))
                : Optional.empty();
    }
}
