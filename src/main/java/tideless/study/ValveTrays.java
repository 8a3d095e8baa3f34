package tideless.study;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.Tray;

/**
 * What lets more rigs come through of which a tray on a valve wants water in some: the valve held
 * at the cups until the roots are down where young plants want it, else more visits. Each is tried
 * in all members; what helps few is not told.
 */
final class ValveTrays {
    /** Harm so soon after the start is of roots that are not down yet, s; assumed. */
    private static final double EARLY_S = 10 * Time.DAY_S;

    /** How long a valve is held there, d; common practice, no source: two weeks, or three. */
    private static final int[] HELD_DAYS = {14, 21};

    private final Scenario scenario;
    private final Outlook outlook;
    private final Outlook.LikelyHarm harm;
    private final long seed;
    private final Workers workers;
    private double most;
    private Cure best;

    private ValveTrays(Scenario scenario, Outlook outlook, long seed, Workers workers) {
        this.scenario = scenario;
        this.outlook = outlook;
        this.harm = outlook.harms().get(0);
        this.seed = seed;
        this.workers = workers;
        most = outlook.chance() + Outlook.CLEARLY_MORE_FRAC;
    }

    /**
     * What serves the tray that is harmed first in most of the rigs; empty where nothing does.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    static Optional<Cure> cure(Scenario scenario, Outlook outlook, long seed, Workers workers)
            throws InterruptedException {
        ValveTrays trials = new ValveTrays(scenario, outlook, seed, workers);
        Tray tray = scenario.tray(trials.harm.tray()).orElseThrow();
        if (tray.filling() instanceof Filling.ByValve valve) {
            trials.tryAll(tray, valve);
        }
        return Optional.ofNullable(trials.best);
    }

    private void tryAll(Tray tray, Filling.ByValve valve) throws InterruptedException {
        double wetM = Upkeep.wetCupM(tray);
        boolean isEarly = harm.atS().low() < EARLY_S;
        if (isEarly && valve.moves().isEmpty() && valve.settingM() < wetM) {
            for (int days : HELD_DAYS) {
                if (wetM <= tray.overflowM() && !isEnough()) {
                    hold(tray, valve, wetM, days);
                }
            }
        }
        for (Set<DayOfWeek> days : Upkeep.moreVisits(scenario.visits())) {
            if (!isEarly && !isEnough()) {
                Scenario so = scenario.withVisits(scenario.visits().withWeekdays(days));
                consider(so, Cure.Kind.KEEP_OTHERWISE, Facts.NONE.named(Upkeep.written(days)));
            }
        }
    }

    private boolean isEnough() {
        return best != null && most >= Outlook.SURE;
    }

    private void hold(Tray tray, Filling.ByValve valve, double wetM, int days)
            throws InterruptedException {
        LocalDate on = scenario.start().plusDays(days);
        while (!scenario.visits().on(on) && on.isBefore(scenario.lastDay())) {
            on = on.plusDays(1);
        }
        Filling held =
                valve.withSettingM(wetM).withMoves(List.of(new Filling.Move(on, valve.settingM())));
        consider(
                scenario.withTray(tray.withFilling(held)),
                Cure.Kind.HIGHER_LEVEL_AT_FIRST,
                Facts.of(Quantity.LEVEL, 1000 * wetM)
                        .and(Quantity.SETTING, 1000 * valve.settingM())
                        .on(on.atStartOfDay()));
    }

    private void consider(Scenario so, Cure.Kind kind, Facts facts) throws InterruptedException {
        double chance = Outlook.chance(so, outlook.members(), seed, workers);
        if (chance >= most) {
            most = chance;
            best = new Cure(kind, facts.and(Quantity.CHANCE, chance));
        }
    }
}
