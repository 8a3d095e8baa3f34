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
    /** A loss to salt and hunger that is worth a change, as a share; that of the salt limit. */
    static final double WORTH_FRAC = 0.05;

    /** Strengths that are tried, as shares of the feed as it is; assumed wide enough. */
    private static final double[] STRENGTHS = {0.85, 0.7, 0.6, 0.5, 0.4, 0.3, 1.2, 1.5};

    /** A pen tells feeds this far apart, and a grower mixes no closer, mS/cm. */
    private static final double STEP_MS_PER_CM = 0.1;

    /** Marks that are tried in a tray topped up by hand, m above the present one. */
    private static final double[] HIGHER_M = {0.02, 0.04, 0.06};

    /** What another unit of effort has to bring, as a share of the crop; assumed. */
    private static final double EFFORT_WORTH_FRAC = 0.02;

    /** Losses no further apart are alike, as a share; within any forecast's noise. */
    private static final double ALIKE_FRAC = 0.01;

    /** Another crop of the rig may lose so much by it, as a share. */
    private static final double OTHERS_FRAC = 0.01;

    private final Scenario scenario;
    private final VesselId tray;
    private final Liquid feed;
    private final double feedMsPerCm;
    private final Map<Visits, Surroundings> surroundings = new HashMap<>();
    private final Outcome given;
    private int seasons;

    /**
     * What was found.
     *
     * @param upkeep how to keep it
     * @param scenario kept so
     * @param lossFrac what salt and hunger still take, 0-1
     */
    record Found(Upkeep upkeep, Scenario scenario, double lossFrac) {}

    /**
     * What came of a season.
     *
     * @param lossFrac the greatest that salt and hunger take of a crop that gets this feed, 0-1
     * @param harmedH hours dry, stranded, wilted or drowned, h
     * @param grams of all plants of each tray
     */
    private record Outcome(double lossFrac, double harmedH, double[] grams) {}

    UpkeepSearch(Scenario given, VesselId tray) {
        scenario = Ensemble.atEnsembleStep(given);
        this.tray = tray;
        Tray of = scenario.tray(tray).orElseThrow();
        feed = scenario.feedOf(of);
        feedMsPerCm = ElectricalConductivity.at25MsPerCm(feed.composition());
        this.given = outcome(scenario);
    }

    /** The way to keep it; empty where none of those tried is better. */
    Optional<Found> found() {
        Upkeep best = null;
        double bestScore = given.lossFrac();
        double bestLoss = Double.NaN;
        OptionalDouble near = OptionalDouble.empty();
        for (Upkeep frame : frames()) {
            Tried tried = bestOf(frame, near);
            if (tried == null) {
                continue;
            }
            near = tried.upkeep().feedMsPerCm().isPresent() ? tried.upkeep().feedMsPerCm() : near;
            double score =
                    tried.lossFrac()
                            + EFFORT_WORTH_FRAC * tried.upkeep().effort(scenario);
            if (tried.lossFrac() < WORTH_FRAC) {
                best = tried.upkeep();
                bestLoss = tried.lossFrac();
                break;
            }
            if (score < bestScore) {
                best = tried.upkeep();
                bestScore = score;
                bestLoss = tried.lossFrac();
            }
        }
        if (best == null) {
            return Optional.empty();
        }
        double loss = bestLoss;
        Upkeep upkeep = best;
        return upkeep.of(scenario).map(so -> new Found(upkeep, so, loss));
    }

    String describe() { return given.lossFrac()+" "+given.harmedH()+" "+java.util.Arrays.toString(given.grams()); }
    int seasons() {
        return seasons;
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
        boolean poursFeed = false;
        if (scenario.tray(tray).orElseThrow().filling() instanceof Filling.ByHand hand) {
            poursFeed = !hand.with().equals(Pouring.FEED);
            marks.addAll(higher(hand.toLevelM()));
        }
        List<Upkeep> frames = new ArrayList<>();
        for (boolean changesAtLimit : changes) {
            for (Optional<Set<DayOfWeek>> weekdays : visits) {
                for (OptionalDouble toM : marks) {
                    frames.add(
                            new Upkeep(
                                    tray,
                                    OptionalDouble.empty(),
                                    changesAtLimit,
                                    poursFeed,
                                    weekdays,
                                    toM,
                                    OptionalDouble.empty()));
                }
            }
        }
        frames.sort(Comparator.comparing(frame -> frame.effort(scenario)));
        return frames;
    }

    private List<OptionalDouble> higher(double toM) {
        Tray of = scenario.tray(tray).orElseThrow();
        double mostM = Math.min(of.overflowM(), of.cupBottomM());
        List<OptionalDouble> marks = new ArrayList<>();
        for (double byM : HIGHER_M) {
            if (toM + byM <= mostM) {
                marks.add(OptionalDouble.of(FastMath.rint((toM + byM) * 1e3) / 1e3));
            }
        }
        return marks;
    }

    /** The strength with which a frame loses least; near another's where that is known. */
    private Tried bestOf(Upkeep frame, OptionalDouble near) {
        Tried best = frame.effort(scenario) > 0 ? tried(frame) : null;
        if (best != null && best.lossFrac() < WORTH_FRAC) {
            return best;
        }
        Set<Double> strengths = new java.util.TreeSet<>();
        if (near.isPresent()) {
            for (int step = -2; step <= 2; step++) {
                strengths.add(near.getAsDouble() + step * STEP_MS_PER_CM);
            }
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
        List<Tried> alike =
                fed.stream().filter(t -> t.lossFrac() <= least + ALIKE_FRAC).toList();
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
            harms |= outcome.grams()[i] < (1 - OTHERS_FRAC) * given.grams()[i];
        }
        return harms ? null : new Tried(upkeep, outcome);
    }

    private Outcome outcome(Scenario so) {
        seasons++;
        Season season =
                Simulation.season(
                        so,
                        surroundings.computeIfAbsent(
                                so.visits(), visits -> Surroundings.forSeasons(so)));
        double loss = 0;
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
                }
            }
        }
        return new Outcome(loss, harmedH, grams);
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
