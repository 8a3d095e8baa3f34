package tideless.study;

import java.util.ArrayList;
import java.util.List;
import tideless.sim.Series;
import tideless.sim.Trace;

/**
 * Lowest and highest pH that a tray may read, hour by hour, for all that is not known of what its
 * crop's tissue holds.
 *
 * @param lowest of the run as written and of those at both ends of the contents
 * @param highest likewise
 */
public record PhCourse(Series lowest, Series highest) {

    /** Of each tray, over several runs of one rig. */
    static List<PhCourse> over(List<Trace> runs) {
        List<PhCourse> courses = new ArrayList<>();
        for (int i = 0; i < runs.get(0).trays().size(); i++) {
            int tray = i;
            courses.add(of(runs.stream().map(run -> run.trays().get(tray).ph()).toList()));
        }
        return courses;
    }

    /**
     * Over several courses. An hour in which one has no reading, its tray being dry, is left to the
     * others; the first one, the run as written, has it empty.
     */
    static PhCourse of(List<Series> runs) {
        double[] lowest = runs.get(0).toArray();
        double[] highest = lowest.clone();
        for (Series ph : runs) {
            for (int hour = 0; hour < lowest.length; hour++) {
                if (!Double.isNaN(ph.at(hour))) {
                    lowest[hour] = Math.min(lowest[hour], ph.at(hour));
                    highest[hour] = Math.max(highest[hour], ph.at(hour));
                }
            }
        }
        return new PhCourse(Series.of(lowest), Series.of(highest));
    }
}
