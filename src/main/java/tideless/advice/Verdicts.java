package tideless.advice;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.Trace;

/** Whether a run's crops survive. */
final class Verdicts {
    /** Wilting longer than this is harm, h; fixed by what {@code result.json} promises. */
    static final double WILT_BORNE_H = 6;

    /** Air out of a crop's limits for so long is the first thing to change, d; assumed. */
    private static final int AIR_DAYS = 14;

    private Verdicts() {}

    static Verdict of(
            Trace trace, List<TrayCase> trays, VisitTimes rounds, List<Warning> warnings) {
        List<Verdict.Harm> harms = new ArrayList<>();
        trays.forEach(tray -> addHarms(tray, harms));
        harms.sort(Comparator.comparing(Verdict.Harm::at).thenComparing(Verdict.Harm::kind));
        // What drinks nothing neither survives nor is filled up for.
        List<TrayCase> drinking = trays.stream().filter(t -> waterLeft(t).isPresent()).toList();
        List<Verdict.Absence> absences = new ArrayList<>();
        for (Visits.Absence absence : trace.scenario().visits().absences()) {
            absenceOf(trace, drinking, rounds, harms, absence).ifPresent(absences::add);
        }
        List<Verdict.WaterLeft> left = new ArrayList<>();
        drinking.forEach(tray -> waterLeft(tray).ifPresent(one -> addTightest(one, left)));
        Optional<Warning> first =
                warnings.stream()
                        .min(
                                Comparator.comparing(Verdicts::gravity)
                                        .thenComparing(Warning.GRAVEST_FIRST));
        return new Verdict(harms.isEmpty(), harms.stream().findFirst(), absences, left, first);
    }

    /**
     * 0 for what kills or leaves dry, 1 for air that the crop does not bear for weeks and 2 for the
     * rest, which such air often brings about.
     */
    private static int gravity(Warning warning) {
        if (warning.gravity().compareTo(Warning.Kind.OUTGROWN) <= 0) {
            return 0;
        }
        boolean ofAir =
                warning.kind() == Warning.Kind.TOO_COLD || warning.kind() == Warning.Kind.TOO_HOT;
        boolean isLong = ChronoUnit.DAYS.between(warning.from(), warning.until()) >= AIR_DAYS;
        return ofAir && isLong ? 1 : 2;
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
        addWilts(tray, Event.Kind.WILTED, Event.Kind.RECOVERED, Warning.Kind.WILTED, harms);
        addWilts(
                tray,
                Event.Kind.SALT_WILTED,
                Event.Kind.SALT_BORNE,
                Warning.Kind.SALT_WILTED,
                harms);
        tray.firstS(Event.Kind.DIED)
                .ifPresent(
                        atS ->
                                harms.add(
                                        new Verdict.Harm(
                                                Warning.Kind.DIED,
                                                tray.id,
                                                tray.trace.clockAt(atS))));
    }

    /** Wilting of one cause that lasts, from one kind of event to another or the crop's end. */
    private static void addWilts(
            TrayCase tray,
            Event.Kind begins,
            Event.Kind ends,
            Warning.Kind kind,
            List<Verdict.Harm> harms) {
        OptionalDouble fromS = OptionalDouble.empty();
        for (Event event : tray.events()) {
            if (event.kind() == begins) {
                fromS = OptionalDouble.of(event.atS());
            } else if (event.kind() == ends) {
                addWilt(tray, kind, fromS, event.atS(), harms);
                fromS = OptionalDouble.empty();
            }
        }
        addWilt(tray, kind, fromS, (tray.lastHour + 1) * Time.HOUR_S, harms);
    }

    private static void addWilt(
            TrayCase tray,
            Warning.Kind kind,
            OptionalDouble fromS,
            double toS,
            List<Verdict.Harm> harms) {
        if (toS - fromS.orElse(toS) > WILT_BORNE_H * Time.HOUR_S) {
            harms.add(new Verdict.Harm(kind, tray.id, tray.trace.clockAt(fromS.getAsDouble())));
        }
    }

    private static Optional<Verdict.Absence> absenceOf(
            Trace trace,
            List<TrayCase> trays,
            VisitTimes rounds,
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
        boolean fed = false;
        double lowest = Double.NaN;
        TrayCase lowestIn = null;
        for (TrayCase tray : trays) {
            int end = Math.min(until, tray.lastHour + 1);
            int from = Math.max(tray.firstHour, fromHour);
            if (end <= from) {
                continue;
            }
            fed |= !(tray.tray.filling() instanceof Filling.Sealed);
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
        boolean visited = rounds.hours().stream().anyMatch(h -> h < fromHour);
        return Optional.of(
                new Verdict.Absence(
                        absence.from(),
                        absence.to(),
                        survives,
                        fed && visited ? trace.clockAt(before * Time.HOUR_S).toLocalDate() : null,
                        lowest,
                        lowestIn == null ? null : lowestIn.id,
                        Optional.empty()));
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
