package tideless.sim;

import java.util.Objects;
import tideless.rig.VesselId;

/**
 * Something that happened at one instant of a run.
 *
 * @param kind what
 * @param atS seconds since the scenario's start
 * @param vessel in which tray or reservoir
 * @param volumeM3 water poured in (refill, top-up, planting; flush: the fresh part) or lost
 *     (overflow, so far), m3; 0 where none is meant
 * @param waterM3 how much of what was poured in was source water, m3
 * @param drainedM3 water taken out first (flush, planting), m3
 * @param ecMsPerCm what the meter read before (flush, fresh solution), mS/cm; NaN where nobody read
 * @param freshG fresh mass of plants taken out of the whole tray, g; 0 where none was
 * @param detail what else there is to say (a mineral's name, a valve's new setting, a crop's name),
 *     or empty
 */
public record Event(
        Kind kind,
        double atS,
        VesselId vessel,
        double volumeM3,
        double waterM3,
        double drainedM3,
        double ecMsPerCm,
        double freshG,
        String detail) {

    /** Kinds of event. */
    public enum Kind {
        REFILL,
        TOP_UP,
        FRESH_SOLUTION,
        FLUSH,
        VALVE_MOVED,
        OUTLET_UNCOVERED,
        /** Less solution is left than a film that feeds a tenth of the thirst. */
        DRIED_OUT,
        STRANDED,
        REWETTED,
        WILTED,
        RECOVERED,
        DROWNED,
        /** Too salty at once for what the roots are used to: wilting by day. */
        SALT_WILTED,
        /** The roots are used to it. */
        SALT_BORNE,
        /** Want of oxygen costs a tenth of a day's growth, by the likely figures. */
        SHORT_OF_AIR,
        /** It no longer does. */
        AIR_ENOUGH,
        DIED,
        OVERFLOW_BEGAN,
        PRECIPITATE,
        FLOWERING,
        FIRST_RIPE,
        /** Leaves were picked and the plants stand on. */
        LEAVES_PICKED,
        /** Plants were taken out. */
        THINNED,
        /** The plants were given other ground. */
        SPACED,
        TOPPED,
        HARVEST,
        /** The next crop was set out. */
        PLANTED
    }

    /** Detail of a harvest that would not wait until somebody comes again. */
    public static final String BEFORE_ABSENCE = "before an absence";

    /** Detail of a picking without a date of the scenario's. */
    public static final String AS_IT_GROWS = "as it grows";

    /** Detail of a harvest, ripe or not, that the next crop of the tray does not wait for. */
    public static final String MAKES_ROOM = "makes room for the next crop";

    /** Detail of a death by frost. */
    public static final String FROST = "frost";

    /** Detail of a death by cold above freezing, of a crop that is chilled for days. */
    public static final String CHILL = "chill";

    /** Detail of a death by heat. */
    public static final String HEAT = "heat";

    /** Detail of a death for want of light. */
    public static final String DARK = "dark";

    /**
     * Detail of a wilting by salt in a vessel that, kept full of feed, would suit the crop: what is
     * left is strong because it is little, and what is wanted is water.
     */
    public static final String DRUNK_DOWN = "drunk down";

    /** Detail of a death by salt in which nothing grows. */
    public static final String SALT = "salt";

    public Event {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(vessel, "vessel");
        Objects.requireNonNull(detail, "detail");
    }
}
