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
import org.apache.commons.math3.util.FastMath;
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

    /** Marks that are tried in a tray topped up by hand, m above the present one. */
    private static final double[] HIGHER_M = {0.03, 0.06};

    /** First fillings that are tried in it, m above the present one. */
    private static final double[] FIRST_HIGHER_M = {0.02, 0.04};

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

    /**
     * Rigs that the grower's might be of which as many as a forecast asks for must come through.
     */
    private static final int MEMBERS = 10;

    /** So many of them lost end the trial of one way; its share of survivors is known by then. */
    private static final int LOST = 2;

    /** What a rig that comes through is worth beside a whole crop; assumed. */
    private static final double SURENESS_WORTH_FRAC = 0.5;

    private final Scenario scenario;
    private final VesselId tray;
    private final double feedMsPerCm;
    private final double[][] quantiles;
    private final Map<Visits, Surroundings> surroundings = new HashMap<>();
    private final Outcome given;
    private boolean isHarmedEarly;

    /**
     * What was found.
     *
     * @param upkeep how to keep it
     * @param scenario kept so
     * @param lossFrac what salt and hunger still take, 0-1
     * @param chance share of rigs in which every crop survives then, 0-1
     */
    record Found(Upkeep upkeep, Scenario scenario, double lossFrac, double chance) {}

    /**
     * What came of a season.
     *
     * @param lossFrac the greatest that salt and hunger take of a crop that gets this feed, 0-1
     * @param airFrac the greatest that want of air at its roots takes of a crop, 0-1
     * @param harmedH hours dry, stranded, wilted or drowned, h
     * @param grams of all plants of each tray
     */
    private record Outcome(double lossFrac, double airFrac, double harmedH, double[] grams) {}

    UpkeepSearch(Scenario given, VesselId tray, long seed) {
        scenario = Ensemble.atEnsembleStep(given);
        this.tray = tray;
        Liquid feed = scenario.feedOf(scenario.tray(tray).orElseThrow());
        feedMsPerCm = ElectricalConductivity.at25MsPerCm(feed.composition());
        quantiles = Unknowns.of(scenario).quantiles(MEMBERS, seed);
        this.given = outcome(scenario);
    }

    /** The way to keep it; empty where none of those tried is better. */
    Optional<Found> found() {
        double chance = givenChance();
        if (given.lossFrac() < ENOUGH_FRAC && chance >= Outlook.SURE) {
            return Optional.empty();
        }
        Found best = null;
        double bestScore = given.lossFrac() + SURENESS_WORTH_FRAC * (1 - chance) - BETTER_FRAC;
        OptionalDouble near = OptionalDouble.empty();
        double wholeG = 0;
        for (Upkeep frame : frames()) {
            Tried tried = bestOf(frame, near);
            if (tried == null) {
                continue;
            }
            near = tried.upkeep().feedMsPerCm().isPresent() ? tried.upkeep().feedMsPerCm() : near;
            wholeG = wholeG > 0 ? wholeG : Math.max(ownG(given), ownG(tried.outcome()));
            double lessFrac = 1 - ownG(tried.outcome()) / Math.max(TRACE_G, wholeG);
            double cost =
                    tried.lossFrac()
                            + Math.max(0, lessFrac)
                            + Math.max(0, tried.outcome().airFrac() - AIR_FRAC)
                            + EFFORT_WORTH_FRAC * tried.upkeep().effort(scenario);
            boolean isEnough =
                    tried.lossFrac() < ENOUGH_FRAC
                            && lessFrac < LESS_FRAC
                            && tried.outcome().airFrac() < AIR_FRAC;
            if (!isEnough && cost >= bestScore) {
                continue;
            }
            Scenario so = tried.upkeep().of(scenario).orElseThrow();
            Found found = new Found(tried.upkeep(), so, tried.lossFrac(), chance(so));
            if (isEnough && found.chance() >= Outlook.SURE) {
                return Optional.of(found);
            }
            double score = cost + SURENESS_WORTH_FRAC * (1 - found.chance());
            if (score < bestScore) {
                best = found;
                bestScore = score;
            }
        }
        return Optional.ofNullable(best);
    }

    /** The same of what there is, and whether too many are harmed before it is first topped up. */
    private double givenChance() {
        Unknowns unknowns = Unknowns.of(scenario);
        int lost = 0;
        int early = 0;
        for (double[] quantile : quantiles) {
            Season season = unknowns.member(quantile).season(surroundings(scenario));
            Optional<Fate.Harm> harm = Fate.of(scenario, season).firstHarm();
            lost += harm.isPresent() ? 1 : 0;
            early += harm.filter(of -> of.atS() < EARLY_S).isPresent() ? 1 : 0;
        }
        isHarmedEarly = 1 - early / (double) quantiles.length < Outlook.SURE;
        return 1 - lost / (double) quantiles.length;
    }

    /** Share of the rigs that the grower's might be in which all survives; cut short where few. */
    private double chance(Scenario so) {
        Unknowns unknowns = Unknowns.of(so);
        int lost = 0;
        int run = 0;
        while (run < quantiles.length && lost < LOST) {
            Season season = unknowns.member(quantiles[run]).season(surroundings(so));
            lost += Fate.of(so, season).survives() ? 0 : 1;
            run++;
        }
        return 1 - lost / (double) run;
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
        boolean poursFeed = false;
        if (scenario.tray(tray).orElseThrow().filling() instanceof Filling.ByHand hand) {
            poursFeed = !hand.with().equals(Pouring.FEED);
            Tray of = scenario.tray(tray).orElseThrow();
            double mostM = Math.min(of.overflowM(), of.cupBottomM());
            marks.addAll(higher(hand.toLevelM(), HIGHER_M, mostM));
            if (isHarmedEarly) {
                starts.addAll(higher(of.startLevelM(), FIRST_HIGHER_M, of.overflowM()));
            }
        }
        List<Upkeep> frames = new ArrayList<>();
        for (boolean changesAtLimit : changes) {
            for (Optional<Set<DayOfWeek>> weekdays : visits) {
                for (OptionalDouble toM : marks) {
                    for (OptionalDouble startM : starts) {
                        frames.add(
                                new Upkeep(
                                        tray,
                                        OptionalDouble.empty(),
                                        changesAtLimit,
                                        poursFeed,
                                        weekdays,
                                        toM,
                                        startM));
                    }
                }
            }
        }
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

    /** The strength with which a frame loses least; near another's where that is known. */
    private Tried bestOf(Upkeep frame, OptionalDouble near) {
        Tried best = frame.effort(scenario) > 0 ? tried(frame) : null;
        if (best != null && best.lossFrac() < ENOUGH_FRAC) {
            return best;
        }
        Set<Double> strengths = new java.util.TreeSet<>();
        if (near.isPresent()) {
            strengths.add(near.getAsDouble());
        } else {
            for (double frac : STRENGTHS) {
                strengths.add(frac * feedMsPerCm);
            }
        }
        List<Tried> fed = new ArrayList<>();
        for (double strength : strengths) {
            double shown = FastMath.rint(strength / STEP_MS_PER_CM) * STEP_MS_PER_CM;
            Tried one = shown > 0 ? tried(frame.fedAt(FastMath.rint(shown * 100) / 100)) : null;
            if (one != null) {
                fed.add(one);
            }
        }
        Tried of = middleOfBest(fed);
        return best == null || of != null && of.lossFrac() < best.lossFrac() ? of : best;
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
