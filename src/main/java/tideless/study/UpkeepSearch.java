package tideless.study;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.math3.util.FastMath;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Liquid;
import tideless.rig.Planting;
import tideless.rig.Pouring;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.GrowthLost;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Stress;
import tideless.sim.Surroundings;
import tideless.sim.TraySeason;
import tideless.solution.ElectricalConductivity;

/**
 * Looks for the least work that keeps a tray whose crop loses to salt or hunger: seasons at the
 * step of an ensemble, of ways to keep it that its file can say. The first that leaves next to no
 * loss is taken, else the best there is.
 */
final class UpkeepSearch {
    /** A loss to salt and hunger that is worth a change, as a share; what is no mere note. */
    static final double WORTH_FRAC = Warning.NOTED_FRAC;

    /** What it aims at, so that nothing is left to warn of. */
    private static final double ENOUGH_FRAC = 0.5 * WORTH_FRAC;

    /** Strengths that are tried, as shares of the feed as it is; assumed wide enough. */
    private static final double[] STRENGTHS = {0.85, 0.7, 0.6, 0.5, 0.4, 0.3, 1.2, 1.5};

    /** A pen tells feeds this far apart, and a grower mixes no closer, mS/cm. */
    private static final double STEP_MS_PER_CM = 0.1;

    /** Shares of plain water that are tried in each top-up by hand. */
    private static final double[] WATER = {0.3, 0.5, 0.7};

    /** Marks that are tried in a tray topped up by hand, m above the present one. */
    private static final double[] HIGHER_M = {0.03, 0.06};

    /** And is tried where it is higher than it is by this at least, m; assumed. */
    private static final double START_STEP_M = 0.003;

    /** Changes that are told at once: nobody does more at one time; assumed. */
    private static final int MOST_PARTS = 3;

    /** Harm so soon after the start is of the first filling, s; assumed. */
    private static final double EARLY_S = 10 * Time.DAY_S;

    /** Whatever is told has to bring so much more than what there is, as a share; assumed. */
    private static final double BETTER_FRAC = 0.03;

    /** So much less it may give by it than kept with the least work, as a share; assumed. */
    private static final double LESS_FRAC = 0.05;

    /** And so much of it may want of air take: no more than leaves a poor crop. */
    private static final double AIR_FRAC = Warning.POOR_FRAC;

    /** Less than this nobody weighs, g. */
    private static final double TRACE_G = 1e-9;

    /** What another unit of effort has to bring, as a share of the crop; assumed. */
    private static final double EFFORT_WORTH_FRAC = 0.02;

    /** Losses no further apart are alike, as a share; within any forecast's noise. */
    private static final double ALIKE_FRAC = 0.01;

    /** Another crop of the rig may lose so much by it, as a share. */
    private static final double OTHERS_FRAC = 0.01;

    /** And its own, where it comes through the more surely. */
    private static final double OWN_FRAC = 0.15;

    /** What a feed below the crop's band has to bring more than one within, as a share; assumed. */
    private static final double BELOW_BAND_FRAC = 0.1;

    /** Rigs that the grower's might be of which each way is tried in, before all of them are. */
    private static final int FIRST_MEMBERS = 10;

    /** So many of them lost end the trial of one way; its share of survivors is known by then. */
    private static final int LOST = 2;

    /** What a few rigs leave open of the loss in all of them, as a share; assumed. */
    private static final double DOUBT_FRAC = 0.1;

    /** So many of the best in a few rigs, at most, are tried in all of them. */
    private static final int JUDGED = 8;

    /** Members that are run before it is looked whether too many of them are lost. */
    private static final int AT_ONCE = 20;

    /** What a rig that comes through is worth beside a whole crop; assumed. */
    private static final double SURENESS_WORTH_FRAC = 0.5;

    private final Scenario scenario;
    private final VesselId tray;
    private final double feedMsPerCm;
    private final double[][] firstQuantiles;
    private final double[][] quantiles;
    private final double knownChance;
    private final Workers workers;
    private final Map<Visits, Surroundings> surroundings = new HashMap<>();
    private final Outcome given;
    private boolean isHarmedEarly;

    /**
     * What was found.
     *
     * @param upkeep how to keep it
     * @param order its parts, the one that brings most by itself first
     * @param scenario kept so
     * @param chance share of the members of a run in which every crop survives then, 0-1
     */
    record Found(Upkeep upkeep, List<Upkeep.Part> order, Scenario scenario, double chance) {
        /** As it is told, with how surely it comes through. */
        Cure cure(Scenario as) {
            return cure(as, Facts.NONE);
        }

        /** Each part by itself, in that order. */
        List<Cure> parts(Scenario as) {
            return order.stream()
                    .map(part -> new Cure(Cure.Kind.KEEP_OTHERWISE, upkeep.facts(as, part)))
                    .toList();
        }

        /** The same with figures of a run. */
        Cure cure(Scenario as, Facts figures) {
            List<Cure> parts = parts(as);
            Facts facts = parts.get(0).facts().and(figures).and(Quantity.CHANCE, chance);
            return new Cure(Cure.Kind.KEEP_OTHERWISE, facts, parts.subList(1, parts.size()));
        }
    }

    /**
     * What came of a season.
     *
     * @param lossFrac the greatest that salt and hunger take of a crop that gets this feed, 0-1
     * @param airFrac the greatest that want of air at its roots takes of a crop, 0-1
     * @param harmedH hours dry, stranded, wilted or drowned, h
     * @param grams of all plants of each tray
     */
    private record Outcome(double lossFrac, double airFrac, double harmedH, double[] grams) {}

    /**
     * @param given as the user wrote it
     * @param members of a run, by which what is found is judged
     * @param knownChance share of them that survive as it is; NaN where they were not run
     */
    UpkeepSearch(
            Scenario given,
            VesselId tray,
            long seed,
            int members,
            double knownChance,
            Workers workers) {
        scenario = Ensemble.atEnsembleStep(given);
        this.tray = tray;
        Liquid feed = scenario.feedOf(scenario.tray(tray).orElseThrow());
        feedMsPerCm = ElectricalConductivity.at25MsPerCm(feed.composition());
        this.workers = workers;
        this.knownChance = knownChance;
        firstQuantiles = Unknowns.of(scenario).quantiles(FIRST_MEMBERS, seed);
        quantiles = Unknowns.of(scenario).quantiles(members, seed);
        this.given = outcome(scenario);
    }

    /**
     * The way to keep it; empty where none of those tried is better.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    Optional<Found> found() throws InterruptedException {
        double first = givenChance();
        double chance = Double.isNaN(knownChance) ? first : knownChance;
        if (given.lossFrac() < ENOUGH_FRAC && chance >= Outlook.SURE) {
            return Optional.empty();
        }
        Best best = new Best(given.lossFrac() + SURENESS_WORTH_FRAC * (1 - chance) - BETTER_FRAC);
        OptionalDouble near = OptionalDouble.empty();
        for (Upkeep frame : frames()) {
            Tried tried = bestOf(frame, near, best.isEnough());
            if (tried != null) {
                near =
                        tried.upkeep().feedMsPerCm().isPresent()
                                ? tried.upkeep().feedMsPerCm()
                                : near;
                if (best.take(tried)) {
                    break;
                }
            }
        }
        return best.found();
    }

    /**
     * One that was tried in a few rigs.
     *
     * @param cost what it leaves lost and what it costs, as a share of the crop
     * @param score the same with what is lost for want of sureness; the least is best
     */
    private record Candidate(Upkeep upkeep, double cost, double score) {}

    /** The best of those that were tried so far. */
    private final class Best {
        private final double bound;
        private final List<Candidate> candidates = new ArrayList<>();
        private double score;
        private double wholeG;
        private Upkeep enough;

        Best(double bound) {
            this.bound = bound;
            score = bound;
        }

        /** Whether only what keeps its feed within the crop's band can still be better. */
        boolean isEnough() {
            return enough != null;
        }

        /** Takes it where it is better; says whether nothing better is wanted. */
        boolean take(Tried one) throws InterruptedException {
            Outcome outcome = one.outcome();
            wholeG = wholeG > 0 ? wholeG : Math.max(ownG(given), ownG(outcome));
            double lessFrac = Math.max(0, 1 - ownG(outcome) / Math.max(TRACE_G, wholeG));
            boolean isBelow = one.upkeep().isBelowBand(scenario);
            double cost =
                    outcome.lossFrac()
                            + lessFrac
                            + Math.max(0, outcome.airFrac() - AIR_FRAC)
                            + (isBelow ? BELOW_BAND_FRAC : 0)
                            + EFFORT_WORTH_FRAC * one.upkeep().effort(scenario);
            boolean leavesNothing =
                    outcome.lossFrac() < ENOUGH_FRAC
                            && lessFrac < LESS_FRAC
                            && outcome.airFrac() < AIR_FRAC;
            if (cost >= score + DOUBT_FRAC && (!leavesNothing || isEnough())) {
                return false;
            }
            Scenario so = one.upkeep().of(scenario).orElseThrow();
            double first = firstChance(so);
            boolean isFeedAlone = one.upkeep().parts().equals(List.of(Upkeep.Part.FEED));
            double most = isFeedAlone && !isBelow ? bound + BETTER_FRAC : bound;
            boolean maySuffice = leavesNothing && first >= Outlook.SURE;
            double share = maySuffice ? shareCutShort(so) : first;
            double now = cost + SURENESS_WORTH_FRAC * (1 - share);
            boolean isNowEnough = maySuffice && share >= Outlook.SURE && now < most;
            if (now < bound) {
                candidates.add(new Candidate(one.upkeep(), cost, now));
                score = Math.min(score, now);
            }
            if (isNowEnough && (!isEnough() || !isBelow)) {
                enough = one.upkeep();
            }
            return isNowEnough && !isBelow;
        }

        /** What is enough, or the best of those whose sureness in all members makes it better. */
        Optional<Found> found() throws InterruptedException {
            if (enough != null) {
                return Optional.of(found(enough, chance(enough.of(scenario).orElseThrow())));
            }
            Upkeep best = null;
            double bestChance = 0;
            double least = bound;
            candidates.sort(Comparator.comparing(Candidate::score));
            for (Candidate one : candidates.subList(0, Math.min(JUDGED, candidates.size()))) {
                if (one.score() >= least) {
                    break; // a few rigs seldom fare worse than all
                }
                double chance = chance(one.upkeep().of(scenario).orElseThrow());
                double now = one.cost() + SURENESS_WORTH_FRAC * (1 - chance);
                if (now < least) {
                    best = one.upkeep();
                    bestChance = chance;
                    least = now;
                }
            }
            return best == null ? Optional.empty() : Optional.of(found(best, bestChance));
        }

        private Found found(Upkeep upkeep, double chance) {
            return new Found(upkeep, inOrder(upkeep), upkeep.of(scenario).orElseThrow(), chance);
        }
    }

    /** Its parts, the one first that brings most by itself, then what brings most beside it. */
    private List<Upkeep.Part> inOrder(Upkeep upkeep) {
        List<Upkeep.Part> left = new ArrayList<>(upkeep.parts());
        List<Upkeep.Part> order = new ArrayList<>();
        while (left.size() > 1) {
            Upkeep.Part most = null;
            double least = Double.POSITIVE_INFINITY;
            for (Upkeep.Part part : left) {
                List<Upkeep.Part> some = new ArrayList<>(order);
                some.add(part);
                double lost = lostFrac(upkeep.only(some));
                if (lost < least) {
                    most = part;
                    least = lost;
                }
            }
            order.add(most);
            left.remove(most);
        }
        order.addAll(left);
        return order;
    }

    /** What is lost with it, of the crop and of rigs that come through. */
    private double lostFrac(Upkeep upkeep) {
        Scenario so = upkeep.of(scenario).orElseThrow();
        return outcome(so).lossFrac() + SURENESS_WORTH_FRAC * (1 - firstChance(so));
    }

    /** Share of a few rigs that survive as it is, and whether too many are harmed early. */
    private double givenChance() {
        Unknowns unknowns = Unknowns.of(scenario);
        int lost = 0;
        int early = 0;
        for (double[] quantile : firstQuantiles) {
            Season season = unknowns.member(quantile).season(surroundings(scenario));
            Optional<Fate.Harm> harm = Fate.of(scenario, season).firstHarm();
            lost += harm.isPresent() ? 1 : 0;
            early += harm.filter(of -> of.atS() < EARLY_S).isPresent() ? 1 : 0;
        }
        isHarmedEarly = 1 - early / (double) firstQuantiles.length < Outlook.SURE;
        return 1 - lost / (double) firstQuantiles.length;
    }

    /** Share of a few rigs that the grower's might be in which all survives; cut short. */
    private double firstChance(Scenario so) {
        Unknowns unknowns = Unknowns.of(so);
        int lost = 0;
        int run = 0;
        while (run < firstQuantiles.length && lost < LOST) {
            Season season = unknowns.member(firstQuantiles[run]).season(surroundings(so));
            lost += Fate.of(so, season).survives() ? 0 : 1;
            run++;
        }
        return 1 - lost / (double) run;
    }

    /** Share of the members of a run in which all survives; cut short where it is too few. */
    private double shareCutShort(Scenario so) throws InterruptedException {
        int lost = 0;
        int run = 0;
        while (run < quantiles.length && 1 - lost / (double) quantiles.length >= Outlook.SURE) {
            int to = Math.min(quantiles.length, run + AT_ONCE);
            lost += lost(so, run, to);
            run = to;
        }
        return 1 - lost / (double) run;
    }

    /** Share of the members of a run in which all survives, as its next run says it. */
    private double chance(Scenario so) throws InterruptedException {
        return 1 - lost(so, 0, quantiles.length) / (double) quantiles.length;
    }

    private int lost(Scenario so, int from, int to) throws InterruptedException {
        Unknowns unknowns = Unknowns.of(so);
        Surroundings shared = surroundings(so);
        int lost = 0;
        for (boolean survives :
                workers.each(
                        to - from,
                        i ->
                                Fate.of(so, unknowns.member(quantiles[from + i]).season(shared))
                                        .survives())) {
            lost += survives ? 0 : 1;
        }
        return lost;
    }

    private Surroundings surroundings(Scenario so) {
        return surroundings.computeIfAbsent(so.visits(), visits -> Surroundings.forSeasons(so));
    }

    private record Tried(Upkeep upkeep, Outcome outcome) {
        double lossFrac() {
            return outcome.lossFrac();
        }
    }

    /** All but the feed's strength, in order of effort. */
    private List<Upkeep> frames() {
        List<Boolean> changes =
                scenario.visits().flush() == Visits.Flush.NEVER
                        ? List.of(false, true)
                        : List.of(false);
        List<Optional<Set<DayOfWeek>>> visits = new ArrayList<>(List.of(Optional.empty()));
        Upkeep.moreVisits(scenario.visits()).forEach(days -> visits.add(Optional.of(days)));
        List<OptionalDouble> marks = new ArrayList<>(List.of(OptionalDouble.empty()));
        List<OptionalDouble> starts = new ArrayList<>(List.of(OptionalDouble.empty()));
        List<Boolean> pours = new ArrayList<>(List.of(false));
        List<OptionalDouble> waters = new ArrayList<>(List.of(OptionalDouble.empty()));
        if (scenario.tray(tray).orElseThrow().filling() instanceof Filling.ByHand hand) {
            if (!hand.with().equals(Pouring.FEED)) {
                pours.add(true);
            } else {
                for (double frac : WATER) {
                    waters.add(OptionalDouble.of(frac));
                }
            }
            Tray of = scenario.tray(tray).orElseThrow();
            double mostM = Math.min(of.overflowM(), of.cupBottomM());
            marks.addAll(higher(hand.toLevelM(), HIGHER_M, mostM));
            double wetM = Upkeep.wetCupM(of);
            boolean isHigher = wetM >= of.startLevelM() + START_STEP_M && wetM <= of.overflowM();
            if (isHarmedEarly && isHigher) {
                starts.add(OptionalDouble.of(wetM));
            }
        }
        List<Upkeep> frames = new ArrayList<>();
        for (boolean changesAtLimit : changes) {
            for (boolean poursFeed : pours) {
                for (Optional<Set<DayOfWeek>> weekdays : visits) {
                    for (OptionalDouble toM : marks) {
                        for (OptionalDouble startM : starts) {
                            for (OptionalDouble waterFrac : waters) {
                                frames.add(
                                        new Upkeep(
                                                tray,
                                                OptionalDouble.empty(),
                                                changesAtLimit,
                                                poursFeed,
                                                waterFrac,
                                                weekdays,
                                                toM,
                                                startM));
                            }
                        }
                    }
                }
            }
        }
        frames.removeIf(frame -> frame.parts().size() > MOST_PARTS);
        frames.sort(Comparator.comparing(frame -> frame.effort(scenario)));
        return frames;
    }

    private static List<OptionalDouble> higher(double thanM, double[] byM, double mostM) {
        List<OptionalDouble> marks = new ArrayList<>();
        for (double by : byM) {
            if (thanM + by <= mostM) {
                marks.add(OptionalDouble.of(FastMath.rint((thanM + by) * 1e3) / 1e3));
            }
        }
        return marks;
    }

    /**
     * The strength with which a frame loses least; near another's where that is known.
     *
     * @param within whether only strengths within the crop's band count
     */
    private Tried bestOf(Upkeep frame, OptionalDouble near, boolean within) {
        Tried best = frame.effort(scenario) > 0 ? tried(frame) : null;
        // Plain water does what another strength would.
        boolean isFull = frame.parts().size() >= MOST_PARTS || frame.waterFrac().isPresent();
        if (isFull || best != null && best.lossFrac() < ENOUGH_FRAC) {
            return best;
        }
        List<Tried> inBand = new ArrayList<>();
        List<Tried> below = new ArrayList<>();
        for (double strength : strengths(near)) {
            Upkeep fed = frame.fedAt(strength);
            boolean isBelow = fed.isBelowBand(scenario);
            Tried one = isBelow && within ? null : tried(fed);
            if (one != null) {
                (isBelow ? below : inBand).add(one);
            }
        }
        best = better(best, middleOfBest(inBand), 0);
        return better(best, middleOfBest(below), BELOW_BAND_FRAC);
    }

    private Set<Double> strengths(OptionalDouble near) {
        Set<Double> strengths = new TreeSet<>();
        for (double frac : near.isPresent() ? new double[] {1} : STRENGTHS) {
            double strength = frac * near.orElse(feedMsPerCm);
            double shown = FastMath.rint(strength / STEP_MS_PER_CM) * STEP_MS_PER_CM;
            if (shown > 0) {
                strengths.add(FastMath.rint(shown * 100) / 100);
            }
        }
        return strengths;
    }

    /** The other where it loses so much less. */
    private static Tried better(Tried one, Tried other, double byFrac) {
        return one == null || other != null && other.lossFrac() < one.lossFrac() - byFrac
                ? other
                : one;
    }

    /** Of those that lose as little as the best, the one furthest from its ends. */
    private static Tried middleOfBest(List<Tried> fed) {
        double least = fed.stream().mapToDouble(Tried::lossFrac).min().orElse(0);
        List<Tried> alike = fed.stream().filter(t -> t.lossFrac() <= least + ALIKE_FRAC).toList();
        return alike.isEmpty() ? null : alike.get(alike.size() / 2);
    }

    /** Null where it cannot be, or harms more than what there is. */
    private Tried tried(Upkeep upkeep) {
        Optional<Scenario> so = upkeep.of(scenario);
        if (so.isEmpty()) {
            return null;
        }
        Outcome outcome = outcome(so.get());
        boolean harms = outcome.harmedH() > given.harmedH();
        for (int i = 0; i < outcome.grams().length; i++) {
            double lostFrac = 1 - outcome.grams()[i] / Math.max(TRACE_G, given.grams()[i]);
            boolean isOwn = scenario.trays().get(i).id().equals(tray);
            harms |= lostFrac > (isOwn ? OWN_FRAC : OTHERS_FRAC);
        }
        return harms ? null : new Tried(upkeep, outcome);
    }

    private Outcome outcome(Scenario so) {
        Season season = Simulation.season(so, surroundings(so));
        double loss = 0;
        double air = 0;
        double harmedH = saltWiltedH(season);
        double[] grams = new double[season.trays().size()];
        for (int i = 0; i < grams.length; i++) {
            TraySeason of = season.trays().get(i);
            harmedH += of.dryH() + of.strandedH() + of.wiltedH() + of.drownedH();
            for (int n = 0; n < of.yields().size(); n++) {
                TraySeason.Yield yield = of.yields().get(n);
                Planting planting = so.trays().get(i).planted(n).planting();
                grams[i] +=
                        planting.plants()
                                * (planting.fruits() ? yield.fruitFreshG() : yield.allG());
                if (so.feedOf(so.trays().get(i)).equals(so.feedOf(so.tray(tray).orElseThrow()))) {
                    loss = Math.max(loss, yield.lost().map(UpkeepSearch::ofSolution).orElse(0.0));
                    air = Math.max(air, yield.lost().map(l -> l.frac(Stress.AIR)).orElse(0.0));
                }
            }
        }
        return new Outcome(loss, air, harmedH, grams);
    }

    /** Whether its first harm is of a kind that another upkeep of its tray might spare it. */
    static boolean maySpare(Scenario scenario, Outlook.LikelyHarm harm) {
        return harm.kind() == Event.Kind.SALT_WILTED
                || scenario.tray(harm.tray()).orElseThrow().filling() instanceof Filling.ByHand;
    }

    private double ownG(Outcome outcome) {
        return outcome.grams()[scenario.trays().indexOf(scenario.tray(tray).orElseThrow())];
    }

    /** What salt and hunger take, 0-1. */
    static double ofSolution(GrowthLost lost) {
        return lost.frac(Stress.SALT) + lost.frac(Stress.HUNGER);
    }

    private static double saltWiltedH(Season season) {
        double sumS = 0;
        double fromS = Double.NaN;
        for (Event event : season.events()) {
            if (event.kind() == Event.Kind.SALT_WILTED) {
                fromS = event.atS();
            } else if (event.kind() == Event.Kind.SALT_BORNE && !Double.isNaN(fromS)) {
                sumS += event.atS() - fromS;
                fromS = Double.NaN;
            }
        }
        return sumS / Time.HOUR_S;
    }
}
