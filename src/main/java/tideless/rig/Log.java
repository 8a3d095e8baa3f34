package tideless.rig;

import java.util.ArrayList;
import java.util.List;
import tideless.physics.Time;

/**
 * What a grower wrote down: what was read and what was done, in order of time.
 *
 * <p>From its first entry to its last a run does what the log says was done and follows no rule of
 * visits; a level that was read is the level from then on. Before and after, and for the water of
 * vessels it never tells of, the scenario's rules hold.
 *
 * @param entries in order of time; those of one instant in the order they were written
 */
public record Log(List<LogEntry> entries) {
    /** Nothing written down. */
    public static final Log NONE = new Log(List.of());

    public Log {
        entries = List.copyOf(entries);
        for (int i = 1; i < entries.size(); i++) {
            if (entries.get(i).atS() < entries.get(i - 1).atS()) {
                throw new IllegalArgumentException("entries must rise in time, entry " + i);
            }
        }
    }

    public boolean isEmpty() {
        return entries.isEmpty();
    }

    /** When the last was written, s since the start; negative infinity where there is none. */
    public double lastS() {
        return isEmpty() ? Double.NEGATIVE_INFINITY : entries.get(entries.size() - 1).atS();
    }

    /**
     * From when on all that was done stands in it, s since the start: from its first entry, since
     * it may be begun weeks after the run. Where it begins with something that was done, nothing
     * was before that, and it is all from the start.
     */
    public double keptFromS() {
        if (isEmpty()) {
            return Double.POSITIVE_INFINITY;
        }
        double firstS = entries.get(0).atS();
        double endS = (Math.floor(firstS / Time.DAY_S) + 1) * Time.DAY_S;
        for (LogEntry entry : entries) {
            if (entry.atS() >= endS || entry instanceof LogEntry.Reading r && isLevel(r)) {
                return firstS;
            }
            if (entry instanceof LogEntry.Deed
                    || entry instanceof LogEntry.Reading r && isPoured(r)) {
                return 0;
            }
        }
        return firstS;
    }

    private static boolean isLevel(LogEntry.Reading reading) {
        return reading.what() == LogEntry.Quantity.LEVEL;
    }

    private static boolean isPoured(LogEntry.Reading reading) {
        return reading.what() == LogEntry.Quantity.POURED;
    }

    /**
     * Whether it tells of a vessel's water: its level, or what was poured in. Who writes down that
     * there was nothing to see tells of all.
     */
    public boolean tellsOfWater(VesselId where) {
        for (LogEntry entry : entries) {
            boolean tells =
                    entry instanceof LogEntry.Looked
                            || entry instanceof LogEntry.Reading r
                                    && r.where().equals(where)
                                    && (isLevel(r) || isPoured(r))
                            || isOfWater(entry) && ((LogEntry.Deed) entry).where().equals(where);
            if (tells) {
                return true;
            }
        }
        return false;
    }

    private static boolean isOfWater(LogEntry entry) {
        return entry instanceof LogEntry.FilledUp
                || entry instanceof LogEntry.Poured
                || entry instanceof LogEntry.Renewed;
    }

    /** Day of the last entry, from 0; -1 where there is none. */
    public int lastDay() {
        return isEmpty() ? -1 : (int) (lastS() / Time.DAY_S);
    }

    /** Day of the last entry that is no reading kept out, from 0; -1 where there is none. */
    public int lastBelievedDay() {
        for (int i = entries.size() - 1; i >= 0; i--) {
            if (!(entries.get(i) instanceof LogEntry.Reading reading) || reading.counts()) {
                return (int) (entries.get(i).atS() / Time.DAY_S);
            }
        }
        return -1;
    }

    /** The readings among them, those kept out too. */
    public List<LogEntry.Reading> readings() {
        List<LogEntry.Reading> readings = new ArrayList<>();
        for (LogEntry entry : entries) {
            if (entry instanceof LogEntry.Reading reading) {
                readings.add(reading);
            }
        }
        return readings;
    }
}
