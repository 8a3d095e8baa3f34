package tideless.advice;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tideless.physics.Time;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.GrowthLost;
import tideless.sim.Stress;
import tideless.sim.Trace;

/** Whether a run's crops survive. */
final class Verdicts {
    private static final Set<Warning.Kind> OF_AIR =
            EnumSet.of(Warning.Kind.SHORT_OF_AIR, Warning.Kind.DROWNED);

    private Verdicts() {}

    static Verdict of(
            Trace trace,
            List<TrayCase> trays,
            VisitTimes rounds,
            List<Task> tasks,
            List<Warning> warnings) {
        List<Verdict.Harm> harms = new ArrayList<>();
        trays.forEach(tray -> addHarms(tray, harms));
        harms.sort(Comparator.comparing(Verdict.Harm::at).thenComparing(Verdict.Harm::kind));
        // What drinks nothing neither survives nor is filled up for.
        List<TrayCase> drinking = trays.stream().filter(t -> waterLeft(t).isPresent()).toList();
        List<Verdict.Absence> absences = new ArrayList<>();
        for (Visits.Absence absence : trace.scenario().visits().absences()) {
            absenceOf(trace, drinking, rounds, tasks, harms, absence).ifPresent(absences::add);
        }
        List<Verdict.WaterLeft> left = new ArrayList<>();
        drinking.forEach(tray -> waterLeft(tray).ifPresent(one -> addTightest(one, left)));
        Optional<Warning> first = Warning.firstOf(warnings, trace.scenario().climate());
        List<Verdict.Loss> losses = new ArrayList<>();
        trays.forEach(tray -> tray.lost().ifPresent(lost -> addLoss(tray, lost, warnings, losses)));
        return new Verdict(
                harms.isEmpty(), harms.stream().findFirst(), absences, left, first, losses);
    }

    /**
     * What took at least a tenth of a crop, by the stress that took most. Want of air counts where
     * it is warned of: its figures span a factor of some six, and elsewhere it may be none.
     */
    private static void addLoss(
            TrayCase tray, GrowthLost lost, List<Warning> warnings, List<Verdict.Loss> losses) {
        boolean isAirless =
                warnings.stream()
                        .filter(w -> w.vessel().equals(tray.id))
                        .filter(w -> w.crop().equals(tray.planting.crop()))
                        .anyMatch(w -> OF_AIR.contains(w.kind()));
        Stress most = Stress.SALT;
        double frac = 0;
        for (Stress stress : Stress.values()) {
            if (stress != Stress.AIR || isAirless) {
                frac += lost.frac(stress);
                most = lost.frac(stress) > lost.frac(most) ? stress : most;
            }
        }
        if (frac >= Verdict.Loss.TOLD_FRAC || lost.frac() >= Verdict.Loss.TOLD_WITH_AIR_FRAC) {
            double meanC = meanC(tray);
            Stress told = frac > 0 ? most : Stress.AIR;
            losses.add(
                    new Verdict.Loss(
                            tray.id,
                            tray.planting.crop(),
                            tray.tray.planting().cropName(),
                            told,
                            lost.frac(told),
                            frac,
                            lost.ownG(),
                            lost.unharmedG(),
                            fracs(lost),
                            meanC,
                            missedC(tray, meanC)));
        }
    }

    private static Map<Stress, Double> fracs(GrowthLost lost) {
        Map<Stress, Double> fracs = new EnumMap<>(Stress.class);
        for (Stress stress : Stress.values()) {
            fracs.put(stress, lost.frac(stress));
        }
        return fracs;
    }

    private static double meanC(TrayCase tray) {
        int end = tray.lastHour + 1;
        return tray.of.solutionTempC().sum(tray.firstHour, end) / Math.max(1, end - tray.firstHour);
    }

    /** The bound of what the crop's roots like that a mean lies beyond, degC; NaN for none. */
    private static double missedC(TrayCase tray, double meanC) {
        double lowC = tray.traits.response().rootLowC();
        double highC = tray.traits.response().rootHighC();
        return meanC < lowC ? lowC : meanC > highC ? highC : Double.NaN;
    }

    /** One for each tray: of several crops the one that came closest. */
    private static void addTightest(Verdict.WaterLeft one, List<Verdict.WaterLeft> left) {
        for (int i = 0; i < left.size(); i++) {
            if (left.get(i).tray().equals(one.tray())) {
                left.set(i, one.hours() < left.get(i).hours() ? one : left.get(i));
                return;
            }
        }
        left.add(one);
    }

    private static void addHarms(TrayCase tray, List<Verdict.Harm> harms) {
        RootAdvice.driedOut(tray)
                .ifPresent(
                        dry ->
                                harms.add(
                                        new Verdict.Harm(
                                                Warning.Kind.DRIED_OUT,
                                                tray.id,
                                                tray.trace.clockAtSample(dry))));
        Wilt.of(tray).stream()
                .filter(Wilt::isHarm)
                .forEach(w -> harms.add(harmed(w.kind(), tray, w.fromS())));
        tray.firstS(Event.Kind.DIED)
                .ifPresent(atS -> harms.add(harmed(Warning.Kind.DIED, tray, atS)));
    }

    private static Verdict.Harm harmed(Warning.Kind kind, TrayCase tray, double atS) {
        return new Verdict.Harm(kind, tray.id, tray.trace.clockAt(atS));
    }

    private static Optional<Verdict.Absence> absenceOf(
            Trace trace,
            List<TrayCase> trays,
            VisitTimes rounds,
            List<Task> tasks,
            List<Verdict.Harm> harms,
            Visits.Absence absence) {
        LocalDate start = trace.scenario().start();
        int fromHour = (int) (24 * ChronoUnit.DAYS.between(start, absence.from()));
        int toHour = (int) (24 * (ChronoUnit.DAYS.between(start, absence.to()) + 1));
        boolean isPast = toHour * Time.HOUR_S <= trace.scenario().log().lastS();
        if (toHour <= 0 || fromHour >= trace.hours() || isPast) {
            return Optional.empty();
        }
        double before = rounds.lastBefore(fromHour);
        int until = Math.min(trace.hours(), (int) Math.ceil(rounds.nextFrom(toHour)));
        double lowest = Double.NaN;
        TrayCase lowestIn = null;
        for (TrayCase tray : trays) {
            int end = Math.min(until, tray.lastHour + 1);
            int from = Math.max(tray.firstHour, fromHour);
            if (end <= from) {
                continue;
            }
            double least = tray.of.levelM().min(from, end);
            if (lowestIn == null || least < lowest) {
                lowest = least;
                lowestIn = tray;
            }
        }
        boolean survives =
                harms.stream()
                        .noneMatch(
                                harm -> {
                                    double hour =
                                            ChronoUnit.MINUTES.between(
                                                            start.atStartOfDay(), harm.at())
                                                    / 60.0;
                                    return hour >= fromHour && hour <= until;
                                });
        LocalDate visit = trace.clockAt(before * Time.HOUR_S).toLocalDate();
        return Optional.of(
                new Verdict.Absence(
                        absence.from(),
                        absence.to(),
                        survives,
                        tasks.stream().anyMatch(task -> fillsUpOn(visit, task)) ? visit : null,
                        lowest,
                        lowestIn == null ? null : lowestIn.id,
                        Optional.empty()));
    }

    /** Told with an absence is only what is a task of the visit before it. */
    private static boolean fillsUpOn(LocalDate visit, Task task) {
        boolean fills = task.kind() == Task.Kind.REFILL || task.kind() == Task.Kind.TOP_UP;
        return fills && task.due().toLocalDate().equals(visit);
    }

    /** When a tray lived closest to dryness; empty for one that never thirsts. */
    private static Optional<Verdict.WaterLeft> waterLeft(TrayCase tray) {
        double[] daily = Thirsts.daily(tray);
        double least = Double.POSITIVE_INFINITY;
        int when = -1;
        for (int h = tray.firstOpenHour(); h <= tray.lastHour; h++) {
            double thirst = daily[Math.min(daily.length - 1, h / 24)];
            double hours = thirst > 0 ? 24 * tray.of.volumeM3().at(h) / thirst : least;
            if (hours < least) {
                least = hours;
                when = h;
            }
        }
        return when < 0
                ? Optional.empty()
                : Optional.of(
                        new Verdict.WaterLeft(
                                tray.id,
                                tray.trace.clockAtSample(Math.min(when, tray.trace.hours() - 2)),
                                least));
    }
}
