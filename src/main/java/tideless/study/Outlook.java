package tideless.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.ToDoubleFunction;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.Stress;
import tideless.sim.Surroundings;

/**
 * How sure a forecast is: what becomes of many rigs that the grower's might be.
 *
 * @param members how many
 * @param chance share of them in which every crop survives, 0-1
 * @param harms what harms first in the others, the most frequent first
 * @param expected events with their bands, in order of their middle
 * @param absences for each absence of the scenario
 * @param yields for each crop of each tray
 * @param feedLitres poured after the start, L
 */
public record Outlook(
        int members,
        double chance,
        List<LikelyHarm> harms,
        List<Expected> expected,
        List<Absence> absences,
        List<Yield> yields,
        Band feedLitres) {
    /** A crop that survives in so many members is said to survive. */
    public static final double SURE = 0.9;

    /**
     * Share of a harvest that salt, hunger and want of water together may take before it counts as
     * harm where designs are judged, 0-1: what leaves a poor crop. A crop is said to survive all
     * the same.
     */
    public static final double LOSS_BORNE_FRAC = Warning.POOR_FRAC;

    /** So many more rigs have to come through for a change to be told, as a share; assumed. */
    static final double CLEARLY_MORE_FRAC = 0.05;

    /** So much fewer come through it are within what their number leaves open; assumed. */
    static final double HARDLY_FEWER_FRAC = 0.02;

    private static final double L_PER_M3 = 1000;

    public Outlook {
        harms = List.copyOf(harms);
        expected = List.copyOf(expected);
        absences = List.copyOf(absences);
        yields = List.copyOf(yields);
    }

    /**
     * What harms first in some members.
     *
     * @param share of all members, 0-1
     * @param atS when, by those members
     * @param taken of a {@link Event.Kind#HARVEST} that a root zone takes, what takes it and how
     *     much in the middle of those members; else empty
     * @param by what a {@link Event.Kind#DIED} is of, as {@link Event#detail} has it; else empty
     */
    public record LikelyHarm(
            Event.Kind kind,
            VesselId tray,
            double share,
            Band atS,
            Optional<Taken> taken,
            String by) {
        /** Of no death by itself. */
        public LikelyHarm(
                Event.Kind kind, VesselId tray, double share, Band atS, Optional<Taken> taken) {
            this(kind, tray, share, atS, taken, "");
        }

        /** Of what no crop gets over. */
        public LikelyHarm(Event.Kind kind, VesselId tray, double share, Band atS) {
            this(kind, tray, share, atS, Optional.empty());
        }
    }

    /**
     * What a root zone takes of a crop.
     *
     * @param by what takes most
     * @param of what it takes of
     * @param frac how much of it all that can be mended takes together, 0-1
     */
    public record Taken(Stress by, Of of, double frac) {
        /** What is taken of. */
        public enum Of {
            /** What the crop would have given. */
            HARVEST,
            /** The growth of a day. */
            GROWTH
        }
    }

    /**
     * What becomes of an absence.
     *
     * @param chance share of members in which nothing is harmed until somebody comes again, 0-1
     * @param lowestMm lowest level of a living tray, mm; empty where none lives then in any member
     */
    public record Absence(Visits.Absence absence, double chance, Optional<Band> lowestMm) {}

    /**
     * What a crop gives.
     *
     * @param number which of the tray's crops, counted from 0
     * @param crop its name where several follow one another in the tray, else empty
     * @param freshG of one plant, g; empty where a thirst was measured
     * @param fruitG of which fruit, g; likewise
     * @param lostFrac what salt, hunger and want of water took together of what a plant that
     *     nothing harms would have given, 0-1; likewise
     * @param poorShare share of members in which that is more than {@link #LOSS_BORNE_FRAC}, 0-1
     */
    public record Yield(
            VesselId tray,
            int number,
            String crop,
            Optional<Band> freshG,
            Optional<Band> fruitG,
            Optional<Band> lostFrac,
            double poorShare) {
        /** What a grower takes home of one plant, g: of a fruit crop its fruit. */
        public Optional<Band> harvestedG() {
            return fruitG.filter(fruit -> fruit.high() > 0).or(() -> freshG);
        }

        /** The tray's name, with the crop's number and name where it has several. */
        public String name() {
            return crop.isEmpty() ? tray.name() : tray.name() + " " + (number + 1) + " " + crop;
        }
    }

    /** Whether the crops survive: all of them, in nine members of ten. */
    public boolean survives() {
        return chance >= SURE;
    }

    /** What is expected of the so-manieth event of a kind in a vessel. */
    public Optional<Expected> of(Event.Kind kind, VesselId vessel, int ordinal) {
        Expected.What what = new Expected.What(kind, vessel, ordinal);
        return expected.stream().filter(e -> e.what().equals(what)).findFirst();
    }

    /**
     * Runs the members.
     *
     * @param scenario as the user wrote it; its step is made that of an ensemble
     * @param members how many, at least 1
     * @param seed of all that is drawn
     * @return empty where an interruption kept no member; else of those it kept, as if no more had
     *     been asked for
     */
    public static Optional<Outlook> of(Scenario scenario, int members, long seed, Workers workers) {
        List<Fate> fates = fates(scenario, members, seed, workers);
        return fates.isEmpty() ? Optional.empty() : Optional.of(of(scenario, fates));
    }

    /**
     * Share of the members in which all survives.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    static double chance(Scenario scenario, int members, long seed, Workers workers)
            throws InterruptedException {
        IntFunction<Fate> fate = fate(scenario, members, seed);
        List<Boolean> survive = workers.each(members, i -> fate.apply(i).survives());
        return survive.stream().filter(s -> s).count() / (double) members;
    }

    static List<Fate> fates(Scenario scenario, int members, long seed, Workers workers) {
        return Kept.each(workers, members, fate(scenario, members, seed));
    }

    private static IntFunction<Fate> fate(Scenario scenario, int members, long seed) {
        Scenario coarse = Ensemble.atEnsembleStep(scenario);
        Unknowns unknowns = Unknowns.of(coarse);
        double[][] quantiles = unknowns.quantiles(members, seed);
        Surroundings shared = Surroundings.forSeasons(coarse);
        return i -> Fate.of(coarse, unknowns.member(quantiles[i]).season(shared));
    }

    static Outlook of(Scenario scenario, List<Fate> fates) {
        int survivors = 0;
        for (Fate fate : fates) {
            survivors += fate.survives() ? 1 : 0;
        }
        List<Absence> absences = new ArrayList<>();
        for (int a = 0; a < scenario.visits().absences().size(); a++) {
            absences.add(absence(scenario, fates, a));
        }
        List<Yield> yields = new ArrayList<>();
        for (int i = 0; i < scenario.trays().size(); i++) {
            Tray tray = scenario.trays().get(i);
            for (int n = 0; n < tray.plantings(); n++) {
                int which = scenario.plantingsBefore(i) + n;
                yields.add(
                        new Yield(
                                tray.id(),
                                n,
                                tray.cropOf(n),
                                band(fates, f -> f.freshG()[which]),
                                band(fates, f -> f.fruitG()[which]),
                                band(fates, f -> f.lostFrac()[which]),
                                fates.stream()
                                                .filter(f -> f.lostFrac()[which] > LOSS_BORNE_FRAC)
                                                .count()
                                        / (double) fates.size()));
            }
        }
        return new Outlook(
                fates.size(),
                survivors / (double) fates.size(),
                harms(fates.stream().flatMap(f -> f.firstHarm().stream()).toList(), fates.size()),
                expected(fates),
                absences,
                yields,
                Band.of(fates.stream().mapToDouble(f -> L_PER_M3 * f.feedM3()).toArray()));
    }

    private static Absence absence(Scenario scenario, List<Fate> fates, int a) {
        Visits.Absence absence = scenario.visits().absences().get(a);
        int survivors = 0;
        for (Fate fate : fates) {
            survivors += fate.survives(scenario, absence) ? 1 : 0;
        }
        return new Absence(
                absence,
                survivors / (double) fates.size(),
                band(fates, f -> 1000 * f.lowestInAbsenceM()[a]));
    }

    /** Of the members that have a figure; empty where none has. */
    private static Optional<Band> band(List<Fate> fates, ToDoubleFunction<Fate> figure) {
        double[] known = fates.stream().mapToDouble(figure).filter(v -> !Double.isNaN(v)).toArray();
        return known.length == 0 ? Optional.empty() : Optional.of(Band.of(known));
    }

    /**
     * Kinds of first harm, the most frequent first.
     *
     * @param firsts first harm of each member that has one
     * @param members how many members there are
     */
    static List<LikelyHarm> harms(List<Fate.Harm> firsts, int members) {
        record Kind(
                Event.Kind kind,
                VesselId tray,
                Optional<Stress> by,
                Optional<Taken.Of> of,
                String death) {}
        Map<Kind, List<Fate.Harm>> like = new HashMap<>();
        for (Fate.Harm harm : firsts) {
            Kind kind =
                    new Kind(
                            harm.kind(),
                            harm.tray(),
                            harm.taken().map(Taken::by),
                            harm.taken().map(Taken::of),
                            harm.by());
            like.computeIfAbsent(kind, k -> new ArrayList<>()).add(harm);
        }
        List<LikelyHarm> harms = new ArrayList<>();
        like.forEach(
                (kind, of) ->
                        harms.add(
                                new LikelyHarm(
                                        kind.kind(),
                                        kind.tray(),
                                        of.size() / (double) members,
                                        Band.of(of.stream().mapToDouble(Fate.Harm::atS).toArray()),
                                        kind.by()
                                                .map(
                                                        by ->
                                                                new Taken(
                                                                        by,
                                                                        kind.of().orElseThrow(),
                                                                        middleTaken(of))),
                                        kind.death())));
        harms.sort(
                Comparator.comparing((LikelyHarm h) -> -h.share())
                        .thenComparing(LikelyHarm::kind)
                        .thenComparing(h -> h.tray().name())
                        .thenComparing(h -> h.taken().map(t -> t.by().ordinal()).orElse(-1))
                        .thenComparing(LikelyHarm::by));
        return harms;
    }

    private static double middleTaken(List<Fate.Harm> harms) {
        return Band.of(harms.stream().mapToDouble(h -> h.taken().orElseThrow().frac()).toArray())
                .middle();
    }

    private static List<Expected> expected(List<Fate> fates) {
        Map<Expected.What, double[]> times = new HashMap<>();
        Map<Expected.What, List<Double>> litres = new HashMap<>();
        for (int i = 0; i < fates.size(); i++) {
            int member = i;
            fates.get(i)
                    .dated()
                    .forEach(
                            (what, dated) -> {
                                times.computeIfAbsent(what, w -> never(fates.size()))[member] =
                                        dated.atS();
                                litres.computeIfAbsent(what, w -> new ArrayList<>())
                                        .add(L_PER_M3 * dated.m3());
                            });
        }
        List<Expected> expected = new ArrayList<>();
        times.forEach(
                (what, at) ->
                        expected.add(
                                new Expected(
                                        what,
                                        Band.of(at),
                                        Band.of(
                                                litres.get(what).stream()
                                                        .mapToDouble(v -> v)
                                                        .toArray()))));
        expected.sort(
                Comparator.comparing((Expected e) -> e.atS().middle())
                        .thenComparing(e -> e.what().vessel().kind())
                        .thenComparing(e -> e.what().vessel().name())
                        .thenComparing(e -> e.what().kind())
                        .thenComparing(e -> e.what().ordinal()));
        return expected;
    }

    private static double[] never(int members) {
        double[] at = new double[members];
        java.util.Arrays.fill(at, Double.POSITIVE_INFINITY);
        return at;
    }
}
