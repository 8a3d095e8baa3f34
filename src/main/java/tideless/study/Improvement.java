package tideless.study;

import java.util.List;
import tideless.advice.Measure;
import tideless.advice.Verdict;
import tideless.advice.Warning;
import tideless.physics.Time;
import tideless.rig.Planting;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/**
 * Whether a run with another setting is better than the run as the user wrote it: a tray grows
 * more, no other less, none stands dry for longer, and nothing is warned of that was not before.
 */
final class Improvement {
    /** Share of its yield by which a tray has to gain; less is within any forecast's noise. */
    static final double GAIN_FRAC = 0.01;

    /** Share of its yield that another tray may lose by it; rounding of a reservoir's refills. */
    static final double OTHERS_FRAC = 0.001;

    /** Solution below this feeds no roots, m; as a tray is called dry in the advice. */
    static final double FILM_M = 0.002;

    /**
     * A warning that stood before may be so much further past its limit, as a share of the limit;
     * assumed, and less than any meter or thermometer of the grower shows.
     */
    static final double WORSE_FRAC = 0.01;

    /** A change may cost so much of the harvest: less than any forecast knows. */
    static final double BORNE_LOSS_FRAC = 0.01;

    private Improvement() {}

    /** Whether one tray's other setting is worth telling. */
    static boolean isBetter(Trials.Tried without, Trials.Tried with, VesselId moved) {
        double worst = 0;
        for (TrayTrace of : without.trace().trays()) {
            if (!of.tray().id().equals(moved)) {
                worst = Math.min(worst, gainFrac(without.trace(), with.trace(), of.tray().id()));
            }
        }
        double own = gainFrac(without.trace(), with.trace(), moved);
        return isBetter(own, worst, dryHours(with.trace()) - dryHours(without.trace()))
                && !harms(without.advice().verdict(), with.advice().verdict())
                && with.advice().warnings().stream()
                        .noneMatch(w -> isNew(without.advice().warnings(), w));
    }

    /**
     * @param gainFrac of the tray's own growth, as a share
     * @param othersFrac the greatest loss of another tray, at most 0
     * @param dryHours how many more there are
     */
    static boolean isBetter(double gainFrac, double othersFrac, int dryHours) {
        return gainFrac >= GAIN_FRAC && othersFrac >= -OTHERS_FRAC && dryHours <= 0;
    }

    /** Whether a harm is there that was not, or sooner. */
    static boolean harms(Verdict without, Verdict with) {
        return harms(without, with, 0);
    }

    /** The same, where it may come so many days sooner. */
    static boolean harms(Verdict without, Verdict with, int borneDays) {
        return with.firstHarm().isPresent()
                && without.firstHarm()
                        .map(
                                harm ->
                                        with.firstHarm()
                                                .get()
                                                .at()
                                                .plusDays(borneDays)
                                                .isBefore(harm.at()))
                        .orElse(true);
    }

    /** Whether nobody was warned of it before, or of less of it. */
    static boolean isNew(List<Warning> before, Warning now) {
        return before.stream()
                .noneMatch(
                        w ->
                                w.kind() == now.kind()
                                        && w.vessel().equals(now.vessel())
                                        && !isWorse(w, now));
    }

    private static boolean isWorse(Warning was, Warning is) {
        Measure limited = is.measure();
        double by = limited.value() - was.measure().value();
        return switch (limited.side()) {
            case NONE -> is.from().isBefore(was.from());
            case AT_MOST -> by > WORSE_FRAC * Math.abs(limited.limit());
            case AT_LEAST -> -by > WORSE_FRAC * Math.abs(limited.limit());
        };
    }

    /** Growth of a tray gained, as a share: what stands or is picked when the first crop leaves. */
    static double gainFrac(Trace without, Trace with, VesselId tray) {
        List<PlantingTrace> before = without.plantings(without.tray(tray));
        List<PlantingTrace> after = with.plantings(with.tray(tray));
        double was = 0;
        double is = 0;
        for (int i = 0; i < Math.min(before.size(), after.size()); i++) {
            // Crops of one tray count by the plants there are of each.
            double weight = plants(before.get(i)) / (double) plants(before.get(0));
            int hours = Math.min(grownHours(before.get(i)), grownHours(after.get(i)));
            was += weight * grams(before.get(i), hours);
            is += weight * grams(after.get(i), hours);
        }
        return was > 0 ? is / was - 1 : is > 0 ? 1 : 0;
    }

    private static int plants(PlantingTrace planting) {
        return Math.max(1, planting.tray().planting().plants());
    }

    private static int grownHours(PlantingTrace planting) {
        return planting.lastHour() - planting.firstHour();
    }

    private static double grams(PlantingTrace planting, int hours) {
        boolean fruits =
                planting.tray().planting() instanceof Planting.OfCrop crop
                        && crop.traits().stages().fruits();
        TrayTrace run = planting.run();
        int hour = planting.firstHour() + hours;
        double pickedG =
                planting.events().stream()
                        .filter(e -> !fruits && e.kind() == Event.Kind.LEAVES_PICKED)
                        .filter(e -> e.atS() <= hour * Time.HOUR_S)
                        .mapToDouble(Event::freshG)
                        .reduce(0, Double::sum);
        return (fruits ? run.fruitFreshG() : run.freshG()).at(hour) + pickedG / plants(planting);
    }

    /** Hours in which a living crop has no solution at its roots, over all trays. */
    static int dryHours(Trace trace) {
        int hours = 0;
        for (TrayTrace of : trace.trays()) {
            for (PlantingTrace planting : trace.plantings(of)) {
                boolean none = planting.tray().planting().plants() == 0;
                int last = none ? -1 : planting.lastHour();
                for (int h = planting.firstHour(); h <= last; h++) {
                    double levelM = of.levelM().at(h);
                    hours += levelM < FILM_M || of.rootTipM().at(h) > levelM ? 1 : 0;
                }
            }
        }
        return hours;
    }
}
