package tideless.study;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tideless.advice.Advice;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/**
 * Tries how much a tray that is filled once has to hold, where its crop wants water before it
 * leaves: the same tray twice as wide, and again, until it does not.
 */
final class OneFilling {
    /** Largest that is tried, times the litres of the tray as it is. */
    private static final double MOST_TIMES = 64;

    /** Who would need so many times the litres had better top up; assumed. */
    private static final double TOO_MANY_TIMES = 2;

    /**
     * What a filling holds over what leaves a wide tray: in a deeper one the last of it is
     * stronger, so that the crop is some days longer there; assumed.
     */
    private static final double RESERVE_TIMES = 1.15;

    private OneFilling() {}

    /** Trays for which a larger vessel is advised. */
    static Set<VesselId> of(Advice advice) {
        Set<VesselId> small = new LinkedHashSet<>();
        for (Warning warning : advice.warnings()) {
            if (warning.cures().stream().anyMatch(Cure::isLargerVessel)) {
                small.add(warning.vessel());
            }
        }
        return small;
    }

    /** The first run in which none of them wants water, or the largest. */
    static Trace run(Scenario scenario, Set<VesselId> small) {
        Trace trace;
        double times = 1;
        do {
            times *= 2;
            trace = Simulation.runUnread(larger(scenario, small, times));
        } while (times < MOST_TIMES && wantsWater(trace, small));
        return trace;
    }

    private static Scenario larger(Scenario scenario, Set<VesselId> small, double times) {
        return scenario.withTrays(
                scenario.trays().stream()
                        .map(t -> small.contains(t.id()) ? larger(t, times) : t)
                        .toList());
    }

    /** So many times as wide: in a narrow one the level falls faster than roots grow. */
    private static Tray larger(Tray tray, double times) {
        return tray.withShape(tray.shape().wider(times));
    }

    /** Whether one of them runs dry, or what is left in it is too strong to drink. */
    private static boolean wantsWater(Trace trace, Set<VesselId> small) {
        for (TrayTrace of : trace.trays()) {
            for (PlantingTrace crop : trace.plantings(of)) {
                double least = of.levelM().min(crop.firstHour(), crop.lastHour() + 1);
                boolean wants =
                        least < Improvement.FILM_M
                                || crop.events().stream()
                                        .anyMatch(e -> e.kind() == Event.Kind.STRANDED);
                if (small.contains(of.tray().id()) && wants) {
                    return true;
                }
            }
        }
        return false;
    }

    /**
     * The advice with what one filling would have to hold.
     *
     * @param given as the user wrote it
     * @param large the run that {@link #run} made of it
     */
    static Advice judged(Advice advice, Scenario given, Trace large) {
        return advice.withEachWarning(warning -> judged(warning, given, large));
    }

    private static Warning judged(Warning warning, Scenario given, Trace large) {
        List<Cure> cures = new ArrayList<>();
        for (Cure cure : warning.cures()) {
            if (cure.isLargerVessel()) {
                double enough = 1000 * neededM3(large, warning.vessel());
                if (enough > TOO_MANY_TIMES * cure.facts().get(Quantity.USABLE)) {
                    cures.add(topUp(given, warning.vessel()));
                }
                cures.add(new Cure(cure.kind(), cure.facts().and(Quantity.ENOUGH, enough)));
            } else {
                cures.add(cure);
            }
        }
        return warning.withCures(cures);
    }

    /** What leaves a tray with its thirstiest crop, and a reserve, m3. */
    private static double neededM3(Trace large, VesselId tray) {
        double most = 0;
        TrayTrace of = large.tray(tray);
        for (PlantingTrace crop : large.plantings(of)) {
            int end = crop.lastHour() + 1;
            double left =
                    of.transpirationM3().sum(crop.firstHour(), end)
                            + of.evaporationM3().sum(crop.firstHour(), end);
            most = Math.max(most, left);
        }
        return RESERVE_TIMES * most;
    }

    /** Up to the cups: roots that grew below that level are never drowned by it. */
    private static Cure topUp(Scenario given, VesselId tray) {
        Tray of = given.tray(tray).orElseThrow();
        double toM = Math.min(of.startLevelM(), of.cupBottomM());
        return new Cure(Cure.Kind.TOP_UP_BY_HAND, Facts.of(Quantity.LEVEL, 1000 * toM));
    }
}
