package tideless.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tideless.advice.Advice;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.Visits;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;

/**
 * How often somebody has to come while the grower is away from a tray that is topped up by hand:
 * seldom enough to ask of a neighbour, and often enough in a run and in nine of ten rigs.
 */
final class AbsenceTrials {
    /** Rigs that the grower's might be. */
    private static final int MEMBERS = 10;

    /** Rarer than every so-manieth visit nobody has to be told, for the absence is short then. */
    private static final int RAREST = 7;

    /** And so often somebody is tried to come whatever the weekday, d; assumed. */
    private static final int OFTENER_DAYS = 3;

    private final Scenario scenario;
    private final double[][] quantiles;
    private final Map<Visits.Absence, Optional<Cure>> cures = new HashMap<>();

    AbsenceTrials(Scenario given, long seed) {
        scenario = Ensemble.atEnsembleStep(given);
        quantiles = Unknowns.of(scenario).quantiles(MEMBERS, seed);
    }

    /** The advice with how often in place of one day, where a run shows that it serves. */
    static Advice judged(Advice advice, Scenario scenario, long seed) {
        AbsenceTrials trials = new AbsenceTrials(scenario, seed);
        return advice.withEachWarning(warning -> warning.withCures(trials.cures(warning)));
    }

    /** What no trial has shown to serve is told only where nothing else is. */
    private List<Cure> cures(Warning warning) {
        List<Cure> cures = new ArrayList<>();
        for (Cure cure : warning.cures()) {
            if (cure.kind() != Cure.Kind.TOPPED_UP_MEANWHILE) {
                cures.add(cure);
                continue;
            }
            cureOn(cure.facts().on().toLocalDate())
                    .or(() -> Optional.of(cure).filter(c -> warning.cures().size() == 1))
                    .ifPresent(cures::add);
        }
        return cures;
    }

    /** What serves in the absence in which a day lies, or that which ended last before it. */
    Optional<Cure> cureOn(LocalDate day) {
        Visits.Absence of = null;
        for (Visits.Absence absence : scenario.visits().absences()) {
            of = absence.from().isAfter(day.plusDays(1)) ? of : absence;
        }
        if (of == null
                || scenario.trays().stream()
                        .noneMatch(tray -> tray.filling() instanceof Filling.ByHand)) {
            return Optional.empty();
        }
        if (!cures.containsKey(of)) {
            cures.put(of, tried(of));
        }
        return cures.get(of);
    }

    /** On days on which somebody would come else, the rarest that serve; or on more than these. */
    private Optional<Cure> tried(Visits.Absence absence) {
        List<List<LocalDate>> tries = new ArrayList<>();
        for (int every = RAREST; every >= 1; every--) {
            tries.add(days(absence, every));
        }
        for (int every = OFTENER_DAYS; every >= 1; every--) {
            tries.add(everyDays(absence, every));
        }
        for (List<LocalDate> days : tries) {
            if (!days.isEmpty() && serves(scenario.withVisits(without(absence, days)), absence)) {
                return Optional.of(told(days));
            }
        }
        return Optional.empty();
    }

    private static Cure told(List<LocalDate> days) {
        LocalDate first = days.get(0);
        LocalDate last = days.get(days.size() - 1);
        Facts facts =
                Facts.NONE
                        .on(first.atStartOfDay())
                        .and(Quantity.LONGEST, (double) (last.toEpochDay() - first.toEpochDay()));
        return new Cure(
                Cure.Kind.TOPPED_UP_MEANWHILE,
                days.size() == 1
                        ? facts
                        : facts.and(
                                Quantity.EVERY, facts.get(Quantity.LONGEST) / (days.size() - 1)));
    }

    /** Whatever the weekday. */
    private static List<LocalDate> everyDays(Visits.Absence absence, int every) {
        List<LocalDate> days = new ArrayList<>();
        LocalDate day = absence.from().plusDays(every - 1L);
        while (!day.isAfter(absence.to())) {
            days.add(day);
            day = day.plusDays(every);
        }
        return days;
    }

    /** Every so-manieth of the days of an absence on which there would be a visit else. */
    private List<LocalDate> days(Visits.Absence absence, int every) {
        List<LocalDate> days = new ArrayList<>();
        int visits = 0;
        for (LocalDate day = absence.from(); !day.isAfter(absence.to()); day = day.plusDays(1)) {
            boolean wouldBe = scenario.visits().weekdays().contains(day.getDayOfWeek());
            visits += wouldBe ? 1 : 0;
            if (wouldBe && visits % every == 0) {
                days.add(day);
            }
        }
        return days;
    }

    /** The visits with those days left out of an absence. */
    private Visits without(Visits.Absence absence, List<LocalDate> days) {
        List<Visits.Absence> absences = new ArrayList<>();
        for (Visits.Absence other : scenario.visits().absences()) {
            if (!other.equals(absence)) {
                absences.add(other);
                continue;
            }
            LocalDate from = absence.from();
            for (LocalDate day : days) {
                if (day.isAfter(from)) {
                    absences.add(new Visits.Absence(from, day.minusDays(1)));
                }
                from = day.plusDays(1);
            }
            if (!from.isAfter(absence.to())) {
                absences.add(new Visits.Absence(from, absence.to()));
            }
        }
        return scenario.visits().withAbsences(absences);
    }

    /** Whether nothing is harmed in the absence by it, as stated and in nine rigs of ten. */
    private boolean serves(Scenario so, Visits.Absence absence) {
        Surroundings shared = Surroundings.forSeasons(so);
        Unknowns unknowns = Unknowns.of(so);
        Season stated = Simulation.season(so, shared);
        if (!Fate.of(so, stated).survives(so, absence)) {
            return false;
        }
        int lost = 0;
        for (int i = 0; i < MEMBERS && 1 - lost / (double) MEMBERS >= Outlook.SURE; i++) {
            Season season = unknowns.member(quantiles[i]).season(shared);
            lost += Fate.of(so, season).survives(so, absence) ? 0 : 1;
        }
        return 1 - lost / (double) MEMBERS >= Outlook.SURE;
    }
}
