package tideless.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;
import tideless.physics.Time;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.Surroundings;

/**
 * In how many of the rigs that a grower's might be nothing is harmed, for one design after another,
 * of which a larger number is safer. A member that was unharmed in one design is taken to be so in
 * every safer one, and the other way round, so that only members in doubt are run. Scratch space of
 * one search, for one thread; the members are run by workers.
 *
 * <p>The members are those of {@link Outlook}, some of which miss visits.
 */
final class Survival {
    private final DoubleFunction<Scenario> design;
    private final Judge judge;
    private final double[][] quantiles;
    private final Workers workers;
    private final double[] unharmedAt;
    private final double[] harmedAt;

    /**
     * @param design the scenario at the step of an ensemble, for each number; all with the same
     *     trays and crops
     * @param judge what harms
     * @param members how many; one is the rig as stated
     */
    Survival(
            DoubleFunction<Scenario> design,
            Scenario stated,
            Judge judge,
            int members,
            long seed,
            Workers workers) {
        this.design = design;
        this.judge = judge;
        this.workers = workers;
        quantiles = members == 1 ? new double[1][0] : Unknowns.of(stated).quantiles(members, seed);
        unharmedAt = new double[members];
        harmedAt = new double[members];
        Arrays.fill(unharmedAt, Double.POSITIVE_INFINITY);
        Arrays.fill(harmedAt, Double.NEGATIVE_INFINITY);
    }

    /** What counts as harm. */
    interface Judge {
        /** What harms a member first; empty where nothing does. */
        Optional<Fate.Harm> first(Scenario scenario, Fate fate);

        /** Any harm to some trays, and that they lose a good part of their harvest. */
        static Judge harmTo(Set<VesselId> trays) {
            return (scenario, fate) ->
                    fate.harmsAndLosses().stream()
                            .filter(harm -> trays.contains(harm.tray()))
                            .findFirst();
        }

        /**
         * The same, and that a reservoir they are fed from runs empty, but where the visit before
         * was missed: then crops may live on what stands in their trays.
         *
         * @param spared absences in which crops may live on what stands in their trays
         */
        static Judge harmOrEmpty(
                Set<VesselId> trays, Set<VesselId> reservoirs, List<Visits.Absence> spared) {
            Judge harm = harmTo(trays);
            return (scenario, fate) -> {
                Optional<Fate.Harm> first = harm.first(scenario, fate);
                Optional<Fate.Harm> empty =
                        fate.empties().stream()
                                .filter(e -> reservoirs.contains(e.reservoir()))
                                .filter(e -> !e.isMissed())
                                .filter(e -> !isWithin(scenario, spared, e.fromS()))
                                .min(Comparator.comparing(Fate.Empty::fromS))
                                .map(
                                        e ->
                                                new Fate.Harm(
                                                        Event.Kind.OUTLET_UNCOVERED,
                                                        e.reservoir(),
                                                        e.fromS()));
                return empty.isEmpty()
                                || first.isPresent() && first.get().atS() <= empty.get().atS()
                        ? first
                        : empty;
            };
        }

        private static boolean isWithin(
                Scenario scenario, List<Visits.Absence> absences, double atS) {
            double day = atS / Time.DAY_S;
            for (Visits.Absence absence : absences) {
                int[] days = Fate.days(scenario, absence);
                if (days[0] <= day && day < days[1]) {
                    return true;
                }
            }
            return false;
        }

        /**
         * Harm to some trays, and that plants of a tray's first crop do not come to the weight at
         * which they are wanted: told as a {@link Event.Kind#HARVEST} of the last day. Of crops
         * that are wanted for their fruit or leaf by leaf, and of no weight, no weight is asked.
         */
        static Judge harmOrLightness(Judge harm, VesselId tray) {
            return (scenario, fate) ->
                    harm.first(scenario, fate)
                            .or(
                                    () ->
                                            isLight(scenario, fate, tray)
                                                    ? Optional.of(light(scenario, tray))
                                                    : Optional.empty());
        }

        private static Fate.Harm light(Scenario scenario, VesselId tray) {
            return new Fate.Harm(Event.Kind.HARVEST, tray, scenario.days() * Time.DAY_S - 1);
        }

        private static boolean isLight(Scenario scenario, Fate fate, VesselId tray) {
            int place = place(scenario, tray);
            double freshG = fate.freshG()[scenario.plantingsBefore(place)];
            return scenario.trays().get(place).planting() instanceof Planting.OfCrop crop
                    && crop.harvestFreshG().isPresent()
                    && freshG < NEARLY_FRAC * crop.harvestFreshG().getAsDouble();
        }
    }

    /** Share of the weight that is wanted at which a plant is as good as ready; assumed. */
    private static final double NEARLY_FRAC = 0.9;

    /** Most numbers held against one that is enough: some two and a half times it. */
    private static final int MOST_STEPS = 48;

    private static int place(Scenario scenario, VesselId tray) {
        int place = 0;
        while (!scenario.trays().get(place).id().equals(tray)) {
            place++;
        }
        return place;
    }

    private static Unknowns unknowns(Scenario scenario, int members) {
        Unknowns all = Unknowns.of(scenario);
        return members == 1 ? all.only(Set.of()) : all;
    }

    /** Share of members in which no judged tray is harmed, 0-1. */
    double share(double at) throws InterruptedException {
        List<Integer> open = new ArrayList<>();
        int unharmed = 0;
        for (int i = 0; i < quantiles.length; i++) {
            if (unharmedAt[i] <= at) {
                unharmed++;
            } else if (harmedAt[i] < at) {
                open.add(i);
            }
        }
        List<Optional<Fate.Harm>> firsts = firsts(at, open);
        for (int k = 0; k < open.size(); k++) {
            int i = open.get(k);
            if (firsts.get(k).isEmpty()) {
                unharmedAt[i] = Math.min(unharmedAt[i], at);
                unharmed++;
            } else {
                harmedAt[i] = Math.max(harmedAt[i], at);
            }
        }
        return unharmed / (double) quantiles.length;
    }

    /**
     * From a number that is enough on, the least with which so many rising ones after it are enough
     * too: each with every member, whatever was taken of them before.
     *
     * @param step by which share each is above the one before
     * @param lasting how many
     */
    double lasting(double from, double enough, double step, int lasting)
            throws InterruptedException {
        List<Integer> all = IntStream.range(0, quantiles.length).boxed().toList();
        double first = from;
        double at = from;
        for (int good = 0, tried = 0; good < lasting && tried < MOST_STEPS; tried++) {
            long unharmed = firsts(at, all).stream().filter(Optional::isEmpty).count();
            if (unharmed / (double) all.size() >= enough) {
                good++;
            } else {
                good = 0;
                first = at * (1 + step);
            }
            at *= 1 + step;
        }
        return first;
    }

    /** What harms first in a design, in the most of its members; empty where nothing does. */
    Optional<Outlook.LikelyHarm> harm(double at) throws InterruptedException {
        List<Integer> all = IntStream.range(0, quantiles.length).boxed().toList();
        List<Fate.Harm> firsts = firsts(at, all).stream().flatMap(Optional::stream).toList();
        return Outlook.harms(firsts, quantiles.length).stream().findFirst();
    }

    /**
     * Fresh mass of a plant of a tray's first crop at its end, or of its fruit, in the middle of
     * the members, g.
     */
    double middleG(double at, VesselId tray, boolean ofFruit) throws InterruptedException {
        List<Integer> all = IntStream.range(0, quantiles.length).boxed().toList();
        List<Double> grams =
                each(
                        at,
                        all,
                        (scenario, fate) ->
                                (ofFruit ? fate.fruitG() : fate.freshG())
                                        [scenario.plantingsBefore(place(scenario, tray))]);
        return Band.of(grams.stream().mapToDouble(g -> g).toArray()).middle();
    }

    /** How long a reservoir stands empty in a design, in the middle of the members, d. */
    double middleEmptyDays(double at, VesselId reservoir) throws InterruptedException {
        List<Integer> all = IntStream.range(0, quantiles.length).boxed().toList();
        List<Double> days = each(at, all, (scenario, fate) -> fate.emptyS(reservoir) / Time.DAY_S);
        return Band.of(days.stream().mapToDouble(d -> d).toArray()).middle();
    }

    private List<Optional<Fate.Harm>> firsts(double at, List<Integer> members)
            throws InterruptedException {
        return each(at, members, judge::first);
    }

    private <R> List<R> each(double at, List<Integer> members, BiFunction<Scenario, Fate, R> keep)
            throws InterruptedException {
        if (members.isEmpty()) {
            return List.of();
        }
        Scenario scenario = design.apply(at);
        Unknowns unknowns = unknowns(scenario, quantiles.length);
        Surroundings shared = Surroundings.forSeasons(scenario);
        return workers.each(
                members.size(),
                k -> {
                    Member member = unknowns.member(quantiles[members.get(k)]);
                    return keep.apply(
                            scenario,
                            Fate.of(scenario, member.season(shared), member.departures()));
                });
    }

    /**
     * Least number from which on enough members are unharmed, between a bound that is not enough
     * and one that is.
     *
     * @param enough share of members, 0-1
     * @param closeFrac how near the ends come, as a share of the number
     */
    double least(double notEnough, double isEnough, double enough, double closeFrac)
            throws InterruptedException {
        double low = notEnough;
        double high = isEnough;
        while (high - low > closeFrac * high) {
            double mid = 0.5 * (low + high);
            if (share(mid) >= enough) {
                high = mid;
            } else {
                low = mid;
            }
        }
        return high;
    }

    /** The same over whole numbers, which may be negative. */
    int leastWhole(int notEnough, int isEnough, double enough) throws InterruptedException {
        int low = notEnough;
        int high = isEnough;
        while (high - low > 1) {
            int mid = Math.floorDiv(low + high, 2);
            if (share(mid) >= enough) {
                high = mid;
            } else {
                low = mid;
            }
        }
        return high;
    }
}
