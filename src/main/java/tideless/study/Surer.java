package tideless.study;

import java.time.LocalDate;
import java.util.Optional;
import tideless.advice.Advice;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Sizing;
import tideless.physics.Time;
import tideless.rig.Scenario;

/**
 * What makes a rig come through more surely that does as stated: another upkeep of the tray that is
 * harmed first in most of the others, or somebody who comes while the grower is away.
 */
final class Surer {
    private Surer() {}

    /**
     * What was found.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    static Optional<Cure> of(Forecast alone, Outlook outlook, Workers workers)
            throws InterruptedException {
        Scenario scenario = alone.trace().scenario();
        Optional<Outlook.LikelyHarm> harm = outlook.harms().stream().findFirst();
        if (outlook.survives()
                || !alone.advice().verdict().survives()
                || isKeptOtherwise(alone.advice())
                || harm.isEmpty()) {
            return Optional.empty();
        }
        if (OtherThanRefills.isAsked(alone.advice().verdict().first())) {
            return OtherThanRefills.cure(scenario, outlook, alone.seed(), workers);
        }
        LocalDate day = scenario.start().plusDays((long) (harm.get().atS().low() / Time.DAY_S));
        if (scenario.visits().isAway(day) && UpkeepSearch.maySpare(scenario, harm.get())) {
            return new AbsenceTrials(scenario, alone.seed()).cureOn(day);
        }
        Optional<Cure> filled = FirstFilling.cure(scenario, outlook, alone.seed(), workers);
        if (filled.filter(cure -> chance(cure) >= Outlook.SURE).isPresent()) {
            return filled;
        }
        Optional<Cure> kept = keptOtherwise(alone, outlook, harm.get(), workers);
        Optional<Cure> best = chance(kept) >= chance(filled) ? kept : filled;
        return LargerVessel.cure(scenario, outlook, chance(best), alone.seed(), workers)
                .or(() -> best);
    }

    private static double chance(Optional<Cure> cure) {
        return cure.map(Surer::chance).orElse(0.0);
    }

    private static double chance(Cure cure) {
        return cure.facts().has(Quantity.CHANCE) ? cure.facts().get(Quantity.CHANCE) : 0;
    }

    private static Optional<Cure> keptOtherwise(
            Forecast alone, Outlook outlook, Outlook.LikelyHarm harm, Workers workers)
            throws InterruptedException {
        Scenario scenario = alone.trace().scenario();
        if (!UpkeepSearch.maySpare(scenario, harm)) {
            return alone.advice().sizings().stream().anyMatch(Sizing::isShort)
                    ? Optional.empty()
                    : ValveTrays.cure(scenario, outlook, alone.seed(), workers);
        }
        UpkeepSearch search =
                new UpkeepSearch(
                        scenario,
                        harm.tray(),
                        alone.seed(),
                        outlook.members(),
                        outlook.chance(),
                        workers);
        return search.found().map(found -> found.cure(scenario));
    }

    private static boolean isKeptOtherwise(Advice advice) {
        return advice.warnings().stream()
                .flatMap(w -> w.cures().stream())
                .anyMatch(c -> c.kind() == Cure.Kind.KEEP_OTHERWISE);
    }
}
