package tideless.study;

/**
 * Growers that do not exist, whose rigs hide what no scenario states. Seeds, noise and how they are
 * judged were written down before the first of them was run, and stay.
 *
 * <p>The rig is that of {@code scenarios/logged-bench.toml}: one reservoir, three trays, somebody
 * there every day. Each grower's is drawn by {@link Unknowns} with all its doubts, the thirst of
 * single weeks and days included, and a reservoir that holds more or less a centimetre than stated.
 * Each keeps a log of fourteen days: the level of the reservoir on three days of a week, the EC of
 * each tray on one, and litres poured. They are judged by the first refill after the log, by how
 * many of the bands of eight tenths hold it, and by the litres drunk in the season; leaks by a
 * second set in which one grower of two has one.
 */
final class SyntheticGrowers {
    /** How many. */
    static final int GROWERS = 200;

    /** Of what they hide. */
    static final long HIDDEN_SEED = 20_261_127;

    /** Of the noise of their ruler, meter and jug. */
    static final long NOISE_SEED = 80_415;

    /** Of those some of whom have a leak. */
    static final long LEAK_SEED = 31_337;

    /** Days of log. */
    static final int LOG_DAYS = 14;

    /** Standard deviation of a level, m. */
    static final double RULER_M = 0.002;

    /** Of an EC, of its value. */
    static final double EC_FRAC = 0.03;

    /** Of litres poured, of their value. */
    static final double JUG_FRAC = 0.05;

    /** A date is hit within a day, or this share of the days from the log's end to it. */
    static final double HIT_FRAC = 0.1;

    /** Leaks that are tried, L/day; 0 for none. */
    static final double[] LEAKS_L_PER_DAY = {0, 0.05, 0.1, 0.2, 0.4, 0.8};

    private SyntheticGrowers() {}
}
