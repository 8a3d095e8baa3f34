package tideless.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Departures;
import tideless.sim.Event;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Stress;
import tideless.sim.Surroundings;
import tideless.sim.TraySeason;

/**
 * How long nobody need come: for each day the time to the first harm when nobody comes from that
 * day on, as things stand and with everything filled up at the visit before.
 *
 * <p>Whoever looks in goes by the scenario's rules until then and does not foresee it; a member's
 * missed visits stay missed, but for the one at which all is filled up. Every day is tried on the
 * same members. Times count from the hour of the visit that is left out, in the step of an
 * ensemble.
 *
 * @param scenario what was run: as stated, but that no reservoir is refilled while nobody is there
 * @param members how many rigs were tried; fewer than were asked for, and the first of them, where
 *     the work was broken off
 * @param asked how many were asked for
 * @param attended whether a reservoir that is refilled the moment it is empty was refilled at the
 *     visits instead, before the next would find it empty
 * @param leaves by day, in order of time; none for days on which nothing grows any more
 * @param absences what becomes of those asked for
 * @param harvests of the run as stated, from the first day asked for on, in order of time: whoever
 *     is away then misses them
 */
public record Away(
        Scenario scenario,
        int members,
        int asked,
        boolean attended,
        List<Leave> leaves,
        List<Stated> absences,
        List<Harvest> harvests) {
    public Away {
        leaves = List.copyOf(leaves);
        harvests = List.copyOf(harvests);
        absences = List.copyOf(absences);
    }

    /** Whether all rigs that were asked for were tried. */
    public boolean whole() {
        return members == asked;
    }

    /** A crop that is ready. */
    public record Harvest(VesselId tray, LocalDate on) {}

    /** Harvests from a day to another, both included. */
    public List<Harvest> harvests(LocalDate from, LocalDate to) {
        return harvests.stream()
                .filter(h -> !h.on().isBefore(from) && !h.on().isAfter(to))
                .toList();
    }

    /**
     * Nobody comes from a day on.
     *
     * @param from first day on which nobody comes
     * @param filledOn day of the visit before; empty where there is none, and then nothing is
     *     filled up
     * @param asItStands nothing is done about it
     * @param filledUp everything is filled up at the visit before
     */
    public record Leave(
            LocalDate from, Optional<LocalDate> filledOn, Lasting asItStands, Lasting filledUp) {}

    /**
     * How long it lasts.
     *
     * @param days to the first harm, d; infinite where the run ends first; 0 where a crop was lost
     *     before, its tray stood dry or its growth was halved
     * @param harm the most frequent first harm; empty where no member comes to any
     */
    public record Lasting(Band days, Optional<Outlook.LikelyHarm> harm) {}

    /**
     * An absence that was asked for.
     *
     * @param absence both ends included
     * @param filledOn as of a {@link Leave}
     * @param chance share of members without harm until somebody comes again, 0-1, nothing being
     *     done about it
     * @param chanceFilledUp with everything filled up at the visit before
     * @param harm the most frequent first harm of the others, nothing being done about it
     * @param harmFilledUp likewise with everything filled up
     */
    public record Stated(
            Visits.Absence absence,
            Optional<LocalDate> filledOn,
            double chance,
            double chanceFilledUp,
            Optional<Outlook.LikelyHarm> harm,
            Optional<Outlook.LikelyHarm> harmFilledUp) {}

    /**
     * What is asked.
     *
     * @param from first day to be tried
     * @param everyDays days from one to the next, at least 1
     * @param absences to be judged one by one, each from a day of the run on and as far as it goes;
     *     each counts for the scenario's own
     */
    public record Question(LocalDate from, int everyDays, List<Visits.Absence> absences) {
        public Question {
            absences = List.copyOf(absences);
        }
    }

    /**
     * Finds it. An interruption keeps the rigs that were tried: those of a smaller number asked
     * for.
     *
     * @param given as the user wrote it; its step is made that of an ensemble
     * @param members how many, at least 1; a single one is the rig as stated
     * @param seed of all that is drawn
     */
    public static Away of(
            Scenario given, Question question, int members, long seed, Workers workers) {
        Scenario scenario = attended(Ensemble.atEnsembleStep(given));
        Unknowns all = Unknowns.of(scenario);
        Unknowns unknowns = members == 1 ? all.only(Set.of()) : all;
        double[][] quantiles = members == 1 ? new double[1][0] : unknowns.quantiles(members, seed);
        Season stated = Simulation.season(scenario, Surroundings.forSeasons(scenario));
        List<Case> cases = cases(scenario, question, lastDay(scenario, stated));
        Surroundings shared = Surroundings.forSeasons(scenario);
        List<First[]> firsts =
                Kept.each(
                        workers,
                        members,
                        i -> firsts(cases, unknowns.member(quantiles[i]), scenario, shared));
        List<Leave> leaves = new ArrayList<>();
        List<Stated> absences = new ArrayList<>();
        for (int c = 0; !firsts.isEmpty() && c < cases.size(); c += 2) {
            int plain = c;
            First[] asItStands = firsts.stream().map(f -> f[plain]).toArray(First[]::new);
            First[] filledUp = firsts.stream().map(f -> f[plain + 1]).toArray(First[]::new);
            Case of = cases.get(c);
            if (of.absence == null) {
                leaves.add(
                        new Leave(of.from, of.filledOn(), lasting(asItStands), lasting(filledUp)));
            } else {
                absences.add(
                        new Stated(
                                of.absence,
                                of.filledOn(),
                                chance(asItStands),
                                chance(filledUp),
                                harm(asItStands),
                                harm(filledUp)));
            }
        }
        return new Away(
                scenario,
                firsts.size(),
                members,
                needsSomebody(given),
                leaves,
                absences,
                harvests(scenario, stated, question.from()));
    }

    private static List<Harvest> harvests(Scenario scenario, Season stated, LocalDate from) {
        List<Harvest> harvests = new ArrayList<>();
        for (Event event : stated.events()) {
            // What is cut as the run ends is cut on its last day.
            long day = Math.min(scenario.days() - 1, (long) (event.atS() / Time.DAY_S));
            LocalDate on = scenario.start().plusDays(day);
            if (event.kind() == Event.Kind.HARVEST && !on.isBefore(from)) {
                harvests.add(new Harvest(event.vessel(), on));
            }
        }
        return harvests;
    }

    /** A reservoir that is refilled the moment it is empty needs somebody who is there. */
    private static Scenario attended(Scenario scenario) {
        List<Reservoir> reservoirs = new ArrayList<>();
        for (Reservoir reservoir : scenario.reservoirs()) {
            Reservoir.Refill refill = reservoir.refill();
            reservoirs.add(
                    refill.when() == Reservoir.Refill.When.WHEN_EMPTY
                            ? reservoir.withRefill(
                                    refill.on(Reservoir.Refill.When.BEFORE_NEXT_VISIT))
                            : reservoir);
        }
        return scenario.withReservoirs(reservoirs);
    }

    /** The first harm of one member: infinite days for none. */
    private record First(double days, Optional<Fate.Harm> harm) {
        static final First NONE = new First(Double.POSITIVE_INFINITY, Optional.empty());
    }

    /** Growth that a root zone must leave on each day, 0-1; assumed. */
    private static final double HALF_FRAC = 0.5;

    /** One way of leaving: cases come in pairs, as it stands and filled up. */
    private record Case(
            Visits visits,
            LocalDate from,
            int fromDay,
            int toDay,
            int filledDay,
            boolean fillsUp,
            LocalDate start,
            Visits.Absence absence) {

        Optional<LocalDate> filledOn() {
            return filledDay < 0 ? Optional.empty() : Optional.of(start.plusDays(filledDay));
        }

        Case filled() {
            return new Case(
                    visits, from, fromDay, toDay, filledDay, filledDay >= 0, start, absence);
        }

        Departures of(Departures departures) {
            Departures away = departures.away(fromDay, toDay);
            return fillsUp ? away.filledUp(filledDay) : away;
        }
    }

    private static List<Case> cases(Scenario scenario, Question question, int last) {
        List<Case> cases = new ArrayList<>();
        LocalDate start = scenario.start();
        int first = (int) (question.from().toEpochDay() - start.toEpochDay());
        for (int day = first; day <= last; day += question.everyDays()) {
            add(cases, scenario, scenario.visits(), day, scenario.days(), null);
        }
        for (Visits.Absence absence : question.absences()) {
            List<Visits.Absence> others = new ArrayList<>(scenario.visits().absences());
            others.remove(absence);
            Visits visits = scenario.visits().withAbsences(others);
            LocalDate back = absence.to().plusDays(1);
            LocalDate end = start.plusDays(scenario.days());
            while (back.isBefore(end) && !visits.on(back)) {
                back = back.plusDays(1);
            }
            int from = (int) (absence.from().toEpochDay() - start.toEpochDay());
            int to = (int) (Math.min(back.toEpochDay(), end.toEpochDay()) - start.toEpochDay());
            add(cases, scenario, visits, from, to, absence);
        }
        return cases;
    }

    private static void add(
            List<Case> cases,
            Scenario scenario,
            Visits visits,
            int from,
            int to,
            Visits.Absence absence) {
        int filled = from - 1;
        while (filled >= 0 && !visits.on(scenario.start().plusDays(filled))) {
            filled--;
        }
        LocalDate date = scenario.start().plusDays(from);
        Case plain = new Case(visits, date, from, to, filled, false, scenario.start(), absence);
        cases.add(plain);
        cases.add(plain.filled());
    }

    /** Last day on which anything grows in the run as stated. */
    private static int lastDay(Scenario scenario, Season season) {
        Map<VesselId, Double> ends = new HashMap<>();
        for (Event event : season.events()) {
            if (event.kind() == Event.Kind.HARVEST || event.kind() == Event.Kind.DIED) {
                ends.putIfAbsent(event.vessel(), event.atS());
            } else if (event.kind() == Event.Kind.PLANTED) {
                ends.remove(event.vessel());
            }
        }
        double endS = 0;
        for (Tray tray : scenario.trays()) {
            endS = Math.max(endS, ends.getOrDefault(tray.id(), scenario.days() * Time.DAY_S - 1));
        }
        return (int) (endS / Time.DAY_S);
    }

    private static First[] firsts(
            List<Case> cases, Member member, Scenario scenario, Surroundings shared) {
        Scenario rig = member.scenario();
        Map<Visits, Surroundings> around = new HashMap<>();
        around.put(rig.visits(), shared.around(rig));
        First[] firsts = new First[cases.size()];
        for (int c = 0; c < firsts.length; c++) {
            Case of = cases.get(c);
            if (of.fillsUp || c % 2 == 0) {
                Scenario visited = of.visits.equals(rig.visits()) ? rig : rig.withVisits(of.visits);
                Surroundings air =
                        around.computeIfAbsent(of.visits, v -> Surroundings.forSeasons(visited));
                firsts[c] = first(scenario, visited, air, of, member.departures());
            } else {
                firsts[c] = firsts[c - 1];
            }
        }
        return firsts;
    }

    private static First first(
            Scenario scenario, Scenario rig, Surroundings air, Case of, Departures departures) {
        Season season = Simulation.season(rig, air, of.of(departures));
        double leftS = of.fromDay * Time.DAY_S + of.visits.timeOfDayS();
        double backS =
                of.toDay < scenario.days()
                        ? of.toDay * Time.DAY_S + of.visits.timeOfDayS()
                        : Double.POSITIVE_INFINITY;
        First first = First.NONE;
        for (Fate.Harm harm : Fate.of(rig, season).harms()) {
            if (harm.atS() < leftS && isStill(harm, rig, season, of.fromDay)) {
                return new First(0, Optional.of(harm));
            }
            if (first.harm().isEmpty() && harm.atS() >= leftS && harm.atS() < backS) {
                first = new First((harm.atS() - leftS) / Time.DAY_S, Optional.of(harm));
            }
        }
        for (int i = 0; i < rig.trays().size(); i++) {
            Optional<Fate.Harm> halved =
                    halved(rig.trays().get(i).id(), season.trays().get(i), of.fromDay);
            if (halved.filter(h -> h.atS() < backS).isPresent()) {
                double days = Math.max(0, halved.get().atS() - leftS) / Time.DAY_S;
                first = days < first.days() ? new First(days, halved) : first;
            }
        }
        return first;
    }

    /** The first day from one on, on which salt, hunger or want of air leave less than half. */
    private static Optional<Fate.Harm> halved(VesselId tray, TraySeason season, int fromDay) {
        List<TraySeason.Left> left = season.leftOfDay();
        for (int day = fromDay; day < left.size(); day++) {
            TraySeason.Left of = left.get(day);
            double least = Math.min(of.saltFrac(), Math.min(of.hungerFrac(), of.airFrac()));
            if (least < HALF_FRAC) {
                Stress by =
                        least == of.saltFrac()
                                ? Stress.SALT
                                : least == of.hungerFrac() ? Stress.HUNGER : Stress.AIR;
                return Optional.of(
                        new Fate.Harm(
                                Event.Kind.HARVEST,
                                tray,
                                day * Time.DAY_S,
                                Optional.of(
                                        new Outlook.Taken(
                                                by, Outlook.Taken.Of.GROWTH, 1 - least))));
            }
        }
        return Optional.empty();
    }

    /** Whether a harm that came before a day is not over on it. */
    static boolean isStill(Fate.Harm harm, Scenario rig, Season season, int day) {
        for (Event event : season.events()) {
            boolean over = event.atS() > harm.atS() && event.atS() < day * Time.DAY_S;
            boolean ends = event.kind() == Event.Kind.HARVEST || event.kind() == Event.Kind.PLANTED;
            if (over && ends && event.vessel().equals(harm.tray())) {
                return false;
            }
        }
        if (harm.kind() != Event.Kind.DRIED_OUT) {
            return harm.kind() == Event.Kind.DIED;
        }
        for (int i = 0; i < rig.trays().size(); i++) {
            if (rig.trays().get(i).id().equals(harm.tray())) {
                return season.trays().get(i).lowestOfDayM().get(day) < TraySeason.FILM_M;
            }
        }
        throw new IllegalStateException("no tray of the rig: " + harm.tray());
    }

    private static Lasting lasting(First[] firsts) {
        return new Lasting(
                Band.of(Arrays.stream(firsts).mapToDouble(First::days).toArray()), harm(firsts));
    }

    private static double chance(First[] firsts) {
        return Arrays.stream(firsts).filter(f -> f.harm().isEmpty()).count()
                / (double) firsts.length;
    }

    private static Optional<Outlook.LikelyHarm> harm(First[] firsts) {
        return Outlook.harms(
                        Arrays.stream(firsts).flatMap(f -> f.harm().stream()).toList(),
                        firsts.length)
                .stream()
                .findFirst();
    }

    private static boolean needsSomebody(Scenario scenario) {
        return scenario.reservoirs().stream()
                .anyMatch(r -> r.refill().when() == Reservoir.Refill.When.WHEN_EMPTY);
    }

    /** Whether on any day it lasts longer with all filled up than as it stands. */
    public boolean fillingUpHelps() {
        return leaves.stream().anyMatch(l -> !l.filledUp().days().equals(l.asItStands().days()));
    }

    /** Whether filling up does anything: something is refilled or topped up by somebody. */
    public boolean canFillUp() {
        return !scenario.reservoirs().isEmpty()
                || scenario.trays().stream().anyMatch(t -> t.filling() instanceof Filling.ByHand);
    }
}
