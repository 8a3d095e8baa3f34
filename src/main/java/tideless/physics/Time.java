package tideless.physics;

import java.util.Locale;
import org.apache.commons.math3.util.FastMath;

/** Hours and days in seconds; the day is that of the clock, without leap seconds. */
public final class Time {
    /** s. */
    public static final double HOUR_S = 3600;

    /** s. */
    public static final double DAY_S = 86400;

    private Time() {}

    /**
     * A time of day as "08:00", to the nearest minute.
     *
     * @param afterMidnightS s; a whole day is "24:00"
     */
    public static String clock(double afterMidnightS) {
        long minutes = FastMath.round(afterMidnightS / 60);
        return String.format(Locale.ROOT, "%02d:%02d", minutes / 60, minutes % 60);
    }
}
