package tideless.rig;

import tideless.physics.Time;

/** A span of the day that is open at the same hours every day. */
public final class DailySpan {
    private DailySpan() {}

    /**
     * Whether it is open at an instant; a span that ends before it begins runs overnight, one that
     * ends when it begins is always open.
     *
     * @param timeS seconds since a midnight, at least 0
     * @param fromS it opens, seconds after midnight
     * @param toS it shuts, seconds after midnight
     */
    public static boolean isOpen(double timeS, double fromS, double toS) {
        double timeOfDayS = timeS % Time.DAY_S;
        if (fromS == toS) {
            return true;
        }
        return fromS < toS
                ? timeOfDayS >= fromS && timeOfDayS < toS
                : timeOfDayS >= fromS || timeOfDayS < toS;
    }
}
