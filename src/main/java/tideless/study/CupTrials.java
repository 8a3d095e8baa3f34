package tideless.study;

import java.util.List;
import java.util.Optional;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.GrowthLost;
import tideless.sim.Simulation;
import tideless.sim.Trace;

/**
 * Tries the cures of cups that stand too deep in solution, each in a run of its own: the first that
 * leaves nobody drier is told with what it brings, the others not at all.
 */
final class CupTrials {
    private final Trials.Tried first;

    private CupTrials(Trials.Tried first) {
        this.first = first;
    }

    /**
     * The advice with the cures that have stood their trial.
     *
     * @param first the run as the user wrote it, judged
     */
    static Advice judged(Trials.Tried first) {
        CupTrials trials = new CupTrials(first);
        return first.advice()
                .withEachWarning(
                        w ->
                                w.kind() == Warning.Kind.CUPS_UNDER
                                        ? w.withCures(trials.firstThatHelps(w).stream().toList())
                                        : w);
    }

    private Optional<Cure> firstThatHelps(Warning warning) {
        for (Cure cure : warning.cures()) {
            Optional<Cure> told = tried(warning.vessel(), cure);
            if (told.isPresent()) {
                return told;
            }
        }
        return Optional.empty();
    }

    private Optional<Cure> tried(VesselId vessel, Cure cure) {
        Scenario scenario = first.trace().scenario();
        Tray deep = scenario.tray(vessel).orElseThrow();
        Trace run = Simulation.run(scenario.withTray(with(deep, cure)));
        Advice then = Advisor.advise(run, run);
        double gain = Improvement.gainFrac(first.trace(), run, vessel);
        boolean helps =
                then.warnings().stream().noneMatch(w -> isDeep(w, vessel))
                        && gain >= -Improvement.GAIN_FRAC
                        && Improvement.dryHours(run) <= Improvement.dryHours(first.trace())
                        && !Improvement.harms(first.advice().verdict(), then.verdict());
        return helps
                ? Optional.of(gain >= Improvement.GAIN_FRAC ? withGain(vessel, cure, run) : cure)
                : Optional.empty();
    }

    private static boolean isDeep(Warning warning, VesselId vessel) {
        return warning.kind() == Warning.Kind.CUPS_UNDER && warning.vessel().equals(vessel);
    }

    /** What a plant gives before and after, where a tray has one crop. */
    private Cure withGain(VesselId vessel, Cure cure, Trace run) {
        List<GrowthLost> before = first.trace().tray(vessel).lost();
        List<GrowthLost> after = run.tray(vessel).lost();
        return before.size() == 1 && after.size() == 1
                ? new Cure(
                        cure.kind(),
                        cure.facts()
                                .and(Quantity.GIVES_NOW, before.get(0).ownG())
                                .and(Quantity.GIVES_THEN, after.get(0).ownG()))
                : cure;
    }

    /**
     * The tray as the cure has it: nothing in it stands higher than that, what stands lower does.
     */
    static Tray with(Tray deep, Cure cure) {
        if (cure.kind() == Cure.Kind.HANG_CUP_HIGHER) {
            return deep.withCupBottomM(cure.facts().get(Quantity.LEVEL) / 1000);
        }
        double toM = deep.wetCupM();
        Tray begun = deep.withStartLevelM(Math.min(deep.startLevelM(), toM));
        if (deep.filling() instanceof Filling.ByValve valve) {
            return begun.withFilling(valve.withSettings(m -> Math.min(m, toM)));
        }
        return deep.filling() instanceof Filling.ByHand hand
                ? begun.withFilling(
                        new Filling.ByHand(
                                Math.min(hand.toLevelM(), toM),
                                hand.days(),
                                hand.with(),
                                hand.inSteps()))
                : begun;
    }
}
