package tideless.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tideless.crop.ThirstDoubt;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.rig.VesselId;

/**
 * How far a reading may lie from a forecast that knows all but this one: the error of who read it,
 * and what no factor explains of the days since the level was last known.
 *
 * <p>A level is foretold from the level read before it, so that each tells of its own days. Days of
 * more or less thirst are those of {@link tideless.crop.ThirstDoubt}, 0.20 from day to day; weeks
 * are unknowns of their own ({@link FitSpace}).
 */
final class Believed {
    /** Of a level read by a ruler, m; assumed. */
    static final double RULER_M = 0.002;

    /** Of litres by a jug, of their value; assumed. */
    static final double JUG_FRAC = 0.05;

    /** Of an EC pen from reading to reading, of its value; assumed. */
    private static final double PEN_FRAC = 0.03;

    /** Of the model's salts beside the factors that are fitted, of the EC; assumed. */
    private static final double SALTS_FRAC = 0.04;

    /** Least deviation of an EC, mS/cm; assumed. */
    private static final double PEN_MS_PER_CM = 0.03;

    /** Of one plant that is weighed for all of its tray, of its mass; assumed. */
    private static final double PLANT_FRAC = 0.15;

    private static final double PLANT_G = 0.5;

    private Believed() {}

    /** What a level was, and when. */
    private record Known(double atS, double levelM, boolean isRead) {}

    /**
     * Standard deviation of a reading about its forecast, in its own unit; empty where nothing is
     * learned from such a reading.
     *
     * @param foretold what was foretold, in its unit: the fall of a level wanders by its own share,
     *     and if that were taken of what was read, days on which little was drunk would count for
     *     more and all thirst for less than it is (Carroll and Ruppert 1988, chapter 2)
     * @param wanders share of the days' wandering that is left where several crops drink, 0-1
     */
    static Optional<Double> deviation(
            Scenario scenario, LogEntry.Reading reading, double foretold, double wanders) {
        if (!reading.counts()) {
            return Optional.empty();
        }
        return switch (reading.what()) {
            case LEVEL -> Optional.of(level(scenario, reading, foretold, wanders));
            case POURED -> Optional.of(poured(scenario, reading, foretold, wanders));
            case EC ->
                    Optional.of(
                            root(
                                    PEN_MS_PER_CM,
                                    PEN_FRAC * reading.value(),
                                    SALTS_FRAC * reading.value()));
            case FRESH_MASS -> Optional.of(root(PLANT_G, PLANT_FRAC * reading.value()));
            case PH, TEMPERATURE, ROOT_LENGTH -> Optional.empty();
        };
    }

    /** Deviation of a level, or of litres up to the mark, that may be anything, in its unit. */
    static double anything(Scenario scenario, LogEntry.Reading reading) {
        Shape shape = shape(scenario, reading.where());
        return reading.what() == LogEntry.Quantity.LEVEL
                ? shape.depthM()
                : shape.volumeM3(shape.depthM());
    }

    /** Whether anything is learned from a reading. */
    static boolean teaches(LogEntry.Reading reading) {
        return reading.counts() && reading.what().teaches();
    }

    private static double root(double... parts) {
        double sum = 0;
        for (double part : parts) {
            sum += part * part;
        }
        return Math.sqrt(sum);
    }

    private static double level(
            Scenario scenario, LogEntry.Reading reading, double foretold, double wanders) {
        if (byValve(scenario, reading.where())) {
            return root(RULER_M, 0.5 * RULER_M); // and what it throttles
        }
        Known known = known(scenario, reading);
        return root(
                RULER_M,
                known.isRead() ? RULER_M : 0,
                jugM3(scenario, reading, known)
                        / shape(scenario, reading.where()).areaM2(known.levelM()),
                wanders * wandering(scenario, reading, known, foretold));
    }

    private static double poured(
            Scenario scenario, LogEntry.Reading reading, double foretold, double wanders) {
        Shape shape = shape(scenario, reading.where());
        Known known = known(scenario, reading);
        double fullM = fullM(scenario, reading.where());
        double areaM2 = shape.areaM2(fullM);
        double thenM = shape.levelM(Math.max(0, shape.volumeM3(fullM) - foretold));
        return root(
                JUG_FRAC * reading.value(),
                RULER_M * areaM2,
                known.isRead() ? RULER_M * areaM2 : 0,
                jugM3(scenario, reading, known),
                wanders * areaM2 * wandering(scenario, reading, known, thenM));
    }

    /** What single days may add to a fall, m. */
    private static double wandering(
            Scenario scenario, LogEntry.Reading reading, Known known, double levelM) {
        Shape shape = shape(scenario, reading.where());
        double fallM =
                Math.max(0, known.levelM() + addedM(scenario, reading, known, shape) - levelM);
        double days = Math.max(0.2, (reading.atS() - known.atS()) / Time.DAY_S);
        return fallM * ThirstDoubt.DAY / Math.sqrt(days);
    }

    private static double addedM(
            Scenario scenario, LogEntry.Reading reading, Known known, Shape shape) {
        return poured(scenario, reading, known).stream().mapToDouble(LogEntry.Poured::m3).sum()
                / shape.areaM2(known.levelM());
    }

    /** Error of what was poured in by the jug since a level was known, m3. */
    private static double jugM3(Scenario scenario, LogEntry.Reading reading, Known known) {
        return root(
                poured(scenario, reading, known).stream()
                        .mapToDouble(poured -> JUG_FRAC * poured.m3())
                        .toArray());
    }

    private static List<LogEntry.Poured> poured(
            Scenario scenario, LogEntry.Reading reading, Known known) {
        List<LogEntry.Poured> since = new ArrayList<>();
        for (LogEntry entry : scenario.log().entries()) {
            if (entry instanceof LogEntry.Poured poured
                    && poured.where().equals(reading.where())
                    && poured.atS() >= known.atS()
                    && poured.atS() <= reading.atS()) {
                since.add(poured);
            }
        }
        return since;
    }

    /** The level before a reading that was known last. */
    private static Known known(Scenario scenario, LogEntry.Reading reading) {
        Known last = new Known(0, startM(scenario, reading.where()), false);
        for (LogEntry entry : scenario.log().entries()) {
            if (entry.equals(reading)) {
                break;
            }
            if (entry instanceof LogEntry.Reading level
                    && level.where().equals(reading.where())
                    && level.what() == LogEntry.Quantity.LEVEL
                    && level.counts()) {
                last = new Known(level.atS(), level.value(), true);
            } else if (fills(scenario, entry) && where(entry).equals(reading.where())) {
                last = new Known(entry.atS(), fullM(scenario, reading.where()), true);
            }
        }
        return last;
    }

    /** When the level before a reading was last known, s since the start; 0 for that as stated. */
    static double knownFromS(Scenario scenario, LogEntry.Reading reading) {
        return known(scenario, reading).atS();
    }

    /** Whether what stood in its vessel before a reading is known by the scenario alone. */
    static boolean isOfStart(Scenario scenario, LogEntry.Reading reading) {
        return !known(scenario, reading).isRead();
    }

    /** Whether a vessel stood at its mark after a deed. */
    private static boolean fills(Scenario scenario, LogEntry entry) {
        return entry instanceof LogEntry.FilledUp
                || entry instanceof LogEntry.Renewed renewed
                        && scenario.tray(renewed.where())
                                .filter(t -> t.filling() instanceof Filling.ByHand)
                                .isPresent();
    }

    private static VesselId where(LogEntry entry) {
        return ((LogEntry.Deed) entry).where();
    }

    private static boolean byValve(Scenario scenario, VesselId where) {
        return scenario.tray(where).map(t -> t.filling() instanceof Filling.ByValve).orElse(false);
    }

    private static Shape shape(Scenario scenario, VesselId where) {
        return scenario.tray(where)
                .map(Tray::shape)
                .orElseGet(() -> scenario.reservoir(where).orElseThrow().shape());
    }

    private static double fullM(Scenario scenario, VesselId where) {
        Optional<Tray> tray = scenario.tray(where);
        if (tray.isEmpty()) {
            return scenario.reservoir(where).orElseThrow().fullLevelM();
        }
        return tray.get().filling() instanceof Filling.ByHand hand
                ? Math.min(hand.toLevelM(), tray.get().overflowM())
                : tray.get().startLevelM();
    }

    private static double startM(Scenario scenario, VesselId where) {
        return scenario.tray(where)
                .map(Tray::startLevelM)
                .orElseGet(() -> scenario.reservoir(where).orElseThrow().startLevelM());
    }

    /** The readings something is learned from, in order. */
    static List<LogEntry.Reading> of(Scenario scenario) {
        List<LogEntry.Reading> some = new ArrayList<>();
        for (LogEntry.Reading reading : scenario.log().readings()) {
            if (teaches(reading)) {
                some.add(reading);
            }
        }
        return some;
    }
}
