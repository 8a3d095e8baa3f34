package tideless.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import tideless.physics.Time;
import tideless.rig.Scenario;
import tideless.sim.Event;
import tideless.sim.Surroundings;

/**
 * Which unknown moves what a grower asks for: shares of the variance over all that is unknown of a
 * rig ({@link Unknowns}), by {@link SobolIndices}. Unknowns that one look would tell stand together
 * as a group.
 *
 * @param scenario what was run
 * @param from a refill, harvest or ripe fruit on this day or later is the next one
 * @param points of each base sample that were run to the end
 * @param whole false where the work was broken off
 * @param groups of what is unknown
 * @param answers by what is asked, in the order of {@link Asked}; none where too little was run
 */
public record Sensitivity(
        Scenario scenario,
        LocalDate from,
        int points,
        boolean whole,
        List<Group> groups,
        List<Answer> answers) {
    /** Least share of a variance that is worth a look: a twentieth; assumed. */
    public static final double WORTH_FRAC = 0.05;

    /** So many standard errors above nothing is something. */
    private static final double SURE_ERRORS = 2;

    public Sensitivity {
        groups = List.copyOf(groups);
        answers = List.copyOf(answers);
    }

    /** What is asked of a rig. */
    public enum Asked {
        /** When a reservoir is next filled up or a tray topped up, s. */
        NEXT_REFILL,
        /** Whether every crop comes through with a good part of its harvest, 1 or 0. */
        COMES_THROUGH,
        /** When something is first ripe or harvested, s. */
        FIRST_HARVEST,
        /** What is poured to the end of the run, L. */
        LITRES;

        /** Whether it is a time; a rig that never sees it counts as seeing it at the run's end. */
        public boolean isTime() {
            return this == NEXT_REFILL || this == FIRST_HARVEST;
        }
    }

    /** What one look tells. */
    public enum Kind {
        /** The stand's own thirst. */
        THIRST,
        /** Weeks and days of more or less thirst. */
        DAYS,
        /** How fast the crop grows: light use and leaf. */
        GROWTH,
        /** What the crop takes out of the solution. */
        CONTENTS,
        /** How fast roots go down. */
        ROOTS,
        /** Warmth and dampness of the air. */
        AIR,
        /** Lamps and sun. */
        LIGHT,
        /** Strength of the mixed feed. */
        FEED,
        /** Error of the meter. */
        METER,
        /** Level at which floats shut. */
        VALVE,
        /** Gaps of the decks. */
        GAPS,
        /** Which of the file's years it will be. */
        YEAR,
        /** Visits that do not take place. */
        VISITS;

        static Kind of(Unknown.Kind kind) {
            return switch (kind) {
                case THIRST -> THIRST;
                case DAYS -> DAYS;
                case GROWTH, LEAF -> GROWTH;
                case CONTENTS -> CONTENTS;
                case ROOTS -> ROOTS;
                case WARMTH, HUMIDITY -> AIR;
                case LIGHT -> LIGHT;
                case FEED -> FEED;
                case METER -> METER;
                case VALVE -> VALVE;
                case GAPS -> GAPS;
                case YEAR -> YEAR;
                case VISITS -> VISITS;
            };
        }

        /** Whether somebody can find it out before the run is over. */
        public boolean isMeasurable() {
            return this != DAYS && this != YEAR && this != VISITS;
        }
    }

    /**
     * Unknowns that are told together.
     *
     * @param of the crop whose thirst it is; empty for every other kind
     */
    public record Group(Kind kind, String of) {
        static Group of(Unknown unknown) {
            Kind kind = Kind.of(unknown.kind());
            return new Group(kind, kind == Kind.THIRST ? unknown.of() : "");
        }
    }

    /**
     * How much of what is asked a group moves, as shares of its variance with the standard error.
     *
     * @param alone what goes if this is known and nothing else
     * @param total what is left if all else is known
     */
    public record Share(
            Group group, double alone, double aloneError, double total, double totalError) {
        /** Whether it is more than nothing and worth a look. */
        public boolean matters() {
            return total >= WORTH_FRAC && total > SURE_ERRORS * totalError;
        }

        /** Whether knowing it alone makes the answer surer. */
        public boolean tellsAlone() {
            return alone >= WORTH_FRAC && alone > SURE_ERRORS * aloneError;
        }
    }

    /**
     * What moves one answer.
     *
     * @param band over the rigs of both samples
     * @param mean over them, of what is seen by the end of the run
     * @param shares the greatest total first; none where it never comes about or never differs
     */
    public record Answer(Asked asked, Band band, double mean, List<Share> shares) {
        public Answer {
            shares = List.copyOf(shares);
        }

        /** Of a group. */
        public Optional<Share> of(Group group) {
            return shares.stream().filter(s -> s.group().equals(group)).findFirst();
        }

        /**
         * What to measure first: what can be found out and, known alone, makes the answer surest.
         * Empty where nothing that can be measured does.
         */
        public Optional<Share> measureFirst() {
            return shares.stream()
                    .filter(s -> s.group().kind().isMeasurable() && s.tellsAlone())
                    .max(Comparator.comparingDouble(Share::alone));
        }
    }

    /** Of a question. */
    public Optional<Answer> of(Asked asked) {
        return answers.stream().filter(a -> a.asked() == asked).findFirst();
    }

    private static Map<Group, List<Integer>> members(Unknowns unknowns) {
        Map<Group, List<Integer>> members = new LinkedHashMap<>();
        for (int i = 0; i < unknowns.list().size(); i++) {
            members.computeIfAbsent(Group.of(unknowns.list().get(i)), g -> new ArrayList<>())
                    .add(i);
        }
        return members;
    }

    /** What gathers results as they come, so that they outlive an interruption. */
    private static final class Gathered {
        private final double[][] results;

        Gathered(int questions, int jobs) {
            results = new double[questions][jobs];
            for (double[] of : results) {
                Arrays.fill(of, Double.NaN);
            }
        }

        synchronized void keep(int job, double[] answers) {
            for (int q = 0; q < results.length; q++) {
                results[q][job] = answers[q];
            }
        }

        synchronized double[][] all() {
            return Arrays.stream(results).map(double[]::clone).toArray(double[][]::new);
        }
    }

    /**
     * Finds it. An interruption keeps the points that are done and sets {@code whole} to false.
     *
     * @param given as the user wrote it; its step is made that of an ensemble
     * @param from first day on which a refill is the next one
     * @param points of each of two base samples, at least 2
     * @param seed of all that is drawn
     */
    public static Sensitivity of(
            Scenario given, LocalDate from, int points, long seed, Workers workers) {
        Scenario scenario = Ensemble.atEnsembleStep(given);
        Unknowns unknowns = Unknowns.of(scenario);
        Map<Group, List<Integer>> members = members(unknowns);
        List<Group> groups = List.copyOf(members.keySet());
        SobolIndices.Plan plan =
                SobolIndices.Plan.of(
                        unknowns.list().size(),
                        members.values().stream()
                                .map(l -> l.stream().mapToInt(i -> i).toArray())
                                .toList(),
                        points,
                        seed);
        Surroundings shared = Surroundings.forSeasons(scenario);
        double fromS = (from.toEpochDay() - scenario.start().toEpochDay()) * Time.DAY_S;
        Gathered gathered = new Gathered(Asked.values().length, plan.size());
        boolean whole = true;
        try {
            workers.each(
                    plan.size(),
                    job -> {
                        Member member = unknowns.member(plan.point(job));
                        Fate fate = Fate.of(scenario, member.season(shared));
                        gathered.keep(job, answers(fate, fromS));
                        return job;
                    });
        } catch (InterruptedException e) {
            whole = false;
        }
        double[][] results = gathered.all();
        int done =
                (int) IntStream.range(0, points).filter(j -> plan.isWhole(results[0], j)).count();
        List<Answer> answers = new ArrayList<>();
        for (Asked asked : done < 2 ? new Asked[0] : Asked.values()) {
            answers.add(answer(asked, groups, plan, results[asked.ordinal()], scenario, seed));
        }
        return new Sensitivity(scenario, from, done, whole, groups, answers);
    }

    private static double[] answers(Fate fate, double fromS) {
        double refillS = Double.POSITIVE_INFINITY;
        double harvestS = Double.POSITIVE_INFINITY;
        for (Map.Entry<Expected.What, Fate.Dated> event : fate.dated().entrySet()) {
            Event.Kind kind = event.getKey().kind();
            double atS = event.getValue().atS();
            if ((kind == Event.Kind.REFILL || kind == Event.Kind.TOP_UP) && atS >= fromS) {
                refillS = Math.min(refillS, atS);
            } else if ((kind == Event.Kind.HARVEST
                            || kind == Event.Kind.FIRST_RIPE
                            || kind == Event.Kind.LEAVES_PICKED)
                    && atS >= fromS) {
                harvestS = Math.min(harvestS, atS);
            }
        }
        return new double[] {refillS, fate.isUnharmed() ? 1 : 0, harvestS, 1000 * fate.feedM3()};
    }

    private static Answer answer(
            Asked asked,
            List<Group> groups,
            SobolIndices.Plan plan,
            double[] results,
            Scenario scenario,
            long seed) {
        Band band = Band.of(plan.sample(results));
        double endS = scenario.days() * Time.DAY_S;
        double[] seen =
                Arrays.stream(results).map(r -> asked.isTime() ? Math.min(r, endS) : r).toArray();
        SobolIndices found = plan.shares(seen, seed);
        List<Share> shares = new ArrayList<>();
        for (int g = 0; g < groups.size() && found.variance() > 0; g++) {
            shares.add(
                    new Share(
                            groups.get(g),
                            found.first()[g],
                            found.firstError()[g],
                            found.total()[g],
                            found.totalError()[g]));
        }
        shares.sort(Comparator.comparingDouble(s -> -s.total())); // stable: else in their order
        return new Answer(asked, band, found.mean(), shares);
    }
}
