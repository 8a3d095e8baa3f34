package tideless.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.ThirstDoubt;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.LogEntry;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Departures;

/**
 * What a log may teach of a rig, each in standard deviations of the doubt before it, and the
 * correction that a point of it is. What no reading of the log could touch is left out.
 */
final class FitSpace {
    /** Of litres to a centimetre: inside measures by a tape, walls that lean and bulge; assumed. */
    static final double LITRES_SD = 0.05;

    private static final double L_PER_M3 = 1000;

    /** What an axis is called that is the thirst of some weeks of the log, and which. */
    private static final String WEEKS = "weeks ";

    /** What an axis is called that is what a jug is taken to hold over what it holds. */
    private static final String JUG = "jug";

    /**
     * Of a jug that is to blame; two in three within 1.5 times, as gallons and buckets; assumed.
     */
    static final double JUG_SD = 0.4;

    /** Of the size of young plants that nobody measured; two in three within 1.5 times; assumed. */
    static final double SIZE_SD = 0.4;

    /** Of those somebody measured: one plant, or leaves counted, for all of them; assumed. */
    static final double SIZE_STATED_SD = 0.15;

    /** Of a measured thirst that another season repeats; {@link Unknowns}. */
    private static final double MEASURED_SD = 0.12;

    /** Middle of what a leak takes where there is one, L/day: a drop a minute or two; assumed. */
    private static final double LEAK_L_PER_DAY = 0.1;

    /** Of its logarithm: nine of ten take 14 mL to 0.7 L a day; assumed. */
    private static final double LEAK_SD = 1.2;

    /**
     * One of its axes.
     *
     * @param what in the words of {@link Correction}
     * @param of the crop, tray or reservoir; empty where it is the whole rig
     */
    record Axis(String what, String of) {
        /** As {@link Correction#left} calls it. */
        String name() {
            return Correction.name(what, of);
        }
    }

    private final Scenario scenario;
    private final List<Axis> axes;
    private final LoggedWeeks weeks;
    private final double leaksFromS;

    private FitSpace(Scenario scenario, List<Axis> axes, LoggedWeeks weeks, double leaksFromS) {
        this.scenario = scenario;
        this.weeks = weeks;
        this.leaksFromS = leaksFromS;
        this.axes = List.copyOf(axes);
    }

    /** That of a scenario with its log, without leaks. */
    static FitSpace of(Scenario scenario) {
        List<Axis> axes = new ArrayList<>();
        boolean ec = has(scenario, r -> r.what() == LogEntry.Quantity.EC);
        Set<String> seen = new TreeSet<>();
        for (Planting planting : scenario.plantings()) {
            String crop = planting.cropName();
            if (!seen.add(crop)) {
                continue;
            }
            axes.add(new Axis(Correction.THIRST, crop));
            if (planting instanceof Planting.OfCrop) {
                axes.add(new Axis(Correction.GROWTH, crop));
                axes.add(new Axis(Correction.SIZE, crop));
                if (ec) {
                    axes.add(new Axis(Correction.UPTAKE, crop));
                }
            }
        }
        axes.add(new Axis(Correction.GAPS, ""));
        if (ec) {
            axes.add(new Axis(Correction.FEED, ""));
            axes.add(new Axis(Correction.METER, ""));
        }
        for (Tray tray : scenario.trays()) {
            if (tray.filling() instanceof Filling.ByValve
                    && has(scenario, r -> isLevel(r, tray.id()))) {
                axes.add(new Axis(Correction.VALVE, tray.name()));
            }
        }
        for (Reservoir reservoir : scenario.reservoirs()) {
            if (has(scenario, r -> isLevel(r, reservoir.id()))
                    && has(
                            scenario,
                            r ->
                                    r.where().equals(reservoir.id())
                                            && r.what() == LogEntry.Quantity.POURED)) {
                axes.add(new Axis(Correction.LITRES, reservoir.name()));
            }
        }
        LoggedWeeks weeks = LoggedWeeks.of(scenario.log());
        for (String crop : seen) {
            for (int span = 0; span < weeks.spans(); span++) {
                axes.add(new Axis(WEEKS + span, crop));
            }
        }
        return new FitSpace(scenario, axes, weeks, 0);
    }

    private static boolean has(Scenario scenario, Predicate<LogEntry.Reading> which) {
        return scenario.log().readings().stream().anyMatch(r -> r.counts() && which.test(r));
    }

    private static boolean isLevel(LogEntry.Reading reading, VesselId where) {
        return reading.where().equals(where) && reading.what() == LogEntry.Quantity.LEVEL;
    }

    /** The same and a leak of a reservoir, that of all of the run. */
    FitSpace leaking(String reservoir) {
        return leaking(reservoir, 0);
    }

    /**
     * The same and a leak of a reservoir.
     *
     * @param fromS since when, s since the start
     */
    FitSpace leaking(String reservoir, double fromS) {
        List<Axis> more = new ArrayList<>(axes);
        more.add(new Axis(Correction.LEAK, reservoir));
        return new FitSpace(scenario, more, weeks, fromS);
    }

    /** The same of a reservoir whose refills are measured by a jug that holds otherwise. */
    FitSpace measured(String reservoir) {
        List<Axis> more = new ArrayList<>(axes);
        more.add(new Axis(JUG, reservoir));
        return new FitSpace(scenario, more, weeks, leaksFromS);
    }

    /** What the litres of a reservoir are written down as, over what they are. */
    double litresTimes(double[] point, VesselId where) {
        int k = place(JUG, where.name());
        return k < 0 || where.kind() != VesselId.Kind.RESERVOIR ? 1 : value(axes.get(k), point[k]);
    }

    /** Since when it leaks where it does, s since the start. */
    double leaksFromS() {
        return leaksFromS;
    }

    /** The correction at a point up to where it leaks. */
    Correction tightAt(double[] point) {
        return at(point, Map.of(), false);
    }

    List<Axis> axes() {
        return axes;
    }

    /** Where an axis stands. */
    int place(String what, String of) {
        return axes.indexOf(new Axis(what, of));
    }

    int size() {
        return axes.size();
    }

    /** Whether a correction keeps it, as it does not the thirst of some weeks, nor a jug. */
    static boolean isKept(Axis axis) {
        return !isOfWeeks(axis) && !axis.what().equals(JUG);
    }

    private static boolean isOfWeeks(Axis axis) {
        return axis.what().startsWith(WEEKS);
    }

    /**
     * How what an axis stands for in the log moves along all axes: a crop's thirst is that of its
     * stand and its weeks.
     */
    double[] direction(int axis) {
        double[] direction = new double[size()];
        direction[axis] = 1;
        if (axes.get(axis).what().equals(Correction.THIRST)) {
            direction[axis] = sd(axes.get(axis));
            double[] ofWeeks = weeks.meanSlope();
            for (int span = 0; span < ofWeeks.length; span++) {
                direction[place(WEEKS + span, axes.get(axis).of())] = ofWeeks[span];
            }
        }
        return direction;
    }

    /** The thirst of the weeks of the log at a point. */
    Departures departures(double[] point) {
        List<Planting> plantings = scenario.plantings();
        double[][] thirst = new double[plantings.size()][];
        for (int i = 0; i < thirst.length; i++) {
            thirst[i] = weeks.factors(deviates(point, plantings.get(i).cropName()));
        }
        return new Departures(new double[0], thirst, new boolean[0], 1);
    }

    private double[] deviates(double[] point, String crop) {
        double[] deviates = new double[weeks.spans()];
        for (int span = 0; span < deviates.length; span++) {
            deviates[span] = point[place(WEEKS + span, crop)];
        }
        return deviates;
    }

    /** The correction at a point, which says nothing of the doubt left. */
    Correction at(double[] point) {
        return at(point, Map.of());
    }

    /**
     * The correction at a point.
     *
     * @param left share of the doubt left by {@link Axis#name}
     */
    Correction at(double[] point, Map<String, Double> left) {
        return at(point, left, true);
    }

    private Correction at(double[] point, Map<String, Double> left, boolean isLeaking) {
        Map<String, Double> value = new HashMap<>();
        for (int k = 0; k < axes.size(); k++) {
            value.put(axes.get(k).name(), value(axes.get(k), point[k]));
        }
        Map<String, Correction.OfCrop> crops = new HashMap<>();
        for (Planting planting : scenario.plantings()) {
            String crop = planting.cropName();
            crops.put(
                    crop,
                    new Correction.OfCrop(
                            times(value, Correction.THIRST, crop),
                            times(value, Correction.GROWTH, crop),
                            times(value, Correction.UPTAKE, crop),
                            times(value, Correction.SIZE, crop)));
        }
        return new Correction(
                crops,
                times(value, Correction.FEED, ""),
                times(value, Correction.GAPS, ""),
                times(value, Correction.METER, ""),
                of(value, Correction.VALVE),
                of(value, Correction.LITRES),
                isLeaking ? of(value, Correction.LEAK) : Map.of(),
                left);
    }

    private static double times(Map<String, Double> value, String what, String of) {
        return value.getOrDefault(Correction.name(what, of), 1.0);
    }

    private Map<String, Double> of(Map<String, Double> value, String what) {
        Map<String, Double> some = new HashMap<>();
        for (Axis axis : axes) {
            if (axis.what().equals(what)) {
                some.put(axis.of(), value.get(axis.name()));
            }
        }
        return some;
    }

    /**
     * What an axis stands for at so many standard deviations, in the unit of {@link Correction}.
     */
    double value(Axis axis, double deviate) {
        return switch (axis.what()) {
            case Correction.VALVE -> Unknowns.VALVE_SD_M * deviate;
            case Correction.LEAK ->
                    LEAK_L_PER_DAY * FastMath.exp(LEAK_SD * deviate) / L_PER_M3 / Time.DAY_S;
            case Correction.GROWTH -> range(axis.of(), "growth.light_use").factorAt(deviate);
            case Correction.UPTAKE -> range(axis.of(), "nutrition.leaf.nitrogen").factorAt(deviate);
            default -> FastMath.exp(sd(axis) * deviate);
        };
    }

    /** Where on its axis a leak of so many litres a day stands. */
    double deviateOfLeak(double litresPerDay) {
        return FastMath.log(litresPerDay / LEAK_L_PER_DAY) / LEAK_SD;
    }

    private double sd(Axis axis) {
        return switch (axis.what()) {
            case Correction.THIRST -> thirstSd(axis.of());
            case Correction.FEED -> Unknowns.FEED_SD;
            case Correction.GAPS -> Unknowns.GAPS_SD;
            case Correction.METER -> Unknowns.METER_SD;
            case Correction.LITRES -> LITRES_SD;
            case JUG -> JUG_SD;
            case Correction.SIZE -> sizeSd(axis.of());
            default -> {
                if (!isOfWeeks(axis)) {
                    throw new IllegalArgumentException("no factor: " + axis);
                }
                yield 1;
            }
        };
    }

    private double sizeSd(String crop) {
        return planting(crop) instanceof Planting.OfCrop of && of.transplant().statesSize()
                ? SIZE_STATED_SD
                : SIZE_SD;
    }

    private Planting planting(String crop) {
        return scenario.plantings().stream()
                .filter(p -> p.cropName().equals(crop))
                .findFirst()
                .orElseThrow();
    }

    private double thirstSd(String crop) {
        if (!(planting(crop) instanceof Planting.OfCrop of)) {
            return MEASURED_SD;
        }
        double sunFrac = scenario.climate().isDark() || scenario.climate().isOpen() ? 0 : 1;
        return ThirstDoubt.of(of.traits(), sunFrac, 1).stand();
    }

    private Plausible range(String crop, String key) {
        return planting(crop) instanceof Planting.OfCrop of
                ? Plausible.of(of.traits(), key)
                : Plausible.SURE;
    }
}
