package tideless.study;

import java.util.Optional;
import tideless.advice.Advice;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;

/**
 * Tries an air stone before it is told: plants with more air drink more, and a tray that held just
 * enough runs dry. It is told with what it takes besides, or not at all.
 */
final class AirStones {
    private final Advice advice;
    private final Scenario scenario;
    private final Outlook outlook;
    private final long seed;
    private final Workers workers;

    private AirStones(
            Advice advice, Scenario scenario, Outlook outlook, long seed, Workers workers) {
        this.advice = advice;
        this.scenario = scenario;
        this.outlook = outlook;
        this.seed = seed;
        this.workers = workers;
    }

    /**
     * The advice with each air stone as its trial has it.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    static Advice told(
            Advice advice, Scenario scenario, Outlook outlook, long seed, Workers workers)
            throws InterruptedException {
        return new AirStones(advice, scenario, outlook, seed, workers).told();
    }

    private Advice told() throws InterruptedException {
        Advice told = advice;
        for (Tray tray : scenario.trays()) {
            if (isAsked(tray.id())) {
                Optional<Cure> stone = tried(tray);
                told =
                        told.withEachWarning(
                                warning ->
                                        warning.vessel().equals(tray.id())
                                                ? with(warning, stone)
                                                : warning);
            }
        }
        return told.withVerdict(
                told.verdict().withFirst(Warning.firstOf(told.warnings(), scenario.climate())));
    }

    private boolean isAsked(VesselId tray) {
        return advice.warnings().stream()
                .filter(w -> w.vessel().equals(tray))
                .flatMap(w -> w.cures().stream())
                .anyMatch(c -> c.kind() == Cure.Kind.AIR_STONE);
    }

    private static Warning with(Warning warning, Optional<Cure> stone) {
        return stone.isEmpty()
                ? warning.without(Cure.Kind.AIR_STONE)
                : warning.withCures(
                        warning.cures().stream()
                                .map(
                                        cure ->
                                                cure.kind() == Cure.Kind.AIR_STONE
                                                        ? stone.get()
                                                        : cure)
                                .toList());
    }

    /** With what it takes besides; empty where too few rigs come through with either. */
    private Optional<Cure> tried(Tray tray) throws InterruptedException {
        Scenario so = scenario.withTray(tray.withDeck(tray.deck().withAerated(true)));
        double enough = Math.min(Outlook.SURE, outlook.chance() - Outlook.HARDLY_FEWER_FRAC);
        double chance = Outlook.chance(so, outlook.members(), seed, workers);
        if (chance >= enough) {
            return Optional.of(Cure.of(Cure.Kind.AIR_STONE));
        }
        return new UpkeepSearch(so, tray.id(), seed, outlook.members(), chance, workers)
                .found()
                .filter(found -> found.chance() >= enough)
                .map(
                        found ->
                                new Cure(
                                        Cure.Kind.AIR_STONE,
                                        Facts.of(Quantity.CHANCE, found.chance()),
                                        found.parts(so)));
    }
}
