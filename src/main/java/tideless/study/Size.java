package tideless.study;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Filling;
import tideless.rig.NextPlanting;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;

/**
 * How much of one thing is enough: the smallest reservoir, the most plants or the rarest visits
 * with which no tray concerned is harmed to the end of the run and no reservoir that is filled up
 * at visits runs empty between two of them while a crop it feeds lives, in a stated share of the
 * rigs that the grower's might be. In an absence that is stated crops may live on what their trays
 * hold; but a reservoir counts as large enough only if it lasts through that too.
 *
 * @param what of which there is to be enough
 * @param vessel of which reservoir or tray; empty for the visits
 * @param given how much there is: usable litres, plants, or days from a visit to the next; NaN for
 *     visits that are not so many days apart
 * @param found the smallest reservoir, L; the most plants; the most days; empty where none is
 *     enough
 * @param bounded whether {@code found} is only the end of what was tried, and more would do too
 * @param chanceGiven share of members unharmed as it stands, 0-1
 * @param why what harms first as it stands, or where none is enough in the best that was tried
 * @param tried the best that was tried, in the unit of {@code given}
 * @param each what a plant weighs; empty for all but plants, and where none is found
 * @param onTrays the smaller reservoir with which crops alone would come through; empty for all but
 *     reservoirs, and where it is not asked or none that is smaller does
 */
public record Size(
        What what,
        Optional<VesselId> vessel,
        double given,
        Optional<Double> found,
        boolean bounded,
        double chanceGiven,
        Optional<Outlook.LikelyHarm> why,
        double tried,
        Optional<Weight> each,
        Optional<OnTrays> onTrays) {
    /**
     * A reservoir that runs empty while crops live on what stands in their trays.
     *
     * @param litres usable
     * @param emptyDays how long it stands empty in all, in the middle of the members, d
     */
    public record OnTrays(double litres, double emptyDays) {}

    /**
     * Fresh mass of one plant at its end, in the middle of the members; of a fruit crop its fruit.
     *
     * @param nowG with as many as there are, g
     * @param thenG with as many as are found, g
     * @param ofFruit whether it is fruit
     * @param isAsked whether plants are to come to a weight
     * @param usualGroundM2 what growers give one plant; NaN where that is not known
     */
    public record Weight(
            double nowG, double thenG, boolean ofFruit, boolean isAsked, double usualGroundM2) {}

    /** To which share a reservoir is found. */
    private static final double CLOSE_FRAC = 2e-4;

    /** The same of one that is told beside it, and is no advice. */
    private static final double ROUGHLY_FRAC = 0.02;

    /** From this share of what is enough on, crops that live on their trays are not told of. */
    private static final double NEARLY_AS_LARGE_FRAC = 0.9;

    /**
     * A vessel that is filled up when it is low may be emptier at a visit the larger it is: what is
     * enough is held against so many that are larger, each by this share of the one before.
     */
    private static final int LASTING = 5;

    private static final double WIDER_FRAC = 0.02;

    /** Largest and smallest reservoir tried, times the given one. */
    private static final double MOST_TIMES = 32;

    /** Most plants tried, times those there are. */
    private static final int MOST_PLANTS_TIMES = 4;

    /** Rarest visits tried, d. */
    private static final int MOST_DAYS = 28;

    private static final double L_PER_M3 = 1000;

    /** Things of which there may be too little or too much. */
    public enum What {
        RESERVOIR,
        PLANTS,
        VISITS
    }

    public Size {
        Objects.requireNonNull(found, "found");
        Objects.requireNonNull(why, "why");
    }

    /**
     * What is asked.
     *
     * @param visitsEvery days from one visit to the next, all of which fill up; empty for the
     *     scenario's own
     * @param chance share of members to be unharmed, 0-1
     * @param members how many, at least 1; one is the rig as stated
     * @param seed of all that is drawn
     */
    public record Goal(OptionalInt visitsEvery, double chance, int members, long seed) {}

    /** Whether it is enough as it stands. */
    public boolean isEnough(Goal goal) {
        return chanceGiven >= goal.chance();
    }

    /**
     * How large a change it takes, as a share of what there is; infinite where none does, 0 where
     * it is enough to fill up at every visit.
     */
    public double changeFrac() {
        if (isFillingUpEnough()) {
            return 0;
        }
        return found.map(f -> Math.abs(f - given) / given).orElse(Double.POSITIVE_INFINITY);
    }

    /** Whether visits as frequent as now would be enough if each filled up. */
    public boolean isFillingUpEnough() {
        return what == What.VISITS && found.isPresent() && found.get() >= given;
    }

    /**
     * The smallest reservoir, its footprint scaled at the same height: no crop is harmed, and where
     * visits fill it up it never runs empty while a crop it feeds lives.
     */
    public static Size ofReservoir(Scenario given, String name, Goal goal, Workers workers)
            throws InterruptedException {
        return ofReservoir(given, name, goal, workers, true);
    }

    /** The same without what crops alone would come through on. */
    static Size leastReservoir(Scenario given, String name, Goal goal, Workers workers)
            throws InterruptedException {
        return ofReservoir(given, name, goal, workers, false);
    }

    private static Size ofReservoir(
            Scenario given, String name, Goal goal, Workers workers, boolean asksOnTrays)
            throws InterruptedException {
        Scenario scenario = visited(given, goal);
        Reservoir reservoir =
                scenario.reservoirs().stream()
                        .filter(r -> r.name().equals(name))
                        .findFirst()
                        .orElseThrow();
        DoubleFunction<Scenario> design =
                times ->
                        scenario.withReservoirs(
                                scenario.reservoirs().stream()
                                        .map(r -> r.name().equals(name) ? r.wider(times) : r)
                                        .toList());
        Set<VesselId> fed = fedBy(scenario, name);
        Survival survival =
                survival(
                        design,
                        scenario,
                        Survival.Judge.harmOrEmpty(fed, Set.of(reservoir.id()), List.of()),
                        goal,
                        workers);
        double litres = L_PER_M3 * reservoir.usableM3();
        double now = survival.share(1);
        Optional<Outlook.LikelyHarm> why = survival.harm(1);
        double high = 1;
        while (survival.share(high) < goal.chance()) {
            if (high >= MOST_TIMES) {
                return new Size(
                        What.RESERVOIR,
                        Optional.of(reservoir.id()),
                        litres,
                        Optional.empty(),
                        false,
                        now,
                        survival.harm(high),
                        high * litres,
                        Optional.empty(),
                        Optional.empty());
            }
            high *= 2;
        }
        double low = high / 2;
        while (low >= 1 / MOST_TIMES && survival.share(low) >= goal.chance()) {
            high = low;
            low /= 2;
        }
        boolean bounded = low < 1 / MOST_TIMES;
        double found = bounded ? high : survival.least(low, high, goal.chance(), CLOSE_FRAC);
        if (reservoir.refill().isAtVisits()
                && reservoir.refill().when() != Reservoir.Refill.When.EVERY_VISIT) {
            found = survival.lasting(found, goal.chance(), WIDER_FRAC, LASTING);
        }
        Optional<OnTrays> onTrays = Optional.empty();
        if (asksOnTrays && !bounded) {
            Survival crops = survival(design, scenario, Survival.Judge.harmTo(fed), goal, workers);
            onTrays = onTrays(crops, reservoir, found, goal);
        }
        return new Size(
                What.RESERVOIR,
                Optional.of(reservoir.id()),
                litres,
                Optional.of(found * litres),
                bounded,
                now,
                why,
                high * litres,
                Optional.empty(),
                onTrays);
    }

    private static Optional<OnTrays> onTrays(
            Survival crops, Reservoir reservoir, double found, Goal goal)
            throws InterruptedException {
        double high = found;
        double low = found / 2;
        while (low >= 1 / MOST_TIMES && crops.share(low) >= goal.chance()) {
            high = low;
            low /= 2;
        }
        double times =
                low < 1 / MOST_TIMES ? high : crops.least(low, high, goal.chance(), ROUGHLY_FRAC);
        return times > NEARLY_AS_LARGE_FRAC * found
                ? Optional.empty()
                : Optional.of(
                        new OnTrays(
                                times * L_PER_M3 * reservoir.usableM3(),
                                crops.middleEmptyDays(times, reservoir.id())));
    }

    /**
     * The most plants of a tray that are unharmed and come to the weight that is wanted of them;
     * where crops follow in turn, of the first, and of the others in proportion.
     *
     * @throws IllegalArgumentException where its plants are not of a crop of the library
     */
    public static Size ofPlants(Scenario given, String name, Goal goal, Workers workers)
            throws InterruptedException {
        return ofPlants(given, name, goal, workers, true);
    }

    /** Where they come to their weight as it is, as above; else fewer so that none is harmed. */
    private static Size fewerPlants(Scenario given, String name, Goal goal, Workers workers)
            throws InterruptedException {
        Size byWeight = ofPlants(given, name, goal, workers, true);
        return byWeight.isEnough(goal) ? byWeight : ofPlants(given, name, goal, workers, false);
    }

    private static Size ofPlants(
            Scenario given, String name, Goal goal, Workers workers, boolean byWeight)
            throws InterruptedException {
        Scenario scenario = visited(given, goal);
        Tray tray = trayOf(scenario, name);
        if (!(tray.planting() instanceof Planting.OfCrop crop)) {
            throw new IllegalArgumentException("no crop whose plants can be counted: " + name);
        }
        DoubleFunction<Scenario> design =
                fewer ->
                        scenario.withTrays(
                                scenario.trays().stream()
                                        .map(t -> t.name().equals(name) ? planted(t, -fewer) : t)
                                        .toList());
        Set<VesselId> judged =
                tray.filling() instanceof Filling.ByValve valve
                        ? fedBy(scenario, valve.reservoir())
                        : Set.of(tray.id());
        Set<VesselId> fedFrom = new HashSet<>();
        scenario.reservoirs().stream()
                .filter(r -> tray.isFedBy(r.name()))
                .forEach(r -> fedFrom.add(r.id()));
        Survival.Judge harm =
                Survival.Judge.harmOrEmpty(judged, fedFrom, given.visits().absences());
        Survival.Judge judge = byWeight ? Survival.Judge.harmOrLightness(harm, tray.id()) : harm;
        Survival survival = survival(design, scenario, judge, goal, workers);
        Size most =
                most(
                        survival,
                        What.PLANTS,
                        Optional.of(tray.id()),
                        crop.plants(),
                        mostPlants(crop),
                        goal);
        return most.found().isEmpty() ? most : weighed(most, survival, crop, goal, byWeight);
    }

    /** With the weight of a plant; more of them that come to less in all are no answer. */
    private static Size weighed(
            Size size, Survival survival, Planting.OfCrop crop, Goal goal, boolean byWeight)
            throws InterruptedException {
        VesselId tray = size.vessel().orElseThrow();
        double found = size.found().orElseThrow();
        boolean ofFruit = crop.traits().stages().fruits();
        double nowG = survival.middleG(-size.given(), tray, ofFruit);
        double thenG = found == size.given() ? nowG : survival.middleG(-found, tray, ofFruit);
        boolean lessInAll = size.isEnough(goal) && found * thenG < size.given() * nowG;
        return new Size(
                size.what(),
                size.vessel(),
                size.given(),
                Optional.of(lessInAll ? size.given() : found),
                size.bounded() && !lessInAll,
                size.chanceGiven(),
                size.why(),
                size.tried(),
                Optional.of(
                        new Weight(
                                nowG,
                                lessInAll ? nowG : thenG,
                                ofFruit,
                                byWeight && crop.harvestFreshG().isPresent(),
                                crop.traits().harvest().groundM2().orElse(Double.NaN))),
                Optional.empty());
    }

    /**
     * As many as growers put on such ground; where that is not known, some times those there are.
     */
    private static int mostPlants(Planting.OfCrop crop) {
        OptionalDouble usualM2 = crop.traits().harvest().groundM2();
        int most = MOST_PLANTS_TIMES * crop.plants();
        if (usualM2.isPresent()) {
            most = (int) Math.min(most, crop.mostGroundM2() / usualM2.getAsDouble() * (1 + 1e-9));
        }
        return Math.max(1, most);
    }

    /** The rarest visits, so many days apart, at each of which all is filled up. */
    public static Size ofVisits(Scenario given, Goal goal, Workers workers)
            throws InterruptedException {
        Scenario stated = Ensemble.atEnsembleStep(given);
        DoubleFunction<Scenario> design = rarer -> every(stated, (int) -rarer);
        Set<VesselId> judged = new HashSet<>();
        stated.trays().forEach(t -> judged.add(t.id()));
        Set<VesselId> reservoirs = new HashSet<>();
        stated.reservoirs().forEach(r -> reservoirs.add(r.id()));
        Survival.Judge judge =
                Survival.Judge.harmOrEmpty(judged, reservoirs, given.visits().absences());
        Survival survival = survival(design, stated, judge, goal, workers);
        if (goal.visitsEvery().isPresent()) {
            int now = goal.visitsEvery().getAsInt();
            return most(survival, What.VISITS, Optional.empty(), now, MOST_DAYS, goal);
        }
        int now = Math.max(1, 7 / Math.max(1, stated.visits().weekdays().size()));
        Size filledUp = most(survival, What.VISITS, Optional.empty(), now, MOST_DAYS, goal);
        Survival own = survival(as -> stated, stated, judge, goal, workers);
        return new Size(
                What.VISITS,
                Optional.empty(),
                now,
                filledUp.found(),
                filledUp.bounded(),
                own.share(0),
                filledUp.found().isEmpty() ? filledUp.why() : own.harm(0),
                filledUp.tried(),
                Optional.empty(),
                Optional.empty());
    }

    /** The most of something of which less is safer. */
    private static Size most(
            Survival survival,
            What what,
            Optional<VesselId> vessel,
            int given,
            int furthest,
            Goal goal)
            throws InterruptedException {
        int end = Math.max(furthest, given);
        double now = survival.share(-given);
        Optional<Outlook.LikelyHarm> why = survival.harm(-given);
        boolean enough = now >= goal.chance();
        Optional<Double> found;
        boolean bounded = false;
        if (enough) {
            bounded = survival.share(-end) >= goal.chance();
            found =
                    Optional.of(
                            bounded
                                    ? (double) end
                                    : -survival.leastWhole(-end, -given, goal.chance()));
        } else if (given > 1 && survival.share(-1) >= goal.chance()) {
            found = Optional.of((double) -survival.leastWhole(-given, -1, goal.chance()));
        } else {
            found = Optional.empty();
            why = survival.harm(-1);
        }
        return new Size(
                what,
                vessel,
                given,
                found,
                bounded,
                now,
                why,
                found.orElse(1.0),
                Optional.empty(),
                Optional.empty());
    }

    /**
     * What was found.
     *
     * @param sizes in the order asked, or the smallest change first
     * @param asked how many were to be looked for: more than were found where the work was broken
     *     off
     */
    public record Found(List<Size> sizes, int asked) {
        public Found {
            sizes = List.copyOf(sizes);
        }

        /** Whether all that was asked for was looked for. */
        public boolean whole() {
            return sizes.size() == asked;
        }
    }

    /** One search. */
    public interface Search {
        /** Finds it. */
        Size find() throws InterruptedException;
    }

    /** One search after another; an interruption keeps what was found before it. */
    public static Found each(List<Search> searches) {
        List<Size> sizes = new ArrayList<>();
        try {
            for (Search search : searches) {
                sizes.add(search.find());
            }
        } catch (InterruptedException e) {
            // What was found is told, and that it is less than was asked for.
        }
        return new Found(sizes, searches.size());
    }

    /**
     * What would be enough, the smallest change in proportion first: rarer or more frequent visits,
     * a larger reservoir, fewer plants.
     */
    public static Found changes(Scenario scenario, Goal goal, Workers workers) {
        List<Search> searches = new ArrayList<>();
        searches.add(() -> ofVisits(scenario, goal, workers));
        for (Reservoir reservoir : scenario.reservoirs()) {
            searches.add(() -> leastReservoir(scenario, reservoir.name(), goal, workers));
        }
        for (Tray tray : scenario.trays()) {
            if (tray.planting() instanceof Planting.OfCrop crop && crop.plants() > 1) {
                searches.add(() -> fewerPlants(scenario, tray.name(), goal, workers));
            }
        }
        Found found = each(searches);
        List<Size> sorted = new ArrayList<>(found.sizes());
        sorted.sort(Comparator.comparing(Size::changeFrac));
        return new Found(sorted, found.asked());
    }

    private static Survival survival(
            DoubleFunction<Scenario> design,
            Scenario stated,
            Survival.Judge judge,
            Goal goal,
            Workers workers) {
        return new Survival(design, stated, judge, goal.members(), goal.seed(), workers);
    }

    private static Scenario visited(Scenario given, Goal goal) {
        Scenario coarse = Ensemble.atEnsembleStep(given);
        return goal.visitsEvery().isPresent()
                ? every(coarse, goal.visitsEvery().getAsInt())
                : coarse;
    }

    /**
     * Somebody comes every so many days from the start on, and fills up what is refilled at all.
     */
    static Scenario every(Scenario scenario, int days) {
        List<Visits.Absence> absences = new ArrayList<>(scenario.visits().absences());
        for (int day = 0; days > 1 && day < scenario.days(); day += days) {
            LocalDate from = scenario.start().plusDays(day + 1L);
            absences.add(new Visits.Absence(from, from.plusDays(days - 2L)));
        }
        Visits visits =
                scenario.visits()
                        .withWeekdays(EnumSet.allOf(DayOfWeek.class))
                        .withAbsences(absences);
        List<Reservoir> reservoirs = new ArrayList<>();
        for (Reservoir reservoir : scenario.reservoirs()) {
            Reservoir.Refill refill = reservoir.refill();
            reservoirs.add(
                    refill.when() == Reservoir.Refill.When.NEVER
                            ? reservoir
                            : reservoir.withRefill(refill.on(Reservoir.Refill.When.EVERY_VISIT)));
        }
        return scenario.withVisits(visits).withReservoirs(reservoirs);
    }

    private static Tray trayOf(Scenario scenario, String name) {
        return scenario.trays().stream()
                .filter(t -> t.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** So many plants, and of the crops that follow in proportion, at least one of each. */
    static Tray planted(Tray tray, double plants) {
        Planting.OfCrop crop = (Planting.OfCrop) tray.planting();
        List<NextPlanting> next = new ArrayList<>();
        for (NextPlanting following : tray.next()) {
            long so = FastMath.round(following.crop().plants() * plants / crop.plants());
            next.add(following.withCrop(following.crop().withPlants((int) Math.max(1, so))));
        }
        return tray.withPlanting(crop.withPlants((int) plants)).withNext(next);
    }

    private static Set<VesselId> fedBy(Scenario scenario, String reservoir) {
        Set<VesselId> fed = new HashSet<>();
        for (Tray tray : scenario.trays()) {
            if (tray.isFedBy(reservoir)) {
                fed.add(tray.id());
            }
        }
        return fed;
    }
}
