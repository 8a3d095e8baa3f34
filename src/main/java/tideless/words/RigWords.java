package tideless.words;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tideless.advice.Task;
import tideless.advice.Unit;
import tideless.advice.Warning;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Reservoir;
import tideless.rig.Tray;
import tideless.sim.ReservoirTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** What a drawing of the rig shows, in words: its title, its labels, and what it finds. */
public final class RigWords {
    /** Said of a tray in which nothing grows. */
    public static final String EMPTY = "empty";

    /** Told as zero, m. */
    private static final double ON_FLOOR_M = 0.0005;

    /** What the drawing's signs mean. */
    public static final String KEY =
            "Each tray is cut across and drawn to scale, its middle left out where it is wide."
                    + " Solution: pale where it is leaner than its crop's"
                    + " band of EC, blue-grey within, brown above it. Roots: thick in the water, dotted in air. The bar at"
                    + " the right wall: lowest to highest level of the season. Dark: what lies"
                    + " below the reservoir's outlet and never leaves. Plants, cup widths and the"
                    + " lamp's height are not to scale.";

    /** What a season's strips show. */
    public static final String SEASON = "The season of every vessel";

    /** What the strips' signs mean. */
    public static final String SEASON_KEY =
            "Filled: how full. Lines: what is done. Grey: nobody comes.";

    /** Hours worth a look. */
    public enum Moment {
        DAY_ONE("Day one"),
        WORST("Worst hour"),
        HARVEST("Before the first harvest"),
        END("Last hour of the run");

        private final String words;

        Moment(String words) {
            this.words = words;
        }
    }

    private RigWords() {}

    /** As "Worst hour: Sun 29 Mar 22:00". */
    public static String title(Moment moment, Trace trace, int hour) {
        return moment.words + ": " + Dates.visit(trace.clockAtSample(hour), false);
    }

    /** As "Tray left (lettuce)". */
    public static String heading(List<Tray> trays) {
        return heading(trays, Names.crops(trays.get(0)));
    }

    private static String heading(List<Tray> trays, String crop) {
        List<String> names = trays.stream().map(t -> Names.clean(t.name())).toList();
        return Names.begun(Names.trays(names))
                + (names.equals(List.of(crop)) ? "" : " (" + crop + ")");
    }

    /** As "shelf: 21 of 38 L usable, 3.0 L dead". */
    public static String litres(ReservoirTrace run, int hour) {
        Reservoir reservoir = run.reservoir();
        return Names.clean(reservoir.name())
                + ": "
                + Numbers.litres(1000 * run.usableM3().at(hour))
                + " of "
                + Numbers.litres(1000 * reservoir.usableM3())
                + " L usable"
                + (reservoir.deadM3() > 0
                        ? ", " + Numbers.litres(1000 * reservoir.deadM3()) + " L dead"
                        : "");
    }

    /** As "level over the season 32 to 47 mm". */
    public static String range(double lowestM, double highestM) {
        String low = Numbers.whole(1000 * lowestM);
        return mm(highestM).startsWith(low + " ")
                ? "level held at " + mm(highestM)
                : "level over the season " + low + " to " + mm(highestM);
    }

    /** As "cups 40 mm". */
    public static String height(String of, double heightM) {
        return (of + " " + mm(heightM)).strip();
    }

    /** Whether a height would be told as zero. */
    static boolean isOnFloor(double heightM) {
        return heightM < ON_FLOOR_M;
    }

    /** Where the root tips are. */
    public static String rootTips(double heightM) {
        return isOnFloor(heightM) ? "root tips on the floor" : height("root tips", heightM);
    }

    /** How it is filled, as "valve shuts 45 mm"; empty for a tray that is filled once. */
    public static String filling(double settingM, Filling filling) {
        return height(filling instanceof Filling.ByValve ? "valve shuts" : "fill to", settingM);
    }

    /** As "lamp 240 umol/m2/s, 16 h a day", or as "daylight ..."; empty where there is none. */
    public static String lamp(Lamp lamp) {
        return lamp.ppfdUmolPerM2S() > 0
                ? (lamp.isElectric() ? "lamp " : "daylight ")
                        + Numbers.whole(lamp.ppfdUmolPerM2S())
                        + " umol/m2/s, "
                        + Numbers.label(lamp.litS() / Time.HOUR_S)
                        + " h a day"
                : "";
    }

    /** Whether a task is told of on a strip: those that change what a vessel holds. */
    public static boolean isMarked(Task.Kind kind) {
        return switch (kind) {
            case REFILL,
                    TOP_UP,
                    FRESH_SOLUTION,
                    FLUSH,
                    MOVE_VALVE,
                    HARVEST,
                    PICK_LEAVES,
                    THIN_OUT ->
                    true;
            default -> false;
        };
    }

    /** As "Reservoir shelf, to 26 L". */
    public static String strip(Reservoir reservoir) {
        return "Reservoir "
                + Names.clean(reservoir.name())
                + ", to "
                + Numbers.litres(1000 * reservoir.usableM3())
                + " L";
    }

    /** As "Tray basil, to 70 mm"; of several crops only how many there are. */
    public static String strip(List<Tray> trays) {
        int crops = trays.get(0).plantings();
        return (crops > 1 ? heading(trays, crops + " crops in turn") : heading(trays))
                + ", to "
                + mm(trays.get(0).overflowM());
    }

    /**
     * Something done to a vessel, or advised.
     *
     * @param day since the start, d
     * @param isDone in the run; else advised
     */
    public record Mark(double day, boolean isDone) {}

    /** As "6 x refill (and 1 advised), harvest". */
    public static String counted(Map<Task.Kind, List<Mark>> marks) {
        List<String> parts = new ArrayList<>();
        marks.forEach(
                (kind, of) -> {
                    long done = of.stream().filter(Mark::isDone).count();
                    long advised = of.size() - done;
                    String times = done > 1 ? done + " x " : "";
                    parts.add(
                            done == 0
                                    ? Names.of(kind) + " advised"
                                    : times
                                            + Names.of(kind)
                                            + (advised > 0
                                                    ? " (and " + advised + " advised)"
                                                    : ""));
                });
        return String.join(", ", parts);
    }

    /** As "ran dry from 9 Apr; too salty from 12 Apr". */
    public static String harms(List<Warning> harms) {
        return harms.stream()
                .map(
                        harm ->
                                Names.of(harm.kind())
                                        + " from "
                                        + Dates.dayMonth(harm.from().toLocalDate()))
                .collect(Collectors.joining("; "));
    }

    /** That nothing grows in a vessel on these days. */
    public static String emptyFinding(String name, LocalDate from, LocalDate to) {
        return name + ": " + EMPTY + " " + Dates.span(from, to) + ".";
    }

    /** What a strip tells. */
    public static String finding(
            String name, Map<Task.Kind, List<Mark>> marks, List<Warning> harms) {
        String done = counted(marks);
        return name
                + ": "
                + (done.isEmpty() ? "nothing is done" : done)
                + (harms.isEmpty() ? "; no harm" : "; " + harms(harms))
                + ".";
    }

    /**
     * What is to be seen of some trays that are alike.
     *
     * @param run the one that is drawn
     * @param lowestM lowest level of its living season, m
     * @param highestM highest, m
     * @param stands whether its plants stand in it
     * @param lost whether they are dead
     */
    public static String finding(
            List<Tray> trays,
            TrayTrace run,
            int hour,
            double lowestM,
            double highestM,
            boolean stands,
            boolean lost) {
        Tray tray = run.tray();
        double levelM = run.levelM().at(hour);
        double cupM = tray.deck().cupBottomM(levelM, tray.shape().depthM(), tray.cupBottomM());
        StringBuilder text = new StringBuilder(heading(trays)).append(": ");
        if (!stands) {
            return text.append("harvested and empty of plants, level ")
                    .append(mm(levelM))
                    .append('.')
                    .toString();
        }
        text.append(lost ? "the plants are lost; " : "").append("level ").append(mm(levelM));
        double wetM = levelM - cupM;
        text.append(", ").append(mm(Math.abs(wetM)));
        text.append(wetM >= 0 ? " above" : " below").append(" the underside of the cups; ");
        double tipM = run.rootTipM().at(hour);
        if (tipM < cupM) {
            text.append("roots ").append(mm(cupM - tipM)).append(" long, ");
            text.append(
                    levelM > tipM
                            ? Numbers.percent(run.wetRootFrac().at(hour)) + " of them in the water"
                            : "all of them in air");
            text.append("; ");
        }
        text.append("over the season the level ").append(between(lowestM, highestM));
        text.append(", overflow at ");
        return text.append(mm(tray.overflowM())).append('.').toString();
    }

    private static String between(double lowestM, double highestM) {
        return mm(lowestM).equals(mm(highestM))
                ? "is held at " + mm(lowestM)
                : "lies between " + mm(lowestM) + " and " + mm(highestM);
    }

    /** What is to be seen of a reservoir. */
    public static String finding(ReservoirTrace run, int hour) {
        double floorM = run.reservoir().floorAboveBenchM();
        return "Reservoir " + litres(run, hour) + ", its floor " + mm(floorM) + " above the bench.";
    }

    private static String mm(double lengthM) {
        return Numbers.of(1000 * lengthM, Unit.MILLIMETRES);
    }
}
