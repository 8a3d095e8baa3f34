package tideless.rig;

import java.util.ArrayList;
import java.util.List;
import tideless.physics.Time;

/**
 * What a grower wrote down: what was read and what was done, in order of time.
 *
 * <p>Up to its last entry a run does what the log says was done and follows no rule of visits; a
 * level that was read is the level from then on. From the last entry on the scenario's rules hold.
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
