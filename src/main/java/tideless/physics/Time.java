package tideless.physics;

/** Hours and days in seconds; the day is that of the clock, without leap seconds. */
public final class Time {
    /** s. */
    public static final double HOUR_S = 3600;

    /** s. */
    public static final double DAY_S = 86400;

    private Time() {}
}
