package tideless.study;

import java.time.DayOfWeek;
import java.util.Optional;
import java.util.Set;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.sim.Event;

/**
 * Where a reservoir that ran dry is to be refilled at every visit first: whether more visits, or
 * another way to keep a tray that salt harms, let clearly more of the rigs come through than that.
 * Each is tried in all members, as is the refill.
 */
final class OtherThanRefills {
    /** Harm by salt in fewer rigs is not looked into, as a share; assumed. */
    private static final double SALT_WORTH_FRAC = 0.05;

    private final Scenario scenario;
    private final Outlook outlook;
    private final long seed;
    private final Workers workers;
    private double most;
    private Optional<Cure> best = Optional.empty();

    private OtherThanRefills(Scenario scenario, Outlook outlook, long seed, Workers workers) {
        this.scenario = scenario;
        this.outlook = outlook;
        this.seed = seed;
        this.workers = workers;
    }

    /** Whether a refill in time is what would be changed first. */
    static boolean isAsked(Optional<Warning> first) {
        return first.stream()
                .flatMap(warning -> warning.cures().stream().limit(1))
                .anyMatch(cure -> cure.kind() == Cure.Kind.FILL_AT_THE_VISIT_BEFORE);
    }

    /**
     * What lets clearly more rigs come through than the refills; empty where nothing tried does.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    static Optional<Cure> cure(Scenario scenario, Outlook outlook, long seed, Workers workers)
            throws InterruptedException {
        OtherThanRefills trials = new OtherThanRefills(scenario, outlook, seed, workers);
        trials.most = Math.max(outlook.chance(), trials.chance(refilled(scenario)));
        if (trials.most < Outlook.SURE) {
            trials.tryVisits();
            trials.tryUpkeep();
        }
        return trials.best;
    }

    private static Scenario refilled(Scenario scenario) {
        return scenario.withReservoirs(
                scenario.reservoirs().stream()
                        .map(r -> r.withRefill(r.refill().on(Reservoir.Refill.When.EVERY_VISIT)))
                        .toList());
    }

    private double chance(Scenario so) throws InterruptedException {
        return Outlook.chance(so, outlook.members(), seed, workers);
    }

    private void tryVisits() throws InterruptedException {
        for (Set<DayOfWeek> days : Upkeep.moreVisits(scenario.visits())) {
            if (most < Outlook.SURE) {
                double chance = chance(scenario.withVisits(scenario.visits().withWeekdays(days)));
                Facts facts = Facts.NONE.named(Upkeep.written(days)).and(Quantity.CHANCE, chance);
                take(chance, new Cure(Cure.Kind.KEEP_OTHERWISE, facts));
            }
        }
    }

    private void tryUpkeep() throws InterruptedException {
        for (Outlook.LikelyHarm harm : outlook.harms()) {
            boolean isOfSalt =
                    harm.kind() == Event.Kind.SALT_WILTED && harm.share() >= SALT_WORTH_FRAC;
            if (isOfSalt && most < Outlook.SURE) {
                Optional<UpkeepSearch.Found> found =
                        new UpkeepSearch(
                                        scenario,
                                        harm.tray(),
                                        seed,
                                        outlook.members(),
                                        outlook.chance(),
                                        workers)
                                .found();
                if (found.isPresent()) {
                    take(found.get().chance(), found.get().cure(scenario));
                }
            }
        }
    }

    private void take(double chance, Cure cure) {
        if (chance >= most + Outlook.CLEARLY_MORE_FRAC) {
            most = chance;
            best = Optional.of(cure);
        }
    }
}
