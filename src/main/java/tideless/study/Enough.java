package tideless.study;

import java.util.OptionalInt;
import tideless.advice.Advice;
import tideless.advice.Sizing;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Event;

/**
 * How large a reservoir is enough, as {@link Size} has it: found for those that are too small in
 * the run as stated or in more than one member of ten, so that whoever builds what a run names is
 * told by the next run that it does.
 */
final class Enough {
    /** Members of the search: as many as {@code size} takes unless told otherwise. */
    static final int MOST_MEMBERS = 40;

    private Enough() {}

    /**
     * The advice with what was found; as it is where nothing is short or the work is broken off.
     */
    static Advice told(
            Advice advice, Scenario scenario, Outlook outlook, long seed, Workers workers) {
        Advice told = advice;
        int members = Math.min(MOST_MEMBERS, outlook.members());
        Size.Goal goal = new Size.Goal(OptionalInt.empty(), Outlook.SURE, members, seed);
        try {
            for (int i = 0; i < scenario.reservoirs().size(); i++) {
                Reservoir reservoir = scenario.reservoirs().get(i);
                Sizing sizing = advice.sizings().get(i);
                if (reservoir.refill().isAtVisits()
                        && (sizing.isShort() || wantsWater(scenario, reservoir, outlook))) {
                    double litres =
                            Size.leastReservoir(scenario, reservoir.name(), goal, workers)
                                    .found()
                                    .orElse(sizing.enoughUsableLitres());
                    told =
                            told.resized(
                                    sizing,
                                    sizing.enough(Math.max(litres, sizing.enoughUsableLitres())));
                }
            }
        } catch (InterruptedException e) {
            return advice; // what the run as stated says stands
        }
        return told;
    }

    /** Whether what it feeds comes to harm for want of water in too many members. */
    private static boolean wantsWater(Scenario scenario, Reservoir reservoir, Outlook outlook) {
        return !outlook.survives()
                && outlook.harms().stream()
                        .anyMatch(
                                harm ->
                                        (harm.kind() == Event.Kind.DRIED_OUT
                                                        || harm.kind() == Event.Kind.WILTED
                                                        || harm.kind() == Event.Kind.DIED)
                                                && isFed(scenario, harm.tray(), reservoir));
    }

    private static boolean isFed(Scenario scenario, VesselId tray, Reservoir reservoir) {
        return scenario.tray(tray)
                .map(Tray::filling)
                .filter(
                        f ->
                                f instanceof Filling.ByValve v
                                        && v.reservoir().equals(reservoir.name()))
                .isPresent();
    }
}
