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
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.PlantingTrace;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/**
 * Tries how much a tray that is filled once has to hold, where it runs dry before its crop leaves:
 * the same tray twice as deep, and again, until it does not.
 */
final class OneFilling {
    /** Deepest that is tried, times the litres of the tray as it is. */
    private static final double MOST_TIMES = 64;

    /** And no deeper than a vessel may be, m. */
    private static final double DEEPEST_M = 9;

    /** Who would need so many times the litres had better top up; assumed. */
    private static final double TOO_MANY_TIMES = 2;

    private OneFilling() {}

    /** Trays for which a deeper vessel is advised. */
    static Set<VesselId> of(Advice advice) {
        Set<VesselId> small = new LinkedHashSet<>();
        for (Warning warning : advice.warnings()) {
            if (warning.cures().stream().anyMatch(OneFilling::isDeeper)) {
                small.add(warning.vessel());
            }
        }
        return small;
    }

    private static boolean isDeeper(Cure cure) {
        return cure.kind() == Cure.Kind.DEEPER_VESSEL;
    }

    /** The first run in which none of them runs dry, or the deepest. */
    static Trace run(Scenario scenario, Set<VesselId> small) {
        Trace trace;
        double times = 1;
        do {
            times *= 2;
            trace = Simulation.runUnread(deeper(scenario, small, times));
        } while (times < MOST_TIMES && runsDry(trace, small));
        return trace;
    }

    private static Scenario deeper(Scenario scenario, Set<VesselId> small, double times) {
        return scenario.withTrays(
                scenario.trays().stream()
                        .map(t -> small.contains(t.id()) ? deeper(t, times) : t)
                        .toList());
    }

    /** Upright below the level at which it begins, its cups and hole as much higher. */
    private static Tray deeper(Tray tray, double times) {
        double areaM2 = tray.shape().areaM2(tray.startLevelM());
        double sideM = Math.sqrt(areaM2);
        double wantedM = times * tray.shape().volumeM3(tray.startLevelM()) / areaM2;
        double byM = Math.min(wantedM - tray.startLevelM(), DEEPEST_M - tray.shape().depthM());
        double depthM = tray.shape().depthM() + byM;
        return tray.withShape(Shape.tub(sideM, sideM, sideM, sideM, depthM))
                .withOverflowM(tray.overflowM() + byM)
                .withCupBottomM(tray.cupBottomM() + byM)
                .withStartLevelM(tray.startLevelM() + byM)
                .withNext(
                        tray.next().stream()
                                .map(n -> n.withStartLevelM(n.startLevelM() + byM))
                                .toList());
    }

    private static boolean runsDry(Trace trace, Set<VesselId> small) {
        for (TrayTrace of : trace.trays()) {
            for (PlantingTrace crop : trace.plantings(of)) {
                double least = of.levelM().min(crop.firstHour(), crop.lastHour() + 1);
                if (small.contains(of.tray().id()) && least < Improvement.FILM_M) {
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
     * @param deep the run that {@link #run} made of it
     */
    static Advice judged(Advice advice, Scenario given, Trace deep) {
        List<Warning> warnings = new ArrayList<>();
        advice.warnings().forEach(warning -> warnings.add(judged(warning, given, deep)));
        return new Advice(
                advice.verdict()
                        .withFirst(advice.verdict().first().map(w -> judged(w, given, deep))),
                advice.tasks(),
                warnings,
                advice.past(),
                advice.sizings());
    }

    private static Warning judged(Warning warning, Scenario given, Trace deep) {
        List<Cure> cures = new ArrayList<>();
        for (Cure cure : warning.cures()) {
            if (isDeeper(cure)) {
                double enough = 1000 * neededM3(deep, warning.vessel());
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

    /** What leaves a tray with its thirstiest crop, and the film below which it is dry, m3. */
    private static double neededM3(Trace deep, VesselId tray) {
        double most = 0;
        for (TrayTrace of : deep.trays()) {
            if (of.tray().id().equals(tray)) {
                double filmM3 = Improvement.FILM_M * of.tray().shape().areaM2(0);
                for (PlantingTrace crop : deep.plantings(of)) {
                    int end = crop.lastHour() + 1;
                    double left =
                            of.transpirationM3().sum(crop.firstHour(), end)
                                    + of.evaporationM3().sum(crop.firstHour(), end);
                    most = Math.max(most, left + filmM3);
                }
            }
        }
        return most;
    }

    /** Up to the cups: roots that grew below that level are never drowned by it. */
    private static Cure topUp(Scenario given, VesselId tray) {
        Tray of = given.trays().stream().filter(t -> t.id().equals(tray)).findFirst().orElseThrow();
        double toM = Math.min(of.startLevelM(), of.cupBottomM());
        return new Cure(Cure.Kind.TOP_UP_BY_HAND, Facts.of(Quantity.LEVEL, 1000 * toM));
    }
}
