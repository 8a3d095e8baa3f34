package tideless.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import tideless.rig.Scenario;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;

/**
 * Designs side by side. Every one is run as the same rigs that the grower's might be: with the same
 * points of the same unknowns, so that what differs is the design's own.
 *
 * @param axes what differs, one or two
 * @param present the design as it stands, where there is one
 * @param cells of the grid: the first axis runs fastest
 * @param whole false where the work was broken off
 */
public record Compared(List<Axis> axes, Optional<Cell> present, List<Cell> cells, boolean whole) {
    /** Values in a row that say that something makes no difference. */
    private static final int TELLING = 3;

    public Compared {
        axes = List.copyOf(axes);
        cells = List.copyOf(cells);
    }

    /**
     * One design.
     *
     * @param design empty where it cannot be built or was not reached
     * @param why it cannot be built; empty where it can
     */
    public record Cell(Optional<Design> design, String why) {
        static final Cell NOT_REACHED = new Cell(Optional.empty(), "");

        /** Whether no such thing can be built. */
        public boolean isUnbuildable() {
            return !why.isEmpty();
        }

        /** Whether anything is known of it: not where the work was broken off before. */
        public boolean isReached() {
            return !this.equals(NOT_REACHED);
        }
    }

    /**
     * A design to be run.
     *
     * @param scenario empty where it cannot be built
     * @param why not
     */
    public record Plan(Optional<Scenario> scenario, String why) {}

    /** A stretch of an axis, both ends included, over which nothing changes. */
    public record Level(Axis axis, int from, int to) {}

    /** What gathers results as they come, so that they outlive an interruption. */
    private static final class Gathered {
        private final Cell[] cells;

        Gathered(int size) {
            cells = new Cell[size];
            Arrays.fill(cells, Cell.NOT_REACHED);
        }

        synchronized void keep(int place, Cell cell) {
            cells[place] = cell;
        }

        synchronized List<Cell> all() {
            return List.of(cells);
        }
    }

    /**
     * Runs designs. An interruption keeps what is done and sets {@code whole} to false.
     *
     * @param bases scenarios with all the unknowns that any design has
     * @param hasPresent whether the first of them is the design as it stands, and runs too
     * @param plan the design of a place in the grid; may be called from several threads
     * @param members how many rigs each is run as; 1 for the rig as stated
     */
    public static Compared of(
            List<Axis> axes,
            List<Scenario> bases,
            boolean hasPresent,
            IntFunction<Plan> plan,
            int members,
            long seed,
            Workers workers) {
        int size = axes.stream().mapToInt(Axis::size).reduce(1, (a, b) -> a * b);
        int extra = hasPresent ? 1 : 0;
        Scenario first = Ensemble.atEnsembleStep(bases.get(0));
        Surroundings shared = Surroundings.forSeasons(first);
        Points points = members < 2 ? null : Points.of(bases, members, seed);
        Gathered gathered = new Gathered(size + extra);
        boolean whole = true;
        try {
            workers.each(
                    size + extra,
                    i -> {
                        Plan of =
                                i < size ? plan.apply(i) : new Plan(Optional.of(bases.get(0)), "");
                        Cell cell =
                                new Cell(
                                        of.scenario().map(s -> design(s, shared, points, members)),
                                        of.why());
                        gathered.keep(i, cell);
                        return i;
                    });
        } catch (InterruptedException e) {
            whole = false;
        }
        List<Cell> all = gathered.all();
        return new Compared(
                axes,
                hasPresent ? Optional.of(all.get(size)) : Optional.empty(),
                all.subList(0, size),
                whole);
    }

    private static Design design(
            Scenario scenario, Surroundings shared, Points points, int members) {
        Scenario coarse = Ensemble.atEnsembleStep(scenario);
        Surroundings around = shared.around(coarse);
        List<Design.Run> runs = new ArrayList<>();
        if (points == null) {
            runs.add(Design.Run.of(coarse, Simulation.season(coarse, around)));
        } else {
            Unknowns unknowns = Unknowns.of(coarse);
            for (int m = 0; m < members; m++) {
                double[] at = points.of(unknowns.list(), m);
                runs.add(Design.Run.of(coarse, unknowns.member(at).season(around)));
            }
        }
        return Design.of(coarse, runs);
    }

    /** The same point for the same unknown, whatever else a design does not know. */
    private record Points(List<Unknown> unknowns, double[][] at) {
        static Points of(List<Scenario> bases, int members, long seed) {
            Set<Unknown> all = new LinkedHashSet<>();
            bases.forEach(base -> all.addAll(Unknowns.of(base).list()));
            return new Points(List.copyOf(all), UnitSample.of(members, all.size(), seed));
        }

        double[] of(List<Unknown> wanted, int member) {
            return wanted.stream().mapToDouble(u -> at[member][unknowns.indexOf(u)]).toArray();
        }
    }

    /** The design of a place. */
    public Cell at(int x, int y) {
        return cells.get(x + axes.get(0).size() * y);
    }

    /** How many values the second axis has; 1 where there is none. */
    public int rows() {
        return axes.size() < 2 ? 1 : axes.get(1).size();
    }

    /** Whether the cell of a place is the design as it stands. */
    public boolean isPresent(int x, int y) {
        return axes.get(0).isPresent(x) && (axes.size() < 2 || axes.get(1).isPresent(y));
    }

    /** Why designs cannot be built, one reason each. */
    public List<String> unbuildable() {
        return cells.stream().filter(Cell::isUnbuildable).map(Cell::why).toList();
    }

    /** Place of the harmless design that yields most; empty where none is harmless or yields. */
    public Optional<Integer> best() {
        return IntStream.range(0, cells.size())
                .boxed()
                .filter(i -> cells.get(i).design().filter(Design::isHarmless).isPresent())
                .filter(i -> !Double.isNaN(grams(i)))
                .max(Comparator.comparingDouble(this::grams).thenComparing(i -> -i));
    }

    private double grams(int i) {
        return cells.get(i).design().orElseThrow().of(Design.Figure.YIELD);
    }

    /** Where a whole axis, or a good part of it, makes no difference whatever the other is. */
    public List<Level> levels() {
        List<Level> levels = new ArrayList<>();
        for (int a = 0; a < axes.size(); a++) {
            Axis axis = axes.get(a);
            if (axis.numbers().isEmpty()) {
                continue;
            }
            int bestFrom = 0;
            int bestTo = 0;
            int from = 0;
            for (int i = 1; i < axis.size(); i++) {
                from = isLike(a, from, i) ? from : i;
                if (i - from > bestTo - bestFrom) {
                    bestFrom = from;
                    bestTo = i;
                }
            }
            int needed = Math.min(TELLING, axis.size());
            if (bestTo - bestFrom + 1 >= needed && bestTo > bestFrom) {
                levels.add(new Level(axis, bestFrom, bestTo));
            }
        }
        return levels;
    }

    /** Whether two values of an axis give the same with every value of the other that has both. */
    private boolean isLike(int a, int i, int j) {
        boolean any = false;
        int others = a == 0 ? rows() : axes.get(0).size();
        for (int o = 0; o < others; o++) {
            Optional<Design> one = (a == 0 ? at(i, o) : at(o, i)).design();
            Optional<Design> two = (a == 0 ? at(j, o) : at(o, j)).design();
            if (one.isPresent() && two.isPresent()) {
                any = true;
                if (!one.get().isLike(two.get())) {
                    return false;
                }
            }
        }
        return any;
    }
}
